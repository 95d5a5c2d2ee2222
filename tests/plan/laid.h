/* Oxturn: tests/plan/laid - a room with strips laid by hand or by the planner's own steps.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/layout.h"
G_BEGIN_DECLS

typedef struct
{
  OxJob *job;
  OxFloor *floor;
  OxWays *ways;
  OxLayout *layout; /* of the first room, main direction along +x */
} Laid;

Laid *laid_new (OxJob *job, OxWork work); /* @job: (transfer full) */
void laid_free (Laid *laid);

/* laid_along: the same with another main direction; @angle in radians */
Laid *laid_along (OxJob *job, double angle, OxWork work);

/* laid_across: index of the frame along +y: a point (x, y) of the floor is (y, -x) there */
guint laid_across (Laid *laid);

/* laid_add: adds a draft; its lane is made and its span looked up */
void laid_add (Laid *laid, OxDraft draft);

/* laid_draft: draft @i, borrowed until the next change; laid_metres: length of all drafts */
const OxDraft *laid_draft (const Laid *laid, guint i);
double laid_metres (const Laid *laid);

/* laid_open: m2 of the target within @box that no draft covers, measured exactly */
double laid_open (const Laid *laid, OxBox box);

/* laid_expect_fit: every draft is long enough and lies where its heading lets it lie */
void laid_expect_fit (const Laid *laid);

#define LAID_EVERYWHERE ((OxBox){ -100, -100, 100, 100 })

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Laid, laid_free)
G_END_DECLS
