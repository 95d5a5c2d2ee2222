/* Oxturn: plan/tether - a taut hose about columns, against closed forms and the shortest way.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/tether.h"
#include "judge.h"
#include "support/floors.h"
#include "support/ox-test.h"

/* A column of 2 m in the middle of 20 x 10 m. */
#define ONE_COLUMN "POLYGON ((0 0, 20 0, 20 10, 0 10, 0 0), (9 4, 11 4, 11 6, 9 6, 9 4))"

typedef struct
{
  OxRegion *floor;
  OxReach *reach;
  OxTether *tether;
} Hose;

static Hose
hose_from (const char *wkt, OxPoint station, OxPoint machine)
{
  Hose hose = { .floor = ox_test_region (wkt) };
  hose.reach = ox_reach_new (hose.floor, 200);
  hose.tether = ox_tether_new (hose.reach);
  g_autoptr (OxReachTree) tree = ox_reach_tree_new (hose.reach, station, 200);
  g_autoptr (GArray) path = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  ox_test_near (ox_reach_tree_path (tree, machine, path), ox_reach_tree_distance (tree, machine), 1e-12);
  ox_tether_lay (hose.tether, path);
  ox_test_near (ox_tether_length (hose.tether), ox_reach_tree_distance (tree, machine), 1e-9);
  return hose;
}

static void
hose_clear (Hose *hose)
{
  ox_tether_free (hose->tether);
  ox_reach_free (hose->reach);
  ox_region_unref (hose->floor);
}

/* Out above the column, down behind it and back below it: the hose bends at three corners, then comes free on the way back. */
static void
round_a_column (void)
{
  Hose hose = hose_from (ONE_COLUMN, (OxPoint){ 2, 5 }, (OxPoint){ 2, 8 });
  ox_tether_drag (hose.tether, (OxPoint){ 18, 8 });
  ox_test_near (ox_tether_length (hose.tether), hypot (16, 3), 1e-9);
  ox_test_near (ox_tether_turn (hose.tether), 0, 1e-9);
  ox_tether_drag (hose.tether, (OxPoint){ 18, 2 });
  ox_test_near (ox_tether_length (hose.tether), hypot (7, 1) + 2 + hypot (7, 4), 1e-9);
  ox_tether_drag (hose.tether, (OxPoint){ 2, 2 });
  /* by (9 6), (11 6) and (11 4), from where it passes below (9 4) */
  ox_test_near (ox_tether_length (hose.tether), hypot (7, 1) + 2 + 2 + hypot (9, 2), 1e-9);
  ox_test_near (ox_tether_turn (hose.tether), G_PI + atan2 (1, 7) - atan2 (2, 9), 1e-9);
  ox_tether_drag (hose.tether, (OxPoint){ 18, 2 });
  ox_tether_drag (hose.tether, (OxPoint){ 18, 8 });
  ox_test_near (ox_tether_length (hose.tether), hypot (16, 3), 1e-9);
  ox_tether_drag (hose.tether, (OxPoint){ 2, 8 });
  ox_test_near (ox_tether_length (hose.tether), 3, 1e-9);
  hose_clear (&hose);
}

/* Once round the column: the whole outline of it, and half a turn more than there and back. */
static void
once_round (void)
{
  Hose hose = hose_from (ONE_COLUMN, (OxPoint){ 9, 2 }, (OxPoint){ 8, 3 });
  static const OxPoint round[] = { { 8, 7 }, { 12, 7 }, { 12, 3 }, { 9, 3 } };
  for (guint i = 0; i < G_N_ELEMENTS (round); i++)
    ox_tether_drag (hose.tether, round[i]);
  /* Straight up to (9 4), about three more corners, and back from (11 4), where it is to the left of the first piece. */
  ox_test_near (ox_tether_length (hose.tether), 2 + 2 + 2 + 2 + hypot (2, 1), 1e-9);
  g_assert_cmpfloat (ox_tether_turn (hose.tether), >, 1.2 * G_PI);
  hose_clear (&hose);
}

