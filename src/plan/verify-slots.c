/* Oxturn: plan/verify-slots - thin stripes of floor left between strips.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/verify-private.h"

#define SLOT_LENGTH 0.3 /* m; what is shorter is a crumb of edge work */
#define CRUMB_M2 1e-4
#define BESIDE 0.003 /* m off a long side, where a strip must cover */
#define SAMPLES 9
#define ALONG_SIN 0.035 /* of 2 degrees */

/* What an opening by an eighth of the blast width takes away from the floor that the strips of a coat leave: all that is narrower
 * than a quarter. */
static OxRegion *
thin_floor (const OxVerify *verify, guint coat)
{
  double half = verify->machine->blast_width / 8;
  g_autoptr (OxRegion) rest = ox_region_difference (verify->asking[coat - 1], verify->covered[coat - 1]);
  g_autoptr (OxRegion) core = ox_region_offset (rest, -half, FALSE);
  g_autoptr (OxRegion) wide = ox_region_offset (core, half + OX_GRID, FALSE);
  return ox_region_difference (rest, wide);
}

/* Axes along the longest side of a part, and the part's box in them. */
static OxAxes
axes_of (const OxRegion *part, OxBox *box)
{
  OxAxes axes = { { 0, 0 }, { 1, 0 } };
  double longest = 0;
  for (guint i = 0; i < part->rings[0].n; i++)
    {
      OxPoint a = part->points[i], b = part->points[(i + 1) % part->rings[0].n];
      if (ox_point_distance (a, b) <= longest)
        continue;
      longest = ox_point_distance (a, b);
      axes = ox_axes_along (a, b);
    }
  *box = OX_BOX_EMPTY;
  for (guint i = 0; i < part->rings[0].n; i++)
    ox_box_add (box, ox_axes_to (axes, part->points[i]));
  return axes;
}

/* Whether strips of a room's coat that run along the slot cover nearly all of a line beside it. */
static gboolean
is_covered (OxVerify *verify, const OxCoat *of, OxAxes axes, OxPiece x, double y)
{
  guint covered = 0;
  for (guint i = 1; i <= SAMPLES; i++)
    {
      OxPoint p = ox_axes_from (axes, (OxPoint){ x.a + (x.b - x.a) * i / (SAMPLES + 1), y });
      ox_box_grid_query (verify->strip_grid, (OxBox){ p.x, p.y, p.x, p.y }, verify->near);
      gboolean hit = FALSE;
      for (guint k = 0; k < verify->near->len && !hit; k++)
        {
          const OxVerifyStrip *s = &verify->strips[g_array_index (verify->near, guint, k)];
          OxPoint q = ox_axes_to (s->axes, p);
          hit = s->strip->order > verify->plan->n_kept && s->strip->room == of->room && s->strip->coat == of->coat && fabs (ox_point_cross (s->axes.u, axes.u)) < ALONG_SIN && q.x >= s->cover.x0
                && q.x <= s->cover.x1 && q.y >= s->cover.y0 && q.y <= s->cover.y1;
        }
      covered += hit;
    }
  return covered + 1 >= SAMPLES;
}

static void
judge_part (OxVerify *verify, guint coat, const OxRegion *part)
{
  OxBox box;
  OxAxes axes = axes_of (part, &box);
  OxPiece x = { box.x0, box.x1 };
  if (box.x1 - box.x0 <= SLOT_LENGTH || box.y1 - box.y0 >= verify->machine->blast_width / 4)
    return;
  for (guint i = 0; i < verify->floor->n_coats; i++)
    if (verify->floor->coats[i].coat == coat && is_covered (verify, &verify->floor->coats[i], axes, x, box.y0 - BESIDE)
        && is_covered (verify, &verify->floor->coats[i], axes, x, box.y1 + BESIDE))
      ox_verify_blame (verify, OX_RULE_SLOT, 0,
                       ox_axes_from (axes, (OxPoint){ (x.a + x.b) / 2, (box.y0 + box.y1) / 2 }),
                       "a slot of %.4f x %.3f m is left between strips", box.y1 - box.y0, x.b - x.a);
}

static void
judge_coat (OxVerify *verify, guint coat)
{
  g_autoptr (OxRegion) thin = thin_floor (verify, coat);
  for (guint i = 0; i < thin->n_parts; i++)
    {
      g_autoptr (OxRegion) part = ox_region_get_part (thin, i);
      if (ox_region_area (part) > CRUMB_M2)
        judge_part (verify, coat, part);
    }
}

void
ox_verify_slots (OxVerify *verify)
{
  for (guint coat = 1; coat <= verify->n_coats; coat++)
    judge_coat (verify, coat);
}
