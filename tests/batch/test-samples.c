/* Oxturn: tests/batch/test-samples
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "run-batch.h"

/* The jobs in samples/ are those that make-samples makes, to the byte. */
static void
test_made_again (void)
{
  static const char *const names[] = { "warehouse.oxturn", "workshop.oxturn", "shop.oxturn" };
  char *folder = ox_test_folder_new ();
  g_autofree char *program = built_path ("samples/make-samples");
  g_auto (Run) run = run_program ((const char *const[]){ program, folder, NULL });
  assert_silent (&run);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *made_path = g_build_filename (folder, names[i], NULL);
      g_autofree char *kept_name = g_build_filename ("samples", names[i], NULL);
      g_autofree char *kept_path = source_path (kept_name);
      g_autofree char *made = NULL;
      g_autofree char *kept = NULL;
      g_assert_true (g_file_get_contents (made_path, &made, NULL, NULL));
      g_assert_true (g_file_get_contents (kept_path, &kept, NULL, NULL));
      g_assert_cmpstr (made, ==, kept);
    }
  ox_test_folder_free (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch/samples/made-again", test_made_again);
  return g_test_run ();
}
