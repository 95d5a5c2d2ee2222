/* Oxturn: tests/app/test-colour-scheme - light or dark as the desktop is set, told by a portal of our own.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/colour-scheme.h"

#include "ui.h"

#include <gio/gio.h>
#include <sys/socket.h>

#define PATH "/org/freedesktop/portal/desktop"
#define INTERFACE "org.freedesktop.portal.Settings"
#define GROUP "org.freedesktop.appearance"

static const char xml[] = "<node><interface name='" INTERFACE "'>"
                          "<method name='Read'><arg type='s' direction='in'/><arg type='s' direction='in'/>"
                          "<arg type='v' direction='out'/></method>"
                          "<signal name='SettingChanged'><arg type='s'/><arg type='s'/><arg type='v'/></signal>"
                          "</interface></node>";

typedef struct
{
  GDBusConnection *desktop, *program; /* two ends of one line, without a bus */
  guint scheme;                       /* as the desktop is set */
  guint asked;
} Line;

static void
connected_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  (void) source;
  *(GDBusConnection **) data = g_dbus_connection_new_finish (result, NULL);
  g_assert_nonnull (*(GDBusConnection **) data);
}

static void
connect_end (int fd, GDBusConnectionFlags flags, const char *guid, GDBusConnection **end)
{
  g_autoptr (GSocket) socket = g_socket_new_from_fd (fd, NULL);
  g_autoptr (GSocketConnection) stream = g_socket_connection_factory_create_connection (socket);

  g_dbus_connection_new (G_IO_STREAM (stream), guid, flags, NULL, NULL, connected_cb, end);
}

static void
call_cb (GDBusConnection *connection, const char *sender, const char *path, const char *interface, const char *method,
         GVariant *parameters, GDBusMethodInvocation *invocation, gpointer data)
{
  Line *line = data;
  const char *group, *key;

  (void) connection;
  (void) sender;
  (void) path;
  (void) interface;
  (void) method;
  g_variant_get (parameters, "(&s&s)", &group, &key);
  g_assert_cmpstr (group, ==, GROUP);
  g_assert_cmpstr (key, ==, "color-scheme");
  line->asked++;
  g_dbus_method_invocation_return_value (
      invocation, g_variant_new ("(v)", g_variant_new_variant (g_variant_new_uint32 (line->scheme))));
}

static void
line_init (Line *line, guint scheme, gboolean portal)
{
  static const GDBusInterfaceVTable table = { .method_call = call_cb };
  g_autoptr (GDBusNodeInfo) info = g_dbus_node_info_new_for_xml (xml, NULL);
  g_autofree char *guid = g_dbus_generate_guid ();
  int ends[2];

  *line = (Line){ .scheme = scheme };
  g_assert_cmpint (socketpair (AF_UNIX, SOCK_STREAM, 0, ends), ==, 0);
  connect_end (ends[0], G_DBUS_CONNECTION_FLAGS_AUTHENTICATION_SERVER, guid, &line->desktop);
  connect_end (ends[1], G_DBUS_CONNECTION_FLAGS_AUTHENTICATION_CLIENT, NULL, &line->program);
  OX_WAIT_FOR (line->desktop != NULL && line->program != NULL);
  if (portal)
    g_assert_cmpuint (
        g_dbus_connection_register_object (line->desktop, PATH, info->interfaces[0], &table, line, NULL, NULL), >, 0);
}

static void
line_clear (Line *line)
{
  g_dbus_connection_close_sync (line->program, NULL, NULL);
  g_clear_object (&line->program);
  g_clear_object (&line->desktop);
}

static void
set (Line *line, const char *group, const char *key, guint scheme)
{
  g_assert_true (g_dbus_connection_emit_signal (line->desktop, NULL, PATH, INTERFACE, "SettingChanged",
                                                g_variant_new ("(ssv)", group, key, g_variant_new_uint32 (scheme)),
                                                NULL));
}

static gboolean
is_dark (void)
{
  gboolean dark;

  g_object_get (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", &dark, NULL);
  return dark;
}

/* Dark from the start, and with each change of the setting; other settings are nothing to us. */
static void
test_follows (void)
{
  Line line;

  line_init (&line, 1, TRUE);
  ox_colour_scheme_follow (line.program, NULL, gtk_settings_get_default ());
  OX_WAIT_FOR (is_dark ());
  set (&line, GROUP, "color-scheme", 2);
  OX_WAIT_FOR (!is_dark ());
  set (&line, GROUP, "contrast", 1);
  set (&line, GROUP, "color-scheme", 1);
  OX_WAIT_FOR (is_dark ());
  set (&line, GROUP, "contrast", 2);
  set (&line, "org.gnome.desktop.interface", "color-scheme", 2);
  set (&line, GROUP, "color-scheme", 0);
  OX_WAIT_FOR (!is_dark ());
  line_clear (&line);
}

/* No portal, no bus at all: as GTK is set. */
static void
test_without (void)
{
  Line line;

  line_init (&line, 1, FALSE);
  ox_colour_scheme_follow (NULL, OX_COLOUR_SCHEME_PORTAL, gtk_settings_get_default ());
  ox_colour_scheme_follow (line.program, NULL, gtk_settings_get_default ());
  g_assert_true (g_dbus_connection_flush_sync (line.program, NULL, NULL));
  g_assert_false (is_dark ());
  line_clear (&line);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/colour-scheme/follows", test_follows);
  g_test_add_func ("/app/colour-scheme/without", test_without);
  return g_test_run ();
}
