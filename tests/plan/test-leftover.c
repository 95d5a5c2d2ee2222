/* Oxturn: plan/leftover: edge work and turnaround zones of floors blasted by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "draft.h"
#include "judge.h"
#include "plan/leftover.h"
#include "support/floors.h"
#include "support/ox-test.h"

typedef struct
{
  OxPlan plan;
  OxFloor *floor;
} Edges;

/* The edge work that @blasted leaves; it is all of the rest, each spot once, numbered from E1. */
static Edges
edges_of (const OxJob *job, const char *blasted_wkt, gboolean reachable)
{
  Edges edges = { .plan = { .job = (OxJob *) job }, .floor = ox_floor_new (job) };
  g_autoptr (OxRegion) blasted = ox_test_region (blasted_wkt);
  g_autoptr (OxRegion) limit = reachable ? ox_region_ref (edges.floor->target) : ox_region_new_empty ();
  g_autoptr (OxRegion) rest = ox_region_difference (edges.floor->target, blasted);
  g_autoptr (GPtrArray) regions = g_ptr_array_new ();
  double sum = 0;
  ox_leftover_edges (edges.floor, blasted, limit, &edges.plan);
  for (guint i = 0; i < edges.plan.n_edges; i++)
    {
      const OxEdge *edge = &edges.plan.edges[i];
      g_autofree char *id = g_strdup_printf ("E%u", i + 1);
      g_assert_cmpstr (edge->id, ==, id);
      ox_test_near (ox_region_area (edge->region), edge->area, 1e-9);
      sum += edge->area;
      g_ptr_array_add (regions, edge->region);
    }
  g_autoptr (OxRegion) all = ox_region_union_many ((const OxRegion *const *) regions->pdata, regions->len);
  ox_test_near (sum, ox_region_area (rest), 1e-6);
  ox_test_near (ox_test_difference_area (all, rest), 0, 1e-6);
  return edges;
}

static void
end (Edges *edges)
{
  for (guint i = 0; i < edges->plan.n_edges; i++)
    {
      g_free (edges->plan.edges[i].id);
      ox_region_unref (edges->plan.edges[i].region);
    }
  g_free (edges->plan.edges);
  ox_floor_free (edges->floor);
}

static const OxEdge *
find (const Edges *edges, OxCause cause)
{
  for (guint i = 0; i < edges->plan.n_edges; i++)
    if (edges->plan.edges[i].cause == cause)
      return &edges->plan.edges[i];
  return NULL;
}

/* A band of 0.105 m along one wall of 10 m. */
static void
wall (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  Edges edges = edges_of (job, "POLYGON ((0 0.105, 10 0.105, 10 6, 0 6, 0 0.105))", TRUE);
  g_assert_cmpuint (edges.plan.n_edges, ==, 1);
  g_assert_cmpint (edges.plan.edges[0].cause, ==, OX_CAUSE_WALL);
  ox_test_near (edges.plan.edges[0].area, 1.05, 1e-9);
  ox_test_near (edges.plan.edges[0].length, 10, 1e-6);
  end (&edges);
}

/* Kinds of sides give their causes. */
static void
sides (void)
{
  static const OxSideKind kinds[] = { OX_SIDE_WALL, OX_SIDE_DROP, OX_SIDE_OPEN };
  static const OxCause causes[] = { OX_CAUSE_WALL, OX_CAUSE_DROP, OX_CAUSE_REACH };
  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
    {
      g_autoptr (OxJob) base = ox_test_floor_rectangle (10, 6, "compact");
      OxSide own[4] = { { kinds[k], kinds[k] == OX_SIDE_DROP ? 0.5 : 0 } };
      OxRoom fields = *base->rooms[0];
      fields.sides = own;
      g_autoptr (OxRoom) room = ox_room_new (&fields);
      OxJobBuilder *builder = ox_job_builder_new (base);
      ox_job_builder_put_room (builder, room);
      g_autoptr (OxJob) job = ox_job_builder_end (builder);
      Edges edges = edges_of (job, "POLYGON ((0 0.1, 10 0.1, 10 6, 0 6, 0 0.1))", TRUE);
      g_assert_cmpuint (edges.plan.n_edges, ==, 1);
      g_assert_cmpint (edges.plan.edges[0].cause, ==, causes[k]);
      end (&edges);
    }
}

