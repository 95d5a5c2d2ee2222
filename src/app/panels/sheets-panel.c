/* Oxturn: app/panels/sheets-panel - texts of the sheets, paper and scale, and what to do with them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/panels.h"

#include "app/dialogs/sign-off.h"
#include "app/rows.h"
#include "job/edit.h"
#include "job/text.h"
#include "sheets/options.h"

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

  OxSession *session;  /* Owned */
  OxSheetKinds which;  /* all else of the options is the job's */
  OxLanguage language; /* what options.language points to where the sheets have one of their own */

  /* Children */
  GtkDropDown *paper, *schedule_paper, *orientation, *tiles, *sheet_language;
  GtkLabel *signed_by;
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

static void update_setup (OxSheetsPanel *self);

static void
update (OxSheetsPanel *self)
{
  OxTexts *job_texts = ox_session_get_job (self->session)->texts;
  GtkTextIter start, end;
  g_autofree char *shown = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    ox_field_set_text (self->fields[i], texts[i].offset == G_STRUCT_OFFSET (OxTexts, status)
                                            ? ox_status_text (job_texts->status)
                                            : *text_at (job_texts, i));
  gtk_text_buffer_get_bounds (self->notes, &start, &end);
  shown = gtk_text_buffer_get_text (self->notes, &start, &end, FALSE);
  if (g_strcmp0 (shown, job_texts->notes) != 0)
    gtk_text_buffer_set_text (self->notes, job_texts->notes, -1);
  update_setup (self);
}

/* FALSE with @error where the job refuses them */
static gboolean
apply_texts (OxSheetsPanel *self, const OxTexts *job_texts, GError **error)
{
  g_autoptr (OxJob) job = ox_job_with_texts (ox_session_get_job (self->session), job_texts, error);

  if (job != NULL)
    ox_session_apply (self->session, job, _ ("Change Text"), NULL, NULL);
  return job != NULL;
}

/* A usual word stands in the job in English and is shown in the language of window or sheet; (transfer full) */
static char *
status_as_kept (const char *typed)
{
  const char *const *words = ox_status_list ();

  for (guint i = 0; words[i] != NULL; i++)
    if (g_str_equal (ox_status_text (words[i]), typed))
      return g_strdup (words[i]);
  return g_strdup (typed);
}

static void
text_cb (OxField *field, OxSheetsPanel *self)
{
  g_autoptr (OxTexts) job_texts = ox_texts_copy (ox_session_get_job (self->session)->texts);
  const char *typed = ox_field_get_text (field);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    if (self->fields[i] == field)
      {
        if (texts[i].offset == G_STRUCT_OFFSET (OxTexts, date) && !ox_text_is_date (typed))
          {
            ox_field_refuse (field, _ ("Type the date as year, month, day: 2026-11-24."));
            return;
          }
        g_free (*text_at (job_texts, i));
        *text_at (job_texts, i) = ox_text_clean (typed, FALSE);
        if (texts[i].offset == G_STRUCT_OFFSET (OxTexts, status))
          {
            g_free (job_texts->status);
            job_texts->status = status_as_kept (typed);
          }
      }
  if (!apply_texts (self, job_texts, &error))
    ox_field_refuse (field, error->message);
}

static void
notes_left_cb (OxSheetsPanel *self)
{
  g_autoptr (OxTexts) job_texts = ox_texts_copy (ox_session_get_job (self->session)->texts);
  GtkTextIter start, end;
  g_autofree char *typed = NULL;
  g_autofree char *clean = NULL;
  g_autoptr (GError) error = NULL;
  gboolean refused;

  gtk_text_buffer_get_bounds (self->notes, &start, &end);
  typed = gtk_text_buffer_get_text (self->notes, &start, &end, FALSE);
  clean = ox_text_clean (typed, TRUE);
  if (g_str_equal (clean, job_texts->notes))
    return;
  g_free (job_texts->notes);
  job_texts->notes = g_steal_pointer (&clean);
  /* Notes can only be refused because of the revision that a change of a signed drawing raises. */
  refused = !apply_texts (self, job_texts, &error);
  for (guint i = 0; refused && i < G_N_ELEMENTS (texts); i++)
    if (texts[i].offset == G_STRUCT_OFFSET (OxTexts, revision))
      ox_field_refuse (self->fields[i], error->message);
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
  self->which = kinds[gtk_drop_down_get_selected (choice)];
  g_signal_emit (self, signals[CHANGED], 0);
}

