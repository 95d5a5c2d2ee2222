/* Oxturn: plan/order - the order of work within a room.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A run is what lies on one lane with only obstacles to walk round between its strips; runs of neighbouring lanes that lie side by side make
 * a chain, worked to and fro:
 *
 *      ====== o ======   run: two strips and a column
 *      ====== o ======   |
 *      ===============   | chain
 *      ===   ...   ===   two runs: the chain splits
 */
#include "plan/leg.h"
#include <stdlib.h>
#include <string.h>

#define RUN_GAP 8.0       /* m between strips of one lane that a crew still walks round rather than coming back later */
#define MOST_MOVED 3      /* strips moved at a time while improving */
#define MAX_SWEEPS 12
#define BLOCK 32
#define SWEEP_WORK 1000000 /* places looked at in a sweep: on long lists only those not far along the order */

typedef struct
{
  guint first, n; /* legs of the run in Order.mains */
  double lo, hi;  /* extent along the lane */
  double y;
  int next;       /* next run of its chain, -1 at the end */
} Run;

typedef struct
{
  const OxMachine *machine;
  GArray *mains; /* OxLeg: lane by lane, in the direction of work */
  GArray *runs;  /* Run */
  GArray *heads; /* guint: first runs of chains */
  double along_x, along_y; /* unit vector of the lanes */
} Order;

static double
along (const Order *order, OxPoint p)
{
  return p.x * order->along_x + p.y * order->along_y;
}

static int
compare_lanes (const void *a, const void *b)
{
  const OxLeg *p = a, *q = b;
  if (p->y != q->y)
    return p->y < q->y ? -1 : 1;
  double s = cos (p->heading), t = sin (p->heading);
  double x = p->a.x * s + p->a.y * t, z = q->a.x * s + q->a.y * t;
  return (x > z) - (x < z);
}

static void
gather_runs (Order *order)
{
  for (guint i = 0; i < order->mains->len; i++)
    {
      const OxLeg *leg = &g_array_index (order->mains, OxLeg, i);
      double a = along (order, leg->a), b = along (order, leg->b);
      Run *last = order->runs->len > 0 ? &g_array_index (order->runs, Run, order->runs->len - 1) : NULL;
      double lo = MIN (a, b), hi = MAX (a, b);
      if (last != NULL && last->y == leg->y && MAX (lo - last->hi, last->lo - hi) < RUN_GAP)
        {
          last->n++;
          last->lo = MIN (last->lo, lo);
          last->hi = MAX (last->hi, hi);
          continue;
        }
      Run run = { i, 1, lo, hi, leg->y, -1 };
      g_array_append_val (order->runs, run);
    }
}

/* Joins each run to the run of the lane before that it lies beside most. */
static void
link_runs (Order *order)
{
  guint before = 0, here = 0;
  g_autofree gboolean *taken = g_new0 (gboolean, order->runs->len + 1);
  for (guint i = 0; i < order->runs->len; i++)
    {
      Run *run = &g_array_index (order->runs, Run, i);
      if (i > 0 && run->y != g_array_index (order->runs, Run, i - 1).y)
        {
          before = here;
          here = i;
        }
      int best = -1;
      double most = 0;
      for (guint k = before; k < here; k++)
        {
          const Run *other = &g_array_index (order->runs, Run, k);
          double shared = MIN (run->hi, other->hi) - MAX (run->lo, other->lo);
          if (!taken[k] && shared > most)
            {
              most = shared;
              best = (int) k;
            }
        }
      if (best < 0)
        {
          g_array_append_val (order->heads, i);
          continue;
        }
      taken[best] = TRUE;
      g_array_index (order->runs, Run, best).next = (int) i;
    }
}

/* The runs of the chain from @head on, from first to last. */
static GArray *
chain_runs (const Order *order, guint head)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (guint));
  for (int run = (int) head; run >= 0; run = g_array_index (order->runs, Run, run).next)
    {
      guint at = (guint) run;
      g_array_append_val (list, at);
    }
  return list;
}

