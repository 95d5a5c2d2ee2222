/* Oxturn: plan/verify - what must hold for every plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/verify-private.h"
#include <string.h>

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
ox_verify_subtract_cover (OxVerify *verify, guint coat, OxAxes axes, double y, GArray *pieces)
{
  if (pieces->len == 0)
    return;
  OxBox line = { g_array_index (pieces, OxPiece, 0).a, y, g_array_index (pieces, OxPiece, pieces->len - 1).b, y };
  ox_box_grid_query (verify->strip_grid, ox_axes_box (axes, line), verify->near);
  for (guint k = 0; k < verify->near->len && pieces->len > 0; k++)
    {
      const OxVerifyStrip *other = &verify->strips[g_array_index (verify->near, guint, k)];
      OxPoint corners[4];
      if (other->strip->coat != coat)
        continue;
      for (guint c = 0; c < 4; c++)
        corners[c] = ox_axes_to (axes, other->corners[c]);
      OxPiece piece;
      if (ox_verify_cover_piece (corners, y, &piece))
        ox_pieces_subtract (pieces, piece);
    }
}

OxBounds *
ox_verify_asking (const OxVerify *verify, const OxStrip *strip)
{
  return verify->asking_bounds[CLAMP (strip->coat, 1, verify->n_coats) - 1];
}

static OxRegion *
covered_floor (const OxVerify *verify, guint coat)
{
  g_autofree OxPoint *corners = g_new (OxPoint, MAX (4 * verify->plan->n_strips, 1));
  guint n = 0;
  for (guint i = 0; i < verify->plan->n_strips; i++)
    if (verify->plan->strips[i].coat == coat)
      {
        memcpy (corners + 4 * n, verify->strips[i].corners, sizeof verify->strips[i].corners);
        n++;
      }
  return ox_region_union_quads (corners, n);
}

static void
gather_coats (OxVerify *verify)
{
  const OxFloor *floor = verify->floor;
  verify->n_coats = MAX (ox_coats_most (floor->coats, floor->n_coats), 1);
  verify->asking = g_new0 (OxRegion *, verify->n_coats);
  verify->asking_bounds = g_new0 (OxBounds *, verify->n_coats);
  verify->covered = g_new0 (OxRegion *, verify->n_coats);
  for (guint k = 0; k < verify->n_coats; k++)
    {
      verify->asking[k] = k == 0 ? ox_region_ref (floor->target) : ox_coats_floor (floor->coats, floor->n_coats, k + 1);
      verify->asking_bounds[k] = ox_bounds_new (verify->asking[k]);
      verify->covered[k] = covered_floor (verify, k + 1);
    }
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
}

static void
verify_begin (OxVerify *verify, const OxFloor *floor)
{
  verify->machine = verify->plan->job->machine;
  verify->breaches = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_breach_free);
  verify->floor = floor;
  verify->travel_bounds = ox_bounds_new (floor->travel);
  gather_strips (verify);
  gather_coats (verify);
}

static GPtrArray *
verify_end (OxVerify *verify)
{
  ox_bounds_free (verify->travel_bounds);
  ox_box_grid_free (verify->strip_grid);
  for (guint k = 0; k < verify->n_coats; k++)
    {
      ox_region_unref (verify->asking[k]);
      ox_bounds_free (verify->asking_bounds[k]);
      ox_region_unref (verify->covered[k]);
    }
  g_free (verify->asking);
  g_free (verify->asking_bounds);
  g_free (verify->covered);
  g_array_unref (verify->near);
  g_free (verify->strips);
  return verify->breaches;
}

static gboolean
is_mark_of (const OxDoneStrip *mark, const OxStrip *strip)
{
  const OxDoneStrip place = { .a = strip->a, .b = strip->b, .coat = strip->coat };
  return ox_done_strip_same_place (mark, &place);
}

/* Kept strips are let off rules: each has to be one of the record; and what is flagged done has to lie where its mark does. */
static void
judge_record (OxVerify *verify)
{
  const OxPlan *plan = verify->plan;
  const OxRecord *record = plan->job->record;
  if (plan->n_kept > plan->n_strips)
    ox_verify_blame (verify, OX_RULE_ORDER, 0, (OxPoint){ 0, 0 }, "%u strips kept of %u", plan->n_kept, plan->n_strips);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      gboolean marked = strip->done >= 1 && strip->done <= record->n_strips && is_mark_of (&record->strips[strip->done - 1], strip);
      if (i < plan->n_kept && strip->done == 0)
        ox_verify_blame (verify, OX_RULE_ORDER, strip->order, strip->a, "kept, but not in the record");
      if (strip->done > 0 && !marked)
        ox_verify_blame (verify, OX_RULE_ORDER, strip->order, strip->a, "done by mark %u, which lies elsewhere", strip->done);
    }
}

GPtrArray *
ox_plan_verify (const OxPlan *plan)
{
  OxVerify verify = { .plan = plan };
  g_autoptr (OxFloor) floor = ox_floor_new (plan->job);
  verify_begin (&verify, floor);
  judge_record (&verify);
  ox_verify_strips (&verify);
  ox_verify_paces (&verify);
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
