/* Oxturn: plan/room - the best strips for one room, coat by coat.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/room.h"
#include "base/share.h"
#include "base/words.h"
#include "plan/amend.h"
#include <stdlib.h>

#define MAX_DIRECTIONS 4
#define SAME_DIRECTION 0.0087  /* half a degree */
#define ONE_WAY_LONGEST 14.0   /* m: on longer lanes a swing costs less than rolling back, whatever the machine */
#define SETTLE_ROUNDS 3
#define LEAST_WING 6.0         /* m that the sides must be long between which two wings are told apart */
#define WINGS_COST 1.01        /* two directions must save so much labour: they take more chalking */
#define CARRY_SECONDS 900.0    /* what it must save at least to carry the machine into a pocket that it cannot roll into */

typedef struct
{
  double angle;  /* modulo 180 degrees */
  double length; /* m of walls that run that way */
} Direction;

static int
compare_directions (const void *a, const void *b)
{
  const Direction *p = a, *q = b;
  if (p->length != q->length)
    return p->length > q->length ? -1 : 1;
  return (p->angle > q->angle) - (p->angle < q->angle);
}

static void
count_direction (GArray *directions, double angle, double length)
{
  for (guint i = 0; i < directions->len; i++)
    {
      Direction *direction = &g_array_index (directions, Direction, i);
      if (fabs (remainder (direction->angle - angle, G_PI)) < SAME_DIRECTION)
        {
          direction->length += length;
          return;
        }
    }
  Direction direction = { angle, length };
  g_array_append_val (directions, direction);
}

static double
side_angle (const OxRing *ring, guint i)
{
  OxPoint d = ox_point_sub (ring->points[(i + 1) % ring->n], ring->points[i]);
  double angle = fmod (atan2 (d.y, d.x) + G_PI, G_PI);
  return G_PI - angle < 1e-9 ? 0 : angle;
}

/* Directions to try, longest walls first. */
static GArray *
list_directions (const OxRoom *room)
{
  GArray *directions = g_array_new (FALSE, FALSE, sizeof (Direction));
  Direction one = { 0, 0 };
  switch (room->direction.kind)
    {
    case OX_DIRECTION_SIDE:
      one.angle = side_angle (room->ring, room->direction.side % room->ring->n);
      g_array_append_val (directions, one);
      return directions;
    case OX_DIRECTION_ANGLE:
      one.angle = room->direction.angle_deg * G_PI / 180;
      g_array_append_val (directions, one);
      return directions;
    case OX_DIRECTION_AUTO:
    default:
      break;
    }
  for (guint i = 0; i < room->ring->n; i++)
    count_direction (directions, side_angle (room->ring, i),
                     ox_point_distance (room->ring->points[i], room->ring->points[(i + 1) % room->ring->n]));
  qsort (directions->data, directions->len, sizeof (Direction), compare_directions);
  if (directions->len > MAX_DIRECTIONS)
    g_array_set_size (directions, MAX_DIRECTIONS);
  count_direction (directions, fmod (g_array_index (directions, Direction, 0).angle + G_PI / 2, G_PI), 0);
  return directions;
}

typedef struct
{
  int part;
  double saved; /* seconds of hand work less those of the strips */
} Pocket;

/* Drops strips in pockets that the machine cannot roll into, unless carrying it there pays. */
static void
drop_pockets (OxLayout *layout, const OxWays *ways)
{
  g_autoptr (GArray) pockets = g_array_new (FALSE, FALSE, sizeof (Pocket));
  g_autofree guint *pocket_of = g_new (guint, layout->drafts->len + 1);
  guint best = 0;
  for (guint i = 0; i < layout->drafts->len; i++)
    {
      const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
      const OxFrame *frame = g_ptr_array_index (layout->frames, draft->frame);
      int part = ox_ways_part (ways, ox_frame_to_floor (frame, (OxPoint) { draft->x0, draft->y }));
      double length = draft->x1 - draft->x0;
      double net = layout->machine->blast_width - layout->machine->min_overlap;
      guint k = 0;
      while (k < pockets->len && g_array_index (pockets, Pocket, k).part != part)
        k++;
      if (k == pockets->len)
        {
          Pocket pocket = { part, 0 };
          g_array_append_val (pockets, pocket);
        }
      g_array_index (pockets, Pocket, k).saved
          += length * net * ox_layout_hand_seconds (layout) - length / layout->speed * 60;
      pocket_of[i] = k;
    }
  for (guint k = 1; k < pockets->len; k++)
    if (g_array_index (pockets, Pocket, k).saved > g_array_index (pockets, Pocket, best).saved)
      best = k;
  for (guint i = layout->drafts->len; i > 0; i--)
    if (pocket_of[i - 1] != best && g_array_index (pockets, Pocket, pocket_of[i - 1]).saved < CARRY_SECONDS)
      ox_layout_remove (layout, i - 1);
}

