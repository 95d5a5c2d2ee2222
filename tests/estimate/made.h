/* Oxturn: tests/estimate/made - a plan laid by hand: every figure of it is known.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Strips of 10 m by 0.25 m that overlap by 0.05 m. Three of them lie on 6.5 m2, 1.0 m2 of it twice. 20 kg/min thrown, 0.12 % of it lost.
 */
#pragma once
#include "estimate/estimate.h"
#include "job/classes.h"
#include "support/ox-test.h"
G_BEGIN_DECLS

#define MADE_MINUTES (9.9 / 6) /* of a strip: 9.9 m from start to stop at 6 m/min */
#define MADE_MOVE 0.5
#define MADE_START 0.1

static inline OxJob *
made_job (const char *profile, double height)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 5, height / 2 }, 10, height, 0);
  g_autoptr (OxRoom) room
      = ox_room_new (&(OxRoom){ .id = (char *) "R1", .name = (char *) "Hall", .ring = ring, .profile = (char *) profile });
  g_autoptr (OxMachine) machine = ox_machine_copy (ox_classes_find ("compact"));
  machine->blast_width = 0.25;
  machine->blast_length = 0.1;
  machine->start_s = MADE_START * 60;
  ox_job_builder_put_room (builder, room);
  ox_job_builder_set_machine (builder, machine);
  ox_job_builder_set_rates (builder, (OxRates){ .edge_m2_per_hour = 4 });
  return ox_job_builder_end (builder);
}

/* A floor of 10 m by @height, above 0.2 @n + 0.05 m, with @n strips from below; the rest is one edge area.  Returns: (transfer full) */
static inline OxPlan *
made_plan (guint n, double height, const char *profile)
{
  OxPlan *plan = g_atomic_rc_box_new0 (OxPlan);
  g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 5, height / 2 }, 10, height, 0);
  double blasted = n > 0 ? 10 * (0.2 * n + 0.05) : 0;
  plan->job = made_job (profile, height);
  plan->target = ox_region_new_ring (ring);
  plan->n_strips = n;
  plan->n_moves = n > 0 ? n - 1 : 0;
  plan->n_edges = 1;
  plan->strips = g_new0 (OxStrip, n + 1);
  plan->moves = g_new0 (OxMove, n + 1);
  plan->edges = g_new0 (OxEdge, 1);
  for (guint i = 0; i < n; i++)
    {
      double y = 0.125 + 0.2 * i;
      plan->strips[i] = (OxStrip){ .order = i + 1, .lane = i + 1, .coat = 1, .a = { 0.05, y }, .b = { 9.95, y }, .width = 0.25, .speed = 6,
                                   .minutes = MADE_MINUTES, .station = -1 };
      if (i > 0)
        plan->moves[i - 1] = (OxMove){ .from = i, .to = i + 1, .minutes = MADE_MOVE, .length = 3 };
    }
  plan->edges[0] = (OxEdge){ g_strdup ("E1"), 0, OX_CAUSE_WALL, 10 * height - blasted, 10, ox_region_new_empty (), 0 };
  plan->totals = (OxTotals){ .target_m2 = 10 * height,
                             .blasted_m2 = blasted,
                             .edge_m2 = 10 * height - blasted,
                             .strips = n,
                             .strip_m = 9.9 * n,
                             .strip_hours = n * MADE_MINUTES / 60 };
  return plan;
}

/* gives the plan's job another outfit */
static inline void
plan_set_outfit (const OxPlan *plan, const OxOutfit *outfit)
{
  OxJob *job = (OxJob *) plan->job;
  ox_outfit_unref (job->outfit);
  job->outfit = ox_outfit_ref (outfit);
}

G_END_DECLS
