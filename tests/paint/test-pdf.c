/* Oxturn: tests of paint/pdf
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#define _GNU_SOURCE /* memmem */
#include "paint/pdf.h"
#include "paint/sample-pages.h"
#include "support/ox-test.h"
#include <stdio.h>
#include <string.h>

typedef struct
{
  char *folder, *path;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  (void) data;
  g_autoptr (OxPageSet) set = ox_test_pages ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = ox_pdf_new (set, &error);
  g_assert_no_error (error);
  fixture->folder = ox_test_folder_new ();
  fixture->path = g_build_filename (fixture->folder, "pages.pdf", NULL);
  g_file_set_contents (fixture->path, g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes), &error);
  g_assert_no_error (error);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  (void) data;
  ox_test_folder_free (fixture->folder);
  g_free (fixture->path);
}

static void
test_sizes_and_metadata (Fixture *fixture, gconstpointer data)
{
  (void) data;
  g_autofree char *out
      = ox_test_run ((const char *[]){ "pdfinfo", "-isodates", "-f", "1", "-l", "2", fixture->path, NULL });
  if (out == NULL)
    return;
  /* ISO 216 and ANSI sizes in points of 1/72 in, as pdfinfo rounds them. */
  g_assert_nonnull (strstr (out, "1190.55 x 841.89 pts (A3)"));
  g_assert_nonnull (strstr (out, "612 x 792 pts (letter)"));
  g_assert_nonnull (strstr (out, "Hall 3"));
  g_assert_nonnull (strstr (out, "H. Ostrevik"));
  g_assert_nonnull (strstr (out, "CreationDate:    2026-03-04T12:00:00Z"));
  g_assert_nonnull (strstr (out, "ModDate:         2026-03-04T12:00:00Z"));
  g_assert_nonnull (strstr (out, "Pages:           2"));
}

static void
test_fonts_are_in_the_file (Fixture *fixture, gconstpointer data)
{
  (void) data;
  g_autofree char *out = ox_test_run ((const char *[]){ "pdffonts", fixture->path, NULL });
  if (out == NULL)
    return;
  g_auto (GStrv) lines = g_strsplit (g_strstrip (out), "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), >=, 4);
  for (guint i = 2; lines[i] != NULL; i++)
    {
      g_assert_nonnull (strstr (lines[i], "DejaVuSans"));
      g_assert_nonnull (strstr (lines[i], "yes yes yes")); /* embedded, a subset, with a way back to letters */
    }
}

static void
test_text_can_be_found (Fixture *fixture, gconstpointer data)
{
  (void) data;
  g_autofree char *out
      = ox_test_run ((const char *[]){ "pdftotext", "-f", "1", "-l", "1", "-raw", fixture->path, "-", NULL });
  if (out == NULL)
    return;
  g_assert_nonnull (strstr (out, "K\xc3\xbc"
                                 "che <1> & 12.5 m\xc2\xb2"));
  g_assert_nonnull (strstr (out, "Upright"));
}

static void
test_text_stands_where_it_was_put (Fixture *fixture, gconstpointer data)
{
  (void) data;
  g_autofree char *out
      = ox_test_run ((const char *[]){ "pdftotext", "-f", "1", "-l", "1", "-bbox", fixture->path, "-", NULL });
  if (out == NULL)
    return;
  const char *word = strstr (out, ">K\xc3\xbc"
                                  "che<");
  g_assert_nonnull (word);
  while (*word != '<')
    word--;
  double x, y;
  g_assert_cmpint (sscanf (word, "<word xMin=\"%lf\" yMin=\"%lf\"", &x, &y), ==, 2);
  ox_test_near (x / 72 * 25.4, 60, 0.1);
}

static void
test_structure_is_sound (Fixture *fixture, gconstpointer data)
{
  (void) data;
  g_autofree char *out = ox_test_run ((const char *[]){ "qpdf", "--check", fixture->path, NULL });
  g_autofree char *json = ox_test_run (
      (const char *[]){ "qpdf", "--json=2", "--json-key=outlines", "--json-key=pagelabels", fixture->path, NULL });
  if (out == NULL || json == NULL)
    return;
  g_assert_nonnull (strstr (json, "1 \xe2\x80\x93 Crew drawing"));
  g_assert_nonnull (strstr (json, "2 \xe2\x80\x93 Schedule"));
}

static void
test_same_bytes_twice (Fixture *fixture, gconstpointer data)
{
  (void) fixture;
  (void) data;
  g_autoptr (OxPageSet) set = ox_test_pages (), again = ox_test_pages ();
  g_autoptr (GBytes) plain = ox_test_bytes_in_locale (set, TRUE, "C.UTF-8");
  g_autoptr (GBytes) twice = ox_test_bytes_in_locale (again, TRUE, "C.UTF-8");
  g_assert_true (g_bytes_equal (plain, twice));
  g_autoptr (GBytes) comma = ox_test_bytes_in_locale (set, TRUE, "de_DE.utf8");
  if (comma != NULL)
    g_assert_true (g_bytes_equal (plain, comma));
}

/* The test's pages as if they were of that day. */
static GBytes *
bytes_of_day (const char *day)
{
  g_autoptr (OxPageSet) sample = ox_test_pages ();
  OxPageSet given = *sample;
  given.date = (char *) day;
  g_autoptr (OxPageSet) set = ox_page_set_new (&given);
  g_autoptr (GError) error = NULL;
  GBytes *bytes = ox_pdf_new (set, &error);
  g_assert_no_error (error);
  return bytes;
}

static void
test_a_set_without_a_day_is_the_same_too (Fixture *fixture, gconstpointer data)
{
  (void) fixture;
  (void) data;
  const char *const days[] = { "", "soon", "2026-13-40" };
  g_autoptr (GBytes) first_day = bytes_of_day ("1970-01-01");
  g_autoptr (GBytes) other_day = bytes_of_day ("2026-09-14");
  g_assert_false (g_bytes_equal (first_day, other_day));
  for (guint i = 0; i < G_N_ELEMENTS (days); i++)
    {
      g_autoptr (GBytes) bytes = bytes_of_day (days[i]);
      g_assert_true (g_bytes_equal (bytes, first_day));
    }
}

#define ADD(name, function) g_test_add ("/pdf/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("sizes", test_sizes_and_metadata);
  ADD ("fonts", test_fonts_are_in_the_file);
  ADD ("text", test_text_can_be_found);
  ADD ("text-place", test_text_stands_where_it_was_put);
  ADD ("structure", test_structure_is_sound);
  ADD ("same-bytes", test_same_bytes_twice);
  ADD ("no-day", test_a_set_without_a_day_is_the_same_too);
  return g_test_run ();
}
