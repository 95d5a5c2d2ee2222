/* Oxturn: trade/shifts - what falls into which working day.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Minutes throughout. Work comes as pieces in working order - a strip with the move before it, an edge area - that are not broken off
 * at the end of a shift.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

typedef struct
{
  double length;   /* from arriving to leaving, > 0 */
  double breaks;   /* in it, >= 0 */
  double set_up;   /* before the first piece, >= 0 */
  double clean_up; /* after the last piece, >= 0 */
} OxShiftRules;

/* ox_shifts_working:
 *
 *      working minutes = length - breaks - set up - clean up
 *
 * Derived. Example: 8 h with 45 min of breaks, 60 to set up and 30 to clean up leave 345 min.
 * Returns: 0 where nothing is left
 */
double ox_shifts_working (const OxShiftRules *rules);

/* ox_shifts_share_out:
 * @rules: with working minutes left
 * @pieces: minutes of @n pieces in working order, each >= 0
 * @shifts: (out) (nullable): @n numbers, the shift from 1 in which each piece is done
 *
 * Each shift takes pieces in order as long as they fit. A piece longer than a whole shift has one for itself, which then is too long.
 * Example: 100 working minutes and pieces of 60, 30, 20, 120, 10: shifts 1, 1, 2, 3, 4.
 * Returns: shifts needed, 0 without a piece
 */
guint ox_shifts_share_out (const OxShiftRules *rules, const double *pieces, guint n, guint *shifts);

/* ox_shifts_split:
 * @rooms: minutes of @n rooms or fields that are worked on independently, each >= 0
 * @machines: that work in parallel, 1 or more
 * @machine: (out): @n numbers from 0, which machine takes which room
 *
 * The longest room first, each to the machine that has least so far; among equals the earlier one. The longest machine works at most
 * 4/3 - 1/(3 machines) of the shortest time possible.
 * Source: R. L. Graham, Bounds on multiprocessing timing anomalies, SIAM J. Appl. Math. 17 (1969).
 * Example: rooms of 50, 40, 30, 30, 20 min on 2 machines: 50, 30 and 40, 30, 20; done after 90 min.
 * Returns: minutes until the last machine is done
 */
double ox_shifts_split (const double *rooms, guint n, guint machines, guint *machine);

typedef struct
{
  double flow;       /* abrasive thrown, kg/min */
  double loss_share; /* of the abrasive thrown, lost or broken down; 0 to 1 */
  double usable;     /* kg that may be missing from the hopper before it has to be topped up, > 0 */
} OxHopper;

/* ox_shifts_refills:
 * @minutes: of strips, >= 0
 *
 *      refills = ceil (minutes flow loss / usable) - 1
 *
 * Derived: the first filling is part of setting up; one that falls due with the last minute is not made.
 * Example: 600 min at 20 kg/min and 0.12 % lose 14.4 kg: 2 refills of 5 kg.
 */
guint ox_shifts_refills (const OxHopper *hopper, double minutes);

G_END_DECLS
