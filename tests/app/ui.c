/* Oxturn: tests/app/ui - a window under test, and hands that use it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "ui.h"

#include "app/application.h"
#include "app/field.h"

#include <X11/XKBlib.h>
#include <X11/extensions/XTest.h>
#include <X11/keysym.h>
#include <gdk/x11/gdkx.h>
#include <locale.h>

void
ox_ui_init (int *argc, char ***argv)
{
  gtk_test_init (argc, argv, NULL);
  setlocale (LC_ALL, "C.UTF-8");
  ox_application_prepare_display (gdk_display_get_default ());
}

OxWindow *
ox_ui_open (const OxJob *job)
{
  g_autoptr (OxJob) empty = ox_session_new_job (OX_UNITS_METRES);
  g_autoptr (OxSession) session = ox_session_new (job != NULL ? job : empty, ox_plan_new, NULL);
  OxWindow *window = ox_window_new (NULL, session);

  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  OX_WAIT_FOR (ox_canvas_get_view (ox_window_get_canvas (window))->width_px > 0);
  ox_ui_settle (window);
  return window;
}

void
ox_ui_settle (OxWindow *window)
{
  OX_WAIT_FOR (ox_canvas_is_settled (ox_window_get_canvas (window)));
}

void
ox_ui_close (OxWindow *window)
{
  OxSession *session = ox_window_get_session (window);

  ox_ui_settle (window);
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  g_object_add_weak_pointer (G_OBJECT (session), (gpointer *) &session);
  gtk_window_destroy (GTK_WINDOW (window));
  /* Idle sources of GTK hold widgets a moment longer. */
  OX_WAIT_FOR (window == NULL && session == NULL);
}

char *
ox_ui_name (GtkWidget *widget)
{
  const char *label = NULL;

  if (GTK_IS_BUTTON (widget))
    label = gtk_button_get_label (GTK_BUTTON (widget));
  else if (GTK_IS_CHECK_BUTTON (widget))
    label = gtk_check_button_get_label (GTK_CHECK_BUTTON (widget));
  if (label != NULL)
    return g_strdup (label);
  if (gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL))
    return g_strdup ("label");
  if (gtk_test_accessible_has_relation (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_RELATION_LABELLED_BY))
    return g_strdup ("labelled by");
  return g_strdup ("");
}

static gboolean
is_called (GtkWidget *widget, const char *label)
{
  g_autofree char *other
      = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label);
  g_autofree char *own = ox_ui_name (widget); /* newer GTK names a button by the label in it */

  return other == NULL || g_str_equal (own, label);
}

static GtkWidget *
find (GtkWidget *root, GType type, const char *label)
{
  if (!gtk_widget_get_visible (root))
    return NULL;
  if (g_type_is_a (G_OBJECT_TYPE (root), type) && is_called (root, label))
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = gtk_widget_get_child_visible (child) ? find (child, type, label) : NULL;

      if (found != NULL)
        return found;
    }
  return NULL;
}

GtkWidget *
ox_ui_find (GtkWidget *root, GType type, const char *label)
{
  GtkWidget *found = find (root, type, label);

  if (found == NULL)
    g_error ("no visible %s is called \"%s\"", g_type_name (type), label);
  return found;
}

void
ox_ui_fill (GtkWidget *root, const char *name, const char *text)
{
  GtkWidget *field = ox_ui_find (root, OX_TYPE_FIELD, name);

  gtk_widget_grab_focus (field);
  gtk_editable_set_text (GTK_EDITABLE (field), text);
}

GtkWindow *
ox_ui_find_dialog (OxWindow *window)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) other = g_list_model_get_item (windows, i);

      if (other != GTK_WINDOW (window))
        return other;
    }
  return NULL;
}

static Display *
server_of (GtkWidget *widget)
{
  return gdk_x11_display_get_xdisplay (gtk_widget_get_display (widget));
}

