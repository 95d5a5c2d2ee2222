/* Oxturn: app/panels/sheets-panel - texts of the sheets, paper and scale, and what to do with them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/panels.h"

#include "app/rows.h"
#include "job/edit.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>

#define NOTES_HEIGHT_PX 70

static const struct
{
  const char *name;
  gsize offset; /* in OxTexts */
} texts[] = {
  { N_ ("_Title"), G_STRUCT_OFFSET (OxTexts, title) },
  { N_ ("_Client"), G_STRUCT_OFFSET (OxTexts, client) },
  { N_ ("_Site"), G_STRUCT_OFFSET (OxTexts, site) },
  { N_ ("Co_mpany"), G_STRUCT_OFFSET (OxTexts, company) },
  { N_ ("_Author"), G_STRUCT_OFFSET (OxTexts, author) },
  { N_ ("Drawing _number"), G_STRUCT_OFFSET (OxTexts, number) },
  { N_ ("_Revision"), G_STRUCT_OFFSET (OxTexts, revision) },
  { N_ ("_Date"), G_STRUCT_OFFSET (OxTexts, date) },
  { N_ ("Stat_us"), G_STRUCT_OFFSET (OxTexts, status) },
};

struct _OxSheetsPanel
{
  GtkWidget parent_instance;

  OxSession *session; /* Owned */
  OxSheetOptions options;
  OxLanguage language; /* what options.language points to where the sheets have one of their own */

  /* Children */
  OxField *fields[G_N_ELEMENTS (texts)];
  GtkTextBuffer *notes;
  OxField *scale;
};

G_DEFINE_FINAL_TYPE (OxSheetsPanel, ox_sheets_panel, GTK_TYPE_WIDGET)

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static char **
text_at (OxTexts *job_texts, guint i)
{
  return (char **) (gpointer) ((char *) job_texts + texts[i].offset);
}

/* --- Texts --- */

static void
update (OxSheetsPanel *self)
{
  OxTexts *job_texts = ox_session_get_job (self->session)->texts;
  GtkTextIter start, end;
  g_autofree char *shown = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    ox_field_set_text (self->fields[i], *text_at (job_texts, i));
  gtk_text_buffer_get_bounds (self->notes, &start, &end);
  shown = gtk_text_buffer_get_text (self->notes, &start, &end, FALSE);
  if (g_strcmp0 (shown, job_texts->notes) != 0)
    gtk_text_buffer_set_text (self->notes, job_texts->notes, -1);
}

static void
apply_texts (OxSheetsPanel *self, const OxTexts *job_texts)
{
  g_autoptr (OxJob) job = ox_job_with_texts (ox_session_get_job (self->session), job_texts);

  ox_session_apply (self->session, job, _ ("Change Text"), NULL, NULL);
}

/* "2026-11-24", the rows that title blocks hold; the empty text means none. */
static gboolean
is_date (const char *text)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  g_autofree char *full = g_strconcat (text, "T00:00:00Z", NULL);
  g_autoptr (GDateTime) date = g_date_time_new_from_iso8601 (full, zone);

  return *text == '\0' || (date != NULL && strlen (text) == 10);
}

static void
text_cb (OxField *field, OxSheetsPanel *self)
{
  g_autoptr (OxTexts) job_texts = ox_texts_copy (ox_session_get_job (self->session)->texts);
  const char *typed = ox_field_get_text (field);

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    if (self->fields[i] == field)
      {
        if (texts[i].offset == G_STRUCT_OFFSET (OxTexts, date) && !is_date (typed))
          {
            ox_field_refuse (field, _ ("Type the date as year, month, day: 2026-11-24."));
            return;
          }
        g_free (*text_at (job_texts, i));
        *text_at (job_texts, i) = ox_text_clean (typed, FALSE);
      }
  apply_texts (self, job_texts);
}

static void
notes_left_cb (OxSheetsPanel *self)
{
  g_autoptr (OxTexts) job_texts = ox_texts_copy (ox_session_get_job (self->session)->texts);
  GtkTextIter start, end;
  g_autofree char *typed = NULL;
  g_autofree char *clean = NULL;

  gtk_text_buffer_get_bounds (self->notes, &start, &end);
  typed = gtk_text_buffer_get_text (self->notes, &start, &end, FALSE);
  clean = ox_text_clean (typed, TRUE);
  if (g_str_equal (clean, job_texts->notes))
    return;
  g_free (job_texts->notes);
  job_texts->notes = g_steal_pointer (&clean);
  apply_texts (self, job_texts);
}

