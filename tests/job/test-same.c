/* Oxturn: tests/job/test-same
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/same.h"
#include "signed.h"

/* A job made anew item by item is the same drawing. */
static void
test_same (void)
{
  g_autoptr (OxJob) one = make_signed_job ();
  g_autoptr (OxJob) two = make_signed_job ();
  g_assert_true (one->rooms[0] != two->rooms[0]);
  g_assert_true (ox_job_same_drawing (one, two));
}

/* On jobs that nobody signed, where the edit leaves only itself. */
static void
test_differs (void)
{
  g_autoptr (OxJob) job = make_signed_job ();
  g_autoptr (OxJob) plain = edit_unsigned (job);
  for (guint i = 0; i < G_N_ELEMENTS (signed_edits); i++)
    {
      /* These two are about the signature, which is not there. */
      if (signed_edits[i].edit == edit_unsigned || signed_edits[i].edit == edit_signed_again)
        continue;
      g_test_message ("%s", signed_edits[i].name);
      g_autoptr (OxJob) edited = signed_edits[i].edit (plain);
      g_assert_false (ox_job_same_drawing (plain, edited));
      g_assert_false (ox_job_same_drawing (edited, plain));
    }
  for (guint i = 0; i < G_N_ELEMENTS (harmless_edits); i++)
    {
      g_test_message ("%s", harmless_edits[i].name);
      g_autoptr (OxJob) edited = harmless_edits[i].edit (plain);
      g_assert_true (ox_job_same_drawing (plain, edited));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/same/same", test_same);
  g_test_add_func ("/job/same/differs", test_differs);
  return g_test_run ();
}
