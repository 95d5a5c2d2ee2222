/* Oxturn: tests/session/test-history - undo and redo by scripts of rows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/history.h"

#include "file/job-xml.h"
#include "job/classes.h"
#include "job/edit.h"
#include "support/floors.h"

typedef enum
{
  PUSH,
  UNDO,
  REDO,
  SAVE,
  UNSAVE
} Command;

/* After each command: which job is current (the number pushed), whether there is something to undo and redo, and
 * whether the current job is the saved one. */
typedef struct
{
  Command command;
  int push;
  const char *key;
  int at_ms;
  int job;
  const char *undo;
  const char *redo;
  gboolean saved;
} Row;

#define MAX_JOBS 8

static OxJob *
make_job (int i)
{
  g_autoptr (OxJob) base = ox_test_floor_rectangle (10, 8, "compact");

  return ox_job_with_rates (base, (OxRates){ .edge_m2_per_hour = 1 + i }, NULL);
}

static char *
label_of (int i)
{
  return g_strdup_printf ("Edit %d", i);
}

static void
run_script (const Row *rows, guint n)
{
  OxJob *jobs[MAX_JOBS];
  g_autoptr (OxHistory) history = NULL;

  for (int i = 0; i < MAX_JOBS; i++)
    jobs[i] = make_job (i);
  history = ox_history_new (jobs[0]);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *label = label_of (rows[i].push);

      if (rows[i].command == PUSH)
        ox_history_push (history, &(OxHistoryEdit){ .job = jobs[rows[i].push],
                                                    .label = label,
                                                    .merge_key = rows[i].key,
                                                    .now_us = rows[i].at_ms * G_TIME_SPAN_MILLISECOND });
      else if (rows[i].command == UNDO)
        ox_history_undo (history);
      else if (rows[i].command == REDO)
        ox_history_redo (history);
      else if (rows[i].command == SAVE)
        ox_history_mark_saved (history);
      else
        ox_history_mark_unsaved (history);
      g_assert_true (ox_history_get_job (history) == jobs[rows[i].job]);
      g_assert_cmpstr (ox_history_find_undo_label (history), ==, rows[i].undo);
      g_assert_cmpstr (ox_history_find_redo_label (history), ==, rows[i].redo);
      g_assert_cmpint (ox_history_is_saved (history), ==, rows[i].saved);
    }
  for (int i = 0; i < MAX_JOBS; i++)
    ox_job_unref (jobs[i]);
}

static void
test_steps (void)
{
  static const Row rows[] = {
    { UNDO, 0, NULL, 0, 0, NULL, NULL, TRUE },          { REDO, 0, NULL, 0, 0, NULL, NULL, TRUE },
    { PUSH, 1, NULL, 0, 1, "Edit 1", NULL, FALSE },     { PUSH, 2, NULL, 0, 2, "Edit 2", NULL, FALSE },
    { UNDO, 0, NULL, 0, 1, "Edit 1", "Edit 2", FALSE }, { UNDO, 0, NULL, 0, 0, NULL, "Edit 1", TRUE },
    { UNDO, 0, NULL, 0, 0, NULL, "Edit 1", TRUE },      { REDO, 0, NULL, 0, 1, "Edit 1", "Edit 2", FALSE },
    { REDO, 0, NULL, 0, 2, "Edit 2", NULL, FALSE },     { REDO, 0, NULL, 0, 2, "Edit 2", NULL, FALSE },
  };

  run_script (rows, G_N_ELEMENTS (rows));
}

static void
test_edit_cuts_redo (void)
{
  static const Row rows[] = {
    { PUSH, 1, NULL, 0, 1, "Edit 1", NULL, FALSE },     { PUSH, 2, NULL, 0, 2, "Edit 2", NULL, FALSE },
    { UNDO, 0, NULL, 0, 1, "Edit 1", "Edit 2", FALSE }, { PUSH, 3, NULL, 0, 3, "Edit 3", NULL, FALSE },
    { REDO, 0, NULL, 0, 3, "Edit 3", NULL, FALSE },     { UNDO, 0, NULL, 0, 1, "Edit 1", "Edit 3", FALSE },
  };

  run_script (rows, G_N_ELEMENTS (rows));
}

static void
test_same_job_is_no_edit (void)
{
  static const Row rows[] = {
    { PUSH, 0, NULL, 0, 0, NULL, NULL, TRUE },
    { PUSH, 1, NULL, 0, 1, "Edit 1", NULL, FALSE },
    { PUSH, 1, NULL, 0, 1, "Edit 1", NULL, FALSE },
    { UNDO, 0, NULL, 0, 0, NULL, "Edit 1", TRUE },
  };

  run_script (rows, G_N_ELEMENTS (rows));
}

