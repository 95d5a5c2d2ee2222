/* Oxturn: job/same - whether two jobs come to the same scope drawing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

/* ox_job_same_drawing: whether all that the scope drawing shows, and all that its quantities rest on, is the same: items but stations and traced plans, the
 * machine but its wear parts, rates, north, texts but the status, the lists and revisions of the scope. Not: display units, the setup of the
 * sheets, stations, calendar, test patches, cost, which the client does not sign. */
gboolean ox_job_same_drawing (const OxJob *a, const OxJob *b);

G_END_DECLS
