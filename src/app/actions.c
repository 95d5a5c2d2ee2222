/* Oxturn: app/actions - every action with its keys, its name and its line of help, in one table.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/actions.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
static const OxActionRow rows[] = {
  { "app.new", NULL, N_("_New"), N_("Opens an empty floor in a new window."), { "<Control>n" }, FALSE, OX_GROUP_JOB, 0 },
  { "win.open", NULL, N_("_Open…"), N_("Opens a job file."), { "<Control>o" }, FALSE, OX_GROUP_JOB, 0 },
  { "win.save", NULL, N_("_Save"), N_("Saves the job."), { "<Control>s" }, FALSE, OX_GROUP_JOB, 0 },
  { "win.save-as", NULL, N_("Save _As…"), N_("Saves the job under another name."), { "<Control><Shift>s" }, FALSE, OX_GROUP_JOB, 0 },
  { "win.export-pdf", NULL, N_("Save Sheets as _PDF…"), N_("Writes the chosen sheets as PDF, at true scale."), { "<Control>e" }, FALSE, OX_GROUP_JOB, OX_NEEDS_PLAN },
  { "win.export-svg", NULL, N_("Save Sheets as S_VG…"), N_("Writes the chosen sheets as SVG, one file a page."), { NULL }, FALSE, OX_GROUP_JOB, OX_NEEDS_PLAN },
  { "win.print", NULL, N_("P_rint…"), N_("Prints the chosen sheets at true scale."), { "<Control>p" }, FALSE, OX_GROUP_JOB, OX_NEEDS_PLAN },
  { "win.close", NULL, N_("_Close"), N_("Closes the window; asks first when something is not saved."), { "<Control>w" }, FALSE, OX_GROUP_JOB, 0 },

  { "win.undo", NULL, N_("_Undo"), N_("Takes the last edit back."), { "<Control>z" }, FALSE, OX_GROUP_EDIT, OX_NEEDS_UNDO },
  { "win.redo", NULL, N_("_Redo"), N_("Makes the edit again that was taken back."), { "<Control><Shift>z", "<Control>y" }, FALSE, OX_GROUP_EDIT, OX_NEEDS_REDO },
  { "win.cut", NULL, N_("Cu_t"), N_("Takes what is selected onto the clipboard."), { "<Control>x" }, TRUE, OX_GROUP_EDIT, OX_NEEDS_SELECTION },
  { "win.copy", NULL, N_("_Copy"), N_("Copies what is selected, also as a picture."), { "<Control>c" }, TRUE, OX_GROUP_EDIT, OX_NEEDS_SELECTION },
  { "win.paste", NULL, N_("_Paste"), N_("Puts copied items onto the floor."), { "<Control>v" }, TRUE, OX_GROUP_EDIT, 0 },
  { "win.copy-picture", NULL, N_("Copy _Floor as a Picture"), N_("Copies the whole floor as it is shown, as SVG and PNG."), { "<Control><Shift>c" }, TRUE, OX_GROUP_EDIT, OX_NEEDS_ITEMS },
  { "win.delete", NULL, N_("_Delete"), N_("Deletes what is selected."), { "Delete" }, TRUE, OX_GROUP_EDIT, OX_NEEDS_SELECTION },
  { "win.select-all", NULL, N_("Select A_ll"), N_("Selects everything on the floor."), { "<Control>a" }, TRUE, OX_GROUP_EDIT, OX_NEEDS_ITEMS },
  { "win.select-none", NULL, N_("Select N_othing"), N_("Selects nothing."), { "<Control><Shift>a" }, TRUE, OX_GROUP_EDIT, OX_NEEDS_SELECTION },
  { "win.duplicate", NULL, N_("Dupl_icate"), N_("Places a copy of what is selected."), { "<Control>u", "<Control>d" }, TRUE, OX_GROUP_EDIT, OX_NEEDS_SELECTION },
  { "win.repeat", NULL, N_("_Repeat in a Row or Grid…"), N_("Repeats what is selected at equal spacings: columns, machine feet, drains."), { "<Control>r" }, TRUE, OX_GROUP_EDIT, OX_NEEDS_SELECTION },
  { "win.mirror", "sideways", N_("Mirror _Sideways"), N_("Changes left and right of what is selected."), { NULL }, FALSE, OX_GROUP_EDIT, OX_NEEDS_SELECTION },
  { "win.mirror", "upside", N_("Mirror _Upside"), N_("Changes top and bottom of what is selected."), { NULL }, FALSE, OX_GROUP_EDIT, OX_NEEDS_SELECTION },
  { "win.turn", "left", N_("Quarter Turn _Left"), N_("Turns what is selected about its middle, counter-clockwise."), { "bracketleft" }, TRUE, OX_GROUP_EDIT, OX_NEEDS_SELECTION },
  { "win.turn", "right", N_("Quarter Turn Ri_ght"), N_("Turns what is selected about its middle, clockwise."), { "bracketright" }, TRUE, OX_GROUP_EDIT, OX_NEEDS_SELECTION },
  { "win.units", "metres", N_("_Metres"), N_("Shows lengths in metres."), { NULL }, FALSE, OX_GROUP_EDIT, 0 },
  { "win.units", "millimetres", N_("M_illimetres"), N_("Shows lengths in millimetres."), { NULL }, FALSE, OX_GROUP_EDIT, 0 },
  { "win.units", "feet", N_("_Feet and Inches"), N_("Shows lengths in feet and inches."), { NULL }, FALSE, OX_GROUP_EDIT, 0 },

  { "win.zoom-in", NULL, N_("Zoom _In"), N_("Shows the floor larger."), { "<Control>plus", "<Control>equal", "<Control>KP_Add" }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.zoom-out", NULL, N_("Zoom _Out"), N_("Shows the floor smaller."), { "<Control>minus", "<Control>KP_Subtract" }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.zoom-fit", NULL, N_("Zoom to _Fit"), N_("Shows all of the floor."), { "<Control>0", "<Control>KP_0" }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.zoom-selection", NULL, N_("Zoom to Selecte_d"), N_("Shows what is selected as large as it goes."), { "<Control>9", "<Control>KP_9" }, FALSE, OX_GROUP_VIEW, OX_NEEDS_SELECTION },
  { "win.zoom-scale", "50", N_("Scale 1 : _50"), N_("Shows the floor at 1 to 50 on a screen of 96 dots an inch."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.zoom-scale", "100", N_("Scale _1 : 100"), N_("Shows the floor at 1 to 100 on a screen of 96 dots an inch."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.zoom-scale", "200", N_("Scale 1 : _200"), N_("Shows the floor at 1 to 200 on a screen of 96 dots an inch."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.show-lanes", NULL, N_("_Lanes"), N_("Shows or hides the chalk lines that the strips lie on."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.show-strips", NULL, N_("_Strips"), N_("Shows or hides what the strips cover."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.show-numbers", NULL, N_("_Numbers and Arrows"), N_("Shows or hides the numbers and arrows of the strips."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.show-zones", NULL, N_("_Turnaround Zones"), N_("Shows or hides the turnaround zones."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.show-edge-work", NULL, N_("_Edge Work"), N_("Shows or hides the edge work."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.show-moves", NULL, N_("_Moves"), N_("Shows or hides the moves between the strips."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.show-reach", NULL, N_("_Reach of the Stations"), N_("Shows or hides where the hoses and cords of the stations end."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.show-dose", NULL, N_("Dose Ma_p"), N_("Shows how often the floor is blasted: not at all, once, twice, more often."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.show-names", NULL, N_("N_ames"), N_("Shows or hides the names of rooms and items."), { NULL }, FALSE, OX_GROUP_VIEW, 0 },
  { "win.stop-planning", NULL, N_("_Stop Planning"), N_("Stops the plan that is under way."), { NULL }, FALSE, OX_GROUP_VIEW, OX_NEEDS_PLANNING },

  { "win.supply", NULL, N_("S_upply…"), N_("Voltage, current, circuit and cords, and what is lost on the way."), { NULL }, FALSE, OX_GROUP_FORMS, 0 },
  { "win.wear-parts", NULL, N_("_Wear Parts…"), N_("Parts to be checked, after how many hours, and the hours run."), { NULL }, FALSE, OX_GROUP_FORMS, 0 },
  { "win.patches", NULL, N_("_Test Patches…"), N_("What was tried on this floor, and the speed for a wanted depth."), { NULL }, FALSE, OX_GROUP_FORMS, 0 },
  { "win.calendar", NULL, N_("_Calendar…"), N_("Working days, shift, breaks, set-up, and machines that work together."), { NULL }, FALSE, OX_GROUP_FORMS, 0 },
  { "win.costs", NULL, N_("C_osts…"), N_("Currency, rates of cost and contingency."), { NULL }, FALSE, OX_GROUP_FORMS, 0 },
  { "win.scope-lists", NULL, N_("S_cope of Work…"), N_("What is included, what is not, what is taken for granted."), { NULL }, FALSE, OX_GROUP_FORMS, 0 },
  { "win.revisions", NULL, N_("R_evisions…"), N_("The revisions of the drawing."), { NULL }, FALSE, OX_GROUP_FORMS, 0 },
  { "win.sign-off", NULL, N_("Sign-O_ff…"), N_("Who signed the scope drawing, and when."), { NULL }, FALSE, OX_GROUP_FORMS, 0 },

  { "win.stage", "floor", N_("_Floor"), N_("Goes to the floor: rooms, obstacles, doorways, stations."), { "<Control>1" }, FALSE, OX_GROUP_STAGES, 0 },
  { "win.stage", "machine", N_("_Machine"), N_("Goes to the machine and the rates."), { "<Control>2" }, FALSE, OX_GROUP_STAGES, 0 },
  { "win.stage", "plan", N_("_Plan"), N_("Goes to the plan: findings and chalk lines."), { "<Control>3" }, FALSE, OX_GROUP_STAGES, 0 },
  { "win.stage", "sheets", N_("_Sheets"), N_("Goes to the sheets: texts, paper, what is printed."), { "<Control>4" }, FALSE, OX_GROUP_STAGES, 0 },
  { "win.stage", "record", N_("_Record"), N_("Goes to the record: what is done on which day, and what is left."), { "<Control>5" }, FALSE, OX_GROUP_STAGES, 0 },

  { "win.tool", "select", N_("_Select"), N_("Selects, moves and reshapes what is on the floor."), { "s" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "room-corners", N_("Room by _Corners"), N_("Draws a room corner by corner."), { "r" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "room-rectangle", N_("Rectangular _Room"), N_("Draws a room between two corners."), { "b" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tape-sheet", NULL, N_("Tape S_heet…"), N_("Draws an outline from written lengths and directions, or from a list of corners."), { "<Control>t" }, FALSE, OX_GROUP_TOOLS, 0 },
  { "win.traced-plan", NULL, N_("_Plan to Trace…"), N_("Lays a scan, a picture or a PDF page under the floor to be traced."), { "<Control><Shift>t" }, FALSE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "scale", N_("Scale of Traced _Plan"), N_("Brings a traced plan to scale by two points and their distance."), { "l" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "obstacle-rectangle", N_("Rectangular _Obstacle"), N_("Draws an obstacle between two corners."), { "o" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "obstacle-circle", N_("Ro_und Obstacle"), N_("Draws an obstacle around its middle."), { "c" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "obstacle-corners", N_("Obstacle by Cor_ners"), N_("Draws an obstacle corner by corner."), { "p" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "excluded", N_("_Excluded Area"), N_("Leaves floor out of the scope."), { "x" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "excluded-corners", N_("E_xcluded Area by Corners"), N_("Leaves floor out of the scope, corner by corner."), { "e" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "condition", N_("Con_dition Area"), N_("Marks floor with a walking speed, coats or a target profile of its own."), { "a" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "condition-corners", N_("Condition Area b_y Corners"), N_("Marks floor with figures of its own, corner by corner."), { "n" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "joint", N_("_Joint"), N_("Draws a joint from bend to bend."), { "j" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "doorway", N_("_Doorway"), N_("Places a doorway on a side of a room."), { "d" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "station", N_("S_tation"), N_("Places the dust collector or the power supply."), { "t" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "measure", N_("_Measure"), N_("Measures distance, angle and area; changes nothing."), { "m" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.tool", "mark", N_("Mar_k Done"), N_("Marks strips and edge work done by click, or takes it back."), { "k" }, TRUE, OX_GROUP_TOOLS, 0 },
  { "win.obstacle-kind", "solid", N_("_Solid"), N_("New obstacles are solid: columns, plant, racks."), { NULL }, FALSE, OX_GROUP_TOOLS, 0 },
  { "win.obstacle-kind", "pit", N_("_Pit"), N_("New obstacles are pits: drains, hatches, openings."), { NULL }, FALSE, OX_GROUP_TOOLS, 0 },
  { "win.obstacle-kind", "masked", N_("_Masked"), N_("New obstacles are masked: floor to be protected."), { NULL }, FALSE, OX_GROUP_TOOLS, 0 },

  { "app.keys", NULL, N_("_Keyboard Shortcuts"), N_("Lists the keys."), { "<Control>question" }, FALSE, OX_GROUP_PROGRAM, 0 },
  { "app.help", NULL, N_("_Help"), N_("Opens the manual."), { "F1" }, FALSE, OX_GROUP_PROGRAM, 0 },
  { "app.about", NULL, N_("A_bout Oxturn"), N_("Says which version this is and under which licence."), { NULL }, FALSE, OX_GROUP_PROGRAM, 0 },
  { "win.menu", NULL, N_("Main _Menu"), N_("Opens the main menu."), { "F10" }, FALSE, OX_GROUP_PROGRAM, 0 },
  { "win.next-pane", NULL, N_("Next _Pane"), N_("Moves the focus between stages, panel and floor."), { "F6" }, FALSE, OX_GROUP_PROGRAM, 0 },
  { "app.quit", NULL, N_("_Quit"), N_("Closes all windows; asks first where something is not saved."), { "<Control>q" }, FALSE, OX_GROUP_PROGRAM, 0 },
};
/* clang-format on */

