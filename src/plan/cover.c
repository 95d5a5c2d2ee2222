/* Oxturn: plan/cover - how often each spot of a room's target is covered, on a raster.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/cover.h"
#include <stdlib.h>
#include <string.h>

#define MAX_CELLS 200e6 /* 200 MB at the most */
#define NO_NEED 0x80    /* bit of a cell whose middle is not target; the others count the strips over it */
#define BLOCK 64        /* cells looked at together, which the compiler then does many at a time */

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

/* Crossings of the outline with the middle line of each row, collected row by row. */
static GArray **
row_crossings (const OxCover *cover, const OxPoint *points, const OxRegion *region)
{
  GArray **rows = g_new (GArray *, cover->n_y);
  for (guint j = 0; j < cover->n_y; j++)
    rows[j] = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint r = 0; r < region->n_rings; r++)
    for (guint i = 0; i < region->rings[r].n; i++)
      {
        OxPoint a = points[region->rings[r].start + i];
        OxPoint b = points[region->rings[r].start + (i + 1) % region->rings[r].n];
        if (a.y > b.y)
          {
            OxPoint swap = a;
            a = b;
            b = swap;
          }
        double first = ceil ((a.y - cover->y0) / cover->cell - 0.5);
        double last = ceil ((b.y - cover->y0) / cover->cell - 0.5) - 1;
        for (double j = MAX (first, 0); j <= MIN (last, cover->n_y - 1.0); j++)
          {
            double y = cover->y0 + (j + 0.5) * cover->cell;
            double x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
            g_array_append_val (rows[(guint) j], x);
          }
      }
  return rows;
}

/* First cell of a row whose middle is at or right of @x. */
static guint
cell_from (const OxCover *cover, double x)
{
  return (guint) CLAMP (ceil ((x - cover->x0) / cover->cell - 0.5), 0.0, (double) cover->n_x);
}

static void
fill_need (OxCover *cover, const OxPoint *points, const OxRegion *region)
{
  GArray **rows = row_crossings (cover, points, region);
  for (guint j = 0; j < cover->n_y; j++)
    {
      double *x = (double *) (void *) rows[j]->data;
      if (rows[j]->len > 1)
        qsort (x, rows[j]->len, sizeof (double), compare_doubles);
      for (guint k = 0; k + 1 < rows[j]->len; k += 2)
        {
          guint i0 = cell_from (cover, x[k]), i1 = cell_from (cover, x[k + 1]);
          if (i1 > i0)
            memset (cover->cells + (gsize) j * cover->n_x + i0, 0, i1 - i0);
        }
      g_array_unref (rows[j]);
    }
  g_free (rows);
}

/* The number of cells without a strip among @n. */
static guint
count_open (const guint8 *cells, guint n)
{
  guint open = 0;
  for (guint i = 0; i < n; i++)
    open += cells[i] == 0;
  return open;
}

static void
count_tiles (OxCover *cover)
{
  cover->tiles_x = (cover->n_x + OX_COVER_TILE - 1) / OX_COVER_TILE;
  cover->open = g_new0 (guint16, (gsize) cover->tiles_x * ((cover->n_y + OX_COVER_TILE - 1) / OX_COVER_TILE));
  for (guint j = 0; j < cover->n_y; j++)
    {
      const guint8 *row = cover->cells + (gsize) j * cover->n_x;
      guint16 *tiles = cover->open + (gsize) (j / OX_COVER_TILE) * cover->tiles_x;
      for (guint i = 0; i < cover->n_x; i += OX_COVER_TILE)
        tiles[i / OX_COVER_TILE] = (guint16) (tiles[i / OX_COVER_TILE] + count_open (row + i, MIN (cover->n_x - i, OX_COVER_TILE)));
    }
}

OxCover *
ox_cover_new (const OxRegion *target, double angle, double cell)
{
  OxCover *cover = g_new0 (OxCover, 1);
  OxBox box = OX_BOX_EMPTY;
  g_autofree OxPoint *points = g_new (OxPoint, target->n_points + 1);
  cover->cos_a = cos (angle);
  cover->sin_a = sin (angle);
  for (guint i = 0; i < target->n_points; i++)
    {
      points[i] = ox_point_turn (target->points[i], cover->cos_a, -cover->sin_a);
      ox_box_add (&box, points[i]);
    }
  if (ox_box_is_empty (box))
    box = (OxBox) { 0, 0, 0, 0 };
  double area = (box.x1 - box.x0) * (box.y1 - box.y0);
  cover->cell = MAX (cell, sqrt (area / MAX_CELLS));
  cover->x0 = box.x0;
  cover->y0 = box.y0;
  cover->n_x = (guint) ceil ((box.x1 - box.x0) / cover->cell) + 1;
  cover->n_y = (guint) ceil ((box.y1 - box.y0) / cover->cell) + 1;
  cover->cells = g_malloc ((gsize) cover->n_x * cover->n_y);
  memset (cover->cells, NO_NEED, (gsize) cover->n_x * cover->n_y);
  fill_need (cover, points, target);
  count_tiles (cover);
  return cover;
}

