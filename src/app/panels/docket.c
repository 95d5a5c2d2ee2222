/* Oxturn: app/panels/docket - the quantities of the job, always in sight, and how far planning is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/docket.h"

#include "app/panels/hour-bar.h"

#include <glib/gi18n-lib.h>

#define POLL_MS 100
#define PATIENCE_POLLS 3 /* a plan that is there sooner shows no progress at all */

enum
{
  TARGET,
  BLASTED,
  EDGE_WORK,
  STRIPS,
  LABOUR,
  RATIO,
  N_FIGURES
};

struct _OxDocket
{
  GtkWidget parent_instance;

  /* Owned */
  OxSession *session;
  guint poll_id;

  /* Children */
  GtkLabel *figures[N_FIGURES];
  OxHourBar *bar;
  GtkWidget *progress_box;
  GtkProgressBar *progress;

  guint polls;
};

G_DEFINE_FINAL_TYPE (OxDocket, ox_docket, GTK_TYPE_WIDGET)

static void
show_nothing (OxDocket *self)
{
  for (guint i = 0; i < N_FIGURES; i++)
    gtk_label_set_text (self->figures[i], "\342\200\223");
  ox_hour_bar_set (self->bar, 0, 0, 0, 0);
}

/* What a figure rests on, for pointer and screen reader. */
static void
explain (GtkLabel *label, char *text)
{
  gtk_widget_set_tooltip_text (gtk_widget_get_parent (GTK_WIDGET (label)), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (label), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  g_free (text);
}

static void
explain_plan (OxDocket *self, const OxJob *job, const OxTotals *totals)
{
  explain (self->figures[TARGET], g_strdup (_ ("Rooms less what is solid, open, masked or left out")));
  explain (self->figures[BLASTED], g_strdup (_ ("What the strips cover, counted once a coat")));
  explain (self->figures[EDGE_WORK],
           g_strdup_printf (_ ("What the strips do not cover: by hand, %.1f m² an hour"), job->rates.edge_m2_per_hour));
  explain (self->figures[STRIPS], g_strdup_printf (_ ("At %.1f m/min, with the room that the machine needs to turn"),
                                                   job->machine->travel_speed));
  explain (self->figures[LABOUR],
           g_strdup_printf (_ ("Strips %.1f h, moves %.1f h, edge work %.1f h; without set-up, breaks and refills"),
                            totals->strip_hours, totals->move_hours, totals->edge_hours));
  explain (self->figures[RATIO],
           g_strdup_printf (_ ("Ideal: %.1f h, without turns, walks and floor blasted twice"), totals->ideal_hours));
}

static void
take (GtkLabel *label, char *text)
{
  gtk_label_set_text (label, text);
  g_free (text);
}

static void
show_plan (OxDocket *self, const OxPlan *plan, OxUnits units)
{
  const OxTotals *totals = &plan->totals;

  take (self->figures[TARGET], ox_units_area_text (units, totals->target_m2));
  take (self->figures[BLASTED], ox_units_area_text (units, totals->blasted_m2));
  take (self->figures[EDGE_WORK], ox_units_area_text (units, totals->edge_m2));
  take (self->figures[STRIPS], g_strdup_printf ("%u", totals->strips));
  take (self->figures[LABOUR], g_strdup_printf (_ ("%.1f h"), totals->labour_hours));
  if (totals->ideal_hours > 0)
    take (self->figures[RATIO], g_strdup_printf ("%.2f", totals->labour_hours / totals->ideal_hours));
  else
    gtk_label_set_text (self->figures[RATIO], "\342\200\223");
  explain_plan (self, plan->job, totals);
  ox_hour_bar_set (self->bar, totals->strip_hours, totals->move_hours, totals->edge_hours, totals->ideal_hours);
}

/* While a newer plan is under way the figures of the last one stay, paler. */
static void
update (OxDocket *self)
{
  const OxPlan *plan = ox_session_find_plan (self->session);

  if (plan == NULL || plan->totals.target_m2 <= 0)
    show_nothing (self);
  else
    show_plan (self, plan, ox_session_get_job (self->session)->units);
  if (ox_session_is_plan_current (self->session))
    gtk_widget_remove_css_class (GTK_WIDGET (self), "stale");
  else
    gtk_widget_add_css_class (GTK_WIDGET (self), "stale");
}

static gboolean
poll_cb (gpointer data)
{
  OxDocket *self = OX_DOCKET (data);
  const char *doing = NULL;
  double share = ox_plan_service_get_progress (ox_session_get_plan_service (self->session), &doing);

  self->polls++;
  if (self->polls < PATIENCE_POLLS)
    return G_SOURCE_CONTINUE;
  gtk_widget_set_visible (self->progress_box, TRUE);
  if (share < 0)
    gtk_progress_bar_pulse (self->progress);
  else
    gtk_progress_bar_set_fraction (self->progress, share);
  gtk_progress_bar_set_text (self->progress, doing != NULL ? _ (doing) : _ ("Planning"));
  return G_SOURCE_CONTINUE;
}

static void
state_changed_cb (OxDocket *self)
{
  gboolean running = ox_plan_service_is_running (ox_session_get_plan_service (self->session));

  if (running && self->poll_id == 0)
    {
      self->polls = 0;
      self->poll_id = g_timeout_add (POLL_MS, poll_cb, self);
    }
  if (!running)
    {
      g_clear_handle_id (&self->poll_id, g_source_remove);
      gtk_widget_set_visible (self->progress_box, FALSE);
    }
  update (self);
}

static GtkWidget *
make_figure (OxDocket *self, guint i, const char *name)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *caption = gtk_label_new (name);
  GtkWidget *value = gtk_label_new (NULL);

  self->figures[i] = GTK_LABEL (value);
  gtk_label_set_xalign (GTK_LABEL (caption), 0);
  gtk_label_set_ellipsize (GTK_LABEL (caption), PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (GTK_LABEL (value), 0);
  gtk_widget_add_css_class (caption, "caption");
  gtk_widget_add_css_class (value, "value");
  gtk_accessible_update_relation (GTK_ACCESSIBLE (value), GTK_ACCESSIBLE_RELATION_LABELLED_BY, caption, NULL, -1);
  gtk_box_append (GTK_BOX (box), caption);
  gtk_box_append (GTK_BOX (box), value);
  return box;
}

static GtkWidget *
make_progress (OxDocket *self)
{
  GtkWidget *stop = gtk_button_new_with_mnemonic (_ ("S_top"));

  self->progress_box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  self->progress = GTK_PROGRESS_BAR (gtk_progress_bar_new ());
  gtk_progress_bar_set_show_text (self->progress, TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self->progress), TRUE);
  gtk_widget_set_hexpand (self->progress_box, TRUE);
  gtk_widget_set_valign (GTK_WIDGET (self->progress), GTK_ALIGN_CENTER);
  gtk_progress_bar_set_ellipsize (self->progress, PANGO_ELLIPSIZE_END);
  gtk_widget_set_size_request (GTK_WIDGET (self->progress), 80, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->progress), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Planning"), -1);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (stop), "win.stop-planning");
  gtk_widget_set_valign (stop, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (self->progress_box), GTK_WIDGET (self->progress));
  gtk_box_append (GTK_BOX (self->progress_box), stop);
  gtk_widget_set_visible (self->progress_box, FALSE);
  return self->progress_box;
}

