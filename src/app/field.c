/* Oxturn: app/field - an entry for one value: a length, a number or a text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/field.h"

#include "base/number.h"
#include "base/words.h"

struct _OxField
{
  GtkEntry parent_instance;

  OxFieldKind kind;
  OxUnits units;
  guint decimals;
  double value;
  OxFieldRange range;
  gboolean ranged;

  /* Owned */
  char *name;
  char *shown;     /* text as it was set; what differs from it was typed */
  char *complaint; /* (nullable) */
  char *refused;   /* (nullable) the text that it is about */
};

G_DEFINE_FINAL_TYPE (OxField, ox_field, GTK_TYPE_ENTRY)

enum
{
  COMMIT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
mark (OxField *self, const char *why)
{
  GtkEntry *entry = GTK_ENTRY (self);

  g_free (self->complaint);
  g_free (self->refused);
  self->complaint = g_strdup (why);
  self->refused = why != NULL ? g_strdup (ox_field_get_text (self)) : NULL;
  if (why != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "error");
  gtk_entry_set_icon_from_icon_name (entry, GTK_ENTRY_ICON_SECONDARY, why != NULL ? "dialog-warning-symbolic" : NULL);
  if (why != NULL)
    gtk_entry_set_icon_tooltip_text (entry, GTK_ENTRY_ICON_SECONDARY, why);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_INVALID,
                               why != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

void
ox_field_refuse (OxField *self, const char *why)
{
  g_return_if_fail (OX_IS_FIELD (self));

  mark (self, why);
  gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", why);
}

static gboolean
is_typed_in (OxField *self)
{
  return g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self)), self->shown) != 0
         && (gtk_widget_get_state_flags (GTK_WIDGET (self)) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0;
}

/* The value that another edit brought is what Escape goes back to, even while something is being typed. */
static void
show (OxField *self, char *text)
{
  gboolean typing = is_typed_in (self);

  if (g_strcmp0 (text, self->shown) == 0 && g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self)), text) == 0)
    {
      g_free (text);
      if (self->complaint != NULL)
        mark (self, NULL);
      return;
    }
  g_free (self->shown);
  self->shown = text;
  if (typing)
    return;
  gtk_editable_set_text (GTK_EDITABLE (self), text);
  mark (self, NULL);
}

void
ox_field_set_text (OxField *self, const char *text)
{
  show (self, g_strdup (text));
}

void
ox_field_set_length (OxField *self, OxUnits units, double metres)
{
  self->units = units;
  self->value = metres;
  show (self, ox_units_length_text (units, metres, TRUE));
}

void
ox_field_set_number (OxField *self, double value, guint decimals)
{
  self->value = value;
  self->decimals = decimals;
  show (self, ox_words_number (value, decimals));
}

const char *
ox_field_get_text (OxField *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self));
}

double
ox_field_get_value (OxField *self)
{
  return self->value;
}

const char *
ox_field_find_complaint (OxField *self)
{
  return self->complaint;
}

/* Decimal comma and point are both understood, whatever the locale. */
static gboolean
parse_number (const char *text, double *out)
{
  g_autofree char *copy = g_strdelimit (g_strdup (text), ",", '.');

  return ox_number_parse (copy, out);
}

static char *
value_text (OxField *self, double value)
{
  return self->kind == OX_FIELD_LENGTH ? ox_units_length_text (self->units, value, TRUE) : ox_words_number (value, 6);
}

static char *
range_complaint (OxField *self, double value)
{
  const OxFieldRange *range = &self->range;
  g_autofree char *found = value_text (self, value);
  g_autofree char *least = value_text (self, range->least);
  g_autofree char *most = value_text (self, range->most);

  if (range->above)
    /* TRANSLATORS: name of a field with its unit, what was typed, the two ends of what is allowed */
    return g_strdup_printf (_ ("%s: %s was typed; more than %s and at most %s is allowed"), self->name, found, least,
                            most);
  /* TRANSLATORS: name of a field with its unit, what was typed, the two ends of what is allowed */
  return g_strdup_printf (_ ("%s: %s was typed; %s to %s is allowed"), self->name, found, least, most);
}