static double
strip_seconds (const OxLayout *layout)
{
  double length = 0;
  for (guint i = 0; i < layout->drafts->len; i++)
    {
      const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
      length += draft->x1 - draft->x0;
    }
  return length / layout->speed * 60;
}

/* One way of doing the room: lays its strips and says what labour they take, in seconds at a guess; FALSE when cancelled. */
static gboolean
try_work (OxLayout *layout, const OxWays *ways, const OxRun *run, double *labour)
{
  layout->one_heading = !ox_ways_has_turns (ways);
  if (ox_layout_mains (layout))
    {
      ox_layout_zones (layout);
      ox_layout_trim (layout);
    }
  gboolean finished = ox_layout_finish (layout, run);
  ox_layout_trim (layout);
  /* Cutting may show strips their better place, but it ends: what is laid anew stands off already. */
  for (guint round = 0; finished && round < 2 && ox_layout_cut_noses (layout); round++)
    {
      finished = ox_layout_finish (layout, run);
      ox_layout_trim (layout);
    }
  if (!finished)
    return FALSE;
  drop_pockets (layout, ways);
  if (ox_run_cancelled (run, NULL))
    return FALSE;
  g_autoptr (GArray) legs = ox_legs_new (layout, ways);
  *labour = strip_seconds (layout) + ox_cover_left (layout->cover) * ox_layout_hand_seconds (layout)
            + ox_order_legs (legs, layout->machine, run);
  return TRUE;
}

/* How far a room is: of its steps, those of the coats before, and of the present one first one a trial, then one each of the last touches. */
typedef struct
{
  OxRun *run; /* (nullable) */
  guint coats, coat, trials;
  gint touches; /* of the present coat that are done: trials and last touches */
  gint steps;   /* that the run was told of */
} Progress;

/* Directions and ways of working, tried at the same time; each has its own place for what comes of it. */
typedef struct
{
  double angle;
  OxWork work;
  OxLayout *layout; /* NULL when cancelled */
  double labour;
  gboolean has_wings;
  OxWings wings;
} Trial;

typedef struct
{
  const OxFloor *floor;
  const OxCoat *coat;
  const OxJob *job;
  const OxWays *ways;
  Progress *progress;
  GArray *trials; /* Trial */
} Trials;

#define LAST_TOUCHES 4

static void
touch (Progress *progress, const char *doing)
{
  if (progress->run == NULL)
    return;
  guint touches = (guint) g_atomic_int_add (&progress->touches, 1) + 1, all = progress->trials + LAST_TOUCHES;
  gint steps = (gint) (OX_ROOM_STEPS * (progress->coat * all + MIN (touches, all)) / (progress->coats * all));
  g_atomic_pointer_set (&progress->run->doing, doing);
  for (gint told = g_atomic_int_get (&progress->steps); told < steps; told = g_atomic_int_get (&progress->steps))
    if (g_atomic_int_compare_and_exchange (&progress->steps, told, steps))
      g_atomic_int_add (&progress->run->done, steps - told);
}

/* The last touches on the layout that was chosen, and its order of work. */
static OxRoomPlan *
finish_plan (OxLayout *layout, const Trials *trials)
{
  OxRoomPlan *plan = g_new0 (OxRoomPlan, 1);
  ox_layout_close_slots (layout);
  touch (trials->progress, N_ ("closing slots between strips"));
  ox_layout_repair (layout);
  ox_layout_prune (layout);
  touch (trials->progress, N_ ("closing slots between strips"));
  /* What was taken back may have parted strips, and what moves may cover others. */
  ox_layout_close_slots (layout);
  for (guint round = 0; round < SETTLE_ROUNDS && ox_layout_settle (layout); round++)
    ox_layout_repair (layout);
  ox_layout_prune (layout);
  touch (trials->progress, N_ ("checking strips"));
  ox_layout_amend (layout, trials->floor, trials->job);
  plan->room = layout->room;
  plan->coat = layout->coat;
  plan->angle = ((const OxFrame *) g_ptr_array_index (layout->frames, 0))->angle;
  plan->work = layout->work;
  plan->first_y = layout->first_y;
  plan->spacing = layout->spacing;
  plan->lanes = layout->n_main_lanes;
  plan->wing_angle = layout->wing_angle;
  plan->wing_first_y = layout->wing_first_y;
  plan->wing_spacing = layout->wing_spacing;
  plan->wing_lanes = layout->n_wing_lanes;
  plan->legs = ox_legs_new (layout, trials->ways);
  touch (trials->progress, N_ ("putting strips in order"));
  ox_order_legs (plan->legs, layout->machine, trials->progress->run);
  return plan;
}

