/* Oxturn: plan/strip-grid - which strips cover a point.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/strip-grid.h"
#include "plan/lane.h"
#include <string.h>

#define MOST_CELLS 4000000.0
#define LEAST_CELL 1.0 /* m */

struct _OxStripGrid
{
  const OxStrip *strips;
  double half_length; /* of the pattern */
  OxPoint corner;
  double cell;        /* m */
  guint nx, ny;
  guint *first;       /* per cell, and one beyond: where its strips begin in @list */
  guint *list;        /* indices of strips, rising within a cell */
};

static OxBox
box_of (const OxStrip *strips, guint n, double half_length)
{
  OxBox box = OX_BOX_EMPTY;
  for (guint i = 0; i < n; i++)
    {
      double reach = half_length + strips[i].width;
      ox_box_add (&box, (OxPoint){ MIN (strips[i].a.x, strips[i].b.x) - reach, MIN (strips[i].a.y, strips[i].b.y) - reach });
      ox_box_add (&box, (OxPoint){ MAX (strips[i].a.x, strips[i].b.x) + reach, MAX (strips[i].a.y, strips[i].b.y) + reach });
    }
  return box;
}

/* Cells that a stretch of the strip from @t to @end meters on from its start may lie in: those that its bounds meet. */
static void
stretch_cells (const OxStripGrid *grid, const OxStrip *strip, OxSpan t, guint range[4])
{
  OxPoint u = { cos (strip->heading), sin (strip->heading) };
  OxPoint p = ox_point_add (strip->a, ox_point_scale (u, t.lo)), q = ox_point_add (strip->a, ox_point_scale (u, t.hi));
  OxPoint off = { fabs (u.y) * strip->width / 2, fabs (u.x) * strip->width / 2 };
  range[0] = (guint) ((MIN (p.x, q.x) - off.x - grid->corner.x) / grid->cell);
  range[1] = (guint) ((MAX (p.x, q.x) + off.x - grid->corner.x) / grid->cell);
  range[2] = (guint) ((MIN (p.y, q.y) - off.y - grid->corner.y) / grid->cell);
  range[3] = (guint) ((MAX (p.y, q.y) + off.y - grid->corner.y) / grid->cell);
}

/* Counts the strip into @places of its cells, or writes it there when there is a list; @seen keeps a cell from being met twice. */
static void
enter (OxStripGrid *grid, guint i, guint *places, guint *seen)
{
  const OxStrip *strip = &grid->strips[i];
  double end = ox_strip_length (strip) + grid->half_length, step = grid->cell / 2;
  for (double t = -grid->half_length; t < end; t += step)
    {
      guint range[4];
      stretch_cells (grid, strip, (OxSpan){ t, MIN (t + step, end) }, range);
      for (guint y = range[2]; y <= range[3]; y++)
        for (guint x = range[0]; x <= range[1]; x++)
          {
            guint cell = y * grid->nx + x;
            if (seen[cell] == i + 1)
              continue;
            seen[cell] = i + 1;
            if (grid->list != NULL)
              grid->list[places[cell]] = i;
            places[cell]++;
          }
    }
}

OxStripGrid *
ox_strip_grid_new (const OxStrip *strips, guint n, double blast_length)
{
  OxStripGrid *grid = g_new0 (OxStripGrid, 1);
  OxBox box = n > 0 ? box_of (strips, n, blast_length / 2) : (OxBox){ 0, 0, 1, 1 };
  grid->strips = strips;
  grid->half_length = blast_length / 2;
  grid->corner = (OxPoint){ box.x0, box.y0 };
  grid->cell = MAX (LEAST_CELL, sqrt ((box.x1 - box.x0) * (box.y1 - box.y0) / MOST_CELLS));
  grid->nx = (guint) ((box.x1 - box.x0) / grid->cell) + 2;
  grid->ny = (guint) ((box.y1 - box.y0) / grid->cell) + 2;
  guint cells = grid->nx * grid->ny, sum = 0;
  g_autofree guint *seen = g_new0 (guint, cells);
  grid->first = g_new0 (guint, cells + 1);
  for (guint i = 0; i < n; i++)
    enter (grid, i, grid->first, seen);
  for (guint i = 0; i <= cells; i++)
    {
      guint count = grid->first[i];
      grid->first[i] = sum;
      sum += count;
    }
  g_autofree guint *places = g_memdup2 (grid->first, cells * sizeof (guint));
  grid->list = g_new (guint, sum + 1);
  memset (seen, 0, cells * sizeof (guint));
  for (guint i = 0; i < n; i++)
    enter (grid, i, places, seen);
  return grid;
}

void
ox_strip_grid_free (OxStripGrid *grid)
{
  if (grid == NULL)
    return;
  g_free (grid->first);
  g_free (grid->list);
  g_free (grid);
}

static gboolean
covers (const OxStripGrid *grid, const OxStrip *strip, OxPoint p)
{
  OxPoint u = { cos (strip->heading), sin (strip->heading) }, off = ox_point_sub (p, strip->a);
  double along = ox_point_dot (u, off);
  return fabs (ox_point_cross (u, off)) <= strip->width / 2 && along >= -grid->half_length
         && along <= ox_strip_length (strip) + grid->half_length;
}

void
ox_strip_grid_at (const OxStripGrid *grid, OxPoint p, guint coat, guint found[2])
{
  guint n = 0;
  found[0] = found[1] = G_MAXUINT;
  if (p.x < grid->corner.x || p.y < grid->corner.y)
    return;
  guint x = (guint) ((p.x - grid->corner.x) / grid->cell), y = (guint) ((p.y - grid->corner.y) / grid->cell);
  if (x >= grid->nx || y >= grid->ny)
    return;
  guint cell = y * grid->nx + x;
  for (guint i = grid->first[cell]; i < grid->first[cell + 1] && n < 2; i++)
    if (grid->strips[grid->list[i]].coat == coat && covers (grid, &grid->strips[grid->list[i]], p))
      found[n++] = grid->list[i];
}
