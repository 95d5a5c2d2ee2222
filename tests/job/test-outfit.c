/* Oxturn: tests/job/test-outfit
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/outfit.h"
#include "job/edit.h"
#include "job-making.h"

static void
test_copies_deeply (void)
{
  char shot[] = "S330";
  g_autoptr (OxOutfit) outfit = ox_outfit_new (&(OxOutfit){ shot, 20.00000049, 2, { { 15, 3.31 }, { 15.24, 5.26 } } });
  shot[0] = 'X';
  g_assert_cmpstr (outfit->shot, ==, "S330");
  g_assert_cmpfloat (outfit->circuit_a, ==, 20);
  g_assert_cmpfloat (outfit->cords[1].mm2, ==, 5.26);
}

static void
test_equal (void)
{
  g_autoptr (OxOutfit) none = ox_outfit_default ();
  const OxOutfit drafts[] = {
    { (char *) "S330", 0, 0, { { 0, 0 } } }, { NULL, 16, 0, { { 0, 0 } } }, { NULL, 0, 1, { { 10, 2.5 } } },
    { NULL, 0, 1, { { 10, 4 } } },           { NULL, 0, 1, { { 20, 4 } } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (drafts); i++)
    for (guint k = 0; k < G_N_ELEMENTS (drafts); k++)
      {
        g_autoptr (OxOutfit) a = ox_outfit_new (&drafts[i]), b = ox_outfit_new (&drafts[k]);
        g_assert_cmpint (ox_outfit_equal (a, b), ==, i == k);
        g_assert_false (ox_outfit_equal (a, none));
      }
  g_assert_true (ox_outfit_equal (none, none));
}

/* An edit of something else shares it; one that cannot be is refused. */
static void
test_edit (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxOutfit) outfit = ox_outfit_new (&(OxOutfit){ (char *) "S280", 20, 1, { { 30, 3.31 } } });
  g_autoptr (OxJob) equipped = ox_job_with_outfit (job, outfit, &error);
  g_assert_no_error (error);
  g_autoptr (OxJob) feet = ox_job_with_units (equipped, OX_UNITS_FEET);
  g_assert_true (feet->outfit == outfit);
  g_assert_cmpstr (job->outfit->shot, ==, "");
  g_autoptr (OxOutfit) bad = ox_outfit_new (&(OxOutfit){ NULL, 0, 1, { { 30, 0 } } });
  g_assert_null (ox_job_with_outfit (job, bad, &error));
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "outfit"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/outfit/copies-deeply", test_copies_deeply);
  g_test_add_func ("/job/outfit/equal", test_equal);
  g_test_add_func ("/job/outfit/edit", test_edit);
  return g_test_run ();
}
