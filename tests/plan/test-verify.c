/* Oxturn: plan/verify: sound plans hold.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * judge.h has the measures of the machine and the floors.
 */
#include "judge.h"
#include "support/floors.h"

static void
sound (void)
{
  g_autoptr (Draft) narrow = judge_corridor ();
  g_autoptr (Draft) wide = judge_hall ();
  judge_expect_sound (narrow);
  judge_expect_sound (wide);
}

static void
no_strips (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (3, 0.3, "compact");
  g_autoptr (Draft) draft = draft_new (job);
  judge_expect_sound (draft);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/verify/sound", sound);
  g_test_add_func ("/plan/verify/no-strips", no_strips);
  return g_test_run ();
}
