/* Oxturn: app/panels/record-panel - what is done on which day, and what is left.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/panels.h"

#include "app/panels/record-lists.h"
#include "app/rows.h"
#include "base/number.h"
#include "base/words.h"
#include "job/text.h"
#include "session/marking.h"

#define NOTES_HEIGHT_PX 54

typedef struct
{
  OxSession *session; /* Borrowed */
  OxCanvas *canvas;   /* Borrowed */
  char *date;         /* Owned: day that is marked and shown, "" until there is one */
  OxField *day, *machine, *meter_start, *meter_end;
  GtkWidget *notes_view; /* Borrowed */
  GtkTextBuffer *notes;  /* Borrowed, of the view */
  GtkDropDown *csp, *click;
  OxField *depth;
  OxField *strips, *edges;
  GtkWidget *remove;
  GtkBox *progress, *days, *wear;
  const OxPlan *shown; /* Owned (nullable): the plan that the lists are of */
  gboolean listed;     /* whether they are of any */
} RecordPanel;

static const OxFieldRange depth_range = { 0, FALSE, 100 };
static const OxFieldRange machine_range = { 1, FALSE, OX_MACHINES_MOST };

static void
record_panel_free (RecordPanel *self)
{
  g_clear_pointer (&self->shown, ox_plan_unref);
  g_free (self->date);
  g_free (self);
}

/* --- The mark --- */

static OxMark
mark_of (RecordPanel *self)
{
  return (OxMark){ .date = self->date,
                   .csp = gtk_drop_down_get_selected (self->csp),
                   .depth_mm = ox_field_get_value (self->depth) };
}

static void
hand_over (RecordPanel *self)
{
  OxMark mark = mark_of (self);

  ox_canvas_set_mark (self->canvas, &mark, gtk_drop_down_get_selected (self->click) == 1);
}

/* --- The day --- */

/* The number of the machine whose meter and notes are shown. */
static guint
machine_of (RecordPanel *self)
{
  return (guint) ox_field_get_value (self->machine);
}

static const OxRecordDay *
find_day (RecordPanel *self)
{
  return ox_record_find_day (ox_session_get_job (self->session)->record, self->date, machine_of (self));
}

static char *
meter_text (double hours)
{
  return hours < 0 ? g_strdup ("") : ox_words_number (hours, 2);
}

/* What was refused stays where it is while only another field of the day changes. */
static void
show_text (OxField *field, const char *text, gboolean same_day)
{
  if (!same_day || ox_field_find_complaint (field) == NULL)
    ox_field_set_text (field, text);
}

static char *
typed_notes (RecordPanel *self)
{
  GtkTextIter start, end;
  g_autofree char *typed = NULL;

  gtk_text_buffer_get_bounds (self->notes, &start, &end);
  typed = gtk_text_buffer_get_text (self->notes, &start, &end, FALSE);
  return ox_text_clean (typed, TRUE);
}

/* What is being typed stays until the notes are left. */
static void
show_notes (RecordPanel *self, const char *notes, gboolean same_day)
{
  g_autofree char *shown = typed_notes (self);

  if (!g_str_equal (shown, notes) && !(same_day && gtk_widget_has_focus (self->notes_view)))
    gtk_text_buffer_set_text (self->notes, notes, -1);
}

static void
show_day (RecordPanel *self, gboolean same_day)
{
  const OxRecordDay *day = find_day (self);
  g_autofree char *start = meter_text (day != NULL ? day->meter_start_h : OX_METER_UNREAD);
  g_autofree char *end = meter_text (day != NULL ? day->meter_end_h : OX_METER_UNREAD);

  ox_field_set_text (self->day, self->date);
  show_text (self->meter_start, start, same_day);
  show_text (self->meter_end, end, same_day);
  show_notes (self, day != NULL ? day->notes : "", same_day);
  gtk_widget_set_sensitive (self->remove, day != NULL);
}

