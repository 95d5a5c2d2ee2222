/* Oxturn: tests/paint/sample-pages - a small set of pages with every kind of element, and what programs say of it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "drawing/page.h"
G_BEGIN_DECLS

/* ox_test_pages: an A3 page with a wall of 10 m at 1:100 from (50, 100) to (150, 100) mm, texts, marks, a hatch; and a Letter page.
 * Returns: (transfer full) */
OxPageSet *ox_test_pages (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_bytes_in_locale: SVG of the first page or PDF of all, made under @locale; skips the test where the locale is not there.
 * Returns: (transfer full) (nullable) */
GBytes *ox_test_bytes_in_locale (const OxPageSet *set, gboolean pdf, const char *locale) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_run: runs @argv, which must end with status 0; skips the test where there is no such program.
 * Returns: (transfer full) (nullable): what it wrote to stdout */
char *ox_test_run (const char *const *argv) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
