/* Oxturn: sheets/paper - paper sizes and the series of scales.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/paper.h"
#include "base/number.h"
#include "base/words.h"
#include <math.h>
#include <string.h>

#define INCH 25.4
#define LARGEST_DENOMINATOR 100000.0

static const OxPaper papers[] = {
  { "A4", 210, 297, FALSE },
  { "A3", 297, 420, FALSE },
  { "A2", 420, 594, FALSE },
  { "A1", 594, 841, FALSE },
  { "A0", 841, 1189, FALSE },
  { "Letter", 8.5 * INCH, 11 * INCH, TRUE },
  { "Tabloid", 11 * INCH, 17 * INCH, TRUE },
  { "ANSI C", 17 * INCH, 22 * INCH, TRUE },
  { "ANSI D", 22 * INCH, 34 * INCH, TRUE },
  { "ANSI E", 34 * INCH, 44 * INCH, TRUE },
  { "Arch A", 9 * INCH, 12 * INCH, TRUE },
  { "Arch B", 12 * INCH, 18 * INCH, TRUE },
  { "Arch C", 18 * INCH, 24 * INCH, TRUE },
  { "Arch D", 24 * INCH, 36 * INCH, TRUE },
  { "Arch E1", 30 * INCH, 42 * INCH, TRUE },
  { "Arch E", 36 * INCH, 48 * INCH, TRUE },
};

/* Denominators: architectural 12 / (inches a foot), engineering 12 x (feet an inch). */
static const OxScale us_scales[] = {
  { 4, "3\" = 1'-0\"" },    { 8, "1 1/2\" = 1'-0\"" }, { 12, "1\" = 1'-0\"" },     { 16, "3/4\" = 1'-0\"" },
  { 24, "1/2\" = 1'-0\"" }, { 32, "3/8\" = 1'-0\"" },  { 48, "1/4\" = 1'-0\"" },   { 64, "3/16\" = 1'-0\"" },
  { 96, "1/8\" = 1'-0\"" }, { 120, "1\" = 10'" },      { 128, "3/32\" = 1'-0\"" }, { 192, "1/16\" = 1'-0\"" },
  { 240, "1\" = 20'" },     { 360, "1\" = 30'" },      { 384, "1/32\" = 1'-0\"" }, { 480, "1\" = 40'" },
  { 600, "1\" = 50'" },     { 720, "1\" = 60'" },      { 1200, "1\" = 100'" },     { 2400, "1\" = 200'" },
  { 6000, "1\" = 500'" },   { 12000, "1\" = 1000'" },  { 24000, "1\" = 2000'" },   { 60000, "1\" = 5000'" },
};

guint
ox_paper_get_count (void)
{
  return G_N_ELEMENTS (papers);
}

const OxPaper *
ox_paper_get (guint i)
{
  g_return_val_if_fail (i < G_N_ELEMENTS (papers), NULL);
  return &papers[i];
}

/* bare_name: lower case, without what people put between the parts of a name; (transfer full) */
static char *
bare_name (const char *name)
{
  GString *bare = g_string_new (NULL);
  for (const char *p = name; *p != '\0'; p++)
    if (g_ascii_isalnum (*p))
      g_string_append_c (bare, g_ascii_tolower (*p));
  return g_string_free (bare, FALSE);
}

const OxPaper *
ox_paper_find (const char *name)
{
  static const char *const other_names[][2] = { { "ansia", "letter" }, { "ansib", "tabloid" } };
  g_autofree char *wanted = bare_name (name);
  for (guint i = 0; i < G_N_ELEMENTS (other_names); i++)
    if (g_str_equal (wanted, other_names[i][0]))
      return ox_paper_find (other_names[i][1]);
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      g_autofree char *bare = bare_name (papers[i].name);
      if (g_str_equal (wanted, bare))
        return &papers[i];
    }
  return NULL;
}

static void
skip_blanks (const char **p)
{
  while (**p == ' ')
    (*p)++;
}

static gboolean
take (const char **p, const char *word)
{
  const char *start = *p;
  skip_blanks (&start);
  if (!g_str_has_prefix (start, word))
    return FALSE;
  *p = start + strlen (word);
  return TRUE;
}

static gboolean
take_number (const char **p, double *out)
{
  skip_blanks (p);
  gsize n = strspn (*p, "0123456789.");
  g_autofree char *digits = g_strndup (*p, n);
  *p += n;
  return ox_number_parse (digits, out);
}