OxSheetOptions
ox_sheets_panel_get_options (OxSheetsPanel *self)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;

  options.which = self->which;
  ox_sheet_options_take (&options, ox_session_get_job (self->session), &self->language);
  return options;
}

/* The setup is the job's, so that it is there again when the file is opened. */
static void
apply_setup (OxSheetsPanel *self, const OxSheetOptions *options)
{
  const OxJob *job = ox_session_get_job (self->session);
  OxSheetSetup draft;
  g_autoptr (OxSheetSetup) setup = NULL;
  g_autoptr (OxJob) changed = NULL;
  g_autoptr (GError) error = NULL;

  ox_sheet_options_keep (options, &draft);
  setup = ox_sheet_setup_new (&draft);
  if (ox_sheet_setup_equal (setup, job->setup))
    return;
  changed = ox_job_with_setup (job, setup, &error);
  if (changed != NULL)
    ox_session_apply (self->session, changed, _ ("Set Up Sheets"), NULL, NULL);
}

/* The first choice is none, or what is usual. */
static const OxPaper *
chosen_paper (GtkDropDown *choice)
{
  guint chosen = gtk_drop_down_get_selected (choice);

  return chosen > 0 ? ox_paper_get (chosen - 1) : NULL;
}

static void
choice_cb (GtkDropDown *choice, GParamSpec *pspec, OxSheetsPanel *self)
{
  OxSheetOptions options = ox_sheets_panel_get_options (self);
  guint chosen = gtk_drop_down_get_selected (self->sheet_language);

  (void) choice;
  (void) pspec;
  options.paper = chosen_paper (self->paper);
  options.schedule_paper = chosen_paper (self->schedule_paper);
  options.tiles = chosen_paper (self->tiles);
  options.orientation = (OxOrientation) gtk_drop_down_get_selected (self->orientation);
  options.language = NULL;
  if (chosen > 0)
    {
      self->language = ox_language_get (chosen - 1);
      options.language = &self->language;
    }
  apply_setup (self, &options);
}

static void
scale_cb (OxField *field, OxSheetsPanel *self)
{
  OxSheetOptions options = ox_sheets_panel_get_options (self);

  if (!ox_scale_parse (ox_field_get_text (field), &options.scale))
    {
      ox_field_refuse (field, _ ("This is no scale. Type one like 1:100 or 1/8in, or auto."));
      return;
    }
  apply_setup (self, &options);
}

static guint
place_of_paper (const OxPaper *paper)
{
  for (guint i = 0; i < ox_paper_get_count (); i++)
    if (ox_paper_get (i) == paper)
      return i + 1;
  return 0;
}

static guint
place_of_language (const OxLanguage *language)
{
  for (guint i = 0; language != NULL && i < ox_language_get_count (); i++)
    if (g_str_equal (ox_language_get (i).tag, language->tag))
      return i + 1;
  return 0;
}

static void
update_setup (OxSheetsPanel *self)
{
  OxSheetOptions options = ox_sheets_panel_get_options (self);
  g_autofree char *scale = options.scale.denominator > 0 ? ox_scale_text (options.scale) : g_strdup ("auto");
  g_autofree char *words = ox_sign_off_words (ox_session_get_job (self->session));

  ox_choice_select (self->paper, place_of_paper (options.paper), self);
  ox_choice_select (self->schedule_paper, place_of_paper (options.schedule_paper), self);
  ox_choice_select (self->tiles, place_of_paper (options.tiles), self);
  ox_choice_select (self->orientation, (guint) options.orientation, self);
  ox_choice_select (self->sheet_language, place_of_language (options.language), self);
  ox_field_set_text (self->scale, options.scale.name != NULL ? "" : scale);
  if (options.scale.name != NULL)
    ox_field_set_text (self->scale, options.scale.name);
  gtk_label_set_text (self->signed_by, words);
}

static GtkDropDown *
add_choice (OxSheetsPanel *self, GtkGrid *rows, const char *name, const char *const *choices)
{
  GtkDropDown *choice = ox_rows_add_choice (rows, name, choices);

  g_signal_connect (choice, "notify::selected", G_CALLBACK (choice_cb), self);
  return choice;
}

