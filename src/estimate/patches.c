/* Oxturn: estimate/patches
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/patches.h"

double
ox_patch_depth (const OxPatch *patch)
{
  if (patch->depth_mm > 0)
    return patch->depth_mm;
  return patch->volume_ml > 0 && patch->n_diameters > 0
             ? ox_profile_texture_depth (patch->volume_ml, patch->diameters_mm, patch->n_diameters)
             : 0;
}

OxFitVerdict
ox_patches_fit (const OxPatches *patches, OxProfileFit *out, guint *n)
{
  g_autoptr (GArray) tried = g_array_new (FALSE, FALSE, sizeof (OxTestPatch));
  for (guint i = 0; i < patches->n; i++)
    {
      const OxTestPatch patch = { patches->items[i].speed_m_per_min, ox_patch_depth (&patches->items[i]) };
      if (patch.depth_mm > 0)
        g_array_append_val (tried, patch);
    }
  *n = tried->len;
  return ox_profile_fit ((const OxTestPatch *) (gpointer) tried->data, tried->len, out);
}
