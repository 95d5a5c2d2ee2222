#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Shows that each structure check notices what it is there for: test-checks.py.

A small tree that keeps every rule passes; each case breaks one thing in it, and exactly the rule that is named must
complain, with the word that is named in its message.
"""
import importlib.util
import json
import os
import sys
import tempfile

sys.dont_write_bytecode = True
HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, HERE)
from tree import Tree  # noqa: E402

SPDX = '/* SPDX-License-Identifier: GPL-3.0-or-later */\n'
MALLARD = 'xmlns="http://projectmallard.org/1.0/"'
INDEX = f'<page {MALLARD} type="guide" id="index"><title>A</title><section id="s"><title>B</title></section></page>'
PAGE = f'<page {MALLARD} type="topic" id="b"><info><link type="guide" xref="index#s"/></info><title>B</title></page>'
GERMAN = 'msgid ""\nmsgstr ""\n"Language: de\\n"\n"Content-Type: text/plain; charset=UTF-8\\n"\n\n'
GOOD = {
    'README.md': '', 'DEVELOPERS.md': '', 'LICENSE': '', 'meson.build': '', 'data/a.xml': '', 'samples/a': '',
    'help/meson.build': "install_data('C/index.page', 'C/b.page')\n", 'help/C/index.page': INDEX, 'help/C/b.page': PAGE,
    'po/POTFILES': 'src/low/a.c\n', 'po/LINGUAS': '# languages\nde\n', 'po/de.po': GERMAN + 'msgid "%d texts"\nmsgstr "%d Texte"\n',
    'src/LAYERS': '# remark\nlow :\nhigh : low\n',
    'src/meson.build': "subdir('low')\nsubdir('high')\n",
    'src/low/meson.build': "lib('a.c')\n",
    'src/low/a.c': SPDX + '#include "low/a.h"\n\nvoid\nox_a (void)\n{\n  _("%d texts");\n}\n',
    'src/low/a.h': SPDX + '#pragma once\n'
                   + 'typedef enum\n{\n  OX_LOW_ERROR_BAD /* is bad */\n} OxLowError;\n\n/* ox_a: does a */\nvoid ox_a (void);\n',
    'src/high/meson.build': "lib('b.c')\n",
    'src/high/b.c': SPDX + '#include <glib.h>\n#include "low/a.h"\n',
    'tests/low/meson.build': "test('test-a.c')\n",
    'tests/low/test-a.c': SPDX + 'int code = OX_LOW_ERROR_BAD;\n',
    'tests/high/meson.build': "foreach name : ['test-b']\n",
    'tests/high/test-b.c': SPDX,
    'tests/structure/allow-long.txt': '# none\n',
}
LONG = SPDX + 'void\nlong_one (void)\n{\n' + '  one ();\n' * 59 + '}\n'
CASES = [
    ('layers/one-way', 'src/LAYERS', 'high : low\nlow :\n', 'does not stand above'),
    ('layers/one-way', 'src/new/c.h', SPDX + '#pragma once\n', 'src/new is not in'),
    ('layers/one-way', 'src/meson.build', "subdir('high')\nsubdir('low')\n", 'src/meson.build builds'),
    ('layers/includes', 'src/low/a.c', SPDX + '#include "high/b.h"\n_("x")\n', 'low may not use high'),
    ('layers/includes', 'src/high/b.c', SPDX + '#include "b.h"\n', 'without its module'),
    ('layers/libraries', 'src/high/b.c', SPDX + '#include <gtk/gtk.h>\n', 'only app may'),
    ('layers/libraries', 'src/high/b.c', SPDX + ' # include <geos_c.h>\n', 'only geometry may'),
    ('sizes/files', 'tests/high/test-b.c', SPDX + '\n' * 600, '601 lines'),
    ('sizes/functions', 'src/high/b.c', LONG, 'long_one has 61 lines'),
    ('sizes/functions', 'tests/structure/allow-long.txt', 'src/high/b.c f: a table\n', 'needed no more'),
    ('sizes/parameters', 'src/low/a.h', GOOD['src/low/a.h'].replace('(void)', '(int a, int b, int c, int d,\nint e, f (*g) (int, int))'),
     'takes 6 parameters'),
    ('files/top', 'NEWS', '', 'NEWS does not belong'),
    ('files/top', 'README.md', None, 'README.md is missing'),
    ('files/built', 'src/high/meson.build', '', 'src/high/b.c is in no'),
    ('files/tested', 'tests/high/test-b.c', None, 'src/high/b.c has no'),
    ('files/tested', 'tests/structure/allow-untested.txt', 'src/high/b.c:\n', 'needed no more'),
    ('files/licence', 'src/high/b.c', '', 'src/high/b.c does not say'),
    ('files/finished', 'data/a.xml', '<!-- TO' + 'DO -->', 'data/a.xml:1'),
    ('files/translated', 'src/high/b.c', SPDX + '_ ("text")\n', 'is not in po/POTFILES'),
    ('files/translated', 'po/POTFILES', 'src/low/a.c\nsrc/high/b.c\n', 'which has no text'),
    ('files/quiet', 'src/high/b.c', SPDX + 'void\nf (void)\n{\n  fprintf (stderr, "here");\n}\n', 'src/high/b.c writes'),
    ('files/extracted', 'src/low/a.c', SPDX + '_ ("%" G_GSIZE_FORMAT " MB")\n', 'src/low/a.c:2'),
    ('translations/complete', 'po/de.po', GERMAN, 'po/de.po has no "%d texts"'),
    ('translations/complete', 'po/de.po', None, 'po/de.po has no "%d texts"'),
    ('translations/complete', 'po/de.po', GERMAN + '#, fuzzy\nmsgid "%d texts"\nmsgstr "%d Texte"\n', 'po/de.po is unsure of "%d texts"'),
    ('translations/formats', 'po/de.po', GERMAN + 'msgid "%d texts"\nmsgstr "%s Texte"\n', 'po/de.po'),
    ('help/valid', 'help/C/b.page', PAGE.replace('title>', 'headline>'), 'b.page'),
    ('help/valid', 'help/C/b.page', PAGE.replace('</page>', ''), 'b.page'),
    ('help/links', 'help/C/b.page', PAGE.replace('index#s', 'index#t'), 'leads to index#t'),
    ('help/links', 'help/C/b.page', PAGE.replace('id="b"', 'id="c"'), 'has the id "c"'),
    ('help/links', 'help/C/b.page', PAGE.replace('<link type="guide" xref="index#s"/>', ''), 'hangs from no section'),
    ('help/installed', 'help/meson.build', '', 'help/C/b.page is not in'),
    ('contracts/comments', 'src/low/a.h', GOOD['src/low/a.h'].replace('/* ox_a: does a */\n', ''), 'ox_a has no comment'),
    ('contracts/once', 'src/low/a.h', GOOD['src/low/a.h'].replace('#pragma once\n', ''), 'pragma once'),
    ('contracts/errors', 'tests/low/test-a.c', SPDX + '/* OX_LOW_ERROR_BAD */\n', 'no test reaches OX_LOW_ERROR_BAD'),
]
# A log entry as meson writes it, and the results that must be counted: passed, failed, skipped.
COUNTS = [
    ('lines', 'OK', '1..3\nok 1 /a\nok 2 /b # SKIP no floor\nok 3 - c\n', (2, 0, 1)),
    ('a failed line', 'FAIL', '1..2\nok 1 /a\nnot ok 2 /b\n', (1, 1, 0)),
    ('a crash', 'ERROR', '1..3\nok 1 /a\n', (1, 1, 0)),
    ('a program out of time', 'TIMEOUT', '', (0, 1, 0)),
    ('suites of newer GLib', 'OK', '1..1\n# Subtest: s\n    ok 1 /s/a\n    ok 2 /s/b\n    1..2\nok 1 s\n', (2, 0, 0)),
    ('a suite that alone failed', 'FAIL', '1..1\n    ok 1 /s/a\n    1..1\nnot ok 1 s\n', (1, 1, 0)),
]


def load(name):
    """The script of that name as a module."""
    spec = importlib.util.spec_from_file_location(name.replace('-', '_'), os.path.join(HERE, name + '.py'))
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


CHECKS = [load(name) for name in ('check-layers', 'check-sizes', 'check-files', 'check-contracts', 'check-help',
                                'check-translations')]


def complaints(files):
    """Writes the files into a new tree and returns the rules that complain, with their problems."""
    with tempfile.TemporaryDirectory() as root:
        for path, text in files.items():
            if text is not None:
                os.makedirs(os.path.dirname(os.path.join(root, path)), exist_ok=True)
                with open(os.path.join(root, path), 'w', encoding='utf-8') as file:
                    file.write(text)
        return {rule: problems for check in CHECKS for rule, problems in check.check(Tree(root)) if problems}


def broken_tree(case):
    """What is wrong with the answer to one case, or None."""
    rule, path, text, word = case
    found = complaints({**GOOD, path: text})
    if not any(word in problem for problem in found.get(rule, [])):
        return f'{rule} did not notice {path}: {found}'
    return None


def counted(case):
    """What is wrong with the counting of one log, or None."""
    _, result, stdout, wanted = case
    count = load('count-results')
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, 'log.json')
        with open(path, 'w', encoding='utf-8') as log:
            log.write(json.dumps({'name': 'x', 'result': result, 'stdout': stdout}) + '\n')
        results = count.log_results(path)
    got = (sum(ok and not skip for ok, _, skip in results), sum(not ok for ok, _, _ in results),
           sum(ok and skip for ok, _, skip in results))
    return None if got == wanted else f'{got} instead of {wanted}: {results}'


def main():
    """Runs all cases."""
    found = complaints(GOOD)
    outcomes = [('checks/a-good-tree-passes', f'{found}' if found else None)]
    outcomes += [(f'checks/{case[0]}/{case[3].replace(" ", "-")}', broken_tree(case)) for case in CASES]
    outcomes += [(f'counting/{case[0].replace(" ", "-")}', counted(case)) for case in COUNTS]
    missing = load('count-results').log_results('/nowhere/log.json')
    outcomes += [('counting/no-log', None if missing[0][0] is False else 'a missing log passed')]
    print(f'1..{len(outcomes)}')
    for number, (name, problem) in enumerate(outcomes, 1):
        print(('not ok' if problem else 'ok') + f' {number} /structure/{name}')
        if problem:
            print(f'{name}: {problem}', file=sys.stderr)
    return 1 if any(problem for _, problem in outcomes) else 0


if __name__ == '__main__':
    sys.exit(main())
