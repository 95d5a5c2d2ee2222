/* Oxturn: paint/svg - a page as SVG 1.1: named layers, real text, millimetres.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * width and height in mm, the viewBox in the same numbers: one user unit is a millimetre of paper. Root <title> and <desc>; each layer a
 * <g id="layer-..."> with its <title>; no script, no style sheet, nothing from outside. Places have 3 decimals (0.001 mm); the same page
 * gives the same bytes in every locale.
 */
#pragma once
#include "drawing/page.h"
G_BEGIN_DECLS

GBytes *ox_svg_new (const OxPage *page) G_GNUC_WARN_UNUSED_RESULT; /* (transfer full): UTF-8 */

G_END_DECLS
