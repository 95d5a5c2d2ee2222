/* Oxturn: plan/finish: what further strips save, and where it ends.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "judge.h"
#include "laid.h"
#include "support/floors.h"
#include "support/ox-test.h"

static Laid *
mains_and_zones (OxJob *job, OxWork work)
{
  Laid *laid = laid_new (job, work);
  g_assert_true (ox_layout_mains (laid->layout));
  ox_layout_zones (laid->layout);
  return laid;
}

/* Seconds of strips and of what is left to the hand. */
static double
labour (const Laid *laid)
{
  return laid_metres (laid) / laid->job->machine->travel_speed * 60
         + ox_cover_left (laid->layout->cover) * ox_layout_hand_seconds (laid->layout);
}

/* In the corners of a hall, where crosswise strips start, short strips are laid; all that was there stays. */
static void
corners (void)
{
  g_autoptr (Laid) laid = mains_and_zones (ox_test_floor_rectangle (12, 8, "compact"), OX_WORK_SERPENTINE);
  const OxBox corner[4] = { { 0, 0, 1.3, 1.3 }, { 10.7, 0, 12, 1.3 }, { 0, 6.7, 1.3, 8 }, { 10.7, 6.7, 12, 8 } };
  guint n = laid->layout->drafts->len;
  double open[4], before = labour (laid);
  g_autofree OxDraft *old = g_memdup2 (laid->layout->drafts->data, n * sizeof (OxDraft));
  for (guint i = 0; i < 4; i++)
    open[i] = laid_open (laid, corner[i]);
  g_assert_true (ox_layout_finish (laid->layout, NULL));
  g_assert_cmpuint (laid->layout->drafts->len, >, n);
  g_assert_cmpmem (laid->layout->drafts->data, n * sizeof (OxDraft), old, n * sizeof (OxDraft));
  laid_expect_fit (laid);
  g_assert_cmpfloat (labour (laid), <, before);
  for (guint i = 0; i < 4; i++)
    g_assert_cmpfloat (laid_open (laid, corner[i]), <=, open[i]);
  ox_test_near (laid_open (laid, (OxBox){ 1.3, 0, 10.7, 8 }), 2 * 9.4 * 0.105, 0.02);
}

/* Strip by strip: the floor that each one covers would take longer by hand than the strip takes. */
static void
each_pays (void)
{
  g_autoptr (Laid) laid = mains_and_zones (
      judge_with_obstacle (ox_test_floor_rectangle (9, 7, "medium"), OX_OBSTACLE_SOLID, (OxPoint){ 4, 3 }, 1.1),
      OX_WORK_SERPENTINE);
  guint n = laid->layout->drafts->len;
  g_assert_true (ox_layout_finish (laid->layout, NULL));
  guint all = laid->layout->drafts->len;
  g_assert_cmpuint (all, >, n);
  g_autofree OxDraft *drafts = g_memdup2 (laid->layout->drafts->data, all * sizeof (OxDraft));
  for (guint i = all; i > n; i--)
    ox_layout_remove (laid->layout, i - 1);
  for (guint i = n; i < all; i++)
    {
      double before = labour (laid);
      ox_layout_add (laid->layout, &drafts[i]);
      g_assert_cmpfloat (labour (laid), <, before);
    }
}

/* On a lane that is prepared from 4.3 m on but for 60 mm a good way off, the strip ends where the floor before it does.
 */
static void
stretch (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_FORWARD);
  g_assert_true (ox_layout_mains (laid->layout));
  guint k = laid->layout->n_main_lanes / 2;
  double y = laid_draft (laid, k)->y;
  ox_layout_remove (laid->layout, k);
  laid_add (laid, (OxDraft){ .sign = 1, .y = y, .x0 = 4.3, .x1 = 7.04, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = 1, .y = y, .x0 = 7.18, .x1 = 9.63, .grid = TRUE });
  guint n = laid->layout->drafts->len, found = 0;
  g_assert_true (ox_layout_finish (laid->layout, NULL));
  for (guint i = n; i < laid->layout->drafts->len; i++)
    {
      const OxDraft *d = laid_draft (laid, i);
      if (d->frame != 0 || fabs (d->y - y) > 1e-9)
        continue;
      found++;
      g_assert_cmpint (d->kind, ==, OX_STRIP_MAIN);
      g_assert_cmpfloat (d->x1, <=, 4.3);
    }
  g_assert_cmpuint (found, ==, 1);
}

/* Once nothing pays any more nothing is laid. */
static void
ends (void)
{
  g_autoptr (Laid) laid = mains_and_zones (ox_test_floor_rectangle (8, 6, "compact"), OX_WORK_SERPENTINE);
  g_assert_true (ox_layout_finish (laid->layout, NULL));
  guint n = laid->layout->drafts->len;
  g_assert_true (ox_layout_finish (laid->layout, NULL));
  g_assert_cmpuint (laid->layout->drafts->len, ==, n);
}

/* With hands that do 100000 m2 an hour no strip pays. */
static void
fast_hands (void)
{
  g_autoptr (OxJob) base = ox_test_floor_rectangle (8, 6, "compact");
  OxJobBuilder *builder = ox_job_builder_new (base);
  ox_job_builder_set_rates (builder, (OxRates){ .edge_m2_per_hour = 1e5 });
  g_autoptr (Laid) laid = laid_new (ox_job_builder_end (builder), OX_WORK_SERPENTINE);
  g_assert_true (ox_layout_finish (laid->layout, NULL));
  g_assert_cmpuint (laid->layout->drafts->len, ==, 0);
}

/* Where no swing fits only strips with the heading of the work are laid. */
static void
one_heading (void)
{
  for (OxWork work = OX_WORK_FORWARD; work <= OX_WORK_BACKWARD; work++)
    {
      g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (9, 1.4, "compact"), work);
      laid->layout->one_heading = TRUE;
      for (guint i = 0; i < 5; i++)
        ox_layout_lane (laid->layout, 0, 0.25 + i * 0.19);
      g_assert_true (ox_layout_finish (laid->layout, NULL));
      g_assert_cmpuint (laid->layout->drafts->len, >, 3);
      for (guint i = 0; i < laid->layout->drafts->len; i++)
        {
          g_assert_cmpuint (laid_draft (laid, i)->frame, ==, 0);
          g_assert_cmpint (laid_draft (laid, i)->sign, ==, work == OX_WORK_FORWARD ? 1 : -1);
        }
    }
}

static void
cancelled (void)
{
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  OxRun run = OX_RUN_INIT;
  run.cancel = cancel;
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (8, 6, "compact"), OX_WORK_SERPENTINE);
  g_cancellable_cancel (cancel);
  g_assert_false (ox_layout_finish (laid->layout, &run));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/finish/corners", corners);
  g_test_add_func ("/plan/finish/each-pays", each_pays);
  g_test_add_func ("/plan/finish/stretch", stretch);
  g_test_add_func ("/plan/finish/ends", ends);
  g_test_add_func ("/plan/finish/fast-hands", fast_hands);
  g_test_add_func ("/plan/finish/one-heading", one_heading);
  g_test_add_func ("/plan/finish/cancelled", cancelled);
  return g_test_run ();
}
