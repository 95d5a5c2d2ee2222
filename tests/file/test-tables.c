/* Oxturn: tests/file/test-tables
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/tables.h"
#include "job/job-making.h"
#include "plan-making.h"

static void
test_floor (void)
{
  g_auto (HandPlan) hand;
  hand_plan_init (&hand);
  g_autofree char *text = ox_table_floor (&hand.plan);
  g_auto (GStrv) rows = g_strsplit (text, "\r\n", -1);
  g_assert_cmpuint (g_strv_length (rows), ==, 12);
  g_assert_cmpstr (rows[0], ==, "id,kind,name,wkt,coats,speed_m_per_min");
  g_assert_true (g_str_has_prefix (rows[1], "R1,room,Hall,\"POLYGON ((0 0, 12 0, 12 8, 0 8, 0 0))\",1,"));
  g_assert_true (g_str_has_prefix (rows[2], "O1,solid,Column,\"POLYGON (("));
  g_assert_true (g_str_has_prefix (rows[3], "O2,pit,,\"POLYGON (("));
  g_assert_true (g_str_has_prefix (rows[4], "O3,masked,,\"POLYGON (("));
  g_assert_true (g_str_has_prefix (rows[5], "X1,excluded,By others,\"POLYGON (("));
  g_assert_true (g_str_has_prefix (rows[6], "K1,condition,"));
  g_assert_true (g_str_has_prefix (rows[7], "D1,doorway,Gate,\"POLYGON (("));
  g_assert_cmpstr (rows[8], ==, "J1,joint,,\"LINESTRING (0 4, 12 4)\",,");
  g_assert_true (g_str_has_prefix (rows[9], "target,target,,\"MULTIPOLYGON ((("));
  g_assert_cmpstr (rows[10], ==, "travel,travel,,\"MULTIPOLYGON EMPTY\",,");
  g_assert_cmpstr (rows[11], ==, "");
}

static void
test_strips (void)
{
  g_auto (HandPlan) hand;
  hand_plan_init (&hand);
  g_autofree char *text = ox_table_strips (&hand.plan);
  g_auto (GStrv) rows = g_strsplit (text, "\r\n", -1);
  g_assert_cmpuint (g_strv_length (rows), ==, 4);
  g_assert_cmpstr (rows[0], ==,
                   "order,strip,room,lane,kind,coat,x1,y1,x2,y2,heading_deg,length_m,width_m,"
                   "speed_m_per_min,minutes,station,wkt,supply,hose_m,cord_m,caution,paces,done");
  g_assert_true (g_str_has_prefix (rows[1], "1,1,R1,1,main,1,1,2,7,2,0,6,0.21,6,1,S1,\"POLYGON (("));
  g_assert_true (g_str_has_prefix (rows[2], "2,2,R1,3,crosswise,2,3,7,3,4,270,3,0.21,6,0.5,,\"POLYGON (("));
  /* The first strip covers 0.04 m more at both ends: 6.08 m x 0.21 m. */
  g_auto (GStrv) fields = g_strsplit (rows[1], "\"", -1);
  g_autoptr (OxRegion) covered = ox_test_region (fields[1]);
  ox_test_near (ox_region_area (covered), 6.08 * 0.21, 1e-6);
  g_assert_true (ox_region_contains (covered, (OxPoint){ 0.961, 2.104 }));
  g_assert_true (ox_region_contains (covered, (OxPoint){ 7.039, 1.896 }));
}

static void
test_heading (void)
{
  static const struct
  {
    double radians;
    const char *text;
  } rows[] = {
    { 0, ",0," },           { G_PI, ",180," },     { -1e-12, ",0," },     { 2 * G_PI, ",0," },
    { -G_PI / 4, ",315," }, { 1.0, ",57.29578," }, { 7 * G_PI, ",180," },
  };
  g_auto (HandPlan) hand;
  hand_plan_init (&hand);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      hand.strips[0].heading = rows[i].radians;
      g_autofree char *text = ox_table_strips (&hand.plan);
      g_autofree char *part = g_strconcat (",1,2,7,2", rows[i].text, NULL);
      g_assert_nonnull (strstr (text, part));
    }
}

static void
test_moves (void)
{
  g_auto (HandPlan) hand;
  hand_plan_init (&hand);
  g_autofree char *text = ox_table_moves (&hand.plan);
  g_assert_cmpstr (text, ==,
                   "order,from_strip,to_strip,kind,minutes,length_m,cx,cy,wkt\r\n"
                   "1,1,2,swing,0.45,6,8,2.5,\"LINESTRING (7 2, 8 2.5, 3 7)\"\r\n");
  hand.moves[0].turns = FALSE;
  hand.moves[0].kind = OX_MOVE_WALK;
  hand.moves[0].n_path = 0;
  g_autofree char *carried = ox_table_moves (&hand.plan);
  g_assert_nonnull (strstr (carried, "1,1,2,walk,0.45,6,,,\"LINESTRING EMPTY\"\r\n"));
}

