/* Oxturn: sheets/parts - a floor cut into parts of which each has its own sheet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/parts.h"
#include "drawing/text.h"
#include "base/words.h"

#define LINE_TEXT_MM 2.5
#define LINE_OFFSET_MM 2.6
#define OFF_MARKS 2.0 /* times as far off the line, beside the mark of a station on it */
#define GRID_TEXT_MM 3.5
#define GRID_GROUND_MM 0.8
#define LEAST_PART_MM 1.0 /* what is lower holds nothing */

static gboolean
has_floor (const OxJob *job, OxBox box)
{
  const OxPoint corners[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  g_autoptr (OxRegion) part = ox_region_new_points (corners, 4);
  for (guint i = 0; i < job->n_rooms; i++)
    {
      g_autoptr (OxRegion) room = ox_region_new_ring (job->rooms[i]->ring);
      g_autoptr (OxRegion) both = ox_region_intersection (room, part);
      if (ox_region_area (both) > 0)
        return TRUE;
    }
  return FALSE;
}

static guint
count_parts (double metres, double mm_per_m, double mm)
{
  return (guint) MAX (1, ceil (metres * mm_per_m / MAX (mm, LEAST_PART_MM) - 1e-9));
}

OxParts *
ox_parts_new (const OxJob *job, double mm_per_m, const double mm[2], guint first_sheet)
{
  OxParts *parts = g_new0 (OxParts, 1);
  OxBox floor = ox_job_box (job);
  double width = floor.x1 - floor.x0, height = floor.y1 - floor.y0;
  parts->first_sheet = first_sheet;
  parts->n_columns = count_parts (width, mm_per_m, mm[0]);
  parts->n_rows = count_parts (height, mm_per_m, mm[1]);
  parts->parts = g_new0 (OxPart, parts->n_columns * parts->n_rows);
  for (guint i = 0; i < parts->n_columns * parts->n_rows; i++)
    {
      guint column = i % parts->n_columns, row = i / parts->n_columns;
      OxPart *part = &parts->parts[i];
      part->box = (OxBox){ ox_snap (floor.x0 + width * column / parts->n_columns),
                           ox_snap (floor.y1 - height * (row + 1) / parts->n_rows),
                           ox_snap (floor.x0 + width * (column + 1) / parts->n_columns),
                           ox_snap (floor.y1 - height * row / parts->n_rows) };
      if (has_floor (job, part->box))
        part->sheet = first_sheet + parts->n_sheets++;
    }
  return parts;
}

void
ox_parts_free (OxParts *parts)
{
  g_free (parts->parts);
  g_free (parts);
}

/* neighbour: the part beyond a side, 0 left, 1 right, 2 below, 3 above; NULL where there is none with a sheet */
static const OxPart *
neighbour (const OxParts *parts, guint i, guint side)
{
  guint column = i % parts->n_columns, row = i / parts->n_columns;
  const OxPart *part = NULL;
  if (side == 0 && column > 0)
    part = &parts->parts[i - 1];
  else if (side == 1 && column + 1 < parts->n_columns)
    part = &parts->parts[i + 1];
  else if (side == 2 && row + 1 < parts->n_rows)
    part = &parts->parts[i + parts->n_columns];
  else if (side == 3 && row > 0)
    part = &parts->parts[i - parts->n_columns];
  return part != NULL && part->sheet > 0 ? part : NULL;
}

/* where match lines go */
typedef struct
{
  const OxPlot *plot;
  OxDrawingBuilder *builder;
  OxLabels *labels;
} Lines;

/* append_words: beside the match line, about its middle where nothing stands there yet */
static void
append_words (const Lines *lines, const OxPoint line[2], OxPoint out, const char *text)
{
  const OxPlot *plot = lines->plot;
  static const double shares[] = { 0.5, 0.35, 0.65, 0.2, 0.8 };
  double w = ox_text_width (text, LINE_TEXT_MM, TRUE) / 2 + 1, h = LINE_TEXT_MM / 2 + 0.8;
  OxTextLook look = { OX_STYLE_INK, LINE_TEXT_MM, out.x != 0 ? G_PI / 2 : 0, OX_ALIGN_MIDDLE, TRUE, TRUE, 0, FALSE };
  for (guint i = 0; i <= G_N_ELEMENTS (shares); i++)
    {
      /* Where marks on the line leave no place along it, farther off, clear of them. */
      gboolean last = i == G_N_ELEMENTS (shares), middle = i == 0 || last;
      double share = middle ? 0.5 : shares[i], length = ox_point_distance (line[0], line[1]);
      OxPoint on = ox_point_add (line[0], ox_point_scale (ox_point_sub (line[1], line[0]), share));
      OxPoint at = ox_point_add (on, ox_point_scale (out, last ? OFF_MARKS : 1));
      OxPoint metres = ox_point_scale (ox_point_sub (at, plot->origin), 1 / plot->mm_per_m);
      OxLabelBox box = { metres, look.angle, { -w, -h, w, h } };
      gboolean beyond = !middle && w > length * MIN (share, 1 - share);
      if (!last && (beyond || !ox_labels_is_free (lines->labels, &box)))
        continue;
      ox_labels_take (lines->labels, &box);
      ox_drawing_builder_text (lines->builder, look, at, text);
      return;
    }
}

void
ox_parts_append_lines (const OxParts *parts, guint i, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
{
  OxBox box = parts->parts[i].box;
  OxPoint low = ox_plot_to_page (plot, (OxPoint){ box.x0, box.y0 });
  OxPoint high = ox_plot_to_page (plot, (OxPoint){ box.x1, box.y1 });
  const OxPoint lines[4][2] = {
    { low, { low.x, high.y } }, { { high.x, low.y }, high }, { low, { high.x, low.y } }, { { low.x, high.y }, high }
  };
  const OxPoint outs[4]
      = { { -LINE_OFFSET_MM, 0 }, { LINE_OFFSET_MM, 0 }, { 0, -LINE_OFFSET_MM }, { 0, LINE_OFFSET_MM } };
  for (guint side = 0; side < 4; side++)
    {
      const OxPart *beyond = neighbour (parts, i, side);
      if (beyond == NULL)
        continue;
      g_autofree char *text = g_strdup_printf (_ ("Match line \xe2\x80\x93 see sheet %u"), beyond->sheet);
      ox_drawing_builder_line (builder, OX_STYLE_MATCH, lines[side][0], lines[side][1]);
      append_words (&(Lines){ plot, builder, labels }, lines[side], outs[side], text);
    }
}

/* append_meeting: the line between part @i and the next one to the right or below, once, where either has a sheet */
static void
append_meeting (const OxParts *parts, const OxPlot *plot, OxDrawingBuilder *builder, guint i)
{
  guint column = i % parts->n_columns, row = i / parts->n_columns;
  const OxPart *part = &parts->parts[i];
  OxPoint low = ox_plot_to_page (plot, (OxPoint){ part->box.x0, part->box.y0 });
  OxPoint high = ox_plot_to_page (plot, (OxPoint){ part->box.x1, part->box.y1 });
  if (column + 1 < parts->n_columns && part->sheet + parts->parts[i + 1].sheet > 0)
    ox_drawing_builder_line (builder, OX_STYLE_MATCH, (OxPoint){ high.x, low.y }, high);
  if (row + 1 < parts->n_rows && part->sheet + parts->parts[i + parts->n_columns].sheet > 0)
    ox_drawing_builder_line (builder, OX_STYLE_MATCH, low, (OxPoint){ high.x, low.y });
}

/* free_place: for the number of a sheet: in the middle of its part, or beside that where something stands there */
static OxLabelBox
free_place (OxBox part, const char *text, double height, const OxLabels *labels)
{
  static const OxPoint shares[] = { { 0.5, 0.5 },  { 0.5, 0.7 },  { 0.5, 0.3 },  { 0.35, 0.5 }, { 0.65, 0.5 },
                                    { 0.35, 0.7 }, { 0.65, 0.7 }, { 0.35, 0.3 }, { 0.65, 0.3 } };
  double w = ox_text_width (text, height, TRUE) / 2 + 1.2, h = height / 2 + 1.2;
  OxLabelBox place = { { 0, 0 }, 0, { -w, -h, w, h } };
  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      place.at = (OxPoint){ part.x0 + (part.x1 - part.x0) * shares[i].x, part.y0 + (part.y1 - part.y0) * shares[i].y };
      if (ox_labels_is_free (labels, &place))
        return place;
    }
  place.at = (OxPoint){ (part.x0 + part.x1) / 2, (part.y0 + part.y1) / 2 };
  return place;
}

void
ox_parts_append_grid (const OxParts *parts, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
{
  for (guint i = 0; i < parts->n_columns * parts->n_rows; i++)
    {
      const OxPart *part = &parts->parts[i];
      append_meeting (parts, plot, builder, i);
      if (part->sheet == 0)
        continue;
      OxPoint low = ox_plot_to_page (plot, (OxPoint){ part->box.x0, part->box.y0 });
      OxPoint high = ox_plot_to_page (plot, (OxPoint){ part->box.x1, part->box.y1 });
      g_autofree char *long_text = g_strdup_printf (_ ("Sheet %u"), part->sheet);
      g_autofree char *short_text = g_strdup_printf ("%u", part->sheet);
      double room = high.x - low.x - 2 * GRID_GROUND_MM;
      const char *text = ox_text_width (long_text, GRID_TEXT_MM, TRUE) < room ? long_text : short_text;
      double height = ox_text_width (text, GRID_TEXT_MM, TRUE) < room ? GRID_TEXT_MM : OX_TEXT_MIN_MM;
      OxTextLook look = { OX_STYLE_INK, height, 0, OX_ALIGN_MIDDLE, TRUE, TRUE, GRID_GROUND_MM, FALSE };
      OxLabelBox place = free_place (part->box, text, height, labels);
      ox_drawing_builder_text (builder, look, ox_plot_to_page (plot, place.at), text);
      ox_labels_take (labels, &place);
    }
}

OxDrawing *
ox_parts_key_new (const OxParts *parts, guint i, const OxJob *job, const double mm[2])
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  OxBox floor = ox_job_box (job);
  double scale = MIN (mm[0] / (floor.x1 - floor.x0), mm[1] / (floor.y1 - floor.y0));
  ox_drawing_builder_layer (builder, "key-plan", _ ("Key plan"));
  ox_drawing_builder_place (builder, (OxPoint){ -floor.x0 * scale, -floor.y0 * scale }, scale);
  ox_drawing_builder_box (builder, OX_STYLE_HERE, parts->parts[i].box);
  for (guint k = 0; k < parts->n_columns * parts->n_rows; k++)
    {
      const OxPart *part = &parts->parts[k];
      if (part->sheet == 0)
        continue;
      ox_drawing_builder_box (builder, OX_STYLE_RULE, part->box);
      g_autofree char *number = g_strdup_printf ("%u", part->sheet);
      double width = (part->box.x1 - part->box.x0) * scale, height = (part->box.y1 - part->box.y0) * scale;
      OxTextLook look = { OX_STYLE_INK, OX_TEXT_MIN_MM, 0, OX_ALIGN_MIDDLE, TRUE, k == i, 0.3, FALSE };
      if (height > OX_TEXT_MIN_MM + 1 && width > ox_text_width (number, OX_TEXT_MIN_MM, TRUE) + 1)
        ox_drawing_builder_text (
            builder, look, (OxPoint){ (part->box.x0 + part->box.x1) / 2, (part->box.y0 + part->box.y1) / 2 }, number);
    }
  for (guint r = 0; r < job->n_rooms; r++)
    {
      const OxRing *ring = job->rooms[r]->ring;
      g_autofree OxPoint *closed = g_new (OxPoint, ring->n + 1);
      for (guint k = 0; k <= ring->n; k++)
        closed[k] = ring->points[k % ring->n];
      ox_drawing_builder_polyline (builder, OX_STYLE_BLOCK, closed, ring->n + 1);
    }
  return ox_drawing_builder_end (builder);
}
