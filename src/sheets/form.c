/* Oxturn: sheets/form - the empty sheet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/form.h"
#include "base/words.h"
#include "drawing/text.h"

#define BLOCK_WIDTHS 50.0 /* of a block on upright paper, in heights of its capitals: room for tables of seven columns */
#define INCH 25.4
#define PAD_MM 4.0         /* from the frame to what stands inside */
#define TITLE_MAX_MM 180.0 /* ISO 7200 */
#define TITLE_HIGH_MM 55.0 /* stacked */
#define TITLE_LOW_MM 31.0  /* the name on the left, the fields on the right */
#define LOW_FROM_MM 150.0  /* width from which the title block is low */
#define GRID_MM 5.0
#define FIELD_MM 50.0

static OxBox
frame_box (const OxPaper *paper, double width, double height)
{
  /* ISO 5457: 20 mm on the filing edge, 10 mm elsewhere. US sheets by rule of the house: 1 in and 1/2 in. */
  double file = paper->imperial ? INCH : 20, other = paper->imperial ? INCH / 2 : 10;
  return (OxBox){ file, other, width - other, height - other };
}

/* count_columns: the drawing has two of three at least on paper that lies, however narrow the margins leave it */
static guint
count_columns (double inner, gboolean upright, double body_mm)
{
  double wanted = upright ? BLOCK_WIDTHS * body_mm : CLAMP (inner * 0.2, 92, 135);
  return (guint) MAX (upright ? 2 : 3, round ((inner + OX_FORM_GAP_MM) / (wanted + OX_FORM_GAP_MM)));
}

static double
body_size (const OxPaper *paper)
{
  return paper->short_mm < 400 ? 1.8 : 2.5;
}

OxForm
ox_form_new (const OxSheetOptions *options, OxUnits units)
{
  const OxPaper *paper = options->paper;
  if (paper == NULL)
    paper = ox_paper_find (
        units == OX_UNITS_FEET || (options->language != NULL && options->language->us_paper) ? "Tabloid" : "A3");
  gboolean small = paper->short_mm < 250;
  OxForm form = { .paper = paper };
  form.upright = options->orientation == OX_ORIENTATION_AUTO ? small : options->orientation == OX_ORIENTATION_PORTRAIT;
  form.width = form.upright ? paper->short_mm : paper->long_mm;
  form.height = form.upright ? paper->long_mm : paper->short_mm;
  form.frame = frame_box (paper, form.width, form.height);
  form.body_mm = body_size (paper);
  double inner = form.frame.x1 - form.frame.x0 - 2 * PAD_MM;
  form.n_columns = count_columns (inner, form.upright, form.body_mm);
  form.block_mm = (inner - (form.n_columns - 1) * OX_FORM_GAP_MM) / form.n_columns;
  double title_width
      = form.upright ? MIN (TITLE_MAX_MM, form.frame.x1 - form.frame.x0) : form.block_mm + PAD_MM + OX_FORM_GAP_MM / 2;
  double title_height = title_width >= LOW_FROM_MM ? TITLE_LOW_MM : TITLE_HIGH_MM;
  form.title = (OxBox){ form.frame.x1 - title_width, form.frame.y0, form.frame.x1, form.frame.y0 + title_height };
  return form;
}

OxForm
ox_form_widened (const OxForm *form, double width_mm)
{
  OxForm wide = *form;
  double inner = form->frame.x1 - form->frame.x0 - 2 * PAD_MM;
  wide.n_columns = (guint) MAX (1, round ((inner + OX_FORM_GAP_MM) / (width_mm + OX_FORM_GAP_MM)));
  wide.block_mm = (inner - (wide.n_columns - 1) * OX_FORM_GAP_MM) / wide.n_columns;
  return wide;
}

double
ox_form_get_slot_x (const OxForm *form, guint i)
{
  return form->frame.x0 + PAD_MM + i * (form->block_mm + OX_FORM_GAP_MM);
}

OxSlot *
ox_form_get_slots (const OxForm *form)
{
  OxSlot *slots = g_new (OxSlot, form->n_columns);
  for (guint i = 0; i < form->n_columns; i++)
    {
      double x = ox_form_get_slot_x (form, i);
      gboolean over_title = x + form->block_mm > form->title.x0;
      slots[i] = (OxSlot){ x, form->frame.y1 - PAD_MM, (over_title ? form->title.y1 : form->frame.y0) + PAD_MM };
    }
  return slots;
}

/* --- Frame and grid --- */

