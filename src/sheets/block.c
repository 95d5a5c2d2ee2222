/* Oxturn: sheets/block - a titled list of rows beside the drawing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/block.h"
#include "drawing/text.h"
#include <stdarg.h>
#include <string.h>

#define CELL_PAD_MM 1.0
#define SAMPLE_WIDTH_MM 11.0
#define BLANK_HEIGHT_MM 9.0
#define PAUSE_MM 1.2   /* where a text meets a table or a form */
#define LINE_PITCH 1.6 /* of lines of one cell, in heights of capitals */

typedef enum
{
  ROW_CELLS,
  ROW_GROUP,
  ROW_TEXT,
  ROW_SAMPLE,
  ROW_MARK,
  ROW_BLANKS,
  ROW_DRAWING
} RowKind;

typedef struct
{
  RowKind kind;
  char *raw[OX_BLOCK_COLUMNS];     /* ROW_CELLS: before they are wrapped */
  char *cells[OX_BLOCK_COLUMNS];   /* ROW_GROUP: title; ROW_TEXT: mark and line; ROW_SAMPLE, ROW_MARK: text; ROW_BLANKS:
                                      labels */
  double shares[OX_BLOCK_COLUMNS]; /* ROW_BLANKS */
  guint n, lines;                  /* of the highest cell */
  gboolean strong, filled,
      more; /* more: the next row must not be parted from it: it goes on with the text, or is the group's first */
  OxStyle style;
  OxMarkKind mark;
  const OxDrawing *drawing;
  double height_mm; /* ROW_DRAWING */
} Row;

struct _OxBlock
{
  char *title;
  double width_mm, body_mm;
  OxColumn columns[OX_BLOCK_COLUMNS]; /* with the titles wrapped, once they are laid out */
  double asked[OX_BLOCK_COLUMNS];     /* shares */
  double pad_mm;                      /* before and behind the text of a cell */
  char *heads[OX_BLOCK_COLUMNS];      /* titles before they are wrapped */
  guint n_columns, n_by_hand;
  gboolean has_head, foot, laid_out;
  guint head_lines;
  GArray *rows;
};

static void
clear_row (gpointer data)
{
  Row *row = data;
  for (guint i = 0; i < OX_BLOCK_COLUMNS; i++)
    {
      g_free (row->raw[i]);
      g_free (row->cells[i]);
    }
  g_clear_pointer (&row->drawing, ox_drawing_unref);
}

OxBlock *
ox_block_new (const char *title, double width_mm, double body_mm)
{
  OxBlock *block = g_new0 (OxBlock, 1);
  block->title = g_strdup (title);
  block->width_mm = width_mm;
  block->body_mm = body_mm;
  block->pad_mm = CELL_PAD_MM;
  block->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  g_array_set_clear_func (block->rows, clear_row);
  return block;
}

void
ox_block_free (OxBlock *block)
{
  for (guint i = 0; i < block->n_columns; i++)
    {
      g_free ((char *) block->columns[i].title);
      g_free (block->heads[i]);
    }
  g_array_unref (block->rows);
  g_free (block->title);
  g_free (block);
}

/* --- Cells of several lines --- */

/* wrapped: @text in lines that fit, joined by \n; (transfer full) */
static char *
wrapped (const char *text, double height_mm, gboolean bold, double width_mm)
{
  g_auto (GStrv) lines = ox_text_wrap (text, height_mm, bold, width_mm);
  return g_strjoinv ("\n", lines);
}

static guint
count_lines (const char *lines)
{
  guint n = 1;
  for (; *lines != '\0'; lines++)
    n += *lines == '\n';
  return n;
}

/* append_lines: one below another, @middle in the middle of all of them */
static void
append_lines (OxDrawingBuilder *builder, OxTextLook look, OxPoint middle, const char *lines)
{
  g_auto (GStrv) parts = g_strsplit (lines, "\n", -1);
  guint n = g_strv_length (parts);
  for (guint i = 0; i < n; i++)
    {
      OxPoint at = { middle.x, middle.y + ((n - 1) / 2.0 - i) * LINE_PITCH * look.height_mm };
      ox_drawing_builder_text (builder, look, at, parts[i]);
    }
}

/* cell_height: of @n lines of capitals of @height_mm */
static double
cell_height (guint n, double height_mm)
{
  return height_mm * (2.2 + (n - 1) * LINE_PITCH);
}

/* needed_width: of a column in which no word is broken, and no figure is parted from its unit; @whole: nor any text
 * wrapped */
