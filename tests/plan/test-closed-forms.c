/* Oxturn: plan/plan on floors whose figures can be worked out by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A machine with the same width to both sides, beside a wall: the middle of its pattern keeps s = side + gap off, so
 * the pattern reaches up to e = s - w / 2 from the wall. Ahead of a wall the middle stops f = front + gap off, so the
 * pattern reaches up to h = f - l / 2 from it. In an empty rectangle strips along each wall, run both ways, leave a
 * band of e along all walls and, where bands meet, a square from e to h in each corner that neither heading reaches:
 *
 *     |   +-----      limit = W D - (W - 2 e)(D - 2 e) + 4 (h - e)^2
 *     |   | strips
 *     |   +--+        compact: s 0.21, f 0.37, e = 0.105, h = 0.33
 *     |  h   |
 *     +------+--- e
 */
#include <string.h>
#include "job/classes.h"
#include "base/notice.h"
#include "plan/verify.h"
#include "support/floors.h"
#include "support/ox-test.h"

static OxPlan *
plan_of (const OxJob *job)
{
  g_autoptr (GError) error = NULL;
  OxPlan *plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (GPtrArray) breaches = ox_plan_verify (plan);
  for (guint i = 0; i < breaches->len; i++)
    g_test_message ("%s", ((const OxBreach *) g_ptr_array_index (breaches, i))->text);
  g_assert_cmpuint (breaches->len, ==, 0);
  const OxTotals *t = &plan->totals;
  ox_test_near (t->blasted_m2 + t->edge_m2, t->target_m2, 1e-9 * MAX (t->target_m2, 1));
  return plan;
}

static OxJob *
along_side (OxJob *base, guint side)
{
  g_autoptr (OxJob) job = base;
  OxRoom fields = *job->rooms[0];
  fields.direction = (OxDirection){ .kind = OX_DIRECTION_SIDE, .side = side };
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_room (builder, room);
  return ox_job_builder_end (builder);
}

static double
rectangle_limit (double width, double depth, const OxMachine *m)
{
  double e = m->left + m->wall_gap - m->blast_width / 2, h = m->front + m->wall_gap - m->blast_length / 2;
  return width * depth - (width - 2 * e) * (depth - 2 * e) + 4 * (h - e) * (h - e);
}

