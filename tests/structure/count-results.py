#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Counts the single results in meson's JSON test logs: count-results.py LOG.json...

A test program reports in TAP, and each of its result lines counts. A program that crashed, ran out of time, broke off
before the end of its plan or cannot be read counts as one failure more, when no line of its own says what failed.
The last line is "N passed, N failed"; the exit status is 0 when nothing failed and something passed.
"""
import json
import os
import re
import sys

RESULT = re.compile(r'^( *)(not )?ok\b[ \t]*\d*[ \t]*(?:- )?(.*)$')
SKIP = re.compile(r'#\s*skip\b', re.IGNORECASE)


def tap_results(text):
    """Returns (ok, name, skipped) of every innermost result line.

    Newer GLib indents the results of a suite and closes it by one summary line further out. Such a summary repeats
    what was counted already, unless it alone says that something went wrong.
    """
    lines = []
    for line in text.splitlines():
        match = RESULT.match(line)
        if match:
            indent, bad, name = match.groups()
            lines.append((len(indent), not bad, name.strip()))
    results = []
    for i, (indent, ok, name) in enumerate(lines):
        inner = []
        for before in reversed(lines[:i]):
            if before[0] <= indent:
                break
            inner.append(before)
        if inner and (ok or any(not b[1] for b in inner)):
            continue
        results.append((ok, name, bool(SKIP.search(name))))
    return results


def program_results(entry):
    """Returns the results of one program: its TAP lines, or one for the whole when it has none."""
    results = tap_results(entry.get('stdout') or '')
    good = entry['result'] in ('OK', 'SKIP', 'EXPECTEDFAIL')
    if not results:
        return [(good, entry['name'], entry['result'] == 'SKIP')]
    if not good and all(ok for ok, _, _ in results):
        results.append((False, f"{entry['name']} ended with {entry['result']}", False))
    return results


def log_results(path):
    """Returns the results of one log; a log that is missing or empty is a failure."""
    try:
        with open(path, encoding='utf-8') as log:
            entries = [json.loads(line) for line in log if line.strip()]
    except (OSError, ValueError) as error:
        return [(False, f'{path}: {error}', False)]
    if not entries:
        return [(False, f'{path}: no test has run', False)]
    return [result for entry in entries for result in program_results(entry)]


def main(paths):
    """Prints what failed and the sum."""
    logs = [(os.path.splitext(os.path.basename(path))[0], log_results(path)) for path in paths]
    results = [result for _, log in logs for result in log]
    passed = sum(ok and not skipped for ok, _, skipped in results)
    skipped = sum(ok and skipped for ok, _, skipped in results)
    failed = sum(not ok for ok, _, _ in results)
    for run, log in logs:
        for ok, name, _ in log:
            if not ok:
                print(f'failed in {run}: {name}')
    if skipped:
        print(f'{skipped} skipped')
    print(f'{passed} passed, {failed} failed')
    return 0 if failed == 0 and passed > 0 else 1


if __name__ == '__main__':
    sys.exit(main(sys.argv[1:]))
