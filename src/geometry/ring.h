/* Oxturn: geometry/ring - a closed outline of straight sides.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A ring is an immutable counted value: corner i is joined to corner i + 1, the last one to the first; the first is not
 * repeated at the end. Corners are snapped to OX_GRID. Side i runs from corner i to corner i + 1.
 */
#pragma once
#include "geometry/point.h"
G_BEGIN_DECLS

typedef struct
{
  guint n;           /* corners */
  OxPoint points[];  /* n of them */
} OxRing;

/* ox_ring_new:
 * @points: corners, @n of them; a last one equal to the first is dropped
 *
 * Any order and any shape is taken; see ox_ring_is_simple(). Returns: (transfer full) */
OxRing *ox_ring_new (const OxPoint *points, guint n) G_GNUC_WARN_UNUSED_RESULT;
OxRing *ox_ring_ref (const OxRing *ring);
void ox_ring_unref (const OxRing *ring);

/* ox_ring_new_rectangle: @width along the direction @angle (radians), @depth across it, about @centre; counter-clockwise */
OxRing *ox_ring_new_rectangle (OxPoint centre, double width, double depth, double angle) G_GNUC_WARN_UNUSED_RESULT;

/* ox_ring_new_circle:
 * @outside: TRUE for a polygon that holds the circle inside it (obstacles), FALSE for one inscribed
 *
 * As many corners as keep the distance between circle and polygon at or under 1 mm, 16 at least. Counter-clockwise. */
OxRing *ox_ring_new_circle (OxPoint centre, double radius, gboolean outside) G_GNUC_WARN_UNUSED_RESULT;

/* ox_ring_area: signed, m2, positive when counter-clockwise (shoelace formula) */
double ox_ring_area (const OxRing *ring);
double ox_ring_perimeter (const OxRing *ring);
OxPoint ox_ring_centroid (const OxRing *ring);
OxBox ox_ring_box (const OxRing *ring);

/* ox_ring_contains: inside or on the outline */
gboolean ox_ring_contains (const OxRing *ring, OxPoint p);

/* ox_ring_is_simple:
 * @where: (out) (optional): where two sides meet that should not
 *
 * Exact. Sweeps in O(n log n) for usual outlines. FALSE for fewer than 3 corners, repeated corners next to each other and spikes too.
 */
gboolean ox_ring_is_simple (const OxRing *ring, OxPoint *where);
gboolean ox_ring_equal (const OxRing *a, const OxRing *b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxRing, ox_ring_unref)
G_END_DECLS
