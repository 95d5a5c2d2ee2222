/* Oxturn: tests of base/number
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/number.h"
#include <locale.h>
#include <math.h>

static const struct
{
  double value;
  guint decimals;
  const char *text;
} texts[] = {
  { 0, 0, "0" },
  { 0, 6, "0" },
  { -0.0, 3, "0" },
  { 1, 4, "1" },
  { 1.5, 4, "1.5" },
  { -1.25, 2, "-1.25" },
  { 100, 2, "100" },
  { 100, 0, "100" },
  { 1200, 3, "1200" },
  { 0.0001, 4, "0.0001" },
  { 0.00004, 4, "0" },
  { -0.00004, 4, "0" },
  { -0.4, 0, "0" },
  { 0.125, 2, "0.12" },
  { 0.1 + 0.2, 12, "0.3" },
  { 9.9996, 3, "10" },
  { 1e15, 1, "1000000000000000" },
  { -10000.0001, 4, "-10000.0001" },
  { 1.0 / 3, 12, "0.333333333333" },
};

static void
test_append_table (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *text = ox_number_text (texts[i].value, texts[i].decimals);
      g_assert_cmpstr (text, ==, texts[i].text);
    }
}

static void
test_append_keeps_what_stands_before (void)
{
  g_autoptr (GString) text = g_string_new ("width 100");
  ox_number_append (text, -2.50, 2);
  g_assert_cmpstr (text->str, ==, "width 100-2.5");
}

/* The largest double has 309 digits before the point. */
static void
test_append_largest (void)
{
  g_autofree char *text = ox_number_text (-G_MAXDOUBLE, 12);
  g_assert_cmpuint (strlen (text), ==, 310);
  g_assert_true (g_str_has_prefix (text, "-17976931348623157"));
  double back;
  g_assert_true (ox_number_parse (text, &back));
  g_assert_cmpfloat (back, ==, -G_MAXDOUBLE);
}

static void
test_parse_table (void)
{
  static const struct
  {
    const char *text;
    double value;
  } good[] = {
    { "0", 0 },
    { "-0", 0 },
    { "12", 12 },
    { " 12.5 ", 12.5 },
    { "\t-3.25\r\n", -3.25 },
    { ".5", 0.5 },
    { "5.", 5 },
    { "+7", 7 },
    { "1e3", 1000 },
    { "2.5E-3", 0.0025 },
    { "007", 7 },
    { "1e-400", 0 },
    { "123456789.0001", 123456789.0001 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (good); i++)
    {
      double value = NAN;
      g_assert_true (ox_number_parse (good[i].text, &value));
      g_assert_cmpfloat (value, ==, good[i].value);
    }
}

static void
test_parse_refuses (void)
{
  static const char *const bad[]
      = { "",    " ",     ".",    "-",     "+-1", "1,5",  "1 2", "1.2.3",    "nan",   "NaN(1)",
          "inf", "-inf",  "0x10", "0x1p3", "1e",  "1e+",  "e5",  "infinity", "1e400", "--1",
          "1m",  "1.5 x", "١",    "1\v",   "1_0", "1e5.", "- 1", "$1" };
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      double value = 42;
      g_test_message ("%s", bad[i]);
      g_assert_false (ox_number_parse (bad[i], &value));
      g_assert_cmpfloat (value, ==, 42);
    }
}

static void
test_round_trip (void)
{
  for (int i = 0; i < 2000; i++)
    {
      double value = g_test_rand_double_range (-10000, 10000);
      double back;
      g_autofree char *text = ox_number_text (value, 4);
      g_assert_true (ox_number_parse (text, &back));
      g_assert_cmpfloat_with_epsilon (back, value, 0.0000501);
      g_autofree char *again = ox_number_text (back, 4);
      g_assert_cmpstr (again, ==, text);
    }
}

/* Whichever of these the machine has; a comma for the point is what they have in common. */
static void
test_any_locale (void)
{
  static const char *const names[] = { "C", "de_DE.UTF-8", "fr_FR.UTF-8", "sv_SE.UTF-8", "pt_BR.UTF-8" };
  g_autofree char *before = g_strdup (setlocale (LC_ALL, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      double value;
      if (!setlocale (LC_ALL, names[i]))
        continue;
      g_autofree char *text = ox_number_text (1234.5, 2);
      g_assert_cmpstr (text, ==, "1234.5");
      g_assert_true (ox_number_parse ("1234.5", &value));
      g_assert_cmpfloat (value, ==, 1234.5);
      g_assert_false (ox_number_parse ("1234,5", &value));
    }
  setlocale (LC_ALL, before);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/number/append/table", test_append_table);
  g_test_add_func ("/base/number/append/keeps-what-stands-before", test_append_keeps_what_stands_before);
  g_test_add_func ("/base/number/append/largest", test_append_largest);
  g_test_add_func ("/base/number/parse/table", test_parse_table);
  g_test_add_func ("/base/number/parse/refuses", test_parse_refuses);
  g_test_add_func ("/base/number/round-trip", test_round_trip);
  g_test_add_func ("/base/number/any-locale", test_any_locale);
  return g_test_run ();
}
