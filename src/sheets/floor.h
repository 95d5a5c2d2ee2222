/* Oxturn: sheets/floor - the floor picture: what window and sheets show of a job and its plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Layers, from below: "rooms", "zones", "strips", "dose", "lanes", "out-of-reach", "edge-work", "excluded", "conditions", "joints", "obstacles", "outline", "zone-outlines", "moves", "reach", "directions" (arrows), "further-coats", "speeds",
 * "numbers", "stations", "names". Strip numbers and arrows appear as the scale leaves room for them (OxElement.from_mm), first and last strip and
 * every tenth first, so that no two overlap at any scale.
 */
#pragma once
#include "drawing/drawing.h"
#include "plan/plan.h"
#include "plan/reach-line.h"
#include "sheets/labels.h"
G_BEGIN_DECLS

typedef enum
{
  OX_FLOOR_OUTLINE = 1 << 0,   /* rooms and their sides, doorways */
  OX_FLOOR_OBSTACLES = 1 << 1, /* obstacles, excluded and condition areas, joints */
  OX_FLOOR_STRIPS = 1 << 2,
  OX_FLOOR_NUMBERS = 1 << 3,   /* numbers, arrows, first start */
  OX_FLOOR_ZONES = 1 << 4,
  OX_FLOOR_EDGE_WORK = 1 << 5,
  OX_FLOOR_MOVES = 1 << 6,
  OX_FLOOR_STATIONS = 1 << 7,
  OX_FLOOR_NAMES = 1 << 8,     /* names of rooms and items */
  OX_FLOOR_TO_PREPARE = 1 << 9, /* blasted floor as one area, instead of strips */
  OX_FLOOR_WALKS = 1 << 10,     /* of the moves those to a strip elsewhere */
  OX_FLOOR_TAGS = 1 << 11,      /* ids of edge areas and zones */
  OX_FLOOR_REACH = 1 << 12,     /* where hoses and cords end, as far as OxFloorPart.reach says */
  OX_FLOOR_FIRST = 1 << 13,     /* first start without the numbers */
  OX_FLOOR_LANES = 1 << 14,     /* chalk lines */
  OX_FLOOR_OWN = 1 << 16,       /* of the stations only those of the job, none that are proposed */
  OX_FLOOR_DOSE = 1 << 15,      /* floor blasted not at all, once, twice, more often by one coat; the coats lie over one another */
  OX_FLOOR_SCREEN = OX_FLOOR_OUTLINE | OX_FLOOR_OBSTACLES | OX_FLOOR_STRIPS | OX_FLOOR_NUMBERS | OX_FLOOR_ZONES | OX_FLOOR_EDGE_WORK
                    | OX_FLOOR_STATIONS | OX_FLOOR_NAMES | OX_FLOOR_TAGS
} OxFloorLayers;

/* ox_floor_picture_new:
 * @plan: (nullable): NULL shows the floor only; it may be of an older state of the job
 *
 * Returns: (transfer full): in metres of floor */
OxDrawing *ox_floor_picture_new (const OxJob *job, const OxPlan *plan, OxFloorLayers layers) G_GNUC_WARN_UNUSED_RESULT;

/* ox_floor_picture_new_at:
 * @mm_per_m: the one scale that the picture is for
 * @labels: (nullable): where labels stand already; those of the picture are added
 *
 * As ox_floor_picture_new(), with nothing in it that this scale has no room for. */
OxDrawing *ox_floor_picture_new_at (const OxJob *job, const OxPlan *plan, OxFloorLayers layers, double mm_per_m, OxLabels *labels)
    G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  OxFloorLayers layers;
  double mm_per_m;
  OxBox box;        /* m of floor */
  const OxReachLines *reach; /* (nullable) */
  double number_mm; /* height of the numbers of strips; 0: OX_TEXT_MIN_MM */
} OxFloorPart;

#define OX_FLOOR_WHOLE ((OxBox){ -INFINITY, -INFINITY, INFINITY, INFINITY })

/* ox_floor_picture_new_part: as ox_floor_picture_new_at(), for a sheet that shows @part only: each strip has its number where it enters the
 * part, names stand inside it. Paths may reach beyond the part and are for the caller to cut (ox_drawing_builder_clip()). */
OxDrawing *ox_floor_picture_new_part (const OxJob *job, const OxPlan *plan, const OxFloorPart *part, OxLabels *labels)
    G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