static void
append_line (OxDrawingBuilder *builder, OxStyle style, double x0, double y0, double x1, double y1)
{
  ox_drawing_builder_line (builder, style, (OxPoint){ x0, y0 }, (OxPoint){ x1, y1 });
}

/* grid_name: letters leave out I and O, which look like figures */
static char *
grid_name (guint i, gboolean letter)
{
  static const char letters[] = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  return letter ? g_strdup_printf ("%c", letters[i % (sizeof letters - 1)]) : g_strdup_printf ("%u", i + 1);
}

typedef struct
{
  double from, to;  /* along the side */
  gboolean level;   /* top and bottom: along x */
  double near, far; /* across: the frame and the outer border of one side, then of the other */
  double near2, far2;
} GridSide;

/* append_fields: fields of 50 mm counted from the middle outward, what is left over goes to the end fields */
static void
append_fields (OxDrawingBuilder *builder, const GridSide *side)
{
  double middle = (side->from + side->to) / 2;
  guint half = (guint) MAX (1, floor ((side->to - side->from) / 2 / FIELD_MM + 0.25));
  for (guint i = 0; i < 2 * half; i++)
    {
      double start = i == 0 ? side->from : middle + (i - (double) half) * FIELD_MM;
      double end = i + 1 == 2 * half ? side->to : middle + (i + 1 - (double) half) * FIELD_MM;
      g_autofree char *name = grid_name (side->level ? i : 2 * half - 1 - i, !side->level);
      for (int k = 0; k < 2; k++)
        {
          double near = k == 0 ? side->near : side->near2, far = k == 0 ? side->far : side->far2;
          OxPoint at = { (start + end) / 2, (near + far) / 2 };
          OxTextLook look = { OX_STYLE_QUIET, 2.5, 0, OX_ALIGN_MIDDLE, TRUE, FALSE, 0, FALSE };
          ox_drawing_builder_text (builder, look, side->level ? at : (OxPoint){ at.y, at.x }, name);
          if (i > 0 && side->level)
            append_line (builder, OX_STYLE_BLOCK, start, near, start, far);
          else if (i > 0)
            append_line (builder, OX_STYLE_BLOCK, near, start, far, start);
        }
    }
}

static void
append_frame (const OxForm *form, OxDrawingBuilder *builder)
{
  OxBox f = form->frame, outer = { f.x0 - GRID_MM, f.y0 - GRID_MM, f.x1 + GRID_MM, f.y1 + GRID_MM };
  GridSide level = { f.x0, f.x1, TRUE, f.y1, outer.y1, f.y0, outer.y0 };
  GridSide upright = { f.y0, f.y1, FALSE, f.x0, outer.x0, f.x1, outer.x1 };
  ox_drawing_builder_box (builder, OX_STYLE_BLOCK, outer);
  append_fields (builder, &level);
  append_fields (builder, &upright);
  double x = (f.x0 + f.x1) / 2, y = (f.y0 + f.y1) / 2;
  append_line (builder, OX_STYLE_FRAME, x, outer.y1, x, f.y1);
  append_line (builder, OX_STYLE_FRAME, x, outer.y0, x, f.y0);
  append_line (builder, OX_STYLE_FRAME, outer.x0, y, f.x0, y);
  append_line (builder, OX_STYLE_FRAME, outer.x1, y, f.x1, y);
  ox_drawing_builder_box (builder, OX_STYLE_FRAME, f);
}

/* --- Title block --- */

static void
append_fitted (OxDrawingBuilder *builder, OxTextLook look, OxPoint at, const char *text, double width)
{
  static const double sizes[] = { 5, 3.5, 2.5, 1.8 };
  guint i = 0;
  while (i + 1 < G_N_ELEMENTS (sizes)
         && (sizes[i] > look.height_mm || ox_text_width (text, sizes[i], look.bold) > width))
    i++;
  look.height_mm = sizes[i];
  g_autofree char *fitted = ox_text_fit (text, look.height_mm, look.bold, width);
  ox_drawing_builder_text (builder, look, at, fitted);
}

