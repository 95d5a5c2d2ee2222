/* Oxturn: base/notice - what a person must be told, kept in no language until it is shown.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A plan is made once, and read in the window's language and on sheets in another. Its notices are therefore kept as the text of the
 * source with what is to be put into it, all in one string:
 *
 *      g_ptr_array_add (notices, ox_notice_new (text, room->name, NULL));   with a text marked for translation: "%s: no strip fits"
 *      g_autofree char *text = ox_notice_text (plan->notices[i]);
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* ox_notice_new:
 * @text: untranslated, with a %s for each of the strings that follow it, in their order; NULL ends them
 *
 * Returns: (transfer full): for ox_notice_text() only */
char *ox_notice_new (const char *text, ...) G_GNUC_NULL_TERMINATED G_GNUC_WARN_UNUSED_RESULT;

/* ox_notice_count:
 * @one, @many: untranslated, with a %u for @n and a further one for each of the numbers that follow as strings; NULL ends them
 *
 * Returns: (transfer full): for ox_notice_text() only */
char *ox_notice_count (const char *one, const char *many, guint n, ...) G_GNUC_NULL_TERMINATED G_GNUC_WARN_UNUSED_RESULT;

/* ox_notice_text: in the language of this thread (base/words.h); (transfer full) */
char *ox_notice_text (const char *notice) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
