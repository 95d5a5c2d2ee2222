/* Oxturn: job/record - what is done: strips and edge areas as facts of the floor, and the days on which they were.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/record.h"
#include <string.h>
#include "job/text.h"
#include "job/value.h"

#define GOLDEN G_GUINT64_CONSTANT (0x9e3779b97f4a7c15) /* 2^64 over the golden ratio, an odd number of mixed bits */

#define LEAST_RING_M2 1e-6
#define LEAST_EDGE_M2 1e-3 /* less of a marked area than this is no floor that anybody worked */
#define UNFOLD 0.0005      /* m taken off an area whose outline the grid would fold up */

/* Finite ends on the grid; others stay for ox_job_check() to find. */
static OxPoint
snap_end (OxPoint p)
{
  return isfinite (p.x) && isfinite (p.y) ? ox_point_snap (p) : p;
}

static OxRecordDay
day_copy (const OxRecordDay *day)
{
  return (OxRecordDay){
    .date = ox_text_clean (day->date, FALSE),
    .meter_start_h = day->meter_start_h < 0 ? OX_METER_UNREAD : ox_value_snap (day->meter_start_h),
    .meter_end_h = day->meter_end_h < 0 ? OX_METER_UNREAD : ox_value_snap (day->meter_end_h),
    .notes = ox_text_clean (day->notes, TRUE),
    .machine = MAX (day->machine, 1),
  };
}

static OxDoneStrip
strip_copy (const OxDoneStrip *strip)
{
  OxDoneStrip copy = *strip;
  copy.room = ox_text_clean (strip->room, FALSE);
  copy.a = snap_end (strip->a);
  copy.b = snap_end (strip->b);
  copy.width = ox_snap (strip->width);
  copy.coat = MAX (strip->coat, 1);
  copy.crosswise = strip->crosswise != FALSE;
  copy.date = ox_text_clean (strip->date, FALSE);
  copy.depth_mm = ox_value_snap (strip->depth_mm);
  copy.note = ox_text_clean (strip->note, TRUE);
  return copy;
}

static OxDoneEdge
edge_copy (const OxDoneEdge *edge)
{
  OxDoneEdge copy = { ox_text_clean (edge->room, FALSE), 0, g_new0 (OxRing *, edge->n_rings + 1),
                      ox_text_clean (edge->date, FALSE), ox_text_clean (edge->note, TRUE) };
  gboolean dropped = TRUE; /* the outline that a hole would belong to */
  for (guint i = 0; i < edge->n_rings; i++)
    {
      double area = ox_ring_area (edge->rings[i]);
      gboolean flat = fabs (area) < LEAST_RING_M2;
      if (area >= 0)
        dropped = flat;
      if (!flat && !dropped)
        copy.rings[copy.n_rings++] = ox_ring_ref (edge->rings[i]);
    }
  return copy;
}

static void
day_clear (gpointer data)
{
  OxRecordDay *day = data;
  g_free (day->date);
  g_free (day->notes);
}

static void
strip_clear (gpointer data)
{
  OxDoneStrip *strip = data;
  g_free (strip->room);
  g_free (strip->date);
  g_free (strip->note);
}

static void
edge_clear (gpointer data)
{
  OxDoneEdge *edge = data;
  g_free (edge->room);
  for (guint i = 0; i < edge->n_rings; i++)
    ox_ring_unref (edge->rings[i]);
  g_free (edge->rings);
  g_free (edge->date);
  g_free (edge->note);
}

/* The three lists in the making. */
typedef struct
{
  GArray *days, *strips, *edges;
  GHashTable *places; /* index + 1 of a strip by place */
} Draft;

static Draft
draft_new (guint strips)
{
  Draft draft
      = { g_array_new (FALSE, TRUE, sizeof (OxRecordDay)),
          g_array_sized_new (FALSE, TRUE, sizeof (OxDoneStrip), strips), g_array_new (FALSE, TRUE, sizeof (OxDoneEdge)),
          g_hash_table_new_full (ox_done_strip_hash, ox_done_strip_same_place, g_free, NULL) };
  return draft;
}

