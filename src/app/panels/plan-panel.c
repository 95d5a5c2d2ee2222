/* Oxturn: app/panels/plan-panel - what is shown of the plan, findings with their places, chalk lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/panels.h"

#include "app/panels/dose-key.h"
#include "app/panels/order-box.h"
#include "app/panels/estimate-box.h"
#include "app/rows.h"
#include "base/notice.h"
#include "job/check.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxSession *session; /* Borrowed */
  OxCanvas *canvas;   /* Borrowed */
  GtkBox *findings;
  GtkBox *chalk;
} PlanPanel;

/* --- Findings --- */

static void
finding_cb (GtkButton *button, PlanPanel *self)
{
  const OxFinding *finding = g_object_get_data (G_OBJECT (button), "ox-finding");

  if (*finding->id != '\0' && ox_job_find (ox_session_get_job (self->session), finding->id, NULL) != OX_ITEM_NONE)
    ox_session_select (self->session, (const char *const[]){ finding->id, NULL });
  if (finding->placed)
    ox_canvas_show_point (self->canvas, finding->at);
}

static GtkWidget *
make_line (const char *icon, const char *text)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *image = gtk_image_new_from_icon_name (icon);
  GtkWidget *label = gtk_label_new (text);

  gtk_widget_set_valign (image, GTK_ALIGN_START);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 30);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), image);
  gtk_box_append (GTK_BOX (row), label);
  return row;
}

static GtkWidget *
make_finding (PlanPanel *self, OxFinding *finding)
{
  GtkWidget *button = gtk_button_new ();
  gboolean wrong = finding->kind == OX_FINDING_ERROR;

  gtk_button_set_child (GTK_BUTTON (button),
                        make_line (wrong ? "dialog-error-symbolic" : "dialog-information-symbolic", finding->text));
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_widget_add_css_class (button, "finding");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, finding->text, -1);
  g_object_set_data_full (G_OBJECT (button), "ox-finding", finding, (GDestroyNotify) ox_finding_free);
  g_signal_connect (button, "clicked", G_CALLBACK (finding_cb), self);
  return button;
}

static void
update_findings (PlanPanel *self)
{
  g_autoptr (GPtrArray) findings = ox_job_check (ox_session_get_job (self->session));
  const OxPlan *plan = ox_session_find_plan (self->session);

  ox_box_clear (self->findings);
  g_ptr_array_set_free_func (findings, NULL); /* each is handed to its row */
  for (guint i = 0; i < findings->len; i++)
    gtk_box_append (self->findings, make_finding (self, g_ptr_array_index (findings, i)));
  for (guint i = 0; plan != NULL && plan->notices != NULL && plan->notices[i] != NULL; i++)
    {
      g_autofree char *text = ox_notice_text (plan->notices[i]);
      gtk_box_append (self->findings, make_line ("dialog-information-symbolic", text));
    }
  if (gtk_widget_get_first_child (GTK_WIDGET (self->findings)) == NULL)
    gtk_box_append (self->findings, ox_note_new (_ ("Nothing to report.")));
}

/* --- Chalk lines --- */

static void
add_row (GtkGrid *rows, const char *name, char *value)
{
  GtkWidget *label = gtk_label_new (value);

  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_widget_add_css_class (label, "figure");
  ox_rows_add (rows, name, label);
  g_free (value);
}

static GtkWidget *
make_chalk (const OxJob *job, const OxChalk *chalk)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *rows = ox_rows_new ();
  g_autofree char *coat = g_strdup_printf (_ ("%s, coat %u"), job->rooms[chalk->room]->name, chalk->coat);
  GtkWidget *name = gtk_label_new (chalk->coat > 1 ? coat : job->rooms[chalk->room]->name);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_box_append (GTK_BOX (box), name);
  add_row (GTK_GRID (rows), _ ("Direction"), g_strdup_printf ("%.1f\302\260", chalk->heading * 180 / G_PI));
  add_row (GTK_GRID (rows), _ ("Measured from side"), g_strdup_printf ("%u", chalk->base_side + 1));
  add_row (GTK_GRID (rows), _ ("First lane at"), ox_units_length_text (job->units, chalk->first_distance, TRUE));
  add_row (GTK_GRID (rows), _ ("Then every"), ox_units_length_text (job->units, chalk->spacing, TRUE));
  add_row (GTK_GRID (rows), _ ("Lanes"), g_strdup_printf ("%u", chalk->lanes));
  gtk_box_append (GTK_BOX (box), rows);
  return box;
}

