/* Oxturn: tests/job/test-terms
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/terms.h"
#include "job/edit.h"
#include "job-making.h"

static void
test_copies_deeply (void)
{
  char name[] = "Crew";
  OxCostRate rate = { OX_COST_LABOUR_HOUR, name, (char *) "48.00" };
  g_autoptr (OxCosts) costs
      = ox_costs_new (&(OxCosts){ .currency = (char *) "E\nUR", .contingency = 0.100049, .n = 1, .rates = &rate });
  name[0] = 'X';
  g_assert_cmpstr (costs->rates[0].name, ==, "Crew");
  g_assert_cmpstr (costs->currency, ==, "E UR");
  g_assert_cmpfloat (costs->contingency, ==, 0.1);
}

static void
test_equal (void)
{
  g_autoptr (OxCalendar) usual = ox_calendar_default ();
  OxCalendar draft = *usual;
  draft.days = 0x3f;
  g_autoptr (OxCalendar) saturday = ox_calendar_new (&draft);
  g_assert_true (ox_calendar_equal (usual, usual));
  g_assert_false (ox_calendar_equal (usual, saturday));
  OxCalendar measured[] = { *usual, *usual, *usual };
  measured[0].noise_db = measured[1].silica_machine = measured[2].silica_hand = 1;
  for (guint i = 0; i < G_N_ELEMENTS (measured); i++)
    {
      g_autoptr (OxCalendar) other = ox_calendar_new (&measured[i]);
      g_assert_false (ox_calendar_equal (usual, other));
    }
  OxCostRate rates[] = { { OX_COST_FIXED, NULL, (char *) "1" }, { OX_COST_FIXED, NULL, (char *) "2" } };
  g_autoptr (OxCosts) one = ox_costs_new (&(OxCosts){ .n = 1, .rates = rates });
  g_autoptr (OxCosts) two = ox_costs_new (&(OxCosts){ .n = 1, .rates = rates + 1 });
  OxPatch items[] = { { .id = (char *) "P1", .n_diameters = 2, .diameters_mm = { 196, 204 } } };
  g_autoptr (OxPatches) patches = ox_patches_new (&(OxPatches){ 1, items });
  items[0].diameters_mm[1] = 205;
  g_autoptr (OxPatches) others = ox_patches_new (&(OxPatches){ 1, items });
  g_autoptr (OxPatches) none = ox_patches_new (&(OxPatches){ 0, items });
  g_assert_true (ox_patches_equal (patches, patches));
  g_assert_false (ox_patches_equal (patches, others));
  g_assert_false (ox_patches_equal (patches, none));
  g_assert_true (ox_costs_equal (one, one));
  g_assert_false (ox_costs_equal (one, two));
}

/* An edit of something else shares them. */
static void
test_shared (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  OxPatch patch = { .id = (char *) "P1", .speed_m_per_min = 6 };
  g_autoptr (OxPatches) patches = ox_patches_new (&(OxPatches){ 1, &patch });
  g_autoptr (OxJob) tried = ox_job_with_patches (job, patches, &error);
  g_autoptr (OxJob) feet = ox_job_with_units (tried, OX_UNITS_FEET);
  g_assert_no_error (error);
  g_assert_true (feet->patches == patches && feet->calendar == job->calendar && feet->costs == job->costs);
  g_assert_cmpuint (job->patches->n, ==, 0);
}

/* The last trial is how the machine is set; each of its figures tells patches apart. */
static void
test_trial (void)
{
  OxPatch items[] = { { .id = (char *) "P1", .speed_m_per_min = 6, .left_mm = 0.4, .right_mm = 0.6, .cage_min = 540 },
                      { .id = (char *) "P2", .speed_m_per_min = 6, .left_mm = 0.5, .right_mm = 0.5, .cage_to_min = 550 },
                      { .id = (char *) "P3", .speed_m_per_min = 6 } };
  g_autoptr (OxPatches) patches = ox_patches_new (&(OxPatches){ 3, items }), none = ox_patches_new (&(OxPatches){ 0, NULL });
  g_assert_cmpstr (ox_patches_trial (patches)->id, ==, "P2");
  g_assert_null (ox_patches_trial (none));
  g_assert_false (ox_patch_has_trial (&items[2]));
  for (guint i = 0; i < 5; i++)
    {
      OxPatch other = items[0];
      double *figures[] = { &other.left_mm, &other.middle_mm, &other.right_mm };
      if (i < 3)
        *figures[i] += 0.1;
      other.cage_min += i == 3;
      other.cage_to_min += i == 4;
      g_autoptr (OxPatches) a = ox_patches_new (&(OxPatches){ 1, items }), b = ox_patches_new (&(OxPatches){ 1, &other });
      g_assert_false (ox_patches_equal (a, b));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/terms/copies-deeply", test_copies_deeply);
  g_test_add_func ("/job/terms/equal", test_equal);
  g_test_add_func ("/job/terms/shared", test_shared);
  g_test_add_func ("/job/terms/trial", test_trial);
  return g_test_run ();
}
