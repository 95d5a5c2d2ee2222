#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Checks that files, functions and parameter lists stay small: check-sizes.py ROOT.

A function reaches from a { in the first column to the } in the first column. Exceptions with their reason stand in
allow-long.txt as "path function: reason", for parameters in allow-wide.txt as "function: reason".
"""
import re
import sys

sys.dont_write_bytecode = True
from tree import Tree, report, unused, without_comments, without_strings  # noqa: E402

MOST_FILE_LINES = 600
MOST_FUNCTION_LINES = 60
MOST_PARAMETERS = 5
LONG = 'allow-long.txt'
WIDE = 'allow-wide.txt'
NAME = re.compile(r'^([A-Za-z_]\w*) \(')
PROTOTYPE = re.compile(r'^[A-Za-z][\w *]*?\b(ox_\w+) \(([^;{]*?)\)(?:[ \n]*G_\w+)*;', re.MULTILINE)


def functions(text):
    """Yields (name, lines) of each function of a C file."""
    name, start = None, None
    for number, line in enumerate(without_comments(text).splitlines(), 1):
        match = NAME.match(line)
        if match and start is None:
            name = match.group(1)
        elif line.startswith('{') and name:
            start = number
        elif line.rstrip() == '}' and start is not None:
            yield name, number - start + 1
            name, start = None, None


def parameters(text):
    """Counts the parameters in the text between the brackets of a prototype."""
    depth, count = 0, 1
    for letter in text:
        depth += (letter == '(') - (letter == ')')
        count += letter == ',' and depth == 0
    return 0 if text.strip() in ('', 'void') else count


def file_problems(tree: Tree):
    """Files over the cap."""
    problems = []
    for path in tree.files(['src', 'tests', 'samples'], ['.c', '.h', '.py', '.sh']):
        lines = tree.read(path).count('\n')
        if lines > MOST_FILE_LINES:
            problems.append(f'{path} has {lines} lines, {MOST_FILE_LINES} is the most: split it')
    return problems


def function_problems(tree: Tree):
    """Functions over the cap that no exception names."""
    allowed, used, problems = tree.exceptions(LONG), set(), []
    for path in tree.files(['src', 'tests', 'samples'], ['.c']):
        for name, lines in functions(tree.read(path)):
            if lines <= MOST_FUNCTION_LINES:
                continue
            used.add(f'{path} {name}')
            if f'{path} {name}' not in allowed:
                problems.append(f'{path}: {name} has {lines} lines, {MOST_FUNCTION_LINES} is the most')
    return problems + unused(allowed, used, LONG)


def parameter_problems(tree: Tree):
    """Public functions that ask for too much."""
    allowed, used, problems = tree.exceptions(WIDE), set(), []
    headers = [path for path in tree.files(['src'], ['.h']) if not path.endswith('-private.h')]
    for path in headers:
        for name, inside in PROTOTYPE.findall(without_strings(without_comments(tree.read(path)))):
            count = parameters(inside)
            if count <= MOST_PARAMETERS:
                continue
            used.add(name)
            if name not in allowed:
                problems.append(f'{path}: {name} takes {count} parameters, {MOST_PARAMETERS} is the most: use a struct')
    return problems + unused(allowed, used, WIDE)


def check(tree: Tree):
    """Returns (rule, problems) for each rule."""
    return [('sizes/files', file_problems(tree)),
            ('sizes/functions', function_problems(tree)),
            ('sizes/parameters', parameter_problems(tree))]


if __name__ == '__main__':
    sys.exit(report(check))
