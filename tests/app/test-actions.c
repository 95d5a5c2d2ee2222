/* Oxturn: tests/app/test-actions - the table of actions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/actions.h"

#include "app/application.h"
#include "base/catalogue.h"
#include "support/floors.h"
#include "ui.h"

#include <string.h>

static void
test_complete (void)
{
  guint n;
  const OxActionRow *rows = ox_action_rows (&n);
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < n; i++)
    {
      char *name = g_strdup_printf ("%s::%s", rows[i].action, rows[i].target != NULL ? rows[i].target : "");

      g_assert_cmpstr (rows[i].label, !=, "");
      g_assert_cmpstr (rows[i].help, !=, "");
      g_assert_true (g_str_has_suffix (rows[i].help, "."));
      g_assert_nonnull (strchr (rows[i].label, '_')); /* a mnemonic */
      g_assert_null (strstr (rows[i].label, "..."));  /* a real ellipsis */
      g_assert_cmpuint (rows[i].group, <, OX_N_GROUPS);
      g_assert_true (g_hash_table_add (names, name));
    }
}

/* Keys that mean the same thing everywhere, and keys that belong to the desktop or to typing. */
static void
test_keys (void)
{
  static const struct
  {
    const char *action;
    const char *key;
  } habits[] = {
    { "app.new", "<Control>n" },   { "win.open", "<Control>o" },
    { "win.save", "<Control>s" },  { "win.close", "<Control>w" },
    { "win.undo", "<Control>z" },  { "win.redo", "<Control><Shift>z" },
    { "win.print", "<Control>p" }, { "win.save-as", "<Control><Shift>s" },
    { "app.quit", "<Control>q" },  { "app.help", "F1" },
    { "win.menu", "F10" },         { "win.zoom-in", "<Control>plus" },
  };
  guint n;
  const OxActionRow *rows = ox_action_rows (&n);
  g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);
  guint met = 0;

  for (guint i = 0; i < n; i++)
    for (guint k = 0; rows[i].keys[k] != NULL; k++)
      {
        guint keyval;
        GdkModifierType mods;

        g_assert_true (gtk_accelerator_parse (rows[i].keys[k], &keyval, &mods));
        g_assert_true (g_hash_table_add (keys, (char *) rows[i].keys[k]));
        g_assert_cmpint (mods & (GDK_ALT_MASK | GDK_SUPER_MASK), ==, 0);
        /* without Ctrl a letter would be lost to whoever types */
        if (keyval < 0x80 && (mods & GDK_CONTROL_MASK) == 0)
          g_assert_true (rows[i].on_canvas);
        for (guint h = 0; h < G_N_ELEMENTS (habits); h++)
          met += g_str_equal (habits[h].action, rows[i].action) && g_str_equal (habits[h].key, rows[i].keys[k]);
      }
  g_assert_cmpuint (met, ==, G_N_ELEMENTS (habits));
}

/* Every row names an action that is there, with the right kind of target. */
static void
test_rows_have_actions (void)
{
  OxWindow *window = ox_ui_open (NULL);
  g_autoptr (OxApplication) application = ox_application_new ();
  guint n;
  const OxActionRow *rows = ox_action_rows (&n);

  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  for (guint i = 0; i < n; i++)
    {
      GActionMap *map = g_str_has_prefix (rows[i].action, "app.") ? G_ACTION_MAP (application) : G_ACTION_MAP (window);
      GAction *action = g_action_map_lookup_action (map, strchr (rows[i].action, '.') + 1);

      g_assert_nonnull (action);
      g_assert_true ((g_action_get_parameter_type (action) != NULL) == (rows[i].target != NULL));
    }
  ox_ui_close (window);
}

static gboolean
is_enabled (OxWindow *window, const char *name)
{
  return g_action_group_get_action_enabled (G_ACTION_GROUP (window), name);
}

