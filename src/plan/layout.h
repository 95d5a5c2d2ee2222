/* Oxturn: plan/layout - a room while its strips are being laid: frames of directions, chalk lines, draft strips.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draft strips live in the frame of their direction: on a lane (y), from x0 to x1 (middle of the pattern, x0 < x1), heading along +x or -x by
 * @sign. The raster keeps count of what they cover. Internal to the planner; one layout belongs to one thread.
 */
#pragma once
#include "plan/cover.h"
#include "plan/floor.h"
#include "plan/lane.h"
#include "plan/near.h"
#include "plan/plan.h"
#include "plan/way.h"
G_BEGIN_DECLS

typedef struct
{
  guint frame; /* index of its direction in OxLayout.frames */
  double y;
} OxLane;

typedef struct
{
  guint frame;
  guint lane;  /* index in OxLayout.lanes */
  int sign;
  double y;
  double x0, x1;
  OxStripKind kind;
  gboolean grid; /* laid with the lane grid of the main direction; FALSE for what was added afterwards */
  double lo, hi; /* span within which the strip may be trimmed or lengthened */
} OxDraft;

/* How the lanes of a room are worked */
typedef enum
{
  OX_WORK_SERPENTINE, /* to and fro, turnaround zones at both ends */
  OX_WORK_FORWARD,    /* all along +x of the main frame, pull-backs between; the strips run on to the far wall */
  OX_WORK_BACKWARD    /* all along -x */
} OxWork;

/* Part of a room on one side of a line: where normal . p >= offset */
typedef struct
{
  OxPoint normal; /* unit vector */
  double offset;  /* m */
} OxPart;

/* Two wings of a room, each with lanes of its own direction:
 *
 *      +---+                 the lanes of the main direction lie in one of them, and end at the line between;
 *      | | |                 those of the other direction are crosswise strips to them
 *      | | |
 *      | | +--------+
 *      | | |--------|
 *      +---+--------+
 */
typedef struct
{
  OxPart main, other;
  double angle; /* direction of the other wing's lanes */
} OxWings;

typedef struct
{
  const OxRun *run;       /* (nullable): once cancelled, what is done to the layout may stop half way: it is then to be freed */
  guint room;             /* index in the job */
  guint coat;             /* from 1 */
  const OxMachine *machine;
  const OxRegion *travel;
  const OxRegion *target; /* of the room's coat */
  double speed;           /* m/min: mean walking speed over the target */
  double hand_rate;       /* m2/h */
  OxWork work;
  const OxWings *wings;   /* (nullable): the lanes have two directions; borrowed while lanes are laid */
  gboolean one_heading;   /* no swing fits anywhere: only strips with the heading of the work are laid */
  GPtrArray *frames;      /* OxFrame; the first is the main direction */
  OxCover *cover;
  GArray *lanes;          /* OxLane */
  GArray *drafts;         /* OxDraft */
  GArray *ids;            /* guint: of each draft its number in @near, rising */
  guint next_id;
  OxNear *near;           /* the drafts' middles, from end to end of what they cover */
  double first_y, spacing; /* lane grid of the main direction */
  guint n_main_lanes;
  double wing_angle, wing_first_y, wing_spacing; /* lane grid of the other wing, in its own direction */
  guint n_wing_lanes;      /* 0: the lanes have one direction */
} OxLayout;

/* ox_layout_new: an empty layout with its main direction; @floor, @coat and @job are borrowed; (transfer full) */
OxLayout *ox_layout_new (const OxFloor *floor, const OxCoat *coat, const OxJob *job, double angle, OxWork work) G_GNUC_WARN_UNUSED_RESULT;
void ox_layout_free (OxLayout *layout);

/* ox_layout_frame:
 * @angle: direction of the lanes, modulo 180 degrees
 * @length: m of a wall that they are to lie along; 0 for an exact direction
 *
 * Returns: index of the frame; one that is there already serves when the wall strays from it by less than 15 mm, so that walls which are a hair off
 * parallel share their lanes; else it is made
 */
guint ox_layout_frame (OxLayout *layout, double angle, double length);

/* ox_layout_find_frame: as above, -1 when there is none yet */
int ox_layout_find_frame (const OxLayout *layout, double angle, double length);

