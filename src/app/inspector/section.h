/* Oxturn: app/inspector/section - what the sections of the inspector share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A section is a box that shows itself when the one selected item is of its kind. It fills its fields from the job and sends edits to the
 * session; the value comes back by "job-changed" and equals what was typed, or the field says why not.
 */
#pragma once
#include "app/rows.h"
#include "session/session.h"
G_BEGIN_DECLS

typedef struct _OxSection OxSection;

struct _OxSection
{
  OxSession *session; /* Borrowed: the window keeps it longer than its widgets */
  GtkWidget *root;    /* Borrowed: owns this struct */
  GtkGrid *rows;
  OxItemKind kind;
  void (*fill) (OxSection *section, const OxJob *job, guint index, int side); /* shows item number @index of its kind */
};

/* ox_section_init:
 * @section: begins a larger struct from g_new0(), from now on owned by its root
 *
 * Makes root and rows. When all fields are made, ox_section_start() begins to keep them up to date by @fill.
 * Returns: (transfer none): the root */
GtkWidget *ox_section_init (OxSection *section, OxSession *session, OxItemKind kind, const char *title);
void ox_section_start (OxSection *section);

/* ox_section_item: Returns: whether one item is selected, or a side of it, and is of the section's kind
 * @index: of it among the job's items of that kind */
gboolean ox_section_item (OxSection *section, guint *index);

/* ox_section_take:
 * @job: (transfer full) (nullable): result of an edit
 * @error: (nullable): why there is none
 * @field: (nullable): where the value came from */
void ox_section_take (OxSession *session, OxJob *job, const GError *error, const char *label, OxField *field);

GtkWidget *ox_room_section_new (OxSession *session);
GtkWidget *ox_side_section_new (OxSession *session);
GtkWidget *ox_obstacle_section_new (OxSession *session);
GtkWidget *ox_excluded_section_new (OxSession *session);
GtkWidget *ox_condition_section_new (OxSession *session);
GtkWidget *ox_joint_section_new (OxSession *session);
GtkWidget *ox_doorway_section_new (OxSession *session);
GtkWidget *ox_station_section_new (OxSession *session);
GtkWidget *ox_traced_section_new (OxSession *session);

/* ox_inspector_new: all sections, for whatever is selected */
GtkWidget *ox_inspector_new (OxSession *session);

G_END_DECLS
