/* Oxturn: app/dialogs/patch-fields - the fields for one test patch.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/patch-fields.h"

#include "app/dialogs/figures.h"
#include "base/number.h"
#include "estimate/patches.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

#define AT(member) offsetof (OxPatch, member)
#define DIAMETER_MOST 10000.0 /* mm */

static const OxFigureRow figures[] = {
  { N_ ("T_ravel speed, m/min"), AT (speed_m_per_min), 3, { 0, TRUE, 1000 } },
  { N_ ("Abrasive _flow, kg/min"), AT (flow_kg_min), 2, { 0, FALSE, 10000 } },
  { N_ ("_Depth measured, mm"), AT (depth_mm), 4, { 0, FALSE, 100 } },
  { N_ ("Sand _volume, ml"), AT (volume_ml), 2, { 0, FALSE, 10000 } },
};

struct _OxPatchFields
{
  GtkWidget *root;
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
      if (!ox_number_parse (parts[i], &value) || value <= 0 || value > DIAMETER_MOST)
        return g_strdup_printf (_ ("Diameters, mm: “%.40s” was typed; numbers over 0 to 10000 with blanks between them "
                                   "are needed"),
                                parts[i]);
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
  char *why;

  take_text (self->id, &patch->id);
  take_text (self->date, &patch->date);
  take_text (self->note, &patch->note);
  patch->csp = gtk_drop_down_get_selected (self->csp);
  ox_figures_read (figures, G_N_ELEMENTS (figures), self->fields, patch);
  why = read_diameters (ox_field_get_text (self->diameters), patch);
  show_by_sand (self, patch);
  if (why != NULL)
    return refuse (self->diameters, focus, why);
  if (!ox_text_is_id (patch->id))
    return refuse (self->id, focus,
                   g_strdup (_ ("Patch: letters, digits, “-” and “_” are allowed, a letter first, such as P1")));
  if (!ox_text_is_date (patch->date))
    return refuse (
        self->date, focus,
        g_strdup_printf (_ ("Date: “%.40s” is no day; one such as 2026-09-14 is needed, or nothing"), patch->date));
  return NULL;
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
  OxField *texts[] = { self->id, self->date, self->note, self->diameters };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_signal_connect_swapped (texts[i], "changed", G_CALLBACK (changed_cb), self);
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    g_signal_connect_swapped (self->fields[i], "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->csp, "notify::selected", G_CALLBACK (changed_cb), self);
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
  ox_figures_add (rows, figures, G_N_ELEMENTS (figures), &empty, self->fields);
  self->diameters = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("Diame_ters, mm"));
  self->by_sand = GTK_LABEL (ox_note_new (NULL));
  ox_rows_add (rows, "", GTK_WIDGET (self->by_sand));
  self->csp = ox_rows_add_csp (rows, _ ("_Profile"));
  self->note = ox_rows_add_field (rows, OX_FIELD_TEXT, _ ("_Note"));
  ox_rows_widen_names (rows, 24);
  gtk_widget_set_hexpand (GTK_WIDGET (rows), TRUE);
  g_object_set_data_full (G_OBJECT (rows), "ox-patch-fields", self, g_free);
  listen (self);
  return self;
}