static void
test_saved (void)
{
  static const Row rows[] = {
    { PUSH, 1, NULL, 0, 1, "Edit 1", NULL, FALSE },       { SAVE, 0, NULL, 0, 1, "Edit 1", NULL, TRUE },
    { PUSH, 2, NULL, 0, 2, "Edit 2", NULL, FALSE },       { UNDO, 0, NULL, 0, 1, "Edit 1", "Edit 2", TRUE },
    { UNDO, 0, NULL, 0, 0, NULL, "Edit 1", FALSE },       { REDO, 0, NULL, 0, 1, "Edit 1", "Edit 2", TRUE },
    { UNSAVE, 0, NULL, 0, 1, "Edit 1", "Edit 2", FALSE },
  };

  run_script (rows, G_N_ELEMENTS (rows));
}

static void
test_merge (void)
{
  static const Row rows[] = {
    { PUSH, 1, "nudge", 0, 1, "Edit 1", NULL, FALSE },
    { PUSH, 2, "nudge", 900, 2, "Edit 2", NULL, FALSE },
    { PUSH, 3, "nudge", 1800, 3, "Edit 3", NULL, FALSE },
    { UNDO, 0, NULL, 0, 0, NULL, "Edit 3", TRUE },
    { REDO, 0, NULL, 0, 3, "Edit 3", NULL, FALSE },
    /* too late, or of another kind: a step of its own */
    { PUSH, 4, "nudge", 3000, 4, "Edit 4", NULL, FALSE },
    { PUSH, 5, "spin", 3100, 5, "Edit 5", NULL, FALSE },
    { UNDO, 0, NULL, 0, 4, "Edit 4", "Edit 5", FALSE },
    { UNDO, 0, NULL, 0, 3, "Edit 3", "Edit 4", FALSE },
  };

  run_script (rows, G_N_ELEMENTS (rows));
}

static void
test_merge_spares_saved (void)
{
  static const Row rows[] = {
    { PUSH, 1, "nudge", 0, 1, "Edit 1", NULL, FALSE },
    { SAVE, 0, NULL, 0, 1, "Edit 1", NULL, TRUE },
    { PUSH, 2, "nudge", 100, 2, "Edit 2", NULL, FALSE },
    { UNDO, 0, NULL, 0, 1, "Edit 1", "Edit 2", TRUE },
  };

  run_script (rows, G_N_ELEMENTS (rows));
}

static void
test_selection_rides_along (void)
{
  g_autoptr (OxJob) first = make_job (0);
  g_autoptr (OxJob) second = make_job (1);
  g_autoptr (OxHistory) history = ox_history_new (first);
  const char *const before[] = { "R1", NULL };
  const char *const after[] = { "O1", "O2", NULL };

  g_assert_cmpuint (g_strv_length ((char **) ox_history_get_selection (history)), ==, 0);
  ox_history_set_selection (history, before);
  ox_history_push (history, &(OxHistoryEdit){ .job = second, .label = "Edit", .selection = after });
  g_assert_cmpstrv (ox_history_get_selection (history), after);
  ox_history_undo (history);
  g_assert_cmpstrv (ox_history_get_selection (history), before);
  ox_history_redo (history);
  g_assert_cmpstrv (ox_history_get_selection (history), after);
}

/* A floor of 5,000 corners that changes as a whole takes 200 kB an entry: the row is cut at its bytes, and never to
 * nothing. */
static void
test_bytes_are_capped (void)
{
  enum
  {
    CORNERS = 5000,
    EDITS = 600
  };
  g_autofree OxPoint *points = g_new (OxPoint, CORNERS);
  g_autoptr (OxHistory) history = NULL;

  for (guint i = 0; i < CORNERS; i++)
    points[i] = (OxPoint){ 100 * cos (2 * G_PI * i / CORNERS), 100 * sin (2 * G_PI * i / CORNERS) };
  for (guint i = 0; i < EDITS; i++)
    {
      g_autoptr (OxRing) ring = ox_ring_new (points, CORNERS);
      OxRoom draft = { .id = (char *) "R1", .name = (char *) "", .ring = ring, .profile = (char *) "" };
      g_autoptr (OxRoom) room = ox_room_new (&draft);
      OxJobBuilder *builder = ox_job_builder_new (NULL);
      g_autoptr (OxJob) job = NULL;

      ox_job_builder_set_machine (builder, ox_classes_get (0));
      ox_job_builder_put_room (builder, room);
      job = ox_job_builder_end (builder);
      if (history == NULL)
        history = ox_history_new (job);
      else
        ox_history_push (history, &(OxHistoryEdit){ .job = job, .label = "Edit" });
      g_assert_true (ox_history_get_job (history) == job);
    }
  g_assert_cmpuint (ox_history_get_count (history), <, EDITS);
  g_assert_cmpuint (ox_history_get_count (history), >, 100);
  g_assert_true (ox_history_undo (history));
}

