/* Oxturn: tests of sheets/block
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/block.h"
#include "sheets/hall.h"
#include "support/ox-test.h"

static OxBlock *
table (guint rows)
{
  const OxColumn columns[]
      = { { "Strip", 0.3, OX_ALIGN_END }, { "Room", 0.4, OX_ALIGN_START }, { "Length", 0.3, OX_ALIGN_END } };
  OxBlock *block = ox_block_new ("Strips", 80, 1.8);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < rows; i++)
    {
      g_autofree char *number = g_strdup_printf ("%u", i + 1);
      ox_block_add_cells (block, FALSE, number, "A room whose name is far too long for its column", "12.34 m", NULL);
    }
  return block;
}

static OxDrawing *
draw (const OxBlock *block, guint from, guint n)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_block_append (block, builder, (OxPoint){ 100, 200 }, from, n);
  return ox_drawing_builder_end (builder);
}

static void
test_stays_inside_its_width_and_height (void)
{
  g_autoptr (OxBlock) block = table (12);
  double used;
  g_assert_cmpuint (ox_block_fit (block, 0, 1000, &used), ==, 12);
  g_autoptr (OxDrawing) drawing = draw (block, 0, 12);
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      OxBox box = drawing->elements[i].box;
      if (drawing->elements[i].kind == OX_ELEMENT_TEXT)
        {
          OxPoint corners[4];
          ox_element_text_corners (&drawing->elements[i], 1, corners);
          for (int k = 0; k < 4; k++)
            ox_box_add (&box, corners[k]);
        }
      g_assert_cmpfloat (box.x0, >=, 100 - 1e-9);
      g_assert_cmpfloat (box.x1, <=, 180 + 1e-9);
      g_assert_cmpfloat (box.y1, <=, 200 + 1e-9);
      g_assert_cmpfloat (box.y0, >=, 200 - used - 1e-9);
    }
  ox_test_no_texts_overlap (drawing, 1);
}

/* The title of a group begins at the left side, and is not left alone at the end of a part. */
static void
test_group (void)
{
  g_autoptr (OxBlock) block = table (4);
  ox_block_add_group (block, "Store");
  ox_block_add_cells (block, FALSE, "5", "Store", "12.34 m", NULL);
  double used, all;
  guint rows = ox_block_fit (block, 0, 1000, &all);
  g_autoptr (OxDrawing) drawing = draw (block, 4, 2);
  const OxElement *title = ox_test_find_cell (drawing, "Store");
  g_assert_cmpuint (rows, ==, 6);
  g_assert_cmpint (title->text.align, ==, OX_ALIGN_START);
  g_assert_cmpfloat (title->text.at.x, <, 102);
  g_assert_true (title->text.bold);
  g_assert_cmpuint (ox_block_fit (block, 0, all - 0.1, &used), ==, 4);
}

/* A text keeps off the form below it, and a form is told from other blocks. */
static void
test_form (void)
{
  g_autoptr (OxBlock) form = ox_block_new ("Trial", 80, 1.8), bare = ox_block_new ("Trial", 80, 1.8);
  ox_block_add_text (form, NULL, "Read the texture.");
  ox_block_add_blank (form, "Left", 1, TRUE);
  ox_block_add_blank (bare, "Left", 1, TRUE);
  g_autoptr (OxDrawing) drawing = draw (form, 0, 2);
  const OxElement *line = ox_test_find_cell (drawing, "Read the texture.");
  double top = -INFINITY;
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_PATH && drawing->elements[i].box.y1 > drawing->elements[i].box.y0 + 1)
      top = drawing->elements[i].box.y1;
  g_assert_cmpfloat (line->text.at.y - 0.9 - top, >, 1.5);
  g_autoptr (OxBlock) other = table (2);
  g_assert_true (ox_block_is_form (form));
  g_assert_true (ox_block_is_form (bare));
  g_assert_false (ox_block_is_form (other));
}

