/* Oxturn: tests/file/test-load
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/load.h"
#include <string.h>
#include "file/job-xml.h"
#include "support/ox-test.h"

static void
test_sizes (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "bytes", NULL);
  const gsize lengths[] = { 0, 1, 65535, 65536, 65537, 200000 };
  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = g_strnfill (lengths[i], 'x');
      g_assert_true (g_file_set_contents (path, text, (gssize) lengths[i], NULL));
      g_autoptr (GByteArray) bytes = ox_load_file (path, lengths[i], &error);
      g_assert_no_error (error);
      g_assert_cmpuint (bytes->len, ==, lengths[i]);
      g_assert_cmpstr ((const char *) bytes->data, ==, text);
      if (lengths[i] == 0)
        continue;
      g_assert_null (ox_load_file (path, lengths[i] - 1, &error));
      g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_TOO_LARGE);
    }
  ox_test_folder_free (folder);
}

static void
test_without_end (void)
{
  g_autoptr (GError) error = NULL;
  g_assert_null (ox_load_file ("/dev/zero", 1024 * 1024, &error));
  g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_TOO_LARGE);
  g_assert_nonnull (strstr (error->message, "/dev/zero has more than 1 MB"));
}

static void
test_not_there (void)
{
  g_autoptr (GError) error = NULL;
  g_assert_null (ox_load_file ("/nowhere", 10, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_assert_true (g_str_has_prefix (error->message, "/nowhere could not be read"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/load/sizes", test_sizes);
  g_test_add_func ("/file/load/without-end", test_without_end);
  g_test_add_func ("/file/load/not-there", test_not_there);
  return g_test_run ();
}
