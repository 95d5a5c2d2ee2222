/* Oxturn: app/canvas/page-view - a page as it will be printed, with a way to the next one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/page-view.h"

#include "paint/cairo.h"

#include <glib/gi18n-lib.h>

#define MARGIN_PX 24
#define MAX_ZOOM 16.0

/* --- The sheet itself: a widget as large as the page at the present zoom --- */

#define OX_TYPE_SHEET (ox_sheet_get_type ())
G_DECLARE_FINAL_TYPE (OxSheet, ox_sheet, OX, SHEET, GtkWidget)

struct _OxSheet
{
  GtkWidget parent_instance;
  OxPageSet *set; /* Owned (nullable) */
  guint page;
  double zoom; /* 1: as large as fits */
};

G_DEFINE_FINAL_TYPE (OxSheet, ox_sheet, GTK_TYPE_WIDGET)

static const OxPage *
page_of (OxSheet *self)
{
  return self->set != NULL && self->page < self->set->n_pages ? &self->set->pages[self->page] : NULL;
}

static void
ox_sheet_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  OxSheet *self = OX_SHEET (widget);
  const OxPage *page = page_of (self);
  double width = gtk_widget_get_width (widget);
  double height = gtk_widget_get_height (widget);
  double px_per_mm, left, top;
  const GdkRGBA white = { 1, 1, 1, 1 };
  const GdkRGBA shade = { 0, 0, 0, 0.35f };
  graphene_rect_t paper;
  GskRoundedRect edge;
  cairo_t *cr;

  if (page == NULL)
    return;
  px_per_mm = MIN ((width - 2 * MARGIN_PX) / page->width_mm, (height - 2 * MARGIN_PX) / page->height_mm);
  left = round ((width - page->width_mm * px_per_mm) / 2);
  top = round ((height - page->height_mm * px_per_mm) / 2);
  paper = GRAPHENE_RECT_INIT ((float) left, (float) top, (float) (page->width_mm * px_per_mm),
                              (float) (page->height_mm * px_per_mm));
  gsk_rounded_rect_init_from_rect (&edge, &paper, 0);
  gtk_snapshot_append_outset_shadow (snapshot, &edge, &shade, 0, 1, 0, 8);
  gtk_snapshot_append_color (snapshot, &white, &paper);
  cr = gtk_snapshot_append_cairo (snapshot, &paper);
  cairo_translate (cr, left, top);
  ox_paint_page (cr, page, px_per_mm);
  cairo_destroy (cr);
}

/* At zoom 1 the sheet asks for nothing and takes the place it is given. */
static void
ox_sheet_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                  int *minimum_baseline, int *natural_baseline)
{
  OxSheet *self = OX_SHEET (widget);
  GtkWidget *port = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);
  int size = 0;

  (void) for_size;
  (void) minimum_baseline;
  (void) natural_baseline;
  if (port != NULL && self->zoom > 1)
    size = (int) (self->zoom
                  * (orientation == GTK_ORIENTATION_HORIZONTAL ? gtk_widget_get_width (port)
                                                               : gtk_widget_get_height (port)));
  *minimum = *natural = size;
}

static void
ox_sheet_finalize (GObject *object)
{
  g_clear_pointer (&OX_SHEET (object)->set, ox_page_set_unref);
  G_OBJECT_CLASS (ox_sheet_parent_class)->finalize (object);
}

static void
ox_sheet_class_init (OxSheetClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ox_sheet_finalize;
  GTK_WIDGET_CLASS (klass)->snapshot = ox_sheet_snapshot;
  GTK_WIDGET_CLASS (klass)->measure = ox_sheet_measure;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ox_sheet_init (OxSheet *self)
{
  self->zoom = 1;
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

/* --- The view around it --- */

struct _OxPageView
{
  GtkWidget parent_instance;

  /* Children */
  OxSheet *sheet;
  GtkWidget *why;
  GtkWidget *scrolled;
  GtkWidget *bar;
  GtkLabel *label;
  GtkWidget *back;
  GtkWidget *forward;
};

G_DEFINE_FINAL_TYPE (OxPageView, ox_page_view, GTK_TYPE_WIDGET)

static void
update (OxPageView *self)
{
  const OxPage *page = page_of (self->sheet);
  guint n = self->sheet->set != NULL ? self->sheet->set->n_pages : 0;
  g_autofree char *text = NULL;

  gtk_widget_set_visible (self->why, page == NULL);
  gtk_widget_set_visible (self->scrolled, page != NULL);
  gtk_widget_set_visible (self->bar, page != NULL);
  if (page == NULL)
    return;
  text = g_strdup_printf (_ ("%s, page %u of %u"), page->title, self->sheet->page + 1, n);
  gtk_label_set_text (self->label, text);
  gtk_widget_set_sensitive (self->back, self->sheet->page > 0);
  gtk_widget_set_sensitive (self->forward, self->sheet->page + 1 < n);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->sheet), GTK_ACCESSIBLE_PROPERTY_LABEL, page->title,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, page->description, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self->sheet));
}