/* A ring of 0.1 m round a column of 2 x 2 m: 1 mm more than the column's own outline is long on the middle of the ring.
 */
static void
obstacles (void)
{
  static const OxObstacleKind kinds[] = { OX_OBSTACLE_SOLID, OX_OBSTACLE_PIT, OX_OBSTACLE_MASKED };
  static const OxCause causes[] = { OX_CAUSE_OBSTACLE, OX_CAUSE_DROP, OX_CAUSE_OBSTACLE };
  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
    {
      g_autoptr (OxJob) job
          = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), kinds[k], (OxPoint){ 5, 3 }, 2);
      Edges edges = edges_of (
          job, "POLYGON ((0 0, 10 0, 10 6, 0 6, 0 0), (3.9 1.9, 6.1 1.9, 6.1 4.1, 3.9 4.1, 3.9 1.9))", TRUE);
      g_assert_cmpuint (edges.plan.n_edges, ==, 1);
      g_assert_cmpint (edges.plan.edges[0].cause, ==, causes[k]);
      ox_test_near (edges.plan.edges[0].area, 2.2 * 2.2 - 4, 1e-9);
      ox_test_near (edges.plan.edges[0].length, 8.4, 1e-6);
      end (&edges);
    }
}

/* A corner where strips along neither wall reach: beyond the walls' own bands it is the corner's. */
static void
corner (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  Edges edges = edges_of (job, "POLYGON ((0 0.33, 0.33 0.33, 0.33 0, 10 0, 10 6, 0 6, 0 0.33))", FALSE);
  g_assert_nonnull (find (&edges, OX_CAUSE_CORNER));
  g_assert_nonnull (find (&edges, OX_CAUSE_WALL));
  g_assert_null (find (&edges, OX_CAUSE_NARROW));
  ox_test_near (find (&edges, OX_CAUSE_CORNER)->area, (0.33 - 0.165) * (0.33 - 0.165), 1e-6);
  end (&edges);
}

/* Floor off all walls is too narrow where the machine cannot get, left for other reasons where it can. */
static void
loose (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  const char *blasted = "POLYGON ((0 0, 10 0, 10 6, 0 6, 0 0), (4 2, 6 2, 6 2.5, 4 2.5, 4 2))";
  Edges narrow = edges_of (job, blasted, FALSE), reach = edges_of (job, blasted, TRUE);
  g_assert_cmpuint (narrow.plan.n_edges, ==, 1);
  g_assert_cmpint (narrow.plan.edges[0].cause, ==, OX_CAUSE_NARROW);
  ox_test_near (narrow.plan.edges[0].length, 2, 1e-6);
  g_assert_cmpuint (reach.plan.n_edges, ==, 1);
  g_assert_cmpint (reach.plan.edges[0].cause, ==, OX_CAUSE_REACH);
  end (&narrow);
  end (&reach);
}

