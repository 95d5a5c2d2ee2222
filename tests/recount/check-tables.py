#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Recounts plans from their tables, with libraries that are not the planner's: check-tables.py BATCH JOB|OUTLINE|FOLDER...

BATCH is oxturn-batch. A job is planned as it is, an outline in well-known text with the compact and the medium machine; a
folder is taken for tables that are there already. The outlines of the folder that OXTURN_FLOORS names are added. Prints
TAP: one test a plan.
"""
import os
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True
from hoses import HOSES  # noqa: E402
from rules import RULES, Floor  # noqa: E402
from tables import Tables  # noqa: E402

MOST_LINES = 8
MOST_SECONDS = 120  # for one plan


def run(*command):
    """Runs a command; what it says goes to the report when it fails."""
    try:
        done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=MOST_SECONDS)
    except subprocess.TimeoutExpired as late:
        raise RuntimeError(f'{" ".join(command)}: not done after {MOST_SECONDS} s') from late
    if done.returncode != 0:
        raise RuntimeError(f'{" ".join(command)}: exit {done.returncode}: {done.stderr.strip()}')


def planned(batch, path, scratch):
    """Yields (name, folder of tables) for one argument."""
    name = os.path.splitext(os.path.basename(path.rstrip('/')))[0]
    if os.path.isdir(path):
        yield name, path
        return
    for machine in (['compact', 'medium'] if path.endswith('.wkt') else ['']):
        label = f'{name}-{machine}' if machine else name
        job, folder = path, os.path.join(scratch, label)
        if machine:
            job = folder + '.oxturn'
            run(batch, 'new', job, '--room', path, '--machine', machine)
        run(batch, 'plan', job, '--tables', folder)
        yield label, folder


def judge(folder):
    """Sentences on what is wrong with the tables in FOLDER, and a line of figures."""
    tables = Tables(folder)
    floor, problems = Floor(tables), []
    for name, rule in RULES + HOSES:
        problems += [f'{name}: {problem}' for problem in rule(floor)]
    t = tables.totals
    ratio = t['labour_hours'] / t['ideal_hours'] if t['ideal_hours'] > 0 else 0
    return problems, (f'target {t["target_m2"]:.1f} m2, {t["strips"]} strips, edge {t["edge_m2"]:.2f} of at least '
                      f'{t["edge_limit_m2"]:.2f} m2, {t["labour_hours"]:.3f} h of {t["ideal_hours"]:.3f} h: {ratio:.3f}')


def main():
    """Prints TAP."""
    batch, paths = sys.argv[1], sys.argv[2:]
    folder = os.environ.get('OXTURN_FLOORS')
    if folder:
        paths += sorted(os.path.join(folder, name) for name in os.listdir(folder) if name.endswith('.wkt'))
    number = failed = 0
    with tempfile.TemporaryDirectory() as scratch:
        for path in paths:
            try:
                for name, tables in planned(batch, path, scratch):
                    problems, figures = judge(tables)
                    number, failed = number + 1, failed + bool(problems)
                    print(f'{"not ok" if problems else "ok"} {number} /recount/{name}')
                    for line in [figures, *problems[:MOST_LINES], *([f'... {len(problems)} in all'] if len(problems) > MOST_LINES else [])]:
                        print(f'# {line}', flush=True)
            except RuntimeError as error:
                number, failed = number + 1, failed + 1
                print(f'not ok {number} /recount/{os.path.basename(path)}\n# {error}')
    print(f'1..{number}')
    return 1 if failed else 0


sys.exit(main())
