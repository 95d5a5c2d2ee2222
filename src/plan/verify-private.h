/* Oxturn: plan/verify-private - what the parts of the plan's judge share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/floor.h"
#include "plan/verify-grid.h"
#include "plan/verify-bounds.h"
#include "plan/verify.h"
G_BEGIN_DECLS

#define OX_VERIFY_BODY_TOLERANCE 0.002     /* m: swept bodies, turning circles, corridors, covered floor */
#define OX_VERIFY_ACCOUNT_TOLERANCE 1e-4   /* share of the target */
#define OX_VERIFY_OVERLAP_TOLERANCE 0.0005 /* m */
#define OX_VERIFY_MAX_BREACHES 100

typedef struct
{
  const OxStrip *strip;
  OxAxes axes;      /* at the start, looking at the stop */
  double length;      /* m from start to stop */
  OxBox cover;        /* covered floor, in these axes */
  OxPoint corners[4]; /* the same on the floor */
} OxVerifyStrip;

typedef struct
{
  const OxPlan *plan;
  const OxMachine *machine;
  const OxFloor *floor;      /* made anew from the job */
  OxBounds *travel_bounds;
  guint n_coats;            /* the highest number of coats */
  OxRegion **asking;        /* floor that asks for each coat; coat k at k - 1 */
  OxBounds **asking_bounds;
  OxRegion **covered;       /* all that the strips of each coat cover */
  OxVerifyStrip *strips; /* plan->n_strips of them */
  OxBoxGrid *strip_grid; /* of what they cover */
  GArray *near;          /* guint, scratch for queries of strip_grid */
  GPtrArray *breaches;
} OxVerify;

void ox_verify_blame (OxVerify *verify, OxRule rule, guint strip, OxPoint at, const char *format, ...) G_GNUC_PRINTF (5, 6);

/* ox_verify_subtract_cover:
 * @coat: from 1
 * @axes, @y: a line on the floor
 * @pieces: pieces of that line; what the strips of the coat cover is taken out
 */
void ox_verify_subtract_cover (OxVerify *verify, guint coat, OxAxes axes, double y, GArray *pieces);

/* ox_verify_asking: the bounds of the floor that asks for the coat of a strip */
OxBounds *ox_verify_asking (const OxVerify *verify, const OxStrip *strip);

/* ox_verify_cover_piece: where the line at height @y of some axes runs inside the four @corners given in them; FALSE when nowhere */
gboolean ox_verify_cover_piece (const OxPoint corners[4], double y, OxPiece *piece);

/* ox_verify_joins: whether strip @index lies between two that would be too far apart without it to overlap as they must: it is not laid for nothing
 * even where they cover all of it */
gboolean ox_verify_joins (OxVerify *verify, guint index);

void ox_verify_account (OxVerify *verify); /* rule 3 and the totals */
void ox_verify_strips (OxVerify *verify);  /* rules 1 and 6, and the target */
void ox_verify_use (OxVerify *verify);     /* rule 6 alone: none laid for nothing */
void ox_verify_lanes (OxVerify *verify);   /* rule 4 */
void ox_verify_slots (OxVerify *verify);   /* rule 5 */
void ox_verify_paces (OxVerify *verify);   /* rule 7: speeds and minutes */
void ox_verify_moves (OxVerify *verify);   /* rules 2 and 7 */

G_END_DECLS
