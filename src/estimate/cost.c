/* Oxturn: estimate/cost
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/cost.h"
#include <math.h>
#include "base/words.h"
#include "estimate/basis.h"
#include "trade/dust.h"

#define DECIMALS 2
#define HUNDREDTHS 10000 /* of a percent in the whole */

typedef struct
{
  double crew, edge, edge_m, wheel, area;
} RoomWork;

static const struct
{
  const char *unit, *name;
} drivers[] = {
  [OX_COST_LABOUR_HOUR] = { "h", N_ ("Crew with the machine") },
  [OX_COST_EDGE_HOUR] = { "h", N_ ("Edge work by hand") },
  [OX_COST_MACHINE_HOUR] = { "h", N_ ("Machine") },
  [OX_COST_ABRASIVE_KG] = { "kg", N_ ("Abrasive") },
  [OX_COST_DUST_DRUM] = { "", N_ ("Drums of dust") },
  [OX_COST_WEAR_HOUR] = { "h", N_ ("Wear parts") },
  [OX_COST_AREA] = { "m2", N_ ("Floor") },
  [OX_COST_FIXED] = { "", N_ ("Fixed sum") },
  [OX_COST_EDGE_METRE] = { "m", N_ ("Edge work by length") },
};

const char *
ox_cost_driver_name (OxCostDriver driver)
{
  return _ (drivers[driver].name);
}

/* Hours and areas of each room, of @left those of what is left; edge work is hand work and no hours of the machine's
 * crew. */
static RoomWork *
work_of_rooms (const OxEstimate *estimate, gboolean left)
{
  const OxPlan *plan = estimate->plan;
  const GArray *pieces = (left ? estimate->left : estimate->work)->pieces;
  g_autofree double *areas = left ? ox_left_areas (plan, estimate->room_m2) : NULL;
  RoomWork *rooms = g_new0 (RoomWork, plan->job->n_rooms + 1);
  for (guint i = 0; i < pieces->len; i++)
    {
      const OxPiece *piece = &g_array_index (pieces, OxPiece, i);
      RoomWork *room = &rooms[piece->room];
      if (piece->kind == OX_PIECE_EDGE)
        room->edge += piece->minutes / 60;
      else
        room->crew += piece->minutes / 60;
      if (piece->kind == OX_PIECE_STRIP)
        room->wheel += (piece->minutes - piece->move_minutes - piece->start_minutes) / 60;
    }
  for (guint i = 0; i < plan->n_edges; i++)
    if (!left || plan->edges[i].done == 0)
      rooms[plan->edges[i].room].edge_m += plan->edges[i].length;
  for (guint r = 0; r < plan->job->n_rooms; r++)
    rooms[r].area = left ? areas[r] : estimate->room_m2[r];
  return rooms;
}

static double
room_quantity (const OxEstimate *estimate, OxCostDriver driver, const RoomWork *room)
{
  double hours = estimate->plan->totals.strip_hours;
  switch (driver)
    {
    case OX_COST_LABOUR_HOUR:
    case OX_COST_MACHINE_HOUR:
      return room->crew;
    case OX_COST_EDGE_HOUR:
      return room->edge;
    case OX_COST_EDGE_METRE:
      return room->edge_m;
    case OX_COST_WEAR_HOUR:
      return room->wheel;
    case OX_COST_AREA:
      return room->area;
    case OX_COST_ABRASIVE_KG:
      return hours > 0 ? estimate->used_kg * room->wheel / hours : 0;
    case OX_COST_DUST_DRUM:
    case OX_COST_FIXED:
    default:
      return 0;
    }
}

static double
whole_quantity (const OxEstimate *estimate, OxCostDriver driver)
{
  const OxFigure *drums = ox_estimate_find (estimate, "drums"), *around = ox_estimate_find (estimate, "around-hours");
  switch (driver)
    {
    case OX_COST_LABOUR_HOUR:
      return around->value;
    case OX_COST_DUST_DRUM:
      return drums->value;
    case OX_COST_FIXED:
      return 1;
    case OX_COST_MACHINE_HOUR:
    case OX_COST_EDGE_HOUR:
    case OX_COST_EDGE_METRE:
    case OX_COST_WEAR_HOUR:
    case OX_COST_AREA:
    case OX_COST_ABRASIVE_KG:
    default:
      return 0;
    }
}

static void
add_line (OxQuote *quote, const OxCostRate *rate, const char *room, double quantity)
{
  OxMoney amount = 0;
  if (round (quantity * 100) <= 0 || !ox_money_parse (rate->amount, &amount))
    return;
  const OxCostLine line = { .what = *rate->name != '\0' ? rate->name : ox_cost_driver_name (rate->per),
                            .room = room,
                            .quantity = quantity,
                            .decimals = DECIMALS,
                            .unit = drivers[rate->per].unit,
                            .rate = amount };
  g_array_append_val (quote->lines, line);
}

/* Whole drums for the share of the wheel's hours that is left, set-up and clean-up of the shifts that are left; what is
 * paid once is not to pay again. */
static double
whole_left (const OxEstimate *estimate, OxCostDriver driver, const RoomWork *rooms)
{
  double wheel = 0, hours = estimate->plan->totals.strip_hours;
  for (guint r = 0; r < estimate->plan->job->n_rooms; r++)
    wheel += rooms[r].wheel;
  if (driver == OX_COST_LABOUR_HOUR)
    return estimate->left->shifts->len * (estimate->rules.setup_min + estimate->rules.cleanup_min) / 60;
  if (driver != OX_COST_DUST_DRUM || hours <= 0)
    return 0;
  double volume = ox_dust_volume (estimate->dust_kg * wheel / hours, ox_basis ("dust-bulk"));
  return ox_dust_drums_to_order (ox_dust_drums (volume, ox_basis ("drum-litres"), ox_basis ("drum-fill")));
}

static OxQuote *
make_quote (const OxEstimate *estimate, gboolean left)
{
  const OxJob *job = estimate->plan->job;
  g_autofree RoomWork *rooms = work_of_rooms (estimate, left);
  OxQuote *quote = g_new0 (OxQuote, 1);
  quote->lines = g_array_new (FALSE, FALSE, sizeof (OxCostLine));
  for (guint i = 0; i < job->costs->n; i++)
    {
      const OxCostRate *rate = &job->costs->rates[i];
      for (guint r = 0; r < job->n_rooms; r++)
        add_line (quote, rate, job->rooms[r]->id, room_quantity (estimate, rate->per, &rooms[r]));
      add_line (quote, rate, "", left ? whole_left (estimate, rate->per, rooms) : whole_quantity (estimate, rate->per));
    }
  quote->valid = ox_cost_sum ((OxCostLine *) (gpointer) quote->lines->data, quote->lines->len,
                              (guint) lround (job->costs->contingency * HUNDREDTHS), &quote->sum);
  return quote;
}

OxQuote *
ox_quote_new (const OxEstimate *estimate)
{
  return make_quote (estimate, FALSE);
}

OxQuote *
ox_quote_left_new (const OxEstimate *estimate)
{
  return estimate->left != NULL ? make_quote (estimate, TRUE) : NULL;
}

void
ox_quote_free (OxQuote *quote)
{
  g_array_unref (quote->lines);
  g_free (quote);
}

char *
ox_cost_text (OxMoney amount)
{
  char *text = ox_money_text (amount), *point = strchr (text, '.');
  *point = *ox_words_decimal ();
  return text;
}
