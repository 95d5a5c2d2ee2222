/* Oxturn: sheets/numbers - names, tags, numbers and arrows, as far as there is room for them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every label is a candidate with a rank. Ranks are placed one after another, from the smallest scale to the largest: a
 * label appears at the first scale at which it stands clear of all that came before it, and stays from there on.
 */
#include "drawing/clip.h"
#include "drawing/text.h"
#include "sheets/measure.h"
#include "sheets/picture.h"
#include <string.h>

#define NUMBER_GROUND_MM 0.4
#define CLEAR_MM 0.25 /* above and below a label, to the next one */
#define ARROW_MM 2.2
#define FLAG_MM 6.0
#define ENTRY_MM 1.2 /* from a match line to the number of a strip that crosses it */
/* Ends of strips lie on the grid: a short upright one may lean by so much (radians) and is still read from the right as all others. */
#define UPRIGHT 1e-3
#define NAME_MM 2.5
#define LEADS 16        /* directions of leaders */
#define LEAD_OFF_MM 0.8 /* from its strip, where a leader may pass what stands there */
#define MOST_SHARE 0.6
#define STEP_MM 1.5 /* by which a number moves along its strip, */
#define STEPS 6     /* fewer times than this, before it moves farther: past a flag or a mark */
#define SMALLEST_MM_PER_M 0.5
#define LARGEST_MM_PER_M 400.0

/* Ranks of strips whose number takes part in the rule "first, last, those of each field, every tenth, every fifth,
 * all". */
typedef enum
{
  RANK_NAME,
  RANK_FIRST_LAST,
  RANK_TAG,
  RANK_ENDS, /* first and last strip of a field */
  RANK_PACE, /* walking speeds */
  RANK_TENTH,
  RANK_FIFTH,
  RANK_ALL,
  N_RANKS
} Rank;

typedef enum
{
  LABEL_TEXT,
  LABEL_ARROW
} LabelKind;

typedef struct
{
  LabelKind kind;
  Rank rank;
  const char *layer;
  char *id, *text;
  OxTextLook look;
  OxStyle arrow_style;
  OxLabelBox box;
  OxPoint slide_m;   /* how far along its strip it may stand from its place */
  OxPoint strip_m;   /* how far a number that is left out of a field that shows its numbers may slide after all */
  gboolean may_lead; /* it may stand off its strip, at the end of a leader */
  gboolean leads;    /* it does */
  OxPoint lead_from;
  OxLabelBox home;       /* where it would stand with nothing else there: from there it moves anew at each scale */
  double sway_m;         /* how far it may stand from its place, up, down or to the sides */
  double room_m;         /* floor along the label, that it must not be longer than; 0: any */
  double from_mm;        /* scale at which it was placed */
  double least_mm_per_m; /* not shown below this scale even where there is room */
  gboolean placed;
  guint field;          /* strips of a room in one direction: they show their numbers together */
  guint index;          /* place in the list, so that sorting keeps the order */
  gboolean field_shown; /* of the first of its rank and field: whether numbers have appeared */
} Candidate;

/* candidates of one rank and field */
typedef struct
{
  Candidate *candidates;
  guint n;
} Field;

static void
clear_candidate (gpointer data)
{
  Candidate *candidate = data;
  g_free (candidate->id);
  g_free (candidate->text);
}

static OxBox
text_box (const OxTextLook *look, const char *text)
{
  OxElement element = { .kind = OX_ELEMENT_TEXT };
  element.text.text = text;
  element.text.height_mm = look->height_mm;
  element.text.align = look->align;
  element.text.centred = look->centred;
  element.text.bold = look->bold;
  element.text.ground_mm = look->ground_mm;
  element.text.flat = look->flat;
  OxPoint corners[4];
  ox_element_text_corners (&element, 1, corners);
  return (OxBox){ corners[0].x, corners[0].y - CLEAR_MM, corners[2].x, corners[2].y + CLEAR_MM };
}

static void
add_text (GArray *candidates, Candidate candidate, const char *text, OxPoint at)
{
  candidate.kind = LABEL_TEXT;
  candidate.text = g_strdup (text);
  candidate.box = (OxLabelBox){ at, candidate.look.angle, text_box (&candidate.look, text) };
  g_array_append_val (candidates, candidate);
}

