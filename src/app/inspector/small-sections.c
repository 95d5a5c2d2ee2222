/* Oxturn: app/inspector/small-sections - excluded areas, doorways, stations.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/inspector/section.h"

#include "app/caution-box.h"
#include "job/edit.h"
#include "job/text.h"
#include "tools/slide.h"

#include <glib/gi18n-lib.h>

/* --- Excluded area --- */

typedef struct
{
  OxSection base;
  OxField *name;
  GtkLabel *size;
} ExcludedSection;

static void
excluded_fill (OxSection *section, const OxJob *job, guint index, int side)
{
  ExcludedSection *self = (ExcludedSection *) section;
  g_autofree char *area = ox_units_area_text (job->units, fabs (ox_ring_area (job->excluded[index]->ring)));
  g_autofree char *size = g_strdup_printf (_ ("%s left out of the scope"), area);

  (void) side;
  ox_field_set_text (self->name, job->excluded[index]->name);
  gtk_label_set_text (self->size, size);
}

static void
excluded_name_cb (OxField *field, ExcludedSection *self)
{
  const OxJob *job = ox_session_get_job (self->base.session);
  g_autofree char *text = ox_text_clean (ox_field_get_text (field), FALSE);
  g_autoptr (OxExcluded) excluded = NULL;
  g_autoptr (GError) error = NULL;
  OxExcluded draft;
  OxJob *changed;
  guint index = 0;

  if (!ox_section_item (&self->base, &index))
    return;
  draft = *job->excluded[index];
  draft.name = text;
  excluded = ox_excluded_new (&draft);
  changed = ox_job_with_excluded (job, excluded, &error);
  ox_section_take (self->base.session, changed, error, _ ("Rename Excluded Area"), field);
}

GtkWidget *
ox_excluded_section_new (OxSession *session)
{
  ExcludedSection *self = g_new0 (ExcludedSection, 1);
  GtkWidget *root = ox_section_init (&self->base, session, OX_ITEM_EXCLUDED, _ ("Excluded area"));

  self->base.fill = excluded_fill;
  self->name = ox_rows_add_field (self->base.rows, OX_FIELD_TEXT, _ ("_Name"));
  self->size = GTK_LABEL (ox_note_new (NULL));
  gtk_box_append (GTK_BOX (root), GTK_WIDGET (self->size));
  g_signal_connect (self->name, "commit", G_CALLBACK (excluded_name_cb), self);
  ox_section_start (&self->base);
  return root;
}

/* --- Doorway --- */

typedef struct
{
  OxSection base;
  OxField *name, *width, *depth, *from;
} DoorwaySection;

static void
doorway_fill (OxSection *section, const OxJob *job, guint index, int side)
{
  DoorwaySection *self = (DoorwaySection *) section;
  const OxDoorway *doorway = job->doorways[index];
  OxDoorwayWall wall;
  gboolean in_wall = ox_doorway_wall (job, doorway->id, &wall);

  (void) side;
  if (in_wall)
    ox_field_set_length (self->from, job->units, wall.from);
  ox_rows_set_row_visible (section->rows, self->from, in_wall);
  ox_field_set_text (self->name, doorway->name);
  ox_field_set_length (self->width, job->units, ox_point_distance (doorway->a, doorway->b));
  ox_field_set_length (self->depth, job->units, doorway->depth);
}

/* The middle of the gap stays where it is. */
static void
set_width (OxDoorway *draft, double width)
{
  OxPoint middle = ox_point_scale (ox_point_add (draft->a, draft->b), 0.5);
  double k = width / ox_point_distance (draft->a, draft->b);

  draft->a = ox_point_snap (ox_point_add (middle, ox_point_scale (ox_point_sub (draft->a, middle), k)));
  draft->b = ox_point_snap (ox_point_add (middle, ox_point_scale (ox_point_sub (draft->b, middle), k)));
}

static void
doorway_cb (OxField *field, DoorwaySection *self)
{
  const OxJob *job = ox_session_get_job (self->base.session);
  g_autofree char *text = ox_text_clean (ox_field_get_text (field), FALSE);
  g_autoptr (OxDoorway) doorway = NULL;
  g_autoptr (GError) error = NULL;
  OxDoorway draft;
  OxJob *changed;
  guint index = 0;

  if (!ox_section_item (&self->base, &index))
    return;
  draft = *job->doorways[index];
  if (field == self->from)
    {
      changed = ox_doorway_slide (job, draft.id, ox_field_get_value (field), &error);
      ox_section_take (self->base.session, changed, error, _ ("Change Doorway"), field);
      return;
    }
  if (field == self->name)
    draft.name = text;
  else if (field == self->depth)
    draft.depth = ox_field_get_value (field);
  else
    set_width (&draft, ox_field_get_value (field));
  doorway = ox_doorway_new (&draft);
  changed = ox_job_with_doorway (job, doorway, &error);
  ox_section_take (self->base.session, changed, error, _ ("Change Doorway"), field);
}

