/* Oxturn: app/application - the program: its windows, the files it is given, and work that comes back after a crash.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/application.h"

#include "app/actions.h"
#include "app/colour-scheme.h"
#include "app/dialogs/ask.h"
#include "app/dialogs/keys.h"
#include "app/window.h"

#include <glib/gi18n-lib.h>
#include <langinfo.h>

#define RESOURCES "/org/oxturn/Oxturn"
#define HELP_URI "help:oxturn"

struct _OxApplication
{
  GtkApplication parent_instance;

  gboolean looked_for_copies;
};

G_DEFINE_FINAL_TYPE (OxApplication, ox_application, GTK_TYPE_APPLICATION)

/* First byte of the locale's measurement: 2 is the US system (locale(5)). */
static OxUnits
usual_units (void)
{
#ifdef _NL_MEASUREMENT_MEASUREMENT
  return *nl_langinfo (_NL_MEASUREMENT_MEASUREMENT) == 2 ? OX_UNITS_FEET : OX_UNITS_METRES;
#else
  return OX_UNITS_METRES;
#endif
}

static OxWindow *
new_window (OxApplication *self)
{
  g_autoptr (OxJob) job = ox_session_new_job (usual_units ());
  g_autofree char *folder = ox_crash_copy_default_folder ();
  g_autoptr (OxSession) session = ox_session_new (job, ox_plan_new, folder);
  OxWindow *window = ox_window_new (GTK_APPLICATION (self), session);

  gtk_window_present (GTK_WINDOW (window));
  return window;
}

/* --- Work that was not saved when the program stopped --- */

typedef struct
{
  OxWindow *window; /* Owned reference */
  char *file;
} Lost;

static void
lost_answer_cb (guint answer, gpointer data)
{
  Lost *lost = data;
  g_autoptr (GError) error = NULL;

  if (answer == 1)
    ox_crash_copy_discard (lost->file);
  else if (answer == 2)
    {
      if (ox_session_restore (ox_window_get_session (lost->window), lost->file, &error))
        ox_canvas_fit (ox_window_get_canvas (lost->window));
      else
        ox_tell_error (GTK_WINDOW (lost->window), _ ("The work could not be brought back"), error);
    }
  g_object_unref (lost->window);
  g_free (lost->file);
  g_free (lost);
}

static void
offer_copies (OxApplication *self)
{
  g_autofree char *folder = ox_crash_copy_default_folder ();
  g_auto (GStrv) files = ox_crash_copy_list (folder);

  if (self->looked_for_copies)
    return;
  self->looked_for_copies = TRUE;
  for (guint i = 0; files[i] != NULL; i++)
    {
      OxWindow *window = new_window (self);
      Lost *lost = g_new0 (Lost, 1);

      lost->window = g_object_ref (window);
      lost->file = g_strdup (files[i]);
      ox_ask (GTK_WINDOW (window),
              &(OxQuestion){
                  .title = _ ("Bring back work that was not saved?"),
                  .text
                  = _ ("Oxturn stopped before this job was saved. It can be brought back as it was at the last edit."),
                  .choices = { _ ("_Later"), _ ("_Discard"), _ ("_Bring Back") },
                  .destroys = 1 },
              lost_answer_cb, lost);
    }
}

/* --- Starting --- */

static void
ox_application_activate (GApplication *application)
{
  OxApplication *self = OX_APPLICATION (application);

  offer_copies (self);
  if (gtk_application_get_windows (GTK_APPLICATION (self)) == NULL)
    new_window (self);
}

/* A file that is open already raises its window; an untouched window is as good as a new one. */
static OxWindow *
window_for (OxApplication *self, const char *path, gboolean *is_open)
{
  OxWindow *untouched = NULL;

  *is_open = FALSE;
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    {
      if (!OX_IS_WINDOW (l->data))
        continue;
      if (g_strcmp0 (ox_session_get_path (ox_window_get_session (l->data)), path) == 0)
        {
          *is_open = TRUE;
          return l->data;
        }
      if (ox_window_is_untouched (l->data))
        untouched = l->data;
    }
  return untouched != NULL ? untouched : new_window (self);
}

static void
ox_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  OxApplication *self = OX_APPLICATION (application);

  (void) hint;
  offer_copies (self);
  for (int i = 0; i < n_files; i++)
    {
      g_autofree char *path = g_file_get_path (files[i]);
      gboolean is_open;
      OxWindow *window;

      if (path == NULL)
        continue;
      window = window_for (self, path, &is_open);
      gtk_window_present (GTK_WINDOW (window));
      if (!is_open)
        ox_window_open (window, path);
    }
}

/* --- Actions of the program --- */

static void
new_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  new_window (data);
}

/* Each window asks for itself; one that stays open keeps the program running. */
static void
quit_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  g_autoptr (GList) windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (data)));

  (void) action;
  (void) value;
  for (GList *l = windows; l != NULL; l = l->next)
    gtk_window_close (GTK_WINDOW (l->data));
}

static void
keys_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_keys_present (gtk_application_get_active_window (GTK_APPLICATION (data)));
}

static void
help_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (data));
  g_autoptr (GError) error = NULL;

  (void) action;
  (void) value;
  if (!g_app_info_launch_default_for_uri (HELP_URI, NULL, &error) && window != NULL)
    ox_tell_error (window, _ ("The manual could not be opened"), error);
}

static void
about_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_about_present (gtk_application_get_active_window (GTK_APPLICATION (data)));
}

static const GActionEntry entries[] = {
  { .name = "new", .activate = new_cb },     { .name = "quit", .activate = quit_cb },
  { .name = "keys", .activate = keys_cb },   { .name = "help", .activate = help_cb },
  { .name = "about", .activate = about_cb },
};

void
ox_application_prepare_display (GdkDisplay *display)
{
  g_autoptr (GtkCssProvider) provider = gtk_css_provider_new ();

  gtk_css_provider_load_from_resource (provider, RESOURCES "/ui/oxturn.css");
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (provider),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  gtk_icon_theme_add_resource_path (gtk_icon_theme_get_for_display (display), RESOURCES "/icons");
}

static void
ox_application_startup (GApplication *application)
{
  G_APPLICATION_CLASS (ox_application_parent_class)->startup (application);
  g_action_map_add_action_entries (G_ACTION_MAP (application), entries, G_N_ELEMENTS (entries), application);
  ox_actions_set_accels (GTK_APPLICATION (application));
  ox_application_prepare_display (gdk_display_get_default ());
  ox_colour_scheme_follow (g_application_get_dbus_connection (application), OX_COLOUR_SCHEME_PORTAL,
                           gtk_settings_get_default ());
}

static void
ox_application_class_init (OxApplicationClass *klass)
{
  G_APPLICATION_CLASS (klass)->activate = ox_application_activate;
  G_APPLICATION_CLASS (klass)->open = ox_application_open;
  G_APPLICATION_CLASS (klass)->startup = ox_application_startup;
}

static void
ox_application_init (OxApplication *self)
{
  (void) self;
}

OxApplication *
ox_application_new (void)
{
  return g_object_new (OX_TYPE_APPLICATION, "application-id", OX_APPLICATION_ID, "flags", G_APPLICATION_HANDLES_OPEN,
                       "register-session", TRUE, NULL);
}
