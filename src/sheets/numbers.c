/* Oxturn: sheets/numbers - names, tags, numbers and arrows, as far as there is room for them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every label is a candidate with a rank. Ranks are placed one after another, from the smallest scale to the largest: a
 * label appears at the first scale at which it stands clear of all that came before it, and stays from there on.
 */
#include "drawing/clip.h"
#include "drawing/text.h"
#include "sheets/picture.h"
#include <string.h>

#define NUMBER_MM 1.8
#define NUMBER_GROUND_MM 0.4
#define CLEAR_MM 0.25 /* above and below a label, to the next one */
#define ARROW_MM 2.2
#define FLAG_MM 6.0
#define ENTRY_MM 1.2 /* from a match line to the number of a strip that crosses it */
#define NAME_MM 2.5
#define MOST_SHARE 0.6
#define SMALLEST_MM_PER_M 0.5
#define LARGEST_MM_PER_M 400.0

/* Ranks of strips whose number takes part in the rule "first, last, every tenth, every fifth, all". */
typedef enum
{
  RANK_NAME,
  RANK_FIRST_LAST,
  RANK_TAG,
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
  if (strip->order == 1 || strip->order == plan->n_strips)
    return RANK_FIRST_LAST;
  return strip->order % 10 == 0 ? RANK_TENTH : strip->order % 5 == 0 ? RANK_FIFTH : RANK_ALL;
}

/* add_strip: the number stands at the start, or where the strip enters the part, along the strip, readable from below
 * or from the right; the arrow at the stop */