static const OxLeg *
run_first (const Order *order, guint run)
{
  return &g_array_index (order->mains, OxLeg, g_array_index (order->runs, Run, run).first);
}

static void
append_chain (const Order *order, const GArray *runs, gboolean backwards, GArray *out)
{
  for (guint i = 0; i < runs->len; i++)
    {
      const Run *run = &g_array_index (order->runs, Run, g_array_index (runs, guint, backwards ? runs->len - 1 - i : i));
      g_array_append_vals (out, &g_array_index (order->mains, OxLeg, run->first), run->n);
    }
}

/* Chains one after another, each begun at its nearer end. */
static void
append_chains (Order *order, GArray *out)
{
  g_autofree gboolean *done = g_new0 (gboolean, order->heads->len + 1);
  for (guint k = 0; k < order->heads->len; k++)
    {
      guint best = 0;
      gboolean best_back = FALSE;
      double least = INFINITY;
      for (guint c = 0; c < order->heads->len; c++)
        {
          if (done[c])
            continue;
          g_autoptr (GArray) runs = chain_runs (order, g_array_index (order->heads, guint, c));
          for (guint back = 0; back < (k == 0 ? 1 : 2); back++)
            {
              const OxLeg *first = run_first (order, g_array_index (runs, guint, back ? runs->len - 1 : 0));
              double cost = k == 0 ? 0 : ox_leg_seconds (order->machine, &g_array_index (out, OxLeg, out->len - 1), first);
              if (cost < least)
                {
                  least = cost;
                  best = c;
                  best_back = back;
                }
            }
        }
      g_autoptr (GArray) runs = chain_runs (order, g_array_index (order->heads, guint, best));
      append_chain (order, runs, best_back, out);
      done[best] = TRUE;
    }
}

/* Whether going from @last to @leg, which begins at either of its ends, takes @least or more as the crow flies along an axis already. */
static gboolean
is_too_far (const OxMachine *machine, const OxLeg *last, const OxLeg *leg, double least)
{
  double x = MIN (fabs (leg->a.x - last->b.x), fabs (leg->b.x - last->b.x));
  double y = MIN (fabs (leg->a.y - last->b.y), fabs (leg->b.y - last->b.y));
  return MAX (x, y) / machine->walk_speed * 60 >= least;
}

/* Appends the rest, each time the strip that is reached soonest, either way round. */
static void
append_nearest (const OxMachine *machine, const GArray *legs, GArray *out, const OxRun *run)
{
  g_autofree guint *rest = g_new (guint, legs->len + 1);
  guint n = legs->len;
  for (guint i = 0; i < n; i++)
    rest[i] = i;
  while (n > 0 && !ox_run_cancelled (run, NULL))
    {
      const OxLeg *last = out->len > 0 ? &g_array_index (out, OxLeg, out->len - 1) : NULL;
      guint best = 0;
      gboolean best_reverse = FALSE;
      double least = INFINITY;
      for (guint i = 0; i < n && last != NULL; i++)
        {
          const OxLeg *leg = &g_array_index (legs, OxLeg, rest[i]);
          if (is_too_far (machine, last, leg, least))
            continue;
          double cost = ox_leg_seconds (machine, last, leg), other = INFINITY;
          if (leg->reversible)
            {
              OxLeg turned = *leg;
              ox_leg_reverse (&turned);
              other = ox_leg_seconds (machine, last, &turned);
            }
          if (MIN (cost, other) >= least)
            continue;
          best = i;
          best_reverse = other < cost;
          least = MIN (cost, other);
        }
      OxLeg leg = g_array_index (legs, OxLeg, rest[best]);
      if (best_reverse)
        ox_leg_reverse (&leg);
      g_array_append_val (out, leg);
      memmove (rest + best, rest + best + 1, sizeof (guint) * (n - best - 1));
      n--;
    }
}

static const OxLeg *
leg_at (const GArray *legs, guint i)
{
  return i < legs->len ? &g_array_index (legs, OxLeg, i) : NULL;
}

