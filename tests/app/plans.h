/* Oxturn: tests/app/plans - somebody's plan as a file, in each kind: 40 x 20, white, black on its left half.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/traced-plan.h"
G_BEGIN_DECLS

/* ox_plan_file: an SVG of 40 x 20 mm, a PDF of 2 pages of that size, the second white all over, or a picture of 400 x 200 dots */
GBytes *ox_plan_file (OxTracedKind kind) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
