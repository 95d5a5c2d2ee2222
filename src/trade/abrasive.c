/* Oxturn: trade/abrasive
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/abrasive.h"
#include <math.h>

/* A bag that rounding alone would add, a millionth of one, is not ordered. */
#define FORGIVEN 1e-6

static const OxShotSize sizes[] = {
#include "trade/shot.inc"
};

double
ox_abrasive_use (double dose, double cycles, double floor_loss)
{
  g_return_val_if_fail (dose >= 0 && cycles > 0 && floor_loss >= 0, 0);
  return dose / cycles + floor_loss;
}

double
ox_abrasive_lost (double minutes, double flow, double loss_share)
{
  g_return_val_if_fail (minutes >= 0 && flow >= 0 && loss_share >= 0 && loss_share <= 1, 0);
  return minutes * flow * loss_share;
}

guint
ox_abrasive_bags (const OxAbrasiveOrder *order)
{
  g_return_val_if_fail (order->charge >= 0 && order->area >= 0 && order->use >= 0, 0);
  g_return_val_if_fail (order->contingency >= 0 && order->bag > 0, 0);
  double mass = (order->charge + order->area * order->use) * (1 + order->contingency);
  return (guint) ceil (MAX (mass / order->bag - FORGIVEN, 0));
}

double
ox_abrasive_litres (double mass, double bulk)
{
  g_return_val_if_fail (mass >= 0 && bulk > 0, 0);
  return 1000 * mass / bulk;
}

double
ox_abrasive_grain_mg (double diameter_mm, double density)
{
  g_return_val_if_fail (diameter_mm > 0 && density > 0, 0);
  return G_PI / 6 * diameter_mm * diameter_mm * diameter_mm * density;
}

double
ox_abrasive_wheel_efficiency (double flow, double power, double speed)
{
  g_return_val_if_fail (flow >= 0 && power > 0 && speed >= 0, 0);
  return flow * speed * speed / 2 / (60000 * power);
}

const OxShotSize *
ox_abrasive_sizes (guint *n)
{
  *n = G_N_ELEMENTS (sizes);
  return sizes;
}

const OxShotSize *
ox_abrasive_find_size (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    if (g_str_equal (sizes[i].id, id))
      return &sizes[i];
  return NULL;
}

static gboolean
is_usual (const OxShotSize *size, int csp)
{
  return size->usual_csp_low > 0 && csp >= size->usual_csp_low && csp <= size->usual_csp_high;
}

const OxShotSize *
ox_abrasive_usual (int csp)
{
  const OxShotSize *first = ox_abrasive_find_size ("S330");
  if (is_usual (first, csp))
    return first;
  for (guint i = G_N_ELEMENTS (sizes); i-- > 0;)
    if (is_usual (&sizes[i], csp))
      return &sizes[i];
  return NULL;
}

double
ox_abrasive_opening_mm (guint number)
{
  return number / 10000.0 * 25.4;
}
