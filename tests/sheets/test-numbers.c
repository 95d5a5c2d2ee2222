/* Oxturn: tests of sheets/numbers
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/floor.h"
#include "sheets/hall.h"
#include "support/floors.h"
#include "support/ox-test.h"

static void
test_no_two_labels_overlap_at_any_scale (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_SCREEN);
  for (double scale = 0.5; scale < 500; scale *= 1.23)
    ox_test_no_texts_overlap (drawing, scale);
}

static guint
count_numbers (const OxDrawing *drawing, double mm_per_m)
{
  guint n = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    n += g_str_equal (drawing->layers[drawing->elements[i].layer].id, "numbers")
         && drawing->elements[i].from_mm <= mm_per_m;
  return n;
}

static void
test_numbers_grow_with_the_scale_to_all (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_NUMBERS | OX_FLOOR_STRIPS);
  guint before = 0;
  for (double scale = 1; scale < 500; scale *= 2)
    {
      guint now = count_numbers (drawing, scale);
      g_assert_cmpuint (now, >=, before);
      before = now;
    }
  g_assert_cmpuint (before, >=, plan->n_strips * 97 / 100);
  g_assert_cmpuint (count_numbers (drawing, 2), <, plan->n_strips / 4);
}

static void
test_one_scale_shows_what_every_scale_shows_there (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  for (double scale = 5; scale < 200; scale *= 3)
    {
      g_autoptr (OxDrawing) drawing = ox_floor_picture_new_at (job, plan, OX_FLOOR_SCREEN, scale, NULL);
      ox_test_no_texts_overlap (drawing, scale);
      for (guint i = 0; i < drawing->n_elements; i++)
        g_assert_cmpfloat (drawing->elements[i].from_mm, ==, 0);
    }
}

static void
test_numbers_stand_at_the_start_and_arrows_at_the_stop (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new_at (job, plan, OX_FLOOR_NUMBERS, 50, NULL);
  guint numbers = 0, arrows = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (element->kind == OX_ELEMENT_TEXT)
        {
          const OxStrip *strip = &plan->strips[g_ascii_strtoull (element->text.text, NULL, 10) - 1];
          /* Ends of fields may stand farther on, where the flag or a name is at the start. */
          ox_test_near (ox_point_segment_distance (element->text.at, strip->a, strip->b, NULL), 0, 1e-9);
          ox_test_near (sin (element->text.angle - strip->heading), 0, 1e-6);
          g_assert_cmpfloat (cos (element->text.angle), >, -1e-6);
          numbers++;
        }
      else if (element->kind == OX_ELEMENT_MARK && element->mark.kind == OX_MARK_ARROW)
        {
          const OxStrip *strip = &plan->strips[g_ascii_strtoull (element->id + 6, NULL, 10) - 1];
          ox_test_near (ox_point_distance (element->mark.at, strip->b), 0, 1e-9);
          ox_test_near (cos (element->mark.angle - strip->heading), 1, 1e-6);
          arrows++;
        }
    }
  g_assert_cmpuint (numbers, >, plan->n_strips / 2);
  g_assert_cmpuint (arrows, >, plan->n_strips / 2);
}

/* Ends of strips lie on the grid, so that upright ones lean by a hair, to either side: all are read from the right. */
static void
test_upright_numbers_are_read_from_one_side (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (4, 20, "compact");
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  guint upright = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    plan->strips[i].heading += i % 4 < 2 ? 2.6e-5 : -2.6e-5;
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new_at (job, plan, OX_FLOOR_NUMBERS, 50, NULL);
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_TEXT && fabs (sin (drawing->elements[i].text.angle)) > 0.9)
      {
        g_assert_cmpfloat (sin (drawing->elements[i].text.angle), >, 0);
        upright++;
      }
  g_assert_cmpuint (upright, >, 10);
}

#define CREW                                                                                                           \
  (OX_FLOOR_OUTLINE | OX_FLOOR_OBSTACLES | OX_FLOOR_STRIPS | OX_FLOOR_NUMBERS | OX_FLOOR_STATIONS | OX_FLOOR_NAMES)

static gboolean
has_number (const OxDrawing *drawing, guint order)
{
  g_autofree char *number = g_strdup_printf ("%u", order);
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_TEXT && g_str_equal (drawing->elements[i].text.text, number))
      return TRUE;
  return FALSE;
}

/* Where strips of another room, kind or direction follow, a crew must find the last of the one and the first of the
 * other. */
