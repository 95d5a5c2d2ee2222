#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Checks that headers say what they promise and that every error can happen: check-contracts.py ROOT."""
import re
import sys

sys.dont_write_bytecode = True
from tree import Tree, report, without_comments  # noqa: E402

PROTOTYPE = re.compile(r'^[A-Za-z][\w *]*?\b(ox_\w+) ?\(')
# What the name alone says in every module, see DEVELOPERS.md.
CONVENTION = re.compile(r'_(?:new|ref|unref|free|clear|error_quark)$')
ERROR_ENUM = re.compile(r'typedef enum\s*\{([^}]*)\}\s*Ox\w+Error;')
CODE = re.compile(r'\bOX_[A-Z_]*ERROR_[A-Z_]+\b')


def undocumented(text):
    """Names of the prototypes in whose group of lines, from one blank line to the next, no comment stands."""
    names, waiting, commented, inside = [], [], False, False
    for line in text.splitlines() + ['']:
        if not inside and not line.strip():
            names += [] if commented else waiting
            waiting, commented = [], False
        elif not inside and PROTOTYPE.match(line) and not CONVENTION.search(PROTOTYPE.match(line).group(1)):
            waiting.append(PROTOTYPE.match(line).group(1))
        for mark in re.findall(r'/\*|\*/', line):
            inside = mark == '/*'
            commented = True
    return names


def contract_problems(tree: Tree):
    """Every public function says what it does."""
    return [f'{path}: {name} has no comment that says what it does'
            for path in tree.files(['src'], ['.h']) if not path.endswith('-private.h')
            for name in undocumented(tree.read(path))]


def guard_problems(tree: Tree):
    """Headers are read once and can be read from C++ and from tools."""
    return [f'{path} does not begin with #pragma once' for path in tree.files(['src'], ['.h'])
            if not without_comments(tree.read(path)).lstrip().startswith('#pragma once')]


def error_problems(tree: Tree):
    """Every error code is named by a test."""
    tests = '\n'.join(tree.read(path) for path in tree.files(['tests'], ['.c', '.h']))
    reached = set(CODE.findall(without_comments(tests)))
    problems = []
    for path in tree.files(['src'], ['.h']):
        for body in ERROR_ENUM.findall(without_comments(tree.read(path))):
            problems += [f'{path}: no test reaches {code}' for code in CODE.findall(body) if code not in reached]
    return problems


def check(tree: Tree):
    """Returns (rule, problems) for each rule."""
    return [('contracts/comments', contract_problems(tree)),
            ('contracts/once', guard_problems(tree)),
            ('contracts/errors', error_problems(tree))]


if __name__ == '__main__':
    sys.exit(report(check))
