/* Oxturn: sheets/setup - the set-up card: one page on how the machine is set up, started, tried and stopped.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/words.h"
#include "estimate/basis.h"
#include "estimate/card.h"
#include "estimate/patches.h"
#include "estimate/settings.h"
#include "sheets/cautions.h"
#include "sheets/draft.h"
#include "sheets/measure.h"
#include "trade/cage.h"
#include "trade/wear.h"

#define TRIAL_MM 31.0 /* height of the picture of the pattern trial */
#define FACE_MM 12.5  /* radius of the clock face */
#define FACE_CORNERS 48
#define SECTOR_CORNERS 12
#define TICK_MM 1.2
#define STRIP_MM 26.0 /* the strip of the trial: width, and height */
#define STRIP_HIGH_MM 18.0

/* the first that fits one page */
static const struct
{
  double body_mm; /* height of capitals */
  OxCautionsChoice cautions;
} sizes[]
    = { { 2.5, OX_CAUTIONS_ALL }, { 2.5, OX_CAUTIONS_BRIEF }, { 1.8, OX_CAUTIONS_ALL }, { 1.8, OX_CAUTIONS_BRIEF } };

static void
add_lines (OxBlock *block, GPtrArray *lines, const char *section)
{
  for (guint i = 0; i < lines->len; i++)
    {
      const OxCardLine *line = g_ptr_array_index (lines, i);
      gboolean numbered = g_ascii_isdigit (line->text[0]) && line->text[1] == '.' && line->text[2] == ' ';
      g_autofree char *mark = numbered ? g_strndup (line->text, 2) : g_strdup ("\xe2\x80\xa2");
      if (g_str_equal (line->section, section))
        ox_block_add_text (block, mark, numbered ? line->text + 3 : line->text);
    }
}

/* lines with a cell each to be ticked */
static OxBlock *
ticks_block (const OxForm *form, GPtrArray *lines)
{
  const OxColumn columns[] = { { NULL, 0.9, OX_ALIGN_START }, { NULL, 0.1, OX_ALIGN_START } };
  OxBlock *block = ox_block_new (_ ("Before the start"), form->block_mm, form->body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  ox_block_set_by_hand (block, 1);
  for (guint i = 0; i < lines->len; i++)
    {
      const OxCardLine *line = g_ptr_array_index (lines, i);
      if (g_str_equal (line->section, "before"))
        ox_block_add_cells (block, FALSE, line->text, "", NULL);
    }
  return block;
}

static OxBlock *
lines_block (const OxForm *form, GPtrArray *lines, const char *section, const char *title)
{
  OxBlock *block = ox_block_new (title, form->block_mm, form->body_mm);
  add_lines (block, lines, section);
  return block;
}

static OxBlock *
settings_block (const OxForm *form, const OxEstimate *estimate)
{
  const OxColumn columns[] = { { NULL, 0.37, OX_ALIGN_START }, { NULL, 0.63, OX_ALIGN_START } };
  OxBlock *block = ox_block_new (_ ("Settings"), form->block_mm, form->body_mm);
  g_autoptr (GPtrArray) settings = ox_settings_of (estimate);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < settings->len; i++)
    {
      const OxSetting *setting = g_ptr_array_index (settings, i);
      ox_block_add_cells (block, FALSE, setting->label, setting->value, NULL);
    }
  return block;
}

static OxBlock *
parts_block (const OxForm *form, const OxEstimate *estimate)
{
  const OxColumn columns[] = { { _ ("Part"), 0.44, OX_ALIGN_START },
                               { _ ("Run, h"), 0.16, OX_ALIGN_END },
                               { _ ("Check in, h"), 0.18, OX_ALIGN_END },
                               { _ ("Bring a spare"), 0.22, OX_ALIGN_START } };
  OxBlock *block = ox_block_new (_ ("Wear parts, hours of the wheel"), form->block_mm, form->body_mm);
  const OxMachine *machine = estimate->plan->job->machine;
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < machine->n_wear; i++)
    {
      const OxWearPart *part = &machine->wear[i];
      gboolean bring = ox_card_brings_part (estimate, i);
      double hours = ox_card_part_run (estimate, i);
      g_autofree char *run = ox_measure_number (hours, 1);
      g_autofree char *left = ox_measure_number (ox_wear_hours_left (part->interval_h, hours), 1);
      g_autofree char *name = part->machine > 0 ? g_strdup_printf (_ ("%s, machine %u"), _ (part->name), part->machine)
                                                : g_strdup (_ (part->name));
      ox_block_add_cells (block, bring, name, run, left, bring ? _ ("yes") : "\xe2\x80\x93", NULL);
    }
  return block;
}

