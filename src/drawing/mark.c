/* Oxturn: drawing/mark - the shapes of the marks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/mark.h"

static const OxMarkPart arrow[] = { { OX_PART_SOLID, 0, TRUE, 4, { { 0, 0 }, { -1, 0.3 }, { -0.78, 0 }, { -1, -0.3 } } } };
static const OxMarkPart tick[] = { { OX_PART_LINE, 0, FALSE, 2, { { -0.35, -0.35 }, { 0.35, 0.35 } } } };
static const OxMarkPart dot[] = { { OX_PART_SOLID, 0.5, TRUE, 1, { { 0, 0 } } } };
/* A drum seen from above with its inlet. */
static const OxMarkPart collector[] = { { OX_PART_GROUND, 0.5, TRUE, 1, { { 0, 0 } } },
                                        { OX_PART_LINE, 0.24, TRUE, 1, { { 0, 0 } } },
                                        { OX_PART_LINE, 0, FALSE, 2, { { 0.24, 0 }, { 0.5, 0 } } },
                                        { OX_PART_LINE, 0, FALSE, 2, { { -0.24, 0 }, { -0.5, 0 } } } };
static const OxMarkPart supply[]
    = { { OX_PART_GROUND, 0, TRUE, 4, { { -0.45, -0.45 }, { 0.45, -0.45 }, { 0.45, 0.45 }, { -0.45, 0.45 } } },
        { OX_PART_SOLID, 0, TRUE, 6, { { 0.1, 0.34 }, { -0.24, -0.04 }, { -0.02, -0.04 }, { -0.1, -0.34 }, { 0.24, 0.06 }, { 0.02, 0.06 } } } };
static const OxMarkPart first[] = { { OX_PART_LINE, 0, FALSE, 2, { { 0, 0 }, { 0, 1 } } },
                                    { OX_PART_SOLID, 0, TRUE, 4, { { 0, 1 }, { 0.72, 0.9 }, { 0.5, 0.72 }, { 0, 0.5 } } } };
static const OxMarkPart north[] = { { OX_PART_SOLID, 0, TRUE, 3, { { 0.5, 0 }, { -0.5, 0.24 }, { -0.3, 0 } } },
                                    { OX_PART_LINE, 0, TRUE, 3, { { 0.5, 0 }, { -0.5, -0.24 }, { -0.3, 0 } } } };
static const OxMarkPart caution[] = { { OX_PART_GROUND, 0, TRUE, 3, { { -0.5, -0.4 }, { 0.5, -0.4 }, { 0, 0.46 } } },
                                      { OX_PART_LINE, 0, FALSE, 2, { { 0, 0.18 }, { 0, -0.1 } } },
                                      { OX_PART_SOLID, 0.05, TRUE, 1, { { 0, -0.24 } } } };
static const OxMarkPart check[]
    = { { OX_PART_LINE, 0, FALSE, 2, { { -0.5, -0.5 }, { 0.5, 0.5 } } }, { OX_PART_LINE, 0, FALSE, 2, { { -0.5, 0.5 }, { 0.5, -0.5 } } } };
static const OxMarkPart furrow[]
    = { { OX_PART_LINE, 0, FALSE, 10,
          { { -0.5, 0.22 }, { 0.28, 0.22 }, { 0.39, 0.19 }, { 0.47, 0.11 }, { 0.5, 0 }, { 0.47, -0.11 }, { 0.39, -0.19 }, { 0.28, -0.22 },
            { 0, -0.22 }, { -0.3, -0.22 } } },
        { OX_PART_LINE, 0, FALSE, 2, { { -0.5, 0 }, { 0.24, 0 } } },
        { OX_PART_SOLID, 0, TRUE, 3, { { -0.52, -0.22 }, { -0.26, -0.1 }, { -0.26, -0.34 } } } };

#define PARTS(name) { name, G_N_ELEMENTS (name) }

static const struct
{
  const OxMarkPart *parts;
  guint n;
} marks[OX_N_MARKS] = {
  [OX_MARK_ARROW] = PARTS (arrow),         [OX_MARK_TICK] = PARTS (tick),     [OX_MARK_DOT] = PARTS (dot),
  [OX_MARK_COLLECTOR] = PARTS (collector), [OX_MARK_SUPPLY] = PARTS (supply), [OX_MARK_FIRST] = PARTS (first),
  [OX_MARK_NORTH] = PARTS (north),         [OX_MARK_CAUTION] = PARTS (caution), [OX_MARK_FURROW] = PARTS (furrow),
  [OX_MARK_CHECK] = PARTS (check),
};

const OxMarkPart *
ox_mark_get_parts (OxMarkKind kind, guint *n)
{
  g_return_val_if_fail (kind < OX_N_MARKS, NULL);
  *n = marks[kind].n;
  return marks[kind].parts;
}

OxPoint
ox_mark_place (const OxElement *element, OxPoint p, double mm)
{
  OxPoint turned = ox_point_turn (p, cos (element->mark.angle), sin (element->mark.angle));
  return ox_point_add (element->mark.at, ox_point_scale (turned, element->mark.size_mm * mm));
}
