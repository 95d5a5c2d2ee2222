/* Oxturn: tests/support/ox-test - what tests of several modules share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Random values come from g_test_rand_*(), whose seed GLib prints and --seed repeats.
 */
#pragma once
#include "geometry/region.h"
G_BEGIN_DECLS

/* ox_test_near: @a and @b differ by less than @tolerance */
#define ox_test_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon ((a), (b), (tolerance))

/* ox_test_region: all polygons of the text united; the text must be right.  Returns: (transfer full) */
OxRegion *ox_test_region (const char *wkt) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_ring: the outer ring of the first polygon of the text.  Returns: (transfer full) */
OxRing *ox_test_ring (const char *wkt) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_random_ring: a simple outline of 4 to 40 corners, 2 to 60 m across, somewhere within 100 m, any direction.
 * Returns: (transfer full) */
OxRing *ox_test_random_ring (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_same_bytes: whether two regions have the same rings and corners to the last bit */
gboolean ox_test_same_bytes (const OxRegion *a, const OxRegion *b);

/* ox_test_difference_area: m2 that belong to one of the two regions only */
double ox_test_difference_area (const OxRegion *a, const OxRegion *b);

/* ox_test_folder_new: an empty folder of our own.  Returns: (transfer full): for ox_test_folder_free() */
char *ox_test_folder_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_folder_free: takes the folder and the files in it away */
void ox_test_folder_free (char *folder);

G_END_DECLS
