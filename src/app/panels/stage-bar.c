/* Oxturn: app/panels/stage-bar - the five stages of a job, each with what came of it so far.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/stage-bar.h"

#include <glib/gi18n-lib.h>

static const struct
{
  const char *name;
  const char *title;
} stages[OX_N_STAGES] = {
  [OX_STAGE_FLOOR] = { "floor", N_ ("Floor") },    [OX_STAGE_MACHINE] = { "machine", N_ ("Machine") },
  [OX_STAGE_PLAN] = { "plan", N_ ("Plan") },       [OX_STAGE_SHEETS] = { "sheets", N_ ("Sheets") },
  [OX_STAGE_RECORD] = { "record", N_ ("Record") },
};

struct _OxStageBar
{
  GtkWidget parent_instance;

  OxSession *session; /* Owned */
  GtkLabel *results[OX_N_STAGES];
};

G_DEFINE_FINAL_TYPE (OxStageBar, ox_stage_bar, GTK_TYPE_WIDGET)

const char *
ox_stage_name (OxStage stage)
{
  g_return_val_if_fail (stage < OX_N_STAGES, NULL);
  return stages[stage].name;
}

static char *
floor_result (const OxJob *job)
{
  double area = 0;
  g_autofree char *text = NULL;

  for (guint i = 0; i < job->n_rooms; i++)
    area += fabs (ox_ring_area (job->rooms[i]->ring));
  if (job->n_rooms == 0)
    return g_strdup (_ ("nothing drawn yet"));
  text = ox_units_area_text (job->units, area);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u room, %s", "%u rooms, %s", job->n_rooms), job->n_rooms,
                          text);
}

static char *
machine_result (const OxJob *job)
{
  g_autofree char *width = ox_units_length_text (job->units, job->machine->blast_width, TRUE);

  return g_strdup_printf (_ ("%s, %s wide"), job->machine->name, width);
}

static char *
plan_result (OxSession *session)
{
  const OxPlan *plan = ox_session_find_plan (session);

  if (ox_session_find_plan_error (session) != NULL)
    return g_strdup (_ ("cannot be planned yet"));
  if (!ox_session_is_plan_current (session))
    return g_strdup (_ ("planning"));
  if (plan->n_strips == 0)
    return g_strdup (_ ("no strips"));
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u strip, %.1f h", "%u strips, %.1f h", plan->n_strips),
                          plan->n_strips, plan->totals.labour_hours);
}

static char *
record_result (OxSession *session)
{
  const OxPlan *plan = ox_session_find_plan (session);
  guint done = 0;

  for (guint i = 0; plan != NULL && i < plan->n_strips; i++)
    done += plan->strips[i].done > 0;
  if (done == 0)
    return g_strdup (_ ("nothing done yet"));
  return g_strdup_printf (_ ("%u of %u strips done"), done, plan->n_strips);
}

static void
update (OxStageBar *self)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_autofree char *floor_text = floor_result (job);
  g_autofree char *machine = machine_result (job);
  g_autofree char *plan = plan_result (self->session);
  g_autofree char *record = record_result (self->session);

  gtk_label_set_text (self->results[OX_STAGE_FLOOR], floor_text);
  gtk_label_set_text (self->results[OX_STAGE_MACHINE], machine);
  gtk_label_set_text (self->results[OX_STAGE_PLAN], plan);
  gtk_label_set_text (self->results[OX_STAGE_RECORD], record);
}

void
ox_stage_bar_set_sheets (OxStageBar *self, const char *text)
{
  gtk_label_set_text (self->results[OX_STAGE_SHEETS], text);
}

static GtkWidget *
make_card (OxStageBar *self, OxStage stage)
{
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *title = gtk_label_new (_ (stages[stage].title));
  GtkWidget *result = gtk_label_new (NULL);
  g_autofree char *figure = g_strdup_printf ("%u", (guint) stage + 1);
  GtkWidget *number = gtk_label_new (figure);

  self->results[stage] = GTK_LABEL (result);
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_label_set_xalign (GTK_LABEL (result), 0);
  gtk_label_set_ellipsize (GTK_LABEL (title), PANGO_ELLIPSIZE_END); /* large letters and long words in a small window */
  gtk_label_set_ellipsize (GTK_LABEL (result), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (number, "stage-number");
  gtk_widget_add_css_class (title, "stage-title");
  gtk_widget_add_css_class (result, "stage-result");
  gtk_widget_set_valign (column, GTK_ALIGN_CENTER);
  gtk_widget_set_hexpand (column, TRUE);
  gtk_widget_set_valign (number, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (column), title);
  gtk_box_append (GTK_BOX (column), result);
  gtk_box_append (GTK_BOX (row), number);
  gtk_box_append (GTK_BOX (row), column);
  gtk_button_set_child (GTK_BUTTON (button), row);
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.stage");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", stages[stage].name);
  gtk_widget_add_css_class (button, "stage");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _ (stages[stage].title), -1);
  return button;
}

static void
ox_stage_bar_dispose (GObject *object)
{
  OxStageBar *self = OX_STAGE_BAR (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (ox_stage_bar_parent_class)->dispose (object);
}

static void
ox_stage_bar_class_init (OxStageBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = ox_stage_bar_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "stages");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_TOOLBAR);
}

static void
ox_stage_bar_init (OxStageBar *self)
{
  gtk_box_layout_set_homogeneous (GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))), TRUE);
  for (guint i = 0; i < OX_N_STAGES; i++)
    gtk_widget_set_parent (make_card (self, i), GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Stages of the job"), -1);
}

GtkWidget *
ox_stage_bar_new (OxSession *session)
{
  OxStageBar *self = g_object_new (OX_TYPE_STAGE_BAR, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "job-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "plan-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "state-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
  return GTK_WIDGET (self);
}
