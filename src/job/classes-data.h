/* Oxturn: job/classes-data - the table that make-classes.py writes from data/machines.xml when the program is built.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/machine.h"
G_BEGIN_DECLS

extern const OxMachine ox_classes_data[];
extern const guint ox_classes_data_count;

G_END_DECLS
