/* Oxturn: app/panels/dose-key - what the looks of the dose map mean, and how much floor has them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/dose-key.h"

#include "app/canvas/floor-layer.h"
#include "estimate/dose.h"
#include "paint/cairo.h"

#include <glib/gi18n-lib.h>

#define PATCH_WIDTH_PX 34
#define PATCH_HEIGHT_PX 18
#define SCREEN_PX_PER_MM (96 / 25.4)

static const struct
{
  const char *name;
  OxStyle style;
} rows[OX_DOSE_LEVELS] = {
  { N_ ("not blasted"), OX_STYLE_DOSE_NONE },
  { N_ ("blasted once"), OX_STYLE_DOSE_ONCE },
  { N_ ("blasted twice"), OX_STYLE_DOSE_TWICE },
  { N_ ("three times or more"), OX_STYLE_DOSE_MORE },
};

typedef struct
{
  OxSession *session; /* Borrowed */
  GtkWidget *grid;    /* Borrowed, as all below, from the box */
  GtkLabel *areas[OX_DOSE_LEVELS];
} DoseKey;

/* The same patch as on the floor: one table of looks, one painter. */
static void
draw_patch (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  OxView view = ox_view_with_size (&(OxView){ .centre = { 0.5, 0.5 }, .px_per_m = MAX (width, height) }, width, height);
  OxPalette palette = ox_palette_of (GTK_WIDGET (area));
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  g_autoptr (OxDrawing) drawing = NULL;
  guint32 ground = ox_palette_get_ground (palette);

  ox_drawing_builder_layer (builder, "key", "key");
  ox_drawing_builder_box (builder, rows[GPOINTER_TO_UINT (data)].style, (OxBox){ 0, 0, 1, 1 });
  drawing = ox_drawing_builder_end (builder);
  cairo_set_source_rgb (cr, ((ground >> 16) & 0xff) / 255.0, ((ground >> 8) & 0xff) / 255.0, (ground & 0xff) / 255.0);
  cairo_paint (cr);
  ox_paint_cairo (cr, drawing, &(OxPaintOptions){ .view = view, .px_per_mm = SCREEN_PX_PER_MM, .palette = palette });
}

static void
update (GtkWidget *root)
{
  DoseKey *self = g_object_get_data (G_OBJECT (root), "ox-dose-key");
  const OxPlan *plan = ox_session_find_plan (self->session);
  OxDose dose;

  if (plan == NULL || !gtk_widget_get_visible (self->grid))
    return;
  dose = ox_dose_of (plan);
  for (guint i = 0; i < OX_DOSE_LEVELS; i++)
    {
      g_autofree char *text = ox_units_area_text (plan->job->units, dose.area[i]);

      gtk_label_set_text (self->areas[i], text);
    }
}

static void
toggled_cb (GtkCheckButton *check, GParamSpec *pspec, GtkWidget *root)
{
  DoseKey *self = g_object_get_data (G_OBJECT (root), "ox-dose-key");

  (void) pspec;
  gtk_widget_set_visible (self->grid, gtk_check_button_get_active (check));
  update (root);
}

static void
add_row (DoseKey *self, guint i)
{
  GtkWidget *patch = gtk_drawing_area_new ();
  GtkWidget *name = gtk_label_new (_ (rows[i].name));
  GtkWidget *area = gtk_label_new (NULL);

  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (patch), PATCH_WIDTH_PX);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (patch), PATCH_HEIGHT_PX);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (patch), draw_patch, GUINT_TO_POINTER (i), NULL);
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_xalign (GTK_LABEL (area), 1);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_add_css_class (area, "figure");
  gtk_accessible_update_relation (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_RELATION_LABELLED_BY, name, NULL, -1);
  self->areas[i] = GTK_LABEL (area);
  gtk_grid_attach (GTK_GRID (self->grid), patch, 0, (int) i, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), name, 1, (int) i, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), area, 2, (int) i, 1, 1);
}

GtkWidget *
ox_dose_key_new (OxSession *session)
{
  GtkWidget *root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *check = gtk_check_button_new_with_label (_ ("Dose map"));
  DoseKey *self = g_new0 (DoseKey, 1);

  self->session = session;
  self->grid = g_object_new (GTK_TYPE_GRID, "row-spacing", 2, "column-spacing", 8, "visible", FALSE, NULL);
  gtk_widget_set_margin_start (self->grid, 24);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (check), "win.show-dose");
  g_object_set_data_full (G_OBJECT (root), "ox-dose-key", self, g_free);
  for (guint i = 0; i < OX_DOSE_LEVELS; i++)
    add_row (self, i);
  gtk_box_append (GTK_BOX (root), check);
  gtk_box_append (GTK_BOX (root), self->grid);
  g_signal_connect_object (check, "notify::active", G_CALLBACK (toggled_cb), root, 0);
  g_signal_connect_object (session, "plan-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  return root;
}
