/* Oxturn: app/dialogs/repeat - what is selected, again and again in a row or a grid.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/repeat.h"

#include "app/dialogs/form.h"
#include "app/rows.h"
#include "job/edit.h"
#include "job/place.h"
#include "session/selection.h"

#include <glib/gi18n-lib.h>

#define MAX_COPIES 2000

typedef struct
{
  OxSession *session; /* Borrowed: the parent window keeps it */
  OxField *columns, *rows;
  OxField *along, *across;
  OxField *angle;
} Repeat;

static gboolean
read_count (OxField *field, guint *out)
{
  double n = ox_field_get_value (field);

  *out = n >= 1 && n <= MAX_COPIES && n == floor (n) ? (guint) n : 0;
  return *out > 0;
}

static char *
repeat (Repeat *self, GArray *places, guint columns, guint rows)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_auto (GStrv) ids = ox_selection_items (ox_session_get_selection (self->session));
  OxCopies copies = { .from = job, .ids = (const char *const *) ids };
  g_auto (GStrv) new_ids = NULL;
  g_autoptr (OxJob) changed = NULL;
  g_autoptr (GError) error = NULL;

  /* What is selected stays: it is the first of them. */
  copies.places = (const OxPlacement *) places->data + 1;
  copies.n = columns * rows - 1;
  changed = ox_edit_copied (job, &copies, &new_ids, &error);
  if (changed == NULL)
    return g_strdup (error->message);
  ox_session_apply (self->session, changed, _ ("Repeat"), (const char *const *) new_ids, NULL);
  return NULL;
}

static char *
done (gpointer data)
{
  Repeat *self = data;
  guint columns, rows;
  g_autoptr (GArray) places = NULL;
  OxPoint step = { ox_field_get_value (self->along), ox_field_get_value (self->across) };

  if (!read_count (self->columns, &columns) || !read_count (self->rows, &rows) || columns * rows > MAX_COPIES)
    return g_strdup_printf (_ ("Type whole numbers from 1 that come to %d items at most."), MAX_COPIES);
  if (columns * rows == 1)
    return g_strdup (_ ("One across and one up is what is there already. Type how many there are to be in all."));
  if ((columns > 1 && step.x == 0) || (rows > 1 && step.y == 0))
    return g_strdup (_ ("With a spacing of 0 they would lie upon each other."));
  places = ox_edit_grid_places (columns, rows, step, ox_field_get_value (self->angle));
  return repeat (self, places, columns, rows);
}

GtkWindow *
ox_repeat_open (GtkWindow *parent, OxSession *session)
{
  Repeat *self = g_new0 (Repeat, 1);
  GtkGrid *rows = GTK_GRID (ox_rows_new ());
  OxUnits units = ox_session_get_job (session)->units;

  self->session = session;
  self->columns = ox_rows_add_field (rows, OX_FIELD_NUMBER, _ ("_Number across"));
  self->along = ox_rows_add_field (rows, OX_FIELD_LENGTH, _ ("_Spacing across"));
  self->rows = ox_rows_add_field (rows, OX_FIELD_NUMBER, _ ("N_umber up"));
  self->across = ox_rows_add_field (rows, OX_FIELD_LENGTH, _ ("S_pacing up"));
  self->angle = ox_rows_add_field (rows, OX_FIELD_NUMBER, _ ("_Turned by, degrees"));
  ox_field_set_number (self->columns, 4, 0);
  ox_field_set_number (self->rows, 1, 0);
  ox_field_set_length (self->along, units, units == OX_UNITS_FEET ? 20 * 0.3048 : 6);
  ox_field_set_length (self->across, units, units == OX_UNITS_FEET ? 20 * 0.3048 : 6);
  ox_field_set_number (self->angle, 0, 2);
  return ox_form_open (parent, &(OxForm){ .title = _ ("Repeat in a Row or Grid"),
                                            .accept = _ ("_Repeat"),
                                            .note = _ ("What is selected is the first. Spacing is from middle to middle; a negative one runs left or down."),
                                            .body = GTK_WIDGET (rows),
                                            .done = done,
                                            .data = self,
                                            .free_data = g_free });
}