static Rank
strip_rank (const OxPlan *plan, const OxStrip *strip)
{
  guint i = strip->order - 1;
  if (i == 0 || i + 1 == plan->n_strips)
    return RANK_FIRST_LAST;
  if (!ox_picture_is_same_field (strip - 1, strip) || !ox_picture_is_same_field (strip, strip + 1))
    return RANK_ENDS;
  return strip->order % 10 == 0 ? RANK_TENTH : strip->order % 5 == 0 ? RANK_FIFTH : RANK_ALL;
}

/* add_strip: the number stands at the start, or where the strip enters the part, along the strip, readable from below
 * or from the right; the arrow at the stop */
static void
add_strip (GArray *candidates, const OxPicture *picture, const OxStrip *strip)
{
  const OxPlan *plan = picture->plan;
  OxPoint a = strip->a, b = strip->b;
  /* A strip that only touches the part has its number beyond it. */
  if (!ox_clip_line (&a, &b, picture->part) || ox_point_distance (a, b) < MIN (OX_GRID, ox_strip_length (strip)))
    return;
  if (ox_point_distance (a, strip->a) > 0)
    a = ox_point_add (a,
                      ox_point_scale (ox_point_sub (b, a), ENTRY_MM / (ox_point_distance (a, b) * picture->mm_per_m)));
  double heading = remainder (strip->heading, 2 * G_PI);
  gboolean turned = heading > G_PI / 2 + UPRIGHT || heading < -G_PI / 2 + UPRIGHT;
  gboolean ends = strip->order == 1 || strip->order == plan->n_strips;
  g_autofree char *number = g_strdup_printf ("%u", strip->order);
  Candidate candidate
      = { .rank = strip_rank (plan, strip), .layer = "numbers", .id = g_strdup_printf ("strip-%u", strip->order) };
  candidate.look = (OxTextLook){ OX_STYLE_INK,
                                 picture->number_mm,
                                 turned ? heading + G_PI : heading,
                                 turned ? OX_ALIGN_END : OX_ALIGN_START,
                                 TRUE,
                                 ends,
                                 NUMBER_GROUND_MM,
                                 TRUE };
  /* Ends of fields are always labelled; where a number of the rule has no room at the start it stands farther on. */
  candidate.room_m = candidate.rank <= RANK_ENDS ? 0 : ox_point_distance (a, b);
  candidate.strip_m = ox_point_sub (b, a);
  if (candidate.rank < RANK_ALL)
    candidate.slide_m = candidate.strip_m;
  candidate.may_lead = candidate.rank <= RANK_ENDS && picture->mm_per_m > 0;
  candidate.field
      = 181 * (8 * strip->room + strip->coat) + (guint) lround (fmod (strip->heading + 4 * G_PI, G_PI) * 180 / G_PI);
  add_text (candidates, candidate, number, a);
  if (ox_point_distance (b, strip->b) > 0 || !ox_picture_has_axis (strip))
    return;
  Candidate arrow = { .kind = LABEL_ARROW, .rank = candidate.rank, .id = g_strdup (candidate.id) };
  arrow.arrow_style = ox_picture_axis (strip, &arrow.layer);
  arrow.box = (OxLabelBox){ strip->b, heading, { -ARROW_MM, -ARROW_MM * 0.3, 0, ARROW_MM * 0.3 } };
  arrow.room_m = ox_strip_length (strip);
  arrow.field = candidate.field;
  arrow.least_mm_per_m = ox_picture_axis_from (strip);
  g_array_append_val (candidates, arrow);
}

/* add_paces: the speed stands behind the bar where it changes, on every fifth strip and on the first of those side by
 * side */
static void
add_paces (GArray *candidates, const OxPicture *picture, const OxStrip *strip)
{
  double heading = remainder (strip->heading, 2 * G_PI), speed;
  gboolean turned = heading > G_PI / 2 + UPRIGHT || heading < -G_PI / 2 + UPRIGHT;
  gboolean first = strip->order == 1 || strip[-1].n_paces != strip->n_paces
                   || strip[-1].speed == picture->job->machine->travel_speed;
  for (guint i = 0; (first || strip->order % 5 == 0) && i < MAX (strip->n_paces, 1); i++)
    {
      OxPoint at, same;
      if (!ox_picture_pace (picture->plan, strip, i, &at, &speed))
        continue;
      same = at;
      if (!ox_clip_line (&at, &same, picture->part))
        continue;
      g_autofree char *text = ox_measure_speed (picture->job->units, speed);
      Candidate candidate = {
        .rank = RANK_PACE, .layer = "speeds", .id = g_strdup_printf ("strip-%u", strip->order), .field = strip->order
      };
      candidate.look = (OxTextLook){ OX_STYLE_INK,
                                     picture->number_mm,
                                     turned ? heading + G_PI : heading,
                                     turned ? OX_ALIGN_END : OX_ALIGN_START,
                                     TRUE,
                                     FALSE,
                                     NUMBER_GROUND_MM,
                                     TRUE };
      candidate.room_m = strip->n_paces > 0 ? picture->plan->paces[strip->pace + i].length : ox_strip_length (strip);
      candidate.slide_m = (OxPoint){ cos (heading) * candidate.room_m, sin (heading) * candidate.room_m };
      add_text (candidates, candidate, text, at);
    }
}