static GtkWidget *
make_notes (OxSheetsPanel *self)
{
  GtkWidget *view = gtk_text_view_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->notes = gtk_text_view_get_buffer (GTK_TEXT_VIEW (view));
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (view), FALSE);
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (view), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_left_margin (GTK_TEXT_VIEW (view), 6);
  gtk_text_view_set_top_margin (GTK_TEXT_VIEW (view), 4);
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Notes on the scope drawing"), -1);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (notes_left_cb), self);
  gtk_widget_add_controller (view, focus);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), view);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scrolled), NOTES_HEIGHT_PX);
  gtk_widget_add_css_class (scrolled, "frame");
  return scrolled;
}

static GtkWidget *
make_texts (OxSheetsPanel *self)
{
  GtkWidget *rows = ox_rows_new ();

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      self->fields[i] = ox_rows_add_field (GTK_GRID (rows), OX_FIELD_TEXT, _ (texts[i].name));
      g_signal_connect (self->fields[i], "commit", G_CALLBACK (text_cb), self);
    }
  ox_rows_add_wide (GTK_GRID (rows), ox_note_new (_ ("Notes on the scope drawing")));
  ox_rows_add_wide (GTK_GRID (rows), make_notes (self));
  return rows;
}

/* --- Paper and scale --- */

static void
which_cb (GtkDropDown *choice, GParamSpec *pspec, OxSheetsPanel *self)
{
  static const OxSheetKinds kinds[] = { OX_SHEET_ALL,   OX_SHEET_SCOPE,    OX_SHEET_QUOTE, OX_SHEET_CREW,
                                        OX_SHEET_SETUP, OX_SHEET_SCHEDULE, OX_SHEET_DAYS };

  (void) pspec;
  self->options.which = kinds[gtk_drop_down_get_selected (choice)];
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
paper_cb (GtkDropDown *choice, GParamSpec *pspec, OxSheetsPanel *self)
{
  (void) pspec;
  self->options.paper = ox_paper_get (gtk_drop_down_get_selected (choice));
  g_signal_emit (self, signals[CHANGED], 0);
}

/* The first choice is none. */
static void
tiles_cb (GtkDropDown *choice, GParamSpec *pspec, OxSheetsPanel *self)
{
  guint chosen = gtk_drop_down_get_selected (choice);

  (void) pspec;
  self->options.tiles = chosen > 0 ? ox_paper_get (chosen - 1) : NULL;
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
orientation_cb (GtkDropDown *choice, GParamSpec *pspec, OxSheetsPanel *self)
{
  (void) pspec;
  self->options.orientation = (OxOrientation) gtk_drop_down_get_selected (choice);
  g_signal_emit (self, signals[CHANGED], 0);
}

/* The first choice is that of the window, the others stand in their order. */
static void
language_cb (GtkDropDown *choice, GParamSpec *pspec, OxSheetsPanel *self)
{
  guint chosen = gtk_drop_down_get_selected (choice);

  (void) pspec;
  self->options.language = NULL;
  if (chosen > 0)
    {
      self->language = ox_language_get (chosen - 1);
      self->options.language = &self->language;
    }
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
scale_cb (OxField *field, OxSheetsPanel *self)
{
  OxScale scale;

  if (!ox_scale_parse (ox_field_get_text (field), &scale))
    {
      ox_field_refuse (field, _ ("This is no scale. Type one like 1:100 or 1/8in, or auto."));
      return;
    }
  self->options.scale = scale;
  g_signal_emit (self, signals[CHANGED], 0);
}

static guint
usual_paper (OxUnits units)
{
  const OxPaper *usual = ox_paper_find (units == OX_UNITS_FEET ? "Tabloid" : "A3");

  for (guint i = 0; i < ox_paper_get_count (); i++)
    if (ox_paper_get (i) == usual)
      return i;
  return 0;
}

static GtkDropDown *
add_languages (GtkGrid *rows)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  g_ptr_array_add (names, (char *) _ ("As the window"));
  for (guint i = 0; i < ox_language_get_count (); i++)
    g_ptr_array_add (names, (char *) ox_language_get (i).name);
  g_ptr_array_add (names, NULL);
  return ox_rows_add_choice (rows, _ ("Lan_guage"), (const char *const *) names->pdata);
}

static GtkWidget *
make_paper (OxSheetsPanel *self)
{
  GtkWidget *rows = ox_rows_new ();
  const char *const which[] = { _ ("All sheets"),  _ ("Scope drawing"), _ ("Quote"),      _ ("Crew drawing"),
                                _ ("Set-up card"), _ ("Schedules"),     _ ("Day sheets"), NULL };
  const char *const orientations[] = { _ ("Automatic"), _ ("Portrait"), _ ("Landscape"), NULL };
  g_autoptr (GPtrArray) papers = g_ptr_array_new ();
  GtkDropDown *choice;

  choice = ox_rows_add_choice (GTK_GRID (rows), _ ("S_heets"), which);
  g_signal_connect (choice, "notify::selected", G_CALLBACK (which_cb), self);
  for (guint i = 0; i < ox_paper_get_count (); i++)
    g_ptr_array_add (papers, (char *) ox_paper_get (i)->name);
  g_ptr_array_add (papers, NULL);
  choice = ox_rows_add_choice (GTK_GRID (rows), _ ("_Paper"), (const char *const *) papers->pdata);
  gtk_drop_down_set_selected (choice, usual_paper (ox_session_get_job (self->session)->units));
  self->options.paper = ox_paper_get (gtk_drop_down_get_selected (choice));
  g_signal_connect (choice, "notify::selected", G_CALLBACK (paper_cb), self);
  choice = ox_rows_add_choice (GTK_GRID (rows), _ ("_Orientation"), orientations);
  g_signal_connect (choice, "notify::selected", G_CALLBACK (orientation_cb), self);
  g_ptr_array_insert (papers, 0, (char *) _ ("One page a sheet"));
  choice = ox_rows_add_choice (GTK_GRID (rows), _ ("In _tiles of"), (const char *const *) papers->pdata);
  g_signal_connect (choice, "notify::selected", G_CALLBACK (tiles_cb), self);
  choice = add_languages (GTK_GRID (rows));
  g_signal_connect (choice, "notify::selected", G_CALLBACK (language_cb), self);
  self->scale = ox_rows_add_field (GTK_GRID (rows), OX_FIELD_TEXT, _ ("Sca_le"));
  ox_field_set_text (self->scale, "auto");
  g_signal_connect (self->scale, "commit", G_CALLBACK (scale_cb), self);
  return rows;
}

static GtkWidget *
make_buttons (void)
{
  static const struct
  {
    const char *label;
    const char *action;
  } buttons[] = { { N_ ("PDF\342\200\246"), "win.export-pdf" },
                  { N_ ("SVG\342\200\246"), "win.export-svg" },
                  { N_ ("Print\342\200\246"), "win.print" } };
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (buttons); i++)
    {
      GtkWidget *button = gtk_button_new_with_label (_ (buttons[i].label));

      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), buttons[i].action);
      gtk_box_append (GTK_BOX (row), button);
    }
  return row;
}

