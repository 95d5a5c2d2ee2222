/* Oxturn: tools/pick - what lies under a point, and the handles of an item.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

/* ox_pick_item:
 * @radius: m, for what is thin or small
 *
 * From above: stations, doorways, obstacles, joints, excluded areas, condition areas, rooms (inside or on a
 * side), traced plans that are neither locked nor hidden.
 * Returns: (nullable): id, belongs to the job */
const char *ox_pick_item (const OxJob *job, OxPoint at, double radius);

/* ox_pick_side: number of the side of @room within @radius of @at, -1 for none; the nearest, then the least */
int ox_pick_side (const OxRoom *room, OxPoint at, double radius);

/* ox_pick_in_box: (transfer full): ids of all items that lie in @box as a whole, NULL-ended; of traced plans as above */
char **ox_pick_in_box (const OxJob *job, OxBox box) G_GNUC_WARN_UNUSED_RESULT;

/* ox_pick_outline: corners of an item as they are seen, for a highlight; a line or a single point for what has no area
 * Returns: (transfer full): array of OxPoint, empty when there is no such item */
GArray *ox_pick_outline (const OxJob *job, const char *id) G_GNUC_WARN_UNUSED_RESULT;

/* ox_handles: points by which the item is reshaped: corners; four on a rim; two ends of a doorway
 * Returns: (transfer full): array of OxPoint, empty for what has none */
GArray *ox_handles (const OxJob *job, const char *id) G_GNUC_WARN_UNUSED_RESULT;

/* ox_handles_drag:
 * @handle: index into ox_handles()
 *
 * A corner of a polygon goes to @at; that of a rectangle takes its two sides along; a rim sets the radius; the end of a doorway stays in
 * the wall's direction.
 * Returns: (transfer full): the job after that, NULL with @error when it is refused */
OxJob *ox_handles_drag (const OxJob *job, const char *id, guint handle, OxPoint at, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_side_drag: side number @side of a room moved square to itself by @by metres, to the right of its direction; (transfer full) */
OxJob *ox_side_drag (const OxJob *job, const char *room_id, guint side, double by, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_side_set_length: side number @side made @length metres long: the side behind it is moved along, with both its ends; (transfer full) */
OxJob *ox_side_set_length (const OxJob *job, const char *room_id, guint side, double length, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_side_split: another corner on that side, at the point of it next to @at; (transfer full) */
OxJob *ox_side_split (const OxJob *job, const char *room_id, guint side, OxPoint at, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