static GtkWidget *
make_hours (OxDocket *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *caption = gtk_label_new (_ ("Strips, moves, edge work; the mark is the ideal"));

  self->bar = OX_HOUR_BAR (ox_hour_bar_new ());
  gtk_label_set_xalign (GTK_LABEL (caption), 0);
  gtk_label_set_ellipsize (GTK_LABEL (caption), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (caption, "caption");
  gtk_widget_set_hexpand (box, TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self->bar), TRUE);
  gtk_box_append (GTK_BOX (box), caption);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->bar));
  return box;
}

static void
ox_docket_dispose (GObject *object)
{
  OxDocket *self = OX_DOCKET (object);
  GtkWidget *child;

  g_clear_handle_id (&self->poll_id, g_source_remove);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (ox_docket_parent_class)->dispose (object);
}

static void
ox_docket_class_init (OxDocketClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ox_docket_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "docket");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_STATUS);
}

static void
ox_docket_init (OxDocket *self)
{
  static const char *const names[N_FIGURES] = {
    [TARGET] = N_ ("Target"), [BLASTED] = N_ ("Blasted"), [EDGE_WORK] = N_ ("Edge work"),
    [STRIPS] = N_ ("Strips"), [LABOUR] = N_ ("Labour"),   [RATIO] = N_ ("Labour / ideal"),
  };
  GtkWidget *hours;

  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))), 12);
  for (guint i = 0; i < N_FIGURES; i++)
    gtk_widget_set_parent (make_figure (self, i, _ (names[i])), GTK_WIDGET (self));
  hours = make_hours (self);
  gtk_widget_set_parent (hours, GTK_WIDGET (self));
  gtk_widget_set_parent (make_progress (self), GTK_WIDGET (self));
  /* The hours of an older plan make room for the progress of the new one: with large letters there is none for both. */
  g_object_bind_property (self->progress_box, "visible", hours, "visible", G_BINDING_SYNC_CREATE | G_BINDING_INVERT_BOOLEAN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Quantities"), -1);
}

GtkWidget *
ox_docket_new (OxSession *session)
{
  OxDocket *self = g_object_new (OX_TYPE_DOCKET, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "job-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "plan-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "state-changed", G_CALLBACK (state_changed_cb), self, G_CONNECT_SWAPPED);
  state_changed_cb (self);
  return GTK_WIDGET (self);
}
