/* Oxturn: tests/paint/sample-pages - a small set of pages with every kind of element.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "paint/sample-pages.h"
#include "paint/pdf.h"
#include "paint/svg.h"
#include <locale.h>

static OxDrawing *
draw (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_layer (builder, "outline", "Outline");
  ox_drawing_builder_item (builder, "R1", 0);
  ox_drawing_builder_line (builder, OX_STYLE_WALL, (OxPoint){ 50, 100 }, (OxPoint){ 150, 100 });
  ox_drawing_builder_line (builder, OX_STYLE_JOINT, (OxPoint){ 50, 150 }, (OxPoint){ 150, 150.123456 });
  ox_drawing_builder_layer (builder, "edge-work", "Edge work");
  ox_drawing_builder_item (builder, "E1", 0);
  ox_drawing_builder_box (builder, OX_STYLE_EDGE, (OxBox){ 160, 100, 180, 110 });
  ox_drawing_builder_box (builder, OX_STYLE_PIT, (OxBox){ 160, 120, 180, 130 });
  ox_drawing_builder_layer (builder, "names", "Names & \"tags\"");
  ox_drawing_builder_item (builder, "E1", 0);
  OxTextLook look = { OX_STYLE_TAG, 2.5, 0, OX_ALIGN_START, TRUE, FALSE, 0.5, FALSE };
  ox_drawing_builder_text (builder, look, (OxPoint){ 60, 60 },
                           "K\xc3\xbc"
                           "che <1> & 12.5 m\xc2\xb2");
  look = (OxTextLook){ OX_STYLE_INK, 5, G_PI / 2, OX_ALIGN_MIDDLE, FALSE, TRUE, 0, FALSE };
  ox_drawing_builder_text (builder, look, (OxPoint){ 40, 100 }, "Upright");
  ox_drawing_builder_item (builder, NULL, 0);
  for (OxMarkKind kind = 0; kind < OX_N_MARKS; kind++)
    ox_drawing_builder_mark (builder, (OxMarkLook){ OX_STYLE_STATION, kind, 0.3, 5 }, (OxPoint){ 60 + 12 * kind, 200 });
  return ox_drawing_builder_end (builder);
}

OxPageSet *
ox_test_pages (void)
{
  g_autoptr (OxDrawing) drawing = draw ();
  OxPage pages[] = {
    { 420, 297, (char *) "Crew drawing", (char *) "Strips & edge work.", (char *) "1", drawing, NULL, OX_BOX_EMPTY, { 0, 0 } },
    { 215.9, 279.4, (char *) "Schedule", (char *) "Tables.", (char *) "2", drawing, NULL, OX_BOX_EMPTY, { 0, 0 } },
  };
  OxPageSet set = { (char *) "Hall 3",
                    (char *) "H. Ostrevik",
                    (char *) "Quay Road",
                    (char *) "BFP-1, A",
                    (char *) "2026-03-04",
                    2,
                    pages };
  return ox_page_set_new (&set);
}

GBytes *
ox_test_bytes_in_locale (const OxPageSet *set, gboolean pdf, const char *locale)
{
  g_autofree char *before = g_strdup (setlocale (LC_ALL, NULL));
  if (setlocale (LC_ALL, locale) == NULL)
    {
      g_test_skip ("this locale is not installed");
      return NULL;
    }
  g_autoptr (GError) error = NULL;
  GBytes *bytes = pdf ? ox_pdf_new (set, &error) : ox_svg_new (&set->pages[0]);
  setlocale (LC_ALL, before);
  g_assert_no_error (error);
  return bytes;
}

char *
ox_test_run (const char *const *argv)
{
  g_autofree char *program = g_find_program_in_path (argv[0]);
  if (program == NULL)
    {
      g_autofree char *reason = g_strdup_printf ("%s is not installed", argv[0]);
      g_test_skip (reason);
      return NULL;
    }
  g_autoptr (GError) error = NULL;
  char *out = NULL;
  int status;
  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, NULL, &status, &error);
  g_assert_no_error (error);
  g_spawn_check_wait_status (status, &error);
  g_assert_no_error (error);
  return out;
}
