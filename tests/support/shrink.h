/* Oxturn: tests/support/shrink - a job made small that still shows what a large one showed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

/* FALSE where @job does not show what it is about; it has no error. */
typedef gboolean (*OxTestShows) (const OxJob *job, gpointer data);

/* ox_test_shrink:
 * @job: one for which @shows is TRUE
 * @tries: how often @shows may be asked
 *
 * Takes away items, coats, corners of rooms, then decimals of corners, as long as it still shows. Returns: (transfer full) */
OxJob *ox_test_shrink (const OxJob *job, OxTestShows shows, gpointer data, guint tries) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_outlines: a line of well-known text for each room, obstacle, excluded and condition area and doorway, with its id; (transfer full) */
char *ox_test_outlines (const OxJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
