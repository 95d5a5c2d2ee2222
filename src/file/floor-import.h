/* Oxturn: file/floor-import - a job from outlines that come from elsewhere.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

/* ox_floor_from_wkt:
 * @name: stands for the text in messages, and is the title of the job
 * @text: well-known text (geometry/wkt.h): of each polygon the first ring is a room, the inner ones are solid obstacles
 * @machine: copied
 * @out: (out) (transfer full): rooms R1 ..., obstacles O1 ...; all sides are walls
 * @error: OX_WKT_ERROR, or OX_FILE_ERROR_INVALID where a ring breaks a rule of job/check.h
 */
gboolean ox_floor_from_wkt (const char *name, const char *text, const OxMachine *machine, OxJob **out,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_floor_from_wkt_file: as above, from a file; @error: G_FILE_ERROR and OX_FILE_ERROR_TOO_LARGE, too */
gboolean ox_floor_from_wkt_file (const char *path, const OxMachine *machine, OxJob **out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
