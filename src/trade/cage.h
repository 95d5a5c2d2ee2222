/* Oxturn: trade/cage - the feed cage of the blast wheel: where its opening is set, and what a pattern trial says of it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The opening is read as the hand of a clock, looking at the cage. Common practice, no source; the machine's manual governs.
 *
 *             12
 *        10:30  .  .
 *      9 .    o      . 3       first setting: between half past eight and half past ten
 *        8:30   .  .
 *              6
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* ox_cage_angle:
 * @clock: hours on the face, 8.5 for half past eight; 0 to 12
 *
 *      angle = 30 clock             degrees clockwise from twelve
 *
 * Example: half past eight is 255 degrees, half past ten 315.
 */
double ox_cage_angle (double clock);

/* ox_cage_is_first: whether @clock lies where the cage is first set, both ends allowed. Example: nine o'clock does, eight does not. */
gboolean ox_cage_is_first (double clock);

typedef struct
{
  double left_mm, middle_mm, right_mm; /* texture depth in the three thirds of one strip, looking along the travel; > 0 */
} OxCageTrial;

/* ox_cage_balance:
 *
 *      balance = 100 (right - left) / (right + left)
 *
 * Percent off the mean of both sides: 0 is even, above 0 the right side is cut deeper. See ox_profile_tilt().
 * Derived. Example: 0.40 mm left and 0.60 mm right are 20 %.
 */
double ox_cage_balance (const OxCageTrial *trial);

typedef enum
{
  OX_CAGE_LEAVE,  /* even enough */
  OX_CAGE_LEFT,   /* the right side is cut deeper: the pattern has to go left */
  OX_CAGE_RIGHT
} OxCageAdvice;

/* ox_cage_advise: which way the pattern has to go. Up to @even percent either way is even. Example: 20 % at 5 % goes left. */
OxCageAdvice ox_cage_advise (double balance, double even);

G_END_DECLS
