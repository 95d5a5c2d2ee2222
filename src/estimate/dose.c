/* Oxturn: estimate/dose
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/dose.h"

/* The lines slant by an angle that walls and lanes hardly have, so that no side of a strip runs along them. */
#define SLANT 0.5535743588970452 /* atan (golden ratio - 1) */
#define CROSSINGS 24000.0        /* sides of strips met by all lines together, about */
#define FEWEST 64
#define MOST 20000
#define GROUPS 4

typedef struct
{
  double at; /* along the line */
  int floor; /* +1 the target begins, -1 it ends */
  int strip; /* +1 a strip begins, -1 it ends */
} Event;

typedef struct
{
  double low, high; /* lines that it crosses */
  OxPoint points[4];
} Quad;

typedef struct
{
  GArray *quads; /* Quad, by low */
  GArray *sides; /* the target's sides as Quads of two points, by low */
  double low, high;
  double all; /* heights of all quads added up */
} Ground;

static int
compare_low (gconstpointer a, gconstpointer b)
{
  double x = ((const Quad *) a)->low, y = ((const Quad *) b)->low;
  return (x > y) - (x < y);
}

static int
compare_events (gconstpointer a, gconstpointer b)
{
  double x = ((const Event *) a)->at, y = ((const Event *) b)->at;
  return (x > y) - (x < y);
}

static void
add_turned (GArray *to, const OxPoint *points, guint n)
{
  double c = cos (SLANT), s = sin (SLANT);
  Quad quad = { INFINITY, -INFINITY, { { 0, 0 } } };
  for (guint i = 0; i < n; i++)
    {
      quad.points[i] = ox_point_turn (points[i], c, s);
      quad.low = MIN (quad.low, quad.points[i].y);
      quad.high = MAX (quad.high, quad.points[i].y);
    }
  g_array_append_val (to, quad);
}

static void
ground_init (Ground *ground, const OxPlan *plan, const OxRegion *target, guint coat)
{
  *ground = (Ground){ g_array_new (FALSE, FALSE, sizeof (Quad)), g_array_new (FALSE, FALSE, sizeof (Quad)), INFINITY,
                      -INFINITY, 0 };
  for (guint i = 0; i < plan->n_strips; i++)
    {
      OxPoint corners[4];
      if (plan->strips[i].coat != coat)
        continue;
      ox_strip_corners (&plan->strips[i], plan->job->machine->blast_length, corners);
      add_turned (ground->quads, corners, 4);
    }
  for (guint r = 0; r < target->n_rings; r++)
    {
      const OxRegionRing *ring = &target->rings[r];
      const OxPoint *points = target->points + ring->start;
      for (guint i = 0; i < ring->n; i++)
        add_turned (ground->sides, (OxPoint[]){ points[i], points[(i + 1) % ring->n] }, 2);
    }
  g_array_sort (ground->quads, compare_low);
  g_array_sort (ground->sides, compare_low);
  for (guint i = 0; i < ground->sides->len; i++)
    {
      const Quad *side = &g_array_index (ground->sides, Quad, i);
      ground->low = MIN (ground->low, side->low);
      ground->high = MAX (ground->high, side->high);
    }
  for (guint i = 0; i < ground->quads->len; i++)
    ground->all += g_array_index (ground->quads, Quad, i).high - g_array_index (ground->quads, Quad, i).low;
}

/* Where the segment crosses the line at height @y; a side belongs to the line at its lower end only. */
static gboolean
crossing (OxPoint a, OxPoint b, double y, double *x)
{
  if ((a.y <= y) == (b.y <= y))
    return FALSE;
  *x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
  return TRUE;
}

static void
add_strip (GArray *events, const Quad *quad, double y)
{
  double from = INFINITY, to = -INFINITY, x;
  for (guint i = 0; i < 4; i++)
    if (crossing (quad->points[i], quad->points[(i + 1) % 4], y, &x))
      {
        from = MIN (from, x);
        to = MAX (to, x);
      }
  if (from < to)
    {
      g_array_append_val (events, ((Event){ from, 0, 1 }));
      g_array_append_val (events, ((Event){ to, 0, -1 }));
    }
}

