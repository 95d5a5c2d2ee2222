/* Oxturn: sheets/labels - where labels stand on paper, so that no two overlap.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Labels are boxes of fixed size on paper that hold their place on the floor. As the scale grows places move apart and boxes do not grow,
 * so labels that are clear of each other at one scale are clear at every larger one.
 */
#pragma once
#include "geometry/point.h"
G_BEGIN_DECLS

#define OX_LEADER_DOT_MM 0.8 /* where a leader begins */

typedef struct
{
  OxPoint at;      /* m of floor; (0, 0) of the box's own frame, which holds it */
  double angle;    /* radians, of the box's own x */
  OxBox mm;        /* the box in its own frame, mm of paper */
} OxLabelBox;

typedef struct _OxLabels OxLabels;

OxLabels *ox_labels_new (double mm_per_m) G_GNUC_WARN_UNUSED_RESULT;
void ox_labels_free (OxLabels *labels);

/* ox_labels_set_scale: the same labels at a larger scale */
void ox_labels_set_scale (OxLabels *labels, double mm_per_m);

double ox_labels_get_scale (const OxLabels *labels); /* mm a metre */

/* ox_labels_is_free: whether @box is clear of all labels taken */
gboolean ox_labels_is_free (const OxLabels *labels, const OxLabelBox *box);

/* ox_labels_set_bounds: @box, m of floor, (nullable): what reaches beyond it is not free from now on; NULL: all is */
void ox_labels_set_bounds (OxLabels *labels, const OxBox *box);

/* ox_labels_take: takes the place whether it is free or not */
void ox_labels_take (OxLabels *labels, const OxLabelBox *box);

/* ox_labels_get_count: places taken so far */
guint ox_labels_get_count (const OxLabels *labels);

/* ox_labels_keep: gives back all places but the first @n taken */
void ox_labels_keep (OxLabels *labels, guint n);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxLabels, ox_labels_free)
G_END_DECLS
