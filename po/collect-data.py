#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Collects the texts of the data tables that people read, for xgettext: collect-data.py ROOT >po/data-texts.h."""
import csv
import os
import re
import sys

TABLES = {'data/trade/card.csv': ['text'], 'data/trade/cautions.csv': ['brief', 'text'], 'data/trade/defaults.csv': ['source'],
          'data/trade/hose-dusts.csv': ['source'], 'data/trade/spots.csv': ['source'], 'data/trade/conductors.csv': ['source']}
MACHINES = 'data/machines.xml'
HEAD = '''/* Oxturn: po/data-texts - texts of the data tables, for xgettext; never compiled.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Made by "python3 po/collect-data.py . >po/data-texts.h"; tests/structure/check-translations.py says when it is to be made anew.
 */
'''


def read(root, path):
    """A file as text."""
    with open(os.path.join(root, path), encoding='utf-8') as file:
        return file.read()


def texts(root):
    """All texts, each once, in the order of the files."""
    found = {}
    for path, columns in TABLES.items():
        lines = [line for line in read(root, path).splitlines() if not line.startswith('#')]
        for row in csv.DictReader(lines):
            found.update({row[column]: None for column in columns})
    found.update({name: None for name in re.findall(r'<(?:machine|wear)\b[^>]*?\bname="([^"]+)"', read(root, MACHINES))})
    return list(found)


def collected(root):
    """What po/data-texts.h has to hold."""
    quoted = [text.replace('\\', '\\\\').replace('"', '\\"') for text in texts(root)]
    return HEAD + ''.join(f'N_ ("{text}")\n' for text in quoted)


if __name__ == '__main__':
    sys.stdout.write(collected(sys.argv[1]))
