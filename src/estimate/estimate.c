/* Oxturn: estimate/estimate
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/estimate.h"
#include "base/words.h"
#include "estimate/basis.h"
#include "estimate/figures-private.h"
#include "trade/abrasive.h"
#include "trade/dust.h"
#include "trade/profile.h"
#include <locale.h>
#include <math.h>

static void
figure_free (OxFigure *figure)
{
  g_free (figure->label);
  g_free (figure->assumption);
  g_free (figure);
}

void
ox_figure_add (OxEstimate *estimate, OxFigure figure)
{
  g_autofree char *made = figure.assumption;
  figure.assumption = ox_words_localise (made != NULL ? made : "");
  if (figure.room == NULL)
    figure.room = "";
  if (figure.basis == NULL)
    figure.basis = "";
  g_ptr_array_add (estimate->figures, g_memdup2 (&figure, sizeof figure));
}

/* m2 of target in each room; all of it where there is but one. */
static double *
room_targets (const OxPlan *plan)
{
  const OxJob *job = plan->job;
  double *areas = g_new0 (double, job->n_rooms + 1);
  for (guint i = 0; i < job->n_rooms; i++)
    {
      g_autoptr (OxRegion) ground = ox_region_new_ring (job->rooms[i]->ring);
      g_autoptr (OxRegion) shared = job->n_rooms > 1 ? ox_region_intersection (ground, plan->target) : NULL;
      areas[i] = shared != NULL ? ox_region_area (shared) : plan->totals.target_m2;
    }
  return areas;
}

static void
reckon (OxEstimate *self)
{
  const OxPlan *plan = self->plan;
  const OxMachine *machine = plan->job->machine;
  double minutes = plan->totals.strip_hours * 60;
  int least, most;
  ox_basis_csp_asked (plan->job, &least, &most);
  OxProfileStarter starter = ox_profile_starter (most);
  self->removed_mm = (starter.depth_low_mm + starter.depth_high_mm) / 2;
  self->shot_dose = ox_profile_dose (machine->flow_kg_min, machine->blast_width, machine->travel_speed);
  self->used_kg = ox_abrasive_lost (minutes, machine->flow_kg_min, machine->loss_share);
  self->dust_kg = ox_dust_mass (plan->totals.target_m2, self->removed_mm, ox_basis ("concrete-density"))
                  + ox_abrasive_use (minutes * machine->flow_kg_min, ox_basis ("shot-cycles"), 0);
  self->rules.dust_kg = self->dust_kg;
  self->rules.drum_kg = ox_dust_drum_mass (ox_basis ("drum-litres"), ox_basis ("drum-fill"), ox_basis ("dust-bulk"));
}

static OxEstimate *
make_estimate (const OxPlan *plan, const OxWorkRules *rules)
{
  static void (*const groups[]) (OxEstimate *) = {
    ox_figures_floor,  ox_figures_time, ox_figures_profile,  ox_figures_abrasive, ox_figures_dust,
    ox_figures_supply, ox_figures_hose, ox_figures_exposure, ox_figures_wear,     ox_figures_tests,
  };
  OxEstimate *self = g_new0 (OxEstimate, 1);
  self->plan = plan;
  self->room_m2 = room_targets (plan);
  self->figures = g_ptr_array_new_with_free_func ((GDestroyNotify) figure_free);
  if (rules != NULL)
    self->rules = *rules;
  else
    ox_work_rules_of (&self->rules, plan->job);
  reckon (self);
  self->work = ox_work_new (plan, &self->rules);
  self->left = ox_left_work (plan, &self->rules);
  self->dose = ox_dose_of (plan);
  for (guint i = 0; i < G_N_ELEMENTS (groups); i++)
    groups[i](self);
  return self;
}

OxEstimate *
ox_estimate_new (const OxPlan *plan, const OxWorkRules *rules)
{
  /* printf() takes the decimal sign from the locale; here it is the same everywhere, for this thread and no longer. */
  locale_t here = uselocale ((locale_t) 0), plain = newlocale (LC_NUMERIC_MASK, "C", duplocale (here));
  uselocale (plain);
  OxEstimate *estimate = make_estimate (plan, rules);
  uselocale (here);
  freelocale (plain);
  return estimate;
}

void
ox_estimate_free (OxEstimate *estimate)
{
  ox_work_free (estimate->work);
  g_clear_pointer (&estimate->left, ox_work_free);
  g_ptr_array_unref (estimate->figures);
  g_free (estimate->room_m2);
  g_free (estimate);
}

const OxFigure *
ox_estimate_find (const OxEstimate *estimate, const char *id)
{
  for (guint i = 0; i < estimate->figures->len; i++)
    {
      const OxFigure *figure = g_ptr_array_index (estimate->figures, i);
      if (*figure->room == '\0' && g_str_equal (figure->id, id))
        return figure;
    }
  return NULL;
}

const char *
ox_estimate_group_name (OxFigureGroup group)
{
  static const char *const names[OX_N_FIGURE_GROUPS] = {
    N_ ("Floor"),  N_ ("Hours"),     N_ ("Profile and dose"),    N_ ("Abrasive"),   N_ ("Dust"),
    N_ ("Supply"), N_ ("Dust hose"), N_ ("Exposure in a shift"), N_ ("Wear parts"), N_ ("Profile checks"),
  };
  return _ (names[group]);
}

const char *
ox_verdict_name (OxVerdict verdict)
{
  static const char *const names[] = { "", "fine", "warning", "stop" };
  return names[verdict];
}

char *
ox_figure_value_text (const OxFigure *figure, OxUnits units)
{
  if (g_str_equal (figure->unit, "m2"))
    return ox_units_area_text (units, figure->value);
  if (g_str_equal (figure->unit, "m"))
    {
      double step = pow (10, -(double) figure->decimals);
      return ox_units_length_text (units, round (figure->value / step) * step, TRUE);
    }
  char format[8], number[G_ASCII_DTOSTR_BUF_SIZE];
  g_snprintf (format, sizeof format, "%%.%uf", figure->decimals);
  g_ascii_formatd (number, sizeof number, format, figure->value);
  g_strdelimit (number, ".", *ox_words_decimal ());
  g_autofree char *unit = ox_basis_unit (figure->unit);
  return *unit != '\0' ? g_strdup_printf ("%s %s", number, unit) : g_strdup (number);
}
