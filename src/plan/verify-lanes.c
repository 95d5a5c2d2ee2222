/* Oxturn: plan/verify-lanes - strips beside strips: overlap, the even grid.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/verify-private.h"

#define PARALLEL_SIN 0.001745 /* of 0.1 degree */
#define SAME_LANE (2 * OX_GRID) /* m across: strips of one chalk line, whose ends are rounded; what lies farther aside hides what is behind it */
#define LOOK_ACROSS 3         /* blast widths */
#define CHALK_TOLERANCE 0.001 /* m across */

typedef struct
{
  guint index;
  double y; /* of its middle, in the axes of the strip looked at */
  OxPiece x;
} Neighbour;

static int
compare_neighbours (gconstpointer a, gconstpointer b)
{
  const Neighbour *p = a, *q = b;
  double dp = fabs (p->y), dq = fabs (q->y);
  if (dp != dq)
    return dp < dq ? -1 : 1;
  return p->index < q->index ? -1 : p->index > q->index;
}

/* Parallel strips of the same room and coat on one side of strip @index (@sign: +1 left, -1 right), nearest first. */
static GArray *
neighbours_of (OxVerify *verify, guint index, int sign)
{
  const OxVerifyStrip *s = &verify->strips[index];
  double w = s->strip->width;
  OxBox around = { s->cover.x0, -LOOK_ACROSS * w, s->cover.x1, LOOK_ACROSS * w };
  GArray *list = g_array_new (FALSE, FALSE, sizeof (Neighbour));
  ox_box_grid_query (verify->strip_grid, ox_axes_box (s->axes, around), verify->near);
  for (guint k = 0; k < verify->near->len; k++)
    {
      guint j = g_array_index (verify->near, guint, k);
      const OxVerifyStrip *o = &verify->strips[j];
      if (j == index || o->strip->room != s->strip->room || o->strip->coat != s->strip->coat
          || fabs (ox_point_cross (s->axes.u, o->axes.u)) > PARALLEL_SIN)
        continue;
      OxPoint a = ox_axes_to (s->axes, ox_axes_from (o->axes, (OxPoint){ o->cover.x0, 0 }));
      OxPoint b = ox_axes_to (s->axes, ox_axes_from (o->axes, (OxPoint){ o->cover.x1, 0 }));
      OxPiece x = { MAX (MIN (a.x, b.x), s->cover.x0), MIN (MAX (a.x, b.x), s->cover.x1) };
      double y = a.y + ((x.a + x.b) / 2 - a.x) / (b.x - a.x) * (b.y - a.y);
      Neighbour n = { j, y, x };
      if (x.a < x.b && sign * y > SAME_LANE && fabs (y) < LOOK_ACROSS * w)
        g_array_append_val (list, n);
    }
  g_array_sort (list, compare_neighbours);
  return list;
}

/* Whether a strip along the middle of an uncovered piece could have been run, one way or the other. */
static gboolean
strip_fits (OxVerify *verify, OxAxes axes, double y, OxPiece piece)
{
  const OxMachine *m = verify->machine;
  double half = m->blast_length / 2, gap = m->wall_gap;
  OxPoint at;
  OxBox ahead = { piece.a + half - m->rear, y - m->right - gap, piece.b - half + m->front + gap, y + m->left + gap };
  OxBox back = { piece.a + half - m->front - gap, y - m->left - gap, piece.b - half + m->rear, y + m->right + gap };
  return ox_bounds_holds_box (verify->travel_bounds, axes, ahead, &at)
         || ox_bounds_holds_box (verify->travel_bounds, axes, back, &at);
}

/* Two neighbours that do not touch over @x of strip @index: the floor between them is blasted by strips across, is no
 * target, or cannot be run along; anything else is a slot or a lane forgotten. */
static void
judge_gap (OxVerify *verify, guint index, const Neighbour *n, OxPiece x)
{
  const OxVerifyStrip *s = &verify->strips[index];
  double w = s->strip->width, gap = fabs (n->y) - w, middle = n->y / 2;
  double least = 2 * verify->machine->min_strip + verify->machine->blast_length;
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (OxPiece));
  ox_bounds_cut (ox_verify_asking (verify, s->strip), s->axes, middle, x, pieces);
  ox_verify_subtract_cover (verify, s->strip->coat, s->axes, middle, pieces);
  for (guint k = 0; k < pieces->len; k++)
    {
      OxPiece piece = g_array_index (pieces, OxPiece, k);
      double length = piece.b - piece.a;
      OxPoint at = ox_axes_from (s->axes, (OxPoint){ (piece.a + piece.b) / 2, middle });
      if (gap >= w / 2 && length >= least && strip_fits (verify, s->axes, middle, piece))
        ox_verify_blame (verify, OX_RULE_OVERLAP, s->strip->order, at,
                         "%.3f m of floor that a strip could run along lie open towards strip %u", gap,
                         verify->strips[n->index].strip->order);
    }
}

gboolean
ox_verify_joins (OxVerify *verify, guint index)
{
  const OxMachine *m = verify->machine;
  g_autoptr (GArray) left = neighbours_of (verify, index, 1);
  g_autoptr (GArray) right = neighbours_of (verify, index, -1);
  for (guint i = 0; i < left->len; i++)
    for (guint k = 0; k < right->len; k++)
      {
        const Neighbour *a = &g_array_index (left, Neighbour, i), *b = &g_array_index (right, Neighbour, k);
        double apart = a->y - b->y;
        if (MIN (a->x.b, b->x.b) - MAX (a->x.a, b->x.a) > m->blast_length
            && apart > m->blast_width - m->min_overlap + OX_VERIFY_OVERLAP_TOLERANCE && apart < 1.25 * m->blast_width)
          return TRUE;
      }
  return FALSE;
}

