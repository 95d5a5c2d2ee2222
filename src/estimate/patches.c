/* Oxturn: estimate/patches
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/patches.h"
#include "base/words.h"
#include "estimate/basis.h"

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

double
ox_patch_balance (const OxPatch *patch)
{
  return ox_cage_balance (&(OxCageTrial){ patch->left_mm, patch->middle_mm, patch->right_mm });
}

char *
ox_patch_advice_text (const OxPatch *patch)
{
  switch (ox_cage_advise (ox_patch_balance (patch), ox_basis ("cage-even")))
    {
    case OX_CAGE_LEFT:
      return g_strdup (_ ("the right side is deeper: turn the cage so that the pattern goes left"));
    case OX_CAGE_RIGHT:
      return g_strdup (_ ("the left side is deeper: turn the cage so that the pattern goes right"));
    case OX_CAGE_LEAVE:
    default:
      return g_strdup (_ ("even enough: leave the cage as it is"));
    }
}
