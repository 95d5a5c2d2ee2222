/* Oxturn: tests of sheets/dimensions
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/dimensions.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"

typedef struct
{
  OxJob *job;
  OxSheetRun run;
  OxPlot plot;
  OxDrawing *drawing;
  OxChains *chains;
} Made;

/* @taken: (nullable): where labels stand already */
static void
draw_beside (Made *made, const char *paper, const OxLabelBox *taken)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.paper = ox_paper_find (paper);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  made->run = (OxSheetRun){ .job = made->job, .form = ox_form_new (&options, made->job->units) };
  gboolean fits
      = ox_plot_new (&made->run, &(OxFlow){ none, 0, 0, FALSE, OX_BLOCK_GAP_MM }, ox_chains_around (made->run.job), &made->plot, &error);
  g_assert_no_error (error);
  g_assert_true (fits);
  g_autoptr (OxLabels) labels = ox_labels_new (made->plot.mm_per_m);
  if (taken != NULL)
    ox_labels_take (labels, taken);
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  made->chains = ox_chains_append (&made->run, &made->plot, builder, labels);
  ox_chains_append_sides (made->chains, &made->run, &made->plot, builder, labels);
  made->drawing = ox_drawing_builder_end (builder);
}

static void
draw (Made *made, const char *paper)
{
  draw_beside (made, paper, NULL);
}

static void
made_clear (Made *made)
{
  ox_chains_free (made->chains);
  ox_drawing_unref (made->drawing);
  ox_job_unref (made->job);
}

static void
put (OxJobBuilder *builder, guint number, const OxPoint *points, guint n)
{
  g_autofree char *id = g_strdup_printf ("R%u", number);
  g_autoptr (OxRing) ring = ox_ring_new (points, n);
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = id, .ring = ring });
  ox_job_builder_put_room (builder, room);
}

/* Rooms in a row, walls of 0.1 m or 0.2 m between them, each with a step in its upper wall. */
static OxJob *
random_job (OxUnits units)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  double x = 0;
  guint n = (guint) g_test_rand_int_range (1, 6);
  ox_job_builder_set_units (builder, units);
  for (guint i = 0; i < n; i++)
    {
      double w = g_test_rand_double_range (0.4, 15), low = g_test_rand_double_range (3, 20);
      double high = low + g_test_rand_double_range (0.1, 6), step = w * g_test_rand_double_range (0.1, 0.9);
      double foot = g_test_rand_bit () ? 0 : g_test_rand_double_range (0.1, 2);
      const OxPoint points[]
          = { { x, foot }, { x + w, foot }, { x + w, low }, { x + step, low }, { x + step, high }, { x, high } };
      put (builder, i + 1, points, G_N_ELEMENTS (points));
      x += w + (g_test_rand_bit () ? 0.1 : 0.2);
    }
  return ox_job_builder_end (builder);
}

/* Sum of the level figures whose base lines stand between two heights of the page; @n: (out): how many */
static double
sum_between (const OxDrawing *drawing, double from, double to, guint *n)
{
  double sum = 0;
  *n = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (element->kind != OX_ELEMENT_TEXT || element->text.angle != 0 || element->text.at.y < from
          || element->text.at.y > to)
        continue;
      sum += g_ascii_strtod (element->text.text, NULL);
      ++*n;
    }
  return sum;
}

/* On floors of all kinds no two figures overlap, all stand on the drawing's part of the page, and the running ones
 * below come to the overall one, thousandth by thousandth. */
static void
test_random (void)
{
  static const char *const papers[] = { "A4", "A3", "A1", "Letter", "ANSI D" };
  for (guint k = 0; k < 150; k++)
    {
      Made made = { .job = random_job (k % 3 == 2 ? OX_UNITS_FEET : OX_UNITS_METRES) };
      draw (&made, papers[k % G_N_ELEMENTS (papers)]);
      ox_test_no_texts_overlap (made.drawing, 1);
      for (guint i = 0; i < made.drawing->n_elements; i++)
        {
          const OxElement *element = &made.drawing->elements[i];
          OxPoint corners[4];
          if (element->kind != OX_ELEMENT_TEXT)
            continue;
          ox_element_text_corners (element, 1, corners);
          for (guint c = 0; c < 4; c++)
            g_assert_true (corners[c].x > made.plot.area.x0 && corners[c].x < made.plot.area.x1
                           && corners[c].y > made.plot.area.y0 && corners[c].y < made.plot.area.y1);
        }
      guint n, overall;
      OxBox box = ox_job_box (made.job);
      double foot = made.plot.origin.y + box.y0 * made.plot.mm_per_m;
      double sum = sum_between (made.drawing, foot - 14, foot - 8, &n);
      double whole = sum_between (made.drawing, foot - 22, foot - 16.5, &overall);
      if (made.job->units == OX_UNITS_METRES && made.chains->stops[0]->len > 2)
        {
          g_assert_cmpuint (n, ==, made.chains->stops[0]->len - 1);
          g_assert_cmpuint (overall, ==, 1);
          ox_test_near (sum, whole, 1e-9);
          ox_test_near (whole, box.x1 - box.x0, 0.00051);
        }
      made_clear (&made);
    }
}

/* The hall's walls: 12 m, a wall of 0.2 m, 5 m, 17.2 m in all; the wall's figure has no room in its span and stands
 * below. */
