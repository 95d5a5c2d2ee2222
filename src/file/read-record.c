/* Oxturn: file/read-record - what is done, from its element.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/read-record.h"
#include <glib/gi18n-lib.h>
#include <math.h>
#include "file/job-known.h"
#include "file/job-words.h"
#include "geometry/wkt.h"

/* The record in the making. Texts and rings are owned by @texts and @outlines, and borrowed by the others. */
typedef struct
{
  const OxReader *reader;
  GArray *days, *strips, *edges;
  GHashTable *places; /* strips by place, to find one that stands twice */
  GPtrArray *texts;
  GPtrArray *outlines; /* of each edge area a GPtrArray of OxRing */
  gsize *corners;      /* of all edge areas so far */
} Draft;

static char *
own (const Draft *draft, char *text)
{
  if (text)
    g_ptr_array_add (draft->texts, text);
  return text;
}

static gboolean
read_day (const Draft *draft, const xmlNode *node)
{
  static const OxRange start = { "meter-start", 0, FALSE, OX_METER_MOST, FALSE, OX_METER_UNREAD };
  static const OxRange end = { "meter-end", 0, FALSE, OX_METER_MOST, FALSE, OX_METER_UNREAD };
  const OxReader *reader = draft->reader;
  OxRecordDay day = { .date = own (draft, ox_read_date (reader, node, "date", NULL)) };
  day.notes = day.date ? own (draft, ox_read_text (reader, node, "notes", "")) : NULL;
  if (!day.notes || !ox_read_number (reader, node, &start, &day.meter_start_h)
      || !ox_read_number (reader, node, &end, &day.meter_end_h)
      || !ox_read_whole (reader, node, &(OxRange){ "machine", 1, FALSE, OX_MACHINES_MOST, FALSE, 1 }, &day.machine))
    return FALSE;
  if (day.meter_end_h >= 0 && day.meter_end_h < day.meter_start_h)
    return ox_read_fail (reader, node, _ ("meter-end of day %s is %g h; meter-start, %g h, or more is needed"),
                         day.date, day.meter_end_h, day.meter_start_h);
  for (guint i = 0; i < draft->days->len; i++)
    if (g_str_equal (g_array_index (draft->days, OxRecordDay, i).date, day.date)
        && g_array_index (draft->days, OxRecordDay, i).machine == day.machine)
      return ox_read_fail (reader, node, _ ("date “%s” is that of another day of the record already"), day.date);
  g_array_append_val (draft->days, day);
  return TRUE;
}

static gboolean
read_ends (const OxReader *reader, const xmlNode *node, OxDoneStrip *strip)
{
  static const OxRange ranges[] = {
    { "x1", -OX_COORD_MAX, FALSE, OX_COORD_MAX, TRUE, NAN }, { "y1", -OX_COORD_MAX, FALSE, OX_COORD_MAX, TRUE, NAN },
    { "x2", -OX_COORD_MAX, FALSE, OX_COORD_MAX, TRUE, NAN }, { "y2", -OX_COORD_MAX, FALSE, OX_COORD_MAX, TRUE, NAN },
    { "width", 0, TRUE, OX_DONE_WIDTH_MOST, TRUE, NAN },     { "depth-mm", 0, FALSE, OX_TEXTURE_MOST_MM, FALSE, 0 },
  };
  double v[G_N_ELEMENTS (ranges)];
  if (!ox_read_numbers (reader, node, ranges, G_N_ELEMENTS (ranges), v))
    return FALSE;
  strip->a = (OxPoint){ v[0], v[1] };
  strip->b = (OxPoint){ v[2], v[3] };
  strip->width = v[4];
  strip->depth_mm = v[5];
  return ox_point_distance (strip->a, strip->b) >= OX_GRID
         || ox_read_fail (reader, node, _ ("the strip from %g, %g has no length; its two ends must be apart"), v[0],
                          v[1]);
}

