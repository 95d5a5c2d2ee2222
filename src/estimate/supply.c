/* Oxturn: estimate/figures - supply: cords and circuit.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/supply.h"
#include "base/words.h"
#include "estimate/basis.h"
#include "estimate/figures-private.h"

/* The conductor of the table that is nearest in size. */
static const OxConductor *
nearest_conductor (double mm2)
{
  guint n;
  const OxConductor *rows = ox_supply_conductors (&n), *nearest = rows;
  for (guint i = 1; i < n; i++)
    if (fabs (log (rows[i].mm2 / mm2)) < fabs (log (nearest->mm2 / mm2)))
      nearest = &rows[i];
  return nearest;
}

/* As if the nearest conductor were exactly as thick as the cord. */
static double
cord_resistance (double mm2)
{
  const OxConductor *nearest = nearest_conductor (mm2);
  double celsius = MAX (ox_basis ("conductor-celsius"), nearest->celsius);
  return ox_supply_resistance (nearest, celsius) * nearest->mm2 / mm2;
}

/* The longest cord: of the supply stations, else of the machine. */
static double
cord_length (const OxJob *job)
{
  double most = 0;
  for (guint i = 0; i < job->n_stations; i++)
    if (job->stations[i]->kind == OX_STATION_SUPPLY)
      most = MAX (most, job->stations[i]->length > 0 ? job->stations[i]->length : job->machine->cord_length);
  return most > 0 ? most : job->machine->cord_length;
}

OxCordLine
ox_cord_line_of (const OxJob *job)
{
  const OxOutfit *outfit = job->outfit;
  OxCordLine line = { .n = outfit->n_cords };
  for (guint i = 0; i < outfit->n_cords; i++)
    line.parts[i] = outfit->cords[i];
  if (line.n == 0 && job->machine->cord_mm2 > 0)
    line.parts[line.n++] = (OxCordPart){ cord_length (job), job->machine->cord_mm2 };
  for (guint i = 0; i < line.n; i++)
    {
      line.cords[i] = (OxCord){ line.parts[i].length, cord_resistance (line.parts[i].mm2) };
      line.length += line.parts[i].length;
    }
  return line;
}

char *
ox_cord_line_text (const OxCordLine *line, OxUnits units)
{
  g_autoptr (GString) text = g_string_new (NULL);
  for (guint i = 0; i < line->n; i++)
    {
      g_autofree char *length = ox_units_length_text (units, line->parts[i].length, TRUE);
      g_autofree char *mm2 = ox_words_number (line->parts[i].mm2, 2);
      g_string_append (text, i > 0 ? " + " : "");
      g_string_append_printf (text, _ ("%s of %s mm²"), length, mm2);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

OxDropVerdict
ox_cord_line_judge (const OxCordLine *line, const OxSupply *supply)
{
  return ox_supply_judge (ox_supply_drop_share (supply, line->cords, line->n), ox_basis ("drop-warn"),
                          ox_basis ("drop-stop"));
}

double
ox_cord_line_longest (const OxCordLine *line, const OxSupply *supply)
{
  double ohm = 0;
  g_return_val_if_fail (line->length > 0, 0);
  for (guint i = 0; i < line->n; i++)
    ohm += line->cords[i].ohm_per_km * line->cords[i].length / line->length;
  return ox_supply_longest (supply, ohm, ox_basis ("drop-stop"));
}

double
ox_least_circuit (double amperes)
{
  return amperes / ox_basis ("continuous-share");
}

static OxVerdict
drop_verdict (const OxSupply *supply, const OxCordLine *line)
{
  static const OxVerdict verdicts[] = { OX_VERDICT_FINE, OX_VERDICT_WARN, OX_VERDICT_STOP };
  return verdicts[ox_cord_line_judge (line, supply)];
}

/* "12 AWG" of one cord, "12 AWG, 10 AWG" of two in series. */
static char *
conductor_names (const OxCordLine *line)
{
  g_autoptr (GString) names = g_string_new (NULL);
  for (guint i = 0; i < line->n; i++)
    {
      g_autofree char *name = ox_basis_unit (nearest_conductor (line->parts[i].mm2)->id);
      g_string_append_printf (names, "%s%s", i > 0 ? ", " : "", name);
    }
  return g_string_free (g_steal_pointer (&names), FALSE);
}

static void
add_drop (OxEstimate *self, const OxSupply *supply, const OxCordLine *line)
{
  const char *source = nearest_conductor (line->parts[0].mm2)->source;
  g_autofree char *names = conductor_names (line);
  double share = ox_supply_drop_share (supply, line->cords, line->n);
  OxFigure figure = { .group = OX_FIGURE_SUPPLY, .verdict = drop_verdict (supply, line), .basis = source };
  figure.id = "drop-volts";
  figure.label = g_strdup (_ ("Voltage drop"));
  figure.unit = "V";
  figure.decimals = 2;
  figure.value = ox_supply_drop (supply, line->cords, line->n);
  figure.assumption = g_strdup_printf (_ ("%.0f A, %.0f V over %.0f m of %s; %s; building wire, steady load"),
                                       supply->amperes, supply->volts, line->length, names, _ (source));
  ox_figure_add (self, figure);
  figure.id = "drop-percent";
  figure.label = g_strdup (_ ("Voltage drop, share"));
  figure.unit = "%";
  figure.value = 100 * share;
  figure.assumption = g_strdup_printf (_ ("advised: up to %.0f %%; at most %.0f %%"), 100 * ox_basis ("drop-warn"),
                                       100 * ox_basis ("drop-stop"));
  ox_figure_add (self, figure);
}

static void
add_longest (OxEstimate *self, const OxSupply *supply, const OxCordLine *line)
{
  ox_figure_add (
      self, (OxFigure){ .group = OX_FIGURE_SUPPLY,
                        .id = "longest-cord",
                        .label = g_strdup (_ ("Longest cord")),
                        .unit = "m",
                        .decimals = 1,
                        .value = ox_cord_line_longest (line, supply),
                        .basis = "drop-stop",
                        .assumption = g_strdup_printf (_ ("until %.0f %% are lost"), 100 * ox_basis ("drop-stop")) });
}

/* What the cords that are brought reach, against what the plan reckons with. */
static void
add_length (OxEstimate *self, const OxCordLine *line)
{
  double planned = cord_length (self->plan->job);
  if (self->plan->job->outfit->n_cords == 0)
    return;
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_SUPPLY,
                                   .id = "cords-length",
                                   .label = g_strdup (_ ("Cords in series")),
                                   .unit = "m",
                                   .decimals = 1,
                                   .value = line->length,
                                   .verdict = line->length < planned - 1e-6 ? OX_VERDICT_WARN : OX_VERDICT_FINE,
                                   .assumption = g_strdup_printf (_ ("the plan reckons with %.1f m"), planned) });
}

