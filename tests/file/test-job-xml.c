/* Oxturn: tests/file/test-job-xml
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-xml.h"
#include <glib/gstdio.h>
#include <gio/gio.h>
#include <locale.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include "job-texts.h"
#include "job/classes.h"
#include "job/text.h"
#include "support/ox-test.h"

static void
test_round_trip (void)
{
  g_autoptr (OxJob) job = job_text_read (JOB_WHOLE);
  g_autofree char *text = ox_job_file_to_text (job);
  g_assert_cmpstr (text, ==, JOB_WHOLE);
}

static void
test_round_trip_of_classes (void)
{
  for (guint i = 0; i < ox_classes_get_count (); i++)
    {
      OxJobBuilder *builder = ox_job_builder_new (NULL);
      ox_job_builder_set_machine (builder, ox_classes_get (i));
      g_autoptr (OxJob) job = ox_job_builder_end (builder);
      g_autofree char *text = ox_job_file_to_text (job);
      g_autoptr (OxJob) again = job_text_read (text);
      g_assert_true (ox_machine_equal (again->machine, ox_classes_get (i)));
    }
}

static double
random_length (double most)
{
  return g_test_rand_double_range (0.01, most);
}

static void
put_random_terms (OxJobBuilder *builder)
{
  static const char *const ids[] = { "P1", "P2", "P3" };
  OxPatch patches[3];
  OxCostRate rates[4];
  for (guint i = 0; i < 3; i++)
    patches[i] = (OxPatch){ .id = (char *) ids[i],
                            .speed_m_per_min = random_length (9),
                            .depth_mm = i ? random_length (2) : 0,
                            .csp = (guint) g_test_rand_int_range (0, 11),
                            .n_diameters = i,
                            .diameters_mm = { random_length (300), random_length (300) },
                            .left_mm = i ? random_length (2) : 0,
                            .right_mm = i ? random_length (2) : 0,
                            .cage_min = i ? (guint) g_test_rand_int_range (60, 780) : 0,
                            .note = (char *) "a \"b\" <c>" };
  for (guint i = 0; i < 4; i++)
    rates[i] = (OxCostRate){ (OxCostDriver) g_test_rand_int_range (0, 9), (char *) "ä & ö", (char *) "12.3450" };
  g_autoptr (OxPatches) tried = ox_patches_new (&(OxPatches){ 3, patches });
  g_autoptr (OxCosts) costs = ox_costs_new (&(OxCosts){ (char *) "kr", 0, g_test_rand_double_range (0, 1), 4, rates, (char *) "30 d" });
  g_autoptr (OxCalendar) calendar = ox_calendar_new (&(OxCalendar){
      .start_min = (guint) g_test_rand_int_range (0, 1440),
      .shift_h = 2 + random_length (22),
      .break_min = random_length (90),
      .machines = (guint) g_test_rand_int_range (1, 21),
      .days = (guint) g_test_rand_int_range (1, 128),
      .noise_db = random_length (110),
      .silica_machine = random_length (90),
      .silica_hand = random_length (900),
  });
  ox_job_builder_set_patches (builder, tried);
  ox_job_builder_set_costs (builder, costs);
  ox_job_builder_set_calendar (builder, calendar);
}

static void
put_random_condition (OxJobBuilder *builder)
{
  g_autoptr (OxRing) ring = ox_test_random_ring ();
  g_autoptr (OxCondition) condition = ox_condition_new (&(OxCondition){
      .id = (char *) "C1",
      .ring = ring,
      .speed_m_per_min = g_test_rand_bit () ? random_length (9) : 0,
      .coats = (guint) g_test_rand_int_range (0, 5),
      .profile = (char *) "CSP 5",
  });
  ox_job_builder_put_condition (builder, condition);
}

static void
put_random_outfit (OxJobBuilder *builder)
{
  OxOutfit draft = { (char *) "S 330 & more", random_length (60), (guint) g_test_rand_int_range (0, 9), { { 0, 0 } } };
  for (guint i = 0; i < draft.n_cords; i++)
    draft.cords[i] = (OxCordPart){ random_length (50), random_length (10) };
  g_autoptr (OxOutfit) outfit = ox_outfit_new (&draft);
  g_autoptr (OxSheetSetup) setup = ox_sheet_setup_new (&(OxSheetSetup){
      .language = (char *) "de",
      .paper = (char *) ox_setup_papers[g_test_rand_int_range (0, 16)],
      .scale = g_test_rand_bit () ? 1 + random_length (500) : 0,
      .orientation = (OxOrientation) g_test_rand_int_range (0, 3),
  });
  ox_job_builder_set_outfit (builder, outfit);
  ox_job_builder_set_setup (builder, setup);
}

static void
put_random_scope (OxJobBuilder *builder)
{
  OxScopeLine line = { NULL, (char *) "The <bay> & \"gate\"\tby others" };
  OxRevision rows[] = { { .mark = (char *) "A", .date = (char *) "2026-08-01", .accepted_by = (char *) "P. Hollow" },
                        { .mark = (char *) "B", .after_sign_off = g_test_rand_bit () } };
  OxScope draft = { .n_lines = { 0, 1, 0 }, .lines = { NULL, &line, NULL }, .n_revisions = 2, .revisions = rows };
  g_autoptr (OxScope) scope = ox_scope_new (&draft);
  ox_job_builder_set_scope (builder, scope);
}

static void
put_random_record (OxJobBuilder *builder)
{
  g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ random_length (9), -random_length (9) }, 1 + random_length (9),
                                                   1 + random_length (9), g_test_rand_double_range (0, 6));
  OxRing *rings[] = { ring };
  OxRecordDay days[] = { { (char *) "2026-09-14", random_length (9), 10 + random_length (9), (char *) "a\nb\n\n\"c\"", 0 },
                         { (char *) "2026-09-14", OX_METER_UNREAD, random_length (9), NULL, 7 } };
  OxDoneStrip strips[5];
  OxDoneEdge edge = { (char *) "R1", 1, rings, (char *) "2026-09-15", (char *) "two\nlines" };
  for (guint i = 0; i < G_N_ELEMENTS (strips); i++)
    strips[i] = (OxDoneStrip){ .a = { i, random_length (9) },
                               .b = { -random_length (9), 10 },
                               .width = random_length (1),
                               .coat = (guint) g_test_rand_int_range (0, 5),
                               .crosswise = g_test_rand_bit (),
                               .date = (char *) "2026-09-14",
                               .csp = (guint) g_test_rand_int_range (0, 11),
                               .depth_mm = g_test_rand_bit () ? random_length (2) : 0,
                               .note = (char *) "by the\n<gate>",
                               .kept = (guint) g_test_rand_int_range (0, 6) };
  g_autoptr (OxRecord) record
      = ox_record_new (&(OxRecord){ G_N_ELEMENTS (days), G_N_ELEMENTS (strips), 1, days, strips, &edge });
  ox_job_builder_set_record (builder, record);
}

static void
put_random_traced (OxJobBuilder *builder)
{
  GString *file = g_string_new ("%PDF-1.4\n");
  for (gint32 n = g_test_rand_int_range (0, 500); n > 0; n--)
    g_string_append_c (file, (char) g_test_rand_int_range (0, 256));
  g_autoptr (GBytes) data = g_string_free_to_bytes (file);
  g_autoptr (OxTracedPlan) traced = ox_traced_plan_new (&(OxTracedPlan){
      .id = (char *) "T1",
      .name = (char *) "a&b.pdf",
      .kind = OX_TRACED_PDF,
      .data = data,
      .page = (guint) g_test_rand_int_range (1, 9),
      .middle = { random_length (9), -random_length (9) },
      .width = random_length (90),
      .depth = random_length (90),
      .angle_deg = g_test_rand_double_range (-180, 180),
      .strength = g_test_rand_double_range (OX_TRACED_MIN_STRENGTH, 1),
      .locked = g_test_rand_bit (),
      .hidden = g_test_rand_bit (),
  });
  ox_job_builder_put_traced (builder, traced);
}

static OxJob *
random_job (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  g_autoptr (OxRing) ring = ox_test_random_ring ();
  g_autofree OxSide *sides = g_new (OxSide, ring->n);
  for (guint i = 0; i < ring->n; i++)
    sides[i] = (OxSide){ (OxSideKind) g_test_rand_int_range (0, 3), random_length (2) };
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){
      .id = (char *) "R1",
      .name = (char *) "<Hall> & \"more\" 'or' so\tµ",
      .ring = ring,
      .sides = sides,
      .direction = { (OxDirectionKind) g_test_rand_int_range (0, 3), (guint) g_test_rand_int_range (0, 4),
                     g_test_rand_double_range (-180, 180) },
      .coats = (guint) g_test_rand_int_range (0, 5),
      .coat_turn_deg = g_test_rand_double_range (-360, 360),
  });
  ox_job_builder_put_room (builder, room);
  for (guint i = 0; i < 20; i++)
    {
      g_autofree char *id = g_strdup_printf ("O%u", i);
      g_autoptr (OxRing) outline = ox_test_random_ring ();
      g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&(OxObstacle){
          .id = id,
          .kind = (OxObstacleKind) g_test_rand_int_range (0, 3),
          .shape = { (OxShapeKind) g_test_rand_int_range (0, 3),
                     { g_test_rand_double_range (-9000, 9000), random_length (5) },
                     random_length (9),
                     random_length (9),
                     g_test_rand_double_range (-360, 360),
                     random_length (3),
                     outline },
          .keep_back = random_length (1),
      });
      ox_job_builder_put_obstacle (builder, obstacle);
    }
  ox_job_builder_set_texts (builder,
                            &(OxTexts){ .title = (char *) "]]> &amp; <!--", .notes = (char *) "\n a\n\n b \n" });
  put_random_terms (builder);
  put_random_condition (builder);
  put_random_outfit (builder);
  put_random_scope (builder);
  put_random_record (builder);
  put_random_traced (builder);
  ox_job_builder_set_north (builder, g_test_rand_double_range (-180, 180));
  return ox_job_builder_end (builder);
}

static void
test_round_trip_of_random_jobs (void)
{
  for (guint i = 0; i < 100; i++)
    {
      g_autoptr (OxJob) job = random_job ();
      g_autofree char *text = ox_job_file_to_text (job);
      g_autoptr (OxJob) again = job_text_read (text);
      g_autofree char *same = ox_job_file_to_text (again);
      g_assert_cmpstr (text, ==, same);
      g_assert_true (ox_calendar_equal (again->calendar, job->calendar));
      g_assert_true (ox_costs_equal (again->costs, job->costs));
      g_assert_true (ox_patches_equal (again->patches, job->patches));
      g_assert_true (ox_outfit_equal (again->outfit, job->outfit));
      g_assert_true (ox_sheet_setup_equal (again->setup, job->setup));
      g_assert_true (ox_scope_equal (again->scope, job->scope));
      g_assert_true (g_bytes_equal (again->traced[0]->data, job->traced[0]->data));
      g_assert_cmpuint (again->record->n_days, ==, 2);
      g_assert_cmpuint (again->record->days[1].machine, ==, 7);
      g_assert_cmpstr (again->record->days[0].notes, ==, job->record->days[0].notes);
      g_assert_cmpstr (again->record->edges[0].note, ==, "two\nlines");
      g_assert_cmpfloat (again->patches->items[2].diameters_mm[1], ==, job->patches->items[2].diameters_mm[1]);
      g_assert_cmpfloat (again->rooms[0]->coat_turn_deg, ==, job->rooms[0]->coat_turn_deg);
      g_assert_cmpuint (again->rooms[0]->coats, ==, job->rooms[0]->coats);
      g_assert_cmpuint (again->conditions[0]->coats, ==, job->conditions[0]->coats);
      g_assert_cmpfloat (again->conditions[0]->speed_m_per_min, ==, job->conditions[0]->speed_m_per_min);
      g_assert_cmpstr (again->texts->notes, ==, job->texts->notes);
      g_assert_true (ox_ring_equal (job->rooms[0]->ring, again->rooms[0]->ring));
      for (guint k = 0; k < job->n_obstacles; k++)
        g_assert_true (ox_ring_equal (job->obstacles[k]->shape.ring, again->obstacles[k]->shape.ring));
    }
}

/* A locale with a decimal comma must not change a byte. Where the machine has none, C is tried, which is no less right.
 */