static double
needed_width (const OxBlock *block, guint column, gboolean whole)
{
  double width = ox_text_longest_word (block->heads[column], OX_TEXT_MIN_MM, TRUE);
  for (guint i = 0; i < block->rows->len; i++)
    {
      const Row *row = &g_array_index (block->rows, Row, i);
      if (row->kind != ROW_CELLS || column >= row->n)
        continue;
      const char *text = row->raw[column];
      double cell = whole || block->columns[column].align == OX_ALIGN_END
                        ? ox_text_width (text, block->body_mm, row->strong)
                        : ox_text_longest_word (text, block->body_mm, row->strong);
      width = MAX (width, cell);
    }
  return width + 2 * block->pad_mm + 0.01;
}

/* share_width: a column that is too narrow for what stands in it takes from those with room to spare; FALSE when those
 * have not enough */
static gboolean
share_width (OxBlock *block, gboolean whole)
{
  double spare[OX_BLOCK_COLUMNS] = { 0 }, lacking = 0, left = 0;
  for (guint i = 0; i < block->n_columns; i++)
    {
      spare[i] = block->asked[i] * block->width_mm - needed_width (block, i, whole);
      lacking += MAX (-spare[i], 0);
      left += MAX (spare[i], 0);
    }
  for (guint i = 0; i < block->n_columns; i++)
    {
      double share = lacking <= 0 ? 0 : MIN (spare[i] < 0 ? left / lacking : lacking / left, 1);
      block->columns[i].share = block->asked[i] - spare[i] * share / block->width_mm;
    }
  return lacking <= left;
}

/* choose_widths: no text wrapped, else no word broken, if need be with less room beside the words */
static void
choose_widths (OxBlock *block)
{
  static const struct
  {
    double pad_mm;
    gboolean whole;
  } ways[] = { { CELL_PAD_MM, TRUE }, { 0.7, TRUE }, { CELL_PAD_MM, FALSE }, { 0.7, FALSE }, { 0.4, FALSE } };
  gboolean fits = FALSE;
  for (guint i = 0; !fits && i < G_N_ELEMENTS (ways); i++)
    {
      block->pad_mm = ways[i].pad_mm;
      fits = share_width (block, ways[i].whole);
    }
}

/* lay_out: widths of the columns, and the lines of head and cells in them */
static void
lay_out (OxBlock *block)
{
  if (block->laid_out)
    return;
  block->laid_out = TRUE;
  choose_widths (block);
  block->head_lines = 0;
  for (guint i = 0; i < block->n_columns; i++)
    {
      double room = block->columns[i].share * block->width_mm - 2 * block->pad_mm;
      g_free ((char *) block->columns[i].title);
      block->columns[i].title = wrapped (block->heads[i], OX_TEXT_MIN_MM, TRUE, room);
      block->head_lines = MAX (block->head_lines, count_lines (block->columns[i].title));
      for (guint r = 0; r < block->rows->len; r++)
        {
          Row *row = &g_array_index (block->rows, Row, r);
          if (row->kind != ROW_CELLS || i >= row->n)
            continue;
          g_free (row->cells[i]);
          row->cells[i] = wrapped (row->raw[i], block->body_mm, row->strong, room);
          row->lines = MAX (i == 0 ? 1 : row->lines, count_lines (row->cells[i]));
        }
    }
}

/* measured: laid out before anything asks for heights; a block is the same to its users before and after */
static const OxBlock *
measured (const OxBlock *block)
{
  lay_out ((OxBlock *) block);
  return block;
}

void
ox_block_set_columns (OxBlock *block, const OxColumn *columns, guint n)
{
  g_return_if_fail (n <= OX_BLOCK_COLUMNS && block->n_columns == 0);
  for (guint i = 0; i < n; i++)
    {
      block->columns[i] = columns[i];
      block->columns[i].title = NULL;
      block->asked[i] = columns[i].share;
      block->heads[i] = g_strdup (columns[i].title != NULL ? columns[i].title : "");
      block->has_head |= columns[i].title != NULL;
    }
  block->n_columns = n;
}

void
ox_block_set_by_hand (OxBlock *block, guint n)
{
  block->n_by_hand = n;
}

void
ox_block_add_cells (OxBlock *block, gboolean strong, ...)
{
  Row row = { .kind = ROW_CELLS, .strong = strong };
  va_list args;
  va_start (args, strong);
  for (const char *text = va_arg (args, const char *); text != NULL && row.n < block->n_columns;
       text = va_arg (args, const char *))
    row.raw[row.n++] = g_strdup (text);
  va_end (args);
  g_array_append_val (block->rows, row);
  block->laid_out = FALSE;
}

