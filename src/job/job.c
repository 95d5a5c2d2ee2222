/* Oxturn: job/job - one job: the floor, the machine, the rates, the texts of the sheets.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/job.h"
#include "job/job-private.h"
#include "job/text.h"

#define FAMILY(KIND, Type, name, array)                                                                                \
  {                                                                                                                    \
    .kind = KIND, .items = G_STRUCT_OFFSET (OxJob, array), .count = G_STRUCT_OFFSET (OxJob, n_##array),                \
    .ref = (gpointer (*) (gconstpointer)) ox_##name##_ref, .unref = (GDestroyNotify) ox_##name##_unref                 \
  }

/* The id is the first member of each kind of item, which lets one table serve them all. */
G_STATIC_ASSERT (G_STRUCT_OFFSET (OxRoom, id) == 0 && G_STRUCT_OFFSET (OxObstacle, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (OxExcluded, id) == 0 && G_STRUCT_OFFSET (OxDoorway, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (OxJoint, id) == 0 && G_STRUCT_OFFSET (OxStation, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (OxCondition, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (OxTracedPlan, id) == 0);

const OxItemFamily ox_item_families[OX_ITEM_FAMILIES] = {
  FAMILY (OX_ITEM_ROOM, OxRoom, room, rooms),
  FAMILY (OX_ITEM_OBSTACLE, OxObstacle, obstacle, obstacles),
  FAMILY (OX_ITEM_EXCLUDED, OxExcluded, excluded, excluded),
  FAMILY (OX_ITEM_DOORWAY, OxDoorway, doorway, doorways),
  FAMILY (OX_ITEM_JOINT, OxJoint, joint, joints),
  FAMILY (OX_ITEM_STATION, OxStation, station, stations),
  FAMILY (OX_ITEM_CONDITION, OxCondition, condition, conditions),
  FAMILY (OX_ITEM_TRACED, OxTracedPlan, traced_plan, traced),
};

OxTexts *
ox_texts_copy (const OxTexts *texts)
{
  OxTexts *copy = g_new (OxTexts, 1);
  *copy = (OxTexts){
    .title = ox_text_clean (texts->title, FALSE),
    .client = ox_text_clean (texts->client, FALSE),
    .site = ox_text_clean (texts->site, FALSE),
    .author = ox_text_clean (texts->author, FALSE),
    .company = ox_text_clean (texts->company, FALSE),
    .number = ox_text_clean (texts->number, FALSE),
    .revision = ox_text_clean (texts->revision, FALSE),
    .date = ox_text_clean (texts->date, FALSE),
    .status = ox_text_clean (texts->status, FALSE),
    .notes = ox_text_clean (texts->notes, TRUE),
  };
  return copy;
}

void
ox_texts_free (OxTexts *texts)
{
  if (!texts)
    return;
  g_free (texts->title);
  g_free (texts->client);
  g_free (texts->site);
  g_free (texts->author);
  g_free (texts->company);
  g_free (texts->number);
  g_free (texts->revision);
  g_free (texts->date);
  g_free (texts->status);
  g_free (texts->notes);
  g_free (texts);
}

OxJob *
ox_job_ref (const OxJob *job)
{
  return g_atomic_rc_box_acquire ((gpointer) job);
}

static void
job_clear (gpointer data)
{
  OxJob *job = data;
  ox_texts_free (job->texts);
  ox_machine_free (job->machine);
  ox_patches_unref (job->patches);
  ox_calendar_unref (job->calendar);
  ox_costs_unref (job->costs);
  ox_outfit_unref (job->outfit);
  ox_record_unref (job->record);
  ox_scope_unref (job->scope);
  ox_sheet_setup_unref (job->setup);
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    {
      gpointer *items = ox_job_items (job, f);
      for (guint i = 0; i < ox_job_count (job, f); i++)
        ox_item_families[f].unref (items[i]);
      g_free (items);
    }
  g_free (job->version_minor_note);
  g_free (job->extra);
}

void
ox_job_unref (const OxJob *job)
{
  g_atomic_rc_box_release_full ((gpointer) job, job_clear);
}

OxItemKind
ox_job_find (const OxJob *job, const char *id, guint *index)
{
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    {
      gpointer *items = ox_job_items (job, f);
      for (guint i = 0; i < ox_job_count (job, f); i++)
        if (g_str_equal (ox_item_id (items[i]), id))
          {
            if (index)
              *index = i;
            return ox_item_families[f].kind;
          }
    }
  return OX_ITEM_NONE;
}

const OxRoom *
ox_job_find_room (const OxJob *job, const char *id)
{
  guint i;
  return ox_job_find (job, id, &i) == OX_ITEM_ROOM ? job->rooms[i] : NULL;
}

const OxObstacle *
ox_job_find_obstacle (const OxJob *job, const char *id)
{
  guint i;
  return ox_job_find (job, id, &i) == OX_ITEM_OBSTACLE ? job->obstacles[i] : NULL;
}

/* One walk over the items marks the numbers in use; n items leave one of 1 .. n + 1 free. */
char *
ox_job_new_id (const OxJob *job, const char *prefix)
{
  guint n = 0;
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    n += ox_job_count (job, f);
  g_autofree gboolean *used = g_new0 (gboolean, n + 2);
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    for (guint i = 0; i < ox_job_count (job, f); i++)
      {
        const char *id = ox_item_id (ox_job_items (job, f)[i]);
        guint64 number;
        if (g_str_has_prefix (id, prefix)
            && g_ascii_string_to_unsigned (id + strlen (prefix), 10, 1, n + 1, &number, NULL))
          used[number] = TRUE;
      }
  guint number = 1;
  while (used[number])
    number++;
  return g_strdup_printf ("%s%u", prefix, number);
}

static void
add_ring (OxBox *box, const OxRing *ring)
{
  for (guint i = 0; i < ring->n; i++)
    ox_box_add (box, ring->points[i]);
}

OxBox
ox_job_box (const OxJob *job)
{
  OxBox box = OX_BOX_EMPTY;
  for (guint i = 0; i < job->n_rooms; i++)
    add_ring (&box, job->rooms[i]->ring);
  for (guint i = 0; i < job->n_obstacles; i++)
    add_ring (&box, job->obstacles[i]->shape.ring);
  return box;
}