static OxPoint
point_of (const OxReach *reach)
{
  for (;;)
    {
      OxPoint p = { g_test_rand_double_range (0, 16), g_test_rand_double_range (0, 12) };
      if (ox_reach_holds (reach, p))
        return p;
    }
}

/* Wherever the machine rolls among columns: the hose is never shorter than the shortest way and never longer than what was pulled out, dragging it back the
 * same way brings it back, and in a room without solids it is straight. */
static void
random_rolls (void)
{
  static const char *const floors[]
      = { "POLYGON ((0 0, 16 0, 16 12, 0 12, 0 0))",
          "POLYGON ((0 0, 16 0, 16 12, 0 12, 0 0), (3 3, 4 3, 4 4, 3 4, 3 3), (8 3, 9 3, 9 4, 8 4, 8 3), (5 7, 7 8, 6 10, 4 9, 5 7), (12 6, 13 5, 14 6, 13 7, 12 6))" };
  guint bent = 0;
  for (guint round = 0; round < 400; round++)
    {
      OxPoint rolls[12];
      g_autoptr (OxRegion) floor = ox_test_region (floors[round % 2]);
      g_autoptr (OxReach) reach = ox_reach_new (floor, 200);
      OxPoint station = point_of (reach);
      rolls[0] = point_of (reach);
      Hose hose = hose_from (floors[round % 2], station, rolls[0]);
      g_autoptr (OxReachTree) tree = ox_reach_tree_new (hose.reach, station, 200);
      double first = ox_tether_length (hose.tether), pulled = first;
      guint n = 1;
      for (guint tries = 0; n < G_N_ELEMENTS (rolls) && tries < 100; tries++)
        {
          OxPoint to = point_of (reach);
          if (!ox_reach_sees (reach, rolls[n - 1], to))
            continue;
          pulled += ox_point_distance (rolls[n - 1], to);
          rolls[n++] = to;
          ox_tether_drag (hose.tether, to);
          double length = ox_tether_length (hose.tether);
          g_assert_cmpfloat (length, >=, ox_reach_tree_distance (tree, to) - 1e-6);
          g_assert_cmpfloat (length, <=, pulled + 1e-6);
          if (round % 2 == 0)
            ox_test_near (length, ox_point_distance (station, to), 1e-9);
          bent += length > ox_reach_tree_distance (tree, to) + 0.01;
        }
      while (n-- > 1)
        ox_tether_drag (hose.tether, rolls[n - 1]);
      ox_test_near (ox_tether_length (hose.tether), first, 1e-6);
      hose_clear (&hose);
    }
  g_assert_cmpuint (bent, >, 50);
}

static OxJob *
and_collector (OxJob *base, OxPoint at, double length)
{
  g_autoptr (OxJob) job = base;
  g_autoptr (OxStation) station
      = ox_station_new (&(OxStation){ .id = (char *) "S1", .name = (char *) "", .kind = OX_STATION_COLLECTOR, .at = at, .length = length });
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_station (builder, station);
  return ox_job_builder_end (builder);
}

/* Without solids nothing wraps, and the count is that of the flags. */
static void
flags (void)
{
  g_autoptr (OxJob) empty = and_collector (ox_test_floor_rectangle (14, 12, "compact"), (OxPoint){ 0.3, 6 }, 40);
  g_autoptr (OxPlan) plan = ox_plan_new (empty, NULL, NULL);
  g_assert_cmpuint (plan->totals.wraps, ==, 0);
  g_autoptr (OxJob) columns = and_collector (ox_test_floor_columns (24, 24, 0.5, 6, "compact"), (OxPoint){ 0.3, 12 }, 60);
  g_autoptr (OxPlan) other = ox_plan_new (columns, NULL, NULL);
  guint n = 0;
  for (guint i = 0; i < other->n_strips; i++)
    n += other->strips[i].hose_wraps || other->strips[i].cord_wraps;
  g_assert_cmpuint (other->totals.wraps, ==, n);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/tether/round-a-column", round_a_column);
  g_test_add_func ("/plan/tether/once-round", once_round);
  g_test_add_func ("/plan/tether/random-rolls", random_rolls);
  g_test_add_func ("/plan/tether/flags", flags);
  return g_test_run ();
}
