# SPDX-License-Identifier: GPL-3.0-or-later
"""The rules that every plan keeps, checked from its tables alone.

Each rule takes a Floor and yields the breaches it finds, one sentence each.
"""
import math

from shapely.geometry import LineString, Point
from shapely.ops import unary_union
from shapely.prepared import prep

from shapes import Clip, Grid, dilated, eroded, headings, polygons, rectangle, to_floor, to_frame, unit

BODY = 0.002      # m: how far a body may seem to leave the floor
ACCOUNT = 1e-4    # share of the target that may be out of balance
OVERLAP = 0.0005  # m
GRID = 1e-4       # m that stored coordinates are rounded to
NARROW = 0.6      # m: mean width up to which edge work can be measured by its length (common practice, no source)
STEER = 10.5      # degrees a rolling machine is steered by without a swing


class Floor:
    """Tables with the shapes that several rules use."""

    def __init__(self, tables):
        self.tables, self.strips, self.moves = tables, tables.strips, tables.moves
        self.m, self.rates, self.totals = tables.machine, tables.rates, tables.totals
        self.gap = self.m['wall_gap_m']
        self.target = unary_union(tables.shapes('target'))
        self.travel = unary_union(tables.shapes('travel'))
        self.on_travel, self.on_target = prep(self.travel), prep(self.target)
        half, w = self.m['blast_length_m'] / 2, self.m['blast_width_m']
        self.covers = [rectangle(s.a, unit(s.a, s.b), -half, math.dist(s.a, s.b) + half, -w / 2, w / 2)
                       for s in self.strips]
        self.grid = Grid(self.covers)
        self.areas = [(coats, speed, shape) for kind, coats, speed, shape in tables.asked if kind == 'condition']
        self.most = max([coats for _, coats, _, _ in tables.asked] + [1])
        self.asking = {coat: self.asking_floor(coat) for coat in range(1, self.most + 1)}
        self.on_asking = {coat: prep(shape) for coat, shape in self.asking.items()}

    def asking_floor(self, coat):
        """Floor of the target that asks for so many coats or more: as condition areas say, the most where they overlap, else rooms."""
        more = unary_union([shape for coats, _, shape in self.areas if coats >= coat])
        fewer = unary_union([shape for coats, _, shape in self.areas if 0 < coats < coat]).difference(more)
        rooms = unary_union([shape for kind, coats, _, shape in self.tables.asked if kind == 'room' and coats >= coat])
        if coat == 1:
            return self.target
        return rooms.difference(fewer).union(more).intersection(self.target)

    def of_coat(self, coat):
        """Indices of the strips of a coat."""
        return [index for index, strip in enumerate(self.strips) if strip.coat == coat]

    def speed_at(self, point):
        """The walking speed asked for at a point, None within 20 mm of where it changes."""
        inside = [(speed, shape) for _, speed, shape in self.areas if speed and shape.distance(Point(point)) == 0]
        if any(speed and shape.boundary.distance(Point(point)) < 0.02 for _, speed, shape in self.areas):
            return None
        return min([speed for speed, _ in inside], default=self.rates['travel_speed_m_per_min'])


def form(floor):
    """The tables have the columns, kinds and line ends that were agreed on."""
    yield from floor.tables.problems
    for strip, cover in zip(floor.strips, floor.covers):
        if strip.shape.symmetric_difference(cover).area > 2e-4 * (strip.length + 1):
            yield f'strip {strip.order}: its outline is not what it covers'


def body(floor):
    """1: swept bodies lie in travel."""
    m = floor.m
    for strip in floor.strips:
        swept = rectangle(strip.a, unit(strip.a, strip.b), BODY - m['rear_m'],
                          math.dist(strip.a, strip.b) + m['front_m'] + floor.gap - BODY,
                          BODY - m['right_m'] - floor.gap, m['left_m'] + floor.gap - BODY)
        if not floor.on_travel.contains(swept):
            yield f'strip {strip.order}: {swept.difference(floor.travel).area:.6f} m2 of its body are off the floor'


def leg_clear(floor, a, b):
    """Whether a body fits along one leg: led by its middle, or by the pattern with either side to the left."""
    left, right = floor.m['left_m'], floor.m['right_m']
    half, u, length = (left + right) / 2, unit(a, b), math.dist(a, b)
    trim = min(BODY, length / 4)
    return any(floor.on_travel.contains(rectangle(a, u, trim, length - trim, BODY - r, g - BODY))
               for r, g in ((half, half), (right, left), (left, right)))