/* take_measure: "3", "1.5", "3/8", "1 1/2", "1-1/2" */
static gboolean
take_measure (const char **p, double *out)
{
  double top, bottom;
  if (!take_number (p, out))
    return FALSE;
  if (take (p, "/"))
    {
      if (!take_number (p, &bottom) || bottom <= 0)
        return FALSE;
      *out /= bottom;
      return TRUE;
    }
  const char *rest = *p;
  if ((*rest == ' ' || *rest == '-') && g_ascii_isdigit (rest[1]))
    {
      rest++;
      if (!take_number (&rest, &top) || !take (&rest, "/") || !take_number (&rest, &bottom) || bottom <= 0)
        return FALSE;
      *out += top / bottom;
      *p = rest;
    }
  return TRUE;
}

/* parse_inches: so many inches of paper to a foot, or to the feet that are given */
static gboolean
parse_inches (const char *text, double *denominator)
{
  const char *p = text;
  double inches, feet = 1;
  if (!take_measure (&p, &inches) || inches <= 0 || !(take (&p, "\"") || take (&p, "in")))
    return FALSE;
  if (take (&p, "="))
    {
      if (!take_measure (&p, &feet) || feet <= 0 || !(take (&p, "'") || take (&p, "ft")))
        return FALSE;
      if (take (&p, "-") || *p != '\0')
        if (!take (&p, "0\"") && !take (&p, "0in"))
          return FALSE;
    }
  skip_blanks (&p);
  *denominator = 12 * feet / inches;
  return *p == '\0';
}

static gboolean
parse_ratio (const char *text, double *denominator)
{
  const char *p = text;
  double paper, floor;
  if (!take_number (&p, &paper) || !take (&p, ":") || !take_number (&p, &floor) || paper <= 0)
    return FALSE;
  skip_blanks (&p);
  *denominator = floor / paper;
  return *p == '\0';
}

gboolean
ox_scale_parse (const char *text, OxScale *out)
{
  g_autofree char *bare = g_strstrip (g_ascii_strdown (text, -1));
  OxScale scale = { 0, NULL };
  if (bare[0] == '\0' || g_str_equal (bare, "auto"))
    {
      *out = scale;
      return TRUE;
    }
  if (!parse_ratio (bare, &scale.denominator))
    {
      if (!parse_inches (bare, &scale.denominator))
        return FALSE;
      for (guint i = 0; i < G_N_ELEMENTS (us_scales); i++)
        if (fabs (us_scales[i].denominator - scale.denominator) < 1e-6 * scale.denominator)
          scale = us_scales[i];
    }
  if (!(scale.denominator >= 1 && scale.denominator <= LARGEST_DENOMINATOR))
    return FALSE;
  *out = scale;
  return TRUE;
}

OxScale
ox_scale_fit (OxUnits units, const double metres[2], const double mm[2])
{
  double needed = MAX (metres[0] * 1000 / mm[0], metres[1] * 1000 / mm[1]) * (1 - 1e-9);
  if (units == OX_UNITS_FEET)
    for (guint i = 0; i < G_N_ELEMENTS (us_scales); i++)
      if (us_scales[i].denominator >= needed)
        return us_scales[i];
  static const double steps[] = { 1, 2, 5 };
  for (double power = 1; power <= LARGEST_DENOMINATOR; power *= 10)
    for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
      if (power * steps[i] >= needed)
        return (OxScale){ power * steps[i], NULL };
  return (OxScale){ ceil (needed), NULL };
}

OxScale
ox_scale_at_least (OxUnits units, double denominator)
{
  OxScale best = { 1, NULL };
  for (guint i = 0; units == OX_UNITS_FEET && i < G_N_ELEMENTS (us_scales); i++)
    if (us_scales[i].denominator <= denominator)
      best = us_scales[i];
  static const double steps[] = { 1, 2, 5 };
  for (double power = 1; units != OX_UNITS_FEET && power <= LARGEST_DENOMINATOR; power *= 10)
    for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
      if (power * steps[i] <= denominator)
        best.denominator = power * steps[i];
  return best;
}

OxScale
ox_scale_named (OxUnits units, double denominator)
{
  for (guint i = 0; units == OX_UNITS_FEET && i < G_N_ELEMENTS (us_scales); i++)
    if (fabs (us_scales[i].denominator - denominator) < 1e-6 * denominator)
      return us_scales[i];
  return (OxScale){ denominator, NULL };
}

char *
ox_scale_text (OxScale scale)
{
  g_autofree char *number = ox_words_number (scale.denominator, 3);
  return scale.name != NULL ? g_strdup_printf ("%s (1:%s)", scale.name, number) : g_strdup_printf ("1:%s", number);
}
