/* Oxturn: plan/field-lies - what it costs to work one field before another.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/field-lies.h"

#define LEAST_SPLIT 60.0 /* s that parting a field must save: it takes a walk and tears the lanes apart */

typedef struct
{
  guint field;
  double seconds;
} Entry;

struct _OxFieldLies
{
  const OxLies *lies;
  guint base, n; /* strips of the legs */
  GArray **rows; /* of each field: Entry, by rising field */
  guint n_rows;
};

OxFieldLies *
ox_field_lies_new (const OxLies *lies, const GArray *legs)
{
  OxFieldLies *own = g_new0 (OxFieldLies, 1);
  own->lies = lies;
  own->base = legs->len > 0 ? g_array_index (legs, OxLeg, 0).strip : 0;
  own->n = legs->len;
  return own;
}

static void
clear_rows (OxFieldLies *lies)
{
  for (guint i = 0; i < lies->n_rows; i++)
    g_array_unref (lies->rows[i]);
  g_clear_pointer (&lies->rows, g_free);
}

void
ox_field_lies_free (OxFieldLies *lies)
{
  if (lies == NULL)
    return;
  clear_rows (lies);
  g_free (lies);
}

/* Place among the legs of the strip that leg @i has a lie on; G_MAXUINT for one of another room. */
static guint
leg_under (const OxFieldLies *lies, guint lie)
{
  guint strip = lies->lies->lies[lie].on;
  return strip >= lies->base && strip < lies->base + lies->n ? strip - lies->base : G_MAXUINT;
}

static guint
first_lie (const OxFieldLies *lies, guint leg)
{
  return lies->lies->first[lies->base + leg];
}

/* Seconds of leg @i on legs @from up to @to. */
static double
leg_on (const OxFieldLies *lies, guint i, guint from, guint to)
{
  guint count = 0;
  for (guint k = first_lie (lies, i); k < first_lie (lies, i + 1); k++)
    {
      guint under = leg_under (lies, k);
      count += under >= from && under < to;
    }
  return count * lies->lies->seconds;
}

guint
ox_field_lies_split (const OxFieldLies *lies, const GArray *legs, guint from, guint n)
{
  double cost = 0, forward, best;
  guint split = 0;
  for (guint i = from; i < from + n; i++)
    cost += leg_on (lies, i, i + 1, from + n);
  forward = best = cost;
  for (guint k = 1; k <= n; k++)
    {
      guint moved = from + k - 1; /* is now of the first part, where legs before it come after it */
      cost += leg_on (lies, moved, from, moved) - leg_on (lies, moved, moved + 1, from + n);
      gboolean between = k == n || g_array_index (legs, OxLeg, moved + 1).y != g_array_index (legs, OxLeg, moved).y;
      if (between && cost < best)
        {
          best = cost;
          split = k;
        }
    }
  double whole = MIN (forward, cost);
  return best < whole - LEAST_SPLIT ? split : 0;
}

double
ox_field_lies_own (const OxFieldLies *lies, guint from, guint n, const guint *places)
{
  guint count = 0;
  for (guint i = from; i < from + n; i++)
    for (guint k = first_lie (lies, i); k < first_lie (lies, i + 1); k++)
      {
        guint under = leg_under (lies, k);
        count += under >= from && under < from + n && places[under - from] > places[i - from];
      }
  return count * lies->lies->seconds;
}

/* Adds what the legs of field @a, from leg @from on, have on other fields to its row. */
static void
add_row (OxFieldLies *lies, const guint *field_of, guint from, double *sums, GArray *touched)
{
  guint a = field_of[from];
  for (guint i = from; i < lies->n && field_of[i] == a; i++)
    for (guint k = first_lie (lies, i); k < first_lie (lies, i + 1); k++)
      {
        guint under = leg_under (lies, k), b = under != G_MAXUINT ? field_of[under] : a;
        if (b == a)
          continue;
        if (sums[b] == 0)
          g_array_append_val (touched, b);
        sums[b] += lies->lies->seconds;
      }
}

static int
compare_fields (gconstpointer a, gconstpointer b)
{
  const Entry *p = a, *q = b;
  return p->field < q->field ? -1 : p->field > q->field;
}

void
ox_field_lies_set_fields (OxFieldLies *lies, const guint *field_of, guint n)
{
  g_autofree double *sums = g_new0 (double, n + 1);
  g_autoptr (GArray) touched = g_array_new (FALSE, FALSE, sizeof (guint));
  clear_rows (lies);
  lies->n_rows = n;
  lies->rows = g_new0 (GArray *, n + 1);
  for (guint i = 0; i < n; i++)
    lies->rows[i] = g_array_new (FALSE, FALSE, sizeof (Entry));
  for (guint i = 0; i < lies->n; i++)
    {
      if (i > 0 && field_of[i] == field_of[i - 1])
        continue;
      g_array_set_size (touched, 0);
      add_row (lies, field_of, i, sums, touched);
      for (guint k = 0; k < touched->len; k++)
        {
          Entry entry = { g_array_index (touched, guint, k), sums[g_array_index (touched, guint, k)] };
          sums[entry.field] = 0;
          g_array_append_val (lies->rows[field_of[i]], entry);
        }
      g_array_sort (lies->rows[field_of[i]], compare_fields);
    }
}

double
ox_field_lies_before (const OxFieldLies *lies, guint a, guint b)
{
  const GArray *row = lies->rows[a];
  guint low = 0, high = row->len;
  while (low < high)
    {
      guint middle = (low + high) / 2;
      if (g_array_index (row, Entry, middle).field < b)
        low = middle + 1;
      else
        high = middle;
    }
  return low < row->len && g_array_index (row, Entry, low).field == b ? g_array_index (row, Entry, low).seconds : 0;
}
