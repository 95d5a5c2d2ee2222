/* Oxturn: sheets/dose-map - how often the floor is blasted, as a picture: not at all, once, twice, three times and more.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * No outlines are united: what a strip covers is painted first, over it what two strips of one coat share, over that what
 * three share. All of it is convex, so that it is cut by halves of the plane.
 */
#include "sheets/picture.h"

#define MOST_CORNERS 12       /* a quadrangle cut by two others */
#define LEAST_AREA 1e-5       /* m2; less is the last bit of two sides that only touch */
#define CELLS 4096            /* of the grid in which neighbours are looked for, about */
#define LEAST_CELL 1.0        /* m */

typedef struct
{
  guint n;
  OxPoint points[MOST_CORNERS];
} Patch;

typedef struct
{
  const OxPlan *plan;
  OxPoint (*quads)[4]; /* what each strip covers */
  OxBox box;
  double cell;
  guint nx, ny;
} Ground;

typedef struct
{
  guint cell, strip;
} Entry;

typedef struct
{
  guint a, b; /* a < b */
} Pair;

static double
area_of (const Patch *patch)
{
  double twice = 0;
  for (guint i = 0; i < patch->n; i++)
    twice += ox_point_cross (ox_point_sub (patch->points[i], patch->points[0]),
                             ox_point_sub (patch->points[(i + 1) % patch->n], patch->points[0]));
  return twice / 2;
}

/* What of @patch lies left of the line from @a to @b. */
static Patch
cut (const Patch *patch, OxPoint a, OxPoint b)
{
  Patch left = { 0 };
  OxPoint along = ox_point_sub (b, a);
  for (guint i = 0; i < patch->n; i++)
    {
      OxPoint p = patch->points[i], q = patch->points[(i + 1) % patch->n];
      double u = ox_point_cross (along, ox_point_sub (p, a)), v = ox_point_cross (along, ox_point_sub (q, a));
      if (u >= 0 && left.n < MOST_CORNERS)
        left.points[left.n++] = p;
      if ((u < 0) != (v < 0) && left.n < MOST_CORNERS)
        left.points[left.n++] = ox_point_add (p, ox_point_scale (ox_point_sub (q, p), u / (u - v)));
    }
  return left;
}

/* FALSE where there is nothing to speak of */
static gboolean
share (const Patch *patch, const OxPoint quad[4], Patch *common)
{
  *common = *patch;
  for (guint i = 0; i < 4 && common->n > 2; i++)
    *common = cut (common, quad[i], quad[(i + 1) % 4]);
  return common->n > 2 && area_of (common) > LEAST_AREA;
}

static Patch
patch_of (const OxPoint quad[4])
{
  Patch patch = { .n = 4 };
  for (guint i = 0; i < 4; i++)
    patch.points[i] = quad[i];
  return patch;
}

static void
ground_init (Ground *ground, const OxPlan *plan)
{
  *ground = (Ground){ .plan = plan, .box = OX_BOX_EMPTY };
  ground->quads = g_malloc_n (plan->n_strips + 1, sizeof *ground->quads);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      ox_strip_corners (&plan->strips[i], plan->job->machine->blast_length, ground->quads[i]);
      for (guint k = 0; k < 4; k++)
        ox_box_add (&ground->box, ground->quads[i][k]);
    }
  double width = ground->box.x1 - ground->box.x0, height = ground->box.y1 - ground->box.y0;
  ground->cell = plan->n_strips > 0 ? MAX (sqrt (width * height / CELLS), LEAST_CELL) : LEAST_CELL;
  ground->nx = plan->n_strips > 0 ? (guint) (width / ground->cell) + 1 : 0;
  ground->ny = plan->n_strips > 0 ? (guint) (height / ground->cell) + 1 : 0;
}

static void
add_cells (const Ground *ground, guint strip, GArray *entries)
{
  Patch patch = patch_of (ground->quads[strip]);
  OxBox box = OX_BOX_EMPTY;
  for (guint i = 0; i < 4; i++)
    ox_box_add (&box, patch.points[i]);
  guint i0 = (guint) ((box.x0 - ground->box.x0) / ground->cell), i1 = (guint) ((box.x1 - ground->box.x0) / ground->cell);
  guint j0 = (guint) ((box.y0 - ground->box.y0) / ground->cell), j1 = (guint) ((box.y1 - ground->box.y0) / ground->cell);
  for (guint j = j0; j <= j1; j++)
    for (guint i = i0; i <= i1; i++)
      {
        double x = ground->box.x0 + i * ground->cell, y = ground->box.y0 + j * ground->cell;
        const OxPoint corners[4]
            = { { x, y }, { x + ground->cell, y }, { x + ground->cell, y + ground->cell }, { x, y + ground->cell } };
        Patch common;
        if (share (&patch, corners, &common))
          g_array_append_val (entries, ((Entry){ j * ground->nx + i, strip }));
      }
}

