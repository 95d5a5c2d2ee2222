/* Oxturn: plan/room: directions that were asked for, and what costs least.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/room.h"
#include "support/floors.h"
#include "support/ox-test.h"

static OxJob *
with_direction (OxJob *base, OxDirection direction)
{
  g_autoptr (OxJob) job = base;
  OxRoom fields = *job->rooms[0];
  fields.direction = direction;
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_room (builder, room);
  return ox_job_builder_end (builder);
}

static OxRoomPlan *
plan_of (OxJob *base, OxRun *run)
{
  g_autoptr (OxJob) job = base;
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  g_autoptr (OxWays) ways = ox_ways_new (floor->travel, job->machine);
  g_autoptr (GPtrArray) plans = ox_room_plans_new (floor, 0, job, ways, run);
  return plans != NULL ? g_ptr_array_steal_index (plans, 0) : NULL;
}

/* Strips of the lane grid run along @angle; there are some. */
static void
expect_direction (const OxRoomPlan *plan, double angle)
{
  guint n = 0;
  ox_test_near (remainder (plan->angle - angle, G_PI), 0, 1e-6);
  for (guint i = 0; i < plan->legs->len; i++)
    {
      const OxLeg *leg = &g_array_index (plan->legs, OxLeg, i);
      if (!leg->grid)
        continue;
      n++;
      ox_test_near (remainder (leg->heading - angle, G_PI), 0, 2e-4); /* ends lie on the grid of 0.1 mm */
      double lane = (leg->y - plan->first_y) / plan->spacing;
      ox_test_near (lane, round (lane), 1e-6);
      g_assert_cmpfloat (lane, <, plan->lanes - 0.5);
    }
  g_assert_cmpuint (n, >, plan->lanes / 2);
}

static void
typed_angle (void)
{
  g_autoptr (OxRoomPlan) plan = plan_of (with_direction (ox_test_floor_rectangle (9, 7, "medium"),
                                                         (OxDirection){ .kind = OX_DIRECTION_ANGLE, .angle_deg = 30 }),
                                         NULL);
  expect_direction (plan, G_PI / 6);
}

static void
chosen_side (void)
{
  const OxPoint points[4] = { { 0, 0 }, { 9, 1 }, { 8, 8 }, { 0, 7 } };
  for (guint side = 0; side < 4; side++)
    {
      OxPoint d = ox_point_sub (points[(side + 1) % 4], points[side]);
      g_autoptr (OxRoomPlan) plan = plan_of (with_direction (ox_test_floor_polygon (points, 4, "medium"),
                                                             (OxDirection){ .kind = OX_DIRECTION_SIDE, .side = side }),
                                             NULL);
      expect_direction (plan, atan2 (d.y, d.x));
    }
}

/* Left to choose, a long hall is worked along its length. */
static void
long_hall (void)
{
  g_autoptr (OxRoomPlan) plan = plan_of (ox_test_floor_rectangle (20, 5, "medium"), NULL);
  expect_direction (plan, 0);
  g_autoptr (OxRoomPlan) other = plan_of (ox_test_floor_rectangle (5, 20, "medium"), NULL);
  expect_direction (other, G_PI / 2);
}

/* Where no swing fits the strips all head the same way. */
static void
no_swing (void)
{
  g_autoptr (OxRoomPlan) plan = plan_of (ox_test_floor_rectangle (9, 1.4, "compact"), NULL);
  g_assert_cmpuint (plan->legs->len, >, 4);
  for (guint i = 1; i < plan->legs->len; i++)
    g_assert_false (ox_leg_turns (&g_array_index (plan->legs, OxLeg, i - 1), &g_array_index (plan->legs, OxLeg, i)));
}

static void
nothing_fits (void)
{
  g_autoptr (OxRoomPlan) plan = plan_of (ox_test_floor_rectangle (1.5, 1.5, "compact"), NULL);
  g_assert_cmpuint (plan->legs->len, ==, 0);
}

