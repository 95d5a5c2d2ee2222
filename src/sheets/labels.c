/* Oxturn: sheets/labels - where labels stand on paper.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/labels.h"

#define CELL_MM 10.0
#define BEYOND_MM 1.0 /* how far a label may reach over the bounds: that of a lane beside a wall does */
#define CELL_ROW G_GINT64_CONSTANT (0x80000000) /* more cells than any row has */

typedef struct
{
  OxLabelBox label;
  OxPoint corners[4]; /* mm */
  OxBox box;
} Place;

struct _OxLabels
{
  double mm_per_m;
  OxBox bounds; /* m of floor */
  GArray *places;
  GHashTable *cells; /* cell number -> GArray of indices in places */
};

OxLabels *
ox_labels_new (double mm_per_m)
{
  OxLabels *labels = g_new0 (OxLabels, 1);
  labels->mm_per_m = mm_per_m;
  ox_labels_set_bounds (labels, NULL);
  labels->places = g_array_new (FALSE, FALSE, sizeof (Place));
  labels->cells = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, (GDestroyNotify) g_array_unref);
  return labels;
}

void
ox_labels_free (OxLabels *labels)
{
  g_array_unref (labels->places);
  g_hash_table_unref (labels->cells);
  g_free (labels);
}

static void
place_box (Place *place, double mm_per_m)
{
  const OxBox *b = &place->label.mm;
  const OxPoint local[4] = { { b->x0, b->y0 }, { b->x1, b->y0 }, { b->x1, b->y1 }, { b->x0, b->y1 } };
  double c = cos (place->label.angle), s = sin (place->label.angle);
  OxPoint at = ox_point_scale (place->label.at, mm_per_m);
  place->box = OX_BOX_EMPTY;
  for (int i = 0; i < 4; i++)
    {
      place->corners[i] = ox_point_add (at, ox_point_turn (local[i], c, s));
      ox_box_add (&place->box, place->corners[i]);
    }
}

/* parted_along: whether a straight line along a side of @a lies between the two boxes */
static gboolean
parted_along (const Place *a, const Place *b)
{
  for (int side = 0; side < 2; side++)
    {
      OxPoint axis = ox_point_sub (a->corners[side + 1], a->corners[side]);
      double a0 = INFINITY, a1 = -INFINITY, b0 = INFINITY, b1 = -INFINITY;
      for (int i = 0; i < 4; i++)
        {
          double p = ox_point_dot (a->corners[i], axis), q = ox_point_dot (b->corners[i], axis);
          a0 = MIN (a0, p);
          a1 = MAX (a1, p);
          b0 = MIN (b0, q);
          b1 = MAX (b1, q);
        }
      if (a1 <= b0 || b1 <= a0)
        return TRUE;
    }
  return FALSE;
}

static gint64
cell_number (double x, double y)
{
  return (gint64) floor (x / CELL_MM) * CELL_ROW + (gint64) floor (y / CELL_MM);
}

static void
index_place (OxLabels *labels, guint i)
{
  OxBox box = g_array_index (labels->places, Place, i).box;
  for (double x = floor (box.x0 / CELL_MM) * CELL_MM; x <= box.x1; x += CELL_MM)
    for (double y = floor (box.y0 / CELL_MM) * CELL_MM; y <= box.y1; y += CELL_MM)
      {
        gint64 number = cell_number (x + CELL_MM / 2, y + CELL_MM / 2);
        GArray *cell = g_hash_table_lookup (labels->cells, &number);
        if (cell == NULL)
          {
            cell = g_array_new (FALSE, FALSE, sizeof (guint));
            g_hash_table_insert (labels->cells, g_memdup2 (&number, sizeof number), cell);
          }
        g_array_append_val (cell, i);
      }
}

void
ox_labels_set_scale (OxLabels *labels, double mm_per_m)
{
  labels->mm_per_m = mm_per_m;
  g_hash_table_remove_all (labels->cells);
  for (guint i = 0; i < labels->places->len; i++)
    {
      place_box (&g_array_index (labels->places, Place, i), mm_per_m);
      index_place (labels, i);
    }
}

double
ox_labels_get_scale (const OxLabels *labels)
{
  return labels->mm_per_m;
}

void
ox_labels_set_bounds (OxLabels *labels, const OxBox *box)
{
  labels->bounds = box != NULL ? *box : (OxBox){ -INFINITY, -INFINITY, INFINITY, INFINITY };
}

static gboolean
is_in_bounds (const OxLabels *labels, OxBox mm)
{
  OxBox box = labels->bounds;
  double scale = labels->mm_per_m;
  return mm.x0 >= box.x0 * scale - BEYOND_MM && mm.y0 >= box.y0 * scale - BEYOND_MM
         && mm.x1 <= box.x1 * scale + BEYOND_MM && mm.y1 <= box.y1 * scale + BEYOND_MM;
}

static gboolean
is_clear_of_cell (const OxLabels *labels, const Place *place, gint64 number)
{
  const GArray *cell = g_hash_table_lookup (labels->cells, &number);
  for (guint i = 0; cell != NULL && i < cell->len; i++)
    {
      const Place *other = &g_array_index (labels->places, Place, g_array_index (cell, guint, i));
      if (!parted_along (place, other) && !parted_along (other, place))
        return FALSE;
    }
  return TRUE;
}

gboolean
ox_labels_is_free (const OxLabels *labels, const OxLabelBox *box)
{
  Place place = { .label = *box };
  place_box (&place, labels->mm_per_m);
  if (!is_in_bounds (labels, place.box))
    return FALSE;
  for (double x = floor (place.box.x0 / CELL_MM) * CELL_MM; x <= place.box.x1; x += CELL_MM)
    for (double y = floor (place.box.y0 / CELL_MM) * CELL_MM; y <= place.box.y1; y += CELL_MM)
      if (!is_clear_of_cell (labels, &place, cell_number (x + CELL_MM / 2, y + CELL_MM / 2)))
        return FALSE;
  return TRUE;
}

void
ox_labels_take (OxLabels *labels, const OxLabelBox *box)
{
  Place place = { .label = *box };
  place_box (&place, labels->mm_per_m);
  g_array_append_val (labels->places, place);
  index_place (labels, labels->places->len - 1);
}

guint
ox_labels_get_count (const OxLabels *labels)
{
  return labels->places->len;
}

void
ox_labels_keep (OxLabels *labels, guint n)
{
  g_return_if_fail (n <= labels->places->len);
  g_array_set_size (labels->places, n);
  GHashTableIter iter;
  gpointer cell;
  g_hash_table_iter_init (&iter, labels->cells);
  while (g_hash_table_iter_next (&iter, NULL, &cell))
    {
      /* Places were put in in order, so those to go are the last ones. */
      GArray *inside = cell;
      while (inside->len > 0 && g_array_index (inside, guint, inside->len - 1) >= n)
        g_array_set_size (inside, inside->len - 1);
    }
}
