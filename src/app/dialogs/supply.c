/* Oxturn: app/dialogs/supply - what the machine draws, the circuit and the cords, and what is lost on the way.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/supply.h"

#include "app/caution-box.h"
#include "app/dialogs/form.h"
#include "app/dialogs/lines.h"
#include "app/rows.h"
#include "estimate/basis.h"
#include "estimate/supply.h"
#include "job/edit.h"
#include "job/machine-fields.h"

#include <glib/gi18n-lib.h>

#define NEW_CORD_M 15.0 /* of a line that is added */
#define CONDUCTORS_MOST 32

enum
{
  LENGTH,
  CONDUCTOR,
  SIZE
};

static const OxFieldRange circuit_range = { 0, FALSE, OX_CIRCUIT_MOST_A };
static const OxFieldRange cord_length_range = { 0, TRUE, OX_CORD_MOST_M };
static const OxFieldRange cord_size_range = { 0, TRUE, OX_CORD_MOST_MM2 };

typedef struct
{
  OxSession *session;                       /* Borrowed: the parent window keeps it */
  OxField *volts, *amperes, *length, *size; /* of the machine */
  GtkDropDown *phases;
  OxField *circuit;
  OxLines *cords;
  GtkLabel *drop, *longest, *least;
} Supply;

/* --- What is typed, as a job --- */

static void
read_machine (Supply *self, OxMachine *machine)
{
  ox_field_peek (self->volts, &machine->volts);
  ox_field_peek (self->amperes, &machine->amperes);
  machine->phases = gtk_drop_down_get_selected (self->phases) == 1 ? 3 : 1;
  ox_field_peek (self->length, &machine->cord_length);
  ox_field_peek (self->size, &machine->cord_mm2);
}

static OxOutfit *
read_outfit (Supply *self)
{
  OxOutfit draft = *ox_session_get_job (self->session)->outfit;

  ox_field_peek (self->circuit, &draft.circuit_a);
  draft.n_cords = ox_lines_get_count (self->cords);
  for (guint i = 0; i < draft.n_cords; i++)
    {
      GtkWidget **cells = ox_lines_get (self->cords, i);

      draft.cords[i].length = ox_field_get_value (OX_FIELD (cells[LENGTH]));
      draft.cords[i].mm2 = ox_field_get_value (OX_FIELD (cells[SIZE]));
      ox_field_peek (OX_FIELD (cells[LENGTH]), &draft.cords[i].length);
      ox_field_peek (OX_FIELD (cells[SIZE]), &draft.cords[i].mm2);
    }
  return ox_outfit_new (&draft);
}

/* Not checked: only to reckon with. */
static OxJob *
draft_job (Supply *self)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_autoptr (OxMachine) machine = ox_machine_copy (job->machine);
  g_autoptr (OxOutfit) outfit = read_outfit (self);
  OxJobBuilder *builder = ox_job_builder_new (job);

  read_machine (self, machine);
  ox_job_builder_set_machine (builder, machine);
  ox_job_builder_set_outfit (builder, outfit);
  return ox_job_builder_end (builder);
}

/* --- What it comes to --- */

static void
say (GtkLabel *label, gboolean warn, char *text)
{
  gtk_label_set_text (label, text);
  if (warn)
    gtk_widget_add_css_class (GTK_WIDGET (label), "warned");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (label), "warned");
  gtk_widget_set_visible (GTK_WIDGET (label), *text != '\0');
  g_free (text);
}

static void
say_drop (Supply *self, const OxSupply *supply, const OxCordLine *line, OxUnits units)
{
  OxDropVerdict verdict = ox_cord_line_judge (line, supply);
  const char *words[] = { _ ("that is fine"), _ ("more than is advised: take a thicker or a shorter cord"),
                          _ ("too much: the machine should not run on it") };
  g_autofree char *longest = NULL;

  say (self->drop, verdict != OX_DROP_FINE,
       g_strdup_printf (_ ("Lost in the cord: %.1f V, %.1f %%; %s"), ox_supply_drop (supply, line->cords, line->n),
                        100 * ox_supply_drop_share (supply, line->cords, line->n), words[verdict]));
  if (line->length <= 0)
    {
      say (self->longest, FALSE, g_strdup (""));
      return;
    }
  /* To a tenth of a metre, and never more than it may be. */
  longest = ox_units_length_text (units, floor (ox_cord_line_longest (line, supply) * 10) / 10, TRUE);
  say (self->longest, FALSE,
       g_strdup_printf (_ ("Longest cord like it: %s, until %.0f %% are lost"), longest, 100 * ox_basis ("drop-stop")));
}

static void
say_circuit (Supply *self, double amperes, double circuit)
{
  double share = ox_basis ("continuous-share");

  if (circuit > 0 && ox_supply_judge_circuit (amperes, circuit, share) != OX_CIRCUIT_FINE)
    say (self->least, TRUE,
         g_strdup_printf (_ ("A circuit of %.0f A carries %.1f A for 3 hours or longer, and the machine draws %.1f A"), circuit,
                          ox_supply_continuous_limit (circuit, share), amperes));
  else
    say (self->least, FALSE,
         g_strdup_printf (_ ("Least circuit for %.1f A over 3 hours or longer: %.1f A"), amperes, ox_least_circuit (amperes)));
}

