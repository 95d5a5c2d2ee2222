/* Oxturn: base/units - lengths, areas and angles as people read and type them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/units.h"
#include "base/number.h"
#include "base/words.h"
#include <math.h>
#include <string.h>

#define METRES_PER_INCH 0.0254
#define SQUARE_METRES_PER_SQUARE_FOOT 0.09290304
#define SIXTEENTHS_PER_FOOT 192

static char *
metres_text (double metres, gboolean with_unit)
{
  g_autoptr (GString) text = g_string_new (NULL);
  ox_number_append (text, metres, 3);
  const char *point = strchr (text->str, '.');
  gsize decimals = point ? strlen (point + 1) : 0;
  if (!point)
    g_string_append_c (text, '.');
  for (; decimals < 2; decimals++)
    g_string_append_c (text, '0');
  if (with_unit)
    g_string_append (text, " m");
  *strchr (text->str, '.') = *ox_words_decimal ();
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* Rounded as a whole number of sixteenths first, so that nothing is left to carry when it is split. */
static char *
feet_text (double metres)
{
  gint64 sixteenths = (gint64) llround (fabs (metres) / METRES_PER_INCH * 16);
  g_autoptr (GString) text = g_string_new (metres < 0 && sixteenths > 0 ? "-" : NULL);
  gint64 inches = sixteenths % SIXTEENTHS_PER_FOOT / 16;
  gint64 over = sixteenths % 16;
  gint64 under = 16;
  g_string_append_printf (text, "%" G_GINT64_FORMAT "'-%" G_GINT64_FORMAT, sixteenths / SIXTEENTHS_PER_FOOT, inches);
  if (over > 0)
    {
      for (; over % 2 == 0; over /= 2)
        under /= 2;
      g_string_append_printf (text, " %" G_GINT64_FORMAT "/%" G_GINT64_FORMAT, over, under);
    }
  g_string_append_c (text, '"');
  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
ox_units_length_text (OxUnits units, double metres, gboolean with_unit)
{
  g_return_val_if_fail (isfinite (metres), NULL);

  if (units == OX_UNITS_FEET)
    return feet_text (metres);
  if (units == OX_UNITS_METRES)
    return metres_text (metres, with_unit);
  g_autofree char *digits = ox_number_text (metres * 1000, 0);
  return g_strconcat (digits, with_unit ? " mm" : "", NULL);
}

char *
ox_units_area_text (OxUnits units, double square_metres)
{
  g_return_val_if_fail (isfinite (square_metres), NULL);

  if (units == OX_UNITS_FEET)
    {
      g_autofree char *feet = ox_number_text (square_metres / SQUARE_METRES_PER_SQUARE_FOOT, 0);
      return g_strconcat (feet, " ft²", NULL);
    }
  g_autofree char *metres = ox_number_text (square_metres, 1);
  char *point = strchr (metres, '.');
  if (point)
    *point = *ox_words_decimal ();
  return g_strconcat (metres, point ? "" : ox_words_decimal (), point ? "" : "0", " m²", NULL);
}

/* --- reading ---------------------------------------------------------------------------------------------------- */

/* Long enough for any length a person types; longer text is none. */
#define MAX_TYPED 64

typedef enum
{
  MARK_NONE,
  MARK_INCH,
  MARK_FOOT,
  MARK_MILLIMETRE,
  MARK_CENTIMETRE,
  MARK_METRE
} Mark;

/* One number with what stands behind it: 6 1/2" has value 6.5, is no whole number, has a fraction. */
typedef struct
{
  double value;
  gboolean whole;
  gboolean fraction;
  Mark mark;
} Term;

/* What text editors, phones and spreadsheets make of the marks, and how we read it. */
static const struct
{
  const char *from;
  const char *to;
} spellings[] = {
  { "′", "'" },      { "’", "'" },      { "‘", "'" },    { "ʹ", "'" },    { "″", "\"" },
  { "”", "\"" },     { "“", "\"" },     { "ʺ", "\"" },   { "−", "-" },    { "–", "-" },
  { "\u00a0", " " }, { "\u202f", " " }, { "⁄", "/" },    { "¼", " 1/4" }, { "½", " 1/2" },
  { "¾", " 3/4" },   { "⅛", " 1/8" },   { "⅜", " 3/8" }, { "⅝", " 5/8" }, { "⅞", " 7/8" },
};

static char *
plain_spelling (const char *text)
{
  g_autoptr (GString) plain = g_string_new (text);
  for (gsize i = 0; i < G_N_ELEMENTS (spellings); i++)
    g_string_replace (plain, spellings[i].from, spellings[i].to, 0);
  g_string_ascii_down (plain);
  return g_strdup (g_strstrip (plain->str));
}

static const char *
skip_blanks (const char *s)
{
  return s + strspn (s, " \t");
}

/* 1,000 is a thousand to some and one to others, so it is nothing; 0,125 and 12345,678 can only be decimals. */
static gboolean
is_thousands (const char *number, gsize whole_digits, gsize decimals)
{
  return number[whole_digits] == ',' && decimals == 3 && whole_digits >= 1 && whole_digits <= 3 && number[0] != '0';
}

static gboolean
read_decimal (const char **at, Term *term)
{
  const char *s = *at;
  gsize whole_digits = strspn (s, "0123456789");
  gsize length = whole_digits;
  gsize decimals = 0;
  if (s[length] == '.' || s[length] == ',')
    {
      decimals = strspn (s + length + 1, "0123456789");
      if (decimals == 0 || is_thousands (s, whole_digits, decimals))
        return FALSE;
      length += 1 + decimals;
    }
  if (length == 0)
    return FALSE;
  g_autofree char *digits = g_strdelimit (g_strndup (s, length), ",", '.');
  *at = s + length;
  term->whole = decimals == 0;
  return ox_number_parse (digits, &term->value);
}

/* A carpenter's fraction: the lower number 2, 4, ... 64. */
static gboolean
read_lower (const char **at, double *lower)
{
  Term term = { 0 };
  *at = skip_blanks (*at + 1);
  if (!read_decimal (at, &term) || !term.whole)
    return FALSE;
  *lower = term.value;
  for (double power = 2; power <= 64; power *= 2)
    if (term.value == power)
      return TRUE;
  return FALSE;
}

/* Takes "6", "6.5", "3/4", "6 1/2" and "6-1/2". */
static gboolean
read_number (const char **at, Term *term)
{
  double lower;
  if (!read_decimal (at, term))
    return FALSE;
  const char *next = skip_blanks (*at);
  if (*next == '/' && term->whole)
    {
      *at = next;
      if (!read_lower (at, &lower))
        return FALSE;
      term->value /= lower;
      term->whole = FALSE;
      term->fraction = TRUE;
      return TRUE;
    }
  if (*next == '-')
    next = skip_blanks (next + 1);
  if (!term->whole || next == *at || !g_ascii_isdigit (*next))
    return TRUE;
  Term upper = { 0 };
  if (!read_decimal (&next, &upper) || !upper.whole)
    return FALSE;
  next = skip_blanks (next);
  if (*next != '/' || !read_lower (&next, &lower) || upper.value >= lower)
    return FALSE;
  *at = next;
  term->value += upper.value / lower;
  term->whole = FALSE;
  term->fraction = TRUE;
  return TRUE;
}

/* The longer spelling of two with the same beginning stands first. */
static const struct
{
  const char *text;
  Mark mark;
} marks[] = {
  { "'", MARK_FOOT },        { "\"", MARK_INCH },       { "feet", MARK_FOOT }, { "foot", MARK_FOOT },
  { "ft", MARK_FOOT },       { "inches", MARK_INCH },   { "inch", MARK_INCH }, { "in", MARK_INCH },
  { "mm", MARK_MILLIMETRE }, { "cm", MARK_CENTIMETRE }, { "m", MARK_METRE },
};

static gboolean
read_term (const char **at, Term *term)
{
  *term = (Term){ 0 };
  *at = skip_blanks (*at);
  if (!read_number (at, term))
    return FALSE;
  const char *next = skip_blanks (*at);
  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    if (g_str_has_prefix (next, marks[i].text))
      {
        term->mark = marks[i].mark;
        next += strlen (marks[i].text);
        break;
      }
  *at = skip_blanks (next);
  return TRUE;
}

static gboolean
term_metres (const Term *term, double *metres)
{
  switch (term->mark)
    {
    case MARK_INCH:
      *metres = term->value * METRES_PER_INCH;
      return TRUE;
    case MARK_FOOT:
      *metres = term->value * 12 * METRES_PER_INCH;
      return TRUE;
    case MARK_MILLIMETRE:
      *metres = term->value / 1000;
      return !term->fraction;
    case MARK_CENTIMETRE:
      *metres = term->value / 100;
      return !term->fraction;
    case MARK_METRE:
      *metres = term->value;
      return !term->fraction;
    case MARK_NONE:
    default:
      return FALSE;
    }
}

/* Feet are not measured in halves and sixteenths, so a number with a fraction and no mark is inches. */
static Mark
usual_mark (OxUnits units, const Term *term)
{
  if (units == OX_UNITS_FEET)
    return term->fraction ? MARK_INCH : MARK_FOOT;
  return units == OX_UNITS_METRES ? MARK_METRE : MARK_MILLIMETRE;
}

/* Inches behind feet; their mark may be left out. */
static gboolean
read_inches (const char *at, const Term *feet, double *metres)
{
  Term inches;
  if (*at == '-')
    at++;
  if (!feet->whole || !read_term (&at, &inches) || *at != '\0')
    return FALSE;
  if (inches.value >= 12 || (inches.mark != MARK_NONE && inches.mark != MARK_INCH))
    return FALSE;
  *metres = (feet->value * 12 + inches.value) * METRES_PER_INCH;
  return TRUE;
}

gboolean
ox_units_length_parse (OxUnits units, const char *text, double *out)
{
  g_return_val_if_fail (text != NULL && out != NULL, FALSE);

  if (strnlen (text, MAX_TYPED + 1) > MAX_TYPED)
    return FALSE;
  g_autofree char *plain = plain_spelling (text);
  const char *at = plain;
  gboolean negative = *at == '-';
  if (*at == '-' || *at == '+')
    at++;
  Term term;
  double metres;
  if (!read_term (&at, &term))
    return FALSE;
  if (*at != '\0')
    {
      if (term.mark != MARK_FOOT || !read_inches (at, &term, &metres))
        return FALSE;
    }
  else
    {
      if (term.mark == MARK_NONE)
        term.mark = usual_mark (units, &term);
      if (!term_metres (&term, &metres))
        return FALSE;
    }
  *out = negative && metres > 0 ? -metres : metres;
  return TRUE;
}