static int
compare_days (const OxRecordDay *a, const OxRecordDay *b)
{
  int order = strcmp (a->date, b->date);
  return order != 0 ? order : (a->machine > b->machine) - (a->machine < b->machine);
}

static void
draft_add_day (Draft *draft, const OxRecordDay *day)
{
  OxRecordDay copy = day_copy (day);
  guint at = draft->days->len;
  while (at > 0 && compare_days (&g_array_index (draft->days, OxRecordDay, at - 1), &copy) > 0)
    at--;
  OxRecordDay *before = at > 0 ? &g_array_index (draft->days, OxRecordDay, at - 1) : NULL;
  if (before && compare_days (before, &copy) == 0)
    {
      day_clear (before);
      *before = copy;
      return;
    }
  g_array_insert_val (draft->days, at, copy);
}

static void
draft_add_strip (Draft *draft, const OxDoneStrip *strip)
{
  OxDoneStrip copy = strip_copy (strip);
  guint place = GPOINTER_TO_UINT (g_hash_table_lookup (draft->places, &copy));
  if (place > 0)
    {
      OxDoneStrip *before = &g_array_index (draft->strips, OxDoneStrip, place - 1);
      copy.kept = before->kept;
      strip_clear (before);
      *before = copy;
      return;
    }
  copy.kept = MIN (copy.kept, draft->strips->len);
  g_array_append_val (draft->strips, copy);
  g_hash_table_insert (draft->places, g_memdup2 (&copy, sizeof copy), GUINT_TO_POINTER (draft->strips->len));
}

static void
draft_add_edge (Draft *draft, const OxDoneEdge *edge)
{
  OxDoneEdge copy = edge_copy (edge);
  if (copy.n_rings > 0)
    g_array_append_val (draft->edges, copy);
  else
    edge_clear (&copy);
}

static void
draft_add_all (Draft *draft, const OxRecord *record)
{
  for (guint i = 0; i < record->n_days; i++)
    draft_add_day (draft, &record->days[i]);
  for (guint i = 0; i < record->n_strips; i++)
    draft_add_strip (draft, &record->strips[i]);
  for (guint i = 0; i < record->n_edges; i++)
    draft_add_edge (draft, &record->edges[i]);
}

static OxRecord *
draft_end (Draft *draft)
{
  OxRecord *self = g_atomic_rc_box_new0 (OxRecord);
  self->n_days = draft->days->len;
  self->n_strips = draft->strips->len;
  self->n_edges = draft->edges->len;
  self->days = (OxRecordDay *) (gpointer) g_array_free (draft->days, FALSE);
  self->strips = (OxDoneStrip *) (gpointer) g_array_free (draft->strips, FALSE);
  self->edges = (OxDoneEdge *) (gpointer) g_array_free (draft->edges, FALSE);
  g_hash_table_unref (draft->places);
  return self;
}

OxRecord *
ox_record_new (const OxRecord *record)
{
  Draft draft = draft_new (record->n_strips);
  draft_add_all (&draft, record);
  return draft_end (&draft);
}

OxRecord *
ox_record_ref (const OxRecord *record)
{
  return g_atomic_rc_box_acquire ((gpointer) record);
}

static void
record_clear (gpointer data)
{
  OxRecord *record = data;
  for (guint i = 0; i < record->n_days; i++)
    day_clear (&record->days[i]);
  for (guint i = 0; i < record->n_strips; i++)
    strip_clear (&record->strips[i]);
  for (guint i = 0; i < record->n_edges; i++)
    edge_clear (&record->edges[i]);
  g_free (record->days);
  g_free (record->strips);
  g_free (record->edges);
}

void
ox_record_unref (const OxRecord *record)
{
  g_atomic_rc_box_release_full ((gpointer) record, record_clear);
}

gboolean
ox_record_is_empty (const OxRecord *record)
{
  return record->n_days + record->n_strips + record->n_edges == 0;
}

/* --- made from another one ------------------------------------------------------------------------------------- */

OxRecord *
ox_record_with_day (const OxRecord *record, const OxRecordDay *day)
{
  Draft draft = draft_new (record->n_strips);
  draft_add_all (&draft, record);
  draft_add_day (&draft, day);
  return draft_end (&draft);
}

