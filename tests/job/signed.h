/* Oxturn: tests/job/signed - a job whose scope drawing is signed, and each kind of edit of it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/edit.h"
#include "job/place.h"
#include "job-making.h"
G_BEGIN_DECLS

/* make_job() as drawing OX-7 revision A of 2026-08-01, for construction, with a condition area; signed by P. Hollow;
 * (transfer full) */
static inline OxJob *
make_signed_job (void)
{
  g_autoptr (OxJob) bare = make_job ();
  g_autoptr (OxRing) ring = ox_test_ring ("POLYGON ((1 1, 3 1, 3 3, 1 3, 1 1))");
  g_autoptr (OxCondition) soft = ox_condition_new (&(OxCondition){ .id = (char *) "C1", .ring = ring });
  g_autoptr (OxJob) job = ox_job_with_condition (bare, soft, NULL);
  g_autoptr (OxJob) titled = ox_job_with_texts (job, &(OxTexts){ .number = (char *) "OX-7",
                                                                .revision = (char *) "A",
                                                                .date = (char *) "2026-08-01",
                                                                .author = (char *) "O. Marsh",
                                                                .status = (char *) "for construction" },
                                                NULL);
  return ox_job_signed (titled, "P. Hollow", "2026-08-05", NULL);
}

typedef OxJob *(*SignedEdit) (const OxJob *job);

typedef struct
{
  const char *name;
  SignedEdit edit;
} SignedEditRow;

static inline OxJob *
edit_room (const OxJob *job)
{
  OxRoom draft = *job->rooms[0];
  draft.profile = (char *) "CSP 5";
  g_autoptr (OxRoom) room = ox_room_new (&draft);
  return ox_job_with_room (job, room, NULL);
}

static inline OxJob *
edit_new_obstacle (const OxJob *job)
{
  g_autoptr (OxObstacle) made = make_rectangle ("O9", OX_OBSTACLE_MASKED, (OxBox){ 2, 2, 3, 3 });
  return ox_job_with_obstacle (job, made, NULL);
}

static inline OxJob *
edit_excluded (const OxJob *job)
{
  g_autoptr (OxExcluded) made = make_excluded ("X1", "POLYGON ((14 4, 16 4, 16 7, 14 7, 14 4))");
  return ox_job_with_excluded (job, made, NULL);
}

static inline OxJob *
edit_doorway (const OxJob *job)
{
  g_autoptr (OxDoorway) made = make_doorway ("D1", (OxPoint){ 12.1, 2 }, (OxPoint){ 12.1, 3.1 }, 0.2);
  return ox_job_with_doorway (job, made, NULL);
}

static inline OxJob *
edit_joint (const OxJob *job)
{
  g_autoptr (OxJoint) made = make_joint ("J1", (OxPoint){ 0, 5 }, (OxPoint){ 12, 4 });
  return ox_job_with_joint (job, made, NULL);
}

static inline OxJob *
edit_condition (const OxJob *job)
{
  OxCondition draft = *job->conditions[0];
  draft.coats = 2;
  g_autoptr (OxCondition) made = ox_condition_new (&draft);
  return ox_job_with_condition (job, made, NULL);
}

static inline OxJob *
edit_machine (const OxJob *job)
{
  g_autoptr (OxMachine) machine = ox_machine_copy (job->machine);
  machine->travel_speed = 5;
  return ox_job_with_machine (job, machine, NULL);
}

static inline OxJob *
edit_rates (const OxJob *job)
{
  return ox_job_with_rates (job, (OxRates){ .edge_m2_per_hour = 5 }, NULL);
}

static inline OxJob *
edit_side (const OxJob *job)
{
  return ox_job_with_side (job, "R1", 2, (OxSide){ OX_SIDE_OPEN, 0 }, NULL);
}

static inline OxJob *
edit_direction (const OxJob *job)
{
  return ox_job_with_direction (job, "R1", (OxDirection){ .kind = OX_DIRECTION_ANGLE, .angle_deg = 30 }, NULL);
}

static inline OxJob *
edit_corner (const OxJob *job)
{
  return ox_job_with_corner (job, "R1", 0, (OxPoint){ 0.5, 0 }, NULL);
}

static inline OxJob *
edit_moved (const OxJob *job)
{
  return ox_job_moved (job, (const char *const[]){ "O1", NULL }, (OxPoint){ 0, 0.0001 }, NULL);
}

static inline OxJob *
edit_without (const OxJob *job)
{
  return ox_job_without (job, (const char *const[]){ "O2", NULL }, NULL);
}

static inline OxJob *
edit_turned (const OxJob *job)
{
  return ox_edit_placed (job, (const char *const[]){ "X1", NULL }, &(OxPlacement){ .about = { 15, 5 }, .turn_deg = 30 },
                         NULL);
}

static inline OxJob *
edit_copied (const OxJob *job)
{
  OxPlacement place = { .by = { 1, 1 } };
  return ox_edit_copied (job, &(OxCopies){ job, (const char *const[]){ "O1", NULL }, &place, 1 }, NULL, NULL);
}

static inline OxJob *
edit_texts (const OxJob *job)
{
  OxTexts draft = *job->texts;
  draft.notes = (char *) "The gate stays open.";
  return ox_job_with_texts (job, &draft, NULL);
}

static inline OxJob *
edit_number (const OxJob *job)
{
  OxTexts draft = *job->texts;
  draft.number = (char *) "OX-8";
  return ox_job_with_texts (job, &draft, NULL);
}

static inline OxJob *
edit_north (const OxJob *job)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_north (builder, 45);
  return ox_job_builder_end (builder);
}

