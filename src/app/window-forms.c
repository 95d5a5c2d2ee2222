/* Oxturn: app/window-forms - the forms for figures of the job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/window-private.h"

#include "app/dialogs/calendar.h"
#include "app/dialogs/costs.h"
#include "app/dialogs/patches.h"
#include "app/dialogs/revisions.h"
#include "app/dialogs/scope-lists.h"
#include "app/dialogs/sign-off.h"
#include "app/dialogs/supply.h"
#include "app/dialogs/wear-parts.h"

static void
open_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  static const struct
  {
    const char *action;
    GtkWindow *(*open) (GtkWindow *parent, OxSession *session);
  } forms[] = {
    { "calendar", ox_calendar_open },
    { "costs", ox_costs_open },
    { "patches", ox_patches_open },
    { "revisions", ox_revisions_open },
    { "scope-lists", ox_scope_lists_open },
    { "sign-off", ox_sign_off_open },
    { "supply", ox_supply_open },
    { "wear-parts", ox_wear_parts_open },
  };

  (void) value;
  for (guint i = 0; i < G_N_ELEMENTS (forms); i++)
    if (g_str_equal (forms[i].action, g_action_get_name (G_ACTION (action))))
      forms[i].open (data, OX_WINDOW (data)->session);
}

void
ox_window_add_form_actions (OxWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "calendar", .activate = open_cb },
    { .name = "costs", .activate = open_cb },
    { .name = "patches", .activate = open_cb },
    { .name = "revisions", .activate = open_cb },
    { .name = "scope-lists", .activate = open_cb },
    { .name = "sign-off", .activate = open_cb },
    { .name = "supply", .activate = open_cb },
    { .name = "wear-parts", .activate = open_cb },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
