/* Oxturn: plan/plan - from a job to strips, moves, turnaround zones and edge work.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A strip is a directed segment a -> b of the pattern's middle. It covers blast_width across, from blast_length/2 behind a to
 * blast_length/2 beyond b. While it is run the body sweeps the rectangle from a - rear to b + front + wall_gap, from
 * -(right + wall_gap) to left + wall_gap:
 *
 *      +-------------------------------------------------+  left + gap
 *      |     rear     +--------------------------+       |
 *      |              |a ======= covered =====> b| front |
 *      |              +--------------------------+ + gap |
 *      +-------------------------------------------------+  right + gap
 *
 * A plan is an immutable counted value that holds a reference of its job. Coordinates of strips, turning points and paths lie on OX_GRID.
 * What holds for every plan is listed and checked in plan/verify.h.
 */
#pragma once
#include "base/run.h"
#include "job/job.h"
#include "plan/pace.h"
G_BEGIN_DECLS

#define OX_PLAN_ERROR (ox_plan_error_quark ())
GQuark ox_plan_error_quark (void);
typedef enum
{
  OX_PLAN_ERROR_BAD_JOB /* ox_job_check() finds an error; the message is its first */
} OxPlanError;

typedef enum { OX_STRIP_MAIN, OX_STRIP_CROSSWISE } OxStripKind;

typedef struct
{
  guint order;     /* 1, 2, 3 ... in working order; also the strip's number on paper */
  guint room;      /* index in job->rooms */
  guint lane;      /* chalk line, numbered from 1 in its room and coat over all directions */
  OxStripKind kind;
  guint coat;      /* from 1 (plan/coat.h) */
  OxPoint a, b;    /* start, stop */
  double heading;  /* radians, of a -> b */
  double width;    /* m covered across */
  double speed;    /* m/min; where it changes along the strip the mean: length / minutes */
  double minutes;  /* over all paces */
  guint pace, n_paces; /* where the speed changes: its pieces in OxPlan.paces, from start to stop; 0 pieces: one speed all along */
  int station;     /* index in OxPlan.stations of the collector that serves it, -1 when none does */
  int supply;      /* the same for the power */
  double hose_m;   /* m along the floor from the collector to the farthest point of the strip, 0 without one */
  double cord_m;   /* the same from the supply */
  guint done;      /* number, from 1, of its mark in job->record->strips; 0: to be done */
  gboolean hose_wraps; /* while it is run the hose, dragged on from where it lay, turns about a solid (plan/tether.h): it is to be freed */
  gboolean cord_wraps; /* the same of the cord */
  gboolean out_of_reach; /* no collector, or no supply, of the job reaches it; where the job has none of a kind: no place would */
} OxStrip;

typedef struct
{
  char *id;             /* that of the job's station; "P1" ... for a proposed one */
  OxStationKind kind;
  gboolean proposed;    /* not in the job: a place from which strips that are out of reach would be in reach */
  OxPoint at;
  double length;        /* m of hose or cord */
  guint strips;         /* how many it serves */
  double farthest_m;    /* m along the floor to the farthest point of those */
} OxPlanStation;

typedef enum { OX_MOVE_SWING, OX_MOVE_PULL_BACK, OX_MOVE_WALK } OxMoveKind;

typedef struct
{
  guint from, to;     /* strip order numbers, to = from + 1 */
  OxMoveKind kind;
  double minutes;     /* path at walking speed, and the seconds of a swing where the heading changes */
  double length;      /* m of path */
  gboolean turns;     /* whether the machine turns round on the way, at @turn */
  OxPoint turn;       /* its turning point; always set for a swing */
  guint n_path;       /* corners of the path from stop to start; 0: no way on wheels, the machine is carried */
  const OxPoint *path;
} OxMove;

typedef struct
{
  char *id;           /* "Z1" ... */
  guint room, coat;
  double area;        /* m2 of target */
  OxRegion *region;
} OxZone;

typedef enum { OX_CAUSE_WALL, OX_CAUSE_CORNER, OX_CAUSE_OBSTACLE, OX_CAUSE_DROP, OX_CAUSE_NARROW, OX_CAUSE_REACH } OxCause;

typedef struct
{
  char *id;           /* "E1" ... */
  guint room;
  OxCause cause;
  double area;        /* m2 */
  double length;      /* m along the wall, obstacle or drop; half the outline where it touches none */
  OxRegion *region;
  guint done;         /* number, from 1, of a mark in job->record->edges; 0: to be done */
} OxEdge;

