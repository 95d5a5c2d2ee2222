/* Oxturn: tests/record/test-which
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/which.h"
#include <string.h>

static void
test_reads (void)
{
  static const struct
  {
    const char *typed;
    const char *found;
  } rows[] = {
    { "7", "7" },           { "1-4", "1–4" },    { " 1 - 4 , 9", "1–4, 9" }, { "-3", "1–3" },
    { "48-", "48–50" },     { "9 3, 4;5", "3–5, 9" }, { "2–3,2", "2, 3" },   { "5-5", "5" },
    { "1-50", "1–50" },     { "4,4,4", "4" },
  };
  const OxPlan plan = { .n_strips = 50 };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GArray) numbers = ox_which_strips (&plan, rows[i].typed, &error);
      g_assert_no_error (error);
      g_autofree char *text = ox_which_text ((const guint *) (gconstpointer) numbers->data, numbers->len, "");
      g_assert_cmpstr (text, ==, rows[i].found);
    }
}

static void
test_edges (void)
{
  g_autoptr (GError) error = NULL;
  const OxPlan plan = { .n_edges = 8 };
  g_autoptr (GArray) numbers = ox_which_edges (&plan, "E1-E4, e7 6", &error);
  g_assert_no_error (error);
  g_autofree char *text = ox_which_text ((const guint *) (gconstpointer) numbers->data, numbers->len, "E");
  g_assert_cmpstr (text, ==, "E1–E4, E6, E7");
}

static void
test_refuses (void)
{
  static const struct
  {
    const char *typed;
    int code;
    const char *part;
  } rows[] = {
    { "", OX_WHICH_ERROR_SYNTAX, "is no number" },
    { "all", OX_WHICH_ERROR_SYNTAX, "“all” is no number" },
    { "3,x", OX_WHICH_ERROR_SYNTAX, "“x” is no number" },
    { "E3", OX_WHICH_ERROR_SYNTAX, "“E3”" },
    { "-", OX_WHICH_ERROR_SYNTAX, "is no number" },
    { "0", OX_WHICH_ERROR_RANGE, "no number 0; it has 1 to 50" },
    { "51", OX_WHICH_ERROR_RANGE, "no number 51; it has 1 to 50" },
    { "40-60", OX_WHICH_ERROR_RANGE, "no number 60" },
    { "9-3", OX_WHICH_ERROR_RANGE, "9-3 ends before it begins" },
    { "99999999999999999999999", OX_WHICH_ERROR_RANGE, "it has 1 to 50" },
  };
  const OxPlan plan = { .n_strips = 50 };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_null (ox_which_strips (&plan, rows[i].typed, &error));
      g_assert_error (error, OX_WHICH_ERROR, rows[i].code);
      if (!strstr (error->message, rows[i].part))
        g_error ("“%s” does not say “%s”", error->message, rows[i].part);
    }
  g_autoptr (GError) error = NULL;
  const OxPlan none = { .n_strips = 0 };
  g_assert_null (ox_which_strips (&none, "1", &error));
  g_assert_nonnull (strstr (error->message, "has none of these"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/record/which/reads", test_reads);
  g_test_add_func ("/record/which/edges", test_edges);
  g_test_add_func ("/record/which/refuses", test_refuses);
  return g_test_run ();
}
