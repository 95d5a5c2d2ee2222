/* Oxturn: plan/order-fields - the order of the fields of a room: fewer and shorter walks between them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A field is what a crew works off without walking: strips that follow each other lane by lane. Within a field nothing is changed but the
 * way through it:
 *
 *      1 -->        3 <--         --> 3        <-- 1        as it is; from the last lane on; each strip the other way round; both
 *      2 <--   or   2 -->   or    <-- 2   or   --> 2
 *      3 -->        1 <--         --> 1        <-- 3        (the latter two where all strips can be run either way)
 */
#include "plan/field-lies.h"
#include <string.h>

#define WAYS 4
#define LANES_APART 2.5      /* blast widths between lanes that follow each other */
#define MOST_SECONDS 6.0     /* more than a swing: then one walks, and another field begins */
#define MOST_FIELDS_MOVED 3
#define MOST_FIELDS_TURNED 12
#define MOST_LOOKED_AT 2000000 /* places in all */
#define LEAST_SAVED 0.01     /* s */
#define STATION_SECONDS 300.0 /* to go on from one collector to another: power and hose are moved, or a second one is started; no source */
#define LEAST_OF_STATION 4   /* strips that another collector serves begin another field when they are that many in a row */

/* Places in an order. */
typedef struct
{
  guint first, last;
} Places;

typedef struct
{
  OxLeg first, last;
  double seconds; /* of the moves within the field */
  double lies;    /* seconds that hose and cord cost there */
} Way;

typedef struct
{
  guint from, n; /* legs */
  gboolean grid;
  guint n_ways;
  guint way;     /* in which it is worked */
  Way ways[WAYS];
} Field;

typedef struct
{
  const OxMachine *machine;
  const OxRun *run;
  const OxLeg *before; /* (nullable): where the machine comes from */
  const GArray *legs;
  GArray *fields; /* Field */
  GArray *order;  /* guint: fields in working order */
  OxFieldLies *lies; /* (nullable) */
  Places *lanes;  /* for each leg the legs of its lane that it is worked with in one go */
  double *extra;  /* what hose and cord cost more when fields are moved to a place */
  guint looked_at;
} Search;

static gboolean
goes_on (const OxMachine *machine, const OxLeg *a, const OxLeg *b)
{
  return a->grid == b->grid && a->frame == b->frame && fabs (a->y - b->y) <= LANES_APART * machine->blast_width
         && ox_leg_seconds (machine, a, b) <= machine->swing_s + MOST_SECONDS;
}

/* Place among all legs of leg @i of a field in a way of working it: strips on one lane are passed from the first to the last in whatever order the lanes
 * are, unless each is run the other way round. */
static guint
place_of (const Search *search, const Field *field, guint way, guint i)
{
  guint leg = field->from + (way & 1 ? field->n - 1 - i : i);
  guint first = MAX (search->lanes[leg].first, field->from), last = MIN (search->lanes[leg].last, field->from + field->n - 1);
  return way == 1 || way == 2 ? first + (last - leg) : leg;
}

static OxLeg
leg_of (const Search *search, const Field *field, guint way, guint i)
{
  OxLeg leg = g_array_index (search->legs, OxLeg, place_of (search, field, way, i));
  if (way & 2)
    ox_leg_reverse (&leg);
  return leg;
}

static double
lies_of (const Search *search, const Field *field, guint way)
{
  g_autofree guint *places = g_new (guint, field->n);
  if (search->lies == NULL)
    return 0;
  for (guint i = 0; i < field->n; i++)
    places[place_of (search, field, way, i) - field->from] = i;
  return ox_field_lies_own (search->lies, field->from, field->n, places);
}

static void
set_ways (const Search *search, Field *field)
{
  field->n_ways = 4;
  for (guint i = 0; i < field->n; i++)
    if (!g_array_index (search->legs, OxLeg, field->from + i).reversible)
      field->n_ways = 2;
  for (guint way = 0; way < field->n_ways; way++)
    {
      OxLeg last = leg_of (search, field, way, 0);
      field->ways[way] = (Way){ last, last, 0, lies_of (search, field, way) };
      for (guint i = 1; i < field->n; i++)
        {
          OxLeg leg = leg_of (search, field, way, i);
          field->ways[way].seconds += ox_leg_seconds (search->machine, &last, &leg);
          last = leg;
        }
      field->ways[way].last = last;
    }
}

