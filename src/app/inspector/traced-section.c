/* Oxturn: app/inspector/traced-section - size, place and look of a traced plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/inspector/section.h"

#include "app/traced/picture.h"
#include "job/edit.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxSection base;
  OxField *name, *page, *drawn, *width, *angle, *x, *y, *strength;
  GtkCheckButton *locked, *hidden;

  GBytes *data; /* (nullable) of which ... */
  guint of_page;
  OxTracedInfo info; /* ... this is known; all 0 where nothing is */
  gboolean filling;
} TracedSection;

/* --- Pages are looked up in another thread: a large PDF takes its time --- */

typedef struct
{
  GWeakRef root; /* of the section, which may go meanwhile */
  GBytes *data;
  guint page;
  gboolean turn; /* whether it was typed, to become the page of the plan */
  OxTracedInfo info;
} LookUp;

static void
look_up_free (gpointer data)
{
  LookUp *look = data;

  g_weak_ref_clear (&look->root);
  g_bytes_unref (look->data);
  g_free (look);
}

static void
look_up_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancel)
{
  LookUp *look = data;
  GError *error = NULL;

  (void) source;
  (void) cancel;
  if (ox_traced_info_read (look->data, look->page, &look->info, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void looked_up_cb (GObject *source, GAsyncResult *result, gpointer data);

static void
start_look_up (TracedSection *self, GBytes *data, guint page, gboolean turn)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, looked_up_cb, NULL);
  LookUp *look = g_new0 (LookUp, 1);

  g_weak_ref_init (&look->root, self->base.root);
  look->data = g_bytes_ref (data);
  look->page = page;
  look->turn = turn;
  g_task_set_task_data (task, look, look_up_free);
  g_task_run_in_thread (task, look_up_thread);
}

/* Until it is known, what hangs on it is not shown. */
static void
look_up (TracedSection *self, const OxTracedPlan *traced)
{
  if (self->data == traced->data && self->of_page == traced->page)
    return;
  g_clear_pointer (&self->data, g_bytes_unref);
  self->data = g_bytes_ref (traced->data);
  self->of_page = traced->page;
  self->info = (OxTracedInfo){ .pages = 0 };
  start_look_up (self, traced->data, traced->page, FALSE);
}

static void
fill (OxSection *section, const OxJob *job, guint index, int side)
{
  TracedSection *self = (TracedSection *) section;
  const OxTracedPlan *traced = job->traced[index];

  (void) side;
  look_up (self, traced);
  self->filling = TRUE;
  ox_field_set_text (self->name, traced->name);
  ox_field_set_number (self->page, traced->page, 0);
  if (self->info.paper_width_mm > 0)
    ox_field_set_number (self->drawn, traced->width * 1000 / self->info.paper_width_mm, 2);
  ox_field_set_length (self->width, job->units, traced->width);
  ox_field_set_number (self->angle, traced->angle_deg, 3);
  ox_field_set_length (self->x, job->units, traced->middle.x);
  ox_field_set_length (self->y, job->units, traced->middle.y);
  ox_field_set_number (self->strength, traced->strength * 100, 0);
  gtk_check_button_set_active (self->locked, traced->locked);
  gtk_check_button_set_active (self->hidden, traced->hidden);
  ox_rows_set_row_visible (section->rows, self->page, self->info.pages > 1);
  ox_rows_set_row_visible (section->rows, self->drawn, self->info.paper_width_mm > 0);
  self->filling = FALSE;
}

static gboolean
current (TracedSection *self, OxTracedPlan *draft)
{
  guint index = 0;

  if (self->filling || !ox_section_item (&self->base, &index))
    return FALSE;
  *draft = *ox_session_get_job (self->base.session)->traced[index];
  return TRUE;
}

static void
take (TracedSection *self, const OxTracedPlan *draft, const char *label, OxField *field)
{
  g_autoptr (OxTracedPlan) traced = ox_traced_plan_new (draft);
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_traced (ox_session_get_job (self->base.session), traced, &error);

  ox_section_take (self->base.session, job, error, label, field);
}

static void
set_width (OxTracedPlan *draft, double width)
{
  draft->depth *= width / draft->width;
  draft->width = width;
}

static void
ask_page (TracedSection *self, const OxTracedPlan *draft, double number)
{
  if (number < 1 || number > self->info.pages || number != floor (number))
    {
      g_autofree char *why = g_strdup_printf (_ ("The PDF has pages 1 to %u."), self->info.pages);

      ox_field_refuse (self->page, why);
    }
  else
    start_look_up (self, draft->data, (guint) number, TRUE);
}

/* Another page has a size of its own; what a millimetre of paper stands for stays. */
static void
turn_page (TracedSection *self, const LookUp *look, const GError *error)
{
  OxTracedPlan draft;
  double m_per_mm;

  if (!current (self, &draft) || draft.data != look->data || self->info.paper_width_mm <= 0)
    return;
  if (error != NULL)
    {
      ox_field_refuse (self->page, error->message);
      return;
    }
  m_per_mm = draft.width / self->info.paper_width_mm;
  draft.page = look->page;
  draft.width = look->info.paper_width_mm * m_per_mm;
  draft.depth = look->info.paper_depth_mm * m_per_mm;
  take (self, &draft, _ ("Change Traced Plan"), self->page);
}

static void
looked_up_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  LookUp *look = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autoptr (GtkWidget) root = g_weak_ref_get (&look->root);
  gboolean known = g_task_propagate_boolean (G_TASK (result), &error);
  TracedSection *self = root != NULL ? g_object_get_data (G_OBJECT (root), "ox-section") : NULL;
  guint index = 0;

  (void) source;
  (void) data;
  if (self == NULL)
    return;
  if (look->turn)
    turn_page (self, look, error);
  else if (known && self->data == look->data && self->of_page == look->page)
    {
      self->info = look->info;
      if (ox_section_item (&self->base, &index))
        fill (&self->base, ox_session_get_job (self->base.session), index, -1);
    }
}

