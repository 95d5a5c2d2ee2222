/* Oxturn: plan/verify - what must hold for every plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/verify-private.h"

void
ox_breach_free (OxBreach *breach)
{
  if (breach == NULL)
    return;
  g_free (breach->text);
  g_free (breach);
}

void
ox_verify_blame (OxVerify *verify, OxRule rule, guint strip, OxPoint at, const char *format, ...)
{
  if (verify->breaches->len >= OX_VERIFY_MAX_BREACHES)
    return;
  va_list args;
  va_start (args, format);
  OxBreach *breach = g_new (OxBreach, 1);
  *breach = (OxBreach){ rule, strip, at, g_strdup_vprintf (format, args) };
  va_end (args);
  g_ptr_array_add (verify->breaches, breach);
}

gboolean
ox_verify_cover_piece (const OxPoint corners[4], double y, OxPiece *piece)
{
  *piece = (OxPiece){ INFINITY, -INFINITY };
  for (guint i = 0; i < 4; i++)
    {
      OxPoint a = corners[i], b = corners[(i + 1) % 4];
      if ((a.y > y) == (b.y > y))
        continue;
      double x = a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x);
      piece->a = MIN (piece->a, x);
      piece->b = MAX (piece->b, x);
    }
  return piece->a < piece->b;
}

void
ox_verify_subtract_cover (OxVerify *verify, OxAxes axes, double y, GArray *pieces)
{
  if (pieces->len == 0)
    return;
  OxBox line = { g_array_index (pieces, OxPiece, 0).a, y, g_array_index (pieces, OxPiece, pieces->len - 1).b, y };
  ox_box_grid_query (verify->strip_grid, ox_axes_box (axes, line), verify->near);
  for (guint k = 0; k < verify->near->len && pieces->len > 0; k++)
    {
      const OxVerifyStrip *other = &verify->strips[g_array_index (verify->near, guint, k)];
      OxPoint corners[4];
      for (guint c = 0; c < 4; c++)
        corners[c] = ox_axes_to (axes, other->corners[c]);
      OxPiece piece;
      if (ox_verify_cover_piece (corners, y, &piece))
        ox_pieces_subtract (pieces, piece);
    }
}

static OxRegion *
covered_floor (const OxVerify *verify)
{
  guint n = verify->plan->n_strips;
  g_autofree OxPoint *corners = g_new (OxPoint, MAX (4 * n, 1));
  for (guint i = 0; i < 4 * n; i++)
    corners[i] = verify->strips[i / 4].corners[i % 4];
  return ox_region_union_quads (corners, n);
}

static void
gather_strips (OxVerify *verify)
{
  const OxPlan *plan = verify->plan;
  double half = verify->machine->blast_length / 2;
  g_autofree OxBox *boxes = g_new (OxBox, MAX (plan->n_strips, 1));
  verify->strips = g_new0 (OxVerifyStrip, MAX (plan->n_strips, 1));
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      OxVerifyStrip *s = &verify->strips[i];
      s->strip = strip;
      s->axes = ox_axes_along (strip->a, strip->b);
      s->length = ox_point_distance (strip->a, strip->b);
      s->cover = (OxBox){ -half, -strip->width / 2, s->length + half, strip->width / 2 };
      s->corners[0] = ox_axes_from (s->axes, (OxPoint){ s->cover.x0, s->cover.y0 });
      s->corners[1] = ox_axes_from (s->axes, (OxPoint){ s->cover.x1, s->cover.y0 });
      s->corners[2] = ox_axes_from (s->axes, (OxPoint){ s->cover.x1, s->cover.y1 });
      s->corners[3] = ox_axes_from (s->axes, (OxPoint){ s->cover.x0, s->cover.y1 });
      boxes[i] = ox_axes_box (s->axes, s->cover);
    }
  verify->strip_grid = ox_box_grid_new (boxes, plan->n_strips);
  verify->near = g_array_new (FALSE, FALSE, sizeof (guint));
  verify->covered = covered_floor (verify);
}

static void
verify_begin (OxVerify *verify, const OxFloor *floor)
{
  verify->machine = verify->plan->job->machine;
  verify->breaches = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_breach_free);
  verify->floor = floor;
  verify->target_bounds = ox_bounds_new (floor->target);
  verify->travel_bounds = ox_bounds_new (floor->travel);
  gather_strips (verify);
}

static GPtrArray *
verify_end (OxVerify *verify)
{
  ox_bounds_free (verify->target_bounds);
  ox_bounds_free (verify->travel_bounds);
  ox_box_grid_free (verify->strip_grid);
  ox_region_unref (verify->covered);
  g_array_unref (verify->near);
  g_free (verify->strips);
  return verify->breaches;
}

GPtrArray *
ox_plan_verify (const OxPlan *plan)
{
  OxVerify verify = { .plan = plan };
  g_autoptr (OxFloor) floor = ox_floor_new (plan->job);
  verify_begin (&verify, floor);
  ox_verify_strips (&verify);
  ox_verify_moves (&verify);
  ox_verify_account (&verify);
  ox_verify_lanes (&verify);
  ox_verify_slots (&verify);
  return verify_end (&verify);
}

GPtrArray *
ox_plan_verify_laid (const OxPlan *plan, const OxFloor *floor)
{
  OxVerify verify = { .plan = plan };
  verify_begin (&verify, floor);
  ox_verify_use (&verify);
  ox_verify_lanes (&verify);
  ox_verify_slots (&verify);
  return verify_end (&verify);
}
