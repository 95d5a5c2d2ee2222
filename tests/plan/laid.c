/* Oxturn: tests/plan/laid - a room with strips laid by hand or by the planner's own steps.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "laid.h"

Laid *
laid_along (OxJob *job, double angle, OxWork work)
{
  Laid *laid = g_new0 (Laid, 1);
  laid->job = job;
  laid->floor = ox_floor_new (job);
  laid->ways = ox_ways_new (laid->floor->travel, job->machine);
  laid->layout = ox_layout_new (laid->floor, laid->floor->coats, job, angle, work);
  return laid;
}

Laid *
laid_new (OxJob *job, OxWork work)
{
  return laid_along (job, 0, work);
}

void
laid_free (Laid *laid)
{
  ox_layout_free (laid->layout);
  ox_ways_free (laid->ways);
  ox_floor_free (laid->floor);
  ox_job_unref (laid->job);
  g_free (laid);
}

guint
laid_across (Laid *laid)
{
  return ox_layout_frame (laid->layout, G_PI / 2, 0);
}

static gboolean
find_span (const Laid *laid, const OxDraft *draft, OxSpan *out)
{
  const OxFrame *frame = g_ptr_array_index (laid->layout->frames, draft->frame);
  return ox_frame_find_span (frame, draft->y, draft->sign, (OxSpan){ draft->x0 + 1e-6, draft->x1 - 1e-6 }, out);
}

void
laid_add (Laid *laid, OxDraft draft)
{
  OxSpan span;
  g_assert_true (find_span (laid, &draft, &span));
  draft.lane = ox_layout_lane (laid->layout, draft.frame, draft.y);
  draft.lo = span.lo;
  draft.hi = span.hi;
  ox_layout_add (laid->layout, &draft);
}

const OxDraft *
laid_draft (const Laid *laid, guint i)
{
  g_assert_cmpuint (i, <, laid->layout->drafts->len);
  return &g_array_index (laid->layout->drafts, OxDraft, i);
}

double
laid_metres (const Laid *laid)
{
  double sum = 0;
  for (guint i = 0; i < laid->layout->drafts->len; i++)
    sum += laid_draft (laid, i)->x1 - laid_draft (laid, i)->x0;
  return sum;
}

double
laid_open (const Laid *laid, OxBox box)
{
  const OxMachine *m = laid->job->machine;
  double half = m->blast_length / 2, side = m->blast_width / 2;
  guint n = laid->layout->drafts->len;
  g_autofree OxPoint *corners = g_new (OxPoint, 4 * n + 1);
  for (guint i = 0; i < n; i++)
    {
      const OxDraft *d = laid_draft (laid, i);
      OxPoint own[4] = { { d->x0 - half, d->y - side },
                         { d->x1 + half, d->y - side },
                         { d->x1 + half, d->y + side },
                         { d->x0 - half, d->y + side } };
      for (guint k = 0; k < 4; k++)
        corners[4 * i + k] = ox_frame_to_floor (g_ptr_array_index (laid->layout->frames, d->frame), own[k]);
    }
  OxPoint limits[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  g_autoptr (OxRegion) covered = ox_region_union_quads (corners, n);
  g_autoptr (OxRegion) open = ox_region_difference (laid->layout->target, covered);
  g_autoptr (OxRegion) window = ox_region_new_points (limits, 4);
  g_autoptr (OxRegion) seen = ox_region_intersection (open, window);
  return ox_region_area (seen);
}

void
laid_expect_fit (const Laid *laid)
{
  for (guint i = 0; i < laid->layout->drafts->len; i++)
    {
      const OxDraft *draft = laid_draft (laid, i);
      OxSpan span;
      g_assert_true (find_span (laid, draft, &span));
      g_assert_cmpfloat (draft->x1 - draft->x0, >=, laid->job->machine->min_strip);
    }
}
