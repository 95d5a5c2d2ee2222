/* Oxturn: estimate/supply - the cords between supply and machine.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/job.h"
#include "trade/supply.h"
G_BEGIN_DECLS

typedef struct
{
  guint n;                                 /* 0 where the conductor is not known */
  double length;                           /* m, of all */
  OxCordPart parts[OX_OUTFIT_MOST_CORDS];
  OxCord cords[OX_OUTFIT_MOST_CORDS];      /* the same with their resistance, as the nearest conductor of the table has it */
} OxCordLine;

/* ox_cord_line_of: the outfit's cords in series, else one as long as the longest of the supply stations and as thick as the machine's */
OxCordLine ox_cord_line_of (const OxJob *job);

/* ox_cord_line_judge: the drop over @line against the limits of the tables (drop-warn, drop-stop) */
OxDropVerdict ox_cord_line_judge (const OxCordLine *line, const OxSupply *supply);

/* ox_cord_line_longest: m that a cord with the mean resistance of @line could have until drop-stop is lost; @line: with a length */
double ox_cord_line_longest (const OxCordLine *line, const OxSupply *supply);

/* ox_least_circuit: rating of the least circuit that carries @amperes for hours, by continuous-share of the tables */
double ox_least_circuit (double amperes);

/* ox_cord_line_text: "15.00 m of 3.31 mm² + 15.24 m of 5.26 mm²", translated; (transfer full) */
char *ox_cord_line_text (const OxCordLine *line, OxUnits units) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
