/* Oxturn: record/mark - marking strips and edge areas of a plan done.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/mark.h"

static OxDoneStrip
done_strip (const OxPlan *plan, const OxStrip *strip, const OxMark *mark)
{
  return (OxDoneStrip){
    .room = plan->job->rooms[strip->room]->id,
    .a = strip->a,
    .b = strip->b,
    .width = strip->width,
    .coat = strip->coat,
    .crosswise = strip->kind == OX_STRIP_CROSSWISE,
    .date = mark != NULL ? (char *) mark->date : NULL,
    .csp = mark != NULL ? mark->csp : 0,
    .depth_mm = mark != NULL ? mark->depth_mm : 0,
    .note = mark != NULL ? (char *) mark->note : NULL,
    .kept = plan->kept_marks,
  };
}

/* Strips of the plan as the record has them. The texts stay those of plan and mark. */
static GArray *
list_strips (const OxPlan *plan, const GArray *numbers, const OxMark *mark)
{
  GArray *strips = g_array_new (FALSE, FALSE, sizeof (OxDoneStrip));
  for (guint i = 0; i < numbers->len; i++)
    {
      guint number = g_array_index (numbers, guint, i);
      if (number < 1 || number > plan->n_strips)
        continue;
      OxDoneStrip strip = done_strip (plan, &plan->strips[number - 1], mark);
      g_array_append_val (strips, strip);
    }
  return strips;
}

/* Takes those out of @strips that @record has; it and not the plan is asked, which may be of an earlier job. */
static void
leave_out_done (GArray *strips, const OxRecord *record)
{
  g_autoptr (GHashTable) done = g_hash_table_new (ox_done_strip_hash, ox_done_strip_same_place);
  for (guint i = 0; i < record->n_strips; i++)
    g_hash_table_add (done, &record->strips[i]);
  for (guint i = strips->len; i-- > 0;)
    if (g_hash_table_contains (done, &g_array_index (strips, OxDoneStrip, i)))
      g_array_remove_index (strips, i);
}

OxJob *
ox_mark_strips (const OxJob *job, const OxPlan *plan, const GArray *numbers, const OxMark *mark, GError **error)
{
  g_autoptr (GArray) strips = list_strips (plan, numbers, mark);
  if (numbers->len > 1)
    leave_out_done (strips, job->record);
  if (strips->len == 0)
    return ox_job_ref (job);
  g_autoptr (OxRecord) record
      = ox_record_with_strips (job->record, (const OxDoneStrip *) (gconstpointer) strips->data, strips->len);
  return ox_job_with_record (job, record, error);
}

OxJob *
ox_unmark_strips (const OxJob *job, const OxPlan *plan, const GArray *numbers, GError **error)
{
  g_autoptr (GArray) strips = list_strips (plan, numbers, NULL);
  g_autoptr (OxRecord) record
      = ox_record_without_strips (job->record, (const OxDoneStrip *) (gconstpointer) strips->data, strips->len);
  return ox_job_with_record (job, record, error);
}

static OxRecord *
record_without_edges (const OxRecord *record, const OxPlan *plan, const GArray *numbers)
{
  g_autoptr (GPtrArray) regions = g_ptr_array_new ();
  for (guint i = 0; i < numbers->len; i++)
    {
      guint number = g_array_index (numbers, guint, i);
      if (number >= 1 && number <= plan->n_edges)
        g_ptr_array_add (regions, plan->edges[number - 1].region);
    }
  g_autoptr (OxRegion) floor = ox_region_union_many ((const OxRegion *const *) regions->pdata, regions->len);
  return ox_record_without_edge_floor (record, floor);
}

OxJob *
ox_mark_edges (const OxJob *job, const OxPlan *plan, const GArray *numbers, const OxMark *mark, GError **error)
{
  g_autoptr (GArray) edges = g_array_new (FALSE, FALSE, sizeof (OxDoneEdge));
  g_autoptr (GPtrArray) outlines = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  for (guint i = 0; i < numbers->len; i++)
    {
      guint number = g_array_index (numbers, guint, i);
      if (number < 1 || number > plan->n_edges)
        continue;
      const OxEdge *edge = &plan->edges[number - 1];
      GPtrArray *rings = ox_done_edge_rings (edge->region);
      g_ptr_array_add (outlines, rings);
      OxDoneEdge done = { plan->job->rooms[edge->room]->id, rings->len, (OxRing **) rings->pdata, (char *) mark->date,
                          (char *) mark->note };
      g_array_append_val (edges, done);
    }
  /* What is done keeps its mark there, unless it is taken away first. */
  g_autoptr (OxRecord) before
      = numbers->len > 1 ? ox_record_ref (job->record) : record_without_edges (job->record, plan, numbers);
  g_autoptr (OxRecord) record
      = ox_record_with_edges (before, (const OxDoneEdge *) (gconstpointer) edges->data, edges->len);
  return ox_job_with_record (job, record, error);
}

OxJob *
ox_unmark_edges (const OxJob *job, const OxPlan *plan, const GArray *numbers, GError **error)
{
  g_autoptr (OxRecord) record = record_without_edges (job->record, plan, numbers);
  return ox_job_with_record (job, record, error);
}

OxJob *
ox_mark_day (const OxJob *job, const OxRecordDay *day, GError **error)
{
  g_autoptr (OxRecord) record = ox_record_with_day (job->record, day);
  return ox_job_with_record (job, record, error);
}

OxJob *
ox_unmark_day (const OxJob *job, const char *date, GError **error)
{
  g_autoptr (OxRecord) record = ox_record_without_day (job->record, date);
  return ox_job_with_record (job, record, error);
}