static gboolean
is_within (const OxFieldRange *range, double value)
{
  return (range->above ? value > range->least : value >= range->least) && value <= range->most;
}

/* Returns: (transfer full) (nullable): why the text is no value; else @out is set */
static char *
parse (OxField *self, double *out)
{
  const char *text = ox_field_get_text (self);
  double value = self->value;

  if (self->kind == OX_FIELD_LENGTH && !ox_units_length_parse (self->units, text, &value))
    return g_strdup (_ ("This is no length. Type one like 6.35, 6350 mm or 20'-10\"."));
  if (self->kind == OX_FIELD_NUMBER && !parse_number (text, &value))
    return g_strdup (_ ("This is no number. Type one like 12 or 12.5."));
  if (self->kind != OX_FIELD_TEXT && self->ranged && !is_within (&self->range, value))
    return range_complaint (self, value);
  *out = value;
  return NULL;
}

gboolean
ox_field_peek (OxField *self, double *out)
{
  g_autofree char *why = NULL;

  /* A value that is only shown is known better than its rounded text says. */
  if (g_strcmp0 (ox_field_get_text (self), self->shown) == 0)
    {
      *out = self->value;
      return TRUE;
    }
  why = parse (self, out);
  return why == NULL;
}

static gboolean
read_value (OxField *self)
{
  g_autofree char *why = parse (self, &self->value);

  if (why != NULL)
    ox_field_refuse (self, why);
  return why == NULL;
}

/* The old value is back where another one was refused. */
static void
settle (OxField *self)
{
  mark (self, NULL);
  gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", "");
}

static void
commit (OxField *self)
{
  const char *text = ox_field_get_text (self);
  gboolean was_wrong = self->complaint != NULL;

  if (g_strcmp0 (text, self->shown) == 0)
    {
      if (was_wrong && g_strcmp0 (text, self->refused) != 0)
        settle (self);
      return;
    }
  if (!read_value (self))
    return;
  if (was_wrong)
    settle (self);
  /* From here on it counts as shown: if the edit gives another text for the same value, that one replaces it. */
  g_free (self->shown);
  self->shown = g_strdup (text);
  g_signal_emit (self, signals[COMMIT], 0);
}

static void
leave_cb (OxField *self)
{
  commit (self);
}

static gboolean
key_cb (OxField *self, guint keyval)
{
  if (keyval != GDK_KEY_Escape || g_strcmp0 (ox_field_get_text (self), self->shown) == 0)
    return FALSE;
  gtk_editable_set_text (GTK_EDITABLE (self), self->shown);
  mark (self, NULL);
  return TRUE;
}

static void
ox_field_finalize (GObject *object)
{
  g_free (OX_FIELD (object)->shown);
  g_free (OX_FIELD (object)->name);
  g_free (OX_FIELD (object)->complaint);
  g_free (OX_FIELD (object)->refused);
  G_OBJECT_CLASS (ox_field_parent_class)->finalize (object);
}

static void
ox_field_class_init (OxFieldClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ox_field_finalize;
  signals[COMMIT] = g_signal_new ("commit", OX_TYPE_FIELD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
ox_field_init (OxField *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->shown = g_strdup ("");
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect (self, "activate", G_CALLBACK (leave_cb), NULL);
}

void
ox_field_set_range (OxField *self, const OxFieldRange *range)
{
  self->range = *range;
  self->ranged = TRUE;
}

void
ox_field_set_name (OxField *self, const char *name)
{
  g_free (self->name);
  self->name = g_strdup (name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

GtkWidget *
ox_field_new (OxFieldKind kind, const char *name)
{
  OxField *self = g_object_new (OX_TYPE_FIELD, "hexpand", TRUE, "width-chars", 6, "max-width-chars", 12, NULL);

  self->kind = kind;
  ox_field_set_name (self, name);
  if (kind != OX_FIELD_TEXT)
    {
      gtk_entry_set_input_purpose (GTK_ENTRY (self), GTK_INPUT_PURPOSE_FREE_FORM);
      gtk_widget_add_css_class (GTK_WIDGET (self), "figure");
    }
  return GTK_WIDGET (self);
}