static void
add_strip (GArray *candidates, const OxPicture *picture, const OxStrip *strip)
{
  const OxPlan *plan = picture->plan;
  OxPoint a = strip->a, b = strip->b;
  if (!ox_clip_line (&a, &b, picture->part))
    return;
  if (ox_point_distance (a, strip->a) > 0)
    a = ox_point_add (a,
                      ox_point_scale (ox_point_sub (b, a), ENTRY_MM / (ox_point_distance (a, b) * picture->mm_per_m)));
  double heading = remainder (strip->heading, 2 * G_PI);
  gboolean turned = heading > G_PI / 2 + 1e-6 || heading < -G_PI / 2 + 1e-6;
  gboolean ends = strip->order == 1 || strip->order == plan->n_strips;
  g_autofree char *number = g_strdup_printf ("%u", strip->order);
  Candidate candidate
      = { .rank = strip_rank (plan, strip), .layer = "numbers", .id = g_strdup_printf ("strip-%u", strip->order) };
  candidate.look = (OxTextLook){
    OX_STYLE_INK,     NUMBER_MM, turned ? heading + G_PI : heading, turned ? OX_ALIGN_END : OX_ALIGN_START, TRUE, ends,
    NUMBER_GROUND_MM, TRUE
  };
  candidate.room_m = ends ? 0 : ox_point_distance (a, b);
  candidate.field = 181 * strip->room + (guint) lround (fmod (strip->heading + 4 * G_PI, G_PI) * 180 / G_PI);
  add_text (candidates, candidate, number, a);
  if (ox_point_distance (b, strip->b) > 0)
    return;
  Candidate arrow
      = { .kind = LABEL_ARROW, .rank = candidate.rank, .layer = "directions", .id = g_strdup (candidate.id) };
  arrow.arrow_style = strip->kind == OX_STRIP_MAIN ? OX_STYLE_STRIP_AXIS : OX_STYLE_CROSS_AXIS;
  arrow.box = (OxLabelBox){ strip->b, heading, { -ARROW_MM, -ARROW_MM * 0.3, 0, ARROW_MM * 0.3 } };
  arrow.room_m = ox_strip_length (strip);
  arrow.field = candidate.field;
  arrow.least_mm_per_m = ox_picture_axis_from (strip);
  g_array_append_val (candidates, arrow);
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

static void
add_names (GArray *candidates, const OxPicture *picture)
{
  const OxJob *job = picture->job;
  for (guint i = 0; i < job->n_rooms; i++)
    {
      g_autoptr (OxRegion) region = in_part (picture, job->rooms[i]->ring);
      if (ox_region_is_empty (region))
        continue;
      double radius;
      OxPoint at = ox_region_label_point (region, &radius);
      const char *name = job->rooms[i]->name[0] != '\0' ? job->rooms[i]->name : job->rooms[i]->id;
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
add_tag (GArray *candidates, const char *id, const OxRegion *region, OxStyle style)
{
  if (ox_region_is_empty (region))
    return;
  Candidate candidate = { .rank = RANK_TAG, .layer = "names", .id = g_strdup (id) };
  candidate.look = (OxTextLook){ style, NUMBER_MM, 0, OX_ALIGN_MIDDLE, TRUE, FALSE, 0.5, FALSE };
  add_text (candidates, candidate, id, ox_region_label_point (region, NULL));
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
    add_tag (candidates, plan->edges[i].id, plan->edges[i].region, OX_STYLE_TAG);
  for (guint i = 0; plan != NULL && (picture->layers & OX_FLOOR_NUMBERS) && i < plan->n_strips; i++)
    add_strip (candidates, picture, &plan->strips[i]);
  return candidates;
}

/* sway: moves a label that may be moved to the first place that is free */
static void
sway (Candidate *candidate, const OxLabels *labels)
{
  static const OxPoint ways[] = { { 0, 0 },     { 0, 1 },       { 0, -1 },     { 1, 0 },     { -1, 0 },
                                  { 0.7, 0.7 }, { -0.7, -0.7 }, { 0.7, -0.7 }, { -0.7, 0.7 } };
  OxLabelBox box = candidate->box;
  for (guint i = 0; candidate->sway_m > 0 && i < G_N_ELEMENTS (ways); i++)
    {
      box.at = ox_point_add (candidate->box.at, ox_point_scale (ways[i], candidate->sway_m));
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
      if (!candidate->placed)
        {
          sway (candidate, labels);
          if (!fits (candidate, labels, mm_per_m))
            continue;
          ox_labels_take (labels, &candidate->box);
          candidate->placed = TRUE;
          candidate->from_mm = mm_per_m;
        }
      placed++;
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
    g_array_index (candidates, Candidate, i).index = i;
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
}

/* append_first: the flag at the first start takes its place before any label */
static void
append_first (const OxPicture *picture, OxLabels *labels)
{
  if (picture->plan == NULL || picture->plan->n_strips == 0 || !(picture->layers & OX_FLOOR_NUMBERS))
    return;
  const OxStrip *strip = &picture->plan->strips[0];
  OxPoint a = strip->a, b = strip->a;
  if (!ox_clip_line (&a, &b, picture->part))
    return;
  OxLabelBox box = { strip->a, 0, { -0.6, NUMBER_MM / 2 + CLEAR_MM, FLAG_MM * 0.75, FLAG_MM } };
  ox_labels_take (labels, &box);
  ox_picture_layer (picture, "stations");
  ox_picture_item (picture, "strip-1", 0);
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
}

void
ox_picture_labels (const OxPicture *picture, OxLabels *labels)
{
  take_stations (picture, labels);
  append_first (picture, labels);
  g_autoptr (GArray) candidates = gather (picture);
  place (picture, candidates, labels);
  for (guint i = 0; i < candidates->len; i++)
    {
      const Candidate *candidate = &g_array_index (candidates, Candidate, i);
      if (!candidate->placed || !ox_picture_item (picture, candidate->id, candidate->from_mm))
        continue;
      ox_picture_layer (picture, candidate->layer);
      if (candidate->kind == LABEL_TEXT)
        ox_drawing_builder_text (picture->builder, candidate->look, candidate->box.at, candidate->text);
      else
        ox_drawing_builder_mark (picture->builder,
                                 (OxMarkLook){ candidate->arrow_style, OX_MARK_ARROW, candidate->box.angle, ARROW_MM },
                                 candidate->box.at);
    }
}
