/* Oxturn: sheets/tiles - large pages parted over the paper of an office printer.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/tiles.h"
#include "base/words.h"
#include "drawing/text.h"

#define MARGIN_MM 10.0
#define FOOT_MM 17.0
#define CHECK_MM 100.0
#define CROSS_MM 4.0
#define DIAGRAM_WIDTH_MM 26.0
#define DIAGRAM_HEIGHT_MM 13.0

/* how a page is parted */
typedef struct
{
  const OxPage *page;
  double width, height; /* of the paper of a tile */
  double piece_w, piece_h;
  double overlap;
  guint columns, rows;
  gboolean *blank; /* columns x rows, from the upper left */
  guint n_left;    /* tiles that are not blank */
} Tiling;

guint
ox_tiles_count (double whole, double piece, double overlap)
{
  return (guint) MAX (1, ceil ((whole - overlap) / (piece - overlap) - 1e-9));
}

static OxBox
tile_piece (const Tiling *tiling, guint column, guint row)
{
  double x = column * (tiling->piece_w - tiling->overlap);
  double top = tiling->page->height_mm - row * (tiling->piece_h - tiling->overlap);
  return (OxBox){ x, top - tiling->piece_h, x + tiling->piece_w, top };
}

static char *
tile_name (guint column, guint row)
{
  return g_strdup_printf ("%c%u", 'A' + row % 26, column + 1);
}

/* --- What is on a tile --- */

/* crosses: whether the line a-b meets the box: clipped by one side after another */
static gboolean
crosses (OxPoint a, OxPoint b, OxBox box)
{
  double from = 0, to = 1;
  const double step[4] = { a.x - b.x, b.x - a.x, a.y - b.y, b.y - a.y };
  const double room[4] = { a.x - box.x0, box.x1 - a.x, a.y - box.y0, box.y1 - a.y };
  for (int i = 0; i < 4; i++)
    {
      if (step[i] == 0 && room[i] < 0)
        return FALSE;
      if (step[i] < 0)
        from = MAX (from, room[i] / step[i]);
      else if (step[i] > 0)
        to = MIN (to, room[i] / step[i]);
    }
  return from <= to;
}

/* path_meets: a line in the box, or the box inside a filled outline */
static gboolean
path_meets (const OxDrawing *drawing, const OxElement *element, OxBox box)
{
  OxPoint middle = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  gboolean inside = FALSE;
  for (guint t = 0; t < element->path.n_traces; t++)
    {
      const OxTrace *trace = &drawing->traces[element->path.first_trace + t];
      const OxPoint *points = drawing->points + trace->start;
      for (guint i = 0; i < trace->n; i++)
        {
          OxPoint a = points[i], b = points[(i + 1) % trace->n];
          if ((i + 1 < trace->n || trace->closed) && crosses (a, b, box))
            return TRUE;
          if ((a.y > middle.y) != (b.y > middle.y) && middle.x < a.x + (middle.y - a.y) / (b.y - a.y) * (b.x - a.x))
            inside = !inside;
        }
    }
  const OxStyleSpec *style = ox_style_get (element->style);
  gboolean filled = style->fill[OX_PALETTE_PAPER] != OX_COLOUR_NONE || style->hatch.spacing_mm > 0;
  return inside && filled && !element->path.no_fill;
}

static gboolean
element_meets (const OxDrawing *drawing, const OxElement *element, OxBox box)
{
  if (element->kind == OX_ELEMENT_PATH)
    return path_meets (drawing, element, box);
  if (element->kind == OX_ELEMENT_MARK)
    return TRUE; /* its place was found in the box, which was grown by its size */
  OxPoint corners[4];
  OxBox text = OX_BOX_EMPTY;
  ox_element_text_corners (element, 1, corners);
  for (int i = 0; i < 4; i++)
    ox_box_add (&text, corners[i]);
  return text.x0 < box.x1 && text.x1 > box.x0 && text.y0 < box.y1 && text.y1 > box.y0;
}

static gboolean
is_blank (const OxDrawing *drawing, OxBox box)
{
  OxBox around = { box.x0 - drawing->reach_mm, box.y0 - drawing->reach_mm, box.x1 + drawing->reach_mm,
                   box.y1 + drawing->reach_mm };
  for (guint i = 0; (i = ox_drawing_next_in (drawing, around, i)) < drawing->n_elements; i++)
    if (element_meets (drawing, &drawing->elements[i], box))
      return FALSE;
  return TRUE;
}

/* --- The tiling --- */

static Tiling
part (const OxPage *page, double width, double height, double overlap)
{
  Tiling tiling = { .page = page, .width = width, .height = height, .overlap = overlap };
  tiling.piece_w = width - 2 * MARGIN_MM;
  tiling.piece_h = height - 2 * MARGIN_MM - FOOT_MM;
  tiling.columns = ox_tiles_count (page->width_mm, tiling.piece_w, overlap);
  tiling.rows = ox_tiles_count (page->height_mm, tiling.piece_h, overlap);
  return tiling;
}