void
ox_cover_free (OxCover *cover)
{
  if (cover == NULL)
    return;
  g_free (cover->cells);
  g_free (cover->open);
  g_free (cover);
}

/* The four corners of @band in the raster's frame. */
static void
band_corners (const OxCover *cover, const OxBand *band, OxPoint out[4])
{
  double c = cos (band->angle), s = sin (band->angle), h = band->width / 2;
  OxPoint corners[4] = { { band->x0, band->y - h }, { band->x1, band->y - h }, { band->x1, band->y + h }, { band->x0, band->y + h } };
  for (guint i = 0; i < 4; i++)
    out[i] = ox_point_turn (ox_point_turn (corners[i], c, s), cover->cos_a, -cover->sin_a);
}

/* The span of x that the convex quadrilateral @q covers at height @y; FALSE when it does not reach there. */
static gboolean
quad_span (const OxPoint q[4], double y, double *lo, double *hi)
{
  gboolean any = FALSE;
  for (guint i = 0; i < 4; i++)
    {
      OxPoint a = q[i], b = q[(i + 1) % 4];
      if ((a.y <= y) == (b.y <= y))
        continue;
      double x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
      *lo = any ? MIN (*lo, x) : x;
      *hi = any ? MAX (*hi, x) : x;
      any = TRUE;
    }
  return any;
}

/* Bands along the raster's rows or columns are counted cell by cell, exactly as they were added; others are sampled. */
typedef enum
{
  ALONG_ROWS,
  ALONG_COLUMNS,
  SLANTED
} Run;

static Run
band_run (const OxCover *cover, const OxBand *band, double *c, double *s)
{
  double turn_c = cos (band->angle), turn_s = sin (band->angle);
  *c = turn_c * cover->cos_a + turn_s * cover->sin_a; /* band's frame seen from the raster's */
  *s = turn_s * cover->cos_a - turn_c * cover->sin_a;
  if (fabs (*s) < 1e-9)
    return ALONG_ROWS;
  return fabs (*c) < 1e-9 ? ALONG_COLUMNS : SLANTED;
}

/* Cells whose middle lies between @lo and @hi, from @base on: first and one past the last of @n. */
static void
cells_between (const OxCover *cover, double lo, double hi, guint n, guint *first, guint *end)
{
  *first = (guint) CLAMP (ceil (lo / cover->cell - 0.5), 0.0, (double) n);
  *end = (guint) CLAMP (ceil (hi / cover->cell - 0.5), 0.0, (double) n);
}

/* The rectangle of cells that a straight band covers: columns i0 to i1, rows j0 to j1, the ends not included. */
typedef struct
{
  OxBox box; /* of the band in the frame */
  OxPoint corners[4];
  guint i0, i1, j0, j1;
} Cells;

static Cells
straight_cells (const OxCover *cover, const OxBand *band)
{
  Cells cells = { .box = OX_BOX_EMPTY };
  band_corners (cover, band, cells.corners);
  for (guint i = 0; i < 4; i++)
    ox_box_add (&cells.box, cells.corners[i]);
  cells_between (cover, cells.box.x0 - cover->x0, cells.box.x1 - cover->x0, cover->n_x, &cells.i0, &cells.i1);
  cells_between (cover, cells.box.y0 - cover->y0, cells.box.y1 - cover->y0, cover->n_y, &cells.j0, &cells.j1);
  return cells;
}

/* Counts cells [i0, i1) of row @j up or down. */
static void
add_to_row (OxCover *cover, guint j, guint i0, guint i1, int by)
{
  guint8 *row = cover->cells + (gsize) j * cover->n_x;
  guint16 *tiles = cover->open + (gsize) (j / OX_COVER_TILE) * cover->tiles_x;
  for (guint i = i0, end; i < i1; i = end)
    {
      guint16 *tile = &tiles[i / OX_COVER_TILE];
      end = MIN (i1, (i / OX_COVER_TILE + 1) * OX_COVER_TILE);
      if (by > 0)
        *tile = (guint16) (*tile - count_open (row + i, end - i));
      for (guint k = i; k < end; k++)
        row[k] = (guint8) (row[k] + by);
      if (by < 0)
        *tile = (guint16) (*tile + count_open (row + i, end - i));
    }
}