static void
same_again (void)
{
  g_autoptr (OxRoomPlan) plan = plan_of (ox_test_floor_columns (9, 8, 0.5, 3.5, "medium"), NULL);
  g_autoptr (OxRoomPlan) again = plan_of (ox_test_floor_columns (9, 8, 0.5, 3.5, "medium"), NULL);
  g_assert_cmpuint (plan->legs->len, ==, again->legs->len);
  for (guint i = 0; i < plan->legs->len; i++)
    {
      const OxLeg *p = &g_array_index (plan->legs, OxLeg, i), *q = &g_array_index (again->legs, OxLeg, i);
      ox_test_near (ox_point_distance (p->a, q->a) + ox_point_distance (p->b, q->b), 0, 1e-15);
    }
}

/* However many coats and trials there are, a room counts its steps up and no more. */
static void
steps (void)
{
  for (guint coats = 1; coats <= 3; coats++)
    {
      OxRun run = OX_RUN_INIT;
      g_autoptr (OxJob) job = ox_test_floor_with_coats (ox_test_floor_rectangle (9, 7, "compact"), coats, 45);
      g_autoptr (OxFloor) floor = ox_floor_new (job);
      g_autoptr (OxWays) ways = ox_ways_new (floor->travel, job->machine);
      g_autoptr (GPtrArray) plans = ox_room_plans_new (floor, 0, job, ways, &run);
      g_assert_cmpuint (plans->len, ==, coats);
      g_assert_cmpint (run.done, ==, OX_ROOM_STEPS);
      g_assert_nonnull (run.doing);
    }
}

static void
cancelled (void)
{
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  OxRun run = OX_RUN_INIT;
  run.cancel = cancel;
  g_cancellable_cancel (cancel);
  g_assert_null (plan_of (ox_test_floor_rectangle (9, 7, "medium"), &run));
}

/* Metres of strips that run along @angle, and of all, with their middle on the side of the line through @at where @normal points. */
static double
share_along (const OxPlan *plan, double angle, OxPoint at, OxPoint normal)
{
  double along = 0, all = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      OxPoint middle = ox_point_scale (ox_point_add (strip->a, strip->b), 0.5);
      if (ox_point_dot (ox_point_sub (middle, at), normal) < 0)
        continue;
      all += ox_strip_length (strip);
      along += fabs (remainder (strip->heading - angle, G_PI)) < 0.01 ? ox_strip_length (strip) : 0;
    }
  return along / all;
}

static double
labour_along (const OxJob *job, OxDirection direction)
{
  g_autoptr (OxJob) one = with_direction (ox_job_ref (job), direction);
  g_autoptr (OxPlan) plan = ox_plan_new (one, NULL, NULL);
  return plan->totals.labour_hours;
}

/* The strips of the other wing lie on chalk lines of their own, measured from one of the walls along it. */
static void
expect_wing_chalk (const OxPlan *plan, double angle)
{
  g_assert_cmpuint (plan->n_chalks, ==, 2);
  const OxChalk *main = &plan->chalks[0], *wing = &plan->chalks[1];
  const OxRing *ring = plan->job->rooms[0]->ring;
  g_assert_true (wing->is_wing && !main->is_wing);
  double turned = fabs (remainder (main->heading - wing->heading, G_PI));
  ox_test_near (turned, fabs (remainder (angle, G_PI)), 1e-4); /* corners lie on the grid */
  OxPoint a = ring->points[wing->base_side], b = ring->points[(wing->base_side + 1) % ring->n];
  OxPoint along = ox_point_scale (ox_point_sub (b, a), 1 / ox_point_distance (a, b));
  ox_test_near (sin (atan2 (along.y, along.x) - wing->heading), 0, 1e-6);
  double inward = ox_ring_area (ring) > 0 ? 1 : -1, metres = 0, all = 0;
  g_autofree gboolean *used = g_new0 (gboolean, wing->lanes);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      if (fabs (sin (strip->heading - wing->heading)) > 1e-6)
        continue;
      double off = inward * ox_point_cross (along, ox_point_sub (strip->a, a)) - wing->first_distance;
      double lane = round (off / wing->spacing);
      all += ox_strip_length (strip);
      if (lane < 0 || lane >= wing->lanes || fabs (off - lane * wing->spacing) > 0.002)
        continue;
      used[(guint) lane] = TRUE;
      metres += ox_strip_length (strip);
    }
  g_test_message ("%.1f of %.1f m on %u chalk lines", metres, all, wing->lanes);
  g_assert_cmpfloat (metres, >, 0.8 * all);
  for (guint i = 0; i < wing->lanes; i++)
    g_assert_true (used[i]);
}

