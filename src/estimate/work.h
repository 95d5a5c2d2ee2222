/* Oxturn: estimate/work - the plan as pieces of work with their minutes, shared out to machines and shifts.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A strip is one piece with the move before it and its start, and is not broken off. Topping up the hopper, changing the drum and checking a
 * wear part come before the strip in which they would fall due. Edge work can be left off at the end of a shift and is cut there; it is done by
 * the crew of a machine after the strips of the room.
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

#define OX_WORK_SHIFTS_MOST 10000 /* that edge work may fill; 27 years of days are no plan */

typedef struct
{
  const char *first_day; /* borrowed: YYYY-MM-DD, "" for none */
  double shift_min;      /* from arriving to leaving */
  double break_min, setup_min, cleanup_min;
  double refill_min, drum_change_min, wear_check_min; /* for one */
  guint machines;        /* that work in parallel, 1 or more */
  guint weekdays;        /* days worked: bit 0 is Monday */
  double drum_kg;        /* dust that fills a drum; 0: drums are not reckoned */
  double dust_kg;        /* of the whole job */
  gboolean left;         /* only what is not done yet, wear parts as the meter of the record has them (estimate/left.h) */
} OxWorkRules;

/* ox_work_rules_of: those of the job's calendar, which must live as long; no dust */
void ox_work_rules_of (OxWorkRules *rules, const OxJob *job);

typedef enum { OX_PIECE_STRIP, OX_PIECE_EDGE, OX_PIECE_REFILL, OX_PIECE_DRUM, OX_PIECE_WEAR, OX_N_PIECE_KINDS } OxPieceKind;

typedef struct
{
  OxPieceKind kind;
  guint index;         /* strip, edge area, or wear part; 0 otherwise */
  guint room;          /* index in job->rooms */
  guint machine;       /* from 0 */
  guint shift;         /* from 1; the same number is the same day for all machines */
  double minutes;      /* all of it */
  double move_minutes; /* of a strip: the move before it */
  double start_minutes;
  double share;        /* of the edge area that is done here, above 0 and at most 1; 1 for all else */
} OxPiece;

typedef struct
{
  guint machine, shift;
  char day[11];         /* YYYY-MM-DD, "" without a first day */
  double minutes[OX_N_PIECE_KINDS];
  double blast_minutes, move_minutes, start_minutes; /* of the strips */
  double working;       /* minutes of all pieces */
} OxShift;

typedef struct
{
  GArray *pieces; /* OxPiece: machine by machine, in working order */
  GArray *shifts; /* OxShift: shift by shift, machine by machine; only those with work */
  guint n_shifts; /* days until the last machine is done */
  gboolean full;  /* FALSE where set-up, clean-up and breaks leave less than OX_SHIFT_LEAST_MIN to work: then nothing is shared out */
  gboolean endless; /* edge work would fill more than OX_WORK_SHIFTS_MOST: then nothing is shared out either */
} OxWork;

/* ox_work_new: also for a plan without strips. The same plan and rules give the same work. */
OxWork *ox_work_new (const OxPlan *plan, const OxWorkRules *rules) G_GNUC_WARN_UNUSED_RESULT;
void ox_work_free (OxWork *work);

/* ox_work_split:
 * @left: whether strips that are done weigh nothing
 * @machine: (out): @plan->n_strips numbers from 0, which machine lays which strip
 *
 * Fields - strips that follow each other in one room and coat at one station - are cut between lanes where one is longer than a fair share of its
 * coat, then coat by coat, so that all machines come to the second one at about the same time, the longest goes first, each to the machine that has least so far; a machine that already works in the same room or at the same station is taken before
 * another one as long as that costs no more than a twentieth of a fair share. Source: the rule of ox_shifts_split(), made to stay near.
 */
void ox_work_split (const OxPlan *plan, guint machines, gboolean left, guint *machine);

/* ox_work_day: day of a shift, from 1: the first working day on or after @first_day is the first; "" without or with a bad day */
void ox_work_day (const OxWorkRules *rules, guint shift, char day[11]);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxWork, ox_work_free)
G_END_DECLS
