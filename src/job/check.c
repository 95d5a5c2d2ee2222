/* Oxturn: job/check - what is wrong with a job, in words and with the place.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/check.h"
#include "base/shown.h"
#include "base/words.h"
#include "job/check-private.h"
#include "job/job-private.h"
#include "job/text.h"
#include "job/value.h"

#define ROOM_LEAST_AREA 0.01 /* m2 */
#define KEEP_BACK_MOST 100.0 /* m */
#define SPEED_MOST 1000.0          /* m/min */
#define DEPTH_MOST 100.0           /* m, of a doorway */
#define STATION_LENGTH_MOST 1000.0 /* m of hose or cord */
#define EDGE_RATE_MOST 10000.0     /* m2/h */

void
ox_finding_free (OxFinding *finding)
{
  if (!finding)
    return;
  g_free (finding->id);
  g_free (finding->text);
  g_free (finding);
}

void
ox_finding_add (GPtrArray *findings, OxFindingKind kind, const char *id, const OxPoint *at, char *text)
{
  OxFinding *finding = g_new0 (OxFinding, 1);
  finding->kind = kind;
  finding->id = g_strdup (id);
  finding->placed = at != NULL;
  if (at)
    finding->at = *at;
  finding->text = text;
  g_ptr_array_add (findings, finding);
}

static void
error_at (GPtrArray *findings, const char *id, const OxPoint *at, char *text)
{
  ox_finding_add (findings, OX_FINDING_ERROR, id, at, text);
}

void
ox_finding_date (const char *id, const char *date, GPtrArray *findings)
{
  if (!ox_text_is_date (date))
    error_at (
        findings, id, NULL,
        g_strdup_printf (_ ("“%s” is no day; one such as 2026-09-14 is needed, or nothing"), ox_shown (date).text));
}

static gboolean
check_points (const char *id, const OxPoint *points, guint n, GPtrArray *findings)
{
  for (guint i = 0; i < n; i++)
    if (!ox_value_is_place (points[i]))
      {
        error_at (findings, id, NULL,
                  g_strdup_printf (_ ("Corner %u of %s is at %g, %g; coordinates from -10000 to 10000 m are allowed"),
                                   i + 1, id, points[i].x, points[i].y));
        return FALSE;
      }
  return TRUE;
}

/* An outline that every other module may rely on. */
static gboolean
check_outline (const char *id, const OxRing *ring, GPtrArray *findings)
{
  OxPoint where;
  if (ring->n < 3)
    {
      error_at (findings, id, NULL,
                g_strdup_printf (_ ("The outline of %s has %u corners; 3 or more are needed"), id, ring->n));
      return FALSE;
    }
  if (!check_points (id, ring->points, ring->n, findings))
    return FALSE;
  if (ox_ring_is_simple (ring, &where))
    return TRUE;
  error_at (
      findings, id, &where,
      g_strdup_printf (_ ("The outline of %s meets itself at %.3f, %.3f; sides may not cross or touch one another"), id,
                       where.x, where.y));
  return FALSE;
}

static gboolean
check_area (const char *id, const OxRing *ring, GPtrArray *findings)
{
  double area = fabs (ox_ring_area (ring));
  /* The last bit of a sum is no floor: 0.1 m x 0.1 m is not over 0.01 m2. */
  if (area > ROOM_LEAST_AREA + 1e-9)
    return TRUE;
  error_at (findings, id, &ring->points[0],
            g_strdup_printf (_ ("The area of %s is %.4f m²; more than 0.01 m² is needed"), id, area));
  return FALSE;
}

static void
check_keep_back (const char *id, double keep_back, const OxPoint *at, GPtrArray *findings)
{
  if (!ox_value_is_within (keep_back, 0, KEEP_BACK_MOST))
    error_at (findings, id, at,
              g_strdup_printf (_ ("The keep-back of a drop of %s is %g m; 0 to 100 m is allowed"), id, keep_back));
}

static gboolean
check_room (const OxRoom *room, GPtrArray *findings)
{
  gboolean sound = check_outline (room->id, room->ring, findings) && check_area (room->id, room->ring, findings);
  for (guint i = 0; i < room->ring->n; i++)
    if (room->sides[i].kind == OX_SIDE_DROP)
      check_keep_back (room->id, room->sides[i].keep_back, &room->ring->points[i], findings);
  const OxDirection *direction = &room->direction;
  if (direction->kind == OX_DIRECTION_SIDE && direction->side >= room->ring->n)
    error_at (findings, room->id, NULL,
              g_strdup_printf (_ ("The strips of %s are to run along side %u; it has sides 1 to %u"), room->id,
                               direction->side + 1, room->ring->n));
  if (direction->kind == OX_DIRECTION_ANGLE && !ox_value_is_within (direction->angle_deg, -360, 360))
    error_at (findings, room->id, NULL,
              g_strdup_printf (_ ("The strips of %s are to run at %g degrees; -360 to 360 is allowed"), room->id,
                               direction->angle_deg));
  return sound;
}

