/* Oxturn: trade/spots - how many test spots an area asks for.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

typedef struct
{
  const char *id, *name;
  int first;         /* spots of the first area, > 0 */
  double base_m2;    /* the first area, > 0 */
  double step_m2;    /* each further one, > 0 */
  int typical;       /* 1: custom of specifications, no published source */
  const char *source;
} OxSpotRule;

/* ox_spots_rules: data/trade/spots.csv; a job's specification may ask for others; @n: (out) */
const OxSpotRule *ox_spots_rules (guint *n);

/* ox_spots_count:
 * @area: m2, >= 0
 *
 *      n = first                                   when A <= base
 *      n = first + ceil ((A - base) / step)        otherwise
 *
 * Source: the wording of ASTM F2170 and F1869: three for the first 1,000 ft2 and one for each further 1,000 ft2.
 * Example: 12,500 ft2 ask for 15 of them. No area asks for none.
 */
guint ox_spots_count (const OxSpotRule *rule, double area);

G_END_DECLS
