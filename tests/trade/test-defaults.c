/* Oxturn: tests of trade/defaults
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/defaults.h"

/* Each figure says where it comes from; one without a published source says so and counts as typical. */
static void
test_sources (void)
{
  guint n;
  const OxDefault *rows = ox_defaults_list (&n);
  g_assert_cmpuint (n, >, 10);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpfloat (rows[i].value, >, 0);
      g_assert_cmpstr (rows[i].unit, !=, "");
      g_assert_cmpstr (rows[i].source, !=, "");
      if (g_str_has_prefix (rows[i].source, "common practice, no source"))
        g_assert_cmpint (rows[i].typical, ==, 1);
      g_assert_true (ox_defaults_get (rows[i].id) == &rows[i]);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/defaults/list/each-has-its-source", test_sources);
  return g_test_run ();
}
