/* Oxturn: app/panels/record-lists - what is done and left, day by day, as rows of the side panel.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "record/progress.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* @plan: (nullable); @progress: of it, NULL without one. What was in @box goes. */

/* ox_record_list_progress: done and left in m2, strips and hours, against the plan */
void ox_record_list_progress (GtkBox *box, const OxPlan *plan, const OxProgress *progress);

/* ox_record_list_days: a row for each day; a click on it calls @chosen with its date */
typedef void (*OxDayChosen) (const char *date, gpointer data);
void ox_record_list_days (GtkBox *box, const OxProgress *progress, OxUnits units, OxDayChosen chosen, gpointer data);

/* ox_record_list_wear: hours of the wear parts with those of the meter, and what falls due next */
void ox_record_list_wear (GtkBox *box, const OxPlan *plan);

G_END_DECLS