static void
rectangle_limits (void)
{
  static const char *const classes[] = { "compact", "medium", "large" };
  static const double sizes[][2] = { { 12, 8 }, { 20, 25 }, { 7.3, 9.1 } };
  for (guint c = 0; c < G_N_ELEMENTS (classes); c++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
      {
        g_autoptr (OxJob) job = ox_test_floor_rectangle (sizes[i][0], sizes[i][1], classes[c]);
        g_autoptr (OxPlan) plan = plan_of (job);
        ox_test_near (plan->totals.target_m2, sizes[i][0] * sizes[i][1], 1e-9);
        ox_test_near (plan->totals.edge_limit_m2, rectangle_limit (sizes[i][0], sizes[i][1], job->machine), 1e-6);
        double reach = plan->totals.target_m2 - plan->totals.edge_limit_m2;
        double pitch = job->machine->blast_width - job->machine->min_overlap;
        ox_test_near (plan->totals.ideal_hours,
                      reach / (pitch * job->machine->travel_speed * 60)
                          + plan->totals.edge_limit_m2 / job->rates.edge_m2_per_hour,
                      1e-6);
      }
}

/* Lanes along the wall of 12 m of a hall 8 m deep: W = 8 - 2 e = 7.79 m to be covered by 0.21 m with 0.02 m of overlap:
 * ceil ((7.79 - 0.21) / 0.19) + 1 = ceil (39.895) + 1 = 41 lanes, 7.58 / 40 = 0.1895 m apart, the first one 0.21 m from
 * the wall. */
static void
rectangle_lanes (void)
{
  g_autoptr (OxJob) job = along_side (ox_test_floor_rectangle (12, 8, "compact"), 0);
  g_autoptr (OxPlan) plan = plan_of (job);
  g_assert_cmpuint (plan->n_chalks, ==, 1);
  g_assert_cmpuint (plan->chalks[0].lanes, ==, 41);
  ox_test_near (plan->chalks[0].spacing, 0.1895, 1e-4);
  ox_test_near (plan->chalks[0].first_distance, 0.21, 1e-4);
}

/* A machine as wide as its pattern, 10 in with 1 in of overlap, in a room of 354 in: 40 lanes, 1.17949 in of overlap
 * (passes across a width: (40 x 10 - 354) / 39). */
static void
rectangle_inches (void)
{
  const double inch = 0.0254;
  g_autoptr (OxMachine) machine = ox_machine_copy (ox_classes_find ("compact"));
  machine->blast_width = 10 * inch;
  machine->min_overlap = inch;
  machine->left = machine->right = 5 * inch;
  machine->wall_gap = 0;
  g_autoptr (OxJob) base = along_side (ox_test_floor_rectangle (15, 354 * inch, "compact"), 0);
  OxJobBuilder *builder = ox_job_builder_new (base);
  ox_job_builder_set_machine (builder, machine);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (OxPlan) plan = plan_of (job);
  g_assert_cmpuint (plan->n_chalks, ==, 1);
  g_assert_cmpuint (plan->chalks[0].lanes, ==, 40);
  ox_test_near (machine->blast_width - plan->chalks[0].spacing, 1.17949 * inch, 1e-4);
}

/* A width of a whole number of spacings gains no lane: 0.42 + 10 x 0.19 m takes 11 lanes at the least overlap. */
static void
rectangle_whole_spacings (void)
{
  g_autoptr (OxJob) job = along_side (ox_test_floor_rectangle (9, 2.32, "compact"), 0);
  g_autoptr (OxPlan) plan = plan_of (job);
  g_assert_cmpuint (plan->n_chalks, ==, 1);
  g_assert_cmpuint (plan->chalks[0].lanes, ==, 11);
  ox_test_near (plan->chalks[0].spacing, 0.19, 1e-4);
}

/* One lane fits exactly into a room of 0.42 m. Run both ways it reaches all but h at each end: 10 - 2 x 0.33 = 9.34 m
 * of 0.21 m; run one way all but h at one end and rear - l / 2 = 1.21 m at the other: 8.46 m. */
static void
single_lane (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 0.42, "compact");
  g_autoptr (OxPlan) plan = plan_of (job);
  ox_test_near (plan->totals.edge_limit_m2, 4.2 - 9.34 * 0.21, 1e-6);
  g_assert_cmpfloat (plan->totals.blasted_m2, >=, 8.46 * 0.21 - 1e-3);
  for (guint i = 0; i < plan->n_strips; i++)
    ox_test_near (plan->strips[i].a.y, 0.21, 1e-4);
}

static void
expect_all_edge (const OxJob *job, double area)
{
  g_autoptr (OxPlan) plan = plan_of (job);
  g_assert_cmpuint (plan->n_strips, ==, 0);
  g_assert_cmpuint (plan->n_moves, ==, 0);
  ox_test_near (plan->totals.target_m2, area, 1e-9);
  ox_test_near (plan->totals.edge_m2, area, 1e-9);
  ox_test_near (plan->totals.edge_limit_m2, area, 1e-6);
  ox_test_near (plan->totals.labour_hours, area / job->rates.edge_m2_per_hour, 1e-9);
}

/* The body takes 0.42 m across and 1.25 + 0.37 m along, and a strip is 0.5 m at the least: neither room lets one in. */
static void
machine_wider_than_room (void)
{
  g_autoptr (OxJob) narrow = ox_test_floor_rectangle (5, 0.41, "compact");
  g_autoptr (OxJob) small = ox_test_floor_rectangle (1.4, 1.4, "compact");
  expect_all_edge (narrow, 5 * 0.41);
  expect_all_edge (small, 1.4 * 1.4);
}

