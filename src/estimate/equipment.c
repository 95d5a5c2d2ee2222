/* Oxturn: estimate/figures - hose, wear parts, profile checks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/words.h"
#include "estimate/basis.h"
#include "estimate/card.h"
#include "estimate/figures-private.h"
#include "trade/hose.h"
#include "trade/spots.h"
#include "trade/wear.h"

/* --- Dust hose --- */

static const OxHoseDust *
heavy_dust (void)
{
  guint n;
  const OxHoseDust *dusts = ox_hose_dusts (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (dusts[i].id, "heavy"))
      return &dusts[i];
  return dusts;
}

static double
hose_length (const OxJob *job)
{
  double most = 0;
  for (guint i = 0; i < job->n_stations; i++)
    if (job->stations[i]->kind == OX_STATION_COLLECTOR)
      most = MAX (most, job->stations[i]->length > 0 ? job->stations[i]->length : job->machine->hose_length);
  return most > 0 ? most : job->machine->hose_length;
}

void
ox_figures_hose (OxEstimate *self)
{
  const OxMachine *machine = self->plan->job->machine;
  const OxHoseDust *dust = heavy_dust ();
  if (machine->hose_bore <= 0 || machine->hose_flow <= 0)
    return;
  double velocity = ox_hose_velocity (machine->hose_flow, machine->hose_bore), length = hose_length (self->plan->job);
  static const OxVerdict verdicts[] = { OX_VERDICT_STOP, OX_VERDICT_FINE, OX_VERDICT_WARN };
  ox_figure_add (
      self, (OxFigure){ .group = OX_FIGURE_HOSE,
                        .id = "hose-velocity",
                        .label = g_strdup (_ ("Air speed")),
                        .unit = "m/s",
                        .decimals = 1,
                        .value = velocity,
                        .verdict = verdicts[ox_hose_judge (velocity, dust)],
                        .basis = dust->source,
                        .assumption = g_strdup_printf (_ ("%.0f to %.0f m/s keep heavy dust moving (%s)"),
                                                       dust->least_m_per_s, dust->most_m_per_s, _ (dust->source)) });
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_HOSE,
                                   .id = "hose-length",
                                   .label = g_strdup (_ ("Hose")),
                                   .unit = "m",
                                   .decimals = 1,
                                   .value = length,
                                   .verdict = length > ox_basis ("hose-longest") ? OX_VERDICT_WARN : OX_VERDICT_FINE,
                                   .basis = "hose-longest",
                                   .assumption = ox_basis_note ("hose-longest") });
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_HOSE,
                                   .id = "hose-loss",
                                   .label = g_strdup (_ ("Pressure lost in the hose")),
                                   .unit = "Pa",
                                   .value = ox_hose_loss (machine->hose_flow, machine->hose_bore, length)
                                            * ox_basis ("hose-flexible"),
                                   .basis = "hose-flexible",
                                   .assumption = ox_basis_note ("hose-flexible") });
}

/* --- Wear parts --- */

/* The first check of wear part @part that falls due in what is to be done, in the lowest shift, and the number of the strip before which its machine stops for it; NULL when
 * there is none. */
static const OxPiece *
first_check (const OxEstimate *self, guint part, guint *strip)
{
  const GArray *work = (self->left != NULL ? self->left : self->work)->pieces;
  const OxPiece *pieces = (const OxPiece *) (gconstpointer) work->data, *first = NULL;
  for (guint i = 0; i < work->len; i++)
    if (pieces[i].kind == OX_PIECE_WEAR && pieces[i].index == part && (first == NULL || pieces[i].shift < first->shift))
      first = &pieces[i];
  const OxPiece *next = first;
  while (next != NULL && next->kind != OX_PIECE_STRIP)
    next++;
  *strip = next != NULL ? self->plan->strips[next->index].order : 0;
  return first;
}

static char *
wear_note (const OxWearPart *part, double run, const OxPiece *check, guint strip)
{
  if (check == NULL)
    return g_strdup_printf (_ ("no check within this job; every %.0f h of the wheel, %.1f h run"), part->interval_h, run);
  if (check->shift == 0)
    return g_strdup_printf (_ ("check before strip %u; every %.0f h of the wheel, %.1f h run"), strip, part->interval_h, run);
  return g_strdup_printf (_ ("check before strip %u, in shift %u; every %.0f h of the wheel, %.1f h run"), strip,
                          check->shift, part->interval_h, run);
}

static char *
part_label (const OxWearPart *part)
{
  return part->machine > 0 ? g_strdup_printf (_ ("%s, machine %u"), _ (part->name), part->machine)
                           : g_strdup (_ (part->name));
}

void
ox_figures_wear (OxEstimate *self)
{
  const OxMachine *machine = self->plan->job->machine;
  for (guint i = 0; i < machine->n_wear; i++)
    {
      const OxWearPart *part = &machine->wear[i];
      double run = ox_card_part_run (self, i);
      guint strip;
      const OxPiece *check = first_check (self, i, &strip);
      g_autofree char *id = g_strdup_printf ("wear-left-%u", i + 1);
      ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_WEAR,
                                       .id = g_intern_string (id),
                                       .label = part_label (part),
                                       .unit = "h",
                                       .decimals = 1,
                                       .value = ox_wear_hours_left (part->interval_h, run),
                                       .verdict = check != NULL ? OX_VERDICT_WARN : OX_VERDICT_FINE,
                                       .assumption = wear_note (part, run, check, strip) });
    }
}

/* --- Profile checks --- */

void
ox_figures_tests (OxEstimate *self)
{
  guint n;
  const OxSpotRule *rules = ox_spots_rules (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (rules[i].id, "profile"))
      ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_TESTS,
                                       .id = "profile-checks",
                                       .label = g_strdup (_ ("Profile checks")),
                                       .unit = "",
                                       .value = ox_spots_count (&rules[i], self->plan->totals.target_m2),
                                       .basis = rules[i].source,
                                       .assumption = g_strdup_printf (
                                           _ ("A setting, the contract may ask for others: "
                                              "%d for the first %.1f m², one for each further %.1f m² (%s)"),
                                           rules[i].first, rules[i].base_m2, rules[i].step_m2, _ (rules[i].source)) });
}