const OxActionRow *
ox_action_rows (guint *n)
{
  *n = G_N_ELEMENTS (rows);
  return rows;
}

const char *
ox_action_group_title (OxActionGroup group)
{
  static const char *const titles[OX_N_GROUPS] = {
    [OX_GROUP_JOB] = N_ ("Job"),       [OX_GROUP_EDIT] = N_ ("Edit"),   [OX_GROUP_VIEW] = N_ ("View"),
    [OX_GROUP_FORMS] = N_ ("Figures of the job"),
    [OX_GROUP_STAGES] = N_ ("Stages"), [OX_GROUP_TOOLS] = N_ ("Tools"), [OX_GROUP_PROGRAM] = N_ ("Program"),
  };

  g_return_val_if_fail (group < OX_N_GROUPS, NULL);
  return _ (titles[group]);
}

static char *
detailed_name (const OxActionRow *row)
{
  return row->target != NULL ? g_strdup_printf ("%s::%s", row->action, row->target) : g_strdup (row->action);
}

void
ox_actions_set_accels (GtkApplication *application)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *name = detailed_name (&rows[i]);

      if (!rows[i].on_canvas && rows[i].keys[0] != NULL)
        gtk_application_set_accels_for_action (application, name, rows[i].keys);
    }
}

static void
add_shortcut (GtkShortcutController *controller, const OxActionRow *row, const char *key)
{
  GtkShortcut *shortcut = gtk_shortcut_new (gtk_shortcut_trigger_parse_string (key), gtk_named_action_new (row->action));

  if (row->target != NULL)
    gtk_shortcut_set_arguments (shortcut, g_variant_new_string (row->target));
  gtk_shortcut_controller_add_shortcut (controller, shortcut);
}

