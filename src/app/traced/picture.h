/* Oxturn: app/traced/picture - a traced plan's file decoded, in several sizes, so that any view of it is painted in no time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Level 0 is the picture as it is, each further one half as large. A PDF page and an SVG become a picture of 300 dots an inch once. What
 * is grey takes one byte a dot. Immutable and counted; any thread may paint.
 */
#pragma once
#include "drawing/view.h"
#include "job/traced-plan.h"
#include <cairo.h>
#include <gio/gio.h>
G_BEGIN_DECLS

typedef struct
{
  OxTracedKind kind;
  guint pages;                           /* 1 but for a PDF */
  double paper_width_mm, paper_depth_mm; /* of a PDF page, and of an SVG that tells; else 0 */
} OxTracedInfo;

/* ox_traced_info_read: without decoding
 * @error: OX_FILE_ERROR (file/job-xml.h): what is wrong, as a sentence that names no file */
gboolean ox_traced_info_read (GBytes *data, guint page, OxTracedInfo *info, GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct _OxTracedPicture OxTracedPicture;

/* ox_traced_picture_new: slow; for a thread of its own
 * @page: of a PDF, from 1
 * @error: as above, or G_IO_ERROR_CANCELLED */
OxTracedPicture *ox_traced_picture_new (GBytes *data, guint page, GCancellable *cancel, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxTracedPicture *ox_traced_picture_ref (const OxTracedPicture *picture);
void ox_traced_picture_unref (const OxTracedPicture *picture);

/* ox_traced_picture_get_info: of its file and page, without opening them again */
const OxTracedInfo *ox_traced_picture_get_info (const OxTracedPicture *picture);

/* ox_traced_picture_aspect: width divided by height, as it is seen */
double ox_traced_picture_aspect (const OxTracedPicture *picture);

/* Where and how it lies on the floor, as in OxTracedPlan. */
typedef struct
{
  OxPoint middle;
  double width, depth, angle_deg, strength;
} OxTracedLook;

/* ox_traced_picture_paint: over what is there already, so that white paper leaves it as it is
 * @cr: in pixels of @view
 * @night: on a dark ground: the picture is turned round, black lines are light */
void ox_traced_picture_paint (const OxTracedPicture *picture, cairo_t *cr, const OxView *view, const OxTracedLook *look, gboolean night);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxTracedPicture, ox_traced_picture_unref)
G_END_DECLS
