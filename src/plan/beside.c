/* Oxturn: plan/beside - strips that lie beside each other: no slot between them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/layout.h"

#define MOST_WEDGE 0.03 /* m */
#define NEARLY_PARALLEL (2 * G_PI / 180)

/* A draft strip seen from the frame of another direction, as far as it lies beside the stretch of @x on the lane at @y there: how far off to the side
 * it is at both ends. FALSE when it is not parallel to within two degrees or not beside it. */
static gboolean
offsets_beside (const OxLayout *layout, const OxDraft *draft, const OxFrame *frame, double y, OxSpan x, OxSpan *off)
{
  const OxFrame *own = g_ptr_array_index (layout->frames, draft->frame);
  if (fabs (sin (own->angle - frame->angle)) > sin (NEARLY_PARALLEL))
    return FALSE;
  OxPoint a = ox_frame_from_floor (frame, ox_frame_to_floor (own, (OxPoint) { draft->x0, draft->y }));
  OxPoint b = ox_frame_from_floor (frame, ox_frame_to_floor (own, (OxPoint) { draft->x1, draft->y }));
  double lo = MAX (MIN (a.x, b.x), x.lo), hi = MIN (MAX (a.x, b.x), x.hi);
  if (hi - lo <= layout->machine->blast_length)
    return FALSE;
  double slope = (b.y - a.y) / (b.x - a.x);
  *off = (OxSpan) { a.y + slope * (lo - a.x) - y, a.y + slope * (hi - a.x) - y };
  return TRUE;
}

double
ox_layout_slot_shift (const OxLayout *layout, guint frame, double y, OxSpan x)
{
  const OxMachine *m = layout->machine;
  double most = m->blast_width - m->min_overlap;
  for (guint i = 0; i < layout->drafts->len; i++)
    {
      OxSpan off;
      if (!offsets_beside (layout, &g_array_index (layout->drafts, OxDraft, i), g_ptr_array_index (layout->frames, frame), y, x, &off)
          || off.lo * off.hi <= 0)
        continue;
      double far = MAX (fabs (off.lo), fabs (off.hi)), near = MIN (fabs (off.lo), fabs (off.hi));
      /* Strips that draw apart along their length leave a wedge, which the next lanes fill, and no slot. */
      if (far - near < MOST_WEDGE && far > most + 1e-4 && near < m->blast_width * 1.25)
        return off.lo > 0 ? far - most : most - far;
    }
  return 0;
}
