/* Oxturn: tests/job/test-text
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/text.h"
#include <string.h>

static void
test_clean (void)
{
  static const struct
  {
    const char *text;
    gboolean lines;
    const char *clean;
  } rows[] = {
    { NULL, TRUE, "" },
    { "plain", FALSE, "plain" },
    { "two\nlines", TRUE, "two\nlines" },
    { "two\nlines", FALSE, "two lines" },
    { "dos\r\nlines", TRUE, "dos\nlines" },
    { "old\rlines", TRUE, "old\nlines" },
    { "bell\a and \x1b[1m", TRUE, "bell  and  [1m" },
    { "tab\tstays", FALSE, "tab\tstays" },
    { "m² µ 床", FALSE, "m² µ 床" },
    { "\xef\xbf\xbe", FALSE, " " }, /* U+FFFE, which XML has no place for */
    { "broken \xff", FALSE, "broken \xef\xbf\xbd" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *clean = ox_text_clean (rows[i].text, rows[i].lines);
      g_assert_cmpstr (clean, ==, rows[i].clean);
    }
}

/* Cut between two characters, never within one. */
static void
test_clean_cuts (void)
{
  g_autofree char *most = g_strnfill (OX_TEXT_MOST, 'x');
  g_autofree char *kept = ox_text_clean (most, FALSE);
  g_assert_cmpuint (strlen (kept), ==, OX_TEXT_MOST);
  most[OX_TEXT_MOST - 1] = '\0';
  g_autofree char *longer = g_strconcat (most, "µ", NULL);
  g_autofree char *cut = ox_text_clean (longer, FALSE);
  g_assert_cmpuint (strlen (cut), ==, OX_TEXT_MOST - 1);
}

static void
test_is_id (void)
{
  static const char *const good[] = { "R1", "a", "Room-2_b" };
  static const char *const bad[] = { NULL, "", "1R", "_a", "-a", "R 1", "R1\n", "Ä1", "R.1" };
  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    g_assert_true (ox_text_is_id (good[i]));
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    g_assert_false (ox_text_is_id (bad[i]));
  g_autofree char *longest = g_strnfill (64, 'x');
  g_autofree char *longer = g_strnfill (65, 'x');
  g_assert_true (ox_text_is_id (longest));
  g_assert_false (ox_text_is_id (longer));
}

/* The calendar of the whole world: 2024 was a leap year, 2100 will be none. */
static void
test_is_date (void)
{
  g_assert_true (ox_text_is_date ("") && ox_text_is_date ("2024-02-29") && ox_text_is_date ("2026-12-31"));
  static const char *const wrong[]
      = { "2100-02-29", "2026-00-10", "2026-04-31", "2026-4-3", "26-04-03", "2026/04/03", "-026-04-03" };
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    g_assert_false (ox_text_is_date (wrong[i]));
}

static void
test_clock (void)
{
  static const struct
  {
    const char *text;
    guint first, last;
    int minutes; /* -1: none */
  } rows[] = {
    { "9:05", 1, 12, 545 }, { "09:05", 1, 12, 545 }, { "12:59", 1, 12, 779 }, { "1:00", 1, 12, 60 }, { "0:00", 0, 23, 0 },
    { "0:59", 1, 12, -1 },  { "13:00", 1, 12, -1 },  { "9:60", 1, 12, -1 },   { "9:5", 1, 12, -1 },  { "9", 1, 12, -1 },
    { "", 1, 12, -1 },      { "009:05", 1, 12, -1 }, { "9:055", 1, 12, -1 },  { "-9:05", 1, 12, -1 }, { "9:05 ", 1, 12, -1 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      guint minutes = 4711;
      g_assert_cmpint (ox_text_read_clock (rows[i].text, rows[i].first, rows[i].last, &minutes), ==, rows[i].minutes >= 0);
      g_assert_cmpuint (minutes, ==, rows[i].minutes >= 0 ? (guint) rows[i].minutes : 4711);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/text/clean", test_clean);
  g_test_add_func ("/job/text/clean/cuts", test_clean_cuts);
  g_test_add_func ("/job/text/is-id", test_is_id);
  g_test_add_func ("/job/text/is-date", test_is_date);
  g_test_add_func ("/job/text/clock", test_clock);
  return g_test_run ();
}
