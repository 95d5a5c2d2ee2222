/* Oxturn: plan/zones: crosswise strips prepare what the starts of main strips stay off.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The compact machine leaves e = 0.105 m beside a wall that it runs along, 0.33 m ahead of one that it runs up to and
 * 1.21 m at one where it starts.
 */
#include "laid.h"
#include "support/floors.h"
#include "support/ox-test.h"

static Laid *
zoned (double width, double depth, OxWork work)
{
  Laid *laid = laid_new (ox_test_floor_rectangle (width, depth, "compact"), work);
  g_assert_true (ox_layout_mains (laid->layout));
  ox_layout_zones (laid->layout);
  laid_expect_fit (laid);
  return laid;
}

static guint
crosswise (const Laid *laid, double x0, double x1)
{
  guint n = 0;
  for (guint i = 0; i < laid->layout->drafts->len; i++)
    {
      const OxDraft *d = laid_draft (laid, i);
      if (d->kind == OX_STRIP_MAIN)
        continue;
      g_assert_false (d->grid);
      OxPoint p = ox_frame_to_floor (g_ptr_array_index (laid->layout->frames, d->frame), (OxPoint){ d->x0, d->y });
      n += p.x >= x0 && p.x <= x1;
    }
  return n;
}

/* Between the starts of the crosswise strips of a hall nothing stays open but e along the end walls. */
static void
to_and_fro (void)
{
  g_autoptr (Laid) laid = zoned (12, 8, OX_WORK_SERPENTINE);
  ox_test_near (laid_open (laid, (OxBox){ 0.106, 1.211, 12 - 0.106, 8 - 1.211 }), 0, 1e-6);
  ox_test_near (laid_open (laid, (OxBox){ 0, 2, 12, 3 }), 2 * 0.105, 1e-3);
  /* 1.21 m and an overlap, less e, to be covered: ceil ((1.125 - 0.21) / 0.19) + 1 = 6 lanes a zone, fewer when a few
   * millimetres are left to the hand. */
  g_assert_cmpuint (crosswise (laid, 0, 1.3), >=, 5);
  g_assert_cmpuint (crosswise (laid, 0, 1.3), <=, 6);
  g_assert_cmpuint (crosswise (laid, 12 - 1.3, 12), ==, crosswise (laid, 0, 1.3));
  g_assert_cmpuint (crosswise (laid, 1.3, 12 - 1.3), ==, 0);
}

/* All along +x: the strips start at the low end, at the high end they leave no more than 0.33 m. */
static void
one_way (void)
{
  g_autoptr (Laid) forward = zoned (12, 8, OX_WORK_FORWARD);
  ox_test_near (laid_open (forward, (OxBox){ 0.106, 1.211, 12 - 0.331, 8 - 1.211 }), 0, 1e-6);
  g_assert_cmpuint (crosswise (forward, 0, 1.3), >=, 5);
  g_assert_cmpuint (crosswise (forward, 12 - 1.3, 12), <=, 2);
  g_autoptr (Laid) backward = zoned (12, 8, OX_WORK_BACKWARD);
  g_assert_cmpuint (crosswise (backward, 12 - 1.3, 12), ==, crosswise (forward, 0, 1.3));
  g_assert_cmpuint (crosswise (backward, 0, 1.3), ==, crosswise (forward, 12 - 1.3, 12));
}

/* No strip fits along a wall of 2 m; and none is laid across where no swing fits. */
static void
none (void)
{
  g_autoptr (Laid) narrow = zoned (12, 2, OX_WORK_SERPENTINE);
  g_assert_cmpuint (crosswise (narrow, 0, 12), ==, 0);
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (12, 8, "compact"), OX_WORK_FORWARD);
  laid->layout->one_heading = TRUE;
  g_assert_true (ox_layout_mains (laid->layout));
  ox_layout_zones (laid->layout);
  g_assert_cmpuint (crosswise (laid, 0, 12), ==, 0);
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

/* Zones that fill a floor of this length from both ends share one grid: neighbours are equally far apart, everywhere.
 */
static void
expect_shared (double length, guint want)
{
  g_autoptr (Laid) laid = zoned (length, 8, OX_WORK_SERPENTINE);
  g_autoptr (GArray) lanes = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint i = 0; i < laid->layout->drafts->len; i++)
    if (laid_draft (laid, i)->kind == OX_STRIP_CROSSWISE)
      g_array_append_val (lanes, laid_draft (laid, i)->y);
  g_array_sort (lanes, compare_doubles);
  g_assert_cmpuint (lanes->len, ==, want);
  for (guint i = 1; i < lanes->len; i++)
    ox_test_near (g_array_index (lanes, double, i) - g_array_index (lanes, double, i - 1), (length - 0.42) / (want - 1),
                  1e-6);
}

/* ceil ((L - 0.42) / 0.19) + 1 lanes, an even number and an odd one. */
static void
facing (void)
{
  expect_shared (2.5, 12);
  expect_shared (2.3, 11);
  expect_shared (2.2, 11);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/zones/to-and-fro", to_and_fro);
  g_test_add_func ("/plan/zones/one-way", one_way);
  g_test_add_func ("/plan/zones/none", none);
  g_test_add_func ("/plan/zones/facing", facing);
  return g_test_run ();
}