/* ox_layout_lane: index of the lane at @y in @frame, made when none lies within 0.2 mm */
guint ox_layout_lane (OxLayout *layout, guint frame, double y);

/* ox_layout_add, ox_layout_replace, ox_layout_remove: a draft and its cover; removing keeps the order of the others */
void ox_layout_add (OxLayout *layout, const OxDraft *draft);
void ox_layout_replace (OxLayout *layout, guint i, const OxDraft *draft);
void ox_layout_remove (OxLayout *layout, guint i);

/* ox_layout_near: @box: in the frame @frame; @out: (element-type guint): set to the indices, in rising order, of the drafts of that sort whose middles
 * meet the box, from end to end of what they cover, and of some others near it */
void ox_layout_near (const OxLayout *layout, guint frame, OxBox box, OxNearSort sort, GArray *out);

/* ox_layout_band: what a draft covers */
OxBand ox_layout_band (const OxLayout *layout, const OxDraft *draft);

double ox_layout_least (const OxLayout *layout); /* m that a strip must be long before its ends are rounded to OX_GRID */
double ox_layout_hand_seconds (const OxLayout *layout); /* seconds that a square metre takes by hand */
double ox_layout_move_seconds (const OxLayout *layout); /* seconds that it takes to reach one more short strip, at a guess */

/* ox_layout_slot_shift:
 * @frame, @y, @x: a stretch of a lane where a strip is to be laid
 *
 * Returns: m by which the lane should move across so that no slot stays open between the strip and a parallel one beside it, which would overlap it
 * by less than it must or leave floor too narrow to be worth a strip; 0 when all is well
 */
double ox_layout_slot_shift (const OxLayout *layout, guint frame, double y, OxSpan x);

/* ox_layout_nose_shift: the same for strips that run square on to the stretch and leave off just short of what it covers: m by which the lane had better
 * move towards them; @where: (out): where along the stretch they do, untouched when 0 is returned */
double ox_layout_nose_shift (const OxLayout *layout, guint frame, double y, OxSpan x, OxSpan *where);

/* ox_layout_cut_noses: cuts ends of strips off where others leave off just short of them; ox_layout_finish() then lays strips nearer to those.
 * Returns: whether any was cut */
gboolean ox_layout_cut_noses (OxLayout *layout);

/* ox_layout_close_slots: moves strips that are not of the lane grid across, where trimming has left an open slot beside them or too little overlap */
void ox_layout_close_slots (OxLayout *layout);

/* ox_layout_settle: strips that still overlap a neighbour by too little are moved next to it, with a second one on their other side where that takes
 * one; short ones that cannot move are taken back, and what they covered of their own becomes edge work; for the rest a strip is laid between the two,
 * and where none fits there they are taken back as well.
 * Returns: whether any was taken back */
gboolean ox_layout_settle (OxLayout *layout);

/* ox_layout_joins: whether draft @i lies between two that would be too far apart without it to overlap as they must: it stays even where they cover
 * all of it */
gboolean ox_layout_joins (const OxLayout *layout, guint i);

/* ox_layout_mains: lays the main strips: an even grid of lanes over the width that can be reached, strips cut by what stands in the way.
 * Returns: FALSE when no strip fits */
gboolean ox_layout_mains (OxLayout *layout);

/* ox_layout_zones: lays crosswise strips along end walls, as many lanes as the starts of the main strips stay off them */
void ox_layout_zones (OxLayout *layout);

/* ox_layout_finish: lays further strips, along walls and obstacles and on lanes that are there, as long as they save more labour than they cost.
 * Returns: FALSE when cancelled */
gboolean ox_layout_finish (OxLayout *layout, const OxRun *run);

/* ox_layout_trim: takes back what others cover as well: ends of strips, and whole ones */
void ox_layout_trim (OxLayout *layout);

/* ox_layout_prune: takes strips back that others cover all but a few hundredths of, measured exactly */
void ox_layout_prune (OxLayout *layout);

/* ox_layout_repair: finds the slots that stay open between strips, exactly, and lays strips over them where the body fits */
void ox_layout_repair (OxLayout *layout);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxLayout, ox_layout_free)
G_END_DECLS
