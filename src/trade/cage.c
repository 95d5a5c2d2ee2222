/* Oxturn: trade/cage
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/cage.h"
#include "trade/defaults.h"
#include "trade/profile.h"

#define DEGREES_PER_HOUR 30

double
ox_cage_angle (double clock)
{
  return DEGREES_PER_HOUR * clock;
}

gboolean
ox_cage_is_first (double clock)
{
  return clock >= ox_defaults_get ("cage-first")->value && clock <= ox_defaults_get ("cage-last")->value;
}

double
ox_cage_balance (const OxCageTrial *trial)
{
  return 100 * ox_profile_tilt (trial->left_mm, trial->right_mm);
}

OxCageAdvice
ox_cage_advise (double balance, double even)
{
  if (balance > even)
    return OX_CAGE_LEFT;
  return balance < -even ? OX_CAGE_RIGHT : OX_CAGE_LEAVE;
}
