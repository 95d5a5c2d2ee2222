/* Oxturn: plan/make - makes a plan: rooms one by one, then moves, leftovers and totals.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/chalk.h"
#include "plan/plan.h"
#include "base/notice.h"
#include "base/share.h"
#include "base/stop.h"
#include "base/words.h"
#include "job/check.h"
#include "plan/done.h"
#include "plan/hook-private.h"
#include "plan/leftover.h"
#include "plan/limit.h"
#include "plan/moves.h"
#include "plan/room.h"
#include "plan/sequence.h"
#include "plan/station.h"
#include "plan/tether.h"
#include "plan/verify.h"
#include "trade/production.h"

#define TURNED 0.001 /* radians: a coat whose direction is off by more was laid along another one */
#define FINDINGS 5 /* things found once the strips are there */

typedef struct
{
  OxPlan *plan;
  OxFloor *floor;
  const OxFloor *laying; /* the same with the coats that are left to lay */
  GArray *kept;          /* OxStrip: done ones that stay as they are */
  OxWays *ways;
  GPtrArray **rooms; /* OxRoomPlan, coat by coat, of each room */
  const OxStrip *placed; /* (nullable): the strips as they were numbered before, with what serves them */
  guint *places;         /* where they are now */
  GPtrArray *notices;
  OxPlanHook hook; /* (nullable) */
  gpointer hook_data;
} Making;

static void
reach_stage (const Making *making, OxPlanStage stage)
{
  if (making->hook != NULL)
    making->hook (making->plan, stage, making->hook_data);
}

static gint
making_steps (const Making *making)
{
  return (gint) making->plan->job->n_rooms * OX_ROOM_STEPS + FINDINGS + 1;
}

static gboolean
job_is_sound (const OxJob *job, GError **error)
{
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  for (guint i = 0; i < findings->len; i++)
    {
      const OxFinding *finding = g_ptr_array_index (findings, i);
      if (finding->kind != OX_FINDING_ERROR)
        continue;
      g_set_error_literal (error, OX_PLAN_ERROR, OX_PLAN_ERROR_BAD_JOB, finding->text);
      return FALSE;
    }
  return TRUE;
}

typedef struct
{
  Making *making;
  OxRun *run;
} Rooms;

static void
plan_room (guint i, gpointer data)
{
  Rooms *rooms = data;
  const Making *making = rooms->making;
  if (ox_run_cancelled (rooms->run, NULL))
    return;
  making->rooms[i] = ox_room_plans_new (making->laying, i, making->plan->job, making->ways, rooms->run);
}

static gboolean
has_kept (const Making *making, const OxRoomPlan *coat)
{
  for (guint i = 0; i < making->kept->len; i++)
    {
      const OxStrip *strip = &g_array_index (making->kept, OxStrip, i);
      if (strip->room == coat->room && strip->coat == coat->coat)
        return TRUE;
    }
  return FALSE;
}

/* What a person must be told of a room's strips. */
static void
tell_of_room (const Making *making, guint r)
{
  const OxRoom *room = making->plan->job->rooms[r];
  const OxRoomPlan *first = g_ptr_array_index (making->rooms[r], 0);
  for (guint k = 0; k < making->rooms[r]->len; k++)
    {
      const OxRoomPlan *coat = g_ptr_array_index (making->rooms[r], k);
      g_autofree char *number = g_strdup_printf ("%u", coat->coat);
      double turn = coat->angle - first->angle - (coat->coat - 1) * room->coat_turn_deg * G_PI / 180;
      if (coat->legs->len == 0 && has_kept (making, coat))
        continue;
      if (coat->legs->len == 0 && k == 0)
        g_ptr_array_add (making->notices, ox_notice_new (N_("%s: no strip of this machine fits or pays; all of it is edge work"), ox_room_title (room), NULL));
      else if (coat->legs->len == 0)
        g_ptr_array_add (making->notices, ox_notice_new (N_("%s: no strip of coat %s fits or pays; what asks for it is edge work"), ox_room_title (room), number, NULL));
      else if (fabs (remainder (turn, G_PI)) > TURNED)
        g_ptr_array_add (making->notices, ox_notice_new (N_("%s: coat %s runs along the lanes of coat 1; there is too little room for strips across them"),
                                                         ox_room_title (room), number, NULL));
    }
}

