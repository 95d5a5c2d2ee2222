/* Oxturn: sheets/split - the crew drawing of a floor that is too large for one legible sheet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One sheet shows the whole floor, where the sheets meet and what holds for all of it; each part (sheets/parts.h) has its own, at a scale at
 * which strips can be told apart, with a key plan and match lines that name the neighbours. Tables that find no room follow at the end.
 */
#pragma once
#include "sheets/draft.h"
G_BEGIN_DECLS

/* ox_split_is_needed: whether strips would be too close on one sheet, or the floor is too large for it at the scale asked for */
gboolean ox_split_is_needed (const OxSheetRun *run);

/* ox_split_append: @kind: "Crew drawing", translated */
gboolean ox_split_append (OxSheetRun *run, const char *kind, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
