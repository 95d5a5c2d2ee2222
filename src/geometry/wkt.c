/* Oxturn: geometry/wkt - well-known text (OGC 06-103r4).
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/wkt.h"
#include "base/number.h"
#include "base/words.h"
#include <string.h>

/* The longest text we take: OX_WKT_MAX_CORNERS at two numbers of full length each. */
#define MAX_BYTES (64 * 1024 * 1024)

/* Longest number, and the greatest: beyond it corners would not keep apart on the grid. */
#define MAX_NUMBER 48
#define MAX_VALUE 1e9

G_DEFINE_QUARK (ox - wkt - error - quark, ox_wkt_error)

typedef struct
{
  const char *text;
  const char *at;
  GPtrArray *polygons; /* OxWktPolygon */
  guint corners;
} Reader;

static void
polygon_free (gpointer data)
{
  OxWktPolygon *polygon = data;
  for (guint i = 0; i < polygon->n_rings; i++)
    ox_ring_unref (polygon->rings[i]);
  g_free (polygon->rings);
  g_free (polygon);
}

/* Line and column are counted here only, where the reading ends, so that no text is gone over twice. */
static gboolean
fail (const Reader *reader, const char *wanted, GError **error)
{
  guint line = 1, column = 1;
  for (const char *s = reader->text; s < reader->at; s++)
    {
      column = *s == '\n' ? 1 : column + 1;
      line += *s == '\n';
    }
  g_set_error (error, OX_WKT_ERROR, OX_WKT_ERROR_SYNTAX, _ ("line %u, column %u: %s"), line, column, wanted);
  return FALSE;
}

static void
skip_blanks (Reader *reader)
{
  reader->at += strspn (reader->at, " \t\r\n");
}

static gboolean
take (Reader *reader, char c)
{
  skip_blanks (reader);
  if (*reader->at != c)
    return FALSE;
  reader->at++;
  return TRUE;
}

static gboolean
take_word (Reader *reader, const char *word)
{
  skip_blanks (reader);
  gsize length = strlen (word);
  if (g_ascii_strncasecmp (reader->at, word, length) != 0 || g_ascii_isalnum (reader->at[length]))
    return FALSE;
  reader->at += length;
  return TRUE;
}

static gboolean
read_number (Reader *reader, double *value, GError **error)
{
  char digits[MAX_NUMBER + 1];
  skip_blanks (reader);
  gsize length = strspn (reader->at, "+-.0123456789eE");
  if (length == 0)
    return fail (reader, _ ("a number was expected here"), error);
  if (length > MAX_NUMBER)
    return fail (reader, _ ("this number has too many digits"), error);
  memcpy (digits, reader->at, length);
  digits[length] = '\0';
  /* "1-2" and "1x" are no numbers either. */
  if (!ox_number_parse (digits, value) || !strchr (" \t\r\n,)(", reader->at[length]))
    return fail (reader, _ ("this is not a number with a decimal point"), error);
  if (fabs (*value) > MAX_VALUE)
    return fail (reader, _ ("this number is too large; coordinates are metres"), error);
  reader->at += length;
  return TRUE;
}

/* ( x y, x y, ... x y ), the last equal to the first. */
static gboolean
read_ring (Reader *reader, OxRing **ring, GError **error)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  if (!take (reader, '('))
    return fail (reader, _ ("“(” was expected here, before the corners of an outline"), error);
  do
    {
      OxPoint p;
      if (!read_number (reader, &p.x, error) || !read_number (reader, &p.y, error))
        return FALSE;
      /* The end of the text, too, is found in this string, at its zero byte. */
      skip_blanks (reader);
      if (!strchr (",)", *reader->at))
        return fail (reader, _ ("“,” or “)” was expected here; a corner has two numbers"), error);
      if (++reader->corners > OX_WKT_MAX_CORNERS)
        {
          g_set_error (error, OX_WKT_ERROR, OX_WKT_ERROR_TOO_LARGE, _ ("more than %d corners"), OX_WKT_MAX_CORNERS);
          return FALSE;
        }
      g_array_append_val (points, p);
    }
  while (take (reader, ','));
  if (*reader->at != ')')
    return fail (reader, _ ("the text ends before this outline does"), error);
  const OxPoint *corners = &g_array_index (points, OxPoint, 0);
  OxPoint first = corners[0], last = corners[points->len - 1];
  if (points->len < 4 || first.x != last.x || first.y != last.y)
    return fail (reader, _ ("an outline has three corners or more and ends with its first corner again"), error);
  reader->at++;
  *ring = ox_ring_new (corners, points->len);
  return TRUE;
}

/* ( ring, ring, ... ) */
static gboolean
read_polygon (Reader *reader, GError **error)
{
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_ring_unref);
  if (!take (reader, '('))
    return fail (reader, _ ("“(” or EMPTY was expected here"), error);
  do
    {
      OxRing *ring = NULL;
      if (!read_ring (reader, &ring, error))
        return FALSE;
      g_ptr_array_add (rings, ring);
    }
  while (take (reader, ','));
  if (!take (reader, ')'))
    return fail (reader, _ ("“,” or “)” was expected here, after an outline"), error);
  OxWktPolygon *polygon = g_new (OxWktPolygon, 1);
  polygon->n_rings = rings->len;
  polygon->rings = (OxRing **) g_ptr_array_steal (rings, NULL);
  g_ptr_array_add (reader->polygons, polygon);
  return TRUE;
}

