/* Oxturn: plan/zones - crosswise strips in the turnaround zones along end walls.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   wall |<-- zone -->|                         A strip cannot start nearer to a wall than the machine is long
 *        | ^ v ^ v ^  | ----------------->      behind its blast line. The floor kept there for turning is
 *        | | | | | |  | <-----------------      prepared by strips along the wall, on an even grid of
 *        | | | | | |  | ----------------->      lanes of its own.
 */
#include "plan/boundary.h"
#include "trade/production.h"

#define MAX_FRAMES 16
#define LEAST_ANGLE (20 * G_PI / 180) /* a wall nearer to the direction of the lanes is no end wall */

typedef struct
{
  double first;   /* distance of the first lane from the wall */
  double spacing;
  guint lanes;
  int first_sign; /* heading of the first lane */
} Zone;

/* Wall at the low end of the lanes (their x grows away from it) or at the high end. */
static gboolean
is_low_end (const OxLayout *layout, const OxStretch *stretch)
{
  const OxFrame *main_frame = g_ptr_array_index (layout->frames, 0);
  const OxFrame *frame = g_ptr_array_index (layout->frames, stretch->frame);
  OxPoint inward = ox_frame_to_floor (frame, (OxPoint) { 0, stretch->inside });
  return ox_frame_from_floor (main_frame, inward).x > 0;
}

static gboolean
strips_start_there (const OxLayout *layout, gboolean low_end)
{
  switch (layout->work)
    {
    case OX_WORK_FORWARD:
      return low_end;
    case OX_WORK_BACKWARD:
      return !low_end;
    case OX_WORK_SERPENTINE:
    default:
      return TRUE;
    }
}

static Zone
make_zone (const OxLayout *layout, const OxStretch *stretch, double angle)
{
  const OxMachine *m = layout->machine;
  Zone zone;
  zone.first_sign = ox_boundary_side_clearance (m, stretch->inside, 1) <= ox_boundary_side_clearance (m, stretch->inside, -1) ? 1 : -1;
  zone.first = ox_boundary_side_clearance (m, stretch->inside, zone.first_sign);
  double depth = ox_boundary_reach (m, angle, !strips_start_there (layout, is_low_end (layout, stretch))) + m->min_overlap;
  double width = depth - (zone.first - m->blast_width / 2);
  zone.lanes = ox_production_lanes (width, m->blast_width, m->min_overlap);
  /* A lane more for a few millimetres does not pay where doing them by hand costs less than blasting along them: stand the first lane off the
   * wall by that much. */
  if (zone.lanes > 1)
    {
      double spare = width - m->blast_width - (zone.lanes - 2) * (m->blast_width - m->min_overlap);
      if (spare * ox_layout_hand_seconds (layout) < 60 / layout->speed)
        {
          zone.lanes--;
          zone.first += spare;
          width -= spare;
        }
    }
  zone.spacing = ox_production_spacing (width, m->blast_width, zone.lanes);
  return zone;
}

/* Zones of two walls that face each other across a narrow floor, and together fill it, share one even grid. */
static void
fit_to_facing (const OxLayout *layout, const OxStretch *stretch, const OxStretch *facing, guint facing_lanes, Zone *zone)
{
  const OxMachine *m = layout->machine;
  double across = (facing->y - stretch->y) * stretch->inside;
  double shared = MIN (stretch->x1, facing->x1) - MAX (stretch->x0, facing->x0);
  double band = across - 2 * zone->first;
  if (facing->frame != stretch->frame || facing->inside == stretch->inside || band <= 0
      || shared < 0.7 * MIN (stretch->x1 - stretch->x0, facing->x1 - facing->x0))
    return;
  guint lanes = ox_production_lanes (band + m->blast_width, m->blast_width, m->min_overlap);
  if (zone->lanes + facing_lanes + 1 < lanes)
    return;
  zone->spacing = ox_production_spacing (band + m->blast_width, m->blast_width, lanes);
  /* The wall that looks up has the middle lane. */
  zone->lanes = stretch->inside > 0 ? (lanes + 1) / 2 : lanes / 2;
}

