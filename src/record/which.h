/* Oxturn: record/which - strips and edge areas by number, as a crew says them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *      7          one            1-40       a run, both ends in it
 *      -40        all up to it   60-        all from it on
 *      1-40, 52   several, parted by commas or blanks
 *
 * Edge areas the same with or without their letter: E1-E4, E7. A run may have a dash of any length.
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

#define OX_WHICH_ERROR (ox_which_error_quark ())
GQuark ox_which_error_quark (void);
typedef enum
{
  OX_WHICH_ERROR_SYNTAX, /* not numbers and runs as above */
  OX_WHICH_ERROR_RANGE   /* a number that the plan does not have; the message says which it has */
} OxWhichError;

/* ox_which_strips, ox_which_edges: numbers of @plan, from 1, ascending, none twice; Returns: (transfer full) (element-type guint) (nullable) */
GArray *ox_which_strips (const OxPlan *plan, const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GArray *ox_which_edges (const OxPlan *plan, const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_which_text: the other way round: "1-40, 52"; @letter stands before each number, "" for strips; (transfer full) */
char *ox_which_text (const guint *numbers, guint n, const char *letter) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
