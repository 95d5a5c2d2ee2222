/* Oxturn: file/job-write - a job as a tree of elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-write.h"
#include "base/number.h"
#include "file/job-known.h"
#include "file/job-words.h"
#include "geometry/wkt.h"
#include "file/read-traced.h"
#include "job/machine-fields.h"

#define LENGTH_DECIMALS 4
#define FIGURE_DECIMALS 6

static xmlNode *
add_element (xmlNode *parent, const char *name)
{
  return xmlNewChild (parent, parent->ns, BAD_CAST name, NULL);
}

static void
set_text (xmlNode *node, const char *key, const char *text)
{
  xmlNewProp (node, BAD_CAST key, BAD_CAST text);
}

/* Texts that are empty are not written. */
static void
set_text_if_any (xmlNode *node, const char *key, const char *text)
{
  if (*text)
    set_text (node, key, text);
}

static void
set_number (xmlNode *node, const char *key, double value, guint decimals)
{
  g_autofree char *text = ox_number_text (value, decimals);
  set_text (node, key, text);
}

/* Figures that are 0 for "not known" or "as elsewhere" are not written then. */
static void
set_figure_if_any (xmlNode *node, const char *key, double value)
{
  if (value != 0)
    set_number (node, key, value, FIGURE_DECIMALS);
}

static void
set_length (xmlNode *node, const char *key, double metres)
{
  set_number (node, key, metres, LENGTH_DECIMALS);
}

static void
set_place (xmlNode *node, OxPoint p)
{
  set_length (node, "x", p.x);
  set_length (node, "y", p.y);
}

static void
add_texts (xmlNode *root, OxTexts *texts)
{
  xmlNode *node = add_element (root, "texts");
  for (guint i = 0; i < OX_TEXT_FIELDS; i++)
    {
      const char *text = *ox_text_field_at (texts, i);
      if (*text)
        xmlNewTextChild (node, node->ns, BAD_CAST ox_text_fields[i].element, BAD_CAST text);
    }
}

static void
add_machine (xmlNode *root, const OxMachine *machine)
{
  xmlNode *node = add_element (root, "machine");
  set_text_if_any (node, "class", machine->class_id);
  set_text_if_any (node, "name", machine->name);
  guint n;
  const OxMachineField *fields = ox_machine_fields (&n);
  xmlNode *group = NULL;
  for (guint i = 0; i < n; i++)
    {
      if (!group || !xmlStrEqual (group->name, BAD_CAST fields[i].group))
        group = add_element (node, fields[i].group);
      set_number (group, fields[i].key, ox_machine_field_value (machine, &fields[i]), FIGURE_DECIMALS);
      if (g_str_equal (fields[i].key, "volts"))
        set_number (group, "phases", machine->phases, 0);
    }
  for (guint i = 0; i < machine->n_wear; i++)
    {
      xmlNode *wear = add_element (node, "wear");
      set_text (wear, "name", machine->wear[i].name);
      set_number (wear, "interval-h", machine->wear[i].interval_h, FIGURE_DECIMALS);
      set_number (wear, "run-h", machine->wear[i].run_h, FIGURE_DECIMALS);
      if (machine->wear[i].machine > 0)
        set_number (wear, "machine", machine->wear[i].machine, 0);
    }
}

static xmlNode *
add_item (xmlNode *root, const char *element, const char *id, const char *name)
{
  xmlNode *node = add_element (root, element);
  set_text (node, "id", id);
  set_text_if_any (node, "name", name);
  return node;
}

static void
merge_rest (xmlNode *node, const char *rest)
{
  if (rest)
    ox_known_merge (node, rest);
}

/* @sides: (nullable) */
static void
add_corners (xmlNode *node, const OxRing *ring, const OxSide *sides)
{
  for (guint i = 0; i < ring->n; i++)
    {
      xmlNode *corner = add_element (node, "corner");
      set_place (corner, ring->points[i]);
      if (sides && sides[i].kind != OX_SIDE_WALL)
        set_text (corner, "side", ox_words_side[sides[i].kind]);
      if (sides && sides[i].kind == OX_SIDE_DROP)
        set_length (corner, "keep-back", sides[i].keep_back);
    }
}

