/* Oxturn: tests/job/test-check
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/check.h"
#include <string.h>
#include "job/job-making.h"

/* The job's first finding is an error of @id that says @part. */
static void
assert_first_error (OxJobBuilder *builder, const char *id, const char *part)
{
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  g_assert_cmpuint (findings->len, >, 0);
  const OxFinding *finding = findings->pdata[0];
  g_assert_cmpint (finding->kind, ==, OX_FINDING_ERROR);
  g_assert_cmpstr (finding->id, ==, id);
  if (!strstr (finding->text, part))
    g_error ("“%s” does not say “%s”", finding->text, part);
}

static void
test_sound_job (void)
{
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  g_assert_cmpuint (findings->len, ==, 0);
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  g_autoptr (GPtrArray) none = ox_job_check (empty);
  g_assert_cmpuint (none->len, ==, 0);
}

static void
test_room_outlines (void)
{
  static const struct
  {
    OxPoint corners[5];
    guint n;
    const char *part;
  } rows[] = {
    { { { 0, 0 }, { 4, 0 } }, 2, "has 2 corners; 3 or more" },
    { { { 0, 0 }, { 4, 4 }, { 4, 0 }, { 0, 4 } }, 4, "meets itself at 2.000, 2.000" }, /* bow-tie */
    { { { 0, 0 }, { 4, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } }, 5, "meets itself" },       /* a corner twice */
    { { { 0, 0 }, { 4, 0 }, { 8, 0 } }, 3, "meets itself" },                           /* all on one line */
    { { { 0, 0 }, { 0.1, 0 }, { 0.1, 0.1 }, { 0, 0.1 } }, 4, "area of R1 is 0.0100 m²; more than 0.01 m²" },
    { { { 0, 0 }, { 10000.0001, 0 }, { 0, 5 } }, 3, "Corner 2 of R1" },
    { { { 0, 0 }, { NAN, 0 }, { 0, 5 } }, 3, "Corner 2 of R1" },
    { { { 0, 0 }, { 5, 0 }, { 0, -INFINITY } }, 3, "Corner 3 of R1" },
    { { { 0, 0 }, { 1e300, 0 }, { 0, 5 } }, 3, "Corner 2 of R1" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxRing) ring = ox_ring_new (rows[i].corners, rows[i].n);
      g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = (char *) "R1", .ring = ring });
      OxJobBuilder *builder = ox_job_builder_new (NULL);
      ox_job_builder_put_room (builder, room);
      assert_first_error (builder, "R1", rows[i].part);
    }
}

static void
assert_room_error (const OxRoom *changed, const char *part)
{
  g_autoptr (OxRoom) room = ox_room_new (changed);
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_put_room (builder, room);
  assert_first_error (builder, "R1", part);
}

static void
test_sides_and_direction (void)
{
  g_autoptr (OxRoom) room = make_room ("R1", "POLYGON ((0 0, 4 0, 4 3, 0 3, 0 0))");
  OxSide sides[4] = { { OX_SIDE_DROP, -0.1 } };
  OxRoom fields = *room;
  fields.sides = sides;
  assert_room_error (&fields, "keep-back of a drop of R1 is -0.1 m");
  sides[0].keep_back = NAN;
  assert_room_error (&fields, "keep-back of a drop of R1 is");
  fields = *room;
  fields.direction = (OxDirection){ OX_DIRECTION_SIDE, 4, 0 };
  assert_room_error (&fields, "side 5; it has sides 1 to 4");
  fields.direction = (OxDirection){ OX_DIRECTION_ANGLE, 0, 361 };
  assert_room_error (&fields, "361 degrees");
}

static void
assert_shape_error (OxShape shape, const char *part)
{
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&(OxObstacle){ .id = (char *) "O1", .shape = shape });
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_put_obstacle (builder, obstacle);
  assert_first_error (builder, "O1", part);
}

static void
test_shapes (void)
{
  assert_shape_error ((OxShape){ .kind = OX_SHAPE_RECTANGLE, .width = 0, .depth = 1 }, "width of O1 is 0 m");
  assert_shape_error ((OxShape){ .kind = OX_SHAPE_RECTANGLE, .width = 1, .depth = -1 }, "depth of O1 is -1 m");
  assert_shape_error ((OxShape){ .kind = OX_SHAPE_RECTANGLE, .width = INFINITY, .depth = 1 }, "width of O1");
  assert_shape_error ((OxShape){ .kind = OX_SHAPE_RECTANGLE, .width = 1, .depth = 1, .angle_deg = NAN }, "angle of O1");
  assert_shape_error ((OxShape){ .kind = OX_SHAPE_CIRCLE, .radius = 0.00004 }, "radius of O1 is 0 m");
  assert_shape_error ((OxShape){ .kind = OX_SHAPE_CIRCLE, .radius = NAN }, "radius of O1");
  assert_shape_error ((OxShape){ .kind = OX_SHAPE_CIRCLE, .centre = { 20000, 0 }, .radius = 1 }, "20000, 0");
  g_autoptr (OxObstacle) bow = make_polygon ("O1", "POLYGON ((0 0, 4 4, 4 0, 0 4, 0 0))");
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_put_obstacle (builder, bow);
  assert_first_error (builder, "O1", "meets itself");
}

