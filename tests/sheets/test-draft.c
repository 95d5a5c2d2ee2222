/* Oxturn: tests of sheets/draft
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/draft.h"
#include "sheets/hall.h"
#include "support/ox-test.h"
#include <string.h>

static OxBlock *
list (const char *title, guint rows)
{
  OxBlock *block = ox_block_new (title, 80, 1.8);
  for (guint i = 0; i < rows; i++)
    {
      g_autofree char *text = g_strdup_printf ("%s %u.", title, i + 1);
      ox_block_add_text (block, NULL, text);
    }
  return block;
}

static void
test_blocks_flow_and_none_is_lost (void)
{
  const OxSlot slots[] = { { 0, 100, 0 }, { 100, 100, 50 } };
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  g_ptr_array_add (blocks, list ("Apple", 12));
  g_ptr_array_add (blocks, list ("Empty", 0));
  g_ptr_array_add (blocks, list ("Birch", 30));
  OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  guint pages = 0, lines = 0;
  for (gboolean done = FALSE; !done; pages++)
    {
      OxDrawingBuilder *builder = ox_drawing_builder_new ();
      done = ox_flow_fill (&flow, builder, slots, G_N_ELEMENTS (slots));
      g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
      g_assert_null (ox_test_find_text (drawing, "Empty"));
      ox_test_no_texts_overlap (drawing, 1);
      for (guint i = 0; i < drawing->n_elements; i++)
        if (drawing->elements[i].kind == OX_ELEMENT_TEXT)
          {
            lines += strchr (drawing->elements[i].text.text, '.') != NULL;
            g_assert_cmpfloat (drawing->elements[i].text.at.y, >=, drawing->elements[i].text.at.x < 90 ? 0 : 50);
          }
      g_assert_cmpuint (pages, <, 5);
    }
  g_assert_cmpuint (lines, ==, 42);
}

static void
test_the_foot_stays_on_the_first_page (void)
{
  const OxSlot slot = { 0, 100, 20 };
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  g_ptr_array_add (blocks, list ("Apple", 60));
  g_ptr_array_add (blocks, list ("Foot", 2));
  ox_block_set_foot (g_ptr_array_index (blocks, 1));
  OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  g_assert_false (ox_flow_fill (&flow, builder, &slot, 1));
  g_autoptr (OxDrawing) first = ox_drawing_builder_end (builder);
  const OxElement *foot = ox_test_find_text (first, "Foot 2.");
  g_assert_nonnull (foot);
  g_assert_cmpfloat (foot->text.at.y, >=, 20);
  g_assert_cmpfloat (foot->text.at.y, <, 24);
  ox_test_no_texts_overlap (first, 1);
  builder = ox_drawing_builder_new ();
  while (!ox_flow_fill (&flow, builder, &slot, 1))
    ;
  g_autoptr (OxDrawing) rest = ox_drawing_builder_end (builder);
  g_assert_null (ox_test_find_text (rest, "Foot"));
}

/* Three lists that lack 2 mm with the usual gaps find room with less between them; what lacks more stays as it was. */
static void
test_less_room_between_blocks_rather_than_a_page_more (void)
{
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  double height = 0, used;
  for (guint i = 0; i < 3; i++)
    {
      OxBlock *block = list ("Apple", 9);
      g_assert_cmpuint (ox_block_fit (block, 0, 1000, &used), ==, 9);
      height += used;
      g_ptr_array_add (blocks, block);
    }
  const OxSlot slot = { 0, height + 2 * OX_BLOCK_GAP_MM - 2, 0 }, tiny = { 0, height - 2, 0 };
  OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM }, same = flow, tight = flow;
  g_assert_false (ox_flow_fill (&same, NULL, &(OxSlot){ 0, slot.top, 0 }, 1));
  g_assert_true (ox_flow_tighten (&tight, &slot, 1));
  g_assert_cmpfloat (tight.gap_mm, <, OX_BLOCK_GAP_MM);
  g_assert_true (ox_flow_fill (&tight, NULL, &slot, 1));
  g_assert_false (ox_flow_tighten (&flow, &tiny, 1));
  g_assert_cmpfloat (flow.gap_mm, ==, OX_BLOCK_GAP_MM);
}

