/* Oxturn: tests/job/test-job
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/job.h"
#include "job/job-making.h"

static void
test_find (void)
{
  g_autoptr (OxJob) job = make_job ();
  static const struct
  {
    const char *id;
    OxItemKind kind;
    guint index;
  } rows[] = {
    { "R1", OX_ITEM_ROOM, 0 },     { "R2", OX_ITEM_ROOM, 1 },    { "O2", OX_ITEM_OBSTACLE, 1 },
    { "X1", OX_ITEM_EXCLUDED, 0 }, { "D1", OX_ITEM_DOORWAY, 0 }, { "J1", OX_ITEM_JOINT, 0 },
    { "S1", OX_ITEM_STATION, 0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      guint index = 99;
      g_assert_cmpint (ox_job_find (job, rows[i].id, &index), ==, rows[i].kind);
      g_assert_cmpuint (index, ==, rows[i].index);
    }
  g_assert_cmpint (ox_job_find (job, "R3", NULL), ==, OX_ITEM_NONE);
  g_assert_true (ox_job_find_room (job, "R2") == job->rooms[1]);
  g_assert_null (ox_job_find_room (job, "O1"));
  g_assert_true (ox_job_find_obstacle (job, "O1") == job->obstacles[0]);
  g_assert_null (ox_job_find_obstacle (job, "R1"));
}

static void
assert_new_id (const OxJob *job, const char *prefix, const char *expected)
{
  g_autofree char *id = ox_job_new_id (job, prefix);
  g_assert_cmpstr (id, ==, expected);
}

static void
test_new_id (void)
{
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  assert_new_id (empty, "R", "R1");
  g_autoptr (OxJob) job = make_job ();
  assert_new_id (job, "R", "R3");
  assert_new_id (job, "O", "O3");
  assert_new_id (job, "Q", "Q1");
  /* A gap is filled; "R01" and "R1x" take no number. */
  OxJobBuilder *builder = ox_job_builder_new (job);
  g_assert_true (ox_job_builder_remove (builder, "R1"));
  g_autoptr (OxStation) odd = make_station ("R1x", (OxPoint){ 0, 0 });
  ox_job_builder_put_station (builder, odd);
  g_autoptr (OxJob) gap = ox_job_builder_end (builder);
  assert_new_id (gap, "R", "R1");
}

static void
test_box (void)
{
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  g_assert_true (ox_box_is_empty (ox_job_box (empty)));
  g_autoptr (OxJob) job = make_job ();
  OxBox box = ox_job_box (job);
  g_assert_cmpfloat (box.x0, ==, 0);
  g_assert_cmpfloat (box.y0, ==, 0);
  g_assert_cmpfloat (box.x1, ==, 18);
  g_assert_cmpfloat (box.y1, ==, 8);
}

static void
test_texts (void)
{
  g_autoptr (OxTexts) texts = ox_texts_copy (&(OxTexts){ .title = (char *) "a\nb", .notes = (char *) "a\nb" });
  g_assert_cmpstr (texts->title, ==, "a b");
  g_assert_cmpstr (texts->notes, ==, "a\nb");
  g_assert_cmpstr (texts->client, ==, "");
}

static void
test_defaults (void)
{
  g_autoptr (OxJob) job = ox_job_builder_end (ox_job_builder_new (NULL));
  g_assert_cmpfloat (job->rates.edge_m2_per_hour, ==, 4);
  g_assert_cmpfloat (job->north_deg, ==, 90);
  g_assert_cmpint (job->units, ==, OX_UNITS_METRES);
  g_assert_true (ox_machine_equal (job->machine, ox_classes_get (0)));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/job/find", test_find);
  g_test_add_func ("/job/job/new-id", test_new_id);
  g_test_add_func ("/job/job/box", test_box);
  g_test_add_func ("/job/job/texts", test_texts);
  g_test_add_func ("/job/job/defaults", test_defaults);
  return g_test_run ();
}
