/* Oxturn: plan/near - which of a layout's strips lie near a place.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/near.h"
#include <stdlib.h>

#define BUCKET 4.0 /* m along */
#define MOST_ROWS 4000
#define MOST_COLUMNS 400
#define PARALLEL 0.0349 /* sine of two degrees */
#define NONE G_MAXUINT
#define HAIR 1e-6 /* m: what turning a box may err by, and more */

typedef struct
{
  guint id, next; /* the next entry of the same bucket */
} Entry;

/* The buckets of one frame; what lies outside of them is in those at the rim. */
typedef struct
{
  OxBox box;
  double high, long_; /* m, of a bucket */
  guint rows, columns;
  guint *heads; /* first entry of each bucket, NONE without any */
} Grid;

struct _OxNear
{
  const GPtrArray *frames;
  double width;
  GPtrArray *grids; /* Grid, of each frame that has lines; NULL for others */
  GArray *entries;  /* Entry */
  guint unused;     /* first of the entries that hold nothing */
  GArray *seen;     /* guint: of each id the last question that found it */
  guint question;
};

static void
grid_free (gpointer data)
{
  Grid *grid = data;
  if (grid == NULL)
    return;
  g_free (grid->heads);
  g_free (grid);
}

OxNear *
ox_near_new (const GPtrArray *frames, double width)
{
  OxNear *near = g_new0 (OxNear, 1);
  near->frames = frames;
  near->width = width;
  near->grids = g_ptr_array_new_with_free_func (grid_free);
  near->entries = g_array_new (FALSE, FALSE, sizeof (Entry));
  near->seen = g_array_new (FALSE, TRUE, sizeof (guint));
  near->unused = NONE;
  return near;
}

void
ox_near_free (OxNear *near)
{
  if (near == NULL)
    return;
  g_ptr_array_unref (near->grids);
  g_array_unref (near->entries);
  g_array_unref (near->seen);
  g_free (near);
}

static Grid *
grid_new (OxBox box, double width)
{
  Grid *grid = g_new0 (Grid, 1);
  if (ox_box_is_empty (box))
    box = (OxBox){ 0, 0, 0, 0 };
  grid->box = box;
  grid->high = MAX (width, (box.y1 - box.y0) / MOST_ROWS);
  grid->long_ = MAX (BUCKET, (box.x1 - box.x0) / MOST_COLUMNS);
  grid->rows = (guint) floor ((box.y1 - box.y0) / grid->high) + 1;
  grid->columns = (guint) floor ((box.x1 - box.x0) / grid->long_) + 1;
  grid->heads = g_new (guint, grid->rows * grid->columns);
  for (guint i = 0; i < grid->rows * grid->columns; i++)
    grid->heads[i] = NONE;
  return grid;
}

static guint
row_of (const Grid *grid, double y)
{
  return (guint) CLAMP (floor ((y - grid->box.y0) / grid->high), 0.0, (double) grid->rows - 1);
}

static guint
column_of (const Grid *grid, double x)
{
  return (guint) CLAMP (floor ((x - grid->box.x0) / grid->long_), 0.0, (double) grid->columns - 1);
}

static guint
take_entry (OxNear *near)
{
  guint at = near->unused;
  if (at == NONE)
    {
      Entry fresh = { NONE, NONE };
      g_array_append_val (near->entries, fresh);
      return near->entries->len - 1;
    }
  near->unused = g_array_index (near->entries, Entry, at).next;
  return at;
}

void
ox_near_add (OxNear *near, const OxNearLine *line, guint id)
{
  while (near->grids->len <= line->frame)
    g_ptr_array_add (near->grids, NULL);
  Grid *grid = g_ptr_array_index (near->grids, line->frame);
  if (grid == NULL)
    {
      grid = grid_new (((const OxFrame *) g_ptr_array_index (near->frames, line->frame))->box, near->width);
      g_ptr_array_index (near->grids, line->frame) = grid;
    }
  if (near->seen->len <= id)
    g_array_set_size (near->seen, id + 1);
  guint *row = grid->heads + row_of (grid, line->y) * grid->columns, last = column_of (grid, line->x1);
  for (guint i = column_of (grid, line->x0); i <= last; i++)
    {
      guint at = take_entry (near);
      g_array_index (near->entries, Entry, at) = (Entry){ id, row[i] };
      row[i] = at;
    }
}

void
ox_near_remove (OxNear *near, const OxNearLine *line, guint id)
{
  Grid *grid = g_ptr_array_index (near->grids, line->frame);
  guint *row = grid->heads + row_of (grid, line->y) * grid->columns, last = column_of (grid, line->x1);
  for (guint i = column_of (grid, line->x0); i <= last; i++)
    {
      guint *link = &row[i];
      while (g_array_index (near->entries, Entry, *link).id != id)
        link = &g_array_index (near->entries, Entry, *link).next;
      guint at = *link;
      *link = g_array_index (near->entries, Entry, at).next;
      g_array_index (near->entries, Entry, at).next = near->unused;
      near->unused = at;
    }
}

/* The box about @box, turned from one frame into another. */
static OxBox
turned_box (const OxFrame *from, const OxFrame *to, OxBox box)
{
  OxBox out = OX_BOX_EMPTY;
  OxPoint corners[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  for (guint i = 0; i < 4; i++)
    ox_box_add (&out, ox_frame_from_floor (to, ox_frame_to_floor (from, corners[i])));
  return (OxBox){ out.x0 - HAIR, out.y0 - HAIR, out.x1 + HAIR, out.y1 + HAIR };
}

static void
find_in_grid (OxNear *near, const Grid *grid, OxBox box, GArray *ids)
{
  guint first = column_of (grid, box.x0), last = column_of (grid, box.x1), last_row = row_of (grid, box.y1);
  for (guint j = row_of (grid, box.y0); j <= last_row; j++)
    for (guint i = first; i <= last; i++)
      for (guint at = grid->heads[j * grid->columns + i]; at != NONE;
           at = g_array_index (near->entries, Entry, at).next)
        {
          guint id = g_array_index (near->entries, Entry, at).id;
          if (g_array_index (near->seen, guint, id) == near->question)
            continue;
          g_array_index (near->seen, guint, id) = near->question;
          g_array_append_val (ids, id);
        }
}

static gboolean
is_of_sort (const OxFrame *a, const OxFrame *b, OxNearSort sort)
{
  double along = a->cos_a * b->cos_a + a->sin_a * b->sin_a, across = a->sin_a * b->cos_a - a->cos_a * b->sin_a;
  return sort == OX_NEAR_ALL || fabs (sort == OX_NEAR_ALONG ? across : along) < PARALLEL;
}

static int
compare_ids (const void *a, const void *b)
{
  guint p = *(const guint *) a, q = *(const guint *) b;
  return (p > q) - (p < q);
}

void
ox_near_find (OxNear *near, guint frame, OxBox box, OxNearSort sort, GArray *ids)
{
  const OxFrame *from = g_ptr_array_index (near->frames, frame);
  g_array_set_size (ids, 0);
  near->question++;
  for (guint f = 0; f < near->grids->len; f++)
    {
      const Grid *grid = g_ptr_array_index (near->grids, f);
      const OxFrame *to = g_ptr_array_index (near->frames, f);
      if (grid != NULL && is_of_sort (from, to, sort))
        find_in_grid (near, grid, f == frame ? box : turned_box (from, to, box), ids);
    }
  if (ids->len > 1)
    qsort (ids->data, ids->len, sizeof (guint), compare_ids);
}
