/* Oxturn: plan/trim - takes back what others cover as well.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/layout.h"

#define LEAST_SHARE 0.025 /* of what a strip covers must be its own */
#define LONG_SLOT 0.25    /* m */

/* First and last step of the draft's band that it alone covers, and how much floor that is; FALSE when there is none. */
static gboolean
own_part (const OxLayout *layout, const OxBand *band, OxProfile *profile, OxSpan *out, double *own_m2)
{
  guint first = G_MAXUINT, last = 0, cells = 0;
  ox_cover_profile (layout->cover, band, 1, profile);
  for (guint i = 0; i < profile->counts->len; i++)
    {
      guint n = g_array_index (profile->counts, guint, i);
      if (n == 0)
        continue;
      first = MIN (first, i);
      last = i;
      cells += n;
    }
  if (first == G_MAXUINT)
    return FALSE;
  *out = (OxSpan) { profile->x0 + first * profile->step, profile->x0 + (last + 1) * profile->step };
  *own_m2 = cells * profile->sample_m2;
  return TRUE;
}

/* Whether next to nothing of what the strip covers is its own, or doing that by hand costs less than the strip. A long thin part of its own is
 * kept all the same: it would stay as a slot between its neighbours. */
static gboolean
is_idle (const OxLayout *layout, const OxBand *band, OxSpan own, double own_m2)
{
  double length = MAX (own.hi - own.lo, layout->machine->min_strip);
  if (own_m2 < LEAST_SHARE * MIN (length + layout->machine->blast_length, band->x1 - band->x0) * band->width)
    return TRUE;
  if (own_m2 < (own.hi - own.lo) * band->width / 4 && own.hi - own.lo > LONG_SLOT)
    return FALSE;
  double seconds = length / layout->speed * 60;
  return own_m2 * ox_layout_hand_seconds (layout) < seconds + ox_layout_move_seconds (layout) / 2;
}

/* New ends: what the draft alone covers and a seam on both sides, min_strip long or more, never longer than it was. */
static void
trim_draft (const OxLayout *layout, OxDraft *draft, OxSpan own)
{
  const OxMachine *m = layout->machine;
  double half = m->blast_length / 2;
  double seam = m->min_overlap + layout->cover->cell;
  double x0 = MAX (draft->x0, own.lo - seam + half), x1 = MIN (draft->x1, own.hi + seam - half);
  double lack = ox_layout_least (layout) - (x1 - x0);
  if (lack > 0)
    {
      double before = MIN (lack / 2, x0 - draft->x0);
      double after = MIN (lack - before, draft->x1 - x1);
      before = MIN (lack - after, x0 - draft->x0);
      x0 -= before;
      x1 += after;
    }
  draft->x0 = x0;
  draft->x1 = x1;
}

static void
trim_all (OxLayout *layout, OxStripKind kind)
{
  g_autoptr (GArray) counts = g_array_new (FALSE, FALSE, sizeof (guint));
  OxProfile profile = { .counts = counts };
  for (guint i = 0; i < layout->drafts->len && !ox_run_cancelled (layout->run, NULL);)
    {
      OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
      OxBand band = ox_layout_band (layout, draft);
      OxSpan own;
      double own_m2;
      if (draft->kind != kind)
        {
          i++;
          continue;
        }
      if (!own_part (layout, &band, &profile, &own, &own_m2) || is_idle (layout, &band, own, own_m2))
        {
          if (ox_layout_joins (layout, i))
            i++;
          else
            ox_layout_remove (layout, i);
          continue;
        }
      OxDraft trimmed = *draft;
      trim_draft (layout, &trimmed, own);
      ox_layout_replace (layout, i, &trimmed);
      i++;
    }
}

void
ox_layout_trim (OxLayout *layout)
{
  trim_all (layout, OX_STRIP_MAIN);
  trim_all (layout, OX_STRIP_CROSSWISE);
}
