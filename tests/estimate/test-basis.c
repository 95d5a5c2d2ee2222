/* Oxturn: tests of estimate/basis
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/basis.h"

static void
test_csp (void)
{
  static const struct
  {
    const char *text;
    int low, high;
  } rows[] = { { "CSP 3", 3, 3 }, { "csp3-5", 3, 5 }, { "CSP 6 to 4", 4, 6 }, { "clean, CSP 10", 10, 10 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      int low = 0, high = 0;
      g_assert_true (ox_basis_csp (rows[i].text, &low, &high));
      g_assert_cmpint (low, ==, rows[i].low);
      g_assert_cmpint (high, ==, rows[i].high);
    }
  int low = 7, high = 7;
  g_assert_false (ox_basis_csp ("", &low, &high));
  g_assert_false (ox_basis_csp ("rough", &low, &high));
  g_assert_false (ox_basis_csp ("CSP", &low, &high));
  g_assert_false (ox_basis_csp ("CSP 4711", &low, &high));
  g_assert_cmpint (low, ==, 7);
}

static void
test_asked (void)
{
  static const struct
  {
    const char *one, *other;
    gboolean asked;
    int least, most;
  } rows[] = { { "CSP 3-5", "CSP 6", TRUE, 3, 6 }, { "CSP 4", "", TRUE, 4, 4 }, { "", "smooth", FALSE, 3, 3 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      OxRoom a = { .profile = (char *) rows[i].one }, b = { .profile = (char *) rows[i].other };
      OxRoom *rooms[] = { &a, &b };
      const OxJob job = { .n_rooms = 2, .rooms = rooms };
      int least, most;
      g_assert_cmpint (ox_basis_csp_asked (&job, &least, &most), ==, rows[i].asked);
      g_assert_cmpint (least, ==, rows[i].least);
      g_assert_cmpint (most, ==, rows[i].most);
    }
}

static void
test_note (void)
{
  g_autofree char *note = ox_basis_note ("dust-bulk"), *share = ox_basis_note ("drum-fill");
  g_assert_cmpstr (note, ==, "1100 kg/m\xc2\xb3 (common practice, no source)");
  g_assert_cmpstr (share, ==, "0.9 (common practice, no source)");
  g_assert_cmpfloat (ox_basis ("bag"), ==, 25);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/basis/csp/as-written", test_csp);
  g_test_add_func ("/estimate/basis/csp/asked-by-rooms", test_asked);
  g_test_add_func ("/estimate/basis/note/unit-and-source", test_note);
  return g_test_run ();
}
