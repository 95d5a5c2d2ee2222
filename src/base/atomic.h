/* Oxturn: base/atomic - files that appear whole or not at all.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <gio/gio.h>
G_BEGIN_DECLS

/* ox_atomic_write:
 * @path: file to make or replace; a symbolic link is followed and kept, the mode of an existing file too
 * @data, @length: what stands in it afterwards
 * @error: G_IO_ERROR or G_FILE_ERROR with the path in the message
 *
 * Writes beside, flushes to disk, renames. On failure or a kill the old file stays as it was and no other file is left by a failure.
 */
gboolean ox_atomic_write (const char *path, const void *data, gsize length, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
