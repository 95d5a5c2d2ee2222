/* Oxturn: job/machine - what a machine is made of, as far as a plan needs it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/machine.h"
#include <math.h>
#include <stddef.h>
#include "base/number.h"
#include "base/words.h"
#include "job/machine-fields.h"
#include "job/text.h"

#define AT(member) offsetof (OxMachine, member)

/* The upper ends are no physics: far beyond any walk-behind machine, near enough to catch a slipped decimal point. */
static const OxMachineField fields[] = {
  { "body", "blast-width", N_ ("Blast width"), "m", AT (blast_width), 0, TRUE, 5 },
  { "body", "blast-length", N_ ("Blast length"), "m", AT (blast_length), 0, TRUE, 2 },
  { "body", "front", N_ ("Front"), "m", AT (front), 0, TRUE, 10 },
  { "body", "rear", N_ ("Rear"), "m", AT (rear), 0, TRUE, 10 },
  { "body", "left", N_ ("Left"), "m", AT (left), 0, TRUE, 10 },
  { "body", "right", N_ ("Right"), "m", AT (right), 0, TRUE, 10 },
  { "body", "wall-gap", N_ ("Wall gap"), "m", AT (wall_gap), 0, FALSE, 2 },
  { "body", "min-overlap", N_ ("Least overlap"), "m", AT (min_overlap), 0, FALSE, 5 },
  { "body", "turn-radius", N_ ("Turn radius"), "m", AT (turn_radius), 0, TRUE, 20 },
  { "body", "min-strip", N_ ("Shortest strip"), "m", AT (min_strip), 0, TRUE, 20 },
  { "pace", "travel-speed", N_ ("Travel speed"), "m/min", AT (travel_speed), 0, TRUE, 200 },
  { "pace", "walk-speed", N_ ("Walking speed"), "m/min", AT (walk_speed), 0, TRUE, 200 },
  { "pace", "swing-s", N_ ("Time of a swing"), "s", AT (swing_s), 0, FALSE, 3600 },
  { "pace", "start-s", N_ ("Time of a start"), "s", AT (start_s), 0, FALSE, 3600 },
  { "abrasive", "hopper-kg", N_ ("Hopper"), "kg", AT (hopper_kg), 0, FALSE, 5000 },
  { "abrasive", "flow-kg-min", N_ ("Abrasive flow"), "kg/min", AT (flow_kg_min), 0, FALSE, 5000 },
  { "abrasive", "loss-share", N_ ("Loss share"), "", AT (loss_share), 0, FALSE, 1 },
  { "hose", "hose-bore", N_ ("Hose bore"), "m", AT (hose_bore), 0, FALSE, 1 },
  { "hose", "hose-length", N_ ("Hose length"), "m", AT (hose_length), 0, FALSE, 1000 },
  { "hose", "hose-flow", N_ ("Hose flow"), "m³/h", AT (hose_flow), 0, FALSE, 100000 },
  { "supply", "volts", N_ ("Voltage"), "V", AT (volts), 0, FALSE, 1000 },
  { "supply", "amperes", N_ ("Current"), "A", AT (amperes), 0, FALSE, 1000 },
  { "supply", "cord-length", N_ ("Cord length"), "m", AT (cord_length), 0, FALSE, 1000 },
  { "supply", "cord-mm2", N_ ("Cord conductor"), "mm²", AT (cord_mm2), 0, FALSE, 500 },
};

const OxMachineField *
ox_machine_fields (guint *n)
{
  *n = G_N_ELEMENTS (fields);
  return fields;
}

OxMachine *
ox_machine_copy (const OxMachine *machine)
{
  OxMachine *copy = g_memdup2 (machine, sizeof *machine);
  copy->class_id = ox_text_clean (machine->class_id, FALSE);
  copy->name = ox_text_clean (machine->name, FALSE);
  for (guint i = 0; i < machine->n_wear; i++)
    copy->wear[i].name = ox_text_clean (machine->wear[i].name, FALSE);
  return copy;
}

void
ox_machine_free (OxMachine *machine)
{
  if (!machine)
    return;
  g_free (machine->class_id);
  g_free (machine->name);
  for (guint i = 0; i < machine->n_wear; i++)
    g_free (machine->wear[i].name);
  g_free (machine);
}

static gboolean
wear_equal (const OxWearPart *a, const OxWearPart *b)
{
  return g_strcmp0 (a->name, b->name) == 0 && a->interval_h == b->interval_h && a->run_h == b->run_h
         && a->machine == b->machine;
}

gboolean
ox_wear_part_is_on (const OxWearPart *part, guint machine)
{
  return part->machine == 0 || part->machine == machine;
}