static void
figure_cb (OxField *field, TracedSection *self)
{
  double value = ox_field_get_value (field);
  OxTracedPlan draft;

  if (!current (self, &draft))
    return;
  if (field == self->page)
    {
      ask_page (self, &draft, value);
      return;
    }
  if (field == self->drawn)
    set_width (&draft, value * self->info.paper_width_mm / 1000);
  else if (field == self->width)
    set_width (&draft, value);
  else if (field == self->angle)
    draft.angle_deg = value;
  else if (field == self->x)
    draft.middle.x = value;
  else if (field == self->y)
    draft.middle.y = value;
  else if (field == self->strength)
    draft.strength = value / 100;
  take (self, &draft, _ ("Change Traced Plan"), field);
}

static void
name_cb (OxField *field, TracedSection *self)
{
  g_autofree char *text = ox_text_clean (ox_field_get_text (field), FALSE);
  OxTracedPlan draft;

  if (!current (self, &draft))
    return;
  draft.name = text;
  take (self, &draft, _ ("Rename Traced Plan"), field);
}

static void
switch_cb (GtkCheckButton *check, TracedSection *self)
{
  OxTracedPlan draft;

  if (!current (self, &draft))
    return;
  if (check == self->locked)
    draft.locked = gtk_check_button_get_active (check);
  else
    draft.hidden = gtk_check_button_get_active (check);
  take (self, &draft, check == self->locked ? _ ("Lock Traced Plan") : _ ("Hide Traced Plan"), NULL);
}

static OxField *
add_figure (TracedSection *self, OxFieldKind kind, const char *name)
{
  OxField *field = ox_rows_add_field (self->base.rows, kind, name);

  g_signal_connect (field, "commit", G_CALLBACK (figure_cb), self);
  return field;
}

static GtkCheckButton *
add_switch (TracedSection *self, GtkWidget *box, const char *name)
{
  GtkWidget *check = gtk_check_button_new_with_mnemonic (name);

  g_signal_connect (check, "toggled", G_CALLBACK (switch_cb), self);
  gtk_box_append (GTK_BOX (box), check);
  return GTK_CHECK_BUTTON (check);
}

static void
forget_cb (gpointer data, GObject *root)
{
  (void) root;
  g_clear_pointer ((GBytes **) data, g_bytes_unref);
}

GtkWidget *
ox_traced_section_new (OxSession *session)
{
  TracedSection *self = g_new0 (TracedSection, 1);
  GtkWidget *root = ox_section_init (&self->base, session, OX_ITEM_TRACED, _ ("Traced plan"));
  GtkWidget *switches = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *scale = gtk_button_new_with_mnemonic (_ ("_Set Scale by Two Points"));

  self->base.fill = fill;
  gtk_actionable_set_action_name (GTK_ACTIONABLE (scale), "win.tool");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (scale), "s", "scale");
  ox_rows_add_wide (self->base.rows, scale);
  self->name = ox_rows_add_field (self->base.rows, OX_FIELD_TEXT, _ ("_Name"));
  self->page = add_figure (self, OX_FIELD_NUMBER, _ ("_Page"));
  self->drawn = add_figure (self, OX_FIELD_NUMBER, _ ("Drawn at 1 :"));
  self->width = add_figure (self, OX_FIELD_LENGTH, _ ("_Width"));
  self->angle = add_figure (self, OX_FIELD_NUMBER, _ ("Angle, degrees"));
  self->x = add_figure (self, OX_FIELD_LENGTH, _ ("Middle at x"));
  self->y = add_figure (self, OX_FIELD_LENGTH, _ ("Middle at y"));
  self->strength = add_figure (self, OX_FIELD_NUMBER, _ ("Strength, %"));
  self->locked = add_switch (self, switches, _ ("_Locked"));
  self->hidden = add_switch (self, switches, _ ("_Hidden"));
  ox_rows_add_wide (self->base.rows, switches);
  g_signal_connect (self->name, "commit", G_CALLBACK (name_cb), self);
  g_object_weak_ref (G_OBJECT (root), forget_cb, &self->data);
  ox_section_start (&self->base);
  return root;
}