static int
compare_entries (gconstpointer a, gconstpointer b)
{
  const Entry *p = a, *q = b;
  if (p->cell != q->cell)
    return p->cell < q->cell ? -1 : 1;
  return (p->strip > q->strip) - (p->strip < q->strip);
}

static int
compare_pairs (gconstpointer a, gconstpointer b)
{
  const Pair *p = a, *q = b;
  if (p->a != q->a)
    return p->a < q->a ? -1 : 1;
  return (p->b > q->b) - (p->b < q->b);
}

static gboolean
meet (const Ground *ground, guint a, guint b)
{
  Patch patch = patch_of (ground->quads[a]), common;
  return ground->plan->strips[a].coat == ground->plan->strips[b].coat && share (&patch, ground->quads[b], &common);
}

/* (transfer full): pairs of strips of one coat that share floor, each once, in order */
static GArray *
find_pairs (const Ground *ground)
{
  g_autoptr (GArray) entries = g_array_new (FALSE, FALSE, sizeof (Entry));
  GArray *pairs = g_array_new (FALSE, FALSE, sizeof (Pair));
  guint kept = 0;
  for (guint i = 0; i < ground->plan->n_strips; i++)
    add_cells (ground, i, entries);
  g_array_sort (entries, compare_entries);
  for (guint i = 0; i < entries->len; i++)
    for (guint j = i + 1; j < entries->len; j++)
      {
        const Entry *p = &g_array_index (entries, Entry, i), *q = &g_array_index (entries, Entry, j);
        if (p->cell != q->cell)
          break;
        if (meet (ground, p->strip, q->strip))
          g_array_append_val (pairs, ((Pair){ p->strip, q->strip }));
      }
  g_array_sort (pairs, compare_pairs);
  for (guint i = 0; i < pairs->len; i++)
    if (i == 0 || compare_pairs (&g_array_index (pairs, Pair, kept - 1), &g_array_index (pairs, Pair, i)) != 0)
      g_array_index (pairs, Pair, kept++) = g_array_index (pairs, Pair, i);
  g_array_set_size (pairs, kept);
  return pairs;
}

static void
append (const OxPicture *picture, OxStyle style, const Patch *patch)
{
  ox_drawing_builder_polygon (picture->builder, style, patch->points, patch->n);
}

static void
append_twice (const OxPicture *picture, const Ground *ground, const GArray *pairs)
{
  for (guint i = 0; i < pairs->len; i++)
    {
      const Pair *pair = &g_array_index (pairs, Pair, i);
      Patch patch = patch_of (ground->quads[pair->a]), common;
      if (share (&patch, ground->quads[pair->b], &common))
        append (picture, OX_STYLE_DOSE_TWICE, &common);
    }
}

/* Three strips share floor only where each two of them do: pairs of the same first strip are tried against each other. */
static void
append_more (const OxPicture *picture, const Ground *ground, const GArray *pairs)
{
  for (guint i = 0; i < pairs->len; i++)
    {
      const Pair *pair = &g_array_index (pairs, Pair, i);
      Patch patch = patch_of (ground->quads[pair->a]), common, all;
      if (!share (&patch, ground->quads[pair->b], &common))
        continue;
      for (guint j = i + 1; j < pairs->len && g_array_index (pairs, Pair, j).a == pair->a; j++)
        if (share (&common, ground->quads[g_array_index (pairs, Pair, j).b], &all))
          append (picture, OX_STYLE_DOSE_MORE, &all);
    }
}

void
ox_picture_dose (const OxPicture *picture)
{
  const OxPlan *plan = picture->plan;
  Ground ground;
  ground_init (&ground, plan);
  g_autoptr (GArray) pairs = find_pairs (&ground);
  ox_picture_layer (picture, "dose");
  ox_picture_item (picture, NULL, 0);
  ox_drawing_builder_region (picture->builder, OX_STYLE_DOSE_NONE, plan->target);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      g_autofree char *id = g_strdup_printf ("strip-%u", plan->strips[i].order);
      Patch patch = patch_of (ground.quads[i]);
      ox_picture_item (picture, id, 0);
      append (picture, OX_STYLE_DOSE_ONCE, &patch);
    }
  ox_picture_item (picture, NULL, 0);
  append_twice (picture, &ground, pairs);
  append_more (picture, &ground, pairs);
  g_free (ground.quads);
}
