#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Turns a table of data/trade into C initialisers: make-table.py TABLE.csv OUT.inc.

The header line names the members of the struct that the including file declares. What reads as a number becomes one,
the rest becomes text; a column is all of one kind.
"""
import csv
import math
import sys


def is_number(text):
    """Whether a cell is a finite number."""
    try:
        return math.isfinite(float(text))
    except ValueError:
        return False


def quoted(text):
    """A C string constant."""
    return '"' + text.replace('\\', '\\\\').replace('"', '\\"') + '"'


def main(source, target):
    """Writes the rows."""
    with open(source, encoding='utf-8', newline='') as file:
        rows = list(csv.reader(line for line in file if not line.startswith('#')))
    head, body = rows[0], rows[1:]
    wrong = [row for row in body if len(row) != len(head)]
    if wrong or len({row[0] for row in body}) != len(body):
        sys.exit(f'{source}: rows need {len(head)} cells and an id of their own: {wrong}')
    numeric = [all(is_number(row[i]) for row in body) for i in range(len(head))]
    with open(target, 'w', encoding='utf-8') as file:
        for row in body:
            cells = [f'.{name} = {cell if number else quoted(cell)}' for name, cell, number in zip(head, row, numeric)]
            file.write('{ ' + ', '.join(cells) + ' },\n')


if __name__ == '__main__':
    main(sys.argv[1], sys.argv[2])
