/* Oxturn: tests/file/test-floor-import
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/floor-import.h"
#include <string.h>
#include "file/job-xml.h"
#include "geometry/wkt.h"
#include "job/classes.h"
#include "support/ox-test.h"

static OxJob *
import (const char *text)
{
  g_autoptr (GError) error = NULL;
  OxJob *job = NULL;
  gboolean made = ox_floor_from_wkt ("hall.wkt", text, ox_classes_find ("medium"), &job, &error);
  g_assert_no_error (error);
  g_assert_true (made);
  return job;
}

static void
assert_refused (const char *text, GQuark domain, int code, const char *part)
{
  g_autoptr (GError) error = NULL;
  OxJob *job = NULL;
  g_assert_false (ox_floor_from_wkt ("hall.wkt", text, ox_classes_get (0), &job, &error));
  g_assert_error (error, domain, code);
  g_assert_true (g_str_has_prefix (error->message, "hall.wkt:"));
  if (!strstr (error->message, part))
    g_error ("“%s” does not say “%s”", error->message, part);
}

static void
test_room_with_obstacles (void)
{
  g_autoptr (OxJob) job = import ("POLYGON ((0 0, 9 0, 9 5, 0 5, 0 0), (1 1, 2 1, 2 2, 1 1), (6 1, 7 1, 7 2, 6 1))");
  g_assert_cmpuint (job->n_rooms, ==, 1);
  g_assert_cmpuint (job->n_obstacles, ==, 2);
  g_assert_cmpstr (job->rooms[0]->id, ==, "R1");
  g_assert_cmpstr (job->obstacles[1]->id, ==, "O2");
  g_assert_cmpint (job->obstacles[1]->kind, ==, OX_OBSTACLE_SOLID);
  ox_test_near (fabs (ox_ring_area (job->rooms[0]->ring)), 45, 1e-9);
  g_assert_cmpstr (job->machine->class_id, ==, "medium");
  g_assert_cmpstr (job->texts->title, ==, "hall.wkt");
}

static void
test_several_rooms (void)
{
  g_autoptr (OxJob) job
      = import ("MULTIPOLYGON (((0 0, 9 0, 9 5, 0 0)), ((20 0, 29 0, 29 5, 20 0), (27 1, 28 1, 28 2, 27 1)))");
  g_assert_cmpuint (job->n_rooms, ==, 2);
  g_assert_cmpuint (job->n_obstacles, ==, 1);
  g_assert_cmpstr (job->rooms[1]->id, ==, "R2");
}

/* What is made can be saved and read: the file's rules are no others. */
static void
test_saved_and_read (void)
{
  g_autoptr (OxJob) job = import ("POLYGON ((0.00004 0, 9.12345678 0, 9 5, 0 5, 0.00004 0))");
  g_autofree char *text = ox_job_file_to_text (job);
  g_autoptr (OxJob) again = NULL;
  g_assert_true (ox_job_file_read_data ("hall.oxturn", text, strlen (text), &again, NULL));
  g_assert_true (ox_ring_equal (job->rooms[0]->ring, again->rooms[0]->ring));
}

static void
test_refused (void)
{
  assert_refused ("POLYGON ((0 0, 9 0", OX_WKT_ERROR, OX_WKT_ERROR_SYNTAX, "");
  assert_refused ("POLYGON EMPTY", OX_FILE_ERROR, OX_FILE_ERROR_INVALID, "no outline");
  assert_refused ("POLYGON ((0 0, 4 4, 4 0, 0 4, 0 0))", OX_FILE_ERROR, OX_FILE_ERROR_INVALID, "meets itself");
  assert_refused ("POLYGON ((0 0, 0.05 0, 0.05 0.05, 0 0))", OX_FILE_ERROR, OX_FILE_ERROR_INVALID, "area");
  assert_refused ("POLYGON ((0 0, 20000 0, 9 5, 0 0))", OX_FILE_ERROR, OX_FILE_ERROR_INVALID, "coordinates");
  assert_refused ("POLYGON ((0 0, 9 0, 9 9, 0 0)) POLYGON ((1 0, 9 0, 9 9, 1 0))", OX_FILE_ERROR, OX_FILE_ERROR_INVALID,
                  "overlap");
}

static void
test_file (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = NULL;
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "hall.wkt", NULL);
  g_assert_true (g_file_set_contents (path, "POLYGON ((0 0, 9 0, 9 5, 0 0))\n", -1, NULL));
  g_assert_true (ox_floor_from_wkt_file (path, ox_classes_get (0), &job, &error));
  g_assert_cmpstr (job->texts->title, ==, "hall.wkt");
  OxJob *none = NULL;
  g_assert_true (g_file_set_contents (path, "POLYGON ((0 0, 9 0, 9 5, 0 0))\0 ", 33, NULL));
  g_assert_false (ox_floor_from_wkt_file (path, ox_classes_get (0), &none, &error));
  g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID);
  ox_test_folder_free (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/floor-import/room-with-obstacles", test_room_with_obstacles);
  g_test_add_func ("/file/floor-import/several-rooms", test_several_rooms);
  g_test_add_func ("/file/floor-import/saved-and-read", test_saved_and_read);
  g_test_add_func ("/file/floor-import/refused", test_refused);
  g_test_add_func ("/file/floor-import/file", test_file);
  return g_test_run ();
}
