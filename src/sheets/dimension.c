/* Oxturn: sheets/dimension - dimension lines, the scale bar and the north arrow.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/dimension.h"
#include "base/words.h"
#include "drawing/text.h"

#define FOOT 0.3048
#define EXTENSION_GAP_MM 1.5
#define EXTENSION_OVERRUN_MM 1.5
#define EXTENSION_FROM_MM 6.0
#define TEXT_CLEAR_MM 1.0
#define BAR_MM 2.4
#define BAR_PARTS 4
#define BEHIND_MM 3.0 /* from the words of the scale to what is written behind them */

static OxPoint
left_of (OxPoint a, OxPoint b, double distance)
{
  double length = ox_point_distance (a, b);
  return (OxPoint){ -(b.y - a.y) / length * distance, (b.x - a.x) / length * distance };
}

OxPoint
ox_dimension_get_text (const OxDimension *dimension, double *angle)
{
  double heading = atan2 (dimension->b.y - dimension->a.y, dimension->b.x - dimension->a.x);
  /* Level text reads from below, upright text from the right: headings in (-90, 90] degrees. */
  gboolean turned = heading > G_PI / 2 + 1e-9 || heading <= -G_PI / 2 + 1e-9;
  *angle = remainder (turned ? heading + G_PI : heading, 2 * G_PI);
  OxPoint middle = ox_point_scale (ox_point_add (dimension->a, dimension->b), 0.5);
  double above = turned ? -TEXT_CLEAR_MM : TEXT_CLEAR_MM;
  return ox_point_add (middle, left_of (dimension->a, dimension->b, dimension->offset_mm + above));
}

void
ox_dimension_append (const OxDimension *dimension, OxDrawingBuilder *builder)
{
  OxPoint ends[2] = { dimension->a, dimension->b };
  double sign = dimension->offset_mm < 0 ? -1 : 1;
  OxPoint out = left_of (dimension->a, dimension->b, dimension->offset_mm);
  double heading = atan2 (dimension->b.y - dimension->a.y, dimension->b.x - dimension->a.x);
  ox_drawing_builder_line (builder, OX_STYLE_DIMENSION, ox_point_add (ends[0], out), ox_point_add (ends[1], out));
  for (int i = 0; i < 2; i++)
    {
      ox_drawing_builder_mark (builder, (OxMarkLook){ OX_STYLE_BLOCK, OX_MARK_TICK, heading, 3.5 },
                               ox_point_add (ends[i], out));
      if (fabs (dimension->offset_mm) < EXTENSION_FROM_MM)
        continue;
      OxPoint from = ox_point_add (ends[i], left_of (dimension->a, dimension->b, sign * EXTENSION_GAP_MM));
      OxPoint to = ox_point_add (
          ends[i], left_of (dimension->a, dimension->b, dimension->offset_mm + sign * EXTENSION_OVERRUN_MM));
      ox_drawing_builder_line (builder, OX_STYLE_DIMENSION, from, to);
    }
  double angle;
  OxPoint at = ox_dimension_get_text (dimension, &angle);
  OxTextLook look = { OX_STYLE_DIMENSION, OX_DIMENSION_TEXT_MM, angle, OX_ALIGN_MIDDLE, FALSE, FALSE, 0.35, FALSE };
  ox_drawing_builder_text (builder, look, at, dimension->text);
}

/* round_unit: 1, 2 or 5 times a power of ten, the largest whose bar is not longer than about 80 mm */
static double
round_unit (double mm_per_unit)
{
  double most = 16 / mm_per_unit, power = pow (10, floor (log10 (most)));
  return power * (most / power >= 5 ? 5 : most / power >= 2 ? 2 : 1);
}

OxPoint
ox_scale_bar_append (OxDrawingBuilder *builder, OxPoint corner, OxScale scale, OxUnits units, const char *paper_name)
{
  double metres = units == OX_UNITS_FEET ? FOOT : 1, mm = metres * 1000 / scale.denominator;
  double unit = round_unit (mm), part = unit * mm, zero = corner.x + part;
  OxTextLook figure = { OX_STYLE_INK, 1.8, 0, OX_ALIGN_MIDDLE, FALSE, FALSE, 0, FALSE };
  /* One part left of zero, in fifths; four whole ones to the right. */
  for (int i = 0; i < 5; i++)
    ox_drawing_builder_box (
        builder, i % 2 == 0 ? OX_STYLE_BAR : OX_STYLE_DIMENSION,
        (OxBox){ corner.x + part * i / 5, corner.y, corner.x + part * (i + 1) / 5, corner.y + BAR_MM });
  for (int i = 0; i < BAR_PARTS; i++)
    ox_drawing_builder_box (builder, i % 2 == 1 ? OX_STYLE_BAR : OX_STYLE_DIMENSION,
                            (OxBox){ zero + part * i, corner.y, zero + part * (i + 1), corner.y + BAR_MM });
  for (int i = -1; i <= BAR_PARTS; i++)
    {
      g_autofree char *number = ox_words_number (fabs (unit * i), 4);
      g_autofree char *last
          = i == BAR_PARTS ? g_strdup_printf ("%s %s", number, units == OX_UNITS_FEET ? _ ("ft") : _ ("m")) : NULL;
      ox_drawing_builder_text (builder, figure, (OxPoint){ zero + part * i, corner.y + BAR_MM + 1.2 },
                               last ? last : number);
    }
  g_autofree char *ratio = ox_scale_text (scale);
  g_autofree char *words = g_strdup_printf (_ ("Scale %s at %s"), ratio, paper_name);
  OxTextLook look = { OX_STYLE_INK, 2.5, 0, OX_ALIGN_START, FALSE, TRUE, 0, FALSE };
  OxPoint at = { corner.x, corner.y + BAR_MM + 5.4 };
  ox_drawing_builder_text (builder, look, at, words);
  return (OxPoint){ at.x + ox_text_width (words, look.height_mm, look.bold) + BEHIND_MM, at.y };
}

void
ox_north_append (OxDrawingBuilder *builder, OxPoint centre, double north_deg)
{
  double angle = north_deg * G_PI / 180;
  OxTextLook look = { OX_STYLE_INK, 2.5, 0, OX_ALIGN_MIDDLE, TRUE, TRUE, 0, FALSE };
  ox_drawing_builder_mark (builder, (OxMarkLook){ OX_STYLE_INK, OX_MARK_NORTH, angle, 10 }, centre);
  OxPoint tip = { centre.x + cos (angle) * 7.5, centre.y + sin (angle) * 7.5 };
  ox_drawing_builder_text (builder, look, tip, C_ ("north, on a drawing", "N"));
}
