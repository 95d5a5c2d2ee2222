/* Oxturn: session/marking - marking what is done, as edits of a session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/marking.h"
#include <glib/gi18n-lib.h>

static const OxPlan *
find_plan (OxSession *session, GError **error)
{
  const OxPlan *plan = ox_session_find_plan (session);
  if (plan == NULL)
    g_set_error_literal (error, OX_JOB_ERROR, OX_JOB_ERROR_NO_ITEM,
                         _ ("There is no plan yet whose strips could be marked"));
  return plan;
}

/* Takes @job; NULL stands for an error that is set already. */
static gboolean
apply (OxSession *session, OxJob *job, const char *label)
{
  g_autoptr (OxJob) owned = job;
  if (job == NULL)
    return FALSE;
  ox_session_apply (session, job, label, NULL, NULL);
  return TRUE;
}

gboolean
ox_marking_mark_strips (OxSession *session, const char *which, const OxMark *mark, GError **error)
{
  const OxPlan *plan = find_plan (session, error);
  g_autoptr (GArray) numbers = plan != NULL ? ox_which_strips (plan, which, error) : NULL;
  return numbers != NULL
         && apply (session, ox_mark_strips (ox_session_get_job (session), plan, numbers, mark, error),
                   _ ("Mark Strips Done"));
}

gboolean
ox_marking_unmark_strips (OxSession *session, const char *which, GError **error)
{
  const OxPlan *plan = find_plan (session, error);
  g_autoptr (GArray) numbers = plan != NULL ? ox_which_strips (plan, which, error) : NULL;
  return numbers != NULL
         && apply (session, ox_unmark_strips (ox_session_get_job (session), plan, numbers, error),
                   _ ("Take Back Marks of Strips"));
}

gboolean
ox_marking_mark_edges (OxSession *session, const char *which, const OxMark *mark, GError **error)
{
  const OxPlan *plan = find_plan (session, error);
  g_autoptr (GArray) numbers = plan != NULL ? ox_which_edges (plan, which, error) : NULL;
  return numbers != NULL
         && apply (session, ox_mark_edges (ox_session_get_job (session), plan, numbers, mark, error),
                   _ ("Mark Edge Work Done"));
}

gboolean
ox_marking_unmark_edges (OxSession *session, const char *which, GError **error)
{
  const OxPlan *plan = find_plan (session, error);
  g_autoptr (GArray) numbers = plan != NULL ? ox_which_edges (plan, which, error) : NULL;
  return numbers != NULL
         && apply (session, ox_unmark_edges (ox_session_get_job (session), plan, numbers, error),
                   _ ("Take Back Marks of Edge Work"));
}

gboolean
ox_marking_set_day (OxSession *session, const OxRecordDay *day, GError **error)
{
  return apply (session, ox_mark_day (ox_session_get_job (session), day, error), _ ("Set Day of Record"));
}

gboolean
ox_marking_remove_day (OxSession *session, const char *date, GError **error)
{
  return apply (session, ox_unmark_day (ox_session_get_job (session), date, error), _ ("Remove Day of Record"));
}

guint
ox_marking_strip_at (const OxPlan *plan, OxPoint p)
{
  guint best = 0;
  double least = INFINITY;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      OxPoint along = { cos (strip->heading), sin (strip->heading) };
      OxPoint off = ox_point_sub (p, strip->a);
      double x = ox_point_dot (along, off), y = fabs (ox_point_cross (along, off));
      double half = plan->job->machine->blast_length / 2;
      if (y > strip->width / 2 || x < -half || x > ox_strip_length (strip) + half)
        continue;
      /* Two strips share a few centimetres at most: one that is done is farther than any that is not. */
      double rank = y + (strip->done > 0 ? strip->width : 0);
      if (rank < least)
        {
          least = rank;
          best = i + 1;
        }
    }
  return best;
}

guint
ox_marking_edge_at (const OxPlan *plan, OxPoint p)
{
  for (guint i = 0; i < plan->n_edges; i++)
    if (ox_region_contains (plan->edges[i].region, p))
      return i + 1;
  return 0;
}