void
ox_block_add_group (OxBlock *block, const char *title)
{
  Row row = { .kind = ROW_GROUP, .n = 1, .lines = 1, .more = TRUE };
  row.cells[0] = ox_text_fit (title, block->body_mm, TRUE, block->width_mm - 2 * CELL_PAD_MM);
  g_array_append_val (block->rows, row);
}

void
ox_block_add_text (OxBlock *block, const char *mark, const char *text)
{
  double indent = mark != NULL ? 2.2 * block->body_mm : 0;
  g_auto (GStrv) lines = ox_text_wrap (text, block->body_mm, FALSE, block->width_mm - indent - CELL_PAD_MM);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      Row row = { .kind = ROW_TEXT, .n = 2, .more = lines[i + 1] != NULL };
      row.cells[0] = g_strdup (mark == NULL ? NULL : i == 0 ? mark : "");
      row.cells[1] = g_strdup (lines[i]);
      g_array_append_val (block->rows, row);
    }
}

static void
add_entry (OxBlock *block, Row row, const char *text)
{
  row.n = 1;
  row.cells[0] = wrapped (text, block->body_mm, FALSE, block->width_mm - SAMPLE_WIDTH_MM - 2 * CELL_PAD_MM);
  row.lines = count_lines (row.cells[0]);
  g_array_append_val (block->rows, row);
}

void
ox_block_add_sample (OxBlock *block, OxStyle style, gboolean filled, const char *text)
{
  add_entry (block, (Row){ .kind = ROW_SAMPLE, .style = style, .filled = filled }, text);
}

void
ox_block_add_mark (OxBlock *block, OxStyle style, OxMarkKind kind, const char *text)
{
  add_entry (block, (Row){ .kind = ROW_MARK, .style = style, .mark = kind }, text);
}

void
ox_block_add_blank (OxBlock *block, const char *label, double share, gboolean last)
{
  Row *row = block->rows->len > 0 ? &g_array_index (block->rows, Row, block->rows->len - 1) : NULL;
  if (row == NULL || row->kind != ROW_BLANKS || !row->more)
    {
      Row fresh = { .kind = ROW_BLANKS };
      g_array_append_val (block->rows, fresh);
      row = &g_array_index (block->rows, Row, block->rows->len - 1);
    }
  g_return_if_fail (row->n < OX_BLOCK_COLUMNS);
  row->shares[row->n] = share;
  row->cells[row->n++] = g_strdup (label);
  row->more = !last;
}

void
ox_block_add_drawing (OxBlock *block, const OxDrawing *drawing, double height_mm)
{
  Row row = { .kind = ROW_DRAWING, .drawing = ox_drawing_ref (drawing), .height_mm = height_mm };
  g_array_append_val (block->rows, row);
}

void
ox_block_set_foot (OxBlock *block)
{
  block->foot = TRUE;
}

gboolean
ox_block_is_foot (const OxBlock *block)
{
  return block->foot;
}

gboolean
ox_block_is_form (const OxBlock *block)
{
  gboolean blanks = FALSE;
  for (guint i = 0; i < block->rows->len; i++)
    {
      RowKind kind = g_array_index (block->rows, Row, i).kind;
      if (kind != ROW_BLANKS && kind != ROW_TEXT)
        return FALSE;
      blanks |= kind == ROW_BLANKS;
    }
  return blanks;
}

guint
ox_block_get_n_rows (const OxBlock *block)
{
  return block->rows->len;
}

static double
title_mm (const OxBlock *block)
{
  return block->body_mm < 2 ? 2.5 : 3.5;
}

static double
head_height (const OxBlock *block)
{
  double heads = MAX (block->body_mm * 2.2, cell_height (block->head_lines, OX_TEXT_MIN_MM));
  return title_mm (block) + 3.0 + (block->has_head ? heads : 0);
}

static double
row_height (const OxBlock *block, const Row *row)
{
  switch (row->kind)
    {
    case ROW_TEXT:
      return block->body_mm * 1.75;
    case ROW_SAMPLE:
    case ROW_MARK:
      return MAX (cell_height (row->lines, block->body_mm) + 0.2 * block->body_mm, 4.3);
    case ROW_BLANKS:
      return BLANK_HEIGHT_MM;
    case ROW_DRAWING:
      return row->height_mm;
    case ROW_CELLS:
    case ROW_GROUP:
    default:
      return cell_height (MAX (row->lines, 1), block->body_mm);
    }
}

