/* Oxturn: plan/station - which station serves which strip, and where further ones would help.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/station.h"
#include <glib/gi18n-lib.h>
#include "trade/hose.h"

#define STEP 2.0 /* m between places that are tried, at least */
#define MOST_TRIES                                                                                                     \
  200000 /* pairs of place and strip looked at in one round: on large floors places and strips are sampled */
#define MOST_PROPOSED 200
#define LOOK_AROUND 0.3 /* m that a station may stand off the floor: in the wall that it is plugged into */

typedef struct
{
  OxPlan *plan;
  OxReach *reach;
  const OxRun *run;
  OxStationKind kind;
  double length;    /* of the machine's hose or cord */
  GArray *stations; /* OxPlanStation of both kinds */
  guint first;      /* the first of this kind's proposals in @stations */
  double *ways;     /* of each strip to the station that serves it, INFINITY while none does */
  int *serves;      /* that station */
} Placing;

static double
station_reach (const OxPlanStation *station)
{
  return ox_hose_reach (station->length);
}

static double
farthest_point (const OxReachTree *tree, const OxStrip *strip)
{
  return ox_reach_tree_farthest (tree, strip->a, strip->b);
}

/* A place on the floor for @p; FALSE when it is too far off. */
static gboolean
step_on_floor (const OxReach *reach, OxPoint *p)
{
  if (ox_reach_holds (reach, *p))
    return TRUE;
  for (double r = 0.05; r <= LOOK_AROUND + 1e-9; r += 0.05)
    for (guint i = 0; i < 16; i++)
      {
        OxPoint q = { p->x + r * cos (i * G_PI / 8), p->y + r * sin (i * G_PI / 8) };
        if (ox_reach_holds (reach, q))
          {
            *p = q;
            return TRUE;
          }
      }
  return FALSE;
}

/* Whether a station of the job serves strip @i already: it is not left for a proposed one. */
static gboolean
is_served_by_given (const Placing *placing, guint i)
{
  return placing->serves[i] >= 0 && !g_array_index (placing->stations, OxPlanStation, placing->serves[i]).proposed;
}

/* Lets station @index serve the strips to which its way is the shortest so far. FALSE when it stands off the floor. */
static gboolean
serve (Placing *placing, guint index)
{
  const OxPlanStation *station = &g_array_index (placing->stations, OxPlanStation, index);
  OxPoint from = station->at;
  if (!step_on_floor (placing->reach, &from))
    return FALSE;
  g_autoptr (OxReachTree) tree = ox_reach_tree_new (placing->reach, from, station_reach (station));
  for (guint i = 0; i < placing->plan->n_strips && !ox_run_cancelled (placing->run, NULL); i++)
    {
      if (station->proposed && is_served_by_given (placing, i))
        continue;
      double way = farthest_point (tree, &placing->plan->strips[i]);
      if (way < placing->ways[i] - 1e-9)
        {
          placing->ways[i] = way;
          placing->serves[i] = (int) index;
        }
    }
  return TRUE;
}

static guint
count_unserved (const Placing *placing)
{
  guint n = 0;
  for (guint i = 0; i < placing->plan->n_strips; i++)
    n += isinf (placing->ways[i]);
  return n;
}

/* The strips without a station, or every so many of them. */
static GArray *
sample_unserved (const Placing *placing, guint most)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (guint));
  guint stride = count_unserved (placing) / MAX (most, 1) + 1, seen = 0;
  for (guint i = 0; i < placing->plan->n_strips; i++)
    if (isinf (placing->ways[i]) && seen++ % stride == 0)
      g_array_append_val (list, i);
  return list;
}

static OxPoint
middle (const OxStrip *strip)
{
  return ox_point_scale (ox_point_add (strip->a, strip->b), 0.5);
}

/* Of @places the one that reaches most of @wanted; of equals the one with the shortest ways, then the first. FALSE when
 * none reaches any. */
static gboolean
best_place (const Placing *placing, const GArray *places, const GArray *wanted, OxPoint *best)
{
  double limit = ox_hose_reach (placing->length), least = INFINITY;
  guint most = 0;
  for (guint p = 0; p < places->len && !ox_run_cancelled (placing->run, NULL); p++)
    {
      OxPoint at = g_array_index (places, OxPoint, p);
      guint near = 0, reached = 0;
      double sum = 0;
      for (guint i = 0; i < wanted->len; i++)
        near += ox_point_distance (at, middle (&placing->plan->strips[g_array_index (wanted, guint, i)])) <= limit;
      if (near < most || near == 0)
        continue;
      g_autoptr (OxReachTree) tree = ox_reach_tree_new (placing->reach, at, limit);
      for (guint i = 0; i < wanted->len; i++)
        {
          double way = farthest_point (tree, &placing->plan->strips[g_array_index (wanted, guint, i)]);
          if (isinf (way))
            continue;
          reached++;
          sum += way;
        }
      if (reached > most || (reached == most && reached > 0 && sum < least - 1e-9))
        {
          most = reached;
          least = sum;
          *best = at;
        }
    }
  return most > 0;
}

