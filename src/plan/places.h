/* Oxturn: plan/places - many points, found by where they are.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Corners of ways and of hoses on a large floor are thousands, and what is asked for is those about one place. May be asked by several threads at once.
 */
#pragma once
#include "geometry/point.h"
G_BEGIN_DECLS

typedef struct _OxPlaces OxPlaces;

/* ox_places_new: @points are copied; (transfer full) */
OxPlaces *ox_places_new (const OxPoint *points, guint n) G_GNUC_WARN_UNUSED_RESULT;
void ox_places_free (OxPlaces *places);

/* ox_places_within: @out: (element-type guint): set to the indices of the points at most @radius off @p, in any order but always the same one */
void ox_places_within (const OxPlaces *places, OxPoint p, double radius, GArray *out);

#define OX_PLACES_SECTORS 16

typedef struct
{
  double distance;
  guint index;
} OxPlace;

/* ox_places_around: @out: (element-type OxPlace): set to the @each nearest in each of OX_PLACES_SECTORS directions from @p, so that the many corners of one
 * round obstacle do not hide all others; nearest first, those equally far by index */
void ox_places_around (const OxPlaces *places, OxPoint p, guint each, GArray *out);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxPlaces, ox_places_free)
G_END_DECLS
