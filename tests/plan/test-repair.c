/* Oxturn: plan/repair: open slots between strips get a strip over them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "judge.h"
#include "laid.h"
#include "support/floors.h"
#include "support/ox-test.h"

/* Two strips of the grid from 2 to 8 m, with a slot @wide m across between them. */
static Laid *
with_slot (double wide)
{
  Laid *laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 8, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = -1, .y = 3.21 + wide, .x0 = 2, .x1 = 8, .grid = TRUE });
  return laid;
}

static void
slot (void)
{
  g_autoptr (Laid) laid = with_slot (0.03);
  const OxBox box = { 1.98, 3, 8.02, 3.2 };
  ox_test_near (laid_open (laid, box), 6.04 * 0.03, 1e-6);
  ox_layout_repair (laid->layout);
  g_assert_cmpuint (laid->layout->drafts->len, ==, 3);
  ox_test_near (laid_draft (laid, 0)->y, 3, 1e-12);
  ox_test_near (laid_draft (laid, 1)->y, 3.24, 1e-12);
  g_assert_false (laid_draft (laid, 2)->grid);
  laid_expect_fit (laid);
  ox_test_near (laid_open (laid, box), 0, 1e-4);
}

/* What is as wide as half a strip is no slot but floor to be left, and 0.2 m of length is a crumb. */
static void
no_slot (void)
{
  g_autoptr (Laid) wide = with_slot (0.1);
  ox_layout_repair (wide->layout);
  g_assert_cmpuint (wide->layout->drafts->len, ==, 2);
  g_autoptr (Laid) brief = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  laid_add (brief, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 5, .grid = TRUE });
  laid_add (brief, (OxDraft){ .sign = 1, .y = 3.24, .x0 = 4.9, .x1 = 8, .grid = TRUE });
  ox_layout_repair (brief->layout);
  g_assert_cmpuint (brief->layout->drafts->len, ==, 2);
}

/* Beside a masked area floor stays open too, with a strip on one side of it only. */
static void
beside_masked (void)
{
  g_autoptr (Laid) laid = laid_new (
      judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_MASKED, (OxPoint){ 5, 4 }, 1),
      OX_WORK_SERPENTINE);
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3.5 - 0.105 - 0.03, .x0 = 2, .x1 = 8, .grid = TRUE });
  ox_layout_repair (laid->layout);
  g_assert_cmpuint (laid->layout->drafts->len, ==, 1);
}

/* Where no swing fits nothing is laid out of turn. */
static void
one_heading (void)
{
  g_autoptr (Laid) laid = with_slot (0.03);
  laid->layout->one_heading = TRUE;
  ox_layout_repair (laid->layout);
  g_assert_cmpuint (laid->layout->drafts->len, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/repair/slot", slot);
  g_test_add_func ("/plan/repair/no-slot", no_slot);
  g_test_add_func ("/plan/repair/beside-masked", beside_masked);
  g_test_add_func ("/plan/repair/one-heading", one_heading);
  return g_test_run ();
}
