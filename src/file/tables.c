/* Oxturn: file/tables - a plan as tables for other programs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/tables.h"
#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include "base/atomic.h"
#include "base/number.h"
#include "file/csv.h"
#include "geometry/wkt.h"

#define STORED 4   /* decimals of what the job holds */
#define COMPUTED 6 /* decimals of what was computed: lengths, areas, minutes, degrees, outlines */

static void
add_region (OxCsv *csv, const OxRegion *region, gboolean multi)
{
  g_autoptr (GString) wkt = g_string_new (NULL);
  ox_wkt_append_region (wkt, region, multi, COMPUTED);
  ox_csv_quoted (csv, wkt->str);
}

static void
add_line (OxCsv *csv, const OxPoint *points, guint n)
{
  g_autoptr (GString) wkt = g_string_new (NULL);
  ox_wkt_append_line (wkt, points, n, STORED);
  ox_csv_quoted (csv, wkt->str);
}

static void
add_floor_head (OxCsv *csv, const char *id, const char *kind, const char *name)
{
  ox_csv_text (csv, id);
  ox_csv_text (csv, kind);
  ox_csv_text (csv, name);
}

/* End of a row of the floor: coats and speed, each empty where it is 0. */
static void
end_floor_row (OxCsv *csv, guint coats, double speed)
{
  if (coats > 0)
    ox_csv_count (csv, coats);
  else
    ox_csv_empty (csv);
  if (speed > 0)
    ox_csv_number (csv, speed, STORED);
  else
    ox_csv_empty (csv);
  ox_csv_row (csv);
}

static void
add_floor_shape (OxCsv *csv, const char *id, const char *kind, const char *name, const OxRing *ring)
{
  g_autoptr (GString) wkt = g_string_new (NULL);
  ox_wkt_append_ring (wkt, ring, STORED);
  add_floor_head (csv, id, kind, name);
  ox_csv_quoted (csv, wkt->str);
}

static void
add_floor_ring (OxCsv *csv, const char *id, const char *kind, const char *name, const OxRing *ring)
{
  add_floor_shape (csv, id, kind, name, ring);
  end_floor_row (csv, 0, 0);
}

static void
add_floor_region (OxCsv *csv, const char *kind, const OxRegion *region)
{
  add_floor_head (csv, kind, kind, "");
  add_region (csv, region, TRUE);
  end_floor_row (csv, 0, 0);
}

static void
add_obstacles (OxCsv *csv, const OxJob *job)
{
  static const char *const kinds[] = { "solid", "pit", "masked" };
  for (guint kind = 0; kind < G_N_ELEMENTS (kinds); kind++)
    for (guint i = 0; i < job->n_obstacles; i++)
      {
        const OxObstacle *obstacle = job->obstacles[i];
        if (obstacle->kind == (OxObstacleKind) kind)
          add_floor_ring (csv, obstacle->id, kinds[kind], obstacle->name, obstacle->shape.ring);
      }
}

char *
ox_table_floor (const OxPlan *plan)
{
  const OxJob *job = plan->job;
  OxCsv csv = ox_csv_start ("id,kind,name,wkt,coats,speed_m_per_min");
  for (guint i = 0; i < job->n_rooms; i++)
    {
      add_floor_shape (&csv, job->rooms[i]->id, "room", job->rooms[i]->name, job->rooms[i]->ring);
      end_floor_row (&csv, job->rooms[i]->coats, 0);
    }
  add_obstacles (&csv, job);
  for (guint i = 0; i < job->n_excluded; i++)
    add_floor_ring (&csv, job->excluded[i]->id, "excluded", job->excluded[i]->name, job->excluded[i]->ring);
  for (guint i = 0; i < job->n_conditions; i++)
    {
      const OxCondition *condition = job->conditions[i];
      add_floor_shape (&csv, condition->id, "condition", condition->name, condition->ring);
      end_floor_row (&csv, condition->coats, condition->speed_m_per_min);
    }
  for (guint i = 0; i < job->n_doorways; i++)
    {
      g_autoptr (OxRing) ring = ox_doorway_ring (job->doorways[i]);
      add_floor_ring (&csv, job->doorways[i]->id, "doorway", job->doorways[i]->name, ring);
    }
  for (guint i = 0; i < job->n_joints; i++)
    {
      add_floor_head (&csv, job->joints[i]->id, "joint", job->joints[i]->name);
      add_line (&csv, job->joints[i]->points, job->joints[i]->n);
      end_floor_row (&csv, 0, 0);
    }
  add_floor_region (&csv, "target", plan->target);
  add_floor_region (&csv, "travel", plan->travel);
  return ox_csv_end (&csv);
}