/* Lengths of the line within the target by how many strips lie over them. */
static void
measure (GArray *events, double lengths[OX_DOSE_LEVELS])
{
  int inside = 0, strips = 0;
  double last = 0;
  g_array_sort (events, compare_events);
  for (guint i = 0; i < events->len; i++)
    {
      const Event *event = &g_array_index (events, Event, i);
      if (inside)
        lengths[CLAMP (strips, 0, OX_DOSE_LEVELS - 1)] += event->at - last;
      inside ^= event->floor;
      strips += event->strip;
      last = event->at;
    }
}

/* Quads in order of their lower ends are taken up as the lines come to them and dropped when passed. */
static void
gather (GArray *from, guint *next, GArray *active, double y)
{
  while (*next < from->len && g_array_index (from, Quad, *next).low <= y)
    g_array_append_val (active, *next), (*next)++;
  guint kept = 0;
  for (guint i = 0; i < active->len; i++)
    {
      guint quad = g_array_index (active, guint, i);
      if (g_array_index (from, Quad, quad).high > y)
        g_array_index (active, guint, kept++) = quad;
    }
  g_array_set_size (active, kept);
}

static void
sweep (const Ground *ground, guint lines, double sums[GROUPS][OX_DOSE_LEVELS])
{
  double step = (ground->high - ground->low) / lines;
  guint next_quad = 0, next_side = 0;
  g_autoptr (GArray) quads = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) sides = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) events = g_array_new (FALSE, FALSE, sizeof (Event));
  for (guint line = 0; line < lines; line++)
    {
      double y = ground->low + (line + 0.5) * step, x;
      gather (ground->quads, &next_quad, quads, y);
      gather (ground->sides, &next_side, sides, y);
      g_array_set_size (events, 0);
      for (guint i = 0; i < sides->len; i++)
        {
          const Quad *side = &g_array_index (ground->sides, Quad, g_array_index (sides, guint, i));
          if (crossing (side->points[0], side->points[1], y, &x))
            g_array_append_val (events, ((Event){ x, 1, 0 }));
        }
      for (guint i = 0; i < quads->len; i++)
        add_strip (events, &g_array_index (ground->quads, Quad, g_array_index (quads, guint, i)), y);
      measure (events, sums[line % GROUPS]);
    }
}

/* Adds the areas of one coat over @target, which asks for it. */
static void
add_coat (OxDose *sum, const OxPlan *plan, const OxRegion *target, guint coat)
{
  OxDose dose = { { 0 }, 0 };
  double sums[GROUPS][OX_DOSE_LEVELS] = { { 0 } }, area = ox_region_area (target), found = 0;
  Ground ground;
  ground_init (&ground, plan, target, coat);
  if (area > 0)
    {
      double wanted = ground.all > 0 ? (ground.high - ground.low) * CROSSINGS / (2 * ground.all) : FEWEST;
      sweep (&ground, (guint) CLAMP (wanted, FEWEST, MOST) / GROUPS * GROUPS, sums);
    }
  for (guint g = 0; g < GROUPS; g++)
    for (guint k = 0; k < OX_DOSE_LEVELS; k++)
      found += sums[g][k];
  for (guint k = 0; k < OX_DOSE_LEVELS && found > 0; k++)
    {
      double least = INFINITY, most = 0;
      for (guint g = 0; g < GROUPS; g++)
        {
          dose.area[k] += sums[g][k] * area / found;
          least = MIN (least, sums[g][k] * GROUPS * area / found);
          most = MAX (most, sums[g][k] * GROUPS * area / found);
        }
      dose.error_m2 = MAX (dose.error_m2, most - least);
    }
  for (guint k = 0; k < OX_DOSE_LEVELS; k++)
    sum->area[k] += dose.area[k];
  sum->error_m2 += dose.error_m2;
  g_array_unref (ground.quads);
  g_array_unref (ground.sides);
}

OxDose
ox_dose_of (const OxPlan *plan)
{
  OxDose dose = { { 0 }, 0 };
  add_coat (&dose, plan, plan->target, 1);
  for (guint k = 1; k < plan->n_coats; k++)
    add_coat (&dose, plan, plan->coats[k], k + 1);
  return dose;
}