static void
test_ends_of_fields_are_labelled (void)
{
  for (guint seed = 0; seed < 40; seed++)
    {
      g_autoptr (OxJob) job = seed == 0 ? ox_test_hall (OX_UNITS_METRES) : ox_test_floor_random (seed);
      g_autoptr (GError) error = NULL;
      g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, &error);
      g_assert_no_error (error);
      g_autoptr (OxDrawing) drawing = ox_floor_picture_new_at (job, plan, CREW, 10, NULL);
      ox_test_no_texts_overlap (drawing, 10);
      for (guint i = 1; i < plan->n_strips; i++)
        {
          const OxStrip *a = &plan->strips[i - 1], *b = &plan->strips[i];
          double turn = fabs (remainder (a->heading - b->heading, G_PI));
          if (a->room == b->room && a->kind == b->kind && turn < 1e-3)
            continue;
          g_test_message ("floor %u, %s: strips %u, %u", seed, ox_test_floor_kind (seed), a->order, b->order);
          g_assert_true (has_number (drawing, a->order) && has_number (drawing, b->order));
        }
    }
}

/* On a picture for all scales a number begins on its own strip, whichever scale it is shown from. */
static void
test_numbers_begin_on_their_strips (void)
{
  for (guint seed = 0; seed < 20; seed++)
    {
      g_autoptr (OxJob) job = seed == 0 ? ox_test_hall (OX_UNITS_METRES) : ox_test_floor_random (seed);
      g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, NULL);
      g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_SCREEN);
      for (guint i = 0; i < drawing->n_elements; i++)
        {
          const OxElement *element = &drawing->elements[i];
          if (element->kind != OX_ELEMENT_TEXT || !g_str_equal (drawing->layers[element->layer].id, "numbers"))
            continue;
          guint order = (guint) g_ascii_strtoull (element->text.text, NULL, 10);
          const OxStrip *strip = &plan->strips[order - 1];
          g_test_message ("floor %u, strip %u", seed, order);
          g_assert_cmpfloat (ox_point_segment_distance (element->text.at, strip->a, strip->b, NULL), <, 1e-6);
        }
    }
}

static void
test_labels_keep_off_what_stands_already (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxLabels) labels = ox_labels_new (10);
  OxLabelBox all = { { 8, 4 }, 0, { -200, -200, 200, 200 } };
  ox_labels_take (labels, &all);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new_at (job, plan, OX_FLOOR_SCREEN, 10, labels);
  g_assert_cmpuint (ox_test_count (drawing, "numbers", NULL), ==, 0);
  g_assert_cmpuint (ox_test_count (drawing, "names", NULL), ==, 0);
}

/* The mark of a hose that wraps round something is not written over. */
static void
test_numbers_keep_off_marks (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  for (guint i = 0; i < plan->n_strips; i += 3)
    plan->strips[i].hose_wraps = TRUE;
  const OxFloorPart part = { OX_FLOOR_NUMBERS | OX_FLOOR_STATIONS, 10, OX_FLOOR_WHOLE, NULL, 0 };
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new_part (job, plan, &part, NULL);
  guint marks = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *mark = &drawing->elements[i];
      if (mark->kind != OX_ELEMENT_MARK || mark->mark.kind != OX_MARK_CAUTION)
        continue;
      marks++;
      for (guint k = 0; k < drawing->n_elements; k++)
        {
          const OxElement *text = &drawing->elements[k];
          OxPoint corners[4];
          OxBox box = OX_BOX_EMPTY;
          if (text->kind != OX_ELEMENT_TEXT || !g_str_equal (drawing->layers[text->layer].id, "numbers"))
            continue;
          ox_element_text_corners (text, 0.1, corners);
          for (guint c = 0; c < 4; c++)
            ox_box_add (&box, corners[c]);
          OxPoint at = mark->mark.at;
          g_assert_true (at.x < box.x0 || at.x > box.x1 || at.y < box.y0 || at.y > box.y1);
        }
    }
  g_assert_cmpuint (marks, >, 5);
}

/* The first number stays beside its flag where a mark stands at the start of its strip: just behind the mark. */
static void
test_first_number_stays_by_its_flag (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  const OxStrip *first = &plan->strips[0];
  for (guint i = 1; i < plan->n_strips; i++)
    plan->strips[i].hose_wraps
        = ox_point_distance (plan->strips[i].b, first->a) < plan->job->machine->blast_width * 1.2;
  const OxFloorPart part = { OX_FLOOR_NUMBERS | OX_FLOOR_STATIONS, 10, OX_FLOOR_WHOLE, NULL, 0 };
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new_part (job, plan, &part, NULL);
  const OxElement *number = NULL;
  for (guint k = 0; k < drawing->n_elements; k++)
    if (drawing->elements[k].kind == OX_ELEMENT_TEXT && g_str_equal (drawing->elements[k].text.text, "1"))
      number = &drawing->elements[k];
  g_assert_nonnull (number);
  double off = ox_point_distance (number->text.at, first->a) * part.mm_per_m;
  g_assert_cmpfloat (off, >, 0.5);
  g_assert_cmpfloat (off, <, 9); /* the flag is 6 mm high */
}

