/* Oxturn: plan/sight - what sees what on a floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/sight.h"

#define MAX_CELLS 200000
#define LEAST_CELL 0.5 /* m */
#define GRAZE 2e-5     /* m that the floor is grown by, so that a line along a side or past a corner does not cut it */

typedef struct
{
  OxPoint a, b;
} Side;

struct _OxSight
{
  OxBox box;
  double cell;
  guint n_x, n_y;
  Side *sides;
  guint n_sides;
  guint *starts; /* of each cell in @items; one more at the end */
  guint *items;  /* numbers of sides, cell by cell */
};

static guint
column (const OxSight *sight, double x)
{
  return (guint) CLAMP (floor ((x - sight->box.x0) / sight->cell), 0.0, (double) sight->n_x - 1);
}

static guint
row (const OxSight *sight, double y)
{
  return (guint) CLAMP (floor ((y - sight->box.y0) / sight->cell), 0.0, (double) sight->n_y - 1);
}

/* The columns of row @j that the line passes, with a hair to spare on both sides. */
static void
row_columns (const OxSight *sight, const Side *line, guint j, guint *first, guint *last)
{
  double y0 = sight->box.y0 + j * sight->cell - GRAZE, y1 = y0 + sight->cell + 2 * GRAZE;
  double dy = line->b.y - line->a.y, t0 = 0, t1 = 1;
  if (fabs (dy) > 1e-12)
    {
      double u = (y0 - line->a.y) / dy, v = (y1 - line->a.y) / dy;
      t0 = CLAMP (MIN (u, v), 0, 1);
      t1 = CLAMP (MAX (u, v), 0, 1);
    }
  double x0 = line->a.x + (line->b.x - line->a.x) * t0, x1 = line->a.x + (line->b.x - line->a.x) * t1;
  *first = column (sight, MIN (x0, x1) - GRAZE);
  *last = column (sight, MAX (x0, x1) + GRAZE);
}

/* Counts the cells of each side (@fill FALSE), or writes the side into them. */
static void
enter_sides (OxSight *sight, gboolean fill)
{
  for (guint s = 0; s < sight->n_sides; s++)
    {
      const Side *side = &sight->sides[s];
      guint last_row = row (sight, MAX (side->a.y, side->b.y) + GRAZE);
      for (guint j = row (sight, MIN (side->a.y, side->b.y) - GRAZE); j <= last_row; j++)
        {
          guint first, last;
          row_columns (sight, side, j, &first, &last);
          for (guint i = first; i <= last; i++)
            if (fill)
              sight->items[sight->starts[j * sight->n_x + i + 1]++] = s;
            else
              sight->starts[j * sight->n_x + i + 2]++;
        }
    }
}

OxSight *
ox_sight_new (const OxRegion *floor_region)
{
  g_autoptr (OxRegion) grown = ox_region_offset (floor_region, GRAZE, FALSE);
  OxSight *sight = g_new0 (OxSight, 1);
  sight->box = ox_region_box (grown);
  if (ox_box_is_empty (sight->box))
    sight->box = (OxBox){ 0, 0, 0, 0 };
  double width = sight->box.x1 - sight->box.x0, height = sight->box.y1 - sight->box.y0;
  sight->cell = MAX (LEAST_CELL, sqrt (width * height / MAX_CELLS));
  sight->n_x = (guint) floor (width / sight->cell) + 1;
  sight->n_y = (guint) floor (height / sight->cell) + 1;
  sight->sides = g_new (Side, grown->n_points + 1);
  for (guint r = 0; r < grown->n_rings; r++)
    for (guint i = 0; i < grown->rings[r].n; i++)
      {
        const OxPoint *points = grown->points + grown->rings[r].start;
        sight->sides[sight->n_sides++] = (Side){ points[i], points[(i + 1) % grown->rings[r].n] };
      }
  guint cells = sight->n_x * sight->n_y;
  sight->starts = g_new0 (guint, cells + 2);
  enter_sides (sight, FALSE);
  for (guint c = 1; c < cells + 2; c++)
    sight->starts[c] += sight->starts[c - 1];
  sight->items = g_new (guint, sight->starts[cells + 1] + 1);
  enter_sides (sight, TRUE);
  return sight;
}

void
ox_sight_free (OxSight *sight)
{
  if (sight == NULL)
    return;
  g_free (sight->sides);
  g_free (sight->starts);
  g_free (sight->items);
  g_free (sight);
}

static gboolean
cuts (const Side *line, const Side *side)
{
  OxPoint d = ox_point_sub (line->b, line->a), e = ox_point_sub (side->b, side->a);
  double a = ox_point_cross (d, ox_point_sub (side->a, line->a)),
         b = ox_point_cross (d, ox_point_sub (side->b, line->a));
  if ((a > 0) == (b > 0))
    return FALSE;
  double p = ox_point_cross (e, ox_point_sub (line->a, side->a)),
         q = ox_point_cross (e, ox_point_sub (line->b, side->a));
  return (p > 0) != (q > 0);
}

gboolean
ox_sight_is_free (const OxSight *sight, OxPoint a, OxPoint b)
{
  Side line = { a, b };
  guint last_row = row (sight, MAX (a.y, b.y));
  for (guint j = row (sight, MIN (a.y, b.y)); j <= last_row; j++)
    {
      guint first, last;
      row_columns (sight, &line, j, &first, &last);
      for (guint c = j * sight->n_x + first; c <= j * sight->n_x + last; c++)
        for (guint k = sight->starts[c]; k < sight->starts[c + 1]; k++)
          if (cuts (&line, &sight->sides[sight->items[k]]))
            return FALSE;
    }
  return TRUE;
}