OxRecord *
ox_record_without_day (const OxRecord *record, const char *date)
{
  Draft draft = draft_new (record->n_strips);
  draft_add_all (&draft, &(OxRecord){ 0, record->n_strips, record->n_edges, NULL, record->strips, record->edges });
  for (guint i = 0; i < record->n_days; i++)
    if (!g_str_equal (record->days[i].date, date))
      draft_add_day (&draft, &record->days[i]);
  return draft_end (&draft);
}

OxRecord *
ox_record_with_strips (const OxRecord *record, const OxDoneStrip *strips, guint n)
{
  Draft draft = draft_new (record->n_strips + n);
  draft_add_all (&draft, record);
  for (guint i = 0; i < n; i++)
    draft_add_strip (&draft, &strips[i]);
  return draft_end (&draft);
}

OxRecord *
ox_record_without_strips (const OxRecord *record, const OxDoneStrip *strips, guint n)
{
  g_autoptr (GHashTable) gone = g_hash_table_new (ox_done_strip_hash, ox_done_strip_same_place);
  for (guint i = 0; i < n; i++)
    g_hash_table_add (gone, (gpointer) &strips[i]);
  Draft draft = draft_new (record->n_strips);
  draft_add_all (&draft, &(OxRecord){ record->n_days, 0, record->n_edges, record->days, NULL, record->edges });
  g_autofree guint *left = g_new0 (guint, record->n_strips + 1); /* of the first i strips */
  for (guint i = 0; i < record->n_strips; i++)
    {
      OxDoneStrip strip = record->strips[i];
      gboolean stays = !g_hash_table_contains (gone, &strip);
      left[i + 1] = left[i] + (stays ? 1 : 0);
      strip.kept = left[MIN (strip.kept, i)];
      if (stays)
        draft_add_strip (&draft, &strip);
    }
  return draft_end (&draft);
}

/* What of @edge does not lie on @floor, where that is worth an area of its own. */
static void
draft_add_rest (Draft *draft, const OxDoneEdge *edge, const OxRegion *floor)
{
  g_autoptr (OxRegion) whole = ox_done_edge_region (edge);
  g_autoptr (OxRegion) shared = ox_region_intersection (whole, floor);
  if (ox_region_area (shared) < LEAST_EDGE_M2)
    {
      draft_add_edge (draft, edge);
      return;
    }
  /* Outlines that the grid moved by a hair leave no slivers. */
  g_autoptr (OxRegion) wide = ox_region_offset (floor, 10 * OX_GRID, FALSE);
  g_autoptr (OxRegion) rest = ox_region_difference (whole, wide);
  g_autoptr (GPtrArray) rings = ox_done_edge_rings (rest);
  OxDoneEdge left = *edge;
  left.n_rings = rings->len;
  left.rings = (OxRing **) rings->pdata;
  if (ox_region_area (rest) >= LEAST_EDGE_M2)
    draft_add_edge (draft, &left);
}

OxRecord *
ox_record_with_edges (const OxRecord *record, const OxDoneEdge *edges, guint n)
{
  g_autoptr (GPtrArray) regions = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_region_unref);
  for (guint i = 0; i < record->n_edges; i++)
    g_ptr_array_add (regions, ox_done_edge_region (&record->edges[i]));
  g_autoptr (OxRegion) marked = ox_region_union_many ((const OxRegion *const *) regions->pdata, regions->len);
  Draft draft = draft_new (record->n_strips);
  draft_add_all (&draft, record);
  for (guint i = 0; i < n; i++)
    draft_add_rest (&draft, &edges[i], marked);
  return draft_end (&draft);
}

OxRecord *
ox_record_without_edge_floor (const OxRecord *record, const OxRegion *floor)
{
  Draft draft = draft_new (record->n_strips);
  draft_add_all (&draft, &(OxRecord){ record->n_days, record->n_strips, 0, record->days, record->strips, NULL });
  for (guint i = 0; i < record->n_edges; i++)
    draft_add_rest (&draft, &record->edges[i], floor);
  return draft_end (&draft);
}