static inline OxJob *
edit_lines (const OxJob *job)
{
  OxScope draft = *job->scope;
  draft.n_lines[OX_SCOPE_EXCLUDED]--;
  g_autoptr (OxScope) scope = ox_scope_new (&draft);
  return ox_job_with_scope (job, scope, NULL);
}

static inline OxJob *
edit_revisions (const OxJob *job)
{
  OxScope draft = *job->scope;
  OxRevision row = { .mark = (char *) "A", .text = (char *) "Something else" };
  draft.n_revisions = 1;
  draft.revisions = &row;
  g_autoptr (OxScope) scope = ox_scope_new (&draft);
  return ox_job_with_scope (job, scope, NULL);
}

/* The sign-off taken away, and given for another drawing in one step with a change. */
static inline OxJob *
edit_unsigned (const OxJob *job)
{
  OxScope draft = *job->scope;
  draft.sign_off = (OxSignOff){ .name = NULL };
  g_autoptr (OxScope) scope = ox_scope_new (&draft);
  return ox_job_with_scope (job, scope, NULL);
}

static inline OxJob *
edit_signed_again (const OxJob *job)
{
  OxScope draft = *job->scope;
  draft.n_lines[OX_SCOPE_INCLUDED] = 0;
  draft.sign_off.name = (char *) "Somebody";
  g_autoptr (OxScope) scope = ox_scope_new (&draft);
  return ox_job_with_scope (job, scope, NULL);
}

static inline OxJob *
edit_units (const OxJob *job)
{
  return ox_job_with_units (job, OX_UNITS_FEET);
}

static inline OxJob *
edit_setup (const OxJob *job)
{
  g_autoptr (OxSheetSetup) setup = ox_sheet_setup_new (&(OxSheetSetup){ .paper = (char *) "A1" });
  return ox_job_with_setup (job, setup, NULL);
}

static inline OxJob *
edit_station (const OxJob *job)
{
  g_autoptr (OxStation) made = make_station ("S1", (OxPoint){ 2, 2 });
  return ox_job_with_station (job, made, NULL);
}

static inline OxJob *
edit_calendar (const OxJob *job)
{
  OxCalendar draft = *job->calendar;
  draft.shift_h = 9;
  g_autoptr (OxCalendar) calendar = ox_calendar_new (&draft);
  return ox_job_with_calendar (job, calendar, NULL);
}

static inline OxJob *
edit_costs (const OxJob *job)
{
  g_autoptr (OxCosts) costs = ox_costs_new (&(OxCosts){ .contingency = 0.1 });
  return ox_job_with_costs (job, costs, NULL);
}

static inline OxJob *
edit_patches (const OxJob *job)
{
  OxPatch patch = { .id = (char *) "P1", .speed_m_per_min = 6 };
  g_autoptr (OxPatches) patches = ox_patches_new (&(OxPatches){ 1, &patch });
  return ox_job_with_patches (job, patches, NULL);
}

static inline OxJob *
edit_coats (const OxJob *job)
{
  OxRoom draft = *job->rooms[0];
  draft.coats = 2;
  g_autoptr (OxRoom) room = ox_room_new (&draft);
  return ox_job_with_room (job, room, NULL);
}

static inline OxJob *
edit_outfit (const OxJob *job)
{
  g_autoptr (OxOutfit) outfit = ox_outfit_new (&(OxOutfit){ .shot = (char *) "S390", .circuit_a = 32 });
  return ox_job_with_outfit (job, outfit, NULL);
}

/* Each class of what stands on the scope drawing or the quote, or changes them or what the crew follows. */
static const SignedEditRow signed_edits[] = {
  { "room", edit_room },
  { "coats", edit_coats },
  { "obstacle", edit_new_obstacle },
  { "excluded", edit_excluded },
  { "doorway", edit_doorway },
  { "joint", edit_joint },
  { "condition", edit_condition },
  { "station", edit_station },
  { "machine", edit_machine },
  { "rates", edit_rates },
  { "side", edit_side },
  { "direction", edit_direction },
  { "corner", edit_corner },
  { "moved", edit_moved },
  { "without", edit_without },
  { "turned", edit_turned },
  { "copied", edit_copied },
  { "texts", edit_texts },
  { "number", edit_number },
  { "north", edit_north },
  { "units", edit_units },
  { "calendar", edit_calendar },
  { "costs", edit_costs },
  { "patches", edit_patches },
  { "outfit", edit_outfit },
  { "lines", edit_lines },
  { "revisions", edit_revisions },
  { "unsigned", edit_unsigned },
  { "signed again", edit_signed_again },
};

static inline OxJob *
edit_wear (const OxJob *job)
{
  g_autoptr (OxMachine) machine = ox_machine_copy (job->machine);
  g_assert_cmpuint (machine->n_wear, >, 0);
  machine->wear[0].run_h += 1;
  return ox_job_with_machine (job, machine, NULL);
}

static inline OxJob *
edit_status (const OxJob *job)
{
  OxTexts draft = *job->texts;
  draft.status = (char *) "as done";
  return ox_job_with_texts (job, &draft, NULL);
}

/* The same room anew. */
static inline OxJob *
edit_nothing (const OxJob *job)
{
  g_autoptr (OxRoom) room = ox_room_new (job->rooms[0]);
  return ox_job_with_room (job, room, NULL);
}

/* A day's work is no change of what was signed. */
static inline OxJob *
edit_record (const OxJob *job)
{
  OxRecordDay day = { (char *) "2026-08-10", 120, 126.5, (char *) "Dry.", 1 };
  g_autoptr (OxRecord) record = ox_record_with_day (job->record, &day);
  return ox_job_with_record (job, record, NULL);
}

static const SignedEditRow harmless_edits[] = {
  { "setup", edit_setup },   { "record", edit_record },   { "wear", edit_wear },
  { "status", edit_status }, { "nothing", edit_nothing },
};

G_END_DECLS
