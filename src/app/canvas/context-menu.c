/* Oxturn: app/canvas/context-menu - what can be done with what lies under the pointer; nothing in it is nowhere else.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/canvas-private.h"

#include "app/actions.h"
#include "session/selection.h"
#include "tools/pick.h"

#define PICK_PX 8.0

static GtkWidget *
menu_of (OxCanvas *self)
{
  g_autoptr (GMenuModel) model = NULL;

  if (self->menu != NULL)
    return self->menu;
  model = ox_actions_new_context_menu ();
  self->menu = gtk_popover_menu_new_from_model (model);
  gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
  gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
  gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
  return self->menu;
}

/* What is selected stays so when the pointer is on it; else what lies under the pointer is meant. */
static void
select_under (OxCanvas *self, OxPoint at)
{
  const char *const *selection = ox_session_get_selection (self->session);
  const char *id = ox_pick_item (ox_session_get_job (self->session), at, PICK_PX / self->view.px_per_m);
  g_auto (GStrv) items = ox_selection_items (selection);

  if (id != NULL && !g_strv_contains ((const char *const *) items, id))
    ox_session_select (self->session, (const char *const[]){ id, NULL });
}

void
ox_canvas_popup_menu (OxCanvas *self, OxPixel at, gboolean under_pointer)
{
  GtkWidget *menu = menu_of (self);
  GdkRectangle place = { (int) at.x, (int) at.y, 1, 1 };

  if (ox_tool_is_busy (self->tool))
    return;
  if (under_pointer)
    select_under (self, ox_view_to_point (&self->view, at));
  gtk_popover_set_pointing_to (GTK_POPOVER (menu), &place);
  gtk_popover_popup (GTK_POPOVER (menu));
}
