# SPDX-License-Identifier: GPL-3.0-or-later
"""Geometry for the recount: rectangles in the frame of a strip, reach of a body, areas by Clipper."""
import math

import pyclipper
from shapely.geometry import MultiPoint, Polygon
from shapely.ops import unary_union

SCALE = 1e6  # Clipper counts in whole micrometres


def unit(a, b):
    """Direction from A to B."""
    length = math.hypot(b[0] - a[0], b[1] - a[1])
    return ((b[0] - a[0]) / length, (b[1] - a[1]) / length) if length > 0 else (1.0, 0.0)


def to_floor(origin, u, x, y):
    """The point at X along U and Y to its left, from ORIGIN."""
    return (origin[0] + x * u[0] - y * u[1], origin[1] + x * u[1] + y * u[0])


def to_frame(origin, u, p):
    """How far P lies along U and to its left, from ORIGIN."""
    dx, dy = p[0] - origin[0], p[1] - origin[1]
    return (dx * u[0] + dy * u[1], dy * u[0] - dx * u[1])


def rectangle(origin, u, x0, x1, y0, y1):
    """The rectangle from X0 to X1 along U and from Y0 to Y1 to its left."""
    return Polygon([to_floor(origin, u, x, y) for x, y in ((x0, y0), (x1, y0), (x1, y1), (x0, y1))])


def polygons(shape):
    """The polygons of any shape."""
    if shape.is_empty:
        return []
    if shape.geom_type == 'Polygon':
        return [shape]
    return [part for piece in getattr(shape, 'geoms', []) for part in polygons(piece)]


def rings(shape):
    """All rings of a shape for Clipper."""
    found = []
    for polygon in polygons(shape):
        for ring in [polygon.exterior, *polygon.interiors]:
            found.append([(round(x * SCALE), round(y * SCALE)) for x, y in list(ring.coords)[:-1]])
    return found


class Clip:
    """A floor as Clipper keeps it."""

    def __init__(self, paths):
        self.paths = paths

    @staticmethod
    def union(shapes):
        """Union of shapes: each is united by itself first, so that holes stay holes."""
        total = []
        for shape in shapes:
            total += Clip.run(rings(shape), [], pyclipper.CT_UNION, pyclipper.PFT_EVENODD)
        return Clip(Clip.run(total, [], pyclipper.CT_UNION, pyclipper.PFT_NONZERO))

    @staticmethod
    def run(subject, clip, kind, fill):
        """One operation of Clipper."""
        if not subject:
            return []
        tool = pyclipper.Pyclipper()
        tool.AddPaths(subject, pyclipper.PT_SUBJECT, True)
        if clip:
            tool.AddPaths(clip, pyclipper.PT_CLIP, True)
        return tool.Execute(kind, fill, fill)

    def less(self, other):
        """This floor without the other."""
        return Clip(Clip.run(self.paths, other.paths, pyclipper.CT_DIFFERENCE, pyclipper.PFT_NONZERO))

    def within(self, other):
        """What both have."""
        if not other.paths:
            return Clip([])
        return Clip(Clip.run(self.paths, other.paths, pyclipper.CT_INTERSECTION, pyclipper.PFT_NONZERO))

    def area(self):
        """Square metres."""
        return sum(pyclipper.Area(path) for path in self.paths) / SCALE ** 2


def sides(shape):
    """All sides of the outline of a shape."""
    for polygon in polygons(shape):
        for ring in [polygon.exterior, *polygon.interiors]:
            points = list(ring.coords)
            yield from zip(points, points[1:])


def eroded(shape, u, body):
    """Places of the origin at which the rectangle BODY = (x0, x1, y0, y1), turned to U, lies within SHAPE."""
    corners = [to_floor((0, 0), u, x, y) for x in body[:2] for y in body[2:]]
    blocked = [MultiPoint([(p[0] - c[0], p[1] - c[1]) for p in side for c in corners]).convex_hull for side in sides(shape)]
    return shape.difference(unary_union(blocked)) if blocked else shape


def dilated(shape, u, body):
    """All floor that the rectangle BODY, turned to U, touches with its origin in SHAPE."""
    corners = [to_floor((0, 0), u, x, y) for x in body[:2] for y in body[2:]]
    swept = [MultiPoint([(p[0] + c[0], p[1] + c[1]) for p in side for c in corners]).convex_hull for side in sides(shape)]
    return unary_union([shape, *swept]) if swept else shape


def headings(shape):
    """Directions of walls, across them, and a fan of 15 degrees, in whole thousandths of a degree."""
    found = {i * 15000 for i in range(24)}
    for a, b in sides(shape):
        if math.dist(a, b) >= 0.3:
            base = round(math.degrees(math.atan2(b[1] - a[1], b[0] - a[0])) * 1000)
            if all(min((base - other) % 360000, (other - base) % 360000) > 100 for other in found):
                found |= {(base + quarter * 90000) % 360000 for quarter in range(4)}
    return sorted(found)


class Grid:
    """Which shapes lie near a box."""

    def __init__(self, shapes, size=2.0):
        self.size, self.shapes, self.cells = size, shapes, {}
        for index, shape in enumerate(shapes):
            for cell in self.range(shape.bounds):
                self.cells.setdefault(cell, []).append(index)

    def range(self, bounds):
        """Cells of a box."""
        x0, y0, x1, y1 = (math.floor(v / self.size) for v in bounds)
        return [(x, y) for x in range(x0, x1 + 1) for y in range(y0, y1 + 1)]

    def near(self, bounds):
        """Indices of the shapes whose boxes may touch, ascending."""
        return sorted({i for cell in self.range(bounds) for i in self.cells.get(cell, [])})
