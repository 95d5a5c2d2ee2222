/* Oxturn: estimate/exposure - noise, silica and air at the hand grinder in the shift that is worst.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/words.h"
#include "estimate/basis.h"
#include "estimate/figures-private.h"
#include "trade/edge.h"
#include "trade/exposure.h"

/* What was measured holds, else what is common. */
static double
level_of (double measured, const char *usual)
{
  return measured > 0 ? measured : ox_basis (usual);
}

typedef double (*Measure) (const OxExposure *parts, guint n);

/* One person runs the machine, with its moves, and then does the edge work of the shift: the stretches of the shift in
 * which that comes to most. */
static double
worst_shift (const OxEstimate *self, const double levels[2], Measure measure, OxExposure worst[2])
{
  double most = 0;
  worst[0] = worst[1] = (OxExposure){ 0, 0 };
  for (guint i = 0; i < self->work->shifts->len; i++)
    {
      const OxShift *shift = &g_array_index (self->work->shifts, OxShift, i);
      const OxExposure parts[]
          = { { levels[0], shift->minutes[OX_PIECE_STRIP] / 60 }, { levels[1], shift->minutes[OX_PIECE_EDGE] / 60 } };
      if (measure (parts, 2) <= most)
        continue;
      most = measure (parts, 2);
      worst[0] = parts[0];
      worst[1] = parts[1];
    }
  return most;
}

static void
add_noise (OxEstimate *self)
{
  double measured = self->plan->job->calendar->noise_db;
  const double levels[] = { level_of (measured, "noise-machine"), ox_basis ("noise-grinder") };
  OxExposure worst[2];
  double day = worst_shift (self, levels, ox_noise_day_level, worst);
  if (day <= 0)
    return;
  double dose = ox_noise_dose (worst, 2), upper = ox_basis ("noise-upper");
  ox_figure_add (
      self, (OxFigure){ .group = OX_FIGURE_EXPOSURE,
                        .id = "noise-day",
                        .label = g_strdup (_ ("Noise, level of the day")),
                        .unit = "dB(A)",
                        .decimals = 1,
                        .value = day,
                        .verdict = day > upper ? OX_VERDICT_WARN : OX_VERDICT_FINE,
                        .basis = measured > 0 ? "noise-grinder noise-upper" : "noise-machine noise-grinder noise-upper",
                        .assumption = g_strdup_printf (
                            _ ("%.1f h at %.0f and %.1f h by hand at %.0f dB(A), %s; ears protected above %.0f; "
                               "local law governs"),
                            worst[0].hours, levels[0], worst[1].hours, levels[1],
                            measured > 0 ? _ ("machine as measured") : _ ("machine not measured: common practice, no source"), upper) });
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_EXPOSURE,
                                   .id = "noise-dose",
                                   .label = g_strdup (_ ("Noise, dose of the day")),
                                   .unit = "%",
                                   .value = dose,
                                   .verdict = dose > 100 ? OX_VERDICT_WARN : OX_VERDICT_FINE,
                                   .basis = "29 CFR 1926.52",
                                   .assumption = g_strdup_printf (
                                       _ ("8 h at 90 dB(A) are 100 %% (29 CFR 1926.52); as %.1f dB(A) all day"),
                                       ox_noise_mean (dose)) });
}

/* The hours at the machine and what stood in the air there; without a measurement no figure, which would read as clean air; (transfer full) */
static char *
machine_text (double hours, double level)
{
  return level > 0 ? g_strdup_printf (_ ("%.1f h at %.0f as measured"), hours, level)
                   : g_strdup_printf (_ ("%.1f h at the machine, not measured,"), hours);
}

/* Nothing is fine as long as nobody knows what stands in the air at the machine. */
static OxVerdict
silica_verdict (double mean, double action, gboolean is_known)
{
  return mean > action ? OX_VERDICT_WARN : is_known ? OX_VERDICT_FINE : OX_VERDICT_NONE;
}

/* By hand the mean of a study holds where nothing was measured. */
static void
add_silica (OxEstimate *self)
{
  const OxCalendar *measured = self->plan->job->calendar;
  const double levels[] = { measured->silica_machine, level_of (measured->silica_hand, "silica-grinder") };
  OxExposure worst[2];
  double mean = worst_shift (self, levels, ox_exposure_mean, worst), action = ox_basis ("silica-action");
  if (mean <= 0)
    return;
  g_autofree char *machine = machine_text (worst[0].hours, measured->silica_machine);
  ox_figure_add (self,
                 (OxFigure){ .group = OX_FIGURE_EXPOSURE,
                             .id = "silica-day",
                             .label = g_strdup (_ ("Silica, mean of the day")),
                             .unit = "µg/m3",
                             .value = mean,
                             .verdict = silica_verdict (mean, action, measured->silica_machine > 0),
                             .basis = measured->silica_hand > 0 ? "silica-action silica-limit"
                                                                : "silica-grinder silica-action silica-limit",
                             .assumption = g_strdup_printf (
                                 _ ("%s and %.1f h by hand at %.0f, %s; action level %.0f, limit %.0f (29 CFR 1926.1153); "
                                    "local law governs"),
                                 machine, worst[1].hours, levels[1],
                                 measured->silica_hand > 0 ? _ ("as measured") : _ ("the mean of a study"), action,
                                 ox_basis ("silica-limit")) });
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_EXPOSURE,
                                   .id = "silica-hours",
                                   .label = g_strdup (_ ("Edge work a day up to the action level")),
                                   .unit = "h",
                                   .decimals = 2,
                                   .value = ox_exposure_hours (action, levels[1]),
                                   .basis = "silica-action",
                                   .assumption = g_strdup_printf (
                                       _ ("at %.0f µg/m³, nothing else that day, without a respirator"), levels[1]) });
}

static void
add_shroud (OxEstimate *self)
{
  g_autofree char *cup = ox_basis_note ("grinder-cup");
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_EXPOSURE,
                                   .id = "shroud-air",
                                   .label = g_strdup (_ ("Air for the grinder's shroud, at least")),
                                   .unit = "m3/h",
                                   .value = ox_edge_shroud_flow (ox_basis ("grinder-cup")),
                                   .basis = "grinder-cup",
                                   .assumption = g_strdup_printf (
                                       _ ("25 ft³/min for an inch of cup (29 CFR 1926.1153 Table 1); %s"), cup) });
}

void
ox_figures_exposure (OxEstimate *self)
{
  add_noise (self);
  add_silica (self);
  if (self->plan->n_edges > 0)
    add_shroud (self);
}
