/* Oxturn: app/canvas/canvas-private - gestures and keys of the canvas.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/canvas/canvas.h"
G_BEGIN_DECLS

/* ox_canvas_add_gestures: connects pointer, scroll, pinch and keys to the entries of canvas.h */
void ox_canvas_add_gestures (OxCanvas *canvas);

G_END_DECLS
