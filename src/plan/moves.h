/* Oxturn: plan/moves - the moves between strips that follow each other.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/plan.h"
#include "plan/way.h"
G_BEGIN_DECLS

/* ox_move_make:
 * @from, @to: strips that follow each other
 * @out: (out): its path is (transfer full), g_free(); kind, minutes and turning point as in plan.h
 *
 * A pull-back rolls back along @from to a strip with the same heading beside it; a swing turns the machine round near by; a walk leads to a strip
 * elsewhere, with a swing on the way where the heading changes.
 * Returns: FALSE when there is no way on wheels; @out then has no path, and the minutes of the straight way at walking speed
 */
gboolean ox_move_make (OxWays *ways, const OxMachine *machine, const OxStrip *from, const OxStrip *to, OxMove *out);

G_END_DECLS