/* --- what can be asked ----------------------------------------------------------------------------------------- */

const OxRecordDay *
ox_record_find_day (const OxRecord *record, const char *date, guint machine)
{
  for (guint i = 0; i < record->n_days; i++)
    if (g_str_equal (record->days[i].date, date) && record->days[i].machine == machine)
      return &record->days[i];
  return NULL;
}

double
ox_record_day_hours (const OxRecordDay *day)
{
  if (day->meter_start_h < 0 || day->meter_end_h < 0)
    return 0;
  return ox_value_snap (day->meter_end_h - day->meter_start_h);
}

double
ox_record_meter_hours (const OxRecord *record, guint machine)
{
  double sum = 0;
  for (guint i = 0; i < record->n_days; i++)
    if (machine == 0 || record->days[i].machine == machine)
      sum += ox_record_day_hours (&record->days[i]);
  return sum;
}

/* All bits of both coordinates count: strips of one room share middles, lines and whole metres. */
static guint
hash_end (OxPoint p)
{
  const double values[] = { p.x + 0.0, p.y + 0.0 }; /* no negative zero */
  guint64 hash = 0;
  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    {
      guint64 bits;
      memcpy (&bits, &values[i], sizeof bits);
      hash = (hash ^ bits) * GOLDEN;
      hash ^= hash >> 32;
    }
  /* Once more, or mirror images would differ in the highest bit alone, which two ends take away again. */
  hash *= GOLDEN;
  return (guint) (hash ^ hash >> 32);
}

guint
ox_done_strip_hash (gconstpointer strip)
{
  const OxDoneStrip *s = strip;
  /* The same either way round. */
  return hash_end (s->a) + hash_end (s->b) + MAX (s->coat, 1);
}

static gboolean
same_point (OxPoint p, OxPoint q)
{
  return p.x == q.x && p.y == q.y;
}

gboolean
ox_done_strip_same_place (gconstpointer a, gconstpointer b)
{
  const OxDoneStrip *p = a, *q = b;
  return MAX (p->coat, 1) == MAX (q->coat, 1)
         && ((same_point (p->a, q->a) && same_point (p->b, q->b))
             || (same_point (p->a, q->b) && same_point (p->b, q->a)));
}

OxRegion *
ox_done_edge_region (const OxDoneEdge *edge)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_region_unref);
  for (guint i = 0; i < edge->n_rings;)
    {
      guint holes = 0;
      while (i + 1 + holes < edge->n_rings && ox_ring_area (edge->rings[i + 1 + holes]) < 0)
        holes++;
      g_ptr_array_add (parts, ox_region_new_rings (edge->rings[i], (const OxRing *const *) edge->rings + i + 1, holes));
      i += 1 + holes;
    }
  return ox_region_union_many ((const OxRegion *const *) parts->pdata, parts->len);
}

/* FALSE, with nothing added, when the grid folds the outline of the part. */
static gboolean
add_part (GPtrArray *rings, const OxRegion *part)
{
  guint before = rings->len;
  for (guint i = 0; i < part->n_rings; i++)
    {
      g_autoptr (OxRing) ring = ox_ring_new (part->points + part->rings[i].start, part->rings[i].n);
      gboolean simple = ring->n >= 3 && ox_ring_is_simple (ring, NULL);
      if (!simple && !part->rings[i].hole)
        {
          g_ptr_array_set_size (rings, (gint) before);
          return FALSE;
        }
      if (simple)
        g_ptr_array_add (rings, g_steal_pointer (&ring));
    }
  return TRUE;
}

GPtrArray *
ox_done_edge_rings (const OxRegion *region)
{
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_ring_unref);
  for (guint i = 0; i < region->n_parts; i++)
    {
      g_autoptr (OxRegion) part = ox_region_get_part (region, i);
      if (add_part (rings, part))
        continue;
      g_autoptr (OxRegion) thinner = ox_region_offset (part, -UNFOLD, FALSE);
      for (guint k = 0; k < thinner->n_parts; k++)
        {
          g_autoptr (OxRegion) piece = ox_region_get_part (thinner, k);
          (void) add_part (rings, piece);
        }
    }
  return rings;
}
