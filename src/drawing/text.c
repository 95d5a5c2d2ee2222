/* Oxturn: drawing/text - how wide a text is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/text.h"
#include <string.h>

#define UNITS_PER_EM 2048.0
#define FIRST_BASIC 0x20
#define LAST_BASIC 0x7e
#define FIRST_LATIN 0xa0
#define LAST_LATIN 0x17f

/* Advance widths of DejaVu Sans 2.37, regular then bold: U+0020 to U+007E. */
static const guint16 basic[2][LAST_BASIC - FIRST_BASIC + 1] = {
  {
      651,  821,  942,  1716, 1303, 1946, 1597, 563,  799,  799,  1024, 1716, 651,  739,  651,  690,  1303, 1303, 1303,
      1303, 1303, 1303, 1303, 1303, 1303, 1303, 690,  690,  1716, 1716, 1716, 1087, 2048, 1401, 1405, 1430, 1577, 1294,
      1178, 1587, 1540, 604,  604,  1343, 1141, 1767, 1532, 1612, 1235, 1612, 1423, 1300, 1251, 1499, 1401, 2025, 1403,
      1251, 1403, 799,  690,  799,  1716, 1024, 1024, 1255, 1300, 1126, 1300, 1260, 721,  1300, 1298, 569,  569,  1186,
      569,  1995, 1298, 1253, 1300, 1300, 842,  1067, 803,  1298, 1212, 1675, 1212, 1212, 1075, 1303, 690,  1303, 1716,
  },
  {
      713,  934,  1067, 1716, 1425, 2052, 1786, 627,  936,  936,  1071, 1716, 778,  850,  778,  748,  1425, 1425, 1425,
      1425, 1425, 1425, 1425, 1425, 1425, 1425, 819,  819,  1716, 1716, 1716, 1188, 2048, 1585, 1561, 1503, 1700, 1399,
      1399, 1681, 1714, 762,  762,  1587, 1305, 2038, 1714, 1741, 1501, 1741, 1577, 1475, 1397, 1663, 1585, 2259, 1579,
      1483, 1485, 936,  748,  936,  1716, 1024, 1024, 1382, 1466, 1214, 1466, 1389, 891,  1466, 1458, 702,  702,  1362,
      702,  2134, 1458, 1407, 1466, 1466, 1010, 1219, 979,  1458, 1335, 1892, 1321, 1335, 1192, 1458, 748,  1458, 1716,
  },
};

