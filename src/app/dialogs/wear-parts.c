/* Oxturn: app/dialogs/wear-parts - what of the machine is to be checked, after how many hours, and the hours run.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/wear-parts.h"

#include "app/dialogs/form.h"
#include "app/dialogs/lines.h"
#include "app/rows.h"
#include "job/edit.h"
#include "job/text.h"
#include "trade/wear.h"

#include <glib/gi18n-lib.h>

#define USUAL_HOURS 50 /* of a new line, until somebody types what the manual says */

enum
{
  NAME,
  INTERVAL,
  RUN,
  MACHINE
};

static const OxFieldRange interval_range = { 0, TRUE, OX_WEAR_MOST_H };
static const OxFieldRange run_range = { 0, FALSE, OX_WEAR_MOST_H };
static const OxFieldRange machine_range = { 0, FALSE, OX_MACHINES_MOST };

typedef struct
{
  OxSession *session; /* Borrowed: the parent window keeps it */
  OxLines *lines;
  gboolean several; /* machines at work, so that a part may be that of one */
} WearParts;

static void
make_line (GtkWidget **cells, gpointer data)
{
  WearParts *self = data;

  cells[NAME] = ox_field_new (OX_FIELD_TEXT, "");
  cells[INTERVAL] = ox_field_new (OX_FIELD_NUMBER, "");
  cells[RUN] = ox_field_new (OX_FIELD_NUMBER, "");
  gtk_editable_set_width_chars (GTK_EDITABLE (cells[NAME]), 24);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (cells[NAME]), 30);
  ox_field_set_range (OX_FIELD (cells[INTERVAL]), &interval_range);
  ox_field_set_range (OX_FIELD (cells[RUN]), &run_range);
  ox_field_set_number (OX_FIELD (cells[INTERVAL]), USUAL_HOURS, 2);
  ox_field_set_number (OX_FIELD (cells[RUN]), 0, 2);
  if (!self->several)
    return;
  cells[MACHINE] = ox_field_new (OX_FIELD_NUMBER, "");
  ox_field_set_range (OX_FIELD (cells[MACHINE]), &machine_range);
  ox_field_set_number (OX_FIELD (cells[MACHINE]), 0, 0);
}

/* A part is shown in the language of the window, and keeps the name it has in the file as long as nobody types another
 * one. */
static char *
name_of (GtkWidget *cell)
{
  const char *stored = g_object_get_data (G_OBJECT (cell), "ox-name");
  g_autofree char *typed = g_strstrip (ox_text_clean (ox_field_get_text (OX_FIELD (cell)), FALSE));

  return stored != NULL && g_str_equal (typed, _ (stored)) ? g_strdup (stored) : g_steal_pointer (&typed);
}

static void
add_line (OxLines *lines, const char *name, double interval_h, double run_h, guint machine)
{
  GtkWidget **cells = ox_lines_add (lines);

  if (cells == NULL)
    return;
  if (*name != '\0')
    {
      g_object_set_data_full (G_OBJECT (cells[NAME]), "ox-name", g_strdup (name), g_free);
      ox_field_set_text (OX_FIELD (cells[NAME]), _ (name));
    }
  ox_field_set_number (OX_FIELD (cells[INTERVAL]), interval_h, 2);
  ox_field_set_number (OX_FIELD (cells[RUN]), run_h, 2);
  if (machine > 0)
    ox_field_set_number (OX_FIELD (cells[MACHINE]), machine, 0);
}

static char *
apply (WearParts *self, const OxMachine *machine)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) changed = NULL;

  if (ox_machine_equal (machine, job->machine))
    return NULL;
  changed = ox_job_with_machine (job, machine, &error);
  if (changed == NULL)
    return g_strdup (error->message);
  ox_session_apply (self->session, changed, _ ("Set Wear Parts"), NULL, NULL);
  return NULL;
}

static char *
done (gpointer data)
{
  WearParts *self = data;
  g_autoptr (OxMachine) machine = ox_machine_copy (ox_session_get_job (self->session)->machine);

  for (guint i = 0; i < machine->n_wear; i++)
    g_clear_pointer (&machine->wear[i].name, g_free);
  machine->n_wear = 0;
  for (guint i = 0; i < ox_lines_get_count (self->lines); i++)
    {
      GtkWidget **cells = ox_lines_get (self->lines, i);
      OxWearPart *part = &machine->wear[machine->n_wear++];

      part->name = name_of (cells[NAME]);
      part->interval_h = ox_field_get_value (OX_FIELD (cells[INTERVAL]));
      part->run_h = ox_field_get_value (OX_FIELD (cells[RUN]));
      part->machine = self->several ? (guint) ox_field_get_value (OX_FIELD (cells[MACHINE])) : 0;
      if (*part->name == '\0')
        return g_strdup_printf (_ ("Line %u: a wear part needs a name; remove the line if it is not wanted"), i + 1);
    }
  return apply (self, machine);
}

/* The middle of each range; the manual of the machine governs. */
static void
usual_cb (WearParts *self)
{
  guint n;
  const OxWearStarter *starters = ox_wear_starters (&n);

  for (guint i = 0; i < n; i++)
    add_line (self->lines, starters[i].name, (starters[i].least_h + starters[i].most_h) / 2, 0, 0);
}

static GtkWidget *
make_body (WearParts *self, const OxMachine *machine)
{
  GtkWidget *usual = gtk_button_new_with_mnemonic (_ ("Add the _Usual Parts"));
  g_autofree char *name = ox_without_mnemonic (_ ("Add the _Usual Parts"));

  self->several = ox_session_get_job (self->session)->calendar->machines > 1;
  for (guint i = 0; i < machine->n_wear; i++)
    self->several = self->several || machine->wear[i].machine > 0;
  self->lines = ox_lines_new (&(OxLinesKind){ .headings = { _ ("Part"), _ ("Check every, h"), _ ("Run since, h"),
                                                            self->several ? _ ("Machine, 0: each") : NULL },
                                              .add = _ ("_Add a Part"),
                                              .most = OX_MACHINE_MAX_WEAR,
                                              .make = make_line,
                                              .data = self });
  for (guint i = 0; i < machine->n_wear; i++)
    add_line (self->lines, machine->wear[i].name, machine->wear[i].interval_h, machine->wear[i].run_h,
              machine->wear[i].machine);
  gtk_accessible_update_property (GTK_ACCESSIBLE (usual), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_halign (usual, GTK_ALIGN_START);
  gtk_widget_set_visible (usual, machine->n_wear == 0);
  g_signal_connect_swapped (usual, "clicked", G_CALLBACK (usual_cb), self);
  gtk_box_append (GTK_BOX (ox_lines_get_widget (self->lines)), usual);
  return ox_lines_get_widget (self->lines);
}

GtkWindow *
ox_wear_parts_open (GtkWindow *parent, OxSession *session)
{
  WearParts *self = g_new0 (WearParts, 1);

  self->session = session;
  return ox_form_open (parent, &(OxForm){ .title = _ ("Wear Parts"),
                                          .accept = _ ("_Set"),
                                          .note = _ ("Hours are those of the running blast wheel. How often a part is "
                                                     "to be checked, the manual of the machine says."),
                                          .body = make_body (self, ox_session_get_job (session)->machine),
                                          .done = done,
                                          .data = self,
                                          .free_data = g_free });
}