static Tiling
tiling_new (const OxPage *page, const OxPaper *paper, double overlap)
{
  Tiling upright = part (page, paper->short_mm, paper->long_mm, overlap);
  Tiling level = part (page, paper->long_mm, paper->short_mm, overlap);
  Tiling tiling = level.columns * level.rows < upright.columns * upright.rows ? level : upright;
  tiling.blank = g_new (gboolean, tiling.columns * tiling.rows);
  for (guint i = 0; i < tiling.columns * tiling.rows; i++)
    {
      tiling.blank[i] = is_blank (page->drawing, tile_piece (&tiling, i % tiling.columns, i / tiling.columns));
      tiling.n_left += !tiling.blank[i];
    }
  return tiling;
}

/* blank_names: "A1, B3", "" where there are none; (transfer full) */
static char *
blank_names (const Tiling *tiling)
{
  g_autoptr (GString) names = g_string_new (NULL);
  for (guint i = 0; i < tiling->columns * tiling->rows; i++)
    if (tiling->blank[i])
      {
        g_autofree char *name = tile_name (i % tiling->columns, i / tiling->columns);
        g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", name);
      }
  return g_string_free (g_steal_pointer (&names), FALSE);
}

/* --- What stands around a piece --- */

static void
append_fitting (OxDrawingBuilder *builder, OxTextLook look, OxPoint at, const char *text, double width)
{
  if (ox_text_width (text, look.height_mm, look.bold) > width)
    look.height_mm = OX_TEXT_MIN_MM;
  g_auto (GStrv) lines = ox_text_wrap (text, look.height_mm, look.bold, width);
  for (guint i = 0; lines[i] != NULL; i++, at.y -= 1.6 * look.height_mm)
    ox_drawing_builder_text (builder, look, at, lines[i]);
}

static void
append_crosses (const Tiling *tiling, OxDrawingBuilder *builder)
{
  double in = tiling->overlap / 2, arm = MIN (CROSS_MM, tiling->overlap) / 2;
  OxBox box = { MARGIN_MM, MARGIN_MM + FOOT_MM, MARGIN_MM + tiling->piece_w, MARGIN_MM + FOOT_MM + tiling->piece_h };
  ox_drawing_builder_layer (builder, "register-marks", _ ("Register marks"));
  ox_drawing_builder_box (builder, OX_STYLE_RULE, box);
  for (int i = 0; i < 4; i++)
    {
      OxPoint at = { i % 2 == 0 ? box.x0 + in : box.x1 - in, i < 2 ? box.y0 + in : box.y1 - in };
      ox_drawing_builder_line (builder, OX_STYLE_DIMENSION, (OxPoint){ at.x - arm, at.y },
                               (OxPoint){ at.x + arm, at.y });
      ox_drawing_builder_line (builder, OX_STYLE_DIMENSION, (OxPoint){ at.x, at.y - arm },
                               (OxPoint){ at.x, at.y + arm });
    }
}

static void
append_check_line (OxDrawingBuilder *builder, double x, double y)
{
  OxTextLook look = { OX_STYLE_INK, OX_TEXT_MIN_MM, 0, OX_ALIGN_START, FALSE, FALSE, 0, FALSE };
  ox_drawing_builder_layer (builder, "check-line", _ ("Check line"));
  ox_drawing_builder_line (builder, OX_STYLE_BLOCK, (OxPoint){ x, y }, (OxPoint){ x + CHECK_MM, y });
  for (int i = 0; i < 2; i++)
    ox_drawing_builder_line (builder, OX_STYLE_BLOCK, (OxPoint){ x + i * CHECK_MM, y - 1.5 },
                             (OxPoint){ x + i * CHECK_MM, y + 1.5 });
  append_fitting (builder, look, (OxPoint){ x + 1.5, y - 4 },
                  _ ("Print at 100 %, not fitted to the paper: this line is then 100 mm long."), CHECK_MM - 3);
}

/* append_diagram: all tiles, the blank ones crossed out, this one filled */
static void
append_diagram (const Tiling *tiling, OxDrawingBuilder *builder, guint tile, OxPoint corner)
{
  double cell_w = DIAGRAM_WIDTH_MM / tiling->columns, cell_h = DIAGRAM_HEIGHT_MM / tiling->rows;
  ox_drawing_builder_layer (builder, "assembly", _ ("How the tiles lie"));
  for (guint i = 0; i < tiling->columns * tiling->rows; i++)
    {
      double x = corner.x + i % tiling->columns * cell_w,
             y = corner.y + (tiling->rows - 1 - i / tiling->columns) * cell_h;
      OxBox cell = { x, y, x + cell_w, y + cell_h };
      if (i == tile)
        ox_drawing_builder_box (builder, OX_STYLE_BAR, cell);
      ox_drawing_builder_box (builder, OX_STYLE_RULE, cell);
      if (tiling->blank[i])
        ox_drawing_builder_line (builder, OX_STYLE_RULE, (OxPoint){ cell.x0, cell.y0 }, (OxPoint){ cell.x1, cell.y1 });
    }
}

