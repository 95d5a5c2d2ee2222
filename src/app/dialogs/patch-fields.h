/* Oxturn: app/dialogs/patch-fields - the fields for one test patch.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/field.h"
#include "job/terms.h"
G_BEGIN_DECLS

typedef struct _OxPatchFields OxPatchFields;

/* ox_patch_fields_new: @changed: called with @data whenever anybody typed; owned by its widget. Returns: (transfer none) */
OxPatchFields *ox_patch_fields_new (GCallback changed, gpointer data);
GtkWidget *ox_patch_fields_get_widget (OxPatchFields *fields);

/* ox_patch_fields_get_trial: those of its pattern trial, to stand elsewhere; the first widget must be kept as long. Returns: (transfer none) */
GtkWidget *ox_patch_fields_get_trial (OxPatchFields *fields);

/* ox_patch_fields_show: without calling back */
void ox_patch_fields_show (OxPatchFields *fields, const OxPatch *patch);

/* ox_patch_fields_read:
 * @patch: its texts are replaced, (transfer full); figures that cannot be read stay as they are
 * Returns: (transfer full) (nullable): why something that stands there cannot be; its field then has the focus if @focus is TRUE */
char *ox_patch_fields_read (OxPatchFields *fields, OxPatch *patch, gboolean focus) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
