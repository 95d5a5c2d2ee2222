/* Oxturn: geometry/wkt - well-known text (OGC 06-103r4): POLYGON, MULTIPOLYGON, LINESTRING, POINT.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "geometry/region.h"
G_BEGIN_DECLS

#define OX_WKT_ERROR (ox_wkt_error_quark ())
GQuark ox_wkt_error_quark (void);
typedef enum
{
  OX_WKT_ERROR_SYNTAX,   /* not WKT as far as we read it; the message has line and column */
  OX_WKT_ERROR_TOO_LARGE /* more corners or bytes than we take */
} OxWktError;

#define OX_WKT_MAX_CORNERS 1000000

/* one polygon as it stands in the text: first ring the outer one; unchecked for crossings */
typedef struct
{
  guint n_rings;
  OxRing **rings;
} OxWktPolygon;

/* ox_wkt_parse_polygons:
 * @text: POLYGON or MULTIPOLYGON (or several, one after another), any case, blanks and line breaks anywhere; EMPTY taken; Z and M refused
 * @out: (out) (transfer full): array of OxWktPolygon* with free function
 */
gboolean ox_wkt_parse_polygons (const char *text, GPtrArray **out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_wkt_append_region: POLYGON when @multi is FALSE and there is one part, else MULTIPOLYGON; EMPTY where nothing is; @decimals as
 * ox_number_append(). First point repeated last, outer ring counter-clockwise, holes clockwise. */
void ox_wkt_append_region (GString *text, const OxRegion *region, gboolean multi, guint decimals);
/* ox_wkt_append_rings: rings as they are, one counter-clockwise an outline, those that are not its holes; MULTIPOLYGON when there is more than one
 * outline, POLYGON EMPTY for none; the first ring must be an outline */
void ox_wkt_append_rings (GString *text, OxRing *const *rings, guint n, guint decimals);
void ox_wkt_append_ring (GString *text, const OxRing *ring, guint decimals);
void ox_wkt_append_line (GString *text, const OxPoint *points, guint n, guint decimals); /* LINESTRING; EMPTY for n < 2 */

G_END_DECLS
