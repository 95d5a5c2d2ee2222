/* Oxturn: app/panels/estimate-box
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/estimate-box.h"

#include "app/caution-box.h"
#include "app/panels/estimate-lists.h"
#include "app/rows.h"
#include "estimate/cautions.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxSession *session;  /* Borrowed */
  OxCanvas *canvas;    /* Borrowed */
  const OxPlan *shown; /* Owned: the plan that the figures are of */
  GtkBox *groups[OX_N_FIGURE_GROUPS];
  GtkExpander *expanders[OX_N_FIGURE_GROUPS];
  GtkBox *shifts;
  GtkBox *cost;
  GtkBox *cautions;
} EstimateBox;

/* The forms in which what a group rests on is changed. */
static const struct
{
  int group;
  const char *action;
  const char *label;
} forms[] = {
  { OX_FIGURE_TIME, "win.calendar", N_ ("Calendar\342\200\246") },
  { OX_FIGURE_PROFILE, "win.patches", N_ ("Test Patches\342\200\246") },
  { OX_FIGURE_SUPPLY, "win.supply", N_ ("Supply\342\200\246") },
  { OX_FIGURE_WEAR, "win.wear-parts", N_ ("Wear Parts\342\200\246") },
  { -1, "win.costs", N_ ("Costs\342\200\246") },
};

static void
estimate_box_free (EstimateBox *self)
{
  g_clear_pointer (&self->shown, ox_plan_unref);
  g_free (self);
}

/* Each caution beside the figures where it bites; those of every job and of old coatings by themselves, too. */
static void
show_cautions (EstimateBox *self, const OxEstimate *estimate)
{
  for (guint g = 0; g < OX_N_FIGURE_GROUPS; g++)
    for (const char *const *id = ox_cautions_of_group (g); *id != NULL; id++)
      {
        const OxCaution *caution = ox_caution_find (*id);

        if (caution != NULL && ox_caution_applies (caution, estimate))
          gtk_box_append (self->groups[g], ox_caution_line_new (caution));
      }
  gtk_box_append (self->cautions, ox_caution_box_new ("coated"));
  gtk_box_append (self->cautions, ox_caution_box_new ("always"));
}

/* How many figures of a group want a look stands behind its name, so that nothing is hidden by a closed group. */
static void
show_titles (EstimateBox *self, const guint *marked)
{
  for (guint g = 0; g < OX_N_FIGURE_GROUPS; g++)
    {
      const char *name = ox_estimate_group_name (g);
      g_autofree char *title
          = marked[g] > 0 ? g_strdup_printf ("%s (%u %s)", name, marked[g], _ ("to look at")) : g_strdup (name);

      gtk_expander_set_label (self->expanders[g], title);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->expanders[g]), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
    }
}

static void
show_plan (EstimateBox *self, const OxPlan *plan)
{
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  guint marked[OX_N_FIGURE_GROUPS] = { 0 };

  for (guint i = 0; i < estimate->figures->len; i++)
    {
      const OxFigure *figure = g_ptr_array_index (estimate->figures, i);

      g_autofree char *value = ox_figure_value_text (figure, plan->job->units);

      gtk_box_append (self->groups[figure->group],
                      ox_estimate_row (figure->label, value, figure->assumption, figure->verdict));
      marked[figure->group] += figure->verdict == OX_VERDICT_WARN || figure->verdict == OX_VERDICT_STOP;
    }
  show_titles (self, marked);
  ox_estimate_list_checks (self->groups[OX_FIGURE_TESTS], estimate, self->canvas);
  ox_estimate_list_shifts (self->shifts, estimate);
  ox_estimate_list_cost (self->cost, estimate);
  show_cautions (self, estimate);
}

static void
update (GtkWidget *root)
{
  EstimateBox *self = g_object_get_data (G_OBJECT (root), "ox-estimate");
  const OxPlan *plan = ox_session_find_plan (self->session);

  if (plan == self->shown || !gtk_widget_get_mapped (root))
    return;
  for (guint g = 0; g < OX_N_FIGURE_GROUPS; g++)
    ox_box_clear (self->groups[g]);
  ox_box_clear (self->shifts);
  ox_box_clear (self->cost);
  ox_box_clear (self->cautions);
  g_clear_pointer (&self->shown, ox_plan_unref);
  if (plan != NULL)
    {
      self->shown = ox_plan_ref (plan);
      show_plan (self, plan);
    }
}

static GtkExpander *
add_expander (GtkBox *root, const char *title, GtkBox **inside)
{
  GtkWidget *expander = gtk_expander_new (title);

  GtkWidget *outside = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  *inside = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  /* GTK 4.8 does not take the name from the title. */
  gtk_accessible_update_property (GTK_ACCESSIBLE (expander), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  gtk_box_append (GTK_BOX (outside), GTK_WIDGET (*inside));
  gtk_expander_set_child (GTK_EXPANDER (expander), outside);
  gtk_box_append (root, expander);
  return GTK_EXPANDER (expander);
}

static void
add_form_button (GtkBox *inside, const char *label, const char *action)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (gtk_widget_get_parent (GTK_WIDGET (inside))), button);
}

GtkWidget *
ox_estimate_box_new (OxSession *session, OxCanvas *canvas)
{
  GtkWidget *root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  EstimateBox *self = g_new0 (EstimateBox, 1);

  self->session = session;
  self->canvas = canvas;
  g_object_set_data_full (G_OBJECT (root), "ox-estimate", self, (GDestroyNotify) estimate_box_free);
  for (guint g = 0; g < OX_N_FIGURE_GROUPS; g++)
    self->expanders[g] = add_expander (GTK_BOX (root), ox_estimate_group_name (g), &self->groups[g]);
  gtk_expander_set_expanded (self->expanders[OX_FIGURE_TIME], TRUE);
  add_expander (GTK_BOX (root), _ ("Hours by shift"), &self->shifts);
  add_expander (GTK_BOX (root), _ ("Cost"), &self->cost);
  for (guint i = 0; i < G_N_ELEMENTS (forms); i++)
    add_form_button (forms[i].group >= 0 ? self->groups[forms[i].group] : self->cost, _ (forms[i].label),
                     forms[i].action);
  add_expander (GTK_BOX (root), _ ("Cautions"), &self->cautions);
  g_signal_connect_object (session, "plan-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  g_signal_connect (root, "map", G_CALLBACK (update), NULL);
  return root;
}