static gboolean
plan_rooms (Making *making, OxRun *run)
{
  const OxJob *job = making->plan->job;
  Rooms rooms = { making, run };
  ox_run_step (run, N_("laying strips"), 0, making_steps (making));
  ox_share (job->n_rooms, plan_room, &rooms);
  if (ox_run_cancelled (run, NULL))
    return FALSE;
  for (guint k = 0; k < job->n_rooms; k++)
    tell_of_room (making, making->floor->by_place[k]);
  return TRUE;
}

/* Whether lanes are numbered against the y of the main frame. */
static gboolean
counts_down (const Making *making, const OxRoomPlan *room)
{
  const OxRing *ring = making->plan->job->rooms[room->room]->ring;
  guint i = ox_chalk_of (making->plan->job, room, FALSE).base_side;
  OxPoint d = ox_point_sub (ring->points[(i + 1) % ring->n], ring->points[i]);
  return ox_point_turn (d, cos (room->angle), -sin (room->angle)).x * ox_ring_area (ring) < 0;
}

/* Lane numbers as the crew chalks them: the grid of the main direction first, then others as they come up. */
static guint
lane_number (const OxRoomPlan *room, gboolean down, const OxLeg *leg, GHashTable *others)
{
  if (leg->grid)
    {
      guint k = room->spacing > 0 ? (guint) lround ((leg->y - room->first_y) / room->spacing) : 0;
      return down ? room->lanes - k : k + 1;
    }
  gpointer key = GUINT_TO_POINTER (leg->lane + 1), value;
  if (g_hash_table_lookup_extended (others, key, NULL, &value))
    return GPOINTER_TO_UINT (value);
  guint number = room->lanes + g_hash_table_size (others) + 1;
  g_hash_table_insert (others, key, GUINT_TO_POINTER (number));
  return number;
}

/* A finishing strip on a chalk line of the grid keeps that line's number. */
static void
know_grid_lanes (const OxRoomPlan *room, gboolean down, GHashTable *others)
{
  for (guint i = 0; i < room->legs->len; i++)
    {
      const OxLeg *leg = &g_array_index (room->legs, OxLeg, i);
      if (leg->grid)
        g_hash_table_insert (others, GUINT_TO_POINTER (leg->lane + 1), GUINT_TO_POINTER (lane_number (room, down, leg, others)));
    }
}

/* Speed and minutes of a strip; its pieces are kept where there is more than one. */
static void
set_pace (const OxJob *job, OxStrip *strip, GArray *paces)
{
  guint before = paces->len;
  ox_paces_cut (job, strip->a, strip->b, paces);
  const OxPace *own = &g_array_index (paces, OxPace, before);
  strip->speed = own->speed;
  strip->minutes = ox_production_minutes (ox_strip_length (strip), strip->speed);
  if (paces->len == before + 1)
    {
      g_array_set_size (paces, before);
      return;
    }
  strip->pace = before;
  strip->n_paces = paces->len - before;
  strip->minutes = ox_paces_minutes (own, strip->n_paces);
  strip->speed = ox_strip_length (strip) / strip->minutes;
}

/* What was found out about the strip before it got its present number. */
static void
keep_placed (const OxStrip *before, OxStrip *strip)
{
  strip->station = before->station;
  strip->supply = before->supply;
  strip->hose_m = before->hose_m;
  strip->cord_m = before->cord_m;
  strip->out_of_reach = before->out_of_reach;
  strip->done = before->done;
}

