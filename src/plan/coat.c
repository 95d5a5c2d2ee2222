/* Oxturn: plan/coat - the coats of each room.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/coat.h"

typedef gboolean (*Wanted) (const OxCondition *condition, guint coat);

static gboolean
asks_for (const OxCondition *condition, guint coat)
{
  return condition->coats >= coat;
}

static gboolean
stops_before (const OxCondition *condition, guint coat)
{
  return condition->coats > 0 && condition->coats < coat;
}

static OxRegion *
areas (const OxJob *job, Wanted wanted, guint coat)
{
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_region_unref);
  for (guint i = 0; i < job->n_conditions; i++)
    if (wanted (job->conditions[i], coat))
      g_ptr_array_add (list, ox_region_new_ring (job->conditions[i]->ring));
  return ox_region_union_many ((const OxRegion *const *) list->pdata, list->len);
}

/* Floor of a room that asks for @coat coats or more. */
static OxRegion *
coat_floor (const OxJob *job, const OxRoom *room, const OxRegion *target, guint coat)
{
  g_autoptr (OxRegion) more = areas (job, asks_for, coat);
  if (coat > room->coats)
    return ox_region_intersection (target, more);
  g_autoptr (OxRegion) fewer = areas (job, stops_before, coat);
  g_autoptr (OxRegion) less = ox_region_difference (fewer, more);
  return ox_region_is_empty (less) ? ox_region_ref (target) : ox_region_difference (target, less);
}

static guint
most_asked (const OxJob *job, const OxRoom *room)
{
  guint most = room->coats;
  for (guint i = 0; i < job->n_conditions; i++)
    most = MAX (most, job->conditions[i]->coats);
  return most;
}

OxCoat *
ox_coats_new (const OxJob *job, OxRegion *const *rooms, guint *n)
{
  g_autoptr (GArray) coats = g_array_new (FALSE, FALSE, sizeof (OxCoat));
  for (guint r = 0; r < job->n_rooms; r++)
    for (guint k = 1; k <= most_asked (job, job->rooms[r]); k++)
      {
        OxCoat coat = { r, k, coat_floor (job, job->rooms[r], rooms[r], k) };
        if (k == 1 || !ox_region_is_empty (coat.target))
          g_array_append_val (coats, coat);
        else
          ox_region_unref (coat.target);
      }
  *n = coats->len;
  return (OxCoat *) (void *) g_array_free (g_steal_pointer (&coats), FALSE);
}

void
ox_coats_free (OxCoat *coats, guint n)
{
  for (guint i = 0; i < n; i++)
    ox_region_unref (coats[i].target);
  g_free (coats);
}

guint
ox_coats_most (const OxCoat *coats, guint n)
{
  guint most = 0;
  for (guint i = 0; i < n; i++)
    most = MAX (most, coats[i].coat);
  return most;
}

OxRegion *
ox_coats_floor (const OxCoat *coats, guint n, guint coat)
{
  g_autoptr (GPtrArray) list = g_ptr_array_new ();
  for (guint i = 0; i < n; i++)
    if (coats[i].coat == coat)
      g_ptr_array_add (list, coats[i].target);
  return ox_region_union_many ((const OxRegion *const *) list->pdata, list->len);
}
