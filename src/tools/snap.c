/* Oxturn: tools/snap - where a pointer that is near something is held, and why.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/snap.h"

#include <glib/gi18n-lib.h>

#define MIN_STEP_PX 6.0

double
ox_snap_step (OxUnits units, double px_per_m)
{
  static const double metric[] = { 0.01, 0.05, 0.1, 0.5, 1, 5, 10, 50, 100, 500, 1000 };
  static const double imperial[] = { 0.0254, 0.0762, 0.1524, 0.3048, 1.524, 3.048, 15.24, 30.48, 152.4, 304.8, 1524 };
  const double *steps = units == OX_UNITS_FEET ? imperial : metric;
  guint i = 0;

  while (i + 1 < G_N_ELEMENTS (metric) && steps[i] * px_per_m < MIN_STEP_PX)
    i++;
  return steps[i];
}

const char *
ox_snap_reason (OxSnapKind kind)
{
  switch (kind)
    {
    case OX_SNAP_STEP:
      return _ ("step of 15 degrees");
    case OX_SNAP_CORNER:
      return _ ("corner");
    case OX_SNAP_INTERSECTION:
      return _ ("intersection");
    case OX_SNAP_MIDDLE:
      return _ ("middle");
    case OX_SNAP_PERPENDICULAR:
      return _ ("perpendicular");
    case OX_SNAP_SQUARE_BOTH:
      return _ ("square, in line");
    case OX_SNAP_SQUARE:
      return _ ("square");
    case OX_SNAP_IN_LINE:
      return _ ("in line");
    case OX_SNAP_SIDE:
      return _ ("on a side");
    case OX_SNAP_GRID:
    case OX_SNAP_NONE:
      break;
    }
  return "";
}

/* --- Corners and sides of what is there --- */

typedef struct
{
  OxPoint a, b;
} Side;

typedef struct
{
  OxPoint at;
  double radius;
  double corner_distance, side_distance; /* of the best so far, INFINITY for none */
  OxPoint corner, side;
  OxPoint side_ends[2];
  GArray *near; /* of Side, all within the radius, in the order of the job */
} Search;

static void
search_corner (Search *search, OxPoint corner)
{
  double distance = ox_point_distance (search->at, corner);

  if (distance > search->radius || distance >= search->corner_distance)
    return;
  search->corner_distance = distance;
  search->corner = corner;
}

static void
search_side (Search *search, OxPoint a, OxPoint b)
{
  OxPoint nearest;
  double distance = ox_point_segment_distance (search->at, a, b, &nearest);
  Side side = { a, b };

  if (distance > search->radius)
    return;
  g_array_append_val (search->near, side);
  if (distance >= search->side_distance)
    return;
  search->side_distance = distance;
  search->side = nearest;
  search->side_ends[0] = a;
  search->side_ends[1] = b;
}

static void
search_ring (Search *search, const OxRing *ring)
{
  OxBox box = ox_ring_box (ring);

  if (search->at.x < box.x0 - search->radius || search->at.x > box.x1 + search->radius
      || search->at.y < box.y0 - search->radius || search->at.y > box.y1 + search->radius)
    return;
  for (guint i = 0; i < ring->n; i++)
    {
      search_corner (search, ring->points[i]);
      search_side (search, ring->points[i], ring->points[(i + 1) % ring->n]);
    }
}

static void
search_joint (Search *search, const OxJoint *joint)
{
  for (guint i = 0; i < joint->n; i++)
    {
      search_corner (search, joint->points[i]);
      if (i + 1 < joint->n)
        search_side (search, joint->points[i], joint->points[i + 1]);
    }
}

static void
search_job (Search *search, const OxJob *job, const char *skip_id)
{
  for (guint i = 0; i < job->n_rooms; i++)
    if (g_strcmp0 (job->rooms[i]->id, skip_id) != 0)
      search_ring (search, job->rooms[i]->ring);
  for (guint i = 0; i < job->n_obstacles; i++)
    if (g_strcmp0 (job->obstacles[i]->id, skip_id) != 0 && job->obstacles[i]->shape.kind != OX_SHAPE_CIRCLE)
      search_ring (search, job->obstacles[i]->shape.ring);
  for (guint i = 0; i < job->n_conditions; i++)
    if (g_strcmp0 (job->conditions[i]->id, skip_id) != 0)
      search_ring (search, job->conditions[i]->ring);
  for (guint i = 0; i < job->n_excluded; i++)
    if (g_strcmp0 (job->excluded[i]->id, skip_id) != 0)
      search_ring (search, job->excluded[i]->ring);
  for (guint i = 0; i < job->n_joints; i++)
    if (g_strcmp0 (job->joints[i]->id, skip_id) != 0)
      search_joint (search, job->joints[i]);
}

