/* Oxturn: app/inspector/room-section - name, target profile and direction of a room.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/inspector/section.h"

#include "job/edit.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxSection base;
  OxField *name;
  OxField *profile;
  GtkLabel *size;
  GtkDropDown *direction;
  OxField *side;
  OxField *angle;
} RoomSection;

static void
fill (OxSection *section, const OxJob *job, guint index, int side)
{
  RoomSection *self = (RoomSection *) section;
  const OxRoom *room = job->rooms[index];
  g_autofree char *area = ox_units_area_text (job->units, fabs (ox_ring_area (room->ring)));
  g_autofree char *around = ox_units_length_text (job->units, ox_ring_perimeter (room->ring), TRUE);
  g_autofree char *size = g_strdup_printf (_ ("%s, %s around, %u sides"), area, around, room->ring->n);

  (void) side;
  ox_field_set_text (self->name, room->name);
  ox_field_set_text (self->profile, room->profile);
  gtk_label_set_text (self->size, size);
  ox_choice_select (self->direction, room->direction.kind, self);
  ox_field_set_number (self->side, room->direction.side + 1, 0);
  ox_field_set_number (self->angle, room->direction.angle_deg, 2);
  ox_rows_set_row_visible (section->rows, self->side, room->direction.kind == OX_DIRECTION_SIDE);
  ox_rows_set_row_visible (section->rows, self->angle, room->direction.kind == OX_DIRECTION_ANGLE);
}

static const OxRoom *
current (RoomSection *self)
{
  guint index = 0;

  if (!ox_section_item (&self->base, &index))
    return NULL;
  return ox_session_get_job (self->base.session)->rooms[index];
}

static void
texts_cb (OxField *field, RoomSection *self)
{
  const OxRoom *room = current (self);
  g_autofree char *text = ox_text_clean (ox_field_get_text (field), FALSE);
  g_autoptr (OxRoom) changed = NULL;
  g_autoptr (GError) error = NULL;
  OxRoom draft;
  OxJob *job;

  if (room == NULL)
    return;
  draft = *room;
  if (field == self->name)
    draft.name = text;
  else
    draft.profile = text;
  changed = ox_room_new (&draft);
  job = ox_job_with_room (ox_session_get_job (self->base.session), changed, &error);
  ox_section_take (self->base.session, job, error, field == self->name ? _ ("Rename Room") : _ ("Set Target Profile"),
                   field);
}

static void
set_direction (RoomSection *self, OxDirection direction, OxField *field)
{
  const OxRoom *room = current (self);
  g_autoptr (GError) error = NULL;
  OxJob *job;

  if (room == NULL)
    return;
  job = ox_job_with_direction (ox_session_get_job (self->base.session), room->id, direction, &error);
  ox_section_take (self->base.session, job, error, _ ("Set Direction"), field);
}

static void
direction_cb (GtkDropDown *choice, GParamSpec *pspec, RoomSection *self)
{
  const OxRoom *room = current (self);
  OxDirection direction;

  (void) pspec;
  if (room == NULL)
    return;
  direction = room->direction;
  direction.kind = (OxDirectionKind) gtk_drop_down_get_selected (choice);
  set_direction (self, direction, NULL);
}

static void
side_cb (OxField *field, RoomSection *self)
{
  double number = ox_field_get_value (field);
  const OxRoom *room = current (self);

  if (room == NULL)
    return;
  if (number < 1 || number > room->ring->n || number != floor (number))
    {
      g_autofree char *why = g_strdup_printf (_ ("The room has sides 1 to %u."), room->ring->n);

      ox_field_refuse (field, why);
      return;
    }
  set_direction (self, (OxDirection){ .kind = OX_DIRECTION_SIDE, .side = (guint) number - 1 }, field);
}

static void
angle_cb (OxField *field, RoomSection *self)
{
  set_direction (self, (OxDirection){ .kind = OX_DIRECTION_ANGLE, .angle_deg = ox_field_get_value (field) }, field);
}

GtkWidget *
ox_room_section_new (OxSession *session)
{
  RoomSection *self = g_new0 (RoomSection, 1);
  GtkWidget *root = ox_section_init (&self->base, session, OX_ITEM_ROOM, _ ("Room"));
  const char *const directions[] = { _ ("Automatic"), _ ("Along a side"), _ ("Typed angle"), NULL };

  self->base.fill = fill;
  self->name = ox_rows_add_field (self->base.rows, OX_FIELD_TEXT, _ ("_Name"));
  self->profile = ox_rows_add_field (self->base.rows, OX_FIELD_TEXT, _ ("Target _profile"));
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->profile), _ ("such as CSP 3"));
  self->direction = ox_rows_add_choice (self->base.rows, _ ("_Direction"), directions);
  self->side = ox_rows_add_field (self->base.rows, OX_FIELD_NUMBER, _ ("Along side number"));
  self->angle = ox_rows_add_field (self->base.rows, OX_FIELD_NUMBER, _ ("Angle, degrees"));
  self->size = GTK_LABEL (ox_note_new (NULL));
  gtk_box_append (GTK_BOX (root), GTK_WIDGET (self->size));
  g_signal_connect (self->name, "commit", G_CALLBACK (texts_cb), self);
  g_signal_connect (self->profile, "commit", G_CALLBACK (texts_cb), self);
  g_signal_connect (self->direction, "notify::selected", G_CALLBACK (direction_cb), self);
  g_signal_connect (self->side, "commit", G_CALLBACK (side_cb), self);
  g_signal_connect (self->angle, "commit", G_CALLBACK (angle_cb), self);
  ox_section_start (&self->base);
  return root;
}
