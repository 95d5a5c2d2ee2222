/* Oxturn: app/traced/dots - the dots of a picture in rows without gaps, in one or three bytes each, whole and halved.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <cairo.h>
#include <glib.h>
G_BEGIN_DECLS

#define OX_DOTS_MAX_LEVELS 16

typedef struct
{
  guint width, height;
  guint channels; /* 1 grey, 3 red, green, blue */
  guint8 *bytes;
} OxDots;

/* ox_dots_init: white, in colour; FALSE when there is no memory for it */
gboolean ox_dots_init (OxDots *dots, guint width, guint height);
void ox_dots_clear (OxDots *dots);

/* ox_dots_take_row: row @y from @rgb or, with @alpha, rgba of straight alpha, laid on white paper */
void ox_dots_take_row (OxDots *dots, guint y, const guint8 *pixels, gboolean alpha);

/* ox_dots_take_cairo: the rows of @surface (RGB24 or ARGB32, opaque) from row @y on, as far as there are any */
void ox_dots_take_cairo (OxDots *dots, guint y, cairo_surface_t *surface);

/* ox_dots_pack: to one byte a dot when no dot has a colour worth the name */
void ox_dots_pack (OxDots *dots);

/* ox_dots_halve: @out: half as wide and high, each dot the mean of four; the last row and column of an odd size are used twice */
gboolean ox_dots_halve (const OxDots *dots, OxDots *out);

typedef struct
{
  guint x, y, width, height;
} OxDotsPart;

/* ox_dots_surface: a part of it as an RGB24 surface
 * @turned: black for white
 * Returns: (transfer full) */
cairo_surface_t *ox_dots_surface (const OxDots *dots, const OxDotsPart *part, gboolean turned) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
