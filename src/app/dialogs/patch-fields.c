/* Oxturn: app/dialogs/patch-fields - the fields for one test patch.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/patch-fields.h"

#include "app/dialogs/figures.h"
#include "base/shown.h"
#include "base/number.h"
#include "estimate/patches.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

#define AT(member) offsetof (OxPatch, member)
#define SAID_CHARS 30
#define NAME_CHARS 24

static const OxFigureRow figures[] = {
  { N_ ("T_ravel speed, m/min"), AT (speed_m_per_min), 3, { 0, TRUE, OX_PATCH_MOST_SPEED } },
  { N_ ("Abrasive _flow, kg/min"), AT (flow_kg_min), 2, { 0, FALSE, OX_PATCH_MOST_FLOW } },
  { N_ ("_Depth measured, mm"), AT (depth_mm), 4, { 0, FALSE, OX_TEXTURE_MOST_MM } },
  { N_ ("Sand _volume, ml"), AT (volume_ml), 2, { 0, FALSE, OX_PATCH_MOST_VOLUME } },
};

/* Pattern trial: 0 is not read. */
static const OxFigureRow readings[] = {
  { N_ ("Texture _left, mm"), AT (left_mm), 3, { 0, FALSE, OX_TEXTURE_MOST_MM } },
  { N_ ("Textur_e middle, mm"), AT (middle_mm), 3, { 0, FALSE, OX_TEXTURE_MOST_MM } },
  { N_ ("Texture ri_ght, mm"), AT (right_mm), 3, { 0, FALSE, OX_TEXTURE_MOST_MM } },
};

struct _OxPatchFields
{
  GtkWidget *root, *trial;
  OxField *readings[G_N_ELEMENTS (readings)];
  OxField *cage, *cage_to;
  GtkLabel *advice;
  OxField *id, *date, *note;
  OxField *fields[G_N_ELEMENTS (figures)];
  OxField *diameters;
  GtkLabel *by_sand;
  GtkDropDown *csp;
  GCallback changed;
  gpointer data;
  gboolean showing;
};

GtkWidget *
ox_patch_fields_get_widget (OxPatchFields *self)
{
  return self->root;
}

GtkWidget *
ox_patch_fields_get_trial (OxPatchFields *self)
{
  return self->trial;
}

/* --- Diameters: numbers with blanks or semicolons between them --- */

