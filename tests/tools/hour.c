/* Oxturn: tests/tools/hour - an hour at the floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hour.h"

#include "file/job-xml.h"
#include "job/corner.h"
#include "job/edit.h"
#include "job/place.h"

typedef struct
{
  const OxHourHands *hands;
  gpointer who;
  OxJob *wanted; /* the sample */
} Hour;

static void
take_up (Hour *hour, OxToolKind kind)
{
  hour->hands->take_up (hour->who, kind, OX_OBSTACLE_SOLID);
}

static void
click (Hour *hour, double x, double y, gboolean exact)
{
  hour->hands->move (hour->who, (OxPoint){ x, y });
  hour->hands->press (hour->who, (OxPoint){ x, y }, exact);
  hour->hands->release (hour->who, (OxPoint){ x, y }, exact);
}

static void
finish (Hour *hour, const char *typed)
{
  hour->hands->type (hour->who, typed);
  hour->hands->lay_down (hour->who);
}

static const OxJob *
job_of (Hour *hour)
{
  return hour->hands->get_job (hour->who);
}

static void
take (Hour *hour, OxJob *job, GError **error)
{
  g_assert_no_error (*error);
  hour->hands->apply (hour->who, job);
  ox_job_unref (job);
}

/* --- What is drawn --- */

/* Eight corners: the first by a click, the others by length and angle. */
static void
draw_room (Hour *hour)
{
  take_up (hour, OX_TOOL_ROOM_CORNERS);
  click (hour, 0, 0, FALSE);
  finish (hour, "26\t0\n3\t90\n8 m\t0\n300cm\t270\n6\t0\n25\t90\n40000 mm\t180\n\n");
}

/* From the lower left corner, with width and depth typed; what stands free is placed exactly. */
static void
draw_box (Hour *hour, OxToolKind kind, OxObstacleKind obstacle, OxPoint corner, const char *sizes)
{
  hour->hands->take_up (hour->who, kind, obstacle);
  click (hour, corner.x, corner.y, kind != OX_TOOL_EXCLUDED);
  hour->hands->move (hour->who, (OxPoint){ corner.x + 0.7, corner.y + 0.6 });
  finish (hour, sizes);
}

static void
draw_columns (Hour *hour)
{
  g_autoptr (GArray) places = ox_edit_grid_places (4, 2, (OxPoint){ 8, 8.5 }, 0);
  OxCopies copies = { .ids = (const char *const[]){ "O1", NULL }, .n = places->len - 1 };
  g_autoptr (GError) error = NULL;

  draw_box (hour, OX_TOOL_OBSTACLE_RECTANGLE, OX_OBSTACLE_SOLID, (OxPoint){ 7.75, 8 }, "0.5\t0.5\n");
  copies.from = job_of (hour);
  copies.places = (const OxPlacement *) places->data + 1;
  take (hour, ox_edit_copied (job_of (hour), &copies, NULL, &error), &error);
}

static void
draw_rest (Hour *hour)
{
  static const OxPoint stations[] = { { 20, 19 }, { 20, 6 }, { 16, 16 } };

  draw_box (hour, OX_TOOL_OBSTACLE_RECTANGLE, OX_OBSTACLE_PIT, (OxPoint){ 7.5, 20.4 }, "9\t0.2\n");
  draw_box (hour, OX_TOOL_OBSTACLE_RECTANGLE, OX_OBSTACLE_MASKED, (OxPoint){ 35.5, 19.25 }, "2\t1.5\n");
  draw_box (hour, OX_TOOL_EXCLUDED, OX_OBSTACLE_SOLID, (OxPoint){ 0.03, -0.04 }, "4\t3.5\n"); /* held by the corner */
  take_up (hour, OX_TOOL_DOORWAY);
  click (hour, 0.02, 11, FALSE);
  hour->hands->move (hour->who, (OxPoint){ 0.3, 12 });
  finish (hour, "3\n");
  take_up (hour, OX_TOOL_JOINT);
  click (hour, 20, 0.04, FALSE);
  finish (hour, "25\t90\n\n");
  take_up (hour, OX_TOOL_JOINT);
  click (hour, 0.05, 12.47, FALSE); /* held by the middle of the wall */
  finish (hour, "40\t0\n\n");
  for (guint i = 0; i < G_N_ELEMENTS (stations); i++)
    {
      take_up (hour, OX_TOOL_STATION);
      click (hour, stations[i].x, stations[i].y, FALSE);
      hour->hands->lay_down (hour->who);
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
      const OxJob *job = job_of (hour);
      OxObstacle draft = *job->obstacles[i];

      draft.name = wanted->obstacles[i]->name;
      draft.keep_back = wanted->obstacles[i]->keep_back;
      g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&draft);
      take (hour, ox_job_with_obstacle (job, obstacle, &error), &error);
    }
  for (guint i = 0; i < wanted->n_joints; i++)
    {
      const OxJob *job = job_of (hour);
      OxJoint draft = *job->joints[i];

      draft.name = wanted->joints[i]->name;
      g_autoptr (OxJoint) joint = ox_joint_new (&draft);
      take (hour, ox_job_with_joint (job, joint, &error), &error);
    }
  for (guint i = 0; i < wanted->n_stations; i++)
    {
      const OxJob *job = job_of (hour);
      OxStation draft = *job->stations[i];

      draft.name = wanted->stations[i]->name;
      draft.kind = wanted->stations[i]->kind;
      g_autoptr (OxStation) station = ox_station_new (&draft);
      take (hour, ox_job_with_station (job, station, &error), &error);
    }
}

