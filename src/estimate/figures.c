/* Oxturn: estimate/figures - floor, hours, profile, abrasive, dust.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/words.h"
#include "estimate/basis.h"
#include "estimate/figures-private.h"
#include "estimate/patches.h"
#include "estimate/settings.h"
#include "trade/abrasive.h"
#include "trade/dust.h"
#include "trade/edge.h"
#include "trade/profile.h"
#include <stdlib.h>

/* --- Floor --- */

/* what areas and lengths rest on, for all rooms together and for each */
static const char *
target_text (void)
{
  return _ ("as drawn, less what stands on it or is left out");
}

static const char *
blasted_text (void)
{
  return _ ("counted once where strips overlap");
}

static const char *
edge_text (void)
{
  return _ ("what no strip reaches");
}

static const char *
edge_length_text (void)
{
  return _ ("along wall, obstacle or drop; half the outline where it touches none");
}

static void
add_room (OxEstimate *self, guint room)
{
  const OxPlan *plan = self->plan;
  const char *id = plan->job->rooms[room]->id;
  double area = 0, length = 0, target = self->room_m2[room];
  for (guint i = 0; i < plan->n_edges; i++)
    if (plan->edges[i].room == room)
      {
        area += plan->edges[i].area;
        length += plan->edges[i].length;
      }
  OxFigure figure = { .group = OX_FIGURE_FLOOR, .room = id, .unit = "m2", .decimals = 1 };
  const struct
  {
    const char *id, *label, *unit;
    double value;
    const char *assumption;
  } rows[] = {
    { "room-target", _ ("To be prepared"), "m2", target, target_text () },
    { "room-blasted", _ ("Blasted"), "m2", MAX (target - area, 0), blasted_text () },
    { "room-edge", _ ("Edge work"), "m2", area, edge_text () },
    { "room-edge-length", _ ("Edge work, length"), "m", length, edge_length_text () },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      figure.id = rows[i].id;
      figure.label = g_strdup_printf ("%s: %s", ox_room_title (plan->job->rooms[room]), rows[i].label);
      figure.unit = rows[i].unit;
      figure.value = rows[i].value;
      figure.assumption = g_strdup (rows[i].assumption);
      ox_figure_add (self, figure);
    }
}

void
ox_figures_floor (OxEstimate *self)
{
  const OxTotals *t = &self->plan->totals;
  double length = 0;
  for (guint i = 0; i < self->plan->n_edges; i++)
    length += self->plan->edges[i].length;
  const struct
  {
    const char *id, *label, *unit;
    double value;
    const char *assumption;
  } rows[] = {
    { "target", _ ("To be prepared"), "m2", t->target_m2, target_text () },
    { "blasted", _ ("Blasted"), "m2", t->blasted_m2, blasted_text () },
    { "edge", _ ("Edge work"), "m2", t->edge_m2, edge_text () },
    { "edge-length", _ ("Edge work, length"), "m", length, edge_length_text () },
    { "coats", _ ("Blasted, each coat counted"), "m2", t->coats_m2, _ ("each coat by itself") },
    { "strip-length", _ ("Strips, length"), "m", t->strip_m, _ ("the valve is open") },
    { "move-length", _ ("Moves, length"), "m", t->move_m, _ ("the valve is closed") },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (self->plan->n_coats > 1 || !g_str_equal (rows[i].id, "coats"))
      ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_FLOOR,
                                       .id = rows[i].id,
                                       .label = g_strdup (rows[i].label),
                                       .unit = rows[i].unit,
                                       .value = rows[i].value,
                                       .decimals = 1,
                                       .assumption = g_strdup (rows[i].assumption) });
  for (guint room = 0; self->plan->job->n_rooms > 1 && room < self->plan->job->n_rooms; room++)
    add_room (self, room);
}

/* --- Hours --- */

static void
add_hours (OxEstimate *self, const char *id, const char *label, double minutes, char *assumption)
{
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_TIME,
                                   .id = id,
                                   .label = g_strdup (label),
                                   .unit = "h",
                                   .value = minutes / 60,
                                   .decimals = 2,
                                   .assumption = assumption });
}

