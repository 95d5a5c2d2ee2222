/* Oxturn: job/same - whether two jobs come to what a client signs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/same.h"
#include "job/job-private.h"
#include "job/machine-fields.h"

static gboolean
same_points (const OxPoint *a, const OxPoint *b, guint n)
{
  for (guint i = 0; i < n; i++)
    if (a[i].x != b[i].x || a[i].y != b[i].y)
      return FALSE;
  return TRUE;
}

static gboolean
same_ring (const OxRing *a, const OxRing *b)
{
  return a == b || (a->n == b->n && same_points (a->points, b->points, a->n));
}

static gboolean
same_sides (const OxRoom *a, const OxRoom *b)
{
  for (guint i = 0; i < a->ring->n; i++)
    if (a->sides[i].kind != b->sides[i].kind || a->sides[i].keep_back != b->sides[i].keep_back)
      return FALSE;
  return TRUE;
}

static gboolean
same_room (const OxRoom *a, const OxRoom *b)
{
  return g_str_equal (a->name, b->name) && g_str_equal (a->profile, b->profile) && same_ring (a->ring, b->ring)
         && same_sides (a, b) && a->direction.kind == b->direction.kind && a->direction.side == b->direction.side
         && a->direction.angle_deg == b->direction.angle_deg && a->coats == b->coats
         && a->coat_turn_deg == b->coat_turn_deg;
}

static gboolean
same_shape (const OxShape *a, const OxShape *b)
{
  return a->kind == b->kind && a->width == b->width && a->depth == b->depth && a->angle_deg == b->angle_deg
         && a->radius == b->radius && same_points (&a->centre, &b->centre, 1) && same_ring (a->ring, b->ring);
}

static gboolean
same_obstacle (const OxObstacle *a, const OxObstacle *b)
{
  return a->kind == b->kind && g_str_equal (a->name, b->name) && a->keep_back == b->keep_back
         && same_shape (&a->shape, &b->shape);
}

static gboolean
same_excluded (const OxExcluded *a, const OxExcluded *b)
{
  return g_str_equal (a->name, b->name) && same_ring (a->ring, b->ring);
}

static gboolean
same_doorway (const OxDoorway *a, const OxDoorway *b)
{
  return g_str_equal (a->name, b->name) && same_points (&a->a, &b->a, 1) && same_points (&a->b, &b->b, 1)
         && a->depth == b->depth;
}

static gboolean
same_joint (const OxJoint *a, const OxJoint *b)
{
  return g_str_equal (a->name, b->name) && a->n == b->n && same_points (a->points, b->points, a->n);
}

static gboolean
same_condition (const OxCondition *a, const OxCondition *b)
{
  return g_str_equal (a->name, b->name) && same_ring (a->ring, b->ring) && a->speed_m_per_min == b->speed_m_per_min
         && a->coats == b->coats && g_str_equal (a->profile, b->profile);
}

static gboolean
same_station (const OxStation *a, const OxStation *b)
{
  return a->kind == b->kind && g_str_equal (a->name, b->name) && a->length == b->length
         && same_points (&a->at, &b->at, 1);
}

static gboolean
same_item (OxItemKind kind, gconstpointer a, gconstpointer b)
{
  if (a == b)
    return TRUE;
  if (!g_str_equal (ox_item_id (a), ox_item_id (b)))
    return FALSE;
  switch (kind)
    {
    case OX_ITEM_ROOM:
      return same_room (a, b);
    case OX_ITEM_OBSTACLE:
      return same_obstacle (a, b);
    case OX_ITEM_EXCLUDED:
      return same_excluded (a, b);
    case OX_ITEM_DOORWAY:
      return same_doorway (a, b);
    case OX_ITEM_JOINT:
      return same_joint (a, b);
    case OX_ITEM_CONDITION:
      return same_condition (a, b);
    case OX_ITEM_STATION:
      return same_station (a, b);
    case OX_ITEM_TRACED:
    case OX_ITEM_NONE:
      break;
    }
  return TRUE;
}

static gboolean
same_items (const OxJob *a, const OxJob *b, guint family)
{
  OxItemKind kind = ox_item_families[family].kind;
  if (kind == OX_ITEM_TRACED)
    return TRUE;
  if (ox_job_count (a, family) != ox_job_count (b, family))
    return FALSE;
  for (guint i = 0; i < ox_job_count (a, family); i++)
    if (!same_item (kind, ox_job_items (a, family)[i], ox_job_items (b, family)[i]))
      return FALSE;
  return TRUE;
}

static gboolean
same_machine (const OxMachine *a, const OxMachine *b)
{
  guint n;
  const OxMachineField *fields = ox_machine_fields (&n);
  for (guint i = 0; i < n; i++)
    if (ox_machine_field_value (a, &fields[i]) != ox_machine_field_value (b, &fields[i]))
      return FALSE;
  return g_str_equal (a->class_id, b->class_id) && g_str_equal (a->name, b->name) && a->phases == b->phases;
}

static gboolean
same_texts (const OxTexts *a, const OxTexts *b)
{
  return g_str_equal (a->title, b->title) && g_str_equal (a->client, b->client) && g_str_equal (a->site, b->site)
         && g_str_equal (a->author, b->author) && g_str_equal (a->company, b->company)
         && g_str_equal (a->number, b->number) && g_str_equal (a->revision, b->revision)
         && g_str_equal (a->date, b->date) && g_str_equal (a->notes, b->notes);
}

gboolean
ox_job_same_drawing (const OxJob *a, const OxJob *b)
{
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    if (!same_items (a, b, f))
      return FALSE;
  return same_texts (a->texts, b->texts) && same_machine (a->machine, b->machine)
         && a->rates.edge_m2_per_hour == b->rates.edge_m2_per_hour
         && a->rates.edge_m_per_hour == b->rates.edge_m_per_hour && a->north_deg == b->north_deg && a->units == b->units
         && ox_patches_equal (a->patches, b->patches) && ox_calendar_equal (a->calendar, b->calendar)
         && ox_costs_equal (a->costs, b->costs) && ox_outfit_equal (a->outfit, b->outfit)
         && ox_scope_same_content (a->scope, b->scope);
}
