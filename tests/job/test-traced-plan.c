/* Oxturn: tests/job/test-traced-plan
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/traced-plan.h"
#include "job/check.h"
#include "job/edit.h"
#include "job/place.h"

#define IDS(...) ((const char *const[]){ __VA_ARGS__, NULL })

static OxJob *
with_plan (OxTracedPlan draft, gsize bytes, GError **error)
{
  g_autofree char *zeros = g_malloc0 (bytes + 1);
  g_autoptr (GBytes) data = g_bytes_new (zeros, bytes);
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  draft.id = draft.id ? draft.id : (char *) "T1";
  draft.data = data;
  g_autoptr (OxTracedPlan) traced = ox_traced_plan_new (&draft);
  return ox_job_with_traced (empty, traced, error);
}

static const OxTracedPlan usual = { .middle = { 10, 5 }, .width = 8, .depth = 4, .page = 1, .strength = 0.6 };

static void
test_ring (void)
{
  OxTracedPlan draft = usual;
  draft.angle_deg = 90;
  g_autoptr (OxJob) job = with_plan (draft, 3, NULL);
  g_autoptr (OxRing) ring = ox_traced_plan_ring (job->traced[0]);
  OxBox box = ox_ring_box (ring);
  g_assert_cmpfloat_with_epsilon (box.x0, 8, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.x1, 12, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.y0, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.y1, 9, 1e-9);
}

/* A file of 40 MB is one block of memory, however many states of the job hold it. */
static void
test_file_is_shared (void)
{
  g_autoptr (OxJob) job = with_plan (usual, 100, NULL);
  g_autoptr (OxJob) moved = ox_job_moved (job, IDS ("T1"), (OxPoint){ 1, 2 }, NULL);
  g_assert_true (moved->traced[0]->data == job->traced[0]->data);
  g_assert_cmpfloat (moved->traced[0]->middle.x, ==, 11);
  g_assert_cmpfloat (moved->traced[0]->middle.y, ==, 7);
}

static void
test_placed (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = with_plan (usual, 3, NULL);
  g_autoptr (OxJob) turned = ox_edit_placed (job, IDS ("T1"), &(OxPlacement){ .turn_deg = -90 }, NULL);
  g_assert_cmpfloat (turned->traced[0]->angle_deg, ==, 270);
  g_assert_cmpfloat (turned->traced[0]->middle.x, ==, 5);
  g_assert_cmpfloat (turned->traced[0]->middle.y, ==, -10);
  g_autoptr (OxJob) mirrored = ox_edit_placed (job, IDS ("T1"), &(OxPlacement){ .mirrored = TRUE }, &error);
  g_assert_null (mirrored);
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "T1"));
}

static void
test_locked_stays (void)
{
  g_autoptr (GError) error = NULL;
  OxTracedPlan draft = usual;
  draft.locked = TRUE;
  g_autoptr (OxJob) job = with_plan (draft, 3, NULL);
  g_autoptr (OxJob) moved = ox_job_moved (job, IDS ("T1"), (OxPoint){ 1, 0 }, &error);
  g_assert_null (moved);
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  g_autoptr (OxJob) gone = ox_job_without (job, IDS ("T1"), NULL);
  g_assert_cmpuint (gone->n_traced, ==, 0);
}

static void
test_copied (void)
{
  g_autoptr (OxJob) job = with_plan (usual, 3, NULL);
  OxPlacement place = { .by = { 1, 1 } };
  OxCopies copies = { job, IDS ("T1"), &place, 1 };
  g_auto (GStrv) ids = NULL;
  g_autoptr (OxJob) two = ox_edit_copied (job, &copies, &ids, NULL);
  g_assert_cmpuint (two->n_traced, ==, 2);
  g_assert_cmpstr (ids[0], ==, "T2");
  g_assert_true (two->traced[1]->data == job->traced[0]->data);
}

static void
test_refused (void)
{
  static const struct
  {
    OxTracedPlan draft;
    gsize bytes;
    const char *part;
  } rows[] = {
    { { .width = 0, .depth = 4, .page = 1, .strength = 1 }, 1, "width" },
    { { .width = 3, .depth = 10001, .page = 1, .strength = 1 }, 1, "depth" },
    { { .width = 3, .depth = 4, .page = 1, .strength = 0 }, 1, "strength" },
    { { .width = 3, .depth = 4, .page = 1, .strength = 1.2 }, 1, "strength" },
    { { .width = 3, .depth = 4, .page = 1, .strength = 1, .angle_deg = 361 }, 1, "angle" },
    { { .width = 3, .depth = 4, .kind = OX_TRACED_PDF, .page = 0, .strength = 1 }, 1, "page" },
    { { .width = 3, .depth = 4, .page = 1, .strength = 1, .middle = { 10001, 0 } }, 1, "coordinates" },
    { { .width = 3, .depth = 4, .page = 1, .strength = 1 }, 0, "empty" },
    { { .width = 3, .depth = 4, .page = 1, .strength = 1 }, OX_TRACED_MAX_BYTES + 1, "40 MB" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (OxJob) job = with_plan (rows[i].draft, rows[i].bytes, &error);
      g_assert_null (job);
      g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
      if (!strstr (error->message, rows[i].part))
        g_error ("“%s” does not say “%s”", error->message, rows[i].part);
    }
  g_autoptr (OxJob) whole = with_plan (usual, OX_TRACED_MAX_BYTES, NULL);
  g_assert_nonnull (whole);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/traced-plan/ring", test_ring);
  g_test_add_func ("/job/traced-plan/file-is-shared", test_file_is_shared);
  g_test_add_func ("/job/traced-plan/placed", test_placed);
  g_test_add_func ("/job/traced-plan/locked-stays", test_locked_stays);
  g_test_add_func ("/job/traced-plan/copied", test_copied);
  g_test_add_func ("/job/traced-plan/refused", test_refused);
  return g_test_run ();
}
