#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Reckons shifts and quote of the warehouse sample anew from the other tables, and compares it with a table reckoned by hand.

test-quote.py BATCH JOB TABLE
"""
import csv
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree
from decimal import ROUND_HALF_UP, Decimal

CENT = Decimal('0.01')


def cent(value):
    """Rounded to the cent, halves up."""
    return Decimal(value).quantize(CENT, rounding=ROUND_HALF_UP)


def rows(folder, name):
    """The rows of a table as dictionaries."""
    with open(f'{folder}/{name}', encoding='utf-8', newline='') as file:
        return list(csv.DictReader(file))


def added(table, *columns):
    """Minutes of the columns of a table."""
    return sum((Decimal(row[column]) for row in table for column in columns), Decimal(0))


def problems(folder, start_s, hand_rate):
    """What does not add up."""
    found = []
    strips, moves, edge = rows(folder, 'strips.csv'), rows(folder, 'moves.csv'), rows(folder, 'edge.csv')
    shifts, cost = rows(folder, 'shifts.csv'), rows(folder, 'cost.csv')
    pairs = [('strip_minutes', added(strips, 'minutes')), ('move_minutes', added(moves, 'minutes')),
             ('start_minutes', len(strips) * start_s / 60), ('edge_minutes', added(edge, 'area_m2') / hand_rate * 60)]
    for column, expected in pairs:
        if abs(added(shifts, column) - expected) > Decimal('0.001'):
            found.append(f'shifts.csv: {column} {added(shifts, column)}, the other tables {expected}')
    crew = added(shifts, 'strip_minutes', 'move_minutes', 'start_minutes', 'refill_minutes', 'drum_minutes', 'wear_minutes')
    hours = {'Crew with the machine': {'R1': crew, '': added(shifts, 'setup_minutes', 'cleanup_minutes')},
             'Hand grinder': {'R1': added(shifts, 'edge_minutes')}}
    lines = [row for row in cost if row['rate']]
    for row in lines:
        if cent(Decimal(row['quantity']) * Decimal(row['rate'])) != Decimal(row['amount']):
            found.append(f'cost.csv: {row}')
        expected = hours.get(row['what'], {}).get(row['room'])
        if expected is not None and abs(cent(expected / 60) - Decimal(row['quantity'])) > 0:
            found.append(f'cost.csv: {row}, the shifts {expected / 60} h')
    sums = {row['what']: Decimal(row['amount']) for row in cost if not row['rate']}
    subtotal = added(lines, 'amount')
    expected = {'subtotal': subtotal, 'contingency': cent(subtotal / 10), 'total': subtotal + cent(subtotal / 10)}
    if sums != expected:
        found.append(f'cost.csv: {sums}, by hand {expected}')
    if len(lines) < 6:
        found.append('cost.csv has too few lines')
    return found


def strange(folder, table):
    """Where the quote differs from the table reckoned by hand."""
    with open(table, encoding='utf-8', newline='') as file:
        by_hand = list(csv.DictReader(line for line in file if not line.startswith('#')))
    cost = rows(folder, 'cost.csv')
    columns = ('what', 'quantity', 'rate', 'amount')
    found = [f'cost.csv: {row}, by hand {line}' for row, line in zip(cost, by_hand)
             if any(row[column] != line[column] for column in columns)]
    if len(cost) != len(by_hand):
        found.append(f'cost.csv has {len(cost)} lines, by hand {len(by_hand)}')
    return found


def main(batch, job, table):
    """Prints two results in TAP."""
    root = ElementTree.parse(job).getroot()
    start = next(Decimal(item.get('start-s')) for item in root.iter() if item.get('start-s'))
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run([batch, 'plan', job, '--tables', folder], check=True)
        results = [('reckoned-anew', problems(folder, start, Decimal(4))), ('by-hand', strange(folder, table))]
    print(f'1..{len(results)}')
    for number, (name, found) in enumerate(results, 1):
        for problem in found:
            print(f'# {problem}')
        print(f"{'not ok' if found else 'ok'} {number} - quote/warehouse/{name}")
    return 1 if any(found for _, found in results) else 0


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
