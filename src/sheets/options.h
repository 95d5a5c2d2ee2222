/* Oxturn: sheets/options - how a job wants its sheets.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "sheets/sheets.h"
G_BEGIN_DECLS

/* ox_sheet_options_take: all but which sheets; @language: where options->language points to if the job has one; it must live as long */
void ox_sheet_options_take (OxSheetOptions *options, const OxJob *job, OxLanguage *language);

/* ox_sheet_options_keep: as a job holds them; @out: (out): its texts are not copied */
void ox_sheet_options_keep (const OxSheetOptions *options, OxSheetSetup *out);

G_END_DECLS
