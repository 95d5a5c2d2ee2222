/* Oxturn: sheets/sheets - the set of sheets of a job: scope drawing, quote, crew drawing, set-up card, schedules, day sheets.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Frame, grid and title block are laid out after ISO 5457 and ISO 7200, lines and letters after ISO 128-2 and ISO 3098.
 * Write a set with ox_export_write() (paint/export.h), paint a page with ox_paint_page() (paint/cairo.h).
 */
#pragma once
#include "base/words.h"
#include "drawing/page.h"
#include "plan/plan.h"
#include "sheets/paper.h"
G_BEGIN_DECLS

#define OX_SHEETS_ERROR (ox_sheets_error_quark ())
GQuark ox_sheets_error_quark (void);
typedef enum
{
  OX_SHEETS_ERROR_NO_FLOOR, /* the job has no room to draw */
  OX_SHEETS_ERROR_NO_QUOTE, /* a quote is asked for alone and has no line; or its amounts are too large to be added up */
  OX_SHEETS_ERROR_TOO_LARGE /* the floor does not fit on the paper at the scale asked for; the message names one that does */
} OxSheetsError;

typedef enum
{
  OX_SHEET_SCOPE = 1 << 0,
  OX_SHEET_CREW = 1 << 1,
  OX_SHEET_SCHEDULE = 1 << 2,
  OX_SHEET_QUOTE = 1 << 3,
  OX_SHEET_SETUP = 1 << 4,
  OX_SHEET_DAYS = 1 << 5,
  OX_SHEET_ALL = OX_SHEET_SCOPE | OX_SHEET_CREW | OX_SHEET_SCHEDULE | OX_SHEET_QUOTE | OX_SHEET_SETUP | OX_SHEET_DAYS
} OxSheetKinds;

typedef struct
{
  OxSheetKinds which;
  const OxPaper *paper;      /* of the drawings; NULL: A3, or Tabloid where the job is in feet or the language is of a place that uses it */
  OxOrientation orientation; /* auto: A4 and Letter upright, larger paper landscape */
  OxScale scale;             /* denominator 0: the largest of the series that fits */
  const OxPaper *tiles;      /* (nullable): paper of an office printer, onto which larger pages are parted; see sheets/tiles.h */
  const OxLanguage *language; /* (nullable): NULL: that of the window, or of the person at the batch command */
  const OxPaper *schedule_paper; /* of lists and forms; NULL: as the drawings up to A3 and Tabloid, A4 or Letter beside larger ones */
} OxSheetOptions;

#define OX_SHEET_OPTIONS_INIT { OX_SHEET_ALL, NULL, OX_ORIENTATION_AUTO, { 0, NULL }, NULL, NULL, NULL }

/* ox_sheet_kinds_parse: "scope", "quote", "crew", "setup", "schedule", "days", "all" */
gboolean ox_sheet_kinds_parse (const char *text, OxSheetKinds *out) G_GNUC_WARN_UNUSED_RESULT;

/* ox_sheets_new: @plan must be a plan of @job
 * Returns: (transfer full): one page or more, in the order scope, quote, crew, set-up card, schedules, day sheets. Where the quote has
 * no line - no rates of cost, or quantities that all round to 0 - several sheets have none; asked for alone it fails. */
OxPageSet *ox_sheets_new (const OxJob *job, const OxPlan *plan, const OxSheetOptions *options, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
