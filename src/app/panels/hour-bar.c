/* Oxturn: app/panels/hour-bar - labour hours as a bar: strips, moves, edge work, and where the ideal lies.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/hour-bar.h"

#include <glib/gi18n-lib.h>

#define HEIGHT_PX 12
#define STEP_PX 5.0 /* between the slanting lines of edge work */

struct _OxHourBar
{
  GtkWidget parent_instance;
  double hours[3]; /* strips, moves, edge work */
  double ideal;
};

G_DEFINE_FINAL_TYPE (OxHourBar, ox_hour_bar, GTK_TYPE_WIDGET)

void
ox_hour_bar_set (OxHourBar *self, double strips, double moves, double edge_work, double ideal)
{
  g_autofree char *text = g_strdup_printf (_ ("Strips %.1f h, moves %.1f h, edge work %.1f h; ideal %.1f h"), strips,
                                           moves, edge_work, ideal);

  self->hours[0] = strips;
  self->hours[1] = moves;
  self->hours[2] = edge_work;
  self->ideal = ideal;
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* The parts differ by pattern, not by colour alone: full, thin, slanting lines as edge work has them on paper. */
static void
draw_part (cairo_t *cr, guint part, double x, double width)
{
  cairo_save (cr);
  cairo_rectangle (cr, x, 0, width, HEIGHT_PX);
  cairo_clip (cr);
  if (part == 0)
    cairo_paint_with_alpha (cr, 0.75);
  else if (part == 1)
    cairo_paint_with_alpha (cr, 0.3);
  else
    {
      cairo_paint_with_alpha (cr, 0.12);
      cairo_set_line_width (cr, 1.4);
      for (double at = x - HEIGHT_PX; at < x + width; at += STEP_PX)
        {
          cairo_move_to (cr, at, HEIGHT_PX);
          cairo_line_to (cr, at + HEIGHT_PX, 0);
        }
      cairo_stroke (cr);
    }
  cairo_restore (cr);
}

static void
ox_hour_bar_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  OxHourBar *self = OX_HOUR_BAR (widget);
  double width = gtk_widget_get_width (widget);
  double top = (gtk_widget_get_height (widget) - HEIGHT_PX) / 2.0;
  double sum = self->hours[0] + self->hours[1] + self->hours[2];
  double x = 0;
  GdkRGBA ink;
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) gtk_widget_get_height (widget)));

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &ink);
  gdk_cairo_set_source_rgba (cr, &ink);
  cairo_translate (cr, 0, round (top));
  for (guint i = 0; i < 3 && sum > 0; i++)
    {
      double part = self->hours[i] / MAX (sum, self->ideal) * width;

      draw_part (cr, i, x, part);
      x += part;
    }
  cairo_set_line_width (cr, 1);
  cairo_rectangle (cr, 0.5, 0.5, width - 1, HEIGHT_PX - 1);
  cairo_stroke (cr);
  if (sum > 0)
    {
      cairo_rectangle (cr, round (self->ideal / MAX (sum, self->ideal) * width) - 1, -3, 2, HEIGHT_PX + 6);
      cairo_fill (cr);
    }
  cairo_destroy (cr);
}

static void
ox_hour_bar_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                     int *minimum_baseline, int *natural_baseline)
{
  (void) widget;
  (void) for_size;
  (void) minimum_baseline;
  (void) natural_baseline;
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 80 : HEIGHT_PX + 6;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 220 : HEIGHT_PX + 6;
}

static void
ox_hour_bar_class_init (OxHourBarClass *klass)
{
  GTK_WIDGET_CLASS (klass)->snapshot = ox_hour_bar_snapshot;
  GTK_WIDGET_CLASS (klass)->measure = ox_hour_bar_measure;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "hourbar");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ox_hour_bar_init (OxHourBar *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Labour hours"), -1);
}

GtkWidget *
ox_hour_bar_new (void)
{
  return g_object_new (OX_TYPE_HOUR_BAR, NULL);
}
