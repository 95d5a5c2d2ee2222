/* Oxturn: app/canvas/canvas-view - which part of the floor the canvas shows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/canvas-private.h"

#include "app/canvas/floor-layer.h"
#include "job/place.h"
#include "session/selection.h"
#include "tools/snap.h"

#define FIT_MARGIN_PX 48
#define ZOOM_STEP 1.15
#define NOTCH_PX 60.0 /* of a wheel */
#define GRID_MIN_PX 12.0 /* lines of the paper stand no closer than this */

static double
grid_step (OxCanvas *self)
{
  OxUnits units = ox_session_get_job (self->session)->units;

  return ox_snap_step (units, self->view.px_per_m * 6 / GRID_MIN_PX);
}

void
ox_canvas_set_view (OxCanvas *self, OxView view)
{
  self->view = view;
  ox_floor_layer_set_grid (OX_FLOOR_LAYER (self->floor), grid_step (self));
  ox_floor_layer_set_view (OX_FLOOR_LAYER (self->floor), &self->view);
  ox_canvas_update_overlay (self);
  g_signal_emit_by_name (self, "view-changed");
}

const OxView *
ox_canvas_get_view (OxCanvas *self)
{
  return &self->view;
}

void
ox_canvas_pan (OxCanvas *self, OxPixel by)
{
  self->whole = FALSE;
  self->fitted = TRUE;
  ox_canvas_set_view (self, ox_view_with_pan (&self->view, by));
}

void
ox_canvas_zoom_at (OxCanvas *self, double factor, OxPixel about)
{
  self->whole = FALSE;
  self->fitted = TRUE;
  ox_canvas_set_view (self, ox_view_with_zoom (&self->view, factor, about));
}

void
ox_canvas_scroll (OxCanvas *self, OxPixel by, gboolean wheel, OxHold hold)
{
  double px = wheel ? NOTCH_PX : 1;

  if ((hold & OX_HOLD_CONTROL) != 0)
    ox_canvas_zoom_at (self, pow (ZOOM_STEP, -by.y * px / NOTCH_PX), self->pointer);
  else if ((hold & OX_HOLD_SHIFT) != 0 && by.x == 0)
    ox_canvas_pan (self, (OxPixel){ -by.y * px, 0 });
  else
    ox_canvas_pan (self, (OxPixel){ -by.x * px, -by.y * px });
}

void
ox_canvas_pinch_begin (OxCanvas *self)
{
  self->pinched = 1;
}

void
ox_canvas_pinch (OxCanvas *self, double scale, OxPixel about)
{
  ox_canvas_zoom_at (self, scale / self->pinched, about);
  self->pinched = scale;
}

void
ox_canvas_zoom (OxCanvas *self, double factor)
{
  ox_canvas_zoom_at (self, factor, (OxPixel){ self->view.width_px / 2, self->view.height_px / 2 });
}

static void
fit (OxCanvas *self, OxBox box)
{
  /* Before the canvas has a size there is nothing to fit into: the first allocation comes back here. */
  self->fitted = !ox_box_is_empty (box) && self->view.width_px > 0;
  if (self->view.width_px < 1)
    return;
  ox_canvas_set_view (self, ox_view_with_fit (&self->view, box, FIT_MARGIN_PX));
}

/* A site plan is often far larger than the floor in it: it counts only while there is no floor. */
void
ox_canvas_fit (OxCanvas *self)
{
  const OxJob *job = ox_session_get_job (self->session);
  OxBox box = ox_job_box (job);

  for (guint i = 0; ox_box_is_empty (ox_job_box (job)) && i < job->n_traced; i++)
    {
      g_autoptr (OxRing) ring = ox_traced_plan_ring (job->traced[i]);

      for (guint k = 0; k < ring->n; k++)
        ox_box_add (&box, ring->points[k]);
    }
  self->whole = TRUE;
  fit (self, box);
}

void
ox_canvas_show_selected (OxCanvas *self)
{
  g_auto (GStrv) ids = ox_selection_items (ox_session_get_selection (self->session));
  OxBox box = ox_edit_box (ox_session_get_job (self->session), (const char *const *) ids);

  self->whole = FALSE;
  if (!ox_box_is_empty (box))
    fit (self, box);
}

void
ox_canvas_show_point (OxCanvas *self, OxPoint at)
{
  OxView view = self->view;

  view.centre = at;
  self->whole = FALSE;
  self->fitted = TRUE;
  ox_canvas_set_view (self, view);
}