/* in_part: (transfer full): what of a room is to be seen */
static OxRegion *
in_part (const OxPicture *picture, const OxRing *ring)
{
  OxBox box = picture->part;
  g_autoptr (OxRegion) room = ox_region_new_ring (ring);
  if (!isfinite (box.x0))
    return g_steal_pointer (&room);
  const OxPoint corners[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  g_autoptr (OxRegion) part = ox_region_new_points (corners, 4);
  return ox_region_intersection (room, part);
}

/* clear_of_obstacles: (transfer full): the floor of a room where nothing stands. On a sheet only: the canvas has no
 * time for it */
static OxRegion *
clear_of_obstacles (const OxPicture *picture, const OxRegion *room)
{
  const OxJob *job = picture->job;
  OxBox box = ox_region_box (room);
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_region_unref);
  for (guint i = 0; picture->mm_per_m > 0 && i < job->n_obstacles; i++)
    {
      OxBox it = ox_ring_box (job->obstacles[i]->shape.ring);
      if (it.x0 < box.x1 && it.x1 > box.x0 && it.y0 < box.y1 && it.y1 > box.y0)
        g_ptr_array_add (rings, ox_region_new_ring (job->obstacles[i]->shape.ring));
    }
  g_autoptr (OxRegion) all = ox_region_union_many ((const OxRegion *const *) (gconstpointer) rings->pdata, rings->len);
  g_autoptr (OxRegion) rest = ox_region_difference (room, all);
  return ox_region_is_empty (rest) ? ox_region_ref (room) : g_steal_pointer (&rest);
}

static void
add_names (GArray *candidates, const OxPicture *picture)
{
  const OxJob *job = picture->job;
  for (guint i = 0; i < job->n_rooms; i++)
    {
      g_autoptr (OxRegion) whole = in_part (picture, job->rooms[i]->ring);
      if (ox_region_is_empty (whole))
        continue;
      g_autoptr (OxRegion) region = clear_of_obstacles (picture, whole);
      double radius;
      OxPoint at = ox_region_label_point (region, &radius);
      const char *name = ox_room_title (job->rooms[i]);
      Candidate candidate = { .rank = RANK_NAME,
                              .layer = "names",
                              .id = g_strdup (job->rooms[i]->id),
                              .room_m = 3 * radius,
                              .sway_m = radius / 2 };
      candidate.look = (OxTextLook){ OX_STYLE_INK, NAME_MM, 0, OX_ALIGN_MIDDLE, TRUE, TRUE, 0.8, FALSE };
      add_text (candidates, candidate, name, at);
    }
}

static void
add_tag (GArray *candidates, const OxPicture *picture, const OxEdge *edge)
{
  if (ox_region_is_empty (edge->region))
    return;
  Candidate candidate = { .rank = RANK_TAG, .layer = "names", .id = g_strdup (edge->id) };
  candidate.look = (OxTextLook){ OX_STYLE_TAG, picture->number_mm, 0, OX_ALIGN_MIDDLE, TRUE, FALSE, 0.5, FALSE };
  add_text (candidates, candidate, edge->id, ox_region_label_point (edge->region, NULL));
}

static GArray *
gather (const OxPicture *picture)
{
  GArray *candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));
  g_array_set_clear_func (candidates, clear_candidate);
  const OxPlan *plan = picture->plan;
  if (picture->layers & OX_FLOOR_NAMES)
    add_names (candidates, picture);
  for (guint i = 0; plan != NULL && (picture->layers & OX_FLOOR_TAGS) && i < plan->n_edges; i++)
    add_tag (candidates, picture, &plan->edges[i]);
  for (guint i = 0; plan != NULL && (picture->layers & OX_FLOOR_NUMBERS) && i < plan->n_strips; i++)
    {
      add_strip (candidates, picture, &plan->strips[i]);
      add_paces (candidates, picture, &plan->strips[i]);
    }
  return candidates;
}