/* pause_before: room between row @i and the one before it */
static double
pause_before (const OxBlock *block, guint i)
{
  RowKind kind = g_array_index (block->rows, Row, i).kind;
  RowKind before = i > 0 ? g_array_index (block->rows, Row, i - 1).kind : kind;
  return (before == ROW_TEXT) != (kind == ROW_TEXT) ? PAUSE_MM : 0;
}

void
ox_block_drop (OxBlock *block, guint n)
{
  g_array_remove_range (block->rows, 0, MIN (n, block->rows->len));
}

guint
ox_block_fit (const OxBlock *block, guint from, double height_mm, double *used_mm)
{
  double used = head_height (measured (block)), whole = 0;
  guint n = 0;
  for (guint i = from; i < block->rows->len; i++)
    {
      const Row *row = &g_array_index (block->rows, Row, i);
      used += row_height (block, row) + (i > from ? pause_before (block, i) : 0);
      if (used > height_mm + 1e-9)
        break;
      if (!row->more || row->kind == ROW_BLANKS)
        {
          n = i + 1 - from;
          whole = used;
        }
    }
  *used_mm = whole;
  return n;
}

static void
append_cells (const OxBlock *block, OxDrawingBuilder *builder, OxPoint corner, const Row *row)
{
  double x = corner.x, height = row_height (block, row);
  for (guint i = 0; i < row->n; x += block->columns[i++].share * block->width_mm)
    {
      double width = block->columns[i].share * block->width_mm;
      OxAlign align = block->columns[i].align;
      double at = align == OX_ALIGN_START ? x + block->pad_mm
                  : align == OX_ALIGN_END ? x + width - block->pad_mm
                                          : x + width / 2;
      OxTextLook look = { OX_STYLE_INK, block->body_mm, 0, align, TRUE, row->strong, 0, FALSE };
      append_lines (builder, look, (OxPoint){ at, corner.y - height / 2 }, row->cells[i]);
      if (i + block->n_by_hand >= block->n_columns && !row->strong)
        ox_drawing_builder_box (builder, OX_STYLE_RULE, (OxBox){ x, corner.y - height, x + width, corner.y });
    }
  OxPoint left = { corner.x, corner.y - height }, right = { corner.x + block->width_mm, left.y };
  ox_drawing_builder_line (builder, OX_STYLE_RULE, left, right);
}

static void
append_entry (const OxBlock *block, OxDrawingBuilder *builder, OxPoint corner, const Row *row)
{
  double height = row_height (block, row), middle = corner.y - height / 2, x1 = corner.x + SAMPLE_WIDTH_MM - 1;
  if (row->kind == ROW_MARK)
    {
      double size = row->mark == OX_MARK_DOT ? 1.2 : row->mark == OX_MARK_ARROW ? 2.2 : 3.6;
      OxPoint at = { (corner.x + x1) / 2, row->mark == OX_MARK_FIRST ? middle - size / 2 : middle };
      ox_drawing_builder_mark (builder, (OxMarkLook){ row->style, row->mark, 0, size }, at);
    }
  else if (row->filled)
    {
      OxBox patch = { corner.x + 0.5, middle - 1.6, x1, middle + 1.6 };
      const OxStyleSpec *style = ox_style_get (row->style);
      ox_drawing_builder_box (builder, row->style, patch);
      /* A hatch alone would not be seen for a patch. */
      if (style->width_mm <= 0 && style->fill[OX_PALETTE_PAPER] == OX_COLOUR_NONE)
        ox_drawing_builder_box (builder, OX_STYLE_RULE, patch);
    }
  else
    ox_drawing_builder_line (builder, row->style, (OxPoint){ corner.x + 0.5, middle }, (OxPoint){ x1, middle });
  OxTextLook look = { OX_STYLE_INK, block->body_mm, 0, OX_ALIGN_START, TRUE, FALSE, 0, FALSE };
  append_lines (builder, look, (OxPoint){ corner.x + SAMPLE_WIDTH_MM + 1, middle }, row->cells[0]);
}

static void
append_blanks (const OxBlock *block, OxDrawingBuilder *builder, OxPoint corner, const Row *row)
{
  double x = corner.x;
  for (guint i = 0; i < row->n; i++)
    {
      double width = row->shares[i] * block->width_mm;
      OxBox cell = { x, corner.y - BLANK_HEIGHT_MM, x + width, corner.y };
      ox_drawing_builder_box (builder, OX_STYLE_BLOCK, cell);
      OxTextLook look = { OX_STYLE_QUIET, OX_TEXT_MIN_MM, 0, OX_ALIGN_START, FALSE, FALSE, 0, FALSE };
      g_autofree char *label = wrapped (row->cells[i], OX_TEXT_MIN_MM, FALSE, width - 2 * CELL_PAD_MM);
      double lower = (count_lines (label) - 1) * LINE_PITCH * OX_TEXT_MIN_MM / 2;
      append_lines (builder, look, (OxPoint){ x + CELL_PAD_MM, corner.y - 1 - OX_TEXT_MIN_MM - lower }, label);
      x += width;
    }
}

