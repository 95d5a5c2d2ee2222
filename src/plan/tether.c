/* Oxturn: plan/tether - a taut hose that follows the machine.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/tether.h"
#include "plan/station.h"
#include "trade/hose.h"

#define ANGLE 1e-9       /* radians that are as good as none */
#define CELL 4.0         /* m: corners lie in a grid of square cells */
#define MOST_EVENTS 1000 /* bends gained and lost in one straight roll: more would be a fault */

typedef struct
{
  OxPoint at;
  int side; /* 1: the hose turns left here, -1: right; 0 at the station */
} Bend;

struct _OxTether
{
  const OxReach *reach;
  const OxReachCorner *corners;
  OxPoint low;      /* of the grid */
  guint nx, ny;
  guint *first;     /* per cell, and one beyond: where its corners begin in @list */
  guint *list;
  GArray *bends;    /* Bend: the station first */
  OxPoint machine;
};

static guint
cell_of (double x, double low, guint n)
{
  return (guint) CLAMP ((x - low) / CELL, 0, n - 1);
}

static guint
cell_at (const OxTether *tether, OxPoint p)
{
  return cell_of (p.y, tether->low.y, tether->ny) * tether->nx + cell_of (p.x, tether->low.x, tether->nx);
}

OxTether *
ox_tether_new (const OxReach *reach)
{
  OxTether *tether = g_new0 (OxTether, 1);
  OxBox box = OX_BOX_EMPTY;
  guint n, sum = 0;
  tether->reach = reach;
  tether->corners = ox_reach_corners (reach, &n);
  tether->bends = g_array_new (FALSE, FALSE, sizeof (Bend));
  for (guint i = 0; i < n; i++)
    ox_box_add (&box, tether->corners[i].at);
  tether->low = n > 0 ? (OxPoint){ box.x0, box.y0 } : (OxPoint){ 0, 0 };
  tether->nx = n > 0 ? (guint) ((box.x1 - box.x0) / CELL) + 1 : 1;
  tether->ny = n > 0 ? (guint) ((box.y1 - box.y0) / CELL) + 1 : 1;
  tether->first = g_new0 (guint, tether->nx * tether->ny + 1);
  tether->list = g_new (guint, n + 1);
  for (guint i = 0; i < n; i++)
    tether->first[cell_at (tether, tether->corners[i].at)]++;
  for (guint i = 0; i <= tether->nx * tether->ny; i++)
    {
      sum += tether->first[i];
      tether->first[i] = sum;
    }
  for (guint i = n; i > 0; i--)
    tether->list[--tether->first[cell_at (tether, tether->corners[i - 1].at)]] = i - 1;
  return tether;
}

void
ox_tether_free (OxTether *tether)
{
  if (tether == NULL)
    return;
  g_array_unref (tether->bends);
  g_free (tether->first);
  g_free (tether->list);
  g_free (tether);
}

static const Bend *
bend_at (const OxTether *tether, guint i)
{
  return &g_array_index (tether->bends, Bend, i);
}

/* Sine of the angle from @u to @v. */
static double
sine (OxPoint u, OxPoint v)
{
  double lengths = sqrt (ox_point_dot (u, u) * ox_point_dot (v, v));
  return lengths > 0 ? ox_point_cross (u, v) / lengths : 0;
}

void
ox_tether_lay (OxTether *tether, const GArray *path)
{
  g_array_set_size (tether->bends, 0);
  for (guint i = 0; i + 1 < path->len; i++)
    {
      const OxPoint *p = &g_array_index (path, OxPoint, i);
      double turn = i > 0 ? sine (ox_point_sub (p[0], p[-1]), ox_point_sub (p[1], p[0])) : 0;
      Bend bend = { *p, turn > 0 ? 1 : -1 };
      if (i == 0)
        bend.side = 0;
      if (i == 0 || fabs (turn) > ANGLE)
        g_array_append_val (tether->bends, bend);
    }
  tether->machine = g_array_index (path, OxPoint, path->len - 1);
}

/* The last piece of the hose turns about @pivot, to @side, while the machine rolls from @from to @to. */
typedef struct
{
  OxPoint pivot, from, to;
  int side;
} Sweep;

