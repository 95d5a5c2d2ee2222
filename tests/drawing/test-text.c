/* Oxturn: tests of drawing/text
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/text.h"
#include "support/ox-test.h"
#include <string.h>

/* Advance widths of DejaVu Sans 2.37 as its file has them: digits 1303, M 1767, blank 651; bold digits 1425; 2048 units
 * an em. */
static void
test_known_widths (void)
{
  double unit = 2.5 / (1493.0 / 2048) / 2048;
  ox_test_near (ox_text_width ("0", 2.5, FALSE), 1303 * unit, 1e-9);
  ox_test_near (ox_text_width ("M M", 2.5, FALSE), (2 * 1767 + 651) * unit, 1e-9);
  ox_test_near (ox_text_width ("128", 2.5, TRUE), 3 * 1425 * unit, 1e-9);
  ox_test_near (ox_text_width ("", 2.5, FALSE), 0, 1e-12);
}

static void
test_grows_with_height (void)
{
  ox_test_near (ox_text_width ("Z\xc3\xbcrich 12 m\xc2\xb2", 5, FALSE),
                2 * ox_text_width ("Z\xc3\xbcrich 12 m\xc2\xb2", 2.5, FALSE), 1e-9);
  g_assert_cmpfloat (ox_text_width ("\xe5\xba\x8a", 2.5, FALSE), >, ox_text_width ("W", 2.5, FALSE));
}

static void
test_wrap_keeps_words_and_width (void)
{
  const char *text = "Floor that the machine does not reach is edge work, done with hand tools";
  for (double width = 12; width < 90; width += 7)
    {
      g_auto (GStrv) lines = ox_text_wrap (text, 1.8, FALSE, width);
      g_autofree char *joined = g_strjoinv (" ", lines);
      g_assert_cmpstr (joined, ==, text);
      for (guint i = 0; lines[i] != NULL; i++)
        g_assert_cmpfloat (ox_text_width (lines[i], 1.8, FALSE), <=, width + 1e-9);
    }
}

/* A figure and its unit stay on one line where both fit; a figure that no unit follows may end one. */
static void
test_wrap_keeps_units_with_figures (void)
{
  const char *text = "Cord of 30.00 m with 3.31 mm\xc2\xb2, held at 20 m/s and 18.1 A; 5 men for 2 h.";
  for (double width = 18; width < 120; width += 0.5)
    {
      g_auto (GStrv) lines = ox_text_wrap (text, 1.8, FALSE, width);
      g_autofree char *joined = g_strjoinv (" ", lines);
      g_assert_cmpstr (joined, ==, text);
      for (guint i = 0; lines[i] != NULL && lines[i + 1] != NULL; i++)
        {
          gboolean figure = g_ascii_isdigit (lines[i][strlen (lines[i]) - 1]);
          g_assert_true (!figure || g_str_has_prefix (lines[i + 1], "men"));
          g_assert_cmpfloat (ox_text_width (lines[i], 1.8, FALSE), <=, width + 1e-9);
        }
    }
  double held = ox_text_width ("30.00 m", 1.8, FALSE);
  ox_test_near (ox_text_longest_word ("of 30.00 m by", 1.8, FALSE), held, 1e-9);
  ox_test_near (ox_text_longest_word ("of 5 men", 1.8, FALSE), ox_text_width ("men", 1.8, FALSE), 1e-9);
  /* No room for both: parted at the blank, not within the figure. */
  g_auto (GStrv) thin = ox_text_wrap ("30.00 m", 1.8, FALSE, held - 0.1);
  g_assert_cmpstr (thin[0], ==, "30.00");
  g_assert_cmpstr (thin[1], ==, "m");
}

static void
test_wrap_breaks_what_it_must (void)
{
  g_auto (GStrv) lines = ox_text_wrap ("Bodenbeschichtungsvorbereitung", 2.5, FALSE, 15);
  g_assert_cmpuint (g_strv_length (lines), >, 2);
  g_autofree char *joined = g_strjoinv ("", lines);
  g_assert_cmpstr (joined, ==, "Bodenbeschichtungsvorbereitung");
  /* Narrower than a letter: a letter a line, and an end. */
  g_auto (GStrv) thin = ox_text_wrap ("abc", 2.5, FALSE, 0.1);
  g_assert_cmpuint (g_strv_length (thin), ==, 3);
}

static void
test_wrap_keeps_line_breaks (void)
{
  g_auto (GStrv) lines = ox_text_wrap ("one\n\ntwo\n", 2.5, FALSE, 100);
  g_assert_cmpuint (g_strv_length (lines), ==, 3);
  g_assert_cmpstr (lines[0], ==, "one");
  g_assert_cmpstr (lines[1], ==, "");
  g_assert_cmpstr (lines[2], ==, "two");
  g_auto (GStrv) empty = ox_text_wrap ("", 2.5, FALSE, 100);
  g_assert_cmpuint (g_strv_length (empty), ==, 1);
}

static void
test_fit_cuts_at_a_letter (void)
{
  g_autofree char *whole = ox_text_fit ("Shop", 2.5, FALSE, 50);
  g_assert_cmpstr (whole, ==, "Shop");
  const char *text = "\xc3\x84\xc3\x96\xc3\x9c\xc3\x84\xc3\x96\xc3\x9c\xc3\x84\xc3\x96\xc3\x9c";
  for (double width = 3; width < 20; width += 0.7)
    {
      g_autofree char *cut = ox_text_fit (text, 2.5, FALSE, width);
      g_assert_true (g_utf8_validate (cut, -1, NULL));
      g_assert_cmpfloat (ox_text_width (cut, 2.5, FALSE), <=, width + 1e-9);
      g_assert_true (g_str_has_suffix (cut, "\xe2\x80\xa6") || cut[0] == '\0');
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/text/known-widths", test_known_widths);
  g_test_add_func ("/text/height", test_grows_with_height);
  g_test_add_func ("/text/wrap", test_wrap_keeps_words_and_width);
  g_test_add_func ("/text/wrap-long-word", test_wrap_breaks_what_it_must);
  g_test_add_func ("/text/wrap-units", test_wrap_keeps_units_with_figures);
  g_test_add_func ("/text/wrap-lines", test_wrap_keeps_line_breaks);
  g_test_add_func ("/text/fit", test_fit_cuts_at_a_letter);
  return g_test_run ();
}
