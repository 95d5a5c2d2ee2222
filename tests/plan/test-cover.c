/* Oxturn: plan/cover: adding and looking see the same cells.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/cover.h"
#include "support/ox-test.h"

static OxRegion *
floor_with_hole (void)
{
  return ox_test_region ("POLYGON ((0 0, 12 0, 12 7, 3 9, 0 7, 0 0), (4 3, 5.5 3, 5.5 4.5, 4 4.5, 4 3))");
}

static guint
sum (const OxCover *cover, const OxBand *band, guint level)
{
  g_autoptr (GArray) counts = g_array_new (FALSE, FALSE, sizeof (guint));
  OxProfile profile = { .counts = counts };
  guint n = 0;
  ox_cover_profile (cover, band, level, &profile);
  for (guint i = 0; i < counts->len; i++)
    n += g_array_index (counts, guint, i);
  return n;
}

static OxBand
random_band (double angle)
{
  double x = g_test_rand_double_range (-6, 6), length = g_test_rand_double_range (0.5, 9);
  return (OxBand){ angle, x, x + length, g_test_rand_double_range (-8, 8), g_test_rand_double_range (0.2, 0.6) };
}

/* 3 x 2 m of cells of 0.1 m less a hole of 1 m2. */
static void
need (void)
{
  g_autoptr (OxRegion) target
      = ox_test_region ("POLYGON ((1 1, 4 1, 4 3, 1 3, 1 1), (2 1.5, 3 1.5, 3 2.5, 2 2.5, 2 1.5))");
  for (guint quarter = 0; quarter < 4; quarter++)
    {
      g_autoptr (OxCover) cover = ox_cover_new (target, quarter * G_PI / 2, 0.1);
      ox_test_near (ox_cover_left (cover), 5, 1e-9);
    }
  g_autoptr (OxCover) turned = ox_cover_new (target, 0.3, 0.02);
  ox_test_near (ox_cover_left (turned), 5, 14 * 0.02 / 2);
  g_autoptr (OxRegion) nothing = ox_region_new_empty ();
  g_autoptr (OxCover) none = ox_cover_new (nothing, 0, 0.1);
  ox_test_near (ox_cover_left (none), 0, 1e-12);
}

/* Along rows and columns, both ways: the open cells seen before are those covered once after, cell for cell. */
static void
straight_bands (void)
{
  g_autoptr (OxRegion) target = floor_with_hole ();
  for (guint round = 0; round < 200; round++)
    {
      double angle = g_test_rand_double_range (0, 3);
      g_autoptr (OxCover) cover = ox_cover_new (target, angle, 0.05);
      OxBand band = random_band (angle + (round % 4) * G_PI / 2);
      double left = ox_cover_left (cover);
      guint open = sum (cover, &band, 0);
      g_assert_cmpuint (sum (cover, &band, 1), ==, 0);
      ox_cover_add (cover, &band, 1);
      g_assert_cmpuint (sum (cover, &band, 0), ==, 0);
      g_assert_cmpuint (sum (cover, &band, 1), ==, open);
      ox_test_near (left - ox_cover_left (cover), open * cover->cell * cover->cell, 1e-9);
      ox_cover_add (cover, &band, 1);
      g_assert_cmpuint (sum (cover, &band, 1), ==, 0);
      g_assert_cmpuint (sum (cover, &band, 2), ==, open);
    }
}

/* At a slant the area is right within a cell all round, and looking finds nothing open but in the cells at the ends. */
static void
slanted_bands (void)
{
  g_autoptr (OxRegion) target = ox_test_region ("POLYGON ((-30 -30, 30 -30, 30 30, -30 30, -30 -30))");
  g_autoptr (GArray) counts = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint round = 0; round < 40; round++)
    {
      g_autoptr (OxCover) cover = ox_cover_new (target, 0, 0.05);
      OxBand band = random_band (g_test_rand_double_range (0.05, 1.5));
      OxProfile profile = { .counts = counts };
      double left = ox_cover_left (cover), length = band.x1 - band.x0;
      double area = length * band.width, off = (length + band.width) * 2 * cover->cell;
      ox_cover_profile (cover, &band, 0, &profile);
      ox_test_near (profile.x0, band.x0, 1e-9);
      ox_test_near (profile.step * counts->len, length, 1e-9);
      ox_test_near (sum (cover, &band, 0) * profile.sample_m2, area, off);
      ox_cover_add (cover, &band, 1);
      ox_test_near (left - ox_cover_left (cover), area, off);
      ox_cover_profile (cover, &band, 0, &profile);
      for (guint i = 1; i + 1 < counts->len; i++)
        g_assert_cmpuint (g_array_index (counts, guint, i), ==, 0);
    }
}

