/* Oxturn: tests/bench/bound - hours that no plan of straight strips can do without, to see a plan's own against.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

/* bound_hours:
 * @plan: of one coat
 *
 * For the floor that the plan blasts, of area A and outline P, with blast width w, overlap o and travel speed v:
 *
 *      T >= L / v + N - t     L = max (A / w, (A - o P* / 2) / (w - o)), P* = sum over the outline of max (|e . u|, |e . v|):
 *                             each long side of a strip lies on the outline or is overlapped by o
 *                             N = integral of t (l) / (w l) over the floor: the longest strip l over a spot takes it along with
 *                             at most w l m2, and one transition t = min (swing and one lane over, roll back along l)
 *
 * Strips on one line count as one, whatever lies between them, and strips run along the first chalk line or square to it; a plan that lays
 * others beside may undercut the bound by a little. The integral is taken on a raster of 1 / 4 of the lane spacing or finer. Edge work is added at the
 * hand rate. Walks longer than one lane over are left out.
 * Example: an empty W x D rectangle, lanes along D with the outline all walls: L = D (W - o) / (w - o), the length of as many lanes, not rounded up.
 *
 * Returns: hours; 0 for an empty plan
 */
double bound_hours (const OxPlan *plan);

G_END_DECLS
