/* Oxturn: estimate/spots
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/spots.h"
#include "trade/spots.h"

static guint
count (const OxPlan *plan)
{
  guint n;
  const OxSpotRule *rules = ox_spots_rules (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (rules[i].id, "profile"))
      return ox_spots_count (&rules[i], plan->totals.target_m2);
  return 0;
}

GArray *
ox_spots_of (const OxPlan *plan)
{
  GArray *spots = g_array_new (FALSE, FALSE, sizeof (OxSpot));
  guint n = count (plan);
  double all = 0, passed = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    all += ox_strip_length (&plan->strips[i]);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      double length = ox_strip_length (strip), next;
      while (spots->len < n && (next = (spots->len + 0.5) * all / n) <= passed + length)
        {
          OxPoint along = ox_point_scale (ox_point_sub (strip->b, strip->a), CLAMP ((next - passed) / length, 0, 1));
          g_array_append_val (spots,
                              ((OxSpot){ strip->room, strip->order, ox_point_snap (ox_point_add (strip->a, along)) }));
        }
      passed += length;
    }
  return spots;
}