static void
test_any_locale (void)
{
  g_autofree char *before = g_strdup (setlocale (LC_ALL, NULL));
  if (!setlocale (LC_ALL, "de_DE.UTF-8"))
    setlocale (LC_ALL, "C");
  g_autoptr (OxJob) job = job_text_read (JOB_WHOLE);
  g_autofree char *text = ox_job_file_to_text (job);
  setlocale (LC_ALL, before);
  g_assert_cmpstr (text, ==, JOB_WHOLE);
}

static void
test_newer_minor_version (void)
{
  g_autofree char *a = job_text_with (JOB_WHOLE, "\"1.2\" units", "\"1.9\" units");
  g_autofree char *b = job_text_with (a, "</job>", "  <lighting lux=\"300\">\n    <lamp/>\n  </lighting>\n</job>");
  g_autofree char *c = job_text_with (b, "angle=\"30\"/>", "angle=\"30\" height=\"4\"/>");
  g_autoptr (OxJob) job = job_text_read (c);
  g_assert_cmpstr (job->version_minor_note, ==, "1.9");
  g_autofree char *text = ox_job_file_to_text (job);
  g_assert_cmpstr (text, ==, c);
}

static void
test_newer_minor_version_is_checked (void)
{
  g_autofree char *a = job_text_with (JOB_WHOLE, "\"1.2\" units", "\"1.9\" units");
  g_autofree char *b = job_text_with (a, "width=\"0.5\"", "width=\"0\"");
  job_text_assert_refused (b, strlen (b), job_text_line (b, "id=\"O1\""), "width “0” of solid O1");
}

