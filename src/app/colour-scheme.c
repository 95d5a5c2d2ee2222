/* Oxturn: app/colour-scheme - light or dark as the desktop is set.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/colour-scheme.h"

#define PATH "/org/freedesktop/portal/desktop"
#define INTERFACE "org.freedesktop.portal.Settings"
#define GROUP "org.freedesktop.appearance"
#define KEY "color-scheme"
#define PROPERTY "gtk-application-prefer-dark-theme"

enum
{
  NO_PREFERENCE,
  DARK,
  LIGHT
};

/* Values come in one variant or in two. Takes @value. */
static void
take (GtkSettings *settings, GVariant *value)
{
  g_autoptr (GVariant) inner = value;

  while (g_variant_is_of_type (inner, G_VARIANT_TYPE_VARIANT))
    {
      GVariant *outer = g_steal_pointer (&inner);

      inner = g_variant_get_variant (outer);
      g_variant_unref (outer);
    }
  if (!g_variant_is_of_type (inner, G_VARIANT_TYPE_UINT32))
    return;
  if (g_variant_get_uint32 (inner) == DARK || g_variant_get_uint32 (inner) == LIGHT)
    g_object_set (settings, PROPERTY, g_variant_get_uint32 (inner) == DARK, NULL);
  else
    gtk_settings_reset_property (settings, PROPERTY);
}

static void
changed_cb (GDBusConnection *connection, const char *sender, const char *path, const char *interface,
            const char *signal, GVariant *parameters, gpointer settings)
{
  const char *group, *key;
  GVariant *value;

  (void) connection;
  (void) sender;
  (void) path;
  (void) interface;
  (void) signal;
  if (!g_variant_is_of_type (parameters, G_VARIANT_TYPE ("(ssv)")))
    return;
  g_variant_get (parameters, "(&s&sv)", &group, &key, &value);
  if (g_str_equal (group, GROUP) && g_str_equal (key, KEY))
    take (settings, value);
  else
    g_variant_unref (value);
}

static void
read_cb (GObject *connection, GAsyncResult *result, gpointer data)
{
  g_autoptr (GtkSettings) settings = data;
  g_autoptr (GVariant) answer = g_dbus_connection_call_finish (G_DBUS_CONNECTION (connection), result, NULL);

  if (answer != NULL)
    take (settings, g_variant_get_child_value (answer, 0));
}

void
ox_colour_scheme_follow (GDBusConnection *connection, const char *portal, GtkSettings *settings)
{
  if (connection == NULL)
    return;
  g_dbus_connection_signal_subscribe (connection, portal, INTERFACE, "SettingChanged", PATH, GROUP,
                                      G_DBUS_SIGNAL_FLAGS_NONE, changed_cb, g_object_ref (settings), g_object_unref);
  g_dbus_connection_call (connection, portal, PATH, INTERFACE, "Read", g_variant_new ("(ss)", GROUP, KEY),
                          G_VARIANT_TYPE ("(v)"), G_DBUS_CALL_FLAGS_NONE, -1, NULL, read_cb, g_object_ref (settings));
}
