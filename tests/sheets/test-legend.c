/* Oxturn: tests of sheets/legend
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/draft.h"
#include "sheets/floor.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"

static OxDrawing *
legend_of (const OxJob *job, const OxPlan *plan, OxFloorLayers layers)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  OxSheetRun run = { .job = job, .plan = plan, .form = ox_form_new (&options, job->units) };
  g_autoptr (OxDrawing) floor = ox_floor_picture_new_at (job, plan, layers, 10, NULL);
  g_autoptr (OxBlock) legend = ox_legend_new (&run, floor, floor);
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_block_append (legend, builder, (OxPoint){ 0, 0 }, 0, ox_block_get_n_rows (legend));
  return ox_drawing_builder_end (builder);
}

/* has_style: whether a path of the drawing has it */
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
          g_assert_cmpint (has_style (legend, style), ==, has_style (floor, style));
        }
    }
}

/* The blocks beside a drawing and its frame have these whatever is drawn; texts say themselves what they are. */
static gboolean
is_plain (OxStyle style)
{
  return style >= OX_STYLE_INK && style != OX_STYLE_LEADER && style != OX_STYLE_MATCH;
}

/* whether it stands in the legend, or is drawn: on the floor, as a tag or as a match line */
static gboolean
is_drawn (const OxDrawing *page, const OxElement *element)
{
  static const char *const others[] = { "frame", "title-block", "scale", "tables", "key-plan", NULL };
  return !g_strv_contains (others, page->layers[element->layer].id);
}

/* what an entry of the legend explains: key of its style and mark; heads of arrows belong to the middles of strips, and
 * leaders to their dot */
static guint
key_of (const OxElement *element)
{
  if (element->kind == OX_ELEMENT_MARK && element->mark.kind != OX_MARK_ARROW)
    return element->style * (OX_N_MARKS + 1) + element->mark.kind;
  return element->style == OX_STYLE_LEADER ? OX_STYLE_LEADER * (OX_N_MARKS + 1) + OX_MARK_DOT
                                           : element->style * (OX_N_MARKS + 1) + OX_N_MARKS;
}

/* The marks and styles of what is drawn on a page, those of its legend, and none in only one of them. */
static void
compare_page (const OxPage *page)
{
  gboolean drawn[(OX_N_STYLES + 1) * (OX_N_MARKS + 1)] = { FALSE }, told[G_N_ELEMENTS (drawn)] = { FALSE };
  for (guint i = 0; i < page->drawing->n_elements; i++)
    {
      const OxElement *element = &page->drawing->elements[i];
      if (element->kind == OX_ELEMENT_TEXT || element->style == OX_STYLE_ROOM
          || (element->kind == OX_ELEMENT_PATH && is_plain (element->style)))
        continue;
      if (is_drawn (page->drawing, element))
        drawn[key_of (element)] = TRUE;
      else if (g_str_equal (page->drawing->layers[element->layer].id, "tables"))
        told[key_of (element)] = TRUE;
    }
  for (guint i = 0; i < G_N_ELEMENTS (drawn); i++)
    if (drawn[i] != told[i] && (i % (OX_N_MARKS + 1) != OX_MARK_TICK))
      g_error ("%s, page %s: %s, mark %u of %u is %s", page->title, page->label,
               ox_style_get (i / (OX_N_MARKS + 1))->name, i % (OX_N_MARKS + 1), OX_N_MARKS,
               drawn[i] ? "drawn and not in the legend" : "in the legend and not drawn");
}

/* On scope and crew drawings, of one page and of parts, what is drawn and what the legend has is the same. */
static void
test_pages_both_ways (void)
{
  static const struct
  {
    const char *paper, *scale;
    OxSheetKinds which;
  } sets[] = { { "A2", "auto", OX_SHEET_SCOPE }, { "A1", "auto", OX_SHEET_CREW }, { "A3", "1:50", OX_SHEET_CREW } };
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (GError) error = NULL;
  guint pages = 0;
  for (guint s = 0; s < G_N_ELEMENTS (sets); s++)
    {
      OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
      options.which = sets[s].which;
      options.paper = ox_paper_find (sets[s].paper);
      g_assert_true (ox_scale_parse (sets[s].scale, &options.scale));
      g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
      g_assert_no_error (error);
      for (guint p = 0; p < set->n_pages; p++)
        if (ox_test_find_cell (set->pages[p].drawing, "Legend") != NULL)
          {
            compare_page (&set->pages[p]);
            pages++;
          }
    }
  g_assert_cmpuint (pages, >=, 4);
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
  g_test_add_func ("/legend/pages-both-ways", test_pages_both_ways);
  g_test_add_func ("/legend/exact", test_exactly_what_is_on_the_floor);
  return g_test_run ();
}
