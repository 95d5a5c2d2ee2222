# SPDX-License-Identifier: GPL-3.0-or-later
"""Hose and cord, recounted from the tables: ways along the floor, what is in reach, where further stations are proposed.

A way is found on a visibility graph of all corners of the floor that hoses lie on, by tests of whole lines against the floor; nothing is
kept back or looked at in a clever order.
"""
import heapq
import math

from shapely.geometry import LineString, Point
from shapely.ops import unary_union
from shapely.prepared import prep

from shapes import sides, to_floor, unit

GAP = 0.10         # m: a hose needs as much
SPAN = 0.60        # m: a pit that a hose still crosses
OFF_WALL = 0.45    # m: a station that is proposed stands no farther from a wall, a jamb or a solid
APART = 0.5        # m between the points of a strip that are looked at
CLOSE = 0.02       # m that ways may differ by
MOST_CORNERS = 700
KINDS = {'collector': ('station', 'hose_m'), 'supply': ('supply', 'cord_m')}


def resized(shape, by):
    """Grown or shrunk with sharp corners."""
    return shape.buffer(by, join_style=2, mitre_limit=20)


def hose_floor(tables):
    """Rooms, aprons and doorways less solids and wide pits; walls between rooms stay closed, narrow gaps too."""
    travel = unary_union(tables.shapes('travel'))
    wide = [pit for pit in tables.shapes('pit') if not resized(pit, -SPAN / 2).is_empty]
    blocked = unary_union(tables.shapes('solid') + wide)
    kept_back = unary_union(tables.shapes('room')).difference(travel).difference(blocked)
    kept_back = resized(resized(kept_back, -0.004), 0.004 + 1e-5)
    floor = unary_union([travel, kept_back]).difference(blocked)
    return resized(resized(floor, -GAP / 2), GAP / 2).intersection(floor)


class Ways:
    """Shortest ways along a floor."""

    def __init__(self, floor):
        self.floor, self.free = floor, prep(floor.buffer(0.002, join_style=2))
        self.corners = sorted({corner for side in sides(floor.simplify(0.0005)) for corner in side})
        self.links = {}

    def sees(self, a, b):
        """Whether the straight line from A to B stays on the floor."""
        return math.dist(a, b) < 1e-9 or self.free.covers(LineString([a, b]))

    def step_on(self, p):
        """A station in a wall is taken onto the floor beside it; None when it is too far off."""
        on_floor = self.floor.buffer(1e-6)
        if on_floor.contains(Point(p)):
            return p
        near = self.floor.exterior if self.floor.geom_type == 'Polygon' else self.floor
        q = near.interpolate(near.project(Point(p))) if near.geom_type != 'MultiPolygon' else None
        return (q.x, q.y) if q is not None and q.distance(Point(p)) <= 0.3 else None

    def linked(self, corner):
        """Corners seen from a corner, with how far off they are."""
        if corner not in self.links:
            self.links[corner] = [(math.dist(corner, other), other) for other in self.corners
                                  if other != corner and self.sees(corner, other)]
        return self.links[corner]

    def tree(self, root, limit):
        """How far each corner is from ROOT: (metres, corner), nearest first."""
        queue = [(math.dist(root, corner), corner) for corner in self.corners
                 if math.dist(root, corner) <= limit and self.sees(root, corner)]
        heapq.heapify(queue)
        done, found = set(), [(0.0, root)]
        while queue:
            length, corner = heapq.heappop(queue)
            if corner in done or length > limit:
                continue
            done.add(corner)
            found.append((length, corner))
            for step, other in self.linked(corner):
                if other not in done:
                    heapq.heappush(queue, (length + step, other))
        return found

    def distance(self, tree, p):
        """Metres from the root of a tree to P."""
        best = math.inf
        for length, corner in sorted((length + math.dist(corner, p), corner) for length, corner in tree):
            if length >= best:
                break
            if self.sees(corner, p):
                best = length
        return best

    def farthest(self, tree, strip):
        """Metres to the farthest of points along a strip, half a metre apart."""
        length, u = math.dist(strip.a, strip.b), unit(strip.a, strip.b)
        n = max(math.ceil(length / APART), 1)
        return max(self.distance(tree, to_floor(strip.a, u, length * k / n, 0)) for k in range(n + 1))


def slack(length):
    """What a hose of that length reaches."""
    return length - max(1.0, 0.05 * length)


