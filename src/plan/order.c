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

#define RUN_GAP 8.0       /* m between strips of one lane that a crew still walks round rather than coming back later */
#define MOST_MOVED 3      /* strips moved at a time while improving */
#define MAX_SWEEPS 12
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

/* Appends the rest, each time the strip that is reached soonest, either way round. */
static void
append_nearest (const OxMachine *machine, GArray *rest, GArray *out, const OxRun *run)
{
  while (rest->len > 0 && !ox_run_cancelled (run, NULL))
    {
      const OxLeg *last = out->len > 0 ? &g_array_index (out, OxLeg, out->len - 1) : NULL;
      guint best = 0;
      gboolean best_reverse = FALSE;
      double least = INFINITY;
      for (guint i = 0; i < rest->len && last != NULL; i++)
        {
          OxLeg leg = g_array_index (rest, OxLeg, i);
          for (guint reverse = 0; reverse <= (leg.reversible ? 1 : 0); reverse++)
            {
              if (reverse)
                ox_leg_reverse (&leg);
              double cost = ox_leg_seconds (machine, last, &leg);
              if (cost < least)
                {
                  least = cost;
                  best = i;
                  best_reverse = reverse;
                }
            }
        }
      OxLeg leg = g_array_index (rest, OxLeg, best);
      if (best_reverse)
        ox_leg_reverse (&leg);
      g_array_append_val (out, leg);
      g_array_remove_index (rest, best);
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

/* Tries to move legs [from, from + n) to a better place at or after the fixed ones; TRUE when it did. */
static gboolean
improve_at (Improving *improving, guint from, guint n)
{
  GArray *legs = improving->legs;
  const OxMachine *machine = improving->machine;
  const double *gaps = (const double *) (const void *) improving->gaps->data;
  const OxLeg *first = leg_at (legs, from), *last = leg_at (legs, from + n - 1);
  double joined = from > 0 ? seconds (machine, leg_at (legs, from - 1), leg_at (legs, from + n)) : 0;
  double best = gaps[from] + gaps[from + n] - joined - 0.01;
  guint best_to = G_MAXUINT;
  gboolean best_reverse = FALSE;
  OxLeg turned = *first;
  ox_leg_reverse (&turned);
  guint window = MAX (SWEEP_WORK / legs->len, 50);
  guint begin = MAX (MAX (improving->fixed, 1), from > window ? from - window : 0), end = MIN (legs->len, from + n + window);
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
  return TRUE;
}

static void
improve (GArray *legs, const OxMachine *machine, guint fixed, const OxRun *run)
{
  g_autoptr (GArray) gaps = g_array_new (FALSE, TRUE, sizeof (double));
  Improving improving = { legs, gaps, machine, fixed };
  gboolean better = TRUE;
  g_array_set_size (gaps, legs->len + 1);
  measure_gaps (&improving, 0, legs->len);
  for (guint sweep = 0; better && sweep < MAX_SWEEPS; sweep++)
    {
      better = FALSE;
      for (guint n = 1; n <= MOST_MOVED; n++)
        for (guint from = fixed; from + n <= legs->len; from++)
          {
            if (ox_run_cancelled (run, NULL))
              return;
            better = improve_at (&improving, from, n) || better;
          }
    }
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
