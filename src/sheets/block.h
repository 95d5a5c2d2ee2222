/* Oxturn: sheets/block - a titled list of rows beside the drawing: table, legend, notes, signatures.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A block is made for one width on paper. It can be split between rows; its head stands over each part.
 */
#pragma once
#include "drawing/drawing.h"
G_BEGIN_DECLS

#define OX_BLOCK_COLUMNS 8
#define OX_BLOCK_GAP_MM 5.0 /* below a block */

typedef struct
{
  const char *title;  /* (nullable) */
  double share;       /* of the width; the shares of a block add up to 1 */
  OxAlign align;
} OxColumn;

typedef struct _OxBlock OxBlock;

/* ox_block_new: @body_mm: height of capitals of its rows; titles are one size larger */
OxBlock *ox_block_new (const char *title, double width_mm, double body_mm) G_GNUC_WARN_UNUSED_RESULT;
void ox_block_free (OxBlock *block);

/* ox_block_set_columns: at most OX_BLOCK_COLUMNS, copied; a column too narrow for the longest word of its title or its cells takes from the others; a head with their titles follows the block's title where one has any */
void ox_block_set_columns (OxBlock *block, const OxColumn *columns, guint n);

/* ox_block_set_by_hand: the last @n columns are filled in by hand: their cells are outlined, in rows that are no sums */
void ox_block_set_by_hand (OxBlock *block, guint n);

/* ox_block_add_cells: a row with one text a column, wrapped where it is too long; @strong: a sum */
void ox_block_add_cells (OxBlock *block, gboolean strong, ...) G_GNUC_NULL_TERMINATED;

/* ox_block_add_group: a title over the rows that follow, as wide as the block; it is not parted from the next row */
void ox_block_add_group (OxBlock *block, const char *title);

/* ox_block_add_text: lines over the whole width, wrapped; @mark (nullable) hangs in front of the first: a bullet or a number */
void ox_block_add_text (OxBlock *block, const char *mark, const char *text);

/* ox_block_add_sample: an entry of a legend: how @style looks, and what it means; @filled: a patch, else a line */
void ox_block_add_sample (OxBlock *block, OxStyle style, gboolean filled, const char *text);

/* ox_block_add_mark: an entry of a legend for a mark */
void ox_block_add_mark (OxBlock *block, OxStyle style, OxMarkKind kind, const char *text);

/* ox_block_add_blank: a cell with a label that is filled in by hand; @share of the width, several stand side by side up to 1 */
void ox_block_add_blank (OxBlock *block, const char *label, double share, gboolean last);

/* ox_block_add_drawing: @drawing: in mm, its lower left corner at the origin; @height_mm: of the row that it stands in */
void ox_block_add_drawing (OxBlock *block, const OxDrawing *drawing, double height_mm);

/* ox_block_set_foot: the block stands at the bottom of the page's last column, whichever others find no room; one in a flow, never parted */
void ox_block_set_foot (OxBlock *block);
gboolean ox_block_is_foot (const OxBlock *block);

/* ox_block_is_form: whether it holds only texts and cells that are filled in by hand, and is better not parted */
gboolean ox_block_is_form (const OxBlock *block);

/* ox_block_get_n_rows: lines of wrapped texts each count as one; a block without rows is not worth its head */
guint ox_block_get_n_rows (const OxBlock *block);

/* ox_block_drop: takes the first @n rows away */
void ox_block_drop (OxBlock *block, guint n);

/* ox_block_fit:
 * @from: first row
 * @height_mm: room
 * @used_mm: (out): height of head and rows, without the gap below
 *
 * Returns: how many rows fit under a head; 0 when none does */
guint ox_block_fit (const OxBlock *block, guint from, double height_mm, double *used_mm);

/* ox_block_append: rows @from to @from + @n - 1 with the head, their upper left corner at @corner */
void ox_block_append (const OxBlock *block, OxDrawingBuilder *builder, OxPoint corner, guint from, guint n);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxBlock, ox_block_free)
G_END_DECLS