static void
update (Supply *self)
{
  g_autoptr (OxJob) job = draft_job (self);
  const OxMachine *machine = job->machine;
  const OxSupply supply = { machine->volts, machine->amperes, machine->phases };
  OxCordLine line = ox_cord_line_of (job);

  if (machine->volts <= 0 || machine->amperes <= 0 || line.n == 0)
    {
      say (self->drop, FALSE, g_strdup (_ ("Voltage, current and conductor tell what is lost in the cord.")));
      say (self->longest, FALSE, g_strdup (""));
    }
  else
    say_drop (self, &supply, &line, job->units);
  say_circuit (self, machine->amperes, job->outfit->circuit_a);
}

/* --- Conductors --- */

/* Sizes of the table after "another size". */
static GtkWidget *
make_conductors (void)
{
  guint n;
  const OxConductor *rows = ox_supply_conductors (&n);
  const char *names[CONDUCTORS_MOST + 2] = { _ ("another size") };

  for (guint i = 0; i < n && i < CONDUCTORS_MOST; i++)
    names[i + 1] = rows[i].id;
  return gtk_drop_down_new_from_strings (names);
}

static void
chosen_cb (GtkDropDown *choice, GParamSpec *pspec, OxField *size)
{
  guint n, i = gtk_drop_down_get_selected (choice);
  const OxConductor *rows = ox_supply_conductors (&n);

  (void) pspec;
  if (i > 0)
    ox_field_set_number (size, rows[i - 1].mm2, 3);
}

static void
sized_cb (OxField *size, GtkDropDown *choice)
{
  guint n, chosen = 0;
  const OxConductor *rows = ox_supply_conductors (&n);
  double mm2 = 0;

  if (!ox_field_peek (size, &mm2))
    return;
  for (guint i = 0; i < n; i++)
    if (fabs (rows[i].mm2 - mm2) < 1e-6)
      chosen = i + 1;
  ox_choice_select (choice, chosen, size);
}

/* A choice and a field that say the same. */
static void
pair (GtkWidget *choice, OxField *size)
{
  g_signal_connect_object (choice, "notify::selected", G_CALLBACK (chosen_cb), size, (GConnectFlags) 0);
  g_signal_connect_object (size, "changed", G_CALLBACK (sized_cb), choice, (GConnectFlags) 0);
}

static void
make_cord (GtkWidget **cells, gpointer data)
{
  Supply *self = data;
  OxUnits units = ox_session_get_job (self->session)->units;
  guint n;

  cells[LENGTH] = ox_field_new (OX_FIELD_LENGTH, "");
  gtk_editable_set_width_chars (GTK_EDITABLE (cells[LENGTH]), 8);
  cells[CONDUCTOR] = make_conductors ();
  cells[SIZE] = ox_field_new (OX_FIELD_NUMBER, "");
  ox_field_set_range (OX_FIELD (cells[LENGTH]), &cord_length_range);
  ox_field_set_range (OX_FIELD (cells[SIZE]), &cord_size_range);
  pair (cells[CONDUCTOR], OX_FIELD (cells[SIZE]));
  ox_field_set_length (OX_FIELD (cells[LENGTH]), units, NEW_CORD_M);
  ox_field_set_number (OX_FIELD (cells[SIZE]), ox_supply_conductors (&n)[1].mm2, 3);
  g_signal_connect_swapped (cells[LENGTH], "changed", G_CALLBACK (update), self);
  g_signal_connect_swapped (cells[SIZE], "changed", G_CALLBACK (update), self);
}

/* --- All of it --- */

static char *
done (gpointer data)
{
  Supply *self = data;
  const OxJob *job = ox_session_get_job (self->session);
  g_autoptr (OxMachine) machine = ox_machine_copy (job->machine);
  g_autoptr (OxOutfit) outfit = read_outfit (self);
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) powered = NULL;
  g_autoptr (OxJob) changed = NULL;

  read_machine (self, machine);
  if (ox_machine_equal (machine, job->machine) && ox_outfit_equal (outfit, job->outfit))
    return NULL;
  powered = ox_job_with_machine (job, machine, &error);
  changed = powered != NULL ? ox_job_with_outfit (powered, outfit, &error) : NULL;
  if (changed == NULL)
    return g_strdup (error->message);
  ox_session_apply (self->session, changed, _ ("Set Supply"), NULL, NULL);
  return NULL;
}

static GtkLabel *
add_said (GtkBox *box)
{
  GtkLabel *label = GTK_LABEL (g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL));

  gtk_label_set_wrap (label, TRUE);
  gtk_label_set_xalign (label, 0);
  gtk_label_set_width_chars (label, 38);
  gtk_label_set_max_width_chars (label, 38);
  gtk_box_append (box, GTK_WIDGET (label));
  return label;
}

