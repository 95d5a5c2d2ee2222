/* Oxturn: plan/station - which station serves which strip, and where further ones would help.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/station.h"
#include "base/notice.h"
#include "base/words.h"
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
  double length;      /* of the machine's hose or cord */
  GArray *stations;   /* OxPlanStation of both kinds */
  guint first;        /* the first of this kind's proposals in @stations */
  GPtrArray *ways_of; /* for each of @stations a double a strip; NULL for those of the other kind */
  double *ways;       /* of each strip to the station that serves it, INFINITY while none does */
  int *serves;        /* that station */
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

gboolean
ox_station_step_on (const OxReach *reach, OxPoint *p)
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

/* Ways from a place to all strips, INFINITY where out of reach; (transfer full) */
static double *
ways_from (const Placing *placing, OxPoint from, double limit)
{
  const OxPlan *plan = placing->plan;
  double *ways = g_new (double, plan->n_strips + 1);
  g_autoptr (OxReachTree) tree = ox_reach_tree_new (placing->reach, from, limit);
  for (guint i = 0; i < plan->n_strips; i++)
    ways[i] = ox_run_cancelled (placing->run, NULL) ? (double) INFINITY : farthest_point (tree, &plan->strips[i]);
  return ways;
}

/* Whether station @index may serve strip @i: what one of the job serves is not left for a proposed one. */
static gboolean
may_serve (const Placing *placing, guint index, guint i)
{
  const OxPlanStation *stations = (const OxPlanStation *) (const void *) placing->stations->data;
  return !stations[index].proposed || placing->serves[i] < 0 || stations[placing->serves[i]].proposed;
}