/* --- The picture of the pattern trial --- */

static OxPoint
on_face (OxPoint centre, double radius, double clock)
{
  double angle = ox_cage_angle (clock) * G_PI / 180;
  return (OxPoint){ centre.x + radius * sin (angle), centre.y + radius * cos (angle) };
}

static void
append_text (OxDrawingBuilder *builder, OxPoint at, OxAlign align, const char *text)
{
  OxTextLook look = { OX_STYLE_INK, 1.8, 0, align, TRUE, FALSE, 0, FALSE };
  ox_drawing_builder_text (builder, look, at, text);
}

static void
append_face (OxDrawingBuilder *builder, OxPoint centre)
{
  double first = ox_basis ("cage-first"), last = ox_basis ("cage-last");
  OxPoint rim[FACE_CORNERS], sector[SECTOR_CORNERS + 2];
  for (guint i = 0; i < FACE_CORNERS; i++)
    rim[i] = on_face (centre, FACE_MM, 12.0 * i / FACE_CORNERS);
  sector[0] = centre;
  for (guint i = 0; i <= SECTOR_CORNERS; i++)
    sector[i + 1] = on_face (centre, FACE_MM, first + (last - first) * i / SECTOR_CORNERS);
  ox_drawing_builder_polygon (builder, OX_STYLE_INK, rim, FACE_CORNERS);
  ox_drawing_builder_polygon (builder, OX_STYLE_HERE, sector, SECTOR_CORNERS + 2);
  for (guint hour = 1; hour <= 12; hour++)
    {
      ox_drawing_builder_line (builder, OX_STYLE_INK, on_face (centre, FACE_MM - TICK_MM, hour),
                               on_face (centre, FACE_MM, hour));
      g_autofree char *number = g_strdup_printf ("%u", hour);
      if (hour % 3 == 0 && (hour < first || hour > last))
        append_text (builder, on_face (centre, FACE_MM - 3.2, hour), OX_ALIGN_MIDDLE, number);
    }
  g_autofree char *from = ox_card_clock_text (first), *to = ox_card_clock_text (last);
  append_text (builder, ox_point_add (on_face (centre, FACE_MM, first), (OxPoint){ -1.2, -0.6 }), OX_ALIGN_END, from);
  append_text (builder, ox_point_add (on_face (centre, FACE_MM, last), (OxPoint){ -1.2, 0.6 }), OX_ALIGN_END, to);
}

/* append_strip: the three places where the texture is read, looking along the travel */
static void
append_strip (OxDrawingBuilder *builder, OxPoint corner)
{
  const char *const names[] = { C_ ("side of a strip", "L"), C_ ("side of a strip", "M"), C_ ("side of a strip", "R") };
  OxBox box = { corner.x, corner.y, corner.x + STRIP_MM, corner.y + STRIP_HIGH_MM };
  ox_drawing_builder_box (builder, OX_STYLE_BLOCK, box);
  for (guint i = 0; i < 3; i++)
    {
      OxPoint at = { box.x0 + STRIP_MM * (i + 0.5) / 3, (box.y0 + box.y1) / 2 };
      if (i > 0)
        ox_drawing_builder_line (builder, OX_STYLE_JOINT, (OxPoint){ box.x0 + STRIP_MM * i / 3, box.y0 },
                                 (OxPoint){ box.x0 + STRIP_MM * i / 3, box.y1 });
      ox_drawing_builder_mark (builder, (OxMarkLook){ OX_STYLE_INK, OX_MARK_DOT, 0, 1.6 }, at);
      append_text (builder, (OxPoint){ at.x, box.y0 + 3 }, OX_ALIGN_MIDDLE, names[i]);
    }
  OxPoint middle = { (box.x0 + box.x1) / 2, box.y1 + 5 };
  ox_drawing_builder_line (builder, OX_STYLE_INK, (OxPoint){ middle.x, box.y1 + 1 }, middle);
  ox_drawing_builder_mark (builder, (OxMarkLook){ OX_STYLE_INK, OX_MARK_ARROW, G_PI / 2, 2.5 }, middle);
}

static OxDrawing *
trial_drawing (double width_mm)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_layer (builder, "pattern-trial", _ ("Pattern trial"));
  append_face (builder, (OxPoint){ 12 + FACE_MM, TRIAL_MM / 2 });
  append_strip (builder, (OxPoint){ width_mm - STRIP_MM - 6, 4 });
  return ox_drawing_builder_end (builder);
}

