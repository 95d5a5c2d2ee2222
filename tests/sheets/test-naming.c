/* Oxturn: tests of sheets/naming
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/naming.h"
#include "sheets/hall.h"
#include "support/ox-test.h"

static void
test_name_or_id (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_assert_cmpstr (ox_naming_of ("Hall", "R1"), ==, "Hall");
  g_assert_cmpstr (ox_naming_of ("", "R1"), ==, "R1");
  for (guint i = 0; i < job->n_stations; i++)
    g_assert_cmpstr (ox_naming_station (job, job->stations[i]->id), ==,
                     *job->stations[i]->name != '\0' ? job->stations[i]->name : job->stations[i]->id);
  g_assert_cmpstr (ox_naming_station (job, "P9"), ==, "P9");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/naming/name-or-id", test_name_or_id);
  return g_test_run ();
}
