/* Oxturn: tests/app/test-print - sheets onto a printer, at true scale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/print.h"

#include "paint/export.h"
#include "sheets/sheets.h"
#include "support/floors.h"
#include "support/ox-test.h"
#include "ui.h"

#include <stdio.h>
#include <string.h>

/* Sizes of all pages by pdfinfo (poppler), in points of 1/72 in. */
static void
assert_page_sizes (const char *path, const OxPageSet *set)
{
  const char *argv[] = { "pdfinfo", "-f", "1", "-l", "99", path, NULL };
  g_autofree char *out = NULL;
  g_autoptr (GError) error = NULL;
  int status;
  guint pages = 0;

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_cmpint (status, ==, 0);
  for (const char *p = out; (p = strstr (p, " size:")) != NULL; p++)
    {
      double width, height;

      if (sscanf (p, " size: %lf x %lf", &width, &height) != 2
          || p[-1] == 'e') /* "File size:", "Page size:" of one page */
        continue;
      g_assert_cmpfloat_with_epsilon (width, set->pages[pages].width_mm * 72 / 25.4, 0.5);
      g_assert_cmpfloat_with_epsilon (height, set->pages[pages].height_mm * 72 / 25.4, 0.5);
      pages++;
    }
  g_assert_cmpuint (pages, ==, set->n_pages);
}

static void
test_pages (void)
{
  static const char *const papers[] = { "A4", "A3", "Letter" };
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "print.pdf", NULL);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (20, 12, "compact");
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
      g_autoptr (OxPageSet) set = NULL;
      g_autoptr (GError) error = NULL;

      options.paper = ox_paper_find (papers[i]);
      set = ox_sheets_new (job, plan, &options, &error);
      g_assert_no_error (error);
      g_assert_true (ox_print (NULL, set, path, &error));
      g_assert_no_error (error);
      assert_page_sizes (path, set);
    }
  ox_test_folder_free (folder);
}

/* Page @number of a PDF as poppler sees it, in grey at 50 dots an inch: a binary PGM. */
static GBytes *
rendered (const char *folder, const char *path, guint number)
{
  g_autofree char *page = g_strdup_printf ("%u", number);
  g_autofree char *out = g_build_filename (folder, "page", NULL);
  g_autofree char *picture = g_strconcat (out, ".pgm", NULL);
  const char *argv[] = { "pdftoppm", "-r", "50", "-gray", "-singlefile", "-f", page, "-l", page, path, out, NULL };
  g_autoptr (GError) error = NULL;
  char *data;
  gsize length;
  int status;

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_cmpint (status, ==, 0);
  g_assert_true (g_file_get_contents (picture, &data, &length, NULL));
  return g_bytes_new_take (data, length);
}

/* What goes to the printer is what the PDF shows: page by page, dot by dot but for a few on edges of lines. Pages of
 * two papers. */
static void
test_same_as_export (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *printed = g_build_filename (folder, "print.pdf", NULL);
  g_autofree char *exported = g_build_filename (folder, "export.pdf", NULL);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (20, 12, "compact");
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, NULL);
  g_autoptr (GError) error = NULL;
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  g_autoptr (OxPageSet) set = NULL;

  options.paper = ox_paper_find ("A3");
  options.schedule_paper = ox_paper_find ("A4");
  set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  g_assert_true (ox_print (NULL, set, printed, &error));
  g_assert_true (ox_export_write (set, exported, NULL, &error));
  for (guint i = 1; i <= set->n_pages; i++)
    {
      g_autoptr (GBytes) a = rendered (folder, printed, i);
      g_autoptr (GBytes) b = rendered (folder, exported, i);
      gsize length;
      const guint8 *p = g_bytes_get_data (a, &length), *q = g_bytes_get_data (b, NULL);
      gsize differing = 0;

      g_assert_cmpuint (length, ==, g_bytes_get_size (b));
      for (gsize k = 0; k < length; k++)
        differing += ABS ((int) p[k] - (int) q[k]) > 64;
      g_test_message ("page %u: %" G_GSIZE_FORMAT " of %" G_GSIZE_FORMAT, i, differing, length);
      g_assert_cmpuint (differing, <, length / 1000);
    }
  ox_test_folder_free (folder);
}

static void
test_unwritable (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (20, 12, "compact");
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, NULL);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_false (ox_print (NULL, set, "/nowhere/at/all/print.pdf", &error));
  g_assert_nonnull (error);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/print/pages", test_pages);
  g_test_add_func ("/app/print/same-as-export", test_same_as_export);
  g_test_add_func ("/app/print/unwritable", test_unwritable);
  return g_test_run ();
}
