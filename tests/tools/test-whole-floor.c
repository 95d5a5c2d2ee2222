/* Oxturn: tests/tools/test-whole-floor - a floor drawn from nothing by the tools' own events, and thousands of edits taken back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"

#include "file/job-xml.h"
#include "job/corner.h"
#include "job/edit.h"
#include "job/place.h"
#include "session/history.h"
#include "session/session.h"

typedef struct
{
  OxHistory *history;
  OxJob *wanted; /* the sample */
} Hour;

static void
push (Hour *hour, const OxJob *job, const char *label)
{
  ox_history_push (hour->history, &(OxHistoryEdit){ .job = job, .label = label });
}

/* The hand takes up another tool, does its work and hands the job over as one step of undo. */
static OxHand *
take_up (Hour *hour, OxToolKind kind)
{
  return ox_hand_new (kind, ox_history_get_job (hour->history));
}

static void
lay_down (Hour *hour, OxHand *hand)
{
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_null (hand->refusal);
  push (hour, hand->job, hand->label);
  ox_hand_free (hand);
}

static void
take (Hour *hour, OxJob *job, GError *error)
{
  g_assert_no_error (error);
  push (hour, job, "Set Figures");
  ox_job_unref (job);
}

/* --- What is drawn --- */

/* Eight corners: the first by a click, the others by length and angle. */
static void
draw_room (Hour *hour)
{
  OxHand *hand = take_up (hour, OX_TOOL_ROOM_CORNERS);

  ox_hand_click (hand, 0, 0);
  ox_hand_type (hand, "26\t0\n3\t90\n8 m\t0\n300cm\t270\n6\t0\n25\t90\n40000 mm\t180\n\n");
  lay_down (hour, hand);
}

/* From the lower left corner, with width and depth typed; what stands free is placed with Ctrl, off the even steps of this zoom. */
static void
draw_box (Hour *hour, OxToolKind kind, OxObstacleKind obstacle, OxPoint corner, const char *sizes)
{
  OxHand *hand = take_up (hour, kind);
  OxHold hold = kind == OX_TOOL_EXCLUDED ? OX_HOLD_NONE : OX_HOLD_CONTROL;

  hand->obstacle_kind = obstacle;
  ox_hand_press (hand, corner.x, corner.y, hold, 1);
  ox_hand_release (hand, corner.x, corner.y, hold);
  ox_hand_move (hand, corner.x + 0.7, corner.y + 0.6, OX_HOLD_NONE);
  ox_hand_type (hand, sizes);
  lay_down (hour, hand);
}

static void
draw_columns (Hour *hour)
{
  const OxJob *job;
  g_autoptr (GArray) places = ox_edit_grid_places (4, 2, (OxPoint){ 8, 8.5 }, 0);
  OxCopies copies = { .ids = (const char *const[]){ "O1", NULL }, .n = places->len - 1 };
  g_autoptr (GError) error = NULL;

  draw_box (hour, OX_TOOL_OBSTACLE_RECTANGLE, OX_OBSTACLE_SOLID, (OxPoint){ 7.75, 8 }, "0.5\t0.5\n");
  job = ox_history_get_job (hour->history);
  copies.from = job;
  copies.places = (const OxPlacement *) places->data + 1;
  take (hour, ox_edit_copied (job, &copies, NULL, &error), error);
}

