/* Oxturn: app/inspector/area-sections - condition areas and joints.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/inspector/section.h"

#include "job/edit.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>

/* --- Condition area --- */

typedef struct
{
  OxSection base;
  OxField *name, *speed, *profile;
  GtkDropDown *coats;
  GtkLabel *size;
} ConditionSection;

static void
condition_fill (OxSection *section, const OxJob *job, guint index, int side)
{
  ConditionSection *self = (ConditionSection *) section;
  const OxCondition *condition = job->conditions[index];
  g_autofree char *area = ox_units_area_text (job->units, fabs (ox_ring_area (condition->ring)));
  g_autofree char *size = g_strdup_printf (_ ("%s. A speed of 0 is the machine's; no profile: the room's."), area);

  (void) side;
  ox_field_set_text (self->name, condition->name);
  ox_field_set_number (self->speed, condition->speed_m_per_min, 2);
  ox_choice_select (self->coats, condition->coats, self);
  ox_field_set_text (self->profile, condition->profile);
  gtk_label_set_text (self->size, size);
}

static gboolean
condition_current (ConditionSection *self, OxCondition *draft)
{
  guint index = 0;

  if (!ox_section_item (&self->base, &index))
    return FALSE;
  *draft = *ox_session_get_job (self->base.session)->conditions[index];
  return TRUE;
}

static void
condition_take (ConditionSection *self, const OxCondition *draft, OxField *field)
{
  g_autoptr (OxCondition) condition = ox_condition_new (draft);
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_condition (ox_session_get_job (self->base.session), condition, &error);

  ox_section_take (self->base.session, job, error, _ ("Change Condition Area"), field);
}

static void
condition_cb (OxField *field, ConditionSection *self)
{
  g_autofree char *text = ox_text_clean (ox_field_get_text (field), FALSE);
  OxCondition draft;

  if (!condition_current (self, &draft))
    return;
  if (field == self->name)
    draft.name = text;
  else if (field == self->profile)
    draft.profile = text;
  else
    draft.speed_m_per_min = ox_field_get_value (field);
  condition_take (self, &draft, field);
}

static void
condition_coats_cb (GtkDropDown *choice, GParamSpec *pspec, ConditionSection *self)
{
  OxCondition draft;

  (void) pspec;
  if (!condition_current (self, &draft))
    return;
  draft.coats = gtk_drop_down_get_selected (choice);
  condition_take (self, &draft, NULL);
}

GtkWidget *
ox_condition_section_new (OxSession *session)
{
  ConditionSection *self = g_new0 (ConditionSection, 1);
  GtkWidget *root = ox_section_init (&self->base, session, OX_ITEM_CONDITION, _ ("Condition area"));
  const char *const coats[] = { _ ("As the room"), "1", "2", "3", "4", NULL };

  self->base.fill = condition_fill;
  self->name = ox_rows_add_field (self->base.rows, OX_FIELD_TEXT, _ ("_Name"));
  self->speed = ox_rows_add_field (self->base.rows, OX_FIELD_NUMBER, _ ("_Walking speed, m/min"));
  self->coats = ox_rows_add_choice (self->base.rows, _ ("_Coats"), coats);
  self->profile = ox_rows_add_field (self->base.rows, OX_FIELD_TEXT, _ ("Target _profile"));
  self->size = GTK_LABEL (ox_note_new (NULL));
  gtk_box_append (GTK_BOX (root), GTK_WIDGET (self->size));
  g_signal_connect (self->name, "commit", G_CALLBACK (condition_cb), self);
  g_signal_connect (self->speed, "commit", G_CALLBACK (condition_cb), self);
  g_signal_connect (self->profile, "commit", G_CALLBACK (condition_cb), self);
  g_signal_connect (self->coats, "notify::selected", G_CALLBACK (condition_coats_cb), self);
  ox_section_start (&self->base);
  return root;
}

/* --- Joint --- */

typedef struct
{
  OxSection base;
  OxField *name;
  GtkLabel *size;
} JointSection;

static void
joint_fill (OxSection *section, const OxJob *job, guint index, int side)
{
  JointSection *self = (JointSection *) section;
  const OxJoint *joint = job->joints[index];
  double total = 0;
  g_autofree char *length = NULL;
  g_autofree char *size = NULL;

  (void) side;
  for (guint i = 1; i < joint->n; i++)
    total += ox_point_distance (joint->points[i - 1], joint->points[i]);
  length = ox_units_length_text (job->units, total, TRUE);
  size = g_strdup_printf (_ ("%s long, %u points"), length, joint->n);
  ox_field_set_text (self->name, joint->name);
  gtk_label_set_text (self->size, size);
}

static void
joint_name_cb (OxField *field, JointSection *self)
{
  const OxJob *job = ox_session_get_job (self->base.session);
  g_autofree char *text = ox_text_clean (ox_field_get_text (field), FALSE);
  g_autoptr (OxJoint) joint = NULL;
  g_autoptr (GError) error = NULL;
  OxJoint draft;
  OxJob *changed;
  guint index = 0;

  if (!ox_section_item (&self->base, &index))
    return;
  draft = *job->joints[index];
  draft.name = text;
  joint = ox_joint_new (&draft);
  changed = ox_job_with_joint (job, joint, &error);
  ox_section_take (self->base.session, changed, error, _ ("Rename Joint"), field);
}

GtkWidget *
ox_joint_section_new (OxSession *session)
{
  JointSection *self = g_new0 (JointSection, 1);
  GtkWidget *root = ox_section_init (&self->base, session, OX_ITEM_JOINT, _ ("Joint"));

  self->base.fill = joint_fill;
  self->name = ox_rows_add_field (self->base.rows, OX_FIELD_TEXT, _ ("_Name"));
  self->size = GTK_LABEL (ox_note_new (NULL));
  gtk_box_append (GTK_BOX (root), GTK_WIDGET (self->size));
  g_signal_connect (self->name, "commit", G_CALLBACK (joint_name_cb), self);
  ox_section_start (&self->base);
  return root;
}