static void
expect_open_counted (const OxCover *cover)
{
  g_autofree guint *open = g_new0 (guint, cover->n_x * cover->n_y);
  for (guint j = 0; j < cover->n_y; j++)
    for (guint i = 0; i < cover->n_x; i++)
      open[j / OX_COVER_TILE * cover->tiles_x + i / OX_COVER_TILE] += cover->cells[(gsize) j * cover->n_x + i] == 0;
  for (guint t = 0; t < cover->tiles_x * ((cover->n_y + OX_COVER_TILE - 1) / OX_COVER_TILE); t++)
    g_assert_cmpuint (cover->open[t], ==, open[t]);
}

/* Putting another band in a band's place is taking the one away and adding the other. */
static void
replaced (void)
{
  g_autoptr (OxRegion) target = floor_with_hole ();
  g_autoptr (OxCover) cover = ox_cover_new (target, 0.4, 0.05), other = ox_cover_new (target, 0.4, 0.05);
  for (guint round = 0; round < 400; round++)
    {
      OxBand before = random_band (round % 5 == 4 ? 1.1 : 0.4 + (round % 4) * G_PI / 2), after = random_band (before.angle);
      if (round % 3 < 2) /* only the ends change, as mostly */
        after = (OxBand){ before.angle, before.x0 + g_test_rand_double_range (-1, 1), before.x1 + g_test_rand_double_range (-0.2, 1), before.y, before.width };
      if (round % 7 == 0)
        after = random_band (0.4 + (round % 3) * G_PI / 2);
      ox_cover_add (cover, &before, 1);
      ox_cover_replace (cover, &before, &after);
      ox_cover_add (other, &after, 1);
      g_assert_cmpmem (cover->cells, (gsize) cover->n_x * cover->n_y, other->cells, (gsize) other->n_x * other->n_y);
      ox_cover_add (cover, &after, -1);
      ox_cover_add (other, &after, -1);
    }
  expect_open_counted (cover);
}

/* What is counted up and down again, in any order, leaves no trace. */
static void
up_and_down (void)
{
  g_autoptr (OxRegion) target = floor_with_hole ();
  g_autoptr (OxCover) cover = ox_cover_new (target, 0.4, 0.05);
  double left = ox_cover_left (cover);
  OxBand bands[40];
  for (guint i = 0; i < G_N_ELEMENTS (bands); i++)
    {
      bands[i] = random_band (i % 2 ? g_test_rand_double_range (0, 3) : 0.4 + (i / 2 % 4) * G_PI / 2);
      ox_cover_add (cover, &bands[i], 1);
      expect_open_counted (cover);
    }
  g_assert_cmpfloat (ox_cover_left (cover), <, left);
  for (guint i = 0; i < G_N_ELEMENTS (bands); i++)
    ox_cover_add (cover, &bands[i * 7 % G_N_ELEMENTS (bands)], -1);
  for (gsize i = 0; i < (gsize) cover->n_x * cover->n_y; i++)
    g_assert_cmpuint (cover->cells[i] & 0x7f, ==, 0);
  expect_open_counted (cover);
  ox_test_near (ox_cover_left (cover), left, 1e-12);
}

/* Where along @band the covered cells lie, exactly. */
static void
expect_place (const OxCover *cover, const OxBand *band, double from, double to)
{
  g_autoptr (GArray) counts = g_array_new (FALSE, FALSE, sizeof (guint));
  OxProfile profile = { .counts = counts };
  guint first = G_MAXUINT, last = 0;
  ox_cover_profile (cover, band, 1, &profile);
  for (guint i = 0; i < counts->len; i++)
    if (g_array_index (counts, guint, i) > 0)
      {
        first = MIN (first, i);
        last = i;
      }
  ox_test_near (profile.x0 + first * profile.step, from, 1e-9);
  ox_test_near (profile.x0 + (last + 1) * profile.step, to, 1e-9);
}

/* Entries follow the band's own x: 2 to 4 m of a floor of 10 x 10 m seen from all four sides. */
static void
places (void)
{
  g_autoptr (OxRegion) target = ox_test_region ("POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0))");
  g_autoptr (OxCover) cover = ox_cover_new (target, 0, 0.1);
  ox_cover_add (cover, &(OxBand){ 0, 2, 4, 5, 1 }, 1);
  expect_place (cover, &(OxBand){ 0, 0.03, 9.71, 5, 1 }, 2, 4);
  expect_place (cover, &(OxBand){ G_PI, -9.97, -0.29, -5, 1 }, -4, -2);
  expect_place (cover, &(OxBand){ G_PI / 2, 0.03, 9.71, -3, 1 }, 4.5, 5.5);
  expect_place (cover, &(OxBand){ -G_PI / 2, -9.97, -0.29, 3, 1 }, -5.5, -4.5);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/cover/need", need);
  g_test_add_func ("/plan/cover/straight-bands", straight_bands);
  g_test_add_func ("/plan/cover/slanted-bands", slanted_bands);
  g_test_add_func ("/plan/cover/up-and-down", up_and_down);
  g_test_add_func ("/plan/cover/replaced", replaced);
  g_test_add_func ("/plan/cover/places", places);
  return g_test_run ();
}
