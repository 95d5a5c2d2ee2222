/* Oxturn: estimate/estimate - what a plan takes: quantities, hours and shifts, abrasive, dust, supply, hose, wear.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each result is a figure that says what it rests on. A thousand square metres take a few milliseconds.
 */
#pragma once
#include "estimate/dose.h"
#include "estimate/left.h"
G_BEGIN_DECLS

typedef enum
{
  OX_FIGURE_FLOOR, OX_FIGURE_TIME, OX_FIGURE_PROFILE, OX_FIGURE_ABRASIVE, OX_FIGURE_DUST, OX_FIGURE_SUPPLY, OX_FIGURE_HOSE,
  OX_FIGURE_EXPOSURE, OX_FIGURE_WEAR, OX_FIGURE_TESTS, OX_N_FIGURE_GROUPS
} OxFigureGroup;

typedef enum { OX_VERDICT_NONE, OX_VERDICT_FINE, OX_VERDICT_WARN, OX_VERDICT_STOP } OxVerdict;

typedef struct
{
  OxFigureGroup group;
  const char *id;      /* as in quantities.csv: "abrasive-used" */
  const char *room;    /* id of the room, of the condition area for "dose-area", "" for the whole job; borrowed from the job */
  double value;
  guint decimals;      /* with which it is shown */
  const char *unit;    /* "m2", "m", "h", "kg", "V", "%" ...; "" for a count */
  OxVerdict verdict;
  const char *basis;   /* the same as @assumption for tables: what is not translated, "" where nothing is assumed */
  char *label;         /* translated */
  char *assumption;    /* translated: what it rests on, "" where nothing is assumed */
} OxFigure;

typedef struct
{
  const OxPlan *plan; /* borrowed */
  OxWorkRules rules;
  OxWork *work;       /* of the whole plan, whatever of it is done */
  OxWork *left;       /* (nullable): of what is left where some is done */
  OxDose dose;
  double *room_m2;    /* of target, in each room of the job */
  double removed_mm;  /* mean depth taken off: the middle of what is usual for the roughest profile that a room asks for */
  double shot_dose;   /* kg/m2 under the pattern */
  double used_kg;     /* abrasive used up */
  double dust_kg;
  GPtrArray *figures; /* OxFigure, group by group */
} OxEstimate;

/* ox_estimate_new: @plan: must live as long as the estimate; @rules: (nullable): those of the job's calendar */
OxEstimate *ox_estimate_new (const OxPlan *plan, const OxWorkRules *rules) G_GNUC_WARN_UNUSED_RESULT;
void ox_estimate_free (OxEstimate *estimate);

/* ox_estimate_find: a figure of the whole job by its id; (nullable) */
const OxFigure *ox_estimate_find (const OxEstimate *estimate, const char *id);

/* ox_estimate_group_name: translated, "Floor", "Hours" ... */
const char *ox_estimate_group_name (OxFigureGroup group);

/* ox_verdict_name: "fine", "warning", "stop", "" as in the tables, untranslated */
const char *ox_verdict_name (OxVerdict verdict);

/* ox_figure_value_text: value and unit as shown, areas and lengths in @units; (transfer full) */
char *ox_figure_value_text (const OxFigure *figure, OxUnits units) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxEstimate, ox_estimate_free)
G_END_DECLS
