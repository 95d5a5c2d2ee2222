/* Oxturn: geometry/ring-simple - whether an outline crosses or touches itself.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sides that follow each other lie near each other. A binary tree of boxes over the sides in their order is therefore a
 * good one, and comparing it with itself visits few pairs of sides that do not meet:
 *
 *      boxes[1]            all sides
 *      boxes[2], boxes[3]  first half, second half
 *      boxes[leaves + i]   side i
 */
#include "geometry/ring.h"

typedef struct
{
  const OxRing *ring;
  guint leaves; /* a power of two, at least the number of sides */
  OxBox *boxes; /* 2 * leaves of them */
} SideTree;

static OxPoint
corner (const OxRing *ring, guint i)
{
  return ring->points[i < ring->n ? i : i - ring->n];
}

static gboolean
boxes_meet (OxBox a, OxBox b)
{
  return a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;
}

static void
side_tree_init (SideTree *tree, const OxRing *ring)
{
  tree->ring = ring;
  for (tree->leaves = 1; tree->leaves < ring->n;)
    tree->leaves *= 2;
  tree->boxes = g_new (OxBox, 2 * (gsize) tree->leaves);
  for (guint i = 0; i < tree->leaves; i++)
    {
      OxBox *box = &tree->boxes[tree->leaves + i];
      *box = OX_BOX_EMPTY;
      if (i < ring->n)
        {
          ox_box_add (box, corner (ring, i));
          ox_box_add (box, corner (ring, i + 1));
        }
    }
  for (guint i = tree->leaves - 1; i >= 1; i--)
    {
      OxBox a = tree->boxes[2 * i], b = tree->boxes[2 * i + 1];
      tree->boxes[i] = (OxBox){ MIN (a.x0, b.x0), MIN (a.y0, b.y0), MAX (a.x1, b.x1), MAX (a.y1, b.y1) };
    }
}

/* Where the sides @a-@b and @c-@d, known to share a point, meet; to rounding. */
static OxPoint
meeting_point (OxPoint a, OxPoint b, OxPoint c, OxPoint d)
{
  if (ox_point_orient (a, b, c) == 0 && ox_segments_cross (a, b, c, c))
    return c;
  if (ox_point_orient (a, b, d) == 0 && ox_segments_cross (a, b, d, d))
    return d;
  OxPoint along = ox_point_sub (b, a);
  OxPoint across = ox_point_sub (d, c);
  double turn = ox_point_cross (along, across);
  if (turn == 0)
    return a;
  return ox_point_add (a, ox_point_scale (along, ox_point_cross (ox_point_sub (c, a), across) / turn));
}

static gboolean
sides_meet (const SideTree *tree, guint i, guint j, OxPoint *where)
{
  const OxRing *ring = tree->ring;
  guint gap = i < j ? j - i : i - j;
  /* Neighbours share their corner; what else they could share is a spike, which corner_is_bad() finds. */
  if (gap <= 1 || gap == ring->n - 1)
    return FALSE;
  OxPoint a = corner (ring, i), b = corner (ring, i + 1);
  OxPoint c = corner (ring, j), d = corner (ring, j + 1);
  if (!ox_segments_cross (a, b, c, d))
    return FALSE;
  *where = meeting_point (a, b, c, d);
  return TRUE;
}

/* Whether a side under node @a meets one under node @b, which is @a itself or stands on the same level. */
static gboolean
nodes_meet (const SideTree *tree, guint a, guint b, OxPoint *where)
{
  if (!boxes_meet (tree->boxes[a], tree->boxes[b]))
    return FALSE;
  if (a >= tree->leaves)
    return sides_meet (tree, a - tree->leaves, b - tree->leaves, where);
  return nodes_meet (tree, 2 * a, 2 * b, where) || nodes_meet (tree, 2 * a, 2 * b + 1, where)
         || (a != b && nodes_meet (tree, 2 * a + 1, 2 * b, where)) || nodes_meet (tree, 2 * a + 1, 2 * b + 1, where);
}

/* The whole-number arithmetic does not hold beyond this. */
static gboolean
is_on_floor (OxPoint p)
{
  return fabs (p.x) <= OX_COORD_MAX && fabs (p.y) <= OX_COORD_MAX;
}

/* A corner that repeats the one before it, or at which the outline turns back on itself. */
static gboolean
corner_is_bad (const OxRing *ring, guint i)
{
  OxPoint before = corner (ring, i + ring->n - 1), at = corner (ring, i), after = corner (ring, i + 1);
  if (at.x == before.x && at.y == before.y)
    return TRUE;
  return ox_point_orient (before, at, after) == 0
         && ox_point_dot (ox_point_sub (at, before), ox_point_sub (after, at)) < 0;
}

gboolean
ox_ring_is_simple (const OxRing *ring, OxPoint *where)
{
  OxPoint unused;
  if (!where)
    where = &unused;
  *where = ring->n > 0 ? ring->points[0] : (OxPoint){ 0, 0 };
  if (ring->n < 3)
    return FALSE;
  for (guint i = 0; i < ring->n; i++)
    {
      *where = ring->points[i];
      if (!is_on_floor (*where))
        return FALSE;
    }
  for (guint i = 0; i < ring->n; i++)
    {
      *where = ring->points[i];
      if (corner_is_bad (ring, i))
        return FALSE;
    }
  SideTree tree;
  side_tree_init (&tree, ring);
  gboolean meets = nodes_meet (&tree, 1, 1, where);
  g_free (tree.boxes);
  return !meets;
}
