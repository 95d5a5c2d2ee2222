/* Oxturn: file/job-words - names that reader and writer of job files share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-words.h"

#define TEXT(member)                                                                                                   \
  {                                                                                                                    \
#member, G_STRUCT_OFFSET(OxTexts, member)                                                                          \
  }

const char *const ox_words_units[] = { "metres", "millimetres", "feet", NULL };
const char *const ox_words_side[] = { "wall", "open", "drop", NULL };
const char *const ox_words_shape[] = { "rectangle", "circle", "polygon", NULL };
const char *const ox_words_obstacle[] = { "solid", "pit", "masked", NULL };
const char *const ox_words_cost[] = { "labour-hour", "edge-hour", "machine-hour", "abrasive-kg", "dust-drum",
                                      "wear-hour",   "m2",        "fixed",        "edge-m",      NULL };
G_STATIC_ASSERT (G_N_ELEMENTS (ox_words_cost) == OX_COST_EDGE_METRE + 2);
const char *const ox_words_day[] = { "mon", "tue", "wed", "thu", "fri", "sat", "sun", NULL };
const char *const ox_words_scope_list[] = { "inclusion", "exclusion", "assumption", NULL };
const char *const ox_words_orientation[] = { "auto", "portrait", "landscape", NULL };
const char *const ox_words_traced[] = { "png", "jpeg", "svg", "pdf", NULL };
const char *const ox_words_station[] = { "collector", "supply", NULL };
const char *const ox_words_done[] = { "main", "crosswise", NULL };

const OxTextField ox_text_fields[OX_TEXT_FIELDS] = {
  TEXT (title),  TEXT (client),   TEXT (site), TEXT (author), TEXT (company),
  TEXT (number), TEXT (revision), TEXT (date), TEXT (status), TEXT (notes),
};
