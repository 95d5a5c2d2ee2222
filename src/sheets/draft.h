/* Oxturn: sheets/draft - pages in the making, the flow of blocks over them, and the plot of a floor on a page.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "estimate/estimate.h"
#include "estimate/spots.h"
#include "plan/plan.h"
#include "plan/reach-line.h"
#include "sheets/form.h"
#include "sheets/labels.h"
G_BEGIN_DECLS

/* a page without its frame, which needs to know how many pages there are in the end */
typedef struct
{
  OxDrawingBuilder *builder;
  char *kind;          /* "Crew drawing" */
  char *description;
  char *scale;         /* "" where nothing is to scale */
  OxForm form;         /* of its paper */
} OxDraft;

/* what all sheets of a set share, and the drafts so far */
typedef struct
{
  const OxJob *job;
  const OxPlan *plan;
  OxForm form;
  OxScale asked;       /* denominator 0: the largest that fits */
  gboolean has_schedule; /* the set has schedules too, which list all edge work */
  GArray *drafts;      /* of OxDraft */
  const OxReachLines *reach; /* (nullable): for a crew drawing */
  const OxEstimate *estimate; /* of the plan; (nullable): without it tags name no cautions, and only drawings can be made */
  gboolean several;    /* more than one kind of sheet is made: none of them may be missing */
  const GArray *contents; /* of OxDraft; (nullable): the whole set, for its contents */
  guint contents_lines;   /* least lines of the contents; without any, and with no @contents, the set has none */
} OxSheetRun;

/* ox_sheet_run_add: one more page; it belongs to the run and moves when the next one is added */
OxDraft *ox_sheet_run_add (OxSheetRun *run, const char *kind, const char *description, const char *scale);

/* blocks that are still to be placed: from row @row of block @block on */
typedef struct
{
  GPtrArray *blocks;   /* of OxBlock; empty ones are skipped */
  guint block, row;
  gboolean has_foot;   /* the foot is placed */
  double gap_mm;       /* below a block: OX_BLOCK_GAP_MM, less in a page that is full */
} OxFlow;

/* ox_flow_fill: places what fits; @builder (nullable): NULL only tries
 * Returns: TRUE when all blocks are placed */
gboolean ox_flow_fill (OxFlow *flow, OxDrawingBuilder *builder, const OxSlot *slots, guint n);

/* ox_flow_tighten: where a few lines would go onto a page of their own, and all has room with less between the blocks, takes that gap.
 * Returns: whether everything has room */
gboolean ox_flow_tighten (OxFlow *flow, const OxSlot *slots, guint n);

/* ox_flow_finish: what is left, on as many further pages as it takes */
void ox_flow_finish (OxFlow *flow, OxSheetRun *run, const char *kind, const char *description);

/* room that a drawing needs around the floor, mm: for dimensions, or tags and their leaders */
typedef struct
{
  double left, right, below, above;
} OxAround;

#define OX_AROUND_ALL(mm) ((OxAround){ (mm), (mm), (mm), (mm) })

/* a floor on a page */
typedef struct
{
  OxBox area;          /* mm: what is kept for the drawing */
  OxPoint origin;      /* mm: where the floor's origin stands */
  double mm_per_m;
  OxScale scale;
  guint n_slots;
  OxSlot slots[8];     /* beside or below the area */
  OxBox shown;         /* m of floor: what of it is drawn; infinite: all */
  OxScale refused;     /* asked for, and larger than the page has room for: said beside the scale; denominator 0: none */
} OxPlot;

/* ox_plot_new:
 * @flow: blocks that want to stand on the same page; not changed
 * @error: OX_SHEETS_ERROR_TOO_LARGE */
