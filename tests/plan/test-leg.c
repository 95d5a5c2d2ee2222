/* Oxturn: plan/leg: ends, headings and what a move costs at a guess.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "laid.h"
#include "plan/leg.h"
#include "support/floors.h"
#include "support/ox-test.h"

static void
ends (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  guint across = laid_across (laid);
  laid_add (laid, (OxDraft){ .sign = 1, .y = 0.21, .x0 = 1.25, .x1 = 9.63, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = -1, .y = 3, .x0 = 2.00004, .x1 = 8 });
  laid_add (laid, (OxDraft){ .frame = across, .sign = 1, .y = -4, .x0 = 2, .x1 = 3, .kind = OX_STRIP_CROSSWISE });
  g_autoptr (GArray) legs = ox_legs_new (laid->layout, laid->ways);
  g_assert_cmpuint (legs->len, ==, 3);
  const OxLeg *leg = &g_array_index (legs, OxLeg, 0);
  ox_test_near (ox_point_distance (leg[0].a, (OxPoint){ 1.25, 0.21 }), 0, 1e-9);
  ox_test_near (ox_point_distance (leg[0].b, (OxPoint){ 9.63, 0.21 }), 0, 1e-9);
  g_assert_true (leg[0].grid);
  g_assert_false (leg[0].reversible); /* heading -x it would have to start at 8.75 m */
  ox_test_near (leg[0].turn_a, 0.54, 2e-3);
  ox_test_near (ox_point_distance (leg[1].a, (OxPoint){ 8, 3 }), 0, 1e-9);
  ox_test_near (ox_point_distance (leg[1].b, (OxPoint){ 2, 3 }), 0, 1e-9); /* on the grid */
  ox_test_near (fabs (leg[1].heading), G_PI, 1e-9);
  g_assert_true (leg[1].reversible);
  ox_test_near (ox_point_distance (leg[2].a, (OxPoint){ 4, 2 }), 0, 1e-9);
  ox_test_near (leg[2].heading, G_PI / 2, 1e-9);
  g_assert_cmpint (leg[2].kind, ==, OX_STRIP_CROSSWISE);
  laid->layout->one_heading = TRUE;
  g_autoptr (GArray) bound = ox_legs_new (laid->layout, laid->ways);
  for (guint i = 0; i < 3; i++)
    g_assert_false (g_array_index (bound, OxLeg, i).reversible);
}

static OxLeg
leg_of (OxPoint a, double degrees, double length)
{
  OxLeg leg = { .a = a, .heading = degrees * G_PI / 180, .turn_a = 0.25, .turn_b = 0.5, .reversible = TRUE };
  leg.along = (OxPoint){ cos (leg.heading), sin (leg.heading) };
  leg.b = ox_point_add (a, ox_point_scale (leg.along, length));
  return leg;
}

static void
reverse (void)
{
  OxLeg leg = leg_of ((OxPoint){ 1, 2 }, 30, 4), turned = leg;
  ox_leg_reverse (&turned);
  ox_test_near (ox_point_distance (turned.a, leg.b) + ox_point_distance (turned.b, leg.a), 0, 1e-12);
  ox_test_near (remainder (turned.heading - leg.heading - G_PI, 2 * G_PI), 0, 1e-9);
  ox_test_near (ox_point_dot (turned.along, leg.along), -1, 1e-9);
  ox_test_near (turned.turn_a, 0.5, 1e-12);
  ox_test_near (turned.turn_b, 0.25, 1e-12);
  ox_leg_reverse (&turned);
  ox_test_near (ox_point_distance (turned.a, leg.a), 0, 1e-12);
}

/* Up to 10 degrees are steered, more takes a swing. */
static void
turns (void)
{
  OxLeg from = leg_of ((OxPoint){ 0, 0 }, 170, 2);
  for (double degrees = -180; degrees <= 180; degrees += 9.9)
    {
      OxLeg to = leg_of ((OxPoint){ 1, 1 }, 170 + degrees, 2);
      g_assert_cmpint (ox_leg_turns (&from, &to), ==, fabs (degrees) > 10);
    }
}

/* Walking is 30 m/min; a swing takes 15 s and the way to where it fits, from one end and to the other. */
static void
seconds (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  OxLeg from = leg_of ((OxPoint){ 0, 0 }, 0, 3), on = leg_of ((OxPoint){ 0, 4 }, 0, 3),
        back = leg_of ((OxPoint){ 6, 4 }, 180, 3);
  ox_test_near (ox_leg_seconds (job->machine, &from, &on), 5 * 2, 1e-9);
  ox_test_near (ox_leg_seconds (job->machine, &from, &back), (5 + 0.5 + 0.25) * 2 + 15, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/leg/ends", ends);
  g_test_add_func ("/plan/leg/reverse", reverse);
  g_test_add_func ("/plan/leg/turns", turns);
  g_test_add_func ("/plan/leg/seconds", seconds);
  return g_test_run ();
}
