/* Oxturn: app/dialogs/form - a small window that asks for figures and then does one thing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* OxFormDone: Returns: (transfer full): why it could not be done (a translated sentence), and the form stays; NULL: done */
typedef char *(*OxFormDone) (gpointer data);

typedef struct
{
  const char *title;  /* translated */
  const char *accept; /* translated verb with a mnemonic */
  const char *note;   /* (nullable): translated; the line below the body to begin with */
  GtkWidget *body;
  OxFormDone done;
  gpointer data;
  GDestroyNotify free_data; /* when the form goes */
} OxForm;

/* ox_form_open: modal to @parent; Escape and Cancel close it with nothing done. Returns: (transfer none) */
GtkWindow *ox_form_open (GtkWindow *parent, const OxForm *form);

/* ox_form_accept: as the button that does it. While a field holds what was refused, its complaint is told and the form stays. */
void ox_form_accept (GtkWindow *window);

/* ox_form_is_right: whether no field below @root holds what was refused; if one does, it gets the focus and its complaint is told */
gboolean ox_form_is_right (GtkWindow *window, GtkWidget *root);

/* ox_form_tell: a line below the body, e.g. what the figures come to; @problem: whether it says why they will not do */
void ox_form_tell (GtkWindow *window, const char *text, gboolean problem);

/* ox_form_settle: nothing is wrong any more: the line says again what it said before */
void ox_form_settle (GtkWindow *window);

/* ox_form_get_told: that line */
const char *ox_form_get_told (GtkWindow *window);

G_END_DECLS
