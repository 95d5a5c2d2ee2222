/* Oxturn: job/builder - gathers items and freezes them into a job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/job.h"
#include "job/classes.h"
#include "job/job-private.h"
#include "job/machine-fields.h"
#include "job/sign-off.h"
#include "job/value.h"

typedef struct
{
  GPtrArray *items;   /* owned references, in order */
  GHashTable *places; /* id (borrowed from the item) -> index + 1 */
} Shelf;

struct _OxJobBuilder
{
  const OxJob *base; /* (nullable) */
  OxTexts *texts;
  OxMachine *machine;
  OxRates rates;
  OxUnits units;
  double north_deg;
  OxPatches *patches;
  OxCalendar *calendar;
  OxCosts *costs;
  OxOutfit *outfit;
  OxRecord *record;
  OxScope *scope;
  OxSheetSetup *setup;
  char *extra;
  char *version_minor_note;
  Shelf shelves[OX_ITEM_FAMILIES];
};

static void
shelf_put (Shelf *shelf, const OxItemFamily *family, gconstpointer item)
{
  gpointer kept = family->ref (item);
  const char *id = ox_item_id (kept);
  guint place = GPOINTER_TO_UINT (g_hash_table_lookup (shelf->places, id));
  if (place > 0)
    {
      /* The key is borrowed from the item that goes, so it goes first. */
      g_hash_table_remove (shelf->places, id);
      family->unref (shelf->items->pdata[place - 1]);
      shelf->items->pdata[place - 1] = kept;
    }
  else
    {
      g_ptr_array_add (shelf->items, kept);
      place = shelf->items->len;
    }
  g_hash_table_insert (shelf->places, (gpointer) id, GUINT_TO_POINTER (place));
}

static gboolean
shelf_remove (Shelf *shelf, const char *id)
{
  guint place = GPOINTER_TO_UINT (g_hash_table_lookup (shelf->places, id));
  if (place == 0)
    return FALSE;
  g_hash_table_remove_all (shelf->places);
  g_ptr_array_remove_index (shelf->items, place - 1);
  for (guint i = 0; i < shelf->items->len; i++)
    g_hash_table_insert (shelf->places, (gpointer) ox_item_id (shelf->items->pdata[i]), GUINT_TO_POINTER (i + 1));
  return TRUE;
}

static void
take_base (OxJobBuilder *builder, const OxJob *base)
{
  builder->base = ox_job_ref (base);
  builder->texts = ox_texts_copy (base->texts);
  builder->machine = ox_machine_copy (base->machine);
  builder->rates = base->rates;
  builder->units = base->units;
  builder->north_deg = base->north_deg;
  builder->patches = ox_patches_ref (base->patches);
  builder->calendar = ox_calendar_ref (base->calendar);
  builder->costs = ox_costs_ref (base->costs);
  builder->outfit = ox_outfit_ref (base->outfit);
  builder->record = ox_record_ref (base->record);
  builder->scope = ox_scope_ref (base->scope);
  builder->setup = ox_sheet_setup_ref (base->setup);
  builder->extra = g_strdup (base->extra);
  builder->version_minor_note = g_strdup (base->version_minor_note);
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    for (guint i = 0; i < ox_job_count (base, f); i++)
      shelf_put (&builder->shelves[f], &ox_item_families[f], ox_job_items (base, f)[i]);
}

OxJobBuilder *
ox_job_builder_new (const OxJob *base)
{
  OxJobBuilder *builder = g_new0 (OxJobBuilder, 1);
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    builder->shelves[f] = (Shelf){ g_ptr_array_new_with_free_func (ox_item_families[f].unref),
                                   g_hash_table_new (g_str_hash, g_str_equal) };
  if (base)
    {
      take_base (builder, base);
      return builder;
    }
  builder->texts = ox_texts_copy (&(OxTexts){ .title = NULL });
  builder->machine = ox_machine_copy (ox_classes_get (0));
  builder->rates.edge_m2_per_hour = OX_HAND_RATE_DEFAULT;
  builder->units = OX_UNITS_METRES;
  builder->north_deg = 90;
  builder->patches = ox_patches_new (&(OxPatches){ .n = 0 });
  builder->calendar = ox_calendar_default ();
  builder->costs = ox_costs_default ();
  builder->outfit = ox_outfit_default ();
  builder->record = ox_record_new (&(OxRecord){ .n_days = 0 });
  builder->scope = ox_scope_default ();
  builder->setup = ox_sheet_setup_new (&(OxSheetSetup){ .language = NULL });
  return builder;
}

void
ox_job_builder_set_texts (OxJobBuilder *builder, const OxTexts *texts)
{
  OxTexts *copy = ox_texts_copy (texts);
  ox_texts_free (builder->texts);
  builder->texts = copy;
}

void
ox_job_builder_set_machine (OxJobBuilder *builder, const OxMachine *machine)
{
  OxMachine *copy = ox_machine_copy (machine);
  guint n;
  const OxMachineField *fields = ox_machine_fields (&n);
  for (guint i = 0; i < n; i++)
    *ox_machine_field_at (copy, &fields[i]) = ox_value_snap (ox_machine_field_value (copy, &fields[i]));
  for (guint i = 0; i < copy->n_wear; i++)
    {
      copy->wear[i].interval_h = ox_value_snap (copy->wear[i].interval_h);
      copy->wear[i].run_h = ox_value_snap (copy->wear[i].run_h);
    }
  ox_machine_free (builder->machine);
  builder->machine = copy;
}