static gboolean
same_lane (const OxLeg *a, const OxLeg *b)
{
  return a->frame == b->frame && a->y == b->y && ox_point_dot (a->along, b->along) > 0;
}

static void
gather_lanes (Search *search)
{
  const GArray *legs = search->legs;
  for (guint i = 0, end; i < legs->len; i = end)
    {
      for (end = i + 1; end < legs->len && same_lane (&g_array_index (legs, OxLeg, i), &g_array_index (legs, OxLeg, end));)
        end++;
      for (guint k = i; k < end; k++)
        search->lanes[k] = (Places){ i, end - 1 };
    }
}

/* Whether strips of another collector begin at leg @i, and not just a few of them. */
static gboolean
changes_station (const GArray *legs, guint i)
{
  int station = g_array_index (legs, OxLeg, i).station, before = g_array_index (legs, OxLeg, i - 1).station;
  if (station == before || station < 0)
    return FALSE;
  for (guint k = i; k < MIN (i + LEAST_OF_STATION, legs->len); k++)
    if (g_array_index (legs, OxLeg, k).station != station)
      return FALSE;
  return TRUE;
}

static void
add_field (Search *search, guint from, guint n)
{
  Field field = { .from = from, .n = n, .grid = g_array_index (search->legs, OxLeg, from).grid };
  set_ways (search, &field);
  g_array_append_val (search->order, search->fields->len);
  g_array_append_val (search->fields, field);
}

static void
gather_fields (Search *search)
{
  const GArray *legs = search->legs;
  for (guint i = 0, end; i < legs->len; i = end)
    {
      for (end = i + 1; end < legs->len && goes_on (search->machine, &g_array_index (legs, OxLeg, end - 1), &g_array_index (legs, OxLeg, end))
                        && !changes_station (legs, end);)
        end++;
      guint split = search->lies != NULL ? ox_field_lies_split (search->lies, legs, i, end - i) : 0;
      if (split > 0 && split < end - i)
        add_field (search, i, split);
      else
        split = 0;
      add_field (search, i + split, end - i - split);
    }
}

/* Tells the lies which leg belongs to which field. */
static void
set_lies (Search *search)
{
  g_autofree guint *field_of = g_new (guint, search->legs->len + 1);
  for (guint f = 0; f < search->fields->len; f++)
    {
      const Field *field = &g_array_index (search->fields, Field, f);
      for (guint i = 0; i < field->n; i++)
        field_of[field->from + i] = f;
    }
  if (search->lies != NULL)
    ox_field_lies_set_fields (search->lies, field_of, search->fields->len);
}

static Field *
field_at (const Search *search, guint i)
{
  return &g_array_index (search->fields, Field, g_array_index (search->order, guint, i));
}

static const Way *
way_at (const Search *search, guint i)
{
  return &field_at (search, i)->ways[field_at (search, i)->way];
}

/* The strip that is worked before place @i, and the one at it; NULL where there is none. */
static const OxLeg *
last_before (const Search *search, guint i)
{
  return i > 0 ? &way_at (search, i - 1)->last : search->before;
}

static const OxLeg *
first_at (const Search *search, guint i)
{
  return i < search->order->len ? &way_at (search, i)->first : NULL;
}

static double
join (Search *search, const OxLeg *from, const OxLeg *to)
{
  search->looked_at++;
  if (from == NULL || to == NULL)
    return 0;
  return ox_leg_seconds (search->machine, from, to)
         + (from->station >= 0 && to->station >= 0 && from->station != to->station ? STATION_SECONDS : 0);
}

