/* Oxturn: app/caution-box - the cautions for one place of the window.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/caution-box.h"

#include <glib/gi18n-lib.h>

#define LINE_CHARS 34

static const struct
{
  const char *rule;
  const char *name;
} rules[] = {
  { "law", N_ ("law") },
  { "standard", N_ ("standard") },
  { "maker", N_ ("the machine's manual") },
  { "practice", N_ ("common practice") },
};

/* What a caution rests on, "" where it is a remark. */
static char *
rule_text (const OxCaution *caution)
{
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    if (g_str_equal (rules[i].rule, caution->rule))
      return g_strdup_printf (" (%s)", _ (rules[i].name));
  return g_strdup ("");
}

GtkWidget *
ox_caution_line_new (const OxCaution *caution)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *mark = gtk_image_new_from_icon_name ("dialog-warning-symbolic");
  g_autofree char *rule = rule_text (caution);
  g_autofree char *text = g_strconcat (_ (caution->text), rule, NULL);
  GtkWidget *label = gtk_label_new (text);

  gtk_widget_set_valign (mark, GTK_ALIGN_START);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  /* One width, so that a form's height does not hang on the width that it is measured for. */
  gtk_label_set_width_chars (GTK_LABEL (label), LINE_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (label), LINE_CHARS);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, "caution");
  gtk_widget_set_tooltip_text (row, caution->source);
  gtk_box_append (GTK_BOX (row), mark);
  gtk_box_append (GTK_BOX (row), label);
  return row;
}

GtkWidget *
ox_caution_box_new (const char *where)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  guint n;
  const OxCaution *cautions = ox_cautions_list (&n);

  for (guint i = 0; i < n; i++)
    if (g_str_equal (cautions[i].where, where))
      gtk_box_append (GTK_BOX (box), ox_caution_line_new (&cautions[i]));
  return box;
}
