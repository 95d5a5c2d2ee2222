/* Oxturn: tests of sheets/chain
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/chain.h"
#include "sheets/hall.h"
#include "support/ox-test.h"

static const OxPlot plot = { .area = { 0, 0, 400, 300 }, .origin = { 50, 60 }, .mm_per_m = 10 };

/* A chain below a floor of @length m x 10 m at 1:100; @stops loses what finds no place; (transfer full) */
static OxDrawing *
draw (GArray *stops, double length, OxUnits units, gboolean *drawn)
{
  g_autoptr (OxLabels) labels = ox_labels_new (plot.mm_per_m);
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  const OxChainPage page = { &plot, units, { 0, 0, length, 10 }, builder, labels };
  *drawn = ox_chain_append (&page, (OxChainEdge){ TRUE, -1 }, stops, 10);
  return ox_drawing_builder_end (builder);
}

static GArray *
evenly (double length, guint spans)
{
  GArray *stops = g_array_new (FALSE, FALSE, sizeof (OxChainStop));
  for (guint i = 0; i <= spans; i++)
    {
      OxChainStop stop = { length * i / spans, 0 };
      g_array_append_val (stops, stop);
    }
  return stops;
}

static double
sum_of (const OxDrawing *drawing, guint *n)
{
  double sum = 0;
  *n = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_TEXT)
      {
        sum += g_ascii_strtod (drawing->elements[i].text.text, NULL);
        ++*n;
      }
  return sum;
}

/* Ten metres in three, seven, nine parts: no part is a round figure, all together are. */
static void
test_adds_up (void)
{
  static const guint parts[] = { 1, 3, 7, 9 };
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_autoptr (GArray) stops = evenly (10, parts[i]);
      gboolean drawn;
      guint n;
      g_autoptr (OxDrawing) metres = draw (stops, 10, OX_UNITS_METRES, &drawn);
      g_assert_true (drawn);
      ox_test_near (sum_of (metres, &n), 10, 1e-9);
      g_assert_cmpuint (n, ==, parts[i]);
      g_autoptr (OxDrawing) millimetres = draw (stops, 10, OX_UNITS_MILLIMETRES, &drawn);
      ox_test_near (sum_of (millimetres, &n), 10000, 1e-9);
    }
}

/* Feet are shown to 1/16 in, which is 1.5875 mm: a span of 10 ft and 0.7 mm is 10 ft there, one of 10 ft and 0.9 mm is
 * not. */
static void
test_feet_are_rounded (void)
{
  const double over[] = { 0.0007, 0.0009 }, shown[] = { 3.048, 3.048 + 0.0015875 };
  for (guint i = 0; i < 2; i++)
    {
      const OxChainStop stops[] = { { 0, 0 }, { 3.048 + over[i], 0 } };
      g_autofree char *text = ox_units_length_text (OX_UNITS_FEET, shown[i], FALSE);
      gboolean drawn;
      g_autoptr (GArray) both = g_array_new (FALSE, FALSE, sizeof (OxChainStop));
      g_array_append_vals (both, stops, 2);
      g_autoptr (OxDrawing) drawing = draw (both, 10, OX_UNITS_FEET, &drawn);
      g_assert_true (drawn);
      g_assert_nonnull (ox_test_find_cell (drawing, text));
    }
}

/* Twenty spans of 2 mm of paper each leave no room for twenty figures of 8 mm: spans become one until all find a place,
 * still true. */
static void
test_thins_out (void)
{
  g_autoptr (GArray) stops = evenly (4, 20);
  gboolean drawn;
  guint n;
  g_autoptr (OxDrawing) drawing = draw (stops, 4, OX_UNITS_METRES, &drawn);
  g_assert_true (drawn);
  g_assert_cmpuint (stops->len, <, 21);
  g_assert_cmpuint (stops->len, >=, 3);
  ox_test_near (sum_of (drawing, &n), 4, 1e-9);
  g_assert_cmpuint (n, ==, stops->len - 1);
  ox_test_no_texts_overlap (drawing, 1);
}

/* A small span keeps its line; its figure goes one row out. */
static void
test_small_span (void)
{
  const OxChainStop three[] = { { 0, 0 }, { 9.8, 0 }, { 10, 0 } };
  g_autoptr (GArray) stops = g_array_new (FALSE, FALSE, sizeof (OxChainStop));
  gboolean drawn;
  g_array_append_vals (stops, three, 3);
  g_autoptr (OxDrawing) drawing = draw (stops, 10, OX_UNITS_METRES, &drawn);
  g_assert_cmpuint (stops->len, ==, 3);
  const OxElement *wide = ox_test_find_text (drawing, "9.80"), *narrow = ox_test_find_text (drawing, "0.20");
  ox_test_near (wide->text.at.y, 60 - 10 + 1, 1e-9);
  g_assert_cmpfloat (narrow->text.at.y + 2.5, <, 60 - 10);
}

/* One stop is no chain. */
static void
test_too_few (void)
{
  g_autoptr (GArray) stops = g_array_new (FALSE, FALSE, sizeof (OxChainStop));
  OxChainStop stop = { 0, 0 };
  gboolean drawn;
  g_array_append_val (stops, stop);
  g_autoptr (OxDrawing) drawing = draw (stops, 10, OX_UNITS_METRES, &drawn);
  g_assert_false (drawn);
  g_assert_cmpuint (drawing->n_elements, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chain/feet", test_feet_are_rounded);
  g_test_add_func ("/chain/adds-up", test_adds_up);
  g_test_add_func ("/chain/thins-out", test_thins_out);
  g_test_add_func ("/chain/small-span", test_small_span);
  g_test_add_func ("/chain/too-few", test_too_few);
  return g_test_run ();
}
