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

/* The number of the last coat that strips lay all over each room. */
static guint *
last_coats (const OxPlan *plan)
{
  guint *last = g_new0 (guint, plan->job->n_rooms + 1);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      if (strip->coat <= plan->job->rooms[strip->room]->coats)
        last[strip->room] = MAX (last[strip->room], strip->coat);
    }
  return last;
}

GArray *
ox_spots_of (const OxPlan *plan)
{
  g_autofree guint *last = last_coats (plan);
  GArray *spots = g_array_new (FALSE, FALSE, sizeof (OxSpot));
  guint n = count (plan);
  double all = 0, passed = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].coat == last[plan->strips[i].room])
      all += ox_strip_length (&plan->strips[i]);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      double length = strip->coat == last[strip->room] ? ox_strip_length (strip) : 0, next;
      if (length <= 0)
        continue;
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
