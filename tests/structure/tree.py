# SPDX-License-Identifier: GPL-3.0-or-later
"""What the structure checks share: files of the tree, lists of exceptions, and reporting in TAP."""
import os
import re
import sys

COMMENT = re.compile(r'/\*.*?\*/|//[^\n]*', re.DOTALL)
STRING = re.compile(r'"(?:\\.|[^"\\\n])*"' + r"|'(?:\\.|[^'\\\n])*'")


class Tree:
    """A source tree: root folder, and its text files by path relative to it."""

    def __init__(self, root):
        self.root = root

    def files(self, folders, endings=('',)):
        """Paths below the folders that end so, sorted; no hidden folders, no build folders."""
        found = []
        for folder in folders:
            for where, below, names in os.walk(os.path.join(self.root, folder)):
                below[:] = sorted(d for d in below if not d.startswith(('.', '__', 'build')))
                found += [os.path.relpath(os.path.join(where, n), self.root) for n in sorted(names)
                          if n.endswith(tuple(endings)) and not n.startswith('.')]
        return found

    def read(self, path):
        """The text of a file, '' when there is none."""
        try:
            with open(os.path.join(self.root, path), encoding='utf-8') as file:
                return file.read()
        except FileNotFoundError:
            return ''

    def exceptions(self, name):
        """Exceptions of tests/structure/NAME: one a line, a key, a colon and the reason; # begins a remark."""
        allowed = {}
        for line in self.read(f'tests/structure/{name}').splitlines():
            if line.strip() and not line.startswith('#'):
                key, _, reason = line.partition(':')
                allowed[key.strip()] = reason.strip()
        return allowed


def without_comments(text):
    """C text with comments blanked, line numbers kept."""
    return COMMENT.sub(lambda m: re.sub(r'[^\n]', ' ', m.group()), text)


def without_strings(text):
    """C text with the insides of string and character constants blanked."""
    return STRING.sub(lambda m: '"' + ' ' * (len(m.group()) - 2) + '"', text)


def unused(allowed, used, name):
    """Problems with exceptions: those without a reason, and those that nothing needs any more."""
    return ([f'{name}: "{key}" needs a reason' for key, reason in allowed.items() if not reason]
            + [f'{name}: "{key}" is needed no more' for key in allowed if key not in used])


def report(check):
    """Runs CHECK on the tree named on the command line and prints TAP: one test a rule. What is wrong goes to standard error, which
    meson shows.

    CHECK takes a Tree and returns a list of (rule, problems).
    """
    rules = check(Tree(sys.argv[1]))
    print(f'1..{len(rules)}')
    for number, (rule, problems) in enumerate(rules, 1):
        print(('not ok' if problems else 'ok') + f' {number} /structure/{rule}')
        for problem in problems:
            print(f'{rule}: {problem}', file=sys.stderr)
    return 1 if any(problems for _, problems in rules) else 0
