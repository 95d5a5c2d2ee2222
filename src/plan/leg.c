/* Oxturn: plan/leg - strips as an order of work sees them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/leg.h"
#include "trade/production.h"

static gboolean
can_reverse (const OxLayout *layout, const OxDraft *draft)
{
  OxSpan span;
  return !layout->one_heading
         && ox_frame_find_span (g_ptr_array_index (layout->frames, draft->frame), draft->y, -draft->sign,
                                (OxSpan) { draft->x0, draft->x1 }, &span);
}

static void
set_heading (OxLeg *leg)
{
  leg->heading = atan2 (leg->b.y - leg->a.y, leg->b.x - leg->a.x);
  leg->along = (OxPoint) { cos (leg->heading), sin (leg->heading) };
}

GArray *
ox_legs_new (const OxLayout *layout, const OxWays *ways)
{
  GArray *legs = g_array_sized_new (FALSE, FALSE, sizeof (OxLeg), layout->drafts->len);
  for (guint i = 0; i < layout->drafts->len; i++)
    {
      const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
      const OxFrame *frame = g_ptr_array_index (layout->frames, draft->frame);
      OxPoint low = ox_point_snap (ox_frame_to_floor (frame, (OxPoint) { draft->x0, draft->y }));
      OxPoint high = ox_point_snap (ox_frame_to_floor (frame, (OxPoint) { draft->x1, draft->y }));
      OxLeg leg = { 0 };
      leg.a = draft->sign > 0 ? low : high;
      leg.b = draft->sign > 0 ? high : low;
      set_heading (&leg);
      leg.turn_a = ox_ways_turn_distance (ways, leg.a);
      leg.turn_b = ox_ways_turn_distance (ways, leg.b);
      leg.reversible = can_reverse (layout, draft);
      leg.kind = draft->kind;
      leg.grid = draft->grid;
      leg.frame = draft->frame;
      leg.lane = draft->lane;
      leg.y = draft->y;
      leg.station = -1;
      g_array_append_val (legs, leg);
    }
  return legs;
}

void
ox_leg_reverse (OxLeg *leg)
{
  OxLeg old = *leg;
  leg->a = old.b;
  leg->b = old.a;
  leg->turn_a = old.turn_b;
  leg->turn_b = old.turn_a;
  leg->heading = old.heading > 0 ? old.heading - G_PI : old.heading + G_PI;
  leg->along = (OxPoint) { -old.along.x, -old.along.y };
}

gboolean
ox_leg_turns (const OxLeg *from, const OxLeg *to)
{
  return ox_point_dot (from->along, to->along) < OX_TURN_COSINE;
}

double
ox_leg_seconds (const OxMachine *machine, const OxLeg *from, const OxLeg *to)
{
  OxPoint off = ox_point_sub (to->a, from->b);
  double way = sqrt (off.x * off.x + off.y * off.y);
  double swing = 0;
  if (ox_leg_turns (from, to))
    {
      swing = machine->swing_s;
      way += MIN (from->turn_b + to->turn_a, 1000);
    }
  return ox_production_move_seconds (way, machine->walk_speed, swing);
}
