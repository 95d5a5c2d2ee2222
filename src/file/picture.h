/* Oxturn: file/picture - what kind of picture a file is, by its first bytes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing is decoded here. Whoever decodes asks first, so that a few bytes of a hostile file cannot call for gigabytes.
 */
#pragma once
#include "job/traced-plan.h"
G_BEGIN_DECLS

#define OX_PICTURE_MAX_PIXELS (200.0 * 1000 * 1000) /* an A0 sheet at 300 dots an inch has 139 million */

typedef struct
{
  OxTracedKind kind;
  guint width_px, height_px;       /* of a PNG or JPEG; 0 of an SVG or PDF */
  double paper_width_mm, paper_depth_mm; /* of an SVG that says so in mm, cm, in or pt; else 0 */
} OxPictureHead;

/* ox_picture_sniff:
 * @head: (out)
 * @error: OX_FILE_ERROR_INVALID: none of the four kinds, or one that is cut off; OX_FILE_ERROR_TOO_LARGE: more than OX_PICTURE_MAX_PIXELS.
 *   The sentence begins with what is wrong and names no file */
gboolean ox_picture_sniff (GBytes *data, OxPictureHead *head, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
