/* Oxturn: job/text - texts as they may stand in a job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

#define OX_TEXT_MOST 100000 /* bytes of one text; more is no name and no note */

/* ox_text_clean:
 * @text: (nullable): what somebody typed or pasted; NULL counts as ""
 * @lines: whether line breaks may stay; if not, each becomes a blank
 *
 * Makes valid UTF-8 of it, line breaks "\n", and a blank of every character that XML 1.0 (section 2.2) cannot hold; cuts it after
 * OX_TEXT_MOST bytes.
 * Returns: (transfer full)
 */
char *ox_text_clean (const char *text, gboolean lines) G_GNUC_WARN_UNUSED_RESULT;

/* ox_text_is_id: letters, digits, '-' and '_' of ASCII, a letter first, 64 at most */
gboolean ox_text_is_id (const char *text);

/* ox_text_is_date: "" or a day that there is, as YYYY-MM-DD */
gboolean ox_text_is_date (const char *text);

/* ox_text_read_clock:
 * @text: "9:05" or "09:05"
 * @first, @last: hours allowed
 * @minutes: (out): after midnight; untouched where it is no such time */
gboolean ox_text_read_clock (const char *text, guint first, guint last, guint *minutes) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