/* 0 to under 360 as it is written, also for a heading a hair under a full turn */
static double
heading_degrees (double radians)
{
  double degrees = radians * 180 / G_PI;
  degrees = round ((degrees - 360 * floor (degrees / 360)) * 1e6) / 1e6;
  return degrees >= 360 ? 0 : degrees;
}

/* m along the floor to the farthest point, empty where there is no station */
static void
add_way (OxCsv *csv, int station, double way)
{
  if (station >= 0)
    ox_csv_number (csv, way, COMPUTED);
  else
    ox_csv_empty (csv);
}

/* "4.2@8 3@4": metres at metres a minute, from start to stop; empty where one speed holds all along */
static void
add_paces (OxCsv *csv, const OxPlan *plan, const OxStrip *strip)
{
  g_autoptr (GString) text = g_string_new (NULL);
  for (guint i = 0; i < strip->n_paces; i++)
    {
      if (i > 0)
        g_string_append_c (text, ' ');
      ox_number_append (text, plan->paces[strip->pace + i].length, COMPUTED);
      g_string_append_c (text, '@');
      ox_number_append (text, plan->paces[strip->pace + i].speed, COMPUTED);
    }
  ox_csv_text (csv, text->str);
}

/* "out-of-reach hose-wraps": what to mind, empty where there is nothing */
static void
add_cautions (OxCsv *csv, const OxStrip *strip)
{
  g_autoptr (GString) text = g_string_new (strip->out_of_reach ? "out-of-reach " : "");
  if (strip->hose_wraps)
    g_string_append (text, "hose-wraps ");
  if (strip->cord_wraps)
    g_string_append (text, "cord-wraps ");
  g_strchomp (text->str);
  ox_csv_text (csv, text->str);
}

static void
add_strip (OxCsv *csv, const OxPlan *plan, const OxStrip *strip)
{
  OxPoint corners[4];
  ox_strip_corners (strip, plan->job->machine->blast_length, corners);
  g_autoptr (OxRegion) covered = ox_region_new_points (corners, 4);
  ox_csv_count (csv, strip->order);
  ox_csv_count (csv, strip->order);
  ox_csv_text (csv, plan->job->rooms[strip->room]->id);
  ox_csv_count (csv, strip->lane);
  ox_csv_text (csv, ox_strip_kind_name (strip->kind));
  ox_csv_count (csv, strip->coat);
  ox_csv_point (csv, strip->a);
  ox_csv_point (csv, strip->b);
  ox_csv_number (csv, heading_degrees (strip->heading), COMPUTED);
  ox_csv_number (csv, ox_strip_length (strip), COMPUTED);
  ox_csv_number (csv, strip->width, COMPUTED);
  ox_csv_number (csv, strip->speed, COMPUTED);
  ox_csv_number (csv, strip->minutes, COMPUTED);
  ox_csv_text (csv, strip->station >= 0 ? plan->stations[strip->station].id : "");
  add_region (csv, covered, FALSE);
  ox_csv_text (csv, strip->supply >= 0 ? plan->stations[strip->supply].id : "");
  add_way (csv, strip->station, strip->hose_m);
  add_way (csv, strip->supply, strip->cord_m);
  add_cautions (csv, strip);
  add_paces (csv, plan, strip);
  ox_csv_text (csv, strip->done > 0 ? plan->job->record->strips[strip->done - 1].date : "");
  ox_csv_row (csv);
}

char *
ox_table_strips (const OxPlan *plan)
{
  OxCsv csv = ox_csv_start ("order,strip,room,lane,kind,coat,x1,y1,x2,y2,heading_deg,length_m,width_m,"
                            "speed_m_per_min,minutes,station,wkt,supply,hose_m,cord_m,caution,paces,done");
  for (guint i = 0; i < plan->n_strips; i++)
    add_strip (&csv, plan, &plan->strips[i]);
  return ox_csv_end (&csv);
}

char *
ox_table_moves (const OxPlan *plan)
{
  OxCsv csv = ox_csv_start ("order,from_strip,to_strip,kind,minutes,length_m,cx,cy,wkt");
  for (guint i = 0; i < plan->n_moves; i++)
    {
      const OxMove *move = &plan->moves[i];
      ox_csv_count (&csv, i + 1);
      ox_csv_count (&csv, move->from);
      ox_csv_count (&csv, move->to);
      ox_csv_text (&csv, ox_move_kind_name (move->kind));
      ox_csv_number (&csv, move->minutes, COMPUTED);
      ox_csv_number (&csv, move->length, COMPUTED);
      if (move->turns)
        ox_csv_point (&csv, move->turn);
      else
        {
          ox_csv_empty (&csv);
          ox_csv_empty (&csv);
        }
      add_line (&csv, move->path, move->n_path);
      ox_csv_row (&csv);
    }
  return ox_csv_end (&csv);
}