static double
seconds (const OxMachine *machine, const OxLeg *from, const OxLeg *to)
{
  return from != NULL && to != NULL ? ox_leg_seconds (machine, from, to) : 0;
}

/* Moves @n legs from @from to stand before what stands at @to now (to < from or to >= from + n). */
static void
move_legs (GArray *legs, guint from, guint n, guint to)
{
  OxLeg held[MOST_MOVED];
  for (guint i = 0; i < n; i++)
    held[i] = g_array_index (legs, OxLeg, from + i);
  g_array_remove_range (legs, from, n);
  g_array_insert_vals (legs, to > from ? to - n : to, held, n);
}

/* What is being improved: the legs from @fixed on, and what the moves between them cost, kept so that it need not be found again and again. */
typedef struct
{
  GArray *legs;
  GArray *gaps; /* double: seconds from leg i - 1 to leg i; 0 for the first and one past the last */
  const OxMachine *machine;
  guint fixed;
  guint step;      /* attempts so far */
  guint *changed;  /* of each BLOCK places the last step that changed one */
  guint *tried[MOST_MOVED + 1]; /* of each place the last step that found nothing better for so many legs from there on */
} Improving;

static void
measure_gaps (Improving *improving, guint first, guint last)
{
  for (guint i = first; i <= last; i++)
    g_array_index (improving->gaps, double, i)
        = i == 0 ? 0 : seconds (improving->machine, leg_at (improving->legs, i - 1), leg_at (improving->legs, i));
}

/* Seconds more when the piece from @first to @last stands between @p and @q (nullable), which are @gap apart; @best and more when it is no less. */
static double
cost_between (const OxMachine *machine, const OxLeg *p, const OxLeg *first, const OxLeg *last, const OxLeg *q, double gap, double best)
{
  double cost = seconds (machine, p, first) - gap;
  return cost < best ? cost + seconds (machine, last, q) : cost;
}

/* The places that legs [from, from + n) may be moved to: not far along the order on long lists. */
static void
find_window (const Improving *improving, guint from, guint n, guint *begin, guint *end)
{
  guint window = MAX (SWEEP_WORK / improving->legs->len, 50);
  *begin = MAX (MAX (improving->fixed, 1), from > window ? from - window : 0);
  *end = MIN (improving->legs->len, from + n + window);
}

/* Whether all that the attempt looks at is as it was when it found nothing. */
static gboolean
is_known (const Improving *improving, guint from, guint n)
{
  guint begin, end, tried = improving->tried[n][from];
  find_window (improving, from, n, &begin, &end);
  begin = MIN (begin, from);
  for (guint block = (begin > 0 ? begin - 1 : 0) / BLOCK; tried > 0 && block <= end / BLOCK; block++)
    if (improving->changed[block] >= tried)
      return FALSE;
  return tried > 0;
}

static void
note_change (Improving *improving, guint first, guint last)
{
  for (guint block = first / BLOCK; block <= last / BLOCK; block++)
    improving->changed[block] = improving->step;
}

/* Tries to move legs [from, from + n) to a better place at or after the fixed ones; TRUE when it did. */
static gboolean
improve_at (Improving *improving, guint from, guint n)
{
  GArray *legs = improving->legs;
  guint begin, end;
  const OxMachine *machine = improving->machine;
  const double *gaps = (const double *) (const void *) improving->gaps->data;
  const OxLeg *first = leg_at (legs, from), *last = leg_at (legs, from + n - 1);
  double joined = from > 0 ? seconds (machine, leg_at (legs, from - 1), leg_at (legs, from + n)) : 0;
  double best = gaps[from] + gaps[from + n] - joined - 0.01;
  guint best_to = G_MAXUINT;
  gboolean best_reverse = FALSE;
  OxLeg turned = *first;
  ox_leg_reverse (&turned);
  find_window (improving, from, n, &begin, &end);
  for (guint to = begin; to <= end; to++)
    {
      if (to >= from && to <= from + n)
        continue;
      const OxLeg *p = leg_at (legs, to - 1), *q = leg_at (legs, to);
      double cost = cost_between (machine, p, first, last, q, gaps[to], best);
      gboolean reverse = FALSE;
      if (n == 1 && first->reversible)
        {
          double other = cost_between (machine, p, &turned, &turned, q, gaps[to], MIN (best, cost));
          reverse = other < cost;
          cost = MIN (cost, other);
        }
      if (cost < best)
        {
          best = cost;
          best_to = to;
          best_reverse = reverse;
        }
    }
  if (best_to == G_MAXUINT)
    return FALSE;
  if (best_reverse)
    ox_leg_reverse (&g_array_index (legs, OxLeg, from));
  move_legs (legs, from, n, best_to);
  measure_gaps (improving, MIN (from, best_to), MIN (MAX (from + n, best_to + n), legs->len));
  note_change (improving, MIN (from, best_to), MIN (MAX (from + n, best_to + n), legs->len));
  return TRUE;
}