static gboolean
read_strip (const Draft *draft, const xmlNode *node)
{
  const OxReader *reader = draft->reader;
  OxDoneStrip *strip = g_new0 (OxDoneStrip, 1);
  g_ptr_array_add (draft->texts, strip); /* freed with the texts, as one block */
  strip->date = own (draft, ox_read_date (reader, node, "date", NULL));
  strip->room = strip->date ? own (draft, ox_read_text (reader, node, "room", "")) : NULL;
  strip->note = strip->room ? own (draft, ox_read_text (reader, node, "note", "")) : NULL;
  if (!strip->note || !ox_read_choice (reader, node, &(OxChoice){ "kind", ox_words_done, 0 }, &strip->crosswise)
      || !ox_read_whole (reader, node, &(OxRange){ "coat", 1, FALSE, 4, FALSE, 1 }, &strip->coat)
      || !ox_read_whole (reader, node, &(OxRange){ "csp", 1, FALSE, OX_CSP_MOST, FALSE, 0 }, &strip->csp)
      || !ox_read_whole (reader, node, &(OxRange){ "kept", 0, FALSE, draft->strips->len, FALSE, 0 }, &strip->kept)
      || !read_ends (reader, node, strip))
    return FALSE;
  if (draft->strips->len == OX_RECORD_STRIPS_MOST)
    return ox_read_fail (reader, node, _ ("the record has more than %d strips"), OX_RECORD_STRIPS_MOST);
  if (!g_hash_table_add (draft->places, strip))
    return ox_read_fail (reader, node, _ ("the strip from %g, %g to %g, %g stands in the record already"), strip->a.x,
                         strip->a.y, strip->b.x, strip->b.y);
  g_array_append_vals (draft->strips, strip, 1);
  return TRUE;
}

/* Adds the ring, with the direction that its place in the polygon asks for. */
static gboolean
take_ring (const OxReader *reader, const xmlNode *node, const OxRing *ring, gboolean hole, GPtrArray *rings)
{
  OxPoint where = { 0, 0 };
  for (guint i = 0; i < ring->n; i++)
    if (fabs (ring->points[i].x) > OX_COORD_MAX || fabs (ring->points[i].y) > OX_COORD_MAX)
      return ox_read_fail (reader, node, _ ("corner %g, %g: coordinates from -10000 to 10000 m are allowed"),
                           ring->points[i].x, ring->points[i].y);
  if (!ox_ring_is_simple (ring, &where))
    return ox_read_fail (reader, node, _ ("an outline of the edge area meets itself at %.3f, %.3f"), where.x, where.y);
  g_autofree OxPoint *points = g_memdup2 (ring->points, ring->n * sizeof (OxPoint));
  gboolean turn = (ox_ring_area (ring) < 0) != hole;
  for (guint i = 0; turn && i < ring->n; i++)
    points[i] = ring->points[ring->n - 1 - i];
  g_ptr_array_add (rings, ox_ring_new (points, ring->n));
  return TRUE;
}

/* Counted before anything is done with them. */
static gboolean
count_corners (const Draft *draft, const xmlNode *node, const GPtrArray *polygons)
{
  for (guint i = 0; i < polygons->len; i++)
    {
      const OxWktPolygon *polygon = polygons->pdata[i];
      for (guint k = 0; k < polygon->n_rings; k++)
        *draft->corners += polygon->rings[k]->n;
    }
  return *draft->corners <= OX_RECORD_CORNERS_MOST
         || ox_read_fail (draft->reader, node, _ ("the edge areas of the record have more than %d corners"),
                          OX_RECORD_CORNERS_MOST);
}

static gboolean
read_rings (const Draft *draft, const xmlNode *node, GPtrArray *rings)
{
  const OxReader *reader = draft->reader;
  g_autoptr (GPtrArray) polygons = NULL;
  g_autoptr (GError) error = NULL;
  xmlChar *text = xmlGetNoNsProp (node, BAD_CAST "wkt"); /* long, so that the limit of other texts does not hold */
  gboolean parsed = text && ox_wkt_parse_polygons ((const char *) text, &polygons, &error);
  xmlFree (text);
  if (!text)
    return ox_read_fail (reader, node, _ ("%s has no %s; one is needed"), node->name, "wkt");
  if (!parsed)
    return ox_read_fail (reader, node, _ ("wkt of %s: %s"), node->name, error->message);
  if (!count_corners (draft, node, polygons))
    return FALSE;
  for (guint i = 0; i < polygons->len; i++)
    {
      const OxWktPolygon *polygon = polygons->pdata[i];
      for (guint k = 0; k < polygon->n_rings; k++)
        if (!take_ring (reader, node, polygon->rings[k], k > 0, rings))
          return FALSE;
    }
  return TRUE;
}

