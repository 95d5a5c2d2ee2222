/* Oxturn: plan/verify-moves: moves without room and orders that do not follow.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * judge.h has the measures of the machine and the floors.
 */
#include "judge.h"
#include "support/floors.h"

static void
move_without_room_to_turn (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  g_autoptr (Draft) fits = judge_to_and_fro (job, (OxPoint){ 9.249, 3 });
  judge_expect_sound (fits);
  g_autoptr (Draft) draft = judge_to_and_fro (job, (OxPoint){ 9.26, 3 });
  judge_expect_only (draft, OX_RULE_MOVE);
}

static void
move_turns_off_its_path (void)
{
  g_autoptr (Draft) draft = judge_hall ();
  g_array_index (draft->moves, OxMove, 0).turn = (OxPoint){ 8.9, 3.5 };
  judge_expect_only (draft, OX_RULE_MOVE);
}

static void
move_without_turn (void)
{
  g_autoptr (Draft) draft = judge_hall ();
  OxMove *move = &g_array_index (draft->moves, OxMove, 0);
  move->kind = OX_MOVE_WALK;
  move->turns = FALSE;
  move->minutes -= 15.0 / 60;
  judge_expect_only (draft, OX_RULE_MOVE);
}

static void
move_does_not_arrive (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  g_autoptr (Draft) draft = draft_new (job);
  OxPoint turn = { 9, 3 }, path[3] = { { 9.63, 3 }, turn, { 8.74, 3.19 } };
  draft_strip (draft, 1.25, 3, 9.63, 3);
  draft_strip (draft, 8.75, 3.19, 0.37, 3.19);
  draft_move (draft, OX_MOVE_SWING, path, 3, &turn);
  judge_expect_only (draft, OX_RULE_MOVE);
}

/* Round a column of 0.4 m at (5, 1.5): by (5, 2.0) the body of 0.38 m passes, by (5, 1.85) it does not. */
static void
move_along_column (void)
{
  g_autoptr (OxJob) job
      = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 5, 1.5 }, 0.4);
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (Draft) draft = draft_new (job);
      OxPoint path[3] = { { 9.63, 1.5 }, { 5, i == 0 ? 2.0 : 1.85 }, { 1.25, 1.5 } };
      draft_strip (draft, 7, 1.5, 9.63, 1.5);
      draft_strip (draft, 1.25, 1.5, 4, 1.5);
      draft_move (draft, OX_MOVE_WALK, path, 3, NULL);
      if (i == 0)
        judge_expect_sound (draft);
      else
        judge_expect_only (draft, OX_RULE_MOVE);
    }
}

static void
move_carried (void)
{
  g_autoptr (Draft) no_need = judge_hall ();
  OxMove *move = &g_array_index (no_need->moves, OxMove, 0);
  *move = (OxMove){ .from = 1, .to = 2, .kind = OX_MOVE_WALK };
  judge_expect_only (no_need, OX_RULE_MOVE);
  g_autoptr (OxJob) job = judge_two_rooms (0.2, 0.5);
  g_autoptr (Draft) needed = draft_new (job);
  draft_strip (needed, 1.25, 1, 4.63, 1);
  draft_strip (needed, 6.25, 1, 9.63, 1)->room = 1;
  draft_move (needed, OX_MOVE_WALK, NULL, 0, NULL);
  judge_expect_sound (needed);
}

static void
move_figures (void)
{
  g_autoptr (Draft) minutes = judge_hall ();
  g_array_index (minutes->moves, OxMove, 0).minutes += 0.01;
  judge_expect_only (minutes, OX_RULE_MOVE);
  g_autoptr (Draft) pulls = judge_corridor ();
  g_array_index (pulls->moves, OxMove, 1).length += 0.01;
  g_array_index (pulls->moves, OxMove, 1).minutes += 0.01 / 30;
  judge_expect_only (pulls, OX_RULE_MOVE);
}

/* Of kept strips the figures of moves are judged, of the move to the first new one all. */
static void
move_from_kept (void)
{
  g_autoptr (Draft) onto = judge_hall ();
  onto->plan.n_kept = 1;
  g_array_index (onto->moves, OxMove, 0).turn = (OxPoint){ 8.9, 3.5 };
  judge_expect_among (draft_finish (onto), OX_RULE_MOVE);
  g_autoptr (Draft) between = judge_hall ();
  between->plan.n_kept = 2;
  g_array_index (between->moves, OxMove, 0).minutes += 0.01;
  judge_expect_among (draft_finish (between), OX_RULE_MOVE);
}

static void
order_numbers (void)
{
  g_autoptr (Draft) draft = judge_corridor ();
  g_array_index (draft->strips, OxStrip, 1).order = 3;
  judge_expect_only (draft, OX_RULE_ORDER);
  g_autoptr (Draft) missing = judge_corridor ();
  g_array_set_size (missing->moves, 1);
  judge_expect_only (missing, OX_RULE_ORDER);
  g_autoptr (Draft) wrong = judge_corridor ();
  g_array_index (wrong->moves, OxMove, 0).to = 3;
  judge_expect_only (wrong, OX_RULE_ORDER);
  g_autoptr (Draft) slow = judge_corridor ();
  g_array_index (slow->strips, OxStrip, 1).minutes *= 2;
  judge_expect_only (slow, OX_RULE_ORDER);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/verify-moves/move/without-room-to-turn", move_without_room_to_turn);
  g_test_add_func ("/plan/verify-moves/move/turns-off-its-path", move_turns_off_its_path);
  g_test_add_func ("/plan/verify-moves/move/without-turn", move_without_turn);
  g_test_add_func ("/plan/verify-moves/move/does-not-arrive", move_does_not_arrive);
  g_test_add_func ("/plan/verify-moves/move/along-column", move_along_column);
  g_test_add_func ("/plan/verify-moves/move/carried", move_carried);
  g_test_add_func ("/plan/verify-moves/move/figures", move_figures);
  g_test_add_func ("/plan/verify-moves/move/from-kept-strips", move_from_kept);
  g_test_add_func ("/plan/verify-moves/order/numbers", order_numbers);
  return g_test_run ();
}
