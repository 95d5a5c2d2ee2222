/* Oxturn: tests of sheets/paper
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/paper.h"
#include "support/ox-test.h"
#include <math.h>

static void
test_sizes (void)
{
  /* ISO 216; ANSI and architectural sizes in inches. */
  static const struct
  {
    const char *name;
    double short_mm, long_mm;
  } known[] = { { "A4", 210, 297 },          { "a3", 297, 420 },         { "A2", 420, 594 },
                { "A1", 594, 841 },          { "Letter", 215.9, 279.4 }, { "ANSI A", 215.9, 279.4 },
                { "tabloid", 279.4, 431.8 }, { "ansi-b", 279.4, 431.8 }, { "ANSI C", 431.8, 558.8 },
                { "ANSI D", 558.8, 863.6 },  { "arch-a", 228.6, 304.8 }, { "Arch B", 304.8, 457.2 },
                { "ARCH C", 457.2, 609.6 },  { "Arch D", 609.6, 914.4 }, { "arch e1", 762.0, 1066.8 },
                { "Arch E", 914.4, 1219.2 } };
  for (guint i = 0; i < G_N_ELEMENTS (known); i++)
    {
      const OxPaper *paper = ox_paper_find (known[i].name);
      g_assert_nonnull (paper);
      ox_test_near (paper->short_mm, known[i].short_mm, 1e-9);
      ox_test_near (paper->long_mm, known[i].long_mm, 1e-9);
    }
  g_assert_null (ox_paper_find ("A7"));
  g_assert_null (ox_paper_find (""));
  for (guint i = 0; i < ox_paper_get_count (); i++)
    g_assert_true (ox_paper_find (ox_paper_get (i)->name) == ox_paper_get (i));
}

static void
test_scales_are_read (void)
{
  static const struct
  {
    const char *text;
    double denominator;
  } known[] = { { "auto", 0 },     { "", 0 },           { "1:100", 100 },       { " 1 : 50 ", 50 },
                { "1:96", 96 },    { "1/8in", 96 },     { "1/8\"", 96 },        { "1/8\" = 1'-0\"", 96 },
                { "3/32in", 128 }, { "1/4\"=1'", 48 },  { "1 1/2in", 8 },       { "1-1/2\"", 8 },
                { "3in", 4 },      { "1in=20ft", 240 }, { "1\" = 100'", 1200 }, { "1/16in = 1ft", 192 } };
  for (guint i = 0; i < G_N_ELEMENTS (known); i++)
    {
      OxScale scale = { -1, NULL };
      g_test_message ("%s", known[i].text);
      g_assert_true (ox_scale_parse (known[i].text, &scale));
      ox_test_near (scale.denominator, known[i].denominator, 1e-9);
    }
  const char *const bad[]
      = { "100", "1:0", "1:", ":100", "2:1", "1:200000", "1/0in", "big", "1:100x", "1/8in=", "0in", "1:1e3", "1:nan" };
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      OxScale scale = { -1, NULL };
      g_test_message ("%s", bad[i]);
      g_assert_false (ox_scale_parse (bad[i], &scale));
      g_assert_cmpfloat (scale.denominator, ==, -1);
    }
}

static void
test_what_is_written_can_be_read (void)
{
  for (double size = 0.3; size < 20000; size *= 1.3)
    for (OxUnits units = OX_UNITS_METRES; units <= OX_UNITS_FEET; units++)
      {
        OxScale scale = ox_scale_fit (units, (const double[]){ size, size }, (const double[]){ 277, 390 }), back;
        g_assert_true (ox_scale_parse (scale.name != NULL ? scale.name : "1:1", &back));
        if (scale.name != NULL)
          ox_test_near (back.denominator, scale.denominator, 1e-9);
      }
  OxScale eighth;
  g_assert_true (ox_scale_parse ("1/8in", &eighth));
  g_autofree char *text = ox_scale_text (eighth);
  g_assert_cmpstr (text, ==, "1/8\" = 1'-0\" (1:96)");
}

static void
test_the_largest_that_fits (void)
{
  /* A floor of 60 m x 36 m in 390 mm x 277 mm: 300 x 180 mm at 1:200, 600 mm at 1:100. */
  OxScale scale = ox_scale_fit (OX_UNITS_METRES, (const double[]){ 60, 36 }, (const double[]){ 390, 277 });
  ox_test_near (scale.denominator, 200, 1e-9);
  g_assert_null (scale.name);
  scale = ox_scale_fit (OX_UNITS_METRES, (const double[]){ 39, 10 }, (const double[]){ 390, 277 });
  ox_test_near (scale.denominator, 100, 1e-9); /* exactly as wide as the paper */
  /* 60 m x 36 m on a sheet of 36 in x 24 in less its margins: 1:96 is 625 mm wide. */
  scale = ox_scale_fit (OX_UNITS_FEET, (const double[]){ 60, 36 }, (const double[]){ 700, 560 });
  ox_test_near (scale.denominator, 96, 1e-9);
  g_assert_cmpstr (scale.name, ==, "1/8\" = 1'-0\"");
  for (double size = 0.5; size < 9000; size *= 1.1)
    {
      const double metres[] = { size, size / 3 }, mm[] = { 300, 200 };
      scale = ox_scale_fit (OX_UNITS_METRES, metres, mm);
      g_assert_cmpfloat (size * 1000 / scale.denominator, <=, 300 + 1e-6);
      /* The next larger scale of the series, 2 or 2.5 times as large, would not fit. */
      double first = scale.denominator / pow (10, floor (log10 (scale.denominator) + 1e-9));
      double larger = scale.denominator / (fabs (first - 5) < 1e-6 ? 2.5 : 2);
      g_assert_true (scale.denominator == 1 || size * 1000 / larger > 300);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/paper/sizes", test_sizes);
  g_test_add_func ("/paper/scales", test_scales_are_read);
  g_test_add_func ("/paper/round-trip", test_what_is_written_can_be_read);
  g_test_add_func ("/paper/fit", test_the_largest_that_fits);
  return g_test_run ();
}
