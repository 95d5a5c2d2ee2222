/* Oxturn: job/check-floor - the rules that concern several items of the floor at once.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/check-private.h"
#include "base/words.h"
#include <stdlib.h>

/* Rooms may share a side. Where a slanted shared side was snapped to the grid differently in each of them they overlap
 * by a sliver as thick as the grid is fine; what is thicker on average is a real overlap. */
#define SLIVER (2.5 * OX_GRID)

/* A doorway counts as touching a room up to this distance, m. */
#define TOUCH 0.002

/* ox_region_label_point() finds a circle at least this share of the largest one. */
#define LABEL_SHARE 0.95

typedef struct
{
  OxBox box;
  guint index;
} BoxedRoom;

static int
compare_left (gconstpointer a, gconstpointer b)
{
  const BoxedRoom *p = a;
  const BoxedRoom *q = b;
  if (p->box.x0 != q->box.x0)
    return p->box.x0 < q->box.x0 ? -1 : 1;
  return p->index < q->index ? -1 : 1;
}

static gboolean
boxes_meet (OxBox a, OxBox b)
{
  return a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;
}

/* (transfer full) (nullable): the first part of the common floor that is more than a sliver */
static OxRegion *
find_common (const OxRing *a, const OxRing *b)
{
  g_autoptr (OxRegion) one = ox_region_new_ring (a);
  g_autoptr (OxRegion) other = ox_region_new_ring (b);
  g_autoptr (OxRegion) common = ox_region_intersection (one, other);
  for (guint i = 0; i < common->n_parts; i++)
    {
      g_autoptr (OxRegion) part = ox_region_get_part (common, i);
      if (2 * ox_region_area (part) > SLIVER * ox_region_perimeter (part))
        return g_steal_pointer (&part);
    }
  return NULL;
}

static void
check_pair (const OxRoom *a, const OxRoom *b, GPtrArray *findings)
{
  g_autoptr (OxRegion) common = find_common (a->ring, b->ring);
  if (!common)
    return;
  OxPoint at = ox_region_label_point (common, NULL);
  ox_finding_add (
      findings, OX_FINDING_ERROR, b->id, &at,
      g_strdup_printf (_ ("Rooms %s and %s overlap by %.3f m² near %.3f, %.3f; rooms may share sides but no floor"),
                       a->id, b->id, ox_region_area (common), at.x, at.y));
}

void
ox_check_overlaps (const OxJob *job, const gboolean *sound, GPtrArray *findings)
{
  g_autofree BoxedRoom *rooms = g_new (BoxedRoom, job->n_rooms + 1);
  guint n = 0;
  for (guint i = 0; i < job->n_rooms; i++)
    if (sound[i])
      rooms[n++] = (BoxedRoom){ ox_ring_box (job->rooms[i]->ring), i };
  qsort (rooms, n, sizeof *rooms, compare_left);
  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n && rooms[j].box.x0 <= rooms[i].box.x1; j++)
      if (boxes_meet (rooms[i].box, rooms[j].box))
        {
          guint a = MIN (rooms[i].index, rooms[j].index);
          guint b = MAX (rooms[i].index, rooms[j].index);
          check_pair (job->rooms[a], job->rooms[b], findings);
        }
}

static gboolean
sides_meet (const OxRing *a, const OxRing *b)
{
  OxBox box = ox_ring_box (b);
  for (guint i = 0; i < a->n; i++)
    {
      OxBox side = OX_BOX_EMPTY;
      ox_box_add (&side, a->points[i]);
      ox_box_add (&side, a->points[(i + 1) % a->n]);
      if (!boxes_meet (side, box))
        continue;
      for (guint j = 0; j < b->n; j++)
        if (ox_segments_cross (a->points[i], a->points[(i + 1) % a->n], b->points[j], b->points[(j + 1) % b->n]))
          return TRUE;
    }
  return FALSE;
}

/* Whether two outlines have a point in common; both have boxes that meet. */
static gboolean
rings_meet (const OxRing *a, const OxRing *b)
{
  return ox_ring_contains (a, b->points[0]) || ox_ring_contains (b, a->points[0]) || sides_meet (a, b);
}

static gboolean
meets_a_room (const OxJob *job, const OxBox *boxes, const OxRing *ring)
{
  OxBox box = ox_ring_box (ring);
  for (guint i = 0; i < job->n_rooms; i++)
    if (boxes_meet (boxes[i], box) && rings_meet (job->rooms[i]->ring, ring))
      return TRUE;
  return FALSE;
}

static OxBox *
room_boxes (const OxJob *job)
{
  OxBox *boxes = g_new (OxBox, job->n_rooms + 1);
  for (guint i = 0; i < job->n_rooms; i++)
    boxes[i] = ox_ring_box (job->rooms[i]->ring);
  return boxes;
}

/* What is of no use beside the floor. */
typedef struct
{
  gconstpointer item;
  const char *id;
  const OxRing *ring;
  const char *lies, *would_lie; /* with the id in them */
} Lying;

static void
add_obstacles (const OxJob *job, GArray *all)
{
  for (guint i = 0; i < job->n_obstacles; i++)
    {
      const OxObstacle *obstacle = job->obstacles[i];
      Lying lying = { obstacle, obstacle->id, obstacle->shape.ring, N_ ("Obstacle %s lies outside every room"),
                      N_ ("Obstacle %s would lie outside every room; keep a part of it on the floor") };
      g_array_append_val (all, lying);
    }
}

