/* Oxturn: plan/moves - the moves between strips that follow each other.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/moves.h"
#include "plan/leg.h"
#include "trade/production.h"

#define NEAR 6.0 /* m: a swing whose path is longer is a walk with a swing on the way */

static gboolean
is_beside (const OxStrip *from, const OxStrip *to, const OxMachine *machine)
{
  OxPoint along = { cos (from->heading), sin (from->heading) };
  OxPoint off = ox_point_sub (to->a, from->b);
  return ox_point_dot (off, along) <= 1e-6 && fabs (ox_point_cross (along, off)) <= 2.5 * machine->blast_width;
}

static void
keep_path (OxMove *move, GArray *path)
{
  OxPoint *corners = g_new (OxPoint, path->len + 2);
  guint n = 0;
  for (guint i = 0; i < path->len; i++)
    {
      OxPoint p = ox_point_snap (g_array_index (path, OxPoint, i));
      if (n == 0 || ox_point_distance (corners[n - 1], p) > OX_GRID / 2)
        corners[n++] = p;
    }
  if (n == 1) /* a move on the spot still has two ends */
    corners[n++] = corners[0];
  move->path = corners;
  move->n_path = n;
  move->length = 0;
  for (guint i = 1; i < n; i++)
    move->length += ox_point_distance (corners[i - 1], corners[i]);
}

gboolean
ox_move_make (OxWays *ways, const OxMachine *machine, const OxStrip *from, const OxStrip *to, OxMove *out)
{
  g_autoptr (GArray) path = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  double length;
  *out = (OxMove) { .from = from->order, .to = to->order };
  out->turns = fabs (remainder (to->heading - from->heading, 2 * G_PI)) > OX_TURN_ANGLE;
  if (out->turns)
    length = ox_ways_turn (ways, (OxWayEnds) { from->b, from->heading, to->a }, path, &out->turn);
  else
    length = ox_ways_find (ways, from->b, to->a, path);
  if (isinf (length))
    {
      out->kind = OX_MOVE_WALK;
      out->turns = FALSE;
      out->length = ox_point_distance (from->b, to->a);
      out->minutes = ox_production_move_seconds (out->length, machine->walk_speed, 0) / 60;
      return FALSE;
    }
  keep_path (out, path);
  if (out->turns)
    out->kind = out->length <= NEAR ? OX_MOVE_SWING : OX_MOVE_WALK;
  else
    out->kind = is_beside (from, to, machine) && path->len <= 2 ? OX_MOVE_PULL_BACK : OX_MOVE_WALK;
  out->minutes = ox_production_move_seconds (out->length, machine->walk_speed, out->turns ? machine->swing_s : 0) / 60;
  return TRUE;
}
