/* Oxturn: app/recent - the jobs that were open or saved last, for the menu.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/recent.h"

#define MIME_TYPE "application/x-oxturn-job+xml"
#define SUFFIX ".oxturn"

void
ox_recent_note (GtkRecentManager *manager, const char *path)
{
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);
  GtkRecentData data = { .mime_type = (char *) MIME_TYPE, .app_name = (char *) "Oxturn", .app_exec = (char *) "oxturn %f" };

  if (uri != NULL)
    gtk_recent_manager_add_full (manager, uri, &data);
}

void
ox_recent_forget (GtkRecentManager *manager, const char *path)
{
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);

  if (uri != NULL)
    gtk_recent_manager_remove_item (manager, uri, NULL);
}

static int
compare_newest (gconstpointer a, gconstpointer b)
{
  int order = g_date_time_compare (gtk_recent_info_get_modified ((GtkRecentInfo *) b),
                                   gtk_recent_info_get_modified ((GtkRecentInfo *) a));

  return order != 0 ? order
                    : g_strcmp0 (gtk_recent_info_get_uri ((GtkRecentInfo *) a), gtk_recent_info_get_uri ((GtkRecentInfo *) b));
}

char **
ox_recent_list (GtkRecentManager *manager)
{
  GList *items = g_list_sort (gtk_recent_manager_get_items (manager), compare_newest);
  g_autoptr (GPtrArray) paths = g_ptr_array_new ();

  for (GList *l = items; l != NULL && paths->len < OX_RECENT_MOST; l = l->next)
    {
      g_autofree char *path = g_filename_from_uri (gtk_recent_info_get_uri (l->data), NULL, NULL);

      if (path != NULL && g_str_has_suffix (path, SUFFIX) && g_file_test (path, G_FILE_TEST_IS_REGULAR))
        g_ptr_array_add (paths, g_steal_pointer (&path));
    }
  g_list_free_full (items, (GDestroyNotify) gtk_recent_info_unref);
  g_ptr_array_add (paths, NULL);
  return (char **) g_ptr_array_free (g_steal_pointer (&paths), FALSE);
}

/* An underscore in a name is no access key. */
static char *
label_of (const char *path)
{
  g_autofree char *name = g_filename_display_basename (path);
  g_auto (GStrv) parts = g_strsplit (name, "_", -1);

  return g_strjoinv ("__", parts);
}

void
ox_recent_fill (GMenu *menu, GtkRecentManager *manager)
{
  g_auto (GStrv) paths = ox_recent_list (manager);

  g_menu_remove_all (menu);
  for (guint i = 0; paths[i] != NULL; i++)
    {
      g_autofree char *label = label_of (paths[i]);
      g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

      g_menu_item_set_action_and_target (item, "win.open-recent", "s", paths[i]);
      g_menu_append_item (menu, item);
    }
}
