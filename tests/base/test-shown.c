/* Oxturn: tests/base/test-shown
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/shown.h"
#include <string.h>

static char *
repeat (const char *letter, guint n)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < n; i++)
    g_string_append (text, letter);
  return g_string_free (text, FALSE);
}

/* Letters of one to four bytes: 40 of them stay as they are, of more the 41st is three dots. */
static void
test_letters (void)
{
  static const char *const letters[] = { "a", "é", "€", "𝄞" };
  for (guint i = 0; i < G_N_ELEMENTS (letters); i++)
    {
      g_autofree char *forty = repeat (letters[i], 40);
      g_autofree char *more = repeat (letters[i], 41);
      g_autofree char *many = repeat (letters[i], 100000);
      g_autofree char *cut = g_strconcat (forty, "…", NULL);
      g_assert_cmpstr (ox_shown (forty).text, ==, forty);
      g_assert_cmpstr (ox_shown (more).text, ==, cut);
      g_assert_cmpstr (ox_shown (many).text, ==, cut);
    }
}

/* A cut by bytes would end within a letter. */
static void
test_valid (void)
{
  for (guint n = 0; n < 8; n++)
    {
      g_autofree char *start = repeat ("a", n);
      g_autofree char *rest = repeat ("ü", 60);
      g_autofree char *text = g_strconcat (start, rest, NULL);
      g_autofree char *message = g_strdup_printf ("“%s” is no day", ox_shown (text).text);
      g_assert_true (g_utf8_validate (message, -1, NULL));
    }
  g_assert_true (g_utf8_validate (ox_shown ("a\xff\xfe").text, -1, NULL));
  g_autofree char *broken = repeat ("\xff", 500);
  g_assert_true (g_utf8_validate (ox_shown (broken).text, -1, NULL));
  g_assert_cmpstr (ox_shown ("").text, ==, "");
  g_assert_cmpstr (ox_shown (NULL).text, ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/shown/letters", test_letters);
  g_test_add_func ("/base/shown/valid", test_valid);
  return g_test_run ();
}
