/* Oxturn: app/panels/record-lists - what is done and left, day by day, as rows of the side panel.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/record-lists.h"

#include "app/panels/estimate-lists.h"
#include "app/rows.h"
#include "record/wear.h"

#include <glib/gi18n-lib.h>

static void
add (GtkBox *box, const char *name, const char *below, char *value)
{
  g_autofree char *text = value;

  gtk_box_append (box, ox_estimate_row (name, text, below, OX_VERDICT_NONE));
}

/* --- Done and left --- */

static void
add_part (GtkBox *box, const char *name, const OxProgressDay *part, double area, OxUnits units)
{
  g_autofree char *m2 = ox_units_area_text (units, area);
  g_autofree char *hours
      = g_strdup_printf (_ ("%.1f h planned: strips and moves %.1f h, edge work %.1f h"), ox_progress_hours (part),
                         part->strip_hours + part->move_hours, part->edge_hours);

  add (
      box, name, hours,
      g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u strip, %s", "%u strips, %s", part->strips), part->strips, m2));
}

void
ox_record_list_progress (GtkBox *box, const OxPlan *plan, const OxProgress *progress)
{
  double meter;

  ox_box_clear (box);
  if (progress == NULL)
    {
      gtk_box_append (box, ox_note_new (_ ("There is no plan yet.")));
      return;
    }
  meter = progress->done.meter_hours;
  add_part (box, _ ("Done"), &progress->done, progress->finished_m2, plan->job->units);
  add_part (box, _ ("Left to do"), &progress->left, progress->left_m2, plan->job->units);
  add (box, _ ("Meter"), _ ("against the hours planned for strips and moves of these days"),
       meter > 0 ? g_strdup_printf (_ ("%.1f h"), meter) : g_strdup ("\342\200\223"));
  if (progress->lost > 0)
    {
      g_autofree char *text
          = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u strip that was done is none of this plan any more.",
                                          "%u strips that were done are none of this plan any more.", progress->lost),
                             progress->lost);

      gtk_box_append (box, ox_note_new (text));
    }
}

/* --- Days --- */

typedef struct
{
  OxDayChosen chosen;
  gpointer data;
  char *date;
} Choice;

static void
choice_free (gpointer data, GClosure *closure)
{
  (void) closure;
  g_free (((Choice *) data)->date);
  g_free (data);
}

static void
chosen_cb (GtkButton *button, Choice *choice)
{
  (void) button;
  choice->chosen (choice->date, choice->data);
}

static char *
day_text (const OxProgressDay *day, OxUnits units)
{
  g_autofree char *m2 = ox_units_area_text (units, day->blasted_m2 + day->edge_m2);
  g_autoptr (GString) text = g_string_new (m2);

  if (*day->strip_numbers != '\0')
    g_string_append_printf (text, _ (", strips %s"), day->strip_numbers);
  if (*day->edge_numbers != '\0')
    g_string_append_printf (text, ", %s", day->edge_numbers);
  g_string_append_printf (text, _ ("; %.1f h planned"), ox_progress_hours (day));
  if (day->metered)
    g_string_append_printf (text, _ (", %.1f h on the meter"), day->meter_hours);
  if (day->least_csp > 0)
    g_string_append_printf (text, day->least_csp < day->most_csp ? "; CSP %u\342\200\223%u" : "; CSP %u",
                            day->least_csp, day->most_csp);
  if (day->depths > 0)
    g_string_append_printf (text, "; %.2f mm", day->depth_mm);
  if (*day->notes != '\0')
    g_string_append_printf (text, "; %s", day->notes);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

void
ox_record_list_days (GtkBox *box, const OxProgress *progress, OxUnits units, OxDayChosen chosen, gpointer data)
{
  ox_box_clear (box);
  for (guint i = 0; progress != NULL && i < progress->n_days; i++)
    {
      const OxProgressDay *day = &progress->days[i];
      g_autofree char *text = day_text (day, units);
      GtkWidget *button = gtk_button_new ();
      Choice *choice = g_new0 (Choice, 1);

      *choice = (Choice){ chosen, data, g_strdup (day->date) };
      gtk_button_set_child (GTK_BUTTON (button), ox_estimate_row (day->date, "", text, OX_VERDICT_NONE));
      gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
      gtk_widget_add_css_class (button, "finding");
      gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, day->date, -1);
      g_signal_connect_data (button, "clicked", G_CALLBACK (chosen_cb), choice, choice_free, (GConnectFlags) 0);
      gtk_box_append (box, button);
    }
  if (gtk_widget_get_first_child (GTK_WIDGET (box)) == NULL)
    gtk_box_append (box, ox_note_new (_ ("Nothing is recorded yet.")));
}

/* --- Wear parts --- */

void
ox_record_list_wear (GtkBox *box, const OxPlan *plan)
{
  g_autoptr (GArray) parts = NULL;

  ox_box_clear (box);
  if (plan == NULL)
    return;
  parts = ox_wear_now (plan);
  for (guint i = 0; i < parts->len; i++)
    {
      const OxWearNow *part = &g_array_index (parts, OxWearNow, i);
      g_autofree char *name = part->machine > 0 ? g_strdup_printf (_ ("%s, machine %u"), _ (part->name), part->machine)
                                                : g_strdup (_ (part->name));
      g_autofree char *run = g_strdup_printf (_ ("every %.0f h, %.1f h run"), part->interval_h, part->run_h);
      g_autofree char *due = part->due_strip > 0
                                 ? g_strdup_printf (_ ("%s; check before strip %u"), run, part->due_strip)
                                 : g_strdup (run);
      g_autofree char *left = g_strdup_printf (_ ("%.1f h left"), part->left_h);

      gtk_box_append (box, ox_estimate_row (name, left, due, part->due_strip > 0 ? OX_VERDICT_WARN : OX_VERDICT_NONE));
    }
}