/* What hose and cord cost among fields [from, from + n) in the order in which they stand. */
static double
lies_among (const Search *search, guint from, guint n)
{
  double sum = 0;
  for (guint i = from; search->lies != NULL && i < from + n; i++)
    for (guint k = i + 1; k < from + n; k++)
      sum += ox_field_lies_before (search->lies, g_array_index (search->order, guint, i), g_array_index (search->order, guint, k));
  return sum;
}

/* Seconds of the moves to and within fields @from up to @to, and on to the one after them, and of hose and cord within them. */
static double
stretch_seconds (Search *search, guint from, guint to)
{
  double sum = 0;
  for (guint i = from; i < to; i++)
    sum += join (search, last_before (search, i), first_at (search, i)) + way_at (search, i)->seconds + way_at (search, i)->lies;
  return sum + join (search, last_before (search, to), first_at (search, to));
}

/* Fields [from, from + n) the other way about: in reverse order, each worked backwards. */
static void
turn_about (Search *search, guint from, guint n)
{
  guint *order = &g_array_index (search->order, guint, from);
  for (guint i = 0; i < n / 2; i++)
    {
      guint swap = order[i];
      order[i] = order[n - 1 - i];
      order[n - 1 - i] = swap;
    }
  for (guint i = from; i < from + n; i++)
    field_at (search, i)->way ^= field_at (search, i)->n_ways == 4 ? 3 : 1;
}

/* Tries to turn a stretch of fields from @from on about. */
static gboolean
try_turns (Search *search, guint from, guint end)
{
  for (guint n = 2; n <= MOST_FIELDS_TURNED && from + n <= end; n++)
    {
      double before = stretch_seconds (search, from, from + n) + lies_among (search, from, n);
      turn_about (search, from, n);
      if (stretch_seconds (search, from, from + n) + lies_among (search, from, n) < before - LEAST_SAVED)
        return TRUE;
      turn_about (search, from, n);
    }
  return FALSE;
}

/* Moves fields [from, from + n) to stand before what stands at @to now. */
static void
move_fields (Search *search, guint from, guint n, guint to)
{
  guint held[MOST_FIELDS_MOVED];
  memcpy (held, &g_array_index (search->order, guint, from), n * sizeof (guint));
  g_array_remove_range (search->order, from, n);
  g_array_insert_vals (search->order, to > from ? to - n : to, held, n);
}

/* What it costs more when the field at place @x is worked before fields [from, from + n) instead of after them. */
static double
lies_gained (const Search *search, guint x, guint from, guint n)
{
  guint other = g_array_index (search->order, guint, x);
  double sum = 0;
  for (guint i = from; i < from + n; i++)
    {
      guint field = g_array_index (search->order, guint, i);
      sum += ox_field_lies_before (search->lies, other, field) - ox_field_lies_before (search->lies, field, other);
    }
  return sum;
}

/* What hose and cord cost more when fields [from, from + n) move to each place of the range. */
static void
find_extra (const Search *search, guint from, guint n, Places range)
{
  guint begin = range.first, end = range.last;
  memset (search->extra, 0, (search->order->len + 1) * sizeof (double));
  if (search->lies == NULL)
    return;
  for (guint to = from; to > begin; to--)
    search->extra[to - 1] = search->extra[to] - lies_gained (search, to - 1, from, n);
  for (guint to = from + n; to < end; to++)
    search->extra[to + 1] = search->extra[to] + lies_gained (search, to, from, n);
}

/* Tries to find a better place in @range for @n fields from @from on; one alone may be worked another way there. */
static gboolean
try_moves (Search *search, guint from, guint n, Places range)
{
  Field *first = field_at (search, from);
  const OxLeg *before = last_before (search, from), *after = first_at (search, from + n);
  double freed = join (search, before, first_at (search, from)) + join (search, last_before (search, from + n), after)
                 - join (search, before, after) + (n == 1 ? way_at (search, from)->seconds + way_at (search, from)->lies : 0);
  double best = freed - LEAST_SAVED;
  guint best_to = G_MAXUINT, best_way = first->way;
  find_extra (search, from, n, range);
  for (guint to = range.first; to <= range.last; to++)
    for (guint way = 0; way < (n == 1 ? first->n_ways : 1) && (to < from || to > from + n); way++)
      {
        const OxLeg *p = last_before (search, to), *q = first_at (search, to);
        const Way *own = n == 1 ? &first->ways[way] : NULL;
        double cost = join (search, p, own != NULL ? &own->first : first_at (search, from))
                      + join (search, own != NULL ? &own->last : last_before (search, from + n), q) - join (search, p, q)
                      + (own != NULL ? own->seconds + own->lies : 0) + search->extra[to];
        if (cost >= best)
          continue;
        best = cost;
        best_to = to;
        best_way = n == 1 ? way : first->way;
      }
  if (best_to == G_MAXUINT)
    return FALSE;
  first->way = best_way;
  move_fields (search, from, n, best_to);
  return TRUE;
}