/* What the hours of strips rest on. */
static char *
speeds_text (const OxPlan *plan)
{
  double slowest = plan->job->machine->travel_speed, fastest = slowest;
  for (guint i = 0; i < plan->n_strips; i++)
    for (guint k = 0; k < MAX (plan->strips[i].n_paces, 1); k++)
      {
        double speed
            = plan->strips[i].n_paces > 0 ? plan->paces[plan->strips[i].pace + k].speed : plan->strips[i].speed;
        slowest = MIN (slowest, speed);
        fastest = MAX (fastest, speed);
      }
  return slowest < fastest ? g_strdup_printf (_ ("at %.1f to %.1f m/min, as condition areas ask"), slowest, fastest)
                           : g_strdup_printf (_ ("at %.1f m/min"), slowest);
}

/* Where the job has no rate by length, the hours that a usual one would give stand beside it. */
static void
add_edge_hours (OxEstimate *self, double minutes)
{
  const OxRates *rates = &self->plan->job->rates;
  const OxFigure *length = ox_estimate_find (self, "edge-length");
  add_hours (self, "edge-hours", _ ("Edge work by hand"), minutes,
             rates->edge_m_per_hour > 0
                 ? g_strdup_printf (_ ("up to %.2f m wide at %.1f m/h, wider at %.1f m²/h, by the machine's crew"),
                                    ox_basis ("edge-narrow"), rates->edge_m_per_hour, rates->edge_m2_per_hour)
                 : g_strdup_printf (_ ("at %.1f m²/h, by the machine's crew"), rates->edge_m2_per_hour));
  const OxEdgeRates usual = { rates->edge_m2_per_hour, ox_basis ("edge-m-per-hour"), G_MAXDOUBLE };
  if (rates->edge_m_per_hour <= 0)
    add_hours (self, "edge-hours-by-length", _ ("For comparison: edge work by length"), ox_edge_hours (&usual, 0, length->value) * 60,
               ox_basis_note ("edge-m-per-hour"));
}

static char *
shifts_assumption (const OxEstimate *self)
{
  if (!self->work->full)
    return g_strdup (_ ("breaks, set-up and clean-up leave no time to work"));
  if (self->work->endless)
    return g_strdup_printf (_ ("the edge work alone takes more than %d of them; look at its rate"),
                            OX_WORK_SHIFTS_MOST);
  double hours = self->rules.shift_min / 60;
  guint n = self->rules.machines;
  return n > 1 ? g_strdup_printf (ox_words_count ("of %.1f h, %u machine at work", "of %.1f h, %u machines at work together", n), hours, n)
               : g_strdup_printf (_ ("of %.1f h"), hours);
}

/* What is left where part of the plan is done; the whole stays beside it, to be held against what was needed. */
static void
add_left (OxEstimate *self)
{
  const OxWork *left = self->left;
  const OxShift *shifts = (const OxShift *) (gconstpointer) left->shifts->data;
  double minutes = left->shifts->len * (self->rules.setup_min + self->rules.cleanup_min);
  guint strips = 0;
  for (guint i = 0; i < self->plan->n_strips; i++)
    strips += self->plan->strips[i].done == 0;
  for (guint i = 0; i < left->pieces->len; i++)
    minutes += g_array_index (left->pieces, OxPiece, i).minutes;
  add_hours (self, "left-hours", _ ("Left to do, all hours of the crew"), minutes, g_strdup (_ ("by the record")));
  gboolean dated = left->shifts->len > 0 && *shifts->day != '\0';
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_TIME,
                                   .id = "left-shifts",
                                   .label = g_strdup (_ ("Left to do, shifts")),
                                   .unit = "",
                                   .value = left->n_shifts,
                                   .verdict = left->full && !left->endless ? OX_VERDICT_NONE : OX_VERDICT_STOP,
                                   .assumption = dated ? g_strdup_printf (_ ("%u of %u strips to do; from %s to %s"), strips, self->plan->n_strips, shifts->day,
                                                                          shifts[left->shifts->len - 1].day)
                                                       : g_strdup_printf (_ ("%u of %u strips to do"), strips, self->plan->n_strips) });
}

