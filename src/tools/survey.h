/* Oxturn: tools/survey - corners read from a text: a tape sheet of lengths and directions, or a list of x and y.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One leg or corner a line. A tape sheet has a length and a direction in degrees, counter-clockwise from +x ("6.35 0", "2.10 90",
 * "12'-6 1/2\" 180"), or a turn from the leg before ("3.40 L", "3.40 R", "2 R45"); a list has x and y ("0,0", "12.5;3"). A comma, a semicolon, a
 * tab or a blank divides the two. Empty lines, what stands behind '#', and a first line of words are passed over.
 */
#pragma once
#include "base/units.h"
#include "job/job.h"
G_BEGIN_DECLS

#define OX_SURVEY_ERROR (ox_survey_error_quark ())
GQuark ox_survey_error_quark (void);
typedef enum
{
  OX_SURVEY_ERROR_LINE, /* a line cannot be read; the message names it */
  OX_SURVEY_ERROR_FEW   /* fewer than three corners */
} OxSurveyError;

#define OX_SURVEY_MAX_LINES 5000
#define OX_SURVEY_CLOSING_SHARE 0.03 /* of the whole length: a chain that ends nearer to its start was meant to come back to it */

typedef enum { OX_SURVEY_CHAIN, OX_SURVEY_LIST } OxSurveyForm;

typedef struct
{
  OxSurveyForm form;
  OxUnits units;   /* of bare numbers */
  OxPoint start;   /* of a chain */
  gboolean spread; /* whether the closing error of a chain is spread over its corners */
} OxSurveyOptions;

typedef struct
{
  OxRing *ring;     /* counter-clockwise */
  gboolean closing; /* whether a chain comes back to its start, but for @gap */
  double gap;       /* m, before it was spread: from the last end to the start */
  double length;    /* m, of the whole chain */
} OxSurvey;

void ox_survey_free (OxSurvey *survey);

/* ox_survey_read: Returns: (transfer full): NULL with @error */
OxSurvey *ox_survey_read (const char *text, const OxSurveyOptions *options, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_survey_guess: which form @text has: a list where its first line says so ("x,y") or a first figure is 0 or less, which no length
 * is; a chain otherwise */
OxSurveyForm ox_survey_guess (const char *text);

/* ox_survey_words: what is to be known of it, translated: area, closing error and its ratio; (transfer full) */
char *ox_survey_words (const OxSurvey *survey, const OxSurveyOptions *options) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxSurvey, ox_survey_free)
G_END_DECLS