static char *
diameters_text (const OxPatch *patch)
{
  g_autoptr (GString) text = g_string_new ("");

  for (guint i = 0; i < patch->n_diameters; i++)
    {
      g_string_append (text, i > 0 ? "  " : "");
      ox_number_append (text, patch->diameters_mm[i], 3);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
read_diameters (const char *text, OxPatch *patch)
{
  g_autofree char *plain = g_strdelimit (g_strdelimit (g_strdup (text), ",", '.'), ";\t", ' ');
  g_auto (GStrv) parts = g_strsplit (plain, " ", -1);
  OxPatch read = { .n_diameters = 0 };

  for (guint i = 0; parts[i] != NULL; i++)
    {
      double value;

      if (*parts[i] == '\0')
        continue;
      if (!ox_number_parse (parts[i], &value) || value <= 0 || value > OX_PATCH_MOST_DIAMETER)
        return g_strdup_printf (_ ("Diameters, mm: “%s” was typed; numbers over 0 to 10000 with blanks between them "
                                   "are needed"),
                                ox_shown (parts[i]).text);
      if (read.n_diameters == OX_PATCH_MOST_DIAMETERS)
        return g_strdup_printf (_ ("Diameters, mm: at most %d are allowed"), OX_PATCH_MOST_DIAMETERS);
      read.diameters_mm[read.n_diameters++] = value;
    }
  patch->n_diameters = read.n_diameters;
  memcpy (patch->diameters_mm, read.diameters_mm, sizeof read.diameters_mm);
  return NULL;
}

/* --- Reading and showing --- */

static void
show_by_sand (OxPatchFields *self, const OxPatch *patch)
{
  OxPatch sand = *patch;
  double depth;
  g_autofree char *text = NULL;

  sand.depth_mm = 0;
  depth = ox_patch_depth (&sand);
  text = depth > 0 ? g_strdup_printf (_ ("%.2f mm by the sand patch"), depth) : g_strdup (_ ("no sand patch"));
  gtk_label_set_text (self->by_sand, text);
}

/* --- Pattern trial --- */

static void
show_clock (OxField *field, guint minutes)
{
  g_autofree char *text = minutes > 0 ? g_strdup_printf ("%u:%02u", minutes / 60, minutes % 60) : g_strdup ("");

  ox_field_set_text (field, text);
}

static void
show_advice (OxPatchFields *self, const OxPatch *patch)
{
  g_autofree char *advice = ox_patch_has_trial (patch) ? ox_patch_advice_text (patch) : NULL;
  g_autofree char *text = advice != NULL
                              ? g_strdup_printf (_ ("Balance %.0f %%: %s."), ox_patch_balance (patch), advice)
                              : g_strdup (_ ("No pattern trial: type the texture left and right of one strip."));

  gtk_label_set_text (self->advice, text);
}

static void
show_trial (OxPatchFields *self, const OxPatch *patch)
{
  ox_figures_show (readings, G_N_ELEMENTS (readings), self->readings, patch);
  show_clock (self->cage, patch->cage_min);
  show_clock (self->cage_to, patch->cage_to_min);
  show_advice (self, patch);
}

/* Nothing is 0. */
static gboolean
read_clock (OxField *field, guint *minutes)
{
  g_autofree char *text = g_strstrip (g_strdup (ox_field_get_text (field)));
  guint read = 0;

  if (*text != '\0' && !ox_text_read_clock (text, OX_CAGE_LEAST_MIN / 60, OX_CAGE_MOST_MIN / 60, &read))
    return FALSE;
  *minutes = read;
  return TRUE;
}

/* Returns: (transfer full) (nullable): why not; @field: (out): where */
static char *
read_trial (OxPatchFields *self, OxPatch *patch, OxField **field)
{
  ox_figures_read (readings, G_N_ELEMENTS (readings), self->readings, patch);
  show_advice (self, patch);
  *field = self->readings[patch->left_mm > 0 ? 2 : 0];
  if ((patch->left_mm > 0) != (patch->right_mm > 0) || (patch->middle_mm > 0 && patch->left_mm == 0))
    return g_strdup (_ ("Pattern trial: the texture left and right is needed, or neither"));
  *field = !read_clock (self->cage, &patch->cage_min) ? self->cage : self->cage_to;
  if (*field == self->cage || !read_clock (self->cage_to, &patch->cage_to_min))
    return g_strdup_printf (_ ("Feed cage: “%s” is no place on a clock; one from 1:00 to 12:59 is needed, or nothing"),
                            ox_shown (ox_field_get_text (*field)).text);
  return NULL;
}

void
ox_patch_fields_show (OxPatchFields *self, const OxPatch *patch)
{
  g_autofree char *diameters = diameters_text (patch);

  self->showing = TRUE;
  ox_field_set_text (self->id, patch->id);
  ox_field_set_text (self->date, patch->date);
  ox_field_set_text (self->note, patch->note);
  ox_field_set_text (self->diameters, diameters);
  ox_figures_show (figures, G_N_ELEMENTS (figures), self->fields, patch);
  gtk_drop_down_set_selected (self->csp, patch->csp);
  show_by_sand (self, patch);
  show_trial (self, patch);
  self->showing = FALSE;
}

static char *
refuse (OxField *field, gboolean focus, char *why)
{
  if (focus)
    gtk_widget_grab_focus (GTK_WIDGET (field));
  return why;
}

static void
take_text (OxField *field, char **text)
{
  g_free (*text);
  *text = g_strstrip (ox_text_clean (ox_field_get_text (field), FALSE));
}

char *
ox_patch_fields_read (OxPatchFields *self, OxPatch *patch, gboolean focus)
{
  OxField *field;
  char *why;
  g_autofree char *trial = NULL;

  take_text (self->id, &patch->id);
  take_text (self->date, &patch->date);
  take_text (self->note, &patch->note);
  patch->csp = gtk_drop_down_get_selected (self->csp);
  ox_figures_read (figures, G_N_ELEMENTS (figures), self->fields, patch);
  trial = read_trial (self, patch, &field);
  why = read_diameters (ox_field_get_text (self->diameters), patch);
  show_by_sand (self, patch);
  if (why != NULL)
    return refuse (self->diameters, focus, why);
  if (!ox_text_is_id (patch->id))
    return refuse (self->id, focus,
                   g_strdup (_ ("Patch: letters, digits, “-” and “_” are allowed, a letter first, such as P1")));
  if (!ox_text_is_date (patch->date))
    return refuse (self->date, focus,
                   g_strdup_printf (_ ("Date: “%s” is no day; one such as 2026-09-14 is needed, or nothing"),
                                    ox_shown (patch->date).text));
  return trial != NULL ? refuse (field, focus, g_steal_pointer (&trial)) : NULL;
}

/* --- Building --- */

static void
changed_cb (OxPatchFields *self)
{
  if (!self->showing)
    ((void (*) (gpointer)) self->changed) (self->data);
}

static void
listen (OxPatchFields *self)
{
  OxField *texts[] = { self->id, self->date, self->note, self->diameters, self->cage, self->cage_to };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_signal_connect_swapped (texts[i], "changed", G_CALLBACK (changed_cb), self);
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    g_signal_connect_swapped (self->fields[i], "changed", G_CALLBACK (changed_cb), self);
  for (guint i = 0; i < G_N_ELEMENTS (readings); i++)
    g_signal_connect_swapped (self->readings[i], "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->csp, "notify::selected", G_CALLBACK (changed_cb), self);
}

static void
make_trial (OxPatchFields *self)
{
  GtkGrid *rows = GTK_GRID (ox_rows_new ());
  const OxPatch empty = { .left_mm = 0 };

  self->trial = GTK_WIDGET (rows);
  ox_figures_add (rows, readings, G_N_ELEMENTS (readings), &empty, self->readings);
  self->cage = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("Cage at, o'cloc_k"));
  self->cage_to = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("Cage turned t_o"));
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->cage), "9:00");
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->cage_to), "9:10");
  self->advice = GTK_LABEL (g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL));
  gtk_label_set_wrap (self->advice, TRUE);
  gtk_label_set_xalign (self->advice, 0);
  gtk_label_set_width_chars (self->advice, SAID_CHARS);
  gtk_label_set_max_width_chars (self->advice, SAID_CHARS);
  ox_rows_add_wide (rows, GTK_WIDGET (self->advice));
  ox_rows_widen_names (rows, NAME_CHARS);
}

