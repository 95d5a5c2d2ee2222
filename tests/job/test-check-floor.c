/* Oxturn: tests/job/test-check-floor
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <string.h>
#include "job/check.h"
#include "job/job-making.h"

static GPtrArray *
check_rooms (const char *const *outlines)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  for (guint i = 0; outlines[i]; i++)
    {
      g_autofree char *id = g_strdup_printf ("R%u", i + 1);
      g_autoptr (OxRoom) room = make_room (id, outlines[i]);
      ox_job_builder_put_room (builder, room);
    }
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  return ox_job_check (job);
}

static void
assert_finding (GPtrArray *findings, OxFindingKind kind, const char *id, const char *part)
{
  g_assert_cmpuint (findings->len, ==, 1);
  const OxFinding *finding = findings->pdata[0];
  g_assert_cmpint (finding->kind, ==, kind);
  g_assert_cmpstr (finding->id, ==, id);
  if (!strstr (finding->text, part))
    g_error ("“%s” does not say “%s”", finding->text, part);
}

static void
test_overlapping_rooms (void)
{
  static const char *const outlines[]
      = { "POLYGON ((0 0, 5 0, 5 4, 0 4, 0 0))", "POLYGON ((9 0, 12 0, 12 4, 9 4, 9 0))",
          "POLYGON ((4 1, 8 1, 8 3, 4 3, 4 1))", NULL };
  g_autoptr (GPtrArray) findings = check_rooms (outlines);
  assert_finding (findings, OX_FINDING_ERROR, "R3", "R1 and R3 overlap by 2.000 m²");
  const OxFinding *finding = findings->pdata[0];
  g_assert_true (finding->placed && finding->at.x > 4 && finding->at.x < 5);
}

static void
test_room_in_room (void)
{
  static const char *const outlines[]
      = { "POLYGON ((0 0, 9 0, 9 9, 0 9, 0 0))", "POLYGON ((3 3, 6 3, 6 6, 3 6, 3 3))", NULL };
  g_autoptr (GPtrArray) findings = check_rooms (outlines);
  assert_finding (findings, OX_FINDING_ERROR, "R2", "overlap by 9.000 m²");
}

/* Whole sides, parts of sides and single corners may be shared. */
static void
test_touching_rooms (void)
{
  static const char *const outlines[] = { "POLYGON ((0 0, 5 0, 5 4, 0 4, 0 0))", "POLYGON ((5 1, 8 1, 8 3, 5 3, 5 1))",
                                          "POLYGON ((5 4, 8 4, 8 8, 5 8, 5 4))", NULL };
  g_autoptr (GPtrArray) findings = check_rooms (outlines);
  g_assert_cmpuint (findings->len, ==, 0);
}

/* A corner in the middle of a slanted shared side was snapped to the grid: 0.05 mm beside it. */
static void
test_slanted_shared_side (void)
{
  static const char *const outlines[]
      = { "POLYGON ((0 0, 7 3, 7 9, 0 9, 0 0))", "POLYGON ((0 0, 7 -5, 7 3, 3.3333 1.4286, 0 0))", NULL };
  g_autoptr (GPtrArray) findings = check_rooms (outlines);
  g_assert_cmpuint (findings->len, ==, 0);
  static const char *const deeper[]
      = { "POLYGON ((0 0, 7 3, 7 9, 0 9, 0 0))", "POLYGON ((0 0, 7 -5, 7 3, 3.3333 1.4296, 0 0))", NULL };
  g_autoptr (GPtrArray) real = check_rooms (deeper);
  assert_finding (real, OX_FINDING_ERROR, "R2", "overlap");
}

static void
test_lone_obstacle (void)
{
  g_autoptr (OxJob) job = make_job ();
  OxJobBuilder *builder = ox_job_builder_new (job);
  g_autoptr (OxObstacle) outside = make_rectangle ("O9", OX_OBSTACLE_SOLID, (OxBox){ 30, 0, 31, 1 });
  g_autoptr (OxExcluded) left_out = make_excluded ("X9", "POLYGON ((30 4, 31 4, 31 5, 30 4))");
  ox_job_builder_put_obstacle (builder, outside);
  ox_job_builder_put_excluded (builder, left_out);
  g_autoptr (OxJob) changed = ox_job_builder_end (builder);
  g_autoptr (GPtrArray) findings = ox_job_check (changed);
  g_assert_cmpuint (findings->len, ==, 2);
  g_ptr_array_remove_index (findings, 0);
  assert_finding (findings, OX_FINDING_NOTICE, "X9", "Excluded area X9 lies outside every room");
}

/* Obstacles that reach into a room in any way are none to speak of: across a side, a corner, or all round it. */
static void
test_crossing_obstacles (void)
{
  const OxBox boxes[] = { { -1, 3, 1, 4 }, { 11, 7, 13, 9 }, { -5, -5, 30, 30 }, { 3, -1, 4, 9 } };
  for (guint i = 0; i < G_N_ELEMENTS (boxes); i++)
    {
      OxJobBuilder *builder = ox_job_builder_new (NULL);
      g_autoptr (OxRoom) room = make_room ("R1", "POLYGON ((0 0, 12 0, 12 8, 0 8, 0 0))");
      g_autoptr (OxObstacle) obstacle = make_rectangle ("O1", OX_OBSTACLE_SOLID, boxes[i]);
      ox_job_builder_put_room (builder, room);
      ox_job_builder_put_obstacle (builder, obstacle);
      g_autoptr (OxJob) job = ox_job_builder_end (builder);
      g_autoptr (GPtrArray) findings = ox_job_check (job);
      g_assert_cmpuint (findings->len, ==, 0);
    }
}

