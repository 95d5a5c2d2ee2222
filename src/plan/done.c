/* Oxturn: plan/done - what of a plan is done already, by the job's record.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/done.h"

#define RIM 0.002            /* m by which marked floor is grown: stored corners lie on a grid */
#define LEAST_PIECE_M2 0.005 /* less than this is not split off ... */
#define LEAST_SHARE 0.005    /* ... nor less than this share of the area */
#define MOST_BLASTED_M2 0.05 /* of done edge work that strips may cover besides */
#define CORE_SHARE 0.45      /* of the blast width: what shrinking by that leaves is wide enough for a strip, with a tenth to spare */
#define SAME_LANE 0.0005     /* m across: strips of one chalk line */

/* The room in which the middle of a done strip lies, -1: none. */
static int
room_of (const OxJob *job, const OxDoneStrip *mark)
{
  OxPoint middle = ox_point_scale (ox_point_add (mark->a, mark->b), 0.5);
  for (guint i = 0; i < job->n_rooms; i++)
    if (ox_ring_contains (job->rooms[i]->ring, middle))
      return (int) i;
  return -1;
}

/* Whether anything in the room of a mark asks for its coat. */
static gboolean
is_asked (const OxFloor *floor, int room, guint coat)
{
  for (guint i = 0; room >= 0 && i < floor->n_coats; i++)
    if (floor->coats[i].room == (guint) room && floor->coats[i].coat == coat)
      return TRUE;
  return FALSE;
}

/* Floor of each mark of edge work. */
static GPtrArray *
marked_edges (const OxRecord *record)
{
  GPtrArray *regions = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_region_unref);
  for (guint i = 0; i < record->n_edges; i++)
    g_ptr_array_add (regions, ox_done_edge_region (&record->edges[i]));
  return regions;
}

static OxRegion *
together (const GPtrArray *regions)
{
  return ox_region_union_many ((const OxRegion *const *) regions->pdata, regions->len);
}

/* Whether strips that are to be laid cover edge work that was done by hand. */
static gboolean
blasts_done_edges (const OxPlan *plan)
{
  if (plan->job->record->n_edges == 0)
    return FALSE;
  g_autoptr (GPtrArray) marks = marked_edges (plan->job->record);
  g_autoptr (OxRegion) marked = together (marks);
  g_autoptr (OxRegion) covered = ox_strips_covered (plan->strips + plan->n_kept, plan->n_strips - plan->n_kept, (OxStripsOf){ -1, 0, -1 },
                                                    plan->job->machine->blast_length);
  g_autoptr (OxRegion) both = ox_region_intersection (covered, marked);
  return ox_region_area (both) > MOST_BLASTED_M2;
}

gboolean
ox_done_strips (OxPlan *plan, const OxFloor *floor)
{
  const OxRecord *record = plan->job->record;
  g_autofree gboolean *found = g_new0 (gboolean, record->n_strips + 1);
  g_autoptr (GHashTable) marks = g_hash_table_new (ox_done_strip_hash, ox_done_strip_same_place);
  for (guint i = 0; i < record->n_strips; i++)
    g_hash_table_insert (marks, &record->strips[i], GUINT_TO_POINTER (i + 1));
  for (guint i = 0; i < plan->n_strips && record->n_strips > 0; i++)
    {
      OxStrip *strip = &plan->strips[i];
      const OxDoneStrip place = { .a = strip->a, .b = strip->b, .coat = strip->coat };
      strip->done = GPOINTER_TO_UINT (g_hash_table_lookup (marks, &place));
      found[strip->done > 0 ? strip->done - 1 : record->n_strips] = TRUE;
    }
  for (guint i = 0; i < record->n_strips; i++)
    if (!found[i] && is_asked (floor, room_of (plan->job, &record->strips[i]), record->strips[i].coat))
      return FALSE;
  return !blasts_done_edges (plan);
}

GArray *
ox_done_kept (const OxJob *job, const OxFloor *floor, guint n)
{
  GArray *kept = g_array_new (FALSE, FALSE, sizeof (OxStrip));
  for (guint i = 0; i < MIN (n, job->record->n_strips); i++)
    {
      const OxDoneStrip *mark = &job->record->strips[i];
      int room = room_of (job, mark);
      if (!is_asked (floor, room, mark->coat))
        continue;
      OxStrip strip = { .order = kept->len + 1,
                        .room = (guint) room,
                        .coat = mark->coat,
                        .a = mark->a,
                        .b = mark->b,
                        .station = -1,
                        .supply = -1 };
      strip.kind = mark->crosswise ? OX_STRIP_CROSSWISE : OX_STRIP_MAIN;
      strip.heading = atan2 (mark->b.y - mark->a.y, mark->b.x - mark->a.x);
      strip.width = mark->width;
      g_array_append_val (kept, strip);
    }
  return kept;
}

/* @target less @done, and a rim of @done beside what is wide enough for a strip. */
static OxRegion *
left_of (const OxRegion *target, const OxRegion *done, const OxMachine *machine)
{
  double half = CORE_SHARE * machine->blast_width;
  g_autoptr (OxRegion) left = ox_region_difference (target, done);
  g_autoptr (OxRegion) core = ox_region_offset (left, -half, FALSE);
  g_autoptr (OxRegion) wide = ox_region_offset (core, half + machine->min_overlap, FALSE);
  g_autoptr (OxRegion) both = ox_region_intersection (wide, done);
  g_autoptr (OxRegion) rim = ox_region_intersection (both, target);
  return ox_region_union (left, rim);
}

OxCoat *
ox_done_coats_left (const OxJob *job, const OxFloor *floor, const GArray *kept)
{
  OxCoat *coats = g_new0 (OxCoat, floor->n_coats + 1);
  g_autoptr (GPtrArray) marks = marked_edges (job->record);
  g_autoptr (OxRegion) edges = together (marks);
  for (guint i = 0; i < floor->n_coats; i++)
    {
      const OxCoat *coat = &floor->coats[i];
      g_autoptr (OxRegion) done = ox_strips_covered ((const OxStrip *) (gconstpointer) kept->data, kept->len, (OxStripsOf){ -1, coat->coat, -1 },
                                                     job->machine->blast_length);
      g_autoptr (OxRegion) around = left_of (coat->target, done, job->machine);
      coats[i] = (OxCoat){ coat->room, coat->coat, ox_region_difference (around, edges) };
    }
  return coats;
}

void
ox_done_number_lanes (OxPlan *plan)
{
  for (guint i = 0; i < plan->n_kept; i++)
    {
      OxStrip *strip = &plan->strips[i];
      OxPoint along = { cos (strip->heading), sin (strip->heading) };
      guint most = 0;
      for (guint k = 0; k < plan->n_strips && strip->lane == 0; k++)
        {
          const OxStrip *other = &plan->strips[k];
          if (other->room != strip->room || other->coat != strip->coat || other->lane == 0)
            continue;
          most = MAX (most, other->lane);
          gboolean same = fabs (ox_point_cross (along, ox_point_sub (other->a, strip->a))) < SAME_LANE
                          && fabs (ox_point_cross (along, ox_point_sub (other->b, strip->a))) < SAME_LANE;
          strip->lane = same ? other->lane : 0;
        }
      if (strip->lane == 0)
        strip->lane = most + 1;
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
  g_autoptr (GPtrArray) regions = marked_edges (record);
  g_autoptr (OxRegion) all = together (regions);
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
