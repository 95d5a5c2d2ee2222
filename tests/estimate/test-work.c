/* Oxturn: tests of estimate/work
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "made.h"

static double
sum (const OxWork *work, OxPieceKind kind)
{
  double all = 0;
  for (guint i = 0; i < work->pieces->len; i++)
    all += g_array_index (work->pieces, OxPiece, i).kind == kind ? g_array_index (work->pieces, OxPiece, i).minutes : 0;
  return all;
}

/* 40 strips of 1.65 min, each with a start of 0.1 min, and 39 moves of half a minute: 89.5 min. Nothing else falls due.
 */
static void
test_strips (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  g_autoptr (OxWork) work = ox_work_new (plan, &rules);
  ox_test_near (sum (work, OX_PIECE_STRIP), 40 * (MADE_MINUTES + MADE_START) + 39 * MADE_MOVE, 1e-9);
  g_assert_cmpfloat (sum (work, OX_PIECE_REFILL) + sum (work, OX_PIECE_DRUM) + sum (work, OX_PIECE_WEAR), ==, 0);
  /* 9.5 m2 by hand at 4 m2/h are 142.5 min: all of it fits into the 345 min of one shift */
  ox_test_near (sum (work, OX_PIECE_EDGE), 142.5, 1e-9);
  g_assert_cmpuint (work->n_shifts, ==, 1);
}

/* 200 working minutes: edge work is cut at the end of the first shift, and its parts add up. */
static void
test_edge_work_is_cut (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  rules.shift_min = 200 + rules.break_min + rules.setup_min + rules.cleanup_min;
  g_autoptr (OxWork) work = ox_work_new (plan, &rules);
  const OxPiece *pieces = (const OxPiece *) (gpointer) work->pieces->data;
  g_assert_cmpuint (work->n_shifts, ==, 2);
  g_assert_cmpuint (work->pieces->len, ==, 42);
  g_assert_cmpuint (pieces[40].shift, ==, 1);
  g_assert_cmpuint (pieces[41].shift, ==, 2);
  ox_test_near (pieces[40].minutes, 200 - 89.5, 1e-6);
  ox_test_near (pieces[40].share + pieces[41].share, 1, 1e-9);
}

/* 1.65 min at 20 kg/min lose 0.0396 kg of 0.12 %; half a hopper of 0.2 kg, less what a strip begins with, lasts two
 * strips. */
static void
test_refills (void)
{
  g_autoptr (OxPlan) plan = made_plan (6, 2, "");
  plan->job->machine->hopper_kg = 0.2;
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  g_autoptr (OxWork) work = ox_work_new (plan, &rules);
  ox_test_near (sum (work, OX_PIECE_REFILL), 2 * rules.refill_min, 1e-9);
  g_assert_cmpint (g_array_index (work->pieces, OxPiece, 2).kind, ==, OX_PIECE_REFILL);
}

/* A wheel looked at every hour, 55 min run: the check comes before the fourth strip, since three of 1.65 min end within
 * 5 min. */
static void
test_wear (void)
{
  g_autoptr (OxPlan) plan = made_plan (6, 2, "");
  plan->job->machine->wear[0].interval_h = 1;
  plan->job->machine->wear[0].run_h = 55.0 / 60;
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  g_autoptr (OxWork) work = ox_work_new (plan, &rules);
  ox_test_near (sum (work, OX_PIECE_WEAR), rules.wear_check_min, 1e-9);
  g_assert_cmpint (g_array_index (work->pieces, OxPiece, 3).kind, ==, OX_PIECE_WEAR);
}

/* 6 strips make 60 kg of dust, a drum takes 25: two strips fill one, and it is changed twice. */
static void
test_drums (void)
{
  g_autoptr (OxPlan) plan = made_plan (6, 2, "");
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  rules.dust_kg = 60;
  rules.drum_kg = 25;
  g_autoptr (OxWork) work = ox_work_new (plan, &rules);
  ox_test_near (sum (work, OX_PIECE_DRUM), 2 * rules.drum_change_min, 1e-9);
}

/* Work that takes longer never ends earlier, and shifts add up to their pieces. */
static void
test_monotony (void)
{
  guint last = 0;
  for (guint n = 10; n <= 200; n += 10)
    {
      g_autoptr (OxPlan) plan = made_plan (n, 50, "");
      OxWorkRules rules;
      ox_work_rules_of (&rules, plan->job);
      rules.shift_min = 240;
      plan->edges[0].area = 1;
      g_autoptr (OxWork) work = ox_work_new (plan, &rules);
      double pieces = 0, shifts = 0;
      for (guint i = 0; i < work->pieces->len; i++)
        pieces += g_array_index (work->pieces, OxPiece, i).minutes;
      for (guint i = 0; i < work->shifts->len; i++)
        {
          shifts += g_array_index (work->shifts, OxShift, i).working;
          g_assert_cmpfloat (g_array_index (work->shifts, OxShift, i).working, <=, 105 + 1e-5);
        }
      ox_test_near (pieces, shifts, 1e-9);
      g_assert_cmpuint (work->n_shifts, >=, last);
      last = work->n_shifts;
    }
  g_assert_cmpuint (last, >, 1);
}

