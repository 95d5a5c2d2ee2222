/* Oxturn: estimate/work
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/work.h"
#include <stdio.h>
#include "estimate/basis.h"
#include "trade/abrasive.h"
#include "trade/production.h"
#include "trade/shifts.h"
#include "trade/wear.h"

#define SHIFT_FULL 1e-6 /* minutes */
#define DAYS_A_WEEK 7

void
ox_work_rules_of (OxWorkRules *rules, const OxJob *job)
{
  const OxCalendar *calendar = job->calendar;
  *rules = (OxWorkRules){
    .first_day = calendar->first_day,
    .shift_min = calendar->shift_h * 60,
    .break_min = calendar->break_min,
    .setup_min = calendar->setup_min,
    .cleanup_min = calendar->cleanup_min,
    .refill_min = calendar->refill_min,
    .drum_change_min = calendar->drum_change_min,
    .wear_check_min = calendar->wear_check_min,
    .machines = calendar->machines,
    .weekdays = calendar->days,
  };
}

/* --- Pieces of one machine --- */

typedef struct
{
  const OxPlan *plan;
  const OxWorkRules *rules;
  OxWork *work;
  guint machine;
  double used_kg;                       /* abrasive missing from the hopper */
  double dust_kg;                       /* in the drum */
  double wear_min[OX_MACHINE_MAX_WEAR]; /* of the wheel, since the part was looked at */
} Hand;

static void
add_piece (Hand *hand, OxPieceKind kind, guint index, guint room, double minutes)
{
  OxPiece piece
      = { .kind = kind, .index = index, .room = room, .machine = hand->machine, .minutes = minutes, .share = 1 };
  g_array_append_val (hand->work->pieces, piece);
}

/* What falls due within the strip comes before it. */
static void
add_due (Hand *hand, const OxStrip *strip)
{
  const OxMachine *machine = hand->plan->job->machine;
  double loss = ox_abrasive_lost (strip->minutes, machine->flow_kg_min, machine->loss_share);
  double usable = machine->hopper_kg * ox_basis ("hopper-usable");
  double all = hand->plan->totals.strip_hours * 60;
  double dust = all > 0 ? hand->rules->dust_kg * strip->minutes / all : 0;
  if (ox_shifts_is_due (hand->used_kg, loss, usable))
    {
      add_piece (hand, OX_PIECE_REFILL, 0, strip->room, hand->rules->refill_min);
      hand->used_kg = 0;
    }
  if (hand->rules->drum_kg > 0 && ox_shifts_is_due (hand->dust_kg, dust, hand->rules->drum_kg))
    {
      add_piece (hand, OX_PIECE_DRUM, 0, strip->room, hand->rules->drum_change_min);
      hand->dust_kg = 0;
    }
  for (guint i = 0; i < machine->n_wear; i++)
    {
      if (!ox_wear_part_is_on (&machine->wear[i], hand->machine + 1))
        continue;
      if (ox_shifts_is_due (hand->wear_min[i], strip->minutes, machine->wear[i].interval_h * 60 + SHIFT_FULL))
        {
          add_piece (hand, OX_PIECE_WEAR, i, strip->room, hand->rules->wear_check_min);
          hand->wear_min[i] = 0;
        }
      hand->wear_min[i] += strip->minutes;
    }
  hand->used_kg += loss;
  hand->dust_kg += dust;
}

/* The move before strip @i; straight across where it does not follow the one before it on this machine. */
static double
move_minutes (const Hand *hand, int last, guint i)
{
  const OxPlan *plan = hand->plan;
  const OxMachine *machine = plan->job->machine;
  if (last < 0)
    return 0;
  if ((guint) last + 1 == i)
    return (guint) last < plan->n_moves ? plan->moves[last].minutes : 0;
  double way = ox_point_distance (plan->strips[last].b, plan->strips[i].a);
  return ox_production_move_seconds (way, machine->walk_speed, machine->swing_s) / 60;
}

static void
add_strip (Hand *hand, int last, guint i)
{
  const OxStrip *strip = &hand->plan->strips[i];
  OxPiece piece = { .kind = OX_PIECE_STRIP, .index = i, .room = strip->room, .machine = hand->machine, .share = 1 };
  add_due (hand, strip);
  piece.move_minutes = move_minutes (hand, last, i);
  piece.start_minutes = hand->plan->job->machine->start_s / 60;
  piece.minutes = strip->minutes + piece.move_minutes + piece.start_minutes;
  g_array_append_val (hand->work->pieces, piece);
}

