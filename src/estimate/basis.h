/* Oxturn: estimate/basis - the figures an estimate rests on, and how they are told.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/plan.h"
#include "trade/defaults.h"
G_BEGIN_DECLS

/* ox_basis: value of a default figure (trade/defaults.h), by its id */
double ox_basis (const char *id);

/* ox_basis_note: the same with unit and source, "1100 kg/m3 (common practice, no source)"; (transfer full) */
char *ox_basis_note (const char *id) G_GNUC_WARN_UNUSED_RESULT;

/* ox_basis_csp:
 * @profile: target profile as written in the job: "CSP 3", "CSP 3-5", "csp 4 to 6"
 * @low, @high: (out): 1 to 10; both the same where one step is asked for
 *
 * Returns: FALSE where the text names no CSP
 */
gboolean ox_basis_csp (const char *profile, int *low, int *high);

/* ox_basis_csp_asked:
 * @least, @most: (out): lowest and highest first step that the rooms ask for; where none asks both are what is usual ("csp-usual")
 *
 * Returns: whether a room asks for one
 */
gboolean ox_basis_csp_asked (const OxJob *job, int *least, int *most);

/* ox_basis_unit: "kg/m2" as it is written for people, with raised figures; (transfer full) */
char *ox_basis_unit (const char *unit) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
