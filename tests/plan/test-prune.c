/* Oxturn: plan/prune: strips that others cover but for a little are told apart exactly.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Between two strips of 0.21 m whose lanes are 0.21 m + g apart a third one has g / 0.21 of its floor to itself.
 */
#include "laid.h"
#include "support/floors.h"
#include "support/ox-test.h"

/* Number of strips that stay when the middle one has @own m to itself. */
static guint
left_of_three (double own)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  double apart = 0.21 + own;
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 8, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3 + apart, .x0 = 2, .x1 = 8, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = -1, .y = 3 + apart / 2, .x0 = 2, .x1 = 8, .kind = OX_STRIP_CROSSWISE });
  ox_layout_prune (laid->layout);
  for (guint i = 0; i < MIN (laid->layout->drafts->len, 2); i++)
    g_assert_true (laid_draft (laid, i)->grid);
  return laid->layout->drafts->len;
}

static void
thin (void)
{
  g_assert_cmpuint (left_of_three (-0.02), ==, 2);
  g_assert_cmpuint (left_of_three (0.009), ==, 3); /* four hundredths */
  g_assert_cmpuint (left_of_three (0.03), ==, 3);
}

/* The last three millimetres of both ends are its own: a hundredth of what it covers. */
static void
ends (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 2.6, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = -1, .y = 3, .x0 = 1.997, .x1 = 2.603, .kind = OX_STRIP_CROSSWISE });
  ox_layout_prune (laid->layout);
  g_assert_cmpuint (laid->layout->drafts->len, ==, 1);
  g_assert_true (laid_draft (laid, 0)->grid);
}

/* Fifteen millimetres at both ends, a twenty-third of what it covers, are too much to lose. */
static void
longer_ends (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 2.6, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = -1, .y = 3, .x0 = 1.985, .x1 = 2.615, .kind = OX_STRIP_CROSSWISE });
  ox_layout_prune (laid->layout);
  ox_test_near (laid_open (laid, (OxBox){ 1.945, 2.9, 2.655, 3.1 }), 0, 1e-9);
}

/* Covered all over, but without it the other two would lie 0.2 m apart and not overlap as they must. */
static void
between (void)
{
  g_assert_cmpuint (left_of_three (-0.01), ==, 3);
}

/* Strips that lie apart stay. */
static void
apart (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  guint across = laid_across (laid);
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 8 });
  laid_add (laid, (OxDraft){ .sign = 1, .y = 4, .x0 = 2, .x1 = 2.6 });
  laid_add (laid, (OxDraft){ .frame = across, .sign = 1, .y = -5, .x0 = 2.6, .x1 = 3.4 });
  ox_layout_prune (laid->layout);
  g_assert_cmpuint (laid->layout->drafts->len, ==, 3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/prune/thin", thin);
  g_test_add_func ("/plan/prune/ends", ends);
  g_test_add_func ("/plan/prune/longer-ends", longer_ends);
  g_test_add_func ("/plan/prune/between", between);
  g_test_add_func ("/plan/prune/apart", apart);
  return g_test_run ();
}
