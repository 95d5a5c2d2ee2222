/* Oxturn: job/classes - the machine classes shipped in data/machines.xml.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/classes.h"
#include "job/classes-data.h"

guint
ox_classes_get_count (void)
{
  return ox_classes_data_count;
}

const OxMachine *
ox_classes_get (guint i)
{
  g_return_val_if_fail (i < ox_classes_data_count, NULL);
  return &ox_classes_data[i];
}

const OxMachine *
ox_classes_find (const char *id)
{
  for (guint i = 0; i < ox_classes_data_count; i++)
    if (g_str_equal (ox_classes_data[i].class_id, id))
      return &ox_classes_data[i];
  return NULL;
}
