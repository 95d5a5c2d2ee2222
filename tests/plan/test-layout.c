/* Oxturn: plan/layout: directions and chalk lines that merge, drafts and their cover.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "laid.h"
#include "support/floors.h"
#include "support/ox-test.h"

static void
exact_directions (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  OxLayout *layout = laid->layout;
  g_assert_cmpuint (layout->frames->len, ==, 1);
  g_assert_cmpint (ox_layout_find_frame (layout, G_PI / 2, 0), ==, -1);
  guint across = ox_layout_frame (layout, G_PI / 2, 0);
  g_assert_cmpuint (across, ==, 1);
  g_assert_cmpuint (ox_layout_frame (layout, -G_PI / 2, 0), ==, across);
  g_assert_cmpuint (ox_layout_frame (layout, G_PI, 0), ==, 0);
  g_assert_cmpint (ox_layout_find_frame (layout, 1e-5, 0), ==, -1);
  g_assert_cmpuint (ox_layout_frame (layout, 1e-5, 0), ==, 2);
  g_assert_cmpuint (layout->frames->len, ==, 3);
}

/* A wall of 10 m strays by 14 mm at 1.4 mrad and by 16 mm at 1.6 mrad. */
static void
walls_that_stray (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  g_assert_cmpint (ox_layout_find_frame (laid->layout, 0.0014, 10), ==, 0);
  g_assert_cmpint (ox_layout_find_frame (laid->layout, -0.0014, 10), ==, 0);
  g_assert_cmpint (ox_layout_find_frame (laid->layout, 0.0016, 10), ==, -1);
  guint other = ox_layout_frame (laid->layout, 0.0016, 10);
  g_assert_cmpuint (other, ==, 1);
  /* Of two that would serve, the nearer one does. */
  g_assert_cmpint (ox_layout_find_frame (laid->layout, 0.0012, 10), ==, (int) other);
  g_assert_cmpint (ox_layout_find_frame (laid->layout, 0.0004, 10), ==, 0);
}

static void
chalk_lines (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  guint across = laid_across (laid);
  guint lane = ox_layout_lane (laid->layout, 0, 1);
  g_assert_cmpuint (ox_layout_lane (laid->layout, 0, 1.00019), ==, lane);
  g_assert_cmpuint (ox_layout_lane (laid->layout, 0, 0.99981), ==, lane);
  g_assert_cmpuint (ox_layout_lane (laid->layout, 0, 1.00021), !=, lane);
  g_assert_cmpuint (ox_layout_lane (laid->layout, across, 1), !=, lane);
  g_assert_cmpuint (laid->layout->lanes->len, ==, 3);
  ox_test_near (g_array_index (laid->layout->lanes, OxLane, lane).y, 1, 1e-12);
}

/* What drafts cover follows them through adding, replacing and taking away. */
static void
cover_follows (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  OxLayout *layout = laid->layout;
  guint across = laid_across (laid);
  double all = ox_cover_left (layout->cover), off = 0.02 * 2 * (4 + 0.3);
  ox_test_near (all, 60, 1e-1);
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 5.92 });
  laid_add (laid, (OxDraft){ .frame = across, .sign = -1, .y = -8, .x0 = 2, .x1 = 4 });
  laid_add (laid, (OxDraft){ .sign = -1, .y = 1, .x0 = 2, .x1 = 3.92 });
  ox_test_near (all - ox_cover_left (layout->cover), 0.21 * (4 + 2.08 + 2), 2 * off);
  OxDraft longer = *laid_draft (laid, 2);
  longer.x1 = 5.92;
  ox_layout_replace (layout, 2, &longer);
  ox_test_near (all - ox_cover_left (layout->cover), 0.21 * (4 + 2.08 + 4), 2 * off);
  ox_test_near (laid_draft (laid, 2)->x1, 5.92, 1e-12);
  ox_layout_remove (layout, 0);
  g_assert_cmpuint (layout->drafts->len, ==, 2);
  g_assert_cmpuint (laid_draft (laid, 0)->frame, ==, across);
  ox_test_near (laid_draft (laid, 1)->y, 1, 1e-12);
  ox_layout_remove (layout, 1);
  ox_layout_remove (layout, 0);
  ox_test_near (ox_cover_left (layout->cover), all, 1e-12);
}

/* Indices follow drafts that are moved and taken away: the draft that covers a place is among those near it. */
static void
neighbours (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (30, 20, "compact"), OX_WORK_SERPENTINE);
  OxLayout *layout = laid->layout;
  g_autoptr (GArray) near = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < 60; i++)
    laid_add (laid, (OxDraft){ .sign = 1, .y = 1 + i % 30 * 0.6, .x0 = i < 30 ? 2 : 16, .x1 = i < 30 ? 12 : 27 });
  for (guint i = 0; i < 12; i++)
    {
      ox_layout_remove (layout, i * 3);
      OxDraft moved = *laid_draft (laid, i);
      moved.y += 0.3;
      ox_layout_replace (layout, i, &moved);
    }
  for (guint i = 0; i < layout->drafts->len; i++)
    {
      const OxDraft *draft = laid_draft (laid, i);
      gboolean found = FALSE;
      ox_layout_near (layout, 0, (OxBox){ draft->x0 + 1, draft->y - 0.01, draft->x0 + 1.1, draft->y + 0.01 }, OX_NEAR_ALONG, near);
      for (guint k = 0; k < near->len; k++)
        found = found || g_array_index (near, guint, k) == i;
      g_assert_true (found);
      g_assert_cmpuint (near->len, <, 6);
    }
}

static void
bands (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  guint across = laid_across (laid);
  OxBand band = ox_layout_band (laid->layout, &(OxDraft){ .frame = across, .sign = 1, .y = -4, .x0 = 2, .x1 = 3 });
  ox_test_near (band.angle, G_PI / 2, 1e-12);
  ox_test_near (band.x0, 2 - 0.04, 1e-12);
  ox_test_near (band.x1, 3 + 0.04, 1e-12);
  ox_test_near (band.y, -4, 1e-12);
  ox_test_near (band.width, 0.21, 1e-12);
}

/* A strip that is just long enough stays so when both ends are rounded; 4 m2/h by hand are 900 s a square metre. */
static void
figures (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  g_assert_cmpfloat (ox_layout_least (laid->layout), >=, 0.5 + OX_GRID);
  g_assert_cmpfloat (ox_layout_least (laid->layout), <=, 0.501);
  ox_test_near (ox_layout_hand_seconds (laid->layout), 900, 1e-9);
  g_assert_cmpfloat (ox_layout_move_seconds (laid->layout), >, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/layout/exact-directions", exact_directions);
  g_test_add_func ("/plan/layout/walls-that-stray", walls_that_stray);
  g_test_add_func ("/plan/layout/chalk-lines", chalk_lines);
  g_test_add_func ("/plan/layout/cover-follows", cover_follows);
  g_test_add_func ("/plan/layout/neighbours", neighbours);
  g_test_add_func ("/plan/layout/bands", bands);
  g_test_add_func ("/plan/layout/figures", figures);
  return g_test_run ();
}
