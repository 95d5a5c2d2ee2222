/* Oxturn: tests/tools/test-mark - strips and edge work marked done by pointer.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "support/floors.h"
#include "tools/tool.h"

#include <string.h>

typedef struct
{
  OxJob *job;
  const OxPlan *plan;
  OxMark mark;
  gboolean up_to;
  char *refusal; /* of the last event */
} Desk;

static void
plan_anew (Desk *desk)
{
  g_clear_pointer (&desk->plan, ox_plan_unref);
  desk->plan = ox_plan_new (desk->job, NULL, NULL);
  g_assert_nonnull (desk->plan);
}

static void
desk_init (Desk *desk, const char *date)
{
  *desk = (Desk){ .job = ox_test_floor_rectangle (6, 5, "compact"), .mark = { .date = date } };
  plan_anew (desk);
}

static void
desk_clear (Desk *desk)
{
  ox_job_unref (desk->job);
  ox_plan_unref (desk->plan);
  g_free (desk->refusal);
}

static void
take (Desk *desk, OxToolAnswer *answer)
{
  if (answer->refusal != NULL)
    {
      g_free (desk->refusal);
      desk->refusal = g_strdup (answer->refusal);
    }
  if (answer->job == NULL)
    return;
  ox_job_unref (desk->job);
  desk->job = ox_job_ref (answer->job);
  plan_anew (desk);
}

static void
drag (Desk *desk, OxPoint from, OxPoint to)
{
  g_autoptr (OxTool) tool = ox_tool_new (OX_TOOL_MARK);
  const char *const none[] = { NULL };
  OxPointer pointer = { .at = from, .clicks = 1 };

  for (guint i = 0; i < 2; i++)
    {
      g_auto (OxToolAnswer) answer = { NULL };
      OxScene scene = { .job = desk->job,
                        .selection = none,
                        .px_per_m = 50,
                        .plan = desk->plan,
                        .mark = &desk->mark,
                        .mark_up_to = desk->up_to };

      if (i == 0)
        ox_tool_press (tool, &scene, &pointer, &answer);
      pointer.at = to;
      if (i == 1)
        ox_tool_release (tool, &scene, &pointer, &answer);
      take (desk, &answer);
    }
  g_assert_false (ox_tool_is_busy (tool));
}

static OxPoint
middle (const Desk *desk, guint number)
{
  const OxStrip *strip = &desk->plan->strips[number - 1];

  return (OxPoint){ (strip->a.x + strip->b.x) / 2, (strip->a.y + strip->b.y) / 2 };
}

static guint
count_done (const Desk *desk)
{
  guint n = 0;

  for (guint i = 0; i < desk->plan->n_strips; i++)
    n += desk->plan->strips[i].done > 0;
  return n;
}

static void
test_toggle (void)
{
  Desk desk;

  desk_init (&desk, "2026-11-30");
  drag (&desk, middle (&desk, 3), middle (&desk, 3));
  g_assert_cmpuint (count_done (&desk), ==, 1);
  g_assert_cmpuint (desk.plan->strips[2].done, >, 0);
  g_assert_cmpstr (desk.job->record->strips[0].date, ==, "2026-11-30");
  drag (&desk, middle (&desk, 3), middle (&desk, 3));
  g_assert_cmpuint (count_done (&desk), ==, 0);
  g_assert_true (ox_record_is_empty (desk.job->record));
  desk_clear (&desk);
}

/* Either way round; a run over what is done already marks the rest of it. */
static void
test_run (void)
{
  Desk desk;

  desk_init (&desk, "2026-11-30");
  drag (&desk, middle (&desk, 6), middle (&desk, 4));
  g_assert_cmpuint (count_done (&desk), ==, 3);
  drag (&desk, middle (&desk, 2), middle (&desk, 5));
  g_assert_cmpuint (count_done (&desk), ==, 5);
  desk_clear (&desk);
}

static void
test_up_to (void)
{
  Desk desk;

  desk_init (&desk, "2026-11-30");
  desk.up_to = TRUE;
  drag (&desk, middle (&desk, 5), middle (&desk, 5));
  g_assert_cmpuint (count_done (&desk), ==, 5);
  drag (&desk, middle (&desk, 7), middle (&desk, 7));
  g_assert_cmpuint (count_done (&desk), ==, 7);
  desk_clear (&desk);
}

/* All up to a strip, and a drag over what is done, leave an earlier day its strips. */
static void
test_two_days (void)
{
  Desk desk;

  desk_init (&desk, "2026-11-30");
  drag (&desk, middle (&desk, 1), middle (&desk, 3));
  desk.mark = (OxMark){ .date = "2026-12-01", .csp = 5 };
  desk.up_to = TRUE;
  drag (&desk, middle (&desk, 5), middle (&desk, 5));
  desk.up_to = FALSE;
  drag (&desk, middle (&desk, 2), middle (&desk, 6));
  g_assert_cmpuint (count_done (&desk), ==, 6);
  for (guint i = 0; i < 6; i++)
    {
      const OxDoneStrip *strip = &desk.job->record->strips[desk.plan->strips[i].done - 1];

      g_assert_cmpstr (strip->date, ==, i < 3 ? "2026-11-30" : "2026-12-01");
      g_assert_cmpuint (strip->csp, ==, i < 3 ? 0 : 5);
    }
  desk_clear (&desk);
}

/* A press on nothing, a release beside the floor, a mark without a day: nothing is marked, and the last is said. */
static void
test_nothing (void)
{
  const OxPoint beside = { -3, -3 };
  Desk desk;

  desk_init (&desk, "");
  drag (&desk, beside, middle (&desk, 1));
  drag (&desk, middle (&desk, 1), beside);
  g_assert_null (desk.refusal);
  drag (&desk, middle (&desk, 1), middle (&desk, 1));
  g_assert_nonnull (desk.refusal);
  g_assert_cmpuint (count_done (&desk), ==, 0);
  desk_clear (&desk);
}

static void
test_edge_work (void)
{
  Desk desk;
  OxPoint in;

  desk_init (&desk, "2026-11-30");
  in = ox_region_label_point (desk.plan->edges[0].region, NULL);
  drag (&desk, in, in);
  g_assert_cmpuint (desk.plan->edges[0].done, >, 0);
  drag (&desk, in, in);
  g_assert_cmpuint (desk.plan->edges[0].done, ==, 0);
  desk_clear (&desk);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/mark/toggle", test_toggle);
  g_test_add_func ("/tools/mark/run", test_run);
  g_test_add_func ("/tools/mark/up-to", test_up_to);
  g_test_add_func ("/tools/mark/two-days", test_two_days);
  g_test_add_func ("/tools/mark/nothing", test_nothing);
  g_test_add_func ("/tools/mark/edge-work", test_edge_work);
  return g_test_run ();
}
