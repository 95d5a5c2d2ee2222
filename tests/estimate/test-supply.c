/* Oxturn: tests of estimate/supply
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/supply.h"
#include "estimate/basis.h"
#include <string.h>
#include "made.h"

static const OxFigure *
find (const OxEstimate *estimate, const char *id)
{
  const OxFigure *figure = ox_estimate_find (estimate, id);
  g_assert_nonnull (figure);
  return figure;
}

/* 20 A over 100 ft of 12 AWG at 120 V: 7.92 V, 6.60 %, too high; 5 % are lost after 75.76 ft (NFPA 70 Chapter 9 Table
 * 8). Such a load asks for a circuit of 25 A, so that a circuit of 20 A, common with these machines, is too small for
 * hours. */
static void
test_supply (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  OxMachine *machine = plan->job->machine;
  machine->volts = 120;
  machine->amperes = 20;
  machine->phases = 1;
  machine->cord_length = 30.48;
  machine->cord_mm2 = 3.31;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  ox_test_near (find (estimate, "drop-volts")->value, 7.92, 1e-4);
  ox_test_near (find (estimate, "drop-percent")->value, 6.60, 1e-4);
  g_assert_cmpint (find (estimate, "drop-percent")->verdict, ==, OX_VERDICT_STOP);
  ox_test_near (find (estimate, "longest-cord")->value, 30.48 * 5 / 6.60, 1e-3);
  ox_test_near (find (estimate, "circuit")->value, 25, 1e-9);
}

/* A cord that lies between two sizes loses as much as its copper says: half the copper, twice the drop. */
static void
test_cord_between (void)
{
  double drop[2];
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (OxPlan) plan = made_plan (3, 1, "");
      plan->job->machine->cord_mm2 = i == 0 ? 3.31 : 3.4;
      g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
      drop[i] = find (estimate, "drop-volts")->value;
    }
  ox_test_near (drop[0] * 3.31, drop[1] * 3.4, 1e-9);
}

/* 50 ft of 12 AWG and 50 ft of 10 AWG in series at 16 A and 120 V lose 5.152 V, 4.293 %: 2 x 16 x 0.05 x (1.98 + 1.24)
 * (NFPA 70 Chapter 9 Table 8). */
static void
test_cords_in_series (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  g_autoptr (OxOutfit) outfit = ox_outfit_new (&(OxOutfit){ NULL, 0, 2, { { 15.24, 3.31 }, { 15.24, 5.26 } } });
  plan_set_outfit (plan, outfit);
  plan->job->machine->amperes = 16;
  plan->job->machine->cord_length = 30.48;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  ox_test_near (find (estimate, "drop-volts")->value, 5.152, 1e-4);
  ox_test_near (find (estimate, "drop-percent")->value, 4.293, 5e-4);
  g_assert_cmpint (find (estimate, "drop-percent")->verdict, ==, OX_VERDICT_WARN);
  g_assert_cmpint (find (estimate, "cords-length")->verdict, ==, OX_VERDICT_FINE);
  plan->job->machine->cord_length = 31;
  g_autoptr (OxEstimate) farther = ox_estimate_new (plan, NULL);
  g_assert_cmpint (find (farther, "cords-length")->verdict, ==, OX_VERDICT_WARN);
  OxCordLine line = ox_cord_line_of (plan->job);
  g_autofree char *text = ox_cord_line_text (&line, OX_UNITS_METRES);
  g_assert_cmpstr (text, ==, "15.24 m of 3.31 mm² + 15.24 m of 5.26 mm²");
}

/* What a machine that works between 15 and 20 A meets on a circuit of 20 A: 16 A may be drawn for three hours and more,
 * over 16 A not (NFPA 70, continuous load: 80 %). */
static void
test_circuit (void)
{
  static const struct
  {
    double amperes, circuit;
    OxVerdict verdict;
    const char *part;
  } rows[] = {
    { 15, 20, OX_VERDICT_FINE, "up to 16 A" },
    { 16, 20, OX_VERDICT_FINE, "up to 16 A" },
    { 18, 20, OX_VERDICT_WARN, "over the 16 A" },
    { 20, 20, OX_VERDICT_WARN, "over the 16 A" },
    { 21, 20, OX_VERDICT_STOP, "more than the circuit" },
    { 20, 25, OX_VERDICT_FINE, "up to 20 A" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxPlan) plan = made_plan (3, 1, "");
      g_autoptr (OxOutfit) outfit = ox_outfit_new (&(OxOutfit){ NULL, rows[i].circuit, 0, { { 0, 0 } } });
      plan_set_outfit (plan, outfit);
      plan->job->machine->amperes = rows[i].amperes;
      g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
      const OxFigure *load = find (estimate, "circuit-load");
      g_assert_cmpint (load->verdict, ==, rows[i].verdict);
      g_assert_nonnull (strstr (load->assumption, rows[i].part));
      ox_test_near (load->value, 100 * rows[i].amperes / rows[i].circuit, 1e-9);
    }
}

/* 12 AWG carries 25 A with two live conductors, 14 AWG 18 A (NFPA 70 Table 400.5); the thinnest cord counts. */
static void
test_carries (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  g_autoptr (OxOutfit) outfit = ox_outfit_new (&(OxOutfit){ NULL, 0, 2, { { 15, 3.31 }, { 15, 2.08 } } });
  plan->job->machine->amperes = 20;
  plan->job->machine->cord_mm2 = 3.31;
  g_autoptr (OxEstimate) one = ox_estimate_new (plan, NULL);
  g_assert_cmpfloat (find (one, "cord-carries")->value, ==, 25);
  g_assert_cmpint (find (one, "cord-carries")->verdict, ==, OX_VERDICT_FINE);
  plan_set_outfit (plan, outfit);
  g_autoptr (OxEstimate) two = ox_estimate_new (plan, NULL);
  g_assert_cmpfloat (find (two, "cord-carries")->value, ==, 18);
  g_assert_cmpint (find (two, "cord-carries")->verdict, ==, OX_VERDICT_STOP);
}

/* What is told of cords: a cord like this one, as long as can be, loses as much as is allowed. */
static void
test_longest (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  plan->job->machine->cord_mm2 = 3.31;
  plan->job->machine->cord_length = 20;
  const OxSupply supply = { 120, 16, 1 };
  OxCordLine line = ox_cord_line_of (plan->job);
  double longest = ox_cord_line_longest (&line, &supply);
  line.length = line.cords[0].length = longest;
  ox_test_near (ox_supply_drop_share (&supply, line.cords, line.n), ox_basis ("drop-stop"), 1e-9);
  g_assert_cmpint (ox_cord_line_judge (&line, &supply), ==, OX_DROP_HIGH);
  line.cords[0].length = longest * 1.01;
  g_assert_cmpint (ox_cord_line_judge (&line, &supply), ==, OX_DROP_TOO_HIGH);
  /* 16 A for hours ask for 20 A (NFPA 70, continuous load). */
  ox_test_near (ox_least_circuit (16), 20, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/supply/supply/published-drop", test_supply);
  g_test_add_func ("/estimate/supply/supply/cord-between-sizes", test_cord_between);
  g_test_add_func ("/estimate/supply/cords-in-series", test_cords_in_series);
  g_test_add_func ("/estimate/supply/circuit-and-continuous-load", test_circuit);
  g_test_add_func ("/estimate/supply/longest-loses-the-limit", test_longest);
  g_test_add_func ("/estimate/supply/thinnest-cord-carries", test_carries);
  return g_test_run ();
}
