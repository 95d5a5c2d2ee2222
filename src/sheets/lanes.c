/* Oxturn: sheets/lanes - the chalk lines that the strips lie on.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/picture.h"

/* a strip on its lane: from the lower to the higher place along it */
typedef struct
{
  guint room, coat, lane;
  double at; /* along the lane, of @from */
  OxPoint from, to;
} Chalked;

static int
compare (gconstpointer a, gconstpointer b)
{
  const Chalked *p = a, *q = b;
  if (p->room != q->room)
    return p->room < q->room ? -1 : 1;
  if (p->coat != q->coat)
    return p->coat < q->coat ? -1 : 1;
  if (p->lane != q->lane)
    return p->lane < q->lane ? -1 : 1;
  return (p->at > q->at) - (p->at < q->at);
}

/* Strips of one lane are walked both ways; the lane has one. */
static Chalked
chalk (const OxStrip *strip)
{
  gboolean back = strip->b.x < strip->a.x || (strip->b.x == strip->a.x && strip->b.y < strip->a.y);
  OxPoint from = back ? strip->b : strip->a, to = back ? strip->a : strip->b;
  OxPoint along = ox_point_scale (ox_point_sub (to, from), 1 / ox_strip_length (strip));
  return (Chalked){ strip->room, strip->coat, strip->lane, ox_point_dot (from, along), from, to };
}

/* A line is snapped past a column, not out of the room and in again. */
static gboolean
goes_on (const OxJob *job, const Chalked *one, const Chalked *next)
{
  const OxRing *ring = job->rooms[one->room]->ring;
  if (one->room != next->room || one->coat != next->coat || one->lane != next->lane)
    return FALSE;
  for (guint i = 0; i < ring->n; i++)
    if (ox_segments_cross (one->to, next->from, ring->points[i], ring->points[(i + 1) % ring->n]))
      return FALSE;
  return TRUE;
}

void
ox_picture_lanes (const OxPicture *picture)
{
  const OxPlan *plan = picture->plan;
  g_autoptr (GArray) chalked = g_array_new (FALSE, FALSE, sizeof (Chalked));
  for (guint i = 0; i < plan->n_strips; i++)
    {
      Chalked one = chalk (&plan->strips[i]);
      g_array_append_val (chalked, one);
    }
  g_array_sort (chalked, compare);
  ox_picture_layer (picture, "lanes");
  ox_picture_item (picture, NULL, 0);
  for (guint i = 0, last; i < chalked->len; i = last + 1)
    {
      const Chalked *all = &g_array_index (chalked, Chalked, 0);
      for (last = i; last + 1 < chalked->len && goes_on (plan->job, &all[last], &all[last + 1]);)
        last++;
      ox_drawing_builder_line (picture->builder, OX_STYLE_LANE, all[i].from, all[last].to);
    }
}
