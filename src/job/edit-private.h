/* Oxturn: job/edit-private - how every edit ends, for the files of this module.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/edit.h"
G_BEGIN_DECLS

/* ox_edit_finish: takes @builder; NULL with @error when its job breaks a rule that @old kept */
OxJob *ox_edit_finish (const OxJob *old, OxJobBuilder *builder, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_edit_no_item: sets OX_JOB_ERROR_NO_ITEM; always NULL */
gpointer ox_edit_no_item (const char *id, GError **error);

G_END_DECLS
