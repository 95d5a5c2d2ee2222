/* Oxturn: plan/near - which of a layout's strips lie near a place.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lines along +x of their frames, kept in buckets of a few metres along and one strip across. Every question of a planner about neighbours concerns
 * a few of thousands of strips; going through all of them would take time that grows with the square of the floor. One index belongs to one thread.
 */
#pragma once
#include "plan/lane.h"
G_BEGIN_DECLS

typedef struct
{
  guint frame; /* index of its direction */
  double y;
  double x0, x1; /* x0 <= x1 */
} OxNearLine;

/* Which frames are looked into: those within two degrees of the direction of the question, or of its normal, or all */
typedef enum
{
  OX_NEAR_ALONG,
  OX_NEAR_ACROSS,
  OX_NEAR_ALL
} OxNearSort;

typedef struct _OxNear OxNear;

/* ox_near_new: @frames: (element-type OxFrame): borrowed, may grow; @width: m, of a strip; (transfer full) */
OxNear *ox_near_new (const GPtrArray *frames, double width) G_GNUC_WARN_UNUSED_RESULT;
void ox_near_free (OxNear *near);

/* ox_near_add, ox_near_remove: @id: a number of the caller's, used once; removing takes the line as it was added */
void ox_near_add (OxNear *near, const OxNearLine *line, guint id);
void ox_near_remove (OxNear *near, const OxNearLine *line, guint id);

/* ox_near_find:
 * @frame: index of the frame that @box lies in
 * @ids: (element-type guint): set to the numbers, in rising order, of all lines of that sort that meet @box, and of some others near it
 */
void ox_near_find (OxNear *near, guint frame, OxBox box, OxNearSort sort, GArray *ids);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxNear, ox_near_free)
G_END_DECLS
