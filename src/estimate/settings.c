/* Oxturn: estimate/settings
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/settings.h"
#include "base/words.h"
#include "estimate/basis.h"
#include "estimate/supply.h"
#include "trade/abrasive.h"
#include "trade/production.h"

#define FOOT 0.3048
#define METRES 10
#define FEET 30
#define SAME_SPACING 0.0005 /* m: nobody chalks finer */

double
ox_setting_distance (OxUnits units)
{
  return units == OX_UNITS_FEET ? FEET * FOOT : METRES;
}

double
ox_setting_seconds (OxUnits units, double speed)
{
  return ox_production_minutes (ox_setting_distance (units), speed) * 60;
}

char *
ox_setting_distance_text (OxUnits units)
{
  return units == OX_UNITS_FEET ? g_strdup_printf ("%d ft", FEET) : g_strdup_printf ("%d m", METRES);
}

char *
ox_setting_speed_text (OxUnits units, double speed)
{
  g_autofree char *number = ox_words_number (units == OX_UNITS_FEET ? speed / FOOT : speed, 1);
  return g_strconcat (number, units == OX_UNITS_FEET ? " ft/min" : " m/min", NULL);
}

double
ox_setting_spacing (const OxPlan *plan)
{
  for (guint i = 0; i < plan->n_chalks; i++)
    if (plan->chalks[i].spacing > 0)
      return plan->chalks[i].spacing;
  return plan->job->machine->blast_width - plan->job->machine->min_overlap;
}

char *
ox_setting_litres_text (double mass)
{
  g_autofree char *number = ox_words_number (ox_abrasive_litres (mass, ox_basis ("shot-bulk")), 1);
  return g_strconcat (number, " L", NULL);
}

char *
ox_setting_abrasive_text (const OxEstimate *estimate)
{
  const OxJob *job = estimate->plan->job;
  int least, most;
  ox_basis_csp_asked (job, &least, &most);
  const OxShotSize *usual = ox_abrasive_usual (most);
  if (*job->outfit->shot != '\0')
    return g_strdup (job->outfit->shot);
  return usual != NULL ? g_strdup_printf (_ ("____ (%s is usual for CSP %d)"), usual->id, most)
                       : g_strdup ("____");
}

char *
ox_setting_cord_text (const OxEstimate *estimate)
{
  OxCordLine line = ox_cord_line_of (estimate->plan->job);
  return line.n > 0
             ? ox_cord_line_text (&line, estimate->plan->job->units)
             : ox_units_length_text (estimate->plan->job->units, estimate->plan->job->machine->cord_length, TRUE);
}

static char *
amperes_text (double amperes)
{
  g_autofree char *number = ox_words_number (amperes, 1);
  return g_strconcat (number, " A", NULL);
}

char *
ox_setting_circuit_text (const OxEstimate *estimate)
{
  double circuit = estimate->plan->job->outfit->circuit_a;
  return circuit > 0 ? amperes_text (circuit) : g_strdup ("____ A");
}

char *
ox_setting_limit_text (const OxEstimate *estimate)
{
  const OxJob *job = estimate->plan->job;
  double share = ox_basis ("continuous-share");
  if (job->outfit->circuit_a <= 0)
    return g_strdup_printf (_ ("%.0f %%"), 100 * share);
  return amperes_text (MIN (ox_supply_continuous_limit (job->outfit->circuit_a, share), job->machine->amperes));
}

/* --- The list --- */

static void
setting_free (OxSetting *setting)
{
  g_free (setting->label);
  g_free (setting->value);
  g_free (setting);
}

/* @label and @value are taken over */
static void
add (GPtrArray *settings, char *label, char *value)
{
  const OxSetting setting = { label, value };
  g_ptr_array_add (settings, g_memdup2 (&setting, sizeof setting));
}

static void
add_machine (GPtrArray *settings, const OxEstimate *estimate)
{
  const OxMachine *machine = estimate->plan->job->machine;
  OxUnits units = estimate->plan->job->units;
  const OxFigure *bags = ox_estimate_find (estimate, "abrasive-bags");
  g_autofree char *hopper = ox_words_number (machine->hopper_kg, 1), *bag = ox_words_number (ox_basis ("bag"), 1);
  g_autofree char *poured = ox_setting_litres_text (machine->hopper_kg), *one = ox_setting_litres_text (ox_basis ("bag"));
  add (settings, g_strdup (_ ("Machine")), g_strdup (_ (machine->name)));
  add (settings, g_strdup (_ ("Blast width")), ox_units_length_text (units, machine->blast_width, TRUE));
  add (settings, g_strdup (_ ("Abrasive")), ox_setting_abrasive_text (estimate));
  add (settings, g_strdup (_ ("Filling")),
       g_strdup_printf (_ ("%s kg, about %s; bags of %s kg (%s) to bring: %.0f"), hopper, poured, bag, one, bags->value));
}

