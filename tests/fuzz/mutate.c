/* Oxturn: tests/fuzz/mutate - texts spoiled by chance, and made small again where they show something.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "mutate.h"
#include <math.h>
#include <string.h>

#define NUMBER "0123456789.-+eE"

/* --- Numbers --- */

typedef struct
{
  gsize start, end;
} Span;

/* Where the numbers of @text stand; a letter before or behind makes it a name, such as R1. */
static GArray *
find_numbers (const char *text)
{
  GArray *spans = g_array_new (FALSE, FALSE, sizeof (Span));
  for (gsize i = 0; text[i] != '\0';)
    {
      gboolean starts = g_ascii_isdigit (text[i]) || (text[i] == '-' && g_ascii_isdigit (text[i + 1]));
      if (!starts || (i > 0 && (g_ascii_isalnum (text[i - 1]) || text[i - 1] == '-')))
        {
          i++;
          continue;
        }
      Span span = { i, i + strspn (text + i, NUMBER) };
      g_array_append_val (spans, span);
      i = span.end;
    }
  return spans;
}

static char *
put (const char *text, Span span, const char *in)
{
  return g_strdup_printf ("%.*s%s%s", (int) span.start, text, in, text + span.end);
}

static char *
number_text (double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];
  return g_strdup (g_ascii_formatd (buffer, sizeof buffer, "%.4f", value));
}

static const Span *
any_number (GRand *rand, const GArray *spans)
{
  return &g_array_index (spans, Span, g_rand_int_range (rand, 0, (gint32) spans->len));
}

static char *
other_number (GRand *rand, const char *text)
{
  g_autoptr (GArray) spans = find_numbers (text);
  if (spans->len == 0)
    return g_strdup ("0");
  const Span *span = any_number (rand, spans);
  return g_strndup (text + span->start, span->end - span->start);
}

static char *
changed_number (GRand *rand, double value, const char *text, const char *other)
{
  static const char *const extreme[]
      = { "0",      "-1",   "1",     "0.0001", "-0.0001", "10000",   "-10000", "10000.0001", "1e300",
          "1e-300", "-0.0", "1e999", "nan",    "360",     "0.00005", "00",     "",           "99999999999999999999" };
  switch (g_rand_int_range (rand, 0, 15) / 2)
    {
    case 0:
      return number_text (value + g_rand_int_range (rand, -3, 4) * 0.0001);
    case 1:
      return number_text (value + g_rand_double_range (rand, -0.3, 0.3));
    case 2:
      return number_text (value * g_rand_double_range (rand, 0.5, 1.5));
    case 3:
      return number_text (round (value));
    case 4:
      return number_text (-value);
    case 5:
      return other_number (rand, other);
    case 6:
      return other_number (rand, text);
    default:
      return g_strdup (extreme[g_rand_int_range (rand, 0, G_N_ELEMENTS (extreme))]);
    }
}

static char *
change_number (GRand *rand, const char *text, const char *other)
{
  g_autoptr (GArray) spans = find_numbers (text);
  if (spans->len == 0)
    return g_strdup (text);
  Span span = *any_number (rand, spans);
  g_autofree char *changed = changed_number (rand, g_ascii_strtod (text + span.start, NULL), text, other);
  return put (text, span, changed);
}

/* --- Pieces: lines, or what commas part --- */

static GPtrArray *
split_pieces (const char *text, char end)
{
  GPtrArray *pieces = g_ptr_array_new_with_free_func (g_free);
  while (*text != '\0')
    {
      const char *stop = strchr (text, end);
      gsize length = stop != NULL ? (gsize) (stop - text) + 1 : strlen (text);
      g_ptr_array_add (pieces, g_strndup (text, length));
      text += length;
    }
  return pieces;
}

/* All but those from @start to before @end. */
static char *
join_without (const GPtrArray *pieces, guint start, guint end)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < pieces->len; i++)
    if (i < start || i >= end)
      g_string_append (text, g_ptr_array_index (pieces, i));
  return g_string_free (text, FALSE);
}

static gpointer
any_piece (GRand *rand, const GPtrArray *pieces)
{
  return g_ptr_array_index (pieces, g_rand_int_range (rand, 0, (gint32) pieces->len));
}

static char
usual_end (const char *text)
{
  return strchr (text, '\n') != NULL ? '\n' : ',';
}

