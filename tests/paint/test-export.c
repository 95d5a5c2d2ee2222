/* Oxturn: tests of paint/export
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "paint/export.h"
#include "paint/sample-pages.h"
#include "support/ox-test.h"
#include <string.h>

static void
test_endings (void)
{
  g_assert_true (ox_export_knows ("sheets.pdf"));
  g_assert_true (ox_export_knows ("/a.b/sheets.SVG"));
  g_assert_false (ox_export_knows ("sheets.png"));
  g_assert_false (ox_export_knows (".svg"));
  g_assert_false (ox_export_knows ("svg"));
}

static void
test_a_file_for_each_svg_page (void)
{
  g_autoptr (OxPageSet) set = ox_test_pages ();
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "crew.v2.svg", NULL);
  g_autofree char *second = g_build_filename (folder, "crew.v2-2.svg", NULL);
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) written = NULL;
  g_assert_true (ox_export_write (set, path, &written, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (g_strv_length (written), ==, 2);
  g_assert_cmpstr (written[0], ==, path);
  g_assert_cmpstr (written[1], ==, second);
  for (guint i = 0; i < 2; i++)
    {
      g_autofree char *contents = NULL;
      g_file_get_contents (written[i], &contents, NULL, &error);
      g_assert_no_error (error);
      g_assert_true (g_str_has_prefix (contents, "<?xml"));
      g_assert_nonnull (strstr (contents, set->pages[i].title));
    }
  ox_test_folder_free (folder);
}

static void
test_one_pdf_for_all_pages (void)
{
  g_autoptr (OxPageSet) set = ox_test_pages ();
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "sheets.PDF", NULL);
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) written = NULL;
  g_assert_true (ox_export_write (set, path, &written, &error));
  g_assert_cmpuint (g_strv_length (written), ==, 1);
  g_autofree char *contents = NULL;
  g_assert_true (g_file_get_contents (path, &contents, NULL, &error));
  g_assert_true (g_str_has_prefix (contents, "%PDF-1."));
  ox_test_folder_free (folder);
}

static void
test_failures_say_where (void)
{
  g_autoptr (OxPageSet) set = ox_test_pages ();
  g_autoptr (GError) error = NULL;
  g_assert_false (ox_export_write (set, "sheets.png", NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_SUPPORTED);
  g_assert_nonnull (strstr (error->message, "sheets.png"));
  g_clear_error (&error);
  g_assert_false (ox_export_write (set, "/nowhere/at/all/sheets.pdf", NULL, &error));
  g_assert_nonnull (error);
  g_assert_nonnull (strstr (error->message, "/nowhere/at/all/sheets.pdf"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/export/endings", test_endings);
  g_test_add_func ("/export/svg", test_a_file_for_each_svg_page);
  g_test_add_func ("/export/pdf", test_one_pdf_for_all_pages);
  g_test_add_func ("/export/failures", test_failures_say_where);
  return g_test_run ();
}
