/* Oxturn: plan/trim - takes back what others cover as well.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/layout.h"

/* First and last step of the draft's band that it alone covers; FALSE when there is none. */
static gboolean
own_part (const OxLayout *layout, const OxBand *band, GArray *profile, OxSpan *out)
{
  double step;
  ox_cover_profile (layout->cover, band, 1, &step, profile);
  guint first = G_MAXUINT, last = 0;
  for (guint i = 0; i < profile->len; i++)
    if (g_array_index (profile, guint, i) > 0)
      {
        first = MIN (first, i);
        last = i;
      }
  if (first == G_MAXUINT)
    return FALSE;
  *out = (OxSpan) { band->x0 + first * step, band->x0 + (last + 1) * step };
  return TRUE;
}

/* New ends: what the draft alone covers and a seam on both sides, min_strip long or more, never longer than it was. */
static void
trim_draft (const OxLayout *layout, OxDraft *draft, OxSpan own)
{
  const OxMachine *m = layout->machine;
  double half = m->blast_length / 2;
  double seam = m->min_overlap + layout->cover->cell;
  double x0 = MAX (draft->x0, own.lo - seam + half), x1 = MIN (draft->x1, own.hi + seam - half);
  double lack = m->min_strip - (x1 - x0);
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
  g_autoptr (GArray) profile = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < layout->drafts->len;)
    {
      OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
      OxBand band = ox_layout_band (layout, draft);
      OxSpan own;
      if (draft->kind != kind)
        {
          i++;
          continue;
        }
      if (!own_part (layout, &band, profile, &own))
        {
          ox_layout_remove (layout, i);
          continue;
        }
      ox_cover_add (layout->cover, &band, -1);
      trim_draft (layout, draft, own);
      band = ox_layout_band (layout, draft);
      ox_cover_add (layout->cover, &band, 1);
      i++;
    }
}

void
ox_layout_trim (OxLayout *layout)
{
  trim_all (layout, OX_STRIP_MAIN);
  trim_all (layout, OX_STRIP_CROSSWISE);
}
