/* Oxturn: plan/amend - the last word on a layout: strips that break a rule are cut or taken back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/amend.h"
#include "plan/verify.h"

#define MAX_ROUNDS 12
#define AROUND 1.5 /* blast widths off a breach, where the strip at fault lies */

typedef struct
{
  OxLayout *layout;
  const OxFloor *floor;
  const OxJob *job;
  guint breaches; /* that there are */
} Case;

/* What may be done to a draft: cut to be another one, or taken back. */
typedef struct
{
  guint index;
  OxDraft draft; /* what it becomes, when it is kept */
  gboolean kept;
  double lost;   /* m of strip */
  guint breaches; /* that are left then */
} Change;

static OxStrip
strip_of (const OxLayout *layout, const OxDraft *draft)
{
  const OxFrame *frame = g_ptr_array_index (layout->frames, draft->frame);
  OxPoint low = ox_point_snap (ox_frame_to_floor (frame, (OxPoint) { draft->x0, draft->y }));
  OxPoint high = ox_point_snap (ox_frame_to_floor (frame, (OxPoint) { draft->x1, draft->y }));
  OxStrip strip = { .room = layout->room, .kind = draft->kind, .coat = layout->coat, .a = low, .b = high, .station = -1 };
  if (draft->sign < 0)
    {
      strip.a = high;
      strip.b = low;
    }
  strip.width = layout->machine->blast_width;
  strip.speed = layout->speed;
  return strip;
}

/* Done strips that the new ones must overlap; returns how many. */
static guint
add_kept (const Case *c, GArray *strips)
{
  for (guint i = 0; c->floor->kept != NULL && i < c->floor->kept->len; i++)
    {
      OxStrip strip = g_array_index (c->floor->kept, OxStrip, i);
      strip.order = strips->len + 1;
      if (strip.room == c->layout->room && strip.coat == c->layout->coat)
        g_array_append_val (strips, strip);
    }
  return strips->len;
}

/* Breaches of rules 4 to 6, with @change (nullable) made. */
static GPtrArray *
judge (const Case *c, const Change *change)
{
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (OxStrip));
  guint n_kept = add_kept (c, strips);
  for (guint i = 0; i < c->layout->drafts->len; i++)
    {
      gboolean changed = change != NULL && change->index == i;
      if (changed && !change->kept)
        continue;
      OxStrip strip = strip_of (c->layout, changed ? &change->draft : &g_array_index (c->layout->drafts, OxDraft, i));
      strip.order = strips->len + 1;
      g_array_append_val (strips, strip);
    }
  OxPlan plan = { .job = (OxJob *) c->job, .n_strips = strips->len, .strips = (OxStrip *) (void *) strips->data, .n_kept = n_kept };
  OxFloor own = *c->floor;
  OxCoat coat = { c->layout->room, c->layout->coat, (OxRegion *) c->layout->target };
  own.target = coat.target;
  own.n_coats = 1;
  own.coats = &coat;
  return ox_plan_verify_laid (&plan, &own);
}

static gboolean
lies_near (const OxLayout *layout, const OxDraft *draft, OxPoint p)
{
  double around = AROUND * layout->machine->blast_width;
  return fabs (p.y - draft->y) < around && p.x > draft->x0 - around && p.x < draft->x1 + around;
}

static void
try_change (const Case *c, Change *change, Change *best)
{
  const OxDraft *draft = &g_array_index (c->layout->drafts, OxDraft, change->index);
  change->lost = draft->x1 - draft->x0;
  if (change->kept)
    change->lost -= change->draft.x1 - change->draft.x0;
  g_autoptr (GPtrArray) breaches = judge (c, change);
  change->breaches = breaches->len;
  /* A strip taken back is a step on even when as much is left to do; a cut is not. */
  if (change->breaches + (change->kept ? 1 : 0) > c->breaches)
    return;
  if (change->breaches < best->breaches || (change->breaches == best->breaches && change->lost < best->lost))
    *best = *change;
}

/* The draft cut so that it ends, or starts, at breach @x. */
static void
try_cut (const Case *c, Change *change, double x, gboolean end, Change *best)
{
  const OxDraft *draft = &g_array_index (c->layout->drafts, OxDraft, change->index);
  double half = c->layout->machine->blast_length / 2;
  change->draft = *draft;
  change->kept = TRUE;
  if (end)
    change->draft.x1 = x - half;
  else
    change->draft.x0 = x + half;
  if (change->draft.x1 < draft->x1 + OX_GRID && change->draft.x0 > draft->x0 - OX_GRID
      && change->draft.x1 - change->draft.x0 >= ox_layout_least (c->layout))
    try_change (c, change, best);
}

/* The change to a draft near @at that leaves fewest breaches; of equals the one that loses least. FALSE when none helps. */
static gboolean
find_change (const Case *c, OxPoint at, Change *best)
{
  *best = (Change){ .breaches = G_MAXUINT };
  for (guint i = 0; i < c->layout->drafts->len && !ox_run_cancelled (c->layout->run, NULL); i++)
    {
      const OxDraft *draft = &g_array_index (c->layout->drafts, OxDraft, i);
      OxPoint p = ox_frame_from_floor (g_ptr_array_index (c->layout->frames, draft->frame), at);
      Change change = { .index = i };
      if (!lies_near (c->layout, draft, p))
        continue;
      try_change (c, &change, best);
      try_cut (c, &change, p.x, TRUE, best);
      try_cut (c, &change, p.x, FALSE, best);
    }
  return best->breaches != G_MAXUINT;
}

void
ox_layout_amend (OxLayout *layout, const OxFloor *floor, const OxJob *job)
{
  Case own = { layout, floor, job, 0 }, *c = &own;
  for (guint round = 0; round < MAX_ROUNDS && !ox_run_cancelled (layout->run, NULL); round++)
    {
      Change change;
      gboolean found = FALSE;
      g_autoptr (GPtrArray) breaches = judge (c, NULL);
      own.breaches = breaches->len;
      for (guint i = 0; i < breaches->len && !found; i++)
        found = find_change (c, ((const OxBreach *) g_ptr_array_index (breaches, i))->at, &change);
      if (!found)
        return;
      if (change.kept)
        ox_layout_replace (layout, change.index, &change.draft);
      else
        ox_layout_remove (layout, change.index);
    }
}