static double
place_step (const Placing *placing)
{
  OxBox box = ox_region_box (placing->plan->travel);
  return MAX (STEP, MIN (ox_hose_reach (placing->length) / 8, MAX (box.x1 - box.x0, box.y1 - box.y0) / 40));
}

static char *
proposed_id (const Placing *placing)
{
  for (guint n = 1;; n++)
    {
      g_autofree char *id = g_strdup_printf ("P%u", n);
      gboolean taken = ox_job_find (placing->plan->job, id, NULL) != OX_ITEM_NONE;
      for (guint i = 0; i < placing->stations->len; i++)
        taken = taken || g_str_equal (g_array_index (placing->stations, OxPlanStation, i).id, id);
      if (!taken)
        return g_steal_pointer (&id);
    }
}

/* Greedy set cover: the best place, then the best for what is left, as long as one helps. */
static void
propose (Placing *placing, gboolean anywhere)
{
  g_autoptr (GArray) places = ox_station_places (placing->plan, placing->reach, place_step (placing), anywhere);
  while (placing->stations->len - placing->first < MOST_PROPOSED && !ox_run_cancelled (placing->run, NULL))
    {
      g_autoptr (GArray) wanted = sample_unserved (placing, MOST_TRIES / MAX (places->len, 1));
      OxPlanStation station = { .kind = placing->kind, .proposed = TRUE, .length = placing->length };
      if (wanted->len == 0 || !best_place (placing, places, wanted, &station.at))
        return;
      station.id = proposed_id (placing);
      g_array_append_val (placing->stations, station);
      serve (placing, placing->stations->len - 1);
    }
}

/* Whether the other stations of this kind reach all that proposal @index serves; they then serve it. */
static gboolean
drop_needless (Placing *placing, guint index)
{
  guint n = placing->plan->n_strips;
  g_autofree double *ways = g_new (double, n + 1);
  g_autofree int *serves = g_new (int, n + 1);
  Placing without = *placing;
  without.ways = ways;
  without.serves = serves;
  for (guint i = 0; i < n; i++)
    {
      gboolean lost = placing->serves[i] == (int) index;
      ways[i] = lost ? (double) INFINITY : placing->ways[i];
      serves[i] = lost ? -1 : placing->serves[i];
    }
  for (guint s = 0; s < placing->stations->len; s++)
    if (s != index && g_array_index (placing->stations, OxPlanStation, s).kind == placing->kind)
      (void) serve (&without, s);
  for (guint i = 0; i < n; i++)
    if (isinf (ways[i]) && !isinf (placing->ways[i]))
      return FALSE;
  for (guint i = 0; i < n; i++)
    {
      placing->ways[i] = ways[i];
      placing->serves[i] = serves[i] > (int) index ? serves[i] - 1 : serves[i];
    }
  g_free (g_array_index (placing->stations, OxPlanStation, index).id);
  g_array_remove_index (placing->stations, index);
  return TRUE;
}

/* Strips so far apart that no station reaches two of them, greedily: as many stations are needed at least. */
static guint
least_stations (const Placing *placing, const gboolean *wanted)
{
  double apart = 2 * ox_hose_reach (placing->length);
  g_autoptr (GArray) picked = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < placing->plan->n_strips; i++)
    {
      const OxStrip *strip = &placing->plan->strips[i];
      gboolean far = wanted[i];
      for (guint k = 0; far && k < picked->len; k++)
        {
          const OxStrip *other = &placing->plan->strips[g_array_index (picked, guint, k)];
          far = MAX (MAX (ox_point_distance (strip->a, other->a), ox_point_distance (strip->a, other->b)),
                     MAX (ox_point_distance (strip->b, other->a), ox_point_distance (strip->b, other->b)))
                > apart;
        }
      if (far)
        g_array_append_val (picked, i);
    }
  return picked->len;
}

/* What is proposed, why, and how many are needed at least. @given: how many stations of the kind the job has */
static void
notice_proposed (const Placing *placing, guint given, const gboolean *wanted, GPtrArray *notices)
{
  guint n = placing->stations->len - placing->first, left = count_unserved (placing);
  gboolean hose = placing->kind == OX_STATION_COLLECTOR;
  if (n > 0 && given == 0)
    g_ptr_array_add (
        notices,
        g_strdup_printf (hose ? ngettext ("No collector is placed: %u place is proposed, %u are needed at least",
                                          "No collector is placed: %u places are proposed, %u are needed at least", n)
                              : ngettext ("No supply is placed: %u place is proposed, %u are needed at least",
                                          "No supply is placed: %u places are proposed, %u are needed at least", n),
                         n, least_stations (placing, wanted)));
  else if (n > 0)
    g_ptr_array_add (
        notices,
        g_strdup_printf (
            hose ? ngettext ("Strips are out of reach of the hose: %u further collector place is proposed",
                             "Strips are out of reach of the hose: %u further collector places are proposed", n)
                 : ngettext ("Strips are out of reach of the cord: %u further supply place is proposed",
                             "Strips are out of reach of the cord: %u further supply places are proposed", n),
            n));
  if (left > 0 && placing->length > 0)
    g_ptr_array_add (
        notices,
        g_strdup_printf (
            hose
                ? ngettext ("%u strip has no place from which the hose reaches all of it: take a longer hose",
                            "%u strips have no place from which the hose reaches all of them: take a longer hose", left)
                : ngettext ("%u strip has no place from which the cord reaches all of it: take a longer cord",
                            "%u strips have no place from which the cord reaches all of them: take a longer cord",
                            left),
            left));
}