/* Each kind of work over all shifts; with no shift to put it in, only what the plan says. */
void
ox_figures_time (OxEstimate *self)
{
  const OxMachine *machine = self->plan->job->machine;
  double kinds[OX_N_PIECE_KINDS] = { 0 }, blast = 0, move = 0, start = 0;
  for (guint i = 0; i < self->work->shifts->len; i++)
    {
      const OxShift *shift = &g_array_index (self->work->shifts, OxShift, i);
      for (guint k = 0; k < OX_N_PIECE_KINDS; k++)
        kinds[k] += shift->minutes[k];
      blast += shift->blast_minutes;
      move += shift->move_minutes;
      start += shift->start_minutes;
    }
  double around = self->work->shifts->len * (self->rules.setup_min + self->rules.cleanup_min);
  add_hours (self, "blast-hours", _ ("Strips"), blast, speeds_text (self->plan));
  add_hours (self, "start-hours", _ ("Starts"), start, g_strdup_printf (_ ("%.0f s each"), machine->start_s));
  add_hours (self, "move-hours", _ ("Moves"), move,
             g_strdup_printf (_ ("walking at %.0f m/min, %.0f s for a swing"), machine->walk_speed, machine->swing_s));
  add_hours (self, "refill-hours", _ ("Topping up the hopper"), kinds[OX_PIECE_REFILL],
             g_strdup_printf (_ ("%.0f min each, before %.0f %% of the hopper are missing"), self->rules.refill_min, 100 * ox_basis ("hopper-usable")));
  add_hours (self, "drum-hours", _ ("Changing the drum"), kinds[OX_PIECE_DRUM],
             g_strdup_printf (_ ("%.0f min each"), self->rules.drum_change_min));
  add_hours (self, "wear-hours", _ ("Wear checks"), kinds[OX_PIECE_WEAR],
             g_strdup_printf (_ ("%.0f min each"), self->rules.wear_check_min));
  add_edge_hours (self, kinds[OX_PIECE_EDGE]);
  add_hours (self, "around-hours", _ ("Setting up and cleaning up"), around,
             g_strdup_printf (_ ("%.0f and %.0f min a shift"), self->rules.setup_min, self->rules.cleanup_min));
  double all = blast + start + move + around;
  for (guint k = OX_PIECE_EDGE; k < OX_N_PIECE_KINDS; k++)
    all += kinds[k];
  add_hours (self, "crew-hours", _ ("All hours of the crew"), all,
             g_strdup_printf (_ ("%.0f min of breaks a shift come on top"), self->rules.break_min));
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_TIME,
                                   .id = "shifts",
                                   .label = g_strdup (_ ("Shifts")),
                                   .unit = "",
                                   .value = self->work->n_shifts,
                                   .verdict = self->work->full && !self->work->endless ? OX_VERDICT_NONE : OX_VERDICT_STOP,
                                   .assumption = shifts_assumption (self) });
  if (self->left != NULL)
    add_left (self);
}

/* --- Profile and dose --- */

static void
add_asked (OxEstimate *self, const OxRoom *room)
{
  int low, high;
  if (!ox_basis_csp (room->profile, &low, &high))
    return;
  const OxProfileMethod *shot = ox_profile_find_method ("shot");
  int hand = (int) ox_basis ("edge-csp");
  gboolean reached = low <= shot->csp_high && high >= shot->csp_low;
  gboolean edges = low <= hand;
  ox_figure_add (
      self,
      (OxFigure){
          .group = OX_FIGURE_PROFILE,
          .id = "profile-asked",
          .room = room->id,
          .label = g_strdup_printf (_ ("%s: CSP asked for"), ox_room_title (room)),
          .unit = "",
          .value = low,
          .verdict = !reached ? OX_VERDICT_STOP
                     : edges  ? OX_VERDICT_FINE
                              : OX_VERDICT_WARN,
          .basis = shot->source,
          .assumption
          = !reached ? g_strdup_printf (_ ("shot blasting reaches CSP %d to %d"), shot->csp_low, shot->csp_high)
            : edges  ? g_strdup (_ ("within reach of machine and hand tools"))
                     : g_strdup_printf (_ ("edge work with a grinder reaches CSP %d: agree on the edges or list them "
                                            "as an exclusion"),
                                        hand) });
}