void
ox_page_view_set (OxPageView *self, const OxPageSet *set, const char *why)
{
  OxPageSet *copy = set != NULL ? ox_page_set_ref (set) : NULL;

  g_clear_pointer (&self->sheet->set, ox_page_set_unref);
  self->sheet->set = copy;
  if (copy != NULL)
    self->sheet->page = MIN (self->sheet->page, copy->n_pages - 1);
  gtk_label_set_text (GTK_LABEL (self->why), why != NULL ? why : "");
  update (self);
}

static void
set_zoom (OxPageView *self, double zoom)
{
  self->sheet->zoom = CLAMP (zoom, 1, MAX_ZOOM);
  gtk_widget_queue_resize (GTK_WIDGET (self->sheet));
}

void
ox_page_view_zoom (OxPageView *self, double factor)
{
  set_zoom (self, self->sheet->zoom * factor);
}

void
ox_page_view_fit (OxPageView *self)
{
  set_zoom (self, 1);
}

static void
turn_cb (GtkWidget *button, OxPageView *self)
{
  self->sheet->page = button == self->back ? self->sheet->page - 1 : self->sheet->page + 1;
  update (self);
}

static gboolean
scroll_cb (GtkEventControllerScroll *scroll, double dx, double dy, OxPageView *self)
{
  (void) dx;
  if ((gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (scroll)) & GDK_CONTROL_MASK) == 0)
    return FALSE;
  ox_page_view_zoom (self, pow (1.15, -dy));
  return TRUE;
}

static GtkWidget *
make_turn_button (OxPageView *self, const char *icon, const char *name)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_set_tooltip_text (button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect (button, "clicked", G_CALLBACK (turn_cb), self);
  return button;
}

static void
ox_page_view_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ox_page_view_parent_class)->dispose (object);
}

static void
ox_page_view_class_init (OxPageViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ox_page_view_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "pageview");
}

static void
ox_page_view_init (OxPageView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (gtk_widget_get_layout_manager (widget)), GTK_ORIENTATION_VERTICAL);
  self->sheet = g_object_new (OX_TYPE_SHEET, "hexpand", TRUE, "vexpand", TRUE, NULL);
  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), GTK_WIDGET (self->sheet));
  self->why = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->why), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->why), 50);
  gtk_widget_set_hexpand (self->why, TRUE);
  gtk_widget_set_vexpand (self->why, TRUE);
  self->bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  self->label = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_ellipsize (self->label, PANGO_ELLIPSIZE_END); /* of large letters there are too many for a small window */
  self->back = make_turn_button (self, "go-previous-symbolic", _ ("Page before"));
  self->forward = make_turn_button (self, "go-next-symbolic", _ ("Next page"));
  gtk_widget_set_halign (self->bar, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (self->bar, "pagebar");
  gtk_box_append (GTK_BOX (self->bar), self->back);
  gtk_box_append (GTK_BOX (self->bar), GTK_WIDGET (self->label));
  gtk_box_append (GTK_BOX (self->bar), self->forward);
  gtk_widget_set_parent (self->why, widget);
  gtk_widget_set_parent (self->scrolled, widget);
  gtk_widget_set_parent (self->bar, widget);
  gtk_event_controller_set_propagation_phase (scroll, GTK_PHASE_CAPTURE);
  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  gtk_widget_add_controller (self->scrolled, scroll);
  update (self);
}

GtkWidget *
ox_page_view_new (void)
{
  return g_object_new (OX_TYPE_PAGE_VIEW, NULL);
}
