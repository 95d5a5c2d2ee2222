/* Oxturn: plan/mains: lanes by the formula.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Between lanes that keep s = side + gap off both walls of a room D deep lie D - 2 s, in steps of w - o at most:
 * n = ceil ((D - 2 s) / (w - o)) + 1 lanes, (D - 2 s) / (n - 1) apart.
 */
#include "judge.h"
#include "laid.h"
#include "support/floors.h"
#include "support/ox-test.h"

static void
expect_lanes (const Laid *laid, double depth, double first)
{
  const OxMachine *m = laid->job->machine;
  double between = depth - m->left - m->right - 2 * m->wall_gap;
  if (m->left != m->right) /* the narrower side goes to either wall */
    between = depth - 2 * (MIN (m->left, m->right) + m->wall_gap);
  guint n = (guint) ceil (between / (m->blast_width - m->min_overlap) - 1e-6) + 1;
  g_assert_cmpuint (laid->layout->n_main_lanes, ==, n);
  ox_test_near (laid->layout->spacing, between / (n - 1), 1e-6);
  ox_test_near (laid->layout->first_y, first, 1e-6);
}

static void
rectangles (void)
{
  static const char *const classes[] = { "compact", "medium", "large", "offset" };
  static const double sizes[][2] = { { 12, 8 }, { 20, 5.37 }, { 6.1, 9.9 } };
  for (guint c = 0; c < G_N_ELEMENTS (classes); c++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
      {
        g_autoptr (Laid) laid
            = laid_new (ox_test_floor_rectangle (sizes[i][0], sizes[i][1], classes[c]), OX_WORK_SERPENTINE);
        const OxMachine *m = laid->job->machine;
        double side = MIN (m->left, m->right) + m->wall_gap;
        g_assert_true (ox_layout_mains (laid->layout));
        expect_lanes (laid, sizes[i][1], side);
        laid_expect_fit (laid);
        /* Seen along +y the room lies from -width to 0. */
        g_autoptr (Laid) across
            = laid_along (ox_test_floor_rectangle (sizes[i][0], sizes[i][1], classes[c]), G_PI / 2, OX_WORK_SERPENTINE);
        g_assert_true (ox_layout_mains (across->layout));
        expect_lanes (across, sizes[i][0], side - sizes[i][0]);
      }
}

/* To and fro neighbours head opposite ways, one way all head the same way; strips reach as far as the body lets them.
 */
static void
headings (void)
{
  for (OxWork work = OX_WORK_SERPENTINE; work <= OX_WORK_BACKWARD; work++)
    {
      g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), work);
      g_assert_true (ox_layout_mains (laid->layout));
      g_assert_cmpuint (laid->layout->drafts->len, ==, laid->layout->n_main_lanes);
      for (guint i = 0; i < laid->layout->drafts->len; i++)
        {
          const OxDraft *d = laid_draft (laid, i);
          g_assert_true (d->grid);
          g_assert_cmpint (d->kind, ==, OX_STRIP_MAIN);
          ox_test_near (d->y, laid->layout->first_y + i * laid->layout->spacing, 1e-9);
          ox_test_near (d->x0, d->sign > 0 ? 1.25 : 0.37, 1e-6);
          ox_test_near (d->x1, d->sign > 0 ? 9.63 : 8.75, 1e-6);
          if (work == OX_WORK_SERPENTINE && i > 0)
            g_assert_cmpint (d->sign, ==, -laid_draft (laid, i - 1)->sign);
          if (work != OX_WORK_SERPENTINE)
            g_assert_cmpint (d->sign, ==, work == OX_WORK_FORWARD ? 1 : -1);
        }
    }
}

