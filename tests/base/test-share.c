/* Oxturn: base/share: every piece is done once, whatever the number of threads.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/share.h"
#include "base/words.h"

enum { PIECES = 500, INNER = 20 };

static void
count_inner (guint i, gpointer data)
{
  gint *counts = data;
  g_atomic_int_inc (&counts[i]);
}

static void
count_piece (guint i, gpointer data)
{
  gint (*counts)[INNER] = data;
  ox_share (INNER, count_inner, counts[i]);
}

/* Pieces that share out work of their own: all are done, once, before the call returns. */
static void
each_once (void)
{
  static const guint threads[] = { 1, 2, 3, 8, 64, 0 };
  for (guint t = 0; t < G_N_ELEMENTS (threads); t++)
    {
      g_autofree gint *counts = g_new0 (gint, PIECES * INNER);
      ox_share_set_threads (threads[t]);
      ox_share (PIECES, count_piece, counts);
      for (guint i = 0; i < PIECES * INNER; i++)
        g_assert_cmpint (counts[i], ==, 1);
    }
}

static void
note_thread (guint i, gpointer data)
{
  GThread **threads = data;
  threads[i] = g_thread_self ();
}

static void
one_thread_is_the_caller (void)
{
  GThread *threads[PIECES];
  ox_share_set_threads (1);
  ox_share (PIECES, note_thread, threads);
  for (guint i = 0; i < PIECES; i++)
    g_assert_true (threads[i] == g_thread_self ());
  ox_share_set_threads (0);
}

static void
nothing_to_do (void)
{
  ox_share (0, count_inner, NULL);
}

static void
note_decimal (guint i, gpointer data)
{
  const char **decimals = data;
  while (i == 0 && g_atomic_pointer_get (&decimals[1]) == NULL)
    g_thread_yield (); /* so that one of the two is another thread's */
  g_atomic_pointer_set (&decimals[i], ox_words_decimal ());
}

static void
in_the_language_of_the_caller (void)
{
  OxLanguage german;
  const char *decimals[PIECES] = { NULL };
  g_assert_true (ox_language_find ("de", &german));
  g_auto (OxWordsScope) scope = ox_words_scope (&german);
  ox_share_set_threads (8);
  ox_share (PIECES, note_decimal, decimals);
  ox_share_set_threads (0);
  for (guint i = 0; i < PIECES; i++)
    g_assert_cmpstr (decimals[i], ==, ",");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/share/each-once", each_once);
  g_test_add_func ("/base/share/one-thread-is-the-caller", one_thread_is_the_caller);
  g_test_add_func ("/base/share/in-the-language-of-the-caller", in_the_language_of_the_caller);
  g_test_add_func ("/base/share/nothing-to-do", nothing_to_do);
  return g_test_run ();
}