/* A number whose place at the start is taken stands farther along its strip, where the others have theirs. */
static void
test_no_number_is_left_out_where_there_is_room (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  guint tried = 0;
  for (guint i = 5; i + 5 < plan->n_strips && tried < 4; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      if (strip->kind != OX_STRIP_MAIN || strip->order % 5 != 2 || ox_strip_length (strip) < 2)
        continue;
      g_autoptr (OxLabels) labels = ox_labels_new (40);
      ox_labels_take (labels, &(OxLabelBox){ strip->a, 0, { -5, -5, 5, 5 } });
      g_autoptr (OxDrawing) drawing = ox_floor_picture_new_at (job, plan, OX_FLOOR_NUMBERS, 40, labels);
      g_autofree char *number = g_strdup_printf ("%u", strip->order);
      const OxElement *text = NULL;
      for (guint k = 0; k < drawing->n_elements; k++)
        if (drawing->elements[k].kind == OX_ELEMENT_TEXT && g_str_equal (drawing->elements[k].text.text, number))
          text = &drawing->elements[k];
      g_assert_nonnull (text);
      ox_test_near (ox_point_segment_distance (text->text.at, strip->a, strip->b, NULL), 0, 1e-9);
      tried++;
    }
  g_assert_cmpuint (tried, ==, 4);
}

/* On large paper the numbers are as high as its other texts. */
static void
test_numbers_as_high_as_asked (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  static const double heights[][2] = { { 0, 1.8 }, { 2.5, 2.5 } };
  for (guint h = 0; h < G_N_ELEMENTS (heights); h++)
    {
      const OxFloorPart part = { OX_FLOOR_NUMBERS, 40, OX_FLOOR_WHOLE, NULL, heights[h][0] };
      g_autoptr (OxDrawing) drawing = ox_floor_picture_new_part (job, plan, &part, NULL);
      g_assert_cmpuint (ox_test_count (drawing, "numbers", NULL), >, 10);
      for (guint i = 0; i < drawing->n_elements; i++)
        if (drawing->elements[i].kind == OX_ELEMENT_TEXT
            && g_str_equal (drawing->layers[drawing->elements[i].layer].id, "numbers"))
          ox_test_near (drawing->elements[i].text.height_mm, heights[h][1], 1e-9);
      ox_test_no_texts_overlap (drawing, 40);
    }
}

/* A part whose border is where strips end shows no number of those: they only touch it. */
static void
test_no_number_where_a_strip_only_touches (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  for (guint i = 0; i < plan->n_strips; i++)
    for (guint end = 0; end < 2; end++)
      {
        const OxStrip *strip = &plan->strips[i];
        OxPoint at = end ? strip->a : strip->b, from = end ? strip->b : strip->a;
        OxBox box = { at.x - 3, at.y - 3, at.x + 3, at.y + 3 };
        if (fabs (at.x - from.x) > fabs (at.y - from.y))
          *(at.x > from.x ? &box.x0 : &box.x1) = at.x;
        else
          *(at.y > from.y ? &box.y0 : &box.y1) = at.y;
        const OxFloorPart part = { OX_FLOOR_STRIPS | OX_FLOOR_NUMBERS, 50, box, NULL, 0 };
        g_autoptr (OxDrawing) drawing = ox_floor_picture_new_part (job, plan, &part, NULL);
        g_autofree char *number = g_strdup_printf ("%u", strip->order);
        for (guint k = 0; k < drawing->n_elements; k++)
          if (drawing->elements[k].kind == OX_ELEMENT_TEXT)
            {
              OxPoint stands = drawing->elements[k].text.at;
              g_assert_true (isfinite (stands.x) && isfinite (stands.y));
              g_assert_cmpstr (drawing->elements[k].text.text, !=, number);
            }
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/numbers/none-left-out", test_no_number_is_left_out_where_there_is_room);
  g_test_add_func ("/numbers/by-the-flag", test_first_number_stays_by_its_flag);
  g_test_add_func ("/numbers/overlap", test_no_two_labels_overlap_at_any_scale);
  g_test_add_func ("/numbers/scales", test_numbers_grow_with_the_scale_to_all);
  g_test_add_func ("/numbers/one-scale", test_one_scale_shows_what_every_scale_shows_there);
  g_test_add_func ("/numbers/places", test_numbers_stand_at_the_start_and_arrows_at_the_stop);
  g_test_add_func ("/numbers/one-side", test_upright_numbers_are_read_from_one_side);
  g_test_add_func ("/numbers/taken", test_labels_keep_off_what_stands_already);
  g_test_add_func ("/numbers/ends", test_ends_of_fields_are_labelled);
  g_test_add_func ("/numbers/on-their-strips", test_numbers_begin_on_their_strips);
  g_test_add_func ("/numbers/marks", test_numbers_keep_off_marks);
  g_test_add_func ("/numbers/height", test_numbers_as_high_as_asked);
  g_test_add_func ("/numbers/touching", test_no_number_where_a_strip_only_touches);
  return g_test_run ();
}
