/* Oxturn: trade/profile
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/profile.h"
#include <math.h>

static const OxProfileMethod methods[] = {
#include "trade/methods.inc"
};

static const OxProfileSystem systems[] = {
#include "trade/systems.inc"
};

static const OxProfileStarter starters[] = {
#include "trade/starters.inc"
};

double
ox_profile_texture_depth (double volume_ml, const double *diameters_mm, guint n)
{
  g_return_val_if_fail (volume_ml > 0 && n >= 1, 0);
  double sum = 0;
  for (guint i = 0; i < n; i++)
    sum += diameters_mm[i];
  g_return_val_if_fail (sum > 0, 0);
  double mean = sum / n;
  return 4 * volume_ml * 1000 / (G_PI * mean * mean);
}

double
ox_profile_dose (double flow, double width, double speed)
{
  g_return_val_if_fail (flow > 0 && width > 0 && speed > 0, 0);
  return flow / (width * speed);
}

/* Means of ln v and ln depth, and the sums of squares about them. */
typedef struct
{
  double x, y, xx, xy, yy;
} Moments;

static Moments
moments (const OxTestPatch *patches, guint n)
{
  Moments m = { 0 };
  for (guint i = 0; i < n; i++)
    {
      m.x += log (patches[i].speed) / n;
      m.y += log (patches[i].depth_mm) / n;
    }
  for (guint i = 0; i < n; i++)
    {
      double dx = log (patches[i].speed) - m.x, dy = log (patches[i].depth_mm) - m.y;
      m.xx += dx * dx;
      m.xy += dx * dy;
      m.yy += dy * dy;
    }
  return m;
}

OxFitVerdict
ox_profile_fit (const OxTestPatch *patches, guint n, OxProfileFit *out)
{
  if (n == 0)
    return OX_FIT_NO_PATCH;
  OxProfileFit fit = { .exponent = 1, .slowest = patches[0].speed, .fastest = patches[0].speed };
  for (guint i = 0; i < n; i++)
    {
      g_return_val_if_fail (patches[i].speed > 0 && patches[i].depth_mm > 0, OX_FIT_NO_PATCH);
      fit.slowest = MIN (fit.slowest, patches[i].speed);
      fit.fastest = MAX (fit.fastest, patches[i].speed);
    }

  Moments m = moments (patches, n);
  /* Speeds nearer than a hundredth are one speed: a slope over so short a base is noise. */
  gboolean one_speed = fit.fastest < 1.01 * fit.slowest;
  if (!one_speed)
    fit.exponent = -m.xy / m.xx;
  if (fit.exponent <= 0)
    return OX_FIT_REVERSED;
  fit.factor = exp (m.y + fit.exponent * m.x);

  guint used = one_speed ? 1 : 2;
  if (n > used)
    {
      double residual = m.yy + 2 * fit.exponent * m.xy + fit.exponent * fit.exponent * m.xx;
      fit.spread = exp (sqrt (MAX (residual, 0) / (n - used)));
    }
  *out = fit;
  return OX_FIT_GOOD;
}

double
ox_profile_depth (const OxProfileFit *fit, double speed)
{
  g_return_val_if_fail (speed > 0, 0);
  return fit->factor / pow (speed, fit->exponent);
}

double
ox_profile_speed (const OxProfileFit *fit, double depth_mm)
{
  g_return_val_if_fail (depth_mm > 0, 0);
  return pow (fit->factor / depth_mm, 1 / fit->exponent);
}

gboolean
ox_profile_is_tried (const OxProfileFit *fit, double speed)
{
  return speed >= 0.999 * fit->slowest && speed <= 1.001 * fit->fastest;
}

const OxProfileMethod *
ox_profile_methods (guint *n)
{
  *n = G_N_ELEMENTS (methods);
  return methods;
}

const OxProfileMethod *
ox_profile_find_method (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (methods); i++)
    if (g_str_equal (methods[i].id, id))
      return &methods[i];
  return NULL;
}

const OxProfileSystem *
ox_profile_systems (guint *n)
{
  *n = G_N_ELEMENTS (systems);
  return systems;
}

static double
between (double a, double b, double share)
{
  return a + (b - a) * share;
}

OxProfileStarter
ox_profile_starter (int csp)
{
  guint upper = 0;
  while (upper < G_N_ELEMENTS (starters) - 1 && starters[upper].csp < csp)
    upper++;
  OxProfileStarter out = starters[upper];
  if (upper > 0 && csp < out.csp)
    {
      const OxProfileStarter *below = &starters[upper - 1];
      double share = (double) (csp - below->csp) / (out.csp - below->csp);
      out.depth_low_mm = between (below->depth_low_mm, out.depth_low_mm, share);
      out.depth_high_mm = between (below->depth_high_mm, out.depth_high_mm, share);
      out.dose_low = between (below->dose_low, out.dose_low, share);
      out.dose_high = between (below->dose_high, out.dose_high, share);
    }
  out.csp = csp;
  return out;
}

double
ox_profile_tilt (double left_mm, double right_mm)
{
  g_return_val_if_fail (left_mm > 0 && right_mm > 0, 0);
  return (right_mm - left_mm) / (right_mm + left_mm);
}