gboolean
ox_machine_equal (const OxMachine *a, const OxMachine *b)
{
  if (g_strcmp0 (a->class_id, b->class_id) != 0 || g_strcmp0 (a->name, b->name) != 0 || a->phases != b->phases
      || a->n_wear != b->n_wear)
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    if (ox_machine_field_value (a, &fields[i]) != ox_machine_field_value (b, &fields[i]))
      return FALSE;
  for (guint i = 0; i < a->n_wear; i++)
    if (!wear_equal (&a->wear[i], &b->wear[i]))
      return FALSE;
  return TRUE;
}

/* "0.21 m", and "NaN" or "infinity" for what no number can be written for */
static char *
figure_text (double value, const char *unit)
{
  if (isnan (value))
    return g_strdup ("NaN");
  if (isinf (value))
    return g_strdup (value > 0 ? "infinity" : "-infinity");
  if (fabs (value) > 1e12)
    return g_strdup_printf ("%.3g %s", value, unit);
  g_autofree char *number = ox_number_text (value, 6);
  return *unit ? g_strconcat (number, " ", unit, NULL) : g_steal_pointer (&number);
}

static char *
field_complaint (const OxMachineField *field, double value)
{
  g_autofree char *found = figure_text (value, field->unit);
  g_autofree char *least = figure_text (field->least, field->unit);
  g_autofree char *most = figure_text (field->most, field->unit);
  if (field->above)
    /* TRANSLATORS: figure of the machine, what was found, the two ends of what is allowed; values carry their units */
    return g_strdup_printf (_ ("%s of the machine is %s; more than %s and at most %s is allowed"), _ (field->label),
                            found, least, most);
  /* TRANSLATORS: figure of the machine, what was found, the two ends of what is allowed; values carry their units */
  return g_strdup_printf (_ ("%s of the machine is %s; %s to %s is allowed"), _ (field->label), found, least, most);
}

static char *
check_wear (const OxMachine *machine)
{
  if (machine->n_wear > OX_MACHINE_MAX_WEAR)
    return g_strdup_printf (_ ("The machine has %u wear parts; at most %d are allowed"), machine->n_wear,
                            OX_MACHINE_MAX_WEAR);
  for (guint i = 0; i < machine->n_wear; i++)
    {
      const OxWearPart *part = &machine->wear[i];
      if (!isfinite (part->interval_h) || part->interval_h <= 0 || part->interval_h > OX_WEAR_MOST_H)
        return g_strdup_printf (_ ("Wear part “%s”: hours between checks must be more than 0 and at most 1000000"),
                                part->name);
      if (!isfinite (part->run_h) || part->run_h < 0 || part->run_h > OX_WEAR_MOST_H)
        return g_strdup_printf (_ ("Wear part “%s”: hours run must be 0 to 1000000"), part->name);
      if (part->machine > OX_MACHINES_MOST)
        return g_strdup_printf (_ ("Wear part “%s”: the machine must be one of 1 to %d, or all"), part->name,
                                OX_MACHINES_MOST);
    }
  return NULL;
}

/* The pattern must lie under the body: a body that is clear of a wall is then clear with its pattern, too. */
static char *
check_under_body (const OxMachine *machine)
{
  const struct
  {
    const char *label;
    double found;
    double least;
  } rows[] = {
    { N_ ("Left"), machine->left, machine->blast_width / 2 },
    { N_ ("Right"), machine->right, machine->blast_width / 2 },
    { N_ ("Front"), machine->front, machine->blast_length / 2 },
    { N_ ("Rear"), machine->rear, machine->blast_length / 2 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].found < rows[i].least)
      {
        g_autofree char *found = figure_text (rows[i].found, "m");
        g_autofree char *least = figure_text (rows[i].least, "m");
        /* TRANSLATORS: figure of the machine, what was found, least allowed; values carry their units */
        return g_strdup_printf (_ ("%s of the machine is %s; at least %s is needed, half of the blast pattern"),
                                _ (rows[i].label), found, least);
      }
  return NULL;
}

char *
ox_machine_check (const OxMachine *machine)
{
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      double value = ox_machine_field_value (machine, &fields[i]);
      gboolean low = fields[i].above ? value <= fields[i].least : value < fields[i].least;
      if (!isfinite (value) || low || value > fields[i].most)
        return field_complaint (&fields[i], value);
    }
  if (machine->min_overlap >= machine->blast_width)
    {
      g_autofree char *overlap = figure_text (machine->min_overlap, "m");
      g_autofree char *width = figure_text (machine->blast_width, "m");
      return g_strdup_printf (_ ("Least overlap of the machine is %s; less than the blast width of %s is allowed"),
                              overlap, width);
    }
  if (machine->phases != 1 && machine->phases != 3)
    return g_strdup_printf (_ ("The machine has %d phases; 1 or 3 is allowed"), machine->phases);
  char *complaint = check_under_body (machine);
  return complaint ? complaint : check_wear (machine);
}