/* Whether the strip covers floor that its time is worth. */
static gboolean
pays (const OxLayout *layout, const OxDraft *draft, OxProfile *profile)
{
  OxBand band = ox_layout_band (layout, draft);
  guint cells = 0;
  ox_cover_profile (layout->cover, &band, 0, profile);
  for (guint i = 0; i < profile->counts->len; i++)
    cells += g_array_index (profile->counts, guint, i);
  double seconds = (draft->x1 - draft->x0) / layout->speed * 60 + ox_layout_move_seconds (layout);
  return cells * profile->sample_m2 * ox_layout_hand_seconds (layout) > seconds;
}

/* Whether the strip fits where it was shifted to, and leaves no slot there. */
static gboolean
fits_at (const OxLayout *layout, const OxDraft *draft)
{
  OxSpan x = { draft->x0, draft->x1 }, span;
  return ox_frame_find_span (g_ptr_array_index (layout->frames, draft->frame), draft->y, draft->sign, x, &span)
         && ox_layout_slot_shift (layout, draft->frame, draft->y, x) == 0;
}

/* One lane of a zone, at @y; zones of walls that face each other over a narrow floor are fitted together. */
static void
lay_lane (OxLayout *layout, const OxStretch *stretch, double y, int sign)
{
  const OxMachine *m = layout->machine;
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (OxSpan));
  g_autoptr (GArray) counts = g_array_new (FALSE, FALSE, sizeof (guint));
  OxProfile profile = { .counts = counts };
  double beyond = MAX (m->left, m->right) + m->wall_gap;
  ox_frame_spans (g_ptr_array_index (layout->frames, stretch->frame), y, sign, spans);
  for (guint i = 0; i < spans->len; i++)
    {
      const OxSpan *span = &g_array_index (spans, OxSpan, i);
      OxSpan x = { MAX (span->lo, stretch->x0 - beyond), MIN (span->hi, stretch->x1 + beyond) };
      if (x.hi - x.lo < ox_layout_least (layout))
        continue;
      OxDraft draft = { stretch->frame, 0, sign, y, x.lo, x.hi, OX_STRIP_CROSSWISE, FALSE, span->lo, span->hi };
      double shift = ox_layout_slot_shift (layout, stretch->frame, y, x);
      draft.y += shift;
      if ((shift != 0 && !fits_at (layout, &draft)) || !pays (layout, &draft, &profile))
        continue;
      draft.lane = ox_layout_lane (layout, stretch->frame, draft.y);
      ox_layout_add (layout, &draft);
    }
}

/* Angle between a stretch and the lanes of the main direction, 0 to 90 degrees. */
static double
stretch_angle (const OxLayout *layout, const OxStretch *stretch)
{
  const OxFrame *frame = g_ptr_array_index (layout->frames, stretch->frame);
  return fabs (remainder (frame->angle - ((const OxFrame *) g_ptr_array_index (layout->frames, 0))->angle, G_PI));
}

static void
lay_zone (OxLayout *layout, const GArray *stretches, guint index)
{
  const OxStretch *stretch = &g_array_index (stretches, OxStretch, index);
  Zone zone = make_zone (layout, stretch, stretch_angle (layout, stretch));
  for (guint i = 0; i < stretches->len; i++)
    {
      const OxStretch *facing = &g_array_index (stretches, OxStretch, i);
      if (i != index && stretch_angle (layout, facing) >= LEAST_ANGLE)
        fit_to_facing (layout, stretch, facing, make_zone (layout, facing, stretch_angle (layout, facing)).lanes, &zone);
    }
  for (guint k = 0; k < zone.lanes; k++)
    lay_lane (layout, stretch, stretch->y + stretch->inside * (zone.first + k * zone.spacing),
              k % 2 == 0 ? zone.first_sign : -zone.first_sign);
}

void
ox_layout_zones (OxLayout *layout)
{
  const OxMachine *m = layout->machine;
  g_autoptr (GArray) stretches = g_array_new (FALSE, FALSE, sizeof (OxStretch));
  if (layout->one_heading)
    return;
  /* Shorter than this a zone's own strips would need zones again. */
  ox_boundary_sides (layout, m->rear + m->front + m->min_strip, MAX_FRAMES, stretches);
  for (guint i = 0; i < stretches->len && !ox_run_cancelled (layout->run, NULL); i++)
    if (stretch_angle (layout, &g_array_index (stretches, OxStretch, i)) >= LEAST_ANGLE)
      lay_zone (layout, stretches, i);
}
