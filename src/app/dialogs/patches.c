/* Oxturn: app/dialogs/patches - the test patches of the job, and the walking speed for a wanted depth.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/patches.h"

#include "app/dialogs/form.h"
#include "app/dialogs/patch-fields.h"
#include "app/rows.h"
#include "estimate/patches.h"
#include "job/edit.h"

#include <glib/gi18n-lib.h>

#define LIST_PX 240
#define SPEED_STEP 10.0 /* a tenth of a m/min is as well as anybody walks */

static const OxFieldRange wanted_range = { 0, TRUE, 100 };

typedef struct
{
  OxSession *session; /* Borrowed: the parent window keeps it */
  GtkWindow *window;
  GArray *drafts; /* Owned, of OxPatch with texts of its own */
  int at;         /* the one in the fields, -1 for none */
  gboolean moving;

  GtkListBox *list;
  GtkWidget *remove, *add;
  OxPatchFields *fields;
  OxField *wanted;
  GtkLabel *said;
  GtkCheckButton *take;
  double speed; /* for the wanted depth, 0 for none */
} Patches;

static OxPatch *
draft (Patches *self, int i)
{
  return &g_array_index (self->drafts, OxPatch, (guint) i);
}

static void
draft_clear (gpointer data)
{
  OxPatch *patch = data;

  g_free (patch->id);
  g_free (patch->date);
  g_free (patch->note);
}

/* --- What the patches say --- */

static void
say (Patches *self, const char *text, gboolean warn)
{
  gtk_label_set_text (self->said, text);
  if (warn)
    gtk_widget_add_css_class (GTK_WIDGET (self->said), "warned");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->said), "warned");
  gtk_widget_set_sensitive (GTK_WIDGET (self->take), self->speed > 0);
}

static char *
fit_text (const OxProfileFit *fit, guint n)
{
  if (fit->spread > 0)
    return g_strdup_printf (_ ("%u patches, %.1f to %.1f m/min; they lie within a factor of %.2f."), n, fit->slowest,
                            fit->fastest, fit->spread);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%u patch, %.1f to %.1f m/min; too few to tell how far they spread.",
                                       "%u patches, %.1f to %.1f m/min; too few to tell how far they spread.", n),
                          n, fit->slowest, fit->fastest);
}

static void
say_fit (Patches *self, const OxProfileFit *fit, guint n)
{
  g_autofree char *basis = fit_text (fit, n);
  g_autofree char *text = NULL;
  double wanted = 0;
  gboolean tried = TRUE;

  if (ox_field_peek (self->wanted, &wanted) && wanted > 0)
    {
      double speed = ox_profile_speed (fit, wanted);

      tried = ox_profile_is_tried (fit, speed);
      self->speed = MAX (round (speed * SPEED_STEP) / SPEED_STEP, 1 / SPEED_STEP);
      text = g_strdup_printf (
          tried ? _ ("%.2f mm: walk at %.1f m/min. %s")
                : _ ("%.2f mm: walk at %.1f m/min, which was not tried: blast a patch there first. %s"),
          wanted, self->speed, basis);
    }
  else
    text = g_strdup_printf (_ ("Type the depth that is wanted. %s"), basis);
  say (self, text, !tried);
}

static void
update_results (Patches *self)
{
  const OxPatches patches = { self->drafts->len, (OxPatch *) (gpointer) self->drafts->data };
  OxProfileFit fit;
  guint n;
  OxFitVerdict verdict = ox_patches_fit (&patches, &fit, &n);

  self->speed = 0;
  if (verdict == OX_FIT_GOOD)
    say_fit (self, &fit, n);
  else if (verdict == OX_FIT_NO_PATCH)
    say (self, _ ("No patch has a depth yet: measure one, or spread sand on it."), FALSE);
  else
    say (self, _ ("Faster patches came out deeper: something else changed between them. Look at their figures."), TRUE);
}

/* To begin with, the depth that the present travel speed gives. */
static void
want_usual (Patches *self)
{
  const OxJob *job = ox_session_get_job (self->session);
  OxProfileFit fit;
  guint n;

  if (ox_patches_fit (job->patches, &fit, &n) == OX_FIT_GOOD)
    ox_field_set_number (self->wanted, ox_profile_depth (&fit, job->machine->travel_speed), 2);
}

/* --- List --- */

static void
set_row (Patches *self, int i)
{
  const OxPatch *patch = draft (self, i);
  double depth = ox_patch_depth (patch);
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, i);
  g_autoptr (GString) text = g_string_new (patch->id);

  g_string_append_printf (text, "   %.1f m/min", patch->speed_m_per_min);
  if (depth > 0)
    g_string_append_printf (text, "   %.2f mm", depth);
  if (patch->csp > 0)
    g_string_append_printf (text, "   CSP %u", patch->csp);
  gtk_label_set_text (GTK_LABEL (gtk_list_box_row_get_child (row)), text->str);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, text->str, -1);
}

