/* Oxturn: job/value - figures as a job holds them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "geometry/point.h"
G_BEGIN_DECLS

/* ox_value_snap: to 1e-6 of the unit, as a file holds it, so that a job read back plans to the same bytes; far finer than any data plate. Never -0. */
double ox_value_snap (double value);

/* ox_value_is_within: both ends allowed; FALSE for NaN */
gboolean ox_value_is_within (double value, double least, double most);

/* ox_value_is_over: more than 0 and at most @most; FALSE for NaN */
gboolean ox_value_is_over (double value, double most);

/* ox_value_is_place: both coordinates within OX_COORD_MAX */
gboolean ox_value_is_place (OxPoint p);

G_END_DECLS