static void
add_room (xmlNode *root, const OxRoom *room)
{
  xmlNode *node = add_item (root, "room", room->id, room->name);
  set_text_if_any (node, "profile", room->profile);
  if (room->direction.kind == OX_DIRECTION_SIDE)
    set_number (node, "along-side", room->direction.side + 1.0, 0);
  if (room->direction.kind == OX_DIRECTION_ANGLE)
    set_number (node, "angle", room->direction.angle_deg, FIGURE_DECIMALS);
  if (room->coats != 1)
    set_number (node, "coats", room->coats, 0);
  if (room->coat_turn_deg != 90)
    set_number (node, "coat-turn", room->coat_turn_deg, FIGURE_DECIMALS);
  add_corners (node, room->ring, room->sides);
  merge_rest (node, room->extra);
}

static void
add_obstacle (xmlNode *root, const OxObstacle *obstacle)
{
  const OxShape *shape = &obstacle->shape;
  xmlNode *node = add_item (root, ox_words_obstacle[obstacle->kind], obstacle->id, obstacle->name);
  set_text (node, "shape", ox_words_shape[shape->kind]);
  if (shape->kind != OX_SHAPE_POLYGON)
    set_place (node, shape->centre);
  if (shape->kind == OX_SHAPE_CIRCLE)
    set_length (node, "radius", shape->radius);
  if (shape->kind == OX_SHAPE_RECTANGLE)
    {
      set_length (node, "width", shape->width);
      set_length (node, "depth", shape->depth);
      if (shape->angle_deg != 0)
        set_number (node, "angle", shape->angle_deg, FIGURE_DECIMALS);
    }
  if (obstacle->kind == OX_OBSTACLE_PIT)
    set_length (node, "keep-back", obstacle->keep_back);
  if (shape->kind == OX_SHAPE_POLYGON)
    add_corners (node, shape->ring, NULL);
  merge_rest (node, obstacle->extra);
}

static void
add_excluded (xmlNode *root, const OxExcluded *excluded)
{
  xmlNode *node = add_item (root, "excluded", excluded->id, excluded->name);
  add_corners (node, excluded->ring, NULL);
  merge_rest (node, excluded->extra);
}

static void
add_doorway (xmlNode *root, const OxDoorway *doorway)
{
  xmlNode *node = add_item (root, "doorway", doorway->id, doorway->name);
  set_length (node, "x1", doorway->a.x);
  set_length (node, "y1", doorway->a.y);
  set_length (node, "x2", doorway->b.x);
  set_length (node, "y2", doorway->b.y);
  set_length (node, "depth", doorway->depth);
  merge_rest (node, doorway->extra);
}

static void
add_joint (xmlNode *root, const OxJoint *joint)
{
  xmlNode *node = add_item (root, "joint", joint->id, joint->name);
  for (guint i = 0; i < joint->n; i++)
    set_place (add_element (node, "point"), joint->points[i]);
  merge_rest (node, joint->extra);
}

static void
add_station (xmlNode *root, const OxStation *station)
{
  xmlNode *node = add_item (root, "station", station->id, station->name);
  set_text (node, "kind", ox_words_station[station->kind]);
  set_place (node, station->at);
  if (station->length > 0)
    set_length (node, "length", station->length);
  merge_rest (node, station->extra);
}

static void
add_condition (xmlNode *root, const OxCondition *condition)
{
  xmlNode *node = add_item (root, "condition", condition->id, condition->name);
  set_figure_if_any (node, "speed", condition->speed_m_per_min);
  if (condition->coats > 0)
    set_number (node, "coats", condition->coats, 0);
  set_text_if_any (node, "profile", condition->profile);
  add_corners (node, condition->ring, NULL);
  merge_rest (node, condition->extra);
}

static void
add_traced (xmlNode *root, const OxTracedPlan *traced)
{
  xmlNode *node = add_item (root, "traced-plan", traced->id, traced->name);
  set_text (node, "kind", ox_words_traced[traced->kind]);
  if (traced->page != 1)
    set_number (node, "page", traced->page, 0);
  set_place (node, traced->middle);
  set_length (node, "width", traced->width);
  set_length (node, "depth", traced->depth);
  set_figure_if_any (node, "angle", traced->angle_deg);
  if (traced->strength != 1)
    set_number (node, "strength", traced->strength, FIGURE_DECIMALS);
  if (traced->locked)
    set_text (node, "locked", "yes");
  if (traced->hidden)
    set_text (node, "hidden", "yes");
  ox_write_traced_parts (node, traced->data);
  merge_rest (node, traced->extra);
}

