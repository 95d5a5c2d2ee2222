/* Oxturn: app/panels/machine-panel - class, all figures of the machine, and the hand rate.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/panels.h"

#include "app/rows.h"
#include "job/classes.h"
#include "job/edit.h"
#include "job/machine-fields.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>

#define MAX_FIGURES 40

typedef struct
{
  OxSession *session; /* Borrowed */
  GtkDropDown *machine_class;
  OxField *name;
  OxField *figures[MAX_FIGURES]; /* one a row of ox_machine_fields() */
  GtkDropDown *phases;
  OxField *hand_rate, *hand_rate_by_length;
  OxField *shot;
} MachinePanel;

/* Rows are grouped as in the file of classes. */
static const struct
{
  const char *group;
  const char *title;
} groups[] = {
  { "body", N_ ("Body and pattern") }, { "pace", N_ ("Pace") },     { "abrasive", N_ ("Abrasive") },
  { "hose", N_ ("Dust collection") },  { "supply", N_ ("Supply") },
};

static gboolean
is_length (const OxMachineField *field)
{
  return g_str_equal (field->unit, "m");
}

static void
update (GtkWidget *root)
{
  MachinePanel *self = g_object_get_data (G_OBJECT (root), "ox-machine");
  const OxJob *job = ox_session_get_job (self->session);
  guint n;
  const OxMachineField *fields = ox_machine_fields (&n);
  guint shown = 0;

  for (guint i = 0; i < ox_classes_get_count (); i++)
    if (g_str_equal (ox_classes_get (i)->class_id, job->machine->class_id))
      shown = i + 1;
  ox_choice_select (self->machine_class, shown, self);
  ox_field_set_text (self->name, job->machine->name);
  for (guint i = 0; i < n; i++)
    {
      double value = ox_machine_field_value (job->machine, &fields[i]);

      if (is_length (&fields[i]))
        ox_field_set_length (self->figures[i], job->units, value);
      else
        ox_field_set_number (self->figures[i], value, 4);
    }
  ox_field_set_text (self->shot, job->outfit->shot);
  ox_choice_select (self->phases, job->machine->phases == 3 ? 1 : 0, self);
  ox_field_set_number (self->hand_rate, job->rates.edge_m2_per_hour, 3);
  ox_field_set_number (self->hand_rate_by_length, job->rates.edge_m_per_hour, 3);
}

static void
take (MachinePanel *self, OxJob *job, const GError *error, const char *label, OxField *field)
{
  g_autoptr (OxJob) result = job;

  if (result != NULL)
    ox_session_apply (self->session, result, label, NULL, NULL);
  else if (field != NULL)
    ox_field_refuse (field, error->message);
}

static void
take_machine (MachinePanel *self, const OxMachine *machine, const char *label, OxField *field)
{
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_machine (ox_session_get_job (self->session), machine, &error);

  take (self, job, error, label, field);
}

static void
class_cb (GtkDropDown *choice, GParamSpec *pspec, MachinePanel *self)
{
  guint i = gtk_drop_down_get_selected (choice);
  g_autoptr (OxMachine) own = NULL;

  (void) pspec;
  if (i > 0)
    {
      take_machine (self, ox_classes_get (i - 1), _ ("Choose Machine"), NULL);
      return;
    }
  own = ox_machine_copy (ox_session_get_job (self->session)->machine);
  g_free (own->class_id);
  own->class_id = g_strdup ("");
  take_machine (self, own, _ ("Choose Machine"), NULL);
}

static void
name_cb (OxField *field, MachinePanel *self)
{
  g_autoptr (OxMachine) machine = ox_machine_copy (ox_session_get_job (self->session)->machine);

  g_free (machine->name);
  machine->name = ox_text_clean (ox_field_get_text (field), FALSE);
  take_machine (self, machine, _ ("Rename Machine"), field);
}

static void
figure_cb (OxField *field, MachinePanel *self)
{
  g_autoptr (OxMachine) machine = ox_machine_copy (ox_session_get_job (self->session)->machine);
  guint n;
  const OxMachineField *fields = ox_machine_fields (&n);

  for (guint i = 0; i < n; i++)
    if (self->figures[i] == field)
      *ox_machine_field_at (machine, &fields[i]) = ox_field_get_value (field);
  take_machine (self, machine, _ ("Change Machine"), field);
}

static void
phases_cb (GtkDropDown *choice, GParamSpec *pspec, MachinePanel *self)
{
  g_autoptr (OxMachine) machine = ox_machine_copy (ox_session_get_job (self->session)->machine);

  (void) pspec;
  machine->phases = gtk_drop_down_get_selected (choice) == 1 ? 3 : 1;
  take_machine (self, machine, _ ("Change Machine"), NULL);
}

static void
hand_rate_cb (OxField *field, MachinePanel *self)
{
  OxRates rates = ox_session_get_job (self->session)->rates;
  g_autoptr (GError) error = NULL;
  OxJob *job;

  if (field == self->hand_rate)
    rates.edge_m2_per_hour = ox_field_get_value (field);
  else
    rates.edge_m_per_hour = ox_field_get_value (field);
  job = ox_job_with_rates (ox_session_get_job (self->session), rates, &error);
  take (self, job, error, _ ("Set Hand Rate"), field);
}

static void
shot_cb (OxField *field, MachinePanel *self)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_autofree char *shot = g_strstrip (ox_text_clean (ox_field_get_text (field), FALSE));
  OxOutfit draft = *job->outfit;
  g_autoptr (OxOutfit) outfit = NULL;
  g_autoptr (GError) error = NULL;
  OxJob *changed;

  draft.shot = shot;
  outfit = ox_outfit_new (&draft);
  changed = ox_job_with_outfit (job, outfit, &error);
  take (self, changed, error, _ ("Set Abrasive Size"), field);
}

