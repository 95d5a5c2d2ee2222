/* Oxturn: tests of sheets/labels
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/labels.h"
#include "support/ox-test.h"

static OxLabelBox
box_at (double x, double y, double angle)
{
  return (OxLabelBox){ { x, y }, angle, { 0, -1, 6, 1 } };
}

static void
test_boxes_side_by_side (void)
{
  g_autoptr (OxLabels) labels = ox_labels_new (10);
  OxLabelBox first = box_at (1, 1, 0);
  ox_labels_take (labels, &first);
  /* Boxes of 6 mm x 2 mm at 10 mm a metre. */
  OxLabelBox above = box_at (1, 1.2001, 0), into = box_at (1, 1.1999, 0), right = box_at (1.6, 1, 0),
             before = box_at (1.59, 1, 0);
  g_assert_true (ox_labels_is_free (labels, &above));
  g_assert_false (ox_labels_is_free (labels, &into));
  g_assert_true (ox_labels_is_free (labels, &right));
  g_assert_false (ox_labels_is_free (labels, &before));
}

/* A text of 6 mm by 2 mm at 10 mm a metre: a millimetre of it may reach over the bounds, not more. */
static void
test_bounds (void)
{
  g_autoptr (OxLabels) labels = ox_labels_new (10);
  const OxBox bounds = { 0, 0, 5, 5 };
  OxLabelBox inside = box_at (4.49, 1, 0), beyond = box_at (4.51, 1, 0);
  ox_labels_set_bounds (labels, &bounds);
  g_assert_true (ox_labels_is_free (labels, &inside));
  g_assert_false (ox_labels_is_free (labels, &beyond));
  ox_labels_set_bounds (labels, NULL);
  g_assert_true (ox_labels_is_free (labels, &beyond));
}

static void
test_slanted_boxes (void)
{
  g_autoptr (OxLabels) labels = ox_labels_new (10);
  OxLabelBox slanted = box_at (0, 0, G_PI / 4);
  ox_labels_take (labels, &slanted);
  /* The corner of the upright box around the slanted one is empty. */
  OxLabelBox corner = { { 0.4, 0 }, 0, { 0, 0, 0.5, 0.5 } }, on = { { 0.3, 0.3 }, 0, { 0, 0, 0.5, 0.5 } };
  g_assert_true (ox_labels_is_free (labels, &corner));
  g_assert_false (ox_labels_is_free (labels, &on));
}

static OxLabelBox
random_box (void)
{
  OxPoint at = { g_test_rand_double_range (0, 30), g_test_rand_double_range (0, 30) };
  OxBox mm = { g_test_rand_double_range (-8, 0), g_test_rand_double_range (-2, 0), g_test_rand_double_range (0, 8),
               g_test_rand_double_range (0, 2) };
  return (OxLabelBox){ at, g_test_rand_double_range (0, 7), mm };
}

static void
test_clear_at_one_scale_is_clear_at_larger_ones (void)
{
  g_autoptr (OxLabels) labels = ox_labels_new (5);
  g_autoptr (GArray) taken = g_array_new (FALSE, FALSE, sizeof (OxLabelBox));
  for (int i = 0; i < 400; i++)
    {
      OxLabelBox box = random_box ();
      if (!ox_labels_is_free (labels, &box))
        continue;
      ox_labels_take (labels, &box);
      g_array_append_val (taken, box);
    }
  g_assert_cmpuint (taken->len, >, 20);
  for (double scale = 5; scale < 100; scale *= 1.37)
    {
      g_autoptr (OxLabels) again = ox_labels_new (scale);
      for (guint i = 0; i < taken->len; i++)
        {
          OxLabelBox *box = &g_array_index (taken, OxLabelBox, i);
          g_assert_true (ox_labels_is_free (again, box));
          ox_labels_take (again, box);
        }
    }
}

static void
test_places_can_be_given_back (void)
{
  g_autoptr (OxLabels) labels = ox_labels_new (10);
  OxLabelBox a = box_at (0, 0, 0), b = box_at (5, 5, 0);
  ox_labels_take (labels, &a);
  ox_labels_take (labels, &b);
  g_assert_cmpuint (ox_labels_get_count (labels), ==, 2);
  ox_labels_keep (labels, 1);
  g_assert_false (ox_labels_is_free (labels, &a));
  g_assert_true (ox_labels_is_free (labels, &b));
  ox_labels_take (labels, &b);
  ox_labels_set_scale (labels, 20);
  g_assert_false (ox_labels_is_free (labels, &b));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/labels/side-by-side", test_boxes_side_by_side);
  g_test_add_func ("/labels/bounds", test_bounds);
  g_test_add_func ("/labels/slanted", test_slanted_boxes);
  g_test_add_func ("/labels/scales", test_clear_at_one_scale_is_clear_at_larger_ones);
  g_test_add_func ("/labels/keep", test_places_can_be_given_back);
  return g_test_run ();
}
