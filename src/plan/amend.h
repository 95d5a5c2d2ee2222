/* Oxturn: plan/amend - the last word on a layout: strips that break a rule are cut or taken back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/layout.h"
G_BEGIN_DECLS

/* ox_layout_amend:
 * @layout: all its strips are laid
 *
 * Judges the strips by what must hold of neighbours, slots and shares (rules 4 to 6 of plan/verify.h). Where one is broken the strip
 * without which fewest breaches are left is cut or taken back, and what it covered of its own becomes edge work: a floor with a strip less is
 * sound, one with a hair's slot is not. On nearly all floors nothing is found. Costs a judgement, and one more for each strip that is doubted.
 */
void ox_layout_amend (OxLayout *layout, const OxFloor *floor, const OxJob *job);

G_END_DECLS
