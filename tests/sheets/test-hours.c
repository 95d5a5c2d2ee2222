/* Oxturn: tests of sheets/hours
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/estimate.h"
#include "record/which.h"
#include "sheets/draft.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"
#include <math.h>

/* whether a cell is the name of the group, alone or with the numbers of its cautions behind it */
static gboolean
has_title (const OxDrawing *drawing, const char *name)
{
  g_autofree char *tagged = g_strconcat (name, " !", NULL);
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_TEXT
        && (g_str_equal (drawing->elements[i].text.text, name)
            || g_str_has_prefix (drawing->elements[i].text.text, tagged)))
      return TRUE;
  return FALSE;
}

/* The schedule has a table of shifts, and a title of each group of figures. */
static void
test_tables (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_SCHEDULE;
  options.paper = ox_paper_find ("A4");
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  guint tables = 0;
  gboolean groups[OX_N_FIGURE_GROUPS] = { FALSE };
  for (guint i = 0; i < set->n_pages; i++)
    {
      const OxDrawing *drawing = set->pages[i].drawing;
      tables += ox_test_find_cell (drawing, "Hours by shift") != NULL;
      for (OxFigureGroup group = OX_FIGURE_TIME; group < OX_N_FIGURE_GROUPS; group++)
        groups[group] |= has_title (drawing, ox_estimate_group_name (group));
      g_assert_cmpstr (set->pages[i].title, ==, "Schedule");
    }
  g_assert_cmpuint (tables, >, 0);
  for (OxFigureGroup group = OX_FIGURE_TIME; group < OX_N_FIGURE_GROUPS; group++)
    g_assert_true (groups[group]);
}

static gboolean
is_laid (const OxEstimate *estimate, const OxShift *shift, guint order)
{
  for (guint i = 0; i < estimate->work->pieces->len; i++)
    {
      const OxPiece *piece = &g_array_index (estimate->work->pieces, OxPiece, i);
      if (piece->kind == OX_PIECE_STRIP && piece->machine == shift->machine && piece->shift == shift->shift
          && estimate->plan->strips[piece->index].order == order)
        return TRUE;
    }
  return FALSE;
}

/* Two machines and two coats: the strips of a shift have gaps, which are those of the other machine. What is written,
 * read as a crew writes it, is what the shift lays and no more. */
static void
test_strips_of_a_shift (void)
{
  g_autoptr (OxJob) hall = ox_test_hall (OX_UNITS_METRES);
  OxCalendar fields = *hall->calendar;
  OxRoom coated = *hall->rooms[0];
  fields.machines = 2;
  coated.coats = 2;
  g_autoptr (OxCalendar) calendar = ox_calendar_new (&fields);
  g_autoptr (OxRoom) room = ox_room_new (&coated);
  OxJobBuilder *builder = ox_job_builder_new (hall);
  ox_job_builder_set_calendar (builder, calendar);
  ox_job_builder_put_room (builder, room);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  guint gaps = 0;
  for (guint i = 0; i < estimate->work->shifts->len; i++)
    {
      const OxShift *shift = &g_array_index (estimate->work->shifts, OxShift, i);
      g_autofree char *text = ox_shift_strips (estimate, shift);
      g_test_message ("shift %u, machine %u: %s", shift->shift, shift->machine + 1, text);
      g_autoptr (GArray) read = ox_which_strips (plan, text, &error);
      g_assert_no_error (error);
      gaps += read->len > 0 && g_array_index (read, guint, read->len - 1) - g_array_index (read, guint, 0) >= read->len;
      for (guint order = 1, k = 0; order <= plan->n_strips; order++)
        {
          gboolean told = k < read->len && g_array_index (read, guint, k) == order;
          k += told;
          g_assert_cmpint (told, ==, is_laid (estimate, shift, order));
        }
    }
  g_assert_cmpuint (gaps, >, 0);
}

/* What is printed of a shift adds up, whatever stands between strips and edge work, and shifts add up to their sum. */
static void
test_hours_add_up (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  GArray *shifts = estimate->work->shifts;
  g_assert_cmpuint (shifts->len, >, 0);
  for (guint seed = 0; seed < 500; seed++)
    {
      double sum = 0, printed = 0;
      g_autofree OxShiftHours *hours = g_new (OxShiftHours, shifts->len);
      for (guint i = 0; i < shifts->len; i++)
        {
          OxShift *shift = &g_array_index (shifts, OxShift, i);
          shift->working = 0;
          for (guint k = 0; k < OX_N_PIECE_KINDS; k++)
            shift->working += shift->minutes[k] = g_test_rand_double_range (0, 200);
          sum += shift->working / 60;
        }
      ox_shift_hours (estimate, hours);
      for (guint i = 0; i < shifts->len; i++)
        {
          const OxShift *shift = &g_array_index (shifts, OxShift, i);
          double other = shift->minutes[OX_PIECE_REFILL] + shift->minutes[OX_PIECE_DRUM] + shift->minutes[OX_PIECE_WEAR];
          ox_test_near (hours[i].strips + hours[i].edge + hours[i].other, hours[i].all, 1e-9);
          ox_test_near (hours[i].strips, shift->minutes[OX_PIECE_STRIP] / 60, 0.01 + 1e-9);
          ox_test_near (hours[i].other, other / 60, 0.01 + 1e-9);
          printed += hours[i].all;
        }
      ox_test_near (printed, round (sum * 100) / 100, 1e-9);
    }
}

/* The table and the day sheet print them: a column and a line beside strips and edge work. */
static void
test_other_hours_are_printed (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  const struct
  {
    OxSheetKinds which;
    const char *text;
  } rows[] = { { OX_SHEET_SCHEDULE, "Other," }, { OX_SHEET_DAYS, "Hopper, drums" } };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++)
    {
      OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
      options.which = rows[k].which;
      options.paper = ox_paper_find ("A3");
      g_autoptr (GError) error = NULL;
      g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
      g_assert_no_error (error);
      gboolean found = FALSE;
      for (guint i = 0; i < set->n_pages; i++)
        found |= ox_test_find_text (set->pages[i].drawing, rows[k].text) != NULL;
      g_assert_true (found);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/hours/tables", test_tables);
  g_test_add_func ("/sheets/hours/strips-of-a-shift", test_strips_of_a_shift);
  g_test_add_func ("/sheets/hours/add-up", test_hours_add_up);
  g_test_add_func ("/sheets/hours/other-is-printed", test_other_hours_are_printed);
  return g_test_run ();
}