static gboolean
worth_one_way (const OxRegion *target, double angle)
{
  OxBox box = OX_BOX_EMPTY;
  for (guint i = 0; i < target->n_points; i++)
    ox_box_add (&box, ox_point_turn (target->points[i], cos (angle), -sin (angle)));
  return box.x1 - box.x0 < ONE_WAY_LONGEST;
}

static void
try_one (guint i, gpointer data)
{
  const Trials *trials = data;
  Trial *trial = &g_array_index (trials->trials, Trial, i);
  g_autoptr (OxLayout) layout = ox_layout_new (trials->floor, trials->coat, trials->job, trial->angle, trial->work);
  layout->run = trials->progress->run;
  layout->wings = trial->has_wings ? &trial->wings : NULL;
  if (try_work (layout, trials->ways, layout->run, &trial->labour))
    {
      if (trial->has_wings)
        trial->labour *= WINGS_COST;
      layout->wings = NULL;
      trial->layout = g_steal_pointer (&layout);
    }
  touch (trials->progress, N_ ("laying strips"));
}

static void
clear_trial (gpointer data)
{
  Trial *trial = data;
  g_clear_pointer (&trial->layout, ox_layout_free);
}

/* Whether a way of working is tried; without room to swing, all coats have the heading of the first one. */
static gboolean
is_tried (const Trials *trials, double angle, OxWork work, const OxRoomPlan *first)
{
  if (!ox_ways_has_turns (trials->ways))
    return work != OX_WORK_SERPENTINE && (first == NULL || work == first->work);
  return work == OX_WORK_SERPENTINE || worth_one_way (trials->coat->target, angle);
}

static void
list_trials (Trials *trials, const GArray *directions, const OxRoomPlan *first)
{
  for (guint d = 0; d < directions->len; d++)
    for (OxWork work = OX_WORK_SERPENTINE; work <= OX_WORK_BACKWARD; work++)
      {
        Trial trial = { .angle = g_array_index (directions, Direction, d).angle, .work = work, .labour = INFINITY };
        if (is_tried (trials, trial.angle, work, first))
          g_array_append_val (trials->trials, trial);
      }
}

static OxPoint
corner_at (const OxRing *ring, guint i)
{
  return ring->points[i % ring->n];
}

/* The corner that stands into the room between the longest two sides, G_MAXUINT: none between long ones. */
static guint
wing_corner (const OxRing *ring)
{
  double most = LEAST_WING, turn = ox_ring_area (ring) < 0 ? -1 : 1;
  guint best = G_MAXUINT;
  for (guint i = 0; i < ring->n; i++)
    {
      OxPoint in = ox_point_sub (corner_at (ring, i), corner_at (ring, i + ring->n - 1)), out = ox_point_sub (corner_at (ring, i + 1), corner_at (ring, i));
      double least = sqrt (MIN (ox_point_dot (in, in), ox_point_dot (out, out)));
      if (turn * ox_point_cross (in, out) >= 0 || least <= most)
        continue;
      most = least;
      best = i;
    }
  return best;
}

/* The room is parted along the side from @at to @along and the line on from there: on the side of @wing lanes run from there to @at, else along the line. */
static void
add_wings (GArray *list, OxPoint at, OxPoint along, OxPoint wing)
{
  Trial trial = { .work = OX_WORK_SERPENTINE, .labour = INFINITY, .has_wings = TRUE };
  OxPoint u = ox_point_sub (along, at), v = ox_point_sub (at, wing);
  OxPoint normal = { -u.y / ox_point_distance (at, along), u.x / ox_point_distance (at, along) };
  if (ox_point_dot (normal, v) > 0)
    normal = ox_point_scale (normal, -1);
  double offset = ox_point_dot (normal, at);
  trial.angle = fmod (atan2 (v.y, v.x) + 2 * G_PI, G_PI);
  trial.wings.angle = fmod (atan2 (u.y, u.x) + 2 * G_PI, G_PI);
  trial.wings.main = (OxPart){ normal, offset };
  trial.wings.other = (OxPart){ ox_point_scale (normal, -1), -offset };
  g_array_append_val (list, trial);
}

