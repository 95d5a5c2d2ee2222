/* Oxturn: drawing/text - how wide a text is, without a screen or a font library.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Texts are set in DejaVu Sans, regular or bold. Sizes are heights of capitals in mm of the series 1.8 2.5 3.5 5 7 10 mm (laid out after
 * ISO 3098); the font size is height / OX_TEXT_CAP_SHARE. Widths are sums of the font's advance widths (both faces, 2048 units an em),
 * so that a layout made here holds on screen, in PDF and in SVG.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

#define OX_TEXT_FAMILY "DejaVu Sans"
#define OX_TEXT_CAP_SHARE (1493.0 / 2048.0) /* height of capitals in em */
#define OX_TEXT_DROP_SHARE 0.24             /* how far g, p, y reach below the base line, in em */
#define OX_TEXT_MIN_MM 1.8

/* ox_text_width: in mm of the single line @text at @height_mm of capitals; @bold face */
double ox_text_width (const char *text, double height_mm, gboolean bold);

/* ox_text_wrap:
 * @width_mm: > 0
 *
 * Breaks at blanks and at \n, but not between a figure and its unit, where both fit; a single word that is too wide is broken where it must.
 * Returns: (transfer full): NULL-ended array of lines, none wider than @width_mm; one empty line for the empty text */
char **ox_text_wrap (const char *text, double height_mm, gboolean bold, double width_mm) G_GNUC_WARN_UNUSED_RESULT;

/* ox_text_longest_word: the width, mm, below which ox_text_wrap() has to break a word of @text, or part a figure from its unit */
double ox_text_longest_word (const char *text, double height_mm, gboolean bold);

/* ox_text_fit: @text, or its beginning and an ellipsis, or nothing, not wider than @width_mm; (transfer full) */
char *ox_text_fit (const char *text, double height_mm, gboolean bold, double width_mm) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
