/* Oxturn: geometry/region - union of many polygons.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GEOS takes a fixed time for every overlay, and unites many polygons two by two. Here they are put into layers first, in each of which none
 * meets another; the lanes of a floor make two, the strips across a few more. Then whole layers are united: as many overlays as layers,
 * not as polygons. Polygons that stand alone need none. Many polygons are parted into groups that lie side by side; groups do not depend on the
 * number of threads, so neither does the result.
 */
#include "base/share.h"
#include "base/stop.h"
#include "geometry/region-private.h"
#include <stdlib.h>

#define APART OX_REGION_RETRY_GRID /* m between boxes, from which on polygons cannot meet */

#define FAN 16    /* groups united next */
#define GROUP 100 /* polygons united together: what GEOS takes for many grows faster than their number, above all for slanted ones */

typedef struct
{
  GEOSGeometry *polygon;
  OxBox box; /* x across the longest side of all polygons, y along it: tight about strips, however the floor is turned */
  guint index;
  guint layer;
  gboolean alone;
} Member;

static OxPoint *
get_corners (const GEOSGeometry *polygon, guint *n)
{
  GEOSContextHandle_t geos = ox_geos_context ();
  const GEOSGeometry *ring = GEOSGetExteriorRing_r (geos, polygon);
  const GEOSCoordSequence *sequence = ring ? GEOSGeom_getCoordSeq_r (geos, ring) : NULL;
  if (!sequence || !GEOSCoordSeq_getSize_r (geos, sequence, n))
    ox_geos_stop ("corners");
  OxPoint *points = g_new (OxPoint, *n);
  if (*n > 0 && !GEOSCoordSeq_copyToBuffer_r (geos, sequence, &points[0].x, 0, 0))
    ox_geos_stop ("corners");
  return points;
}

/* Makes @u the direction of the longest side of the ring where that is longer than @longest. */
static void
look_for_longest (const OxPoint *corners, guint n, double *longest, OxPoint *u)
{
  for (guint i = 1; i < n; i++)
    {
      double length = ox_point_distance (corners[i - 1], corners[i]);
      if (length <= *longest)
        continue;
      *longest = length;
      *u = (OxPoint){ (corners[i].x - corners[i - 1].x) / length, (corners[i].y - corners[i - 1].y) / length };
    }
}

static int
compare_members (gconstpointer a, gconstpointer b)
{
  const Member *p = a, *q = b;
  if (p->box.x0 != q->box.x0)
    return p->box.x0 < q->box.x0 ? -1 : 1;
  if (p->box.y0 != q->box.y0)
    return p->box.y0 < q->box.y0 ? -1 : 1;
  return p->index < q->index ? -1 : 1;
}

/* Members in order across; @polygons is emptied. */
static Member *
take_members (GPtrArray *polygons)
{
  guint n = polygons->len;
  Member *members = g_new0 (Member, n);
  g_autofree OxPoint **corners = g_new (OxPoint *, n);
  g_autofree guint *counts = g_new0 (guint, n);
  double longest = 0;
  OxPoint u = { 1, 0 };
  for (guint i = 0; i < n; i++)
    {
      members[i] = (Member){ g_ptr_array_index (polygons, i), OX_BOX_EMPTY, i, 0, TRUE };
      corners[i] = get_corners (members[i].polygon, &counts[i]);
      look_for_longest (corners[i], counts[i], &longest, &u);
    }
  for (guint i = 0; i < n; i++)
    {
      for (guint k = 0; k < counts[i]; k++)
        {
          OxPoint p = corners[i][k];
          ox_box_add (&members[i].box, (OxPoint){ p.y * u.x - p.x * u.y, p.x * u.x + p.y * u.y });
        }
      g_free (corners[i]);
    }
  g_ptr_array_set_size (polygons, 0);
  qsort (members, n, sizeof (Member), compare_members);
  return members;
}

/* The lowest layer in which none of the @n_open members before @members[i] meets it; those that it has left behind are dropped from @open. */
static guint
find_layer (Member *members, guint i, guint *open, guint *n_open, GArray *taken)
{
  guint kept = 0;
  for (guint k = 0; k < *n_open; k++)
    {
      Member *other = &members[open[k]];
      if (other->box.x1 + APART < members[i].box.x0)
        continue;
      open[kept++] = open[k];
      if (other->box.y0 > members[i].box.y1 + APART || members[i].box.y0 > other->box.y1 + APART)
        continue;
      other->alone = members[i].alone = FALSE;
      if (taken->len <= other->layer)
        g_array_set_size (taken, other->layer + 1);
      g_array_index (taken, guint, other->layer) = i;
    }
  *n_open = kept;
  for (guint layer = 0; layer < taken->len; layer++)
    if (g_array_index (taken, guint, layer) != i)
      return layer;
  return taken->len;
}

/* Number of layers */
static guint
find_layers (Member *members, guint n)
{
  g_autofree guint *open = g_new (guint, n);
  g_autoptr (GArray) taken = g_array_new (FALSE, TRUE, sizeof (guint)); /* by layer: the last member that could not go into it */
  guint n_open = 0, layers = 0;
  for (guint i = 0; i < n; i++)
    {
      members[i].layer = find_layer (members, i, open, &n_open, taken);
      layers = MAX (layers, members[i].layer + 1);
      open[n_open++] = i;
    }
  return layers;
}