/* One line for all rooms and coats whose chalk lines lie alike, else one for each. */
static void
add_chalk (GPtrArray *settings, const OxEstimate *estimate)
{
  const OxPlan *plan = estimate->plan;
  OxUnits units = plan->job->units;
  double first = ox_setting_spacing (plan), width = plan->job->machine->blast_width;
  gboolean alike = TRUE;
  for (guint i = 0; i < plan->n_chalks; i++)
    alike = alike && (plan->chalks[i].lanes < 2 || fabs (plan->chalks[i].spacing - first) < SAME_SPACING);
  for (guint i = 0; i < MAX (plan->n_chalks, 1); i++)
    {
      double spacing = alike ? first : plan->chalks[i].spacing;
      g_autofree char *lines = ox_units_length_text (units, spacing, TRUE);
      g_autofree char *overlap = ox_units_length_text (units, width - spacing, TRUE);
      if (!alike && plan->chalks[i].lanes < 2)
        continue;
      g_autofree char *room = alike ? NULL : ox_plan_coat_text (plan, plan->chalks[i].room, plan->chalks[i].coat);
      g_autofree char *heading = alike ? NULL : ox_words_number (plan->chalks[i].heading * 180 / G_PI, 1);
      g_autofree char *where
          = !alike && plan->chalks[i].is_wing ? g_strdup_printf ("%s, %s\xc2\xb0", room, heading) : g_strdup (room);
      add (settings, alike ? g_strdup (_ ("Chalk lines")) : g_strdup_printf (_ ("Chalk lines, %s"), where),
           g_strdup_printf (_ ("%s apart, overlap %s"), lines, overlap));
      if (alike)
        return;
    }
}

static void
add_speed (GPtrArray *settings, OxUnits units, char *label, double speed)
{
  g_autofree char *text = ox_setting_speed_text (units, speed), *distance = ox_setting_distance_text (units);
  add (settings, label, g_strdup_printf (_ ("%s: %s in %.0f s"), text, distance, ox_setting_seconds (units, speed)));
}

static void
add_speeds (GPtrArray *settings, const OxEstimate *estimate)
{
  const OxJob *job = estimate->plan->job;
  add_speed (settings, job->units, g_strdup (_ ("Walking speed")), job->machine->travel_speed);
  for (guint i = 0; i < estimate->figures->len; i++)
    {
      const OxFigure *figure = g_ptr_array_index (estimate->figures, i);
      const OxRoom *room = g_str_equal (figure->id, "speed-wanted") ? ox_job_find_room (job, figure->room) : NULL;
      if (room != NULL)
        add_speed (settings, job->units, g_strdup_printf (_ ("By test patches, %s"), ox_room_title (room)), figure->value);
    }
  for (guint i = 0; i < job->n_conditions; i++)
    if (job->conditions[i]->speed_m_per_min > 0)
      add_speed (settings, job->units,
                 g_strdup (*job->conditions[i]->name != '\0' ? job->conditions[i]->name : job->conditions[i]->id),
                 job->conditions[i]->speed_m_per_min);
}

static void
add_supply (GPtrArray *settings, const OxEstimate *estimate)
{
  const OxMachine *machine = estimate->plan->job->machine;
  OxUnits units = estimate->plan->job->units;
  const OxFigure *drop = ox_estimate_find (estimate, "drop-percent");
  g_autofree char *volts = ox_words_number (machine->volts, 0), *plate = amperes_text (machine->amperes);
  g_autofree char *circuit = ox_setting_circuit_text (estimate), *limit = ox_setting_limit_text (estimate);
  g_autofree char *bore = ox_words_number (machine->hose_bore * 1000, 0);
  g_autofree char *hose = ox_units_length_text (units, machine->hose_length, TRUE);
  add (settings, g_strdup (_ ("Plate")), g_strdup_printf ("%s V, %s", volts, plate));
  add (settings, g_strdup (_ ("Circuit")), g_strdup_printf (_ ("%s; for 3 h or longer up to %s"), circuit, limit));
  add (settings, g_strdup (_ ("Dust hose")), g_strdup_printf (_ ("%s, bore %s mm"), hose, bore));
  add (settings, g_strdup (_ ("Cord")), ox_setting_cord_text (estimate));
  if (drop == NULL)
    return;
  g_autofree char *share = ox_words_number (drop->value, 1);
  add (settings, g_strdup (_ ("Voltage drop")),
       g_strdup_printf (drop->verdict == OX_VERDICT_FINE ? "%s %%" : _ ("%s %%: shorter or thicker cord"), share));
}

GPtrArray *
ox_settings_of (const OxEstimate *estimate)
{
  GPtrArray *settings = g_ptr_array_new_with_free_func ((GDestroyNotify) setting_free);
  add_machine (settings, estimate);
  add_chalk (settings, estimate);
  add_speeds (settings, estimate);
  add_supply (settings, estimate);
  return settings;
}
