/* Oxturn: job/edit - edits: job in, job out.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/edit.h"
#include "base/words.h"
#include "job/check-private.h"
#include "job/edit-private.h"
#include "job/place.h"

/* What an error tells beside its sentence. */
typedef struct
{
  gboolean placed;
  OxPoint at;
} OxJobErrorPrivate;

static void
ox_job_error_private_init (OxJobErrorPrivate *place)
{
  place->placed = FALSE;
}

static void
ox_job_error_private_copy (const OxJobErrorPrivate *from, OxJobErrorPrivate *to)
{
  *to = *from;
}

static void
ox_job_error_private_clear (OxJobErrorPrivate *place)
{
  (void) place;
}

G_DEFINE_EXTENDED_ERROR (OxJobError, ox_job_error)

gboolean
ox_job_error_place (const GError *error, OxPoint *at)
{
  const OxJobErrorPrivate *place = error->domain == OX_JOB_ERROR ? ox_job_error_get_private (error) : NULL;
  if (!place || !place->placed)
    return FALSE;
  *at = place->at;
  return TRUE;
}

/* ids at fault in the old job: an edit of something that is broken already must be allowed, or nobody could mend it */
static GHashTable *
ids_at_fault (const OxJob *job)
{
  GHashTable *ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  for (guint i = 0; i < findings->len; i++)
    {
      const OxFinding *finding = findings->pdata[i];
      if (finding->kind == OX_FINDING_ERROR)
        g_hash_table_add (ids, g_strdup (finding->id));
    }
  return ids;
}

static OxJob *
refuse (const OxFinding *finding, GError **error)
{
  GError *refusal = g_error_new_literal (OX_JOB_ERROR, OX_JOB_ERROR_REFUSED, finding->text);
  *ox_job_error_get_private (refusal) = (OxJobErrorPrivate){ finding->placed, finding->at };
  g_propagate_error (error, refusal);
  return NULL;
}

/* Takes @builder; the old job is looked at only when something is wrong with the new one. */
OxJob *
ox_edit_finish (const OxJob *old, OxJobBuilder *builder, GError **error)
{
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  g_autoptr (GHashTable) known = NULL;
  for (guint i = 0; i < findings->len; i++)
    {
      const OxFinding *finding = findings->pdata[i];
      if (finding->kind != OX_FINDING_ERROR)
        break;
      if (!known)
        known = ids_at_fault (old);
      if (!g_hash_table_contains (known, finding->id))
        return refuse (finding, error);
    }
  g_ptr_array_set_size (findings, 0);
  ox_check_left_rooms (old, job, findings);
  return findings->len > 0 ? refuse (findings->pdata[0], error) : g_steal_pointer (&job);
}

gpointer
ox_edit_no_item (const char *id, GError **error)
{
  g_set_error (error, OX_JOB_ERROR, OX_JOB_ERROR_NO_ITEM, _ ("There is no item %s that this could be done to"), id);
  return NULL;
}

