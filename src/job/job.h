/* Oxturn: job/job - one job: the floor, the machine, the rates, the texts of the sheets.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A job is an immutable counted value that any thread may read. An edit is a function job -> job (job/edit.h); a job made by an edit
 * shares all items that did not change. Arrays keep the order of the file.
 */
#pragma once
#include "base/units.h"
#include "job/items.h"
#include "job/machine.h"
#include "job/outfit.h"
#include "job/record.h"
#include "job/scope.h"
#include "job/setup.h"
#include "job/terms.h"
#include "job/traced-plan.h"
G_BEGIN_DECLS

#define OX_JOB_VERSION_MAJOR 1
#define OX_JOB_VERSION_MINOR 2
#define OX_JOB_VERSION "1.2" /* both, as files have it */
#define OX_HAND_RATE_DEFAULT 4.0 /* m2/h of edge work (design: unless the job says otherwise) */

typedef struct
{
  double edge_m2_per_hour; /* hand rate of edge work, > 0 */
  double edge_m_per_hour;  /* that of narrow edge work by its length; 0: all of it goes by area */
} OxRates;

typedef struct
{
  char *title;     /* of the job */
  char *client;
  char *site;
  char *author;
  char *company;   /* legal owner of the drawing */
  char *number;    /* drawing number */
  char *revision;  /* index, "" before the first */
  char *date;      /* YYYY-MM-DD, as typed; never the clock's */
  char *status;    /* one of ox_status_list(), or as typed */
  char *notes;     /* free text for the scope drawing, lines split by \n */
} OxTexts;

typedef struct
{
  OxTexts *texts;
  OxMachine *machine;
  OxRates rates;
  OxUnits units;     /* display only */
  double north_deg;  /* direction of north, counter-clockwise from +x; 90: up */
  guint n_rooms, n_obstacles, n_excluded, n_doorways, n_joints, n_stations, n_conditions, n_traced;
  OxRoom **rooms;
  OxObstacle **obstacles;
  OxExcluded **excluded;
  OxDoorway **doorways;
  OxJoint **joints;
  OxStation **stations;
  OxCondition **conditions;
  OxTracedPlan **traced; /* the first lies lowest */
  OxPatches *patches;
  OxCalendar *calendar;
  OxCosts *costs;
  OxOutfit *outfit;
  OxRecord *record;
  OxScope *scope;
  OxSheetSetup *setup;
  char *version_minor_note; /* (nullable): "1.7" when the file was written by that newer minor version */
  char *extra;              /* (nullable): the same as that of an item (job/items.h) for all that is not an item */
} OxJob;

OxJob *ox_job_ref (const OxJob *job);
void ox_job_unref (const OxJob *job);

OxTexts *ox_texts_copy (const OxTexts *texts) G_GNUC_WARN_UNUSED_RESULT; /* NULL members become "" */
void ox_texts_free (OxTexts *texts);

/* A builder gathers items; ox_job_builder_end() freezes them into a job and frees the builder. A drawing that was signed and is now another
 * gets another revision then, see job/sign-off.h. */
typedef struct _OxJobBuilder OxJobBuilder;
OxJobBuilder *ox_job_builder_new (const OxJob *base) G_GNUC_WARN_UNUSED_RESULT; /* @base (nullable): start from its contents */
void ox_job_builder_set_texts (OxJobBuilder *builder, const OxTexts *texts);
void ox_job_builder_set_machine (OxJobBuilder *builder, const OxMachine *machine);
void ox_job_builder_set_rates (OxJobBuilder *builder, OxRates rates);
void ox_job_builder_set_units (OxJobBuilder *builder, OxUnits units);
void ox_job_builder_set_north (OxJobBuilder *builder, double north_deg);
void ox_job_builder_set_patches (OxJobBuilder *builder, const OxPatches *patches);
void ox_job_builder_set_calendar (OxJobBuilder *builder, const OxCalendar *calendar);
void ox_job_builder_set_costs (OxJobBuilder *builder, const OxCosts *costs);
void ox_job_builder_set_outfit (OxJobBuilder *builder, const OxOutfit *outfit);
void ox_job_builder_set_record (OxJobBuilder *builder, const OxRecord *record);
void ox_job_builder_set_scope (OxJobBuilder *builder, const OxScope *scope);
void ox_job_builder_set_setup (OxJobBuilder *builder, const OxSheetSetup *setup);
void ox_job_builder_set_extra (OxJobBuilder *builder, const char *extra, const char *version_minor_note);
/* put: replaces the item with the same id at its place, else appends; takes a reference of its own */
void ox_job_builder_put_room (OxJobBuilder *builder, const OxRoom *room);
void ox_job_builder_put_obstacle (OxJobBuilder *builder, const OxObstacle *obstacle);
void ox_job_builder_put_excluded (OxJobBuilder *builder, const OxExcluded *excluded);
void ox_job_builder_put_doorway (OxJobBuilder *builder, const OxDoorway *doorway);
void ox_job_builder_put_joint (OxJobBuilder *builder, const OxJoint *joint);
void ox_job_builder_put_station (OxJobBuilder *builder, const OxStation *station);
void ox_job_builder_put_condition (OxJobBuilder *builder, const OxCondition *condition);
void ox_job_builder_put_traced (OxJobBuilder *builder, const OxTracedPlan *traced);
gboolean ox_job_builder_remove (OxJobBuilder *builder, const char *id); /* any kind; FALSE when there is none */
OxJob *ox_job_builder_end (OxJobBuilder *builder) G_GNUC_WARN_UNUSED_RESULT;

typedef enum
{
  OX_ITEM_NONE, OX_ITEM_ROOM, OX_ITEM_OBSTACLE, OX_ITEM_EXCLUDED, OX_ITEM_DOORWAY, OX_ITEM_JOINT, OX_ITEM_STATION,
  OX_ITEM_CONDITION, OX_ITEM_TRACED
} OxItemKind;

/* ox_job_find: kind and place of the item with this id; @index: (out) (optional) in the array of that kind */
OxItemKind ox_job_find (const OxJob *job, const char *id, guint *index);
const OxRoom *ox_job_find_room (const OxJob *job, const char *id);             /* (nullable) */
const OxObstacle *ox_job_find_obstacle (const OxJob *job, const char *id);     /* (nullable) */

/* ox_job_new_id: an id that no item has: @prefix and the least free number; (transfer full) */
char *ox_job_new_id (const OxJob *job, const char *prefix) G_GNUC_WARN_UNUSED_RESULT;

OxBox ox_job_box (const OxJob *job); /* of all rooms and obstacles; empty box when there are none */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxJob, ox_job_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxTexts, ox_texts_free)
G_END_DECLS