/* The depth wanted is the one read where a patch came out at @csp: geometric mean of those; 0 when there is none. */
static double
wanted_depth (const OxPatches *patches, int csp)
{
  double logs = 0;
  guint n = 0;
  for (guint i = 0; i < patches->n; i++)
    if ((int) patches->items[i].csp == csp && ox_patch_depth (&patches->items[i]) > 0)
      {
        logs += log (ox_patch_depth (&patches->items[i]));
        n++;
      }
  return n > 0 ? exp (logs / n) : 0;
}

static void
add_depth (OxEstimate *self, const OxProfileFit *fit, guint n)
{
  double speed = self->plan->job->machine->travel_speed;
  gboolean tried = ox_profile_is_tried (fit, speed);
  g_autofree char *spread = fit->spread > 0 ? g_strdup_printf (_ ("they lie within a factor of %.2f"), fit->spread)
                                            : g_strdup (_ ("too few to tell how far they spread"));
  ox_figure_add (self,
                 (OxFigure){ .group = OX_FIGURE_PROFILE,
                             .id = "depth",
                             .label = g_strdup (_ ("Texture depth")),
                             .unit = "mm",
                             .decimals = 2,
                             .value = ox_profile_depth (fit, speed),
                             .verdict = tried ? OX_VERDICT_FINE : OX_VERDICT_WARN,
                             .basis = "patches",
                             .assumption
                             = tried ? g_strdup_printf (_ ("at %.1f m/min, from %u test patches; %s"), speed, n, spread)
                                     : g_strdup_printf (_ ("%.1f m/min lies outside the %.1f to %.1f m/min tried; %s"),
                                                        speed, fit->slowest, fit->fastest, spread) });
}

static void
add_patches (OxEstimate *self)
{
  const OxPatches *patches = self->plan->job->patches;
  OxProfileFit fit;
  guint n;
  int low, high;
  if (ox_patches_fit (patches, &fit, &n) != OX_FIT_GOOD)
    return;
  add_depth (self, &fit, n);
  for (guint i = 0; i < self->plan->job->n_rooms; i++)
    {
      const OxRoom *room = self->plan->job->rooms[i];
      double depth = ox_basis_csp (room->profile, &low, &high) ? wanted_depth (patches, low) : 0;
      if (depth <= 0)
        continue;
      double speed = ox_profile_speed (&fit, depth);
      gboolean inside = ox_profile_is_tried (&fit, speed);
      ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_PROFILE,
                                       .id = "speed-wanted",
                                       .room = room->id,
                                       .label = g_strdup_printf (_ ("%s: walking speed for it"), ox_room_title (room)),
                                       .unit = "m/min",
                                       .decimals = 1,
                                       .value = speed,
                                       .verdict = inside ? OX_VERDICT_FINE : OX_VERDICT_WARN,
                                       .basis = "patches",
                                       .assumption = g_strdup_printf (
                                           _ ("%.2f mm, as read on patches of CSP %d; tried from %.1f to %.1f m/min"),
                                           depth, low, fit.slowest, fit.fastest) });
    }
}

