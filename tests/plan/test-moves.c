/* Oxturn: plan/moves: kinds of moves, their paths and minutes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The compact machine walks 30 m/min and swings in 15 s.
 */
#include "draft.h"
#include "judge.h"
#include "plan/floor.h"
#include "plan/moves.h"
#include "support/floors.h"
#include "support/ox-test.h"

typedef struct
{
  Draft *draft;
  OxMove move;
  gboolean made;
} Made;

/* The move between two strips that run from (p[0], p[1]) to (p[2], p[3]) and from (p[4], p[5]) to (p[6], p[7]). */
static Made
make (OxJob *base, const double p[8])
{
  g_autoptr (OxJob) job = base;
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  g_autoptr (OxWays) ways = ox_ways_new (floor->travel, job->machine);
  Made made = { draft_new (job), { 0 }, FALSE };
  draft_strip (made.draft, p[0], p[1], p[2], p[3]);
  draft_strip (made.draft, p[4], p[5], p[6], p[7]);
  const OxStrip *strips = (const OxStrip *) (void *) made.draft->strips->data;
  made.made = ox_move_make (ways, job->machine, &strips[0], &strips[1], &made.move);
  g_assert_cmpuint (made.move.from, ==, 1);
  g_assert_cmpuint (made.move.to, ==, 2);
  return made;
}

static void
done (Made *made)
{
  g_free ((gpointer) made->move.path);
  draft_free (made->draft);
}

/* The path leads from stop to start, its length and minutes are its own. */
static void
expect_sound (const Made *made, OxMoveKind kind)
{
  const OxStrip *strips = (const OxStrip *) (void *) made->draft->strips->data;
  const OxMove *move = &made->move;
  double sum = 0;
  g_assert_true (made->made);
  g_assert_cmpint (move->kind, ==, kind);
  g_assert_cmpuint (move->n_path, >=, 2);
  ox_test_near (ox_point_distance (move->path[0], strips[0].b), 0, 1e-9);
  ox_test_near (ox_point_distance (move->path[move->n_path - 1], strips[1].a), 0, 1e-9);
  for (guint i = 1; i < move->n_path; i++)
    sum += ox_point_distance (move->path[i - 1], move->path[i]);
  ox_test_near (move->length, sum, 1e-9);
  ox_test_near (move->minutes, sum / 30 + (move->turns ? 0.25 : 0), 1e-9);
}

static void
pull_back (void)
{
  Made made
      = make (ox_test_floor_rectangle (10, 6, "compact"), (const double[]){ 1.25, 3, 9.63, 3, 1.25, 3.19, 9.63, 3.19 });
  expect_sound (&made, OX_MOVE_PULL_BACK);
  ox_test_near (made.move.length, hypot (8.38, 0.19), 1e-6);
  g_assert_false (made.move.turns);
  done (&made);
}

static void
swing (void)
{
  Made made
      = make (ox_test_floor_rectangle (10, 6, "compact"), (const double[]){ 1.25, 3, 9.63, 3, 8.75, 3.19, 0.37, 3.19 });
  expect_sound (&made, OX_MOVE_SWING);
  g_assert_true (made.move.turns);
  g_assert_cmpfloat (made.move.turn.x, <=, 9.25 + 1e-9);
  gboolean on_path = FALSE;
  for (guint i = 0; i < made.move.n_path; i++)
    on_path = on_path || ox_point_distance (made.move.path[i], made.move.turn) < 1e-9;
  g_assert_true (on_path);
  done (&made);
}

/* Ahead to a strip with the same heading, and far off to one with another. */
static void
walks (void)
{
  Made ahead = make (ox_test_floor_rectangle (20, 6, "compact"), (const double[]){ 2, 3, 4, 3, 8, 4, 10, 4 });
  expect_sound (&ahead, OX_MOVE_WALK);
  g_assert_false (ahead.move.turns);
  ox_test_near (ahead.move.length, hypot (4, 1), 1e-6);
  done (&ahead);
  Made far = make (ox_test_floor_rectangle (20, 6, "compact"), (const double[]){ 2, 3, 4, 3, 17, 3, 14, 3 });
  expect_sound (&far, OX_MOVE_WALK);
  g_assert_true (far.move.turns);
  ox_test_near (far.move.length, 13, 0.01);
  done (&far);
}

/* Headings less than 10 degrees apart are steered. */
static void
steered (void)
{
  Made made = make (ox_test_floor_rectangle (20, 6, "compact"), (const double[]){ 2, 3, 5, 3, 2, 3.2, 5, 3.6 });
  expect_sound (&made, OX_MOVE_PULL_BACK);
  done (&made);
}

/* Round a column it is no pull-back. */
static void
round_column (void)
{
  Made made
      = make (judge_with_obstacle (ox_test_floor_rectangle (12, 6, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 6, 3 }, 1),
              (const double[]){ 8, 3, 10, 3, 2, 3.19, 4, 3.19 });
  expect_sound (&made, OX_MOVE_WALK);
  g_assert_cmpuint (made.move.n_path, ==, 4);
  done (&made);
}

/* Through a wall there is no way: the machine is carried, in the time of the straight way. */
static void
carried (void)
{
  Made made = make (judge_two_rooms (0.5, 0.8), (const double[]){ 2, 1, 4, 1, 8, 1, 6, 1 });
  g_assert_false (made.made);
  g_assert_cmpuint (made.move.n_path, ==, 0);
  g_assert_null (made.move.path);
  g_assert_false (made.move.turns);
  g_assert_cmpint (made.move.kind, ==, OX_MOVE_WALK);
  ox_test_near (made.move.minutes, 4.0 / 30, 1e-9);
  done (&made);
}

/* A strip that starts where the other stopped: a path of no length, with two ends. */
static void
on_the_spot (void)
{
  Made made = make (ox_test_floor_rectangle (20, 6, "compact"), (const double[]){ 2, 3, 5, 3, 5, 3, 8, 3 });
  g_assert_true (made.made);
  g_assert_cmpuint (made.move.n_path, ==, 2);
  ox_test_near (made.move.minutes, 0, 1e-12);
  done (&made);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/moves/pull-back", pull_back);
  g_test_add_func ("/plan/moves/swing", swing);
  g_test_add_func ("/plan/moves/walks", walks);
  g_test_add_func ("/plan/moves/steered", steered);
  g_test_add_func ("/plan/moves/round-column", round_column);
  g_test_add_func ("/plan/moves/carried", carried);
  g_test_add_func ("/plan/moves/on-the-spot", on_the_spot);
  return g_test_run ();
}
