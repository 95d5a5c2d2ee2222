/* Oxturn: app/canvas/canvas-private - the parts of the canvas that its files share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/canvas/canvas.h"
#include "app/canvas/reach-keeper.h"
#include "app/traced/store.h"
G_BEGIN_DECLS

struct _OxCanvas
{
  GtkWidget parent_instance;

  /* Template children */
  GtkWidget *floor;
  GtkWidget *overlay;
  GtkWidget *menu; /* (nullable) until it is asked for */

  /* Owned */
  OxSession *session;
  OxTool *tool;
  OxDrawing *drawing; /* (nullable) what the floor layer shows */
  OxTracedStore *traced;
  OxReachKeeper *reach;
  char *pointed;      /* (nullable) id of what the pointer rests on, of the plan */
  char *words;        /* (nullable) what it is */
  char *mark_date;

  gboolean in_trouble; /* something was refused just now ... */
  OxPoint trouble;     /* ... because of this place */

  double clock; /* minutes of work shown, < 0 for none */
  OxView view;
  OxFloorLayers layers;
  OxObstacleKind obstacle_kind;
  OxMark mark;
  gboolean mark_up_to;
  OxPixel pointer; /* where the pointer is, or where the keys moved it to */
  double pinched;  /* scale of the pinch under way */
  gboolean whole;  /* all of the floor is shown, and nothing else was asked for since */
  gboolean fitted; /* whether the view was chosen, by us or by the user */
  guint redraw_id; /* idle source that makes the drawing anew, 0 for none */
};

/* ox_canvas_add_gestures: connects pointer, scroll, pinch and keys to the entries of canvas.h */
void ox_canvas_add_gestures (OxCanvas *canvas);

/* ox_canvas_popup_menu: @under_pointer: selects what is at @at first */
void ox_canvas_popup_menu (OxCanvas *canvas, OxPixel at, gboolean under_pointer);

/* ox_canvas_set_view: another part of the floor, as it is; the signal goes out */
void ox_canvas_set_view (OxCanvas *canvas, OxView view);

/* ox_canvas_update_overlay: shows what the tool, the selection and the pointer want to be seen now */
void ox_canvas_update_overlay (OxCanvas *canvas);

G_END_DECLS
