/* Oxturn: app/dialogs/costs - currency, rates of cost, contingency.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/costs.h"

#include "app/dialogs/form.h"
#include "app/dialogs/lines.h"
#include "app/rows.h"
#include "base/shown.h"
#include "base/words.h"
#include "estimate/cost.h"
#include "job/edit.h"
#include "job/text.h"

#define KEPT "ox-amount" /* of a field: the amount as it stands in the job */
#define N_DRIVERS (OX_COST_EDGE_METRE + 1)

enum
{
  PER,
  NAME,
  AMOUNT
};

static const OxFieldRange share_range = { 0, FALSE, 100 };

typedef struct
{
  OxSession *session; /* Borrowed: the parent window keeps it */
  OxField *currency, *contingency;
  OxLines *lines;
} Costs;

/* --- Lines --- */

static void
per_cb (GtkDropDown *per, GParamSpec *pspec, GtkEntry *name)
{
  (void) pspec;
  gtk_entry_set_placeholder_text (name, ox_cost_driver_name ((OxCostDriver) gtk_drop_down_get_selected (per)));
}

static void
make_line (GtkWidget **cells, gpointer data)
{
  static const char *const units[N_DRIVERS] = {
    [OX_COST_LABOUR_HOUR] = N_ ("hour of the crew"),
    [OX_COST_EDGE_HOUR] = N_ ("hour of edge work"),
    [OX_COST_MACHINE_HOUR] = N_ ("hour of the machine"),
    [OX_COST_ABRASIVE_KG] = N_ ("kg of abrasive"),
    [OX_COST_DUST_DRUM] = N_ ("drum of dust"),
    [OX_COST_WEAR_HOUR] = N_ ("hour of the blast wheel"),
    [OX_COST_AREA] = N_ ("m² of floor"),
    [OX_COST_FIXED] = N_ ("job"),
    [OX_COST_EDGE_METRE] = N_ ("m of edge work"),
  };
  const char *shown[N_DRIVERS + 1] = { NULL };

  (void) data;
  for (guint i = 0; i < N_DRIVERS; i++)
    shown[i] = _ (units[i]);
  cells[PER] = gtk_drop_down_new_from_strings (shown);
  cells[NAME] = ox_field_new (OX_FIELD_TEXT, "");
  cells[AMOUNT] = ox_field_new (OX_FIELD_TEXT, "");
  gtk_editable_set_width_chars (GTK_EDITABLE (cells[NAME]), 22);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (cells[NAME]), 30);
  gtk_editable_set_width_chars (GTK_EDITABLE (cells[AMOUNT]), 10);
  gtk_editable_set_alignment (GTK_EDITABLE (cells[AMOUNT]), 1);
  gtk_widget_add_css_class (cells[AMOUNT], "figure");
  g_signal_connect_object (cells[PER], "notify::selected", G_CALLBACK (per_cb), cells[NAME], (GConnectFlags) 0);
  per_cb (GTK_DROP_DOWN (cells[PER]), NULL, GTK_ENTRY (cells[NAME]));
}

/* With the decimal sign of the language; (transfer full) */
static char *
amount_text (const char *amount)
{
  return g_strdelimit (g_strdup (amount), ".,", *ox_words_decimal ());
}

/* As long as nobody types another one, an amount stays in the job as it stands there; (transfer full) */
static char *
read_amount (OxField *field)
{
  const char *kept = g_object_get_data (G_OBJECT (field), KEPT);
  g_autofree char *typed = g_strstrip (ox_text_clean (ox_field_get_text (field), FALSE));
  g_autofree char *shown = amount_text (kept != NULL ? kept : "");

  return kept != NULL && g_str_equal (typed, shown) ? g_strdup (kept) : g_steal_pointer (&typed);
}

static void
add_line (OxLines *lines, const OxCostRate *rate)
{
  GtkWidget **cells = ox_lines_add (lines);
  g_autofree char *amount = amount_text (rate->amount);

  if (cells == NULL)
    return;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (cells[PER]), rate->per);
  ox_field_set_text (OX_FIELD (cells[NAME]), rate->name);
  ox_field_set_text (OX_FIELD (cells[AMOUNT]), amount);
  g_object_set_data_full (G_OBJECT (cells[AMOUNT]), KEPT, g_strdup (rate->amount), g_free);
}

