/* Oxturn: app/panels/estimate-lists - shifts, cost and profile checks of an estimate as rows of the side panel.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/estimate-lists.h"

#include "app/rows.h"
#include "estimate/cost.h"
#include "estimate/spots.h"

#include <glib/gi18n-lib.h>

#define MOST_ROWS 60 /* of one list; the tables and sheets have them all */

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

GtkWidget *
ox_estimate_row (const char *name, const char *value, const char *below, OxVerdict verdict)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = gtk_label_new (value);

  gtk_widget_set_valign (label, GTK_ALIGN_START);
  gtk_widget_add_css_class (label, "figure");
  gtk_box_append (GTK_BOX (line), make_text (name, FALSE));
  if (verdict == OX_VERDICT_WARN || verdict == OX_VERDICT_STOP)
    {
      gboolean stop = verdict == OX_VERDICT_STOP;
      GtkWidget *mark = gtk_image_new_from_icon_name (stop ? "dialog-error-symbolic" : "dialog-warning-symbolic");

      gtk_widget_set_tooltip_text (mark, stop ? _ ("Cannot stay like this") : _ ("To look at"));
      gtk_widget_set_valign (mark, GTK_ALIGN_START);
      gtk_box_append (GTK_BOX (line), mark);
    }
  gtk_box_append (GTK_BOX (line), label);
  gtk_box_append (GTK_BOX (box), line);
  if (*below != '\0')
    gtk_box_append (GTK_BOX (box), make_text (below, TRUE));
  return box;
}

static void
say_rest (GtkBox *box, guint n)
{
  g_autofree char *text = NULL;

  if (n <= MOST_ROWS)
    return;
  text = g_strdup_printf (_ ("%u more stand in the tables and on the sheets."), n - MOST_ROWS);
  gtk_box_append (box, ox_note_new (text));
}

/* --- Shifts --- */

