/* Oxturn: tools/survey - corners read from a text: a tape sheet of lengths and directions, or a list of x and y.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/survey.h"
#include "base/shown.h"

#include "base/number.h"
#include "geometry/ring.h"
#include "geometry/traverse.h"

#include <glib/gi18n-lib.h>
#include <string.h>

G_DEFINE_QUARK (ox_survey_error, ox_survey_error)

void
ox_survey_free (OxSurvey *survey)
{
  ox_ring_unref (survey->ring);
  g_free (survey);
}

/* --- Lines --- */

/* Parts the line at a semicolon or a tab, else at its last blank, else at its last comma: a decimal comma needs one of
 * the others. */
static gboolean
part (const char *line, char **first, char **second)
{
  g_autofree char *text = g_strstrip (g_strdup (line));
  char *at = strpbrk (text, ";\t");

  if (at == NULL)
    at = strrchr (text, ' ');
  if (at == NULL)
    at = strrchr (text, ',');
  if (at == NULL)
    return FALSE;
  *at = '\0';
  *second = g_strdup (g_strstrip (at + 1));
  g_strchomp (text);
  /* "12.5, 3": the comma parts and the blank only follows. */
  if (g_str_has_suffix (text, ","))
    text[strlen (text) - 1] = '\0';
  *first = g_strdup (g_strstrip (text));
  return TRUE;
}

static char **
lines_of (const char *text)
{
  g_autofree char *plain = g_strdup (text);

  g_strdelimit (plain, "\r", '\n');
  return g_strsplit (plain, "\n", OX_SURVEY_MAX_LINES);
}

static char *
without_remark (const char *line)
{
  g_auto (GStrv) parts = g_strsplit (line, "#", 2);

  return g_strdup (parts[0] != NULL ? g_strstrip (parts[0]) : "");
}

static gboolean
read_number (const char *text, double *out)
{
  g_autofree char *plain = g_strdelimit (g_strdup (text), ",", '.');

  return ox_number_parse (plain, out);
}

/* "90", "90\302\260", "L", "R45": left turns are counter-clockwise. */
static gboolean
read_direction (const char *text, double before, double *out)
{
  g_autofree char *plain = g_strdup (text);
  double turn = 90;
  char sign = g_ascii_toupper (text[0]);

  if (g_str_has_suffix (plain, "\302\260"))
    plain[strlen (plain) - 2] = '\0';
  if (sign != 'L' && sign != 'R')
    return read_number (plain, out);
  if (plain[1] != '\0' && !read_number (plain + 1, &turn))
    return FALSE;
  *out = before + (sign == 'L' ? turn : -turn);
  return TRUE;
}

typedef struct
{
  const OxSurveyOptions *options;
  GArray *legs;   /* of OxLeg */
  GArray *points; /* of OxPoint */
} Reading;

static gboolean
read_line (Reading *self, const char *line)
{
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;
  OxUnits units = self->options->units;
  OxLeg leg = { 0 };
  OxPoint point;

  if (!part (line, &first, &second))
    return FALSE;
  if (self->options->form == OX_SURVEY_LIST)
    {
      if (!ox_units_length_parse (units, first, &point.x) || !ox_units_length_parse (units, second, &point.y))
        return FALSE;
      g_array_append_val (self->points, point);
      return fabs (point.x) <= OX_COORD_MAX && fabs (point.y) <= OX_COORD_MAX;
    }
  if (self->legs->len > 0)
    leg.heading_deg = g_array_index (self->legs, OxLeg, self->legs->len - 1).heading_deg;
  if (!ox_units_length_parse (units, first, &leg.length) || !(leg.length > 0 && leg.length <= OX_COORD_MAX)
      || !read_direction (second, leg.heading_deg, &leg.heading_deg))
    return FALSE;
  g_array_append_val (self->legs, leg);
  return TRUE;
}

