/* Oxturn: plan/verify-paces: speeds and minutes that do not fit the condition areas.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * judge.h has the measures of the machine; a hall of 10 x 6 m with an area from x = 4 to 6 that is walked at 3 m/min.
 */
#include "judge.h"
#include "support/floors.h"

static OxPace paces[3];

/* A strip from 1.25 to 9.63 along y = 3: 2.75 m at 6, 2 m at 3, 3.63 m at 6 m/min. */
static Draft *
strip_through (void)
{
  g_autoptr (OxJob) job = ox_test_floor_with_condition (ox_test_floor_rectangle (10, 6, "compact"), (OxBox){ 4, 2, 6, 4 }, 3, 0);
  Draft *draft = draft_new (job);
  OxStrip *strip = draft_strip (draft, 1.25, 3, 9.63, 3);
  paces[0] = (OxPace){ 2.75, 6 };
  paces[1] = (OxPace){ 2, 3 };
  paces[2] = (OxPace){ 3.63, 6 };
  draft->plan.paces = paces;
  strip->n_paces = 3;
  strip->minutes = 2.75 / 6 + 2.0 / 3 + 3.63 / 6;
  strip->speed = 8.38 / strip->minutes;
  return draft;
}

static OxStrip *
its_strip (Draft *draft)
{
  return &g_array_index (draft->strips, OxStrip, 0);
}

static void
sound (void)
{
  g_autoptr (Draft) draft = strip_through ();
  judge_expect_sound (draft);
}

/* Run on at one speed. */
static void
without_change (void)
{
  g_autoptr (Draft) draft = strip_through ();
  its_strip (draft)->n_paces = 0;
  its_strip (draft)->speed = 6;
  its_strip (draft)->minutes = 8.38 / 6;
  judge_expect_only (draft, OX_RULE_ORDER);
}

static void
wrong_minutes (void)
{
  g_autoptr (Draft) draft = strip_through ();
  its_strip (draft)->minutes *= 1.01;
  its_strip (draft)->speed /= 1.01;
  judge_expect_only (draft, OX_RULE_ORDER);
}

/* Slow too far: to 8 m instead of to 6 m. */
static void
changes_too_late (void)
{
  g_autoptr (Draft) draft = strip_through ();
  paces[1].length += 2.5;
  paces[2].length -= 2.5;
  its_strip (draft)->minutes += 2.5 / 3 - 2.5 / 6;
  its_strip (draft)->speed = 8.38 / its_strip (draft)->minutes;
  judge_expect_only (draft, OX_RULE_ORDER);
}

static void
pieces_too_short (void)
{
  g_autoptr (Draft) draft = strip_through ();
  paces[2].length -= 1;
  its_strip (draft)->minutes -= 1.0 / 6;
  its_strip (draft)->speed = 8.38 / its_strip (draft)->minutes;
  judge_expect_only (draft, OX_RULE_ORDER);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/verify-paces/sound", sound);
  g_test_add_func ("/plan/verify-paces/without-change", without_change);
  g_test_add_func ("/plan/verify-paces/wrong-minutes", wrong_minutes);
  g_test_add_func ("/plan/verify-paces/changes-too-late", changes_too_late);
  g_test_add_func ("/plan/verify-paces/pieces-too-short", pieces_too_short);
  return g_test_run ();
}