static void
draw_rest (Hour *hour)
{
  OxHand *hand;

  draw_box (hour, OX_TOOL_OBSTACLE_RECTANGLE, OX_OBSTACLE_PIT, (OxPoint){ 7.5, 20.4 }, "9\t0.2\n");
  draw_box (hour, OX_TOOL_OBSTACLE_RECTANGLE, OX_OBSTACLE_MASKED, (OxPoint){ 35.5, 19.25 }, "2\t1.5\n");
  draw_box (hour, OX_TOOL_EXCLUDED, OX_OBSTACLE_SOLID, (OxPoint){ 0.03, -0.04 }, "4\t3.5\n"); /* held by the corner */
  hand = take_up (hour, OX_TOOL_DOORWAY);
  ox_hand_click (hand, 0.02, 11);
  ox_hand_move (hand, 0.3, 12, OX_HOLD_NONE);
  ox_hand_type (hand, "3\n");
  lay_down (hour, hand);
  hand = take_up (hour, OX_TOOL_JOINT);
  ox_hand_click (hand, 20, 0.04);
  ox_hand_type (hand, "25\t90\n\n");
  lay_down (hour, hand);
  hand = take_up (hour, OX_TOOL_JOINT);
  ox_hand_click (hand, 0.05, 12.47); /* held by the middle of the wall */
  ox_hand_type (hand, "40\t0\n\n");
  lay_down (hour, hand);
  for (guint i = 0; i < 3; i++)
    {
      static const OxPoint at[] = { { 20, 19 }, { 20, 6 }, { 16, 16 } };

      hand = take_up (hour, OX_TOOL_STATION);
      ox_hand_click (hand, at[i].x, at[i].y);
      lay_down (hour, hand);
    }
}

/* What is typed into the fields of the panel beside the floor. */
static void
fill_in_names (Hour *hour)
{
  const OxJob *wanted = hour->wanted;
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < wanted->n_obstacles; i++)
    {
      const OxJob *job = ox_history_get_job (hour->history);
      OxObstacle draft = *job->obstacles[i];

      draft.name = wanted->obstacles[i]->name;
      draft.keep_back = wanted->obstacles[i]->keep_back;
      g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&draft);
      take (hour, ox_job_with_obstacle (job, obstacle, &error), error);
    }
  for (guint i = 0; i < wanted->n_joints; i++)
    {
      const OxJob *job = ox_history_get_job (hour->history);
      OxJoint draft = *job->joints[i];

      draft.name = wanted->joints[i]->name;
      g_autoptr (OxJoint) joint = ox_joint_new (&draft);
      take (hour, ox_job_with_joint (job, joint, &error), error);
    }
  for (guint i = 0; i < wanted->n_stations; i++)
    {
      const OxJob *job = ox_history_get_job (hour->history);
      OxStation draft = *job->stations[i];

      draft.name = wanted->stations[i]->name;
      draft.kind = wanted->stations[i]->kind;
      g_autoptr (OxStation) station = ox_station_new (&draft);
      take (hour, ox_job_with_station (job, station, &error), error);
    }
}

static void
fill_in_single (Hour *hour)
{
  const OxJob *wanted = hour->wanted;
  const OxJob *job = ox_history_get_job (hour->history);
  g_autoptr (GError) error = NULL;
  OxRoom room = *job->rooms[0];
  OxExcluded excluded = *job->excluded[0];
  OxDoorway doorway = *job->doorways[0];

  room.name = wanted->rooms[0]->name;
  room.profile = wanted->rooms[0]->profile;
  excluded.name = wanted->excluded[0]->name;
  doorway.name = wanted->doorways[0]->name;
  g_autoptr (OxRoom) named_room = ox_room_new (&room);
  g_autoptr (OxExcluded) named_excluded = ox_excluded_new (&excluded);
  g_autoptr (OxDoorway) named_doorway = ox_doorway_new (&doorway);
  take (hour, ox_job_with_room (job, named_room, &error), error);
  for (guint side = 1; side <= 3; side++)
    take (hour,
          ox_job_with_side (ox_history_get_job (hour->history), "R1", side, (OxSide){ OX_SIDE_DROP, 0.6 }, &error), error);
  take (hour, ox_job_with_excluded (ox_history_get_job (hour->history), named_excluded, &error), error);
  take (hour, ox_job_with_doorway (ox_history_get_job (hour->history), named_doorway, &error), error);
  take (hour, ox_job_with_machine (ox_history_get_job (hour->history), wanted->machine, &error), error);
  take (hour, ox_job_with_rates (ox_history_get_job (hour->history), wanted->rates, &error), error);
  take (hour, ox_job_with_texts (ox_history_get_job (hour->history), wanted->texts, &error), error);
  take (hour, ox_job_with_calendar (ox_history_get_job (hour->history), wanted->calendar, &error), error);
  take (hour, ox_job_with_costs (ox_history_get_job (hour->history), wanted->costs, &error), error);
  take (hour, ox_job_with_patches (ox_history_get_job (hour->history), wanted->patches, &error), error);
  take (hour, ox_job_with_outfit (ox_history_get_job (hour->history), wanted->outfit, &error), error);
}

