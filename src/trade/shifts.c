/* Oxturn: trade/shifts
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/shifts.h"
#include <math.h>

/* Sums of minutes that fill a shift but for rounding fit into it. */
#define FORGIVEN_MINUTES 1e-6

double
ox_shifts_working (const OxShiftRules *rules)
{
  return MAX (rules->length - rules->breaks - rules->set_up - rules->clean_up, 0);
}

guint
ox_shifts_share_out (const OxShiftRules *rules, const double *pieces, guint n, guint *shifts)
{
  double working = ox_shifts_working (rules), used = 0;
  g_return_val_if_fail (working > 0, 0);
  guint shift = n > 0 ? 1 : 0;
  for (guint i = 0; i < n; i++)
    {
      if (used > 0 && used + pieces[i] > working + FORGIVEN_MINUTES)
        {
          shift++;
          used = 0;
        }
      used += pieces[i];
      if (shifts != NULL)
        shifts[i] = shift;
    }
  return shift;
}

gboolean
ox_shifts_is_due (double gathered, double coming, double limit)
{
  g_return_val_if_fail (gathered >= 0 && coming >= 0, FALSE);
  return gathered > 0 && gathered + coming > limit;
}

double
ox_shifts_split (const double *rooms, guint n, guint machines, guint *machine)
{
  g_return_val_if_fail (machines >= 1, 0);
  g_autofree double *load = g_new0 (double, machines);
  g_autofree gboolean *given = g_new0 (gboolean, n);
  double longest = 0;
  for (guint round = 0; round < n; round++)
    {
      guint room = n, least = 0;
      for (guint i = 0; i < n; i++)
        if (!given[i] && (room == n || rooms[i] > rooms[room]))
          room = i;
      for (guint m = 1; m < machines; m++)
        if (load[m] < load[least])
          least = m;
      given[room] = TRUE;
      machine[room] = least;
      load[least] += rooms[room];
      longest = MAX (longest, load[least]);
    }
  return longest;
}
