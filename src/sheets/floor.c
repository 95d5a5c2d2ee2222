/* Oxturn: sheets/floor - the floor picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/floor.h"
#include "base/words.h"
#include "drawing/text.h"
#include "sheets/picture.h"

static const OxLayer layers[] = {
  { "rooms", N_ ("Rooms") },
  { "zones", N_ ("Turnaround zones") },
  { "strips", N_ ("Strips") },
  { "dose", N_ ("Dose map") },
  { "lanes", N_ ("Lanes") },
  { "out-of-reach", N_ ("Strips out of reach") },
  { "edge-work", N_ ("Edge work") },
  { "excluded", N_ ("Excluded areas") },
  { "conditions", N_ ("Condition areas") },
  { "joints", N_ ("Joints") },
  { "obstacles", N_ ("Obstacles") },
  { "outline", N_ ("Outline") },
  { "zone-outlines", N_ ("Outlines of turnaround zones") },
  { "moves", N_ ("Moves") },
  { "reach", N_ ("Reach of the stations") },
  { "directions", N_ ("Directions of strips") },
  { "further-coats", N_ ("Further coats") },
  { "speeds", N_ ("Changes of walking speed") },
  { "numbers", N_ ("Numbers of strips") },
  { "stations", N_ ("Stations") },
  { "names", N_ ("Names") },
};

void
ox_picture_layer (const OxPicture *picture, const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (layers); i++)
    if (g_str_equal (layers[i].id, id))
      ox_drawing_builder_layer (picture->builder, id, _ (layers[i].title));
}

gboolean
ox_picture_item (const OxPicture *picture, const char *id, double from_mm)
{
  gboolean at_one_scale = picture->mm_per_m > 0;
  ox_drawing_builder_item (picture->builder, id, at_one_scale ? 0 : from_mm);
  return !at_one_scale || from_mm <= picture->mm_per_m;
}

OxDrawing *
ox_floor_picture_new_part (const OxJob *job, const OxPlan *plan, const OxFloorPart *part, OxLabels *labels)
{
  double mm_per_m = part->mm_per_m;
  OxPicture picture = { ox_drawing_builder_new (),
                        job,
                        plan,
                        part->layers,
                        mm_per_m,
                        part->box,
                        part->reach,
                        part->number_mm > 0 ? part->number_mm : OX_TEXT_MIN_MM };
  g_autoptr (OxLabels) own = labels == NULL ? ox_labels_new (mm_per_m > 0 ? mm_per_m : 1) : NULL;
  /* Layers are painted in the order in which they are begun. */
  for (guint i = 0; i < G_N_ELEMENTS (layers); i++)
    ox_picture_layer (&picture, layers[i].id);
  ox_picture_ground (&picture);
  if (plan != NULL)
    ox_picture_work (&picture);
  ox_picture_labels (&picture, labels != NULL ? labels : own);
  return ox_drawing_builder_end (picture.builder);
}

OxDrawing *
ox_floor_picture_new_at (const OxJob *job, const OxPlan *plan, OxFloorLayers which, double mm_per_m, OxLabels *labels)
{
  const OxFloorPart all = { which, mm_per_m, OX_FLOOR_WHOLE, NULL, 0 };
  return ox_floor_picture_new_part (job, plan, &all, labels);
}

OxDrawing *
ox_floor_picture_new (const OxJob *job, const OxPlan *plan, OxFloorLayers which)
{
  return ox_floor_picture_new_at (job, plan, which, 0, NULL);
}
