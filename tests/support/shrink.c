/* Oxturn: tests/support/shrink - a job made small that still shows what a large one showed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shrink.h"
#include "geometry/wkt.h"
#include "job/check.h"
#include <math.h>

typedef struct
{
  OxJob *job;
  OxTestShows shows;
  gpointer data;
  guint tries;
} Shrink;

static gboolean
is_sound (const OxJob *job)
{
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  return findings->len == 0 || ((const OxFinding *) findings->pdata[0])->kind != OX_FINDING_ERROR;
}

/* Ends @builder; what comes of it takes the place of the job where that still shows. */
static gboolean
take (Shrink *self, OxJobBuilder *builder)
{
  g_autoptr (OxJob) smaller = ox_job_builder_end (builder);
  if (self->tries == 0 || smaller->n_rooms == 0 || !is_sound (smaller))
    return FALSE;
  self->tries--;
  if (!self->shows (smaller, self->data))
    return FALSE;
  ox_job_unref (self->job);
  self->job = g_steal_pointer (&smaller);
  return TRUE;
}

/* The ids of all items, what can be left out most easily first. */
static GPtrArray *
list_ids (const OxJob *job)
{
  GPtrArray *ids = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < job->n_conditions; i++)
    g_ptr_array_add (ids, g_strdup (job->conditions[i]->id));
  for (guint i = 0; i < job->n_obstacles; i++)
    g_ptr_array_add (ids, g_strdup (job->obstacles[i]->id));
  for (guint i = 0; i < job->n_excluded; i++)
    g_ptr_array_add (ids, g_strdup (job->excluded[i]->id));
  for (guint i = 0; i < job->n_doorways; i++)
    g_ptr_array_add (ids, g_strdup (job->doorways[i]->id));
  for (guint i = 0; i < job->n_rooms; i++)
    g_ptr_array_add (ids, g_strdup (job->rooms[i]->id));
  return ids;
}

static void
leave_items_out (Shrink *self)
{
  g_autoptr (GPtrArray) ids = list_ids (self->job);
  for (guint i = 0; i < ids->len; i++)
    {
      OxJobBuilder *builder = ox_job_builder_new (self->job);
      (void) ox_job_builder_remove (builder, ids->pdata[i]);
      (void) take (self, builder);
    }
}

/* Room @i with these corners; sides beyond them go. */
static gboolean
take_room (Shrink *self, guint i, const OxPoint *points, guint n, guint coats)
{
  g_autoptr (OxRing) ring = ox_ring_new (points, n);
  OxRoom fields = *self->job->rooms[i];
  fields.ring = ring;
  fields.coats = coats;
  if (ring->n > self->job->rooms[i]->ring->n)
    fields.sides = NULL;
  if (fields.direction.kind == OX_DIRECTION_SIDE)
    fields.direction.kind = OX_DIRECTION_AUTO;
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (self->job);
  ox_job_builder_put_room (builder, room);
  return take (self, builder);
}

static void
leave_corners_out (Shrink *self, guint i)
{
  for (guint k = 0; k < self->job->rooms[i]->ring->n;)
    {
      const OxRing *ring = self->job->rooms[i]->ring;
      g_autofree OxPoint *points = g_new (OxPoint, ring->n);
      guint n = 0;
      for (guint c = 0; c < ring->n; c++)
        if (c != k)
          points[n++] = ring->points[c];
      if (n < 3 || !take_room (self, i, points, n, self->job->rooms[i]->coats))
        k++;
    }
}

/* To the metre, or at least the decimetre, or the centimetre. */
static void
round_corners (Shrink *self, guint i)
{
  for (guint k = 0; k < self->job->rooms[i]->ring->n; k++)
    for (double step = 1; step <= 100; step *= 10)
      {
        const OxRing *ring = self->job->rooms[i]->ring; /* goes with the job that a smaller one takes the place of */
        g_autofree OxPoint *points = g_memdup2 (ring->points, ring->n * sizeof (OxPoint));
        points[k] = (OxPoint){ round (points[k].x * step) / step, round (points[k].y * step) / step };
        if (take_room (self, i, points, ring->n, self->job->rooms[i]->coats))
          break;
      }
}

OxJob *
ox_test_shrink (const OxJob *job, OxTestShows shows, gpointer data, guint tries)
{
  Shrink self = { ox_job_ref (job), shows, data, tries };
  leave_items_out (&self);
  for (guint i = 0; i < self.job->n_rooms; i++)
    {
      const OxRing *ring = self.job->rooms[i]->ring;
      if (self.job->rooms[i]->coats > 1)
        (void) take_room (&self, i, ring->points, ring->n, 1);
      leave_corners_out (&self, i);
      round_corners (&self, i);
    }
  return self.job;
}

static void
add_outline (GString *text, const char *id, OxRing *ring)
{
  g_string_append_printf (text, "%s ", id);
  ox_wkt_append_rings (text, &ring, 1, 4);
  g_string_append_c (text, '\n');
}

char *
ox_test_outlines (const OxJob *job)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < job->n_rooms; i++)
    add_outline (text, job->rooms[i]->id, job->rooms[i]->ring);
  for (guint i = 0; i < job->n_obstacles; i++)
    add_outline (text, job->obstacles[i]->id, job->obstacles[i]->shape.ring);
  for (guint i = 0; i < job->n_excluded; i++)
    add_outline (text, job->excluded[i]->id, job->excluded[i]->ring);
  for (guint i = 0; i < job->n_conditions; i++)
    add_outline (text, job->conditions[i]->id, job->conditions[i]->ring);
  for (guint i = 0; i < job->n_doorways; i++)
    {
      g_autoptr (OxRing) ring = ox_doorway_ring (job->doorways[i]);
      add_outline (text, job->doorways[i]->id, ring);
    }
  return g_string_free (text, FALSE);
}
