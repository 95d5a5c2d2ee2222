/* Oxturn: job/check-terms - the rules of test patches, calendar and cost.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/check-private.h"
#include "base/shown.h"
#include "base/words.h"
#include "job/text.h"
#include "job/value.h"
#include "trade/money.h"
#include <string.h>

static void
add (GPtrArray *findings, const char *id, char *text)
{
  ox_finding_add (findings, OX_FINDING_ERROR, id, NULL, text);
}

static void
check_patch (const OxPatch *patch, GPtrArray *findings)
{
  if (!ox_text_is_id (patch->id))
    add (findings, patch->id,
         g_strdup_printf (
             _ ("“%s” cannot be the id of a test patch; letters, digits, “-” and “_” are allowed, a letter first"),
             ox_shown (patch->id).text));
  ox_finding_date (patch->id, patch->date, findings);
  gboolean fits = ox_value_is_over (patch->speed_m_per_min, OX_PATCH_MOST_SPEED)
                  && ox_value_is_within (patch->flow_kg_min, 0, OX_PATCH_MOST_FLOW)
                  && ox_value_is_within (patch->depth_mm, 0, OX_TEXTURE_MOST_MM) && patch->csp <= OX_CSP_MOST
                  && ox_value_is_within (patch->volume_ml, 0, OX_PATCH_MOST_VOLUME);
  for (guint i = 0; i < patch->n_diameters; i++)
    fits = fits && ox_value_is_over (patch->diameters_mm[i], OX_PATCH_MOST_DIAMETER);
  if (!fits)
    add (findings, patch->id,
         g_strdup_printf (
             _ ("A figure of test patch %s is out of range: speed over 0 to 1000 m/min, flow to 10000 kg/min, "
                "depth to 100 mm, CSP to 10, volume to 10000 ml, diameters over 0 to 10000 mm"),
             patch->id));
}

static gboolean
cage_fits (guint minutes)
{
  return minutes == 0 || (minutes >= OX_CAGE_LEAST_MIN && minutes <= OX_CAGE_MOST_MIN);
}

static void
check_trial (const OxPatch *patch, GPtrArray *findings)
{
  if (!ox_value_is_within (patch->left_mm, 0, OX_TEXTURE_MOST_MM)
      || !ox_value_is_within (patch->middle_mm, 0, OX_TEXTURE_MOST_MM)
      || !ox_value_is_within (patch->right_mm, 0, OX_TEXTURE_MOST_MM))
    add (findings, patch->id,
         g_strdup_printf (
             _ ("A texture depth of the pattern trial of test patch %s is out of range; 0 to 100 mm is allowed"),
             patch->id));
  else if ((patch->left_mm > 0) != (patch->right_mm > 0) || (patch->middle_mm > 0 && patch->left_mm == 0))
    add (findings, patch->id,
         g_strdup_printf (_ ("The pattern trial of test patch %s has the texture of one side alone; left and right are "
                             "needed, or neither"),
                          patch->id));
  if (!cage_fits (patch->cage_min) || !cage_fits (patch->cage_to_min))
    add (findings, patch->id,
         g_strdup_printf (_ ("The feed cage of test patch %s stands at no place of a clock; 1:00 to 12:59 is allowed"),
                          patch->id));
}

static void
check_patches (const OxPatches *patches, GPtrArray *findings)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  if (patches->n > OX_PATCHES_MOST)
    add (findings, "",
         g_strdup_printf (_ ("The job has %u test patches; %d are allowed"), patches->n, OX_PATCHES_MOST));
  for (guint i = 0; i < patches->n; i++)
    {
      check_patch (&patches->items[i], findings);
      check_trial (&patches->items[i], findings);
      if (!g_hash_table_add (seen, patches->items[i].id))
        add (findings, patches->items[i].id,
             g_strdup_printf (_ ("Two test patches have the id %s; each needs one of its own"), patches->items[i].id));
    }
}

static void
check_calendar (const OxCalendar *calendar, GPtrArray *findings)
{
  const double minutes[] = { calendar->break_min,  calendar->setup_min,       calendar->cleanup_min,
                             calendar->refill_min, calendar->drum_change_min, calendar->wear_check_min };
  ox_finding_date ("", calendar->first_day, findings);
  gboolean fits = calendar->start_min < 24 * 60 && ox_value_is_over (calendar->shift_h, OX_SHIFT_MOST_H);
  for (guint i = 0; i < G_N_ELEMENTS (minutes); i++)
    fits = fits && ox_value_is_within (minutes[i], 0, OX_CALENDAR_MOST_MIN);
  double left = calendar->shift_h * 60 - calendar->break_min - calendar->setup_min - calendar->cleanup_min;
  if (!fits)
    add (findings, "",
         g_strdup (_ ("A time of the calendar is out of range: a shift has over 0 to 24 h, all else 0 to 1440 min")));
  else if (left < OX_SHIFT_LEAST_MIN)
    add (
        findings, "",
        g_strdup_printf (_ ("A shift of %g h with %g min of breaks, %g to set up and %g to clean up leaves %.0f min to "
                            "work; %.0f min at least are needed"),
                         calendar->shift_h, calendar->break_min, calendar->setup_min, calendar->cleanup_min,
                         floor (left), OX_SHIFT_LEAST_MIN));
  if (!ox_value_is_within (calendar->noise_db, 0, OX_NOISE_MOST_DB)
      || !ox_value_is_within (calendar->silica_machine, 0, OX_SILICA_MOST)
      || !ox_value_is_within (calendar->silica_hand, 0, OX_SILICA_MOST))
    add (findings, "",
         g_strdup (_ ("A measured exposure is out of range: noise is 0 to 200 dB(A), silica 0 to 100000 µg/m³; 0 is not measured")));
  if (calendar->machines < 1 || calendar->machines > OX_MACHINES_MOST)
    add (findings, "", g_strdup_printf (_ ("%u machines work in parallel; 1 to 20 are allowed"), calendar->machines));
  if (calendar->days == 0 || calendar->days > 0x7f)
    add (findings, "", g_strdup (_ ("No day of the week is a working day; one at least is needed")));
}

static void
check_costs (const OxCosts *costs, GPtrArray *findings)
{
  if (costs->decimals > 4)
    add (findings, "", g_strdup_printf (_ ("Amounts have %u decimals; 0 to 4 are allowed"), costs->decimals));
  if (!ox_value_is_within (costs->contingency, 0, 1))
    add (findings, "",
         g_strdup_printf (_ ("The contingency is %g of the subtotal; 0 to 1 is allowed"), costs->contingency));
  if (costs->n > OX_COST_LINES_MOST)
    add (findings, "",
         g_strdup_printf (_ ("There are %u rates of cost; %d are allowed"), costs->n, OX_COST_LINES_MOST));
  for (guint i = 0; i < costs->n; i++)
    {
      OxMoney amount;
      if (!ox_money_parse (costs->rates[i].amount, &amount))
        add (findings, "",
             g_strdup_printf (_ ("“%s” is no amount; digits with at most 4 decimals are needed"),
                              ox_shown (costs->rates[i].amount).text));
    }
}

static void
check_outfit (const OxOutfit *outfit, GPtrArray *findings)
{
  gboolean fits = ox_value_is_within (outfit->circuit_a, 0, OX_CIRCUIT_MOST_A)
                  && strlen (outfit->shot) <= OX_SHOT_MOST_BYTES;
  for (guint i = 0; i < outfit->n_cords; i++)
    fits = fits && ox_value_is_over (outfit->cords[i].length, OX_CORD_MOST_M)
           && ox_value_is_over (outfit->cords[i].mm2, OX_CORD_MOST_MM2);
  if (!fits)
    add (
        findings, "",
        g_strdup (_ ("A figure of the outfit is out of range: circuit 0 to 10000 A, cords over 0 to 10000 m and over 0 "
                     "to 1000 mm², 40 bytes for the size of the abrasive")));
}

void
ox_check_terms (const OxJob *job, GPtrArray *findings)
{
  check_patches (job->patches, findings);
  check_calendar (job->calendar, findings);
  check_costs (job->costs, findings);
  check_outfit (job->outfit, findings);
}
