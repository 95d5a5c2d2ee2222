/* Oxturn: tools/slide - a doorway slid along the wall that it is in.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

/* The side of a room that a doorway is in. */
typedef struct
{
  OxPoint start;  /* the corner where the side begins */
  OxPoint along;  /* unit vector from there */
  double length;  /* m, of the side */
  double from;    /* m from the corner to the nearer end of the doorway */
  double width;   /* m, of the doorway */
} OxDoorwayWall;

/* ox_doorway_wall: FALSE for what is no doorway, and for one that no side of a room runs beside: nearer than OX_DOORWAY_BESIDE to its floor */
#define OX_DOORWAY_BESIDE 0.05 /* m */
gboolean ox_doorway_wall (const OxJob *job, const char *id, OxDoorwayWall *wall);

/* ox_doorway_slide: to @from metres from the corner, or as far as the side reaches; (transfer full) */
OxJob *ox_doorway_slide (const OxJob *job, const char *id, double from, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_slide_or_move: @ids (NULL-ended) moved by @by metres; a doorway alone slides along its wall, as far as @by goes that way; (transfer full) */
OxJob *ox_slide_or_move (const OxJob *job, const char *const *ids, OxPoint by, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
