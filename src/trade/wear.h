/* Oxturn: trade/wear - when the next check of a wear part falls due.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What counts are the hours that the blast wheel runs, which is the time of the strips, not of the shift.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* ox_wear_hours_left:
 * @interval: hours between checks, > 0
 * @run: hours since the last one, >= 0
 *
 *      left = max (interval - run, 0)
 *
 * Derived. Example: every 50 h and 38.5 h run: 11.5 h.
 * Returns: hours until the next check, 0 when it is due now
 */
double ox_wear_hours_left (double interval, double run);

/* ox_wear_due_strip:
 * @hours_left: as above
 * @strip_minutes: @n strips in working order
 *
 * The check comes after the last strip that ends within the hours left; it is not put off to the end of a strip begun.
 * Derived. Example: 10 min left and strips of 4 min each: the check falls due before strip 3, index 2.
 * Returns: index of the strip before which the check falls due; @n when all strips fit
 */
guint ox_wear_due_strip (double hours_left, const double *strip_minutes, guint n);

/* ox_wear_checks:
 * @hours: of the wheel, still to come; >= 0
 *
 * Returns: checks that fall due within @hours. Example: every 50 h, 40 h run, 120 h to come: after 10, 60 and 110 h, 3 checks
 */
guint ox_wear_checks (double interval, double run, double hours);

/* ox_wear_run:
 * @hours: of the wheel since, >= 0
 *
 * A check that falls due is taken for done then. Example: every 50 h, 40 h run and 25 h since: the check came after 10 h, 15 h ago.
 * Returns: hours run since the last check
 */
double ox_wear_run (double interval, double run, double hours);

typedef struct
{
  const char *id, *name;
  double least_h, most_h; /* starter intervals */
  int typical;
  const char *source;
} OxWearStarter;

/* ox_wear_starters: usual parts and intervals, data/trade/wear-parts.csv; the machine's manual governs; @n: (out) */
const OxWearStarter *ox_wear_starters (guint *n);

G_END_DECLS
