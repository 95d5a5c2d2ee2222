/* Oxturn: drawing/style - the one table of colours, line widths, dashes and hatches.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An element names a style; nobody else knows a colour. What a style says must survive a copier: floor that differs in what is to be
 * done with it differs by hatch or by line, never by colour alone. On paper text has a contrast of 4.5:1 or more and a line 3:1 or more
 * against white (WCAG 2.1, 1.4.3 and 1.4.11); tests/drawing/test-style.c computes them.
 * Line widths are of the series 0.13 0.18 0.25 0.35 0.5 0.7 1.0 mm (laid out after ISO 128-2).
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

typedef enum
{
  /* floor */
  OX_STYLE_ROOM,      /* floor of a room, fill only */
  OX_STYLE_WALL,      /* side: a body must keep off */
  OX_STYLE_OPEN,      /* side: the floor goes on */
  OX_STYLE_DROP,      /* side: an edge that one falls over */
  OX_STYLE_KEEP_BACK, /* how near the body may come to a drop */
  OX_STYLE_SOLID,
  OX_STYLE_PIT,
  OX_STYLE_MASKED,
  OX_STYLE_EXCLUDED,
  OX_STYLE_CONDITION, /* outline of a condition area, over the strips */
  OX_STYLE_DOORWAY,
  OX_STYLE_JOINT,
  /* plan */
  OX_STYLE_STRIP_OUT,   /* what a main strip covers, walked one way ... */
  OX_STYLE_STRIP_HOME,  /* ... and the other way */
  OX_STYLE_CROSSWISE,   /* what a crosswise strip covers */
  OX_STYLE_STRIP_AXIS,  /* middle of a main strip, from start to stop */
  OX_STYLE_CROSS_AXIS,  /* middle of a crosswise strip */
  OX_STYLE_COAT_AXIS,   /* middle of a strip of a further coat, over what the first one covers */
  OX_STYLE_PACE,        /* where the walking speed changes along a strip */
  OX_STYLE_FIRST,       /* first start */
  OX_STYLE_ZONE,        /* turnaround zone */
  OX_STYLE_EDGE,        /* edge work */
  OX_STYLE_DONE,        /* strips and edge work that are done */
  OX_STYLE_MOVE,        /* path of a move */
  OX_STYLE_TO_PREPARE,  /* floor that strips cover, where no single strip is shown */
  OX_STYLE_STATION,
  OX_STYLE_PROPOSED,    /* a place proposed for a station */
  OX_STYLE_HOSE_REACH,  /* where the hoses of the stations end */
  OX_STYLE_CORD_REACH,  /* where their cords end */
  OX_STYLE_OUT_OF_REACH, /* over a strip that no station reaches: hatch only */
  OX_STYLE_LANE,        /* a chalk line that strips lie on */
  OX_STYLE_DOSE_NONE,   /* target that no strip covers ... */
  OX_STYLE_DOSE_ONCE,
  OX_STYLE_DOSE_TWICE,
  OX_STYLE_DOSE_MORE,   /* ... and that three or more cover */
  OX_STYLE_CHALK,       /* base wall of the chalk lines and the distance from it */
  /* sheet */
  OX_STYLE_INK,         /* text, solid marks */
  OX_STYLE_QUIET,       /* text of lesser weight */
  OX_STYLE_TAG,         /* text on a tag with its own ground and outline */
  OX_STYLE_LEADER,
  OX_STYLE_DIMENSION,
  OX_STYLE_FRAME,
  OX_STYLE_BLOCK,       /* outline of title block and tables */
  OX_STYLE_RULE,        /* lines between table rows */
  OX_STYLE_HEAD,        /* ground of a table's head */
  OX_STYLE_ACCENT,
  OX_STYLE_BAR,         /* filled parts of the scale bar */
  OX_STYLE_MATCH,       /* where the drawing goes on on another sheet */
  OX_STYLE_HERE,        /* on a key plan: what this sheet shows */
  OX_N_STYLES
} OxStyle;

typedef enum
{
  OX_PALETTE_PAPER, /* print, sheets, light window */
  OX_PALETTE_NIGHT, /* dark window */
  OX_N_PALETTES
} OxPalette;

#define OX_COLOUR_NONE 0xff000000u /* no paint; colours are 0xRRGGBB */

typedef struct
{
  double angle_deg;  /* counter-clockwise from +x */
  double spacing_mm; /* 0: no hatch; never under 0.7 mm clear */
  gboolean crossed;  /* a second set of lines at right angles */
} OxHatch;

typedef struct
{
  const char *name;     /* "wall", "edge": untranslated, unique */
  guint32 fill[OX_N_PALETTES];
  guint32 ink[OX_N_PALETTES]; /* lines, hatch and text */
  double width_mm;      /* of lines; 0: no outline */
  double dash[4];       /* in line widths: on, off, on, off; all 0: continuous */
  double hatch_width_mm;
  OxHatch hatch;
} OxStyleSpec;

/* ox_style_get: how it looks; belongs to the program */
const OxStyleSpec *ox_style_get (OxStyle style);

/* ox_palette_get_ground: colour of the sheet or canvas under everything */
guint32 ox_palette_get_ground (OxPalette palette);

/* ox_colour_contrast: of two colours 0xRRGGBB, 1 to 21 (WCAG 2.1, definition of contrast ratio and relative luminance) */
double ox_colour_contrast (guint32 a, guint32 b);

G_END_DECLS