static void
set_date (RecordPanel *self, const char *date)
{
  char *copy = g_strdup (date); /* which may be our own */

  g_free (self->date);
  self->date = copy;
  show_day (self, FALSE);
  hand_over (self);
}

static void
day_cb (OxField *field, RecordPanel *self)
{
  g_autofree char *date = g_strstrip (ox_text_clean (ox_field_get_text (field), FALSE));

  if (*date == '\0' || !ox_text_is_date (date))
    ox_field_refuse (field, _ ("A day is needed, such as 2026-09-14"));
  else
    set_date (self, date);
}

/* A meter that nobody read is an empty field. */
static gboolean
read_meter (OxField *field, double *hours)
{
  g_autofree char *text = g_strdelimit (g_strstrip (g_strdup (ox_field_get_text (field))), ",", '.');

  *hours = OX_METER_UNREAD;
  if (*text == '\0' || (ox_number_parse (text, hours) && *hours >= 0))
    return TRUE;
  ox_field_refuse (field, _ ("A meter reading in hours is needed, 0 to 1000000, or nothing"));
  return FALSE;
}

/* Only what stands in @field: another one may hold what was refused. */
static void
day_changed_cb (OxField *field, RecordPanel *self)
{
  const OxRecordDay *kept = find_day (self);
  g_autofree char *notes = typed_notes (self);
  OxRecordDay day = { self->date, OX_METER_UNREAD, OX_METER_UNREAD, (char *) "", machine_of (self) };
  g_autoptr (GError) error = NULL;

  if (*self->date == '\0')
    {
      ox_field_refuse (field, _ ("Type the day first"));
      return;
    }
  if (kept != NULL)
    day = *kept;
  if (field == self->day) /* stands for the notes, which are no field */
    day.notes = notes;
  else if (!read_meter (field, field == self->meter_start ? &day.meter_start_h : &day.meter_end_h))
    return;
  if (!ox_marking_set_day (self->session, &day, &error))
    ox_field_refuse (field, error->message);
}

static void
remove_day_cb (RecordPanel *self)
{
  g_autoptr (GError) error = NULL;

  if (!ox_marking_remove_day (self->session, self->date, &error))
    ox_field_refuse (self->day, error->message);
}

static void
notes_left_cb (RecordPanel *self)
{
  const OxRecordDay *day = find_day (self);
  g_autofree char *notes = typed_notes (self);

  if (!g_str_equal (notes, day != NULL ? day->notes : ""))
    day_changed_cb (self->day, self);
}

static void
machine_cb (OxField *field, RecordPanel *self)
{
  double typed = ox_field_get_value (field);

  if (typed != floor (typed))
    ox_field_set_number (field, floor (typed), 0);
  show_day (self, FALSE);
}

/* --- Marking by numbers --- */

static void
mark_cb (RecordPanel *self, GtkWidget *button)
{
  gboolean strips = g_object_get_data (G_OBJECT (button), "ox-strips") != NULL;
  gboolean done = g_object_get_data (G_OBJECT (button), "ox-done") != NULL;
  OxField *field = strips ? self->strips : self->edges;
  const char *which = ox_field_get_text (field);
  OxMark mark = mark_of (self);
  g_autoptr (GError) error = NULL;
  gboolean marked;

  if (strips)
    marked = done ? ox_marking_mark_strips (self->session, which, &mark, &error)
                  : ox_marking_unmark_strips (self->session, which, &error);
  else
    marked = done ? ox_marking_mark_edges (self->session, which, &mark, &error)
                  : ox_marking_unmark_edges (self->session, which, &error);
  if (marked)
    ox_field_set_text (field, "");
  else
    ox_field_refuse (field, error->message);
}

static void
add_button (RecordPanel *self, GtkBox *row, const char *label, const char *name, gboolean strips, gboolean done)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_tooltip_text (button, name);
  g_object_set_data (G_OBJECT (button), "ox-strips", strips ? self : NULL);
  g_object_set_data (G_OBJECT (button), "ox-done", done ? self : NULL);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (mark_cb), self);
  gtk_box_append (row, button);
}

