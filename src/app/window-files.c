/* Oxturn: app/window-files - opening, saving, sheets into files and onto paper, and closing without losing work.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/window-private.h"

#include "app/dialogs/ask.h"
#include "app/dialogs/print.h"
#include "app/recent.h"
#include "app/window-size.h"
#include "paint/export.h"

#include <glib/gi18n-lib.h>

enum
{
  ANSWER_CANCEL,
  ANSWER_DISCARD,
  ANSWER_SAVE
};

/* --- Jobs of late --- */

/* Windows of tests have no application: they leave the list of whoever runs them alone. */
static GtkRecentManager *
recent_manager (OxWindow *self)
{
  return gtk_window_get_application (GTK_WINDOW (self)) != NULL ? gtk_recent_manager_get_default () : NULL;
}

void
ox_window_update_recent (OxWindow *self)
{
  if (recent_manager (self) != NULL)
    ox_recent_fill (self->recent, recent_manager (self));
}

static void
note_recent (OxWindow *self, const char *path)
{
  if (recent_manager (self) != NULL)
    ox_recent_note (recent_manager (self), path);
}

/* --- Opening --- */

gboolean
ox_window_open (OxWindow *self, const char *path)
{
  g_autoptr (GError) error = NULL;

  if (!ox_session_open (self->session, path, &error))
    {
      ox_tell_error (GTK_WINDOW (self), _ ("This job could not be opened"), error);
      if (recent_manager (self) != NULL)
        ox_recent_forget (recent_manager (self), path);
      return FALSE;
    }
  note_recent (self, path);
  ox_canvas_fit (self->canvas);
  ox_window_set_stage (self, self->last_stage);
  return TRUE;
}

/* A window with work in it is left alone: the file gets one of its own. */
static void
open_chosen_cb (const char *path, gpointer data)
{
  OxWindow *self = OX_WINDOW (data);
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));

  if (path == NULL)
    return;
  if (application != NULL)
    {
      g_autoptr (GFile) file = g_file_new_for_path (path);

      g_application_open (G_APPLICATION (application), &file, 1, "");
    }
  else
    ox_window_open (self, path);
}

void
ox_window_open_recent (OxWindow *self, const char *path)
{
  open_chosen_cb (path, self);
}

gboolean
ox_window_drop (OxWindow *self, GSList *files)
{
  gboolean taken = FALSE;

  for (GSList *l = files; l != NULL; l = l->next)
    {
      g_autofree char *path = g_file_get_path (l->data);

      if (path != NULL && ox_window_can_trace (path))
        ox_window_bring_traced (self, path);
      else if (path != NULL && g_str_has_suffix (path, ".oxturn"))
        open_chosen_cb (path, self);
      else
        continue;
      taken = TRUE;
    }
  if (!taken)
    ox_window_tell (self, _ ("Job files (.oxturn) can be dropped here, and plans to trace: PNG, JPEG, SVG, PDF."));
  return taken;
}

void
ox_window_ask_open (OxWindow *self)
{
  self->choose_file (GTK_WINDOW (self), OX_FILE_OPEN_JOB, NULL, open_chosen_cb, self);
}

/* --- Saving --- */

static void
not_saved_cb (guint answer, gpointer data)
{
  if (answer == 1)
    ox_window_save_as (data);
  else
    OX_WINDOW (data)->close_after = FALSE;
}

static void
save_to (OxWindow *self, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  if (ox_session_save (self->session, path, &error))
    {
      note_recent (self, path);
      if (self->close_after)
        gtk_window_close (GTK_WINDOW (self));
      self->close_after = FALSE;
      return;
    }
  text = g_strdup_printf (_ ("%s\n\nNothing is lost: the job is still open here. Save it in another place."),
                          error->message);
  ox_ask (GTK_WINDOW (self),
          &(OxQuestion){ .title = _ ("The job could not be saved"),
                         .text = text,
                         .choices = { _ ("_Close"), _ ("Save _As\342\200\246") },
                         .destroys = -1 },
          not_saved_cb, self);
}

static void
save_chosen_cb (const char *path, gpointer data)
{
  OxWindow *self = OX_WINDOW (data);

  if (path != NULL)
    save_to (self, path);
  else
    self->close_after = FALSE; /* cancelling the name cancels the closing, too */
}

static char *
suggest_name (OxWindow *self, const char *ending)
{
  const char *title = ox_session_get_job (self->session)->texts->title;
  const char *path = ox_session_get_path (self->session);
  g_autofree char *name = NULL;

  if (path != NULL)
    name = g_path_get_basename (path);
  else
    name = g_strdup (*title != '\0' ? title : _ ("floor"));
  g_strdelimit (name, "/", '-');
  if (g_str_has_suffix (name, ".oxturn"))
    name[strlen (name) - strlen (".oxturn")] = '\0';
  return g_strconcat (name, ending, NULL);
}

void
ox_window_save_as (OxWindow *self)
{
  g_autofree char *name = suggest_name (self, ".oxturn");

  self->choose_file (GTK_WINDOW (self), OX_FILE_SAVE_JOB, name, save_chosen_cb, self);
}

static void
overtaken_cb (guint answer, gpointer data)
{
  OxWindow *self = OX_WINDOW (data);

  if (answer == 1)
    save_to (self, ox_session_get_path (self->session));
  else
    not_saved_cb (answer == 2 ? 1 : 0, data);
}

