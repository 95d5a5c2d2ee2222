/* Oxturn: plan/way: ways and turning points that can be worked out by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The compact machine keeps 0.21 m to both sides; a way may be up to 5 mm nearer or farther off than that.
 */
#include "judge.h"
#include "plan/floor.h"
#include "plan/way.h"
#include "support/floors.h"
#include "support/ox-test.h"

typedef struct
{
  OxFloor *floor;
  OxJob *job;
  OxWays *ways;
  GArray *path;
} Fixture;

static Fixture
start (OxJob *job)
{
  OxFloor *floor = ox_floor_new (job);
  return (Fixture){ floor, job, ox_ways_new (floor->travel, job->machine),
                    g_array_new (FALSE, FALSE, sizeof (OxPoint)) };
}

static void
end (Fixture *f)
{
  ox_ways_free (f->ways);
  ox_floor_free (f->floor);
  ox_job_unref (f->job);
  g_array_unref (f->path);
}

/* The path leads from a to b, is @length long, and each piece of it is clear. */
static void
expect_path (Fixture *f, OxPoint a, OxPoint b, double length)
{
  double sum = 0;
  g_assert_cmpuint (f->path->len, >=, 2);
  const OxPoint *p = &g_array_index (f->path, OxPoint, 0);
  ox_test_near (ox_point_distance (p[0], a) + ox_point_distance (p[f->path->len - 1], b), 0, 1e-9);
  for (guint i = 1; i < f->path->len; i++)
    {
      g_assert_true (ox_ways_is_clear (f->ways, p[i - 1], p[i]));
      sum += ox_point_distance (p[i - 1], p[i]);
    }
  ox_test_near (sum, length, 1e-4);
}

static void
straight (void)
{
  Fixture f = start (ox_test_floor_rectangle (10, 6, "compact"));
  OxPoint a = { 0.3, 0.21 }, b = { 9, 5.7 };
  double length = ox_ways_find (f.ways, a, b, f.path);
  ox_test_near (length, hypot (8.7, 5.49), 1e-9);
  g_assert_cmpuint (f.path->len, ==, 2);
  expect_path (&f, a, b, length);
  g_assert_false (ox_ways_is_clear (f.ways, (OxPoint){ 1, 0.2 }, (OxPoint){ 9, 0.2 }));
  end (&f);
}

/* A column of 2 x 2 m half way: the way bends at two of its corners, 0.21 m off both of their sides. */
static void
round_column (void)
{
  Fixture f = start (
      judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 5, 3 }, 2));
  OxPoint a = { 2, 3 }, b = { 8, 3 };
  double length = ox_ways_find (f.ways, a, b, f.path), off = 0.21;
  ox_test_near (length, 2 * hypot (2 - off, 1 + off) + 2 + 2 * off, 0.02);
  g_assert_cmpuint (f.path->len, ==, 4);
  expect_path (&f, a, b, length);
  double again = ox_ways_find (f.ways, b, a, f.path);
  ox_test_near (again, length, 1e-9);
  end (&f);
}

/* From room to room: the way bends beside the jamb of the doorway that ends at y = 1.5. */
static void
doorway (void)
{
  Fixture f = start (judge_two_rooms (0.5, 1.5));
  OxPoint a = { 2, 1.7 }, b = { 8, 1.7 };
  double length = ox_ways_find (f.ways, a, b, f.path);
  ox_test_near (length, 2 * hypot (3 - 0.21, 0.2 + 0.21) + 2 * 0.21, 0.02);
  expect_path (&f, a, b, length);
  g_assert_cmpint (ox_ways_part (f.ways, a), ==, ox_ways_part (f.ways, b));
  end (&f);
}

/* A doorway narrower than the body lets nothing through; the rooms are two parts. */
static void
pocket (void)
{
  Fixture f = start (judge_two_rooms (0.5, 0.9));
  OxPoint a = { 2, 1 }, b = { 8, 1 };
  g_assert_true (isinf (ox_ways_find (f.ways, a, b, f.path)));
  g_assert_cmpuint (f.path->len, ==, 0);
  g_assert_cmpint (ox_ways_part (f.ways, a), >=, 0);
  g_assert_cmpint (ox_ways_part (f.ways, b), >=, 0);
  g_assert_cmpint (ox_ways_part (f.ways, a), !=, ox_ways_part (f.ways, b));
  g_assert_cmpint (ox_ways_part (f.ways, (OxPoint){ 2, 0.01 }), ==, -1);
  end (&f);
}

/* A circle of 0.75 m fits 0.75 m off the walls. */
static void
where_a_swing_fits (void)
{
  Fixture f = start (ox_test_floor_rectangle (10, 6, "compact"));
  g_assert_true (ox_ways_can_turn (f.ways, (OxPoint){ 5, 0.751 }));
  g_assert_false (ox_ways_can_turn (f.ways, (OxPoint){ 5, 0.749 }));
  ox_test_near (ox_ways_turn_distance (f.ways, (OxPoint){ 5, 3 }), 0, 1e-9);
  ox_test_near (ox_ways_turn_distance (f.ways, (OxPoint){ 5, 0.21 }), 0.54, 2e-3);
  ox_test_near (ox_ways_turn_distance (f.ways, (OxPoint){ 9.63, 0.21 }), hypot (0.38, 0.54), 0.02);
  end (&f);
  Fixture narrow = start (ox_test_floor_rectangle (10, 1.49, "compact"));
  OxPoint turn;
  g_assert_false (ox_ways_has_turns (narrow.ways));
  g_assert_true (isinf (ox_ways_turn_distance (narrow.ways, (OxPoint){ 5, 0.7 })));
  g_assert_true (isinf (ox_ways_turn (narrow.ways, (OxWayEnds){ { 9, 0.5 }, 0, { 9, 0.7 } }, narrow.path, &turn)));
  end (&narrow);
  Fixture wider = start (ox_test_floor_rectangle (10, 1.52, "compact"));
  g_assert_true (ox_ways_has_turns (wider.ways));
  end (&wider);
}