static gboolean
read_multipolygon (Reader *reader, GError **error)
{
  if (!take (reader, '('))
    return fail (reader, _ ("“(” or EMPTY was expected here"), error);
  do
    if (!read_polygon (reader, error))
      return FALSE;
  while (take (reader, ','));
  if (!take (reader, ')'))
    return fail (reader, _ ("“,” or “)” was expected here, after a polygon"), error);
  return TRUE;
}

static gboolean
read_geometry (Reader *reader, GError **error)
{
  gboolean multi = take_word (reader, "MULTIPOLYGON");
  if (!multi && !take_word (reader, "POLYGON"))
    return fail (reader, _ ("POLYGON or MULTIPOLYGON was expected here"), error);
  if (take_word (reader, "EMPTY"))
    return TRUE;
  if (take_word (reader, "Z") || take_word (reader, "M") || take_word (reader, "ZM"))
    return fail (reader, _ ("coordinates with heights or measures are not taken; export them with x and y only"),
                 error);
  return multi ? read_multipolygon (reader, error) : read_polygon (reader, error);
}

gboolean
ox_wkt_parse_polygons (const char *text, GPtrArray **out, GError **error)
{
  g_return_val_if_fail (text != NULL && out != NULL, FALSE);

  if (strnlen (text, MAX_BYTES + 1) > MAX_BYTES)
    {
      g_set_error (error, OX_WKT_ERROR, OX_WKT_ERROR_TOO_LARGE, _ ("more than %d megabytes of text"),
                   MAX_BYTES / (1024 * 1024));
      return FALSE;
    }
  g_autoptr (GPtrArray) polygons = g_ptr_array_new_with_free_func (polygon_free);
  Reader reader = { text, text, polygons, 0 };
  do
    {
      if (!read_geometry (&reader, error))
        return FALSE;
      skip_blanks (&reader);
    }
  while (*reader.at != '\0');
  *out = g_steal_pointer (&polygons);
  return TRUE;
}

/* --- writing ---------------------------------------------------------------------------------------------------- */

static void
append_point (GString *text, OxPoint p, guint decimals)
{
  ox_number_append (text, p.x, decimals);
  g_string_append_c (text, ' ');
  ox_number_append (text, p.y, decimals);
}

static void
append_points (GString *text, const OxPoint *points, guint n, guint decimals)
{
  g_string_append_c (text, '(');
  for (guint i = 0; i < n; i++)
    {
      if (i > 0)
        g_string_append (text, ", ");
      append_point (text, points[i], decimals);
    }
}

static void
append_closed (GString *text, const OxPoint *points, guint n, guint decimals)
{
  append_points (text, points, n, decimals);
  g_string_append (text, ", ");
  append_point (text, points[0], decimals);
  g_string_append_c (text, ')');
}

void
ox_wkt_append_region (GString *text, const OxRegion *region, gboolean multi, guint decimals)
{
  multi = multi || region->n_parts > 1;
  g_string_append (text, multi ? "MULTIPOLYGON " : "POLYGON ");
  if (region->n_parts == 0)
    {
      g_string_append (text, "EMPTY");
      return;
    }
  if (multi)
    g_string_append_c (text, '(');
  for (guint i = 0; i < region->n_rings; i++)
    {
      const OxRegionRing *ring = &region->rings[i];
      if (ring->hole)
        g_string_append (text, ", ");
      else
        g_string_append (text, i > 0 ? "), (" : "(");
      append_closed (text, region->points + ring->start, ring->n, decimals);
    }
  g_string_append (text, multi ? "))" : ")");
}

void
ox_wkt_append_ring (GString *text, const OxRing *ring, guint decimals)
{
  if (ring->n == 0)
    {
      g_string_append (text, "POLYGON EMPTY");
      return;
    }
  g_string_append (text, "POLYGON (");
  append_closed (text, ring->points, ring->n, decimals);
  g_string_append_c (text, ')');
}

void
ox_wkt_append_rings (GString *text, OxRing *const *rings, guint n, guint decimals)
{
  guint outlines = 0;
  for (guint i = 0; i < n; i++)
    outlines += ox_ring_area (rings[i]) > 0;
  if (outlines == 0)
    {
      g_string_append (text, "POLYGON EMPTY");
      return;
    }
  g_string_append (text, outlines > 1 ? "MULTIPOLYGON (" : "POLYGON ");
  for (guint i = 0; i < n; i++)
    {
      gboolean outline = ox_ring_area (rings[i]) > 0;
      g_string_append (text, i == 0 ? "(" : outline ? "), (" : ", ");
      append_closed (text, rings[i]->points, rings[i]->n, decimals);
    }
  g_string_append (text, outlines > 1 ? "))" : ")");
}

void
ox_wkt_append_line (GString *text, const OxPoint *points, guint n, guint decimals)
{
  if (n < 2)
    {
      g_string_append (text, "LINESTRING EMPTY");
      return;
    }
  g_string_append (text, "LINESTRING ");
  append_points (text, points, n, decimals);
  g_string_append_c (text, ')');
}
