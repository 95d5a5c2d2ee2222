/* Oxturn: app/inspector/obstacle-section - kind, place and size of an obstacle.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/inspector/section.h"

#include "app/caution-box.h"
#include "job/edit.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxSection base;
  OxField *name;
  GtkDropDown *kind;
  OxField *x, *y;
  OxField *width, *depth, *angle, *diameter;
  OxField *keep_back;
  GtkWidget *caution;
} ObstacleSection;

static void
fill (OxSection *section, const OxJob *job, guint index, int side)
{
  ObstacleSection *self = (ObstacleSection *) section;
  const OxObstacle *obstacle = job->obstacles[index];
  const OxShape *shape = &obstacle->shape;
  gboolean rectangle = shape->kind == OX_SHAPE_RECTANGLE;
  gboolean circle = shape->kind == OX_SHAPE_CIRCLE;

  (void) side;
  ox_field_set_text (self->name, obstacle->name);
  ox_choice_select (self->kind, obstacle->kind, self);
  ox_field_set_length (self->x, job->units, shape->centre.x);
  ox_field_set_length (self->y, job->units, shape->centre.y);
  ox_field_set_length (self->width, job->units, shape->width);
  ox_field_set_length (self->depth, job->units, shape->depth);
  ox_field_set_number (self->angle, shape->angle_deg, 2);
  ox_field_set_length (self->diameter, job->units, 2 * shape->radius);
  ox_field_set_length (self->keep_back, job->units, obstacle->keep_back);
  gtk_widget_set_visible (self->caution, obstacle->kind == OX_OBSTACLE_PIT);
  ox_rows_set_row_visible (section->rows, self->x, rectangle || circle);
  ox_rows_set_row_visible (section->rows, self->y, rectangle || circle);
  ox_rows_set_row_visible (section->rows, self->width, rectangle);
  ox_rows_set_row_visible (section->rows, self->depth, rectangle);
  ox_rows_set_row_visible (section->rows, self->angle, rectangle);
  ox_rows_set_row_visible (section->rows, self->diameter, circle);
  ox_rows_set_row_visible (section->rows, self->keep_back, obstacle->kind == OX_OBSTACLE_PIT);
}

static gboolean
current (ObstacleSection *self, OxObstacle *draft)
{
  guint index = 0;

  if (!ox_section_item (&self->base, &index))
    return FALSE;
  *draft = *ox_session_get_job (self->base.session)->obstacles[index];
  return TRUE;
}

static void
take (ObstacleSection *self, const OxObstacle *draft, const char *label, OxField *field)
{
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (draft);
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_obstacle (ox_session_get_job (self->base.session), obstacle, &error);

  ox_section_take (self->base.session, job, error, label, field);
}

static void
name_cb (OxField *field, ObstacleSection *self)
{
  g_autofree char *text = ox_text_clean (ox_field_get_text (field), FALSE);
  OxObstacle draft;

  if (!current (self, &draft))
    return;
  draft.name = text;
  take (self, &draft, _ ("Rename Obstacle"), field);
}

static void
kind_cb (GtkDropDown *choice, GParamSpec *pspec, ObstacleSection *self)
{
  OxObstacle draft;

  (void) pspec;
  if (!current (self, &draft))
    return;
  draft.kind = (OxObstacleKind) gtk_drop_down_get_selected (choice);
  if (draft.kind != OX_OBSTACLE_PIT)
    draft.keep_back = 0;
  take (self, &draft, _ ("Set Kind of Obstacle"), NULL);
}

/* Only the figure that was typed is taken from its field: the others may show rounded values. */
static void
figure_cb (OxField *field, ObstacleSection *self)
{
  double value = ox_field_get_value (field);
  OxObstacle draft;

  if (!current (self, &draft))
    return;
  if (field == self->x)
    draft.shape.centre.x = value;
  else if (field == self->y)
    draft.shape.centre.y = value;
  else if (field == self->width)
    draft.shape.width = value;
  else if (field == self->depth)
    draft.shape.depth = value;
  else if (field == self->angle)
    draft.shape.angle_deg = value;
  else if (field == self->diameter)
    draft.shape.radius = value / 2;
  else
    draft.keep_back = value;
  if (draft.shape.kind != OX_SHAPE_POLYGON)
    draft.shape.ring = NULL; /* made anew from the sizes */
  take (self, &draft, _ ("Change Obstacle"), field);
}

static OxField *
add_figure (ObstacleSection *self, OxFieldKind kind, const char *name)
{
  OxField *field = ox_rows_add_field (self->base.rows, kind, name);

  g_signal_connect (field, "commit", G_CALLBACK (figure_cb), self);
  return field;
}

GtkWidget *
ox_obstacle_section_new (OxSession *session)
{
  ObstacleSection *self = g_new0 (ObstacleSection, 1);
  GtkWidget *root = ox_section_init (&self->base, session, OX_ITEM_OBSTACLE, _ ("Obstacle"));
  const char *const kinds[] = { _ ("Solid"), _ ("Pit"), _ ("Masked"), NULL };

  self->base.fill = fill;
  self->name = ox_rows_add_field (self->base.rows, OX_FIELD_TEXT, _ ("_Name"));
  self->kind = ox_rows_add_choice (self->base.rows, _ ("_Kind"), kinds);
  self->keep_back = add_figure (self, OX_FIELD_LENGTH, _ ("Keep-_back"));
  self->width = add_figure (self, OX_FIELD_LENGTH, _ ("_Width"));
  self->depth = add_figure (self, OX_FIELD_LENGTH, _ ("_Depth"));
  self->angle = add_figure (self, OX_FIELD_NUMBER, _ ("Angle, degrees"));
  self->diameter = add_figure (self, OX_FIELD_LENGTH, _ ("_Diameter"));
  self->x = add_figure (self, OX_FIELD_LENGTH, _ ("Middle at x"));
  self->y = add_figure (self, OX_FIELD_LENGTH, _ ("Middle at y"));
  self->caution = ox_caution_box_new ("drops");
  gtk_box_append (GTK_BOX (root), self->caution);
  g_signal_connect (self->name, "commit", G_CALLBACK (name_cb), self);
  g_signal_connect (self->kind, "notify::selected", G_CALLBACK (kind_cb), self);
  ox_section_start (&self->base);
  return root;
}