GtkWidget *
ox_doorway_section_new (OxSession *session)
{
  DoorwaySection *self = g_new0 (DoorwaySection, 1);
  GtkWidget *root = ox_section_init (&self->base, session, OX_ITEM_DOORWAY, _ ("Doorway"));

  self->base.fill = doorway_fill;
  self->name = ox_rows_add_field (self->base.rows, OX_FIELD_TEXT, _ ("_Name"));
  self->width = ox_rows_add_field (self->base.rows, OX_FIELD_LENGTH, _ ("_Width"));
  self->depth = ox_rows_add_field (self->base.rows, OX_FIELD_LENGTH, _ ("Wall _thickness"));
  self->from = ox_rows_add_field (self->base.rows, OX_FIELD_LENGTH, _ ("_From the corner"));
  g_signal_connect (self->from, "commit", G_CALLBACK (doorway_cb), self);
  g_signal_connect (self->name, "commit", G_CALLBACK (doorway_cb), self);
  g_signal_connect (self->width, "commit", G_CALLBACK (doorway_cb), self);
  g_signal_connect (self->depth, "commit", G_CALLBACK (doorway_cb), self);
  ox_section_start (&self->base);
  return root;
}

/* --- Station --- */

typedef struct
{
  OxSection base;
  OxField *name;
  GtkDropDown *kind;
  OxField *x, *y, *length;
  GtkWidget *caution;
} StationSection;

static void
station_fill (OxSection *section, const OxJob *job, guint index, int side)
{
  StationSection *self = (StationSection *) section;
  const OxStation *station = job->stations[index];

  (void) side;
  ox_field_set_text (self->name, station->name);
  ox_choice_select (self->kind, station->kind, self);
  ox_field_set_length (self->x, job->units, station->at.x);
  ox_field_set_length (self->y, job->units, station->at.y);
  ox_field_set_length (self->length, job->units, station->length);
  gtk_widget_set_visible (self->caution, station->kind == OX_STATION_SUPPLY);
}

static gboolean
station_current (StationSection *self, OxStation *draft)
{
  guint index = 0;

  if (!ox_section_item (&self->base, &index))
    return FALSE;
  *draft = *ox_session_get_job (self->base.session)->stations[index];
  return TRUE;
}

static void
station_take (StationSection *self, const OxStation *draft, OxField *field)
{
  g_autoptr (OxStation) station = ox_station_new (draft);
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_station (ox_session_get_job (self->base.session), station, &error);

  ox_section_take (self->base.session, job, error, _ ("Change Station"), field);
}

static void
station_cb (OxField *field, StationSection *self)
{
  g_autofree char *text = ox_text_clean (ox_field_get_text (field), FALSE);
  OxStation draft;

  if (!station_current (self, &draft))
    return;
  if (field == self->name)
    draft.name = text;
  else if (field == self->x)
    draft.at.x = ox_field_get_value (field);
  else if (field == self->y)
    draft.at.y = ox_field_get_value (field);
  else
    draft.length = ox_field_get_value (field);
  station_take (self, &draft, field);
}

static void
station_kind_cb (GtkDropDown *choice, GParamSpec *pspec, StationSection *self)
{
  OxStation draft;

  (void) pspec;
  if (!station_current (self, &draft))
    return;
  draft.kind = (OxStationKind) gtk_drop_down_get_selected (choice);
  station_take (self, &draft, NULL);
}

GtkWidget *
ox_station_section_new (OxSession *session)
{
  StationSection *self = g_new0 (StationSection, 1);
  GtkWidget *root = ox_section_init (&self->base, session, OX_ITEM_STATION, _ ("Station"));
  const char *const kinds[] = { _ ("Dust collector"), _ ("Power supply"), NULL };
  OxField **fields[] = { &self->name, &self->length, &self->x, &self->y };

  self->base.fill = station_fill;
  self->name = ox_rows_add_field (self->base.rows, OX_FIELD_TEXT, _ ("_Name"));
  self->kind = ox_rows_add_choice (self->base.rows, _ ("_Kind"), kinds);
  self->length = ox_rows_add_field (self->base.rows, OX_FIELD_LENGTH, _ ("Hose or cord"));
  self->x = ox_rows_add_field (self->base.rows, OX_FIELD_LENGTH, _ ("Stands at x"));
  self->y = ox_rows_add_field (self->base.rows, OX_FIELD_LENGTH, _ ("Stands at y"));
  gtk_box_append (GTK_BOX (root), ox_note_new (_ ("A hose or cord of 0 has the length that the machine's has.")));
  self->caution = ox_caution_box_new ("supply");
  gtk_box_append (GTK_BOX (root), self->caution);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    g_signal_connect (*fields[i], "commit", G_CALLBACK (station_cb), self);
  g_signal_connect (self->kind, "notify::selected", G_CALLBACK (station_kind_cb), self);
  ox_section_start (&self->base);
  return root;
}
