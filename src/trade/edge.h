/* Oxturn: trade/edge - hours of edge work, by area or by length.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A hand tool goes along a narrow strip beside a wall in the same time whether that is 10 or 15 cm wide: such work is measured by its
 * length, wider work by its area.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

typedef struct
{
  double m2_per_h; /* hand rate by area, > 0 */
  double m_per_h;  /* by length; 0: all goes by area */
  double narrow;   /* m: up to this mean width work is measured by length */
} OxEdgeRates;

/* ox_edge_is_by_length:
 * @area: m2, >= 0
 * @length: m, >= 0
 *
 * Whether area / length <= narrow, where the rates have one by length and the work has a length.
 * Example: up to 0.6 m wide, 6 m2 along 10 m go by length, 6.01 m2 by area.
 * Source: common practice, no source read (rules of measurement part finishes at 600 mm of width, from memory).
 */
gboolean ox_edge_is_by_length (const OxEdgeRates *rates, double area, double length);

/* ox_edge_hours:
 *
 *      T = L / rate by length        narrow work
 *      T = A / rate by area          all other
 *
 * Derived. Example: 76.8 m of 0.10 m at 12 m/h take 6.4 h; the same 7.68 m2 at 4 m2/h 1.92 h.
 * Returns: h
 */
double ox_edge_hours (const OxEdgeRates *rates, double area, double length);

/* ox_edge_shroud_flow:
 * @cup: diameter of the grinder's cup, m
 *
 *      Q = 25 ft3/min for each inch
 *
 * Least air through the shroud. Source: 29 CFR 1926.1153 Table 1 (xii). Example: a cup of 7 in takes 175 ft3/min, 297.3 m3/h.
 * Returns: m3/h
 */
double ox_edge_shroud_flow (double cup);

G_END_DECLS