/* Two wings, one along x and one turned by @angle, meet at an inner corner: each is worked along its own walls, which takes less labour than either direction
 * for both. */
static void
expect_wings (const OxPoint corners[6], guint inner, double angle, double least_saved)
{
  g_autoptr (OxJob) job = ox_test_floor_polygon (corners, 6, "compact");
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, NULL);
  OxPoint at = corners[inner];
  double first = labour_along (job, (OxDirection){ .kind = OX_DIRECTION_SIDE, .side = 0 });
  double second = labour_along (job, (OxDirection){ .kind = OX_DIRECTION_ANGLE, .angle_deg = angle * 180 / G_PI });
  g_test_message ("%.3f h with two directions, %.3f and %.3f h with one", plan->totals.labour_hours, first, second);
  g_assert_cmpfloat (plan->totals.labour_hours, <, (1 - least_saved) * MIN (first, second));
  /* Off the corner itself, which either may have. */
  OxPoint far = ox_point_add (at, (OxPoint){ 12 * cos (angle), 12 * sin (angle) });
  g_assert_cmpfloat (share_along (plan, angle, far, (OxPoint){ cos (angle), sin (angle) }), >, 0.8);
  expect_wing_chalk (plan, angle);
  gboolean left = corners[0].x < at.x - 10; /* the wing along x lies to the left of the corner */
  g_assert_cmpfloat (share_along (plan, 0, (OxPoint){ left ? at.x - 8 : at.x + 8, 0 }, (OxPoint){ left ? -1 : 1, 0 }), >, 0.8);
}

static void
wings_square (void)
{
  static const OxPoint ell[] = { { 0, 0 }, { 40, 0 }, { 40, 6 }, { 6, 6 }, { 6, 40 }, { 0, 40 } };
  expect_wings (ell, 3, G_PI / 2, 0.03);
}

/* 30 x 10 m, then 25 x 10 m turned by 30 degrees. */
static void
wings_slanted (void)
{
  double c = cos (G_PI / 6), s = sin (G_PI / 6), t = (10 - 10 * c) / s;
  const OxPoint corners[] = { { 0, 0 }, { 30, 0 }, { 30 + 25 * c, 25 * s }, { 30 + 25 * c - 10 * s, 25 * s + 10 * c }, { 30 - 10 * s + t * c, 10 }, { 0, 10 } };
  expect_wings (corners, 4, G_PI / 6, 0.002);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/room/typed-angle", typed_angle);
  g_test_add_func ("/plan/room/chosen-side", chosen_side);
  g_test_add_func ("/plan/room/long-hall", long_hall);
  g_test_add_func ("/plan/room/no-swing", no_swing);
  g_test_add_func ("/plan/room/nothing-fits", nothing_fits);
  g_test_add_func ("/plan/room/same-again", same_again);
  g_test_add_func ("/plan/room/steps", steps);
  g_test_add_func ("/plan/room/cancelled", cancelled);
  g_test_add_func ("/plan/room/wings-square", wings_square);
  g_test_add_func ("/plan/room/wings-slanted", wings_slanted);
  return g_test_run ();
}