static void
judge_pair (OxVerify *verify, guint index, const Neighbour *n, OxPiece x)
{
  const OxVerifyStrip *s = &verify->strips[index];
  double overlap = s->strip->width - fabs (n->y);
  if (n->index < index)
    return; /* each pair is met from both sides */
  if (n->index < verify->plan->n_kept || (index < verify->plan->n_kept && overlap < 0))
    return;
  if (overlap < 0)
    judge_gap (verify, index, n, x);
  else if (overlap < verify->machine->min_overlap - OX_VERIFY_OVERLAP_TOLERANCE)
    ox_verify_blame (verify, OX_RULE_OVERLAP, s->strip->order, ox_axes_from (s->axes, (OxPoint){ x.a, n->y / 2 }),
                     "overlaps strip %u by %.4f m, %.4f m is the least", verify->strips[n->index].strip->order, overlap,
                     verify->machine->min_overlap);
}

/* Sweeps away from the strip: the nearest neighbour hides what lies behind it. */
static void
judge_side (OxVerify *verify, guint index, int sign)
{
  const OxVerifyStrip *s = &verify->strips[index];
  g_autoptr (GArray) neighbours = neighbours_of (verify, index, sign);
  g_autoptr (GArray) open = g_array_new (FALSE, FALSE, sizeof (OxPiece));
  OxPiece all = { s->cover.x0, s->cover.x1 };
  g_array_append_val (open, all);
  for (guint k = 0; k < neighbours->len && open->len > 0; k++)
    {
      const Neighbour *n = &g_array_index (neighbours, Neighbour, k);
      for (guint i = 0; i < open->len; i++)
        {
          OxPiece o = g_array_index (open, OxPiece, i);
          OxPiece both = { MAX (o.a, n->x.a), MIN (o.b, n->x.b) };
          if (both.b - both.a > verify->machine->blast_length)
            judge_pair (verify, index, n, both);
        }
      ox_pieces_subtract (open, n->x);
    }
}

/* Rule 4 of the grid: no wider than the overlap allows, and as few lanes as do. */
static void
judge_spacing (OxVerify *verify, const OxChalk *chalk, OxPoint at)
{
  const OxMachine *m = verify->machine;
  double pitch = m->blast_width - m->min_overlap, across = chalk->spacing * (chalk->lanes - 1);
  if (chalk->lanes < 2)
    return;
  if (chalk->spacing > pitch + OX_VERIFY_OVERLAP_TOLERANCE)
    ox_verify_blame (verify, OX_RULE_OVERLAP, 0, at, "lanes %.4f m apart, %.4f m is the most", chalk->spacing, pitch);
  double fewest = ceil (across / pitch - 1e-6) + 1;
  if (chalk->lanes > fewest)
    ox_verify_blame (verify, OX_RULE_OVERLAP, 0, at, "%u lanes where %.0f do", chalk->lanes, fewest);
}

/* Main strips stand on the chalk lines of their room's table, which are measured from the middle of the base wall into
 * the room. */
static void
judge_chalk (OxVerify *verify, const OxChalk *chalk)
{
  const OxRing *ring = verify->plan->job->rooms[chalk->room]->ring;
  OxPoint a = ring->points[chalk->base_side], b = ring->points[(chalk->base_side + 1) % ring->n];
  OxPoint u = { cos (chalk->heading), sin (chalk->heading) };
  OxPoint base = ox_point_scale (ox_point_add (a, b), 0.5);
  double inward = ox_ring_area (ring) > 0 ? 1 : -1;
  if (ox_point_dot (ox_point_sub (b, a), u) < 0)
    inward = -inward;
  judge_spacing (verify, chalk, a);
  for (guint i = verify->plan->n_kept; i < verify->plan->n_strips; i++)
    {
      const OxStrip *strip = &verify->plan->strips[i];
      /* What is crosswise elsewhere in the room need not lie on the lines of the other wing. */
      if (strip->room != chalk->room || strip->coat != chalk->coat || strip->kind != OX_STRIP_MAIN || chalk->is_wing)
        continue;
      if (fabs (ox_point_cross (u, verify->strips[i].axes.u)) > PARALLEL_SIN)
        {
          ox_verify_blame (verify, OX_RULE_OVERLAP, strip->order, strip->a, "a main strip across the chalk lines");
          continue;
        }
      OxPoint middle = ox_point_scale (ox_point_add (strip->a, strip->b), 0.5);
      double across = inward * ox_point_cross (u, ox_point_sub (middle, base)) - chalk->first_distance;
      double lane = chalk->spacing > 0 ? CLAMP (round (across / chalk->spacing), 0, chalk->lanes - 1.0) : 0;
      if (fabs (across - lane * chalk->spacing) > CHALK_TOLERANCE)
        ox_verify_blame (verify, OX_RULE_OVERLAP, strip->order, strip->a, "%.4f m off its chalk line",
                         across - lane * chalk->spacing);
    }
}

void
ox_verify_lanes (OxVerify *verify)
{
  for (guint i = 0; i < verify->plan->n_strips; i++)
    {
      judge_side (verify, i, 1);
      judge_side (verify, i, -1);
    }
  for (guint i = 0; i < verify->plan->n_chalks; i++)
    judge_chalk (verify, &verify->plan->chalks[i]);
}
