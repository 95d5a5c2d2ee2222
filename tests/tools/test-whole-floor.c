/* Oxturn: tests/tools/test-whole-floor - a floor drawn from nothing by the tools' own events, and thousands of edits
 * taken back. SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"
#include "hour.h"

#include "file/job-xml.h"
#include "job/corner.h"
#include "job/edit.h"
#include "job/place.h"
#include "session/history.h"
#include "session/session.h"

/* --- The warehouse, by the tools' own events --- */

typedef struct
{
  OxHistory *history;
  OxHand *hand;
} Drawer;

static void
push (OxHistory *history, const OxJob *job, const char *label)
{
  ox_history_push (history, &(OxHistoryEdit){ .job = job, .label = label });
}

static void
take_up (gpointer who, OxToolKind kind, OxObstacleKind obstacle)
{
  Drawer *drawer = who;

  drawer->hand = ox_hand_new (kind, ox_history_get_job (drawer->history));
  drawer->hand->obstacle_kind = obstacle;
}

static void
move (gpointer who, OxPoint at)
{
  ox_hand_move (((Drawer *) who)->hand, at.x, at.y, OX_HOLD_NONE);
}

static void
press (gpointer who, OxPoint at, gboolean exact)
{
  ox_hand_press (((Drawer *) who)->hand, at.x, at.y, exact ? OX_HOLD_CONTROL : OX_HOLD_NONE, 1);
  g_assert_null (((Drawer *) who)->hand->refusal);
}

static void
release (gpointer who, OxPoint at, gboolean exact)
{
  ox_hand_release (((Drawer *) who)->hand, at.x, at.y, exact ? OX_HOLD_CONTROL : OX_HOLD_NONE);
}

static void
type (gpointer who, const char *text)
{
  ox_hand_type (((Drawer *) who)->hand, text);
}

static void
lay_down (gpointer who)
{
  Drawer *drawer = who;

  g_assert_cmpuint (drawer->hand->edits, ==, 1);
  g_assert_null (drawer->hand->refusal);
  push (drawer->history, drawer->hand->job, drawer->hand->label);
  g_clear_pointer (&drawer->hand, ox_hand_free);
}

static const OxJob *
get_job (gpointer who)
{
  return ox_history_get_job (((Drawer *) who)->history);
}

static void
apply (gpointer who, const OxJob *job)
{
  push (((Drawer *) who)->history, job, "Set Figures");
}

static gboolean
undo (gpointer who)
{
  return ox_history_undo (((Drawer *) who)->history);
}

static gboolean
redo (gpointer who)
{
  return ox_history_redo (((Drawer *) who)->history);
}

static void
test_warehouse (void)
{
  static const OxHourHands hands = { take_up, move, press, release, type, lay_down, get_job, apply, undo, redo };
  g_autoptr (OxJob) empty = ox_session_new_job (OX_UNITS_METRES);
  g_autoptr (OxHistory) history = ox_history_new (empty);

  ox_hour_run (&hands, &(Drawer){ .history = history });
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
  g_autoptr (OxJoint) joint = ox_joint_new (&(OxJoint){ .id = (char *) "J1", .n = 3, .points = (OxPoint *) corners });

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
      push (history, job, "Edit");
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
