/* Oxturn: plan/prune - takes strips back that others cover: the last word, by exact areas.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The raster is too coarse to tell a strip that covers a little of its own from one that covers nothing; those few are measured.
 */
#include "plan/layout.h"

#define DOUBTFUL_SHARE 0.12 /* on the raster */
#define LEAST_SHARE 0.022   /* exactly */

typedef struct
{
  OxPoint corners[4];
  OxBox box;
} Quad;

static Quad
draft_quad (const OxLayout *layout, guint i)
{
  const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
  const OxFrame *frame = g_ptr_array_index (layout->frames, draft->frame);
  OxBand band = ox_layout_band (layout, draft);
  double h = band.width / 2;
  OxPoint corners[4] = { { band.x0, band.y - h }, { band.x1, band.y - h }, { band.x1, band.y + h }, { band.x0, band.y + h } };
  Quad quad = { .box = OX_BOX_EMPTY };
  for (guint k = 0; k < 4; k++)
    {
      quad.corners[k] = ox_frame_to_floor (frame, corners[k]);
      ox_box_add (&quad.box, quad.corners[k]);
    }
  return quad;
}

/* Share of what draft @i covers of the target that no other draft covers. */
static double
exact_share (const OxLayout *layout, guint i)
{
  Quad own = draft_quad (layout, i);
  g_autoptr (GArray) others = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  for (guint k = 0; k < layout->drafts->len; k++)
    {
      Quad quad = draft_quad (layout, k);
      if (k != i && quad.box.x0 < own.box.x1 && quad.box.x1 > own.box.x0 && quad.box.y0 < own.box.y1 && quad.box.y1 > own.box.y0)
        g_array_append_vals (others, quad.corners, 4);
    }
  g_autoptr (OxRegion) strip = ox_region_new_points (own.corners, 4);
  g_autoptr (OxRegion) within = ox_region_intersection (strip, layout->target);
  g_autoptr (OxRegion) covered = ox_region_union_quads ((const OxPoint *) (void *) others->data, others->len / 4);
  g_autoptr (OxRegion) rest = ox_region_difference (within, covered);
  return ox_region_area (rest) / MAX (ox_region_area (within), OX_GRID);
}

static double
raster_share (const OxLayout *layout, guint i, OxProfile *profile)
{
  OxBand band = ox_layout_band (layout, &g_array_index (layout->drafts, OxDraft, i));
  guint cells = 0;
  ox_cover_profile (layout->cover, &band, 1, profile);
  for (guint k = 0; k < profile->counts->len; k++)
    cells += g_array_index (profile->counts, guint, k);
  return cells * profile->sample_m2 / ((band.x1 - band.x0) * band.width);
}

void
ox_layout_prune (OxLayout *layout)
{
  g_autoptr (GArray) counts = g_array_new (FALSE, FALSE, sizeof (guint));
  OxProfile profile = { .counts = counts };
  for (guint i = layout->drafts->len; i > 0; i--)
    if (raster_share (layout, i - 1, &profile) < DOUBTFUL_SHARE && exact_share (layout, i - 1) < LEAST_SHARE && !ox_layout_joins (layout, i - 1))
      ox_layout_remove (layout, i - 1);
}
