/* Oxturn: sheets/work - what the plan lays on the floor: zones, strips, edge work, moves.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/picture.h"

/* Axes closer than this would be all that one sees; then only every fifth is drawn, as far as 0.7 mm stay clear between
 * those. */
#define LEAST_AXIS_PITCH_MM 1.3
#define LEAST_FIFTH_PITCH_MM 0.2
#define PITCH_SHARE 0.9 /* of the blast width, about, from one strip to the next */

static OxStyle
strip_style (const OxStrip *strip)
{
  if (strip->done > 0)
    return OX_STYLE_DONE;
  if (strip->kind == OX_STRIP_CROSSWISE)
    return OX_STYLE_CROSSWISE;
  double heading = remainder (strip->heading, 2 * G_PI);
  return heading > -1e-6 && heading < G_PI - 1e-6 ? OX_STYLE_STRIP_OUT : OX_STYLE_STRIP_HOME;
}

static char *
strip_id (const OxStrip *strip)
{
  return g_strdup_printf ("strip-%u", strip->order);
}

double
ox_picture_axis_from (const OxStrip *strip)
{
  double pitch_mm = strip->order % 5 == 0 || strip->order == 1 ? LEAST_FIFTH_PITCH_MM : LEAST_AXIS_PITCH_MM;
  return pitch_mm / (strip->width * PITCH_SHARE);
}

OxStyle
ox_picture_axis (const OxStrip *strip, const char **layer)
{
  *layer = strip->coat > 1 ? "further-coats" : "directions";
  if (strip->coat > 1)
    return OX_STYLE_COAT_AXIS;
  return strip->kind == OX_STRIP_MAIN ? OX_STYLE_STRIP_AXIS : OX_STYLE_CROSS_AXIS;
}

gboolean
ox_picture_has_axis (const OxStrip *strip)
{
  return strip->coat == 1 || strip->done == 0;
}

guint
ox_picture_first_left (const OxPlan *plan)
{
  guint first = 0;
  while (first < plan->n_strips && plan->strips[first].done > 0)
    first++;
  return first;
}

gboolean
ox_picture_pace (const OxPlan *plan, const OxStrip *strip, guint i, OxPoint *at, double *speed)
{
  const OxPace *paces = plan->paces + strip->pace;
  OxPoint along = { cos (strip->heading), sin (strip->heading) };
  double from = 0;
  if (i >= MAX (strip->n_paces, 1))
    return FALSE;
  *speed = strip->n_paces > 0 ? paces[i].speed : strip->speed;
  for (guint k = 0; k < i; k++)
    from += paces[k].length;
  *at = ox_point_add (strip->a, ox_point_scale (along, from));
  return i > 0 || fabs (*speed - plan->job->machine->travel_speed) > 1e-9;
}

gboolean
ox_picture_is_same_field (const OxStrip *a, const OxStrip *b)
{
  double turn = fabs (remainder (a->heading - b->heading, G_PI));
  return a->room == b->room && a->coat == b->coat && a->kind == b->kind && turn < 1e-3;
}

static gboolean
is_in_part (const OxPicture *picture, const OxStrip *strip)
{
  OxBox box = OX_BOX_EMPTY;
  ox_box_add (&box, strip->a);
  ox_box_add (&box, strip->b);
  return box.x0 - strip->width <= picture->part.x1 && box.x1 + strip->width >= picture->part.x0
         && box.y0 - strip->width <= picture->part.y1 && box.y1 + strip->width >= picture->part.y0;
}

/* append_flagged: a hatch over the strips that are out of reach */
static void
append_flagged (const OxPicture *picture, double blast_length)
{
  ox_picture_layer (picture, "out-of-reach");
  for (guint i = 0; i < picture->plan->n_strips; i++)
    {
      const OxStrip *strip = &picture->plan->strips[i];
      if (!strip->out_of_reach || !is_in_part (picture, strip))
        continue;
      g_autofree char *id = strip_id (strip);
      OxPoint corners[4];
      ox_strip_corners (strip, blast_length, corners);
      ox_picture_item (picture, id, 0);
      ox_drawing_builder_polygon (picture->builder, OX_STYLE_OUT_OF_REACH, corners, 4);
    }
}

static void
append_axes (const OxPicture *picture)
{
  for (guint i = 0; i < picture->plan->n_strips; i++)
    {
      const OxStrip *strip = &picture->plan->strips[i];
      const char *layer;
      OxStyle style = ox_picture_axis (strip, &layer);
      if (!is_in_part (picture, strip) || !ox_picture_has_axis (strip))
        continue;
      g_autofree char *id = strip_id (strip);
      ox_picture_layer (picture, layer);
      if (ox_picture_item (picture, id, ox_picture_axis_from (strip)))
        ox_drawing_builder_line (picture->builder, style, strip->a, strip->b);
    }
}

