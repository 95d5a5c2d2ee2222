/* Oxturn: app/dialogs/choose-file - asks for the name of a file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/choose-file.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxFilePurpose purpose;
  OxFileChosen done;
  gpointer data;
} Choice;

static const struct
{
  const char *title;
  const char *accept;
  const char *filter;
  const char *ending;    /* that is added to a name without one */
  const char *others[4]; /* that are as good, of a file to be opened */
} purposes[] = {
  [OX_FILE_OPEN_JOB] = { N_ ("Open a Job"), N_ ("_Open"), N_ ("Oxturn jobs"), ".oxturn" },
  [OX_FILE_OPEN_CORNERS] = { N_ ("Read Corners"), N_ ("_Read"), N_ ("Lists of corners"), ".csv" },
  [OX_FILE_OPEN_TRACED] = { N_ ("Bring In a Plan to Trace"),
                            N_ ("_Bring In"),
                            N_ ("Pictures and PDF"),
                            ".pdf",
                            { "png", "jpg", "jpeg", "svg" } },
  [OX_FILE_SAVE_JOB] = { N_ ("Save the Job"), N_ ("_Save"), N_ ("Oxturn jobs"), ".oxturn" },
  [OX_FILE_SAVE_PDF] = { N_ ("Save Sheets as PDF"), N_ ("_Save"), N_ ("PDF documents"), ".pdf" },
  [OX_FILE_SAVE_SVG] = { N_ ("Save Sheets as SVG"), N_ ("_Save"), N_ ("SVG pictures"), ".svg" },
};

static gboolean
is_open (OxFilePurpose purpose)
{
  return purpose == OX_FILE_OPEN_JOB || purpose == OX_FILE_OPEN_CORNERS || purpose == OX_FILE_OPEN_TRACED;
}

gboolean
ox_file_has_ending (const char *path, OxFilePurpose purpose)
{
  const char *const *others = purposes[purpose].others;
  g_autofree char *small = g_ascii_strdown (path, -1);
  const char *dot = strrchr (small, '.');

  if (g_str_has_suffix (small, purposes[purpose].ending))
    return TRUE;
  for (guint i = 0; dot != NULL && i < G_N_ELEMENTS (purposes[purpose].others) && others[i] != NULL; i++)
    if (g_str_equal (dot + 1, others[i]))
      return TRUE;
  return FALSE;
}

char *
ox_file_with_ending (const char *path, OxFilePurpose purpose)
{
  return ox_file_has_ending (path, purpose) ? g_strdup (path) : g_strconcat (path, purposes[purpose].ending, NULL);
}

static void
response_cb (GtkNativeDialog *dialog, int response, Choice *choice)
{
  g_autoptr (GFile) file
      = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)) : NULL;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  g_autofree char *named
      = path != NULL && !is_open (choice->purpose) ? ox_file_with_ending (path, choice->purpose) : g_strdup (path);

  gtk_native_dialog_destroy (dialog);
  choice->done (named, choice->data);
  g_object_unref (dialog);
}

static void
add_filters (GtkFileChooser *chooser, OxFilePurpose purpose)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();
  g_autoptr (GtkFileFilter) all = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ (purposes[purpose].filter));
  gtk_file_filter_add_suffix (filter, purposes[purpose].ending + 1);
  for (guint i = 0; i < G_N_ELEMENTS (purposes[purpose].others) && purposes[purpose].others[i] != NULL; i++)
    gtk_file_filter_add_suffix (filter, purposes[purpose].others[i]);
  gtk_file_chooser_add_filter (chooser, filter);
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (chooser, all);
}

void
ox_choose_file (GtkWindow *parent, OxFilePurpose purpose, const char *suggested, OxFileChosen done, gpointer data)
{
  gboolean open = is_open (purpose);
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (
      _ (purposes[purpose].title), parent, open ? GTK_FILE_CHOOSER_ACTION_OPEN : GTK_FILE_CHOOSER_ACTION_SAVE,
      _ (purposes[purpose].accept), _ ("_Cancel"));
  Choice *choice = g_new0 (Choice, 1);

  *choice = (Choice){ .purpose = purpose, .done = done, .data = data };
  add_filters (GTK_FILE_CHOOSER (dialog), purpose);
  if (suggested != NULL && !open)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), suggested);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect_data (dialog, "response", G_CALLBACK (response_cb), choice, (GClosureNotify) (GCallback) g_free, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}