gboolean ox_plot_new (const OxSheetRun *run, const OxFlow *flow, OxAround around, OxPlot *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_plot_use_below: on paper that has its blocks beside the drawing: moves the floor up and lets further blocks stand below it, where that
 * leaves room worth it, no higher than @flow needs, which is not changed; @around: as the plot was made with */
void ox_plot_use_below (OxPlot *plot, const OxSheetRun *run, const OxFlow *flow, OxAround around);

/* ox_plot_divide_part: area and slots of a page that shows a part of the floor; @flow: blocks that want to stand on it; not changed
 * @mm: (out): width and height that a part may take, @around left free beside it */
void ox_plot_divide_part (const OxSheetRun *run, const OxFlow *flow, OxAround around, OxPlot *out, double mm[2]);

/* ox_plot_set_part: puts @box, m of floor, into the middle of the area; nothing beyond it is drawn */
void ox_plot_set_part (OxPlot *plot, OxScale scale, OxBox box, OxAround around);

/* ox_plot_to_page: where a point of the floor stands on the page, mm */
OxPoint ox_plot_to_page (const OxPlot *plot, OxPoint metres);

/* ox_plot_append: the picture, scale bar, north arrow, and the lines that part the drawing from the blocks */
void ox_plot_append (const OxPlot *plot, const OxSheetRun *run, OxDrawingBuilder *builder, const OxDrawing *floor);

/* --- The sheets; each appends its drafts --- */
gboolean ox_scope_append (OxSheetRun *run, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean ox_crew_append (OxSheetRun *run, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean ox_quote_append (OxSheetRun *run, GError **error) G_GNUC_WARN_UNUSED_RESULT; /* nothing where it has no line and others are made; OX_SHEETS_ERROR_NO_QUOTE */
void ox_setup_append (OxSheetRun *run); /* one page where it can be */
void ox_schedule_append (OxSheetRun *run);
void ox_day_sheets_append (OxSheetRun *run); /* one a shift and machine, to be filled in */

/* --- Blocks that more than one sheet has --- */
/* ox_legend_new: of what is in @floor and @beside, and of nothing else. @beside: (nullable): tags and match lines; NULL: they are not drawn yet,
 * and all is in that they may bring */
OxBlock *ox_legend_new (const OxSheetRun *run, const OxDrawing *floor, const OxDrawing *beside) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  gboolean is_mark;
  OxMarkKind mark;
  OxStyle style;
  gboolean filled;  /* of no mark: a patch, else a line */
  const char *text; /* not translated */
} OxLegendEntry;

/* ox_legend_entries: all that a legend may hold, in its order */
const OxLegendEntry *ox_legend_entries (guint *n);

/* ox_edge_table_new_some: of the @n edge areas of the plan at the places @which, without a sum; NULL: the first @n */
OxBlock *ox_edge_table_new_some (const OxSheetRun *run, const char *title, const guint *which, guint n) G_GNUC_WARN_UNUSED_RESULT;
OxBlock *ox_edge_table_new (const OxSheetRun *run) G_GNUC_WARN_UNUSED_RESULT;
/* ox_checks_block_new: of the @n profile checks of @spots (OxSpot) at the places @which; NULL: the first @n */
OxBlock *ox_checks_block_new (const OxSheetRun *run, const GArray *spots, const guint *which, guint n) G_GNUC_WARN_UNUSED_RESULT;
char *ox_check_name (guint i) G_GNUC_WARN_UNUSED_RESULT; /* "PC1" for 0; (transfer full) */
/* hours of a shift as they are printed, multiples of 0.01: strips, edge and other add up to all, and all of the shifts to their sum */
typedef struct
{
  double strips, edge;
  double other; /* topping up the hopper, changing drums and wear parts */
  double all;
} OxShiftHours;

void ox_shift_hours (const OxEstimate *estimate, OxShiftHours *out); /* @out: (out): as many as the estimate has shifts, in their order */
/* ox_shift_name: "2, 2026-09-15"; ox_shift_strips: the strips laid in it, as ox_which_text() has them, "" without one; (transfer full) */
char *ox_shift_name (const OxShift *shift) G_GNUC_WARN_UNUSED_RESULT;
char *ox_shift_strips (const OxEstimate *estimate, const OxShift *shift) G_GNUC_WARN_UNUSED_RESULT;
OxBlock *ox_shift_table_new (const OxSheetRun *run, const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;
OxBlock *ox_figure_table_new (const OxSheetRun *run, const OxEstimate *estimate, OxFigureGroup group) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
