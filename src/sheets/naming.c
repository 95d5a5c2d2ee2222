/* Oxturn: sheets/naming - how sheets name what has a name of its own or only an id.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/naming.h"

const char *
ox_naming_of (const char *name, const char *id)
{
  return name[0] != '\0' ? name : id;
}

const char *
ox_naming_station (const OxJob *job, const char *id)
{
  for (guint i = 0; i < job->n_stations; i++)
    if (g_str_equal (job->stations[i]->id, id))
      return ox_naming_of (job->stations[i]->name, id);
  return id;
}