static void
test_enabled (void)
{
  OxWindow *window = ox_ui_open (NULL);
  OxSession *session = ox_window_get_session (window);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (6, 4, "compact");

  g_assert_false (is_enabled (window, "undo"));
  g_assert_false (is_enabled (window, "redo"));
  g_assert_false (is_enabled (window, "delete"));
  g_assert_false (is_enabled (window, "select-all"));
  g_assert_false (is_enabled (window, "print"));
  ox_session_apply (session, job, "Draw Room", NULL, NULL);
  g_assert_true (is_enabled (window, "undo"));
  g_assert_true (is_enabled (window, "select-all"));
  g_assert_true (is_enabled (window, "stop-planning"));
  g_assert_false (is_enabled (window, "print")); /* not before the plan is there */
  ox_ui_settle (window);
  g_assert_true (is_enabled (window, "print"));
  g_assert_false (is_enabled (window, "stop-planning"));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.select-all", NULL);
  g_assert_true (is_enabled (window, "delete"));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.undo", NULL);
  g_assert_true (is_enabled (window, "redo"));
  g_assert_false (is_enabled (window, "undo"));
  ox_ui_close (window);
}

static void
count_menu (GMenuModel *model, guint *items)
{
  for (int i = 0; i < g_menu_model_get_n_items (model); i++)
    {
      g_autoptr (GMenuModel) section = g_menu_model_get_item_link (model, i, G_MENU_LINK_SECTION);
      g_autoptr (GMenuModel) submenu = g_menu_model_get_item_link (model, i, G_MENU_LINK_SUBMENU);
      g_autofree char *label = NULL;

      if (section != NULL)
        count_menu (section, items);
      if (submenu != NULL)
        count_menu (submenu, items);
      if (section == NULL)
        g_assert_true (g_menu_model_get_item_attribute (model, i, "label", "s", &label));
      *items += section == NULL && submenu == NULL;
    }
}

static void
test_menu (void)
{
  g_autoptr (GMenu) recent = g_menu_new ();
  g_autoptr (GMenuModel) menu = ox_actions_new_menu (G_MENU_MODEL (recent));
  guint items = 0;

  count_menu (menu, &items);
  g_assert_cmpuint (items, ==, 3 + 10 + 7 + 3 + 2 + 3 + 3 + 9 + 3 + 3 + 4);
}

static const char *
translated (const OxCatalogue *catalogue, const char *text)
{
  const char *found = catalogue != NULL ? ox_catalogue_lookup (catalogue, text, 0) : NULL;

  return found != NULL ? found : text;
}

/* Access keys of one menu, its sections counted in; menus that open from it have their own. */
static void
gather_access_keys (GMenuModel *model, const OxCatalogue *catalogue, GString *keys)
{
  for (int i = 0; i < g_menu_model_get_n_items (model); i++)
    {
      g_autoptr (GMenuModel) section = g_menu_model_get_item_link (model, i, G_MENU_LINK_SECTION);
      g_autoptr (GMenuModel) submenu = g_menu_model_get_item_link (model, i, G_MENU_LINK_SUBMENU);
      g_autofree char *label = NULL;
      const char *mark;
      gunichar key;

      if (section != NULL)
        gather_access_keys (section, catalogue, keys);
      if (submenu != NULL)
        {
          g_autoptr (GString) own = g_string_new ("");

          gather_access_keys (submenu, catalogue, own);
        }
      if (section != NULL)
        continue;
      g_assert_true (g_menu_model_get_item_attribute (model, i, "label", "s", &label));
      mark = strchr (translated (catalogue, label), '_');
      g_assert_nonnull (mark);
      key = g_unichar_tolower (g_utf8_get_char (mark + 1));
      if (g_utf8_strchr (keys->str, -1, key) != NULL)
        g_error ("the key of \"%s\" is that of another item, too: %s", translated (catalogue, label), keys->str);
      g_string_append_unichar (keys, key);
    }
}

/* One letter, one item, in every language. */
static void
test_access_keys (void)
{
  g_autoptr (GMenu) recent = g_menu_new ();
  g_autoptr (GMenuModel) menu = ox_actions_new_menu (G_MENU_MODEL (recent));

  for (guint i = 0; i <= ox_n_catalogues; i++)
    {
      g_autoptr (GString) keys = g_string_new ("");

      gather_access_keys (menu, i > 0 ? &ox_catalogues[i - 1] : NULL, keys);
      g_assert_cmpuint (keys->len, >, 10);
    }
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/actions/complete", test_complete);
  g_test_add_func ("/app/actions/keys", test_keys);
  g_test_add_func ("/app/actions/rows-have-actions", test_rows_have_actions);
  g_test_add_func ("/app/actions/enabled", test_enabled);
  g_test_add_func ("/app/actions/menu", test_menu);
  g_test_add_func ("/app/actions/access-keys", test_access_keys);
  return g_test_run ();
}
