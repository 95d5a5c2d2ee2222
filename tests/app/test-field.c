/* Oxturn: tests/app/test-field - an entry for one value.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/field.h"

#include "base/words.h"
#include "ui.h"

#include <string.h>

typedef struct
{
  GtkWidget *window;
  OxField *field;
  guint commits;
} Fixture;

static void
commit_cb (Fixture *fixture)
{
  fixture->commits++;
}

static void
set_up (Fixture *fixture, OxFieldKind kind)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  fixture->window = gtk_window_new ();
  fixture->field = OX_FIELD (ox_field_new (kind, "Width"));
  fixture->commits = 0;
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (fixture->field));
  gtk_box_append (GTK_BOX (box), gtk_entry_new ());
  gtk_window_set_child (GTK_WINDOW (fixture->window), box);
  g_signal_connect_swapped (fixture->field, "commit", G_CALLBACK (commit_cb), fixture);
  gtk_window_present (GTK_WINDOW (fixture->window));
  gtk_test_widget_wait_for_draw (fixture->window);
}

static void
type (Fixture *fixture, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (fixture->field), text);
  g_signal_emit_by_name (fixture->field, "activate");
}

static void
test_length (void)
{
  Fixture fixture;

  set_up (&fixture, OX_FIELD_LENGTH);
  ox_field_set_length (fixture.field, OX_UNITS_METRES, 2.5);
  g_assert_cmpstr (ox_field_get_text (fixture.field), ==, "2.50 m");
  type (&fixture, "2.50 m"); /* nothing new */
  g_assert_cmpuint (fixture.commits, ==, 0);
  type (&fixture, "6,35");
  g_assert_cmpuint (fixture.commits, ==, 1);
  g_assert_cmpfloat_with_epsilon (ox_field_get_value (fixture.field), 6.35, 1e-12);
  type (&fixture, "6350 mm");
  g_assert_cmpfloat_with_epsilon (ox_field_get_value (fixture.field), 6.35, 1e-12);
  gtk_window_destroy (GTK_WINDOW (fixture.window));
}

static void
test_no_value_is_marked (void)
{
  Fixture fixture;

  set_up (&fixture, OX_FIELD_LENGTH);
  ox_field_set_length (fixture.field, OX_UNITS_METRES, 2.5);
  type (&fixture, "about two");
  g_assert_cmpuint (fixture.commits, ==, 0);
  g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (fixture.field), "error"));
  g_assert_cmpstr (ox_field_get_text (fixture.field), ==, "about two");
  type (&fixture, "2");
  g_assert_cmpuint (fixture.commits, ==, 1);
  g_assert_false (gtk_widget_has_css_class (GTK_WIDGET (fixture.field), "error"));
  gtk_window_destroy (GTK_WINDOW (fixture.window));
}

static void
test_number (void)
{
  static const struct
  {
    const char *text;
    gboolean good;
    double value;
  } cases[] = { { "4", TRUE, 4 },    { "4,5", TRUE, 4.5 },  { "-1.25", TRUE, -1.25 },
                { "nan", FALSE, 0 }, { "1e400", FALSE, 0 }, { "", FALSE, 0 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Fixture fixture;

      set_up (&fixture, OX_FIELD_NUMBER);
      ox_field_set_number (fixture.field, 99, 2);
      type (&fixture, cases[i].text);
      g_assert_cmpuint (fixture.commits, ==, cases[i].good);
      if (cases[i].good)
        g_assert_cmpfloat (ox_field_get_value (fixture.field), ==, cases[i].value);
      gtk_window_destroy (GTK_WINDOW (fixture.window));
    }
}

/* Escape brings back what was there; leaving the field takes what was typed. */
static void
test_escape_and_leave (void)
{
  Fixture fixture;
  GtkWidget *other;

  set_up (&fixture, OX_FIELD_TEXT);
  ox_field_set_text (fixture.field, "Hall");
  gtk_widget_grab_focus (GTK_WIDGET (fixture.field));
  ox_ui_point (fixture.window, 5, 5);
  gtk_editable_set_text (GTK_EDITABLE (fixture.field), "Hall 2");
  ox_ui_keys (fixture.window, "\033");
  OX_WAIT_FOR (g_str_equal (ox_field_get_text (fixture.field), "Hall"));
  g_assert_cmpuint (fixture.commits, ==, 0);
  gtk_editable_set_text (GTK_EDITABLE (fixture.field), "Hall 3");
  other = gtk_widget_get_next_sibling (GTK_WIDGET (fixture.field));
  gtk_widget_grab_focus (other);
  OX_WAIT_FOR (fixture.commits == 1);
  gtk_window_destroy (GTK_WINDOW (fixture.window));
}

/* A value that was refused and then comes as the right one, from elsewhere, has nothing wrong with it. */
static void
test_accepted_after_all (void)
{
  Fixture fixture;

  set_up (&fixture, OX_FIELD_TEXT);
  type (&fixture, "Hall 2");
  ox_field_refuse (fixture.field, "Another room has this name.");
  ox_field_set_text (fixture.field, "Hall 2");
  g_assert_null (ox_field_find_complaint (fixture.field));
  g_assert_false (gtk_widget_has_css_class (GTK_WIDGET (fixture.field), "error"));
  gtk_window_destroy (GTK_WINDOW (fixture.window));
}

/* Shown as the language writes it, in what is refused too, and understood so. */
static void
test_decimal_sign (void)
{
  static const OxFieldRange range = { 0.5, FALSE, 2.5 };
  OxLanguage german;
  Fixture fixture;

  g_assert_true (ox_language_find ("de", &german));
  g_auto (OxWordsScope) scope = ox_words_scope (&german);
  set_up (&fixture, OX_FIELD_NUMBER);
  ox_field_set_range (fixture.field, &range);
  ox_field_set_number (fixture.field, 1.25, 2);
  g_assert_cmpstr (ox_field_get_text (fixture.field), ==, "1,25");
  type (&fixture, "7,5");
  g_assert_nonnull (strstr (ox_field_find_complaint (fixture.field), "7,5"));
  g_assert_nonnull (strstr (ox_field_find_complaint (fixture.field), "0,5"));
  g_assert_nonnull (strstr (ox_field_find_complaint (fixture.field), "2,5"));
  type (&fixture, "1,5");
  g_assert_cmpfloat (ox_field_get_value (fixture.field), ==, 1.5);
  gtk_window_destroy (GTK_WINDOW (fixture.window));
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/field/length", test_length);
  g_test_add_func ("/app/field/no-value-is-marked", test_no_value_is_marked);
  g_test_add_func ("/app/field/number", test_number);
  g_test_add_func ("/app/field/accepted-after-all", test_accepted_after_all);
  g_test_add_func ("/app/field/decimal-sign", test_decimal_sign);
  g_test_add_func ("/app/field/escape-and-leave", test_escape_and_leave);
  return g_test_run ();
}