static void
add_straight (OxCover *cover, const OxBand *band, int by)
{
  Cells cells = straight_cells (cover, band);
  for (guint j = cells.j0; j < cells.j1; j++)
    add_to_row (cover, j, cells.i0, cells.i1, by);
}

static void
add_slanted (OxCover *cover, const OxBand *band, int by)
{
  OxPoint q[4];
  guint j0, j1;
  band_corners (cover, band, q);
  double bottom = MIN (MIN (q[0].y, q[1].y), MIN (q[2].y, q[3].y));
  double top = MAX (MAX (q[0].y, q[1].y), MAX (q[2].y, q[3].y));
  cells_between (cover, bottom - cover->y0, top - cover->y0, cover->n_y, &j0, &j1);
  for (guint j = j0; j < j1; j++)
    {
      double lo = 0, hi = 0;
      if (!quad_span (q, cover->y0 + (j + 0.5) * cover->cell, &lo, &hi))
        continue;
      add_to_row (cover, j, cell_from (cover, lo), cell_from (cover, hi), by);
    }
}

void
ox_cover_add (OxCover *cover, const OxBand *band, int by)
{
  double c, s;
  if (band_run (cover, band, &c, &s) == SLANTED)
    add_slanted (cover, band, by);
  else
    add_straight (cover, band, by);
}

/* Adds to @sums, of up to BLOCK columns from @cells on, how many of @rows cells stand at @level; up to 255 rows. */
static void
sum_block (const guint8 *cells, guint stride, guint rows, guint8 level, guint8 *sums)
{
  for (; rows > 0; rows--, cells += stride)
    for (guint i = 0; i < BLOCK; i++)
      sums[i] = (guint8) (sums[i] + (cells[i] == level));
}

static void
sum_rest (const guint8 *cells, const OxCover *cover, guint columns, guint rows, guint8 level, guint *sums)
{
  for (; rows > 0; rows--, cells += cover->n_x)
    for (guint i = 0; i < columns; i++)
      sums[i] += cells[i] == level;
}

/* Of row @j the cells of @a that are not those of @b. */
static void
add_to_rest_of_row (OxCover *cover, guint j, const Cells *a, const Cells *b, int by)
{
  if (j < a->j0 || j >= a->j1)
    return;
  if (j < b->j0 || j >= b->j1)
    {
      add_to_row (cover, j, a->i0, a->i1, by);
      return;
    }
  add_to_row (cover, j, a->i0, MIN (a->i1, b->i0), by);
  add_to_row (cover, j, MAX (a->i0, b->i1), a->i1, by);
}

void
ox_cover_replace (OxCover *cover, const OxBand *before, const OxBand *after)
{
  double c, s;
  if (band_run (cover, before, &c, &s) == SLANTED || band_run (cover, after, &c, &s) == SLANTED)
    {
      ox_cover_add (cover, before, -1);
      ox_cover_add (cover, after, 1);
      return;
    }
  Cells old = straight_cells (cover, before), new = straight_cells (cover, after);
  for (guint j = old.j0; j < old.j1; j++)
    add_to_rest_of_row (cover, j, &old, &new, -1);
  for (guint j = new.j0; j < new.j1; j++)
    add_to_rest_of_row (cover, j, &new, &old, 1);
}

/* Whether a look into columns [i0, i1) of rows [j0, j1) may find a cell at @level. */
static gboolean
may_hold (const OxCover *cover, guint level, const Cells *at)
{
  if (level != 0)
    return TRUE;
  for (guint t = at->j0 / OX_COVER_TILE; t <= (at->j1 - 1) / OX_COVER_TILE; t++)
    for (guint s = at->i0 / OX_COVER_TILE; s <= (at->i1 - 1) / OX_COVER_TILE; s++)
      if (cover->open[(gsize) t * cover->tiles_x + s] > 0)
        return TRUE;
  return FALSE;
}

/* Both sums walk the rows one after another, as the cells lie in memory. */
static void
sum_columns (const OxCover *cover, const Cells *at, guint level, guint *sums)
{
  guint n = at->i1 - at->i0;
  memset (sums, 0, sizeof (guint) * n);
  for (guint j = at->j0; j < at->j1; j += MIN (at->j1 - j, 255))
    {
      const guint8 *cells = cover->cells + (gsize) j * cover->n_x + at->i0;
      guint rows = MIN (at->j1 - j, 255), i = 0;
      for (; i + BLOCK <= n; i += BLOCK)
        {
          guint8 few[BLOCK] = { 0 };
          if (!may_hold (cover, level, &(Cells){ .i0 = at->i0 + i, .i1 = at->i0 + i + BLOCK, .j0 = j, .j1 = j + rows }))
            continue;
          sum_block (cells + i, cover->n_x, rows, (guint8) level, few);
          for (guint k = 0; k < BLOCK; k++)
            sums[i + k] += few[k];
        }
      sum_rest (cells + i, cover, n - i, rows, (guint8) level, sums + i);
    }
}

