/* Oxturn: plan/places - many points, found by where they are.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/places.h"
#include <stdlib.h>

#define A_CELL 4.0 /* points in a cell, about */

struct _OxPlaces
{
  OxPoint *points;
  guint n;
  OxBox box;
  double cell;
  guint n_x, n_y;
  guint *starts; /* of each cell in @items; one more at the end */
  guint *items;
};

static guint
step_of (double off, double cell, guint n)
{
  return (guint) CLAMP (floor (off / cell), 0.0, (double) n - 1);
}

static guint
cell_of (const OxPlaces *places, OxPoint p)
{
  return step_of (p.y - places->box.y0, places->cell, places->n_y) * places->n_x + step_of (p.x - places->box.x0, places->cell, places->n_x);
}

OxPlaces *
ox_places_new (const OxPoint *points, guint n)
{
  OxPlaces *places = g_new0 (OxPlaces, 1);
  places->n = n;
  places->points = g_new (OxPoint, n + 1);
  places->box = OX_BOX_EMPTY;
  for (guint i = 0; i < n; i++)
    {
      places->points[i] = points[i];
      ox_box_add (&places->box, points[i]);
    }
  double width = n > 0 ? places->box.x1 - places->box.x0 : 0, height = n > 0 ? places->box.y1 - places->box.y0 : 0;
  /* Points in a row have no area, but a length. */
  places->cell = MAX (MAX (sqrt (width * height * A_CELL / (n + 1)), MAX (width, height) * A_CELL / (n + 1)), OX_GRID);
  places->n_x = (guint) floor (width / places->cell) + 1;
  places->n_y = (guint) floor (height / places->cell) + 1;
  guint cells = places->n_x * places->n_y;
  places->starts = g_new0 (guint, cells + 2);
  places->items = g_new (guint, n + 1);
  for (guint i = 0; i < n; i++)
    places->starts[cell_of (places, points[i]) + 2]++;
  for (guint c = 1; c < cells + 2; c++)
    places->starts[c] += places->starts[c - 1];
  for (guint i = 0; i < n; i++)
    places->items[places->starts[cell_of (places, points[i]) + 1]++] = i;
  return places;
}

void
ox_places_free (OxPlaces *places)
{
  if (places == NULL)
    return;
  g_free (places->points);
  g_free (places->starts);
  g_free (places->items);
  g_free (places);
}

void
ox_places_within (const OxPlaces *places, OxPoint p, double radius, GArray *out)
{
  g_array_set_size (out, 0);
  if (ox_box_is_empty (places->box))
    return;
  guint i0 = step_of (p.x - radius - places->box.x0, places->cell, places->n_x), i1 = step_of (p.x + radius - places->box.x0, places->cell, places->n_x);
  guint j0 = step_of (p.y - radius - places->box.y0, places->cell, places->n_y), j1 = step_of (p.y + radius - places->box.y0, places->cell, places->n_y);
  for (guint j = j0; j <= j1; j++)
    for (guint k = places->starts[j * places->n_x + i0]; k < places->starts[j * places->n_x + i1 + 1]; k++)
      if (ox_point_distance (p, places->points[places->items[k]]) <= radius)
        g_array_append_val (out, places->items[k]);
}

static int
compare_places (const void *a, const void *b)
{
  const OxPlace *p = a, *q = b;
  if (p->distance != q->distance)
    return p->distance < q->distance ? -1 : 1;
  return (p->index > q->index) - (p->index < q->index);
}

/* How far the ray from @p, inside @box, goes before it leaves it. */
static double
way_out (OxBox box, OxPoint p, double angle)
{
  double c = cos (angle), s = sin (angle);
  double x = c > 0 ? (box.x1 - p.x) / c : c < 0 ? (box.x0 - p.x) / c : (double) INFINITY;
  double y = s > 0 ? (box.y1 - p.y) / s : s < 0 ? (box.y0 - p.y) / s : (double) INFINITY;
  return MIN (x, y);
}

static guint
sector_of (OxPoint from, OxPoint to)
{
  return (guint) ((atan2 (to.y - from.y, to.x - from.x) + G_PI) / (2 * G_PI) * OX_PLACES_SECTORS) % OX_PLACES_SECTORS;
}

/* How far off at most there are points in each direction. */
static void
find_ends (const OxPlaces *places, OxPoint p, double ends[OX_PLACES_SECTORS])
{
  OxBox box = places->box;
  ox_box_add (&box, p);
  OxPoint corners[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  for (guint i = 0; i < OX_PLACES_SECTORS; i++)
    ends[i] = MAX (way_out (box, p, i * 2 * G_PI / OX_PLACES_SECTORS - G_PI), way_out (box, p, (i + 1) * 2 * G_PI / OX_PLACES_SECTORS - G_PI));
  for (guint i = 0; i < 4; i++)
    {
      guint sector = sector_of (p, corners[i]);
      ends[sector] = MAX (ends[sector], ox_point_distance (p, corners[i]));
    }
}

/* Keeps of @out, nearest first, the first few in each direction. Returns: whether there can be no others farther than @radius */
static gboolean
keep_each (const OxPlaces *places, OxPoint p, guint each, double radius, GArray *out)
{
  guint counts[OX_PLACES_SECTORS] = { 0 }, kept = 0;
  double ends[OX_PLACES_SECTORS];
  gboolean all = TRUE;
  for (guint i = 0; i < out->len; i++)
    {
      OxPlace place = g_array_index (out, OxPlace, i);
      if (counts[sector_of (p, places->points[place.index])]++ < each)
        g_array_index (out, OxPlace, kept++) = place;
    }
  find_ends (places, p, ends);
  for (guint i = 0; i < OX_PLACES_SECTORS; i++)
    all = all && (counts[i] >= each || ends[i] < radius - OX_GRID);
  g_array_set_size (out, kept);
  return all;
}

void
ox_places_around (const OxPlaces *places, OxPoint p, guint each, GArray *out)
{
  g_autoptr (GArray) within = g_array_new (FALSE, FALSE, sizeof (guint));
  double radius = places->cell * sqrt (each * OX_PLACES_SECTORS / A_CELL);
  for (gboolean all = FALSE; !all; radius *= 2)
    {
      ox_places_within (places, p, radius, within);
      g_array_set_size (out, 0);
      for (guint i = 0; i < within->len; i++)
        {
          guint index = g_array_index (within, guint, i);
          OxPlace place = { ox_point_distance (p, places->points[index]), index };
          g_array_append_val (out, place);
        }
      if (out->len > 1)
        qsort (out->data, out->len, sizeof (OxPlace), compare_places);
      all = within->len == places->n;
      all = keep_each (places, p, each, radius, out) || all;
    }
}