/* sway: moves a label that may be moved to the first place that is free */
static void
sway (Candidate *candidate, const OxLabels *labels)
{
  static const OxPoint ways[] = { { 0, 0 },     { 0, 1 },       { 0, -1 },     { 1, 0 },      { -1, 0 },
                                  { 0.7, 0.7 }, { -0.7, -0.7 }, { 0.7, -0.7 }, { -0.7, 0.7 }, { 1.8, 0 },
                                  { -1.8, 0 },  { 1.6, 0.8 },   { -1.6, 0.8 }, { 1.6, -0.8 }, { -1.6, -0.8 } };
  static const double shares[] = { 0, 0.1, 0.2, 0.3, 0.45, 0.6, 0.75 };
  const double length = hypot (candidate->slide_m.x, candidate->slide_m.y);
  gboolean slides = length > 0;
  OxLabelBox box = candidate->box;
  guint n_steps = slides ? STEPS : 0;
  guint n = slides ? G_N_ELEMENTS (shares) : candidate->sway_m > 0 ? G_N_ELEMENTS (ways) : 0;
  for (guint i = 0; i < n + n_steps; i++)
    {
      /* First to just behind what stands in its place. */
      double step = i * STEP_MM / ox_labels_get_scale (labels);
      OxPoint off = i < n_steps ? ox_point_scale (candidate->slide_m, MIN (step / length, 1))
                    : slides    ? ox_point_scale (candidate->slide_m, shares[i - n_steps])
                                : ox_point_scale (ways[i], candidate->sway_m);
      box.at = ox_point_add (candidate->box.at, off);
      if (ox_labels_is_free (labels, &box))
        {
          candidate->box = box;
          return;
        }
    }
}

static gboolean
fits (const Candidate *candidate, const OxLabels *labels, double mm_per_m)
{
  double length = candidate->box.mm.x1 - candidate->box.mm.x0;
  return mm_per_m >= candidate->least_mm_per_m && (candidate->room_m <= 0 || length <= candidate->room_m * mm_per_m)
         && ox_labels_is_free (labels, &candidate->box);
}

/* lead_from: takes the nearest free place around a point of the strip; FALSE when there is none. @across: the leader
 * may cross others */
static gboolean
lead_from (Candidate *candidate, OxPoint from, gboolean across, OxLabels *labels)
{
  static const double reaches_mm[] = { 4, 6, 8, 11, 14, 18, 23 };
  OxTextLook look = candidate->look;
  look.angle = 0;
  look.align = OX_ALIGN_MIDDLE;
  OxBox mm = text_box (&look, candidate->text);
  for (guint i = 0; i < G_N_ELEMENTS (reaches_mm) * LEADS; i++)
    {
      double reach = reaches_mm[i / LEADS], angle = (i % LEADS) * 2 * G_PI / LEADS;
      OxPoint way = ox_point_scale ((OxPoint){ cos (angle), sin (angle) }, reach / ox_labels_get_scale (labels));
      OxLabelBox box = { ox_point_add (from, way), 0, mm };
      OxLabelBox leader = { from, angle, { LEAD_OFF_MM, -0.2, reach - (mm.x1 - mm.x0) / 2, 0.2 } };
      gboolean bare = leader.mm.x1 <= LEAD_OFF_MM;
      if (!ox_labels_is_free (labels, &box) || (!bare && !across && !ox_labels_is_free (labels, &leader)))
        continue;
      ox_labels_take (labels, &box);
      if (!bare)
        ox_labels_take (labels, &leader);
      candidate->lead_from = from;
      candidate->box = box;
      candidate->look = look;
      candidate->leads = TRUE;
      return TRUE;
    }
  return FALSE;
}

static gboolean
lead (Candidate *candidate, OxLabels *labels)
{
  static const double shares[] = { 0, 0.5, 0.25, 0.75 };
  OxPoint start = candidate->box.at;
  for (guint i = 0; candidate->may_lead && i < 2 * G_N_ELEMENTS (shares); i++)
    {
      double share = shares[i % G_N_ELEMENTS (shares)];
      if (lead_from (candidate, ox_point_add (start, ox_point_scale (candidate->slide_m, share)),
                     i >= G_N_ELEMENTS (shares), labels))
        return TRUE;
    }
  return FALSE;
}

