/* Oxturn: app/actions - every action with its keys, its name and its line of help, in one table.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Menus, accelerators, the page of keyboard shortcuts and the tests read this table; what an action does stands in window-actions.c and
 * application.c.
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

typedef enum { OX_GROUP_JOB, OX_GROUP_EDIT, OX_GROUP_VIEW, OX_GROUP_FORMS, OX_GROUP_STAGES, OX_GROUP_TOOLS, OX_GROUP_PROGRAM, OX_N_GROUPS } OxActionGroup;

/* What must be so before an action makes sense; an action is disabled while anything of it is missing. */
typedef enum
{
  OX_NEEDS_UNDO = 1 << 0,
  OX_NEEDS_REDO = 1 << 1,
  OX_NEEDS_SELECTION = 1 << 2,
  OX_NEEDS_ITEMS = 1 << 3,    /* anything on the floor */
  OX_NEEDS_PLAN = 1 << 4,     /* a plan of the job as it is now, with a room */
  OX_NEEDS_PLANNING = 1 << 5  /* a plan is under way */
} OxNeeds;

#define OX_ACTION_MAX_KEYS 4

typedef struct
{
  const char *action;                  /* with its prefix: "win.save" */
  const char *target;                  /* (nullable) value of an action that takes a string */
  const char *label;                   /* untranslated, header capitals, with a mnemonic */
  const char *help;                    /* untranslated, one sentence */
  const char *keys[OX_ACTION_MAX_KEYS]; /* accelerators, NULL-ended */
  gboolean on_canvas;                  /* the keys mean this only while the floor has the focus */
  OxActionGroup group;
  guint needs;                         /* of OxNeeds */
} OxActionRow;

const OxActionRow *ox_action_rows (guint *n);
const char *ox_action_group_title (OxActionGroup group); /* translated */

/* ox_actions_set_accels: the keys of the table that hold everywhere */
void ox_actions_set_accels (GtkApplication *application);

/* ox_actions_add_canvas_keys: those that hold while @canvas has the focus */
void ox_actions_add_canvas_keys (GtkWidget *canvas);

/* ox_actions_update: enables and disables the window's actions for what is there, a sum of OxNeeds */
void ox_actions_update (GActionMap *window, guint there);

/* ox_actions_new_context_menu: of the floor; (transfer full) */
GMenuModel *ox_actions_new_context_menu (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_actions_new_menu: the main menu; (transfer full)
 * @recent: entries of its sub-menu of jobs opened last */
GMenuModel *ox_actions_new_menu (GMenuModel *recent) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