static void
append_coat (const Making *making, const OxRoomPlan *coat, GArray *strips, GArray *paces)
{
  const OxJob *job = making->plan->job;
  g_autoptr (GHashTable) lanes = g_hash_table_new (NULL, NULL);
  gboolean down = counts_down (making, coat);
  know_grid_lanes (coat, down, lanes);
  for (guint i = 0; i < coat->legs->len; i++)
    {
      OxLeg *leg = &g_array_index (coat->legs, OxLeg, i);
      OxStrip strip
          = { .order = strips->len + 1, .room = coat->room, .kind = leg->kind, .coat = coat->coat, .a = leg->a, .b = leg->b, .station = -1, .supply = -1 };
      strip.lane = lane_number (coat, down, leg, lanes);
      strip.heading = leg->heading;
      strip.width = job->machine->blast_width;
      set_pace (job, &strip, paces);
      if (making->placed != NULL)
        {
          keep_placed (&making->placed[leg->strip], &strip);
          making->places[leg->strip] = strips->len;
        }
      leg->strip = strips->len;
      g_array_append_val (strips, strip);
    }
}

/* Kept ones first, then room by room, coat by coat; @lies: (nullable): where hose and cord lie, of the strips as they are numbered now. */
static void
write_strips (Making *making, const OxLies *lies, const OxRun *run)
{
  OxPlan *plan = making->plan;
  OxSequence sequence = { plan, making->floor, making->ways, making->rooms, making->kept, lies, run };
  g_autofree guint *order = ox_sequence_rooms (&sequence, &plan->totals.saved_hours);
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (OxStrip));
  g_autoptr (GArray) paces = g_array_new (FALSE, FALSE, sizeof (OxPace));
  for (guint i = 0; i < making->kept->len; i++)
    {
      OxStrip strip = g_array_index (making->kept, OxStrip, i);
      set_pace (plan->job, &strip, paces);
      if (making->placed != NULL)
        keep_placed (&making->placed[i], &strip);
      g_array_append_val (strips, strip);
    }
  for (guint k = 0; k < making->floor->n_rooms; k++)
    for (guint c = 0; c < making->rooms[order[k]]->len; c++)
      append_coat (making, g_ptr_array_index (making->rooms[order[k]], c), strips, paces);
  g_free (plan->paces);
  plan->n_strips = strips->len;
  plan->strips = (OxStrip *) (void *) g_array_free (g_steal_pointer (&strips), FALSE);
  plan->paces = (OxPace *) (void *) g_array_free (g_steal_pointer (&paces), FALSE);
  plan->n_kept = making->kept->len;
  ox_done_number_lanes (plan);
}

static void
clear_rooms (Making *making)
{
  for (guint i = 0; i < making->plan->job->n_rooms; i++)
    g_clear_pointer (&making->rooms[i], g_ptr_array_unref);
  g_clear_pointer (&making->plan->strips, g_free);
  g_clear_pointer (&making->plan->paces, g_free);
  g_ptr_array_set_size (making->notices, 0);
  making->plan->totals.saved_hours = 0;
}

/* Lays strips, when @around is TRUE around done edge work and the first @marks strips of the record; FALSE when cancelled. */
static gboolean
lay_strips (Making *making, gboolean around, guint marks, OxRun *run)
{
  OxPlan *plan = making->plan;
  OxFloor laying = *making->floor;
  g_autoptr (GArray) kept = ox_done_kept (plan->job, making->floor, marks);
  if (around)
    laying.coats = ox_done_coats_left (plan->job, making->floor, kept);
  laying.kept = kept;
  making->laying = &laying;
  g_clear_pointer (&making->kept, g_array_unref);
  making->kept = g_array_ref (kept);
  plan->kept_marks = marks;
  clear_rooms (making);
  gboolean planned = plan_rooms (making, run);
  if (planned)
    write_strips (making, NULL, run);
  if (around)
    ox_coats_free (laying.coats, laying.n_coats);
  making->laying = making->floor;
  return planned;
}

