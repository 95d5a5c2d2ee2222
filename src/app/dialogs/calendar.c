/* Oxturn: app/dialogs/calendar - the working days, the shift and what it is made of.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/calendar.h"

#include "app/dialogs/figures.h"
#include "app/dialogs/form.h"
#include "base/shown.h"
#include "job/edit.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

#define DAYS 7
#define AT(member) offsetof (OxCalendar, member)
#define MINUTES                                                                                                        \
  {                                                                                                                    \
    0, FALSE, OX_CALENDAR_MOST_MIN                                                                                     \
  }

static const OxFigureRow figures[] = {
  { N_ ("S_hift, h"), AT (shift_h), 3, { 0, TRUE, OX_SHIFT_MOST_H } },
  { N_ ("_Breaks in it, min"), AT (break_min), 2, MINUTES },
  { N_ ("Set-_up, min"), AT (setup_min), 2, MINUTES },
  { N_ ("_Clean-up, min"), AT (cleanup_min), 2, MINUTES },
  { N_ ("_Refill of the hopper, min"), AT (refill_min), 2, MINUTES },
  { N_ ("_Drum change, min"), AT (drum_change_min), 2, MINUTES },
  { N_ ("_Wear check, min"), AT (wear_check_min), 2, MINUTES },
  { N_ ("_Noise, dB(A) (0: not measured)"), AT (noise_db), 1, { 0, FALSE, 200 } },
  { N_ ("S_ilica at the machine, µg/m³"), AT (silica_machine), 1, { 0, FALSE, 100000 } },
  { N_ ("Si_lica at edge work, µg/m³"), AT (silica_hand), 1, { 0, FALSE, 100000 } },
};

static const char *const day_names[DAYS] = {
  N_ ("Mon"), N_ ("Tue"), N_ ("Wed"), N_ ("Thu"), N_ ("Fri"), N_ ("Sat"), N_ ("Sun"),
};

static const OxFieldRange machines_range = { 1, FALSE, OX_MACHINES_MOST };

typedef struct
{
  OxSession *session; /* Borrowed: the parent window keeps it */
  OxField *first_day, *start;
  OxField *fields[G_N_ELEMENTS (figures)];
  OxField *machines;
  GtkCheckButton *days[DAYS];
} Calendar;

/* "7", "7:00", "07.30" */
static gboolean
read_start (const char *text, guint *minutes)
{
  g_autofree char *plain = g_strdelimit (g_strstrip (g_strdup (text)), ".h", ':');
  g_auto (GStrv) parts = g_strsplit (plain, ":", 3);
  guint64 hours, past = 0;

  if (parts[0] == NULL || !g_ascii_string_to_unsigned (parts[0], 10, 0, 23, &hours, NULL))
    return FALSE;
  if (parts[1] != NULL && *parts[1] != '\0'
      && (parts[2] != NULL || !g_ascii_string_to_unsigned (parts[1], 10, 0, 59, &past, NULL)))
    return FALSE;
  *minutes = (guint) (hours * 60 + past);
  return TRUE;
}

static char *
apply (Calendar *self, const OxCalendar *draft)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_autoptr (OxCalendar) calendar = ox_calendar_new (draft);
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) changed = NULL;

  if (ox_calendar_equal (calendar, job->calendar))
    return NULL;
  changed = ox_job_with_calendar (job, calendar, &error);
  if (changed == NULL)
    return g_strdup (error->message);
  ox_session_apply (self->session, changed, _ ("Set Calendar"), NULL, NULL);
  return NULL;
}

static char *
done (gpointer data)
{
  Calendar *self = data;
  OxCalendar draft = *ox_session_get_job (self->session)->calendar;
  g_autofree char *day = g_strstrip (ox_text_clean (ox_field_get_text (self->first_day), FALSE));
  double machines = ox_field_get_value (self->machines);

  if (!ox_text_is_date (day))
    return g_strdup_printf (_ ("First day: “%s” is no day; one such as 2026-09-14 is needed, or nothing"), ox_shown (day).text);
  if (!read_start (ox_field_get_text (self->start), &draft.start_min))
    return g_strdup_printf (_ ("Start of the shift: “%s” is no time; 0:00 to 23:59 is needed"),
                            ox_shown (ox_field_get_text (self->start)).text);
  if (machines != floor (machines))
    return g_strdup_printf (_ ("Machines that work at the same time: a whole number from 1 to %d is needed"),
                            OX_MACHINES_MOST);
  draft.first_day = day;
  draft.machines = (guint) machines;
  draft.days = 0;
  for (guint i = 0; i < DAYS; i++)
    draft.days |= gtk_check_button_get_active (self->days[i]) ? 1u << i : 0;
  if (draft.days == 0)
    return g_strdup (_ ("Working days: tick one at least"));
  ox_figures_read (figures, G_N_ELEMENTS (figures), self->fields, &draft);
  return apply (self, &draft);
}

static GtkWidget *
make_days (Calendar *self, guint days)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  for (guint i = 0; i < DAYS; i++)
    {
      GtkWidget *check = gtk_check_button_new_with_label (_ (day_names[i]));

      gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_LABEL, _ (day_names[i]), -1);
      gtk_check_button_set_active (GTK_CHECK_BUTTON (check), (days & (1u << i)) != 0);
      self->days[i] = GTK_CHECK_BUTTON (check);
      gtk_box_append (GTK_BOX (box), check);
    }
  return box;
}

static GtkWidget *
make_body (Calendar *self, const OxCalendar *calendar)
{
  GtkGrid *rows = GTK_GRID (ox_rows_new ());
  g_autofree char *start = g_strdup_printf ("%u:%02u", calendar->start_min / 60, calendar->start_min % 60);

  self->first_day = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("_First day, year-month-day"));
  ox_field_set_text (self->first_day, calendar->first_day);
  ox_rows_add (rows, _ ("Working days"), make_days (self, calendar->days));
  self->start = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("_Start of the shift"));
  ox_field_set_text (self->start, start);
  ox_figures_add (rows, figures, G_N_ELEMENTS (figures), calendar, self->fields);
  self->machines = ox_rows_add_field (rows, OX_FIELD_NUMBER, _ ("_Machines at work together"));
  ox_field_set_range (self->machines, &machines_range);
  ox_field_set_number (self->machines, calendar->machines, 0);
  ox_rows_widen_names (rows, 30);
  return GTK_WIDGET (rows);
}

GtkWindow *
ox_calendar_open (GtkWindow *parent, OxSession *session)
{
  Calendar *self = g_new0 (Calendar, 1);

  self->session = session;
  return ox_form_open (parent, &(OxForm){ .title = _ ("Calendar"),
                                          .accept = _ ("_Set"),
                                          .note = _ ("A shift runs from arriving to leaving. Edge work is done by the "
                                                     "crew of the machine."),
                                          .body = make_body (self, ox_session_get_job (session)->calendar),
                                          .done = done,
                                          .data = self,
                                          .free_data = g_free });
}
