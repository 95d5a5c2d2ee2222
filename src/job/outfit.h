/* Oxturn: job/outfit - what is brought to the site beside the machine: size of the abrasive, the cords, the circuit that feeds them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An immutable counted value. Make one with ox_outfit_new() from a filled struct, which is copied deeply. A job always has one.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

#define OX_OUTFIT_MOST_CORDS 8
#define OX_CIRCUIT_MOST_A 10000.0
#define OX_CORD_MOST_M 10000.0
#define OX_CORD_MOST_MM2 1000.0
#define OX_SHOT_MOST_BYTES 40

typedef struct
{
  double length; /* m, over 0 to OX_CORD_MOST_M */
  double mm2;    /* conductor, over 0 to OX_CORD_MOST_MM2 */
} OxCordPart;

typedef struct
{
  char *shot;           /* size number, "S330" (trade/abrasive.h); any other name stands for itself; "" not set */
  double circuit_a;     /* rating of the circuit, to OX_CIRCUIT_MOST_A; 0 unknown */
  guint n_cords;        /* in series, from the supply to the machine; 0: one cord as the machine has it */
  OxCordPart cords[OX_OUTFIT_MOST_CORDS];
} OxOutfit;

OxOutfit *ox_outfit_new (const OxOutfit *outfit) G_GNUC_WARN_UNUSED_RESULT;
OxOutfit *ox_outfit_ref (const OxOutfit *outfit);
void ox_outfit_unref (const OxOutfit *outfit);

/* ox_outfit_equal: whether all figures and the cords in their order are the same */
gboolean ox_outfit_equal (const OxOutfit *a, const OxOutfit *b);

/* ox_outfit_default: nothing set; (transfer full) */
OxOutfit *ox_outfit_default (void) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxOutfit, ox_outfit_unref)
G_END_DECLS