static void
append_row (Patches *self)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_list_box_append (self->list, label);
}

static void
select_row (Patches *self, int i)
{
  self->moving = TRUE;
  gtk_list_box_select_row (self->list, i >= 0 ? gtk_list_box_get_row_at_index (self->list, i) : NULL);
  self->moving = FALSE;
}

static void
show (Patches *self, int i)
{
  /* With no patch the fields are as those of a new one, so that nothing wrong stays in them. */
  const OxPatch none = { .id = (char *) "", .date = (char *) "", .note = (char *) "", .speed_m_per_min = 1 };

  self->at = i;
  select_row (self, i);
  gtk_widget_set_sensitive (ox_patch_fields_get_widget (self->fields), i >= 0);
  gtk_widget_set_sensitive (ox_patch_fields_get_trial (self->fields), i >= 0);
  gtk_widget_set_sensitive (self->remove, i >= 0);
  gtk_widget_set_sensitive (self->add, self->drafts->len < OX_PATCHES_MOST);
  ox_patch_fields_show (self->fields, i >= 0 ? draft (self, i) : &none);
  update_results (self);
}

/* Whether the patch in the fields can be left as it is; if not, the form says why. */
static gboolean
is_right (Patches *self)
{
  g_autofree char *why = NULL;

  if (self->at < 0)
    return TRUE;
  if (!ox_form_is_right (self->window, ox_patch_fields_get_widget (self->fields))
      || !ox_form_is_right (self->window, ox_patch_fields_get_trial (self->fields)))
    return FALSE;
  why = ox_patch_fields_read (self->fields, draft (self, self->at), TRUE);
  if (why != NULL)
    ox_form_tell (self->window, why, TRUE);
  return why == NULL;
}

static void
selected_cb (GtkListBox *list, GtkListBoxRow *row, Patches *self)
{
  (void) list;
  if (self->moving || row == NULL || gtk_list_box_row_get_index (row) == self->at)
    return;
  if (is_right (self))
    show (self, gtk_list_box_row_get_index (row));
  else
    select_row (self, self->at);
}

static void
typed_cb (gpointer data)
{
  Patches *self = data;
  g_autofree char *why = NULL;

  if (self->at < 0)
    return;
  why = ox_patch_fields_read (self->fields, draft (self, self->at), FALSE);
  set_row (self, self->at);
  update_results (self);
}

static char *
free_id (Patches *self)
{
  for (guint number = 1;; number++)
    {
      g_autofree char *id = g_strdup_printf ("P%u", number);
      gboolean taken = FALSE;

      for (guint i = 0; i < self->drafts->len; i++)
        taken = taken || g_str_equal (draft (self, (int) i)->id, id);
      if (!taken)
        return g_steal_pointer (&id);
    }
}

static void
add_cb (Patches *self)
{
  OxPatch patch = { .speed_m_per_min = ox_session_get_job (self->session)->machine->travel_speed };

  if (!is_right (self))
    return;
  patch.id = free_id (self);
  patch.date = g_strdup ("");
  patch.note = g_strdup ("");
  g_array_append_val (self->drafts, patch);
  append_row (self);
  set_row (self, (int) self->drafts->len - 1);
  show (self, (int) self->drafts->len - 1);
  gtk_widget_child_focus (ox_patch_fields_get_widget (self->fields), GTK_DIR_TAB_FORWARD);
}

static void
remove_cb (Patches *self)
{
  int at = self->at;

  if (at < 0)
    return;
  /* What is wrong in the fields goes with the patch. */
  self->at = -1;
  self->moving = TRUE;
  gtk_list_box_remove (self->list, GTK_WIDGET (gtk_list_box_get_row_at_index (self->list, at)));
  self->moving = FALSE;
  g_array_remove_index (self->drafts, (guint) at);
  show (self, MIN (at, (int) self->drafts->len - 1));
  ox_form_settle (self->window);
}

/* --- All of it --- */

static OxJob *
changed_job (Patches *self, GError **error)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_autoptr (OxPatches) patches
      = ox_patches_new (&(OxPatches){ self->drafts->len, (OxPatch *) (gpointer) self->drafts->data });
  g_autoptr (OxJob) changed
      = ox_patches_equal (patches, job->patches) ? ox_job_ref (job) : ox_job_with_patches (job, patches, error);
  g_autoptr (OxMachine) machine = ox_machine_copy (job->machine);

  if (changed == NULL || !gtk_check_button_get_active (self->take) || self->speed <= 0
      || machine->travel_speed == self->speed)
    return g_steal_pointer (&changed);
  machine->travel_speed = self->speed;
  return ox_job_with_machine (changed, machine, error);
}

