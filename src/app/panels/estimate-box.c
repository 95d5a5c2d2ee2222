/* Oxturn: app/panels/estimate-box
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/estimate-box.h"

#include "app/rows.h"
#include "estimate/cautions.h"
#include "estimate/cost.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxSession *session;  /* Borrowed */
  const OxPlan *shown; /* Owned: the plan that the figures are of */
  GtkBox *groups[OX_N_FIGURE_GROUPS];
  GtkExpander *expanders[OX_N_FIGURE_GROUPS];
  GtkBox *cost;
  GtkBox *cautions;
} EstimateBox;

static void
estimate_box_free (EstimateBox *self)
{
  g_clear_pointer (&self->shown, ox_plan_unref);
  g_free (self);
}

static void
clear (GtkBox *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
}

static GtkWidget *
make_text (const char *text, gboolean dim)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (label), dim ? 34 : 22);
  gtk_widget_set_hexpand (label, TRUE);
  if (dim)
    gtk_widget_add_css_class (label, "dim-label");
  return label;
}

/* Name and value on one line, below it what the figure rests on. */
static GtkWidget *
make_figure (const OxFigure *figure, OxUnits units)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  g_autofree char *text = ox_figure_value_text (figure, units);
  GtkWidget *value = gtk_label_new (text);

  gtk_widget_set_valign (value, GTK_ALIGN_START);
  gtk_widget_add_css_class (value, "figure");
  gtk_box_append (GTK_BOX (line), make_text (figure->label, FALSE));
  if (figure->verdict == OX_VERDICT_WARN || figure->verdict == OX_VERDICT_STOP)
    {
      gboolean stop = figure->verdict == OX_VERDICT_STOP;
      GtkWidget *mark = gtk_image_new_from_icon_name (stop ? "dialog-error-symbolic" : "dialog-warning-symbolic");

      gtk_widget_set_tooltip_text (mark, stop ? _ ("Cannot stay like this") : _ ("To look at"));
      gtk_widget_set_valign (mark, GTK_ALIGN_START);
      gtk_box_append (GTK_BOX (line), mark);
    }
  gtk_box_append (GTK_BOX (line), value);
  gtk_box_append (GTK_BOX (box), line);
  if (*figure->assumption != '\0')
    gtk_box_append (GTK_BOX (box), make_text (figure->assumption, TRUE));
  return box;
}

static void
add_amount (GtkBox *box, const char *name, OxMoney amount, const char *currency)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  g_autofree char *number = ox_money_text (amount);
  g_autofree char *text = *currency != '\0' ? g_strdup_printf ("%s %s", number, currency) : g_strdup (number);
  GtkWidget *value = gtk_label_new (text);

  gtk_widget_set_valign (value, GTK_ALIGN_START);
  gtk_widget_add_css_class (value, "figure");
  gtk_box_append (GTK_BOX (line), make_text (name, FALSE));
  gtk_box_append (GTK_BOX (line), value);
  gtk_box_append (box, line);
}

static void
show_cost (EstimateBox *self, const OxEstimate *estimate)
{
  g_autoptr (OxQuote) quote = ox_quote_new (estimate);
  const OxJob *job = estimate->plan->job;

  if (quote->lines->len == 0 || !quote->valid)
    {
      gtk_box_append (self->cost, ox_note_new (quote->valid ? _ ("The job has no rates of cost.")
                                                            : _ ("The amounts are too large to be added up.")));
      return;
    }
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const OxCostLine *line = &g_array_index (quote->lines, OxCostLine, i);
      const OxRoom *room = *line->room != '\0' ? ox_job_find_room (job, line->room) : NULL;
      g_autofree char *name = room != NULL ? g_strdup_printf ("%s, %s", line->what, room->name) : g_strdup (line->what);
      g_autofree char *rate = ox_money_text (line->rate);
      g_autofree char *how = g_strdup_printf (_ ("%.2f %s at %s"), line->quantity, line->unit, rate);

      add_amount (self->cost, name, line->amount, job->costs->currency);
      gtk_box_append (self->cost, make_text (how, TRUE));
    }
  add_amount (self->cost, _ ("Subtotal"), quote->sum.subtotal, job->costs->currency);
  add_amount (self->cost, _ ("Contingency"), quote->sum.contingency, job->costs->currency);
  add_amount (self->cost, _ ("Total"), quote->sum.total, job->costs->currency);
}

static void
show_cautions (EstimateBox *self, const OxEstimate *estimate)
{
  guint n;
  const OxCaution *rows = ox_cautions_list (&n);

  for (guint i = 0; i < n; i++)
    if (ox_caution_applies (&rows[i], estimate))
      {
        gtk_box_append (self->cautions, make_text (_ (rows[i].text), TRUE));
        gtk_widget_set_tooltip_text (gtk_widget_get_last_child (GTK_WIDGET (self->cautions)), rows[i].source);
      }
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

      gtk_box_append (self->groups[figure->group], make_figure (figure, plan->job->units));
      marked[figure->group] += figure->verdict == OX_VERDICT_WARN || figure->verdict == OX_VERDICT_STOP;
    }
  show_titles (self, marked);
  show_cost (self, estimate);
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
    clear (self->groups[g]);
  clear (self->cost);
  clear (self->cautions);
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

  *inside = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  /* GTK 4.8 does not take the name from the title. */
  gtk_accessible_update_property (GTK_ACCESSIBLE (expander), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  gtk_expander_set_child (GTK_EXPANDER (expander), GTK_WIDGET (*inside));
  gtk_box_append (root, expander);
  return GTK_EXPANDER (expander);
}

GtkWidget *
ox_estimate_box_new (OxSession *session)
{
  GtkWidget *root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  EstimateBox *self = g_new0 (EstimateBox, 1);

  self->session = session;
  g_object_set_data_full (G_OBJECT (root), "ox-estimate", self, (GDestroyNotify) estimate_box_free);
  for (guint g = 0; g < OX_N_FIGURE_GROUPS; g++)
    self->expanders[g] = add_expander (GTK_BOX (root), ox_estimate_group_name (g), &self->groups[g]);
  gtk_expander_set_expanded (self->expanders[OX_FIGURE_TIME], TRUE);
  add_expander (GTK_BOX (root), _ ("Cost"), &self->cost);
  add_expander (GTK_BOX (root), _ ("Cautions"), &self->cautions);
  g_signal_connect_object (session, "plan-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  g_signal_connect (root, "map", G_CALLBACK (update), NULL);
  return root;
}