/* 2026-09-18 is a Friday: the second shift is on Monday; without a day, or with one that is none, there is no date. */
static void
test_days (void)
{
  OxWorkRules rules = { .first_day = "", .weekdays = 0x1f };
  char day[11];
  ox_work_day (&rules, 1, day);
  g_assert_cmpstr (day, ==, "");
  rules.first_day = "2026-09-18";
  ox_work_day (&rules, 1, day);
  g_assert_cmpstr (day, ==, "2026-09-18");
  ox_work_day (&rules, 2, day);
  g_assert_cmpstr (day, ==, "2026-09-21");
  rules.first_day = "2026-02-30";
  ox_work_day (&rules, 1, day);
  g_assert_cmpstr (day, ==, "");
  rules.first_day = "2026-09-18";
  rules.weekdays = 0;
  ox_work_day (&rules, 1, day);
  g_assert_cmpstr (day, ==, "");
}

static void
test_no_time (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  rules.shift_min = 60;
  g_autoptr (OxWork) work = ox_work_new (plan, &rules);
  g_assert_false (work->full);
  g_assert_cmpuint (work->n_shifts, ==, 0);
}

/* No shift to speak of, and edge work for more shifts than anybody lives: an answer, not a loop. */
static void
test_endless (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  rules.shift_min = 4.15 * 60;
  rules.break_min = rules.setup_min = rules.cleanup_min = 83;
  g_autoptr (OxWork) none = ox_work_new (plan, &rules);
  g_assert_false (none->full);
  g_assert_cmpuint (none->shifts->len, ==, 0);
  ox_work_rules_of (&rules, plan->job);
  plan->edges[0].area = 1e9;
  g_autoptr (OxWork) work = ox_work_new (plan, &rules);
  g_assert_true (work->full && work->endless);
  g_assert_cmpuint (work->n_shifts, ==, 0);
  g_assert_cmpuint (work->shifts->len, ==, 0);
  /* 4 m2/h of 345 min a shift: 9,000 of them are shared out. */
  plan->edges[0].area = 9000 * 4 * 345 / 60.0;
  g_autoptr (OxWork) long_work = ox_work_new (plan, &rules);
  g_assert_false (long_work->endless);
  g_assert_cmpuint (long_work->n_shifts, ==, 9001);
}

/* Day by day, as with a finger on a calendar. */
static void
test_days_counted (void)
{
  OxWorkRules rules = { .first_day = "2024-02-27" };
  for (rules.weekdays = 1; rules.weekdays < 128; rules.weekdays += 9)
    {
      g_autoptr (GDate) at = g_date_new_dmy (27, 2, 2024);
      for (guint shift = 1; shift <= 60; g_date_add_days (at, 1))
        {
          char day[11], expected[11];
          if (!((rules.weekdays >> (g_date_get_weekday (at) - 1)) & 1))
            continue;
          ox_work_day (&rules, shift++, day);
          g_date_strftime (expected, sizeof expected, "%Y-%m-%d", at);
          g_assert_cmpstr (day, ==, expected);
        }
    }
}

/* Two machines are done sooner than one, and between them lay every strip once. */
static void
test_two_machines (void)
{
  g_autoptr (OxPlan) plan = made_plan (200, 41, "");
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  g_autoptr (OxWork) one = ox_work_new (plan, &rules);
  rules.machines = 2;
  g_autoptr (OxWork) two = ox_work_new (plan, &rules);
  guint laid[200] = { 0 };
  for (guint i = 0; i < two->pieces->len; i++)
    if (g_array_index (two->pieces, OxPiece, i).kind == OX_PIECE_STRIP)
      laid[g_array_index (two->pieces, OxPiece, i).index]++;
  for (guint i = 0; i < 200; i++)
    g_assert_cmpuint (laid[i], ==, 1);
  g_assert_cmpuint (two->n_shifts, <=, one->n_shifts);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/work/strips/starts-and-moves", test_strips);
  g_test_add_func ("/estimate/work/edge-work/cut-at-the-end-of-a-shift", test_edge_work_is_cut);
  g_test_add_func ("/estimate/work/refills/before-the-hopper-is-short", test_refills);
  g_test_add_func ("/estimate/work/wear/before-the-strip-that-is-too-long", test_wear);
  g_test_add_func ("/estimate/work/drums/changed-when-full", test_drums);
  g_test_add_func ("/estimate/work/shifts/add-up-and-grow", test_monotony);
  g_test_add_func ("/estimate/work/days/working-days-only", test_days);
  g_test_add_func ("/estimate/work/shifts/no-time-to-work", test_no_time);
  g_test_add_func ("/estimate/work/shifts/endless", test_endless);
  g_test_add_func ("/estimate/work/days/counted", test_days_counted);
  g_test_add_func ("/estimate/work/crew/every-strip-once", test_two_machines);
  return g_test_run ();
}