/* What the thinnest cord may carry, where the table says. */
static void
add_carries (OxEstimate *self, const OxSupply *supply, const OxCordLine *line)
{
  double least = 0;
  const OxConductor *thinnest = NULL;
  for (guint i = 0; i < line->n; i++)
    {
      const OxConductor *row = nearest_conductor (line->parts[i].mm2);
      double carries = supply->phases == 3 ? row->amperes_3 : row->amperes_1;
      if (carries > 0 && (thinnest == NULL || carries < least))
        {
          least = carries;
          thinnest = row;
        }
    }
  if (thinnest == NULL)
    return;
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_SUPPLY,
                                   .id = "cord-carries",
                                   .label = g_strdup (_ ("The cord carries")),
                                   .unit = "A",
                                   .value = least,
                                   .verdict = supply->amperes > least ? OX_VERDICT_STOP : OX_VERDICT_FINE,
                                   .basis = thinnest->source,
                                   .assumption = g_strdup_printf (_ ("%s with %d live conductors; %s"), thinnest->id,
                                                                  supply->phases == 3 ? 3 : 2, _ (thinnest->source)) });
}

static char *
circuit_words (OxCircuitVerdict verdict, double amperes, double circuit)
{
  double share = ox_basis ("continuous-share"), hours = ox_basis ("continuous-hours");
  double limit = ox_supply_continuous_limit (circuit, share);
  switch (verdict)
    {
    case OX_CIRCUIT_OVERLOADED:
      return g_strdup_printf (_ ("%.0f A are more than the circuit of %.0f A carries"), amperes, circuit);
    case OX_CIRCUIT_SHORT:
      return g_strdup_printf (_ ("%.0f A on %.0f A: over the %.0f A for loads of %.0f h and more; keep below by the "
                                 "ammeter or take a larger "
                                 "circuit"),
                              amperes, circuit, limit, hours);
    case OX_CIRCUIT_FINE:
    default:
      return g_strdup_printf (_ ("%.0f A on %.0f A: up to %.0f A may be drawn for %.0f h and more"), amperes, circuit,
                              limit, hours);
    }
}

static void
add_circuit (OxEstimate *self, const OxSupply *supply)
{
  static const OxVerdict verdicts[] = { OX_VERDICT_FINE, OX_VERDICT_WARN, OX_VERDICT_STOP };
  double share = ox_basis ("continuous-share"), circuit = self->plan->job->outfit->circuit_a;
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_SUPPLY,
                                   .id = "circuit",
                                   .label = g_strdup (_ ("Least circuit")),
                                   .unit = "A",
                                   .decimals = 1,
                                   .value = ox_least_circuit (supply->amperes),
                                   .basis = "continuous-share",
                                   .assumption = g_strdup_printf (
                                       _ ("%.0f A for 3 h or longer take at most %.0f %% of a circuit: 20 A carry %.0f A"),
                                       supply->amperes, 100 * share, ox_supply_continuous_limit (20, share)) });
  if (circuit <= 0)
    return;
  OxCircuitVerdict verdict = ox_supply_judge_circuit (supply->amperes, circuit, share);
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_SUPPLY,
                                   .id = "circuit-load",
                                   .label = g_strdup (_ ("Load of the circuit")),
                                   .unit = "%",
                                   .decimals = 1,
                                   .value = 100 * supply->amperes / circuit,
                                   .verdict = verdicts[verdict],
                                   .basis = "continuous-share continuous-hours",
                                   .assumption = circuit_words (verdict, supply->amperes, circuit) });
}

void
ox_figures_supply (OxEstimate *self)
{
  const OxMachine *machine = self->plan->job->machine;
  const OxSupply supply = { machine->volts, machine->amperes, machine->phases };
  OxCordLine line = ox_cord_line_of (self->plan->job);
  if (machine->amperes <= 0 || machine->volts <= 0)
    return;
  if (line.length > 0)
    {
      add_drop (self, &supply, &line);
      add_longest (self, &supply, &line);
      add_length (self, &line);
      add_carries (self, &supply, &line);
    }
  add_circuit (self, &supply);
}