static gboolean
sweep (Improving *improving, const OxRun *run)
{
  gboolean better = FALSE;
  for (guint n = 1; n <= MOST_MOVED; n++)
    for (guint from = improving->fixed; from + n <= improving->legs->len; from++)
      {
        if (is_known (improving, from, n))
          continue;
        if (ox_run_cancelled (run, NULL))
          return FALSE;
        improving->step++;
        if (improve_at (improving, from, n))
          better = TRUE;
        else
          improving->tried[n][from] = improving->step;
      }
  return better;
}

static void
improve (GArray *legs, const OxMachine *machine, guint fixed, const OxRun *run)
{
  g_autoptr (GArray) gaps = g_array_new (FALSE, TRUE, sizeof (double));
  Improving improving = { .legs = legs, .gaps = gaps, .machine = machine, .fixed = fixed };
  g_array_set_size (gaps, legs->len + 1);
  measure_gaps (&improving, 0, legs->len);
  improving.changed = g_new0 (guint, legs->len / BLOCK + 1);
  for (guint n = 1; n <= MOST_MOVED; n++)
    improving.tried[n] = g_new0 (guint, legs->len + 1);
  for (guint k = 0; k < MAX_SWEEPS && sweep (&improving, run);)
    k++;
  for (guint n = 1; n <= MOST_MOVED; n++)
    g_free (improving.tried[n]);
  g_free (improving.changed);
}

/* Takes the strips of the lane grid out of @legs, sorted lane by lane. */
static void
split_mains (GArray *legs, GArray *mains)
{
  for (guint i = 0; i < legs->len;)
    if (g_array_index (legs, OxLeg, i).grid)
      {
        g_array_append_vals (mains, &g_array_index (legs, OxLeg, i), 1);
        g_array_remove_index (legs, i);
      }
    else
      i++;
  if (mains->len > 1)
    qsort (mains->data, mains->len, sizeof (OxLeg), compare_lanes);
}

double
ox_order_legs (GArray *legs, const OxMachine *machine, const OxRun *run)
{
  g_autoptr (GArray) mains = g_array_new (FALSE, FALSE, sizeof (OxLeg));
  g_autoptr (GArray) runs = g_array_new (FALSE, FALSE, sizeof (Run));
  g_autoptr (GArray) heads = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) out = g_array_new (FALSE, FALSE, sizeof (OxLeg));
  split_mains (legs, mains);
  if (mains->len > 0)
    {
      double heading = g_array_index (mains, OxLeg, 0).heading;
      Order order = { machine, mains, runs, heads, cos (heading), sin (heading) };
      gather_runs (&order);
      link_runs (&order);
      append_chains (&order, out);
    }
  guint fixed = out->len;
  append_nearest (machine, legs, out, run);
  improve (out, machine, fixed, run);
  g_array_set_size (legs, 0);
  g_array_append_vals (legs, out->data, out->len);
  double sum = 0;
  for (guint i = 1; i < legs->len; i++)
    sum += ox_leg_seconds (machine, leg_at (legs, i - 1), leg_at (legs, i));
  return sum;
}
