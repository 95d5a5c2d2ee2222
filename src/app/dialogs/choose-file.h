/* Oxturn: app/dialogs/choose-file - asks for the name of a file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

typedef enum { OX_FILE_OPEN_JOB, OX_FILE_OPEN_CORNERS, OX_FILE_OPEN_TRACED, OX_FILE_SAVE_JOB, OX_FILE_SAVE_PDF, OX_FILE_SAVE_SVG } OxFilePurpose;

/* OxFileChosen: @path: (nullable): NULL when nothing was chosen */
typedef void (*OxFileChosen) (const char *path, gpointer data);

/* OxChooseFile: what asks; a window can be given another one.
 * @suggested: (nullable): name without a folder */
typedef void (*OxChooseFile) (GtkWindow *parent, OxFilePurpose purpose, const char *suggested, OxFileChosen done, gpointer data);

/* ox_choose_file: with the desktop's file chooser; the ending that the purpose needs is added to a name without one */
void ox_choose_file (GtkWindow *parent, OxFilePurpose purpose, const char *suggested, OxFileChosen done, gpointer data);

/* ox_file_has_ending: whether @path ends as the files of @purpose do, in small letters or capitals */
gboolean ox_file_has_ending (const char *path, OxFilePurpose purpose);

/* ox_file_with_ending: @path, with the ending of @purpose when it has another one or none; (transfer full) */
char *ox_file_with_ending (const char *path, OxFilePurpose purpose) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
