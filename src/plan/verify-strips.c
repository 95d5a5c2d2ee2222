/* Oxturn: plan/verify-strips - each strip by itself: its body, its floor, its length, its use.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/verify-private.h"

#define SLABS 64
#define USELESS_SHARE 0.02 /* a strip that covers less new floor than this share of its own was laid for nothing */

static OxBox
shrunk (OxBox box)
{
  const double t = OX_VERIFY_BODY_TOLERANCE;
  return (OxBox){ box.x0 + t, box.y0 + t, box.x1 - t, box.y1 - t };
}

static void
judge_body (OxVerify *verify, const OxVerifyStrip *s)
{
  const OxMachine *m = verify->machine;
  OxBox body = { -m->rear, -m->right - m->wall_gap, s->length + m->front + m->wall_gap, m->left + m->wall_gap };
  OxPoint at;
  if (!ox_bounds_holds_box (verify->travel_bounds, s->axes, shrunk (body), &at))
    ox_verify_blame (verify, OX_RULE_BODY, s->strip->order, at, "the swept body leaves the floor it may stand on");
}

static void
judge_floor (OxVerify *verify, const OxVerifyStrip *s)
{
  OxPoint at;
  if (s->strip->coat < 1 || s->strip->coat > verify->n_coats)
    ox_verify_blame (verify, OX_RULE_TARGET, s->strip->order, s->strip->a, "nothing asks for coat %u", s->strip->coat);
  else if (!ox_bounds_holds_box (ox_verify_asking (verify, s->strip), s->axes, shrunk (s->cover), &at))
    ox_verify_blame (verify, OX_RULE_TARGET, s->strip->order, at, "floor outside the target of coat %u is blasted", s->strip->coat);
}

static void
judge_length (OxVerify *verify, const OxVerifyStrip *s)
{
  if (s->length < verify->machine->min_strip - OX_GRID)
    ox_verify_blame (verify, OX_RULE_SHORT, s->strip->order, s->strip->a, "%.4f m long, %.4f m is the least", s->length,
                     verify->machine->min_strip);
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return x < y ? -1 : x > y;
}

/* The corners of all strips around, in the axes of strip @index; four a strip. */
static GArray *
corners_around (OxVerify *verify, guint index)
{
  const OxVerifyStrip *s = &verify->strips[index];
  GArray *corners = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  ox_box_grid_query (verify->strip_grid, ox_axes_box (s->axes, s->cover), verify->near);
  for (guint k = 0; k < verify->near->len; k++)
    {
      guint j = g_array_index (verify->near, guint, k);
      if (j == index || verify->strips[j].strip->coat != s->strip->coat)
        continue;
      for (guint c = 0; c < 4; c++)
        {
          OxPoint p = ox_axes_to (s->axes, verify->strips[j].corners[c]);
          g_array_append_val (corners, p);
        }
    }
  return corners;
}

/* Heights at which what others cover changes its shape, and some in between for what lies at a slant; ascending. */
static GArray *
slab_heights (const OxVerifyStrip *s, const GArray *corners)
{
  GArray *ys = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint i = 0; i <= SLABS; i++)
    {
      double y = s->cover.y0 + (s->cover.y1 - s->cover.y0) * i / SLABS;
      g_array_append_val (ys, y);
    }
  for (guint i = 0; i < corners->len; i++)
    {
      double y = g_array_index (corners, OxPoint, i).y;
      if (y > s->cover.y0 && y < s->cover.y1)
        g_array_append_val (ys, y);
    }
  g_array_sort (ys, compare_doubles);
  return ys;
}

/* Cuts the strip into slabs along it; what is new in a slab is as long as on its middle line. Exact where the others
 * lie parallel or at right angles, to a part in SLABS where they do not. Stops as soon as @enough is found. */
static double
new_area (OxVerify *verify, guint index, double enough)
{
  const OxVerifyStrip *s = &verify->strips[index];
  g_autoptr (GArray) corners = corners_around (verify, index);
  g_autoptr (GArray) ys = slab_heights (s, corners);
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (OxPiece));
  double area = 0;
  for (guint i = 0; i + 1 < ys->len && area < enough; i++)
    {
      double y0 = g_array_index (ys, double, i), y1 = g_array_index (ys, double, i + 1);
      if (y1 - y0 < 1e-9)
        continue;
      OxPiece all = { s->cover.x0, s->cover.x1 }, piece;
      g_array_set_size (pieces, 0);
      g_array_append_val (pieces, all);
      for (guint k = 0; k + 3 < corners->len && pieces->len > 0; k += 4)
        if (ox_verify_cover_piece (&g_array_index (corners, OxPoint, k), (y0 + y1) / 2, &piece))
          ox_pieces_subtract (pieces, piece);
      for (guint k = 0; k < pieces->len; k++)
        area += (y1 - y0) * (g_array_index (pieces, OxPiece, k).b - g_array_index (pieces, OxPiece, k).a);
    }
  return area;
}

static void
judge_use (OxVerify *verify, guint index)
{
  const OxVerifyStrip *s = &verify->strips[index];
  double own = (s->cover.x1 - s->cover.x0) * (s->cover.y1 - s->cover.y0);
  if (new_area (verify, index, USELESS_SHARE * own) < USELESS_SHARE * own && !ox_verify_joins (verify, index))
    ox_verify_blame (verify, OX_RULE_SHORT, s->strip->order, s->strip->a, "others cover this strip already");
}

void
ox_verify_use (OxVerify *verify)
{
  for (guint i = verify->plan->n_kept; i < verify->plan->n_strips; i++)
    judge_use (verify, i);
}

void
ox_verify_strips (OxVerify *verify)
{
  for (guint i = verify->plan->n_kept; i < verify->plan->n_strips; i++)
    {
      judge_body (verify, &verify->strips[i]);
      judge_floor (verify, &verify->strips[i]);
      judge_length (verify, &verify->strips[i]);
      judge_use (verify, i);
    }
}