static OxJob *
with_solid (OxJob *base, OxPoint centre, double width, double depth)
{
  g_autoptr (OxJob) job = base;
  OxObstacle fields = { .id = (char *) "O1", .name = (char *) "", .kind = OX_OBSTACLE_SOLID };
  fields.shape = (OxShape){ .kind = OX_SHAPE_RECTANGLE, .centre = centre, .width = width, .depth = depth };
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_obstacle (builder, obstacle);
  return ox_job_builder_end (builder);
}

static void
obstacle_swallows_room (void)
{
  g_autoptr (OxJob) job = with_solid (ox_test_floor_rectangle (6, 4, "compact"), (OxPoint){ 3, 2 }, 8, 8);
  expect_all_edge (job, 0);
}

/* What an obstacle leaves of a room: a border of 0.3 m all round, too narrow for the body. */
static void
obstacle_leaves_border (void)
{
  g_autoptr (OxJob) job = with_solid (ox_test_floor_rectangle (6, 4, "compact"), (OxPoint){ 3, 2 }, 5.4, 3.4);
  expect_all_edge (job, 6 * 4 - 5.4 * 3.4);
}

static void
no_rooms (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_set_machine (builder, ox_classes_find ("compact"));
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (OxPlan) plan = plan_of (job);
  g_assert_cmpuint (plan->n_strips + plan->n_edges + plan->n_zones + plan->n_chalks, ==, 0);
  g_assert_true (plan->totals.labour_hours == 0);
}

/* With the floor going on beyond all sides every spot is reached. */
static void
open_all_round (void)
{
  g_autoptr (OxJob) walls = ox_test_floor_rectangle (9, 6, "compact");
  OxRoom fields = *walls->rooms[0];
  OxSide sides[4] = { { OX_SIDE_OPEN, 0 }, { OX_SIDE_OPEN, 0 }, { OX_SIDE_OPEN, 0 }, { OX_SIDE_OPEN, 0 } };
  fields.sides = sides;
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (walls);
  ox_job_builder_put_room (builder, room);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (OxPlan) plan = plan_of (job);
  ox_test_near (plan->totals.edge_limit_m2, 0, 1e-6);
  g_assert_cmpfloat (plan->totals.edge_m2, <, 0.001 * 54);
}

/* A drop with a keep-back of 0.6 m instead of a wall pushes the body off: side 0.19 + gap 0.02 + 0.6, so 0.6 m more
 * stay edge work along that side, measured where no corner is near. */
static void
drop_along_side (void)
{
  g_autoptr (OxJob) walls = ox_test_floor_rectangle (12, 8, "compact");
  OxRoom fields = *walls->rooms[0];
  OxSide sides[4] = { { OX_SIDE_DROP, 0.6 }, { OX_SIDE_WALL, 0 }, { OX_SIDE_WALL, 0 }, { OX_SIDE_WALL, 0 } };
  fields.sides = sides;
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (walls);
  ox_job_builder_put_room (builder, room);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (OxPlan) plan = plan_of (job);
  ox_test_near (plan->totals.edge_limit_m2, 0.6 * 12 + rectangle_limit (12, 7.4, job->machine), 0.01);
  for (guint i = 0; i < plan->n_strips; i++)
    g_assert_cmpfloat (MIN (plan->strips[i].a.y, plan->strips[i].b.y), >=, 0.81 - 0.002);
}

/* What the strips of one coat cover. */
static OxRegion *
covered_by (const OxPlan *plan, guint coat)
{
  g_autofree OxPoint *corners = g_new (OxPoint, 4 * plan->n_strips + 1);
  guint n = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].coat == coat)
      ox_strip_corners (&plan->strips[i], plan->job->machine->blast_length, corners + 4 * n++);
  return ox_region_union_quads (corners, n);
}