static char *
change_pieces (GRand *rand, const char *text, const char *other)
{
  g_autoptr (GPtrArray) pieces = split_pieces (text, usual_end (text));
  g_autoptr (GPtrArray) others = split_pieces (other, usual_end (other));
  if (pieces->len == 0 || others->len == 0)
    return g_strdup (text);
  guint at = (guint) g_rand_int_range (rand, 0, (gint32) pieces->len);
  guint end = MIN (at + (guint) g_rand_int_range (rand, 1, 6), pieces->len);
  switch (g_rand_int_range (rand, 0, 4))
    {
    case 0:
      return join_without (pieces, at, end);
    case 1:
      g_ptr_array_insert (pieces, (gint) at, g_strdup (any_piece (rand, pieces)));
      break;
    case 2:
      g_ptr_array_insert (pieces, (gint) at, g_strdup (any_piece (rand, others)));
      break;
    default:
      {
        guint with = (guint) g_rand_int_range (rand, 0, (gint32) pieces->len);
        gpointer kept = pieces->pdata[at];
        pieces->pdata[at] = pieces->pdata[with];
        pieces->pdata[with] = kept;
      }
    }
  return join_without (pieces, 0, 0);
}

static char *
change_bytes (GRand *rand, const char *text)
{
  gsize length = strlen (text);
  char *changed = g_strdup (text);
  for (gint32 n = g_rand_int_range (rand, 1, 4); n > 0 && length > 0; n--)
    changed[g_rand_int_range (rand, 0, (gint32) length)] = (char) g_rand_int_range (rand, 1, 256);
  return changed;
}

char *
mutate_text (GRand *rand, const char *text, const char *other)
{
  char *changed = g_strdup (text);
  for (gint32 n = MAX (g_rand_int_range (rand, -1, 5), 1); n > 0; n--)
    {
      g_autofree char *before = changed;
      gint32 kind = g_rand_int_range (rand, 0, 40);
      changed = kind < 32   ? change_number (rand, before, other)
                : kind < 39 ? change_pieces (rand, before, other)
                            : change_bytes (rand, before);
    }
  return changed;
}

/* --- Smaller again --- */

typedef struct
{
  MutateShows shows;
  gpointer data;
  guint tries;
} Shrink;

/* Takes @smaller in place of @text where that still shows. */
static gboolean
take (Shrink *self, char **text, char *smaller)
{
  g_autofree char *tried = smaller;
  if (self->tries == 0 || g_str_equal (*text, tried))
    return FALSE;
  self->tries--;
  if (!self->shows (tried, self->data))
    return FALSE;
  g_free (*text);
  *text = g_steal_pointer (&tried);
  return TRUE;
}

/* Half of them, a quarter ... down to one at a time. */
static void
leave_out (Shrink *self, char **text, char end)
{
  g_autoptr (GPtrArray) all = split_pieces (*text, end);
  for (guint size = MAX (all->len / 2, 1); size > 0; size /= 2)
    for (guint at = 0;;)
      {
        g_autoptr (GPtrArray) pieces = split_pieces (*text, end);
        if (at >= pieces->len || self->tries == 0)
          break;
        if (!take (self, text, join_without (pieces, at, at + size)))
          at += size;
      }
}

/* "12.3456" to "12", or at least to "12.3". */
static void
round_numbers (Shrink *self, char **text)
{
  for (guint i = 0; self->tries > 0; i++)
    {
      g_autoptr (GArray) spans = find_numbers (*text);
      if (i >= spans->len)
        return;
      Span span = g_array_index (spans, Span, i);
      double value = g_ascii_strtod (*text + span.start, NULL);
      for (int decimals = 0; decimals <= 2; decimals++)
        {
          g_autofree char *format = g_strdup_printf ("%%.%df", decimals);
          char buffer[64];
          if (fabs (value) < 1e6
              && take (self, text, put (*text, span, g_ascii_formatd (buffer, sizeof buffer, format, value))))
            break;
        }
    }
}

char *
mutate_shrink (const char *text, MutateShows shows, gpointer data, guint tries)
{
  Shrink self = { shows, data, tries };
  char *smaller = g_strdup (text);
  leave_out (&self, &smaller, '\n');
  leave_out (&self, &smaller, ',');
  round_numbers (&self, &smaller);
  return smaller;
}
