/* Oxturn: tests of drawing/style
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/style.h"
#include "support/ox-test.h"
#include <math.h>
#include <string.h>

static void
test_contrast_of_known_pairs (void)
{
  /* Worked from WCAG 2.1, definition of contrast ratio: #767676 is the lightest grey that passes 4.5:1 on white. */
  ox_test_near (ox_colour_contrast (0x000000, 0xffffff), 21, 1e-9);
  ox_test_near (ox_colour_contrast (0x767676, 0xffffff), 4.5422, 5e-5);
  ox_test_near (ox_colour_contrast (0xffffff, 0x949494), 3.0335, 5e-5);
  ox_test_near (ox_colour_contrast (0xff0000, 0xffffff), 3.9985, 5e-5);
  ox_test_near (ox_colour_contrast (0x0072b2, 0xffffff), 5.19, 5e-3);
}

static gboolean
is_text_style (OxStyle style)
{
  const OxStyle styles[] = { OX_STYLE_INK,     OX_STYLE_QUIET, OX_STYLE_TAG, OX_STYLE_DIMENSION,
                             OX_STYLE_STATION, OX_STYLE_CHALK, OX_STYLE_DROP };
  for (guint i = 0; i < G_N_ELEMENTS (styles); i++)
    if (styles[i] == style)
      return TRUE;
  return FALSE;
}

static void
test_everything_can_be_read (void)
{
  for (OxStyle s = 0; s < OX_N_STYLES; s++)
    for (OxPalette p = 0; p < OX_N_PALETTES; p++)
      {
        const OxStyleSpec *style = ox_style_get (s);
        if (style->ink[p] == OX_COLOUR_NONE)
          continue;
        double contrast = ox_colour_contrast (style->ink[p], ox_palette_get_ground (p));
        g_test_message ("%s on ground %u: %.2f", style->name, (guint) p, contrast);
        g_assert_cmpfloat (contrast, >=, is_text_style (s) ? 4.5 : 3.0);
        if (is_text_style (s) && style->fill[p] != OX_COLOUR_NONE)
          g_assert_cmpfloat (ox_colour_contrast (style->ink[p], style->fill[p]), >=, 4.5);
      }
}

static void
test_ink_is_read_on_every_floor (void)
{
  const OxStyle floors[] = { OX_STYLE_ROOM, OX_STYLE_STRIP_OUT,  OX_STYLE_STRIP_HOME, OX_STYLE_CROSSWISE,
                             OX_STYLE_EDGE, OX_STYLE_TO_PREPARE, OX_STYLE_DONE, OX_STYLE_HEAD };
  for (guint i = 0; i < G_N_ELEMENTS (floors); i++)
    for (OxPalette p = 0; p < OX_N_PALETTES; p++)
      {
        guint32 floor = ox_style_get (floors[i])->fill[p];
        g_assert_cmpfloat (ox_colour_contrast (ox_style_get (OX_STYLE_INK)->ink[p], floor), >=, 4.5);
        g_assert_cmpfloat (ox_colour_contrast (ox_style_get (OX_STYLE_STRIP_AXIS)->ink[p], floor), >=, 3.0);
      }
}

static gboolean
is_of_series (double width)
{
  const double series[] = { 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0 };
  for (guint i = 0; i < G_N_ELEMENTS (series); i++)
    if (width == series[i])
      return TRUE;
  return FALSE;
}

static void
test_widths_are_of_the_series (void)
{
  for (OxStyle s = 0; s < OX_N_STYLES; s++)
    {
      const OxStyleSpec *style = ox_style_get (s);
      g_test_message ("%s", style->name);
      g_assert_true (style->width_mm == 0 || is_of_series (style->width_mm));
      g_assert_true (style->hatch.spacing_mm == 0 || is_of_series (style->hatch_width_mm));
    }
  g_assert_cmpfloat (ox_style_get (OX_STYLE_WALL)->width_mm, >=, 2 * ox_style_get (OX_STYLE_DIMENSION)->width_mm);
}

static void
test_hatch_lines_stay_clear_of_each_other (void)
{
  for (OxStyle s = 0; s < OX_N_STYLES; s++)
    {
      const OxStyleSpec *style = ox_style_get (s);
      if (style->hatch.spacing_mm > 0)
        g_assert_cmpfloat (style->hatch.spacing_mm - style->hatch_width_mm, >=, 0.7);
    }
}

/* What a copier keeps of a patch: whether it has an outline, how that is dashed, and the hatch. */
static gboolean
differ_without_colour (const OxStyleSpec *a, const OxStyleSpec *b)
{
  return a->hatch.angle_deg != b->hatch.angle_deg || a->hatch.spacing_mm != b->hatch.spacing_mm
         || a->hatch.crossed != b->hatch.crossed || (a->width_mm > 0) != (b->width_mm > 0)
         || memcmp (a->dash, b->dash, sizeof a->dash) != 0;
}

static void
test_floor_differs_without_colour (void)
{
  const OxStyle kinds[]
      = { OX_STYLE_TO_PREPARE, OX_STYLE_DONE, OX_STYLE_EDGE, OX_STYLE_EXCLUDED, OX_STYLE_MASKED, OX_STYLE_PIT, OX_STYLE_SOLID };
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    for (guint j = 0; j < i; j++)
      {
        g_test_message ("%s, %s", ox_style_get (kinds[i])->name, ox_style_get (kinds[j])->name);
        g_assert_true (differ_without_colour (ox_style_get (kinds[i]), ox_style_get (kinds[j])));
      }
  const OxStyle doses[] = { OX_STYLE_DOSE_NONE, OX_STYLE_DOSE_ONCE, OX_STYLE_DOSE_TWICE, OX_STYLE_DOSE_MORE };
  for (guint i = 0; i < G_N_ELEMENTS (doses); i++)
    for (guint j = 0; j < i; j++)
      g_assert_true (differ_without_colour (ox_style_get (doses[i]), ox_style_get (doses[j])));
  const OxStyle sides[] = { OX_STYLE_WALL, OX_STYLE_OPEN, OX_STYLE_DROP };
  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    for (guint j = 0; j < i; j++)
      g_assert_true (differ_without_colour (ox_style_get (sides[i]), ox_style_get (sides[j])));
}