def stations(floor):
    """8: whoever serves a strip reaches it, the way is as long as is said, and what no station of the job reaches is flagged."""
    tables = floor.tables
    ways = Ways(hose_floor(tables))
    if len(ways.corners) > MOST_CORNERS:
        return
    trees = {}
    for station in tables.stations:
        at = ways.step_on(station.at)
        trees[station.name] = ways.tree(at, slack(station.length) + 5) if at else []
    reached = {}
    for kind, (column, way) in KINDS.items():
        yield from served(floor, ways, trees, (kind, column, way), reached)
    for strip in floor.strips:
        flags = [reached[kind, strip.order] for kind in KINDS if (kind, strip.order) in reached]
        if flags and not any(flag is None for flag in flags) and ('out-of-reach' in strip.caution) != (False in flags):
            yield f'strip {strip.order}: caution "{strip.caution}" where reach is {flags}'
    for station in tables.stations:
        column, way = KINDS[station.kind.replace('proposed-', '')]
        mine = [strip for strip in floor.strips if getattr(strip, column) == station.name]
        far = max([getattr(strip, way) for strip in mine], default=0)
        if len(mine) != station.strips or abs(far - station.farthest) > 1e-5:
            yield f'station {station.name}: {station.strips} strips and {station.farthest} m, where strips have {len(mine)} and {far:.6f} m'
    count = sum('out-of-reach' in strip.caution for strip in floor.strips)
    if tables.out_of_reach != count:
        yield f'out_of_reach is {tables.out_of_reach} and {count} strips are flagged'


def served(floor, ways, trees, names, reached):
    """Of one kind. REACHED gets for each strip whether a station of the job reaches it, None where that is too close to say."""
    kind, column, way = names
    tables = floor.tables
    given = [s for s in tables.stations if s.kind == kind]
    by_name = {s.name: s for s in tables.stations}
    for strip in floor.strips:
        said, length = getattr(strip, column), getattr(strip, way)
        measured = {s.name: ways.farthest(trees[s.name], strip) for s in given if trees[s.name]}
        margins = [slack(by_name[name].length) - value for name, value in measured.items()]
        if given:
            best = max(margins, default=-math.inf)
            reached[kind, strip.order] = None if abs(best) < APART / 2 + CLOSE else best > 0
        if not said:
            if any(margin > APART / 2 + CLOSE for margin in margins):
                yield f'strip {strip.order}: no {kind}, though one reaches it'
            continue
        if said not in measured:
            measured[said] = ways.farthest(trees[said], strip)
        if not measured[said] - CLOSE <= length <= measured[said] + APART / 2 + CLOSE:
            yield f'strip {strip.order}: {length} m from {said}, measured {measured[said]:.3f} m'
        if length > slack(by_name[said].length) + CLOSE:
            yield f'strip {strip.order}: {length} m is out of reach of {said}'
        nearer = [name for name, value in measured.items() if by_name[name] in given and value + APART / 2 + CLOSE < length
                  and value + APART / 2 + CLOSE < slack(by_name[name].length)]
        if nearer:
            yield f'strip {strip.order}: {said} serves it at {length} m, {nearer[0]} is at {measured[nearer[0]]:.3f} m'


def proposed(floor):
    """9: proposed stations stand on floor, serve somebody, and are in nobody's way: by a wall, a jamb or a solid and in no lane, unless no such
    place reaches all that they serve."""
    main = prep(unary_union([cover for strip, cover in zip(floor.strips, floor.covers) if strip.kind == 'main']))
    tables = floor.tables
    ways = None
    for station in tables.stations:
        if not station.kind.startswith('proposed'):
            continue
        at = Point(station.at)
        if not floor.on_travel.covers(at):
            yield f'{station.name} stands off the floor at {station.at}'
        if station.strips == 0:
            yield f'{station.name} serves nothing'
        aside = floor.travel.boundary.distance(at) <= OFF_WALL and not main.covers(at)
        if aside:
            continue
        ways = ways or Ways(hose_floor(tables))
        if len(ways.corners) <= MOST_CORNERS and not needed(floor, ways, station, main):
            yield f'{station.name} stands in a lane or off the walls at {station.at}, where a place by a wall would do'


def needed(floor, ways, station, main):
    """Whether what a station in the way serves is out of reach of each single place by a wall, two metres apart and on sides of half a metre."""
    column = KINDS[station.kind.replace('proposed-', '')][0]
    mine = [strip for strip in floor.strips if getattr(strip, column) == station.name]
    for a, b in sides(floor.travel):
        length = math.dist(a, b)
        n = max(round(length / 2), 1)
        for p in [to_floor(a, unit(a, b), length * (k + 0.5) / n, 0.4) for k in range(n) if length >= 0.5]:
            if not floor.on_travel.covers(Point(p)) or main.covers(Point(p)):
                continue
            tree = ways.tree(p, slack(station.length))
            if all(ways.farthest(tree, strip) <= slack(station.length) - CLOSE for strip in mine):
                return False
    return True


HOSES = [('stations', stations), ('proposed', proposed)]