/* place_candidate: FALSE when there is no room for it */
static gboolean
place_candidate (Candidate *candidate, OxLabels *labels, double mm_per_m)
{
  candidate->box = candidate->home;
  sway (candidate, labels);
  if (fits (candidate, labels, mm_per_m))
    ox_labels_take (labels, &candidate->box);
  else if (!lead (candidate, labels))
    return FALSE;
  candidate->placed = TRUE;
  candidate->from_mm = mm_per_m;
  return TRUE;
}

/* place_kind: texts or arrows of one field; how many of them stand now */
static guint
place_kind (Field field, LabelKind kind, OxLabels *labels, double mm_per_m)
{
  guint placed = 0;
  for (guint i = 0; i < field.n; i++)
    {
      Candidate *candidate = &field.candidates[i];
      if (candidate->kind != kind)
        continue;
      placed += candidate->placed || place_candidate (candidate, labels, mm_per_m);
    }
  return placed;
}

static guint
count_texts (Field field)
{
  guint n = 0;
  for (guint i = 0; i < field.n; i++)
    n += field.candidates[i].kind == LABEL_TEXT;
  return n;
}

/* withdraw: takes back the texts that were just placed */
static void
withdraw (Field field, OxLabels *labels, guint n_labels)
{
  ox_labels_keep (labels, n_labels);
  for (guint i = 0; i < field.n; i++)
    if (field.candidates[i].kind == LABEL_TEXT)
      field.candidates[i].placed = FALSE;
}

/* place_field: numbers of the rule appear together or not at all: not before most of them have room; from then on the
 * others follow as they get it */
static void
place_field (Field field, OxLabels *labels, double mm_per_m)
{
  guint before = ox_labels_get_count (labels), placed = place_kind (field, LABEL_TEXT, labels, mm_per_m);
  Candidate *first = &field.candidates[0];
  if (first->rank < RANK_TENTH || first->field_shown || placed >= count_texts (field) * MOST_SHARE)
    first->field_shown = TRUE;
  else
    withdraw (field, labels, before);
  (void) place_kind (field, LABEL_ARROW, labels, mm_per_m);
}

/* fill_in: numbers that found no room at the start of their strip, where the others of their field have theirs, stand
 * farther along it */
static void
fill_in (GArray *candidates, OxLabels *labels, double mm_per_m)
{
  gboolean shown = FALSE;
  for (guint i = 0; i < candidates->len; i++)
    {
      Candidate *all = &g_array_index (candidates, Candidate, 0), *candidate = &all[i];
      if (i == 0 || candidate->rank != all[i - 1].rank || candidate->field != all[i - 1].field)
        shown = candidate->field_shown;
      if (!shown || candidate->placed || candidate->kind != LABEL_TEXT)
        continue;
      candidate->slide_m = candidate->strip_m;
      candidate->placed = place_candidate (candidate, labels, mm_per_m);
    }
}

static int
compare_candidates (gconstpointer a, gconstpointer b)
{
  const Candidate *p = a, *q = b;
  if (p->rank != q->rank)
    return p->rank < q->rank ? -1 : 1;
  if (p->field != q->field)
    return p->field < q->field ? -1 : 1;
  return p->index < q->index ? -1 : p->index > q->index;
}

static void
place (const OxPicture *picture, GArray *candidates, OxLabels *labels)
{
  double from = picture->mm_per_m > 0 ? picture->mm_per_m : SMALLEST_MM_PER_M;
  double to = picture->mm_per_m > 0 ? picture->mm_per_m : LARGEST_MM_PER_M;
  for (guint i = 0; i < candidates->len; i++)
    {
      Candidate *candidate = &g_array_index (candidates, Candidate, i);
      candidate->index = i;
      candidate->home = candidate->box;
    }
  g_array_sort (candidates, compare_candidates);
  Candidate *all = (Candidate *) (gpointer) candidates->data;
  for (double scale = from; scale <= to; scale *= G_SQRT2)
    {
      ox_labels_set_scale (labels, scale);
      for (guint start = 0, end; start < candidates->len; start = end)
        {
          for (end = start + 1;
               end < candidates->len && all[end].rank == all[start].rank && all[end].field == all[start].field;)
            end++;
          place_field ((Field){ &all[start], end - start }, labels, scale);
        }
    }
  if (picture->mm_per_m > 0)
    fill_in (candidates, labels, to);
}

