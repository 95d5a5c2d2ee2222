/* Oxturn: plan/trim: what others cover as well is taken back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Strips of the compact machine cover 0.21 m across and 0.04 m beyond either end.
 */
#include "laid.h"
#include "support/floors.h"
#include "support/ox-test.h"

static Laid *
hall (void)
{
  return laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
}

/* One of two strips on the same spot goes, the main one, whose floor the crosswise one has. */
static void
twice (void)
{
  g_autoptr (Laid) laid = hall ();
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 8 });
  laid_add (laid, (OxDraft){ .sign = -1, .y = 3, .x0 = 2, .x1 = 8, .kind = OX_STRIP_CROSSWISE });
  ox_layout_trim (laid->layout);
  g_assert_cmpuint (laid->layout->drafts->len, ==, 1);
  g_assert_cmpint (laid_draft (laid, 0)->kind, ==, OX_STRIP_CROSSWISE);
}

/* A strip that another one covers the end of starts where that one leaves off, but for a seam. */
static void
end (void)
{
  g_autoptr (Laid) laid = hall ();
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 9.5, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = -1, .y = 3, .x0 = 1, .x1 = 5, .kind = OX_STRIP_CROSSWISE });
  double open = laid_open (laid, LAID_EVERYWHERE);
  ox_layout_trim (laid->layout);
  g_assert_cmpuint (laid->layout->drafts->len, ==, 2);
  const OxDraft *cut = laid_draft (laid, 0);
  g_assert_cmpfloat (cut->x0 - 0.04, <=, 5.04);       /* they still overlap */
  g_assert_cmpfloat (cut->x0 - 0.04, >=, 5.04 - 0.1); /* by no more than a seam */
  ox_test_near (cut->x1, 9.5, 1e-9);
  ox_test_near (laid_draft (laid, 1)->x1, 5, 0.03);
  ox_test_near (laid_open (laid, LAID_EVERYWHERE), open, 1e-6);
}

/* What is left of a strip is never shorter than a strip must be, nor longer than it was. */
static void
short_rest (void)
{
  g_autoptr (Laid) laid = hall ();
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 8, .kind = OX_STRIP_CROSSWISE });
  laid_add (laid, (OxDraft){ .frame = 0, .sign = 1, .y = 3, .x0 = 2.4, .x1 = 9, .kind = OX_STRIP_MAIN });
  laid_add (laid, (OxDraft){ .frame = 0, .sign = 1, .y = 3, .x0 = 8.3, .x1 = 9.5, .kind = OX_STRIP_CROSSWISE });
  ox_layout_trim (laid->layout);
  laid_expect_fit (laid);
  for (guint i = 0; i < laid->layout->drafts->len; i++)
    {
      g_assert_cmpfloat (laid_draft (laid, i)->x0, >=, 2 - 1e-9);
      g_assert_cmpfloat (laid_draft (laid, i)->x1, <=, 9.5 + 1e-9);
    }
  ox_test_near (laid_open (laid, (OxBox){ 2, 2.9, 9.5, 3.1 }), 0, 1e-6);
}

/* The strip between covers 30 mm of its own, all along: without it a slot would stay. */
static void
slot_kept (void)
{
  g_autoptr (Laid) laid = hall ();
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 8, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3.12, .x0 = 2, .x1 = 8, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3.24, .x0 = 2, .x1 = 8, .grid = TRUE });
  ox_layout_trim (laid->layout);
  g_assert_cmpuint (laid->layout->drafts->len, ==, 3);
  ox_test_near (laid_open (laid, (OxBox){ 2, 2.95, 8, 3.3 }), 0, 1e-9);
}

/* On a whole hall: nothing comes open but crumbs, strips only grow shorter, lanes keep their places. */
static void
whole_hall (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (9, 7, "medium"), OX_WORK_SERPENTINE);
  g_assert_true (ox_layout_mains (laid->layout));
  ox_layout_zones (laid->layout);
  double open = laid_open (laid, LAID_EVERYWHERE), metres = laid_metres (laid);
  guint n = laid->layout->drafts->len;
  ox_layout_trim (laid->layout);
  g_assert_cmpfloat (laid_metres (laid), <, metres);
  g_assert_cmpfloat (laid_open (laid, LAID_EVERYWHERE), <, open + 0.05 * (n - laid->layout->drafts->len) + 0.01);
  laid_expect_fit (laid);
  for (guint i = 0; i < laid->layout->drafts->len; i++)
    if (laid_draft (laid, i)->grid)
      {
        double k = (laid_draft (laid, i)->y - laid->layout->first_y) / laid->layout->spacing;
        ox_test_near (k, round (k), 1e-9);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/trim/twice", twice);
  g_test_add_func ("/plan/trim/end", end);
  g_test_add_func ("/plan/trim/short-rest", short_rest);
  g_test_add_func ("/plan/trim/slot-kept", slot_kept);
  g_test_add_func ("/plan/trim/whole-hall", whole_hall);
  return g_test_run ();
}