static void
update_chalk (PlanPanel *self)
{
  const OxPlan *plan = ox_session_find_plan (self->session);

  ox_box_clear (self->chalk);
  for (guint i = 0; plan != NULL && i < plan->n_chalks; i++)
    gtk_box_append (self->chalk, make_chalk (plan->job, &plan->chalks[i]));
  if (gtk_widget_get_first_child (GTK_WIDGET (self->chalk)) == NULL)
    gtk_box_append (self->chalk, ox_note_new (_ ("There are no strips to chalk lines for.")));
}

static void
update (GtkWidget *root)
{
  PlanPanel *self = g_object_get_data (G_OBJECT (root), "ox-plan");

  update_findings (self);
  update_chalk (self);
}

/* --- What is shown --- */

static GtkWidget *
make_layers (void)
{
  static const struct
  {
    const char *action;
    const char *title;
  } layers[] = {
    { "win.show-lanes", N_ ("Lanes") },
    { "win.show-strips", N_ ("Strips") },
    { "win.show-numbers", N_ ("Numbers and arrows") },
    { "win.show-zones", N_ ("Turnaround zones") },
    { "win.show-edge-work", N_ ("Edge work") },
    { "win.show-moves", N_ ("Moves") },
    { "win.show-reach", N_ ("Reach of the stations") },
    { "win.show-names", N_ ("Names") },
  };
  GtkWidget *grid
      = g_object_new (GTK_TYPE_GRID, "row-spacing", 2, "column-spacing", 8, "column-homogeneous", TRUE, NULL);

  for (int i = 0; i < (int) G_N_ELEMENTS (layers); i++)
    {
      GtkWidget *check = gtk_check_button_new_with_label (_ (layers[i].title));

      gtk_actionable_set_action_name (GTK_ACTIONABLE (check), layers[i].action);
      gtk_grid_attach (GTK_GRID (grid), check, i % 2, i / 2, 1, 1);
    }
  return grid;
}

GtkWidget *
ox_plan_panel_new (OxSession *session, OxCanvas *canvas)
{
  GtkWidget *root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  PlanPanel *self = g_new0 (PlanPanel, 1);

  self->session = session;
  self->canvas = canvas;
  self->findings = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 4));
  self->chalk = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 10));
  g_object_set_data_full (G_OBJECT (root), "ox-plan", self, g_free);
  gtk_box_append (GTK_BOX (root), ox_heading_new (_ ("Shown on the floor")));
  gtk_box_append (GTK_BOX (root), make_layers ());
  gtk_box_append (GTK_BOX (root), ox_dose_key_new (session));
  gtk_box_append (GTK_BOX (root), ox_heading_new (_ ("Order of work")));
  gtk_box_append (GTK_BOX (root), ox_order_box_new (session, canvas));
  gtk_box_append (GTK_BOX (root), ox_heading_new (_ ("To look at")));
  gtk_box_append (GTK_BOX (root), GTK_WIDGET (self->findings));
  gtk_box_append (GTK_BOX (root), ox_heading_new (_ ("What it takes")));
  gtk_box_append (GTK_BOX (root), ox_estimate_box_new (session, canvas));
  gtk_box_append (GTK_BOX (root), ox_heading_new (_ ("Chalk lines")));
  gtk_box_append (GTK_BOX (root), GTK_WIDGET (self->chalk));
  g_signal_connect_object (session, "job-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "plan-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  update (root);
  return root;
}
