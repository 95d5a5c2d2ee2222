/* Oxturn: app/dialogs/print - sheets onto a printer, at true scale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/print.h"

#include "app/print-settings.h"
#include "paint/cairo.h"

static void
begin_cb (GtkPrintOperation *operation, GtkPrintContext *context, const OxPageSet *set)
{
  (void) context;
  gtk_print_operation_set_n_pages (operation, (int) set->n_pages);
}

/* Paper is named upright with its orientation beside it: printers know no landscape paper. */
static void
page_setup_cb (GtkPrintOperation *operation, GtkPrintContext *context, int number, GtkPageSetup *setup,
               const OxPageSet *set)
{
  const OxPage *page = &set->pages[number];
  gboolean landscape = page->width_mm > page->height_mm;
  double width = MIN (page->width_mm, page->height_mm);
  double height = MAX (page->width_mm, page->height_mm);
  GtkPaperSize *paper = gtk_paper_size_new_custom ("oxturn", page->title, width, height, GTK_UNIT_MM);

  (void) operation;
  (void) context;
  gtk_page_setup_set_orientation (setup, landscape ? GTK_PAGE_ORIENTATION_LANDSCAPE : GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_page_setup_set_paper_size (setup, paper);
  gtk_paper_size_free (paper);
}

static void
draw_cb (GtkPrintOperation *operation, GtkPrintContext *context, int number, const OxPageSet *set)
{
  (void) operation;
  ox_paint_page (gtk_print_context_get_cairo_context (context), &set->pages[number], 1);
}

gboolean
ox_print (GtkWindow *parent, const OxPageSet *set, const char *export_path, GError **error)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autofree char *file = ox_print_settings_default_file ();
  GtkPrintOperationAction action = GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG;
  GtkPrintOperationResult result;

  if (export_path == NULL)
    {
      g_autoptr (GtkPrintSettings) last = ox_print_settings_restore (file);

      gtk_print_operation_set_print_settings (operation, last);
    }
  else
    {
      gtk_print_operation_set_export_filename (operation, export_path);
      action = GTK_PRINT_OPERATION_ACTION_EXPORT;
    }
  gtk_print_operation_set_job_name (operation, set->title);
  gtk_print_operation_set_unit (operation, GTK_UNIT_MM);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  g_signal_connect (operation, "begin-print", G_CALLBACK (begin_cb), (gpointer) set);
  g_signal_connect (operation, "request-page-setup", G_CALLBACK (page_setup_cb), (gpointer) set);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_cb), (gpointer) set);
  result = gtk_print_operation_run (operation, action, parent, error);
  if (export_path == NULL && result == GTK_PRINT_OPERATION_RESULT_APPLY)
    ox_print_settings_save (gtk_print_operation_get_print_settings (operation), file);
  return result != GTK_PRINT_OPERATION_RESULT_ERROR;
}