/* Events travel through the X server: give them the time of a round trip. */
static void
deliver (GtkWidget *widget)
{
  XSync (server_of (widget), False);
  for (guint i = 0; i < 3; i++)
    {
      guint id = g_timeout_add (8, ox_wait_tick, NULL);

      g_main_context_iteration (NULL, TRUE);
      while (g_main_context_pending (NULL))
        g_main_context_iteration (NULL, FALSE);
      g_source_remove (id);
    }
}

void
ox_ui_point (GtkWidget *widget, double x, double y)
{
  GtkNative *native = gtk_widget_get_native (widget);
  Display *server = server_of (widget);
  double in_x, in_y, off_x, off_y;
  int root_x, root_y;
  Window child;

  gtk_widget_translate_coordinates (widget, GTK_WIDGET (native), x, y, &in_x, &in_y);
  gtk_native_get_surface_transform (native, &off_x, &off_y);
  XTranslateCoordinates (server, gdk_x11_surface_get_xid (gtk_native_get_surface (native)), DefaultRootWindow (server),
                         (int) lround (in_x + off_x), (int) lround (in_y + off_y), &root_x, &root_y, &child);
  XTestFakeMotionEvent (server, -1, root_x, root_y, CurrentTime);
  deliver (widget);
}

void
ox_ui_button (GtkWidget *widget, guint button, gboolean down)
{
  XTestFakeButtonEvent (server_of (widget), button, down, CurrentTime);
  deliver (widget);
}

void
ox_ui_click (GtkWidget *widget, double x, double y)
{
  ox_ui_point (widget, x, y);
  ox_ui_button (widget, 1, TRUE);
  ox_ui_button (widget, 1, FALSE);
}

void
ox_ui_keys (GtkWidget *widget, const char *keys)
{
  Display *server = server_of (widget);

  for (const char *p = keys; *p != '\0'; p++)
    {
      KeySym sym = *p == '\n' ? XK_Return : *p == '\t' ? XK_Tab : *p == '\033' ? XK_Escape : (KeySym) *p;
      KeyCode code = XKeysymToKeycode (server, sym);

      XTestFakeKeyEvent (server, code, True, CurrentTime);
      XTestFakeKeyEvent (server, code, False, CurrentTime);
      deliver (widget);
    }
}

void
ox_ui_chord (GtkWidget *widget, const guint *held, guint keysym)
{
  Display *server = server_of (widget);
  guint n = 0;

  for (; held != NULL && held[n] != 0; n++)
    XTestFakeKeyEvent (server, XKeysymToKeycode (server, held[n]), True, CurrentTime);
  XTestFakeKeyEvent (server, XKeysymToKeycode (server, keysym), True, CurrentTime);
  XTestFakeKeyEvent (server, XKeysymToKeycode (server, keysym), False, CurrentTime);
  while (n-- > 0)
    XTestFakeKeyEvent (server, XKeysymToKeycode (server, held[n]), False, CurrentTime);
  deliver (widget);
}

void
ox_ui_layouts (GtkWidget *widget, const char *layouts, guint group)
{
  const char *command[] = { "setxkbmap", "-layout", layouts, NULL };
  int status = -1;

  g_assert_true (g_spawn_sync (NULL, (char **) command, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, &status, NULL));
  g_assert_cmpint (status, ==, 0);
  XkbLockGroup (server_of (widget), XkbUseCoreKbd, group);
  deliver (widget);
}

GdkTexture *
ox_ui_picture (GtkWidget *widget)
{
  g_autoptr (GdkPaintable) paintable = NULL;
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  int width = gtk_widget_get_width (widget);
  int height = gtk_widget_get_height (widget);
  GskRenderNode *node;
  GdkTexture *texture;

  gtk_widget_queue_draw (widget);
  gtk_test_widget_wait_for_draw (widget);
  paintable = gtk_widget_paintable_new (widget);
  gdk_paintable_snapshot (paintable, GDK_SNAPSHOT (snapshot), width, height);
  node = gtk_snapshot_free_to_node (snapshot);
  g_assert_nonnull (node);
  texture = gsk_renderer_render_texture (gtk_native_get_renderer (gtk_widget_get_native (widget)), node,
                                         &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  gsk_render_node_unref (node);
  return texture;
}