/* --- Colour vision --- */

/* What a colour looks like without one kind of cone, as linear light: the matrices of Machado, Oliveira and Fernandes,
 * A physiologically-based model for simulation of color vision deficiency, IEEE TVCG 15 (2009), for severity 1 (from
 * memory). Their rows add up to 1, so that greys stay grey. */
static const double without[3][3][3] = {
  { { 0.152286, 1.052583, -0.204868 }, { 0.114503, 0.786281, 0.099216 }, { -0.003882, -0.048116, 1.051998 } },
  { { 0.367322, 0.860646, -0.227968 }, { 0.280085, 0.672501, 0.047413 }, { -0.011820, 0.042940, 0.968881 } },
  { { 1.255528, -0.076749, -0.178779 }, { -0.078411, 0.930809, 0.147602 }, { 0.004733, 0.691367, 0.303900 } },
};

/* sRGB: IEC 61966-2-1 */
static void
to_light (guint32 colour, double light[3])
{
  for (int i = 0; i < 3; i++)
    {
      double c = ((colour >> (16 - 8 * i)) & 0xff) / 255.0;
      light[i] = c <= 0.04045 ? c / 12.92 : pow ((c + 0.055) / 1.055, 2.4);
    }
}

static guint32
from_light (const double light[3])
{
  guint32 colour = 0;
  for (int i = 0; i < 3; i++)
    {
      double l = CLAMP (light[i], 0, 1), c = l <= 0.0031308 ? 12.92 * l : 1.055 * pow (l, 1 / 2.4) - 0.055;
      colour = colour << 8 | (guint32) lround (c * 255);
    }
  return colour;
}

static guint32
seen_without (guint32 colour, int cone)
{
  double light[3], seen[3];
  to_light (colour, light);
  for (int i = 0; i < 3; i++)
    seen[i] = without[cone][i][0] * light[0] + without[cone][i][1] * light[1] + without[cone][i][2] * light[2];
  return from_light (seen);
}

static void
test_greys_stay_grey (void)
{
  for (int cone = 0; cone < 3; cone++)
    for (guint32 grey = 0; grey < 256; grey += 15)
      g_assert_cmphex (seen_without (grey * 0x010101, cone), ==, grey * 0x010101);
  /* Red and green of the same lightness fall together for those who lack red or green cones, not for those who lack
   * blue ones. */
  g_assert_cmpfloat (ox_colour_contrast (seen_without (0xd55e00, 1), 0xffffff), >, 3);
}

/* Whoever lacks one kind of cone reads texts and sees lines as well: the contrast of WCAG holds for them too. */
static void
test_everything_can_be_read_with_any_colour_vision (void)
{
  for (int cone = 0; cone < 3; cone++)
    for (OxStyle s = 0; s < OX_N_STYLES; s++)
      for (OxPalette p = 0; p < OX_N_PALETTES; p++)
        {
          const OxStyleSpec *style = ox_style_get (s);
          if (style->ink[p] == OX_COLOUR_NONE)
            continue;
          double contrast = ox_colour_contrast (seen_without (style->ink[p], cone), ox_palette_get_ground (p));
          g_test_message ("%s on ground %u without cone %d: %.2f", style->name, (guint) p, cone, contrast);
          g_assert_cmpfloat (contrast, >=, is_text_style (s) ? 4.5 : 3.0);
        }
}

/* The two ways of walking are told by arrows too, but are seen at a glance: their fills differ in lightness, whatever
 * the eye. */
static void
test_ways_of_walking_differ_in_lightness (void)
{
  for (int cone = 0; cone < 3; cone++)
    for (OxPalette p = 0; p < OX_N_PALETTES; p++)
      {
        guint32 out = ox_style_get (OX_STYLE_STRIP_OUT)->fill[p], home = ox_style_get (OX_STYLE_STRIP_HOME)->fill[p];
        g_assert_cmpfloat (ox_colour_contrast (seen_without (out, cone), seen_without (home, cone)), >=, 1.15);
      }
}

static void
test_names_are_unique (void)
{
  for (OxStyle a = 0; a < OX_N_STYLES; a++)
    for (OxStyle b = 0; b < a; b++)
      g_assert_cmpstr (ox_style_get (a)->name, !=, ox_style_get (b)->name);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/style/contrast", test_contrast_of_known_pairs);
  g_test_add_func ("/style/readable", test_everything_can_be_read);
  g_test_add_func ("/style/ink-on-floor", test_ink_is_read_on_every_floor);
  g_test_add_func ("/style/widths", test_widths_are_of_the_series);
  g_test_add_func ("/style/hatch-spacing", test_hatch_lines_stay_clear_of_each_other);
  g_test_add_func ("/style/without-colour", test_floor_differs_without_colour);
  g_test_add_func ("/style/greys", test_greys_stay_grey);
  g_test_add_func ("/style/colour-vision", test_everything_can_be_read_with_any_colour_vision);
  g_test_add_func ("/style/ways", test_ways_of_walking_differ_in_lightness);
  g_test_add_func ("/style/names", test_names_are_unique);
  return g_test_run ();
}