typedef struct
{
  guint room, coat;
  guint base_side;       /* side of the room that the chalk lines are measured from: parallel to them unless an angle was typed */
  double heading;        /* radians, main direction */
  double first_distance; /* m from the base side's line into the room to lane 1; < 0 where lanes lie beyond a side that juts in */
  double spacing;        /* m from lane to lane, into the room; 0 for a single lane */
  guint lanes;
  gboolean is_wing;      /* of another wing of the room, whose crosswise strips lie on them: its lanes have a direction of their own */
} OxChalk;

typedef struct
{
  double target_m2, edge_m2;
  double blasted_m2;     /* floor with all its coats */
  double coats_m2;       /* floor covered, each coat counted */
  double double_m2;      /* covered a second time by the same coat */
  double edge_limit_m2;  /* floor outside the reachable limit R*: edge work whatever the plan */
  guint strips;
  double strip_m, move_m;
  double strip_hours, move_hours, labour_hours;
  double edge_hours;     /* all edge areas (ox_plan_edge_hours()) */
  double ideal_hours;    /* strips side by side over R* and the rest of the floor by hand, at the rate by area alone: its outline is not known */
  double saved_hours;    /* of moves, at a guess: what the search for a better order of fields saved */
  guint out_of_reach;    /* strips that no station reaches */
  guint wraps;           /* strips with hose_wraps or cord_wraps */
  double unblasted_hose_m; /* m of hose and cord, strip by strip, on floor still to be blasted then (plan/lies.h) */
  double unblasted_before_m; /* what that was before the strips were put in order outward from their stations */
} OxTotals;

typedef struct
{
  OxJob *job;
  OxRegion *target, *travel, *blasted; /* whole floor; blasted = target that all its coats cover */
  guint n_coats;
  OxRegion **coats;   /* n_coats of them: target that asks for coat 1, 2 ... (plan/coat.h) */
  guint n_strips, n_moves, n_zones, n_edges, n_chalks, n_stations;
  guint n_kept;       /* of the strips, from the first on: done ones of the record that the rest was laid around (plan/done.h); mostly 0 */
  guint kept_marks;   /* how many strips of the record, from the first on, that was */
  OxStrip *strips;
  OxPace *paces;
  OxMove *moves;      /* n_strips - 1 of them, or 0 */
  OxZone *zones;
  OxEdge *edges;
  OxChalk *chalks;    /* one a coat of a room that has main strips, and one of its other wing */
  OxPlanStation *stations; /* those of the job in its order, then the proposed ones */
  OxTotals totals;
  char **notices;     /* NULL-ended, to be read with ox_notice_text() (base/notice.h): a room without strips and why, a way that is missing ... */
} OxPlan;

/* ox_plan_new:
 * @job: any job; one without rooms gives an empty plan
 * @run: (nullable): progress and cancel
 * @error: OX_PLAN_ERROR_BAD_JOB, or G_IO_ERROR_CANCELLED
 *
 * The same job gives the same plan, byte for byte. Blocks; call it off the main thread.
 * Returns: (transfer full)
 */
OxPlan *ox_plan_new (const OxJob *job, OxRun *run, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxPlan *ox_plan_ref (const OxPlan *plan);
void ox_plan_unref (const OxPlan *plan);

double ox_strip_length (const OxStrip *strip); /* m from a to b */

/* ox_strip_corners: what the strip covers, counter-clockwise from right behind; @blast_length in m */
void ox_strip_corners (const OxStrip *strip, double blast_length, OxPoint corners[4]);

/* Which strips are meant. */
typedef struct
{
  int room;   /* index in job->rooms, -1 for any */
  guint coat; /* 0 for any */
  int kind;   /* OxStripKind, -1 for any */
} OxStripsOf;

/* ox_strips_covered: what those of @strips cover together; @blast_length in m; (transfer full) */
OxRegion *ox_strips_covered (const OxStrip *strips, guint n, OxStripsOf of, double blast_length) G_GNUC_WARN_UNUSED_RESULT;

/* ox_plan_coat_text: title of the room, and which coat where strips of it lie in several; translated; (transfer full) */
char *ox_plan_coat_text (const OxPlan *plan, guint room, guint coat) G_GNUC_WARN_UNUSED_RESULT;

/* ox_plan_edge_hours: of an edge area at the hand rates of the job: where it has one by length, narrow areas go by that (trade/edge.h) */
double ox_plan_edge_hours (const OxJob *job, const OxEdge *edge);

const char *ox_strip_kind_name (OxStripKind kind); /* "main", "crosswise": as in the tables, untranslated */
const char *ox_move_kind_name (OxMoveKind kind);   /* "swing", "pull-back", "walk" */
const char *ox_cause_name (OxCause cause);         /* "wall", "corner", ... */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxPlan, ox_plan_unref)
G_END_DECLS