/* What is to be filled in stands in one piece where an empty column has room for it. */
static void
test_a_form_is_not_parted (void)
{
  const OxSlot slots[] = { { 0, 100, 0 }, { 100, 100, 0 } };
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  OxBlock *notes = ox_block_new ("Notes", 80, 1.8);
  for (guint i = 0; i < 5; i++)
    ox_block_add_blank (notes, i < 4 ? "Line" : "Signature", 1, TRUE);
  g_ptr_array_add (blocks, list ("Apple", 15));
  g_ptr_array_add (blocks, notes);
  OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  g_assert_true (ox_flow_fill (&flow, builder, slots, G_N_ELEMENTS (slots)));
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_TEXT && !g_str_has_prefix (drawing->elements[i].text.text, "Apple"))
      g_assert_cmpfloat (drawing->elements[i].text.at.x, >=, 100);
}

/* The last row of a table, which may be its sum, does not stand alone in the next column. */
static void
test_no_row_is_left_alone (void)
{
  const OxSlot slots[] = { { 0, 100, 0 }, { 100, 100, 0 } };
  double used;
  for (guint rows = 20; rows < 40; rows++)
    {
      g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
      g_ptr_array_add (blocks, list ("Apple", rows));
      OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
      OxDrawingBuilder *builder = ox_drawing_builder_new ();
      g_assert_true (ox_flow_fill (&flow, builder, slots, G_N_ELEMENTS (slots)));
      g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
      guint right = 0;
      for (guint i = 0; i < drawing->n_elements; i++)
        right += drawing->elements[i].kind == OX_ELEMENT_TEXT && drawing->elements[i].text.at.x >= 100
                 && strchr (drawing->elements[i].text.text, '.') != NULL;
      g_assert_cmpuint (right, !=, 1);
      g_assert_true ((right > 0) == (ox_block_fit (g_ptr_array_index (blocks, 0), 0, 100, &used) < rows));
    }
}

/* The foot, which is signed, is not parted: two columns that would hold a half each leave it to the next page. */
static void
test_the_foot_is_not_parted (void)
{
  const OxSlot low[] = { { 0, 22, 0 }, { 100, 22, 0 } }, high = { 0, 100, 0 };
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  OxBlock *foot = list ("Accepted", 2);
  ox_block_add_blank (foot, "Name", 1, TRUE);
  ox_block_add_blank (foot, "Signature", 1, TRUE);
  ox_block_set_foot (foot);
  g_ptr_array_add (blocks, foot);
  OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  g_assert_false (ox_flow_fill (&flow, builder, low, G_N_ELEMENTS (low)));
  g_autoptr (OxDrawing) none = ox_drawing_builder_end (builder);
  g_assert_cmpuint (none->n_elements, ==, 0);
  g_assert_true (ox_flow_fill (&flow, NULL, &high, 1));
}

static OxSheetRun
run_on (const OxJob *job, const OxPlan *plan, const char *paper, double denominator)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.paper = ox_paper_find (paper);
  return (OxSheetRun){
    .job = job, .plan = plan, .form = ox_form_new (&options, job->units), .asked = { denominator, NULL }
  };
}

