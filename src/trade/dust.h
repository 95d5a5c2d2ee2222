/* Oxturn: trade/dust - what is taken off the floor, and the drums it fills.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* ox_dust_mass:
 * @area: m2, >= 0
 * @depth_mm: mean depth removed, >= 0
 * @density: of what is removed, kg/m3; > 0
 *
 *      m = A d / 1000 rho
 *
 * Add concrete, coating and the broken-down part of the shot, each by itself.
 * Derived. Example: 100 m2, 0.30 mm, 2,350 kg/m3 are 70.5 kg.
 * Returns: kg
 */
double ox_dust_mass (double area, double depth_mm, double density);

/* ox_dust_volume:
 * @mass: kg, @bulk: density of the loose dust, kg/m3; > 0
 *
 * Derived. Example: 70.5 kg at 1,100 kg/m3 are 0.06409 m3.
 * Returns: m3, loose
 */
double ox_dust_volume (double mass, double bulk);

/* ox_dust_drums:
 * @volume: m3 loose
 * @drum: litres that one holds; > 0
 * @fill: share to which it is filled; above 0, at most 1
 *
 *      drums = 1000 V / (drum fill)
 *
 * Not rounded; order ceil() of it, see ox_dust_drums_to_order().
 * Derived. Example: 0.06409 m3 fill 0.3420 of a 55 gal drum at 90 %.
 */
double ox_dust_drums (double volume, double drum, double fill);

/* ox_dust_drums_to_order: whole drums, begun ones counted; the example above needs 1 */
guint ox_dust_drums_to_order (double drums);

/* ox_dust_drum_mass:
 *
 *      m = drum / 1000 fill bulk
 *
 * What a full drum weighs without itself. Example: 208.2 l at 90 % of 1,100 kg/m3 are 206.1 kg: nothing to lift by hand.
 * Returns: kg
 */
double ox_dust_drum_mass (double drum, double fill, double bulk);

G_END_DECLS
