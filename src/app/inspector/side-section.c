/* Oxturn: app/inspector/side-section - one side of a room: wall, open or drop, its length and where it starts.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/inspector/section.h"

#include "app/caution-box.h"
#include "job/corner.h"
#include "job/edit.h"
#include "session/selection.h"
#include "tools/pick.h"

#include <glib/gi18n-lib.h>

#define KEEP_BACK_START 0.5 /* m; of a side that becomes a drop, until somebody types what the site demands */

typedef struct
{
  OxSection base;
  GtkSpinButton *number;
  GtkDropDown *kind;
  OxField *keep_back;
  OxField *length;
  OxField *x, *y;
  GtkWidget *caution;
} SideSection;

static void
show_side (SideSection *self, const OxJob *job, const OxRoom *room, guint side)
{
  OxPoint a = room->ring->points[side];
  OxPoint b = room->ring->points[(side + 1) % room->ring->n];

  ox_choice_select (self->kind, room->sides[side].kind, self);
  ox_field_set_length (self->keep_back, job->units, room->sides[side].keep_back);
  ox_field_set_length (self->length, job->units, ox_point_distance (a, b));
  ox_field_set_length (self->x, job->units, a.x);
  ox_field_set_length (self->y, job->units, a.y);
  gtk_widget_set_sensitive (GTK_WIDGET (self->keep_back), room->sides[side].kind == OX_SIDE_DROP);
  gtk_widget_set_visible (self->caution, room->sides[side].kind == OX_SIDE_DROP);
}

static void
fill (OxSection *section, const OxJob *job, guint index, int side)
{
  SideSection *self = (SideSection *) section;
  const OxRoom *room = job->rooms[index];
  guint shown = side >= 0 ? (guint) side : (guint) gtk_spin_button_get_value_as_int (self->number) - 1;

  shown = MIN (shown, room->ring->n - 1);
  g_signal_handlers_block_matched (self->number, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, self);
  gtk_spin_button_set_range (self->number, 1, room->ring->n);
  gtk_spin_button_set_value (self->number, shown + 1);
  g_signal_handlers_unblock_matched (self->number, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, self);
  show_side (self, job, room, shown);
}

/* The room and side that the fields show; FALSE when nothing of the kind is selected. */
static gboolean
current (SideSection *self, const OxRoom **room, guint *side)
{
  guint index = 0;

  if (!ox_section_item (&self->base, &index))
    return FALSE;
  *room = ox_session_get_job (self->base.session)->rooms[index];
  *side = (guint) gtk_spin_button_get_value_as_int (self->number) - 1;
  return *side < (*room)->ring->n;
}

/* Going from side to side by number also shows each on the floor. */
static void
number_cb (GtkSpinButton *number, SideSection *self)
{
  const OxRoom *room;
  guint side;

  (void) number;
  if (current (self, &room, &side))
    {
      g_autofree char *entry = ox_selection_of_side (room->id, side);

      ox_session_select (self->base.session, (const char *const[]){ entry, NULL });
    }
}

static void
set_side (SideSection *self, OxSide value, OxField *field)
{
  const OxRoom *room;
  guint side;
  g_autoptr (GError) error = NULL;
  OxJob *job;

  if (!current (self, &room, &side))
    return;
  job = ox_job_with_side (ox_session_get_job (self->base.session), room->id, side, value, &error);
  ox_section_take (self->base.session, job, error, _ ("Set Side"), field);
}

static void
kind_cb (GtkDropDown *choice, GParamSpec *pspec, SideSection *self)
{
  OxSide value = { .kind = (OxSideKind) gtk_drop_down_get_selected (choice) };

  (void) pspec;
  if (value.kind == OX_SIDE_DROP)
    value.keep_back = KEEP_BACK_START;
  set_side (self, value, NULL);
}

static void
keep_back_cb (OxField *field, SideSection *self)
{
  set_side (self, (OxSide){ .kind = OX_SIDE_DROP, .keep_back = ox_field_get_value (field) }, field);
}

static void
length_cb (OxField *field, SideSection *self)
{
  const OxRoom *room;
  guint side;
  double length = ox_field_get_value (field);
  g_autoptr (GError) error = NULL;
  OxJob *job;

  if (!current (self, &room, &side))
    return;
  if (!(length > 0))
    {
      ox_field_refuse (field, _ ("A side is longer than 0."));
      return;
    }
  job = ox_side_set_length (ox_session_get_job (self->base.session), room->id, side, length, &error);
  ox_section_take (self->base.session, job, error, _ ("Set Length of Side"), field);
}

