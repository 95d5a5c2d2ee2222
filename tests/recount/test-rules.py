#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Shows that the recount notices what it should: test-rules.py BATCH JOB.

Plans JOB, a floor in order, spoils its tables in one way after another and asks the rule that should mind. Prints TAP.
"""
import os
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True
import hoses  # noqa: E402
import rules  # noqa: E402
from shapes import unit  # noqa: E402
from tables import Tables  # noqa: E402


def shift(strip, along, across):
    """Moves a strip in its own axes."""
    u = unit(strip.a, strip.b)
    dx, dy = along * u[0] - across * u[1], along * u[1] + across * u[0]
    strip.a, strip.b = (strip.a[0] + dx, strip.a[1] + dy), (strip.b[0] + dx, strip.b[1] + dy)


def middle_main(tables):
    """A long main strip with neighbours."""
    main = sorted((s for s in tables.strips if s.kind == 'main'), key=lambda s: s.length)
    return main[-len(main) // 4]


def lateral(tables):
    """A main strip 30 mm off its lane."""
    shift(middle_main(tables), 0, 0.03)


def apart(tables):
    """A slot of 10 mm beside a long strip: its neighbours on one side make way."""
    strip = middle_main(tables)
    u = unit(strip.a, strip.b)
    step = tables.machine['blast_width_m'] + 0.01
    for other in tables.strips:
        across = u[0] * (other.a[1] - strip.a[1]) - u[1] * (other.a[0] - strip.a[0])
        v = unit(other.a, other.b)
        if other is not strip and abs(u[0] * v[1] - u[1] * v[0]) < 0.01 and 0.01 < across < step + 0.05:
            sign = 1 if u[0] * v[0] + u[1] * v[1] > 0 else -1
            shift(other, 0, sign * (step - across))


def too_short(tables):
    """A strip that stops 0.3 m from its start."""
    strip = middle_main(tables)
    u = unit(strip.a, strip.b)
    strip.b = (strip.a[0] + 0.3 * u[0], strip.a[1] + 0.3 * u[1])


def twice(tables):
    """A strip laid where another one lies."""
    one, other = middle_main(tables), tables.strips[-1]
    other.a, other.b, other.room = one.a, one.b, one.room


def cramped(tables):
    """A swing in a corner of the room."""
    move = next(m for m in tables.moves if m.turn)
    move.turn = tables.shapes('room')[0].exterior.coords[0]


def astray(tables):
    """A path that ends half a metre off."""
    move = next(m for m in tables.moves if m.path)
    x, y = move.path[-1]
    move.path[-1] = (x + 0.5, y)


def through_wall(tables):
    """A path by way of a point outside."""
    move = next(m for m in tables.moves if m.path)
    x0, y0 = tables.shapes('room')[0].bounds[:2]
    move.path.insert(1, (x0 - 1, y0 - 1))


def swapped(tables):
    """Two strips that have changed places."""
    tables.strips[3], tables.strips[4] = tables.strips[4], tables.strips[3]


def total(name, share):
    """A total that is off by a share of itself."""
    def spoil(tables):
        tables.totals[name] *= 1 + share
    return spoil


def stretched(area):
    """An outline that is one metre bigger to all sides."""
    area.shape = area.shape.buffer(1)
    area.area = area.shape.area


def second_coat(tables):
    """A long strip said to be of a coat that nothing asks for."""
    middle_main(tables).coat = 2


def slower(tables):
    """A strip walked at half the speed, with the minutes that make."""
    strip = middle_main(tables)
    strip.speed, strip.minutes = strip.speed / 2, strip.minutes * 2


def moved_station(tables):
    """A station said to stand a metre off."""
    station = next(s for s in tables.stations if s.strips > 0)
    station.at = (station.at[0] + 1, station.at[1])


def said(name, value):
    """A strip of which something else is said."""
    def spoil(tables):
        setattr(middle_main(tables), name, value)
    return spoil


def in_a_lane(tables):
    """A place proposed in the middle of a long strip."""
    strip, station = middle_main(tables), tables.stations[0]
    station.kind, station.at = 'proposed-' + station.kind, ((strip.a[0] + strip.b[0]) / 2, (strip.a[1] + strip.b[1]) / 2)


def off_the_floor(tables):
    """A place proposed outside."""
    station, low = tables.stations[0], tables.shapes('room')[0].bounds
    station.kind, station.at = 'proposed-' + station.kind, (low[0] - 2, low[1] - 2)


SPOILED = [
    ('body', 'a strip 0.1 m on', lambda t: shift(t.strips[0], 0.1, 0)),
    ('moves', 'a swing in a corner', cramped), ('moves', 'a path that does not arrive', astray),
    ('moves', 'a path through a wall', through_wall),
    ('account', 'an edge left out', lambda t: t.edges.pop(0)), ('account', 'an edge too big', lambda t: stretched(t.edges[0])),
    ('account', 'a wrong total', total('blasted_m2', 0.01)), ('account', 'a strip outside', lambda t: shift(t.strips[0], 1, 0)),
    ('overlap', 'a strip off its lane', lateral), ('slots', 'lanes too far apart', apart), ('short', 'a short strip', too_short),
    ('short', 'a strip laid twice', twice), ('order', 'strips in another order', swapped),
    ('order', 'a move left out', lambda t: t.moves.pop()), ('totals', 'wrong labour', total('labour_hours', 0.01)),
    ('totals', 'wrong limit', total('edge_limit_m2', 0.2)), ('totals', 'wrong double dose', total('double_m2', 0.2)),
    ('account', 'a coat too many', second_coat), ('order', 'a strip too slow', slower),
    ('stations', 'a station elsewhere', moved_station), ('stations', 'a way too short', said('hose_m', 0.5)),
    ('stations', 'a strip said to be out of reach', said('caution', 'out-of-reach')), ('stations', 'a strip unserved', said('station', '')),
    ('stations', 'a strip too few', lambda t: setattr(t.stations[0], 'strips', t.stations[0].strips - 1)),
    ('proposed', 'a place in a lane', in_a_lane), ('proposed', 'a place off the floor', off_the_floor),
    ('form', 'a strip drawn elsewhere', lambda t: shift(t.strips[0], 0, 0.05)),
]


def main():
    """Prints TAP."""
    batch, job = sys.argv[1:3]
    known, failed = dict(rules.RULES + hoses.HOSES), 0
    print(f'1..{len(SPOILED) + 1}')
    with tempfile.TemporaryDirectory() as scratch:
        folder = os.path.join(scratch, 'tables')
        subprocess.run([batch, 'plan', job, '--tables', folder], check=True)
        sound = [f'{name}: {p}' for name, rule in rules.RULES + hoses.HOSES for p in rule(rules.Floor(Tables(folder)))]
        print('\n# '.join([('not ok' if sound else 'ok') + ' 1 /recount/rules/sound', *sound[:5]]))
        failed += bool(sound)
        for number, (name, what, spoil) in enumerate(SPOILED, 2):
            tables = Tables(folder)
            spoil(tables)
            noticed = list(known[name](rules.Floor(tables)))
            failed += not noticed
            print(('ok' if noticed else 'not ok') + f' {number} /recount/rules/{name}/{what.replace(" ", "-")}')
    return 1 if failed else 0


sys.exit(main())
