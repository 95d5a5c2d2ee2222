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

/* ox_shifts_is_due:
 * @gathered: since the last stop: kg missing from the hopper, kg in the drum, minutes of the wheel; >= 0
 * @coming: the same, of the next strip; >= 0
 * @limit: of both together, in the same unit
 *
 *      due = gathered > 0 and gathered + coming > limit
 *
 * Whether hopper, drum or wear part is seen to before the next strip: none is stopped for on the way, so that each stop comes a little
 * early, never late. After a stop the next strip is always laid, however long.
 * Derived. Example: strips that lose 2 kg each from a hopper that may lack 5 kg: topped up before the third.
 */
gboolean ox_shifts_is_due (double gathered, double coming, double limit);

G_END_DECLS