OxPatchFields *
ox_patch_fields_new (GCallback changed, gpointer data)
{
  OxPatchFields *self = g_new0 (OxPatchFields, 1);
  GtkGrid *rows = GTK_GRID (ox_rows_new ());
  const OxPatch empty = { .speed_m_per_min = 1 };

  self->root = GTK_WIDGET (rows);
  self->changed = changed;
  self->data = data;
  self->id = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("Patc_h"));
  self->date = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("D_ate, year-month-day"));
  gtk_editable_set_width_chars (GTK_EDITABLE (self->date), 11);
  ox_figures_add (rows, figures, G_N_ELEMENTS (figures), &empty, self->fields);
  self->diameters = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("Diame_ters, mm"));
  self->by_sand = GTK_LABEL (ox_note_new (NULL));
  ox_rows_add (rows, "", GTK_WIDGET (self->by_sand));
  self->csp = ox_rows_add_csp (rows, _ ("_Profile"));
  self->note = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("_Note"));
  make_trial (self);
  ox_rows_widen_names (rows, NAME_CHARS);
  gtk_widget_set_hexpand (GTK_WIDGET (rows), TRUE);
  g_object_set_data_full (G_OBJECT (rows), "ox-patch-fields", self, g_free);
  listen (self);
  return self;
}
