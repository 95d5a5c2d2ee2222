/* Oxturn: sheets/agreed - what client and contractor agree on, as blocks of the scope drawing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "sheets/draft.h"
G_BEGIN_DECLS

/* ox_agreed_lines_new: a list of the scope; below the assumptions stand the notes of the job */
OxBlock *ox_agreed_lines_new (const OxSheetRun *run, OxScopeList list) G_GNUC_WARN_UNUSED_RESULT;

/* ox_agreed_revisions_new: oldest first; the present one is always there */
OxBlock *ox_agreed_revisions_new (const OxSheetRun *run) G_GNUC_WARN_UNUSED_RESULT;

/* ox_agreed_sign_off_new: names the drawing and the revision that are accepted; who did, or room to sign. The foot of its page */
OxBlock *ox_agreed_sign_off_new (const OxSheetRun *run) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