/* Two people on one shared folder: neither may lose an afternoon to the other's Ctrl+S. */
static void
ask_overtaken (OxWindow *self)
{
  ox_ask (GTK_WINDOW (self),
          &(OxQuestion){ .title = _ ("The file was changed by somebody else"),
                         .text = _ ("It is not as it was when it was opened or saved here. Overwriting loses what was "
                                    "changed there; under another name both are kept."),
                         .choices = { _ ("_Cancel"), _ ("_Overwrite"), _ ("Save _As\342\200\246") },
                         .destroys = 1 },
          overtaken_cb, self);
}

static void
ask_read_only (OxWindow *self)
{
  g_autofree char *name = ox_session_get_display_name (self->session);
  g_autofree char *text
      = g_strdup_printf (_ ("%s, or the folder that it is in, may only be read. Save the job under another name or in "
                            "another folder; the file stays as it is."),
                         name);

  ox_ask (GTK_WINDOW (self),
          &(OxQuestion){ .title = _ ("The file is read-only"),
                         .text = text,
                         .choices = { _ ("_Cancel"), _ ("Save _As\342\200\246") },
                         .destroys = -1 },
          not_saved_cb, self);
}

void
ox_window_save (OxWindow *self)
{
  const char *path = ox_session_get_path (self->session);

  if (path == NULL)
    ox_window_save_as (self);
  else if (ox_session_is_read_only (self->session))
    ask_read_only (self);
  else if (ox_session_is_overtaken (self->session))
    ask_overtaken (self);
  else
    save_to (self, path);
}

/* --- Sheets --- */

OxPageSet *
ox_window_make_pages (OxWindow *self, GError **error)
{
  OxSheetOptions options = ox_sheets_panel_get_options (self->sheets);

  return ox_sheets_new (ox_session_get_job (self->session), ox_session_find_plan (self->session), &options, error);
}

void
ox_window_update_pages (OxWindow *self)
{
  g_autoptr (GError) error = NULL;

  if (self->stage != OX_STAGE_SHEETS || !self->pages_stale || !ox_session_is_plan_current (self->session))
    return;
  self->pages_stale = FALSE;
  g_clear_pointer (&self->page_set, ox_page_set_unref);
  self->page_set = ox_window_make_pages (self, &error);
  ox_page_view_set (self->pages, self->page_set, error != NULL ? error->message : NULL);
}

static void
export_to (OxWindow *self, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) set = ox_window_make_pages (self, &error);
  g_auto (GStrv) written = NULL;
  g_autofree char *text = NULL;
  guint n;

  if (set == NULL || !ox_export_write (set, path, &written, &error))
    {
      ox_tell_error (GTK_WINDOW (self), _ ("The sheets could not be written"), error);
      return;
    }
  n = g_strv_length (written);
  text = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "The sheets stand in %s.", "The sheets stand in %s and %u more.", n), path, n - 1);
  ox_window_tell (self, text);
}

static void
export_chosen_cb (const char *path, gpointer data)
{
  if (path != NULL)
    export_to (data, path);
}

void
ox_window_export (OxWindow *self, OxFilePurpose purpose)
{
  g_autofree char *name = suggest_name (self, purpose == OX_FILE_SAVE_PDF ? ".pdf" : ".svg");

  self->choose_file (GTK_WINDOW (self), purpose, name, export_chosen_cb, self);
}

void
ox_window_print (OxWindow *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) set = ox_window_make_pages (self, &error);

  if (set == NULL || !ox_print (GTK_WINDOW (self), set, NULL, &error))
    ox_tell_error (GTK_WINDOW (self), _ ("The sheets could not be printed"), error);
}

/* --- Closing --- */

static void
close_answer_cb (guint answer, gpointer data)
{
  OxWindow *self = OX_WINDOW (data);

  if (answer == ANSWER_DISCARD)
    {
      self->closing = TRUE;
      gtk_window_close (GTK_WINDOW (self));
    }
  else if (answer == ANSWER_SAVE)
    {
      self->close_after = TRUE;
      ox_window_save (self);
    }
}

gboolean
ox_window_close_request (OxWindow *self)
{
  g_autofree char *name = ox_session_get_display_name (self->session);
  g_autofree char *title = g_strdup_printf (_ ("Save the changes to \342\200\234%s\342\200\235?"), name);

  /* An edit that is still being typed is taken when its field loses the focus. */
  gtk_window_set_focus (GTK_WINDOW (self), NULL);
  if (self->closing || !ox_session_is_modified (self->session))
    {
      if (gtk_window_get_application (GTK_WINDOW (self)) != NULL)
        {
          g_autofree char *file = ox_window_size_default_file ();

          OxWindowPanes panes = { .panel_px = gtk_paned_get_position (self->parts) };

          g_strlcpy (panes.stage, ox_stage_name (self->stage), sizeof panes.stage);
          ox_window_size_save (GTK_WINDOW (self), &panes, file);
        }
      ox_session_close (self->session);
      return FALSE;
    }
  ox_ask (GTK_WINDOW (self),
          &(OxQuestion){ .title = title,
                         .text = _ ("What is not saved is lost when the window closes."),
                         .choices = { _ ("_Cancel"), _ ("_Discard"), _ ("_Save") },
                         .destroys = ANSWER_DISCARD },
          close_answer_cb, self);
  return TRUE;
}