static void
fill_in_single (Hour *hour)
{
  const OxJob *wanted = hour->wanted;
  const OxJob *job = job_of (hour);
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
  take (hour, ox_job_with_room (job, named_room, &error), &error);
  for (guint side = 1; side <= 3; side++)
    take (hour, ox_job_with_side (job_of (hour), "R1", side, (OxSide){ OX_SIDE_DROP, 0.6 }, &error), &error);
  take (hour, ox_job_with_excluded (job_of (hour), named_excluded, &error), &error);
  take (hour, ox_job_with_doorway (job_of (hour), named_doorway, &error), &error);
  take (hour, ox_job_with_machine (job_of (hour), wanted->machine, &error), &error);
  take (hour, ox_job_with_rates (job_of (hour), wanted->rates, &error), &error);
  take (hour, ox_job_with_texts (job_of (hour), wanted->texts, &error), &error);
  take (hour, ox_job_with_calendar (job_of (hour), wanted->calendar, &error), &error);
  take (hour, ox_job_with_costs (job_of (hour), wanted->costs, &error), &error);
  take (hour, ox_job_with_patches (job_of (hour), wanted->patches, &error), &error);
  take (hour, ox_job_with_outfit (job_of (hour), wanted->outfit, &error), &error);
}

/* --- The hour --- */

/* Line by line at first: that tells where. */
static void
assert_file (Hour *hour, const char *wanted)
{
  g_autofree char *text = ox_job_file_to_text (job_of (hour));
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  g_auto (GStrv) wanted_lines = g_strsplit (wanted, "\n", -1);

  for (guint i = 0; lines[i] != NULL && wanted_lines[i] != NULL; i++)
    g_assert_cmpstr (lines[i], ==, wanted_lines[i]);
  g_assert_cmpstr (text, ==, wanted);
}

void
ox_hour_run (const OxHourHands *hands, gpointer who)
{
  g_autofree char *path = g_build_filename (g_getenv ("OXTURN_SOURCE"), "samples", "warehouse.oxturn", NULL);
  g_autofree char *nothing = ox_job_file_to_text (hands->get_job (who));
  g_autoptr (OxJob) wanted = NULL;
  g_autoptr (GError) error = NULL;
  Hour hour = { .hands = hands, .who = who };
  guint steps = 0;

  g_assert_true (ox_job_file_read (path, &wanted, &error));
  g_autofree char *sample = ox_job_file_to_text (wanted);
  hour.wanted = wanted;
  draw_room (&hour);
  draw_columns (&hour);
  draw_rest (&hour);
  fill_in_names (&hour);
  fill_in_single (&hour);
  assert_file (&hour, sample);
  while (hands->undo (who))
    steps++;
  g_assert_cmpuint (steps, >, 30);
  assert_file (&hour, nothing);
  while (hands->redo (who))
    steps--;
  g_assert_cmpuint (steps, ==, 0);
  assert_file (&hour, sample);
}
