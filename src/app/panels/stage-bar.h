/* Oxturn: app/panels/stage-bar - the five stages of a job, each with what came of it so far.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

typedef enum { OX_STAGE_FLOOR, OX_STAGE_MACHINE, OX_STAGE_PLAN, OX_STAGE_SHEETS, OX_STAGE_RECORD, OX_N_STAGES } OxStage;

const char *ox_stage_name (OxStage stage); /* "floor": untranslated, target of the action win.stage */

#define OX_TYPE_STAGE_BAR (ox_stage_bar_get_type ())
G_DECLARE_FINAL_TYPE (OxStageBar, ox_stage_bar, OX, STAGE_BAR, GtkWidget)

GtkWidget *ox_stage_bar_new (OxSession *session) G_GNUC_WARN_UNUSED_RESULT;

/* ox_stage_bar_set_sheets: what the stage of the sheets says; translated */
void ox_stage_bar_set_sheets (OxStageBar *bar, const char *text);

G_END_DECLS
