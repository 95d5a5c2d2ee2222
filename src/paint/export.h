/* Oxturn: paint/export - a set of pages into files, by the ending of the name.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "drawing/page.h"
#include <gio/gio.h>
G_BEGIN_DECLS

/* ox_export_knows: whether @path ends in .svg or .pdf, in any case */
gboolean ox_export_knows (const char *path);

/* ox_export_write:
 * @path: .pdf takes all pages; .svg takes one page a file: OUT.svg for the first, OUT-2.svg, OUT-3.svg ... for those that follow
 * @written: (out) (optional) (transfer full): NULL-ended array of the files written, also after a failure half-way
 * @error: G_IO_ERROR_NOT_SUPPORTED for another ending, else of ox_atomic_write()
 *
 * Each file appears whole or not at all. */
gboolean ox_export_write (const OxPageSet *set, const char *path, char ***written, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