static GtkDropDown *
add_languages (OxSheetsPanel *self, GtkGrid *rows)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  g_ptr_array_add (names, (char *) _ ("As the window"));
  for (guint i = 0; i < ox_language_get_count (); i++)
    g_ptr_array_add (names, (char *) ox_language_get (i).name);
  g_ptr_array_add (names, NULL);
  return add_choice (self, rows, _ ("Lan_guage"), (const char *const *) names->pdata);
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
  g_ptr_array_add (papers, (char *) _ ("Automatic"));
  for (guint i = 0; i < ox_paper_get_count (); i++)
    g_ptr_array_add (papers, (char *) ox_paper_get (i)->name);
  g_ptr_array_add (papers, NULL);
  self->paper = add_choice (self, GTK_GRID (rows), _ ("_Paper"), (const char *const *) papers->pdata);
  papers->pdata[0] = (char *) _ ("Automatic");
  self->schedule_paper = add_choice (self, GTK_GRID (rows), _ ("Schedules _on"), (const char *const *) papers->pdata);
  self->orientation = add_choice (self, GTK_GRID (rows), _ ("_Orientation"), orientations);
  papers->pdata[0] = (char *) _ ("One page a sheet");
  self->tiles = add_choice (self, GTK_GRID (rows), _ ("In _tiles of"), (const char *const *) papers->pdata);
  self->sheet_language = add_languages (self, GTK_GRID (rows));
  self->scale = ox_rows_add_field (GTK_GRID (rows), OX_FIELD_TEXT, _ ("Sca_le"));
  g_signal_connect (self->scale, "commit", G_CALLBACK (scale_cb), self);
  return rows;
}

/* --- What client and contractor agree on --- */

typedef struct
{
  const char *label; /* untranslated */
  const char *action;
} Button;

static GtkWidget *
make_buttons (const Button *buttons, guint n)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
  for (guint i = 0; i < n; i++)
    {
      GtkWidget *button = gtk_button_new_with_label (_ (buttons[i].label));

      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), buttons[i].action);
      gtk_box_append (GTK_BOX (row), button);
    }
  return row;
}

char *
ox_sheets_panel_get_summary (OxSheetsPanel *self)
{
  OxSheetOptions options = ox_sheets_panel_get_options (self);
  g_autofree char *scale = NULL;

  if (options.scale.denominator > 0)
    scale = ox_scale_text (options.scale);
  return g_strdup_printf (_ ("%s, %s"), options.paper != NULL ? options.paper->name : _ ("Automatic"),
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
  self->which = OX_SHEET_ALL;
}

GtkWidget *
ox_sheets_panel_new (OxSession *session)
{
  static const Button out[] = { { N_ ("PDF\342\200\246"), "win.export-pdf" },
                                { N_ ("SVG\342\200\246"), "win.export-svg" },
                                { N_ ("Print\342\200\246"), "win.print" } };
  static const Button agreed[] = { { N_ ("Scope\342\200\246"), "win.scope-lists" },
                                   { N_ ("Revisions\342\200\246"), "win.revisions" },
                                   { N_ ("Sign-Off\342\200\246"), "win.sign-off" } };
  OxSheetsPanel *self = g_object_new (OX_TYPE_SHEETS_PANEL, NULL);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  self->session = g_object_ref (session);
  gtk_box_append (GTK_BOX (box), ox_heading_new (_ ("Paper")));
  gtk_box_append (GTK_BOX (box), make_paper (self));
  gtk_box_append (GTK_BOX (box), make_buttons (out, G_N_ELEMENTS (out)));
  gtk_box_append (GTK_BOX (box), ox_heading_new (_ ("Agreed with the client")));
  self->signed_by = GTK_LABEL (ox_note_new (""));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->signed_by));
  gtk_box_append (GTK_BOX (box), make_buttons (agreed, G_N_ELEMENTS (agreed)));
  gtk_box_append (GTK_BOX (box), ox_heading_new (_ ("Texts")));
  gtk_box_append (GTK_BOX (box), make_texts (self));
  gtk_widget_set_parent (box, GTK_WIDGET (self));
  g_signal_connect_object (session, "job-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
  return GTK_WIDGET (self);
}