static void
test_hall (void)
{
  Made made = { .job = ox_test_hall (OX_UNITS_METRES) };
  draw (&made, "A3");
  static const double below[] = { 0, 12, 12.2, 17.2 }, left[] = { 0, 8 };
  g_assert_cmpuint (made.chains->stops[0]->len, ==, 4);
  g_assert_cmpuint (made.chains->stops[2]->len, ==, 2);
  for (guint i = 0; i < 4; i++)
    ox_test_near (g_array_index (made.chains->stops[0], double, i), below[i], 1e-9);
  for (guint i = 0; i < 2; i++)
    ox_test_near (g_array_index (made.chains->stops[2], double, i), left[i], 1e-9);
  /* What is above and to the right says nothing new. */
  g_assert_cmpuint (made.chains->stops[1]->len, ==, 0);
  g_assert_cmpuint (made.chains->stops[3]->len, ==, 0);
  const OxElement *small = ox_test_find_text (made.drawing, "0.20"),
                  *long_one = ox_test_find_text (made.drawing, "12.00");
  g_assert_nonnull (small);
  g_assert_nonnull (long_one);
  g_assert_cmpfloat (small->text.at.y, <, long_one->text.at.y);
  made_clear (&made);
}

/* A corner inside the outline is dimensioned along its wall; a slanted wall along itself. */
static void
test_sides (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  /* A U open to the right, 3 m deep between 2 m and 5 m, whose upper right corner is cut off. */
  const OxPoint points[]
      = { { 0, 0 }, { 10, 0 }, { 10, 2 }, { 7, 2 }, { 7, 5 }, { 10, 5 }, { 10, 6 }, { 8, 8 }, { 0, 8 } };
  put (builder, 1, points, G_N_ELEMENTS (points));
  Made made = { .job = ox_job_builder_end (builder) };
  draw (&made, "A3");
  g_assert_nonnull (ox_test_find_text (made.drawing, "3.00"));
  g_assert_nonnull (ox_test_find_text (made.drawing, "2.828"));
  g_assert_nonnull (ox_test_find_text (made.drawing, "10.00"));
  ox_test_no_texts_overlap (made.drawing, 1);
  made_clear (&made);
}

/* The depth of a notch, 4 mm of paper, has no room for its figure, which may reach beyond it. */
static void
test_notch (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  const OxPoint points[]
      = { { 0, 0 }, { 60, 0 }, { 60, 4 }, { 75, 4 }, { 75, 0 }, { 200, 0 }, { 200, 100 }, { 0, 100 } };
  put (builder, 1, points, G_N_ELEMENTS (points));
  Made made = { .job = ox_job_builder_end (builder) };
  draw (&made, "A3");
  g_assert_cmpfloat (made.plot.mm_per_m, <, 3);
  g_assert_nonnull (ox_test_find_text (made.drawing, "4.00"));
  g_assert_nonnull (ox_test_find_text (made.drawing, "15.00"));
  ox_test_no_texts_overlap (made.drawing, 1);
  made_clear (&made);
}

/* A step of 0.1 m is 0.1 mm of paper, and something stands where its figure would: what is left of the running
 * dimensions is the overall one, which stands there once. */
static void
test_overall_once (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  const OxPoint points[] = { { 0, 0.1 }, { 0.1, 0.1 }, { 0.1, 0 }, { 200, 0 }, { 200, 100 }, { 0, 100 } };
  put (builder, 1, points, G_N_ELEMENTS (points));
  Made made = { .job = ox_job_builder_end (builder) };
  draw_beside (&made, "A3", &(OxLabelBox){ { 100, 0 }, 0, { -400, -17, 400, -10.5 } });
  g_assert_cmpuint (made.chains->stops[0]->len, ==, 2);
  guint n = 0;
  for (guint i = 0; i < made.drawing->n_elements; i++)
    n += made.drawing->elements[i].kind == OX_ELEMENT_TEXT
         && g_str_equal (made.drawing->elements[i].text.text, "200.00");
  g_assert_cmpuint (n, ==, 1);
  made_clear (&made);
}

/* A small room with no place left but along the wall to the next room has no dimension there: it would be taken for
 * that of the neighbour. */
static void
test_within_its_room (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  const OxPoint hall[] = { { 0, -20 }, { 22, -20 }, { 22, -0.2 }, { 0, -0.2 } };
  const OxPoint small[] = { { 0, 0 }, { 4.8, 0 }, { 4.8, 4.8 }, { 0, 4.8 } };
  const OxPoint beside[] = { { 5, 0 }, { 22, 0 }, { 22, 4.8 }, { 5, 4.8 } };
  const OxPoint above[] = { { 0, 5 }, { 22, 5 }, { 22, 9.8 }, { 0, 9.8 } };
  put (builder, 1, hall, 4);
  put (builder, 2, small, 4);
  put (builder, 3, beside, 4);
  put (builder, 4, above, 4);
  Made made = { .job = ox_job_builder_end (builder) };
  draw_beside (&made, "A4", &(OxLabelBox){ { 2.4, 2.2 }, 0, { -14, -11, 14, 9.5 } });
  ox_test_near (made.plot.mm_per_m, 5, 1e-9);
  double wall = made.plot.origin.y + 4.8 * made.plot.mm_per_m;
  for (guint i = 0; i < made.drawing->n_elements; i++)
    if (made.drawing->elements[i].kind == OX_ELEMENT_TEXT && made.drawing->elements[i].text.angle == 0)
      g_assert_true (made.drawing->elements[i].text.at.y < wall - 3 || made.drawing->elements[i].text.at.y > wall + 3);
  made_clear (&made);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/dimensions/random", test_random);
  g_test_add_func ("/dimensions/hall", test_hall);
  g_test_add_func ("/dimensions/sides", test_sides);
  g_test_add_func ("/dimensions/notch", test_notch);
  g_test_add_func ("/dimensions/within", test_within_its_room);
  g_test_add_func ("/dimensions/overall-once", test_overall_once);
  return g_test_run ();
}