/* The plan in which the last strip of the record was marked, where it still holds, else one around all that is done. */
static gboolean
lay_what_is_left (Making *making, OxRun *run)
{
  const OxRecord *record = making->plan->job->record;
  guint marks = record->n_strips > 0 ? record->strips[record->n_strips - 1].kept : 0;
  if (!lay_strips (making, marks > 0, marks, run))
    return FALSE;
  if (ox_done_strips (making->plan, making->floor))
    return TRUE;
  if (!lay_strips (making, TRUE, record->n_strips, run))
    return FALSE;
  ox_done_strips (making->plan, making->floor);
  return TRUE;
}

/* FALSE when cancelled; @carried: moves that have no way on wheels. */
static gboolean
write_moves (Making *making, const OxRun *run, guint *carried)
{
  OxPlan *plan = making->plan;
  plan->moves = g_new0 (OxMove, plan->n_strips + 1);
  for (guint i = 0; i + 1 < plan->n_strips; i++)
    {
      if (ox_run_cancelled (run, NULL))
        return FALSE;
      *carried += !ox_move_make (making->ways, plan->job->machine, &plan->strips[i], &plan->strips[i + 1], &plan->moves[i]);
      plan->n_moves = i + 1;
    }
  return TRUE;
}

static void
tell_carried (Making *making, guint carried)
{
  if (carried > 0)
    g_ptr_array_add (making->notices,
                     ox_notice_count ("%u move has no way on wheels: the machine must be carried there",
                                      "%u moves have no way on wheels: the machine must be carried there", carried, NULL));
}

static void
write_chalks (Making *making)
{
  g_autoptr (GArray) chalks = g_array_new (FALSE, FALSE, sizeof (OxChalk));
  for (guint k = 0; k < making->floor->n_rooms; k++)
    {
      const GPtrArray *coats = making->rooms[making->floor->by_place[k]];
      for (guint c = 0; c < coats->len; c++)
        {
          const OxRoomPlan *coat = g_ptr_array_index (coats, c);
          OxChalk chalk = ox_chalk_of (making->plan->job, coat, FALSE);
          if (coat->lanes > 0 && coat->legs->len > 0)
            g_array_append_val (chalks, chalk);
          if (coat->wing_lanes > 0 && coat->legs->len > 0)
            {
              OxChalk wing = ox_chalk_of (making->plan->job, coat, TRUE);
              g_array_append_val (chalks, wing);
            }
        }
    }
  making->plan->n_chalks = chalks->len;
  making->plan->chalks = (OxChalk *) (void *) g_array_free (g_steal_pointer (&chalks), FALSE);
}

/* All that is to be prepared asks for the first coat. */
static void
write_coats (const Making *making)
{
  const OxFloor *floor = making->floor;
  OxPlan *plan = making->plan;
  plan->n_coats = ox_coats_most (floor->coats, floor->n_coats);
  plan->coats = g_new0 (OxRegion *, plan->n_coats + 1);
  for (guint k = 0; k < plan->n_coats; k++)
    plan->coats[k] = k == 0 ? ox_region_ref (plan->target) : ox_coats_floor (floor->coats, floor->n_coats, k + 1);
}

/* Hours of strips over all that can be reached, each coat counted. */
static double
ideal_strip_hours (const OxPlan *plan, const OxRegion *reached)
{
  double hours = 0;
  for (guint k = 0; k < plan->n_coats; k++)
    {
      g_autoptr (OxRegion) within = k > 0 ? ox_region_intersection (reached, plan->coats[k]) : ox_region_ref (reached);
      hours += ox_paces_ideal_hours (plan->job, within);
    }
  return hours;
}