/* The warehouse of samples/, drawn: the same file to the byte; back to nothing and forth again, too. */
static void
test_warehouse (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("OXTURN_SOURCE"), "samples", "warehouse.oxturn", NULL);
  g_autoptr (OxJob) empty = ox_session_new_job (OX_UNITS_METRES);
  g_autoptr (OxHistory) history = ox_history_new (empty);
  g_autoptr (OxJob) wanted = NULL;
  g_autoptr (GError) error = NULL;
  Hour hour = { .history = history };
  guint steps = 0;

  g_assert_true (ox_job_file_read (path, &wanted, &error));
  hour.wanted = wanted;
  draw_room (&hour);
  draw_columns (&hour);
  draw_rest (&hour);
  fill_in_names (&hour);
  fill_in_single (&hour);
  g_autofree char *drawn = ox_job_file_to_text (ox_history_get_job (history));
  g_autofree char *sample = ox_job_file_to_text (wanted);
  g_assert_cmpstr (drawn, ==, sample);
  while (ox_history_undo (history))
    steps++;
  g_assert_cmpuint (steps, >, 30);
  g_autofree char *nothing = ox_job_file_to_text (ox_history_get_job (history));
  g_autofree char *at_first = ox_job_file_to_text (empty);
  g_assert_cmpstr (nothing, ==, at_first);
  while (ox_history_redo (history))
    steps--;
  g_assert_cmpuint (steps, ==, 0);
  g_autofree char *again = ox_job_file_to_text (ox_history_get_job (history));
  g_assert_cmpstr (again, ==, sample);
}

/* --- Random edits --- */

#define EDITS 10000
#define MANY 8 /* items; with more of them some go */

static char *
sum_of (const OxJob *job)
{
  g_autofree char *text = ox_job_file_to_text (job);

  return g_compute_checksum_for_string (G_CHECKSUM_SHA256, text, -1);
}

static const char *
any_id (const OxJob *job)
{
  guint k = (guint) g_test_rand_int_range (0, (int) (job->n_obstacles + job->n_excluded + job->n_joints + 1));

  if (k < job->n_obstacles)
    return job->obstacles[k]->id;
  k -= job->n_obstacles;
  if (k < job->n_excluded)
    return job->excluded[k]->id;
  k -= job->n_excluded;
  return k < job->n_joints ? job->joints[k]->id : job->rooms[0]->id;
}

static OxPoint
any_point (double reach)
{
  return (OxPoint){ g_test_rand_double_range (-reach, reach), g_test_rand_double_range (-reach, reach) };
}

/* NULL where the floor would not have it: that is an answer, too. */
static OxJob *
random_edit (const OxJob *job)
{
  const char *ids[] = { any_id (job), NULL };
  gboolean room = ids[0][0] == 'R'; /* it stays a rectangle: checking a jagged one takes long */
  OxPlacement place = { .about = any_point (20), .turn_deg = 15 * g_test_rand_int_range (0, 24), .by = any_point (3) };
  OxCopies copies = { .from = job, .ids = ids, .places = &place, .n = 1 };
  OxPoint corners[] = { any_point (9), any_point (9), any_point (9), any_point (9) };

  place.mirrored = g_test_rand_bit ();
  switch (g_test_rand_int_range (0, room ? 2 : 8))
    {
    case 0:
      return ox_job_moved (job, ids, place.by, NULL);
    case 1:
      return ox_edit_placed (job, ids, &place, NULL);
    case 2:
      return ox_edit_corner_removed (job, ids[0], 0, NULL);
    case 3:
      return ox_edit_corner_added (job, ids[0], 0, place.about, NULL);
    case 4:
      return ox_edit_with_points (job, ids[0], corners, 4, NULL);
    case 5:
      return ox_job_with_side (job, "R1", 0, (OxSide){ OX_SIDE_DROP, fabs (place.by.x) }, NULL);
    default:
      break;
    }
  if (job->n_obstacles + job->n_excluded + job->n_joints > MANY)
    return ox_job_without (job, ids, NULL);
  return ox_edit_copied (job, &copies, NULL, NULL);
}