static void
append_foot (const Tiling *tiling, OxDrawingBuilder *builder, guint tile, const char *name)
{
  double top = MARGIN_MM + FOOT_MM - 5, check = tiling->width - MARGIN_MM - DIAGRAM_WIDTH_MM - 5 - CHECK_MM;
  double width = check - MARGIN_MM - 3;
  OxTextLook look = { OX_STYLE_INK, 3.5, 0, OX_ALIGN_START, FALSE, TRUE, 0, FALSE };
  g_autofree char *place = g_strdup_printf (_ ("%s of %u"), name, tiling->n_left);
  g_autofree char *sheet = g_strdup_printf (_ ("Sheet %s, %s"), tiling->page->label, tiling->page->title);
  g_autofree char *blank = blank_names (tiling);
  g_autofree char *left_out = g_strdup_printf (_ ("Blank, left out: %s"), blank);
  ox_drawing_builder_layer (builder, "tile", _ ("Tile"));
  append_fitting (builder, look, (OxPoint){ MARGIN_MM, top }, place, width);
  look.bold = FALSE;
  look.height_mm = OX_TEXT_MIN_MM;
  append_fitting (builder, look, (OxPoint){ MARGIN_MM, top - 4.5 }, sheet, width);
  append_check_line (builder, check, top + 1);
  if (blank[0] != '\0')
    append_fitting (builder, look, (OxPoint){ check + 1.5, MARGIN_MM + 0.5 + 1.6 * OX_TEXT_MIN_MM }, left_out,
                    CHECK_MM - 3);
  append_diagram (tiling, builder, tile, (OxPoint){ tiling->width - MARGIN_MM - DIAGRAM_WIDTH_MM, MARGIN_MM + 1 });
}

/* --- Pages --- */

static void
clear_page (gpointer data)
{
  OxPage *page = data;
  g_free (page->title);
  g_free (page->description);
  g_free (page->label);
  ox_drawing_unref (page->drawing);
  g_clear_pointer (&page->part, ox_drawing_unref);
}

static void
add_tile (GArray *pages, const Tiling *tiling, guint tile)
{
  guint column = tile % tiling->columns, row = tile / tiling->columns;
  g_autofree char *name = tile_name (column, row);
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  append_crosses (tiling, builder);
  append_foot (tiling, builder, tile, name);
  OxPage page = { .width_mm = tiling->width,
                  .height_mm = tiling->height,
                  .title = g_strdup_printf ("%s, %s", tiling->page->title, name),
                  .description = g_strdup (tiling->page->description),
                  .label = g_strdup_printf ("%s-%s", tiling->page->label, name),
                  .drawing = ox_drawing_builder_end (builder),
                  .part = ox_drawing_ref (tiling->page->drawing),
                  .piece = tile_piece (tiling, column, row),
                  .piece_at = { MARGIN_MM, MARGIN_MM + FOOT_MM } };
  g_array_append_val (pages, page);
}

static gboolean
fits_whole (const OxPage *page, const OxPaper *paper)
{
  return MIN (page->width_mm, page->height_mm) <= paper->short_mm + 0.5
         && MAX (page->width_mm, page->height_mm) <= paper->long_mm + 0.5;
}

OxPageSet *
ox_tiles_new (const OxPageSet *set, const OxPaper *paper, double overlap_mm)
{
  g_autoptr (GArray) pages = g_array_new (FALSE, FALSE, sizeof (OxPage));
  g_array_set_clear_func (pages, clear_page);
  double overlap = CLAMP (overlap_mm, OX_TILES_OVERLAP_MIN_MM, OX_TILES_OVERLAP_MAX_MM);
  for (guint i = 0; i < set->n_pages; i++)
    {
      OxPage page = set->pages[i];
      if (fits_whole (&page, paper))
        {
          page.title = g_strdup (page.title);
          page.description = g_strdup (page.description);
          page.label = g_strdup (page.label);
          page.drawing = ox_drawing_ref (page.drawing);
          g_array_append_val (pages, page);
          continue;
        }
      Tiling tiling = tiling_new (&page, paper, overlap);
      for (guint k = 0; k < tiling.columns * tiling.rows; k++)
        if (!tiling.blank[k])
          add_tile (pages, &tiling, k);
      g_free (tiling.blank);
    }
  OxPageSet out = *set;
  out.n_pages = pages->len;
  out.pages = (OxPage *) (gpointer) pages->data;
  return ox_page_set_new (&out);
}
