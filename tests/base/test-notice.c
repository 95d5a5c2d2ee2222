/* Oxturn: tests of base/notice
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/notice.h"
#include "base/words.h"
#include "support/ox-test.h"
#include <string.h>

#define ONE "%u move has no way on wheels: the machine must be carried there"
#define MANY "%u moves have no way on wheels: the machine must be carried there"

static void
assert_text (const char *notice, const char *expected)
{
  g_autofree char *text = ox_notice_text (notice);
  g_assert_cmpstr (text, ==, expected);
}

static void
test_put_in_their_order (void)
{
  g_autofree char *two = ox_notice_new ("%s: %s coats", "Store", "2", NULL);
  assert_text (two, "Store: 2 coats");
  g_autofree char *plain = ox_notice_new ("Nothing fits", NULL);
  assert_text (plain, "Nothing fits");
  /* A per cent sign in what is put in stays what it is. */
  g_autofree char *sign = ox_notice_new ("%s: %s", "50 %s", "%u", NULL);
  assert_text (sign, "50 %s: %u");
}

static void
test_one_and_many (void)
{
  g_autofree char *one = ox_notice_count (ONE, MANY, 1, NULL), *many = ox_notice_count (ONE, MANY, 12, NULL);
  assert_text (one, "1 move has no way on wheels: the machine must be carried there");
  assert_text (many, "12 moves have no way on wheels: the machine must be carried there");
}

/* The same notice in the language of whoever reads it. */
static void
test_in_the_language_of_the_thread (void)
{
  OxLanguage german;
  g_assert_true (ox_language_find ("de", &german));
  g_autofree char *notice = ox_notice_count (ONE, MANY, 3, NULL);
  g_autofree char *english = ox_notice_text (notice);
  {
    g_auto (OxWordsScope) scope = ox_words_scope (&german);
    g_autofree char *text = ox_notice_text (notice);
    g_assert_cmpstr (text, !=, english);
    g_assert_nonnull (strstr (text, "3"));
    g_assert_null (strstr (text, "move"));
  }
  g_autofree char *again = ox_notice_text (notice);
  g_assert_cmpstr (again, ==, english);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/notice/order", test_put_in_their_order);
  g_test_add_func ("/notice/count", test_one_and_many);
  g_test_add_func ("/notice/language", test_in_the_language_of_the_thread);
  return g_test_run ();
}
