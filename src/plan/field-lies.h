/* Oxturn: plan/field-lies - what it costs to work one field before another, since the hose of the one lies on the floor of the other.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/leg.h"
#include "plan/lies.h"
G_BEGIN_DECLS

typedef struct _OxFieldLies OxFieldLies;

/* ox_field_lies_new:
 * @lies: of all strips, borrowed
 * @legs: (element-type OxLeg): with their strips, whose indices follow each other
 *
 * Returns: (transfer full): knows the legs, and no fields yet */
OxFieldLies *ox_field_lies_new (const OxLies *lies, const GArray *legs) G_GNUC_WARN_UNUSED_RESULT;
void ox_field_lies_free (OxFieldLies *lies);

/* ox_field_lies_split:
 * @from, @n: legs of a field that are worked one after the other
 *
 * Where a field is best parted, so that both parts are worked outward, the first from its end to its start:
 *
 *      from            k            from + n
 *       <--------------|---------------->
 *                   station
 *
 * Returns: how many legs the first part has; 0 or @n where it should stay whole */
guint ox_field_lies_split (const OxFieldLies *lies, const GArray *legs, guint from, guint n);

/* ox_field_lies_own: seconds that hose and cord cost within the legs @from to @from + @n, worked in the order of @places: a number for each of them */
double ox_field_lies_own (const OxFieldLies *lies, guint from, guint n, const guint *places);

/* ox_field_lies_set_fields: @field_of: number of its field, under @n, for each leg */
void ox_field_lies_set_fields (OxFieldLies *lies, const guint *field_of, guint n);

/* ox_field_lies_before: seconds that it costs to work field @a before field @b */
double ox_field_lies_before (const OxFieldLies *lies, guint a, guint b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxFieldLies, ox_field_lies_free)
G_END_DECLS