static void
sum_rows (const OxCover *cover, const Cells *at, guint level, guint *sums)
{
  guint n = at->i1 - at->i0;
  memset (sums, 0, sizeof (guint) * (at->j1 - at->j0));
  for (guint j = at->j0, end; n > 0 && j < at->j1; j = end)
    {
      end = MIN (at->j1, (j / OX_COVER_TILE + 1) * OX_COVER_TILE);
      if (!may_hold (cover, level, &(Cells){ .i0 = at->i0, .i1 = at->i1, .j0 = j, .j1 = end }))
        continue;
      for (guint k = j; k < end; k++)
        {
          const guint8 *cells = cover->cells + (gsize) k * cover->n_x + at->i0;
          guint sum = 0;
          for (guint i = 0; i < n; i++)
            sum += cells[i] == level;
          sums[k - at->j0] = sum;
        }
    }
}

/* Counts along rows or columns; entries lie in the order of the band's x. */
static void
profile_straight (const OxCover *cover, const OxBand *band, guint level, Run run, OxProfile *out)
{
  Cells at = straight_cells (cover, band);
  guint n = run == ALONG_ROWS ? at.i1 - at.i0 : at.j1 - at.j0;
  gboolean backwards = run == ALONG_ROWS ? at.corners[1].x < at.corners[0].x : at.corners[1].y < at.corners[0].y;
  /* From the band's low end to the first cell's lower edge, and from the last cell's upper edge to the high end. */
  double lead = run == ALONG_ROWS ? at.i0 * cover->cell + cover->x0 - at.box.x0 : at.j0 * cover->cell + cover->y0 - at.box.y0;
  double tail = (run == ALONG_ROWS ? at.box.x1 - at.box.x0 : at.box.y1 - at.box.y0) - lead - n * cover->cell;
  out->step = cover->cell;
  out->x0 = band->x0 + (backwards ? tail : lead);
  out->sample_m2 = cover->cell * cover->cell;
  g_array_set_size (out->counts, n);
  if (n == 0)
    return;
  guint *sums = (guint *) (void *) out->counts->data;
  if (run == ALONG_ROWS)
    sum_columns (cover, &at, level, sums);
  else
    sum_rows (cover, &at, level, sums);
  for (guint a = 0, b = n - 1; backwards && a < b; a++, b--)
    {
      guint swap = sums[a];
      sums[a] = sums[b];
      sums[b] = swap;
    }
}

static void
profile_slanted (const OxCover *cover, const OxBand *band, guint level, double c, double s, OxProfile *out)
{
  double length = band->x1 - band->x0;
  guint along = (guint) MAX (1.0, round (length / cover->cell));
  guint across = (guint) MAX (1.0, round (band->width / cover->cell));
  /* Cells whose middle lies outside the band must not be looked at, so the outermost samples keep off its long sides. */
  double inner = MAX (band->width - 1.5 * cover->cell, band->width / 2);
  double da = length / along, dw = inner / across;
  out->step = da;
  out->x0 = band->x0;
  out->sample_m2 = da * band->width / across;
  g_array_set_size (out->counts, along);
  memset (out->counts->data, 0, sizeof (guint) * along);
  guint *sums = (guint *) (void *) out->counts->data;
  double sx = da * c / cover->cell, sy = da * s / cover->cell;
  for (guint w = 0; w < across; w++)
    {
      double y = band->y - inner / 2 + (w + 0.5) * dw, x = band->x0 + da / 2;
      double fx = (x * c - y * s - cover->x0) / cover->cell, fy = (x * s + y * c - cover->y0) / cover->cell;
      for (guint i = 0; i < along; i++, fx += sx, fy += sy)
        {
          if (fx < 0 || fy < 0 || fx >= cover->n_x || fy >= cover->n_y)
            continue;
          gsize at = (gsize) fy * cover->n_x + (gsize) fx;
          sums[i] += cover->cells[at] == level;
        }
    }
}

void
ox_cover_profile (const OxCover *cover, const OxBand *band, guint level, OxProfile *out)
{
  double c, s;
  Run run = band_run (cover, band, &c, &s);
  if (run == SLANTED)
    profile_slanted (cover, band, level, c, s, out);
  else
    profile_straight (cover, band, level, run, out);
}

double
ox_cover_left (const OxCover *cover)
{
  gsize n = (gsize) cover->tiles_x * ((cover->n_y + OX_COVER_TILE - 1) / OX_COVER_TILE), left = 0;
  for (gsize i = 0; i < n; i++)
    left += cover->open[i];
  return (double) left * cover->cell * cover->cell;
}
