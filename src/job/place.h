/* Oxturn: job/place - items moved, turned, mirrored and copied.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edits as those of job/edit.h: a new job, or NULL with @error (OX_JOB_ERROR) and one translated sentence.
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

typedef struct
{
  OxPoint about;     /* stays where it is while turned and mirrored */
  gboolean mirrored; /* first: left and right change places */
  double turn_deg;   /* then: turned, counter-clockwise; multiples of 90 are exact */
  OxPoint by;        /* m; last: moved */
} OxPlacement;

/* ox_placement_point: where @p comes to lie, on OX_GRID */
OxPoint ox_placement_point (const OxPlacement *placement, OxPoint p);

/* ox_edit_placed: the items @ids (NULL-ended) put where @placement says, under the same ids; (transfer full) */
OxJob *ox_edit_placed (const OxJob *job, const char *const *ids, const OxPlacement *placement,
                       GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  const OxJob *from;         /* where the items are; may be the job that they are copied into */
  const char *const *ids;    /* NULL-ended, of @from */
  const OxPlacement *places; /* @n of them: a copy of all items at each */
  guint n;
} OxCopies;

/* ox_edit_copied:
 * @new_ids: (out) (optional): those of the copies, NULL-ended, place by place in the order of @copies; (transfer full)
 *
 * Copies keep name and figures and get ids of their own. Returns: (transfer full) */
OxJob *ox_edit_copied (const OxJob *job, const OxCopies *copies, char ***new_ids, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_edit_only: @job with the items @ids (NULL-ended) and no others, as a clipboard holds them; (transfer full) */
OxJob *ox_edit_only (const OxJob *job, const char *const *ids, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_edit_grid_places:
 * @columns, @rows: 1 or more, how often the items stand along and across @turn_deg
 * @step: m, from one to the next: x along, y across
 *
 * Returns: (transfer full): array of OxPlacement, row by row; the first one leaves everything where it is */
GArray *ox_edit_grid_places (guint columns, guint rows, OxPoint step, double turn_deg) G_GNUC_WARN_UNUSED_RESULT;

/* ox_edit_box: what the items @ids take up; empty when there are none */
OxBox ox_edit_box (const OxJob *job, const char *const *ids);

G_END_DECLS
