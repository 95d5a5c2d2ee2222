/* Oxturn: tests/support/floors - made-up floors of many kinds, the same for the same seed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

/* ox_test_floor_random:
 * @seed: any number; the kind of floor is the seed's remainder, so that a run of seeds has every kind
 *
 * Halls with columns, L, T and U, slanted walls and acute corners, rooms through doorways, racks, drops and open sides, masked and
 * excluded areas, drains, notched rooms, courtyards, corridors; each with one of the four machine classes.
 * Returns: (transfer full): a job that ox_job_check() finds no error in
 */
OxJob *ox_test_floor_random (guint32 seed) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_floor_coats: the floor that ox_test_floor_random() gives with one to three coats in its rooms, some of them turned by an odd angle, and up to
 * three condition areas with a speed or a number of coats of their own; (transfer full) */
OxJob *ox_test_floor_coats (guint32 seed) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_floor_kind: what kind of floor that seed gives, for messages; a static string */
const char *ox_test_floor_kind (guint32 seed);

/* ox_test_floor_rectangle: one empty room of @width x @depth with its lower left corner at the origin, walls all round */
OxJob *ox_test_floor_rectangle (double width, double depth, const char *machine_class) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_floor_columns: as ox_test_floor_rectangle(), with square columns of side @column every @bay both ways */
OxJob *ox_test_floor_columns (double width, double depth, double column, double bay,
                              const char *machine_class) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_floor_polygon: one room of @n corners, walls all round */
OxJob *ox_test_floor_polygon (const OxPoint *points, guint n, const char *machine_class) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_floor_with_coats: @base (transfer full) with that many coats in all rooms, turned by @turn_deg; (transfer full) */
OxJob *ox_test_floor_with_coats (OxJob *base, guint coats, double turn_deg) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_floor_with_condition: @base (transfer full) with a further condition area, 0: no speed, no coats of its own; (transfer full) */
OxJob *ox_test_floor_with_condition (OxJob *base, OxBox box, double speed, guint coats) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_floor_wkt:
 * @path: a file of one or more polygons in well-known text; first ring the room, inner rings solid obstacles
 *
 * Stops the test when the file cannot be read.
 */
OxJob *ox_test_floor_wkt (const char *path, const char *machine_class) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_floor_paths: (transfer full): sorted paths of the *.wkt files in the folder that environment variable @variable names;
 * empty when it is unset */
GPtrArray *ox_test_floor_paths (const char *variable) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