/* A field with the limits that the figure @key of the machine has. */
static OxField *
add_figure (GtkGrid *rows, OxFieldKind kind, const char *name, const char *key)
{
  OxField *field = ox_rows_add_field (rows, kind, name);
  guint n;
  const OxMachineField *figures = ox_machine_fields (&n);

  for (guint i = 0; i < n; i++)
    if (g_str_equal (figures[i].key, key))
      ox_field_set_range (field, &(OxFieldRange){ figures[i].least, figures[i].above, figures[i].most });
  return field;
}

static GtkWidget *
make_fields (Supply *self, const OxJob *job)
{
  const char *const phases[] = { _ ("Single phase"), _ ("Three phase"), NULL };
  GtkGrid *rows = GTK_GRID (ox_rows_new ());
  g_autofree char *name = ox_without_mnemonic (_ ("Con_ductor"));
  GtkWidget *conductor = make_conductors ();

  self->volts = add_figure (rows, OX_FIELD_NUMBER, _ ("_Voltage, V"), "volts");
  ox_field_set_number (self->volts, job->machine->volts, 2);
  self->amperes = add_figure (rows, OX_FIELD_NUMBER, _ ("C_urrent, A"), "amperes");
  ox_field_set_number (self->amperes, job->machine->amperes, 2);
  self->phases = ox_rows_add_choice (rows, _ ("_Phases"), phases);
  gtk_drop_down_set_selected (self->phases, job->machine->phases == 3 ? 1 : 0);
  self->circuit = ox_rows_add_field (rows, OX_FIELD_NUMBER, _ ("C_ircuit, A (0: not known)"));
  ox_field_set_range (self->circuit, &circuit_range);
  ox_field_set_number (self->circuit, job->outfit->circuit_a, 1);
  self->length = add_figure (rows, OX_FIELD_LENGTH, _ ("Cord _length"), "cord-length");
  ox_field_set_length (self->length, job->units, job->machine->cord_length);
  gtk_accessible_update_property (GTK_ACCESSIBLE (conductor), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  ox_rows_add (rows, _ ("Con_ductor"), conductor);
  self->size = add_figure (rows, OX_FIELD_NUMBER, _ ("Con_ductor, mm²"), "cord-mm2");
  pair (conductor, self->size);
  ox_field_set_number (self->size, job->machine->cord_mm2, 3);
  ox_rows_widen_names (rows, 24);
  return GTK_WIDGET (rows);
}

static GtkWidget *
make_cords (Supply *self, const OxJob *job)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  self->cords = ox_lines_new (&(OxLinesKind){ .headings = { _ ("Length"), _ ("Conductor"), _ ("mm²") },
                                              .add = _ ("_Add a Cord"),
                                              .most = OX_OUTFIT_MOST_CORDS,
                                              .make = make_cord,
                                              .changed = (void (*) (gpointer)) update,
                                              .data = self });
  gtk_box_append (GTK_BOX (column), ox_heading_new (_ ("Cords in series, in place of it")));
  gtk_box_append (GTK_BOX (column), ox_lines_get_widget (self->cords));
  for (guint i = 0; i < job->outfit->n_cords; i++)
    {
      GtkWidget **cells = ox_lines_add (self->cords);

      ox_field_set_length (OX_FIELD (cells[LENGTH]), job->units, job->outfit->cords[i].length);
      ox_field_set_number (OX_FIELD (cells[SIZE]), job->outfit->cords[i].mm2, 3);
    }
  return column;
}

static void
listen (Supply *self)
{
  OxField *fields[] = { self->volts, self->amperes, self->circuit, self->length, self->size };

  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    g_signal_connect_swapped (fields[i], "changed", G_CALLBACK (update), self);
  g_signal_connect_swapped (self->phases, "notify::selected", G_CALLBACK (update), self);
}

static GtkWidget *
make_body (Supply *self, const OxJob *job)
{
  GtkWidget *body = gtk_grid_new (); /* a box would line up the first lines of both columns, and ask for more room than
                                        it likes (GTK 4.18) */
  GtkWidget *left = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkWidget *right = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  gtk_box_append (GTK_BOX (left), make_fields (self, job));
  self->drop = add_said (GTK_BOX (right));
  self->longest = add_said (GTK_BOX (right));
  self->least = add_said (GTK_BOX (right));
  gtk_box_append (GTK_BOX (right), make_cords (self, job));
  gtk_box_append (GTK_BOX (left), ox_caution_box_new ("supply"));
  gtk_grid_set_column_spacing (GTK_GRID (body), 16);
  gtk_grid_attach (GTK_GRID (body), left, 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (body), right, 1, 0, 1, 1);
  listen (self);
  update (self);
  return body;
}

GtkWindow *
ox_supply_open (GtkWindow *parent, OxSession *session)
{
  Supply *self = g_new0 (Supply, 1);

  self->session = session;
  return ox_form_open (parent,
                       &(OxForm){ .title = _ ("Supply"),
                                  .accept = _ ("_Set"),
                                  .note = _ ("Only for planning: what may be connected, and by whom, local codes "
                                             "and a licensed electrician say."),
                                  .body = make_body (self, ox_session_get_job (session)),
                                  .done = done,
                                  .data = self,
                                  .free_data = g_free });
}
