/* Oxturn: tests/file/plan-making - a plan made by hand, so that every figure in its tables is known.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job-texts.h"
#include "plan/plan.h"
#include "support/ox-test.h"
G_BEGIN_DECLS

typedef struct
{
  OxPlan plan;
  OxStrip strips[2];
  OxMove moves[1];
  OxZone zones[1];
  OxEdge edges[1];
  OxPoint path[3];
  OxPlanStation stations[3];
} HandPlan;

/* The floor of JOB_WHOLE with two strips; not a plan that anybody should follow. */
static inline void
hand_plan_init (HandPlan *hand)
{
  *hand = (HandPlan){
    .strips = {
      { 1, 0, 1, OX_STRIP_MAIN, 1, { 1, 2 }, { 7, 2 }, 0, 0.21, 6, 1, 0, 0, 0, 1, 6.25, 7.5, 0, FALSE },
      { 2, 0, 3, OX_STRIP_CROSSWISE, 2, { 3, 7 }, { 3, 4 }, -G_PI / 2, 0.21, 6, 0.5, 0, 0, -1, 2, 0, 6.5, 0, TRUE },
    },
    .moves = { { 1, 2, OX_MOVE_SWING, 0.45, 6, TRUE, { 8, 2.5 }, 3, NULL } },
    .stations = { { (char *) "S1", OX_STATION_COLLECTOR, FALSE, { 1, 1 }, 20, 1, 6.25 },
                  { (char *) "S2", OX_STATION_SUPPLY, FALSE, { 1.0001, 1 }, 30, 1, 7.5 },
                  { (char *) "P1", OX_STATION_SUPPLY, TRUE, { 4, 0.4 }, 30, 0, 0 } },
    .path = { { 7, 2 }, { 8, 2.5 }, { 3, 7 } },
  };
  hand->zones[0] = (OxZone){ (char *) "Z1", 0, 1, 1.5, ox_test_region ("POLYGON ((0 0, 1.5 0, 1.5 1, 0 1, 0 0))") };
  hand->edges[0]
      = (OxEdge){ (char *) "E1", 0, OX_CAUSE_CORNER, 1.0 / 3, 2.5, ox_test_region ("POLYGON ((0 0, 1 0, 0 1, 0 0))"), 0 };
  hand->moves[0].path = hand->path;
  hand->plan = (OxPlan){
    .job = job_text_read (JOB_WHOLE),
    .target = ox_test_region ("POLYGON ((0 0, 12 0, 12 8, 0 8, 0 0), (1 1, 2 1, 2 2, 1 2, 1 1))"),
    .travel = ox_region_new_empty (),
    .n_strips = 2,
    .n_moves = 1,
    .n_zones = 1,
    .n_edges = 1,
    .n_stations = 3,
    .stations = hand->stations,
    .strips = hand->strips,
    .moves = hand->moves,
    .zones = hand->zones,
    .edges = hand->edges,
    .totals
    = { .target_m2 = 95, .blasted_m2 = 1.0 / 3, .strips = 2, .strip_m = 9, .labour_hours = 0.025, .out_of_reach = 1 },
  };
}

static inline void
hand_plan_clear (HandPlan *hand)
{
  ox_region_unref (hand->zones[0].region);
  ox_region_unref (hand->edges[0].region);
  ox_region_unref (hand->plan.target);
  ox_region_unref (hand->plan.travel);
  ox_job_unref (hand->plan.job);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (HandPlan, hand_plan_clear)
G_END_DECLS
