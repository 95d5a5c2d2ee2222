/* Oxturn: job/classes - the machine classes shipped in data/machines.xml (examples of our own, to be replaced by the data plate).
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/machine.h"
G_BEGIN_DECLS

guint ox_classes_get_count (void);
const OxMachine *ox_classes_get (guint i);           /* i < count; sorted as in the file */
const OxMachine *ox_classes_find (const char *id);   /* (nullable) */

G_END_DECLS
