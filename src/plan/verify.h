/* Oxturn: plan/verify - what must hold for every plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rules 4 to 6 and the last hold for the strips of each coat by themselves, as if there were no other: floor that a coat covers is not covered for
 * another one.
 *
 * Computed anew from the job's outlines and the plan's own strips and moves, not from anything the planner kept aside.
 */
#pragma once
#include "plan/floor.h"
#include "plan/plan.h"
G_BEGIN_DECLS

typedef enum
{
  OX_RULE_BODY = 1,  /* 1 every swept body lies in travel (2 mm) */
  OX_RULE_MOVE,      /* 2 swing circles in travel; paths lead from stop to start with a corridor as wide as the body */
  OX_RULE_ACCOUNT,   /* 3 target = blasted + edge work, nothing in both (1e-4); blasted is what every coat that it asks for covers */
  OX_RULE_OVERLAP,   /* 4 neighbouring parallel strips overlap; lane grid even */
  OX_RULE_SLOT,      /* 5 no thin slot between strips */
  OX_RULE_SHORT,     /* 6 no strip under min_strip, none twice for nothing */
  OX_RULE_ORDER,     /* 7 numbers in working order, one coat of a room after the other, one move between any two; minutes by the speeds asked for;
                        kept and done strips are those of the record */
  OX_RULE_TARGET     /* nothing is blasted outside the target (masked, excluded, beyond an open side), nor by a coat where it is not asked for */
} OxRule;

typedef struct
{
  OxRule rule;
  guint strip;  /* order number, 0 when none */
  OxPoint at;
  char *text;   /* English, for developers */
} OxBreach;

void ox_breach_free (OxBreach *breach);

/* ox_plan_verify: Returns: (transfer full): array of OxBreach* with free function, empty when all holds; at most 100 */
GPtrArray *ox_plan_verify (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

/* ox_plan_verify_laid:
 * @plan: one in the making: its job and its strips are there, no moves and no edge work
 * @floor: the floor that they lie on
 *
 * Returns: (transfer full): as ox_plan_verify(), by rules 4 to 6 alone
 */
GPtrArray *ox_plan_verify_laid (const OxPlan *plan, const OxFloor *floor) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
