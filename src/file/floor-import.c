/* Oxturn: file/floor-import - a job from outlines that come from elsewhere.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/floor-import.h"
#include <glib/gi18n-lib.h>
#include <string.h>
#include "file/job-xml.h"
#include "file/load.h"
#include "geometry/wkt.h"
#include "job/check.h"

static void
put_polygon (OxJobBuilder *builder, const OxWktPolygon *polygon, guint number, guint *n_obstacles)
{
  g_autofree char *room_id = g_strdup_printf ("R%u", number);
  g_autofree char *room_name = g_strdup_printf (_ ("Room %u"), number);
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = room_id, .name = room_name, .ring = polygon->rings[0] });
  ox_job_builder_put_room (builder, room);
  for (guint i = 1; i < polygon->n_rings; i++)
    {
      g_autofree char *id = g_strdup_printf ("O%u", ++*n_obstacles);
      g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&(OxObstacle){
          .id = id,
          .kind = OX_OBSTACLE_SOLID,
          .shape = { .kind = OX_SHAPE_POLYGON, .ring = polygon->rings[i] },
      });
      ox_job_builder_put_obstacle (builder, obstacle);
    }
}

/* FALSE with the first broken rule */
static gboolean
is_sound (const char *name, const OxJob *job, GError **error)
{
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  const OxFinding *first = findings->len > 0 ? findings->pdata[0] : NULL;
  if (!first || first->kind != OX_FINDING_ERROR)
    return TRUE;
  g_set_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID, "%s: %s", name, first->text);
  return FALSE;
}

gboolean
ox_floor_from_wkt (const char *name, const char *text, const OxMachine *machine, OxJob **out, GError **error)
{
  g_autoptr (GPtrArray) polygons = NULL;
  if (!ox_wkt_parse_polygons (text, &polygons, error))
    {
      g_prefix_error (error, "%s: ", name);
      return FALSE;
    }
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  guint n_rooms = 0;
  guint n_obstacles = 0;
  for (guint i = 0; i < polygons->len; i++)
    {
      const OxWktPolygon *polygon = polygons->pdata[i];
      if (polygon->n_rings > 0)
        put_polygon (builder, polygon, ++n_rooms, &n_obstacles);
    }
  ox_job_builder_set_machine (builder, machine);
  g_autofree char *title = g_path_get_basename (name);
  ox_job_builder_set_texts (builder, &(OxTexts){ .title = title });
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  if (n_rooms == 0)
    {
      g_set_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID,
                   _ ("%s: there is no outline in it; one polygon is needed"), name);
      return FALSE;
    }
  if (!is_sound (name, job, error))
    return FALSE;
  *out = g_steal_pointer (&job);
  return TRUE;
}

gboolean
ox_floor_from_wkt_file (const char *path, const OxMachine *machine, OxJob **out, GError **error)
{
  g_autoptr (GByteArray) bytes = ox_load_file (path, OX_JOB_FILE_MAX_BYTES, error);
  if (!bytes)
    return FALSE;
  g_autofree char *name = g_filename_display_name (path);
  const char *text = (const char *) bytes->data;
  if (strlen (text) == bytes->len && g_utf8_validate (text, -1, NULL))
    return ox_floor_from_wkt (name, text, machine, out, error);
  g_set_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID, _ ("%s is no text; outlines as well-known text are needed"),
               name);
  return FALSE;
}