OxJob *
ox_job_with_room (const OxJob *job, const OxRoom *room, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_room (builder, room);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_obstacle (const OxJob *job, const OxObstacle *obstacle, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_obstacle (builder, obstacle);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_excluded (const OxJob *job, const OxExcluded *excluded, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_excluded (builder, excluded);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_doorway (const OxJob *job, const OxDoorway *doorway, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_doorway (builder, doorway);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_joint (const OxJob *job, const OxJoint *joint, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_joint (builder, joint);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_station (const OxJob *job, const OxStation *station, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_station (builder, station);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_condition (const OxJob *job, const OxCondition *condition, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_condition (builder, condition);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_traced (const OxJob *job, const OxTracedPlan *traced, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_traced (builder, traced);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_patches (const OxJob *job, const OxPatches *patches, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_patches (builder, patches);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_calendar (const OxJob *job, const OxCalendar *calendar, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_calendar (builder, calendar);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_outfit (const OxJob *job, const OxOutfit *outfit, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_outfit (builder, outfit);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_costs (const OxJob *job, const OxCosts *costs, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_costs (builder, costs);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_record (const OxJob *job, const OxRecord *record, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_record (builder, record);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_scope (const OxJob *job, const OxScope *scope, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_scope (builder, scope);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_setup (const OxJob *job, const OxSheetSetup *setup, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_setup (builder, setup);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_signed (const OxJob *job, const char *name, const char *date, GError **error)
{
  g_return_val_if_fail (*name, NULL);
  OxScope draft = *job->scope;
  draft.sign_off = (OxSignOff){ job->texts->number, job->texts->revision, (char *) name, (char *) date };
  g_autoptr (OxScope) scope = ox_scope_new (&draft);
  return ox_job_with_scope (job, scope, error);
}

OxJob *
ox_job_with_machine (const OxJob *job, const OxMachine *machine, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_machine (builder, machine);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_rates (const OxJob *job, OxRates rates, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_rates (builder, rates);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_texts (const OxJob *job, const OxTexts *texts, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_texts (builder, texts);
  return ox_edit_finish (job, builder, error);
}

OxJob *
ox_job_with_units (const OxJob *job, OxUnits units)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_units (builder, units);
  return ox_job_builder_end (builder);
}

OxJob *
ox_job_with_side (const OxJob *job, const char *room_id, guint side, OxSide value, GError **error)
{
  const OxRoom *room = ox_job_find_room (job, room_id);
  if (!room)
    return ox_edit_no_item (room_id, error);
  g_return_val_if_fail (side < room->ring->n, NULL);
  g_autofree OxSide *sides = g_memdup2 (room->sides, room->ring->n * sizeof *sides);
  sides[side] = value;
  OxRoom changed = *room;
  changed.sides = sides;
  g_autoptr (OxRoom) made = ox_room_new (&changed);
  return ox_job_with_room (job, made, error);
}

OxJob *
ox_job_with_direction (const OxJob *job, const char *room_id, OxDirection direction, GError **error)
{
  const OxRoom *room = ox_job_find_room (job, room_id);
  if (!room)
    return ox_edit_no_item (room_id, error);
  OxRoom changed = *room;
  changed.direction = direction;
  g_autoptr (OxRoom) made = ox_room_new (&changed);
  return ox_job_with_room (job, made, error);
}

/* NULL with @error when the corner would fall on its neighbour */
static OxRing *
ring_with_corner (const OxRing *ring, guint corner, OxPoint at, const char *id, GError **error)
{
  g_return_val_if_fail (corner < ring->n, NULL);
  g_autofree OxPoint *points = g_memdup2 (ring->points, ring->n * sizeof *points);
  points[corner] = at;
  g_autoptr (OxRing) made = ox_ring_new (points, ring->n);
  if (made->n == ring->n)
    return g_steal_pointer (&made);
  g_set_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED, _ ("Two corners of %s would lie at the same place"), id);
  return NULL;
}

static OxJob *
with_room_corner (const OxJob *job, const OxRoom *room, guint corner, OxPoint at, GError **error)
{
  OxRoom changed = *room;
  g_autoptr (OxRing) ring = ring_with_corner (room->ring, corner, at, room->id, error);
  if (!ring)
    return NULL;
  changed.ring = ring;
  g_autoptr (OxRoom) made = ox_room_new (&changed);
  return ox_job_with_room (job, made, error);
}

static OxJob *
with_excluded_corner (const OxJob *job, const OxExcluded *excluded, guint corner, OxPoint at, GError **error)
{
  OxExcluded changed = *excluded;
  g_autoptr (OxRing) ring = ring_with_corner (excluded->ring, corner, at, excluded->id, error);
  if (!ring)
    return NULL;
  changed.ring = ring;
  g_autoptr (OxExcluded) made = ox_excluded_new (&changed);
  return ox_job_with_excluded (job, made, error);
}

static OxJob *
with_obstacle_corner (const OxJob *job, const OxObstacle *obstacle, guint corner, OxPoint at, GError **error)
{
  OxObstacle changed = *obstacle;
  if (obstacle->shape.kind != OX_SHAPE_POLYGON)
    {
      g_set_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED,
                   _ ("%s has no corners of its own; only those of a polygon can be moved one by one"), obstacle->id);
      return NULL;
    }
  g_autoptr (OxRing) ring = ring_with_corner (obstacle->shape.ring, corner, at, obstacle->id, error);
  if (!ring)
    return NULL;
  changed.shape.ring = ring;
  g_autoptr (OxObstacle) made = ox_obstacle_new (&changed);
  return ox_job_with_obstacle (job, made, error);
}

static OxJob *
with_condition_corner (const OxJob *job, const OxCondition *condition, guint corner, OxPoint at, GError **error)
{
  OxCondition changed = *condition;
  g_autoptr (OxRing) ring = ring_with_corner (condition->ring, corner, at, condition->id, error);
  if (!ring)
    return NULL;
  changed.ring = ring;
  g_autoptr (OxCondition) made = ox_condition_new (&changed);
  return ox_job_with_condition (job, made, error);
}

OxJob *
ox_job_with_corner (const OxJob *job, const char *id, guint corner, OxPoint at, GError **error)
{
  guint i;
  OxItemKind kind = ox_job_find (job, id, &i);
  if (kind == OX_ITEM_ROOM)
    return with_room_corner (job, job->rooms[i], corner, at, error);
  if (kind == OX_ITEM_OBSTACLE)
    return with_obstacle_corner (job, job->obstacles[i], corner, at, error);
  if (kind == OX_ITEM_EXCLUDED)
    return with_excluded_corner (job, job->excluded[i], corner, at, error);
  if (kind == OX_ITEM_CONDITION)
    return with_condition_corner (job, job->conditions[i], corner, at, error);
  return ox_edit_no_item (id, error);
}

OxJob *
ox_job_moved (const OxJob *job, const char *const *ids, OxPoint by, GError **error)
{
  return ox_edit_placed (job, ids, &(OxPlacement){ .by = by }, error);
}

OxJob *
ox_job_without (const OxJob *job, const char *const *ids, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  for (guint i = 0; ids[i]; i++)
    if (!ox_job_builder_remove (builder, ids[i]))
      {
        ox_job_unref (ox_job_builder_end (builder));
        return ox_edit_no_item (ids[i], error);
      }
  return ox_edit_finish (job, builder, error);
}