static gboolean
read_lines (Reading *self, const char *text, GError **error)
{
  g_auto (GStrv) lines = lines_of (text);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_autofree char *line = without_remark (lines[i]);

      if (*line == '\0' || read_line (self, line) || (i == 0 && g_ascii_isalpha (*line)))
        continue;
      if (self->options->form == OX_SURVEY_LIST)
        g_set_error (error, OX_SURVEY_ERROR, OX_SURVEY_ERROR_LINE,
                     _ ("Line %u, \342\200\234%s\342\200\235: write x and y, such as 12.5, 3"), i + 1,
                     ox_shown (line).text);
      else
        g_set_error (error, OX_SURVEY_ERROR, OX_SURVEY_ERROR_LINE,
                     _ ("Line %u, \342\200\234%s\342\200\235: write a length and a direction, such as 6.35 90"), i + 1,
                     ox_shown (line).text);
      return FALSE;
    }
  return TRUE;
}

/* --- The outline --- */

static OxRing *
counter_clockwise (const GArray *points)
{
  g_autoptr (OxRing) ring = ox_ring_new ((const OxPoint *) points->data, points->len);
  g_autofree OxPoint *turned = NULL;

  if (ox_ring_area (ring) >= 0)
    return g_steal_pointer (&ring);
  turned = g_new (OxPoint, ring->n);
  for (guint i = 0; i < ring->n; i++)
    turned[i] = ring->points[(ring->n - i) % ring->n];
  return ox_ring_new (turned, ring->n);
}

static OxSurvey *
finish (GArray *points, const OxSurveyOptions *options, GError **error)
{
  OxSurvey found = { .gap = ox_traverse_gap (points), .length = ox_traverse_length (points) };
  OxSurvey *survey;

  found.closing = options->form == OX_SURVEY_CHAIN && found.gap <= OX_SURVEY_CLOSING_SHARE * found.length;
  if (found.closing && options->spread)
    ox_traverse_spread (points);
  if (found.closing)
    g_array_set_size (points, points->len - 1);
  if (points->len < 3)
    {
      g_set_error_literal (error, OX_SURVEY_ERROR, OX_SURVEY_ERROR_FEW, _ ("An outline needs three corners or more."));
      return NULL;
    }
  survey = g_memdup2 (&found, sizeof found);
  survey->ring = counter_clockwise (points);
  return survey;
}

OxSurvey *
ox_survey_read (const char *text, const OxSurveyOptions *options, GError **error)
{
  g_autoptr (GArray) legs = g_array_new (FALSE, FALSE, sizeof (OxLeg));
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  Reading reading = { .options = options, .legs = legs, .points = points };
  g_autoptr (GArray) walked = NULL;

  if (!read_lines (&reading, text, error))
    return NULL;
  if (options->form == OX_SURVEY_LIST)
    return finish (points, options, error);
  walked = ox_traverse_points (options->start, (const OxLeg *) legs->data, legs->len);
  return finish (walked, options, error);
}

OxSurveyForm
ox_survey_guess (const char *text)
{
  g_auto (GStrv) lines = lines_of (text);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_autofree char *line = without_remark (lines[i]);
      g_autofree char *first = NULL;
      g_autofree char *second = NULL;
      double figure;

      if (i == 0 && g_ascii_tolower (line[0]) == 'x')
        return OX_SURVEY_LIST;
      /* A leg has a length; a corner may well lie at 0 or left of it. */
      if (part (line, &first, &second) && read_number (first, &figure) && figure <= 0)
        return OX_SURVEY_LIST;
    }
  return OX_SURVEY_CHAIN;
}

char *
ox_survey_words (const OxSurvey *survey, const OxSurveyOptions *options)
{
  g_autofree char *area = ox_units_area_text (options->units, ox_ring_area (survey->ring));
  g_autofree char *gap = ox_units_length_text (options->units, survey->gap, TRUE);

  if (options->form == OX_SURVEY_LIST)
    return g_strdup_printf (_ ("%u corners, %s"), survey->ring->n, area);
  if (!survey->closing)
    return g_strdup_printf (_ ("%u corners, %s. The last end is %s from the start: one more side closes the outline."),
                            survey->ring->n, area, gap);
  if (survey->gap < OX_GRID)
    return g_strdup_printf (_ ("%u corners, %s. The outline closes."), survey->ring->n, area);
  return g_strdup_printf (options->spread ? _ ("%u corners, %s. Closing error %s, 1 in %.0f, spread over all corners.")
                                          : _ ("%u corners, %s. Closing error %s, 1 in %.0f, left in the last side."),
                          survey->ring->n, area, gap, survey->length / survey->gap);
}
