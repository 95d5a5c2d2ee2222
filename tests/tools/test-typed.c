/* Oxturn: tests/tools/test-typed - lengths and angles typed while something is drawn.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/typed.h"

static void
type (OxTyped *typed, const char *text)
{
  for (const char *p = text; *p != '\0'; p++)
    ox_typed_add (typed, (gunichar) *p);
}

static void
test_lengths (void)
{
  static const struct
  {
    const char *text;
    OxUnits units;
    double metres;
  } cases[] = {
    { "6.35", OX_UNITS_METRES, 6.35 },
    { "6,35", OX_UNITS_METRES, 6.35 },
    { "6350", OX_UNITS_MILLIMETRES, 6.35 },
    { "250 cm", OX_UNITS_METRES, 2.5 },
    { "12'-6 1/2\"", OX_UNITS_FEET, 12 * 0.3048 + 6.5 * 0.0254 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      OxTyped typed = { 0 };
      double metres = -1;

      g_assert_true (ox_typed_is_empty (&typed));
      type (&typed, cases[i].text);
      g_assert_true (ox_typed_length (&typed, 0, cases[i].units, &metres));
      g_assert_cmpfloat_with_epsilon (metres, cases[i].metres, 1e-9);
    }
}

static void
test_no_length (void)
{
  static const char *const texts[] = { "", "0", "-3", "1.2.3", "1/0\"" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      OxTyped typed = { 0 };
      double metres = -1;

      type (&typed, texts[i]);
      g_assert_false (ox_typed_length (&typed, 0, OX_UNITS_METRES, &metres));
      g_assert_cmpfloat (metres, ==, -1);
    }
}

/* A letter that begins no length stays free for other keys, such as those that choose a tool. */
static void
test_letters (void)
{
  OxTyped typed = { 0 };

  g_assert_false (ox_typed_add (&typed, 'c'));
  g_assert_false (ox_typed_add (&typed, ' '));
  g_assert_true (ox_typed_add (&typed, '5'));
  g_assert_true (ox_typed_add (&typed, 'c'));
  g_assert_false (ox_typed_add (&typed, 'x'));
  g_assert_false (ox_typed_add (&typed, 0x20ac));
}

static void
test_fields (void)
{
  OxTyped typed = { 0 };
  double value = 0;

  type (&typed, "4");
  ox_typed_next (&typed);
  type (&typed, "-22,5");
  g_assert_true (ox_typed_angle (&typed, 1, &value));
  g_assert_cmpfloat (value, ==, -22.5);
  g_assert_true (ox_typed_back (&typed));
  g_assert_true (ox_typed_angle (&typed, 1, &value) == FALSE || value == -22);
  ox_typed_next (&typed);
  g_assert_true (ox_typed_back (&typed));
  g_assert_false (ox_typed_back (&typed));
  ox_typed_clear (&typed);
  g_assert_true (ox_typed_is_empty (&typed));
}

static void
test_full (void)
{
  OxTyped typed = { 0 };
  guint taken = 0;

  while (ox_typed_add (&typed, '1'))
    taken++;
  g_assert_cmpuint (taken, ==, OX_TYPED_MAX - 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/typed/lengths", test_lengths);
  g_test_add_func ("/tools/typed/no-length", test_no_length);
  g_test_add_func ("/tools/typed/letters", test_letters);
  g_test_add_func ("/tools/typed/fields", test_fields);
  g_test_add_func ("/tools/typed/full", test_full);
  return g_test_run ();
}