static void
test_newer_major_version (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = job_text_with (JOB_WHOLE, "\"1.2\" units", "\"2.0\" units");
  OxJob *job = NULL;
  g_assert_false (ox_job_file_read_data ("floor.oxturn", text, strlen (text), &job, &error));
  g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_NEWER);
  g_assert_nonnull (strstr (error->message, "floor.oxturn:2: this job needs an Oxturn that reads version 2.0"));
}

static void
test_too_large (void)
{
  g_autoptr (GError) error = NULL;
  gsize length = OX_JOB_FILE_MAX_BYTES + 1;
  g_autofree char *text = g_strnfill (length, ' ');
  OxJob *job = NULL;
  g_assert_false (ox_job_file_read_data ("floor.oxturn", text, length, &job, &error));
  g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_TOO_LARGE);
}

static void
test_missing_file (void)
{
  g_autoptr (GError) error = NULL;
  OxJob *job = NULL;
  g_assert_false (ox_job_file_read ("/nowhere/at/all.oxturn", &job, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_assert_nonnull (strstr (error->message, "/nowhere/at/all.oxturn"));
  g_clear_error (&error);
  g_assert_false (ox_job_file_read ("/", &job, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_ISDIR);
}

/* A file name is shown as people read it, also where it is no UTF-8. */
static void
test_file (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "caf\xe9.oxturn", NULL);
  g_autoptr (OxJob) job = job_text_read (JOB_WHOLE);
  g_assert_true (ox_job_file_write (job, path, &error));
  g_assert_no_error (error);
  g_autofree char *text = NULL;
  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (text, ==, JOB_WHOLE);
  g_autoptr (OxJob) again = NULL;
  g_assert_true (ox_job_file_read (path, &again, &error));
  g_assert_true (g_file_set_contents (path, "<job/>", -1, NULL));
  OxJob *none = NULL;
  g_assert_false (ox_job_file_read (path, &none, &error));
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  ox_test_folder_free (folder);
}

/* The job of JOB_WHOLE with @n columns more: a file that does not go out in one write. */
static OxJob *
larger_job (guint n)
{
  g_autoptr (OxJob) job = job_text_read (JOB_WHOLE);
  OxJobBuilder *builder = ox_job_builder_new (job);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("C%u", i);
      g_autoptr (OxObstacle) column = ox_obstacle_new (
          &(OxObstacle){ .id = id, .shape = { .kind = OX_SHAPE_CIRCLE, .centre = { 0.01 * i, 1 }, .radius = 0.2 } });
      ox_job_builder_put_obstacle (builder, column);
    }
  return ox_job_builder_end (builder);
}

/* In a child, since the limit cannot be taken back. */
static void
fill_up_in_child (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = larger_job (500);
  struct rlimit limit = { 4096, 4096 };
  signal (SIGXFSZ, SIG_IGN);
  setrlimit (RLIMIT_FSIZE, &limit);
  _exit (!ox_job_file_write (job, path, &error) && error->domain == G_IO_ERROR ? 0 : 1);
}

static void
assert_only_file (const char *folder, const char *name)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_assert_cmpstr (g_dir_read_name (dir), ==, name);
  g_assert_null (g_dir_read_name (dir));
}

