/* Oxturn: plan/limit - the reachable limit R*.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/limit.h"
#include "base/share.h"
#include "plan/shadow.h"

#define EASE 0.0001         /* m off each side of the body: on floor that fits it exactly the places would have no area, and be lost */
#define FAN 24              /* headings of the fan: every 15 degrees */
#define SAME_HEADING 0.0017 /* 0.1 degree */
#define MAX_HEADINGS 120
#define LEAST_SIDE 0.3      /* m: sides shorter than this give no heading of their own */

static void
add_heading (GArray *headings, double angle)
{
  if (headings->len >= MAX_HEADINGS)
    return;
  for (guint i = 0; i < headings->len; i++)
    if (fabs (remainder (g_array_index (headings, double, i) - angle, 2 * G_PI)) < SAME_HEADING)
      return;
  g_array_append_val (headings, angle);
}

static GArray *
list_headings (const OxRegion *travel)
{
  GArray *headings = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint r = 0; r < travel->n_rings; r++)
    for (guint i = 0, n = travel->rings[r].n; i < n; i++)
      {
        const OxPoint *points = travel->points + travel->rings[r].start;
        OxPoint d = ox_point_sub (points[(i + 1) % n], points[i]);
        if (hypot (d.x, d.y) < LEAST_SIDE)
          continue;
        for (guint quarter = 0; quarter < 4; quarter++)
          add_heading (headings, atan2 (d.y, d.x) + quarter * G_PI / 2);
      }
  for (guint i = 0; i < FAN; i++)
    add_heading (headings, i * 2 * G_PI / FAN);
  return headings;
}

typedef struct
{
  const OxMachine *machine;
  const OxRun *run;
  const GArray *headings;
  const OxRegion *open;   /* travel with the obstacles that stand alone filled */
  GPtrArray *reached;     /* OxRegion, one a heading; NULL where cancelled */
} Reaching;

static void
drop_region (gpointer region)
{
  if (region != NULL)
    ox_region_unref (region);
}

static void
reach_one (guint i, gpointer data)
{
  const Reaching *reaching = data;
  const OxMachine *m = reaching->machine;
  double half = m->blast_length / 2, across = m->blast_width / 2, angle = g_array_index (reaching->headings, double, i);
  if (ox_run_cancelled (reaching->run, NULL))
    return;
  g_autoptr (OxRegion) places = ox_region_erode_rectangle (reaching->open, m->rear, m->front + m->wall_gap, m->right + m->wall_gap - EASE,
                                                           m->left + m->wall_gap - EASE, angle);
  g_ptr_array_index (reaching->reached, i) = ox_region_dilate_rectangle (places, half, half, across - EASE, across - EASE, angle);
}

/* What no heading reaches round the obstacles that stand alone. */
static OxRegion *
shadows (const OxRegion *travel, const gboolean *lone, const OxMachine *machine, const GArray *headings)
{
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_region_unref);
  for (guint r = 0; r < travel->n_rings; r++)
    if (lone[r])
      g_ptr_array_add (list, ox_shadow_new (travel->points + travel->rings[r].start, travel->rings[r].n, machine, headings, EASE));
  return ox_region_union_many ((const OxRegion *const *) list->pdata, list->len);
}

OxRegion *
ox_limit_new (const OxFloor *floor, const OxMachine *machine, const OxRun *run)
{
  g_autoptr (GArray) headings = list_headings (floor->travel);
  g_autoptr (GPtrArray) reached = g_ptr_array_new_with_free_func (drop_region);
  g_autofree gboolean *lone = ox_shadow_lone (floor->travel, machine);
  g_autoptr (OxRegion) open = ox_region_fill_holes (floor->travel, lone);
  Reaching reaching = { machine, run, headings, open, reached };
  g_ptr_array_set_size (reached, (gint) headings->len);
  ox_share (headings->len, reach_one, &reaching);
  if (ox_run_cancelled (run, NULL))
    return NULL;
  g_autoptr (OxRegion) all = ox_region_union_many ((const OxRegion *const *) reached->pdata, reached->len);
  g_autoptr (OxRegion) dark = shadows (floor->travel, lone, machine, headings);
  g_autoptr (OxRegion) lit = ox_region_difference (floor->target, dark);
  return ox_region_intersection (all, lit);
}
