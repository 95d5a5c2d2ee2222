/* Oxturn: plan/chalk - where the chalk lines of a room are measured from.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/chalk.h"

#define PARALLEL 1e-6 /* sine of the angle between a side and the lanes laid along it */

OxChalk
ox_chalk_of (const OxJob *job, const OxRoomPlan *room, gboolean wing)
{
  const OxRing *ring = job->rooms[room->room]->ring;
  OxChalk chalk = { .room = room->room, .coat = room->coat, .is_wing = wing };
  chalk.heading = wing ? room->wing_angle : room->angle;
  chalk.spacing = wing ? room->wing_spacing : room->spacing;
  chalk.lanes = wing ? room->wing_lanes : room->lanes;
  double best = INFINITY, c = cos (chalk.heading), s = sin (chalk.heading), turn = ox_ring_area (ring) < 0 ? -1 : 1;
  double first_y = wing ? room->wing_first_y : room->first_y, last_y = first_y + (MAX (chalk.lanes, 1) - 1) * chalk.spacing;
  for (guint i = 0; i < ring->n; i++)
    {
      OxPoint a = ox_point_turn (ring->points[i], c, -s), b = ox_point_turn (ring->points[(i + 1) % ring->n], c, -s);
      double slant = fabs (b.y - a.y) / MAX (ox_point_distance (a, b), OX_GRID);
      gboolean upward = (b.x - a.x) * turn > 0; /* the room lies above this side */
      double off = upward ? first_y - (a.y + b.y) / 2 : (a.y + b.y) / 2 - last_y;
      double rank = (slant < PARALLEL ? 0 : 1e7 * (1 + slant)) + (off >= 0 ? off : 1e5 - off);
      if (rank < best)
        {
          best = rank;
          chalk.base_side = i;
          chalk.first_distance = off;
        }
    }
  return chalk;
}