/* "strips 12-87, edge work 3.5 h", only what there is of it */
static char *
shift_text (const OxEstimate *estimate, const OxShift *shift)
{
  guint first = 0, last = 0;
  g_autoptr (GString) text = g_string_new ("");

  for (guint i = 0; i < estimate->work->pieces->len; i++)
    {
      const OxPiece *piece = &g_array_index (estimate->work->pieces, OxPiece, i);
      guint number;

      if (piece->kind != OX_PIECE_STRIP || piece->machine != shift->machine || piece->shift != shift->shift)
        continue;
      number = estimate->plan->strips[piece->index].order;
      first = first == 0 ? number : MIN (first, number);
      last = MAX (last, number);
    }
  if (first > 0)
    g_string_append_printf (text, _ ("strips %u to %u, %.1f h"), first, last, shift->minutes[OX_PIECE_STRIP] / 60);
  if (shift->minutes[OX_PIECE_EDGE] > 0)
    {
      g_string_append (text, text->len > 0 ? ", " : "");
      g_string_append_printf (text, _ ("edge work %.1f h"), shift->minutes[OX_PIECE_EDGE] / 60);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

void
ox_estimate_list_shifts (GtkBox *box, const OxEstimate *estimate)
{
  const GArray *shifts = estimate->work->shifts;
  gboolean crew = estimate->rules.machines > 1;

  for (guint i = 0; i < shifts->len && i < MOST_ROWS; i++)
    {
      const OxShift *shift = &g_array_index (shifts, OxShift, i);
      g_autofree char *day = g_strdup_printf (_ ("Shift %u"), shift->shift);
      g_autofree char *dated = *shift->day != '\0' ? g_strdup_printf ("%s, %s", day, shift->day) : g_strdup (day);
      g_autofree char *machine = g_strdup_printf (_ ("%s, machine %u"), dated, shift->machine + 1);
      g_autofree char *value = g_strdup_printf (_ ("%.1f h"), shift->working / 60);
      g_autofree char *below = shift_text (estimate, shift);

      gtk_box_append (box, ox_estimate_row (crew ? machine : dated, value, below, OX_VERDICT_NONE));
    }
  say_rest (box, shifts->len);
  if (shifts->len == 0)
    gtk_box_append (box, ox_note_new (_ ("There is no work to share out.")));
}

/* --- Cost --- */

static void
add_amount (GtkBox *box, const char *name, OxMoney amount, const char *below, const OxJob *job)
{
  g_autofree char *number = ox_cost_text (amount);
  g_autofree char *text
      = *job->costs->currency != '\0' ? g_strdup_printf ("%s %s", number, job->costs->currency) : g_strdup (number);

  gtk_box_append (box, ox_estimate_row (name, text, below, OX_VERDICT_NONE));
}

/* "3 at 85.00", "19.54 kg at 1.35" */
static char *
quantity_text (const OxCostLine *line, const char *rate)
{
  const char *unit = g_str_equal (line->unit, "m2") ? "m\302\262" : line->unit;

  /* TRANSLATORS: a quantity without decimals, and the rate for one */
  if (line->decimals == 0 && *unit == '\0')
    return g_strdup_printf (_ ("%.0f at %s"), line->quantity, rate);
  return g_strdup_printf (_ ("%.*f %s at %s"), (int) line->decimals, line->quantity, unit, rate);
}

static void
add_rooms (GtkBox *box, const OxQuote *quote, const OxJob *job)
{
  const OxCostLine *lines = (const OxCostLine *) (gconstpointer) quote->lines->data;

  for (guint i = 0; job->n_rooms > 1 && i < job->n_rooms; i++)
    add_amount (box, job->rooms[i]->name, ox_cost_room (lines, quote->lines->len, job->rooms[i]->id),
                i == 0 ? _ ("of the subtotal, by room") : "", job);
}

void
ox_estimate_list_cost (GtkBox *box, const OxEstimate *estimate)
{
  g_autoptr (OxQuote) quote = ox_quote_new (estimate);
  const OxJob *job = estimate->plan->job;

  if (quote->lines->len == 0 || !quote->valid)
    {
      gtk_box_append (box, ox_note_new (quote->valid ? _ ("The job has no rates of cost.")
                                                     : _ ("The amounts are too large to be added up.")));
      return;
    }
  for (guint i = 0; i < quote->lines->len && i < MOST_ROWS; i++)
    {
      const OxCostLine *line = &g_array_index (quote->lines, OxCostLine, i);
      const OxRoom *room = *line->room != '\0' ? ox_job_find_room (job, line->room) : NULL;
      g_autofree char *name = room != NULL ? g_strdup_printf ("%s, %s", line->what, room->name) : g_strdup (line->what);
      g_autofree char *rate = ox_cost_text (line->rate);
      g_autofree char *how = quantity_text (line, rate);

      add_amount (box, name, line->amount, how, job);
    }
  say_rest (box, quote->lines->len);
  add_amount (box, _ ("Subtotal"), quote->sum.subtotal, "", job);
  add_rooms (box, quote, job);
  add_amount (box, _ ("Contingency"), quote->sum.contingency, "", job);
  add_amount (box, _ ("Total"), quote->sum.total, "", job);
}

/* --- Profile checks --- */

static void
check_cb (GtkButton *button, OxCanvas *canvas)
{
  const OxSpot *spot = g_object_get_data (G_OBJECT (button), "ox-spot");

  ox_canvas_show_point (canvas, spot->at);
}

void
ox_estimate_list_checks (GtkBox *box, const OxEstimate *estimate, OxCanvas *canvas)
{
  const OxJob *job = estimate->plan->job;
  g_autoptr (GArray) spots = ox_spots_of (estimate->plan);

  for (guint i = 0; i < spots->len && i < MOST_ROWS; i++)
    {
      const OxSpot *spot = &g_array_index (spots, OxSpot, i);
      g_autofree char *x = ox_units_length_text (job->units, spot->at.x, FALSE);
      g_autofree char *y = ox_units_length_text (job->units, spot->at.y, TRUE);
      /* TRANSLATORS: number of a profile check, room, x and y of the place, number of the strip */
      g_autofree char *text
          = g_strdup_printf (_ ("%u: %s, at %s, %s, strip %u"), i + 1, job->rooms[spot->room]->name, x, y, spot->strip);
      GtkWidget *button = gtk_button_new ();

      gtk_button_set_child (GTK_BUTTON (button), make_text (text, TRUE));
      gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
      gtk_widget_add_css_class (button, "finding");
      gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
      g_object_set_data_full (G_OBJECT (button), "ox-spot", g_memdup2 (spot, sizeof *spot), g_free);
      g_signal_connect (button, "clicked", G_CALLBACK (check_cb), canvas);
      gtk_box_append (box, button);
    }
  say_rest (box, spots->len);
}