static void
check_size (const char *id, const char *what, double size, OxPoint at, GPtrArray *findings)
{
  if (!ox_value_is_within (size, OX_GRID, OX_COORD_MAX))
    error_at (findings, id, &at,
              /* TRANSLATORS: "The width of O3 is 0 m; ..." */
              g_strdup_printf (_ ("The %s of %s is %g m; more than 0 and at most 10000 m is allowed"), what, id, size));
}

static void
check_obstacle (const OxObstacle *obstacle, GPtrArray *findings)
{
  const OxShape *shape = &obstacle->shape;
  const char *id = obstacle->id;
  if (shape->kind == OX_SHAPE_POLYGON)
    check_outline (id, shape->ring, findings);
  else if (check_points (id, &shape->centre, 1, findings))
    {
      if (shape->kind == OX_SHAPE_CIRCLE)
        check_size (id, _ ("radius"), shape->radius, shape->centre, findings);
      else
        {
          check_size (id, _ ("width"), shape->width, shape->centre, findings);
          check_size (id, _ ("depth"), shape->depth, shape->centre, findings);
          if (!ox_value_is_within (shape->angle_deg, -360, 360))
            error_at (
                findings, id, &shape->centre,
                g_strdup_printf (_ ("The angle of %s is %g degrees; -360 to 360 is allowed"), id, shape->angle_deg));
        }
    }
  check_keep_back (id, obstacle->keep_back, NULL, findings);
}

static void
check_doorway (const OxDoorway *doorway, GPtrArray *findings)
{
  const OxPoint ends[] = { doorway->a, doorway->b };
  if (!check_points (doorway->id, ends, 2, findings))
    return;
  if (ox_point_distance (doorway->a, doorway->b) < OX_GRID)
    error_at (findings, doorway->id, &doorway->a,
              g_strdup_printf (_ ("Doorway %s has no width; its two ends must be apart"), doorway->id));
  if (!ox_value_is_within (doorway->depth, 0, DEPTH_MOST))
    error_at (
        findings, doorway->id, &doorway->a,
        g_strdup_printf (_ ("The depth of doorway %s is %g m; 0 to 100 m is allowed"), doorway->id, doorway->depth));
}

static void
check_joint (const OxJoint *joint, GPtrArray *findings)
{
  if (joint->n < 2)
    error_at (findings, joint->id, NULL,
              g_strdup_printf (_ ("Joint %s has %u points; 2 or more are needed"), joint->id, joint->n));
  check_points (joint->id, joint->points, joint->n, findings);
}

static void
check_station (const OxStation *station, GPtrArray *findings)
{
  check_points (station->id, &station->at, 1, findings);
  if (!ox_value_is_within (station->length, 0, STATION_LENGTH_MOST))
    error_at (
        findings, station->id, NULL,
        g_strdup_printf (_ ("The length at station %s is %g m; 0 to 1000 m is allowed"), station->id, station->length));
}

static void
check_coats (const char *id, guint coats, guint least, GPtrArray *findings)
{
  if (coats < least || coats > OX_COATS_MOST)
    error_at (findings, id, NULL,
              g_strdup_printf (_ ("%s has %u coats; %u to %d are allowed"), id, coats, least, OX_COATS_MOST));
}

static void
check_condition (const OxCondition *condition, GPtrArray *findings)
{
  if (check_outline (condition->id, condition->ring, findings))
    check_area (condition->id, condition->ring, findings);
  check_coats (condition->id, condition->coats, 0, findings);
  if (!ox_value_is_within (condition->speed_m_per_min, 0, SPEED_MOST))
    error_at (findings, condition->id, NULL,
              g_strdup_printf (_ ("The walking speed in %s is %g m/min; 0 to 1000 m/min is allowed"), condition->id,
                               condition->speed_m_per_min));
}

static void
check_traced (const OxTracedPlan *traced, GPtrArray *findings)
{
  const char *id = traced->id;
  if (!check_points (id, &traced->middle, 1, findings))
    return;
  check_size (id, _ ("width"), traced->width, traced->middle, findings);
  check_size (id, _ ("depth"), traced->depth, traced->middle, findings);
  if (!ox_value_is_within (traced->angle_deg, -360, 360))
    error_at (findings, id, &traced->middle,
              g_strdup_printf (_ ("The angle of %s is %g degrees; -360 to 360 is allowed"), id, traced->angle_deg));
  if (!ox_value_is_within (traced->strength, OX_TRACED_MIN_STRENGTH, 1))
    error_at (findings, id, &traced->middle,
              g_strdup_printf (_ ("The strength of %s is %g %%; 5 to 100 %% is allowed"), id, traced->strength * 100));
  if (!ox_value_is_within (traced->page, 1, OX_TRACED_MAX_PAGE))
    error_at (findings, id, &traced->middle,
              g_strdup_printf (_ ("%s shows page %u; 1 to %d is allowed"), id, traced->page, OX_TRACED_MAX_PAGE));
}

