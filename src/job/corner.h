/* Oxturn: job/corner - corners of an outline added and taken away.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edits as those of job/edit.h, for rooms, excluded areas, polygons among the obstacles, and joints, whose ends are corners too.
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

/* ox_edit_corner_added: another corner at @at behind number @corner; a room's side is divided into two of its kind; (transfer full) */
OxJob *ox_edit_corner_added (const OxJob *job, const char *id, guint corner, OxPoint at, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_edit_corner_removed: without corner number @corner; of a room's two sides there the first one's kind is kept; (transfer full) */
OxJob *ox_edit_corner_removed (const OxJob *job, const char *id, guint corner, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_edit_with_points: the outline or line of item @id made of other corners; a room's sides stay with their numbers as far as there are
 * any, all further ones are walls; (transfer full) */
OxJob *ox_edit_with_points (const OxJob *job, const char *id, const OxPoint *points, guint n, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
