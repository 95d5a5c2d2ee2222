/* Oxturn: tests of sheets/form
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/form.h"
#include "sheets/hall.h"
#include "support/ox-test.h"
#include <string.h>

static OxForm
form_on (const char *paper, OxOrientation orientation)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.paper = ox_paper_find (paper);
  options.orientation = orientation;
  return ox_form_new (&options, OX_UNITS_METRES);
}

static void
test_frames (void)
{
  OxForm a3 = form_on ("A3", OX_ORIENTATION_AUTO);
  /* ISO 5457: 20 mm on the left, 10 mm elsewhere. */
  ox_test_near (a3.frame.x0, 20, 1e-9);
  ox_test_near (a3.frame.y0, 10, 1e-9);
  ox_test_near (a3.frame.x1, 410, 1e-9);
  ox_test_near (a3.frame.y1, 287, 1e-9);
  OxForm a4 = form_on ("A4", OX_ORIENTATION_AUTO);
  g_assert_true (a4.upright);
  ox_test_near (a4.frame.x1 - a4.frame.x0, 180, 1e-9);
  ox_test_near (a4.title.x1 - a4.title.x0, 180, 1e-9);
  g_assert_false (form_on ("A4", OX_ORIENTATION_LANDSCAPE).upright);
  g_assert_true (form_on ("Arch D", OX_ORIENTATION_PORTRAIT).upright);
  OxForm letter = form_on ("Letter", OX_ORIENTATION_AUTO);
  ox_test_near (letter.frame.x0, 25.4, 1e-9);
  ox_test_near (letter.frame.x1, 215.9 - 12.7, 1e-9);
}

static void
test_paper_follows_the_units (void)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  g_assert_cmpstr (ox_form_new (&options, OX_UNITS_MILLIMETRES).paper->name, ==, "A3");
  g_assert_cmpstr (ox_form_new (&options, OX_UNITS_FEET).paper->name, ==, "Tabloid");
}

static void
test_title_block_and_slots_on_every_paper (void)
{
  for (guint i = 0; i < ox_paper_get_count (); i++)
    for (OxOrientation o = OX_ORIENTATION_PORTRAIT; o <= OX_ORIENTATION_LANDSCAPE; o++)
      {
        OxForm form = form_on (ox_paper_get (i)->name, o);
        g_test_message ("%s, %u columns of %.1f mm, title %.1f mm", form.paper->name, form.n_columns, form.block_mm,
                        form.title.x1 - form.title.x0);
        g_assert_cmpfloat (form.title.x1 - form.title.x0, <=, 180 + 1e-9);
        g_assert_cmpfloat (form.title.x0, >=, form.frame.x0 - 1e-9);
        ox_test_near (form.title.x1, form.frame.x1, 1e-9);
        ox_test_near (form.title.y0, form.frame.y0, 1e-9);
        g_assert_cmpfloat (form.block_mm, >=, 70);
        /* On paper that lies the drawing has most of the width: all but one column of three or more. */
        g_assert_cmpuint (form.n_columns, >=, o == OX_ORIENTATION_LANDSCAPE ? 3 : 2);
        g_autofree OxSlot *slots = ox_form_get_slots (&form);
        for (guint k = 0; k < form.n_columns; k++)
          {
            g_assert_cmpfloat (slots[k].x, >, form.frame.x0);
            g_assert_cmpfloat (slots[k].x + form.block_mm, <, form.frame.x1);
            g_assert_cmpfloat (slots[k].bottom, <, slots[k].top);
            g_assert_true (slots[k].bottom >= form.title.y1 || slots[k].x + form.block_mm <= form.title.x0);
          }
      }
}

/* is_inside: a text with all of its letters */
static gboolean
is_inside (const OxElement *element, OxBox box)
{
  OxPoint corners[4];
  ox_element_text_corners (element, 1, corners);
  for (int i = 0; i < 4; i++)
    if (corners[i].x < box.x0 || corners[i].x > box.x1 || corners[i].y < box.y0 || corners[i].y > box.y1)
      return FALSE;
  return TRUE;
}

static void
check_title_block (const OxForm *form, const OxTexts *job)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  OxFormTexts texts = { "Crew drawing", "2 / 14", "1/16\" = 1'-0\" (1:192)" };
  ox_form_append (form, builder, job, &texts);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  guint fields = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (element->kind != OX_ELEMENT_TEXT || !g_str_equal (drawing->layers[element->layer].id, "title-block"))
        continue;
      g_assert_true (is_inside (element, form->title));
      fields++;
    }
  g_assert_cmpuint (fields, >=, 14);
  /* ISO 7200: owner, number, date, sheet, title, approval, creator, kind of document. */
  const char *const labels[] = { "Drawing number", "Revision", "Sheet",  "Date of issue", "Approved by", "Drawn by",
                                 "Scale",          "Paper",    "Status", "2 / 14",        "Crew drawing" };
  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    g_assert_nonnull (ox_test_find_text (drawing, labels[i]));
  ox_test_no_texts_overlap (drawing, 1);
}

static void
test_title_block_holds_long_and_short_texts (void)
{
  g_autoptr (OxJob) hall = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxTexts) endless = ox_texts_copy (hall->texts);
  char **all[] = { &endless->title,   &endless->client, &endless->site,     &endless->author,
                   &endless->company, &endless->number, &endless->revision, &endless->status };
  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    {
      g_free (*all[i]);
      *all[i] = g_strdup ("Vorbereitung der Bodenfl\xc3\xa4"
                          "che in der gro\xc3\x9f"
                          "en Halle am Hafen, dritter Bauabschnitt");
    }
  for (guint i = 0; i < ox_paper_get_count (); i++)
    {
      OxForm form = form_on (ox_paper_get (i)->name, OX_ORIENTATION_AUTO);
      check_title_block (&form, hall->texts);
      check_title_block (&form, endless);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/form/frames", test_frames);
  g_test_add_func ("/form/default-paper", test_paper_follows_the_units);
  g_test_add_func ("/form/every-paper", test_title_block_and_slots_on_every_paper);
  g_test_add_func ("/form/title-block", test_title_block_holds_long_and_short_texts);
  return g_test_run ();
}