static gboolean
within (const Search *search, OxPoint p, double *best)
{
  double distance = ox_point_distance (search->at, p);

  if (distance > search->radius || distance >= *best)
    return FALSE;
  *best = distance;
  return TRUE;
}

static gboolean
take_intersection (OxSnap *snap, const Search *search)
{
  double best = INFINITY;

  for (guint i = 0; i < search->near->len; i++)
    for (guint k = i + 1; k < search->near->len; k++)
      {
        Side s = g_array_index (search->near, Side, i);
        Side t = g_array_index (search->near, Side, k);
        OxPoint u = ox_point_sub (s.b, s.a);
        OxPoint v = ox_point_sub (t.b, t.a);
        double cross = ox_point_cross (u, v);
        OxPoint meet;

        if (fabs (cross) < 1e-9 || !ox_segments_cross (s.a, s.b, t.a, t.b))
          continue;
        meet = ox_point_add (s.a, ox_point_scale (u, ox_point_cross (ox_point_sub (t.a, s.a), v) / cross));
        if (within (search, meet, &best))
          *snap = (OxSnap){ .kind = OX_SNAP_INTERSECTION, .at = meet };
      }
  return isfinite (best);
}

static gboolean
take_middle (OxSnap *snap, const Search *search)
{
  double best = INFINITY;

  for (guint i = 0; i < search->near->len; i++)
    {
      Side side = g_array_index (search->near, Side, i);
      OxPoint middle = ox_point_scale (ox_point_add (side.a, side.b), 0.5);

      if (within (search, middle, &best))
        *snap = (OxSnap){ .kind = OX_SNAP_MIDDLE, .at = middle, .guided = TRUE, .guide = { side.a, side.b } };
    }
  return isfinite (best);
}

static gboolean
take_perpendicular (OxSnap *snap, const Search *search, OxPoint last)
{
  double best = INFINITY;

  for (guint i = 0; i < search->near->len; i++)
    {
      Side side = g_array_index (search->near, Side, i);
      OxPoint along = ox_point_sub (side.b, side.a);
      double k = ox_point_dot (ox_point_sub (last, side.a), along) / ox_point_dot (along, along);
      OxPoint foot = ox_point_add (side.a, ox_point_scale (along, k));

      if (k < 0 || k > 1 || ox_point_distance (foot, last) < OX_GRID || !within (search, foot, &best))
        continue;
      *snap = (OxSnap){ .kind = OX_SNAP_PERPENDICULAR, .at = foot, .guided = TRUE, .guide = { last, foot } };
    }
  return isfinite (best);
}

/* --- Right angles --- */

/* The point of the ray from @last along @direction (a unit vector, either way) next to @at, its length on the step. */
static OxPoint
along (OxPoint last, OxPoint direction, OxPoint at, double step)
{
  double length = ox_point_dot (ox_point_sub (at, last), direction);

  return ox_point_add (last, ox_point_scale (direction, round (length / step) * step));
}

static gboolean
take_ray (OxSnap *snap, OxPoint last, OxPoint direction, OxPoint at, double radius, double step)
{
  double off = fabs (ox_point_cross (direction, ox_point_sub (at, last)));

  if (off > radius)
    return FALSE;
  *snap = (OxSnap){ .kind = OX_SNAP_SQUARE, .at = along (last, direction, at, step), .guided = TRUE };
  snap->guide[0] = last;
  snap->guide[1] = snap->at;
  return TRUE;
}

/* Where the ray meets the axis through the first corner: the place from which the outline closes squarely. */
static gboolean
take_both (OxSnap *snap, OxPoint first, OxPoint last, OxPoint at, double radius)
{
  OxPoint direction = ox_point_sub (snap->guide[1], last);
  double length = hypot (direction.x, direction.y);
  OxPoint meet;

  if (length < OX_GRID)
    return FALSE;
  if (fabs (direction.x) > fabs (direction.y))
    meet = (OxPoint){ first.x, last.y + direction.y * (first.x - last.x) / direction.x };
  else
    meet = (OxPoint){ last.x + direction.x * (first.y - last.y) / direction.y, first.y };
  if (ox_point_distance (meet, at) > radius || ox_point_distance (meet, last) < OX_GRID)
    return FALSE;
  snap->kind = OX_SNAP_SQUARE_BOTH;
  snap->at = meet;
  snap->guide[0] = first;
  snap->guide[1] = meet;
  return TRUE;
}

