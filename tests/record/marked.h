/* Oxturn: tests/record/marked - plans of which something is done.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "record/mark.h"
#include "record/which.h"
G_BEGIN_DECLS

/* The planner's plan of @job; (transfer full) */
static inline OxPlan *
marked_plan (const OxJob *job)
{
  g_autoptr (GError) error = NULL;
  OxPlan *plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  return plan;
}

/* @job with strips and edge areas (nullable) of @plan marked on @date; (transfer full) */
static inline OxJob *
marked_job (const OxJob *job, const OxPlan *plan, const char *strips, const char *edges, const OxMark *mark)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) marked = ox_job_ref (job);
  if (strips != NULL)
    {
      g_autoptr (GArray) numbers = ox_which_strips (plan, strips, &error);
      g_assert_no_error (error);
      OxJob *next = ox_mark_strips (marked, plan, numbers, mark, &error);
      g_assert_no_error (error);
      ox_job_unref (marked);
      marked = next;
    }
  if (edges != NULL)
    {
      g_autoptr (GArray) numbers = ox_which_edges (plan, edges, &error);
      g_assert_no_error (error);
      OxJob *next = ox_mark_edges (marked, plan, numbers, mark, &error);
      g_assert_no_error (error);
      ox_job_unref (marked);
      marked = next;
    }
  return g_steal_pointer (&marked);
}

G_END_DECLS