/* Each of two coats covers all of a hall that lies 0.33 m (as far as the pattern stays off a wall ahead) and more from its walls; the second one's
 * main strips run across the first one's. The limit is that of one coat, the ideal hours those of the strips twice and the limit by hand once. */
static void
two_coats (void)
{
  g_autoptr (OxJob) job = ox_test_floor_with_coats (ox_test_floor_rectangle (12, 8, "compact"), 2, 90);
  g_autoptr (OxPlan) plan = plan_of (job);
  g_autoptr (OxRegion) inner = ox_test_region ("POLYGON ((0.33 0.33, 11.67 0.33, 11.67 7.67, 0.33 7.67, 0.33 0.33))");
  double limit = rectangle_limit (12, 8, job->machine), sum = 0, heading = NAN;
  for (guint coat = 1; coat <= 2; coat++)
    {
      g_autoptr (OxRegion) covered = covered_by (plan, coat);
      g_autoptr (OxRegion) missed = ox_region_difference (inner, covered);
      ox_test_near (ox_region_area (missed), 0, 0.02);
      sum += ox_region_area (covered);
    }
  ox_test_near (plan->totals.coats_m2, sum, 1e-6);
  ox_test_near (plan->totals.edge_limit_m2, limit, 1e-6);
  ox_test_near (plan->totals.ideal_hours, 2 * (96 - limit) / (0.19 * 6 * 60) + limit / 4, 1e-6);
  g_assert_cmpfloat (plan->totals.edge_m2, <, 1.2 * limit);
  g_assert_cmpfloat (plan->totals.double_m2, <, 0.2 * sum);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      if (i > 0)
        g_assert_cmpuint (strip->coat, >=, strip[-1].coat);
      if (strip->kind != OX_STRIP_MAIN)
        continue;
      heading = isnan (heading) ? strip->heading : heading;
      ox_test_near (fabs (sin (strip->heading - heading)), strip->coat - 1, 1e-3);
    }
  g_assert_cmpuint (plan->n_chalks, ==, 2);
  g_assert_cmpuint (plan->chalks[1].coat, ==, 2);
}

/* An area of 3 x 2 m with a coat more, along y as the first runs along x: ceil ((3 - 0.21) / 0.19) + 1 = 16 lanes of 2 - 0.08 m that cover all of
 * it and nothing else, since the body may stand all round. */
static void
one_coat_more (void)
{
  g_autoptr (OxJob) job
      = ox_test_floor_with_condition (along_side (ox_test_floor_rectangle (12, 8, "compact"), 0), (OxBox){ 4, 3, 7, 5 }, 0, 2);
  g_autoptr (OxJob) plain = along_side (ox_test_floor_rectangle (12, 8, "compact"), 0);
  g_autoptr (OxPlan) plan = plan_of (job);
  g_autoptr (OxPlan) without = plan_of (plain);
  g_autoptr (OxRegion) covered = covered_by (plan, 2);
  g_autoptr (OxRegion) area = ox_test_region ("POLYGON ((4 3, 7 3, 7 5, 4 5, 4 3))");
  ox_test_near (ox_test_difference_area (covered, area), 0, 1e-3);
  g_assert_cmpuint (plan->n_strips, ==, without->n_strips + 16);
  ox_test_near (plan->totals.strip_m, without->totals.strip_m + 16 * 1.92, 1e-2);
  ox_test_near (plan->totals.edge_m2, without->totals.edge_m2, 1e-3);
}

/* A room in two coats, an area of 3 x 2 m in it in one: coat 2 keeps off it. */
static void
one_coat_less (void)
{
  OxJob *base = ox_test_floor_with_coats (ox_test_floor_rectangle (12, 8, "compact"), 2, 90);
  g_autoptr (OxJob) job = ox_test_floor_with_condition (base, (OxBox){ 4, 3, 7, 5 }, 0, 1);
  g_autoptr (OxPlan) plan = plan_of (job);
  g_autoptr (OxRegion) area = ox_test_region ("POLYGON ((4 3, 7 3, 7 5, 4 5, 4 3))");
  g_autoptr (OxRegion) first = covered_by (plan, 1);
  g_autoptr (OxRegion) second = covered_by (plan, 2);
  g_autoptr (OxRegion) none = ox_region_intersection (second, area);
  g_autoptr (OxRegion) missed = ox_region_difference (area, first);
  ox_test_near (ox_region_area (none), 0, 1e-3);
  ox_test_near (ox_region_area (missed), 0, 1e-6);
}

