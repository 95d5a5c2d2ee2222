/* Oxturn: tests/app/test-print - sheets onto a printer, at true scale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/print.h"

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
  g_test_add_func ("/app/print/unwritable", test_unwritable);
  return g_test_run ();
}