void
ox_actions_add_canvas_keys (GtkWidget *canvas)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    for (guint k = 0; rows[i].on_canvas && rows[i].keys[k] != NULL; k++)
      add_shortcut (GTK_SHORTCUT_CONTROLLER (controller), &rows[i], rows[i].keys[k]);
  gtk_widget_add_controller (canvas, controller);
}

void
ox_actions_update (GActionMap *window, guint there)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].needs != 0)
      {
        GAction *action = g_action_map_lookup_action (window, strchr (rows[i].action, '.') + 1);

        g_simple_action_set_enabled (G_SIMPLE_ACTION (action), (rows[i].needs & ~there) == 0);
      }
}

/* --- The main menu --- */

#define MOST_ITEMS 8

/* One section after the other; a sub-menu is a run of sections with its title. A name that ends in ':' or '-' stands for all that begin so. */
static const struct
{
  const char *submenu; /* untranslated with a mnemonic, NULL for the main menu */
  const char *items[MOST_ITEMS];
} sections[] = {
  { NULL, { "app.new", "win.open", "win.save-as", NULL } },
  { N_ ("_Edit"), { "win.undo", "win.redo", NULL } },
  { N_ ("_Edit"), { "win.cut", "win.copy", "win.paste", "win.copy-picture", NULL } },
  { N_ ("_Edit"), { "win.select-all", "win.select-none", "win.duplicate", "win.delete", NULL } },
  { N_ ("_Floor"), { "win.tape-sheet", "win.traced-plan", "win.repeat", NULL } },
  { N_ ("_Floor"), { "win.mirror::", "win.turn::", NULL } },
  { N_ ("_Machine"), { "win.patches", "win.supply", "win.wear-parts", NULL } },
  { N_ ("_Plan"), { "win.calendar", "win.costs", NULL } },
  { N_ ("_Sheets"), { "win.scope-lists", "win.revisions", "win.sign-off", NULL } },
  { N_ ("_Sheets"), { "win.export-pdf", "win.export-svg", "win.print", NULL } },
  { N_ ("Sho_w"), { "win.zoom-selection", "win.zoom-scale::", NULL } },
  { N_ ("Sho_w"), { "win.show-", NULL } },
  { N_ ("Lengths _In"), { "win.units::", NULL } },
  { NULL, { "app.keys", "app.help", "app.about", NULL } },
};

