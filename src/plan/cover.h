/* Oxturn: plan/cover - how often each spot of a room's target is covered, on a raster.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The raster only steers the search for strips; areas that a person sees are computed exactly from the finished strips. It lies in the
 * frame of the room's main direction, so that rows are parallel to the lanes. A cell counts by its middle.
 */
#pragma once
#include "geometry/region.h"
G_BEGIN_DECLS

#define OX_COVER_TILE 32

typedef struct
{
  double cell;         /* m */
  double x0, y0;       /* lower left corner in the frame */
  guint n_x, n_y;
  guint8 *cells;       /* strips over the cell, 127 at most; 128 more where its middle is not target */
  guint tiles_x;       /* tiles of OX_COVER_TILE x OX_COVER_TILE cells in a row of them */
  guint16 *open;       /* uncovered cells of each tile: most tiles of a floor soon have none and need not be looked into */
  double cos_a, sin_a; /* of the frame */
} OxCover;

/* what a strip covers: from (x0, y) to (x1, y), @width across, in a frame of direction @angle */
typedef struct
{
  double angle;
  double x0, x1, y;
  double width;
} OxBand;

/* ox_cover_new: @target on the floor, @angle of the frame, @cell the wanted size in m (made larger for huge floors); (transfer full) */
OxCover *ox_cover_new (const OxRegion *target, double angle, double cell) G_GNUC_WARN_UNUSED_RESULT;
void ox_cover_free (OxCover *cover);

/* ox_cover_add: counts the cells under @band up (@by = +1) or down (-1) */
void ox_cover_add (OxCover *cover, const OxBand *band, int by);

/* ox_cover_replace: counts the cells under @before down and those under @after up; where most are under both, that is quick */
void ox_cover_replace (OxCover *cover, const OxBand *before, const OxBand *after);

/* what lies under a band, step by step along it */
typedef struct
{
  GArray *counts;   /* guint: cells, or samples, that count; owned by the caller and used again and again */
  double x0, step;  /* entry i stands for x0 + i step to x0 + (i + 1) step in the band's frame */
  double sample_m2; /* m2 that one of them stands for */
} OxProfile;

/* ox_cover_profile:
 * @level: count that matters: 0 for uncovered cells, 1 for cells that one strip alone covers
 * @out: its counts are set to the number of needed cells with exactly that count
 */
void ox_cover_profile (const OxCover *cover, const OxBand *band, guint level, OxProfile *out);

double ox_cover_left (const OxCover *cover); /* m2 still uncovered */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxCover, ox_cover_free)
G_END_DECLS
