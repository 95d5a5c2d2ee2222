/* Oxturn: estimate/card
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/card.h"
#include <string.h>
#include "base/words.h"
#include "estimate/basis.h"
#include "estimate/settings.h"
#include "trade/wear.h"

static const struct
{
  const char *id, *section, *text;
} rows[] = {
#include "estimate/card.inc"
};

static void
card_line_free (OxCardLine *line)
{
  g_free (line->text);
  g_free (line);
}

char *
ox_card_clock_text (double clock)
{
  int minutes = (int) lround (clock * 60);
  return g_strdup_printf ("%d:%02d", minutes / 60, minutes % 60);
}

static char *
with_unit (double value, guint decimals, const char *unit)
{
  g_autofree char *number = ox_words_number (value, decimals);
  return g_strdup_printf ("%s %s", number, unit);
}

/* in kilograms, and in litres for whoever fills it from a bucket */
static char *
hopper_text (const OxMachine *machine)
{
  g_autofree char *mass = with_unit (machine->hopper_kg, 1, "kg"), *litres = ox_setting_litres_text (machine->hopper_kg);
  return g_strdup_printf (_ ("%s, about %s"), mass, litres);
}

/* what of the machine and its setting a line asks for; (transfer full) (nullable) */
static char *
machine_value (const OxEstimate *estimate, const char *name)
{
  const OxMachine *machine = estimate->plan->job->machine;
  OxUnits units = estimate->plan->job->units;
  if (g_str_equal (name, "machine"))
    return g_strdup (_ (machine->name));
  if (g_str_equal (name, "hopper"))
    return hopper_text (machine);
  if (g_str_equal (name, "distance"))
    return ox_setting_distance_text (units);
  if (g_str_equal (name, "seconds"))
    return with_unit (ox_setting_seconds (units, machine->travel_speed), 0, "s");
  if (g_str_equal (name, "speed"))
    return ox_setting_speed_text (units, machine->travel_speed);
  if (g_str_equal (name, "spacing"))
    return ox_units_length_text (units, ox_setting_spacing (estimate->plan), TRUE);
  if (g_str_equal (name, "overlap"))
    return ox_units_length_text (units, machine->blast_width - ox_setting_spacing (estimate->plan), TRUE);
  if (g_str_equal (name, "amperes"))
    return with_unit (machine->amperes, 1, "A");
  if (g_str_equal (name, "volts"))
    return with_unit (machine->volts, 0, "V");
  if (g_str_equal (name, "hose"))
    return ox_units_length_text (units, machine->hose_length, TRUE);
  return NULL;
}

static char *
value_of (const OxEstimate *estimate, const char *name)
{
  char *value = machine_value (estimate, name);
  if (value != NULL)
    return value;
  if (g_str_equal (name, "abrasive"))
    return ox_setting_abrasive_text (estimate);
  if (g_str_equal (name, "circuit"))
    return ox_setting_circuit_text (estimate);
  if (g_str_equal (name, "limit"))
    return ox_setting_limit_text (estimate);
  if (g_str_equal (name, "cord"))
    return ox_setting_cord_text (estimate);
  if (g_str_equal (name, "first"))
    return ox_card_clock_text (ox_basis ("cage-first"));
  if (g_str_equal (name, "last"))
    return ox_card_clock_text (ox_basis ("cage-last"));
  if (g_str_equal (name, "even"))
    return ox_words_number (ox_basis ("cage-even"), 1);
  if (g_str_equal (name, "bags"))
    return g_strdup_printf ("%.0f", ox_estimate_find (estimate, "abrasive-bags")->value);
  return g_strdup ("____");
}

static char *
fill (const OxEstimate *estimate, const char *text)
{
  g_autoptr (GString) filled = g_string_new (NULL);
  for (const char *at = text; *at != '\0';)
    {
      const char *end = *at == '{' ? strchr (at, '}') : NULL;
      if (end == NULL)
        {
          g_string_append_c (filled, *at++);
          continue;
        }
      g_autofree char *name = g_strndup (at + 1, (gsize) (end - at - 1));
      g_autofree char *value = value_of (estimate, name);
      g_string_append (filled, value);
      at = end + 1;
    }
  return g_string_free (g_steal_pointer (&filled), FALSE);
}

GPtrArray *
ox_card_lines (const OxEstimate *estimate)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func ((GDestroyNotify) card_line_free);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const OxCardLine line = { rows[i].id, rows[i].section, fill (estimate, _ (rows[i].text)) };
      g_ptr_array_add (lines, g_memdup2 (&line, sizeof line));
    }
  return lines;
}

double
ox_card_part_run (const OxEstimate *estimate, guint part)
{
  const OxJob *job = estimate->plan->job;
  g_return_val_if_fail (part < job->machine->n_wear, 0);
  const OxWearPart *wear = &job->machine->wear[part];
  double meter = estimate->left != NULL ? ox_record_meter_hours (job->record, MAX (wear->machine, 1)) : 0;
  return ox_wear_run (wear->interval_h, wear->run_h, meter);
}

gboolean
ox_card_brings_part (const OxEstimate *estimate, guint part)
{
  const OxMachine *machine = estimate->plan->job->machine;
  g_return_val_if_fail (part < machine->n_wear, FALSE);
  const OxPlan *plan = estimate->plan;
  double left = ox_wear_hours_left (machine->wear[part].interval_h, ox_card_part_run (estimate, part)), hours = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    hours += plan->strips[i].done == 0 ? plan->strips[i].minutes / 60 : 0;
  return left <= hours + estimate->rules.shift_min / 60;
}