static void
add_trial_blanks (OxBlock *block)
{
  ox_block_add_blank (block, _ ("Left, mm"), 1.0 / 3, FALSE);
  ox_block_add_blank (block, _ ("Middle, mm"), 1.0 / 3, FALSE);
  ox_block_add_blank (block, _ ("Right, mm"), 1.0 / 3, TRUE);
  ox_block_add_blank (block, _ ("Balance, %"), 1.0 / 3, FALSE);
  ox_block_add_blank (block, _ ("Cage at, o'clock"), 1.0 / 3, FALSE);
  ox_block_add_blank (block, _ ("Cage turned to"), 1.0 / 3, TRUE);
}

/* "Cage at, o'clock 9:15" */
static void
append_clock (GString *text, const char *label, guint minutes)
{
  g_autofree char *clock = ox_card_clock_text (minutes / 60.0);
  if (minutes > 0)
    g_string_append_printf (text, "%s%s: %s", text->len > 0 ? "; " : "", label, clock);
}

/* What the last trial found, and what is to be done. */
static void
add_trial (OxBlock *block, const OxPatch *patch)
{
  g_autofree char *left = ox_measure_number (patch->left_mm, 2);
  g_autofree char *middle = patch->middle_mm > 0 ? ox_measure_number (patch->middle_mm, 2) : g_strdup ("\xe2\x80\x93");
  g_autofree char *right = ox_measure_number (patch->right_mm, 2);
  g_autofree char *balance = ox_measure_number (ox_patch_balance (patch), 0);
  g_autofree char *advice = ox_patch_advice_text (patch);
  g_autofree char *readings = g_strdup_printf (_ ("%s %s: left %s mm, middle %s mm, right %s mm."), patch->id,
                                               patch->date, left, middle, right);
  g_autofree char *result = g_strdup_printf (_ ("Balance %s %%: %s."), balance, advice);
  g_autoptr (GString) cage = g_string_new (NULL);
  const OxColumn column = { NULL, 1, OX_ALIGN_START };
  ox_block_set_columns (block, &column, 1);
  append_clock (cage, _ ("Cage at, o'clock"), patch->cage_min);
  append_clock (cage, _ ("Cage turned to"), patch->cage_to_min);
  ox_block_add_cells (block, TRUE, readings, NULL);
  ox_block_add_cells (block, TRUE, result, NULL);
  if (cage->len > 0)
    ox_block_add_cells (block, TRUE, cage->str, NULL);
}

static OxBlock *
pattern_block (const OxForm *form, const OxEstimate *estimate, GPtrArray *lines)
{
  OxBlock *block = ox_block_new (_ ("Pattern trial"), form->block_mm, form->body_mm);
  g_autoptr (OxDrawing) picture = trial_drawing (form->block_mm);
  ox_block_add_drawing (block, picture, TRIAL_MM);
  add_lines (block, lines, "pattern");
  const OxPatch *patch = ox_patches_trial (estimate->plan->job->patches);
  if (patch != NULL)
    add_trial (block, patch);
  else
    add_trial_blanks (block);
  return block;
}

/* --- The page --- */

static GPtrArray *
gather_blocks (const OxForm *form, const OxEstimate *estimate, OxCautionsChoice cautions)
{
  GPtrArray *blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  g_autoptr (GPtrArray) lines = ox_card_lines (estimate);
  g_ptr_array_add (blocks, settings_block (form, estimate));
  g_ptr_array_add (blocks, parts_block (form, estimate));
  g_ptr_array_add (blocks, ticks_block (form, lines));
  OxBlock *order = lines_block (form, lines, "start", _ ("Starting and stopping"));
  add_lines (order, lines, "stop");
  g_ptr_array_add (blocks, order);
  g_ptr_array_add (blocks, lines_block (form, lines, "walking", _ ("Walking")));
  g_ptr_array_add (blocks, pattern_block (form, estimate, lines));
  g_ptr_array_add (blocks, ox_cautions_block_new (form, estimate, cautions));
  return blocks;
}

void
ox_setup_append (OxSheetRun *run)
{
  g_autofree OxSlot *slots = ox_form_get_slots (&run->form);
  OxForm form = run->form;
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      form.body_mm = sizes[i].body_mm;
      g_autoptr (GPtrArray) blocks = gather_blocks (&form, run->estimate, sizes[i].cautions);
      OxFlow trial = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM }, flow = trial;
      if (i + 1 < G_N_ELEMENTS (sizes) && !ox_flow_fill (&trial, NULL, slots, form.n_columns))
        continue;
      ox_flow_finish (&flow, run, _ ("Set-up card"), _ ("How the machine is set up, started, tried and stopped."));
      return;
    }
}