static gboolean
take_square (OxSnap *snap, OxPoint at, const OxSnapOptions *options, double radius, double step)
{
  OxPoint last = *options->last;
  OxPoint directions[4] = { { 1, 0 }, { 0, 1 } };
  guint n = 2;

  if (options->before != NULL && ox_point_distance (*options->before, last) > OX_GRID)
    {
      OxPoint side
          = ox_point_scale (ox_point_sub (last, *options->before), 1 / ox_point_distance (*options->before, last));

      directions[n++] = side;
      directions[n++] = (OxPoint){ -side.y, side.x };
    }
  for (guint i = 0; i < n; i++)
    if (take_ray (snap, last, directions[i], at, radius, step))
      {
        if (options->first != NULL)
          take_both (snap, *options->first, last, at, radius);
        return TRUE;
      }
  return FALSE;
}

static gboolean
take_in_line (OxSnap *snap, OxPoint at, OxPoint first, double radius, double step)
{
  if (fabs (at.x - first.x) <= radius)
    *snap = (OxSnap){ .at = { first.x, round (at.y / step) * step } };
  else if (fabs (at.y - first.y) <= radius)
    *snap = (OxSnap){ .at = { round (at.x / step) * step, first.y } };
  else
    return FALSE;
  snap->kind = OX_SNAP_IN_LINE;
  snap->guided = TRUE;
  snap->guide[0] = first;
  snap->guide[1] = snap->at;
  return TRUE;
}

static OxSnap
take_step (OxPoint at, OxPoint last, double step)
{
  double turn = round (atan2 (at.y - last.y, at.x - last.x) * 12 / G_PI) * G_PI / 12;
  OxSnap snap = { .kind = OX_SNAP_STEP, .guided = TRUE };

  snap.at = along (last, (OxPoint){ cos (turn), sin (turn) }, at, step);
  snap.guide[0] = last;
  snap.guide[1] = snap.at;
  return snap;
}

static OxSnap
take_nearest (const Search *search, const OxSnapOptions *options, double step)
{
  OxPoint at = search->at;
  OxSnap snap = { .kind = OX_SNAP_NONE, .at = at };
  OxSnap square = { .kind = OX_SNAP_NONE };
  gboolean is_square = options->last != NULL && take_square (&square, at, options, search->radius, step);

  if (isfinite (search->corner_distance))
    return (OxSnap){ .kind = OX_SNAP_CORNER, .at = search->corner };
  if (take_intersection (&snap, search) || take_middle (&snap, search))
    return snap;
  if (is_square && square.kind == OX_SNAP_SQUARE_BOTH)
    return square;
  if (options->last != NULL && take_perpendicular (&snap, search, *options->last))
    return snap;
  if (is_square)
    return square;
  if (options->first != NULL && take_in_line (&snap, at, *options->first, search->radius, step))
    return snap;
  if (isfinite (search->side_distance))
    return (OxSnap){ .kind = OX_SNAP_SIDE,
                     .at = search->side,
                     .guided = TRUE,
                     .guide = { search->side_ends[0], search->side_ends[1] } };
  return (OxSnap){ .kind = OX_SNAP_GRID, .at = { round (at.x / step) * step, round (at.y / step) * step } };
}

OxSnap
ox_snap_find (const OxJob *job, OxPoint at, const OxSnapOptions *options)
{
  g_autoptr (GArray) near = g_array_new (FALSE, FALSE, sizeof (Side));
  double step = ox_snap_step (job->units, options->px_per_m);
  Search search = { .at = at,
                    .radius = OX_SNAP_RADIUS_PX / options->px_per_m,
                    .corner_distance = INFINITY,
                    .side_distance = INFINITY,
                    .near = near };
  OxSnap snap = { .kind = OX_SNAP_NONE, .at = at };

  if (options->steps && !options->free && options->last != NULL)
    snap = take_step (at, *options->last, step);
  else if (!options->free)
    {
      search_job (&search, job, options->skip_id);
      snap = take_nearest (&search, options, step);
    }
  snap.at = ox_point_snap (snap.at);
  return snap;
}
