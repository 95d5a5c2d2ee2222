/* Oxturn: trade/defaults - figures an estimate starts with, each with where it comes from (data/trade/defaults.csv).
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

typedef struct
{
  const char *id;
  double value;
  const char *unit;   /* "1" for a share or a count */
  int typical;        /* 1: no published source, to be replaced by what test patches and experience give */
  const char *source; /* standard with its part, or what the figure is */
} OxDefault;

/* ox_defaults_list: all of them, in the order of the file; @n: (out): how many */
const OxDefault *ox_defaults_list (guint *n);

/* ox_defaults_get:
 * @id: one that the table has, for example "drum-litres"
 *
 * Returns: its row, never NULL: an id that is not there is an error of the program
 */
const OxDefault *ox_defaults_get (const char *id);

G_END_DECLS