static void
write_totals (OxPlan *plan, const OxBlasted *blasted, const OxRegion *reached)
{
  OxTotals *t = &plan->totals;
  double strip_minutes = 0, move_minutes = 0;
  t->target_m2 = ox_region_area (plan->target);
  t->blasted_m2 = ox_region_area (plan->blasted);
  t->coats_m2 = blasted->covered_m2;
  t->double_m2 = MAX (blasted->gross_m2 - blasted->covered_m2, 0);
  t->strips = plan->n_strips;
  for (guint i = 0; i < plan->n_edges; i++)
    {
      t->edge_m2 += plan->edges[i].area;
      t->edge_hours += ox_plan_edge_hours (plan->job, &plan->edges[i]);
    }
  for (guint i = 0; i < plan->n_strips; i++)
    {
      t->strip_m += ox_strip_length (&plan->strips[i]);
      strip_minutes += plan->strips[i].minutes;
    }
  for (guint i = 0; i < plan->n_moves; i++)
    {
      t->move_m += plan->moves[i].length;
      move_minutes += plan->moves[i].minutes;
    }
  t->edge_limit_m2 = MAX (t->target_m2 - ox_region_area (reached), 0);
  t->strip_hours = strip_minutes / 60;
  t->move_hours = move_minutes / 60;
  t->labour_hours = t->strip_hours + t->move_hours + t->edge_hours;
  t->ideal_hours = ideal_strip_hours (plan, reached) + t->edge_limit_m2 / plan->job->rates.edge_m2_per_hour;
}

/* What can be found at the same time: the limit beside the strips' order, and what rests on that. */
typedef struct
{
  Making *making;
  OxRun *run; /* (nullable) */
  GPtrArray *placed; /* notices on stations */
  gboolean moved;
  guint carried;
  OxBlasted blasted;
  OxRegion *limit; /* NULL when cancelled */
} Finding;

static void
note_found (const Finding *finding)
{
  if (finding->run != NULL)
    g_atomic_int_inc (&finding->run->done);
}

static void
find_of_order (guint i, gpointer data)
{
  Finding *finding = data;
  const Making *making = finding->making;
  switch (i) /* what takes longest comes first */
    {
    case 0:
      finding->moved = write_moves (finding->making, finding->run, &finding->carried);
      break;
    case 1:
      ox_leftover_zones (making->floor, making->plan);
      break;
    default:
      making->plan->blasted = ox_leftover_blasted (making->floor, making->plan, &finding->blasted);
    }
  note_found (finding);
}

/* Numbers the strips anew, outward from their stations. */
static void
order_outward (Making *making, OxReach *reach, const OxRun *run)
{
  OxPlan *plan = making->plan;
  g_autoptr (OxLies) lies = ox_lies_new (plan, reach, run);
  g_autofree OxStrip *placed = plan->strips;
  g_autofree guint *places = g_new (guint, plan->n_strips + 1);
  for (guint i = 0; i < plan->n_strips; i++)
    places[i] = i;
  plan->totals.unblasted_before_m = ox_lies_unblasted (lies, places, plan->n_kept);
  making->placed = placed;
  making->places = places;
  write_strips (making, lies, run);
  plan->totals.unblasted_hose_m = ox_lies_unblasted (lies, places, plan->n_kept);
  making->placed = NULL;
}

static void
find_one (guint i, gpointer data)
{
  Finding *finding = data;
  Making *making = finding->making;
  if (i == 0)
    {
      finding->limit = ox_limit_new (making->floor, making->plan->job->machine, finding->run);
      note_found (finding);
      return;
    }
  g_autoptr (OxReach) reach = ox_stations_reach_new (making->plan->job, making->floor);
  if (!ox_stations_plan (making->plan, reach, finding->placed, finding->run))
    return;
  order_outward (making, reach, finding->run);
  note_found (finding);
  reach_stage (making, OX_STAGE_STRIPS);
  ox_share (3, find_of_order, finding);
  if (!finding->moved)
    return;
  ox_tethers_plan (making->plan, reach, finding->run);
  if (making->plan->totals.wraps > 0)
    g_ptr_array_add (finding->placed,
                     ox_notice_count ("Hose or cord wraps round a solid in %u strip: free it there, or try another place for the station",
                                      "Hose or cord wraps round a solid in %u strips: free it there, or try another place for the station",
                                      making->plan->totals.wraps, NULL));
}