/* append_first: the flag at the first start of what is to be done takes its place before any label */
static void
append_first (const OxPicture *picture, OxLabels *labels)
{
  if (picture->plan == NULL || !(picture->layers & (OX_FLOOR_NUMBERS | OX_FLOOR_FIRST)))
    return;
  guint first = ox_picture_first_left (picture->plan);
  if (first == picture->plan->n_strips)
    return;
  const OxStrip *strip = &picture->plan->strips[first];
  OxPoint a = strip->a, b = strip->a;
  if (!ox_clip_line (&a, &b, picture->part))
    return;
  OxLabelBox box = { strip->a, 0, { -0.6, picture->number_mm / 2 + CLEAR_MM, FLAG_MM * 0.75, FLAG_MM } };
  ox_labels_take (labels, &box);
  ox_picture_layer (picture, "stations");
  g_autofree char *id = g_strdup_printf ("strip-%u", strip->order);
  ox_picture_item (picture, id, 0);
  ox_drawing_builder_mark (picture->builder, (OxMarkLook){ OX_STYLE_FIRST, OX_MARK_FIRST, 0, FLAG_MM }, strip->a);
}

static void
take_stations (const OxPicture *picture, OxLabels *labels)
{
  for (guint i = 0; (picture->layers & OX_FLOOR_STATIONS) && i < picture->job->n_stations; i++)
    {
      OxLabelBox box = { picture->job->stations[i]->at, 0, { -2.5, -2.5, 2.5, 2.5 } };
      ox_labels_take (labels, &box);
    }
  for (guint i = 0; (picture->layers & OX_FLOOR_STATIONS) && picture->plan != NULL && i < picture->plan->n_stations;
       i++)
    if (picture->plan->stations[i].proposed)
      ox_labels_take (labels, &(OxLabelBox){ picture->plan->stations[i].at, 0, { -2.5, -2.5, 2.5, 2.5 } });
}

void
ox_picture_take_wrap (const OxStrip *strip, OxLabels *labels)
{
  const double half = OX_WRAP_MM * 0.65; /* with the line around it */
  if (strip->hose_wraps || strip->cord_wraps)
    ox_labels_take (labels, &(OxLabelBox){ strip->b, 0, { -half, -half, half, half } });
}

/* take_wraps: a mark at the stop of a strip takes the place of its arrow; numbers keep off it */
static void
take_wraps (const OxPicture *picture, OxLabels *labels)
{
  if (picture->plan == NULL || !(picture->layers & OX_FLOOR_STATIONS) || (picture->layers & OX_FLOOR_OWN))
    return;
  for (guint i = 0; i < picture->plan->n_strips; i++)
    ox_picture_take_wrap (&picture->plan->strips[i], labels);
}

static void
append_leader (const OxPicture *picture, const Candidate *candidate)
{
  ox_drawing_builder_line (picture->builder, OX_STYLE_LEADER, candidate->lead_from, candidate->box.at);
  ox_drawing_builder_mark (picture->builder, (OxMarkLook){ OX_STYLE_LEADER, OX_MARK_DOT, 0, OX_LEADER_DOT_MM },
                           candidate->lead_from);
}

void
ox_picture_labels (const OxPicture *picture, OxLabels *labels)
{
  take_stations (picture, labels);
  take_wraps (picture, labels);
  append_first (picture, labels);
  g_autoptr (GArray) candidates = gather (picture);
  /* What stands beyond a match line belongs to the neighbour. */
  ox_labels_set_bounds (labels, isfinite (picture->part.x0) ? &picture->part : NULL);
  place (picture, candidates, labels);
  ox_labels_set_bounds (labels, NULL);
  for (guint i = 0; i < candidates->len; i++)
    {
      const Candidate *candidate = &g_array_index (candidates, Candidate, i);
      if (!candidate->placed || !ox_picture_item (picture, candidate->id, candidate->from_mm))
        continue;
      ox_picture_layer (picture, candidate->layer);
      if (candidate->leads)
        append_leader (picture, candidate);
      if (candidate->kind == LABEL_TEXT)
        ox_drawing_builder_text (picture->builder, candidate->look, candidate->box.at, candidate->text);
      else
        ox_drawing_builder_mark (picture->builder,
                                 (OxMarkLook){ candidate->arrow_style, OX_MARK_ARROW, candidate->box.angle, ARROW_MM },
                                 candidate->box.at);
    }
}