def moves(floor):
    """2: swings have room, paths lead from stop to start and are clear for the body."""
    left, right, walk = floor.m['left_m'], floor.m['right_m'], floor.rates['walk_speed_m_per_min']
    for move, before, after in zip(floor.moves, floor.strips, floor.strips[1:]):
        path, name = move.path, f'move {move.order}'
        minutes = move.length / walk + (floor.rates['swing_s'] / 60 if move.turn else 0)
        if abs(minutes - move.minutes) > 2e-5:
            yield f'{name}: {move.minutes} minutes for {minutes:.6f}'
        change = abs((after.heading_deg - before.heading_deg + 180) % 360 - 180)
        if path and change > STEER and not move.turn:
            yield f'{name}: the heading changes by {change:.1f} degrees without a turn'
        if move.kind == 'swing' and not move.turn:
            yield f'{name}: a swing without a turning point'
        if move.turn and not floor.on_travel.contains(Point(move.turn).buffer(floor.m['turn_radius_m'] - BODY, 64)):
            yield f'{name}: no room to swing at {move.turn}'
        if not path:
            continue
        line = LineString(path)
        if math.dist(path[0], before.b) > 2 * GRID or math.dist(path[-1], after.a) > 2 * GRID:
            yield f'{name}: the path does not lead from stop to start'
        if abs(line.length - move.length) > 1e-3:
            yield f'{name}: path of {line.length:.4f} m said to be {move.length} m'
        if move.turn and line.distance(Point(move.turn)) > BODY:
            yield f'{name}: the turning point is off the path'
        for a, b in zip(path, path[1:]):
            if math.dist(a, b) > GRID and not leg_clear(floor, a, b):
                yield f'{name}: the leg from {a} to {b} is not clear'
        for bend in path[1:-1]:
            if not floor.on_travel.contains(Point(bend).buffer((left + right) / 2 - BODY, 32)):
                yield f'{name}: the bend at {bend} is not clear'


def account(floor):
    """3: target = blasted + edge work, recounted by Clipper; nothing is blasted outside the target."""
    tables = floor.tables
    allowed = ACCOUNT * max(floor.target.area, 1)
    rooms = Clip.union(tables.shapes('room'))
    left_out = Clip.union(tables.shapes('solid', 'pit', 'masked', 'excluded'))
    target = rooms.less(left_out)
    stored = Clip.union([floor.target])
    blasted = target
    for coat, asking in floor.asking.items():
        missed = Clip.union([asking]).less(Clip.union([floor.covers[i] for i in floor.of_coat(coat)]))
        blasted = blasted.less(missed)
    edge = Clip.union([e.shape for e in tables.edges])
    checks = [
        (target.less(stored).area() + stored.less(target).area(), 'of target differ from rooms less what is left out'),
        (blasted.within(edge).area(), 'are both blasted and edge work'),
        (target.less(blasted).less(edge).area(), 'are neither blasted nor edge work'),
        (edge.less(target).area(), 'of edge work lie outside the target'),
        (sum(e.shape.area for e in tables.edges) - edge.area(), 'of edge work are counted twice'),
        (sum(max(abs(e.shape.area - e.area) - 1e-4, 0) for e in tables.edges + tables.zones), 'of areas differ from their outline'),
        (Clip.union([z.shape for z in tables.zones]).less(target).area(), 'of turnaround zones lie outside the target'),
        (abs(floor.totals['target_m2'] - target.area()), 'target in the totals'),
        (abs(floor.totals['blasted_m2'] - blasted.area()), 'blasted in the totals'),
        (abs(floor.totals['edge_m2'] - edge.area()), 'edge work in the totals'),
        (abs(floor.totals['coats_m2'] - coats_area(floor)), 'covered by coats in the totals'),
    ]
    for area, what in checks:
        if area > allowed:
            yield f'{area:.6f} m2 {what}'
    for strip in floor.strips:
        half, u = floor.m['blast_length_m'] / 2 - BODY, unit(strip.a, strip.b)
        across = floor.m['blast_width_m'] / 2 - BODY
        if strip.coat not in floor.on_asking:
            yield f'strip {strip.order} is of coat {strip.coat}, which nothing asks for'
        elif not floor.on_asking[strip.coat].contains(rectangle(strip.a, u, -half, math.dist(strip.a, strip.b) + half, -across, across)):
            yield f'strip {strip.order} blasts outside the target of its coat'