static void
test_parts_of_a_table_hold_every_row_once (void)
{
  g_autoptr (OxBlock) block = table (30);
  guint from = 0;
  while (from < 30)
    {
      double used;
      guint n = ox_block_fit (block, from, 40, &used);
      g_assert_cmpuint (n, >, 0);
      g_assert_cmpfloat (used, <=, 40);
      g_autoptr (OxDrawing) drawing = draw (block, from, n);
      g_assert_nonnull (ox_test_find_text (drawing, "Strips"));
      g_assert_nonnull (ox_test_find_text (drawing, "Length"));
      from += n;
    }
  double used;
  g_assert_cmpuint (ox_block_fit (block, 0, 5, &used), ==, 0);
}

static void
test_a_sentence_is_not_parted (void)
{
  g_autoptr (OxBlock) block = ox_block_new ("Notes", 40, 1.8);
  ox_block_add_text (block, "1", "One short note.");
  ox_block_add_text (block, "2",
                     "A longer note that takes several lines of a narrow block, and must stand in one place.");
  guint rows = ox_block_get_n_rows (block);
  g_assert_cmpuint (rows, >, 3);
  double all, used;
  ox_block_fit (block, 0, 1000, &all);
  for (double height = 0; height <= all; height += 0.5)
    {
      guint n = ox_block_fit (block, 0, height, &used);
      g_assert_true (n == 0 || n == 1 || n == rows);
    }
}

static void
test_blanks_stand_side_by_side (void)
{
  g_autoptr (OxBlock) block = ox_block_new ("Sign-off", 80, 1.8);
  ox_block_add_blank (block, "Name", 0.6, FALSE);
  ox_block_add_blank (block, "Date", 0.4, TRUE);
  ox_block_add_blank (block, "Signature", 1, TRUE);
  g_assert_cmpuint (ox_block_get_n_rows (block), ==, 2);
  g_autoptr (OxDrawing) drawing = draw (block, 0, 2);
  const OxElement *name = ox_test_find_text (drawing, "Name"), *date = ox_test_find_text (drawing, "Date");
  ox_test_near (name->text.at.y, date->text.at.y, 1e-9);
  ox_test_near (date->text.at.x - name->text.at.x, 48, 1e-9);
}

static void
test_samples_look_like_what_they_explain (void)
{
  g_autoptr (OxBlock) block = ox_block_new ("Legend", 80, 1.8);
  ox_block_add_sample (block, OX_STYLE_EDGE, TRUE, "Edge work");
  ox_block_add_sample (block, OX_STYLE_DROP, FALSE, "Drop");
  ox_block_add_mark (block, OX_STYLE_FIRST, OX_MARK_FIRST, "First start");
  g_autoptr (OxDrawing) drawing = draw (block, 0, 3);
  guint edges = 0, drops = 0, marks = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      edges += element->kind == OX_ELEMENT_PATH && element->style == OX_STYLE_EDGE && !element->path.no_fill;
      drops += element->kind == OX_ELEMENT_PATH && element->style == OX_STYLE_DROP && element->path.no_fill;
      marks += element->kind == OX_ELEMENT_MARK && element->mark.kind == OX_MARK_FIRST;
    }
  g_assert_cmpuint (edges, ==, 1);
  g_assert_cmpuint (drops, ==, 1);
  g_assert_cmpuint (marks, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/block/inside", test_stays_inside_its_width_and_height);
  g_test_add_func ("/block/parts", test_parts_of_a_table_hold_every_row_once);
  g_test_add_func ("/block/group", test_group);
  g_test_add_func ("/block/form", test_form);
  g_test_add_func ("/block/sentences", test_a_sentence_is_not_parted);
  g_test_add_func ("/block/blanks", test_blanks_stand_side_by_side);
  g_test_add_func ("/block/samples", test_samples_look_like_what_they_explain);
  return g_test_run ();
}
