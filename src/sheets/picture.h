/* Oxturn: sheets/picture - the parts that a floor picture is put together from; see sheets/floor.h.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "sheets/floor.h"
G_BEGIN_DECLS

typedef struct
{
  OxDrawingBuilder *builder;
  const OxJob *job;
  const OxPlan *plan;     /* (nullable) */
  OxFloorLayers layers;
  double mm_per_m;        /* 0: for every scale */
  OxBox part;             /* what of the floor is to be seen; strips and labels beyond it may be left out */
  const OxReachLines *reach; /* (nullable) */
  double number_mm;       /* height of capitals of numbers and tags */
} OxPicture;

#define OX_WRAP_MM 2.0 /* mark of a hose or cord that wraps round a solid, at the stop of its strip */

/* ox_picture_layer: goes to the layer of that id, one of those in sheets/floor.h */
void ox_picture_layer (const OxPicture *picture, const char *id);

/* ox_picture_item: what follows shows @id; it needs a scale of @from_mm mm a metre
 * Returns: FALSE when the picture's scale is smaller, and nothing is to be appended */
gboolean ox_picture_item (const OxPicture *picture, const char *id, double from_mm);

/* ox_picture_axis_from: mm a metre from which on the axis of a strip is drawn: all where they leave each other room, every fifth before */
double ox_picture_axis_from (const OxStrip *strip);

/* ox_picture_has_axis: not where a strip of a further coat is done, which tells it from one still to be laid over a done first coat */
gboolean ox_picture_has_axis (const OxStrip *strip);

/* ox_picture_first_left: place of the first strip that is not done, the number of strips where all are */
guint ox_picture_first_left (const OxPlan *plan);

/* ox_picture_axis: the style of a strip's middle, and @layer: (out): the layer that it lies in */
OxStyle ox_picture_axis (const OxStrip *strip, const char **layer);

/* ox_picture_pace: piece @i of a strip as far as the speed is told there: where it changes, and at the start where it is not the machine's
 * @at: (out): where the piece begins
 * Returns: FALSE where nothing is told; *@speed in m/min */
gboolean ox_picture_pace (const OxPlan *plan, const OxStrip *strip, guint i, OxPoint *at, double *speed);

/* ox_picture_is_same_field: whether @b goes on with the field of @a, which comes before it in working order: the same room, coat and kind, along
 * the same line */
gboolean ox_picture_is_same_field (const OxStrip *a, const OxStrip *b);

/* ox_picture_take_wrap: the place of the mark at the stop of a strip on which hose or cord wraps, where there is one */
void ox_picture_take_wrap (const OxStrip *strip, OxLabels *labels);

void ox_picture_ground (const OxPicture *picture); /* rooms, obstacles, excluded areas, joints, outline, stations */
void ox_picture_work (const OxPicture *picture);   /* zones, strips, edge work, moves; needs a plan */
void ox_picture_lanes (const OxPicture *picture);  /* chalk lines; needs a plan */
void ox_picture_dose (const OxPicture *picture);   /* how often the floor is blasted; needs a plan */
void ox_picture_labels (const OxPicture *picture, OxLabels *labels); /* names, tags, strip numbers, arrows */

G_END_DECLS