def coats_area(floor):
    """Square metres of target that strips cover, once a coat."""
    target = Clip.union([floor.target])
    return sum(Clip.union([floor.covers[i] for i in floor.of_coat(coat)]).within(target).area() for coat in floor.asking)


def neighbours(floor, index):
    """Parallel strips of the same room and coat left and right of a strip, nearest first: (offset, x0, x1, strip)."""
    strip, w, half = floor.strips[index], floor.m['blast_width_m'], floor.m['blast_length_m'] / 2
    u, length = unit(strip.a, strip.b), math.dist(strip.a, strip.b)
    around = rectangle(strip.a, u, -half, length + half, -2 * w, 2 * w)
    for other_index in floor.grid.near(around.bounds):
        other = floor.strips[other_index]
        v = unit(other.a, other.b)
        if (other_index == index or (other.room, other.coat) != (strip.room, strip.coat)
                or abs(u[0] * v[1] - u[1] * v[0]) > math.sin(math.radians(0.1))):
            continue
        ends = sorted([to_frame(strip.a, u, to_floor(other.a, v, -half, 0)), to_frame(strip.a, u, to_floor(other.b, v, half, 0))])
        x0, x1 = max(ends[0][0], -half), min(ends[1][0], length + half)
        slope = (ends[1][1] - ends[0][1]) / (ends[1][0] - ends[0][0])
        y = ends[0][1] + slope * ((x0 + x1) / 2 - ends[0][0])
        if x1 - x0 > 2 * half and 0.001 < abs(y) < 2 * w:
            yield abs(y), x0, x1, y > 0, other


def overlap(floor):
    """4: neighbours overlap enough; main lanes of a room are evenly spaced."""
    w, least = floor.m['blast_width_m'], floor.m['min_overlap_m']
    for index, strip in enumerate(floor.strips):
        for side in (True, False):
            hidden = []
            for y, x0, x1, left, other in sorted(neighbours(floor, index), key=lambda n: (n[0], n[4].order)):
                if left is not side:
                    continue
                seen = [(x0, x1)]
                for h0, h1 in hidden:
                    seen = [piece for s0, s1 in seen for piece in ((s0, min(s1, h0)), (max(s0, h1), s1)) if piece[0] < piece[1]]
                hidden.append((x0, x1))
                wide = any(s1 - s0 > floor.m['blast_length_m'] for s0, s1 in seen)
                if wide and 0 <= w - y < least - OVERLAP and other.order > strip.order:
                    yield f'strips {strip.order} and {other.order} overlap by {w - y:.4f} m'
    yield from even_grid(floor, w - least)


def even_grid(floor, pitch):
    """Offsets of the main strips of each room are whole numbers of one spacing, and that spacing is the widest that will do."""
    for room, coat in sorted({(s.room, s.coat) for s in floor.strips}):
        main = [s for s in floor.strips if (s.room, s.coat) == (room, coat) and s.kind == 'main']
        if not main:
            continue
        longest = max(main, key=lambda s: s.length)
        u = unit(longest.a, longest.b)
        offsets = sorted(to_frame(longest.a, u, ((s.a[0] + s.b[0]) / 2, (s.a[1] + s.b[1]) / 2))[1] for s in main)
        for strip in main:
            v = unit(strip.a, strip.b)
            if abs(u[0] * v[1] - u[1] * v[0]) > math.sin(math.radians(0.1)):
                yield f'strip {strip.order} is a main strip and lies across the main direction of {room}'
        lanes = [offsets[0]]
        lanes += [y for y, previous in zip(offsets[1:], offsets) if y - previous > 0.002]
        steps = [b - a for a, b in zip(lanes, lanes[1:])]
        if not steps:
            continue
        spacing = (lanes[-1] - lanes[0]) / max(round((lanes[-1] - lanes[0]) / min(steps)), 1)
        if spacing > pitch + OVERLAP:
            yield f'{room}: lanes are {spacing:.4f} m apart, {pitch:.4f} m is the most'
        for y in lanes:
            if abs((y - lanes[0]) / spacing - round((y - lanes[0]) / spacing)) * spacing > 0.002:
                yield f'{room}: a lane lies off the even grid of {spacing:.4f} m by more than 2 mm'


def slots(floor):
    """5: no thin slot of floor is left between strips of one room and coat."""
    for coat in floor.asking:
        yield from slots_of(floor, coat)


