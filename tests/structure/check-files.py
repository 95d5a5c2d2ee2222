#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Checks that each file is where it should be, is built, is tested and says its licence: check-files.py ROOT.

Sources without a test program of their own stand in allow-untested.txt as "path: reason"; a path that ends in / stands
for the folder.
"""
import os
import re
import sys

sys.dont_write_bytecode = True
from tree import Tree, report, unused, without_comments, without_strings  # noqa: E402

TOP = {'README.md', 'DEVELOPERS.md', 'LICENSE', 'meson.build', 'src', 'data', 'po', 'tests', 'help', 'samples'}
ALLOW = 'allow-untested.txt'
LICENCE = 'SPDX-License-Identifier: GPL-3.0-or-later'
CODE = ['.c', '.h', '.py', '.sh']
# In two parts, so that this file does not find itself.
UNFINISHED = re.compile(r'\b(?:' + '|'.join(['TO' 'DO', 'FIX' 'ME', 'X' 'XX', 'HA' 'CK']) + r')\b')


def top_problems(tree: Tree):
    """The top folder holds what was agreed on, dot files and build folders aside."""
    names = {name for name in os.listdir(tree.root) if not name.startswith('.') and not name.startswith('build')}
    return ([f'{name} does not belong at the top' for name in sorted(names - TOP)]
            + [f'{name} is missing at the top' for name in sorted(TOP - names)])


def built_problems(tree: Tree):
    """Every source is listed in the meson.build of its folder or of one above; a test program's name may do."""
    problems = []
    for path in tree.files(['src', 'tests', 'samples'], ['.c']):
        folder, name = os.path.split(path)
        wanted = {f"'{name}'"}
        if path.startswith('tests/') and name.startswith('test-'):
            wanted |= {f"'{name[:-2]}'", f"'{name[5:-2]}'"}
        listed = False
        while folder and not listed:
            text = tree.read(f'{folder}/meson.build')
            listed = any(word in text for word in wanted)
            folder, part = os.path.split(folder)
            name = f'{part}/{name}'
            wanted.add(f"'{name}'")
        if not listed:
            problems.append(f'{path} is in no meson.build')
    return problems


def tested_problems(tree: Tree):
    """Every source has a test program of its name, or a reason why not."""
    allowed, used, problems = tree.exceptions(ALLOW), set(), []
    tests = set(tree.files(['tests'], ['.c', '.py', '.sh']))
    for path in tree.files(['src'], ['.c']):
        folder, name = os.path.split(path)
        folder = folder.replace('src/', 'tests/', 1)
        module = '/'.join(folder.split('/')[:2])
        if any(f'{place}/test-{name[:-2]}{ending}' in tests for place in (folder, module) for ending in ('.c', '.py', '.sh')):
            continue
        keys = [key for key in allowed if path == key or (key.endswith('/') and path.startswith(key))]
        used.update(keys)
        if not keys:
            problems.append(f'{path} has no {module}/test-{name}')
    return problems + unused(allowed, used, ALLOW)


def licence_problems(tree: Tree):
    """Every piece of code names its licence near the top."""
    paths = tree.files(['src', 'tests', 'samples', 'data'], CODE)
    return [f'{path} does not say "{LICENCE}"' for path in paths
            if LICENCE not in '\n'.join(tree.read(path).splitlines()[:4])]


def finished_problems(tree: Tree):
    """Nothing is left for later."""
    problems = []
    for path in tree.files(['src', 'tests', 'samples', 'data', 'help', 'po']):
        try:
            text = tree.read(path)
        except UnicodeDecodeError:
            continue
        for number, line in enumerate(text.splitlines(), 1):
            if UNFINISHED.search(line):
                problems.append(f'{path}:{number}: {line.strip()}')
    return problems


def quiet_problems(tree: Tree):
    """Only the batch command and the start of the window write to the terminal; a forgotten trace does, too."""
    speaks = re.compile(r'\b(?:g_print|g_printerr|printf|fprintf|puts|fputs|perror) ?\(')
    return [f'{path} writes to the terminal: {match.group()}' for path in tree.files(['src'], ['.c', '.h'])
            if not path.startswith('src/batch/') and path != 'src/app/main.c'
            for match in speaks.finditer(without_strings(without_comments(tree.read(path))))]


def translated_problems(tree: Tree):
    """po/POTFILES names the sources with texts for people, and no others."""
    listed = {line for line in tree.read('po/POTFILES').splitlines() if line and not line.startswith('#')}
    holding = {path for path in tree.files(['src', 'data', 'po'], ['.c', '.h'])
               if re.search(r'\b(?:C_|N_|NC_|Q_|_|ngettext|g_dngettext) ?\("', tree.read(path))}
    holding |= {path for path in tree.files(['src', 'data'], ['.ui', '.desktop.in', '.metainfo.xml.in'])
                if path.endswith('.in') or 'translatable=' in tree.read(path)}
    return ([f'{path} has texts to translate and is not in po/POTFILES' for path in sorted(holding - listed)]
            + [f'po/POTFILES names {path}, which has no text' for path in sorted(listed - holding)])


def extracted_problems(tree: Tree):
    """Texts are whole constants: xgettext cannot see through a format macro and would cut the text there."""
    cut = re.compile(r'\b(?:N_|Q_|_|ngettext) ?\((?:"(?:\\.|[^"\\])*"\s*,?\s*)+G_\w+_FORMAT')
    return [f'{path}:{tree.read(path)[:match.start()].count(chr(10)) + 1}: a text with a format macro; use a cast and %u or %d'
            for path in tree.files(['src'], ['.c', '.h']) for match in cut.finditer(tree.read(path))]


def check(tree: Tree):
    """Returns (rule, problems) for each rule."""
    return [('files/top', top_problems(tree)),
            ('files/built', built_problems(tree)),
            ('files/tested', tested_problems(tree)),
            ('files/licence', licence_problems(tree)),
            ('files/finished', finished_problems(tree)),
            ('files/quiet', quiet_problems(tree)),
            ('files/translated', translated_problems(tree)),
            ('files/extracted', extracted_problems(tree))]


if __name__ == '__main__':
    sys.exit(report(check))