static gboolean
is_meant (const char *item, const char *name)
{
  return g_str_equal (item, name) || ((g_str_has_suffix (item, ":") || g_str_has_suffix (item, "-")) && g_str_has_prefix (name, item));
}

static void
append_section (GMenu *menu, const char *const *items)
{
  g_autoptr (GMenu) section = g_menu_new ();

  for (guint n = 0; items[n] != NULL; n++)
    for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
      {
        g_autofree char *name = detailed_name (&rows[i]);

        if (is_meant (items[n], name))
          g_menu_append (section, _ (rows[i].label), name);
      }
  g_menu_append_section (menu, NULL, G_MENU_MODEL (section));
}

/* Returns: the first section after the sub-menu that begins with section @i */
static guint
append_submenu (GMenu *menu, guint i)
{
  const char *title = sections[i].submenu;
  g_autoptr (GMenu) items = g_menu_new ();

  for (; i < G_N_ELEMENTS (sections) && g_strcmp0 (sections[i].submenu, title) == 0; i++)
    append_section (items, sections[i].items);
  g_menu_append_submenu (menu, _ (title), G_MENU_MODEL (items));
  return i;
}

GMenuModel *
ox_actions_new_context_menu (void)
{
  GMenu *menu = g_menu_new ();

  append_section (menu, (const char *const[]){ "win.cut", "win.copy", "win.paste", "win.duplicate", "win.delete", NULL });
  append_section (menu, (const char *const[]){ "win.repeat", "win.mirror::", "win.turn::", NULL });
  append_section (menu, (const char *const[]){ "win.zoom-selection", "win.zoom-fit", "win.select-all", NULL });
  return G_MENU_MODEL (menu);
}

GMenuModel *
ox_actions_new_menu (GMenuModel *recent)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) jobs = g_menu_new ();
  g_autoptr (GMenu) stages = g_menu_new ();
  guint i = 0;

  while (i < G_N_ELEMENTS (sections))
    if (sections[i].submenu != NULL)
      i = append_submenu (stages, i);
    else if (i == 0)
      {
        append_section (menu, sections[i++].items);
        g_menu_append_submenu (jobs, _ ("Open _Recent"), recent);
        g_menu_append_section (menu, NULL, G_MENU_MODEL (jobs));
        g_menu_append_section (menu, NULL, G_MENU_MODEL (stages));
      }
    else
      append_section (menu, sections[i++].items);
  return G_MENU_MODEL (menu);
}