def slots_of(floor, coat):
    """The slots of one coat."""
    w = floor.m['blast_width_m']
    rest = floor.asking[coat].difference(unary_union([floor.covers[i] for i in floor.of_coat(coat)]))
    thin = rest.difference(rest.buffer(-w / 8, join_style=2).buffer(w / 8 + 1e-4, join_style=2))
    for part in polygons(thin):
        if part.area < 1e-4:
            continue
        corners = list(part.minimum_rotated_rectangle.exterior.coords)
        a, b, c = corners[:3]
        if math.dist(a, b) < math.dist(b, c):
            a, b, c = b, c, corners[3]
        length, width = math.dist(a, b), math.dist(b, c)
        if length <= 0.3 or width >= w / 4:
            continue
        u = unit(a, b)
        across = 1 if to_frame(a, u, c)[1] > 0 else -1
        beside = [owners(floor, coat, u, [to_floor(a, u, length * k / 10, y) for k in range(1, 10)])
                  for y in (-0.003 * across, (width + 0.003) * across)]
        if beside[0] & beside[1]:
            yield f'a slot of {width:.4f} x {length:.3f} m at {part.centroid.x:.3f}, {part.centroid.y:.3f}'


def sine(u, strip):
    """Sine of the angle between a direction and a strip."""
    v = unit(strip.a, strip.b)
    return u[0] * v[1] - u[1] * v[0]


def owners(floor, coat, u, points):
    """Rooms of strips of a coat along U that cover nearly all of the points."""
    rooms = {}
    for p in points:
        here = {floor.strips[i].room for i in floor.grid.near((p[0], p[1], p[0], p[1]))
                if floor.strips[i].coat == coat and floor.covers[i].contains(Point(p)) and abs(sine(u, floor.strips[i])) < 0.035}
        for room in here:
            rooms[room] = rooms.get(room, 0) + 1
    return {room for room, n in rooms.items() if n >= len(points) - 1}


def joins(floor, index):
    """A strip between two that without it would not overlap as they must, though they cover all of it."""
    w, least, blast_length = floor.m['blast_width_m'], floor.m['min_overlap_m'], floor.m['blast_length_m']
    sides = {True: [], False: []}
    for y, x0, x1, left, _ in neighbours(floor, index):
        sides[left].append((y, x0, x1))
    return any(w - least + OVERLAP < a + b < 1.25 * w and min(a1, b1) - max(a0, b0) > blast_length
               for a, a0, a1 in sides[True] for b, b0, b1 in sides[False])


def short(floor):
    """6: no strip is too short, none is laid for nothing."""
    for index, strip in enumerate(floor.strips):
        if math.dist(strip.a, strip.b) < floor.m['min_strip_m'] - GRID:
            yield f'strip {strip.order} is {math.dist(strip.a, strip.b):.4f} m long'
        cover = floor.covers[index]
        others = [floor.covers[i] for i in floor.grid.near(cover.bounds)
                  if i != index and floor.strips[i].coat == strip.coat]
        fresh = cover.difference(unary_union(others)).intersection(floor.target).area if others else cover.area
        if fresh < 0.02 * cover.area and not joins(floor, index):
            yield f'strip {strip.order}: only {fresh / cover.area:.4f} of it is not covered by others'


def paces(floor, strip):
    """Speeds along a strip are those that condition areas ask for, and its minutes are theirs."""
    length, at = math.dist(strip.a, strip.b), 0
    pieces = strip.paces or [(length, strip.speed)]
    for piece, speed in pieces:
        for share in (0.1, 0.5, 0.9):
            asked = floor.speed_at(to_floor(strip.a, unit(strip.a, strip.b), at + share * piece, 0))
            if asked is not None and abs(asked - speed) > 1e-6:
                yield f'strip {strip.order}: {speed} m/min where {asked} m/min are asked for'
        at += piece
    minutes = sum(piece / speed for piece, speed in pieces)
    if abs(at - length) > 2 * GRID or abs(minutes - strip.minutes) > 1e-4:
        yield f'strip {strip.order}: {at:.4f} m in {minutes:.6f} minutes where it has {length:.4f} m and {strip.minutes} minutes'


