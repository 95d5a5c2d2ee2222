/* Oxturn: tests/job/test-scope
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/scope.h"
#include <string.h>
#include "base/words.h"

/* Letters without I and O, figures that keep their places, a longer mark when the alphabet is over. */
static void
test_next (void)
{
  static const char *const rows[][2] = {
    { "", "A" },      { "A", "B" },      { "H", "J" },  { "N", "P" },  { "Z", "AA" }, { "AZ", "BA" },
    { "ZZ", "AAA" },  { "a", "b" },      { "z", "Aa" }, { "1", "2" },  { "9", "10" }, { "09", "10" },
    { "P01", "P02" }, { "R-9", "R-10" }, { "?", "?1" }, { "ä", "ä1" }, { "O", "O1" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *next = ox_revision_next (rows[i][0]);
      g_assert_cmpstr (next, ==, rows[i][1]);
    }
}

/* However often it is asked for, no mark comes again. */
static void
test_next_never_repeats (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autofree char *mark = g_strdup ("");
  for (guint i = 0; i < 2000; i++)
    {
      char *next = ox_revision_next (mark);
      g_assert_true (g_hash_table_add (seen, g_strdup (next)));
      g_free (mark);
      mark = next;
    }
}

/* The lines of ours: keys their own in each list, each list with some that a new job has. */
static void
test_ours (void)
{
  guint n, usual[OX_SCOPE_LISTS] = { 0 };
  const OxScopeOurs *ours = ox_scope_ours_list (&n);
  g_autoptr (OxScope) made = ox_scope_default ();
  for (guint i = 0; i < n; i++)
    {
      g_assert_true (ox_scope_ours_find (ours[i].list, ours[i].key) == &ours[i]);
      g_assert_cmpuint (strlen (ours[i].text), >, 20);
      usual[ours[i].list] += ours[i].usual;
    }
  for (guint list = 0; list < OX_SCOPE_LISTS; list++)
    {
      g_assert_cmpuint (usual[list], >, 2);
      g_assert_cmpuint (made->n_lines[list], ==, usual[list]);
    }
  g_assert_false (ox_scope_is_signed (made));
}

/* A line of ours speaks the language of the sheet; words of the user's stay. */
static void
test_texts (void)
{
  const OxScopeLine plain = { (char *) "edges", (char *) "" }, own = { (char *) "edges", (char *) "Hand work" };
  const OxScopeLine unknown = { (char *) "nothing", (char *) "" };
  const OxRevision raised = { .text = (char *) "", .after_sign_off = TRUE }, first = { .text = (char *) "" };
  OxLanguage spanish;
  g_assert_true (ox_language_find ("es", &spanish));
  const char *english = ox_scope_line_text (OX_SCOPE_INCLUDED, &plain);
  g_assert_true (g_str_has_prefix (english, "Edge work with hand tools"));
  g_assert_cmpstr (ox_scope_line_text (OX_SCOPE_INCLUDED, &own), ==, "Hand work");
  g_assert_cmpstr (ox_scope_line_text (OX_SCOPE_INCLUDED, &unknown), ==, "");
  g_assert_cmpstr (ox_revision_text (&raised), ==, "changed after sign-off");
  g_assert_cmpstr (ox_revision_text (&first), ==, "");
  g_auto (OxWordsScope) scope = ox_words_scope (&spanish);
  g_assert_cmpstr (ox_scope_line_text (OX_SCOPE_INCLUDED, &plain), !=, english);
  g_assert_cmpstr (ox_scope_line_text (OX_SCOPE_INCLUDED, &own), ==, "Hand work");
  g_assert_cmpstr (ox_revision_text (&raised), !=, "changed after sign-off");
  g_assert_cmpstr (ox_status_text ("for approval"), !=, "for approval");
  g_assert_cmpstr (ox_status_text ("withdrawn"), ==, "withdrawn");
}

static void
test_copies_deeply (void)
{
  char words[] = "By\nhand", name[] = "P. Hollow";
  OxScopeLine line = { NULL, words };
  OxRevision row = { .mark = (char *) "A" };
  OxScope draft = { .n_lines = { 1 }, .lines = { &line }, .n_revisions = 1, .revisions = &row };
  draft.sign_off.name = name;
  g_autoptr (OxScope) scope = ox_scope_new (&draft);
  words[0] = name[0] = 'X';
  g_assert_cmpstr (scope->lines[0][0].text, ==, "By hand");
  g_assert_cmpstr (scope->lines[0][0].key, ==, "");
  g_assert_cmpstr (scope->revisions[0].author, ==, "");
  g_assert_cmpstr (scope->sign_off.name, ==, "P. Hollow");
  g_assert_true (ox_scope_is_signed (scope));
  draft = *scope;
  draft.sign_off.name = NULL;
  g_autoptr (OxScope) not_signed = ox_scope_new (&draft);
  g_assert_false (ox_scope_equal (scope, not_signed));
  g_assert_true (ox_scope_same_content (scope, not_signed));
  draft.n_lines[0] = 0;
  g_autoptr (OxScope) empty = ox_scope_new (&draft);
  g_assert_false (ox_scope_same_content (scope, empty));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/scope/next", test_next);
  g_test_add_func ("/job/scope/next-never-repeats", test_next_never_repeats);
  g_test_add_func ("/job/scope/ours", test_ours);
  g_test_add_func ("/job/scope/texts", test_texts);
  g_test_add_func ("/job/scope/copies-deeply", test_copies_deeply);
  return g_test_run ();
}
