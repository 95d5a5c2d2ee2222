/* Oxturn: tests/app/test-recent - the jobs that were open or saved last, in a list of our own.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/recent.h"

#include "support/ox-test.h"
#include "ui.h"

#include <glib/gstdio.h>

static GtkRecentManager *manager;
static char *folder;

static void
set_up (void)
{
  g_autofree char *list = NULL;

  folder = ox_test_folder_new ();
  list = g_build_filename (folder, "list.xbel", NULL);
  manager = g_object_new (GTK_TYPE_RECENT_MANAGER, "filename", list, NULL);
}

static void
tear_down (void)
{
  g_clear_object (&manager);
  ox_test_folder_free (folder);
}

static char *
make_job (const char *name)
{
  char *path = g_build_filename (folder, name, NULL);

  g_assert_true (g_file_set_contents (path, "job", -1, NULL));
  return path;
}

static gboolean
is_listed (const char *path)
{
  g_auto (GStrv) paths = ox_recent_list (manager);

  return g_strv_contains ((const char *const *) paths, path);
}

/* Eight opened, six offered. */
static void
test_six (void)
{
  g_auto (GStrv) paths = NULL;

  set_up ();
  for (guint i = 0; i < 8; i++)
    {
      g_autofree char *name = g_strdup_printf ("%u.oxturn", i);
      g_autofree char *path = make_job (name);

      ox_recent_note (manager, path);
    }
  paths = ox_recent_list (manager);
  g_assert_cmpuint (g_strv_length (paths), ==, OX_RECENT_MOST);
  tear_down ();
}

/* The newest first, whichever way they stand in the list. */
static void
test_newest_first (void)
{
  static const char *const names[] = { "b.oxturn", "c.oxturn", "a.oxturn" };
  static const char *const days[] = { "2026-09-14", "2026-09-16", "2026-09-15" };
  static const guint order[] = { 1, 2, 0 };
  g_autoptr (GBookmarkFile) marks = g_bookmark_file_new ();
  g_autofree char *list = NULL;
  g_auto (GStrv) paths = NULL;

  set_up ();
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = make_job (names[i]);
      g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);
      g_autofree char *time = g_strconcat (days[i], "T12:00:00Z", NULL);
      g_autoptr (GDateTime) noon = g_date_time_new_from_iso8601 (time, NULL);

      g_bookmark_file_set_mime_type (marks, uri, "application/x-oxturn-job+xml");
      g_bookmark_file_add_application (marks, uri, "Oxturn", "oxturn %f");
      g_bookmark_file_set_added_date_time (marks, uri, noon);
      g_bookmark_file_set_visited_date_time (marks, uri, noon);
      g_bookmark_file_set_modified_date_time (marks, uri, noon);
    }
  list = g_build_filename (folder, "written.xbel", NULL);
  g_assert_true (g_bookmark_file_to_file (marks, list, NULL));
  g_clear_object (&manager);
  manager = g_object_new (GTK_TYPE_RECENT_MANAGER, "filename", list, NULL);
  paths = ox_recent_list (manager);
  g_assert_cmpuint (g_strv_length (paths), ==, G_N_ELEMENTS (names));
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    g_assert_true (g_str_has_suffix (paths[i], names[order[i]]));
  tear_down ();
}

/* What is gone, what was forgotten and what is no job is not offered. */
static void
test_left_out (void)
{
  g_autofree char *gone = NULL;
  g_autofree char *forgotten = NULL;
  g_autofree char *other = NULL;
  g_autofree char *kept = NULL;

  set_up ();
  gone = make_job ("gone.oxturn");
  forgotten = make_job ("forgotten.oxturn");
  other = make_job ("other.txt");
  kept = make_job ("kept_well.oxturn");
  ox_recent_note (manager, gone);
  ox_recent_note (manager, forgotten);
  ox_recent_note (manager, other);
  ox_recent_note (manager, kept);
  g_assert_cmpint (g_remove (gone), ==, 0);
  ox_recent_forget (manager, forgotten);
  g_assert_true (is_listed (kept));
  g_assert_false (is_listed (gone) || is_listed (forgotten) || is_listed (other));
  tear_down ();
}

static void
test_menu (void)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  g_autofree char *path = NULL;
  g_autofree char *label = NULL;
  g_autoptr (GVariant) target = NULL;

  set_up ();
  path = make_job ("kept_well.oxturn");
  ox_recent_note (manager, path);
  ox_recent_fill (menu, manager);
  ox_recent_fill (menu, manager);
  g_assert_cmpint (g_menu_model_get_n_items (G_MENU_MODEL (menu)), ==, 1);
  g_assert_true (g_menu_model_get_item_attribute (G_MENU_MODEL (menu), 0, "label", "s", &label));
  g_assert_cmpstr (label, ==, "kept__well.oxturn");
  target = g_menu_model_get_item_attribute_value (G_MENU_MODEL (menu), 0, "target", NULL);
  g_assert_cmpstr (g_variant_get_string (target, NULL), ==, path);
  tear_down ();
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/recent/six", test_six);
  g_test_add_func ("/app/recent/newest-first", test_newest_first);
  g_test_add_func ("/app/recent/left-out", test_left_out);
  g_test_add_func ("/app/recent/menu", test_menu);
  return g_test_run ();
}
