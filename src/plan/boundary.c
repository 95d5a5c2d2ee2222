/* Oxturn: plan/boundary - the sides that strips are laid along, seen in a frame.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/boundary.h"
#include <stdlib.h>

typedef struct
{
  OxPoint a, b;
  double length;
  guint order;
} Side;

static int
compare_sides (const void *a, const void *b)
{
  const Side *p = a, *q = b;
  if (p->length != q->length)
    return p->length > q->length ? -1 : 1;
  return (p->order > q->order) - (p->order < q->order);
}

/* Whether the floor just inside the side belongs to the room. */
static gboolean
borders_room (const OxLayout *layout, const Side *side)
{
  const OxMachine *m = layout->machine;
  double off = MIN (m->left, m->right) + m->wall_gap;
  OxPoint along = ox_point_scale (ox_point_sub (side->b, side->a), 1 / side->length);
  for (guint i = 1; i <= 3; i++)
    {
      OxPoint p = ox_point_add (side->a, ox_point_scale (along, side->length * i / 4));
      if (ox_region_contains (layout->target, (OxPoint) { p.x - along.y * off, p.y + along.x * off }))
        return TRUE;
    }
  return FALSE;
}

static void
add_stretch (OxLayout *layout, guint index, const Side *side, GArray *out)
{
  const OxFrame *frame = g_ptr_array_index (layout->frames, index);
  OxPoint a = ox_frame_from_floor (frame, side->a), b = ox_frame_from_floor (frame, side->b);
  /* The inside is on the left of a -> b. A side that is a hair off the frame's direction counts where it juts in most, so that a lane beside it fits
   * all along. */
  int inside = b.x > a.x ? 1 : -1;
  OxStretch stretch = { index, inside > 0 ? MAX (a.y, b.y) : MIN (a.y, b.y), MIN (a.x, b.x), MAX (a.x, b.x), inside };
  g_array_append_val (out, stretch);
}

void
ox_boundary_sides (OxLayout *layout, double least, guint max_frames, GArray *out)
{
  const OxRegion *travel = layout->travel;
  g_autoptr (GArray) sides = g_array_new (FALSE, FALSE, sizeof (Side));
  for (guint r = 0; r < travel->n_rings; r++)
    for (guint i = 0, n = travel->rings[r].n; i < n; i++)
      {
        const OxPoint *points = travel->points + travel->rings[r].start;
        Side side = { points[i], points[(i + 1) % n], 0, travel->rings[r].start + i };
        side.length = ox_point_distance (side.a, side.b);
        if (side.length >= least && borders_room (layout, &side))
          g_array_append_val (sides, side);
      }
  if (sides->len > 1)
    qsort (sides->data, sides->len, sizeof (Side), compare_sides);
  for (guint i = 0; i < sides->len; i++)
    {
      const Side *side = &g_array_index (sides, Side, i);
      double angle = atan2 (side->b.y - side->a.y, side->b.x - side->a.x);
      if (layout->frames->len < max_frames || ox_layout_find_frame (layout, angle, side->length) >= 0)
        add_stretch (layout, ox_layout_frame (layout, angle, side->length), side, out);
    }
}

void
ox_boundary_boxes (OxLayout *layout, GArray *out)
{
  const OxRegion *travel = layout->travel;
  const OxFrame *main_frame = g_ptr_array_index (layout->frames, 0);
  guint frames[2] = { 0, ox_layout_frame (layout, main_frame->angle + G_PI / 2, 0) };
  for (guint r = 0; r < travel->n_rings; r++)
    for (guint k = 0; k < 2 && travel->rings[r].hole; k++)
      {
        const OxFrame *frame = g_ptr_array_index (layout->frames, frames[k]);
        OxBox box = OX_BOX_EMPTY;
        for (guint i = 0; i < travel->rings[r].n; i++)
          ox_box_add (&box, ox_frame_from_floor (frame, travel->points[travel->rings[r].start + i]));
        if (box.x1 < frame->box.x0 || box.x0 > frame->box.x1 || box.y1 < frame->box.y0 || box.y0 > frame->box.y1)
          continue;
        OxStretch above = { frames[k], box.y1, box.x0, box.x1, 1 }, below = { frames[k], box.y0, box.x0, box.x1, -1 };
        g_array_append_val (out, above);
        g_array_append_val (out, below);
      }
}

double
ox_boundary_side_clearance (const OxMachine *machine, int inside, int sign)
{
  /* Floor above the stretch: heading +x has it on the right. */
  return (inside * sign > 0 ? machine->right : machine->left) + machine->wall_gap;
}

double
ox_boundary_reach (const OxMachine *m, double angle, gboolean ahead)
{
  double s = fabs (sin (angle)), c = fabs (cos (angle));
  double end = ahead ? m->front + m->wall_gap : m->rear;
  double side = MAX (m->left, m->right) + m->wall_gap;
  /* The body's corner stands at the wall: the middle of the pattern is end s + side c off it, and the pattern's far corner behind (or ahead) covers
   * from blast_length/2 nearer and blast_width/2 farther. */
  return end * s + side * c - m->blast_length / 2 * s + m->blast_width / 2 * c;
}
