/* Oxturn: plan/shadow - floor round an obstacle that stands alone which no heading reaches.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/shadow.h"

#define APART 0.01 /* m, more than bodies on both sides need */

/* The farthest that the body gets from the middle of its pattern. */
static double
body_reach (const OxMachine *m)
{
  return hypot (MAX (m->rear, m->front + m->wall_gap), MAX (m->left, m->right) + m->wall_gap);
}

static gboolean
is_convex_hole (const OxPoint *hole, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      OxPoint in = ox_point_sub (hole[(i + 1) % n], hole[i]), out = ox_point_sub (hole[(i + 2) % n], hole[(i + 1) % n]);
      if (ox_point_cross (in, out) > 0)
        return FALSE;
    }
  return TRUE;
}

static OxBox
ring_box (const OxRegion *region, guint r)
{
  OxBox box = OX_BOX_EMPTY;
  for (guint i = 0; i < region->rings[r].n; i++)
    ox_box_add (&box, region->points[region->rings[r].start + i]);
  return box;
}

/* Whether all sides of ring @r keep @distance off the circle about @middle; a look at the ring's box saves most of the work. */
static gboolean
keeps_off (const OxRegion *region, guint r, OxBox box, OxPoint middle, double distance)
{
  const OxPoint *points = region->points + region->rings[r].start;
  guint n = region->rings[r].n;
  if (middle.x + distance < box.x0 || middle.x - distance > box.x1 || middle.y + distance < box.y0 || middle.y - distance > box.y1)
    return TRUE;
  for (guint i = 0; i < n; i++)
    if (ox_point_segment_distance (middle, points[i], points[(i + 1) % n], NULL) < distance)
      return FALSE;
  return TRUE;
}

gboolean *
ox_shadow_lone (const OxRegion *travel, const OxMachine *machine)
{
  gboolean *lone = g_new0 (gboolean, travel->n_rings + 1);
  g_autofree OxBox *boxes = g_new (OxBox, travel->n_rings + 1);
  for (guint r = 0; r < travel->n_rings; r++)
    boxes[r] = ring_box (travel, r);
  for (guint r = 0; r < travel->n_rings; r++)
    {
      OxPoint middle = { (boxes[r].x0 + boxes[r].x1) / 2, (boxes[r].y0 + boxes[r].y1) / 2 };
      double distance = hypot (boxes[r].x1 - boxes[r].x0, boxes[r].y1 - boxes[r].y0) / 2 + 2 * body_reach (machine) + APART;
      lone[r] = travel->rings[r].hole && is_convex_hole (travel->points + travel->rings[r].start, travel->rings[r].n);
      for (guint k = 0; k < travel->n_rings && lone[r]; k++)
        lone[r] = k == r || keeps_off (travel, k, boxes[k], middle, distance);
    }
  return lone;
}

static double
extent (const OxPoint *points, guint n, OxPoint normal)
{
  double most = -INFINITY;
  for (guint i = 0; i < n; i++)
    most = MAX (most, ox_point_dot (points[i], normal));
  return most;
}

static void
rectangle (OxPoint out[4], const double extents[4], double c, double s)
{
  double rear = extents[0], front = extents[1], right = extents[2], left = extents[3];
  const OxPoint own[4] = { { -rear, -right }, { front, -right }, { front, left }, { -rear, left } };
  for (guint k = 0; k < 4; k++)
    out[k] = ox_point_turn (own[k], c, s);
}

/* How far the reflected body, less the pattern, reaches along @normal while it heads @angle. */
static double
keep_out (const OxMachine *m, double angle, double ease, OxPoint normal)
{
  OxPoint body[4], pattern[4];
  double c = cos (angle), s = sin (angle), half = m->blast_length / 2, across = m->blast_width / 2 - ease;
  rectangle (body, (const double[]) { m->front + m->wall_gap, m->rear, m->left + m->wall_gap - ease, m->right + m->wall_gap - ease }, c, s);
  rectangle (pattern, (const double[]) { half, half, across, across }, c, s);
  return extent (body, 4, normal) - extent (pattern, 4, normal);
}

/* Keeps of the convex polygon what lies at or within @most along @normal. */
static void
cut (GArray **polygon, OxPoint normal, double most)
{
  GArray *kept = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  guint n = (*polygon)->len;
  for (guint i = 0; i < n; i++)
    {
      OxPoint a = g_array_index (*polygon, OxPoint, i), b = g_array_index (*polygon, OxPoint, (i + 1) % n);
      double p = ox_point_dot (a, normal) - most, q = ox_point_dot (b, normal) - most;
      if (p <= 0)
        g_array_append_val (kept, a);
      if ((p < 0 && q > 0) || (p > 0 && q < 0))
        {
          OxPoint at = ox_point_add (a, ox_point_scale (ox_point_sub (b, a), p / (p - q)));
          g_array_append_val (kept, at);
        }
    }
  g_array_unref (*polygon);
  *polygon = kept;
}

OxRegion *
ox_shadow_new (const OxPoint *hole, guint n, const OxMachine *machine, const GArray *headings, double ease)
{
  double far = body_reach (machine);
  OxBox box = OX_BOX_EMPTY;
  for (guint i = 0; i < n; i++)
    ox_box_add (&box, hole[i]);
  OxPoint corners[4] = { { box.x0 - far, box.y0 - far }, { box.x1 + far, box.y0 - far }, { box.x1 + far, box.y1 + far }, { box.x0 - far, box.y1 + far } };
  GArray *polygon = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  g_array_append_vals (polygon, corners, 4);
  for (guint h = 0; h < headings->len; h++)
    for (guint k = 0; k < n + 4; k++)
      {
        double angle = g_array_index (headings, double, h), turn = angle + ((double) k - n) * G_PI / 2;
        OxPoint normal = { cos (turn), sin (turn) };
        if (k < n)
          {
            OxPoint side = ox_point_sub (hole[(k + 1) % n], hole[k]);
            normal = ox_point_scale ((OxPoint) { -side.y, side.x }, 1 / hypot (side.x, side.y)); /* outward: the floor is on the left */
          }
        cut (&polygon, normal, extent (hole, n, normal) + keep_out (machine, angle, ease, normal));
      }
  OxRegion *shadow = polygon->len >= 3 ? ox_region_new_points ((const OxPoint *) (void *) polygon->data, polygon->len) : ox_region_new_empty ();
  g_array_unref (polygon);
  return shadow;
}
