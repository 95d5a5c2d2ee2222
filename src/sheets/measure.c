/* Oxturn: sheets/measure - quantities as they stand in tables and tags.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/measure.h"
#include "base/words.h"
#include <math.h>
#include <string.h>

#define INCH 0.0254
#define CENTIMETRE 0.01
#define FOOT 0.3048
#define SQUARE_FOOT (FOOT * FOOT)
#define WHOLE 1e-9 /* of a step: what is as near to the next whole one is that */
#define SMALL_M2 1.0
#define SMALL_FT2 10.0

char *
ox_measure_number (double value, guint decimals)
{
  char format[8], text[G_ASCII_DTOSTR_BUF_SIZE];
  g_snprintf (format, sizeof format, "%%.%uf", decimals);
  g_ascii_formatd (text, sizeof text, format, value);
  char *point = strchr (text, '.');
  if (point != NULL)
    *point = *ox_words_decimal ();
  return g_strdup (text);
}

char *
ox_measure_length (OxUnits units, double metres)
{
  double step = units == OX_UNITS_FEET ? INCH : CENTIMETRE;
  return ox_units_length_text (units, round (metres / step) * step, TRUE);
}

char *
ox_measure_area (OxUnits units, double square_metres)
{
  gboolean feet = units == OX_UNITS_FEET;
  double area = feet ? square_metres / SQUARE_FOOT : square_metres;
  if (area >= (feet ? SMALL_FT2 : SMALL_M2))
    return ox_units_area_text (units, square_metres);
  g_autofree char *number = ox_measure_number (area, feet ? 1 : 2);
  return g_strdup_printf (feet ? "%s ft\xc2\xb2" : "%s m\xc2\xb2", number);
}

char *
ox_measure_area_to (OxUnits units, double square_metres, guint decimals)
{
  gboolean feet = units == OX_UNITS_FEET;
  g_autofree char *number = ox_measure_number (feet ? square_metres / SQUARE_FOOT : square_metres, decimals);
  return g_strdup_printf (feet ? "%s ft\xc2\xb2" : "%s m\xc2\xb2", number);
}

void
ox_measure_share (double *parts, guint n, double step, double sum)
{
  g_autofree double *remainders = g_new (double, n + 1);
  double left = round (sum / step);
  for (guint i = 0; i < n; i++)
    {
      double whole = floor (parts[i] / step + WHOLE);
      remainders[i] = parts[i] / step - whole;
      parts[i] = whole * step;
      left -= whole;
    }
  for (; left > 0; left--)
    {
      guint most = 0;
      for (guint i = 1; i < n; i++)
        if (remainders[i] > remainders[most])
          most = i;
      if (n == 0 || remainders[most] < WHOLE)
        return;
      parts[most] += step;
      remainders[most] = 0;
    }
}

char *
ox_measure_speed (OxUnits units, double m_per_min)
{
  gboolean feet = units == OX_UNITS_FEET;
  g_autofree char *number = ox_words_number (feet ? m_per_min / FOOT : m_per_min, 1);
  return g_strdup_printf (feet ? _ ("%s ft/min") : _ ("%s m/min"), number);
}

char *
ox_measure_rate (OxUnits units, double m2_per_h)
{
  gboolean feet = units == OX_UNITS_FEET;
  g_autofree char *number = ox_words_number (feet ? m2_per_h / SQUARE_FOOT : m2_per_h, 1);
  return g_strdup_printf (feet ? _ ("%s ft\xc2\xb2/h") : _ ("%s m\xc2\xb2/h"), number);
}

char *
ox_measure_length_rate (OxUnits units, double m_per_h)
{
  gboolean feet = units == OX_UNITS_FEET;
  g_autofree char *number = ox_words_number (feet ? m_per_h / FOOT : m_per_h, 1);
  return g_strdup_printf (feet ? _ ("%s ft/h") : _ ("%s m/h"), number);
}