/* The dose of each coat in condition areas that are walked at a speed of their own. */
static void
add_area_doses (OxEstimate *self)
{
  const OxJob *job = self->plan->job;
  for (guint i = 0; i < job->n_conditions; i++)
    {
      const OxCondition *area = job->conditions[i];
      if (area->speed_m_per_min <= 0)
        continue;
      ox_figure_add (
          self, (OxFigure){ .group = OX_FIGURE_PROFILE,
                            .id = "dose-area",
                            .room = area->id,
                            .label = g_strdup_printf (_ ("%s: dose of a coat"), *area->name ? area->name : area->id),
                            .unit = "kg/m2",
                            .value = ox_profile_dose (job->machine->flow_kg_min, job->machine->blast_width,
                                                      area->speed_m_per_min),
                            .decimals = 1,
                            .assumption = g_strdup_printf (_ ("%.0f kg/min at %.1f m/min; calibrate on a test patch"),
                                                           job->machine->flow_kg_min, area->speed_m_per_min) });
    }
}

/* Of the last pattern trial. */
static void
add_balance (OxEstimate *self)
{
  const OxPatch *patch = ox_patches_trial (self->plan->job->patches);
  if (!patch)
    return;
  double balance = ox_patch_balance (patch);
  g_autofree char *advice = ox_patch_advice_text (patch);
  ox_figure_add (self,
                 (OxFigure){ .group = OX_FIGURE_PROFILE,
                             .id = "pattern-balance",
                             .label = g_strdup (_ ("Balance of the pattern")),
                             .unit = "%",
                             .value = balance,
                             .decimals = 1,
                             .verdict = fabs (balance) > ox_basis ("cage-even") ? OX_VERDICT_WARN : OX_VERDICT_FINE,
                             .basis = "cage-even",
                             .assumption = g_strdup_printf (_ ("pattern trial of %s; %s"), patch->id, advice) });
}

void
ox_figures_profile (OxEstimate *self)
{
  static const char *const ids[] = { "floor-none", "floor-once", "floor-twice", "floor-more" };
  const char *labels[] = { _ ("Floor without a strip"), _ ("Floor with one strip"), _ ("Floor with two strips"),
                           _ ("Floor with three or more") };
  const OxMachine *machine = self->plan->job->machine;
  for (guint i = 0; i < self->plan->job->n_rooms; i++)
    add_asked (self, self->plan->job->rooms[i]);
  add_patches (self);
  add_balance (self);
  ox_figure_add (self,
                 (OxFigure){ .group = OX_FIGURE_PROFILE,
                             .id = "dose",
                             .label = g_strdup (_ ("Dose under the pattern")),
                             .unit = "kg/m2",
                             .value = self->shot_dose,
                             .decimals = 1,
                             .assumption = g_strdup_printf (_ ("%.0f kg/min at %.1f m/min; calibrate on a test patch"),
                                                            machine->flow_kg_min, machine->travel_speed) });
  add_area_doses (self);
  double target = 1e-9;
  for (guint k = 0; k < OX_DOSE_LEVELS; k++)
    target += self->dose.area[k];
  for (guint k = 0; k < OX_DOSE_LEVELS; k++)
    ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_PROFILE,
                                     .id = ids[k],
                                     .label = g_strdup (labels[k]),
                                     .unit = "%",
                                     .value = 100 * self->dose.area[k] / target,
                                     .decimals = 1,
                                     .assumption = g_strdup_printf (_ ("to within %.2f points"),
                                                                    100 * self->dose.error_m2 / target) });
}

/* --- Abrasive --- */

/* The size that the job names, where the table knows it, against the profiles that its rooms ask for. */
static void
add_shot (OxEstimate *self)
{
  const OxJob *job = self->plan->job;
  const OxShotSize *size = ox_abrasive_find_size (job->outfit->shot);
  int least, most;
  if (size == NULL)
    return;
  gboolean usual = !ox_basis_csp_asked (job, &least, &most)
                   || (size->usual_csp_low <= least && most <= size->usual_csp_high);
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_ABRASIVE,
                                   .id = "shot-opening",
                                   .label = g_strdup_printf (_ ("%s, nominal opening"), size->id),
                                   .unit = "mm",
                                   .decimals = 2,
                                   .value = ox_abrasive_opening_mm ((guint) atoi (size->id + 1)),
                                   .verdict = usual ? OX_VERDICT_FINE : OX_VERDICT_WARN,
                                   .basis = size->source,
                                   .assumption = g_strdup_printf (
                                       _ ("usual for CSP %d to %d, common practice; a test patch decides"),
                                       size->usual_csp_low, size->usual_csp_high) });
}

