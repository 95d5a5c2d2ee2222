/* Oxturn: sheets/tiles - large pages parted over the paper of an office printer, to be cut and glued together.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each tile shows a piece of the page at true scale; neighbours share a strip of paper, with register marks in its middle that come to
 * lie on one another. Rows are letters from above, columns numbers from the left: "B2".
 *
 *      +---------------------+   . margin that printers leave white
 *      | +-----------------+ |
 *      | |  piece          | |   below: name of the tile, a line of 100 mm, the whole with this
 *      | +-----------------+ |   tile filled
 *      |  B2  |---100 mm--| #|
 *      +---------------------+
 */
#pragma once
#include "drawing/page.h"
#include "sheets/paper.h"
G_BEGIN_DECLS

#define OX_TILES_OVERLAP_MM 10.0
#define OX_TILES_OVERLAP_MIN_MM 5.0
#define OX_TILES_OVERLAP_MAX_MM 25.0

/* ox_tiles_count:
 * @whole, @piece: lengths along one side, mm; @overlap < @piece
 *
 *      n = ceil ((W - o) / (w - o))        1 when W <= w
 *
 * Example: 841 mm in pieces of 190 mm with 10 mm of overlap are 5. */
guint ox_tiles_count (double whole, double piece, double overlap);

/* ox_tiles_new:
 * @set: of any papers; a page that fits on @paper as it is stays whole
 * @overlap_mm: OX_TILES_OVERLAP_MIN_MM to OX_TILES_OVERLAP_MAX_MM
 *
 * Upright or landscape, whichever takes fewer tiles. Tiles with nothing on them are left out and named on the others.
 * Returns: (transfer full) */
OxPageSet *ox_tiles_new (const OxPageSet *set, const OxPaper *paper, double overlap_mm) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
