#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Tests src/trade/make-table.py and the tables of data/trade: test-make-table.py SOURCE_ROOT. Reports in TAP."""
import csv
import os
import subprocess
import sys
import tempfile

ROOT = sys.argv[1]
TABLES = os.path.join(ROOT, 'data', 'trade')
SCRIPT = os.path.join(ROOT, 'src', 'trade', 'make-table.py')


def made(text):
    """What the script makes of a table: the C text, or None when it refuses."""
    with tempfile.TemporaryDirectory() as folder:
        source, target = os.path.join(folder, 'in.csv'), os.path.join(folder, 'out.inc')
        with open(source, 'w', encoding='utf-8') as file:
            file.write(text)
        run = subprocess.run([sys.executable, '-B', SCRIPT, source, target], capture_output=True, check=False)
        if run.returncode != 0:
            return None
        with open(target, encoding='utf-8') as file:
            return file.read()


def sources():
    """Rows that do not say where they come from, or have no source and do not call themselves typical. Tables of texts hold no figures:
    they say at their head, or in each row, what they rest on."""
    wrong = []
    for name in sorted(os.listdir(TABLES)):
        with open(os.path.join(TABLES, name), encoding='utf-8', newline='') as file:
            lines = file.readlines()
        rows = list(csv.DictReader(line for line in lines if not line.startswith('#')))
        if rows and 'text' in rows[0]:
            head = ' '.join(line for line in lines if line.startswith('#'))
            wrong += [f'{name}: {row["id"]}' for row in rows if not row.get('source') and 'no source' not in head]
            continue
        wrong += [f'{name}: {row["id"]}' for row in rows
                  if not row['source'] or row['typical'] not in ('0', '1')
                  or ('no source' in row['source'] and row['typical'] != '1')]
        wrong += [] if rows else [f'{name} is empty']
    return wrong


def main():
    """Runs all cases."""
    cases = [
        ('numbers-and-text', made('# remark\nid,n,t\na,1.5,x\nb,-2,"y, z"\n'),
         '{ .id = "a", .n = 1.5, .t = "x" },\n{ .id = "b", .n = -2, .t = "y, z" },\n'),
        ('a-column-is-of-one-kind', made('id,v\na,1\nb,x\n'), '{ .id = "a", .v = "1" },\n{ .id = "b", .v = "x" },\n'),
        ('quotes-and-backslashes', made('id,t\na,"say ""x"" \\"\n'), '{ .id = "a", .t = "say \\"x\\" \\\\" },\n'),
        ('ids-are-unique', made('id,n\na,1\na,2\n'), None),
        ('rows-are-complete', made('id,n\na\n'), None),
        ('infinity-is-no-number', made('id,n\na,inf\n'), '{ .id = "a", .n = "inf" },\n'),
        ('every-figure-has-its-source', sources(), []),
    ]
    print(f'1..{len(cases)}')
    for number, (name, got, wanted) in enumerate(cases, 1):
        print(('ok' if got == wanted else 'not ok') + f' {number} /trade/make-table/{name}')
        if got != wanted:
            print(f'{name}: {got!r} instead of {wanted!r}', file=sys.stderr)
    return 0 if all(got == wanted for _, got, wanted in cases) else 1


if __name__ == '__main__':
    sys.exit(main())
