/* Oxturn: job/outfit
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/outfit.h"
#include <math.h>
#include "job/text.h"
#include "job/value.h"

OxOutfit *
ox_outfit_new (const OxOutfit *outfit)
{
  OxOutfit *self = g_atomic_rc_box_new0 (OxOutfit);
  self->shot = ox_text_clean (outfit->shot, FALSE);
  self->circuit_a = ox_value_snap (outfit->circuit_a);
  self->n_cords = MIN (outfit->n_cords, OX_OUTFIT_MOST_CORDS);
  for (guint i = 0; i < self->n_cords; i++)
    self->cords[i] = (OxCordPart){ ox_value_snap (outfit->cords[i].length), ox_value_snap (outfit->cords[i].mm2) };
  return self;
}

OxOutfit *
ox_outfit_ref (const OxOutfit *outfit)
{
  return g_atomic_rc_box_acquire ((gpointer) outfit);
}

static void
outfit_clear (gpointer data)
{
  g_free (((OxOutfit *) data)->shot);
}

void
ox_outfit_unref (const OxOutfit *outfit)
{
  g_atomic_rc_box_release_full ((gpointer) outfit, outfit_clear);
}

gboolean
ox_outfit_equal (const OxOutfit *a, const OxOutfit *b)
{
  if (!g_str_equal (a->shot, b->shot) || a->circuit_a != b->circuit_a || a->n_cords != b->n_cords)
    return FALSE;
  for (guint i = 0; i < a->n_cords; i++)
    if (a->cords[i].length != b->cords[i].length || a->cords[i].mm2 != b->cords[i].mm2)
      return FALSE;
  return TRUE;
}

OxOutfit *
ox_outfit_default (void)
{
  return ox_outfit_new (&(OxOutfit){ .shot = NULL });
}