/* Every room has its own edge work; crumbs of a room are one area. */
static void
rooms_and_crumbs (void)
{
  g_autoptr (OxJob) job = judge_two_rooms (0.5, 1.5);
  Edges edges = edges_of (job,
                          "POLYGON ((0 0, 10 0, 10 1.9, 0 1.9, 0 0), (2 1, 2.1 1, 2.1 1.1, 2 1.1, 2 1),"
                          " (3 1, 3.1 1, 3.1 1.1, 3 1.1, 3 1))",
                          TRUE);
  double walls[2] = { 0, 0 };
  guint crumbs = 0;
  for (guint i = 0; i < edges.plan.n_edges; i++)
    {
      const OxEdge *edge = &edges.plan.edges[i];
      if (i > 0)
        g_assert_cmpuint (edge->room, >=, edges.plan.edges[i - 1].room);
      if (edge->cause == OX_CAUSE_WALL)
        {
          walls[edge->room] += edge->area;
          continue;
        }
      crumbs++;
      g_assert_cmpuint (edge->room, ==, 0);
      ox_test_near (edge->area, 0.02, 1e-6);
    }
  g_assert_cmpuint (crumbs, ==, 1);
  ox_test_near (walls[0], 0.5, 1e-6);
  ox_test_near (walls[1], 0.5, 1e-6);
  end (&edges);
}

/* Two strips of 5 m that overlap by 0.02 m. */
static void
blasted (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  g_autoptr (Draft) draft = draft_new (job);
  OxBlasted sums;
  draft_strip (draft, 2, 3, 7, 3);
  draft_strip (draft, 7, 3.19, 2, 3.19);
  draft_finish (draft);
  g_autoptr (OxRegion) region = ox_leftover_blasted (floor, &draft->plan, &sums);
  ox_test_near (ox_region_area (region), 5.08 * 0.40, 1e-9);
  ox_test_near (sums.gross_m2, 5.08 * 0.42, 1e-9);
  ox_test_near (sums.covered_m2, 5.08 * 0.40, 1e-9);
}

static void
no_strips (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  OxPlan plan = { .job = job };
  OxBlasted sums;
  g_autoptr (OxRegion) region = ox_leftover_blasted (floor, &plan, &sums);
  g_assert_true (ox_region_is_empty (region));
  ox_test_near (sums.gross_m2, 0, 1e-12);
  ox_test_near (sums.covered_m2, 0, 1e-12);
}

/* Crosswise strips @n abreast from x = 1 on, 3 m long, and two main strips that start on the third of them. */
static void
expect_zones (guint n, guint zones, double area)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  g_autoptr (Draft) draft = draft_new (job);
  for (guint i = 0; i < n; i++)
    draft_strip (draft, 1 + i * 0.19, 1.5, 1 + i * 0.19, 4.5)->kind = OX_STRIP_CROSSWISE;
  draft_strip (draft, 4, 3, 7, 3);
  draft_finish (draft);
  ox_leftover_zones (floor, &draft->plan);
  g_assert_cmpuint (draft->plan.n_zones, ==, zones);
  for (guint i = 0; i < zones; i++)
    {
      OxZone *zone = &draft->plan.zones[i];
      g_assert_cmpstr (zone->id, ==, "Z1");
      ox_test_near (zone->area, area, 1e-6);
      ox_test_near (ox_region_area (zone->region), area, 1e-6);
      g_free (zone->id);
      ox_region_unref (zone->region);
    }
  g_clear_pointer (&draft->plan.zones, g_free);
}

/* One strip is no zone; six of them are one of (5 x 0.19 + 0.21) x 3.08 m. */
static void
zones (void)
{
  expect_zones (0, 0, 0);
  expect_zones (1, 0, 0);
  expect_zones (6, 1, (5 * 0.19 + 0.21) * 3.08);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/leftover/wall", wall);
  g_test_add_func ("/plan/leftover/sides", sides);
  g_test_add_func ("/plan/leftover/obstacles", obstacles);
  g_test_add_func ("/plan/leftover/corner", corner);
  g_test_add_func ("/plan/leftover/loose", loose);
  g_test_add_func ("/plan/leftover/rooms-and-crumbs", rooms_and_crumbs);
  g_test_add_func ("/plan/leftover/blasted", blasted);
  g_test_add_func ("/plan/leftover/no-strips", no_strips);
  g_test_add_func ("/plan/leftover/zones", zones);
  return g_test_run ();
}