/* A column of 2 x 2 m cuts the lanes that pass within 0.21 m of it into two strips. */
static void
column (void)
{
  g_autoptr (Laid) laid = laid_new (
      judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 5, 3 }, 2),
      OX_WORK_FORWARD);
  guint cut = 0;
  g_assert_true (ox_layout_mains (laid->layout));
  expect_lanes (laid, 6, 0.21);
  for (guint k = 0; k < laid->layout->n_main_lanes; k++)
    cut += fabs (laid->layout->first_y + k * laid->layout->spacing - 3) < 1.21 - OX_LANE_TOUCH;
  g_assert_cmpuint (cut, >, 10);
  g_assert_cmpuint (laid->layout->drafts->len, ==, laid->layout->n_main_lanes + cut);
  laid_expect_fit (laid);
}

/* One lane in a room of 0.43 m: 0.01 m more than the body takes is not worth a second one; it runs in the middle. */
static void
narrow (void)
{
  g_autoptr (Laid) one = laid_new (ox_test_floor_rectangle (10, 0.43, "compact"), OX_WORK_FORWARD);
  g_assert_true (ox_layout_mains (one->layout));
  g_assert_cmpuint (one->layout->n_main_lanes, ==, 1);
  ox_test_near (one->layout->first_y, 0.215, 1e-6);
  ox_test_near (one->layout->spacing, 0, 1e-12);
  g_autoptr (Laid) two = laid_new (ox_test_floor_rectangle (10, 0.45, "compact"), OX_WORK_FORWARD);
  g_assert_true (ox_layout_mains (two->layout));
  g_assert_cmpuint (two->layout->n_main_lanes, ==, 2);
  g_autoptr (Laid) none = laid_new (ox_test_floor_rectangle (10, 0.41, "compact"), OX_WORK_FORWARD);
  g_assert_false (ox_layout_mains (none->layout));
  g_autoptr (Laid) stub = laid_new (ox_test_floor_rectangle (2.1, 6, "compact"), OX_WORK_FORWARD);
  g_assert_false (ox_layout_mains (stub->layout));
  g_assert_cmpuint (stub->layout->drafts->len, ==, 0);
}

/* An L of 40 x 6 and 6 x 34 m, parted at x = 6. Lanes along y keep 0.21 m off the wall that the line goes on from, so that they cover up to 0.105 m from it;
 * lanes along x overlap them by 0.02 m. Both are as many as the formula has for 6 m. */
static void
two_wings (void)
{
  static const OxPoint ell[] = { { 0, 0 }, { 40, 0 }, { 40, 6 }, { 6, 6 }, { 6, 40 }, { 0, 40 } };
  const OxWings wings = { { { 1, 0 }, 6 }, { { -1, 0 }, -6 }, G_PI / 2 };
  g_autoptr (Laid) laid = laid_new (ox_test_floor_polygon (ell, G_N_ELEMENTS (ell), "compact"), OX_WORK_SERPENTINE);
  laid->layout->wings = &wings;
  g_assert_true (ox_layout_mains (laid->layout));
  expect_lanes (laid, 6, 0.21);
  laid_expect_fit (laid);
  guint across = 0;
  double nearest = 100, farthest = 0;
  for (guint i = 0; i < laid->layout->drafts->len; i++)
    {
      const OxDraft *draft = laid_draft (laid, i);
      OxPoint a = ox_frame_to_floor (g_ptr_array_index (laid->layout->frames, draft->frame), (OxPoint){ draft->x0, draft->y });
      g_assert_true (draft->grid == (draft->frame == 0));
      if (draft->frame == 0)
        {
          ox_test_near (draft->x0, 6 - 0.105 - 0.02 + 0.04, 1e-6);
          continue;
        }
      across++;
      nearest = MIN (nearest, 6 - a.x);
      farthest = MAX (farthest, 6 - a.x);
    }
  ox_test_near (nearest, 0.21, 1e-3);
  ox_test_near (farthest, 6 - 0.21, 1e-3);
  g_assert_cmpuint (across, ==, (guint) ceil ((6 - 2 * 0.21) / 0.19) + 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/mains/rectangles", rectangles);
  g_test_add_func ("/plan/mains/headings", headings);
  g_test_add_func ("/plan/mains/column", column);
  g_test_add_func ("/plan/mains/narrow", narrow);
  g_test_add_func ("/plan/mains/two-wings", two_wings);
  return g_test_run ();
}
