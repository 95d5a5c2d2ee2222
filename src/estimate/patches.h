/* Oxturn: estimate/patches - what the test patches of a job say.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/terms.h"
#include "trade/cage.h"
#include "trade/profile.h"
G_BEGIN_DECLS

/* ox_patch_depth: mean texture depth in mm: as measured, else by the sand patch (trade/profile.h); 0 when neither is known */
double ox_patch_depth (const OxPatch *patch);

/* ox_patches_fit:
 * @n: (out): patches with a depth, on which the fit rests
 *
 * The curve of trade/profile.h through all patches whose depth is known. */
OxFitVerdict ox_patches_fit (const OxPatches *patches, OxProfileFit *out, guint *n);

/* ox_patch_balance: percent of the pattern trial, above 0 where the right side is cut deeper (trade/cage.h); only where ox_patch_has_trial() */
double ox_patch_balance (const OxPatch *patch);

/* ox_patch_advice_text: what is to be done with the feed cage: "turn the cage so that the pattern goes left"; (transfer full) */
char *ox_patch_advice_text (const OxPatch *patch) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
