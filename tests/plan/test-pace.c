/* Oxturn: plan/pace: speeds along a line and over a floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The compact machine walks at 6 m/min and covers 0.21 - 0.02 = 0.19 m of new floor.
 */
#include "plan/pace.h"
#include "support/floors.h"
#include "support/ox-test.h"

static OxJob *
hall (void)
{
  OxJob *job = ox_test_floor_rectangle (12, 6, "compact");
  job = ox_test_floor_with_condition (job, (OxBox){ 3, 1, 7, 4 }, 4, 0);
  return ox_test_floor_with_condition (job, (OxBox){ 6, 2, 9, 3 }, 2, 0);
}

/* The line from @a to @b has these pieces: length, speed; they end with a length of 0. */
static void
expect_paces (const OxJob *job, OxPoint a, OxPoint b, const OxPace *expected)
{
  g_autoptr (GArray) paces = g_array_new (FALSE, FALSE, sizeof (OxPace));
  guint n = 0;
  ox_paces_cut (job, a, b, paces);
  for (; expected[n].length > 0; n++)
    {
      g_assert_cmpuint (n, <, paces->len);
      ox_test_near (g_array_index (paces, OxPace, n).length, expected[n].length, 1e-9);
      ox_test_near (g_array_index (paces, OxPace, n).speed, expected[n].speed, 1e-12);
    }
  g_assert_cmpuint (paces->len, ==, n);
}

static void
beside_all (void)
{
  g_autoptr (OxJob) job = hall ();
  expect_paces (job, (OxPoint){ 1, 5 }, (OxPoint){ 11, 5 }, (const OxPace[]){ { 10, 6 }, { 0, 0 } });
}

/* Into the first area and out of it: 2 m, 4 m, 4 m; 2/6 + 4/4 + 4/6 = 2 min. */
static void
through_one (void)
{
  static const OxPace pieces[] = { { 2, 6 }, { 4, 4 }, { 4, 6 }, { 0, 0 } };
  g_autoptr (OxJob) job = hall ();
  expect_paces (job, (OxPoint){ 1, 1.5 }, (OxPoint){ 11, 1.5 }, pieces);
  ox_test_near (ox_paces_minutes (pieces, 3), 2, 1e-12);
}

/* Where both lie, from 6 to 7, the slower one holds; back the other way round. */
static void
through_both (void)
{
  g_autoptr (OxJob) job = hall ();
  expect_paces (job, (OxPoint){ 1, 2.5 }, (OxPoint){ 11, 2.5 },
                (const OxPace[]){ { 2, 6 }, { 3, 4 }, { 3, 2 }, { 2, 6 }, { 0, 0 } });
  expect_paces (job, (OxPoint){ 11, 2.5 }, (OxPoint){ 1, 2.5 },
                (const OxPace[]){ { 2, 6 }, { 3, 2 }, { 3, 4 }, { 2, 6 }, { 0, 0 } });
}

static void
inside (void)
{
  g_autoptr (OxJob) job = hall ();
  expect_paces (job, (OxPoint){ 4, 1.2 }, (OxPoint){ 4, 3.8 }, (const OxPace[]){ { 2.6, 4 }, { 0, 0 } });
}

/* A hair at the start belongs to what follows, a hair at the end to what is before. */
static void
hairs (void)
{
  g_autoptr (OxJob) job = hall ();
  expect_paces (job, (OxPoint){ 2.995, 1.5 }, (OxPoint){ 7.005, 1.5 }, (const OxPace[]){ { 4.01, 4 }, { 0, 0 } });
  expect_paces (job, (OxPoint){ 2.98, 1.5 }, (OxPoint){ 7.02, 1.5 },
                (const OxPace[]){ { 0.02, 6 }, { 4, 4 }, { 0.02, 6 }, { 0, 0 } });
  expect_paces (job, (OxPoint){ 2.996, 1.5 }, (OxPoint){ 2.998, 1.5 }, (const OxPace[]){ { 0.002, 6 }, { 0, 0 } });
}

/* Along the border of an area either speed is right, but one all along. */
static void
along_a_border (void)
{
  g_autoptr (OxJob) job = hall ();
  g_autoptr (GArray) paces = g_array_new (FALSE, FALSE, sizeof (OxPace));
  ox_paces_cut (job, (OxPoint){ 3, 1.2 }, (OxPoint){ 3, 3.2 }, paces);
  g_assert_cmpuint (paces->len, ==, 1);
}

/* 72 m2: 12 at 4, of which 1 at 2; 2 more at 2; 58 at 6: (58/6 + 11/4 + 3/2) / (0.19 * 60) h. */
static void
ideal (void)
{
  g_autoptr (OxJob) job = hall ();
  g_autoptr (OxRegion) floor = ox_region_new_ring (job->rooms[0]->ring);
  ox_test_near (ox_paces_ideal_hours (job, floor), (58.0 / 6 + 11.0 / 4 + 3.0 / 2) / (0.19 * 60), 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/pace/beside-all", beside_all);
  g_test_add_func ("/plan/pace/through-one", through_one);
  g_test_add_func ("/plan/pace/through-both", through_both);
  g_test_add_func ("/plan/pace/inside", inside);
  g_test_add_func ("/plan/pace/hairs", hairs);
  g_test_add_func ("/plan/pace/along-a-border", along_a_border);
  g_test_add_func ("/plan/pace/ideal", ideal);
  return g_test_run ();
}
