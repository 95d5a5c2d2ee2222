/* Oxturn: tests/file/test-job-words
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-words.h"

/* One word for each value, at its place. */
static void
test_words (void)
{
  g_assert_cmpstr (ox_words_units[OX_UNITS_METRES], ==, "metres");
  g_assert_cmpstr (ox_words_units[OX_UNITS_MILLIMETRES], ==, "millimetres");
  g_assert_cmpstr (ox_words_units[OX_UNITS_FEET], ==, "feet");
  g_assert_cmpstr (ox_words_side[OX_SIDE_WALL], ==, "wall");
  g_assert_cmpstr (ox_words_side[OX_SIDE_OPEN], ==, "open");
  g_assert_cmpstr (ox_words_side[OX_SIDE_DROP], ==, "drop");
  g_assert_cmpstr (ox_words_shape[OX_SHAPE_RECTANGLE], ==, "rectangle");
  g_assert_cmpstr (ox_words_shape[OX_SHAPE_CIRCLE], ==, "circle");
  g_assert_cmpstr (ox_words_shape[OX_SHAPE_POLYGON], ==, "polygon");
  g_assert_cmpstr (ox_words_obstacle[OX_OBSTACLE_SOLID], ==, "solid");
  g_assert_cmpstr (ox_words_obstacle[OX_OBSTACLE_PIT], ==, "pit");
  g_assert_cmpstr (ox_words_obstacle[OX_OBSTACLE_MASKED], ==, "masked");
  g_assert_cmpstr (ox_words_station[OX_STATION_COLLECTOR], ==, "collector");
  g_assert_cmpstr (ox_words_station[OX_STATION_SUPPLY], ==, "supply");
  g_assert_cmpstr (ox_words_cost[OX_COST_LABOUR_HOUR], ==, "labour-hour");
  g_assert_cmpstr (ox_words_cost[OX_COST_DUST_DRUM], ==, "dust-drum");
  g_assert_cmpstr (ox_words_cost[OX_COST_AREA], ==, "m2");
  g_assert_cmpstr (ox_words_cost[OX_COST_FIXED], ==, "fixed");
  g_assert_null (ox_words_cost[OX_COST_EDGE_METRE + 1]);
  g_assert_cmpstr (ox_words_day[6], ==, "sun");
  g_assert_null (ox_words_day[7]);
  g_assert_null (ox_words_units[OX_UNITS_FEET + 1]);
  g_assert_null (ox_words_side[OX_SIDE_DROP + 1]);
  g_assert_null (ox_words_shape[OX_SHAPE_POLYGON + 1]);
  g_assert_null (ox_words_obstacle[OX_OBSTACLE_MASKED + 1]);
  g_assert_null (ox_words_station[OX_STATION_SUPPLY + 1]);
}

/* Every text of the sheets has its element: a pointer that the table forgot would be lost on saving. */
static void
test_texts (void)
{
  g_assert_cmpuint (sizeof (OxTexts), ==, OX_TEXT_FIELDS * sizeof (char *));
  for (guint i = 0; i < OX_TEXT_FIELDS; i++)
    g_assert_cmpuint (ox_text_fields[i].offset, ==, i * sizeof (char *));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/job-words/words", test_words);
  g_test_add_func ("/file/job-words/texts", test_texts);
  return g_test_run ();
}