/* Returns: (transfer full) (nullable): why line @i is none; its texts in @rate are to be freed in any case */
static char *
read_line (Costs *self, guint i, OxCostRate *rate)
{
  GtkWidget **cells = ox_lines_get (self->lines, i);
  OxMoney amount;

  rate->per = (OxCostDriver) gtk_drop_down_get_selected (GTK_DROP_DOWN (cells[PER]));
  rate->name = g_strstrip (ox_text_clean (ox_field_get_text (OX_FIELD (cells[NAME])), FALSE));
  rate->amount = read_amount (OX_FIELD (cells[AMOUNT]));
  if (ox_money_parse (rate->amount, &amount))
    {
      g_strdelimit (rate->amount, ",", '.');
      return NULL;
    }
  gtk_widget_grab_focus (cells[AMOUNT]);
  return g_strdup_printf (_ ("Amount %u: “%s” is no amount; digits with at most 4 decimals are needed"), i + 1,
                          ox_shown (rate->amount).text);
}

/* --- All of it --- */

static char *
apply (Costs *self, const OxCosts *draft)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_autoptr (OxCosts) costs = ox_costs_new (draft);
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) changed = NULL;

  if (ox_costs_equal (costs, job->costs))
    return NULL;
  changed = ox_job_with_costs (job, costs, &error);
  if (changed == NULL)
    return g_strdup (error->message);
  ox_session_apply (self->session, changed, _ ("Set Costs"), NULL, NULL);
  return NULL;
}

static char *
done (gpointer data)
{
  Costs *self = data;
  OxCosts draft = *ox_session_get_job (self->session)->costs;
  g_autofree char *currency = g_strstrip (ox_text_clean (ox_field_get_text (self->currency), FALSE));
  g_autofree OxCostRate *rates = NULL;
  char *why = NULL;

  draft.n = ox_lines_get_count (self->lines);
  rates = g_new0 (OxCostRate, MAX (draft.n, 1));
  for (guint i = 0; i < draft.n && why == NULL; i++)
    why = read_line (self, i, &rates[i]);
  draft.currency = currency;
  draft.contingency = ox_field_get_value (self->contingency) / 100;
  draft.rates = rates;
  if (why == NULL)
    why = apply (self, &draft);
  for (guint i = 0; i < draft.n; i++)
    {
      g_free (rates[i].name);
      g_free (rates[i].amount);
    }
  return why;
}

static GtkWidget *
make_body (Costs *self, const OxCosts *costs)
{
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkGrid *rows = GTK_GRID (ox_rows_new ());

  self->currency = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("_Currency"));
  self->contingency = ox_rows_add_field (rows, OX_FIELD_NUMBER, _ ("C_ontingency, %"));
  ox_field_set_text (self->currency, costs->currency);
  ox_field_set_range (self->contingency, &share_range);
  ox_field_set_number (self->contingency, costs->contingency * 100, 2);
  self->lines = ox_lines_new (&(OxLinesKind){ .headings = { _ ("Per"), _ ("Name"), _ ("Amount") },
                                              .add = _ ("_Add a Rate"),
                                              .most = OX_COST_LINES_MOST,
                                              .make = make_line });
  for (guint i = 0; i < costs->n; i++)
    add_line (self->lines, &costs->rates[i]);
  gtk_box_append (GTK_BOX (body), GTK_WIDGET (rows));
  gtk_box_append (GTK_BOX (body), ox_lines_get_widget (self->lines));
  return body;
}

GtkWindow *
ox_costs_open (GtkWindow *parent, OxSession *session)
{
  Costs *self = g_new0 (Costs, 1);

  self->session = session;
  return ox_form_open (parent, &(OxForm){ .title = _ ("Costs"),
                                          .accept = _ ("_Set"),
                                          .note = _ ("The rates are yours. A line without a name has the usual one. "
                                                     "Amounts have up to 4 decimals and are reckoned exactly."),
                                          .body = make_body (self, ox_session_get_job (session)->costs),
                                          .done = done,
                                          .data = self,
                                          .free_data = g_free });
}
