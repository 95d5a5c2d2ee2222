/* Oxturn: tests/tools/test-survey - corners read from a text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/survey.h"

#include "geometry/ring.h"

#include <string.h>

static OxSurvey *
read_chain (const char *text, gboolean spread)
{
  OxSurveyOptions options = { .form = OX_SURVEY_CHAIN, .spread = spread };
  g_autoptr (GError) error = NULL;
  OxSurvey *survey = ox_survey_read (text, &options, &error);

  g_assert_no_error (error);
  return survey;
}

/* An L of 12 m x 9 m with a notch: 88 m2, whichever way it is written. */
static void
test_ways_to_write (void)
{
  static const char *const texts[] = {
    "12 0\n5 90\n5 180\n4 90\n7 180\n9 270\n",
    "length;direction\r\n12,00;0\r\n5;90\r\n5;180\r\n4;90\r\n7;180\r\n9;-90\r\n",
    "12 0\n\n5 L # dock\n5 L\n4 R\n7 L\n9 l90",
    "1200cm,0\n5m,90\n5000mm,180\n4,90\n7,180\n9,270\302\260\n",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (OxSurvey) survey = read_chain (texts[i], FALSE);

      g_assert_cmpuint (survey->ring->n, ==, 6);
      g_assert_cmpfloat_with_epsilon (ox_ring_area (survey->ring), 88, 1e-9);
      g_assert_true (survey->closing);
      g_assert_cmpfloat (survey->gap, <, 1e-9);
      g_assert_cmpfloat_with_epsilon (survey->length, 42, 1e-9);
    }
}

static void
test_feet (void)
{
  OxSurveyOptions options = { .form = OX_SURVEY_CHAIN, .units = OX_UNITS_FEET };
  g_autoptr (OxSurvey) survey = ox_survey_read ("30'-4 1/2\" 0\n18'-7 3/4\" 90\n30'-4 1/2\" 180\n18'-7 3/4\" 270",
                                                &options, NULL);

  /* 30'-4 1/2" x 18'-7 3/4" = 9.2583 m x 5.68325 m, corners on the grid of 0.1 mm */
  g_assert_nonnull (survey);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (survey->ring), 52.6172335, 1e-3);
}

/* Taped clockwise with the last leg 6 cm short. */
static void
test_closing_error (void)
{
  static const char text[] = "8 90\n10 0\n8 270\n9.94 180";
  g_autoptr (OxSurvey) left = read_chain (text, FALSE);
  g_autoptr (OxSurvey) spread = read_chain (text, TRUE);
  OxSurveyOptions options = { .form = OX_SURVEY_CHAIN };
  g_autofree char *words = ox_survey_words (left, &options);

  g_assert_cmpfloat_with_epsilon (left->gap, 0.06, 1e-9);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (left->ring), 80, 1e-9);
  g_assert_nonnull (strstr (words, "0.06 m, 1 in 599"));
  /* The right side has moved left by the share that the first two or three legs have of 35.94 m. */
  g_assert_cmpfloat_with_epsilon (spread->gap, 0.06, 1e-9);
  g_assert_cmpuint (spread->ring->n, ==, 4);
  for (guint i = 0; i < 4; i++)
    {
      OxPoint p = spread->ring->points[i];

      if (p.x > 5)
        g_assert_cmpfloat_with_epsilon (p.x, 10 - 0.06 * (p.y > 4 ? 18 : 26) / 35.94, OX_GRID);
    }
}

static void
test_open_chain (void)
{
  g_autoptr (OxSurvey) survey = read_chain ("10 0\n8 90\n10 180", TRUE);
  OxSurveyOptions options = { .form = OX_SURVEY_CHAIN };
  g_autofree char *words = ox_survey_words (survey, &options);

  g_assert_false (survey->closing);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (survey->ring), 80, 1e-9);
  g_assert_nonnull (strstr (words, "8.00 m from the start"));
}

static void
test_list (void)
{
  OxSurveyOptions options = { .form = OX_SURVEY_LIST };
  /* A figure that is in many books of programming: 30. */
  g_autoptr (OxSurvey) survey = ox_survey_read ("x,y\n3,4\n5,11\n12, 8\n9;5\n5\t6\n3 4\n", &options, NULL);

  g_assert_nonnull (survey);
  g_assert_cmpuint (survey->ring->n, ==, 5);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (survey->ring), 30, 1e-9);
}

static void
test_guess (void)
{
  g_assert_cmpint (ox_survey_guess ("x,y\n1,1\n2,2"), ==, OX_SURVEY_LIST);
  g_assert_cmpint (ox_survey_guess ("0,0\n4,0\n4,4"), ==, OX_SURVEY_LIST);
  g_assert_cmpint (ox_survey_guess ("6.35 0\n2.10 90"), ==, OX_SURVEY_CHAIN);
  g_assert_cmpint (ox_survey_guess ("length direction\n6.35 0"), ==, OX_SURVEY_CHAIN);
}

static void
test_refused (void)
{
  static const char *const bad[] = { "6.35 0\n2.10", "6.35 0\n-2 90", "6.35 0\n0 90", "6.35 0\n2 north", "6.35 0\nnan 90",
                                     "6.35 0\n1e9 90" };
  OxSurveyOptions options = { .form = OX_SURVEY_CHAIN };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (ox_survey_read (bad[i], &options, &error));
      g_assert_error (error, OX_SURVEY_ERROR, OX_SURVEY_ERROR_LINE);
      g_assert_nonnull (strstr (error->message, "Line 2"));
    }
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (GError) error = NULL;

      options.form = i == 0 ? OX_SURVEY_CHAIN : OX_SURVEY_LIST;
      g_assert_null (ox_survey_read (i == 0 ? "4 0" : "1,1\n2,2", &options, &error));
      g_assert_error (error, OX_SURVEY_ERROR, OX_SURVEY_ERROR_FEW);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/survey/ways-to-write", test_ways_to_write);
  g_test_add_func ("/tools/survey/feet", test_feet);
  g_test_add_func ("/tools/survey/closing-error", test_closing_error);
  g_test_add_func ("/tools/survey/open-chain", test_open_chain);
  g_test_add_func ("/tools/survey/list", test_list);
  g_test_add_func ("/tools/survey/guess", test_guess);
  g_test_add_func ("/tools/survey/refused", test_refused);
  return g_test_run ();
}