/* U+00A0 to U+017F: the letters of European languages. */
static const guint16 latin[2][LAST_LATIN - FIRST_LATIN + 1] = {
  {
      651,  821,  1303, 1303, 1303, 1303, 690,  1024, 1024, 2048, 965,  1253, 1716, 739,  2048, 1024, 1024, 1716, 821,
      821,  1024, 1303, 1303, 651,  1024, 821,  965,  1253, 1985, 1985, 1985, 1087, 1401, 1401, 1401, 1401, 1401, 1401,
      1995, 1430, 1294, 1294, 1294, 1294, 604,  604,  604,  604,  1587, 1532, 1612, 1612, 1612, 1612, 1612, 1716, 1612,
      1499, 1499, 1499, 1499, 1251, 1239, 1290, 1255, 1255, 1255, 1255, 1255, 1255, 2011, 1126, 1260, 1260, 1260, 1260,
      569,  569,  569,  569,  1253, 1298, 1253, 1253, 1253, 1253, 1253, 1716, 1253, 1298, 1298, 1298, 1298, 1212, 1300,
      1212, 1401, 1255, 1401, 1255, 1401, 1255, 1430, 1126, 1430, 1126, 1430, 1126, 1430, 1126, 1577, 1300, 1587, 1300,
      1294, 1260, 1294, 1260, 1294, 1260, 1294, 1260, 1294, 1260, 1587, 1300, 1587, 1300, 1587, 1300, 1587, 1300, 1540,
      1298, 1876, 1423, 604,  569,  604,  569,  604,  569,  604,  569,  604,  569,  1208, 1138, 604,  569,  1343, 1186,
      1186, 1141, 569,  1141, 569,  1141, 768,  1141, 700,  1151, 582,  1532, 1298, 1532, 1298, 1532, 1298, 1666, 1532,
      1298, 1612, 1253, 1612, 1253, 1612, 1253, 2191, 2095, 1423, 842,  1423, 842,  1423, 842,  1300, 1067, 1300, 1067,
      1300, 1067, 1300, 1067, 1251, 803,  1251, 803,  1251, 803,  1499, 1298, 1499, 1298, 1499, 1298, 1499, 1298, 1499,
      1298, 1499, 1298, 2025, 1675, 1251, 1212, 1251, 1403, 1075, 1403, 1075, 1403, 1075, 721,
  },
  {
      713,  934,  1425, 1425, 1303, 1425, 748,  1024, 1024, 2048, 1155, 1323, 1716, 850,  2048, 1024, 1024, 1716, 897,
      897,  1024, 1507, 1303, 778,  1024, 897,  1155, 1323, 2120, 2120, 2120, 1188, 1585, 1585, 1585, 1585, 1585, 1585,
      2222, 1503, 1399, 1399, 1399, 1399, 762,  762,  762,  762,  1716, 1714, 1741, 1741, 1741, 1741, 1741, 1716, 1741,
      1663, 1663, 1663, 1663, 1483, 1511, 1473, 1382, 1382, 1382, 1382, 1382, 1382, 2146, 1214, 1389, 1389, 1389, 1389,
      702,  702,  702,  702,  1407, 1458, 1407, 1407, 1407, 1407, 1407, 1716, 1407, 1458, 1458, 1458, 1458, 1335, 1466,
      1335, 1585, 1382, 1585, 1382, 1585, 1382, 1503, 1214, 1503, 1214, 1503, 1214, 1503, 1214, 1700, 1466, 1716, 1466,
      1399, 1389, 1399, 1389, 1399, 1389, 1399, 1389, 1399, 1389, 1681, 1466, 1681, 1466, 1681, 1466, 1681, 1466, 1714,
      1458, 1994, 1618, 762,  702,  762,  702,  762,  702,  762,  702,  762,  702,  1524, 1404, 762,  702,  1587, 1362,
      1362, 1305, 702,  1305, 702,  1305, 982,  1305, 1140, 1315, 760,  1714, 1458, 1714, 1458, 1714, 1458, 2013, 1714,
      1458, 1741, 1407, 1741, 1407, 1741, 1407, 2390, 2241, 1577, 1010, 1577, 1010, 1577, 1010, 1475, 1219, 1475, 1219,
      1475, 1219, 1475, 1219, 1397, 979,  1397, 979,  1397, 979,  1663, 1458, 1663, 1458, 1663, 1458, 1663, 1458, 1663,
      1458, 1663, 1458, 2259, 1892, 1483, 1335, 1483, 1485, 1192, 1485, 1192, 1485, 1192, 891,
  },
};

/* Signs that texts on sheets use, sorted. */
static const struct
{
  gunichar c;
  guint16 width[2];
} signs[] = {
  { 0x2013, { 1024, 1024 } }, { 0x2014, { 2048, 2048 } }, { 0x2018, { 651, 778 } },   { 0x2019, { 651, 778 } },
  { 0x201c, { 1061, 1346 } }, { 0x201d, { 1061, 1346 } }, { 0x2022, { 1208, 1309 } }, { 0x2026, { 2048, 2048 } },
  { 0x2032, { 465, 540 } },   { 0x2033, { 765, 915 } },   { 0x2044, { 342, 342 } },   { 0x2190, { 1716, 1716 } },
  { 0x2192, { 1716, 1716 } }, { 0x2212, { 1716, 1716 } }, { 0x2248, { 1716, 1716 } }, { 0x2260, { 1716, 1716 } },
  { 0x2264, { 1716, 1716 } }, { 0x2265, { 1716, 1716 } },
};

/* A letter that no table has is taken as wide as the widest common ones, so that it is sure to fit. */
#define OTHER_WIDTH 2048

static guint
advance (gunichar c, gboolean bold)
{
  if (c >= FIRST_BASIC && c <= LAST_BASIC)
    return basic[bold][c - FIRST_BASIC];
  if (c >= FIRST_LATIN && c <= LAST_LATIN)
    return latin[bold][c - FIRST_LATIN];
  for (guint i = 0; i < G_N_ELEMENTS (signs); i++)
    if (signs[i].c == c)
      return signs[i].width[bold];
  return g_unichar_iszerowidth (c) ? 0 : OTHER_WIDTH;
}