OxSheetOptions
ox_sheets_panel_get_options (OxSheetsPanel *self)
{
  return self->options;
}

char *
ox_sheets_panel_get_summary (OxSheetsPanel *self)
{
  g_autofree char *scale = NULL;

  if (self->options.scale.denominator > 0)
    scale = ox_scale_text (self->options.scale);
  return g_strdup_printf (_ ("%s, %s"), self->options.paper->name,
                          scale != NULL ? scale : _ ("largest scale that fits"));
}

static void
ox_sheets_panel_dispose (GObject *object)
{
  OxSheetsPanel *self = OX_SHEETS_PANEL (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (ox_sheets_panel_parent_class)->dispose (object);
}

static void
ox_sheets_panel_class_init (OxSheetsPanelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ox_sheets_panel_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[CHANGED]
      = g_signal_new ("changed", OX_TYPE_SHEETS_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
ox_sheets_panel_init (OxSheetsPanel *self)
{
  self->options = (OxSheetOptions) OX_SHEET_OPTIONS_INIT;
}

GtkWidget *
ox_sheets_panel_new (OxSession *session)
{
  OxSheetsPanel *self = g_object_new (OX_TYPE_SHEETS_PANEL, NULL);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  self->session = g_object_ref (session);
  gtk_box_append (GTK_BOX (box), ox_heading_new (_ ("Paper")));
  gtk_box_append (GTK_BOX (box), make_paper (self));
  gtk_box_append (GTK_BOX (box), make_buttons ());
  gtk_box_append (GTK_BOX (box), ox_heading_new (_ ("Texts")));
  gtk_box_append (GTK_BOX (box), make_texts (self));
  gtk_widget_set_parent (box, GTK_WIDGET (self));
  g_signal_connect_object (session, "job-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
  return GTK_WIDGET (self);
}
