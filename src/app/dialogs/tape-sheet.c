/* Oxturn: app/dialogs/tape-sheet - an outline written down as a survey reads, and seen before it is drawn.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/tape-sheet.h"

#include "app/dialogs/form.h"
#include "app/rows.h"
#include "job/edit.h"
#include "tools/survey.h"

#include <glib/gi18n-lib.h>

#define PICTURE_PX 260
#define MARGIN_PX 14.0
#define MAX_BYTES (1 << 20) /* of a file: 5000 lines are far less */

typedef enum { DRAW_ROOM, DRAW_OBSTACLE, DRAW_EXCLUDED } DrawAs;

typedef struct
{
  OxSession *session; /* Borrowed: the parent window keeps it */
  OxChooseFile choose;
  GtkWindow *window; /* Borrowed: owns this struct */
  GtkTextBuffer *text;
  GtkDropDown *form, *draw_as;
  OxField *x, *y;
  GtkCheckButton *spread;
  GtkWidget *picture;
  OxSurvey *survey; /* (nullable) Owned */
} Sheet;

static OxSurveyOptions
options_of (Sheet *self)
{
  return (OxSurveyOptions){ .form = (OxSurveyForm) gtk_drop_down_get_selected (self->form),
                            .units = ox_session_get_job (self->session)->units,
                            .start = { ox_field_get_value (self->x), ox_field_get_value (self->y) },
                            .spread = gtk_check_button_get_active (self->spread) };
}

static void
update (Sheet *self)
{
  GtkTextIter start, end;
  OxSurveyOptions options = options_of (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  g_autofree char *words = NULL;
  gboolean chain = options.form == OX_SURVEY_CHAIN;

  gtk_text_buffer_get_bounds (self->text, &start, &end);
  text = gtk_text_buffer_get_text (self->text, &start, &end, FALSE);
  g_clear_pointer (&self->survey, ox_survey_free);
  self->survey = ox_survey_read (text, &options, &error);
  words = self->survey != NULL ? ox_survey_words (self->survey, &options) : g_strdup (error->message);
  ox_form_tell (self->window, words, self->survey == NULL && !g_error_matches (error, OX_SURVEY_ERROR, OX_SURVEY_ERROR_FEW));
  gtk_widget_set_sensitive (GTK_WIDGET (self->x), chain);
  gtk_widget_set_sensitive (GTK_WIDGET (self->y), chain);
  gtk_widget_set_sensitive (GTK_WIDGET (self->spread), chain && self->survey != NULL && self->survey->closing);
  gtk_widget_queue_draw (self->picture);
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  Sheet *self = data;
  GdkRGBA ink;
  OxBox box;
  double scale;

  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (area)), &ink);
  if (self->survey == NULL)
    return;
  box = ox_ring_box (self->survey->ring);
  scale = MIN ((width - 2 * MARGIN_PX) / MAX (box.x1 - box.x0, 0.01), (height - 2 * MARGIN_PX) / MAX (box.y1 - box.y0, 0.01));
  for (guint i = 0; i < self->survey->ring->n; i++)
    {
      OxPoint p = self->survey->ring->points[i];

      cairo_line_to (cr, width / 2.0 + (p.x - (box.x0 + box.x1) / 2) * scale,
                     height / 2.0 - (p.y - (box.y0 + box.y1) / 2) * scale);
    }
  cairo_close_path (cr);
  cairo_set_source_rgba (cr, ink.red, ink.green, ink.blue, 0.12);
  cairo_fill_preserve (cr);
  gdk_cairo_set_source_rgba (cr, &ink);
  cairo_set_line_width (cr, 2);
  cairo_stroke (cr);
}

/* --- Doing it --- */

static OxJob *
make_job (Sheet *self, char **id, GError **error)
{
  const OxJob *job = ox_session_get_job (self->session);
  OxRing *ring = self->survey->ring;

  if (gtk_drop_down_get_selected (self->draw_as) == DRAW_OBSTACLE)
    {
      g_autoptr (OxObstacle) obstacle = NULL;

      *id = ox_job_new_id (job, "O");
      obstacle = ox_obstacle_new (
          &(OxObstacle){ .id = *id, .name = (char *) "", .shape = { .kind = OX_SHAPE_POLYGON, .ring = ring } });
      return ox_job_with_obstacle (job, obstacle, error);
    }
  if (gtk_drop_down_get_selected (self->draw_as) == DRAW_EXCLUDED)
    {
      g_autoptr (OxExcluded) excluded = NULL;

      *id = ox_job_new_id (job, "X");
      excluded = ox_excluded_new (&(OxExcluded){ .id = *id, .name = (char *) "", .ring = ring });
      return ox_job_with_excluded (job, excluded, error);
    }
  *id = ox_job_new_id (job, "R");
  g_autofree char *name = g_strdup_printf (_ ("Room %s"), *id + 1);
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = *id, .name = name, .ring = ring, .profile = (char *) "" });
  return ox_job_with_room (job, room, error);
}

static char *
done (gpointer data)
{
  Sheet *self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = NULL;
  g_autofree char *id = NULL;

  if (self->survey == NULL)
    return g_strdup (_ ("There is no outline yet: write one leg a line, such as 6.35 0, then 2.10 90."));
  job = make_job (self, &id, &error);
  if (job == NULL)
    return g_strdup (error->message);
  ox_session_apply (self->session, job, _ ("Draw from Tape Sheet"), (const char *const[]){ id, NULL }, NULL);
  if (gtk_drop_down_get_selected (self->draw_as) == DRAW_ROOM) /* which may reach far out of what is shown */
    gtk_widget_activate_action (GTK_WIDGET (gtk_window_get_transient_for (self->window)), "win.zoom-fit", NULL);
  return NULL;
}