/* append_paces: a bar across the strip where its speed changes */
static void
append_paces (const OxPicture *picture)
{
  ox_picture_layer (picture, "speeds");
  for (guint i = 0; i < picture->plan->n_strips; i++)
    {
      const OxStrip *strip = &picture->plan->strips[i];
      OxPoint half = { -sin (strip->heading) * strip->width / 2, cos (strip->heading) * strip->width / 2 }, at;
      double speed;
      if (!is_in_part (picture, strip))
        continue;
      g_autofree char *id = strip_id (strip);
      ox_picture_item (picture, id, 0);
      for (guint k = 0; k < MAX (strip->n_paces, 1); k++)
        if (ox_picture_pace (picture->plan, strip, k, &at, &speed))
          ox_drawing_builder_line (picture->builder, OX_STYLE_PACE, ox_point_sub (at, half), ox_point_add (at, half));
    }
}

/* append_strips: the first coat, and what is done of further ones */
static void
append_strips (const OxPicture *picture)
{
  const OxPlan *plan = picture->plan;
  double blast_length = plan->job->machine->blast_length;
  ox_picture_layer (picture, "strips");
  for (guint i = 0; i < plan->n_strips; i++)
    {
      if (!is_in_part (picture, &plan->strips[i]) || (plan->strips[i].coat > 1 && plan->strips[i].done == 0))
        continue;
      g_autofree char *id = strip_id (&plan->strips[i]);
      OxPoint corners[4];
      ox_strip_corners (&plan->strips[i], blast_length, corners);
      ox_picture_item (picture, id, 0);
      ox_drawing_builder_polygon (picture->builder, strip_style (&plan->strips[i]), corners, 4);
    }
  append_flagged (picture, blast_length);
  append_axes (picture);
  append_paces (picture);
}

static void
append_zones (const OxPicture *picture)
{
  ox_picture_layer (picture, "zone-outlines");
  for (guint i = 0; i < picture->plan->n_zones; i++)
    {
      ox_picture_item (picture, picture->plan->zones[i].id, 0);
      ox_drawing_builder_region (picture->builder, OX_STYLE_ZONE, picture->plan->zones[i].region);
    }
}

static void
append_edge_work (const OxPicture *picture)
{
  ox_picture_layer (picture, "edge-work");
  for (guint i = 0; i < picture->plan->n_edges; i++)
    {
      const OxEdge *edge = &picture->plan->edges[i];
      ox_picture_item (picture, edge->id, 0);
      ox_drawing_builder_region (picture->builder, edge->done > 0 ? OX_STYLE_DONE : OX_STYLE_EDGE, edge->region);
    }
}

static void
append_moves (const OxPicture *picture)
{
  gboolean all = (picture->layers & OX_FLOOR_MOVES) != 0;
  ox_picture_layer (picture, "moves");
  for (guint i = 0; i < picture->plan->n_moves; i++)
    {
      const OxMove *move = &picture->plan->moves[i];
      if (move->n_path < 2 || (!all && move->kind != OX_MOVE_WALK))
        continue;
      g_autofree char *id = g_strdup_printf ("move-%u", move->from);
      ox_picture_item (picture, id, 0);
      ox_drawing_builder_polyline (picture->builder, OX_STYLE_MOVE, move->path, move->n_path);
    }
}

static void
append_reach (const OxPicture *picture)
{
  ox_picture_layer (picture, "reach");
  for (guint i = 0; i < picture->reach->n; i++)
    {
      const OxPlanStation *station = &picture->plan->stations[picture->reach->lines[i].station];
      const GArray *points = picture->reach->lines[i].points;
      ox_picture_item (picture, station->id, 0);
      ox_drawing_builder_polyline (picture->builder,
                                   station->kind == OX_STATION_COLLECTOR ? OX_STYLE_HOSE_REACH : OX_STYLE_CORD_REACH,
                                   (const OxPoint *) (const void *) points->data, points->len);
    }
}

void
ox_picture_work (const OxPicture *picture)
{
  OxFloorLayers layers = picture->layers;
  if (layers & OX_FLOOR_TO_PREPARE)
    {
      ox_picture_layer (picture, "strips");
      ox_picture_item (picture, NULL, 0);
      ox_drawing_builder_region (picture->builder, OX_STYLE_TO_PREPARE, picture->plan->blasted);
    }
  if (layers & OX_FLOOR_STRIPS)
    append_strips (picture);
  if (layers & OX_FLOOR_DOSE)
    ox_picture_dose (picture);
  if (layers & OX_FLOOR_LANES)
    ox_picture_lanes (picture);
  if (layers & OX_FLOOR_ZONES)
    append_zones (picture);
  if (layers & OX_FLOOR_EDGE_WORK)
    append_edge_work (picture);
  if (layers & (OX_FLOOR_MOVES | OX_FLOOR_WALKS))
    append_moves (picture);
  if ((layers & OX_FLOOR_REACH) && picture->reach != NULL)
    append_reach (picture);
}