static void
add_edges (Hand *hand, guint room)
{
  const OxEdge *edges = hand->plan->edges;
  for (guint i = 0; i < hand->plan->n_edges; i++)
    if (edges[i].room == room && !(hand->rules->left && edges[i].done > 0))
      add_piece (hand, OX_PIECE_EDGE, i, room, ox_plan_edge_hours (hand->plan->job, &edges[i]) * 60);
}

/* Which machine's crew does the edge work of a room: the one that lays its last strip; rooms without strips go round.
 */
static guint
edge_machine (const OxPlan *plan, const guint *machine, guint room, guint machines)
{
  for (guint i = plan->n_strips; i-- > 0;)
    if (plan->strips[i].room == room)
      return machine[i];
  return room % machines;
}

static gboolean
is_last_of_room (const OxPlan *plan, guint i)
{
  for (guint k = i + 1; k < plan->n_strips; k++)
    if (plan->strips[k].room == plan->strips[i].room)
      return FALSE;
  return TRUE;
}

static void
add_machine (Hand *hand, const guint *machine)
{
  const OxPlan *plan = hand->plan;
  const OxMachine *own = plan->job->machine;
  double meter = ox_record_meter_hours (plan->job->record, hand->machine + 1);
  int last = -1;
  g_autofree gboolean *strips = g_new0 (gboolean, plan->job->n_rooms + 1);
  for (guint i = 0; i < own->n_wear; i++)
    hand->wear_min[i] = 60 * (hand->rules->left ? ox_wear_run (own->wear[i].interval_h, own->wear[i].run_h, meter) : own->wear[i].run_h);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      strips[plan->strips[i].room] = TRUE;
      if (machine[i] != hand->machine)
        continue;
      if (!(hand->rules->left && plan->strips[i].done > 0))
        {
          add_strip (hand, last, i);
          last = (int) i;
        }
      if (is_last_of_room (plan, i))
        add_edges (hand, plan->strips[i].room);
    }
  for (guint room = 0; room < plan->job->n_rooms; room++)
    if (!strips[room] && edge_machine (plan, machine, room, hand->rules->machines) == hand->machine)
      add_edges (hand, room);
}

/* --- Shifts --- */

static OxShift *
find_shift (GArray *shifts, guint machine, guint number, const OxWorkRules *rules)
{
  if (shifts->len > 0)
    {
      OxShift *last = &g_array_index (shifts, OxShift, shifts->len - 1);
      if (last->machine == machine && last->shift == number)
        return last;
    }
  OxShift shift = { .machine = machine, .shift = number };
  ox_work_day (rules, number, shift.day);
  g_array_append_val (shifts, shift);
  return &g_array_index (shifts, OxShift, shifts->len - 1);
}

static void
put_piece (OxWork *work, const OxWorkRules *rules, OxPiece piece, GArray *placed)
{
  OxShift *shift = find_shift (work->shifts, piece.machine, piece.shift, rules);
  shift->minutes[piece.kind] += piece.minutes;
  shift->working += piece.minutes;
  if (piece.kind == OX_PIECE_STRIP)
    {
      shift->move_minutes += piece.move_minutes;
      shift->start_minutes += piece.start_minutes;
      shift->blast_minutes += piece.minutes - piece.move_minutes - piece.start_minutes;
    }
  work->n_shifts = MAX (work->n_shifts, piece.shift);
  g_array_append_val (placed, piece);
}

/* Edge work alone can ask for any number of shifts: every other piece is one strip or belongs to one. */
static gboolean
is_too_long (const OxWork *work, double working)
{
  double minutes = 0;
  for (guint i = 0; i < work->pieces->len; i++)
    if (g_array_index (work->pieces, OxPiece, i).kind == OX_PIECE_EDGE)
      minutes += g_array_index (work->pieces, OxPiece, i).minutes;
  return !(minutes <= OX_WORK_SHIFTS_MOST * working);
}

