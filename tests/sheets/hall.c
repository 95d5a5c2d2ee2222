/* Oxturn: tests/sheets/hall - a job and its plan with everything on the floor that sheets know how to draw.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/hall.h"
#include "job/classes.h"
#include "sheets/labels.h"
#include "support/ox-test.h"
#include <string.h>

static void
put_room (OxJobBuilder *builder, const char *id, const char *name, const char *wkt, int drop)
{
  g_autoptr (OxRing) ring = ox_test_ring (wkt);
  g_autofree OxSide *sides = g_new0 (OxSide, ring->n);
  if (drop >= 0)
    sides[drop] = (OxSide){ OX_SIDE_DROP, 0.6 };
  g_autoptr (OxRoom) room = ox_room_new (
      &(OxRoom){ .id = (char *) id, .name = (char *) name, .ring = ring, .sides = sides, .profile = (char *) "CSP 3" });
  ox_job_builder_put_room (builder, room);
}

static void
put_obstacle (OxJobBuilder *builder, const char *id, OxObstacleKind kind, OxPoint centre)
{
  OxShape shape = { .kind = OX_SHAPE_RECTANGLE, .centre = centre, .width = 0.6, .depth = 0.5 };
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&(OxObstacle){ .id = (char *) id,
                                                                    .name = (char *) "",
                                                                    .kind = kind,
                                                                    .shape = shape,
                                                                    .keep_back = kind == OX_OBSTACLE_PIT ? 0.3 : 0 });
  ox_job_builder_put_obstacle (builder, obstacle);
}

static void
put_others (OxJobBuilder *builder)
{
  g_autoptr (OxRing) corner = ox_test_ring ("POLYGON ((0 6.5, 2 6.5, 2 8, 0 8, 0 6.5))");
  g_autoptr (OxExcluded) excluded
      = ox_excluded_new (&(OxExcluded){ .id = (char *) "X1", .name = (char *) "Plant bay", .ring = corner });
  ox_job_builder_put_excluded (builder, excluded);
  g_autoptr (OxDoorway) doorway = ox_doorway_new (
      &(OxDoorway){ .id = (char *) "D1", .name = (char *) "", .a = { 12.1, 3 }, .b = { 12.1, 4.5 }, .depth = 0.2 });
  ox_job_builder_put_doorway (builder, doorway);
  OxPoint line[] = { { 6, 0 }, { 6, 8 } };
  g_autoptr (OxJoint) joint
      = ox_joint_new (&(OxJoint){ .id = (char *) "J1", .name = (char *) "", .n = 2, .points = line });
  ox_job_builder_put_joint (builder, joint);
  g_autoptr (OxStation) collector = ox_station_new (
      &(OxStation){ .id = (char *) "S1", .name = (char *) "Collector", .kind = OX_STATION_COLLECTOR, .at = { 10, 1 } });
  ox_job_builder_put_station (builder, collector);
  g_autoptr (OxStation) supply = ox_station_new (
      &(OxStation){ .id = (char *) "S2", .name = (char *) "Socket", .kind = OX_STATION_SUPPLY, .at = { 11.5, 7 } });
  ox_job_builder_put_station (builder, supply);
}

OxJob *
ox_test_hall (OxUnits units)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  OxTexts texts = { .title = (char *) "Hall 3",
                    .client = (char *) "Ellorin & Daughters",
                    .site = (char *) "Quay Road 14",
                    .author = (char *) "H. Ostrevik",
                    .company = (char *) "Brennhald Floor Preparation",
                    .number = (char *) "BFP-0412",
                    .revision = (char *) "B",
                    .date = (char *) "2026-09-14",
                    .status = (char *) "for approval",
                    .notes = (char *) "Slab dry and swept.\nWork at night." };
  g_autoptr (OxTexts) copy = ox_texts_copy (&texts);
  ox_job_builder_set_texts (builder, copy);
  ox_job_builder_set_machine (builder, ox_classes_find ("compact"));
  ox_job_builder_set_rates (builder, (OxRates){ .edge_m2_per_hour = OX_HAND_RATE_DEFAULT });
  ox_job_builder_set_units (builder, units);
  ox_job_builder_set_north (builder, 75);
  put_room (builder, "R1", "Hall", "POLYGON ((0 0, 12 0, 12 8, 0 8, 0 0))", 0);
  put_room (builder, "R2", "Store", "POLYGON ((12.2 0, 17.2 0, 17.2 8, 12.2 8, 12.2 0))", -1);
  put_obstacle (builder, "O1", OX_OBSTACLE_SOLID, (OxPoint){ 4, 4 });
  put_obstacle (builder, "O2", OX_OBSTACLE_PIT, (OxPoint){ 8.5, 5 });
  put_obstacle (builder, "O3", OX_OBSTACLE_MASKED, (OxPoint){ 3, 2 });
  put_others (builder);
  return ox_job_builder_end (builder);
}

OxPlan *
ox_test_plan (const OxJob *job)
{
  g_autoptr (GError) error = NULL;
  OxPlan *plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (plan->n_strips, >, 20);
  g_assert_cmpuint (plan->n_edges, >, 2);
  return plan;
}

guint
ox_test_count (const OxDrawing *drawing, const char *layer, const char *id)
{
  guint n = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      n += (layer == NULL || g_str_equal (drawing->layers[element->layer].id, layer))
           && (id == NULL || g_str_has_prefix (element->id, id));
    }
  return n;
}

const OxElement *
ox_test_find_text (const OxDrawing *drawing, const char *part)
{
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_TEXT && strstr (drawing->elements[i].text.text, part) != NULL)
      return &drawing->elements[i];
  return NULL;
}

const OxElement *
ox_test_find_cell (const OxDrawing *drawing, const char *text)
{
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_TEXT && g_str_equal (drawing->elements[i].text.text, text))
      return &drawing->elements[i];
  return NULL;
}

gboolean
ox_test_has_cell_beside (const OxDrawing *drawing, const OxElement *cell, const char *text)
{
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_TEXT && g_str_equal (drawing->elements[i].text.text, text)
        && fabs (drawing->elements[i].text.at.y - cell->text.at.y) < 0.01)
      return TRUE;
  return FALSE;
}

/* bare_box: the capitals of a text, without its ground */
static OxLabelBox
bare_box (const OxElement *element)
{
  OxElement level = *element;
  level.text.at = (OxPoint){ 0, 0 };
  level.text.angle = 0;
  level.text.ground_mm = 0.001;
  OxPoint corners[4];
  ox_element_text_corners (&level, 1, corners);
  return (
      OxLabelBox){ element->text.at, element->text.angle, { corners[0].x, corners[0].y, corners[2].x, corners[2].y } };
}

void
ox_test_no_texts_overlap (const OxDrawing *drawing, double mm_per_unit)
{
  g_autoptr (OxLabels) labels = ox_labels_new (mm_per_unit);
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (element->kind != OX_ELEMENT_TEXT || element->from_mm > mm_per_unit)
        continue;
      OxLabelBox box = bare_box (element);
      if (!ox_labels_is_free (labels, &box))
        g_test_message ("\"%s\" in layer %s overlaps another text", element->text.text,
                        drawing->layers[element->layer].id);
      g_assert_true (ox_labels_is_free (labels, &box));
      ox_labels_take (labels, &box);
    }
}
