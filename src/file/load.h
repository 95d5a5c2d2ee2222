/* Oxturn: file/load - a whole file in memory, unless it is too large.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* ox_load_file:
 * @most: bytes
 * @error: G_FILE_ERROR with the path in the message, or OX_FILE_ERROR_TOO_LARGE
 *
 * Reads pipes, too, and stops at the cap where a file has no end.
 * Returns: (transfer full) (nullable): the bytes, with a NUL behind them that does not count
 */
GByteArray *ox_load_file (const char *path, gsize most, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
