/* Oxturn: estimate/exposure - noise, silica and air at the hand grinder in the shift that is worst.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/words.h"
#include "estimate/basis.h"
#include "estimate/figures-private.h"
#include "trade/edge.h"
#include "trade/exposure.h"

/* Noise of one person who runs the machine, with its moves, and then does the edge work of the shift. */
static void
noise_of (const OxShift *shift, OxExposure parts[2])
{
  parts[0] = (OxExposure){ ox_basis ("noise-machine"), shift->minutes[OX_PIECE_STRIP] / 60 };
  parts[1] = (OxExposure){ ox_basis ("noise-grinder"), shift->minutes[OX_PIECE_EDGE] / 60 };
}

static void
add_noise (OxEstimate *self)
{
  OxExposure worst[2] = { { 0, 0 }, { 0, 0 } };
  double day = 0;
  for (guint i = 0; i < self->work->shifts->len; i++)
    {
      OxExposure parts[2];
      noise_of (&g_array_index (self->work->shifts, OxShift, i), parts);
      double level = ox_noise_day_level (parts, 2);
      if (level <= day)
        continue;
      day = level;
      worst[0] = parts[0];
      worst[1] = parts[1];
    }
  if (day <= 0)
    return;
  double dose = ox_noise_dose (worst, 2), upper = ox_basis ("noise-upper");
  ox_figure_add (
      self,
      (OxFigure){ .group = OX_FIGURE_EXPOSURE,
                  .id = "noise-day",
                  .label = g_strdup (_ ("Noise, level of the day")),
                  .unit = "dB(A)",
                  .decimals = 1,
                  .value = day,
                  .verdict = day > upper ? OX_VERDICT_WARN : OX_VERDICT_FINE,
                  .basis = "noise-machine noise-grinder noise-upper",
                  .assumption = g_strdup_printf (
                      _ ("%.1f h at %.0f and %.1f h by hand at %.0f dB(A), common values; ears protected above %.0f; "
                         "local law governs"),
                      worst[0].hours, worst[0].level, worst[1].hours, worst[1].level, upper) });
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

static void
add_silica (OxEstimate *self)
{
  OxExposure hand = { ox_basis ("silica-grinder"), 0 };
  for (guint i = 0; i < self->work->shifts->len; i++)
    hand.hours = MAX (hand.hours, g_array_index (self->work->shifts, OxShift, i).minutes[OX_PIECE_EDGE] / 60);
  if (hand.hours <= 0)
    return;
  double mean = ox_exposure_mean (&hand, 1), limit = ox_basis ("silica-limit");
  g_autofree char *level = ox_basis_note ("silica-grinder");
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_EXPOSURE,
                                   .id = "silica-hand",
                                   .label = g_strdup (_ ("Silica, mean of the day by edge work")),
                                   .unit = "µg/m3",
                                   .value = mean,
                                   .verdict = mean > limit ? OX_VERDICT_WARN : OX_VERDICT_FINE,
                                   .basis = "silica-grinder silica-limit",
                                   .assumption = g_strdup_printf (
                                       _ ("%.1f h at %s; limit %.0f (29 CFR 1926.1153); measure, local law governs"),
                                       hand.hours, level, limit) });
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_EXPOSURE,
                                   .id = "silica-hours",
                                   .label = g_strdup (_ ("Edge work a day up to the action level")),
                                   .unit = "h",
                                   .decimals = 2,
                                   .value = ox_exposure_hours (ox_basis ("silica-action"), hand.level),
                                   .basis = "silica-grinder silica-action",
                                   .assumption = g_strdup_printf (
                                       _ ("%.0f µg/m3 (29 CFR 1926.1153), at that level and without a respirator"),
                                       ox_basis ("silica-action")) });
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
