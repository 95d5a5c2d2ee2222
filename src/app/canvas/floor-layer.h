/* Oxturn: app/canvas/floor-layer - the floor picture, painted off the main thread and kept.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture is somewhat larger than what is seen: panning only shifts it. When the view leaves it, zooms, or the drawing changes, a new
 * one is painted by a worker while the old one is shown, scaled to its place.
 */
#pragma once
#include "app/traced/store.h"
#include "drawing/drawing.h"
#include "drawing/view.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

#define OX_TYPE_FLOOR_LAYER (ox_floor_layer_get_type ())
G_DECLARE_FINAL_TYPE (OxFloorLayer, ox_floor_layer, OX, FLOOR_LAYER, GtkWidget)

GtkWidget *ox_floor_layer_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_floor_layer_set_drawing: @drawing: in metres of floor; painted as soon as there is a view with a size */
void ox_floor_layer_set_drawing (OxFloorLayer *layer, const OxDrawing *drawing);

/* ox_floor_layer_set_traced: what shines through the floor from below */
void ox_floor_layer_set_traced (OxFloorLayer *layer, const OxTracedSet *traced);

/* ox_floor_layer_set_view: which part of the floor the widget shows, with the widget's size */
void ox_floor_layer_set_view (OxFloorLayer *layer, const OxView *view);

/* ox_floor_layer_set_grid: lines of paper every @step metres; 0: none */
void ox_floor_layer_set_grid (OxFloorLayer *layer, double step);

gboolean ox_floor_layer_is_settled (OxFloorLayer *layer); /* what is shown is what was set */

/* ox_palette_of: the palette that suits the theme which @widget is shown in */
OxPalette ox_palette_of (GtkWidget *widget);

G_END_DECLS