void
ox_job_builder_set_rates (OxJobBuilder *builder, OxRates rates)
{
  builder->rates = (OxRates){ ox_value_snap (rates.edge_m2_per_hour), ox_value_snap (rates.edge_m_per_hour) };
}

void
ox_job_builder_set_units (OxJobBuilder *builder, OxUnits units)
{
  builder->units = units;
}

void
ox_job_builder_set_north (OxJobBuilder *builder, double north_deg)
{
  builder->north_deg = ox_value_snap (north_deg);
}

void
ox_job_builder_set_patches (OxJobBuilder *builder, const OxPatches *patches)
{
  const OxPatches *old = builder->patches;
  builder->patches = ox_patches_ref (patches);
  ox_patches_unref (old);
}

void
ox_job_builder_set_calendar (OxJobBuilder *builder, const OxCalendar *calendar)
{
  const OxCalendar *old = builder->calendar;
  builder->calendar = ox_calendar_ref (calendar);
  ox_calendar_unref (old);
}

void
ox_job_builder_set_costs (OxJobBuilder *builder, const OxCosts *costs)
{
  const OxCosts *old = builder->costs;
  builder->costs = ox_costs_ref (costs);
  ox_costs_unref (old);
}

void
ox_job_builder_set_outfit (OxJobBuilder *builder, const OxOutfit *outfit)
{
  const OxOutfit *old = builder->outfit;
  builder->outfit = ox_outfit_ref (outfit);
  ox_outfit_unref (old);
}

void
ox_job_builder_set_record (OxJobBuilder *builder, const OxRecord *record)
{
  const OxRecord *old = builder->record;
  builder->record = ox_record_ref (record);
  ox_record_unref (old);
}

void
ox_job_builder_set_scope (OxJobBuilder *builder, const OxScope *scope)
{
  const OxScope *old = builder->scope;
  builder->scope = ox_scope_ref (scope);
  ox_scope_unref (old);
}

void
ox_job_builder_set_setup (OxJobBuilder *builder, const OxSheetSetup *setup)
{
  const OxSheetSetup *old = builder->setup;
  builder->setup = ox_sheet_setup_ref (setup);
  ox_sheet_setup_unref (old);
}

void
ox_job_builder_set_extra (OxJobBuilder *builder, const char *extra, const char *version_minor_note)
{
  g_free (builder->extra);
  g_free (builder->version_minor_note);
  builder->extra = g_strdup (extra);
  builder->version_minor_note = g_strdup (version_minor_note);
}

static void
put (OxJobBuilder *builder, OxItemKind kind, gconstpointer item)
{
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    if (ox_item_families[f].kind == kind)
      shelf_put (&builder->shelves[f], &ox_item_families[f], item);
}

void
ox_job_builder_put_room (OxJobBuilder *builder, const OxRoom *room)
{
  put (builder, OX_ITEM_ROOM, room);
}

void
ox_job_builder_put_obstacle (OxJobBuilder *builder, const OxObstacle *obstacle)
{
  put (builder, OX_ITEM_OBSTACLE, obstacle);
}

void
ox_job_builder_put_excluded (OxJobBuilder *builder, const OxExcluded *excluded)
{
  put (builder, OX_ITEM_EXCLUDED, excluded);
}

void
ox_job_builder_put_doorway (OxJobBuilder *builder, const OxDoorway *doorway)
{
  put (builder, OX_ITEM_DOORWAY, doorway);
}

void
ox_job_builder_put_joint (OxJobBuilder *builder, const OxJoint *joint)
{
  put (builder, OX_ITEM_JOINT, joint);
}

void
ox_job_builder_put_station (OxJobBuilder *builder, const OxStation *station)
{
  put (builder, OX_ITEM_STATION, station);
}

void
ox_job_builder_put_condition (OxJobBuilder *builder, const OxCondition *condition)
{
  put (builder, OX_ITEM_CONDITION, condition);
}

void
ox_job_builder_put_traced (OxJobBuilder *builder, const OxTracedPlan *traced)
{
  put (builder, OX_ITEM_TRACED, traced);
}

gboolean
ox_job_builder_remove (OxJobBuilder *builder, const char *id)
{
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    if (shelf_remove (&builder->shelves[f], id))
      return TRUE;
  return FALSE;
}

static void
freeze_shelf (OxJob *job, guint f, Shelf *shelf)
{
  guint n = shelf->items->len;
  gpointer *items = g_new0 (gpointer, n + 1);
  for (guint i = 0; i < n; i++)
    items[i] = ox_item_families[f].ref (shelf->items->pdata[i]);
  *(gpointer **) (gpointer) ((char *) job + ox_item_families[f].items) = items;
  *(guint *) (gpointer) ((char *) job + ox_item_families[f].count) = n;
  g_hash_table_unref (shelf->places);
  g_ptr_array_unref (shelf->items);
}

OxJob *
ox_job_builder_end (OxJobBuilder *builder)
{
  OxJob *job = g_atomic_rc_box_new0 (OxJob);
  job->texts = builder->texts;
  job->machine = builder->machine;
  job->rates = builder->rates;
  job->units = builder->units;
  job->north_deg = builder->north_deg;
  job->patches = builder->patches;
  job->calendar = builder->calendar;
  job->costs = builder->costs;
  job->outfit = builder->outfit;
  job->record = builder->record;
  job->scope = builder->scope;
  job->setup = builder->setup;
  job->extra = builder->extra;
  job->version_minor_note = builder->version_minor_note;
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    freeze_shelf (job, f, &builder->shelves[f]);
  if (builder->base)
    {
      ox_sign_off_keep (builder->base, job);
      ox_job_unref (builder->base);
    }
  g_free (builder);
  return job;
}