static void
test_full_disk (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "floor.oxturn", NULL);
  g_assert_true (g_file_set_contents (path, JOB_WHOLE, -1, NULL));
  pid_t child = fork ();
  if (child == 0)
    fill_up_in_child (path);
  int status = 0;
  waitpid (child, &status, 0);
  g_assert_true (WIFEXITED (status) && WEXITSTATUS (status) == 0);
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, JOB_WHOLE);
  assert_only_file (folder, "floor.oxturn");
  ox_test_folder_free (folder);
}

static void
save_in_child (const char *path)
{
  g_autoptr (OxJob) small = larger_job (0);
  g_autoptr (OxJob) large = larger_job (2000);
  for (guint i = 0;; i++)
    if (!ox_job_file_write (i % 2 ? large : small, path, NULL))
      _exit (1);
}

static void
kill_while_saving (const char *path, guint microseconds)
{
  pid_t child = fork ();
  if (child == 0)
    save_in_child (path);
  g_usleep (microseconds);
  kill (child, SIGKILL);
  int status = 0;
  waitpid (child, &status, 0);
  g_assert_true (WIFSIGNALED (status));
}

/* Wherever the kill falls, a whole job of one of the two sizes is there afterwards. */
static void
test_kill_during_save (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "floor.oxturn", NULL);
  g_assert_true (g_file_set_contents (path, JOB_WHOLE, -1, NULL));
  for (guint i = 0; i < 20; i++)
    {
      kill_while_saving (path, (guint) g_test_rand_int_range (1000, 60000));
      g_autoptr (GError) error = NULL;
      g_autoptr (OxJob) job = NULL;
      gboolean read = ox_job_file_read (path, &job, &error);
      g_assert_no_error (error);
      g_assert_true (read);
      g_assert_true (job->n_obstacles == 3 || job->n_obstacles == 2003);
    }
  ox_test_folder_free (folder);
}

