/* Oxturn: paint/pdf - a set of pages as PDF: true scale, real text, outline, page labels, metadata.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "drawing/page.h"
G_BEGIN_DECLS

/* ox_pdf_new: the same set gives the same bytes: the date within is the set's, not the clock's
 * @error: G_IO_ERROR_FAILED with what cairo said
 * Returns: (transfer full) */
GBytes *ox_pdf_new (const OxPageSet *set, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