static void
test_the_floor_stands_in_its_area (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  g_ptr_array_add (blocks, list ("Apple", 20));
  for (guint i = 0; i < ox_paper_get_count (); i++)
    {
      OxSheetRun run = run_on (job, NULL, ox_paper_get (i)->name, 0);
      OxPlot plot;
      g_autoptr (GError) error = NULL;
      g_assert_true (
          ox_plot_new (&run, &(OxFlow){ blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_AROUND_ALL (20), &plot, &error));
      OxBox floor = ox_job_box (job);
      OxPoint low = ox_plot_to_page (&plot, (OxPoint){ floor.x0, floor.y0 }),
              high = ox_plot_to_page (&plot, (OxPoint){ floor.x1, floor.y1 });
      g_assert_cmpfloat (low.x, >=, plot.area.x0 + 20 - 1e-6);
      g_assert_cmpfloat (low.y, >=, plot.area.y0 + 20 - 1e-6);
      g_assert_cmpfloat (high.x, <=, plot.area.x1 - 20 + 1e-6);
      g_assert_cmpfloat (high.y, <=, plot.area.y1 - 20 + 1e-6);
      ox_test_near ((high.x - low.x) * plot.scale.denominator / 1000, floor.x1 - floor.x0, 1e-9);
      for (guint k = 0; k < plot.n_slots; k++)
        g_assert_true (plot.slots[k].x >= plot.area.x1 || plot.slots[k].top <= plot.area.y0);
    }
}

/* A hall lower than the page leaves room below it: for columns that meet neither floor, scale bar nor each other. */
static void
test_room_below_the_floor_is_used (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  OxSheetRun run = run_on (job, NULL, "A3", 100);
  OxPlot plot;
  g_assert_true (ox_plot_new (&run, &(OxFlow){ none, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_AROUND_ALL (20), &plot, NULL));
  g_assert_cmpuint (plot.n_slots, ==, 1);
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  g_ptr_array_add (blocks, list ("Pear", 400));
  ox_plot_use_below (&plot, &run, &(OxFlow){ blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_AROUND_ALL (20));
  g_assert_cmpuint (plot.n_slots, ==, 4);
  OxBox floor = ox_job_box (job);
  OxPoint low = ox_plot_to_page (&plot, (OxPoint){ floor.x0, floor.y0 }),
          high = ox_plot_to_page (&plot, (OxPoint){ floor.x1, floor.y1 });
  ox_test_near (high.y, plot.area.y1 - 20, 1e-6);
  for (guint i = 1; i < plot.n_slots; i++)
    {
      g_assert_cmpfloat (plot.slots[i].top, <=, low.y - 20 + 1e-6);
      g_assert_cmpfloat (plot.slots[i].bottom, >=, plot.area.y0 + 17);
      g_assert_cmpfloat (plot.slots[i].x, >, plot.area.x0);
      double right = i + 1 < plot.n_slots ? plot.slots[i + 1].x : plot.area.x1;
      g_assert_cmpfloat (plot.slots[i].x + run.form.block_mm, <, right - 2);
    }
  /* Little to place takes little of it, and the floor stands between that and the upper side. */
  g_autoptr (GPtrArray) few = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  g_ptr_array_add (few, list ("Plum", 50));
  g_assert_true (ox_plot_new (&run, &(OxFlow){ none, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_AROUND_ALL (20), &plot, NULL));
  ox_plot_use_below (&plot, &run, &(OxFlow){ few, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_AROUND_ALL (20));
  low = ox_plot_to_page (&plot, (OxPoint){ floor.x0, floor.y0 });
  high = ox_plot_to_page (&plot, (OxPoint){ floor.x1, floor.y1 });
  ox_test_near (plot.area.y1 - high.y, low.y - plot.slots[1].top, 1e-6);
  g_assert_cmpfloat (plot.area.y1 - high.y, >, 21);
  /* Upright paper has its blocks below anyway. */
  run = run_on (job, NULL, "A4", 0);
  g_assert_true (ox_plot_new (&run, &(OxFlow){ none, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_AROUND_ALL (20), &plot, NULL));
  guint before = plot.n_slots;
  ox_plot_use_below (&plot, &run, &(OxFlow){ blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_AROUND_ALL (20));
  g_assert_cmpuint (plot.n_slots, ==, before);
}

static void
test_a_scale_that_is_too_large_is_refused (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  OxSheetRun run = run_on (job, NULL, "A4", 20);
  OxPlot plot;
  g_autoptr (GError) error = NULL;
  g_assert_false (
      ox_plot_new (&run, &(OxFlow){ none, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_AROUND_ALL (20), &plot, &error));
  g_assert_error (error, OX_SHEETS_ERROR, OX_SHEETS_ERROR_TOO_LARGE);
  g_assert_nonnull (strstr (error->message, "A4"));
  g_assert_nonnull (strstr (error->message, "1:20"));
  /* It names a scale that does fit. */
  const char *offer = strstr (error->message, "choose ");
  g_assert_nonnull (offer);
  OxScale scale;
  g_autofree char *ratio = g_strndup (offer + 7, strcspn (offer + 7, " "));
  g_assert_true (ox_scale_parse (ratio, &scale));
  run.asked = scale;
  g_assert_true (ox_plot_new (&run, &(OxFlow){ none, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_AROUND_ALL (20), &plot, NULL));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draft/flow", test_blocks_flow_and_none_is_lost);
  g_test_add_func ("/draft/tighten", test_less_room_between_blocks_rather_than_a_page_more);
  g_test_add_func ("/draft/foot", test_the_foot_stays_on_the_first_page);
  g_test_add_func ("/draft/whole-foot", test_the_foot_is_not_parted);
  g_test_add_func ("/draft/form", test_a_form_is_not_parted);
  g_test_add_func ("/draft/last-row", test_no_row_is_left_alone);
  g_test_add_func ("/draft/plot", test_the_floor_stands_in_its_area);
  g_test_add_func ("/draft/too-large", test_a_scale_that_is_too_large_is_refused);
  g_test_add_func ("/draft/below", test_room_below_the_floor_is_used);
  return g_test_run ();
}