static gboolean
read_edge (const Draft *draft, const xmlNode *node)
{
  const OxReader *reader = draft->reader;
  OxDoneEdge edge = { .date = own (draft, ox_read_date (reader, node, "date", NULL)) };
  edge.room = edge.date ? own (draft, ox_read_text (reader, node, "room", "")) : NULL;
  edge.note = edge.room ? own (draft, ox_read_text (reader, node, "note", "")) : NULL;
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_ring_unref);
  g_ptr_array_add (draft->outlines, rings);
  if (draft->edges->len == OX_RECORD_EDGES_MOST)
    return ox_read_fail (reader, node, _ ("the record has more than %d edge areas"), OX_RECORD_EDGES_MOST);
  if (!edge.note || !read_rings (draft, node, rings))
    return FALSE;
  edge.n_rings = rings->len;
  edge.rings = (OxRing **) rings->pdata;
  g_array_append_val (draft->edges, edge);
  return TRUE;
}

static gboolean
read_children (const Draft *draft, const xmlNode *record)
{
  for (const xmlNode *child = record->children; child; child = child->next)
    {
      if (ox_known_is_ours (child, "day") && draft->days->len == OX_RECORD_DAYS_MOST)
        return ox_read_fail (draft->reader, child, _ ("the record has more than %d days"), OX_RECORD_DAYS_MOST);
      if ((ox_known_is_ours (child, "day") && !read_day (draft, child))
          || (ox_known_is_ours (child, "strip") && !read_strip (draft, child))
          || (ox_known_is_ours (child, "edge") && !read_edge (draft, child)))
        return FALSE;
    }
  return TRUE;
}

gboolean
ox_read_record (const OxReader *reader, const xmlNode *root, OxJobBuilder *builder)
{
  g_autoptr (GArray) days = g_array_new (FALSE, FALSE, sizeof (OxRecordDay));
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (OxDoneStrip));
  g_autoptr (GArray) edges = g_array_new (FALSE, FALSE, sizeof (OxDoneEdge));
  g_autoptr (GHashTable) places = g_hash_table_new (ox_done_strip_hash, ox_done_strip_same_place);
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) outlines = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  gsize corners = 0;
  const Draft draft = { reader, days, strips, edges, places, texts, outlines, &corners };
  for (const xmlNode *child = root->children; child; child = child->next)
    if (ox_known_is_ours (child, "record") && !read_children (&draft, child))
      return FALSE;
  g_autoptr (OxRecord) record
      = ox_record_new (&(OxRecord){ days->len, strips->len, edges->len, (OxRecordDay *) (gpointer) days->data,
                                    (OxDoneStrip *) (gpointer) strips->data, (OxDoneEdge *) (gpointer) edges->data });
  ox_job_builder_set_record (builder, record);
  return TRUE;
}

/* By date, then machine; what is no day of a job will be refused, so that any order of it does. */
static int
compare_days (gconstpointer a, gconstpointer b)
{
  int order = 0;
  for (guint i = 0; order == 0 && i < 2; i++)
    {
      const char *key = i == 0 ? "date" : "machine";
      xmlChar *p = xmlGetNoNsProp (*(const xmlNode *const *) a, BAD_CAST key);
      xmlChar *q = xmlGetNoNsProp (*(const xmlNode *const *) b, BAD_CAST key);
      double m = p ? g_ascii_strtod ((const char *) p, NULL) : 1, n = q ? g_ascii_strtod ((const char *) q, NULL) : 1;
      order = i == 0 ? g_strcmp0 ((const char *) p, (const char *) q) : (m > n) - (m < n);
      xmlFree (p);
      xmlFree (q);
    }
  return order;
}

static void
sort_days (xmlNode *record)
{
  g_autoptr (GPtrArray) days = g_ptr_array_new ();
  for (xmlNode *child = record->children; child; child = child->next)
    if (ox_known_is_ours (child, "day"))
      g_ptr_array_add (days, child);
  g_ptr_array_sort (days, compare_days);
  for (guint i = 0; i < days->len; i++)
    {
      xmlUnlinkNode (days->pdata[i]);
      xmlAddChild (record, days->pdata[i]);
    }
}

void
ox_read_record_sort (xmlNode *root)
{
  for (xmlNode *child = root->children; child; child = child->next)
    if (ox_known_is_ours (child, "record"))
      sort_days (child);
}