/* Whether a hose that sweeps the triangle catches at the corner: it lies within, and its solid on the side that the hose comes to. */
static gboolean
catches (const Sweep *sweep, const OxReachCorner *corner)
{
  OxPoint arm = ox_point_sub (corner->at, sweep->pivot);
  if (ox_point_dot (arm, arm) < OX_GRID * OX_GRID)
    return FALSE;
  if (sweep->side * sine (ox_point_sub (sweep->from, sweep->pivot), arm) < -ANGLE
      || sweep->side * sine (arm, ox_point_sub (sweep->to, sweep->pivot)) < ANGLE
      || sweep->side * sine (ox_point_sub (sweep->to, sweep->from), ox_point_sub (corner->at, sweep->from)) < ANGLE)
    return FALSE;
  double before = sweep->side * sine (arm, ox_point_sub (corner->before, corner->at));
  double after = sweep->side * sine (arm, ox_point_sub (corner->after, corner->at));
  return before > -ANGLE && after > -ANGLE && MAX (before, after) > ANGLE;
}

/* The corner that the hose meets first, of several in a line the one farthest off; NULL: none. */
static const OxReachCorner *
first_caught (const OxTether *tether, const Sweep *sweep)
{
  const OxReachCorner *best = NULL;
  OxBox box = OX_BOX_EMPTY;
  ox_box_add (&box, sweep->pivot);
  ox_box_add (&box, sweep->from);
  ox_box_add (&box, sweep->to);
  for (guint y = cell_of (box.y0, tether->low.y, tether->ny); y <= cell_of (box.y1, tether->low.y, tether->ny); y++)
    for (guint k = tether->first[y * tether->nx + cell_of (box.x0, tether->low.x, tether->nx)],
               end = tether->first[y * tether->nx + cell_of (box.x1, tether->low.x, tether->nx) + 1];
         k < end; k++)
      {
        const OxReachCorner *corner = &tether->corners[tether->list[k]];
        if (!catches (sweep, corner))
          continue;
        OxPoint arm = ox_point_sub (corner->at, sweep->pivot);
        double behind = best == NULL ? -1 : sweep->side * sine (ox_point_sub (best->at, sweep->pivot), arm);
        if (behind < -ANGLE || (behind < ANGLE && ox_point_dot (arm, arm) > ox_point_dot (ox_point_sub (best->at, sweep->pivot), ox_point_sub (best->at, sweep->pivot))))
          best = corner;
      }
  return best;
}

/* Share of the way from @from to @to at which the line from @p along @u is crossed. */
static double
crossing (OxPoint from, OxPoint to, OxPoint p, OxPoint u)
{
  double a = ox_point_cross (u, ox_point_sub (from, p)), b = ox_point_cross (u, ox_point_sub (to, p));
  return a != b ? CLAMP (a / (a - b), 0, 1) : 1;
}

/* One bend gained or lost on the way to @to, or none; FALSE when the machine has arrived. */
static gboolean
roll_on (OxTether *tether, OxPoint to)
{
  const Bend *last = bend_at (tether, tether->bends->len - 1);
  double turn = ox_point_cross (ox_point_sub (tether->machine, last->at), ox_point_sub (to, last->at));
  Sweep sweep = { last->at, tether->machine, to, turn > 0 ? 1 : -1 };
  const OxReachCorner *corner = turn != 0 ? first_caught (tether, &sweep) : NULL;
  double caught = corner != NULL ? crossing (tether->machine, to, last->at, ox_point_sub (corner->at, last->at)) : 2, freed = 2;
  if (tether->bends->len > 1)
    {
      OxPoint u = ox_point_sub (last->at, bend_at (tether, tether->bends->len - 2)->at);
      if (last->side * ox_point_cross (u, ox_point_sub (to, last->at)) < 0)
        freed = crossing (tether->machine, to, last->at, u);
    }
  double t = MIN (caught, freed);
  if (t > 1)
    {
      tether->machine = to;
      return FALSE;
    }
  tether->machine = ox_point_add (tether->machine, ox_point_scale (ox_point_sub (to, tether->machine), t));
  if (freed <= caught)
    g_array_set_size (tether->bends, tether->bends->len - 1);
  else
    {
      Bend bend = { corner->at, sweep.side };
      g_array_append_val (tether->bends, bend);
    }
  return TRUE;
}

void
ox_tether_drag (OxTether *tether, OxPoint to)
{
  for (guint n = 0; n < MOST_EVENTS && roll_on (tether, to); n++)
    ;
  tether->machine = to;
}

