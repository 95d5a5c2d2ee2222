/* Oxturn: tests/file/test-read-items
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is refused stands in test-job-read.c; here is what each element becomes.
 */
#include "file/read-items.h"
#include "file/job-known.h"
#include "file/xml-parse.h"
#include "job-texts.h"
#include "support/ox-test.h"

/* The one item of the text as a job of its own. */
static OxJob *
read_one (const char *item)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = g_strconcat ("<job xmlns='urn:oxturn:job'>", item, "</job>", NULL);
  g_autoptr (xmlDoc) doc = ox_xml_parse ("f", text, strlen (text), &error);
  g_assert_no_error (error);
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  gboolean read = ox_read_item (&(OxReader){ "f", &error }, xmlDocGetRootElement (doc)->children, builder);
  g_assert_no_error (error);
  g_assert_true (read);
  return ox_job_builder_end (builder);
}

static void
test_room (void)
{
  g_autoptr (OxJob) job
      = read_one ("<room id='R9' name='N' angle='-30.5'><corner x='0' y='0'/><corner x='3' y='0' side='open'/>"
                  "<corner x='3' y='2' side='drop' keep-back='0.25'/></room>");
  const OxRoom *room = job->rooms[0];
  g_assert_cmpstr (room->id, ==, "R9");
  g_assert_cmpstr (room->name, ==, "N");
  g_assert_cmpuint (room->ring->n, ==, 3);
  g_assert_cmpint (room->sides[0].kind, ==, OX_SIDE_WALL);
  g_assert_cmpint (room->sides[1].kind, ==, OX_SIDE_OPEN);
  g_assert_cmpint (room->sides[2].kind, ==, OX_SIDE_DROP);
  g_assert_cmpfloat (room->sides[2].keep_back, ==, 0.25);
  g_assert_cmpint (room->direction.kind, ==, OX_DIRECTION_ANGLE);
  g_assert_cmpfloat (room->direction.angle_deg, ==, -30.5);
}

static void
test_obstacles (void)
{
  g_autoptr (OxJob) plate = read_one ("<solid id='O1' shape='rectangle' x='1' y='2' width='3' depth='4'/>");
  g_assert_cmpint (plate->obstacles[0]->kind, ==, OX_OBSTACLE_SOLID);
  ox_test_near (ox_ring_area (plate->obstacles[0]->shape.ring), 12, 1e-9);
  g_autoptr (OxJob) hatch = read_one ("<pit id='O1' shape='polygon' keep-back='0.5'><corner x='0' y='0'/>"
                                      "<corner x='1' y='0'/><corner x='0' y='1'/></pit>");
  g_assert_cmpint (hatch->obstacles[0]->kind, ==, OX_OBSTACLE_PIT);
  g_assert_cmpfloat (hatch->obstacles[0]->keep_back, ==, 0.5);
  ox_test_near (ox_ring_area (hatch->obstacles[0]->shape.ring), 0.5, 1e-9);
  g_autoptr (OxJob) mat = read_one ("<masked id='O1' shape='circle' x='1' y='2' radius='2'/>");
  g_assert_cmpint (mat->obstacles[0]->kind, ==, OX_OBSTACLE_MASKED);
  ox_test_near (ox_ring_area (mat->obstacles[0]->shape.ring), 4 * G_PI, 0.02);
}

static void
test_other_items (void)
{
  g_autoptr (OxJob) left_out
      = read_one ("<excluded id='X1'><corner x='0' y='0'/><corner x='1' y='0'/><corner x='0' y='1'/></excluded>");
  g_assert_cmpuint (left_out->excluded[0]->ring->n, ==, 3);
  g_autoptr (OxJob) door = read_one ("<doorway id='D1' x1='1' y1='2' x2='3' y2='4' depth='0.3'/>");
  g_assert_cmpfloat (door->doorways[0]->a.y, ==, 2);
  g_assert_cmpfloat (door->doorways[0]->b.x, ==, 3);
  g_assert_cmpfloat (door->doorways[0]->depth, ==, 0.3);
  g_autoptr (OxJob) cut
      = read_one ("<joint id='J1'><point x='0' y='0'/><point x='1' y='0'/><point x='1' y='9'/></joint>");
  g_assert_cmpuint (cut->joints[0]->n, ==, 3);
  g_assert_cmpfloat (cut->joints[0]->points[2].y, ==, 9);
  g_autoptr (OxJob) socket = read_one ("<station id='S1' kind='supply' x='1' y='2'/>");
  g_assert_cmpint (socket->stations[0]->kind, ==, OX_STATION_SUPPLY);
  g_assert_cmpfloat (socket->stations[0]->length, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/read-items/room", test_room);
  g_test_add_func ("/file/read-items/obstacles", test_obstacles);
  g_test_add_func ("/file/read-items/other-items", test_other_items);
  return g_test_run ();
}
