/* Oxturn: file/read-terms - test patches, calendar, cost and outfit from their elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/read-terms.h"
#include "base/shown.h"
#include <glib/gi18n-lib.h>
#include <math.h>
#include "file/job-known.h"
#include "file/job-words.h"
#include "job/text.h"
#include "trade/money.h"

static gboolean
read_diameters (const OxReader *reader, const xmlNode *node, OxPatch *patch)
{
  for (const xmlNode *child = node->children; child; child = child->next)
    {
      if (!ox_known_is_ours (child, "diameter"))
        continue;
      if (patch->n_diameters == OX_PATCH_MOST_DIAMETERS)
        return ox_read_fail (reader, child, _ ("a test patch has more than %d diameters"), OX_PATCH_MOST_DIAMETERS);
      if (!ox_read_number (reader, child, &(OxRange){ "mm", 0, TRUE, OX_PATCH_MOST_DIAMETER, FALSE, NAN },
                           &patch->diameters_mm[patch->n_diameters++]))
        return FALSE;
    }
  return TRUE;
}

/* Where the feed cage stands: "9:15" */
static gboolean
read_cage (const OxReader *reader, const xmlNode *node, const char *key, guint *minutes)
{
  g_autofree char *text = ox_read_text (reader, node, key, "");
  if (!text)
    return FALSE;
  return !*text || ox_text_read_clock (text, OX_CAGE_LEAST_MIN / 60, OX_CAGE_MOST_MIN / 60, minutes)
         || ox_read_fail (reader, node, _ ("%s “%s” of %s: a place on a clock from 1:00 to 12:59 is needed"), key,
                          ox_shown (text).text, node->name);
}

static gboolean
read_trial (const OxReader *reader, const xmlNode *parent, OxPatch *patch)
{
  static const OxRange ranges[] = {
    { "left-mm", 0, TRUE, OX_TEXTURE_MOST_MM, FALSE, NAN },
    { "middle-mm", 0, TRUE, OX_TEXTURE_MOST_MM, FALSE, 0 },
    { "right-mm", 0, TRUE, OX_TEXTURE_MOST_MM, FALSE, NAN },
  };
  double v[G_N_ELEMENTS (ranges)];
  for (const xmlNode *node = parent->children; node; node = node->next)
    {
      if (!ox_known_is_ours (node, "trial"))
        continue;
      if (!ox_read_numbers (reader, node, ranges, G_N_ELEMENTS (ranges), v)
          || !read_cage (reader, node, "cage", &patch->cage_min)
          || !read_cage (reader, node, "cage-to", &patch->cage_to_min))
        return FALSE;
      patch->left_mm = v[0];
      patch->middle_mm = v[1];
      patch->right_mm = v[2];
    }
  return TRUE;
}

static gboolean
read_patch (const OxReader *reader, const xmlNode *node, OxPatch *patch)
{
  static const OxRange ranges[] = {
    { "speed", 0, TRUE, OX_PATCH_MOST_SPEED, FALSE, NAN },
    { "flow-kg-min", 0, FALSE, OX_PATCH_MOST_FLOW, FALSE, 0 },
    { "depth-mm", 0, FALSE, OX_TEXTURE_MOST_MM, FALSE, 0 },
    { "volume-ml", 0, FALSE, OX_PATCH_MOST_VOLUME, FALSE, 0 },
  };
  double v[G_N_ELEMENTS (ranges)];
  patch->id = ox_read_text (reader, node, "id", NULL);
  if (!patch->id)
    return FALSE;
  if (!ox_text_is_id (patch->id))
    return ox_read_fail (reader, node,
                         _ ("id “%s” of %s: letters, digits, “-” and “_” are allowed, a letter first, 64 at most"),
                         ox_shown (patch->id).text, node->name);
  patch->date = ox_read_date (reader, node, "date", "");
  patch->note = patch->date ? ox_read_text (reader, node, "note", "") : NULL;
  if (!patch->note || !ox_read_numbers (reader, node, ranges, G_N_ELEMENTS (ranges), v)
      || !ox_read_whole (reader, node, &(OxRange){ "csp", 1, FALSE, OX_CSP_MOST, FALSE, 0 }, &patch->csp))
    return FALSE;
  patch->speed_m_per_min = v[0];
  patch->flow_kg_min = v[1];
  patch->depth_mm = v[2];
  patch->volume_ml = v[3];
  return read_diameters (reader, node, patch) && read_trial (reader, node, patch);
}

static void
patch_clear (gpointer data)
{
  OxPatch *patch = data;
  g_free (patch->id);
  g_free (patch->date);
  g_free (patch->note);
}

