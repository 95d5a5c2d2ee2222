/* Oxturn: trade/production - strips across a width, their time, and the floor they cover.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *      |<-------------- W --------------->|
 *      +------+                           |      w  blast width      o  overlap of two neighbours
 *      |  1   |                           |      n  lanes            s  spacing of the chalk lines
 *      |    +-+----+                      |
 *      |<s->|  2   |   ...                |      The grid is even: lane 1 touches one side of the width,
 *      |    | +----+---                   |      lane n the other, and what is left over widens every
 *      |<w--->|             +------+      |      overlap a little, so that the last lane does not bunch up.
 *
 * Lengths in metres, speeds in metres a minute, areas in square metres. The formulas hold for any other unit of length
 * as well, as long as all lengths share it. Pure arithmetic: each is derived where it stands, there is nothing to cite.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* ox_production_lanes:
 * @width: W, floor to be covered, measured across the strips; > 0, at most 1e6 spacings
 * @blast_width: w, > 0
 * @min_overlap: o, least overlap of neighbours; 0 <= o < w
 *
 *      n = 1                               when W <= w
 *      n = ceil ((W - w) / (w - o)) + 1    otherwise
 *
 * A width that is a whole number of spacings gains no lane from rounding: a millionth of a spacing is forgiven.
 * Example: 354 in with a 10 in blast width and 1 in overlap is 40 lanes.
 * Returns: n, 1 or more
 */
guint ox_production_lanes (double width, double blast_width, double min_overlap);

/* ox_production_spacing:
 * @lanes: n, 1 or more
 *
 *      s = (W - w) / (n - 1)               0 for a single lane
 *
 * Example: 11.8 m with 52 lanes of 0.254 m lie 0.226392 m apart.
 */
double ox_production_spacing (double width, double blast_width, guint lanes);

/* ox_production_overlap:
 *
 *      o' = w - s = (n w - W) / (n - 1)    0 for a single lane
 *
 * The overlap that an even grid really has, never less than the least one asked for.
 * Example: 40 lanes of 10 in over 354 in overlap by 1.17949 in.
 */
double ox_production_overlap (double width, double blast_width, guint lanes);

/* ox_production_minutes:
 * @length: L, of one strip or of many together; >= 0
 * @speed: v, walking speed while blasting; > 0
 *
 *      t = L / v
 *
 * Example: 40 strips of 29.5 ft at 20 ft/min take 59.0 min. This is also what the blast wheel's hours count.
 */
double ox_production_minutes (double length, double speed);

/* ox_production_move_seconds:
 * @length: L, of the way with the valve closed; >= 0
 * @walk_speed: v, > 0
 * @swing_seconds: s, where the heading changes, else 0
 *
 *      t = s + 60 L / v
 *
 * In the header, for an order of work asks for millions of them.
 * Example: 6 m at 30 m/min with a swing of 15 s take 27 s.
 * Returns: seconds
 */
static inline double
ox_production_move_seconds (double length, double walk_speed, double swing_seconds)
{
  return swing_seconds + length / walk_speed * 60;
}

/* ox_production_field_minutes:
 * @length: of all strips together
 * @turns: moves between them
 * @turn_seconds: for one of them
 *
 *      T = L / v + turns * t / 60
 *
 * Example: those 40 strips with 39 turns of 20 s take 72.0 min.
 */
double ox_production_field_minutes (double length, double speed, guint turns, double turn_seconds);

/* ox_production_area_per_hour:
 * @overlap: 0 <= o < w
 * @efficiency: share of the time in which the machine blasts, above 0 and at most 1
 *
 *      A/h = (w - o) v 60 e
 *
 * Example: 10 in, 1 in overlap, 20 ft/min at 0.75 make 675 ft2/h (0.75 ft * 20 ft/min * 60 * 0.75).
 */
double ox_production_area_per_hour (double blast_width, double overlap, double speed, double efficiency);

/* ox_production_efficiency:
 * @blast_minutes: >= 0
 * @total_minutes: >= blast_minutes, > 0
 *
 *      e = blast time / total time
 *
 * Example: 59 min of blasting in 72 min is 0.8194.
 */
double ox_production_efficiency (double blast_minutes, double total_minutes);

/* ox_production_double_share:
 * @gross: areas of all strips added up, each for itself
 * @covered: floor that they cover, counted once; > 0, at most @gross
 *
 *      (gross - covered) / covered
 *
 * The mean surplus dose. It is the share of floor with a double dose where no floor gets a third one.
 * Example: 3 strips of 10 m by 0.25 m that overlap by 0.05 m: 7.5 m2 laid on 6.5 m2 is 0.1538.
 */
double ox_production_double_share (double gross, double covered);

/* ox_production_days:
 * @area: >= 0
 * @area_per_day: > 0
 *
 * Whole working days, begun ones counted. Example: 50,000 ft2 at 4,200 ft2 a day are 11.9, so 12 days.
 */
guint ox_production_days (double area, double area_per_day);

G_END_DECLS