static OxField *
add_numbers (RecordPanel *self, GtkGrid *rows, gboolean strips)
{
  OxField *field
      = ox_rows_add_field (rows, OX_FIELD_TEXT, strips ? _ ("St_rips by number") : _ ("_Edge work by number"));
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_entry_set_placeholder_text (GTK_ENTRY (field), strips ? "1-40, 52" : "E1-E4");
  gtk_widget_set_tooltip_text (GTK_WIDGET (field),
                               _ ("7: one; 1-40: a run; -40: all up to it; several with commas between them"));
  add_button (self, GTK_BOX (row), _ ("Done"), strips ? _ ("Mark these strips done") : _ ("Mark this edge work done"),
              strips, TRUE);
  add_button (self, GTK_BOX (row), _ ("Not Done"),
              strips ? _ ("Take back the marks of these strips") : _ ("Take back the marks of this edge work"), strips,
              FALSE);
  gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
  ox_rows_add (rows, "", row);
  return field;
}

/* --- What is shown --- */

static void
choose_day_cb (const char *date, gpointer data)
{
  set_date (data, date);
}

/* To begin with the last day of the record, else the first one of the calendar. */
static void
find_date (RecordPanel *self)
{
  const OxJob *job = ox_session_get_job (self->session);

  if (*self->date != '\0')
    return;
  g_free (self->date);
  self->date
      = g_strdup (job->record->n_days > 0 ? job->record->days[job->record->n_days - 1].date : job->calendar->first_day);
}

/* To add up a large record takes its time, and a change of the job changes the lists with its plan only. */
static void
show_lists (RecordPanel *self, const OxPlan *plan)
{
  g_autoptr (OxProgress) progress = NULL;

  if (self->listed && plan == self->shown)
    return;
  self->listed = TRUE;
  g_clear_pointer (&self->shown, ox_plan_unref);
  if (plan != NULL)
    {
      self->shown = ox_plan_ref (plan);
      progress = ox_progress_new (plan);
    }
  ox_record_list_progress (self->progress, plan, progress);
  ox_record_list_days (self->days, progress, plan != NULL ? plan->job->units : OX_UNITS_METRES, choose_day_cb, self);
  ox_record_list_wear (self->wear, plan);
}

/* Only where several are at work, or the record has been kept for several. */
static void
show_machine (RecordPanel *self)
{
  const OxJob *job = ox_session_get_job (self->session);
  gboolean several = job->calendar->machines > 1;

  for (guint i = 0; i < job->record->n_days; i++)
    several = several || job->record->days[i].machine > 1;
  if (!several)
    ox_field_set_number (self->machine, 1, 0);
  ox_rows_set_row_visible (GTK_GRID (gtk_widget_get_parent (GTK_WIDGET (self->machine))), self->machine, several);
}

static void
update (GtkWidget *root)
{
  RecordPanel *self = g_object_get_data (G_OBJECT (root), "ox-record");
  const OxPlan *plan = ox_session_find_plan (self->session);

  if (!gtk_widget_get_mapped (root))
    return;
  find_date (self);
  show_machine (self);
  show_day (self, TRUE);
  hand_over (self);
  show_lists (self, plan);
}

/* --- Building --- */

static GtkWidget *
make_notes (RecordPanel *self)
{
  GtkWidget *view = gtk_text_view_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->notes_view = view;
  self->notes = gtk_text_view_get_buffer (GTK_TEXT_VIEW (view));
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (view), FALSE);
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (view), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_left_margin (GTK_TEXT_VIEW (view), 6);
  gtk_text_view_set_top_margin (GTK_TEXT_VIEW (view), 4);
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Notes"), -1);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (notes_left_cb), self);
  gtk_widget_add_controller (view, focus);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), view);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scrolled), NOTES_HEIGHT_PX);
  gtk_widget_add_css_class (scrolled, "frame");
  return scrolled;
}