/* Two wings may have a direction each. */
static void
list_wings (const Trials *trials, const OxRoom *room)
{
  guint i = wing_corner (room->ring);
  if (room->direction.kind != OX_DIRECTION_AUTO || i == G_MAXUINT || !ox_ways_has_turns (trials->ways))
    return;
  OxPoint before = corner_at (room->ring, i + room->ring->n - 1), at = corner_at (room->ring, i), after = corner_at (room->ring, i + 1);
  add_wings (trials->trials, at, after, before);
  add_wings (trials->trials, at, before, after);
}

/* The trial with the fewest labour hours among those along @angle, NAN: among all; NULL when there is none. */
static Trial *
best_trial (const Trials *trials, double angle)
{
  Trial *best = NULL;
  for (guint i = 0; i < trials->trials->len; i++)
    {
      Trial *trial = &g_array_index (trials->trials, Trial, i);
      if ((isnan (angle) || trial->angle == angle) && (best == NULL || trial->labour < best->labour - 1e-6))
        best = trial;
    }
  return best;
}

/* Directions of a coat after the first: turned from the one before, and that of the first. */
static GArray *
turned_directions (const OxRoom *room, guint coat, double first, gboolean turns)
{
  GArray *directions = g_array_new (FALSE, FALSE, sizeof (Direction));
  if (turns)
    count_direction (directions, fmod (first + (coat - 1) * room->coat_turn_deg * G_PI / 180 + G_PI, G_PI), 0);
  count_direction (directions, first, 0);
  return directions;
}

/* NULL when cancelled; @first: (nullable): the first coat. */
static OxRoomPlan *
plan_coat (Trials *trials, const OxRoomPlan *first)
{
  const OxRoom *room = trials->job->rooms[trials->coat->room];
  gboolean turns = ox_ways_has_turns (trials->ways);
  g_autoptr (GArray) directions
      = first == NULL ? list_directions (room) : turned_directions (room, trials->coat->coat, first->angle, turns);
  g_autoptr (GArray) list = g_array_new (FALSE, FALSE, sizeof (Trial));
  trials->trials = list;
  g_array_set_clear_func (list, clear_trial);
  list_trials (trials, directions, first);
  if (first == NULL)
    list_wings (trials, room);
  trials->progress->trials = list->len;
  trials->progress->touches = 0;
  ox_share (list->len, try_one, trials);
  for (guint i = 0; i < list->len; i++)
    if (g_array_index (list, Trial, i).layout == NULL)
      return NULL;
  Trial *best = best_trial (trials, NAN);
  Trial *turned = first == NULL ? NULL : best_trial (trials, g_array_index (directions, Direction, 0).angle);
  if (turned != NULL && turned->labour < OX_ROOM_MOST_TURN * best->labour)
    best = turned;
  return finish_plan (best->layout, trials);
}

GPtrArray *
ox_room_plans_new (const OxFloor *floor, guint room, const OxJob *job, const OxWays *ways, OxRun *run)
{
  Progress progress = { .run = run };
  g_autoptr (GPtrArray) plans = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_room_plan_free);
  for (guint i = 0; i < floor->n_coats; i++)
    progress.coats += floor->coats[i].room == room;
  for (guint i = 0; i < floor->n_coats; i++)
    {
      if (floor->coats[i].room != room)
        continue;
      Trials trials = { floor, &floor->coats[i], job, ways, &progress, NULL };
      OxRoomPlan *plan = plan_coat (&trials, plans->len > 0 ? g_ptr_array_index (plans, 0) : NULL);
      if (plan == NULL)
        return NULL;
      g_ptr_array_add (plans, plan);
      progress.coat++;
    }
  return g_steal_pointer (&plans);
}

void
ox_room_plan_free (OxRoomPlan *plan)
{
  if (plan == NULL)
    return;
  g_array_unref (plan->legs);
  g_free (plan);
}