static void
add_areas (const OxJob *job, GArray *all)
{
  for (guint i = 0; i < job->n_conditions; i++)
    {
      const OxCondition *condition = job->conditions[i];
      Lying lying = { condition, condition->id, condition->ring, N_ ("Condition area %s lies outside every room"),
                      N_ ("Condition area %s would lie outside every room; keep a part of it on the floor") };
      g_array_append_val (all, lying);
    }
  for (guint i = 0; i < job->n_excluded; i++)
    {
      const OxExcluded *excluded = job->excluded[i];
      Lying lying = { excluded, excluded->id, excluded->ring, N_ ("Excluded area %s lies outside every room"),
                      N_ ("Excluded area %s would lie outside every room; keep a part of it on the floor") };
      g_array_append_val (all, lying);
    }
}

static GArray *
list_lying (const OxJob *job)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (Lying));
  add_obstacles (job, all);
  add_areas (job, all);
  return all;
}

/* (nullable): the one with this id; most have the same place as before */
static const Lying *
find_lying (const GArray *all, const char *id, guint place)
{
  if (place < all->len && strcmp (g_array_index (all, Lying, place).id, id) == 0)
    return &g_array_index (all, Lying, place);
  for (guint i = 0; i < all->len; i++)
    if (strcmp (g_array_index (all, Lying, i).id, id) == 0)
      return &g_array_index (all, Lying, i);
  return NULL;
}

/* @text has a %s for the id. */
static void
add_lying (const Lying *lying, OxFindingKind kind, const char *text, GPtrArray *findings)
{
  g_autoptr (GString) sentence = g_string_new (_ (text));
  g_string_replace (sentence, "%s", lying->id, 1);
  ox_finding_add (findings, kind, lying->id, &lying->ring->points[0],
                  g_string_free (g_steal_pointer (&sentence), FALSE));
}

void
ox_check_left_rooms (const OxJob *old, const OxJob *job, GPtrArray *findings)
{
  g_autofree OxBox *boxes = room_boxes (job);
  g_autofree OxBox *old_boxes = room_boxes (old);
  g_autoptr (GArray) all = list_lying (job);
  g_autoptr (GArray) old_all = list_lying (old);
  for (guint i = 0; job->n_rooms > 0 && i < all->len; i++)
    {
      const Lying *lying = &g_array_index (all, Lying, i);
      const Lying *before = find_lying (old_all, lying->id, i);
      if ((before && before->item == lying->item) || meets_a_room (job, boxes, lying->ring)
          || (before && !meets_a_room (old, old_boxes, before->ring)))
        continue;
      add_lying (lying, OX_FINDING_ERROR, lying->would_lie, findings);
    }
}

static double
body_width (const OxMachine *machine)
{
  return machine->left + machine->right + 2 * machine->wall_gap;
}

static double
body_length (const OxMachine *machine)
{
  return machine->rear + machine->front + machine->wall_gap;
}

/* A body that fits at any heading leaves room for a circle as wide as its narrower side. Open sides let it overrun, so
 * a room with one is passed over. */
static void
notice_narrow_room (const OxRoom *room, const OxMachine *machine, GPtrArray *findings)
{
  for (guint i = 0; i < room->ring->n; i++)
    if (room->sides[i].kind == OX_SIDE_OPEN)
      return;
  double needed = MIN (body_width (machine), body_length (machine));
  double radius;
  g_autoptr (OxRegion) region = ox_region_new_ring (room->ring);
  OxPoint at = ox_region_label_point (region, &radius);
  if (2 * radius >= LABEL_SHARE * needed)
    return;
  ox_finding_add (
      findings, OX_FINDING_NOTICE, room->id, &at,
      g_strdup_printf (_ ("Room %s is too narrow for the machine, which needs %.2f m; all of it is edge work"),
                       room->id, needed));
}

static void
notice_doorway (const OxJob *job, const OxBox *boxes, const OxDoorway *doorway, GPtrArray *findings)
{
  OxPoint middle = ox_point_scale (ox_point_add (doorway->a, doorway->b), 0.5);
  double width = ox_point_distance (doorway->a, doorway->b);
  double needed = body_width (job->machine);
  if (width < needed)
    ox_finding_add (findings, OX_FINDING_NOTICE, doorway->id, &middle,
                    g_strdup_printf (_ ("Doorway %s is %.3f m wide; the machine needs %.3f m to pass"), doorway->id,
                                     width, needed));
  OxDoorway deeper = *doorway;
  deeper.depth += 2 * TOUCH;
  g_autoptr (OxRing) ring = ox_doorway_ring (&deeper);
  if (!meets_a_room (job, boxes, ring))
    ox_finding_add (findings, OX_FINDING_NOTICE, doorway->id, &middle,
                    g_strdup_printf (_ ("Doorway %s touches no room"), doorway->id));
}

void
ox_check_notices (const OxJob *job, GPtrArray *findings)
{
  g_autofree OxBox *boxes = room_boxes (job);
  for (guint i = 0; i < job->n_rooms; i++)
    notice_narrow_room (job->rooms[i], job->machine, findings);
  g_autoptr (GArray) all = list_lying (job);
  for (guint i = 0; i < all->len; i++)
    {
      const Lying *lying = &g_array_index (all, Lying, i);
      if (!meets_a_room (job, boxes, lying->ring))
        add_lying (lying, OX_FINDING_NOTICE, lying->lies, findings);
    }
  for (guint i = 0; i < job->n_doorways; i++)
    notice_doorway (job, boxes, job->doorways[i], findings);
}