/* --- Files --- */

void
ox_tape_sheet_set_text (GtkWindow *window, const char *text)
{
  Sheet *self = g_object_get_data (G_OBJECT (window), "ox-tape-sheet");

  gtk_drop_down_set_selected (self->form, ox_survey_guess (text));
  gtk_text_buffer_set_text (self->text, text, -1);
}

static void
chosen_cb (const char *path, gpointer data)
{
  Sheet *self = data;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  gsize length = 0;

  if (path == NULL)
    return;
  if (!g_file_get_contents (path, &text, &length, &error))
    ox_form_tell (self->window, error->message, TRUE);
  else if (length > MAX_BYTES || !g_utf8_validate (text, (gssize) length, NULL))
    ox_form_tell (self->window, _ ("This file is no list of corners: it is too large or no text in UTF-8."), TRUE);
  else
    ox_tape_sheet_set_text (self->window, text);
}

static void
read_cb (Sheet *self)
{
  self->choose (self->window, OX_FILE_OPEN_CORNERS, NULL, chosen_cb, self);
}

/* --- Building --- */

static GtkWidget *
make_text (Sheet *self)
{
  GtkWidget *view = gtk_text_view_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->text = gtk_text_view_get_buffer (GTK_TEXT_VIEW (view));
  gtk_text_view_set_monospace (GTK_TEXT_VIEW (view), TRUE);
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (view), FALSE);
  gtk_text_view_set_left_margin (GTK_TEXT_VIEW (view), 6);
  gtk_text_view_set_top_margin (GTK_TEXT_VIEW (view), 6);
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Legs or corners, one a line"), -1);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), view);
  gtk_scrolled_window_set_has_frame (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_widget_set_size_request (scrolled, 190, PICTURE_PX);
  return scrolled;
}

static GtkWidget *
make_settings (Sheet *self)
{
  const char *const forms[] = { _ ("Length and direction"), _ ("x and y"), NULL };
  const char *const kinds[] = { _ ("Room"), _ ("Obstacle"), _ ("Excluded area"), NULL };
  OxUnits units = ox_session_get_job (self->session)->units;
  GtkGrid *rows = GTK_GRID (ox_rows_new ());
  GtkWidget *read = gtk_button_new_with_mnemonic (_ ("_Read from a File\342\200\246"));
  g_autofree char *read_name = ox_without_mnemonic (_ ("_Read from a File\342\200\246"));


  self->form = ox_rows_add_choice (rows, _ ("Each _line is"), forms);
  self->x = ox_rows_add_field (rows, OX_FIELD_LENGTH, _ ("Starts at _x"));
  self->y = ox_rows_add_field (rows, OX_FIELD_LENGTH, _ ("Starts at _y"));
  self->draw_as = ox_rows_add_choice (rows, _ ("_Draw as"), kinds);
  self->spread = GTK_CHECK_BUTTON (gtk_check_button_new_with_mnemonic (_ ("_Spread the closing error")));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->spread), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Spread the closing error"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (read), GTK_ACCESSIBLE_PROPERTY_LABEL, read_name, -1);
  ox_field_set_length (self->x, units, 0);
  ox_field_set_length (self->y, units, 0);
  ox_rows_add_wide (rows, GTK_WIDGET (self->spread));
  ox_rows_add_wide (rows, read);
  ox_rows_add_wide (rows, ox_note_new (_ ("Directions are degrees, counter-clockwise from right: 0 right, 90 up. "
                                          "L and R turn from the leg before.")));
  g_signal_connect_swapped (self->form, "notify::selected", G_CALLBACK (update), self);
  g_signal_connect_swapped (self->spread, "toggled", G_CALLBACK (update), self);
  g_signal_connect_swapped (self->x, "commit", G_CALLBACK (update), self);
  g_signal_connect_swapped (self->y, "commit", G_CALLBACK (update), self);
  g_signal_connect_swapped (read, "clicked", G_CALLBACK (read_cb), self);
  return GTK_WIDGET (rows);
}

static GtkWidget *
make_picture (Sheet *self)
{
  self->picture = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, "content-width",
                                PICTURE_PX, "content-height", PICTURE_PX, "hexpand", TRUE, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->picture), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("The outline"), -1);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->picture), draw_cb, self, NULL);
  return self->picture;
}

static void
sheet_free (gpointer data)
{
  Sheet *self = data;

  g_clear_pointer (&self->survey, ox_survey_free);
  g_free (self);
}

GtkWindow *
ox_tape_sheet_open (GtkWindow *parent, OxSession *session, OxChooseFile choose)
{
  Sheet *self = g_new0 (Sheet, 1);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->session = session;
  self->choose = choose;
  gtk_box_append (GTK_BOX (row), make_text (self));
  gtk_box_append (GTK_BOX (row), make_settings (self));
  gtk_box_append (GTK_BOX (row), make_picture (self));
  self->window = ox_form_open (parent, &(OxForm){ .title = _ ("Tape Sheet"),
                                                  .accept = _ ("_Draw"),
                                                  .body = row,
                                                  .done = done,
                                                  .data = self,
                                                  .free_data = sheet_free });
  g_object_set_data (G_OBJECT (self->window), "ox-tape-sheet", self);
  g_signal_connect_swapped (self->text, "changed", G_CALLBACK (update), self);
  update (self);
  return self->window;
}