/* Across a corridor of 1.2 m a strip would have to turn where no swing fits: both coats run along it, and a notice says so. */
static void
no_room_across (void)
{
  g_autoptr (OxJob) job = ox_test_floor_with_coats (ox_test_floor_rectangle (12, 1.2, "compact"), 2, 90);
  g_autoptr (OxPlan) plan = plan_of (job);
  for (guint i = 0; i < plan->n_strips; i++)
    ox_test_near (sin (plan->strips[i].heading), 0, 1e-3);
  g_assert_cmpuint (plan->strips[plan->n_strips - 1].coat, ==, 2);
  g_assert_nonnull (plan->notices[0]);
  g_autofree char *text = ox_notice_text (plan->notices[0]);
  g_assert_nonnull (strstr (text, "coat 2 runs along the lanes of coat 1"));
}

/* A band from x = 3 to x = 6 at 3 instead of 6 m/min: what lies in it of a strip takes twice as long. */
static void
slower_band (void)
{
  g_autoptr (OxJob) job
      = ox_test_floor_with_condition (along_side (ox_test_floor_rectangle (12, 8, "compact"), 0), (OxBox){ 3, -1, 6, 9 }, 3, 0);
  g_autoptr (OxPlan) plan = plan_of (job);
  guint through = 0;
  double minutes = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      double low = MIN (strip->a.x, strip->b.x), high = MAX (strip->a.x, strip->b.x);
      double within = fabs (cos (strip->heading)) > 0.5 ? MAX (MIN (high, 6) - MAX (low, 3), 0)
                      : low > 3 && low < 6              ? ox_strip_length (strip)
                                                        : 0;
      ox_test_near (strip->minutes, (ox_strip_length (strip) + within) / 6, 2e-3);
      minutes += (ox_strip_length (strip) + within) / 6;
      through += low < 2 && high > 7 && strip->n_paces == 3;
    }
  ox_test_near (plan->totals.strip_hours, minutes / 60, 1e-3);
  g_assert_cmpuint (through, >, 30);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/closed-forms/rectangle/limits", rectangle_limits);
  g_test_add_func ("/plan/closed-forms/rectangle/lanes", rectangle_lanes);
  g_test_add_func ("/plan/closed-forms/rectangle/inches", rectangle_inches);
  g_test_add_func ("/plan/closed-forms/rectangle/whole-spacings", rectangle_whole_spacings);
  g_test_add_func ("/plan/closed-forms/single-lane", single_lane);
  g_test_add_func ("/plan/closed-forms/machine-wider-than-room", machine_wider_than_room);
  g_test_add_func ("/plan/closed-forms/obstacle/swallows-room", obstacle_swallows_room);
  g_test_add_func ("/plan/closed-forms/obstacle/leaves-border", obstacle_leaves_border);
  g_test_add_func ("/plan/closed-forms/no-rooms", no_rooms);
  g_test_add_func ("/plan/closed-forms/sides/open-all-round", open_all_round);
  g_test_add_func ("/plan/closed-forms/sides/drop", drop_along_side);
  g_test_add_func ("/plan/closed-forms/coats/two", two_coats);
  g_test_add_func ("/plan/closed-forms/coats/one-more", one_coat_more);
  g_test_add_func ("/plan/closed-forms/coats/one-less", one_coat_less);
  g_test_add_func ("/plan/closed-forms/coats/no-room-across", no_room_across);
  g_test_add_func ("/plan/closed-forms/slower-band", slower_band);
  return g_test_run ();
}