/* --- Random edits: undo and redo give the same bytes --- */

static OxJob *
random_edit (const OxJob *job, char **label)
{
  const char *rooms[] = { "R1", NULL };
  OxPoint by = { g_test_rand_double_range (-2, 2), g_test_rand_double_range (-2, 2) };
  int kind = g_test_rand_int_range (0, 6);

  *label = g_strdup_printf ("Edit of kind %d", kind);
  if (kind == 0)
    return ox_job_moved (job, rooms, by, NULL);
  if (kind == 1)
    return ox_job_with_corner (job, "R1", 2, (OxPoint){ 10 + by.x, 8 + by.y }, NULL);
  if (kind == 2)
    return ox_job_with_side (job, "R1", (guint) g_test_rand_int_range (0, 4), (OxSide){ OX_SIDE_DROP, fabs (by.x) },
                             NULL);
  if (kind == 3)
    return ox_job_with_units (job, (OxUnits) g_test_rand_int_range (0, 3));
  if (kind == 4 && job->n_obstacles > 0)
    return ox_job_without (job, (const char *const[]){ job->obstacles[0]->id, NULL }, NULL);
  {
    g_autofree char *id = ox_job_new_id (job, "O");
    OxObstacle draft = { .id = id, .name = (char *) "" };
    g_autoptr (OxObstacle) obstacle = NULL;

    draft.shape = (OxShape){ .kind = OX_SHAPE_CIRCLE, .centre = { 5 + by.x, 4 + by.y }, .radius = 0.2 };
    obstacle = ox_obstacle_new (&draft);
    return ox_job_with_obstacle (job, obstacle, NULL);
  }
}

static void
test_random_edits (void)
{
  enum
  {
    EDITS = 2000
  };
  g_autoptr (OxJob) first = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxHistory) history = ox_history_new (first);
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

  g_test_summary (
      "2,000 random edits; undoing all of them and redoing all of them passes through the same files, byte for byte");
  g_ptr_array_add (texts, ox_job_file_to_text (first));
  for (guint i = 0; i < EDITS; i++)
    {
      g_autofree char *label = NULL;
      g_autoptr (OxJob) job = random_edit (ox_history_get_job (history), &label);

      if (job == NULL)
        continue;
      ox_history_push (history, &(OxHistoryEdit){ .job = job, .label = label });
      g_ptr_array_add (texts, ox_job_file_to_text (job));
    }
  g_assert_cmpuint (texts->len, >, EDITS / 2);
  for (guint i = texts->len; i-- > 1;)
    {
      g_autofree char *now = ox_job_file_to_text (ox_history_get_job (history));

      g_assert_cmpstr (now, ==, g_ptr_array_index (texts, i));
      g_assert_true (ox_history_undo (history));
    }
  g_assert_true (ox_history_get_job (history) == first);
  for (guint i = 1; i < texts->len; i++)
    {
      g_autofree char *now = NULL;

      g_assert_true (ox_history_redo (history));
      now = ox_job_file_to_text (ox_history_get_job (history));
      g_assert_cmpstr (now, ==, g_ptr_array_index (texts, i));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/session/history/steps", test_steps);
  g_test_add_func ("/session/history/edit-cuts-redo", test_edit_cuts_redo);
  g_test_add_func ("/session/history/same-job-is-no-edit", test_same_job_is_no_edit);
  g_test_add_func ("/session/history/saved", test_saved);
  g_test_add_func ("/session/history/merge", test_merge);
  g_test_add_func ("/session/history/merge-spares-saved", test_merge_spares_saved);
  g_test_add_func ("/session/history/selection-rides-along", test_selection_rides_along);
  g_test_add_func ("/session/history/bytes-are-capped", test_bytes_are_capped);
  g_test_add_func ("/session/history/random-edits", test_random_edits);
  return g_test_run ();
}
