/* Oxturn: tests/plan/judge - sound plans to start from, and what the judge of plans says of them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All with the compact machine: blast 0.21 x 0.08, front 0.35, rear 1.25, 0.19 to each side, gap 0.02, overlap 0.02,
 * turn radius 0.75. In a room 10 m long a strip along +x may start at 1.25 and stop at 10 - 0.35 - 0.02 = 9.63; one
 * along -x starts at 8.75 and stops at 0.37. The lane next to a wall lies 0.19 + 0.02 = 0.21 from it, lanes are 0.21 -
 * 0.02 = 0.19 apart.
 */
#pragma once
#include "draft.h"
#include "plan/verify.h"
G_BEGIN_DECLS

/* The draft is finished and judged: all holds; that rule is broken and no other; that rule is among the broken ones. */
void judge_expect_sound (Draft *draft);
void judge_expect_only (Draft *draft, OxRule rule);
void judge_expect_among (const OxPlan *plan, OxRule rule);

/* A corridor of 10 m along x, too narrow for a swing, so that strips run one way with pull-backs: on these lanes from 1.25 to 9.63;
 * judge_corridor() has three lanes over a width of 0.8 m and a chalk-line table; judge_corridor_strip() adds a strip to one. */
Draft *judge_corridor_of (double width, const double *lanes, guint n);
Draft *judge_corridor (void);
void judge_corridor_strip (Draft *draft, double y, double start, double stop);

/* Two strips to and fro in the middle of a hall of 10 x 6 m, with a swing between them at @turn; judge_hall(): empty, at (9, 3). */
Draft *judge_to_and_fro (const OxJob *job, OxPoint turn);
Draft *judge_hall (void);

/* @base (transfer full) with a square obstacle in it */
OxJob *judge_with_obstacle (OxJob *base, OxObstacleKind kind, OxPoint centre, double size);

/* Two rooms of 5 x 2 m side by side share a wall without thickness at x = 5; a doorway at @from..@to leads through. */
OxJob *judge_two_rooms (double from, double to);

/* All that a plan says, to the last bit; whether two plans say the same. */
char *judge_plan_text (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
gboolean judge_same (const OxPlan *a, const OxPlan *b);

G_END_DECLS