static void
append_field (OxDrawingBuilder *builder, OxBox cell, const char *label, const char *value)
{
  OxTextLook quiet = { OX_STYLE_QUIET, 1.8, 0, OX_ALIGN_START, FALSE, FALSE, 0, FALSE };
  OxTextLook ink = { OX_STYLE_INK, 2.5, 0, OX_ALIGN_START, FALSE, FALSE, 0, FALSE };
  ox_drawing_builder_box (builder, OX_STYLE_BLOCK, cell);
  append_fitted (builder, quiet, (OxPoint){ cell.x0 + 1.2, cell.y1 - 3.0 }, label, cell.x1 - cell.x0 - 2);
  append_fitted (builder, ink, (OxPoint){ cell.x0 + 1.2, cell.y0 + 1.5 }, value, cell.x1 - cell.x0 - 2);
}

static void
append_fields_of_title (OxDrawingBuilder *builder, OxBox box, const char *const fields[9][2])
{
  static const double shares[] = { 0, 0.42, 0.72, 1 };
  double width = box.x1 - box.x0, height = (box.y1 - box.y0) / 3;
  for (guint i = 0; i < 9; i++)
    {
      guint column = i % 3, row = i / 3;
      OxBox cell = { box.x0 + shares[column] * width, box.y1 - (row + 1) * height, box.x0 + shares[column + 1] * width,
                     box.y1 - row * height };
      append_field (builder, cell, fields[i][0], fields[i][1]);
    }
}

/* append_names: who, what, where */
static void
append_names (OxDrawingBuilder *builder, OxBox box, const OxTexts *texts, const char *kind)
{
  double width = box.x1 - box.x0 - 4, x = box.x0 + 2;
  OxTextLook bold = { OX_STYLE_INK, 2.5, 0, OX_ALIGN_START, FALSE, TRUE, 0, FALSE }, plain = bold, quiet = bold;
  plain.bold = FALSE;
  quiet.bold = FALSE;
  quiet.style = OX_STYLE_QUIET;
  quiet.height_mm = 1.8;
  ox_drawing_builder_box (builder, OX_STYLE_BLOCK, box);
  ox_drawing_builder_mark (builder, (OxMarkLook){ OX_STYLE_ACCENT, OX_MARK_FURROW, 0, 8 },
                           (OxPoint){ x + 4.5, box.y1 - 5.2 });
  append_fitted (builder, bold, (OxPoint){ x + 11, box.y1 - 6.3 }, texts->company, width - 11);
  append_line (builder, OX_STYLE_ACCENT, box.x0, box.y1 - 10, box.x1, box.y1 - 10);
  const char *plan = _ ("Plan, not a certificate.");
  double note = ox_text_width (plan, quiet.height_mm, FALSE);
  append_fitted (builder, quiet, (OxPoint){ x, box.y1 - 13.8 }, kind, width - note - 3);
  quiet.align = OX_ALIGN_END;
  ox_drawing_builder_text (builder, quiet, (OxPoint){ x + width, box.y1 - 13.8 }, plan);
  quiet.align = OX_ALIGN_START;
  bold.height_mm = 5;
  append_fitted (builder, bold, (OxPoint){ x, box.y1 - 20.5 }, texts->title, width);
  append_fitted (builder, plain, (OxPoint){ x, box.y1 - 25 }, texts->site, width);
  append_fitted (builder, quiet, (OxPoint){ x, box.y1 - 28.6 }, texts->client, width);
}

void
ox_form_append (const OxForm *form, OxDrawingBuilder *builder, const OxTexts *job, const OxFormTexts *texts)
{
  const char *const fields[9][2] = {
    { _ ("Drawing number"), job->number }, { _ ("Revision"), job->revision }, { _ ("Sheet"), texts->sheet },
    { _ ("Date of issue"), job->date },    { _ ("Scale"), texts->scale },     { _ ("Paper"), form->paper->name },
    { _ ("Drawn by"), job->author },       { _ ("Approved by"), "" },         { _ ("Status"), ox_status_text (job->status) },
  };
  ox_drawing_builder_place (builder, (OxPoint){ 0, 0 }, 1);
  ox_drawing_builder_item (builder, NULL, 0);
  ox_drawing_builder_layer (builder, "frame", _ ("Frame"));
  append_frame (form, builder);
  ox_drawing_builder_layer (builder, "title-block", _ ("Title block"));
  OxBox box = form->title, names = box, rest = box;
  if (box.x1 - box.x0 >= LOW_FROM_MM)
    names.x1 = rest.x0 = box.x0 + (box.x1 - box.x0) * 0.46;
  else
    names.y0 = rest.y1 = box.y1 - TITLE_LOW_MM;
  append_names (builder, names, job, texts->kind);
  append_fields_of_title (builder, rest, fields);
  ox_drawing_builder_box (builder, OX_STYLE_FRAME, box);
}