static gboolean
read_patches (const OxReader *reader, const xmlNode *root, OxJobBuilder *builder)
{
  g_autoptr (GArray) items = g_array_new (FALSE, TRUE, sizeof (OxPatch));
  g_array_set_clear_func (items, patch_clear);
  for (const xmlNode *child = root->children; child; child = child->next)
    {
      if (!ox_known_is_ours (child, "patch"))
        continue;
      if (items->len == OX_PATCHES_MOST)
        return ox_read_fail (reader, child, _ ("the job has more than %d test patches"), OX_PATCHES_MOST);
      g_array_set_size (items, items->len + 1);
      if (!read_patch (reader, child, &g_array_index (items, OxPatch, items->len - 1)))
        return FALSE;
      const char *id = g_array_index (items, OxPatch, items->len - 1).id;
      for (guint i = 0; i + 1 < items->len; i++)
        if (g_str_equal (g_array_index (items, OxPatch, i).id, id))
          return ox_read_fail (reader, child, _ ("id “%s” is that of another test patch already"), id);
    }
  g_autoptr (OxPatches) patches = ox_patches_new (&(OxPatches){ items->len, (OxPatch *) (gpointer) items->data });
  ox_job_builder_set_patches (builder, patches);
  return TRUE;
}

/* "07:30" */
static gboolean
read_start (const OxReader *reader, const xmlNode *node, guint *minutes)
{
  g_autofree char *text = ox_read_text (reader, node, "start", NULL);
  if (!text)
    return FALSE;
  return (strlen (text) == 5 && ox_text_read_clock (text, 0, 23, minutes))
         || ox_read_fail (reader, node, _ ("start “%s” of %s: a time from 00:00 to 23:59 is needed"),
                          ox_shown (text).text, node->name);
}

static gboolean
read_days (const OxReader *reader, const xmlNode *node, guint *days)
{
  g_autofree char *text = ox_read_text (reader, node, "days", NULL);
  if (!text)
    return FALSE;
  /* As many blanks as anybody likes, which is what a list of the schema is. */
  g_auto (GStrv) words = g_strsplit_set (text, " \t\n\r", -1);
  g_autofree char *allowed = g_strjoinv (" ", (char **) ox_words_day);
  *days = 0;
  for (guint i = 0; words[i]; i++)
    {
      guint day = 0;
      if (!*words[i])
        continue;
      while (ox_words_day[day] && !g_str_equal (ox_words_day[day], words[i]))
        day++;
      if (!ox_words_day[day])
        return ox_read_fail (reader, node, _ ("days “%s” of %s: one or more of %s are needed"), ox_shown (text).text,
                             node->name, allowed);
      *days |= 1u << day;
    }
  if (*days == 0)
    return ox_read_fail (reader, node, _ ("days “%s” of %s: one or more of %s are needed"), ox_shown (text).text,
                         node->name, allowed);
  return TRUE;
}

static gboolean
read_calendar (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  static const OxRange ranges[] = {
    { "shift-h", 0, TRUE, OX_SHIFT_MOST_H, FALSE, NAN },
    { "break-min", 0, FALSE, OX_CALENDAR_MOST_MIN, FALSE, NAN },
    { "setup-min", 0, FALSE, OX_CALENDAR_MOST_MIN, FALSE, NAN },
    { "cleanup-min", 0, FALSE, OX_CALENDAR_MOST_MIN, FALSE, NAN },
    { "refill-min", 0, FALSE, OX_CALENDAR_MOST_MIN, FALSE, NAN },
    { "drum-change-min", 0, FALSE, OX_CALENDAR_MOST_MIN, FALSE, NAN },
    { "wear-check-min", 0, FALSE, OX_CALENDAR_MOST_MIN, FALSE, NAN },
    { "noise-db", 0, TRUE, OX_NOISE_MOST_DB, FALSE, 0 },
    { "silica-machine", 0, TRUE, OX_SILICA_MOST, FALSE, 0 },
    { "silica-hand", 0, TRUE, OX_SILICA_MOST, FALSE, 0 },
  };
  double v[G_N_ELEMENTS (ranges)];
  OxCalendar draft = { .start_min = 0 };
  g_autofree char *first_day = ox_read_date (reader, node, "first-day", "");
  if (!first_day || !read_start (reader, node, &draft.start_min)
      || !ox_read_numbers (reader, node, ranges, G_N_ELEMENTS (ranges), v)
      || !ox_read_whole (reader, node, &(OxRange){ "machines", 1, FALSE, OX_MACHINES_MOST, FALSE, NAN },
                         &draft.machines)
      || !read_days (reader, node, &draft.days))
    return FALSE;
  draft.first_day = first_day;
  draft.shift_h = v[0];
  draft.break_min = v[1];
  draft.setup_min = v[2];
  draft.cleanup_min = v[3];
  draft.refill_min = v[4];
  draft.drum_change_min = v[5];
  draft.wear_check_min = v[6];
  draft.noise_db = v[7];
  draft.silica_machine = v[8];
  draft.silica_hand = v[9];
  g_autoptr (OxCalendar) calendar = ox_calendar_new (&draft);
  ox_job_builder_set_calendar (builder, calendar);
  return TRUE;
}