static void
corner_cb (OxField *field, SideSection *self)
{
  const OxRoom *room;
  guint side;
  OxPoint at = { ox_field_get_value (self->x), ox_field_get_value (self->y) };
  g_autoptr (GError) error = NULL;
  OxJob *job;

  if (!current (self, &room, &side))
    return;
  job = ox_job_with_corner (ox_session_get_job (self->base.session), room->id, side, at, &error);
  ox_section_take (self->base.session, job, error, _ ("Move Corner"), field);
}

/* In the middle of the side; from there it is dragged, or its place is typed. */
static void
add_corner_cb (SideSection *self)
{
  const OxRoom *room;
  guint side;
  g_autoptr (GError) error = NULL;
  OxPoint middle;
  OxJob *job;

  if (!current (self, &room, &side))
    return;
  middle = ox_point_scale (ox_point_add (room->ring->points[side], room->ring->points[(side + 1) % room->ring->n]), 0.5);
  job = ox_edit_corner_added (ox_session_get_job (self->base.session), room->id, side, middle, &error);
  ox_section_take (self->base.session, job, error, _ ("Add Corner"), self->x);
}

/* The corner where the side starts. */
static void
delete_corner_cb (SideSection *self)
{
  const OxRoom *room;
  guint side;
  g_autoptr (GError) error = NULL;
  OxJob *job;

  if (!current (self, &room, &side))
    return;
  job = ox_edit_corner_removed (ox_session_get_job (self->base.session), room->id, side, &error);
  ox_section_take (self->base.session, job, error, _ ("Delete Corner"), self->x);
}

static GtkWidget *
make_corner_buttons (SideSection *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *add = gtk_button_new_with_label (_ ("Add Corner"));
  GtkWidget *remove = gtk_button_new_with_label (_ ("Delete Corner"));

  gtk_accessible_update_property (GTK_ACCESSIBLE (add), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Add Corner"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (remove), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Delete Corner"), -1);
  gtk_widget_set_tooltip_text (add, _ ("Divides the side in its middle"));
  gtk_widget_set_tooltip_text (remove, _ ("Deletes the corner where the side starts"));
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (add_corner_cb), self);
  g_signal_connect_swapped (remove, "clicked", G_CALLBACK (delete_corner_cb), self);
  gtk_box_append (GTK_BOX (row), add);
  gtk_box_append (GTK_BOX (row), remove);
  return row;
}

GtkWidget *
ox_side_section_new (OxSession *session)
{
  SideSection *self = g_new0 (SideSection, 1);
  GtkWidget *root = ox_section_init (&self->base, session, OX_ITEM_ROOM, _ ("Side of the room"));
  const char *const kinds[] = { _ ("Wall"), _ ("Open"), _ ("Drop"), NULL };
  GtkWidget *number = gtk_spin_button_new_with_range (1, 3, 1);

  self->base.fill = fill;
  self->number = GTK_SPIN_BUTTON (number);
  gtk_accessible_update_property (GTK_ACCESSIBLE (number), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Side number"), -1);
  ox_rows_add (self->base.rows, _ ("Side n_umber"), number);
  self->kind = ox_rows_add_choice (self->base.rows, _ ("_Kind"), kinds);
  self->keep_back = ox_rows_add_field (self->base.rows, OX_FIELD_LENGTH, _ ("Keep-_back"));
  self->length = ox_rows_add_field (self->base.rows, OX_FIELD_LENGTH, _ ("_Length"));
  self->x = ox_rows_add_field (self->base.rows, OX_FIELD_LENGTH, _ ("Starts at x"));
  self->y = ox_rows_add_field (self->base.rows, OX_FIELD_LENGTH, _ ("Starts at y"));
  ox_rows_add_wide (self->base.rows, make_corner_buttons (self));
  self->caution = ox_caution_box_new ("drops");
  gtk_box_append (GTK_BOX (root), self->caution);
  g_signal_connect (self->number, "value-changed", G_CALLBACK (number_cb), self);
  g_signal_connect (self->kind, "notify::selected", G_CALLBACK (kind_cb), self);
  g_signal_connect (self->keep_back, "commit", G_CALLBACK (keep_back_cb), self);
  g_signal_connect (self->length, "commit", G_CALLBACK (length_cb), self);
  g_signal_connect (self->x, "commit", G_CALLBACK (corner_cb), self);
  g_signal_connect (self->y, "commit", G_CALLBACK (corner_cb), self);
  ox_section_start (&self->base);
  return root;
}
