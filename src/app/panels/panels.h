/* Oxturn: app/panels/panels - one panel a stage, beside the floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/canvas/canvas.h"
#include "sheets/sheets.h"
G_BEGIN_DECLS

/* ox_floor_panel_new: tools, the inspector, and the list of what is on the floor */
GtkWidget *ox_floor_panel_new (OxSession *session);

/* ox_machine_panel_new: class, all figures of the machine, and the hand rate */
GtkWidget *ox_machine_panel_new (OxSession *session);

/* ox_plan_panel_new: what is shown of the plan, findings, which bring their place into sight on @canvas, and chalk lines */
GtkWidget *ox_plan_panel_new (OxSession *session, OxCanvas *canvas);

/* ox_record_panel_new: the day, marking by click on @canvas or by number, what is done and left */
GtkWidget *ox_record_panel_new (OxSession *session, OxCanvas *canvas);

#define OX_TYPE_SHEETS_PANEL (ox_sheets_panel_get_type ())
G_DECLARE_FINAL_TYPE (OxSheetsPanel, ox_sheets_panel, OX, SHEETS_PANEL, GtkWidget)

/* ox_sheets_panel_new: texts of the sheets, paper and scale. Signal "changed" (): other sheets are wanted */
GtkWidget *ox_sheets_panel_new (OxSession *session) G_GNUC_WARN_UNUSED_RESULT;

OxSheetOptions ox_sheets_panel_get_options (OxSheetsPanel *panel);
char *ox_sheets_panel_get_summary (OxSheetsPanel *panel); /* (transfer full): "A3, 1:200" */

G_END_DECLS
