/* Oxturn: drawing/drawing - a picture as a list of elements, painted by paint/cairo and paint/svg alike.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A drawing is an immutable counted value; any thread may read it. Places are in drawing units, x right and y up: metres of floor in the
 * floor picture (sheets/floor.h), millimetres of paper with the origin in the lower left corner on a page (drawing/page.h). Line widths,
 * heights of text, sizes of marks and hatch spacings are always millimetres of paper: they do not grow with the scale.
 *
 * Elements are painted layer by layer, in the order in which layers were begun, and within a layer in the order in which they were
 * appended. Each may carry the id of what it shows: the id of an item of the job ("R1",
 * "O3"), "strip-12", "move-12", or that of a zone or edge area ("Z1", "E1").
 */
#pragma once
#include "drawing/style.h"
#include "geometry/region.h"
G_BEGIN_DECLS

typedef enum { OX_ELEMENT_PATH, OX_ELEMENT_TEXT, OX_ELEMENT_MARK } OxElementKind;

typedef enum
{
  OX_MARK_ARROW,     /* filled head of an arrow, its tip at the place, pointing along the angle; size = length */
  OX_MARK_TICK,      /* oblique stroke that ends a dimension; size = its length */
  OX_MARK_DOT,
  OX_MARK_COLLECTOR, /* station of the dust collector; size = width, as with all below */
  OX_MARK_SUPPLY,    /* where power is taken */
  OX_MARK_FIRST,     /* first start: flag whose foot stands at the place */
  OX_MARK_NORTH,     /* points along the angle */
  OX_MARK_CAUTION,
  OX_MARK_CHECK,     /* cross where a profile check is planned */
  OX_MARK_FURROW,    /* our sign: two furrows and the turn between them */
  OX_N_MARKS
} OxMarkKind;

typedef enum { OX_ALIGN_START, OX_ALIGN_MIDDLE, OX_ALIGN_END } OxAlign;

/* one run of corners of a path */
typedef struct
{
  guint start, n;   /* in OxDrawing.points */
  gboolean closed;
} OxTrace;

typedef struct
{
  OxElementKind kind;
  OxStyle style;
  guint layer;       /* index in OxDrawing.layers */
  const char *id;    /* "" when it shows nothing of its own */
  OxBox box;         /* of its places, without widths and sizes in mm */
  double from_mm;    /* shown where a drawing unit is at least so many mm of paper; 0: always */
  union
  {
    struct { guint first_trace, n_traces; gboolean no_fill; } path;
    struct
    {
      OxPoint at;        /* on the base line, or on the middle of the capitals where @centred */
      double angle;      /* radians */
      double height_mm;  /* of capitals */
      OxAlign align;
      gboolean centred, bold;
      double ground_mm;  /* > 0: a ground of the style's fill stands so far out on all sides ... */
      gboolean flat;     /* ... or before and behind only, no higher than the capitals */
      const char *text;  /* one line, UTF-8 */
    } text;
    struct { OxMarkKind kind; OxPoint at; double angle, size_mm; } mark;
  };
} OxElement;

typedef struct
{
  const char *id;    /* "strips": letters and '-', unique in the drawing */
  const char *title; /* translated */
} OxLayer;

typedef struct
{
  guint n_layers, n_elements, n_traces, n_points;
  const OxLayer *layers;
  const OxElement *elements;
  const OxTrace *traces;
  const OxPoint *points;
  OxBox box;         /* of all places */
  double reach_mm;   /* how far any element goes beyond its box, in mm of paper, at most */
} OxDrawing;

OxDrawing *ox_drawing_ref (const OxDrawing *drawing);
void ox_drawing_unref (const OxDrawing *drawing);

/* ox_drawing_next_in:
 * @box: in drawing units; grow it by what mm of paper make out, see reach_mm
 * @i: index of an element, or n_elements
 *
 * Skips elements that do not meet @box, many at a time.
 * Returns: the least index >= @i of an element whose box meets @box, else n_elements */
guint ox_drawing_next_in (const OxDrawing *drawing, OxBox box, guint i);

/* ox_drawing_hit:
 * @radius: in drawing units
 *
 * A path with a fill is hit inside it, one without within @radius of its lines, marks and texts within @radius of their place.
 * Returns: (nullable): id of the uppermost element with an id that is hit; belongs to the drawing */
const char *ox_drawing_hit (const OxDrawing *drawing, OxPoint point, double radius);

/* --- Building. A builder appends elements; ox_drawing_builder_end() freezes them and frees the builder. --- */

typedef struct _OxDrawingBuilder OxDrawingBuilder;
OxDrawingBuilder *ox_drawing_builder_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ox_drawing_builder_free (OxDrawingBuilder *builder); /* without making a drawing */
OxDrawing *ox_drawing_builder_end (OxDrawingBuilder *builder) G_GNUC_WARN_UNUSED_RESULT;

/* places given from now on are p * scale + origin; angles stay as they are */
void ox_drawing_builder_place (OxDrawingBuilder *builder, OxPoint origin, double scale);

/* elements appended from now on stand in this layer; the same id again goes on with it */
void ox_drawing_builder_layer (OxDrawingBuilder *builder, const char *id, const char *title);

/* elements appended from now on show the item @id (nullable), and only from @from_mm on */
void ox_drawing_builder_item (OxDrawingBuilder *builder, const char *id, double from_mm);

void ox_drawing_builder_region (OxDrawingBuilder *builder, OxStyle style, const OxRegion *region);
void ox_drawing_builder_polygon (OxDrawingBuilder *builder, OxStyle style, const OxPoint *points, guint n); /* n >= 3 */
void ox_drawing_builder_polyline (OxDrawingBuilder *builder, OxStyle style, const OxPoint *points, guint n); /* n >= 2, no fill */
void ox_drawing_builder_line (OxDrawingBuilder *builder, OxStyle style, OxPoint a, OxPoint b);
void ox_drawing_builder_box (OxDrawingBuilder *builder, OxStyle style, OxBox box);

/* ox_drawing_builder_clip: ox_drawing_builder_drawing() copies only what lies in @box, in units of the drawing copied; paths are cut, texts
 * and marks stay or go with their place. @box (nullable): everything again */
void ox_drawing_builder_clip (OxDrawingBuilder *builder, const OxBox *box);

/* ox_drawing_builder_drawing: all of another drawing, layers and items too, its places put where the builder's place says */
void ox_drawing_builder_drawing (OxDrawingBuilder *builder, const OxDrawing *drawing);

typedef struct
{
  OxStyle style;
  OxMarkKind kind;
  double angle;    /* radians */
  double size_mm;
} OxMarkLook;

/* ox_drawing_builder_mark: @at: where its place stands; the size does not grow with the scale */
void ox_drawing_builder_mark (OxDrawingBuilder *builder, OxMarkLook look, OxPoint at);

typedef struct
{
  OxStyle style;
  double height_mm;
  double angle;
  OxAlign align;
  gboolean centred, bold;
  double ground_mm;
  gboolean flat;
} OxTextLook;

/* ox_drawing_builder_text: the empty text appends nothing */
void ox_drawing_builder_text (OxDrawingBuilder *builder, OxTextLook look, OxPoint at, const char *text);

/* ox_element_text_corners:
 * @mm: drawing units a millimetre of paper
 *
 * The box around a text as it stands on paper, its ground included, from the widths of drawing/text.h; counter-clockwise. */
void ox_element_text_corners (const OxElement *element, double mm, OxPoint corners[4]);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxDrawing, ox_drawing_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxDrawingBuilder, ox_drawing_builder_free)
G_END_DECLS
