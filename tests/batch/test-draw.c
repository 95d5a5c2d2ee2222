/* Oxturn: tests/batch/test-draw
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "run-batch.h"
#include <string.h>

static void
assert_begins (const char *path, const char *start)
{
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_true (g_str_has_prefix (text, start));
}

static void
test_files (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *job = source_path ("samples/shop.oxturn");
  g_autofree char *pdf = g_build_filename (folder, "shop.pdf", NULL);
  g_autofree char *svg = g_build_filename (folder, "shop.svg", NULL);
  g_auto (Run) all = run_batch ("draw", job, "-o", pdf);
  assert_silent (&all);
  assert_begins (pdf, "%PDF-");
  g_auto (Run) scope = run_batch ("draw", job, "--sheet", "scope", "--paper", "A3", "--scale", "1:100", "-o", svg);
  assert_silent (&scope);
  assert_begins (svg, "<?xml");
  g_auto (Run) tiled = run_batch ("draw", job, "--sheet", "scope", "--paper", "A3", "--tiles", "A4", "-o", svg);
  assert_silent (&tiled);
  g_autofree char *second = g_build_filename (folder, "shop-2.svg", NULL);
  assert_begins (second, "<?xml");
  g_auto (Run) inches = run_batch ("draw", job, "--sheet", "scope", "--paper", "Arch D", "--scale", "1/8in", "-o", svg);
  assert_silent (&inches);
  ox_test_folder_free (folder);
}

/* A crew reads Spanish where the office works in English: the sheets are in their own language, messages in that of the
 * locale. */
static void
test_language (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *job = source_path ("samples/shop.oxturn");
  g_autofree char *svg = g_build_filename (folder, "shop.svg", NULL);
  g_autofree char *text = NULL;
  g_auto (Run) run = run_batch ("draw", job, "--sheet", "scope", "--language", "es", "-o", svg);
  assert_silent (&run);
  g_assert_true (g_file_get_contents (svg, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "Plano de alcance"));
  g_assert_nonnull (strstr (text, "Trabajo de bordes"));
  g_assert_null (strstr (text, "Scope drawing"));
  g_auto (Run) wrong = run_batch ("draw", job, "--language", "tlh", "-o", svg);
  assert_complained (&wrong, 2, "“tlh” is none of the languages en, en_US, es");
  ox_test_folder_free (folder);
}

static void
test_does_not_fit (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *job = source_path ("samples/warehouse.oxturn");
  g_autofree char *svg = g_build_filename (folder, "warehouse.svg", NULL);
  g_auto (Run) run = run_batch ("draw", job, "--sheet", "scope", "--paper", "A4", "--scale", "1:10", "-o", svg);
  assert_complained (&run, 1, "1:10");
  g_assert_false (g_file_test (svg, G_FILE_TEST_EXISTS));
  ox_test_folder_free (folder);
}

static void
test_usage (void)
{
  g_auto (Run) no_out = run_batch ("draw", "floor.oxturn");
  assert_complained (&no_out, 2, "-o is missing");
  g_auto (Run) no_job = run_batch ("draw", "-o", "out.svg");
  assert_complained (&no_job, 2, "JOB is missing");
  g_auto (Run) ending = run_batch ("draw", "floor.oxturn", "-o", "out.png");
  assert_complained (&ending, 2, "“out.png” ends neither in .svg nor in .pdf");
  g_auto (Run) sheet = run_batch ("draw", "floor.oxturn", "--sheet", "bed", "-o", "out.svg");
  assert_complained (&sheet, 2, "“bed” is no sheet");
  g_auto (Run) paper = run_batch ("draw", "floor.oxturn", "--paper", "A9", "-o", "out.svg");
  assert_complained (&paper, 2, "“A9” is none of the papers A4, A3");
  g_auto (Run) tiles = run_batch ("draw", "floor.oxturn", "--tiles", "A9", "-o", "out.svg");
  assert_complained (&tiles, 2, "“A9” is none of the papers A4, A3");
  g_auto (Run) scale = run_batch ("draw", "floor.oxturn", "--scale", "huge", "-o", "out.svg");
  assert_complained (&scale, 2, "“huge” is no scale");
  assert_one_line (scale.err);
}

/* width and height as the first line of an SVG file has them, mm */
static void
read_size (const char *svg, double size[2])
{
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_file_get_contents (svg, &text, NULL, &error);
  g_assert_no_error (error);
  size[0] = g_ascii_strtod (strstr (text, "width=\"") + strlen ("width=\""), NULL);
  size[1] = g_ascii_strtod (strstr (text, "height=\"") + strlen ("height=\""), NULL);
}

/* A sheet stands or lies as asked for, A4 upright and A3 on its side where nothing is. */
static void
test_orientation (void)
{
  static const struct
  {
    const char *paper, *orientation;
    double width, height; /* ISO 216 */
  } rows[] = { { "A4", "auto", 210, 297 },
               { "A4", "portrait", 210, 297 },
               { "A4", "landscape", 297, 210 },
               { "A3", "auto", 420, 297 },
               { "A3", "portrait", 297, 420 },
               { "A3", "landscape", 420, 297 },
               { "Letter", "landscape", 279.4, 215.9 } };
  char *folder = ox_test_folder_new ();
  g_autofree char *job = source_path ("samples/shop.oxturn");
  g_autofree char *svg = g_build_filename (folder, "out.svg", NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      double size[2];
      g_auto (Run) run = run_batch ("draw", job, "--sheet", "scope", "--paper", rows[i].paper, "--orientation",
                                    rows[i].orientation, "-o", svg);
      assert_silent (&run);
      read_size (svg, size);
      ox_test_near (size[0], rows[i].width, 0.001);
      ox_test_near (size[1], rows[i].height, 0.001);
    }
  g_auto (Run) wrong = run_batch ("draw", job, "--orientation", "askew", "-o", svg);
  assert_complained (&wrong, 2, "none of the orientations auto, portrait, landscape");
  ox_test_folder_free (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch/draw/files", test_files);
  g_test_add_func ("/batch/draw/language", test_language);
  g_test_add_func ("/batch/draw/does-not-fit", test_does_not_fit);
  g_test_add_func ("/batch/draw/orientation", test_orientation);
  g_test_add_func ("/batch/draw/usage", test_usage);
  return g_test_run ();
}