/* In the corner where strips beside two walls meet, the machine swings at the nearest place off both walls. */
static void
turning_point (void)
{
  Fixture f = start (ox_test_floor_rectangle (10, 6, "compact"));
  OxPoint a = { 9.63, 0.21 }, b = { 8.75, 0.4 }, turn = { 0, 0 };
  double length = ox_ways_turn (f.ways, (OxWayEnds){ a, 0, b }, f.path, &turn);
  expect_path (&f, a, b, length);
  ox_test_near (length, ox_point_distance (a, turn) + ox_point_distance (turn, b), 1e-9);
  g_assert_true (ox_ways_can_turn (f.ways, turn));
  g_assert_cmpfloat (turn.x, <=, 9.25 + 1e-9);
  g_assert_cmpfloat (turn.y, >=, 0.75 - 1e-9);
  /* No place that is 0.75 m off the wall is nearer than the one where a ray thrown back from it meets both ends. */
  double least = hypot (0.88, (0.75 - 0.21) + (0.75 - 0.4));
  g_assert_cmpfloat (length, >=, least - 1e-6);
  g_assert_cmpfloat (length, <=, least + 0.25);
  end (&f);
}

/* From an alley that is too narrow the machine rolls back to the hall to swing. */
static void
turn_outside_alley (void)
{
  const OxPoint points[8] = { { 0, 0 }, { 6, 0 }, { 6, 2 }, { 10, 2 }, { 10, 3 }, { 6, 3 }, { 6, 5 }, { 0, 5 } };
  Fixture f = start (ox_test_floor_polygon (points, 8, "compact"));
  OxPoint a = { 9.6, 2.3 }, b = { 8.7, 2.5 }, turn = { 0, 0 };
  double length = ox_ways_turn (f.ways, (OxWayEnds){ a, 0, b }, f.path, &turn);
  expect_path (&f, a, b, length);
  g_assert_true (ox_ways_can_turn (f.ways, turn));
  g_assert_cmpfloat (turn.x, <, 6);
  g_assert_cmpfloat (length, >=, (a.x - turn.x) + (b.x - turn.x));
  end (&f);
}

/* Two alleys that meet in a corner, as wide as lets the circle of 1.1 m radius stand in it and nowhere else: 1.1 (1 + 1 / sqrt 2) m, on the next tenth
 * of a millimetre. The place is 19.4745 - 1.1, which no double is exactly. */
static void
turn_where_it_just_fits (void)
{
  const double d = 1.8779, x = 19.4745;
  const OxPoint points[6] = { { 0, 0 }, { x, 0 }, { x, 4.1323 }, { x - d, 4.1323 }, { x - d, d }, { 0, d } };
  Fixture f = start (ox_test_floor_polygon (points, 6, "large"));
  OxPoint a = { 17.9866, 0.618 }, b = { 17.7525, 0.756 }, turn = { 0, 0 };
  double length = ox_ways_turn (f.ways, (OxWayEnds){ a, -G_PI / 2, b }, f.path, &turn);
  expect_path (&f, a, b, length);
  ox_test_near (ox_point_distance (turn, (OxPoint){ x - 1.1, 1.1 }), 0, 1e-3);
  end (&f);
}

/* Offset head, 0.18 m to the left and 0.30 m to the right: an alley of 0.48 m takes it on one lane only. */
static void
offset_head (void)
{
  Fixture f = start (ox_test_floor_rectangle (10, 0.48, "offset"));
  g_assert_true (ox_ways_is_clear (f.ways, (OxPoint){ 2, 0.18 }, (OxPoint){ 8, 0.18 }));
  g_assert_true (ox_ways_is_clear (f.ways, (OxPoint){ 2, 0.3 }, (OxPoint){ 8, 0.3 }));
  g_assert_false (ox_ways_is_clear (f.ways, (OxPoint){ 2, 0.24 }, (OxPoint){ 8, 0.24 }));
  end (&f);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/way/straight", straight);
  g_test_add_func ("/plan/way/round-column", round_column);
  g_test_add_func ("/plan/way/doorway", doorway);
  g_test_add_func ("/plan/way/pocket", pocket);
  g_test_add_func ("/plan/way/where-a-swing-fits", where_a_swing_fits);
  g_test_add_func ("/plan/way/turning-point", turning_point);
  g_test_add_func ("/plan/way/turn-outside-alley", turn_outside_alley);
  g_test_add_func ("/plan/way/turn/where-it-just-fits", turn_where_it_just_fits);
  g_test_add_func ("/plan/way/offset-head", offset_head);
  return g_test_run ();
}
