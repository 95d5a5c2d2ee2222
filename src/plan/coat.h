/* Oxturn: plan/coat - the coats of each room.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A coat is a full covering of strips. A room asks for a number of them, a condition area for one of its own where it has one:
 *
 *      +---------------------+      room: 2 coats            coat 1: all of the room
 *      |        +------+     |      A: 3 coats               coat 2: the room less B
 *      |   B    |  A   |     |      B: 1 coat                coat 3: A alone
 *      +--------+------+-----+
 *
 * Where condition areas overlap, the most coats of them hold; an area without a number of its own (0) has that of the room.
 *
 * Floor is blasted where every coat that it asks for covers it. What one coat or more misses is edge work, done by hand once whatever the
 * number of coats that miss it.
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

/* One coat of one room, to be laid. */
typedef struct
{
  guint room;       /* index in the job */
  guint coat;       /* from 1 */
  OxRegion *target; /* of the room: floor that asks for so many coats or more; never empty but for coat 1 */
} OxCoat;

/* ox_coats_new:
 * @rooms: target of each room of @job
 * @n: (out): how many
 *
 * Returns: (transfer full): room by room in the order of the job, coat by coat; ox_coats_free()
 */
OxCoat *ox_coats_new (const OxJob *job, OxRegion *const *rooms, guint *n) G_GNUC_WARN_UNUSED_RESULT;
void ox_coats_free (OxCoat *coats, guint n);

/* ox_coats_most: the highest number of coats, 0 when there are none */
guint ox_coats_most (const OxCoat *coats, guint n);

/* ox_coats_floor: all floor that asks for @coat coats or more; (transfer full) */
OxRegion *ox_coats_floor (const OxCoat *coats, guint n, guint coat) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