static void
append_row (const OxBlock *block, OxDrawingBuilder *builder, OxPoint corner, const Row *row)
{
  OxTextLook look = { OX_STYLE_INK, block->body_mm, 0, OX_ALIGN_START, TRUE, FALSE, 0, FALSE };
  double middle = corner.y - row_height (block, row) / 2;
  switch (row->kind)
    {
    case ROW_TEXT:
      if (row->cells[0] != NULL)
        ox_drawing_builder_text (builder, look, (OxPoint){ corner.x, middle }, row->cells[0]);
      ox_drawing_builder_text (builder, look,
                               (OxPoint){ corner.x + (row->cells[0] != NULL ? 2.2 * block->body_mm : 0), middle },
                               row->cells[1]);
      break;
    case ROW_GROUP:
      look.bold = TRUE;
      ox_drawing_builder_text (builder, look, (OxPoint){ corner.x + CELL_PAD_MM, middle }, row->cells[0]);
      ox_drawing_builder_line (builder, OX_STYLE_RULE, (OxPoint){ corner.x, corner.y - row_height (block, row) },
                               (OxPoint){ corner.x + block->width_mm, corner.y - row_height (block, row) });
      break;
    case ROW_SAMPLE:
    case ROW_MARK:
      append_entry (block, builder, corner, row);
      break;
    case ROW_BLANKS:
      append_blanks (block, builder, corner, row);
      break;
    case ROW_DRAWING:
      ox_drawing_builder_place (builder, (OxPoint){ corner.x, corner.y - row->height_mm }, 1);
      ox_drawing_builder_drawing (builder, row->drawing);
      ox_drawing_builder_place (builder, (OxPoint){ 0, 0 }, 1);
      ox_drawing_builder_layer (builder, "tables", "");
      break;
    case ROW_CELLS:
    default:
      append_cells (block, builder, corner, row);
    }
}

static void
append_head (const OxBlock *block, OxDrawingBuilder *builder, OxPoint corner)
{
  double title = title_mm (block), line = corner.y - title - 2.0;
  gboolean wide = ox_text_width (block->title, title, TRUE) > block->width_mm;
  OxTextLook look = { OX_STYLE_INK, wide ? OX_TEXT_MIN_MM : title, 0, OX_ALIGN_START, FALSE, TRUE, 0, FALSE };
  g_autofree char *text = ox_text_fit (block->title, look.height_mm, TRUE, block->width_mm);
  ox_drawing_builder_text (builder, look, (OxPoint){ corner.x, corner.y - title }, text);
  ox_drawing_builder_line (builder, OX_STYLE_BLOCK, (OxPoint){ corner.x, line },
                           (OxPoint){ corner.x + block->width_mm, line });
  if (!block->has_head)
    return;
  double top = corner.y - title - 3.0, height = head_height (block) - title - 3.0, x = corner.x;
  ox_drawing_builder_box (builder, OX_STYLE_HEAD, (OxBox){ corner.x, top - height, corner.x + block->width_mm, top });
  look = (OxTextLook){ OX_STYLE_INK, OX_TEXT_MIN_MM, 0, OX_ALIGN_START, TRUE, TRUE, 0, FALSE };
  for (guint i = 0; i < block->n_columns; x += block->columns[i++].share * block->width_mm)
    {
      double width = block->columns[i].share * block->width_mm;
      look.align = block->columns[i].align;
      double at = look.align == OX_ALIGN_START ? x + block->pad_mm
                  : look.align == OX_ALIGN_END ? x + width - block->pad_mm
                                               : x + width / 2;
      append_lines (builder, look, (OxPoint){ at, top - height / 2 }, block->columns[i].title);
    }
}

void
ox_block_append (const OxBlock *block, OxDrawingBuilder *builder, OxPoint corner, guint from, guint n)
{
  append_head (measured (block), builder, corner);
  OxPoint at = { corner.x, corner.y - head_height (block) };
  for (guint i = from; i < from + n; i++)
    {
      const Row *row = &g_array_index (block->rows, Row, i);
      at.y -= i > from ? pause_before (block, i) : 0;
      append_row (block, builder, at, row);
      at.y -= row_height (block, row);
    }
}