static void
add_polygons (GPtrArray *polygons, const GEOSGeometry *geometry)
{
  GEOSContextHandle_t geos = ox_geos_context ();
  int type = GEOSGeomTypeId_r (geos, geometry);
  if (type == GEOS_POLYGON)
    g_ptr_array_add (polygons, GEOSGeom_clone_r (geos, geometry));
  if (type != GEOS_MULTIPOLYGON && type != GEOS_GEOMETRYCOLLECTION)
    return;
  int n = GEOSGetNumGeometries_r (geos, geometry);
  for (int i = 0; i < n; i++)
    add_polygons (polygons, GEOSGetGeometryN_r (geos, geometry, i));
}

/* On the grid a sliver may turn into a line, which GEOS gives beside the areas and does not take back. */
static GEOSGeometry *
take_areas (GEOSGeometry *geometry)
{
  GEOSContextHandle_t geos = ox_geos_context ();
  if (GEOSGeomTypeId_r (geos, geometry) != GEOS_GEOMETRYCOLLECTION)
    return geometry;
  g_autoptr (GPtrArray) polygons = g_ptr_array_new ();
  add_polygons (polygons, geometry);
  GEOSGeom_destroy_r (geos, geometry);
  return ox_geos_collect (polygons, GEOS_MULTIPOLYGON);
}

static GEOSGeometry *
take_both (GEOSGeometry *a, GEOSGeometry *b)
{
  GEOSContextHandle_t geos = ox_geos_context ();
  if (ox_stop_asked ())
    {
      GEOSGeom_destroy_r (geos, b);
      return a;
    }
  GEOSGeometry *result = GEOSUnionPrec_r (geos, a, b, OX_REGION_GRID);
  if (!result)
    result = GEOSUnionPrec_r (geos, a, b, OX_REGION_RETRY_GRID);
  GEOSGeom_destroy_r (geos, a);
  GEOSGeom_destroy_r (geos, b);
  if (!result)
    ox_geos_stop ("union of many");
  return take_areas (result);
}

/* Two by two, so that large and small layers meet their like. */
static GEOSGeometry *
take_layers (GEOSGeometry **layers, guint n)
{
  for (; n > 1; n = (n + 1) / 2)
    for (guint i = 0; i < n; i += 2)
      layers[i / 2] = i + 1 < n ? take_both (layers[i], layers[i + 1]) : layers[i];
  return layers[0];
}

/* Unites @polygons layer by layer: what is left in the array are parts that do not meet. */
static void
unite_layers (GPtrArray *polygons)
{
  guint n = polygons->len;
  if (n < 2)
    return;
  g_autofree Member *members = take_members (polygons);
  guint n_layers = find_layers (members, n), kept = 0;
  g_autofree GEOSGeometry **layers = g_new (GEOSGeometry *, n_layers);
  for (guint layer = 0; layer < n_layers; layer++)
    {
      for (guint i = 0; i < n; i++)
        if (members[i].layer == layer && !members[i].alone)
          g_ptr_array_add (polygons, members[i].polygon);
      if (polygons->len > 0)
        layers[kept++] = ox_geos_collect (polygons, GEOS_MULTIPOLYGON);
    }
  if (kept > 0)
    {
      GEOSGeometry *united = take_layers (layers, kept);
      add_polygons (polygons, united);
      GEOSGeom_destroy_r (ox_geos_context (), united);
    }
  for (guint i = 0; i < n; i++)
    if (members[i].alone)
      g_ptr_array_add (polygons, members[i].polygon);
}

typedef struct
{
  GPtrArray **groups; /* of GEOSGeometry, side by side */
  guint n_groups;
} Groups;

static void
unite_group (guint i, gpointer data)
{
  unite_layers (((const Groups *) data)->groups[i]);
}

/* FAN groups that lie side by side become one, which is united: of their outlines much less is left to look at than of all their members. */
static void
unite_neighbours (guint i, gpointer data)
{
  const Groups *groups = data;
  GPtrArray *first = groups->groups[i * FAN];
  for (guint k = i * FAN + 1; k < MIN ((i + 1) * FAN, groups->n_groups); k++)
    {
      g_ptr_array_extend (first, groups->groups[k], NULL, NULL);
      g_ptr_array_unref (groups->groups[k]);
    }
  unite_layers (first);
}

/* Unites many polygons: in groups, at the same time, then groups of groups. */
static void
unite_many (GPtrArray *polygons)
{
  guint n = polygons->len;
  g_autofree Member *members = take_members (polygons);
  Groups groups = { NULL, (n + GROUP - 1) / GROUP };
  g_autofree GPtrArray **list = g_new (GPtrArray *, groups.n_groups);
  groups.groups = list;
  for (guint group = 0; group < groups.n_groups; group++)
    {
      guint end = (guint) ((guint64) n * (group + 1) / groups.n_groups);
      list[group] = g_ptr_array_new ();
      for (guint i = (guint) ((guint64) n * group / groups.n_groups); i < end; i++)
        g_ptr_array_add (list[group], members[i].polygon);
    }
  ox_share (groups.n_groups, unite_group, &groups);
  while (groups.n_groups > 1)
    {
      guint n_next = (groups.n_groups + FAN - 1) / FAN;
      ox_share (n_next, unite_neighbours, &groups);
      for (guint i = 0; i < n_next; i++)
        list[i] = list[i * FAN];
      groups.n_groups = n_next;
    }
  g_ptr_array_extend (polygons, list[0], NULL, NULL);
  g_ptr_array_unref (list[0]);
}

OxRegion *
ox_geos_take_union (GPtrArray *polygons)
{
  if (polygons->len == 0)
    return ox_region_new_empty ();
  if (polygons->len > GROUP)
    unite_many (polygons);
  else
    unite_layers (polygons);
  return ox_geos_take_region (ox_geos_collect (polygons, GEOS_GEOMETRYCOLLECTION));
}