/* The best way through one field where it stands. */
static gboolean
choose_way (Search *search, guint i)
{
  Field *field = field_at (search, i);
  guint best = field->way, was = field->way;
  double least = stretch_seconds (search, i, i + 1) - LEAST_SAVED;
  for (guint way = 0; way < field->n_ways; way++)
    {
      field->way = way;
      double seconds = stretch_seconds (search, i, i + 1);
      if (seconds >= least)
        continue;
      least = seconds;
      best = way;
    }
  field->way = best;
  return best != was;
}

static gboolean
may_go_on (const Search *search)
{
  return search->looked_at < MOST_LOOKED_AT && !ox_run_cancelled (search->run, NULL);
}

/* One round over fields [begin, end); TRUE when it found something. */
static gboolean
improve (Search *search, guint begin, guint end)
{
  gboolean better = FALSE;
  for (guint i = begin; i < end && may_go_on (search); i++)
    {
      better = choose_way (search, i) || better;
      better = try_turns (search, i, end) || better;
      for (guint n = 1; n <= MOST_FIELDS_MOVED && i + n <= end && may_go_on (search); n++)
        better = try_moves (search, i, n, (Places){ begin, end }) || better;
    }
  return better;
}

static void
write_back (const Search *search, GArray *legs)
{
  g_autoptr (GArray) out = g_array_sized_new (FALSE, FALSE, sizeof (OxLeg), legs->len);
  for (guint i = 0; i < search->order->len; i++)
    {
      const Field *field = field_at (search, i);
      for (guint k = 0; k < field->n; k++)
        {
          OxLeg leg = leg_of (search, field, field->way, k);
          g_array_append_val (out, leg);
        }
    }
  memcpy (legs->data, out->data, legs->len * sizeof (OxLeg));
}

/* Of the moves alone. */
static double
move_seconds (const Search *search)
{
  double sum = 0;
  for (guint i = 0; i < search->order->len; i++)
    {
      const OxLeg *from = last_before (search, i);
      sum += (from != NULL ? ox_leg_seconds (search->machine, from, first_at (search, i)) : 0) + way_at (search, i)->seconds;
    }
  return sum;
}

double
ox_order_fields (GArray *legs, const OxLeg *before, const OxLies *lies, const OxMachine *machine, const OxRun *run)
{
  g_autoptr (GArray) fields = g_array_new (FALSE, FALSE, sizeof (Field));
  g_autoptr (GArray) order = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (OxFieldLies) own = lies != NULL ? ox_field_lies_new (lies, legs) : NULL;
  g_autofree Places *lanes = g_new (Places, legs->len + 1);
  g_autofree double *extra = g_new (double, legs->len + 2);
  Search search = { machine, run, before, legs, fields, order, own, lanes, extra, 0 };
  guint mains = 0;
  gather_lanes (&search);
  gather_fields (&search);
  set_lies (&search);
  if (fields->len == 0)
    return 0;
  while (mains < fields->len && field_at (&search, mains)->grid)
    mains++;
  double seconds = move_seconds (&search);
  for (gboolean better = TRUE; better && may_go_on (&search);)
    {
      better = improve (&search, 0, mains);
      better = improve (&search, mains, fields->len) || better;
    }
  double saved = seconds - move_seconds (&search);
  write_back (&search, legs);
  return saved;
}