static void
test_other_items (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  g_autoptr (OxDoorway) shut = make_doorway ("D1", (OxPoint){ 1, 1 }, (OxPoint){ 1, 1 }, 0.2);
  ox_job_builder_put_doorway (builder, shut);
  assert_first_error (builder, "D1", "has no width");
  builder = ox_job_builder_new (NULL);
  g_autoptr (OxDoorway) shallow = make_doorway ("D1", (OxPoint){ 1, 1 }, (OxPoint){ 2, 1 }, -0.2);
  ox_job_builder_put_doorway (builder, shallow);
  assert_first_error (builder, "D1", "depth of doorway D1 is -0.2 m");
  builder = ox_job_builder_new (NULL);
  g_autoptr (OxJoint) dot = ox_joint_new (&(OxJoint){ .id = (char *) "J1", .n = 1, .points = &(OxPoint){ 1, 1 } });
  ox_job_builder_put_joint (builder, dot);
  assert_first_error (builder, "J1", "has 1 points; 2 or more");
  builder = ox_job_builder_new (NULL);
  g_autoptr (OxStation) lost = make_station ("S1", (OxPoint){ NAN, 1 });
  ox_job_builder_put_station (builder, lost);
  assert_first_error (builder, "S1", "coordinates from -10000 to 10000");
}

static void
test_ids (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  g_autoptr (OxRoom) room = make_room ("A1", "POLYGON ((0 0, 4 0, 4 3, 0 3, 0 0))");
  g_autoptr (OxStation) station = make_station ("A1", (OxPoint){ 1, 1 });
  ox_job_builder_put_room (builder, room);
  ox_job_builder_put_station (builder, station);
  assert_first_error (builder, "A1", "Two items have the id A1");
  builder = ox_job_builder_new (NULL);
  g_autoptr (OxStation) nameless = make_station ("1 a", (OxPoint){ 1, 1 });
  ox_job_builder_put_station (builder, nameless);
  assert_first_error (builder, "1 a", "is no id");
}

static void
test_figures (void)
{
  g_autoptr (OxMachine) machine = ox_machine_copy (ox_classes_get (0));
  machine->min_overlap = 0.3;
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_set_machine (builder, machine);
  assert_first_error (builder, "", "Least overlap of the machine is 0.3 m");
  builder = ox_job_builder_new (NULL);
  ox_job_builder_set_rates (builder, (OxRates){ .edge_m2_per_hour = 0 });
  assert_first_error (builder, "", "hand rate of edge work is 0 m²/h");
  builder = ox_job_builder_new (NULL);
  ox_job_builder_set_rates (builder, (OxRates){ .edge_m2_per_hour = NAN });
  assert_first_error (builder, "", "hand rate of edge work");
  builder = ox_job_builder_new (NULL);
  ox_job_builder_set_north (builder, 400);
  assert_first_error (builder, "", "North is at 400 degrees");
}

/* The place of the fault, so that the window can point at it. */
static void
test_place (void)
{
  g_autoptr (OxRoom) bow = make_room ("R1", "POLYGON ((10 10, 14 14, 14 10, 10 14, 10 10))");
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_put_room (builder, bow);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  const OxFinding *finding = findings->pdata[0];
  g_assert_true (finding->placed);
  ox_test_near (finding->at.x, 12, 0.0001);
  ox_test_near (finding->at.y, 12, 0.0001);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/check/sound", test_sound_job);
  g_test_add_func ("/job/check/room-outlines", test_room_outlines);
  g_test_add_func ("/job/check/sides-and-direction", test_sides_and_direction);
  g_test_add_func ("/job/check/shapes", test_shapes);
  g_test_add_func ("/job/check/other-items", test_other_items);
  g_test_add_func ("/job/check/ids", test_ids);
  g_test_add_func ("/job/check/figures", test_figures);
  g_test_add_func ("/job/check/place", test_place);
  return g_test_run ();
}