/* Lets the stations serve the strips that they are nearest to. */
static void
assign (const Placing *placing)
{
  for (guint i = 0; i < placing->plan->n_strips; i++)
    {
      placing->ways[i] = INFINITY;
      placing->serves[i] = -1;
    }
  for (guint s = 0; s < placing->ways_of->len; s++)
    {
      const double *ways = g_ptr_array_index (placing->ways_of, s);
      for (guint i = 0; ways != NULL && i < placing->plan->n_strips; i++)
        if (ways[i] < placing->ways[i] - 1e-9 && may_serve (placing, s, i))
          {
            placing->ways[i] = ways[i];
            placing->serves[i] = (int) s;
          }
    }
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

/* Ways from each place to each of the @wanted strips, place by place; the step that costs. (transfer full) */
static float *
try_places (const Placing *placing, const GArray *places, const GArray *wanted)
{
  double limit = ox_hose_reach (placing->length);
  float *ways = g_new (float, places->len * wanted->len + 1);
  for (guint p = 0; p < places->len; p++)
    {
      OxPoint at = g_array_index (places, OxPoint, p);
      gboolean cancelled = ox_run_cancelled (placing->run, NULL);
      g_autoptr (OxReachTree) tree = cancelled ? NULL : ox_reach_tree_new (placing->reach, at, limit);
      for (guint i = 0; i < wanted->len; i++)
        {
          const OxStrip *strip = &placing->plan->strips[g_array_index (wanted, guint, i)];
          gboolean near = !cancelled && ox_point_distance (at, middle (strip)) <= limit;
          ways[p * wanted->len + i] = near ? (float) farthest_point (tree, strip) : (float) INFINITY;
        }
    }
  return ways;
}

typedef struct
{
  const float *ways; /* place by place */
  guint n_places, n_wanted;
  guint8 *done;  /* strips that are reached from a place already chosen */
  guint *counts; /* of each place when it was last looked at: it reaches no more now */
  guint8 *beside; /* places that lie beside a collector */
} Choice;

/* Of the places the one that reaches most of the strips that are not done; of equals one beside a collector, which
 * takes power too, so that cord and hose lie together; of those the one with the shortest ways, then the first.
 * Returns: its index, G_MAXUINT when none reaches any */
static guint
best_place (const Choice *choice)
{
  guint most = 1, best = G_MAXUINT;
  guint8 beside = FALSE;
  double least = INFINITY;
  for (guint p = 0; p < choice->n_places; p++)
    {
      const float *ways = choice->ways + (gsize) p * choice->n_wanted;
      guint reached = 0;
      double sum = 0;
      if (choice->counts[p] < most)
        continue;
      for (guint i = 0; i < choice->n_wanted; i++)
        if (!choice->done[i] && !isinf (ways[i]))
          {
            reached++;
            sum += (double) ways[i];
          }
      choice->counts[p] = reached;
      gboolean as_near = choice->beside[p] > beside || (choice->beside[p] == beside && sum < least - 1e-6);
      if (reached > most || (reached == most && as_near))
        {
          most = reached;
          beside = choice->beside[p];
          least = sum;
          best = p;
        }
    }
  return best;
}

static double
place_step (const Placing *placing)
{
  OxBox box = ox_region_box (placing->plan->travel);
  return MAX (STEP, MIN (ox_hose_reach (placing->length) / 4, MAX (box.x1 - box.x0, box.y1 - box.y0) / 40));
}

static char *
proposed_id (const Placing *placing)
{
  for (guint n = 1;; n++)
    {
      g_autofree char *id = g_strdup_printf ("P%u", n);
      gboolean taken = ox_job_find (placing->plan->job, id, NULL) != OX_ITEM_NONE;
      for (guint i = 0; i < placing->stations->len; i++)
        taken = taken || g_strcmp0 (g_array_index (placing->stations, OxPlanStation, i).id, id) == 0;
      if (!taken)
        return g_steal_pointer (&id);
    }
}

/* How many strips to look at: more where most pairs of place and strip are too far apart to cost anything. */
static guint
sample_size (const Placing *placing, guint n_places)
{
  OxBox box = ox_region_box (placing->plan->travel);
  double reach = ox_hose_reach (placing->length);
  double share = MIN (1, G_PI * reach * reach / MAX ((box.x1 - box.x0) * (box.y1 - box.y0), 1));
  return (guint) (MOST_TRIES / MAX (share, 0.05)) / MAX (n_places, 1) + 1;
}

static void
add_proposed (Placing *placing, OxPoint at)
{
  OxPlanStation station = { .kind = placing->kind, .proposed = TRUE, .at = at, .length = placing->length };
  station.id = proposed_id (placing);
  g_array_append_val (placing->stations, station);
  g_ptr_array_add (placing->ways_of, ways_from (placing, at, station_reach (&station)));
}

/* Which places are to be taken because a collector stands there, when it is supplies that are looked for; (transfer full) */
static guint8 *
find_beside (const Placing *placing, const GArray *places)
{
  guint8 *beside = g_new0 (guint8, places->len + 1);
  double step = place_step (placing);
  for (guint s = 0; placing->kind == OX_STATION_SUPPLY && s < placing->stations->len; s++)
    for (guint p = 0; p < places->len; p++)
      {
        const OxPlanStation *station = &g_array_index (placing->stations, OxPlanStation, s);
        if (station->kind == OX_STATION_COLLECTOR
            && ox_point_distance (station->at, g_array_index (places, OxPoint, p)) <= step)
          beside[p] = TRUE;
      }
  return beside;
}

/* Greedy set cover: the best place, then the best for what is left, as long as one helps. On large floors that is done
 * for a sample of the strips, and again for those that are left over. */
static void
propose (Placing *placing, gboolean anywhere)
{
  if (count_unserved (placing) == 0)
    return;
  g_autoptr (GArray) places = ox_station_places (placing->plan, placing->reach, place_step (placing), anywhere);
  g_autofree guint8 *beside = find_beside (placing, places);
  guint before = G_MAXUINT;
  for (guint left = count_unserved (placing); left > 0 && left < before; left = count_unserved (placing))
    {
      g_autoptr (GArray) wanted = sample_unserved (placing, sample_size (placing, places->len));
      g_autofree float *ways = try_places (placing, places, wanted);
      g_autofree guint8 *done = g_new0 (guint8, wanted->len + 1);
      g_autofree guint *counts = g_new (guint, places->len + 1);
      Choice choice = { ways, places->len, wanted->len, done, counts, beside };
      for (guint p = 0; p < places->len; p++)
        counts[p] = G_MAXUINT;
      before = left;
      for (guint best;
           placing->stations->len - placing->first < MOST_PROPOSED && (best = best_place (&choice)) != G_MAXUINT;)
        {
          add_proposed (placing, g_array_index (places, OxPoint, best));
          for (guint i = 0; i < wanted->len; i++)
            done[i] |= !isinf (ways[best * wanted->len + i]);
        }
      assign (placing);
    }
}

/* Takes back, from the last on, each proposal all of whose strips other stations reach as well. */
static void
drop_needless (Placing *placing)
{
  guint n = placing->plan->n_strips;
  g_autofree guint *reached = g_new0 (guint, n + 1); /* by how many stations */
  for (guint s = 0; s < placing->ways_of->len; s++)
    {
      const double *ways = g_ptr_array_index (placing->ways_of, s);
      for (guint i = 0; ways != NULL && i < n; i++)
        reached[i] += !isinf (ways[i]);
    }
  for (guint s = placing->stations->len; s > placing->first; s--)
    {
      const double *ways = g_ptr_array_index (placing->ways_of, s - 1);
      gboolean needed = FALSE;
      for (guint i = 0; i < n && !needed; i++)
        needed = !isinf (ways[i]) && reached[i] == 1;
      if (needed)
        continue;
      for (guint i = 0; i < n; i++)
        reached[i] -= !isinf (ways[i]);
      g_free (g_array_index (placing->stations, OxPlanStation, s - 1).id);
      g_array_remove_index (placing->stations, s - 1);
      g_ptr_array_remove_index (placing->ways_of, s - 1);
    }
  assign (placing);
}

/* Those that are left are named one after another. */
static void
name_proposed (Placing *placing)
{
  for (guint s = placing->first; s < placing->stations->len; s++)
    g_clear_pointer (&g_array_index (placing->stations, OxPlanStation, s).id, g_free);
  for (guint s = placing->first; s < placing->stations->len; s++)
    g_array_index (placing->stations, OxPlanStation, s).id = proposed_id (placing);
}

/* Whether some end of the one is farther than @apart from some end of the other. */
static gboolean
are_apart (const OxStrip *a, const OxStrip *b, double apart)
{
  if (fabs (a->a.x - b->a.x) > apart || fabs (a->a.y - b->a.y) > apart)
    return TRUE;
  return MAX (MAX (ox_point_distance (a->a, b->a), ox_point_distance (a->a, b->b)),
              MAX (ox_point_distance (a->b, b->a), ox_point_distance (a->b, b->b)))
         > apart;
}

/* Of the strips that have a place now, those so far apart that no station reaches two of them, greedily: as many stations are needed at least. */
static guint
least_stations (const Placing *placing, const gboolean *wanted)
{
  double apart = 2 * ox_hose_reach (placing->length);
  g_autoptr (GArray) picked = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < placing->plan->n_strips; i++)
    {
      const OxStrip *strip = &placing->plan->strips[i];
      gboolean far = wanted[i] && !isinf (placing->ways[i]);
      for (guint k = 0; far && k < picked->len; k++)
        far = are_apart (strip, &placing->plan->strips[g_array_index (picked, guint, k)], apart);
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
  g_autofree char *least = g_strdup_printf ("%u", n > 0 && given == 0 ? least_stations (placing, wanted) : 0);
  if (n > 0 && given == 0 && hose)
    g_ptr_array_add (notices, ox_notice_count ("No collector is placed: %u place is proposed, %u are needed at least",
                                               "No collector is placed: %u places are proposed, %u are needed at least",
                                               n, least, NULL));
  else if (n > 0 && given == 0)
    g_ptr_array_add (notices, ox_notice_count ("No supply is placed: %u place is proposed, %u are needed at least",
                                               "No supply is placed: %u places are proposed, %u are needed at least", n,
                                               least, NULL));
  else if (n > 0 && hose)
    g_ptr_array_add (notices,
                     ox_notice_count ("Strips are out of reach of the hose: %u further collector place is proposed",
                                      "Strips are out of reach of the hose: %u further collector places are proposed",
                                      n, NULL));
  else if (n > 0)
    g_ptr_array_add (notices,
                     ox_notice_count ("Strips are out of reach of the cord: %u further supply place is proposed",
                                      "Strips are out of reach of the cord: %u further supply places are proposed", n,
                                      NULL));
  if (left > 0 && placing->length > 0 && hose)
    g_ptr_array_add (
        notices, ox_notice_count ("%u strip has no place from which the hose reaches all of it: take a longer hose",
                                  "%u strips have no place from which the hose reaches all of them: take a longer hose",
                                  left, NULL));
  else if (left > 0 && placing->length > 0)
    g_ptr_array_add (
        notices, ox_notice_count ("%u strip has no place from which the cord reaches all of it: take a longer cord",
                                  "%u strips have no place from which the cord reaches all of them: take a longer cord",
                                  left, NULL));
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

/* Ways from the job's stations of the kind. Returns: how many there are */
static guint
measure_given (Placing *placing, GPtrArray *notices)
{
  guint given = 0;
  for (guint s = 0; s < placing->plan->job->n_stations; s++)
    {
      const OxPlanStation *station = &g_array_index (placing->stations, OxPlanStation, s);
      OxPoint from = station->at;
      if (station->kind != placing->kind)
        continue;
      given++;
      if (ox_station_step_on (placing->reach, &from))
        g_ptr_array_index (placing->ways_of, s) = ways_from (placing, from, station_reach (station));
      else
        g_ptr_array_add (notices,
                         ox_notice_new (N_ ("%s stands off the floor and reaches nothing: put it in a room, in a "
                                            "doorway or beyond an open side"),
                                        station->id, NULL));
    }
  return given;
}

/* One kind: the job's stations first, then proposals for what they do not reach. */
static void
place_kind (Placing *placing, GPtrArray *notices)
{
  OxPlan *plan = placing->plan;
  guint given;
  g_autoptr (GPtrArray) ways_of = g_ptr_array_new_with_free_func (g_free);
  g_autofree double *ways = g_new (double, plan->n_strips + 1);
  g_autofree int *serves = g_new (int, plan->n_strips + 1);
  g_autofree gboolean *wanted = g_new0 (gboolean, plan->n_strips + 1);
  placing->ways = ways;
  placing->serves = serves;
  placing->first = placing->stations->len;
  placing->ways_of = ways_of;
  for (guint s = 0; s < placing->stations->len; s++)
    g_ptr_array_add (ways_of, NULL);
  given = measure_given (placing, notices);
  assign (placing);
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
  drop_needless (placing);
  name_proposed (placing);
  for (guint i = 0; i < plan->n_strips; i++)
    plan->strips[i].out_of_reach = plan->strips[i].out_of_reach || (placing->length > 0 && isinf (ways[i]));
  notice_proposed (placing, given, wanted, notices);
  keep (placing);
}

OxReach *
ox_stations_reach_new (const OxJob *job, const OxFloor *floor)
{
  double longest = MAX (job->machine->hose_length, job->machine->cord_length);
  for (guint i = 0; i < job->n_stations; i++)
    longest = MAX (longest, job->stations[i]->length);
  return ox_reach_new (floor->hose, ox_hose_reach (longest));
}

gboolean
ox_stations_plan (OxPlan *plan, OxReach *reach, GPtrArray *notices, const OxRun *run)
{
  const OxMachine *machine = plan->job->machine;
  g_autoptr (GArray) stations = g_array_new (FALSE, FALSE, sizeof (OxPlanStation));
  add_given (stations, plan->job);
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
