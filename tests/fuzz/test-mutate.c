/* Oxturn: tests/fuzz/test-mutate
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "mutate.h"
#include <string.h>

#define TEXT "POLYGON ((0 0, 12.3456 0, 12.3456 8, 0 8, 0 0))"

static char *
mutated (guint32 seed)
{
  GRand *rand = g_rand_new_with_seed (seed);
  char *text = mutate_text (rand, TEXT, "POLYGON ((1 1, 2 1, 2 2, 1 1))");
  g_rand_free (rand);
  return text;
}

/* The same seed spoils the same way, others in many. */
static void
test_repeats (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint32 seed = 0; seed < 200; seed++)
    {
      char *text = mutated (seed);
      g_autofree char *again = mutated (seed);
      g_assert_cmpstr (text, ==, again);
      g_hash_table_add (seen, text);
    }
  g_assert_cmpuint (g_hash_table_size (seen), >, 100);
}

static gboolean
has_both (const char *text, gpointer data)
{
  ++*(guint *) data;
  return strstr (text, "<wear") != NULL && strstr (text, "12.3") != NULL;
}

/* Of a hundred lines the two that matter stay, of their numbers what matters. */
static void
test_shrinks (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  guint asked = 0;
  for (guint i = 0; i < 100; i++)
    g_string_append (text, i == 31   ? "<wear interval=\"50.125\"/>\n"
                           : i == 77 ? "<corner x=\"12.3456\"/>\n"
                                     : "<corner x=\"1\"/>\n");
  g_autofree char *small = mutate_shrink (text->str, has_both, &asked, 500);
  g_assert_cmpstr (small, ==, "<wear interval=\"50\"/>\n<corner x=\"12.3\"/>\n");
  g_assert_cmpuint (asked, <, 200);
}

/* No oftener than it may. */
static void
test_tries (void)
{
  guint asked = 0;
  g_autofree char *small = mutate_shrink (TEXT "<wear", has_both, &asked, 3);
  g_assert_cmpuint (asked, ==, 3);
  g_assert_nonnull (strstr (small, "12.3"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fuzz/mutate/repeats", test_repeats);
  g_test_add_func ("/fuzz/mutate/shrinks", test_shrinks);
  g_test_add_func ("/fuzz/mutate/tries", test_tries);
  return g_test_run ();
}