char *
ox_table_zones (const OxPlan *plan)
{
  OxCsv csv = ox_csv_start ("id,room,area_m2,wkt,coat");
  for (guint i = 0; i < plan->n_zones; i++)
    {
      const OxZone *zone = &plan->zones[i];
      ox_csv_text (&csv, zone->id);
      ox_csv_text (&csv, plan->job->rooms[zone->room]->id);
      ox_csv_number (&csv, zone->area, COMPUTED);
      add_region (&csv, zone->region, FALSE);
      ox_csv_count (&csv, zone->coat);
      ox_csv_row (&csv);
    }
  return ox_csv_end (&csv);
}

char *
ox_table_edges (const OxPlan *plan)
{
  OxCsv csv = ox_csv_start ("id,room,cause,area_m2,length_m,wkt,done");
  for (guint i = 0; i < plan->n_edges; i++)
    {
      const OxEdge *edge = &plan->edges[i];
      ox_csv_text (&csv, edge->id);
      ox_csv_text (&csv, plan->job->rooms[edge->room]->id);
      ox_csv_text (&csv, ox_cause_name (edge->cause));
      ox_csv_number (&csv, edge->area, COMPUTED);
      ox_csv_number (&csv, edge->length, COMPUTED);
      add_region (&csv, edge->region, FALSE);
      ox_csv_text (&csv, edge->done > 0 ? plan->job->record->edges[edge->done - 1].date : "");
      ox_csv_row (&csv);
    }
  return ox_csv_end (&csv);
}

static const char *
station_kind (const OxPlanStation *station)
{
  if (station->kind == OX_STATION_COLLECTOR)
    return station->proposed ? "proposed-collector" : "collector";
  return station->proposed ? "proposed-supply" : "supply";
}

char *
ox_table_stations (const OxPlan *plan)
{
  OxCsv csv = ox_csv_start ("id,kind,x,y,length_m,strips,farthest_m");
  for (guint i = 0; i < plan->n_stations; i++)
    {
      const OxPlanStation *station = &plan->stations[i];
      ox_csv_text (&csv, station->id);
      ox_csv_text (&csv, station_kind (station));
      ox_csv_point (&csv, station->at);
      ox_csv_number (&csv, station->length, STORED);
      ox_csv_count (&csv, station->strips);
      add_way (&csv, station->strips > 0 ? 0 : -1, station->farthest_m);
      ox_csv_row (&csv);
    }
  return ox_csv_end (&csv);
}

static gboolean
make_directory (const char *directory, GError **error)
{
  if (g_mkdir_with_parents (directory, 0777) == 0)
    return TRUE;
  int number = errno;
  g_autofree char *shown = g_filename_display_name (directory);
  g_set_error (error, G_FILE_ERROR, g_file_error_from_errno (number), _ ("The folder %s cannot be made: %s"), shown,
               g_strerror (number));
  return FALSE;
}

static gboolean
write_text (const char *directory, const char *name, char *text, GError **error)
{
  g_autofree char *owned = text;
  g_autofree char *path = g_build_filename (directory, name, NULL);
  return ox_atomic_write (path, owned, strlen (owned), error);
}

gboolean
ox_tables_write (const OxPlan *plan, const char *directory, GError **error)
{
  static const struct
  {
    const char *name;
    char *(*make) (const OxPlan *plan);
  } rows[] = {
    { "floor.csv", ox_table_floor },      { "strips.csv", ox_table_strips }, { "moves.csv", ox_table_moves },
    { "zones.csv", ox_table_zones },      { "edge.csv", ox_table_edges },    { "stations.csv", ox_table_stations },
    { "summary.json", ox_table_summary }, { "checks.csv", ox_table_checks },
    { "record.csv", ox_table_record },
  };
  if (!make_directory (directory, error))
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (!write_text (directory, rows[i].name, rows[i].make (plan), error))
      return FALSE;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  return write_text (directory, "quantities.csv", ox_table_quantities (estimate), error)
         && write_text (directory, "shifts.csv", ox_table_shifts (estimate), error)
         && write_text (directory, "days.csv", ox_table_days (estimate), error)
         && write_text (directory, "cost.csv", ox_table_cost (estimate), error);
}
