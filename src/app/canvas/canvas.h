/* Oxturn: app/canvas/canvas - the floor on screen: layers, view, and the tool that is in hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two layers of the same size: the floor picture, drawn once per change, and over it what the tool shows. Gestures become plain events
 * of the tool (tools/tool.h) and nothing more; tests call the same entries.
 * Signals: "tool-changed" (), "hint-changed" (), "view-changed" (), "refused" (const char *why).
 */
#pragma once
#include "app/traced/picture.h"
#include "drawing/view.h"
#include "session/session.h"
#include "sheets/floor.h"
#include "tools/tool.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

#define OX_TYPE_CANVAS (ox_canvas_get_type ())
G_DECLARE_FINAL_TYPE (OxCanvas, ox_canvas, OX, CANVAS, GtkWidget)

GtkWidget *ox_canvas_new (OxSession *session) G_GNUC_WARN_UNUSED_RESULT;

void ox_canvas_set_tool (OxCanvas *canvas, OxToolKind kind); /* what was half done with the old one is dropped */
OxToolKind ox_canvas_get_tool (OxCanvas *canvas);
const char *ox_canvas_get_hint (OxCanvas *canvas);
void ox_canvas_set_obstacle_kind (OxCanvas *canvas, OxObstacleKind kind);
OxObstacleKind ox_canvas_get_obstacle_kind (OxCanvas *canvas);
void ox_canvas_set_layers (OxCanvas *canvas, OxFloorLayers layers);
OxFloorLayers ox_canvas_get_layers (OxCanvas *canvas);

/* ox_canvas_set_mark: what strips and edge work are marked with from now on, and whether a click means all strips up to it; copied */
void ox_canvas_set_mark (OxCanvas *canvas, const OxMark *mark, gboolean up_to);

const OxView *ox_canvas_get_view (OxCanvas *canvas);
void ox_canvas_zoom (OxCanvas *canvas, double factor); /* about the middle */
void ox_canvas_fit (OxCanvas *canvas);
void ox_canvas_show_selected (OxCanvas *canvas); /* what is selected, as large as it goes */
void ox_canvas_show_point (OxCanvas *canvas, OxPoint at); /* brings a place into the middle */

/* ox_canvas_point_out: @id: (nullable): a strip, edge area or zone of the plan, as in session/plan-words.h; it is outlined, and the hint
 * says what it is, as when the pointer rests on it */
void ox_canvas_point_out (OxCanvas *canvas, const char *id);

/* ox_canvas_set_clock: shows the machine after @minutes of the work, and what is worked off by then; below 0: nothing of that */
void ox_canvas_set_clock (OxCanvas *canvas, double minutes);

void ox_canvas_select_all (OxCanvas *canvas);
void ox_canvas_delete_selected (OxCanvas *canvas); /* as the Delete key does, whatever tool is in hand */

/* ox_canvas_add_picture: page @page of a file that a traced plan of the next job will have, decoded already */
void ox_canvas_add_picture (OxCanvas *canvas, GBytes *data, guint page, const OxTracedPicture *picture);

/* ox_canvas_is_settled: what is on screen is the floor and the plan as they are now */
gboolean ox_canvas_is_settled (OxCanvas *canvas);

/* Events, in pixels of the canvas. */
void ox_canvas_press (OxCanvas *canvas, OxPixel at, OxHold hold, guint clicks);
void ox_canvas_motion (OxCanvas *canvas, OxPixel at, OxHold hold);
void ox_canvas_release (OxCanvas *canvas, OxPixel at, OxHold hold);
gboolean ox_canvas_key (OxCanvas *canvas, const OxKey *key);
void ox_canvas_pan (OxCanvas *canvas, OxPixel by);
void ox_canvas_zoom_at (OxCanvas *canvas, double factor, OxPixel about);

/* ox_canvas_pinch: the fingers are @scale times as far apart as when they came down, about the point between them */
void ox_canvas_pinch_begin (OxCanvas *canvas);
void ox_canvas_pinch (OxCanvas *canvas, double scale, OxPixel about);

/* ox_canvas_scroll: pans, with Shift to the side, or zooms at the pointer with Control
 * @by: notches of a @wheel, or pixels of a touchpad */
void ox_canvas_scroll (OxCanvas *canvas, OxPixel by, gboolean wheel, OxHold hold);

G_END_DECLS