def order(floor):
    """7: strips are numbered in working order, coat by coat, with one move between any two that follow each other."""
    for before, strip in zip(floor.strips, floor.strips[1:]):
        if before.room == strip.room and before.coat > strip.coat:
            yield f'strip {strip.order} of coat {strip.coat} follows one of coat {before.coat}'
    if [s.order for s in floor.strips] != list(range(1, len(floor.strips) + 1)):
        yield 'strips are not numbered 1, 2, 3 ...'
    if [m.order for m in floor.moves] != list(range(1, len(floor.moves) + 1)):
        yield 'moves are not numbered 1, 2, 3 ...'
    names = [s.name for s in floor.strips]
    if len(set(names)) != len(names):
        yield 'two strips have the same name'
    if [(m.start, m.stop) for m in floor.moves] != list(zip(names, names[1:])):
        yield 'moves do not join each strip to the next'
    for strip in floor.strips:
        length = math.dist(strip.a, strip.b)
        if abs(length - strip.length) > 2 * GRID or abs(strip.minutes - length / strip.speed) > 1e-4:
            yield f'strip {strip.order}: {strip.length} m and {strip.minutes} minutes for {length:.4f} m'
        yield from paces(floor, strip)
        heading = math.degrees(math.atan2(strip.b[1] - strip.a[1], strip.b[0] - strip.a[0]))
        if abs((heading - strip.heading_deg + 180) % 360 - 180) > 0.1:
            yield f'strip {strip.order} does not run along its heading'
        if strip.kind not in ('main', 'crosswise'):
            yield f'strip {strip.order} is {strip.kind}'


def reachable(floor):
    """R*: what the pattern reaches in some heading, within the target."""
    m, reached = floor.m, []
    frame = (-m['rear_m'], m['front_m'] + floor.gap, -m['right_m'] - floor.gap, m['left_m'] + floor.gap)
    half, across = m['blast_length_m'] / 2, m['blast_width_m'] / 2
    for heading in headings(floor.travel):
        u = (math.cos(math.radians(heading / 1000)), math.sin(math.radians(heading / 1000)))
        places = eroded(floor.travel, u, frame)
        if not places.is_empty:
            reached.append(dilated(places, u, (-half, half, -across, across)))
    return unary_union(reached).intersection(floor.target) if reached else Point(0, 0).buffer(0)


def ideal_hours(floor, shape):
    """Hours of strips side by side over a shape, each floor at its speed, the slowest where condition areas overlap."""
    pitch, hours = floor.m['blast_width_m'] - floor.m['min_overlap_m'], 0
    for speed, area in sorted([(speed, shape) for _, speed, shape in floor.areas if speed], key=lambda a: a[0]):
        hours += shape.intersection(area).area / (pitch * speed * 60)
        shape = shape.difference(area)
    return hours + shape.area / (pitch * floor.rates['travel_speed_m_per_min'] * 60)


def edge_hours(edge, rates):
    """Hours of an edge area by hand: a narrow one by its length where there is a rate for that, any other by its area."""
    by_length = rates.get('edge_m_per_hour', 0)
    if by_length > 0 and edge.length > 0 and edge.area <= NARROW * edge.length + 1e-6:
        return edge.length / by_length
    return edge.area / rates['edge_m2_per_hour']


def totals(floor):
    """The totals are the sums of the tables, and the ideal is what the reachable limit gives."""
    t, rates = floor.totals, floor.rates
    strip_h = sum(s.minutes for s in floor.strips) / 60
    move_h = sum(m.minutes for m in floor.moves) / 60
    edge_h = sum(edge_hours(edge, rates) for edge in floor.tables.edges)
    reached = reachable(floor)
    rest = t['target_m2'] - reached.area
    ideal = sum(ideal_hours(floor, reached.intersection(asking)) for asking in floor.asking.values()) + rest / rates['edge_m2_per_hour']
    gross = sum(cover.area for cover in floor.covers)
    expected = [
        ('strips', len(floor.strips), 0), ('strip_m', sum(s.length for s in floor.strips), 1e-3 * len(floor.strips)),
        ('move_m', sum(m.length for m in floor.moves), 1e-3 * len(floor.moves)), ('strip_hours', strip_h, 1e-4),
        ('move_hours', move_h, 1e-4), ('edge_hours', edge_h, 1e-4 * (1 + edge_h)),
        ('labour_hours', strip_h + move_h + edge_h, 2e-4 * (1 + edge_h)), ('edge_limit_m2', rest, 0.005 * t['target_m2']),
        ('ideal_hours', ideal, 0.03 * ideal), ('double_m2', gross - t['coats_m2'], 0.002 * t['target_m2']),
    ]
    for name, value, allowed in expected:
        if abs(t[name] - value) > allowed + 1e-9:
            yield f'{name} is {t[name]} and should be {value:.6f}'


RULES = [('form', form), ('body', body), ('moves', moves), ('account', account), ('overlap', overlap), ('slots', slots),
         ('short', short), ('order', order), ('totals', totals)]