static GtkWidget *
make_day (RecordPanel *self)
{
  GtkGrid *rows = GTK_GRID (ox_rows_new ());

  self->day = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("_Day, year-month-day"));
  self->machine = ox_rows_add_field (rows, OX_FIELD_NUMBER, _ ("Mac_hine"));
  self->meter_start = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("_Meter at the start, h"));
  self->meter_end = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("Me_ter at the end, h"));
  ox_rows_add_wide (rows, ox_note_new (_ ("Notes")));
  ox_rows_add_wide (rows, make_notes (self));
  ox_field_set_range (self->machine, &machine_range);
  ox_field_set_number (self->machine, 1, 0);
  g_signal_connect (self->day, "commit", G_CALLBACK (day_cb), self);
  g_signal_connect (self->meter_start, "commit", G_CALLBACK (day_changed_cb), self);
  g_signal_connect (self->meter_end, "commit", G_CALLBACK (day_changed_cb), self);
  g_signal_connect (self->machine, "commit", G_CALLBACK (machine_cb), self);
  self->remove = gtk_button_new_with_label (_ ("Remove Day"));
  gtk_widget_set_tooltip_text (self->remove,
                               _ ("Takes the readings and notes of this day away; what was marked on it stays"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->remove), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Remove Day"), -1);
  g_signal_connect_swapped (self->remove, "clicked", G_CALLBACK (remove_day_cb), self);
  ox_rows_add (rows, "", self->remove);
  return GTK_WIDGET (rows);
}

static GtkWidget *
make_marking (RecordPanel *self)
{
  const char *const clicks[] = { _ ("this one"), _ ("all up to it"), NULL };
  GtkGrid *rows = GTK_GRID (ox_rows_new ());

  self->click = ox_rows_add_choice (rows, _ ("A _click marks"), clicks);
  self->strips = add_numbers (self, rows, TRUE);
  self->edges = add_numbers (self, rows, FALSE);
  self->csp = ox_rows_add_csp (rows, _ ("_Profile read"));
  self->depth = ox_rows_add_field (rows, OX_FIELD_NUMBER, _ ("De_pth read, mm"));
  ox_field_set_range (self->depth, &depth_range);
  ox_field_set_number (self->depth, 0, 2);
  g_signal_connect_swapped (self->click, "notify::selected", G_CALLBACK (hand_over), self);
  g_signal_connect_swapped (self->csp, "notify::selected", G_CALLBACK (hand_over), self);
  g_signal_connect_swapped (self->depth, "commit", G_CALLBACK (hand_over), self);
  return GTK_WIDGET (rows);
}

static GtkBox *
add_list (GtkBox *root, const char *title)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_box_append (root, ox_heading_new (title));
  gtk_box_append (root, box);
  return GTK_BOX (box);
}

GtkWidget *
ox_record_panel_new (OxSession *session, OxCanvas *canvas)
{
  GtkWidget *root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  RecordPanel *self = g_new0 (RecordPanel, 1);

  self->session = session;
  self->canvas = canvas;
  self->date = g_strdup ("");
  g_object_set_data_full (G_OBJECT (root), "ox-record", self, (GDestroyNotify) record_panel_free);
  gtk_box_append (GTK_BOX (root), ox_heading_new (_ ("Day")));
  gtk_box_append (GTK_BOX (root), make_day (self));
  gtk_box_append (GTK_BOX (root), ox_heading_new (_ ("Mark done")));
  gtk_box_append (GTK_BOX (root), make_marking (self));
  self->progress = add_list (GTK_BOX (root), _ ("Done and left"));
  self->days = add_list (GTK_BOX (root), _ ("Days"));
  self->wear = add_list (GTK_BOX (root), _ ("Wear parts"));
  g_signal_connect_object (session, "job-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "plan-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  g_signal_connect (root, "map", G_CALLBACK (update), NULL);
  return root;
}
