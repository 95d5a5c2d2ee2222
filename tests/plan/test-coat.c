/* Oxturn: plan/coat: which floor asks for which coat.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/coat.h"
#include "support/floors.h"
#include "support/ox-test.h"

#define MOST 8

typedef struct
{
  guint n;
  OxCoat *coats;
  OxRegion *rooms[MOST];
  OxJob *job;
} Coats;

static void
coats_clear (Coats *coats)
{
  ox_coats_free (coats->coats, coats->n);
  for (guint i = 0; i < coats->job->n_rooms; i++)
    ox_region_unref (coats->rooms[i]);
  ox_job_unref (coats->job);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Coats, coats_clear)

static Coats
coats_of (OxJob *job)
{
  Coats coats = { .job = job };
  for (guint i = 0; i < job->n_rooms; i++)
    coats.rooms[i] = ox_region_new_ring (job->rooms[i]->ring);
  coats.coats = ox_coats_new (job, coats.rooms, &coats.n);
  return coats;
}

/* Coat @coat of room 0 asks for @area m2. */
static void
expect_coat (const Coats *coats, guint i, guint coat, double area)
{
  g_assert_cmpuint (i, <, coats->n);
  g_assert_cmpuint (coats->coats[i].room, ==, 0);
  g_assert_cmpuint (coats->coats[i].coat, ==, coat);
  ox_test_near (ox_region_area (coats->coats[i].target), area, 1e-9);
}

/* One coat is the whole room, to the last bit. */
static void
one_coat (void)
{
  g_auto (Coats) coats = coats_of (ox_test_floor_rectangle (10, 6, "compact"));
  g_assert_cmpuint (coats.n, ==, 1);
  expect_coat (&coats, 0, 1, 60);
  g_assert_true (coats.coats[0].target == coats.rooms[0]);
  g_assert_cmpuint (ox_coats_most (coats.coats, coats.n), ==, 1);
  g_assert_cmpuint (ox_coats_most (NULL, 0), ==, 0);
}

static void
three_coats (void)
{
  g_auto (Coats) coats = coats_of (ox_test_floor_with_coats (ox_test_floor_rectangle (10, 6, "compact"), 3, 90));
  g_assert_cmpuint (coats.n, ==, 3);
  for (guint i = 0; i < 3; i++)
    expect_coat (&coats, i, i + 1, 60);
}

/* The picture in the header: 60 m2 in 2 coats, A of 4 m2 in 3, B of 6 m2 in 1. */
static void
areas_with_their_own (void)
{
  OxJob *job = ox_test_floor_with_coats (ox_test_floor_rectangle (10, 6, "compact"), 2, 90);
  job = ox_test_floor_with_condition (job, (OxBox){ 5, 1, 7, 3 }, 0, 3);
  job = ox_test_floor_with_condition (job, (OxBox){ 0, 0, 3, 2 }, 0, 1);
  g_auto (Coats) coats = coats_of (job);
  g_assert_cmpuint (coats.n, ==, 3);
  expect_coat (&coats, 0, 1, 60);
  expect_coat (&coats, 1, 2, 54);
  expect_coat (&coats, 2, 3, 4);
  g_assert_cmpuint (ox_coats_most (coats.coats, coats.n), ==, 3);
  g_autoptr (OxRegion) second = ox_coats_floor (coats.coats, coats.n, 2);
  ox_test_near (ox_region_area (second), 54, 1e-9);
  g_assert_false (ox_region_contains (second, (OxPoint){ 1, 1 }));
  g_autoptr (OxRegion) fifth = ox_coats_floor (coats.coats, coats.n, 5);
  g_assert_true (ox_region_is_empty (fifth));
}

/* 2 x 2 m in 1 coat and 2 x 2 m in 3 that share 1 x 2 m: there 3 hold. */
static void
areas_that_overlap (void)
{
  OxJob *job = ox_test_floor_with_coats (ox_test_floor_rectangle (10, 6, "compact"), 2, 90);
  job = ox_test_floor_with_condition (job, (OxBox){ 2, 1, 4, 3 }, 0, 1);
  job = ox_test_floor_with_condition (job, (OxBox){ 3, 1, 5, 3 }, 0, 3);
  g_auto (Coats) coats = coats_of (job);
  expect_coat (&coats, 1, 2, 58);
  expect_coat (&coats, 2, 3, 4);
}

/* A speed alone changes no coat, an area that reaches beyond the room or lies elsewhere no other floor. */
static void
areas_beside (void)
{
  OxJob *job = ox_test_floor_with_condition (ox_test_floor_rectangle (10, 6, "compact"), (OxBox){ 2, 1, 4, 3 }, 3, 0);
  job = ox_test_floor_with_condition (job, (OxBox){ 8, 4, 14, 8 }, 0, 2);
  job = ox_test_floor_with_condition (job, (OxBox){ 30, 4, 34, 8 }, 0, 4);
  g_auto (Coats) coats = coats_of (job);
  g_assert_cmpuint (coats.n, ==, 2);
  expect_coat (&coats, 0, 1, 60);
  expect_coat (&coats, 1, 2, 4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/coat/one-coat", one_coat);
  g_test_add_func ("/plan/coat/three-coats", three_coats);
  g_test_add_func ("/plan/coat/areas-with-their-own", areas_with_their_own);
  g_test_add_func ("/plan/coat/areas-that-overlap", areas_that_overlap);
  g_test_add_func ("/plan/coat/areas-beside", areas_beside);
  return g_test_run ();
}