static void
add_given (GArray *stations, const OxJob *job)
{
  for (guint i = 0; i < job->n_stations; i++)
    {
      const OxStation *given = job->stations[i];
      double usual = given->kind == OX_STATION_COLLECTOR ? job->machine->hose_length : job->machine->cord_length;
      OxPlanStation station = { .id = g_strdup (given->id), .kind = given->kind, .at = given->at };
      station.length = given->length > 0 ? given->length : usual;
      g_array_append_val (stations, station);
    }
}

static void
keep (const Placing *placing)
{
  OxPlan *plan = placing->plan;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      OxStrip *strip = &plan->strips[i];
      double way = isinf (placing->ways[i]) ? 0 : placing->ways[i];
      *(placing->kind == OX_STATION_COLLECTOR ? &strip->station : &strip->supply) = placing->serves[i];
      *(placing->kind == OX_STATION_COLLECTOR ? &strip->hose_m : &strip->cord_m) = way;
      if (placing->serves[i] < 0)
        continue;
      OxPlanStation *station = &g_array_index (placing->stations, OxPlanStation, placing->serves[i]);
      station->strips++;
      station->farthest_m = MAX (station->farthest_m, way);
    }
}

/* One kind: the job's stations first, then proposals for what they do not reach. */
static void
place_kind (Placing *placing, GPtrArray *notices)
{
  OxPlan *plan = placing->plan;
  guint given = 0;
  g_autofree double *ways = g_new (double, plan->n_strips + 1);
  g_autofree int *serves = g_new (int, plan->n_strips + 1);
  g_autofree gboolean *wanted = g_new0 (gboolean, plan->n_strips + 1);
  placing->ways = ways;
  placing->serves = serves;
  placing->first = placing->stations->len;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      ways[i] = INFINITY;
      serves[i] = -1;
    }
  for (guint s = 0; s < plan->job->n_stations; s++)
    if (plan->job->stations[s]->kind == placing->kind)
      {
        given++;
        if (!serve (placing, s))
          g_ptr_array_add (notices,
                           g_strdup_printf (_ ("%s stands off the floor and reaches nothing: put it in a room, "
                                               "in a doorway or beyond an open side"),
                                            plan->job->stations[s]->id));
      }
  for (guint i = 0; i < plan->n_strips; i++)
    {
      wanted[i] = isinf (ways[i]);
      plan->strips[i].out_of_reach = plan->strips[i].out_of_reach || (given > 0 && wanted[i]);
    }
  if (placing->length > 0) /* not known yet otherwise */
    {
      propose (placing, FALSE);
      propose (placing, TRUE);
    }
  for (guint s = placing->stations->len; s > placing->first && placing->stations->len > placing->first + 1; s--)
    (void) drop_needless (placing, s - 1);
  for (guint i = 0; i < plan->n_strips; i++)
    plan->strips[i].out_of_reach = plan->strips[i].out_of_reach || (placing->length > 0 && isinf (ways[i]));
  notice_proposed (placing, given, wanted, notices);
  keep (placing);
}

gboolean
ox_stations_plan (OxPlan *plan, const OxFloor *floor, GPtrArray *notices, const OxRun *run)
{
  const OxMachine *machine = plan->job->machine;
  g_autoptr (GArray) stations = g_array_new (FALSE, FALSE, sizeof (OxPlanStation));
  double longest = MAX (machine->hose_length, machine->cord_length);
  add_given (stations, plan->job);
  for (guint i = 0; i < stations->len; i++)
    longest = MAX (longest, g_array_index (stations, OxPlanStation, i).length);
  g_autoptr (OxReach) reach = ox_reach_new (floor->hose, ox_hose_reach (longest));
  for (OxStationKind kind = OX_STATION_COLLECTOR; kind <= OX_STATION_SUPPLY; kind++)
    {
      double length = kind == OX_STATION_COLLECTOR ? machine->hose_length : machine->cord_length;
      Placing placing
          = { .plan = plan, .reach = reach, .run = run, .kind = kind, .length = length, .stations = stations };
      place_kind (&placing, notices);
    }
  plan->totals.out_of_reach = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    plan->totals.out_of_reach += plan->strips[i].out_of_reach;
  plan->n_stations = stations->len;
  plan->stations = (OxPlanStation *) (void *) g_array_free (g_steal_pointer (&stations), FALSE);
  return !ox_run_cancelled (run, NULL);
}