/* What a job file can hold. */
static void
check_traced_bytes (const OxJob *job, GPtrArray *findings)
{
  gsize bytes = 0;
  for (guint i = 0; i < job->n_traced; i++)
    {
      check_traced (job->traced[i], findings);
      bytes += g_bytes_get_size (job->traced[i]->data);
      if (g_bytes_get_size (job->traced[i]->data) == 0)
        error_at (findings, job->traced[i]->id, NULL,
                  g_strdup_printf (_ ("The traced plan %s is an empty file"), job->traced[i]->id));
    }
  if (bytes > OX_TRACED_MAX_BYTES)
    error_at (findings, job->traced[job->n_traced - 1]->id, NULL,
              g_strdup_printf (_ ("The traced plans of this job take %.1f MB; %d MB are allowed. Scan in grey or at "
                                  "fewer dots, or leave another traced plan out"),
                               (double) bytes / (1024 * 1024), OX_TRACED_MAX_BYTES / (1024 * 1024)));
}

static void
check_ids (const OxJob *job, GPtrArray *findings)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    for (guint i = 0; i < ox_job_count (job, f); i++)
      {
        const char *id = ox_item_id (ox_job_items (job, f)[i]);
        if (!ox_text_is_id (id))
          error_at (findings, id, NULL,
                    g_strdup_printf (
                        _ ("“%s” is no id; letters, digits, “-” and “_” are allowed, a letter first, 64 at most"), id));
        else if (!g_hash_table_add (seen, (gpointer) id))
          error_at (findings, id, NULL,
                    g_strdup_printf (_ ("Two items have the id %s; each needs one of its own"), id));
      }
}

static void
check_figures (const OxJob *job, GPtrArray *findings)
{
  char *complaint = ox_machine_check (job->machine);
  if (complaint)
    error_at (findings, "", NULL, complaint);
  double rate = job->rates.edge_m2_per_hour;
  if (!(rate > 0 && rate <= EDGE_RATE_MOST))
    error_at (
        findings, "", NULL,
        g_strdup_printf (_ ("The hand rate of edge work is %g m²/h; more than 0 and at most 10000 is allowed"), rate));
  if (!ox_value_is_within (job->rates.edge_m_per_hour, 0, EDGE_RATE_MOST))
    error_at (findings, "", NULL,
              g_strdup_printf (_ ("The hand rate of edge work by length is %g m/h; 0 to 10000 is allowed"),
                               job->rates.edge_m_per_hour));
  if (!ox_value_is_within (job->north_deg, -360, 360))
    error_at (findings, "", NULL,
              g_strdup_printf (_ ("North is at %g degrees; -360 to 360 is allowed"), job->north_deg));
}

static void
check_items (const OxJob *job, gboolean *sound, GPtrArray *findings)
{
  for (guint i = 0; i < job->n_rooms; i++)
    {
      sound[i] = check_room (job->rooms[i], findings);
      check_coats (job->rooms[i]->id, job->rooms[i]->coats, 1, findings);
      if (!ox_value_is_within (job->rooms[i]->coat_turn_deg, -360, 360))
        error_at (findings, job->rooms[i]->id, NULL,
                  g_strdup_printf (_ ("The coats of %s are turned by %g degrees; -360 to 360 is allowed"),
                                   job->rooms[i]->id, job->rooms[i]->coat_turn_deg));
    }
  for (guint i = 0; i < job->n_obstacles; i++)
    check_obstacle (job->obstacles[i], findings);
  for (guint i = 0; i < job->n_excluded; i++)
    check_outline (job->excluded[i]->id, job->excluded[i]->ring, findings);
  for (guint i = 0; i < job->n_doorways; i++)
    check_doorway (job->doorways[i], findings);
  for (guint i = 0; i < job->n_joints; i++)
    check_joint (job->joints[i], findings);
  for (guint i = 0; i < job->n_stations; i++)
    check_station (job->stations[i], findings);
  for (guint i = 0; i < job->n_conditions; i++)
    check_condition (job->conditions[i], findings);
  check_traced_bytes (job, findings);
}

GPtrArray *
ox_job_check (const OxJob *job)
{
  GPtrArray *findings = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_finding_free);
  g_autofree gboolean *sound = g_new0 (gboolean, job->n_rooms + 1);
  check_figures (job, findings);
  ox_check_terms (job, findings);
  ox_check_record (job, findings);
  ox_check_scope (job, findings);
  check_ids (job, findings);
  check_items (job, sound, findings);
  ox_check_overlaps (job, sound, findings);
  if (findings->len == 0)
    ox_check_notices (job, findings);
  return findings;
}
