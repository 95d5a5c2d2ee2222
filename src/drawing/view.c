/* Oxturn: drawing/view - which part of the floor a picture shows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/view.h"

OxPixel
ox_view_to_pixel (const OxView *view, OxPoint p)
{
  return (OxPixel){ view->width_px / 2 + (p.x - view->centre.x) * view->px_per_m,
                    view->height_px / 2 - (p.y - view->centre.y) * view->px_per_m };
}

OxPoint
ox_view_to_point (const OxView *view, OxPixel p)
{
  return (OxPoint){ view->centre.x + (p.x - view->width_px / 2) / view->px_per_m,
                    view->centre.y - (p.y - view->height_px / 2) / view->px_per_m };
}

OxBox
ox_view_get_box (const OxView *view)
{
  double w = view->width_px / view->px_per_m / 2, h = view->height_px / view->px_per_m / 2;
  return (OxBox){ view->centre.x - w, view->centre.y - h, view->centre.x + w, view->centre.y + h };
}

OxView
ox_view_with_zoom (const OxView *view, double factor, OxPixel about)
{
  OxPoint under = ox_view_to_point (view, about);
  OxView out = *view;
  out.px_per_m = CLAMP (view->px_per_m * factor, OX_VIEW_MIN_PX_PER_M, OX_VIEW_MAX_PX_PER_M);
  out.centre.x = under.x - (about.x - view->width_px / 2) / out.px_per_m;
  out.centre.y = under.y + (about.y - view->height_px / 2) / out.px_per_m;
  return out;
}

OxView
ox_view_with_pan (const OxView *view, OxPixel by)
{
  OxView out = *view;
  out.centre.x -= by.x / view->px_per_m;
  out.centre.y += by.y / view->px_per_m;
  return out;
}

OxView
ox_view_with_size (const OxView *view, double width_px, double height_px)
{
  OxView out = *view;
  out.width_px = width_px;
  out.height_px = height_px;
  return out;
}

OxView
ox_view_with_fit (const OxView *view, OxBox box, double margin_px)
{
  OxView out = *view;
  if (ox_box_is_empty (box))
    return out;
  out.centre = (OxPoint){ (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  double w = MAX (view->width_px - 2 * margin_px, 1), h = MAX (view->height_px - 2 * margin_px, 1);
  double fit
      = MIN (box.x1 > box.x0 ? w / (box.x1 - box.x0) : HUGE_VAL, box.y1 > box.y0 ? h / (box.y1 - box.y0) : HUGE_VAL);
  if (isfinite (fit))
    out.px_per_m = CLAMP (fit, OX_VIEW_MIN_PX_PER_M, OX_VIEW_MAX_PX_PER_M);
  return out;
}
