/* Oxturn: app/canvas/overlay-layer - what a tool wants to be seen, over the floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "drawing/view.h"
#include "tools/preview.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

#define OX_TYPE_OVERLAY_LAYER (ox_overlay_layer_get_type ())
G_DECLARE_FINAL_TYPE (OxOverlayLayer, ox_overlay_layer, OX, OVERLAY_LAYER, GtkWidget)

GtkWidget *ox_overlay_layer_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_overlay_layer_set: @preview: (transfer full) */
void ox_overlay_layer_set (OxOverlayLayer *layer, const OxView *view, OxPreview *preview);

G_END_DECLS