static GtkWidget *
make_class (MachinePanel *self)
{
  GtkWidget *rows = ox_rows_new ();
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  g_ptr_array_add (names, _ ("Own figures"));
  for (guint i = 0; i < ox_classes_get_count (); i++)
    g_ptr_array_add (names, _ (ox_classes_get (i)->name));
  g_ptr_array_add (names, NULL);
  self->machine_class = ox_rows_add_choice (GTK_GRID (rows), _ ("_Class"), (const char *const *) names->pdata);
  self->name = ox_rows_add_field (GTK_GRID (rows), OX_FIELD_TEXT, _ ("_Name"));
  g_signal_connect (self->machine_class, "notify::selected", G_CALLBACK (class_cb), self);
  g_signal_connect (self->name, "commit", G_CALLBACK (name_cb), self);
  return rows;
}

static void
add_figure (MachinePanel *self, GtkGrid *rows, const OxMachineField *field, guint i)
{
  g_autofree char *name = is_length (field) || *field->unit == '\0'
                              ? g_strdup (_ (field->label))
                              : g_strdup_printf ("%s, %s", _ (field->label), field->unit);

  self->figures[i] = ox_rows_add_field (rows, is_length (field) ? OX_FIELD_LENGTH : OX_FIELD_NUMBER, name);
  g_signal_connect (self->figures[i], "commit", G_CALLBACK (figure_cb), self);
}

static void
add_group (MachinePanel *self, GtkBox *root, guint group)
{
  guint n;
  const OxMachineField *fields = ox_machine_fields (&n);
  GtkWidget *rows = ox_rows_new ();

  g_return_if_fail (n <= MAX_FIGURES);
  gtk_box_append (root, ox_heading_new (_ (groups[group].title)));
  gtk_box_append (root, rows);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (fields[i].group, groups[group].group))
      add_figure (self, GTK_GRID (rows), &fields[i], i);
  if (g_str_equal (groups[group].group, "abrasive"))
    {
      self->shot = ox_rows_add_field (GTK_GRID (rows), OX_FIELD_TEXT, _ ("Abrasive size, as S330"));
      g_signal_connect (self->shot, "commit", G_CALLBACK (shot_cb), self);
    }
  if (g_str_equal (groups[group].group, "supply"))
    {
      const char *const phases[] = { _ ("Single phase"), _ ("Three phase"), NULL };

      self->phases = ox_rows_add_choice (GTK_GRID (rows), _ ("Phases"), phases);
      g_signal_connect (self->phases, "notify::selected", G_CALLBACK (phases_cb), self);
    }
}

static GtkWidget *
make_rates (MachinePanel *self)
{
  GtkWidget *rows = ox_rows_new ();

  self->hand_rate = ox_rows_add_field (GTK_GRID (rows), OX_FIELD_NUMBER, _ ("Hand rate, m²/h"));
  self->hand_rate_by_length = ox_rows_add_field (GTK_GRID (rows), OX_FIELD_NUMBER, _ ("Narrow edges, m/h"));
  ox_rows_add_wide (GTK_GRID (rows), ox_note_new (_ ("With 0 narrow edges go by their area, too.")));
  g_signal_connect (self->hand_rate, "commit", G_CALLBACK (hand_rate_cb), self);
  g_signal_connect (self->hand_rate_by_length, "commit", G_CALLBACK (hand_rate_cb), self);
  return rows;
}

static GtkWidget *
make_forms (void)
{
  static const struct
  {
    const char *label;
    const char *action;
  } forms[] = {
    { N_ ("Test Patches\342\200\246"), "win.patches" },
    { N_ ("Wear Parts\342\200\246"), "win.wear-parts" },
    { N_ ("Supply\342\200\246"), "win.supply" },
  };
  GtkWidget *grid
      = g_object_new (GTK_TYPE_GRID, "row-spacing", 6, "column-spacing", 6, "column-homogeneous", TRUE, NULL);

  for (int i = 0; i < (int) G_N_ELEMENTS (forms); i++)
    {
      GtkWidget *button = gtk_button_new_with_label (_ (forms[i].label));

      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), forms[i].action);
      gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _ (forms[i].label), -1);
      gtk_widget_set_hexpand (button, TRUE);
      gtk_grid_attach (GTK_GRID (grid), button, i % 2, i / 2, 1, 1);
    }
  return grid;
}

GtkWidget *
ox_machine_panel_new (OxSession *session)
{
  GtkWidget *root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  MachinePanel *self = g_new0 (MachinePanel, 1);

  self->session = session;
  g_object_set_data_full (G_OBJECT (root), "ox-machine", self, g_free);
  gtk_box_append (GTK_BOX (root), ox_heading_new (_ ("Machine")));
  gtk_box_append (GTK_BOX (root), make_class (self));
  gtk_box_append (
      GTK_BOX (root),
      ox_note_new (_ ("The classes are examples. Replace their figures by those on the machine's data plate, and its "
                      "travel speed by what a test patch on this floor gave.")));
  gtk_box_append (GTK_BOX (root), make_forms ());
  gtk_box_append (GTK_BOX (root), ox_heading_new (_ ("Edge work")));
  gtk_box_append (GTK_BOX (root), make_rates (self));
  for (guint i = 0; i < G_N_ELEMENTS (groups); i++)
    add_group (self, GTK_BOX (root), i);
  g_signal_connect_object (session, "job-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  update (root);
  return root;
}
