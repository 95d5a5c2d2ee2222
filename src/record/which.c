/* Oxturn: record/which - strips and edge areas by number, as a crew says them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/which.h"
#include "base/shown.h"
#include <string.h>
#include "base/words.h"

G_DEFINE_QUARK (ox - which - error - quark, ox_which_error)

typedef struct
{
  const char *at;
  guint most;       /* the highest number that there is */
  gboolean letters; /* whether an E may stand before a number */
} Reader;

static void
skip_blanks (Reader *reader)
{
  while (g_ascii_isspace (*reader->at))
    reader->at++;
}

static gboolean
take_dash (Reader *reader)
{
  static const char *const dashes[] = { "-", "–", "—" };
  skip_blanks (reader);
  for (guint i = 0; i < G_N_ELEMENTS (dashes); i++)
    if (g_str_has_prefix (reader->at, dashes[i]))
      {
        reader->at += strlen (dashes[i]);
        return TRUE;
      }
  return FALSE;
}

/* FALSE, with nothing taken, where no number stands. Absurd ones come out too high for any plan. */
static gboolean
take_number (Reader *reader, guint64 *number)
{
  skip_blanks (reader);
  const char *p = reader->at;
  if (reader->letters && (*p == 'E' || *p == 'e'))
    p++;
  if (!g_ascii_isdigit (*p))
    return FALSE;
  *number = 0;
  for (; g_ascii_isdigit (*p); p++)
    *number = MIN (*number * 10 + (guint64) (*p - '0'), G_MAXUINT);
  reader->at = p;
  return TRUE;
}

static gboolean
fail_syntax (const Reader *reader, GError **error)
{
  g_set_error (error, OX_WHICH_ERROR, OX_WHICH_ERROR_SYNTAX,
               _ ("“%s” is no number; numbers and runs such as 7, 12-40 or -40 are needed"),
               ox_shown (reader->at).text);
  return FALSE;
}

static gboolean
check_range (const Reader *reader, guint64 from, guint64 to, GError **error)
{
  if (from >= 1 && to >= from && to <= reader->most)
    return TRUE;
  if (from > to && to > 0)
    g_set_error (error, OX_WHICH_ERROR, OX_WHICH_ERROR_RANGE, _ ("The run %u-%u ends before it begins"), (guint) from,
                 (guint) to);
  else if (reader->most == 0)
    g_set_error (error, OX_WHICH_ERROR, OX_WHICH_ERROR_RANGE, _ ("The plan has none of these"));
  else
    g_set_error (error, OX_WHICH_ERROR, OX_WHICH_ERROR_RANGE, _ ("The plan has no number %u; it has 1 to %u"),
                 (guint) (from < 1 ? from : MAX (from, to)), reader->most);
  return FALSE;
}

/* One number or run. */
static gboolean
take_run (Reader *reader, gboolean *chosen, GError **error)
{
  guint64 from = 1, to = reader->most;
  gboolean begun = take_number (reader, &from);
  gboolean run = take_dash (reader);
  gboolean ended = run && take_number (reader, &to);
  if (!begun && !ended)
    return fail_syntax (reader, error);
  if (!run)
    to = from;
  if (!check_range (reader, from, to, error))
    return FALSE;
  for (guint64 i = from; i <= to; i++)
    chosen[i] = TRUE;
  return TRUE;
}

static GArray *
read_which (Reader *reader, GError **error)
{
  g_autofree gboolean *chosen = g_new0 (gboolean, (gsize) reader->most + 1);
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (guint));
  do
    {
      if (!take_run (reader, chosen, error))
        return NULL;
      skip_blanks (reader);
      while (*reader->at == ',' || *reader->at == ';')
        {
          reader->at++;
          skip_blanks (reader);
        }
    }
  while (*reader->at != '\0');
  for (guint i = 1; i <= reader->most; i++)
    if (chosen[i])
      g_array_append_val (numbers, i);
  return g_steal_pointer (&numbers);
}

GArray *
ox_which_strips (const OxPlan *plan, const char *text, GError **error)
{
  return read_which (&(Reader){ text, plan->n_strips, FALSE }, error);
}

GArray *
ox_which_edges (const OxPlan *plan, const char *text, GError **error)
{
  return read_which (&(Reader){ text, plan->n_edges, TRUE }, error);
}

char *
ox_which_text (const guint *numbers, guint n, const char *letter)
{
  g_autoptr (GString) text = g_string_new (NULL);
  for (guint i = 0; i < n;)
    {
      guint end = i;
      while (end + 1 < n && numbers[end + 1] == numbers[end] + 1)
        end++;
      /* Two in a row are no run yet. */
      if (end == i + 1)
        end = i;
      g_string_append_printf (text, "%s%s%u", i > 0 ? ", " : "", letter, numbers[i]);
      if (end > i)
        g_string_append_printf (text, "–%s%u", letter, numbers[end]);
      i = end + 1;
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}