static char *
done (gpointer data)
{
  Patches *self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) changed = NULL;

  if (!is_right (self))
    return g_strdup (ox_form_get_told (self->window));
  changed = changed_job (self, &error);
  if (changed == NULL)
    return g_strdup (error->message);
  ox_session_apply (self->session, changed, _ ("Set Test Patches"), NULL, NULL);
  return NULL;
}

static void
patches_free (gpointer data)
{
  Patches *self = data;

  g_array_unref (self->drafts);
  g_free (self);
}

/* --- Building --- */

static GtkWidget *
make_button (const char *label, GCallback pressed, Patches *self)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);
  g_autofree char *name = ox_without_mnemonic (label);

  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (button, "clicked", pressed, self);
  return button;
}

static GtkWidget *
make_list (Patches *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  self->add = make_button (_ ("Add Pat_ch"), G_CALLBACK (add_cb), self);
  self->remove = make_button (_ ("_Remove"), G_CALLBACK (remove_cb), self);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "items");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Test patches"), -1);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), GTK_WIDGET (self->list));
  gtk_scrolled_window_set_has_frame (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_widget_set_size_request (scrolled, LIST_PX, -1);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_box_append (GTK_BOX (buttons), self->add);
  gtk_box_append (GTK_BOX (buttons), self->remove);
  gtk_box_append (GTK_BOX (column), scrolled);
  gtk_box_append (GTK_BOX (column), buttons);
  g_signal_connect (self->list, "row-selected", G_CALLBACK (selected_cb), self);
  return column;
}

static GtkWidget *
make_wanted (Patches *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkGrid *rows = GTK_GRID (ox_rows_new ());
  GtkWidget *take = gtk_check_button_new_with_mnemonic (_ ("_Use it as the travel speed"));
  g_autofree char *name = ox_without_mnemonic (_ ("_Use it as the travel speed"));

  self->wanted = ox_rows_add_field (rows, OX_FIELD_NUMBER, _ ("Depth wanted, _mm"));
  self->said = GTK_LABEL (g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL));
  self->take = GTK_CHECK_BUTTON (take);
  ox_field_set_range (self->wanted, &wanted_range);
  gtk_label_set_wrap (self->said, TRUE);
  gtk_label_set_xalign (self->said, 0);
  gtk_label_set_width_chars (self->said, 30);
  gtk_label_set_max_width_chars (self->said, 30);
  gtk_accessible_update_property (GTK_ACCESSIBLE (take), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (self->wanted, "changed", G_CALLBACK (update_results), self);
  gtk_box_append (GTK_BOX (column), ox_heading_new (_ ("Speed for a depth")));
  gtk_box_append (GTK_BOX (column), GTK_WIDGET (rows));
  gtk_box_append (GTK_BOX (column), GTK_WIDGET (self->said));
  gtk_box_append (GTK_BOX (column), take);
  gtk_box_append (GTK_BOX (column), ox_heading_new (_ ("Pattern trial")));
  gtk_box_append (GTK_BOX (column), ox_patch_fields_get_trial (self->fields));
  return column;
}

static GtkWidget *
make_body (Patches *self)
{
  /* No box: in one the height of wrapped texts hangs on a width that is not known yet. */
  GtkWidget *body = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (body), 14);
  self->fields = ox_patch_fields_new (G_CALLBACK (typed_cb), self);
  gtk_grid_attach (GTK_GRID (body), make_list (self), 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (body), ox_patch_fields_get_widget (self->fields), 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (body), make_wanted (self), 2, 0, 1, 1);
  return body;
}

static void
fill (Patches *self, const OxPatches *patches)
{
  for (guint i = 0; i < patches->n; i++)
    {
      OxPatch patch = patches->items[i];

      patch.id = g_strdup (patch.id);
      patch.date = g_strdup (patch.date);
      patch.note = g_strdup (patch.note);
      g_array_append_val (self->drafts, patch);
      append_row (self);
      set_row (self, (int) i);
    }
}

GtkWindow *
ox_patches_open (GtkWindow *parent, OxSession *session)
{
  Patches *self = g_new0 (Patches, 1);
  GtkWidget *body;

  self->session = session;
  self->at = -1;
  self->drafts = g_array_new (FALSE, FALSE, sizeof (OxPatch));
  g_array_set_clear_func (self->drafts, draft_clear);
  body = make_body (self);
  fill (self, ox_session_get_job (session)->patches);
  self->window
      = ox_form_open (parent, &(OxForm){ .title = _ ("Test Patches"),
                                         .accept = _ ("_Set"),
                                         .note = _ ("Depth and flow of 0: not measured, and as the machine has it."),
                                         .body = body,
                                         .done = done,
                                         .data = self,
                                         .free_data = patches_free });
  want_usual (self);
  show (self, self->drafts->len > 0 ? 0 : -1);
  return self->window;
}
