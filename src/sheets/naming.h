/* Oxturn: sheets/naming - how sheets name what has a name of its own or only an id.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

const char *ox_naming_of (const char *name,
                          const char *id); /* @name, or @id where it is empty; of a room see ox_room_title() */
const char *ox_naming_station (const OxJob *job,
                               const char *id); /* @id for one that the job does not have, as a proposed place */

G_END_DECLS
