/* Oxturn: plan/done - what of a plan is done already, by the job's record.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/done.h"

#define RIM 0.002            /* m by which marked floor is grown: stored corners lie on a grid */
#define LEAST_PIECE_M2 0.005 /* less than this is not split off ... */
#define LEAST_SHARE 0.005    /* ... nor less than this share of the area */

void
ox_done_strips (OxPlan *plan)
{
  const OxRecord *record = plan->job->record;
  g_autoptr (GHashTable) marks = g_hash_table_new (ox_done_strip_hash, ox_done_strip_same_place);
  for (guint i = 0; i < record->n_strips; i++)
    g_hash_table_insert (marks, &record->strips[i], GUINT_TO_POINTER (i + 1));
  for (guint i = 0; i < plan->n_strips && record->n_strips > 0; i++)
    {
      OxStrip *strip = &plan->strips[i];
      const OxDoneStrip place = { .a = strip->a, .b = strip->b, .coat = strip->coat };
      strip->done = GPOINTER_TO_UINT (g_hash_table_lookup (marks, &place));
    }
}

typedef struct
{
  GPtrArray *regions; /* OxRegion: one a mark */
  OxRegion *marked;   /* all of them, grown by RIM */
  GArray *edges;      /* OxEdge, as they are to be */
} Marks;

/* The mark that has most of @region, from 1. */
static guint
find_mark (const Marks *marks, const OxRegion *region)
{
  guint best = 0;
  double most = 0;
  for (guint i = 0; i < marks->regions->len; i++)
    {
      g_autoptr (OxRegion) shared = ox_region_intersection (region, marks->regions->pdata[i]);
      double area = ox_region_area (shared);
      if (area > most)
        {
          most = area;
          best = i + 1;
        }
    }
  return best;
}

/* Adds the piece of @edge; takes @region. */
static void
add_piece (Marks *marks, const OxEdge *edge, OxRegion *region, guint done)
{
  OxEdge piece = *edge;
  piece.region = region;
  piece.area = ox_region_area (region);
  piece.length = edge->length * piece.area / edge->area;
  piece.done = done;
  piece.id = g_strdup_printf ("E%u", marks->edges->len + 1);
  g_array_append_val (marks->edges, piece);
}

static void
split_edge (Marks *marks, const OxEdge *edge)
{
  g_autoptr (OxRegion) done = ox_region_intersection (edge->region, marks->marked);
  g_autoptr (OxRegion) left = ox_region_difference (edge->region, marks->marked);
  double least = MAX (LEAST_PIECE_M2, LEAST_SHARE * edge->area);
  guint mark = ox_region_area (done) > 0 ? find_mark (marks, done) : 0;
  if (mark == 0 || (ox_region_area (done) < least && ox_region_area (left) >= least))
    add_piece (marks, edge, ox_region_ref (edge->region), 0);
  else if (ox_region_area (left) < least)
    add_piece (marks, edge, ox_region_ref (edge->region), mark);
  else
    {
      add_piece (marks, edge, g_steal_pointer (&done), mark);
      add_piece (marks, edge, g_steal_pointer (&left), 0);
    }
}

void
ox_done_edges (OxPlan *plan)
{
  const OxRecord *record = plan->job->record;
  if (record->n_edges == 0)
    return;
  g_autoptr (GPtrArray) regions = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_region_unref);
  for (guint i = 0; i < record->n_edges; i++)
    g_ptr_array_add (regions, ox_done_edge_region (&record->edges[i]));
  g_autoptr (OxRegion) all = ox_region_union_many ((const OxRegion *const *) regions->pdata, regions->len);
  g_autoptr (OxRegion) marked = ox_region_offset (all, RIM, FALSE);
  Marks marks = { regions, marked, g_array_new (FALSE, TRUE, sizeof (OxEdge)) };
  for (guint i = 0; i < plan->n_edges; i++)
    {
      split_edge (&marks, &plan->edges[i]);
      g_free (plan->edges[i].id);
      ox_region_unref (plan->edges[i].region);
    }
  g_free (plan->edges);
  plan->n_edges = marks.edges->len;
  plan->edges = (OxEdge *) (gpointer) g_array_free (marks.edges, FALSE);
}
