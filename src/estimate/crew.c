/* Oxturn: estimate/work - several machines: which lays which strip.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/work.h"

#define NEARNESS 0.05 /* share of a fair share that staying near is worth */

typedef struct
{
  guint from, to; /* strips, the last one not included */
  guint coat;
  double minutes;
  gboolean given;
} Field;

typedef struct
{
  const OxPlan *plan;
  guint machines;
  gboolean left;  /* whether strips that are done weigh nothing */
  guint *machine; /* of each strip */
  double *load;   /* minutes of each machine so far */
  double worth;   /* minutes that staying near is worth */
} Crew;

static double
strip_minutes (const Crew *crew, guint i)
{
  const OxPlan *plan = crew->plan;
  if (crew->left && plan->strips[i].done > 0)
    return 0;
  return plan->strips[i].minutes + (i > 0 && i <= plan->n_moves ? plan->moves[i - 1].minutes : 0);
}

/* A fair share of each coat's minutes, by its number. */
static double *
fair_shares (const Crew *crew, guint coats)
{
  const OxPlan *plan = crew->plan;
  double *fair = g_new0 (double, coats + 1);
  for (guint i = 0; i < plan->n_strips; i++)
    fair[plan->strips[i].coat] += strip_minutes (crew, i) / crew->machines;
  return fair;
}

/* A new field begins with another room, coat or station, and between lanes once a fair share of the coat is full. */
static GArray *
make_fields (const Crew *crew, const double *fair)
{
  const OxPlan *plan = crew->plan;
  GArray *fields = g_array_new (FALSE, FALSE, sizeof (Field));
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      Field *last = fields->len > 0 ? &g_array_index (fields, Field, fields->len - 1) : NULL;
      double minutes = strip_minutes (crew, i);
      gboolean elsewhere = last == NULL || strip->room != strip[-1].room || strip->coat != strip[-1].coat || strip->station != strip[-1].station;
      gboolean full = last != NULL && strip->lane != strip[-1].lane && last->minutes + minutes / 2 > fair[strip->coat];
      if (elsewhere || full)
        g_array_append_val (fields, ((Field){ i, i + 1, strip->coat, minutes, FALSE }));
      else
        {
          last->to = i + 1;
          last->minutes += minutes;
        }
    }
  return fields;
}

static gboolean
is_near (const Crew *crew, guint m, const Field *field)
{
  const OxStrip *strips = crew->plan->strips, *at = &strips[field->from];
  for (guint i = 0; i < crew->plan->n_strips; i++)
    if (crew->machine[i] == m && (strips[i].room == at->room || (at->station >= 0 && strips[i].station == at->station)))
      return TRUE;
  return FALSE;
}

static guint
choose (const Crew *crew, const Field *field)
{
  guint best = 0;
  double least = INFINITY;
  for (guint m = 0; m < crew->machines; m++)
    {
      double cost = crew->load[m] - (is_near (crew, m, field) ? crew->worth : 0);
      if (cost < least)
        {
          least = cost;
          best = m;
        }
    }
  return best;
}

void
ox_work_split (const OxPlan *plan, guint machines, gboolean left, guint *machine)
{
  g_return_if_fail (machines >= 1);
  Crew crew = { plan, machines, left, machine, NULL, 0 };
  double all = 0;
  guint coats = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      all += strip_minutes (&crew, i);
      coats = MAX (coats, plan->strips[i].coat);
      machine[i] = machines > 1 ? G_MAXUINT : 0;
    }
  if (machines == 1)
    return;
  g_autofree double *fair = fair_shares (&crew, coats);
  g_autoptr (GArray) fields = make_fields (&crew, fair);
  g_autofree double *load = g_new0 (double, machines);
  crew.load = load;
  crew.worth = NEARNESS * all / machines;
  for (guint round = 0; round < fields->len; round++)
    {
      Field *longest = NULL;
      for (guint i = 0; i < fields->len; i++)
        {
          Field *field = &g_array_index (fields, Field, i);
          if (!field->given
              && (longest == NULL || field->coat < longest->coat || (field->coat == longest->coat && field->minutes > longest->minutes)))
            longest = field;
        }
      guint m = choose (&crew, longest);
      longest->given = TRUE;
      load[m] += longest->minutes;
      for (guint i = longest->from; i < longest->to; i++)
        machine[i] = m;
    }
}
