/* Oxturn: app/print-settings - which printer was chosen last, and how it was set, for the next print.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Paper and orientation are those of the sheets. Kept in a file of its own, which may be missing, old or spoiled.
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

char *ox_print_settings_default_file (void) G_GNUC_WARN_UNUSED_RESULT; /* in the user's folder of settings; (transfer full) */

/* ox_print_settings_restore: (transfer full): those of @file, or a printer's own; always at true scale, one sheet on a page */
GtkPrintSettings *ox_print_settings_restore (const char *file) G_GNUC_WARN_UNUSED_RESULT;

/* ox_print_settings_save: all but what belongs to one print: which pages, how many copies, a file to print into, a scale, several sheets on a
 * page. What cannot be written is left */
void ox_print_settings_save (GtkPrintSettings *settings, const char *file);

G_END_DECLS