static void
test_zones_and_edges (void)
{
  g_auto (HandPlan) hand;
  hand_plan_init (&hand);
  g_autofree char *zones = ox_table_zones (&hand.plan);
  g_assert_cmpstr (zones, ==, "id,room,area_m2,wkt,coat\r\nZ1,R1,1.5,\"POLYGON ((0 0, 1.5 0, 1.5 1, 0 1, 0 0))\",1\r\n");
  g_autofree char *edges = ox_table_edges (&hand.plan);
  g_assert_cmpstr (edges, ==,
                   "id,room,cause,area_m2,length_m,wkt,done\r\n"
                   "E1,R1,corner,0.333333,2.5,\"POLYGON ((0 0, 1 0, 0 1, 0 0))\",\r\n");
}

/* A proposed one is told by its kind; one that serves nothing has no farthest strip. */
static void
test_stations (void)
{
  g_auto (HandPlan) hand;
  hand_plan_init (&hand);
  g_autofree char *text = ox_table_stations (&hand.plan);
  g_assert_cmpstr (text, ==,
                   "id,kind,x,y,length_m,strips,farthest_m\r\n"
                   "S1,collector,1,1,20,1,6.25\r\n"
                   "S2,supply,1.0001,1,30,1,7.5\r\n"
                   "P1,proposed-supply,4,0.4,30,0,\r\n");
}

/* One column of a table as numbers, added up; quoted fields come last, so that commas in them do not matter. */
static double
sum_column (const char *text, guint column)
{
  double sum = 0;
  g_auto (GStrv) rows = g_strsplit (text, "\r\n", -1);
  for (guint i = 1; rows[i] && *rows[i]; i++)
    {
      g_auto (GStrv) fields = g_strsplit (rows[i], ",", -1);
      sum += g_ascii_strtod (fields[column], NULL);
    }
  return sum;
}

static double
sum_areas (const char *text)
{
  double sum = 0;
  g_auto (GStrv) rows = g_strsplit (text, "\r\n", -1);
  for (guint i = 1; rows[i] && *rows[i]; i++)
    {
      g_auto (GStrv) fields = g_strsplit (rows[i], "\"", -1);
      g_autoptr (OxRegion) region = ox_test_region (fields[1]);
      sum += ox_region_area (region);
    }
  return sum;
}

/* What the tables of a real plan add up to is what its totals say. */
static void
test_sums (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxRoom) room = make_room ("R1", "POLYGON ((0 0, 12 0, 12 8, 0 8, 0 0))");
  g_autoptr (OxObstacle) column = make_rectangle ("O1", OX_OBSTACLE_SOLID, (OxBox){ 5, 3, 5.5, 3.5 });
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_put_room (builder, room);
  ox_job_builder_put_obstacle (builder, column);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  g_autofree char *strips = ox_table_strips (plan);
  g_autofree char *moves = ox_table_moves (plan);
  g_autofree char *edges = ox_table_edges (plan);
  g_assert_cmpuint (plan->n_strips, >, 10);
  ox_test_near (sum_column (strips, 11), plan->totals.strip_m, 1e-4);
  ox_test_near (sum_column (strips, 14) / 60, plan->totals.strip_hours, 1e-6);
  ox_test_near (sum_column (moves, 4) / 60, plan->totals.move_hours, 1e-6);
  ox_test_near (sum_column (edges, 3), plan->totals.edge_m2, 1e-3);
  ox_test_near (sum_areas (edges), plan->totals.edge_m2, 1e-3);
}

static void
test_write (void)
{
  static const char *const names[] = { "floor.csv",    "strips.csv",   "moves.csv",      "zones.csv", "edge.csv",
                                       "stations.csv", "summary.json", "quantities.csv", "shifts.csv", "cost.csv", "checks.csv", "days.csv",
                                       "record.csv" };
  g_auto (HandPlan) hand;
  g_autoptr (GError) error = NULL;
  char *folder = ox_test_folder_new ();
  hand_plan_init (&hand);
  for (guint again = 0; again < 2; again++)
    {
      g_assert_true (ox_tables_write (&hand.plan, folder, &error));
      g_assert_no_error (error);
    }
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL);
      g_assert_true (g_file_test (path, G_FILE_TEST_IS_REGULAR));
    }
  g_autofree char *below_file = g_build_filename (folder, "floor.csv", "deeper", NULL);
  g_assert_false (ox_tables_write (&hand.plan, below_file, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOTDIR);
  ox_test_folder_free (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/tables/floor", test_floor);
  g_test_add_func ("/file/tables/strips", test_strips);
  g_test_add_func ("/file/tables/strips/heading", test_heading);
  g_test_add_func ("/file/tables/moves", test_moves);
  g_test_add_func ("/file/tables/zones-and-edges", test_zones_and_edges);
  g_test_add_func ("/file/tables/stations", test_stations);
  g_test_add_func ("/file/tables/sums", test_sums);
  g_test_add_func ("/file/tables/write", test_write);
  return g_test_run ();
}
