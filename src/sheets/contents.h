/* Oxturn: sheets/contents - which sheets a set has, as a block of its first one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "sheets/draft.h"
G_BEGIN_DECLS

/* ox_contents_new: one line for the sheets of one kind that follow each other in @run->contents: their numbers, what they show, their paper; empty lines
 * up to @run->contents_lines */
OxBlock *ox_contents_new (const OxSheetRun *run) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