static gboolean
read_rate (const OxReader *reader, const xmlNode *node, OxCostRate *rate)
{
  OxMoney amount;
  int per;
  if (!ox_read_choice (reader, node, &(OxChoice){ "per", ox_words_cost, -1 }, &per))
    return FALSE;
  rate->per = (OxCostDriver) per;
  rate->name = ox_read_text (reader, node, "name", "");
  rate->amount = rate->name ? ox_read_text (reader, node, "amount", NULL) : NULL;
  if (!rate->amount)
    return FALSE;
  return ox_money_parse (rate->amount, &amount)
         || ox_read_fail (reader, node, _ ("amount “%s” of %s: digits with at most 4 decimals are needed"),
                          ox_shown (rate->amount).text, node->name);
}

static void
rate_clear (gpointer data)
{
  OxCostRate *rate = data;
  g_free (rate->name);
  g_free (rate->amount);
}

static gboolean
read_costs (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  OxCosts draft = { .n = 0 };
  g_autoptr (GArray) rates = g_array_new (FALSE, TRUE, sizeof (OxCostRate));
  g_array_set_clear_func (rates, rate_clear);
  g_autofree char *currency = ox_read_text (reader, node, "currency", "");
  g_autofree char *validity = currency ? ox_read_text (reader, node, "validity", "") : NULL;
  if (!validity || !ox_read_whole (reader, node, &(OxRange){ "decimals", 0, FALSE, 4, FALSE, 2 }, &draft.decimals)
      || !ox_read_number (reader, node, &(OxRange){ "contingency", 0, FALSE, 1, FALSE, 0 }, &draft.contingency))
    return FALSE;
  for (const xmlNode *child = node->children; child; child = child->next)
    {
      if (!ox_known_is_ours (child, "rate"))
        continue;
      if (rates->len == OX_COST_LINES_MOST)
        return ox_read_fail (reader, child, _ ("there are more than %d rates of cost"), OX_COST_LINES_MOST);
      g_array_set_size (rates, rates->len + 1);
      if (!read_rate (reader, child, &g_array_index (rates, OxCostRate, rates->len - 1)))
        return FALSE;
    }
  draft.currency = currency;
  draft.validity = validity;
  draft.n = rates->len;
  draft.rates = (OxCostRate *) (gpointer) rates->data;
  g_autoptr (OxCosts) costs = ox_costs_new (&draft);
  ox_job_builder_set_costs (builder, costs);
  return TRUE;
}

static gboolean
read_outfit (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  static const OxRange ranges[]
      = { { "length", 0, TRUE, OX_CORD_MOST_M, FALSE, NAN }, { "mm2", 0, TRUE, OX_CORD_MOST_MM2, FALSE, NAN } };
  double v[G_N_ELEMENTS (ranges)];
  OxOutfit draft = { .n_cords = 0 };
  g_autofree char *shot = ox_read_text (reader, node, "shot", "");
  if (!shot
      || !ox_read_number (reader, node, &(OxRange){ "circuit", 0, TRUE, OX_CIRCUIT_MOST_A, FALSE, 0 },
                          &draft.circuit_a))
    return FALSE;
  for (const xmlNode *child = node->children; child; child = child->next)
    {
      if (!ox_known_is_ours (child, "cord"))
        continue;
      if (draft.n_cords == OX_OUTFIT_MOST_CORDS)
        return ox_read_fail (reader, child, _ ("there are more than %d cords in series"), OX_OUTFIT_MOST_CORDS);
      if (!ox_read_numbers (reader, child, ranges, G_N_ELEMENTS (ranges), v))
        return FALSE;
      draft.cords[draft.n_cords++] = (OxCordPart){ v[0], v[1] };
    }
  draft.shot = shot;
  g_autoptr (OxOutfit) outfit = ox_outfit_new (&draft);
  ox_job_builder_set_outfit (builder, outfit);
  return TRUE;
}

gboolean
ox_read_terms (const OxReader *reader, const xmlNode *root, OxJobBuilder *builder)
{
  for (const xmlNode *child = root->children; child; child = child->next)
    {
      if (ox_known_is_ours (child, "calendar") && !read_calendar (reader, child, builder))
        return FALSE;
      if (ox_known_is_ours (child, "costs") && !read_costs (reader, child, builder))
        return FALSE;
      if (ox_known_is_ours (child, "outfit") && !read_outfit (reader, child, builder))
        return FALSE;
    }
  return read_patches (reader, root, builder);
}
