/* Oxturn: trade/defaults
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/defaults.h"

static const OxDefault rows[] = {
#include "trade/defaults.inc"
};

const OxDefault *
ox_defaults_list (guint *n)
{
  *n = G_N_ELEMENTS (rows);
  return rows;
}

const OxDefault *
ox_defaults_get (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (g_str_equal (rows[i].id, id))
      return &rows[i];
  g_error ("no default figure named %s", id);
}
