#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Recounts areas with the Clipper library, which shares no code with ours: recount.py PRINT-REGIONS CASES [--seed SEED].

PRINT-REGIONS prints regions and what was made of them. Each is made again here, in whole numbers of 1e-7 m, and the areas
are compared.
"""
import collections
import math
import re
import subprocess
import sys

import pyclipper as clipper

STEPS = 1e7  # a metre; floors within 100 m keep to the numbers that Clipper is quick and safe with
AREA_TOLERANCE = 1e-4  # m2
ARC = 2e-6  # how far Clipper's arcs may lie from the circle, m


def paths(wkt):
    """Reads the rings of a MULTIPOLYGON; an outer ring turns left, a hole right."""
    return [[[round(float(number) * STEPS) for number in point.split()] for point in ring.split(',')[:-1]]
            for ring in re.findall(r'\(([^()]+)\)', wkt)]


def area(rings):
    """Gives the area in m2; holes count negative."""
    return sum(clipper.Area(ring) for ring in rings) / STEPS ** 2


def overlay(kind, subject, clip):
    """Joins, cuts or subtracts areas given as rings, by the rule that what is wound about at all is inside."""
    engine = clipper.Pyclipper()
    for rings, role in ((subject, clipper.PT_SUBJECT), (clip, clipper.PT_CLIP)):
        for ring in rings:
            # Flat ones are refused and do not count.
            try:
                engine.AddPath(ring, role, True)
            except clipper.ClipperException:
                pass
    return engine.Execute(kind, clipper.PFT_NONZERO, clipper.PFT_NONZERO)


def offset(rings, distance):
    """Grows or shrinks with round corners."""
    engine = clipper.PyclipperOffset(2.0, ARC * STEPS)
    engine.AddPaths(rings, clipper.JT_ROUND, clipper.ET_CLOSEDPOLYGON)
    return engine.Execute(distance * STEPS)


def leftward(ring):
    """Gives the ring with its inside on the left."""
    return ring if clipper.Orientation(ring) else ring[::-1]


def swept(rings, extents, angle, sign):
    """Yields all that the rectangle passes over with its origin on the outlines, side by side: it stands at a corner, and
    each of its sides is drawn along the side of the outline."""
    rear, front, right, left = extents
    c, s = math.cos(angle) * sign * STEPS, math.sin(angle) * sign * STEPS
    corners = [(x * c - y * s, x * s + y * c) for x, y in ((-rear, -right), (front, -right), (front, left), (-rear, left))]
    for ring in rings:
        for a, b in zip(ring, ring[1:] + ring[:1]):
            at_a = [[round(a[0] + x), round(a[1] + y)] for x, y in corners]
            at_b = [[round(b[0] + x), round(b[1] + y)] for x, y in corners]
            yield [leftward(at_a)] + [leftward([at_a[i - 1], at_a[i], at_b[i], at_b[i - 1]]) for i in range(4)]


def sweep(kind, rings, numbers, sign):
    """Takes away or adds what is swept, one side at a time: Clipper gives up where hundreds of sides nearly coincide."""
    done = rings
    for pieces in swept(rings, numbers[:4], numbers[4], sign):
        done = overlay(kind, done, pieces)
    return done


def again(name, numbers, a, b):
    """Makes the result again."""
    if name == 'offset':
        return offset(a, numbers[0])
    if name == 'erode':
        return sweep(clipper.CT_DIFFERENCE, a, numbers, -1)
    if name == 'dilate':
        return sweep(clipper.CT_UNION, a, numbers, 1)
    kinds = {'union': clipper.CT_UNION, 'intersection': clipper.CT_INTERSECTION, 'difference': clipper.CT_DIFFERENCE}
    return overlay(kinds[name], a, b)


def tolerance(name, numbers, rings):
    """Gives how far the areas may differ: an arc of ours, 64 segments a turn, lacks up to 0.17 % of its sector, and each
    corner has one of half a turn at most."""
    if name != 'offset':
        return AREA_TOLERANCE
    corners = sum(len(ring) for ring in rings)
    return AREA_TOLERANCE + corners * 0.0017 * math.pi / 2 * numbers[0] ** 2


def main(program, cases, *options):
    printed = subprocess.run([program, cases, *options], check=True, capture_output=True, text=True).stdout
    counts, worst, bad = collections.Counter(), collections.Counter(), collections.defaultdict(list)
    for line in printed.splitlines():
        if '\t' not in line:
            print('#', line.lstrip('# '))
            continue
        name, *fields = line.split('\t')
        numbers = [float(number) for number in fields[:5]]
        a, b, result = (paths(wkt) for wkt in fields[5:])
        difference = abs(area(result) - area(again(name, numbers, a, b)))
        counts[name] += 1
        worst[name] = max(worst[name], difference)
        if difference > tolerance(name, numbers, a):
            bad[name].append(f'{difference} m2 apart: {line}')
    print(f'1..{len(counts)}')
    for i, name in enumerate(counts, 1):
        print(f'{"not ok" if bad[name] else "ok"} {i} /geometry/recount/{name}')
        print(f'# {counts[name]} recounted, at most {worst[name]:.2e} m2 apart')
        for problem in bad[name][:3]:
            print('#', problem)
    return 1 if any(bad.values()) or len(counts) != 6 else 0


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