double
ox_tether_length (const OxTether *tether)
{
  double length = 0;
  for (guint i = 1; i < tether->bends->len; i++)
    length += ox_point_distance (bend_at (tether, i - 1)->at, bend_at (tether, i)->at);
  return length + ox_point_distance (bend_at (tether, tether->bends->len - 1)->at, tether->machine);
}

double
ox_tether_turn (const OxTether *tether)
{
  double most = 0, sum = 0;
  for (guint i = 1; i < tether->bends->len; i++)
    {
      const Bend *bend = bend_at (tether, i);
      OxPoint next = i + 1 < tether->bends->len ? bend_at (tether, i + 1)->at : tether->machine;
      OxPoint in = ox_point_sub (bend->at, bend_at (tether, i - 1)->at), out = ox_point_sub (next, bend->at);
      double turn = fabs (atan2 (ox_point_cross (in, out), ox_point_dot (in, out)));
      sum = bend->side == bend_at (tether, i - 1)->side ? sum + turn : turn;
      most = MAX (most, sum);
    }
  return most;
}

/* The hose or the cord of a plan while strip after strip is run. */
typedef struct
{
  const OxPlan *plan;
  OxReach *reach;
  OxStationKind kind;
  OxTether *tether;
  GArray *path;        /* OxPoint */
  OxReachTree *tree;   /* of the station at @station */
  int station;         /* -1: it lies nowhere */
  double length;       /* m that it reaches */
} Following;

static void
lay (Following *following, OxPoint at)
{
  ox_reach_tree_path (following->tree, at, following->path);
  if (following->path->len > 1)
    ox_tether_lay (following->tether, following->path);
  else
    following->station = -1;
}

/* Goes to the station that serves the strip, if any. */
static void
change_station (Following *following, const OxStrip *strip)
{
  int station = following->kind == OX_STATION_COLLECTOR ? strip->station : strip->supply;
  g_clear_pointer (&following->tree, ox_reach_tree_free);
  following->station = -1;
  if (station < 0)
    return;
  OxPoint from = following->plan->stations[station].at;
  if (!ox_station_step_on (following->reach, &from))
    return;
  following->station = station;
  following->length = ox_hose_reach (following->plan->stations[station].length);
  following->tree = ox_reach_tree_new (following->reach, from, following->length);
  lay (following, strip->a);
}

/* Whether the hose has wrapped where the machine stands; then it is freed. */
static gboolean
has_wrapped (Following *following, OxPoint at)
{
  double length = ox_tether_length (following->tether);
  if (length <= following->length && ox_tether_turn (following->tether) < OX_TETHER_TURN)
    return FALSE;
  if (length < ox_reach_tree_distance (following->tree, at) + OX_TETHER_SPARE)
    return FALSE;
  lay (following, at);
  return TRUE;
}

/* Follows strip @i from the end of the one before. */
static gboolean
follow (Following *following, guint i)
{
  const OxStrip *strip = &following->plan->strips[i];
  const OxMove *move = i > 0 ? &following->plan->moves[i - 1] : NULL;
  int station = following->kind == OX_STATION_COLLECTOR ? strip->station : strip->supply;
  gboolean wraps = FALSE;
  if (station < 0 || station != following->station || move == NULL || move->n_path == 0)
    change_station (following, strip);
  else
    for (guint k = 1; k < move->n_path; k++)
      ox_tether_drag (following->tether, move->path[k]);
  if (following->station < 0)
    return FALSE;
  wraps = has_wrapped (following, strip->a);
  if (following->station < 0)
    return wraps;
  ox_tether_drag (following->tether, strip->b);
  return has_wrapped (following, strip->b) || wraps;
}

void
ox_tethers_plan (OxPlan *plan, OxReach *reach, const OxRun *run)
{
  g_autoptr (OxTether) tether = ox_tether_new (reach);
  g_autoptr (GArray) path = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  for (OxStationKind kind = OX_STATION_COLLECTOR; kind <= OX_STATION_SUPPLY; kind++)
    {
      Following following = { plan, reach, kind, tether, path, NULL, -1, 0 };
      for (guint i = plan->n_kept; i < plan->n_strips && !ox_run_cancelled (run, NULL); i++)
        *(kind == OX_STATION_COLLECTOR ? &plan->strips[i].hose_wraps : &plan->strips[i].cord_wraps) = follow (&following, i);
      g_clear_pointer (&following.tree, ox_reach_tree_free);
    }
  plan->totals.wraps = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    plan->totals.wraps += plan->strips[i].hose_wraps || plan->strips[i].cord_wraps;
}