/* What no load would take again is not written, and the file that stands there stays. */
static void
test_too_large_to_write (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *directory = g_dir_make_tmp ("oxturn-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (directory, "floor.oxturn", NULL);
  g_assert_true (g_file_set_contents (path, "before", -1, NULL));
  g_autofree char *note = g_strnfill (OX_TEXT_MOST, 'n');
  OxRecordDay days[700];
  g_autoptr (GStringChunk) dates = g_string_chunk_new (4096);
  for (guint i = 0; i < G_N_ELEMENTS (days); i++)
    {
      g_autofree char *date = g_strdup_printf ("%04u-%02u-01", 2000 + i / 12, i % 12 + 1);
      days[i] = (OxRecordDay){ g_string_chunk_insert (dates, date), OX_METER_UNREAD, OX_METER_UNREAD, note, 1 };
    }
  g_autoptr (OxRecord) record = ox_record_new (&(OxRecord){ .n_days = G_N_ELEMENTS (days), .days = days });
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_set_record (builder, record);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_assert_false (ox_job_file_write (job, path, &error));
  g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_TOO_LARGE);
  g_assert_nonnull (strstr (error->message, "no more than 64 MB are read; nothing was written"));
  g_autofree char *kept = NULL;
  g_assert_true (g_file_get_contents (path, &kept, NULL, NULL));
  g_assert_cmpstr (kept, ==, "before");
  g_assert_cmpint (g_remove (path) + g_rmdir (directory), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/job-xml/round-trip", test_round_trip);
  g_test_add_func ("/file/job-xml/round-trip/classes", test_round_trip_of_classes);
  g_test_add_func ("/file/job-xml/round-trip/random", test_round_trip_of_random_jobs);
  g_test_add_func ("/file/job-xml/any-locale", test_any_locale);
  g_test_add_func ("/file/job-xml/newer-minor", test_newer_minor_version);
  g_test_add_func ("/file/job-xml/newer-minor/checked", test_newer_minor_version_is_checked);
  g_test_add_func ("/file/job-xml/newer-major", test_newer_major_version);
  g_test_add_func ("/file/job-xml/too-large", test_too_large);
  g_test_add_func ("/file/job-xml/missing", test_missing_file);
  g_test_add_func ("/file/job-xml/file", test_file);
  g_test_add_func ("/file/job-xml/full-disk", test_full_disk);
  g_test_add_func ("/file/job-xml/kill-during-save", test_kill_during_save);
  g_test_add_func ("/file/job-xml/too-large-to-write", test_too_large_to_write);
  return g_test_run ();
}