/* Pieces fill shifts in order; edge work is cut at the end of one. */
static void
share_out (OxWork *work, const OxWorkRules *rules, double working)
{
  g_autoptr (GArray) placed = g_array_new (FALSE, FALSE, sizeof (OxPiece));
  double used = 0;
  guint shift = 1, machine = 0;
  for (guint i = 0; i < work->pieces->len; i++)
    {
      OxPiece piece = g_array_index (work->pieces, OxPiece, i);
      double whole = piece.minutes;
      if (piece.machine != machine)
        {
          machine = piece.machine;
          shift = 1;
          used = 0;
        }
      while (piece.kind == OX_PIECE_EDGE && used + whole > working + SHIFT_FULL)
        {
          OxPiece part = piece;
          part.shift = shift++;
          part.minutes = working - used;
          part.share = piece.minutes > 0 ? part.minutes / piece.minutes : 1;
          if (part.minutes > SHIFT_FULL)
            put_piece (work, rules, part, placed);
          whole -= part.minutes;
          used = 0;
        }
      if (used > 0 && used + whole > working + SHIFT_FULL)
        {
          shift++;
          used = 0;
        }
      piece.share = piece.minutes > 0 ? whole / piece.minutes : 1;
      piece.minutes = whole;
      piece.shift = shift;
      put_piece (work, rules, piece, placed);
      used += whole;
    }
  g_array_set_size (work->pieces, 0);
  if (placed->len > 0)
    g_array_append_vals (work->pieces, placed->data, placed->len);
}

static int
compare_shifts (gconstpointer a, gconstpointer b)
{
  const OxShift *x = a, *y = b;
  if (x->shift != y->shift)
    return x->shift < y->shift ? -1 : 1;
  return (x->machine > y->machine) - (x->machine < y->machine);
}

void
ox_work_day (const OxWorkRules *rules, guint shift, char day[11])
{
  int year, month, date;
  day[0] = '\0';
  if (sscanf (rules->first_day, "%4d-%2d-%2d", &year, &month, &date) != 3 || (rules->weekdays & 0x7f) == 0 || year < 1
      || month < 1 || date < 1 || !g_date_valid_dmy ((GDateDay) date, month, (GDateYear) year))
    return;
  g_autoptr (GDate) at = g_date_new_dmy ((GDateDay) date, month, (GDateYear) year);
  guint worked = 0; /* days of a week */
  for (guint i = 0; i < DAYS_A_WEEK; i++)
    worked += (rules->weekdays >> i) & 1;
  guint before = MAX (shift, 1) - 1;
  g_date_add_days (at, before / worked * DAYS_A_WEEK);
  for (guint left = before % worked + 1;; g_date_add_days (at, 1))
    if ((rules->weekdays >> (g_date_get_weekday (at) - 1)) & 1 && --left == 0)
      break;
  g_snprintf (day, 11, "%04u-%02u-%02u", (guint) g_date_get_year (at) % 10000, (guint) g_date_get_month (at) % 100,
              (guint) g_date_get_day (at) % 100);
}

OxWork *
ox_work_new (const OxPlan *plan, const OxWorkRules *rules)
{
  OxWork *work = g_new0 (OxWork, 1);
  const OxShiftRules shift = { rules->shift_min, rules->break_min, rules->setup_min, rules->cleanup_min };
  double working = ox_shifts_working (&shift);
  g_autofree guint *machine = g_new0 (guint, plan->n_strips + 1);
  work->pieces = g_array_new (FALSE, FALSE, sizeof (OxPiece));
  work->shifts = g_array_new (FALSE, FALSE, sizeof (OxShift));
  ox_work_split (plan, MAX (rules->machines, 1), rules->left, machine);
  for (guint m = 0; m < MAX (rules->machines, 1); m++)
    {
      Hand hand = { .plan = plan, .rules = rules, .work = work, .machine = m };
      add_machine (&hand, machine);
    }
  work->full = working >= OX_SHIFT_LEAST_MIN;
  work->endless = work->full && is_too_long (work, working);
  if (work->full && !work->endless)
    share_out (work, rules, working);
  g_array_sort (work->shifts, compare_shifts);
  return work;
}

void
ox_work_free (OxWork *work)
{
  g_array_unref (work->pieces);
  g_array_unref (work->shifts);
  g_free (work);
}
