/* Oxturn: plan/verify-grid - which boxes lie near a box, for many boxes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/verify-grid.h"

#define MAX_CELLS_ACROSS 1024

struct _OxBoxGrid
{
  guint n;
  OxBox *boxes;
  OxBox all;
  guint nx, ny;
  double dx, dy;  /* size of a cell */
  guint *start;   /* nx * ny + 1: where the entries of each cell begin */
  guint *entries; /* box indices, cell by cell */
  guint *stamp;   /* the last query that saw each box */
  guint query;
};

static guint
cell_of (double v, double origin, double size, guint cells)
{
  double i = floor ((v - origin) / size);
  return (guint) CLAMP (i, 0, cells - 1);
}

typedef struct
{
  guint x0, x1, y0, y1;
} CellRange;

static CellRange
range_of (const OxBoxGrid *grid, OxBox box)
{
  return (CellRange){ cell_of (box.x0, grid->all.x0, grid->dx, grid->nx),
                      cell_of (box.x1, grid->all.x0, grid->dx, grid->nx),
                      cell_of (box.y0, grid->all.y0, grid->dy, grid->ny),
                      cell_of (box.y1, grid->all.y0, grid->dy, grid->ny) };
}

static void
choose_cells (OxBoxGrid *grid)
{
  double width = MAX (grid->all.x1 - grid->all.x0, OX_GRID);
  double height = MAX (grid->all.y1 - grid->all.y0, OX_GRID);
  double size = sqrt (width * height / MAX (grid->n, 1));
  grid->nx = (guint) CLAMP (ceil (width / size), 1, MAX_CELLS_ACROSS);
  grid->ny = (guint) CLAMP (ceil (height / size), 1, MAX_CELLS_ACROSS);
  grid->dx = width / grid->nx;
  grid->dy = height / grid->ny;
}

/* Counting sort: the first round counts the entries of each cell, the second puts them down. */
static void
fill_cells (OxBoxGrid *grid)
{
  guint cells = grid->nx * grid->ny;
  grid->start = g_new0 (guint, cells + 1);
  for (guint i = 0; i < grid->n; i++)
    {
      CellRange r = range_of (grid, grid->boxes[i]);
      for (guint y = r.y0; y <= r.y1; y++)
        for (guint x = r.x0; x <= r.x1; x++)
          grid->start[y * grid->nx + x + 1]++;
    }
  for (guint c = 0; c < cells; c++)
    grid->start[c + 1] += grid->start[c];
  grid->entries = g_new (guint, MAX (grid->start[cells], 1));
  g_autofree guint *next = g_memdup2 (grid->start, sizeof (guint) * (cells + 1));
  for (guint i = 0; i < grid->n; i++)
    {
      CellRange r = range_of (grid, grid->boxes[i]);
      for (guint y = r.y0; y <= r.y1; y++)
        for (guint x = r.x0; x <= r.x1; x++)
          grid->entries[next[y * grid->nx + x]++] = i;
    }
}

OxBoxGrid *
ox_box_grid_new (const OxBox *boxes, guint n)
{
  OxBoxGrid *grid = g_new0 (OxBoxGrid, 1);
  grid->n = n;
  grid->boxes = g_memdup2 (boxes, sizeof (OxBox) * n);
  grid->all = n > 0 ? boxes[0] : (OxBox){ 0, 0, 0, 0 };
  for (guint i = 1; i < n; i++)
    {
      ox_box_add (&grid->all, (OxPoint){ boxes[i].x0, boxes[i].y0 });
      ox_box_add (&grid->all, (OxPoint){ boxes[i].x1, boxes[i].y1 });
    }
  choose_cells (grid);
  fill_cells (grid);
  grid->stamp = g_new0 (guint, MAX (n, 1));
  return grid;
}

void
ox_box_grid_free (OxBoxGrid *grid)
{
  if (grid == NULL)
    return;
  g_free (grid->boxes);
  g_free (grid->start);
  g_free (grid->entries);
  g_free (grid->stamp);
  g_free (grid);
}

static gboolean
boxes_touch (OxBox a, OxBox b)
{
  return a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;
}

static int
compare_indices (gconstpointer a, gconstpointer b)
{
  guint i = *(const guint *) a, j = *(const guint *) b;
  return i < j ? -1 : i > j;
}

void
ox_box_grid_query (OxBoxGrid *grid, OxBox box, GArray *found)
{
  g_array_set_size (found, 0);
  if (grid->n == 0 || !boxes_touch (grid->all, box))
    return;
  grid->query++;
  CellRange r = range_of (grid, box);
  for (guint y = r.y0; y <= r.y1; y++)
    for (guint x = r.x0; x <= r.x1; x++)
      {
        guint cell = y * grid->nx + x;
        for (guint e = grid->start[cell]; e < grid->start[cell + 1]; e++)
          {
            guint i = grid->entries[e];
            if (grid->stamp[i] == grid->query || !boxes_touch (grid->boxes[i], box))
              continue;
            grid->stamp[i] = grid->query;
            g_array_append_val (found, i);
          }
      }
  g_array_sort (found, compare_indices);
}
