/* Oxturn: tests of sheets/legend
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/draft.h"
#include "sheets/floor.h"
#include "sheets/hall.h"
#include "support/ox-test.h"

static OxDrawing *
legend_of (const OxJob *job, const OxPlan *plan, OxFloorLayers layers)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  OxSheetRun run = { .job = job, .plan = plan, .form = ox_form_new (&options, job->units) };
  g_autoptr (OxDrawing) floor = ox_floor_picture_new_at (job, plan, layers, 10, NULL);
  g_autoptr (OxBlock) legend = ox_legend_new (&run, floor);
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_block_append (legend, builder, (OxPoint){ 0, 0 }, 0, ox_block_get_n_rows (legend));
  return ox_drawing_builder_end (builder);
}

/* has_style: whether a path of the drawing has it; the floor of rooms and doorways needs no explanation */
static gboolean
has_style (const OxDrawing *drawing, OxStyle style)
{
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_PATH && drawing->elements[i].style == style)
      return TRUE;
  return FALSE;
}

static void
test_exactly_what_is_on_the_floor (void)
{
  const OxFloorLayers sets[] = { OX_FLOOR_OUTLINE, OX_FLOOR_SCREEN | OX_FLOOR_WALKS,
                                 OX_FLOOR_TO_PREPARE | OX_FLOOR_EDGE_WORK | OX_FLOOR_OUTLINE };
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  for (guint s = 0; s < G_N_ELEMENTS (sets); s++)
    {
      g_autoptr (OxDrawing) floor = ox_floor_picture_new_at (job, plan, sets[s], 10, NULL);
      g_autoptr (OxDrawing) legend = legend_of (job, plan, sets[s]);
      for (OxStyle style = OX_STYLE_WALL; style <= OX_STYLE_TO_PREPARE; style++)
        {
          g_test_message ("set %u: %s", s, ox_style_get (style)->name);
          if (style != OX_STYLE_DOORWAY)
            g_assert_cmpint (has_style (legend, style), ==, has_style (floor, style));
        }
    }
}

/* A plan of which something is done: the legend says so, as it is drawn. */
static void
test_done (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) before = legend_of (job, plan, OX_FLOOR_SCREEN);
  g_assert_false (has_style (before, OX_STYLE_DONE));
  plan->strips[2].done = 1;
  g_autoptr (OxDrawing) after = legend_of (job, plan, OX_FLOOR_SCREEN);
  g_assert_true (has_style (after, OX_STYLE_DONE));
  plan->strips[2].done = 0;
  plan->edges[0].done = 1;
  g_autoptr (OxDrawing) floor = ox_floor_picture_new_at (job, plan, OX_FLOOR_SCREEN, 10, NULL);
  g_assert_true (has_style (floor, OX_STYLE_DONE));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/legend/done", test_done);
  g_test_add_func ("/legend/exact", test_exactly_what_is_on_the_floor);
  return g_test_run ();
}
