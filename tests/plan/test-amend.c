/* Oxturn: plan/amend: strips that break a rule are cut or taken back, and nothing else is touched.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "laid.h"
#include "plan/amend.h"
#include "plan/verify.h"
#include "support/floors.h"

static guint
count_breaches (const Laid *laid)
{
  g_autofree OxStrip *strips = g_new0 (OxStrip, laid->layout->drafts->len);
  for (guint i = 0; i < laid->layout->drafts->len; i++)
    {
      const OxDraft *d = laid_draft (laid, i);
      strips[i] = (OxStrip){ .order = i + 1, .kind = d->kind, .coat = 1, .a = { d->x0, d->y }, .b = { d->x1, d->y }, .width = 0.21 };
    }
  OxPlan plan = { .job = laid->job, .n_strips = laid->layout->drafts->len, .strips = strips };
  g_autoptr (GPtrArray) breaches = ox_plan_verify_laid (&plan, laid->floor);
  return breaches->len;
}

/* Two lanes 0.19 m apart as they should be; a third strip is laid by each test. */
static Laid *
two_lanes (void)
{
  Laid *laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 8, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = -1, .y = 3.19, .x0 = 2, .x1 = 8, .grid = TRUE });
  return laid;
}

static void
sound (void)
{
  g_autoptr (Laid) laid = two_lanes ();
  g_assert_cmpuint (count_breaches (laid), ==, 0);
  ox_layout_amend (laid->layout, laid->floor, laid->job);
  g_assert_cmpuint (laid->layout->drafts->len, ==, 2);
  g_assert_cmpfloat (laid_metres (laid), ==, 12);
}

/* A short strip on a lane that is worked already goes; the lanes stay. */
static void
for_nothing (void)
{
  g_autoptr (Laid) laid = two_lanes ();
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3.0005, .x0 = 4, .x1 = 5, .kind = OX_STRIP_CROSSWISE });
  g_assert_cmpuint (count_breaches (laid), >, 0);
  ox_layout_amend (laid->layout, laid->floor, laid->job);
  g_assert_cmpuint (count_breaches (laid), ==, 0);
  g_assert_cmpfloat (laid_metres (laid), ==, 12);
}

/* A short strip that leaves a slot of 8 mm towards a long one: what is lost to close the matter is the short one at most. */
static void
slot (void)
{
  g_autoptr (Laid) laid = two_lanes ();
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3.19 + 0.218, .x0 = 4, .x1 = 5, .kind = OX_STRIP_CROSSWISE });
  g_assert_cmpuint (count_breaches (laid), >, 0);
  ox_layout_amend (laid->layout, laid->floor, laid->job);
  g_assert_cmpuint (count_breaches (laid), ==, 0);
  g_assert_cmpfloat (laid_metres (laid), >=, 12);
}

/* Of two strips that overlap by too little over a short stretch, the one is cut back to where that begins. */
static void
cut (void)
{
  g_autoptr (Laid) laid = two_lanes ();
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3.19 + 0.198, .x0 = 6.8, .x1 = 8.6, .kind = OX_STRIP_CROSSWISE });
  g_assert_cmpuint (count_breaches (laid), >, 0);
  ox_layout_amend (laid->layout, laid->floor, laid->job);
  g_assert_cmpuint (count_breaches (laid), ==, 0);
  g_assert_cmpfloat (laid_metres (laid), >=, 12);
}

/* Strips laid at random: strip is only lost for fewer breaches. */
static void
nothing_for_nothing (void)
{
  for (guint seed = 0; seed < 100; seed++)
    {
      g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
      g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
      for (guint i = 0; i < 3 + seed % 12; i++)
        {
          double x0 = g_rand_double_range (rand, 2, 3), x1 = x0 + g_rand_double_range (rand, 0.6, 2);
          double y = g_rand_double_range (rand, 2.8, 3.3);
          laid_add (laid, (OxDraft){ .sign = 1, .y = y, .x0 = x0, .x1 = x1, .kind = OX_STRIP_CROSSWISE });
        }
      guint before = count_breaches (laid);
      double metres = laid_metres (laid);
      ox_layout_amend (laid->layout, laid->floor, laid->job);
      if (before > 0 && count_breaches (laid) >= before)
        g_assert_cmpfloat (laid_metres (laid), ==, metres);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/amend/sound", sound);
  g_test_add_func ("/plan/amend/for-nothing", for_nothing);
  g_test_add_func ("/plan/amend/slot", slot);
  g_test_add_func ("/plan/amend/too-little-overlap", cut);
  g_test_add_func ("/plan/amend/nothing-for-nothing", nothing_for_nothing);
  return g_test_run ();
}
