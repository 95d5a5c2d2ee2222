/* Oxturn: plan/leg - strips as an order of work sees them: two ends, a heading, what a move between two of them costs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/layout.h"
#include "plan/lies.h"
G_BEGIN_DECLS

#define OX_TURN_ANGLE (10 * G_PI / 180) /* two headings nearer than this need no swing: the machine is steered on the way */

#define OX_TURN_COSINE 0.98480775301220802

typedef struct
{
  OxPoint a, b;     /* start, stop, on the floor */
  double heading;
  OxPoint along;         /* unit vector of the heading */
  double turn_a, turn_b; /* m from the ends to where a swing fits */
  gboolean reversible;   /* whether the strip may be run the other way as well */
  OxStripKind kind;
  gboolean grid;         /* one of the lane grid: keeps its place lane by lane */
  guint frame, lane;
  double y;
  guint strip; /* index of its strip in the plan, once it was written there */
  int station; /* index of the collector that serves it, -1: none, or not known yet */
} OxLeg;

/* ox_legs_new: the drafts of @layout, in their order; (transfer full) (element-type OxLeg) */
GArray *ox_legs_new (const OxLayout *layout, const OxWays *ways) G_GNUC_WARN_UNUSED_RESULT;

/* ox_leg_reverse: the strip the other way round */
void ox_leg_reverse (OxLeg *leg);

/* ox_leg_turns: whether a swing is needed between the headings */
gboolean ox_leg_turns (const OxLeg *from, const OxLeg *to);

/* ox_leg_seconds: what the move from @from to @to costs, at a guess: straight way, turning points where a swing fits */
double ox_leg_seconds (const OxMachine *machine, const OxLeg *from, const OxLeg *to);

/* ox_order_legs:
 * @legs: (element-type OxLeg): put into working order, some of them reversed
 *
 * Main strips lane by lane in serpentine chains, the rest by nearest neighbour and then improved by moving one to three strips at a time
 * (bounded, deterministic).
 * Returns: seconds of all moves by ox_leg_seconds() */
double ox_order_legs (GArray *legs, const OxMachine *machine, const OxRun *run);

/* ox_order_fields:
 * @legs: (element-type OxLeg): in a working order; put into a better one
 * @before: (nullable): the strip that is worked before them
 * @lies: (nullable): on which strips of the plan hose and cord lie; the legs know their strips, which follow each other there
 *
 * Cuts walks by a local search over fields, what is worked without walking: fields are put elsewhere, stretches of them turned about, and each worked
 * from its other end or with its strips the other way round, as long as that saves time by ox_leg_seconds(). Those of the lane grid stay before the
 * others, and what lies in a field stays together, lane by lane. With @lies, hose and cord that lie on floor still to be blasted cost time as well
 * (plan/field-lies.h), so that fields and their lanes are worked outward from their station. Bounded by a number of steps, not by time.
 * Returns: seconds of moves saved */
double ox_order_fields (GArray *legs, const OxLeg *before, const OxLies *lies, const OxMachine *machine, const OxRun *run);

G_END_DECLS