/* The compact machine's body with its gaps is 0.42 m wide. */
static void
test_narrow_room (void)
{
  static const char *const narrow[] = { "POLYGON ((0 0, 9 0, 9 0.38, 0 0.38, 0 0))", NULL };
  g_autoptr (GPtrArray) findings = check_rooms (narrow);
  assert_finding (findings, OX_FINDING_NOTICE, "R1", "needs 0.42 m");
  static const char *const wide[] = { "POLYGON ((0 0, 9 0, 9 0.43, 0 0.43, 0 0))", NULL };
  g_autoptr (GPtrArray) none = check_rooms (wide);
  g_assert_cmpuint (none->len, ==, 0);
}

static void
test_narrow_room_with_open_side (void)
{
  OxSide sides[4] = { { OX_SIDE_OPEN, 0 } };
  g_autoptr (OxRing) ring = ox_test_ring ("POLYGON ((0 0, 9 0, 9 0.3, 0 0.3, 0 0))");
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = (char *) "R1", .ring = ring, .sides = sides });
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_put_room (builder, room);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  g_assert_cmpuint (findings->len, ==, 0);
}

static GPtrArray *
check_doorway (OxPoint a, OxPoint b, double depth)
{
  g_autoptr (OxJob) job = make_job ();
  OxJobBuilder *builder = ox_job_builder_new (job);
  g_autoptr (OxDoorway) doorway = make_doorway ("D1", a, b, depth);
  ox_job_builder_put_doorway (builder, doorway);
  g_autoptr (OxJob) changed = ox_job_builder_end (builder);
  return ox_job_check (changed);
}

static void
test_doorways (void)
{
  g_autoptr (GPtrArray) narrow = check_doorway ((OxPoint){ 12.1, 2 }, (OxPoint){ 12.1, 2.4 }, 0.2);
  assert_finding (narrow, OX_FINDING_NOTICE, "D1", "0.400 m wide; the machine needs 0.420 m");
  g_autoptr (GPtrArray) lost = check_doorway ((OxPoint){ 40, 2 }, (OxPoint){ 40, 4 }, 0.2);
  assert_finding (lost, OX_FINDING_NOTICE, "D1", "touches no room");
  g_autoptr (GPtrArray) short_of = check_doorway ((OxPoint){ 12.1, 2 }, (OxPoint){ 12.1, 4 }, 0.19);
  assert_finding (short_of, OX_FINDING_NOTICE, "D1", "touches no room");
  g_autoptr (GPtrArray) outer = check_doorway ((OxPoint){ -0.1, 2 }, (OxPoint){ -0.1, 4 }, 0.2);
  g_assert_cmpuint (outer->len, ==, 0);
  g_autoptr (GPtrArray) thin = check_doorway ((OxPoint){ 0, 2 }, (OxPoint){ 0, 4 }, 0);
  g_assert_cmpuint (thin->len, ==, 0);
}

/* A round hall of 5,000 corners with 500 columns; the test's own time limit is what a slow check would meet. */
static void
test_large_floor (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  g_autofree OxPoint *corners = g_new (OxPoint, 5000);
  for (guint i = 0; i < 5000; i++)
    {
      double angle = 2 * G_PI * i / 5000;
      double radius = i % 2 ? 300 : 299;
      corners[i] = (OxPoint){ radius * cos (angle), radius * sin (angle) };
    }
  g_autoptr (OxRing) ring = ox_ring_new (corners, 5000);
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = (char *) "R1", .ring = ring });
  ox_job_builder_put_room (builder, room);
  for (guint i = 0; i < 500; i++)
    {
      g_autofree char *id = g_strdup_printf ("O%u", i + 1);
      double x = -125 + 10.0 * (i % 25);
      double y = -100 + 10.0 * (i / 25);
      g_autoptr (OxObstacle) column = make_rectangle (id, OX_OBSTACLE_SOLID, (OxBox){ x, y, x + 0.5, y + 0.5 });
      ox_job_builder_put_obstacle (builder, column);
    }
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  g_assert_cmpuint (findings->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/check-floor/overlap", test_overlapping_rooms);
  g_test_add_func ("/job/check-floor/room-in-room", test_room_in_room);
  g_test_add_func ("/job/check-floor/touching", test_touching_rooms);
  g_test_add_func ("/job/check-floor/slanted-shared-side", test_slanted_shared_side);
  g_test_add_func ("/job/check-floor/lone-obstacle", test_lone_obstacle);
  g_test_add_func ("/job/check-floor/crossing-obstacles", test_crossing_obstacles);
  g_test_add_func ("/job/check-floor/narrow-room", test_narrow_room);
  g_test_add_func ("/job/check-floor/narrow-room-with-open-side", test_narrow_room_with_open_side);
  g_test_add_func ("/job/check-floor/doorways", test_doorways);
  g_test_add_func ("/job/check-floor/large", test_large_floor);
  return g_test_run ();
}
