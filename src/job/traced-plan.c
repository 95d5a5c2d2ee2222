/* Oxturn: job/traced-plan - a scan, a picture or a page of somebody's plan that lies under the floor to be traced.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/traced-plan.h"
#include "job/text.h"

static double
snap_to (double value, double step)
{
  double snapped = round (value / step) * step;
  return snapped == 0 ? 0 : snapped;
}

OxTracedPlan *
ox_traced_plan_new (const OxTracedPlan *traced)
{
  OxTracedPlan *self = g_atomic_rc_box_new0 (OxTracedPlan);
  self->id = g_strdup (traced->id ? traced->id : "");
  self->name = ox_text_clean (traced->name, FALSE);
  self->kind = traced->kind;
  self->data = g_bytes_ref (traced->data);
  self->page = traced->kind == OX_TRACED_PDF ? traced->page : 1;
  self->middle = ox_point_snap (traced->middle);
  self->width = ox_snap (traced->width);
  self->depth = ox_snap (traced->depth);
  self->angle_deg = snap_to (traced->angle_deg, 1e-6);
  self->strength = snap_to (traced->strength, 0.01);
  self->locked = traced->locked;
  self->hidden = traced->hidden;
  self->extra = g_strdup (traced->extra);
  return self;
}

OxTracedPlan *
ox_traced_plan_ref (const OxTracedPlan *traced)
{
  return g_atomic_rc_box_acquire ((gpointer) traced);
}

static void
traced_clear (gpointer data)
{
  OxTracedPlan *traced = data;
  g_free (traced->id);
  g_free (traced->name);
  g_bytes_unref (traced->data);
  g_free (traced->extra);
}

void
ox_traced_plan_unref (const OxTracedPlan *traced)
{
  g_atomic_rc_box_release_full ((gpointer) traced, traced_clear);
}

OxRing *
ox_traced_plan_ring (const OxTracedPlan *traced)
{
  return ox_ring_new_rectangle (traced->middle, traced->width, traced->depth, traced->angle_deg * G_PI / 180);
}
