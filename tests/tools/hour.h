/* Oxturn: tests/tools/hour - an hour at the floor: the warehouse of samples/ drawn from nothing, whoever's hands do it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "tools/tool.h"
G_BEGIN_DECLS

/* What the script needs of the hands that draw. @who: theirs. Places in metres on the floor. */
typedef struct
{
  void (*take_up) (gpointer who, OxToolKind kind, OxObstacleKind obstacle);
  void (*move) (gpointer who, OxPoint at);

  /* @exact: nothing near, and no coarse grid, may hold it: with Ctrl, or at a zoom whose grid has this place */
  void (*press) (gpointer who, OxPoint at, gboolean exact);
  void (*release) (gpointer who, OxPoint at, gboolean exact);
  void (*type) (gpointer who, const char *text); /* signs; \t and \n are Tab and Enter */
  void (*lay_down) (gpointer who); /* asserts that one edit came of the tool taken up last, and no refusal */

  const OxJob *(*get_job) (gpointer who);
  void (*apply) (gpointer who, const OxJob *job); /* as the fields of a panel do: one step of undo */
  gboolean (*undo) (gpointer who);                /* FALSE: there is nothing to take back */
  gboolean (*redo) (gpointer who);
} OxHourHands;

/* ox_hour_run: begins with the job that @hands have, a new one. Asserts that the file of the job drawn is that of the
 * sample, byte for byte, that undoing all of it gives the job of the beginning, and redoing all the sample again. */
void ox_hour_run (const OxHourHands *hands, gpointer who);

G_END_DECLS
