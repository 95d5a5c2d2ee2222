/* Oxturn: tests/app/test-page-view - a page as it will be printed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/page-view.h"

#include "sheets/sheets.h"
#include "support/floors.h"
#include "ui.h"

static OxPageSet *
make_pages (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (20, 12, "compact");
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, NULL);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;

  return ox_sheets_new (job, plan, &options, NULL);
}

static void
test_turning (void)
{
  g_autoptr (OxPageSet) set = make_pages ();
  GtkWidget *window = gtk_window_new ();
  GtkWidget *view = ox_page_view_new ();
  GtkWidget *back, *forward;

  g_assert_cmpuint (set->n_pages, >, 1);
  gtk_window_set_child (GTK_WINDOW (window), view);
  gtk_window_set_default_size (GTK_WINDOW (window), 800, 600);
  ox_page_view_set (OX_PAGE_VIEW (view), set, NULL);
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (window);
  back = ox_ui_find (view, GTK_TYPE_BUTTON, "Page before");
  forward = ox_ui_find (view, GTK_TYPE_BUTTON, "Next page");
  g_assert_false (gtk_widget_get_sensitive (back));
  for (guint i = 1; i < set->n_pages; i++)
    {
      g_assert_true (gtk_widget_get_sensitive (forward));
      g_signal_emit_by_name (forward, "clicked");
      ox_ui_find (view, GTK_TYPE_WIDGET, set->pages[i].title);
    }
  g_assert_false (gtk_widget_get_sensitive (forward));
  g_signal_emit_by_name (back, "clicked");
  g_assert_true (gtk_widget_get_sensitive (forward));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The paper is white whatever the theme, and something is drawn on it. */
static void
test_paper (void)
{
  g_autoptr (OxPageSet) set = make_pages ();
  GtkWidget *window = gtk_window_new ();
  GtkWidget *view = ox_page_view_new ();
  g_autoptr (GdkTexture) texture = NULL;
  g_autofree guint32 *pixels = NULL;
  gsize width, height;
  guint white = 0;

  gtk_window_set_child (GTK_WINDOW (window), view);
  gtk_window_set_default_size (GTK_WINDOW (window), 800, 600);
  ox_page_view_set (OX_PAGE_VIEW (view), set, NULL);
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (window);
  OX_WAIT_FOR (gtk_widget_get_width (view) > 0);
  texture = ox_ui_picture (view);
  width = (gsize) gdk_texture_get_width (texture);
  height = (gsize) gdk_texture_get_height (texture);
  pixels = g_new (guint32, width * height);
  gdk_texture_download (texture, (guchar *) pixels, width * 4);
  for (gsize i = 0; i < width * height; i++)
    white += (pixels[i] & 0xffffff) == 0xffffff;
  g_assert_cmpuint (white, >, width * height / 4);
  g_assert_cmpuint (white, <, width * height * 9 / 10);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_says_why_not (void)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *view = ox_page_view_new ();

  gtk_window_set_child (GTK_WINDOW (window), view);
  ox_page_view_set (OX_PAGE_VIEW (view), NULL, "The floor does not fit.");
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (window);
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (gtk_widget_get_first_child (view))), ==, "The floor does not fit.");
  g_assert_true (gtk_widget_get_visible (gtk_widget_get_first_child (view)));
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/page-view/turning", test_turning);
  g_test_add_func ("/app/page-view/paper", test_paper);
  g_test_add_func ("/app/page-view/says-why-not", test_says_why_not);
  return g_test_run ();
}