static double
mm_per_unit (double height_mm)
{
  return height_mm / OX_TEXT_CAP_SHARE / UNITS_PER_EM;
}

static double
width_of (const char *text, const char *end, double height_mm, gboolean bold)
{
  guint64 units = 0;
  for (const char *p = text; p < end; p = g_utf8_next_char (p))
    units += advance (g_utf8_get_char (p), bold);
  return (double) units * mm_per_unit (height_mm);
}

double
ox_text_width (const char *text, double height_mm, gboolean bold)
{
  return width_of (text, text + strlen (text), height_mm, !!bold);
}

/* holds_unit: whether @word begins with a sign of a unit, to its end */
static gboolean
holds_unit (const char *word)
{
  static const char *const units[]
      = { "m",  "mm",  "m\xc2\xb2", "mm\xc2\xb2", "m\xc2\xb3", "ft",    "ft\xc2\xb2", "kg", "lb",
          "h",  "min", "s",         "%",          "A",         "V",     "kW",         "kV", "kVA",
          "Hz", "Pa",  "kPa",       "psi",        "dB",        "dB(A)", "l",          "L",  "MPa" };
  gsize n = strcspn (word, " \n/.,;:)");
  /* "dB(A)" has a bracket of its own. */
  if (g_str_has_prefix (word, "dB(A)"))
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (strlen (units[i]) == n && strncmp (word, units[i], n) == 0)
      return TRUE;
  return FALSE;
}

/* is_break: whether a line may end at the blank @at of @text: not between a figure and its unit */
static gboolean
is_break (const char *text, const char *at)
{
  return at == text || !g_ascii_isdigit (at[-1]) || !holds_unit (at + 1);
}

/* take_line: the end of what of @text fits; at a blank where there is one, else after as many letters as go, one at
 * least */
static const char *
take_line (const char *text, double height_mm, gboolean bold, double width_mm)
{
  const char *blank = NULL, *held = NULL, *p = text;
  double width = 0;
  for (; *p != '\0' && *p != '\n'; p = g_utf8_next_char (p))
    {
      width += advance (g_utf8_get_char (p), bold) * mm_per_unit (height_mm);
      if (*p == ' ' && is_break (text, p))
        blank = p;
      else if (*p == ' ' && width <= width_mm)
        held = p;
      else if (width > width_mm)
        {
          blank = blank != NULL && blank > text ? blank : held;
          if (blank != NULL && blank > text)
            return blank;
          return p > text ? p : g_utf8_next_char (p);
        }
    }
  return p;
}

double
ox_text_longest_word (const char *text, double height_mm, gboolean bold)
{
  double longest = 0;
  const char *from = text;
  for (const char *p = text;; p++)
    if (*p == '\0' || *p == '\n' || (*p == ' ' && is_break (text, p)))
      {
        longest = MAX (longest, width_of (from, p, height_mm, !!bold));
        from = p + 1;
        if (*p == '\0')
          return longest;
      }
}

char **
ox_text_wrap (const char *text, double height_mm, gboolean bold, double width_mm)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  const char *p = text;
  do
    {
      const char *end = take_line (p, height_mm, !!bold, width_mm);
      g_ptr_array_add (lines, g_strchomp (g_strndup (p, (gsize) (end - p))));
      if (*end == '\n')
        p = end + 1;
      else
        for (p = end; *p == ' ';)
          p++;
      if (*end == '\n' && *p == '\0')
        break;
    }
  while (*p != '\0');
  g_ptr_array_add (lines, NULL);
  return (char **) g_ptr_array_free (g_steal_pointer (&lines), FALSE);
}

char *
ox_text_fit (const char *text, double height_mm, gboolean bold, double width_mm)
{
  static const char ellipsis[] = "\xe2\x80\xa6";
  if (ox_text_width (text, height_mm, bold) <= width_mm)
    return g_strdup (text);
  double room = width_mm - ox_text_width (ellipsis, height_mm, bold);
  if (room < 0)
    return g_strdup ("");
  const char *end = text;
  while (*end != '\0' && width_of (text, g_utf8_next_char (end), height_mm, !!bold) <= room)
    end = g_utf8_next_char (end);
  g_autofree char *start = g_strchomp (g_strndup (text, (gsize) (end - text)));
  return g_strconcat (start, ellipsis, NULL);
}