void
ox_figures_abrasive (OxEstimate *self)
{
  const OxMachine *machine = self->plan->job->machine;
  double area = MAX (self->plan->totals.blasted_m2, 1e-9);
  const OxAbrasiveOrder order
      = { machine->hopper_kg, area, self->used_kg / area, ox_basis ("abrasive-contingency"), ox_basis ("bag") };
  add_shot (self);
  g_autofree char *bag = ox_basis_note ("bag"), *bulk = ox_basis_note ("shot-bulk");
  g_autofree char *litres = ox_setting_litres_text (machine->hopper_kg);
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_ABRASIVE,
                                   .id = "abrasive-charge",
                                   .label = g_strdup (_ ("Filling of the machine")),
                                   .unit = "kg",
                                   .value = machine->hopper_kg,
                                   .decimals = 1,
                                   .assumption = g_strdup_printf (_ ("the machine's hopper; about %s by the bucket, %s"), litres, bulk) });
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_ABRASIVE,
                                   .id = "abrasive-used",
                                   .label = g_strdup (_ ("Used up")),
                                   .unit = "kg",
                                   .value = self->used_kg,
                                   .decimals = 1,
                                   .assumption = g_strdup_printf (_ ("%.2f %% of what is thrown is lost or broken"),
                                                                  100 * machine->loss_share) });
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_ABRASIVE,
                                   .id = "abrasive-bags",
                                   .label = g_strdup (_ ("Bags to bring")),
                                   .unit = "",
                                   .value = ox_abrasive_bags (&order),
                                   .basis = "abrasive-contingency bag",
                                   .assumption = g_strdup_printf (_ ("bags of %s; %.0f %% on top (%s)"), bag, 100 * order.contingency,
                                                                  _ (ox_defaults_get ("abrasive-contingency")->source)) });
}

/* --- Dust --- */

void
ox_figures_dust (OxEstimate *self)
{
  double volume = ox_dust_volume (self->dust_kg, ox_basis ("dust-bulk"));
  double drums = ox_dust_drums (volume, ox_basis ("drum-litres"), ox_basis ("drum-fill"));
  double most = MIN (self->rules.drum_kg, self->dust_kg), carry = ox_basis ("carry-limit");
  g_autofree char *density = ox_basis_note ("concrete-density");
  g_autofree char *drum = ox_basis_note ("drum-litres");
  ox_figure_add (self,
                 (OxFigure){ .group = OX_FIGURE_DUST,
                             .id = "dust",
                             .label = g_strdup (_ ("Dust")),
                             .unit = "kg",
                             .value = self->dust_kg,
                             .decimals = 1,
                             .basis = "concrete-density shot-cycles",
                             .assumption = g_strdup_printf (_ ("%.2f mm taken off, common practice; %s; broken shot"),
                                                            self->removed_mm, density) });
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_DUST,
                                   .id = "drums",
                                   .label = g_strdup (_ ("Drums")),
                                   .unit = "",
                                   .value = ox_dust_drums_to_order (drums),
                                   .basis = "dust-bulk drum-litres drum-fill",
                                   .assumption = g_strdup_printf (_ ("%.2f drums of %s, filled to %.0f %%"), drums,
                                                                  drum, 100 * ox_basis ("drum-fill")) });
  ox_figure_add (self, (OxFigure){ .group = OX_FIGURE_DUST,
                                   .id = "drum-mass",
                                   .label = g_strdup (_ ("Heaviest drum, without itself")),
                                   .unit = "kg",
                                   .value = most,
                                   .verdict = most > carry ? OX_VERDICT_WARN : OX_VERDICT_FINE,
                                   .basis = "dust-bulk drum-fill carry-limit",
                                   .assumption = g_strdup_printf (_ ("one person carries %.0f kg"), carry) });
}
