/* Oxturn: drawing/view - which part of the floor a picture shows: metres to pixels and back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The floor has y up, pixels have y down with the origin in the upper left corner. A view is a small value; its functions are pure.
 * The same view serves a page, whose drawing units are millimetres of paper instead of metres (drawing/drawing.h).
 */
#pragma once
#include "geometry/point.h"
G_BEGIN_DECLS

#define OX_VIEW_MIN_PX_PER_M 0.01    /* 10 km over 100 pixels */
#define OX_VIEW_MAX_PX_PER_M 4000.0  /* 1 mm over 4 pixels */

typedef struct
{
  double x;
  double y;
} OxPixel;

typedef struct
{
  OxPoint centre;            /* what stands in the middle of the picture */
  double px_per_m;           /* pixels a drawing unit, within OX_VIEW_MIN_PX_PER_M and OX_VIEW_MAX_PX_PER_M */
  double width_px, height_px;
} OxView;

/* ox_view_to_pixel, ox_view_to_point: each the inverse of the other; what lies outside the picture has places too */
OxPixel ox_view_to_pixel (const OxView *view, OxPoint p);
OxPoint ox_view_to_point (const OxView *view, OxPixel p);

/* ox_view_get_box: what the picture shows, in drawing units */
OxBox ox_view_get_box (const OxView *view);

/* ox_view_with_zoom: @factor times as large, the point under @about stays under it; the scale is kept within its limits */
OxView ox_view_with_zoom (const OxView *view, double factor, OxPixel about);

/* ox_view_with_pan: the picture moved by @by pixels (x right, y down) */
OxView ox_view_with_pan (const OxView *view, OxPixel by);

/* ox_view_with_size: another size of the picture; the point in its middle stays there */
OxView ox_view_with_size (const OxView *view, double width_px, double height_px);

/* ox_view_with_fit: @box as large as it goes with @margin_px around; an empty box or one without extent keeps the scale as it was */
OxView ox_view_with_fit (const OxView *view, OxBox box, double margin_px);

G_END_DECLS
