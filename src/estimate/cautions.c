/* Oxturn: estimate/cautions
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/cautions.h"

#define MOST_OF_GROUP 3

static const OxCaution rows[] = {
#include "estimate/cautions.inc"
};

const OxCaution *
ox_cautions_list (guint *n)
{
  *n = G_N_ELEMENTS (rows);
  return rows;
}

static gboolean
has_drops (const OxJob *job)
{
  for (guint i = 0; i < job->n_obstacles; i++)
    if (job->obstacles[i]->kind == OX_OBSTACLE_PIT)
      return TRUE;
  for (guint i = 0; i < job->n_rooms; i++)
    for (guint k = 0; k < job->rooms[i]->ring->n; k++)
      if (job->rooms[i]->sides[k].kind == OX_SIDE_DROP)
        return TRUE;
  return FALSE;
}

static gboolean
is_heavy (const OxEstimate *estimate)
{
  const OxFigure *drum = ox_estimate_find (estimate, "drum-mass");
  return drum != NULL && drum->verdict == OX_VERDICT_WARN;
}

gboolean
ox_caution_applies (const OxCaution *caution, const OxEstimate *estimate)
{
  const OxJob *job = estimate->plan->job;
  if (g_str_equal (caution->where, "edges"))
    return estimate->plan->n_edges > 0;
  if (g_str_equal (caution->where, "drops"))
    return has_drops (job);
  if (g_str_equal (caution->where, "supply"))
    return job->machine->amperes > 0;
  if (g_str_equal (caution->where, "drums"))
    return is_heavy (estimate);
  return TRUE;
}

guint
ox_caution_number (const char *id, const OxEstimate *estimate)
{
  guint number = 0;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      gboolean applies = ox_caution_applies (&rows[i], estimate);
      number += applies;
      if (g_str_equal (rows[i].id, id))
        return applies ? number : 0;
    }
  return 0;
}

const OxCaution *
ox_caution_find (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (g_str_equal (rows[i].id, id))
      return &rows[i];
  return NULL;
}

const char *const *
ox_cautions_of_group (OxFigureGroup group)
{
  static const char *const ids[OX_N_FIGURE_GROUPS][MOST_OF_GROUP + 1]
      = { [OX_FIGURE_FLOOR] = { "hand-dust", "drop" },
          [OX_FIGURE_DUST] = { "silica", "drum" },
          [OX_FIGURE_SUPPLY] = { "residual", "load" },
          [OX_FIGURE_EXPOSURE] = { "silica", "noise", "hand-dust" },
          [OX_FIGURE_WEAR] = { "isolation" } };
  return ids[group];
}