static gboolean
make_plan (Making *making, OxRun *run)
{
  OxPlan *plan = making->plan;
  g_autoptr (GPtrArray) placed = g_ptr_array_new_with_free_func (g_free);
  Finding finding = { .making = making, .run = run, .placed = placed };
  if (!lay_what_is_left (making, run))
    return FALSE;
  ox_run_step (run, N_("finding the ways between strips"), making_steps (making) - FINDINGS - 1, making_steps (making));
  ox_share (2, find_one, &finding);
  g_autoptr (OxRegion) limit = finding.limit;
  if (!finding.moved || limit == NULL || ox_run_cancelled (run, NULL))
    return FALSE;
  tell_carried (making, finding.carried);
  reach_stage (making, OX_STAGE_MOVES);
  g_ptr_array_extend_and_steal (making->notices, g_steal_pointer (&placed));
  write_chalks (making);
  ox_run_step (run, N_("measuring edge work"), making_steps (making) - 1, making_steps (making));
  /* What was reached can be reached: on a floor just as wide as the body the places have no area and the erosion sees none. */
  g_autoptr (OxRegion) reached = ox_region_union (limit, plan->blasted);
  ox_leftover_edges (making->floor, plan->blasted, reached, plan);
  ox_done_edges (plan);
  write_totals (plan, &finding.blasted, reached);
  reach_stage (making, OX_STAGE_END);
  return TRUE;
}

#ifdef OX_VERIFY_PLANS
static void
report_breaches (const OxPlan *plan, const OxRun *run)
{
  g_autoptr (GPtrArray) breaches = ox_plan_verify (plan);
  for (guint i = 0; i < MIN (breaches->len, 5) && !ox_run_cancelled (run, NULL); i++) /* of one that is given up nobody wants to know */
    {
      const OxBreach *breach = g_ptr_array_index (breaches, i);
      g_warning ("plan breaks rule %d at %.4f %.4f (strip %u): %s", (int) breach->rule, breach->at.x, breach->at.y, breach->strip, breach->text);
    }
}
#endif

OxPlan *
ox_plan_new (const OxJob *job, OxRun *run, GError **error)
{
  return ox_plan_new_hooked (job, NULL, NULL, run, error);
}

OxPlan *
ox_plan_new_hooked (const OxJob *job, OxPlanHook hook, gpointer data, OxRun *run, GError **error)
{
  g_autoptr (GPtrArray) notices = g_ptr_array_new_with_free_func (g_free);
  if (!job_is_sound (job, error))
    return NULL;
  g_auto (OxStopScope) scope = ox_stop_scope (run);
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  g_autoptr (OxWays) ways = ox_ways_new (floor->travel, job->machine);
  g_autoptr (OxPlan) plan = g_atomic_rc_box_new0 (OxPlan);
  plan->job = ox_job_ref (job);
  plan->target = ox_region_ref (floor->target);
  plan->travel = ox_region_ref (floor->travel);
  Making making = { plan, floor, floor, NULL, ways, g_new0 (GPtrArray *, job->n_rooms + 1), NULL, NULL, notices, hook, data };
  write_coats (&making);
  gboolean made = make_plan (&making, run);
  for (guint i = 0; i < job->n_rooms; i++)
    g_clear_pointer (&making.rooms[i], g_ptr_array_unref);
  g_free (making.rooms);
  g_clear_pointer (&making.kept, g_array_unref);
  g_ptr_array_add (notices, NULL);
  plan->notices = g_strdupv ((char **) notices->pdata);
#ifdef OX_VERIFY_PLANS
  if (made)
    report_breaches (plan, run);
#endif
  if (!made || ox_run_cancelled (run, NULL))
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_CANCELLED, _("The planning was cancelled"));
      return NULL;
    }
  return g_steal_pointer (&plan);
}
