/* Oxturn: drawing/style - the one table of colours, line widths, dashes and hatches.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/style.h"
#include <math.h>

#define NONE OX_COLOUR_NONE
/* clang-format off */
#define SOLID_LINE { 0, 0, 0, 0 }
#define DASHED { 12, 3, 0, 0 }
#define SHORT_DASHED { 6, 3, 0, 0 }
#define DASH_DOTTED { 24, 3, 0.5, 3 }
#define NO_HATCH 0, { 0, 0, FALSE }
/* clang-format on */

/* Limewash floor, slate walls, sage strips, ochre crosswise strips, rust edge work, ox-blood for what can hurt. Each
 * row: name, fill on paper and at night, ink on paper and at night, line width, dash, hatch width and hatch. */
static const OxStyleSpec styles[OX_N_STYLES] = {
  [OX_STYLE_ROOM] = { "room", { 0xf6f4ee, 0x262d31 }, { NONE, NONE }, 0, SOLID_LINE, NO_HATCH },
  [OX_STYLE_WALL] = { "wall", { NONE, NONE }, { 0x22303a, 0xd7dee3 }, 0.7, SOLID_LINE, NO_HATCH },
  [OX_STYLE_OPEN] = { "open", { NONE, NONE }, { 0x22303a, 0xd7dee3 }, 0.35, DASHED, NO_HATCH },
  [OX_STYLE_DROP] = { "drop", { NONE, NONE }, { 0x9b1c1c, 0xff8f80 }, 0.7, { 4, 1.5, 0, 0 }, NO_HATCH },
  [OX_STYLE_KEEP_BACK] = { "keep-back", { NONE, NONE }, { 0x9b1c1c, 0xff8f80 }, 0.18, SHORT_DASHED, NO_HATCH },
  [OX_STYLE_SOLID] = { "solid", { 0x4d5962, 0x9aa7b0 }, { 0x22303a, 0xd7dee3 }, 0.35, SOLID_LINE, NO_HATCH },
  [OX_STYLE_PIT] = { "pit", { 0xffffff, 0x15191c }, { 0x9b1c1c, 0xff8f80 }, 0.35, SOLID_LINE, 0.13, { 45, 2.2, TRUE } },
  [OX_STYLE_MASKED]
  = { "masked", { 0xeeebf4, 0x322c40 }, { 0x564873, 0xbdaee0 }, 0.25, SOLID_LINE, 0.13, { 0, 1.8, TRUE } },
  [OX_STYLE_EXCLUDED]
  = { "excluded", { 0xffffff, 0x1a1f22 }, { 0x5c6670, 0x9aa7b0 }, 0.25, SHORT_DASHED, 0.13, { 135, 4, FALSE } },
  [OX_STYLE_CONDITION] = { "condition", { NONE, NONE }, { 0x3d5a1e, 0xb7d48a }, 0.35, { 10, 2.5, 2, 2.5 }, NO_HATCH },
  [OX_STYLE_DOORWAY] = { "doorway", { 0xf6f4ee, 0x262d31 }, { 0x22303a, 0xd7dee3 }, 0.25, SOLID_LINE, NO_HATCH },
  [OX_STYLE_JOINT] = { "joint", { NONE, NONE }, { 0x5c6670, 0x9aa7b0 }, 0.25, DASH_DOTTED, NO_HATCH },
  [OX_STYLE_STRIP_OUT] = { "strip-out", { 0xc6d9d1, 0x35504b }, { NONE, NONE }, 0, SOLID_LINE, NO_HATCH },
  [OX_STYLE_STRIP_HOME] = { "strip-home", { 0xe4eee9, 0x2d4340 }, { NONE, NONE }, 0, SOLID_LINE, NO_HATCH },
  [OX_STYLE_CROSSWISE]
  = { "crosswise", { 0xf7ebd0, 0x55452a }, { 0x9a7430, 0xb8935a }, 0, SOLID_LINE, 0.13, { 135, 2.5, FALSE } },
  [OX_STYLE_STRIP_AXIS] = { "strip-axis", { NONE, NONE }, { 0x2a5a53, 0x9fd0c5 }, 0.18, SOLID_LINE, NO_HATCH },
  [OX_STYLE_CROSS_AXIS] = { "cross-axis", { NONE, NONE }, { 0x76510f, 0xe6c283 }, 0.18, DASHED, NO_HATCH },
  [OX_STYLE_COAT_AXIS] = { "coat-axis", { NONE, NONE }, { 0x6d2f5b, 0xe2a6cf }, 0.18, { 3, 4, 0, 0 }, NO_HATCH },
  [OX_STYLE_PACE] = { "pace", { NONE, NONE }, { 0x1b2730, 0xe8edf0 }, 0.5, SOLID_LINE, NO_HATCH },
  [OX_STYLE_FIRST] = { "first", { 0xffffff, 0x15191c }, { 0x7b2d26, 0xffa08f }, 0.35, SOLID_LINE, NO_HATCH },
  [OX_STYLE_ZONE] = { "zone", { NONE, NONE }, { 0x76510f, 0xe6c283 }, 0.35, { 1, 2.5, 0, 0 }, NO_HATCH },
  [OX_STYLE_EDGE]
  = { "edge", { 0xf7ddd0, 0x53311f }, { 0x8c3a1b, 0xf0a27c }, 0.18, SOLID_LINE, 0.13, { 45, 1.2, FALSE } },
  [OX_STYLE_DONE] = { "done", { 0xb9c6cc, 0x3c4a52 }, { 0x4a5f6a, 0xa3b8c2 }, 0, SOLID_LINE, 0.13, { 120, 2.6, FALSE } },
  [OX_STYLE_MOVE] = { "move", { NONE, NONE }, { 0x5c6670, 0x9aa7b0 }, 0.18, { 2, 4, 0, 0 }, NO_HATCH },
  [OX_STYLE_TO_PREPARE] = { "to-prepare", { 0xdce8e2, 0x2d4340 }, { NONE, NONE }, 0, SOLID_LINE, NO_HATCH },
  [OX_STYLE_STATION] = { "station", { 0xffffff, 0x15191c }, { 0x1f4e79, 0x8fc1f0 }, 0.35, SOLID_LINE, NO_HATCH },
  [OX_STYLE_PROPOSED] = { "proposed", { 0xffffff, 0x15191c }, { 0x1f4e79, 0x8fc1f0 }, 0.35, { 3, 2, 0, 0 }, NO_HATCH },
  [OX_STYLE_HOSE_REACH] = { "hose-reach", { NONE, NONE }, { 0x1f4e79, 0x8fc1f0 }, 0.5, { 9, 4, 0, 0 }, NO_HATCH },
  [OX_STYLE_CORD_REACH] = { "cord-reach", { NONE, NONE }, { 0x1f4e79, 0x8fc1f0 }, 0.35, { 9, 3, 2, 3 }, NO_HATCH },
  [OX_STYLE_OUT_OF_REACH] = { "out-of-reach", { NONE, NONE }, { 0x515d67, 0xa9b5bd }, 0, SOLID_LINE, 0.13, { 60, 5, FALSE } },
  [OX_STYLE_LANE] = { "lane", { NONE, NONE }, { 0x1f4e79, 0x8fc1f0 }, 0.25, SHORT_DASHED, NO_HATCH },
  [OX_STYLE_DOSE_NONE]
  = { "dose-none", { 0xffffff, 0x15191c }, { 0x5c6670, 0x9aa7b0 }, 0, SOLID_LINE, 0.13, { 45, 1.6, FALSE } },
  [OX_STYLE_DOSE_ONCE] = { "dose-once", { 0xdce8e2, 0x2d4340 }, { NONE, NONE }, 0, SOLID_LINE, NO_HATCH },
  [OX_STYLE_DOSE_TWICE]
  = { "dose-twice", { 0xf0d49a, 0x6b5220 }, { 0x76510f, 0xe6c283 }, 0, SOLID_LINE, 0.13, { 90, 1.6, FALSE } },
  [OX_STYLE_DOSE_MORE]
  = { "dose-more", { 0xd98a6b, 0x8f3d22 }, { 0x7b2d26, 0xffa08f }, 0, SOLID_LINE, 0.18, { 45, 1.2, TRUE } },
  [OX_STYLE_CHALK] = { "chalk", { 0xffffff, 0x15191c }, { 0x1f4e79, 0x8fc1f0 }, 0.25, SOLID_LINE, NO_HATCH },
  [OX_STYLE_INK] = { "ink", { 0xffffff, 0x15191c }, { 0x1b2730, 0xe8edf0 }, 0.25, SOLID_LINE, NO_HATCH },
  [OX_STYLE_QUIET] = { "quiet", { 0xffffff, 0x15191c }, { 0x515d67, 0xa9b5bd }, 0.18, SOLID_LINE, NO_HATCH },
  [OX_STYLE_TAG] = { "tag", { 0xffffff, 0x15191c }, { 0x8c3a1b, 0xf0a27c }, 0.18, SOLID_LINE, NO_HATCH },
  [OX_STYLE_LEADER] = { "leader", { NONE, NONE }, { 0x8c3a1b, 0xf0a27c }, 0.18, SOLID_LINE, NO_HATCH },
  [OX_STYLE_DIMENSION] = { "dimension", { 0xffffff, 0x15191c }, { 0x1b2730, 0xe8edf0 }, 0.18, SOLID_LINE, NO_HATCH },
  [OX_STYLE_FRAME] = { "frame", { NONE, NONE }, { 0x1b2730, 0xe8edf0 }, 0.7, SOLID_LINE, NO_HATCH },
  [OX_STYLE_BLOCK] = { "block", { NONE, NONE }, { 0x1b2730, 0xe8edf0 }, 0.35, SOLID_LINE, NO_HATCH },
  [OX_STYLE_RULE] = { "rule", { NONE, NONE }, { 0x7f8a92, 0x6d7880 }, 0.18, SOLID_LINE, NO_HATCH },
  [OX_STYLE_HEAD] = { "head", { 0xe9e6dd, 0x333b40 }, { NONE, NONE }, 0, SOLID_LINE, NO_HATCH },
  [OX_STYLE_ACCENT] = { "accent", { 0x7b2d26, 0xffa08f }, { 0x7b2d26, 0xffa08f }, 0.5, SOLID_LINE, NO_HATCH },
  [OX_STYLE_BAR] = { "bar", { 0x1b2730, 0xe8edf0 }, { 0x1b2730, 0xe8edf0 }, 0.18, SOLID_LINE, NO_HATCH },
  [OX_STYLE_MATCH] = { "match", { NONE, NONE }, { 0x1b2730, 0xe8edf0 }, 0.7, { 8, 3, 0.5, 3 }, NO_HATCH },
  [OX_STYLE_HERE]
  = { "here", { 0xe9e6dd, 0x333b40 }, { 0x1b2730, 0xe8edf0 }, 0.18, SOLID_LINE, 0.13, { 45, 1.2, FALSE } },
};

const OxStyleSpec *
ox_style_get (OxStyle style)
{
  g_return_val_if_fail (style < OX_N_STYLES, &styles[OX_STYLE_INK]);
  return &styles[style];
}

guint32
ox_palette_get_ground (OxPalette palette)
{
  return palette == OX_PALETTE_NIGHT ? 0x15191c : 0xffffff;
}

static double
luminance (guint32 colour)
{
  static const double share[3] = { 0.2126, 0.7152, 0.0722 };
  double sum = 0;
  for (int i = 0; i < 3; i++)
    {
      double c = ((colour >> (16 - 8 * i)) & 0xff) / 255.0;
      sum += share[i] * (c <= 0.04045 ? c / 12.92 : pow ((c + 0.055) / 1.055, 2.4));
    }
  return sum;
}

double
ox_colour_contrast (guint32 a, guint32 b)
{
  double la = luminance (a), lb = luminance (b);
  return (MAX (la, lb) + 0.05) / (MIN (la, lb) + 0.05);
}
