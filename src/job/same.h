/* Oxturn: job/same - whether two jobs come to what a client signs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rule: whatever stands on the scope drawing or the quote, or changes them or the plan that the crew follows, is signed. So are floor, machine,
 * rates, stations, test patches, calendar, cost, outfit, display units, north, texts, the lists and revisions of the scope. Not signed are the
 * record and the wear parts, which say what was done; the status, which says what became of the drawing; the setup of the sheets, since the
 * same drawing on other paper, at another scale or in another language stays the same drawing; traced plans, which no sheet shows.
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

/* ox_job_same_drawing: whether all that is signed, by the rule above, is the same */
gboolean ox_job_same_drawing (const OxJob *a, const OxJob *b);

G_END_DECLS
