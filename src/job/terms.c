/* Oxturn: job/terms - what hours and cost of a job rest on: test patches, the calendar of shifts, the rates of cost.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/terms.h"
#include <math.h>
#include "job/text.h"
#include "job/value.h"
#include "trade/defaults.h"

static OxPatch
patch_copy (const OxPatch *patch)
{
  OxPatch copy = *patch;
  copy.id = g_strdup (patch->id ? patch->id : "");
  copy.date = ox_text_clean (patch->date, FALSE);
  copy.note = ox_text_clean (patch->note, FALSE);
  copy.speed_m_per_min = ox_value_snap (patch->speed_m_per_min);
  copy.flow_kg_min = ox_value_snap (patch->flow_kg_min);
  copy.depth_mm = ox_value_snap (patch->depth_mm);
  copy.volume_ml = ox_value_snap (patch->volume_ml);
  copy.left_mm = ox_value_snap (patch->left_mm);
  copy.middle_mm = ox_value_snap (patch->middle_mm);
  copy.right_mm = ox_value_snap (patch->right_mm);
  copy.n_diameters = MIN (patch->n_diameters, OX_PATCH_MOST_DIAMETERS);
  for (guint i = 0; i < copy.n_diameters; i++)
    copy.diameters_mm[i] = ox_value_snap (patch->diameters_mm[i]);
  return copy;
}

OxPatches *
ox_patches_new (const OxPatches *patches)
{
  OxPatches *self = g_atomic_rc_box_new0 (OxPatches);
  self->n = patches->n;
  self->items = g_new0 (OxPatch, MAX (patches->n, 1));
  for (guint i = 0; i < patches->n; i++)
    self->items[i] = patch_copy (&patches->items[i]);
  return self;
}

OxPatches *
ox_patches_ref (const OxPatches *patches)
{
  return g_atomic_rc_box_acquire ((gpointer) patches);
}

static void
patches_clear (gpointer data)
{
  OxPatches *patches = data;
  for (guint i = 0; i < patches->n; i++)
    {
      g_free (patches->items[i].id);
      g_free (patches->items[i].date);
      g_free (patches->items[i].note);
    }
  g_free (patches->items);
}

void
ox_patches_unref (const OxPatches *patches)
{
  g_atomic_rc_box_release_full ((gpointer) patches, patches_clear);
}

static gboolean
patch_equal (const OxPatch *a, const OxPatch *b)
{
  gboolean same = g_str_equal (a->id, b->id) && g_str_equal (a->date, b->date) && g_str_equal (a->note, b->note)
                  && a->speed_m_per_min == b->speed_m_per_min && a->flow_kg_min == b->flow_kg_min
                  && a->depth_mm == b->depth_mm && a->csp == b->csp && a->volume_ml == b->volume_ml
                  && a->n_diameters == b->n_diameters && a->left_mm == b->left_mm && a->middle_mm == b->middle_mm
                  && a->right_mm == b->right_mm && a->cage_min == b->cage_min && a->cage_to_min == b->cage_to_min;
  for (guint i = 0; same && i < a->n_diameters; i++)
    same = a->diameters_mm[i] == b->diameters_mm[i];
  return same;
}

gboolean
ox_patches_equal (const OxPatches *a, const OxPatches *b)
{
  gboolean same = a->n == b->n;
  for (guint i = 0; same && i < a->n; i++)
    same = patch_equal (&a->items[i], &b->items[i]);
  return same;
}

gboolean
ox_patch_has_trial (const OxPatch *patch)
{
  return patch->left_mm > 0 && patch->right_mm > 0;
}

const OxPatch *
ox_patches_trial (const OxPatches *patches)
{
  for (guint i = patches->n; i > 0; i--)
    if (ox_patch_has_trial (&patches->items[i - 1]))
      return &patches->items[i - 1];
  return NULL;
}

OxCalendar *
ox_calendar_new (const OxCalendar *calendar)
{
  OxCalendar *self = g_atomic_rc_box_new0 (OxCalendar);
  *self = *calendar;
  self->first_day = ox_text_clean (calendar->first_day, FALSE);
  self->shift_h = ox_value_snap (calendar->shift_h);
  self->break_min = ox_value_snap (calendar->break_min);
  self->setup_min = ox_value_snap (calendar->setup_min);
  self->cleanup_min = ox_value_snap (calendar->cleanup_min);
  self->refill_min = ox_value_snap (calendar->refill_min);
  self->drum_change_min = ox_value_snap (calendar->drum_change_min);
  self->wear_check_min = ox_value_snap (calendar->wear_check_min);
  self->noise_db = ox_value_snap (calendar->noise_db);
  self->silica_machine = ox_value_snap (calendar->silica_machine);
  self->silica_hand = ox_value_snap (calendar->silica_hand);
  return self;
}

OxCalendar *
ox_calendar_ref (const OxCalendar *calendar)
{
  return g_atomic_rc_box_acquire ((gpointer) calendar);
}

static void
calendar_clear (gpointer data)
{
  g_free (((OxCalendar *) data)->first_day);
}

void
ox_calendar_unref (const OxCalendar *calendar)
{
  g_atomic_rc_box_release_full ((gpointer) calendar, calendar_clear);
}

OxCalendar *
ox_calendar_default (void)
{
  return ox_calendar_new (&(OxCalendar){
      .start_min = 7 * 60,
      .shift_h = ox_defaults_get ("shift-length")->value,
      .break_min = ox_defaults_get ("shift-breaks")->value,
      .setup_min = ox_defaults_get ("shift-set-up")->value,
      .cleanup_min = ox_defaults_get ("shift-clean-up")->value,
      .refill_min = ox_defaults_get ("refill")->value,
      .drum_change_min = ox_defaults_get ("drum-change")->value,
      .wear_check_min = ox_defaults_get ("wear-check")->value,
      .machines = 1,
      .days = 0x1f,
  });
}

gboolean
ox_calendar_equal (const OxCalendar *a, const OxCalendar *b)
{
  return g_str_equal (a->first_day, b->first_day) && a->start_min == b->start_min && a->shift_h == b->shift_h
         && a->break_min == b->break_min && a->setup_min == b->setup_min && a->cleanup_min == b->cleanup_min
         && a->refill_min == b->refill_min && a->drum_change_min == b->drum_change_min
         && a->wear_check_min == b->wear_check_min && a->machines == b->machines && a->days == b->days
         && a->noise_db == b->noise_db && a->silica_machine == b->silica_machine && a->silica_hand == b->silica_hand;
}

OxCosts *
ox_costs_new (const OxCosts *costs)
{
  OxCosts *self = g_atomic_rc_box_new0 (OxCosts);
  self->currency = ox_text_clean (costs->currency, FALSE);
  self->decimals = costs->decimals;
  self->validity = ox_text_clean (costs->validity, FALSE);
  self->contingency = round (costs->contingency * 1e4) / 1e4;
  self->n = costs->n;
  self->rates = g_new0 (OxCostRate, MAX (costs->n, 1));
  for (guint i = 0; i < costs->n; i++)
    self->rates[i] = (OxCostRate){ costs->rates[i].per, ox_text_clean (costs->rates[i].name, FALSE),
                                   ox_text_clean (costs->rates[i].amount, FALSE) };
  return self;
}

OxCosts *
ox_costs_ref (const OxCosts *costs)
{
  return g_atomic_rc_box_acquire ((gpointer) costs);
}

static void
costs_clear (gpointer data)
{
  OxCosts *costs = data;
  g_free (costs->currency);
  g_free (costs->validity);
  for (guint i = 0; i < costs->n; i++)
    {
      g_free (costs->rates[i].name);
      g_free (costs->rates[i].amount);
    }
  g_free (costs->rates);
}

void
ox_costs_unref (const OxCosts *costs)
{
  g_atomic_rc_box_release_full ((gpointer) costs, costs_clear);
}

OxCosts *
ox_costs_default (void)
{
  return ox_costs_new (&(OxCosts){ .decimals = 2 });
}

gboolean
ox_costs_equal (const OxCosts *a, const OxCosts *b)
{
  if (!g_str_equal (a->currency, b->currency) || !g_str_equal (a->validity, b->validity) || a->decimals != b->decimals
      || a->contingency != b->contingency || a->n != b->n)
    return FALSE;
  for (guint i = 0; i < a->n; i++)
    if (a->rates[i].per != b->rates[i].per || !g_str_equal (a->rates[i].name, b->rates[i].name)
        || !g_str_equal (a->rates[i].amount, b->rates[i].amount))
      return FALSE;
  return TRUE;
}