static OxJob *
small_floor (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  const OxPoint corners[] = { { 0, 0 }, { 12, 0 }, { 12, 8 }, { 0, 8 } };
  g_autoptr (OxRing) outline = ox_ring_new (corners, 4);
  g_autoptr (OxRing) small = ox_ring_new_rectangle ((OxPoint){ 3, 3 }, 2, 1, 0.3);
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = (char *) "R1", .ring = outline });
  g_autoptr (OxExcluded) excluded = ox_excluded_new (&(OxExcluded){ .id = (char *) "X1", .ring = small });
  g_autoptr (OxObstacle) plant
      = ox_obstacle_new (&(OxObstacle){ .id = (char *) "O1", .shape = { .kind = OX_SHAPE_POLYGON, .ring = small } });
  g_autoptr (OxObstacle) column = ox_obstacle_new (
      &(OxObstacle){ .id = (char *) "O2", .shape = { .centre = { 6, 6 }, .width = 0.5, .depth = 0.4 } });
  g_autoptr (OxJoint) joint
      = ox_joint_new (&(OxJoint){ .id = (char *) "J1", .n = 3, .points = (OxPoint *) corners });

  ox_job_builder_put_room (builder, room);
  ox_job_builder_put_excluded (builder, excluded);
  ox_job_builder_put_obstacle (builder, plant);
  ox_job_builder_put_obstacle (builder, column);
  ox_job_builder_put_joint (builder, joint);
  return ox_job_builder_end (builder);
}

/* Now and then some steps back and the same ones forth: each shows the file that was there before, byte for byte. */
static void
test_random_edits (void)
{
  g_autoptr (OxJob) first = small_floor ();
  g_autoptr (OxHistory) history = ox_history_new (first);
  g_autoptr (GPtrArray) sums = g_ptr_array_new_with_free_func (g_free);
  guint refused = 0;

  g_ptr_array_add (sums, sum_of (first));
  for (guint i = 0; i < EDITS; i++)
    {
      g_autoptr (OxJob) job = random_edit (ox_history_get_job (history));
      guint back = MIN ((guint) g_test_rand_int_range (0, 9), sums->len - 1);

      if (job == NULL)
        {
          refused++;
          continue;
        }
      if (job == ox_history_get_job (history))
        continue;
      push (&(Hour){ .history = history }, job, "Edit");
      g_ptr_array_add (sums, sum_of (job));
      if (i % 20 != 0)
        continue;
      for (guint k = 0; k < 2 * back; k++)
        {
          g_autofree char *now = NULL;
          guint at = sums->len - 1 - (k < back ? k + 1 : 2 * back - k - 1);

          g_assert_true (k < back ? ox_history_undo (history) : ox_history_redo (history));
          now = sum_of (ox_history_get_job (history));
          g_assert_cmpstr (now, ==, g_ptr_array_index (sums, at));
        }
    }
  g_test_message ("%u edits, %u refused", sums->len - 1, refused);
  g_assert_cmpuint (sums->len, >, EDITS / 3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/whole-floor/warehouse", test_warehouse);
  g_test_add_func ("/tools/whole-floor/random-edits", test_random_edits);
  return g_test_run ();
}