static void
set_cage (xmlNode *node, const char *key, guint minutes)
{
  g_autofree char *clock = g_strdup_printf ("%u:%02u", minutes / 60, minutes % 60);
  if (minutes > 0)
    set_text (node, key, clock);
}

static void
add_trial (xmlNode *patch_node, const OxPatch *patch)
{
  xmlNode *node = add_element (patch_node, "trial");
  set_number (node, "left-mm", patch->left_mm, FIGURE_DECIMALS);
  set_figure_if_any (node, "middle-mm", patch->middle_mm);
  set_number (node, "right-mm", patch->right_mm, FIGURE_DECIMALS);
  set_cage (node, "cage", patch->cage_min);
  set_cage (node, "cage-to", patch->cage_to_min);
}

static void
add_patch (xmlNode *root, const OxPatch *patch)
{
  xmlNode *node = add_element (root, "patch");
  set_text (node, "id", patch->id);
  set_text_if_any (node, "date", patch->date);
  set_number (node, "speed", patch->speed_m_per_min, FIGURE_DECIMALS);
  set_figure_if_any (node, "flow-kg-min", patch->flow_kg_min);
  set_figure_if_any (node, "depth-mm", patch->depth_mm);
  if (patch->csp > 0)
    set_number (node, "csp", patch->csp, 0);
  set_figure_if_any (node, "volume-ml", patch->volume_ml);
  set_text_if_any (node, "note", patch->note);
  for (guint i = 0; i < patch->n_diameters; i++)
    set_number (add_element (node, "diameter"), "mm", patch->diameters_mm[i], FIGURE_DECIMALS);
  if (ox_patch_has_trial (patch))
    add_trial (node, patch);
}

static void
add_calendar (xmlNode *root, const OxCalendar *calendar)
{
  xmlNode *node = add_element (root, "calendar");
  g_autofree char *start = g_strdup_printf ("%02u:%02u", calendar->start_min / 60, calendar->start_min % 60);
  g_autoptr (GString) days = g_string_new (NULL);
  for (guint i = 0; ox_words_day[i]; i++)
    if (calendar->days & (1u << i))
      g_string_append_printf (days, "%s%s", days->len ? " " : "", ox_words_day[i]);
  set_text_if_any (node, "first-day", calendar->first_day);
  set_text (node, "start", start);
  set_number (node, "shift-h", calendar->shift_h, FIGURE_DECIMALS);
  set_number (node, "break-min", calendar->break_min, FIGURE_DECIMALS);
  set_number (node, "setup-min", calendar->setup_min, FIGURE_DECIMALS);
  set_number (node, "cleanup-min", calendar->cleanup_min, FIGURE_DECIMALS);
  set_number (node, "refill-min", calendar->refill_min, FIGURE_DECIMALS);
  set_number (node, "drum-change-min", calendar->drum_change_min, FIGURE_DECIMALS);
  set_number (node, "wear-check-min", calendar->wear_check_min, FIGURE_DECIMALS);
  set_number (node, "machines", calendar->machines, 0);
  set_text (node, "days", days->str);
  set_figure_if_any (node, "noise-db", calendar->noise_db);
  set_figure_if_any (node, "silica-machine", calendar->silica_machine);
  set_figure_if_any (node, "silica-hand", calendar->silica_hand);
}

static void
add_costs (xmlNode *root, const OxCosts *costs)
{
  xmlNode *node = add_element (root, "costs");
  set_text_if_any (node, "currency", costs->currency);
  set_text_if_any (node, "validity", costs->validity);
  set_number (node, "decimals", costs->decimals, 0);
  set_number (node, "contingency", costs->contingency, LENGTH_DECIMALS);
  for (guint i = 0; i < costs->n; i++)
    {
      xmlNode *rate = add_element (node, "rate");
      set_text (rate, "per", ox_words_cost[costs->rates[i].per]);
      set_text_if_any (rate, "name", costs->rates[i].name);
      set_text (rate, "amount", costs->rates[i].amount);
    }
}

static void
add_rates (xmlNode *root, OxRates rates)
{
  xmlNode *node = add_element (root, "rates");
  set_number (node, "edge-m2-per-hour", rates.edge_m2_per_hour, FIGURE_DECIMALS);
  set_figure_if_any (node, "edge-m-per-hour", rates.edge_m_per_hour);
}

