/* Oxturn: plan/sequence - in which order the rooms are worked, and the fields of each.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/sequence.h"
#include "plan/field-lies.h"

/* The strip that a room begins with, or ends with; NULL without strips. */
static const OxLeg *
room_end (const OxSequence *sequence, guint r, gboolean last)
{
  guint n = sequence->rooms[r]->len;
  for (guint k = 0; k < n; k++)
    {
      const GArray *legs = ((const OxRoomPlan *) g_ptr_array_index (sequence->rooms[r], last ? n - 1 - k : k))->legs;
      if (legs->len > 0)
        return &g_array_index (legs, OxLeg, last ? legs->len - 1 : 0);
    }
  return NULL;
}

static void
know_stations (const OxPlan *plan, GArray *legs)
{
  for (guint i = 0; i < legs->len; i++)
    {
      OxLeg *leg = &g_array_index (legs, OxLeg, i);
      leg->station = plan->strips[leg->strip].station;
    }
}

/* Puts the fields of a room's coats into the best order for a machine that comes from @last. */
static void
order_fields (const OxSequence *sequence, guint r, const OxLeg *last, double *saved_hours)
{
  for (guint k = 0; k < sequence->rooms[r]->len; k++)
    {
      GArray *legs = ((OxRoomPlan *) g_ptr_array_index (sequence->rooms[r], k))->legs;
      if (sequence->lies != NULL)
        know_stations (sequence->plan, legs);
      *saved_hours += ox_order_fields (legs, last, sequence->lies, sequence->plan->job->machine, sequence->run) / 3600;
      if (legs->len > 0)
        last = &g_array_index (legs, OxLeg, legs->len - 1);
    }
}

/* Seconds that hose and cord of each room cost on each other one while that is not blasted; NULL without lies. */
static double *
room_lies (const OxSequence *sequence)
{
  guint n = sequence->plan->job->n_rooms;
  const OxLies *lies = sequence->lies;
  if (lies == NULL || n < 2)
    return NULL;
  double *seconds = g_new0 (double, n * n);
  for (guint i = sequence->kept->len; i < lies->n; i++)
    for (guint k = lies->first[i]; k < lies->first[i + 1]; k++)
      if (lies->lies[k].on >= sequence->kept->len)
        seconds[sequence->plan->strips[i].room * n + sequence->plan->strips[lies->lies[k].on].room] += lies->seconds;
  return seconds;
}

/* What it costs to go on with room @r, in seconds at a guess. */
static double
room_seconds (const OxSequence *sequence, guint r, const OxLeg *last, const double *lies, const gboolean *done)
{
  guint n = sequence->plan->job->n_rooms;
  const OxLeg *first = room_end (sequence, r, FALSE);
  double seconds = 0;
  if (last != NULL && first != NULL)
    seconds = ox_point_distance (last->b, first->a) / sequence->plan->job->machine->walk_speed * 60;
  for (guint other = 0; lies != NULL && other < n; other++)
    if (!done[other] && other != r)
      seconds += lies[r * n + other];
  return seconds;
}

/* Where the last of the kept strips ended. */
static OxLeg
stopped_at (const OxSequence *sequence)
{
  const OxStrip *strip = &g_array_index (sequence->kept, OxStrip, sequence->kept->len - 1);
  OxLeg leg = { .a = strip->a, .b = strip->b, .heading = strip->heading, .station = -1 };
  leg.along = (OxPoint){ cos (strip->heading), sin (strip->heading) };
  leg.turn_b = ox_ways_turn_distance (sequence->ways, strip->b);
  return leg;
}

guint *
ox_sequence_rooms (const OxSequence *sequence, double *saved_hours)
{
  guint n = sequence->floor->n_rooms;
  guint *order = g_new0 (guint, n + 1);
  g_autofree gboolean *done = g_new0 (gboolean, n + 1);
  g_autofree double *lies = room_lies (sequence);
  OxLeg stopped = { 0 };
  const OxLeg *last = NULL;
  if (sequence->kept->len > 0)
    {
      stopped = stopped_at (sequence);
      last = &stopped;
    }
  for (guint k = 0; k < n; k++)
    {
      guint best = G_MAXUINT;
      double least = INFINITY;
      for (guint place = 0; place < n; place++)
        {
          guint i = sequence->floor->by_place[place];
          double seconds = done[i] ? (double) INFINITY : room_seconds (sequence, i, last, lies, done);
          if (seconds < least)
            {
              least = seconds;
              best = i;
            }
        }
      order[k] = best;
      done[best] = TRUE;
      order_fields (sequence, best, last, saved_hours);
      if (room_end (sequence, best, TRUE) != NULL)
        last = room_end (sequence, best, TRUE);
    }
  return order;
}
