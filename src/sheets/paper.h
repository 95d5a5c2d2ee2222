/* Oxturn: sheets/paper - paper sizes and the series of scales.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A sizes after ISO 216; ANSI sizes after ASME Y14.1 and architectural sizes, whole and half inches at 25.4 mm. Scales: 1, 2, 5 times powers
 * of ten (after ISO 5455), and the US architectural and engineering series.
 */
#pragma once
#include "base/units.h"
G_BEGIN_DECLS

typedef struct
{
  const char *name;      /* "A3", "Letter", "Arch D": not translated */
  double short_mm, long_mm;
  gboolean imperial;     /* of the US series */
} OxPaper;

guint ox_paper_get_count (void);
const OxPaper *ox_paper_get (guint i);              /* i < count */
const OxPaper *ox_paper_find (const char *name);    /* (nullable); case, blanks and '-' do not matter; "ANSI A" is Letter, "ANSI B" Tabloid */

typedef struct
{
  double denominator;    /* 100 for 1:100 */
  const char *name;      /* (nullable): "1/8\" = 1'-0\"" for a scale of the US series, NULL: the ratio says it */
} OxScale;

/* ox_scale_parse:
 * @text: "1:100", "1:96", "1/8in", "1/8\"=1'-0\"", "1in=20ft"; "auto" and the empty text give the denominator 0
 * Returns: FALSE when it is no scale from 1:1 to 1:100000 */
gboolean ox_scale_parse (const char *text, OxScale *out) G_GNUC_WARN_UNUSED_RESULT;

/* ox_scale_fit: the largest scale of the series (US for OX_UNITS_FEET) at which @metres fit into @mm; both as width and height */
OxScale ox_scale_fit (OxUnits units, const double metres[2], const double mm[2]);

/* ox_scale_at_least: the smallest scale of the series that is not smaller than 1:@denominator, >= 1 */
OxScale ox_scale_at_least (OxUnits units, double denominator);

/* ox_scale_named: 1:@denominator, with its name where it is one of the US series and @units are feet; 0 stays 0 */
OxScale ox_scale_named (OxUnits units, double denominator);

/* ox_scale_text: "1:100" or "1/8\" = 1'-0\" (1:96)"; (transfer full) */
char *ox_scale_text (OxScale scale) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