static void
add_outfit (xmlNode *root, const OxOutfit *outfit)
{
  xmlNode *node = add_element (root, "outfit");
  set_text_if_any (node, "shot", outfit->shot);
  set_figure_if_any (node, "circuit", outfit->circuit_a);
  for (guint i = 0; i < outfit->n_cords; i++)
    {
      xmlNode *cord = add_element (node, "cord");
      set_number (cord, "length", outfit->cords[i].length, FIGURE_DECIMALS);
      set_number (cord, "mm2", outfit->cords[i].mm2, FIGURE_DECIMALS);
    }
}

static void
add_scope (xmlNode *root, const OxScope *scope)
{
  xmlNode *node = add_element (root, "scope");
  for (guint list = 0; list < OX_SCOPE_LISTS; list++)
    for (guint i = 0; i < scope->n_lines[list]; i++)
      {
        xmlNode *line = add_element (node, ox_words_scope_list[list]);
        set_text_if_any (line, "key", scope->lines[list][i].key);
        set_text_if_any (line, "text", scope->lines[list][i].text);
      }
  for (guint i = 0; i < scope->n_revisions; i++)
    {
      const OxRevision *revision = &scope->revisions[i];
      xmlNode *row = add_element (node, "revision");
      set_text (row, "mark", revision->mark);
      set_text_if_any (row, "date", revision->date);
      set_text_if_any (row, "author", revision->author);
      set_text_if_any (row, "text", revision->text);
      if (revision->after_sign_off)
        set_text (row, "after-sign-off", "true");
      set_text_if_any (row, "accepted-by", revision->accepted_by);
      set_text_if_any (row, "accepted-on", revision->accepted_on);
    }
  if (!ox_scope_is_signed (scope))
    return;
  xmlNode *signed_by = add_element (node, "sign-off");
  set_text_if_any (signed_by, "number", scope->sign_off.number);
  set_text_if_any (signed_by, "revision", scope->sign_off.revision);
  set_text (signed_by, "name", scope->sign_off.name);
  set_text_if_any (signed_by, "date", scope->sign_off.date);
}

static void
add_setup (xmlNode *root, const OxSheetSetup *setup)
{
  xmlNode *node = add_element (root, "sheets");
  set_text_if_any (node, "language", setup->language);
  set_text_if_any (node, "paper", setup->paper);
  set_text_if_any (node, "schedule-paper", setup->schedule_paper);
  set_text_if_any (node, "tiles", setup->tiles);
  set_figure_if_any (node, "scale", setup->scale);
  if (setup->orientation != OX_ORIENTATION_AUTO)
    set_text (node, "orientation", ox_words_orientation[setup->orientation]);
}

/* What stands at its default is not written, but where a newer version put something into it (@rest). */
static void
add_terms (xmlNode *root, const OxJob *job, GHashTable *rest)
{
  g_autoptr (OxCalendar) calendar = ox_calendar_default ();
  g_autoptr (OxCosts) costs = ox_costs_default ();
  g_autoptr (OxOutfit) outfit = ox_outfit_default ();
  if (!ox_calendar_equal (job->calendar, calendar) || g_hash_table_contains (rest, "calendar"))
    add_calendar (root, job->calendar);
  if (!ox_costs_equal (job->costs, costs) || g_hash_table_contains (rest, "costs"))
    add_costs (root, job->costs);
  if (!ox_outfit_equal (job->outfit, outfit) || g_hash_table_contains (rest, "outfit"))
    add_outfit (root, job->outfit);
  for (guint i = 0; i < job->patches->n; i++)
    add_patch (root, &job->patches->items[i]);
  g_autoptr (OxScope) scope = ox_scope_default ();
  g_autoptr (OxSheetSetup) setup = ox_sheet_setup_new (&(OxSheetSetup){ .language = NULL });
  if (!ox_scope_equal (job->scope, scope) || g_hash_table_contains (rest, "scope"))
    add_scope (root, job->scope);
  if (!ox_sheet_setup_equal (job->setup, setup) || g_hash_table_contains (rest, "sheets"))
    add_setup (root, job->setup);
}

static void
add_day (xmlNode *record, const OxRecordDay *day)
{
  xmlNode *node = add_element (record, "day");
  set_text (node, "date", day->date);
  if (day->machine > 1)
    set_number (node, "machine", day->machine, 0);
  if (day->meter_start_h >= 0)
    set_number (node, "meter-start", day->meter_start_h, FIGURE_DECIMALS);
  if (day->meter_end_h >= 0)
    set_number (node, "meter-end", day->meter_end_h, FIGURE_DECIMALS);
  set_text_if_any (node, "notes", day->notes);
}

static void
add_done_strip (xmlNode *record, const OxDoneStrip *strip)
{
  xmlNode *node = add_element (record, "strip");
  set_text (node, "date", strip->date);
  set_text_if_any (node, "room", strip->room);
  if (strip->crosswise)
    set_text (node, "kind", ox_words_done[strip->crosswise]);
  if (strip->coat != 1)
    set_number (node, "coat", strip->coat, 0);
  set_length (node, "x1", strip->a.x);
  set_length (node, "y1", strip->a.y);
  set_length (node, "x2", strip->b.x);
  set_length (node, "y2", strip->b.y);
  set_length (node, "width", strip->width);
  if (strip->kept > 0)
    set_number (node, "kept", strip->kept, 0);
  if (strip->csp > 0)
    set_number (node, "csp", strip->csp, 0);
  set_figure_if_any (node, "depth-mm", strip->depth_mm);
  set_text_if_any (node, "note", strip->note);
}

static void
add_done_edge (xmlNode *record, const OxDoneEdge *edge)
{
  xmlNode *node = add_element (record, "edge");
  g_autoptr (GString) wkt = g_string_new (NULL);
  ox_wkt_append_rings (wkt, edge->rings, edge->n_rings, LENGTH_DECIMALS);
  set_text (node, "date", edge->date);
  set_text_if_any (node, "room", edge->room);
  set_text (node, "wkt", wkt->str);
  set_text_if_any (node, "note", edge->note);
}

static void
add_record (xmlNode *root, const OxRecord *record, GHashTable *rest)
{
  if (ox_record_is_empty (record) && !g_hash_table_contains (rest, "record"))
    return;
  xmlNode *node = add_element (root, "record");
  for (guint i = 0; i < record->n_days; i++)
    add_day (node, &record->days[i]);
  for (guint i = 0; i < record->n_strips; i++)
    add_done_strip (node, &record->strips[i]);
  for (guint i = 0; i < record->n_edges; i++)
    add_done_edge (node, &record->edges[i]);
}

static void
add_items (xmlNode *root, const OxJob *job)
{
  for (guint i = 0; i < job->n_rooms; i++)
    add_room (root, job->rooms[i]);
  for (guint i = 0; i < job->n_obstacles; i++)
    add_obstacle (root, job->obstacles[i]);
  for (guint i = 0; i < job->n_excluded; i++)
    add_excluded (root, job->excluded[i]);
  for (guint i = 0; i < job->n_doorways; i++)
    add_doorway (root, job->doorways[i]);
  for (guint i = 0; i < job->n_joints; i++)
    add_joint (root, job->joints[i]);
  for (guint i = 0; i < job->n_stations; i++)
    add_station (root, job->stations[i]);
  for (guint i = 0; i < job->n_conditions; i++)
    add_condition (root, job->conditions[i]);
  for (guint i = 0; i < job->n_traced; i++)
    add_traced (root, job->traced[i]);
}

xmlDoc *
ox_job_write_tree (const OxJob *job)
{
  xmlDoc *doc = xmlNewDoc (BAD_CAST "1.0");
  g_autoptr (GHashTable) rest = ox_known_rest_names (job->extra);
  xmlNode *root = xmlNewDocNode (doc, NULL, BAD_CAST "job", NULL);
  xmlSetNs (root, xmlNewNs (root, BAD_CAST OX_JOB_NAMESPACE, NULL));
  xmlDocSetRootElement (doc, root);
  set_text (root, "version", job->version_minor_note ? job->version_minor_note : OX_JOB_VERSION);
  set_text (root, "units", ox_words_units[job->units]);
  set_number (root, "north", job->north_deg, FIGURE_DECIMALS);
  add_texts (root, job->texts);
  add_machine (root, job->machine);
  add_rates (root, job->rates);
  add_terms (root, job, rest);
  add_items (root, job);
  add_record (root, job->record, rest);
  merge_rest (root, job->extra);
  return doc;
}
