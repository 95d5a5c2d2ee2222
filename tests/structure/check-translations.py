#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Checks that every text for people stands in every language: check-translations.py ROOT. Needs gettext."""
import os
import re
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True
from tree import Tree, report  # noqa: E402

# The words of i18n.gettext's preset 'glib' in po/meson.build that the sources use; what is added there is read from there.
KEYWORDS = ['_', 'N_', 'C_:1c,2', 'NC_:1c,2', 'g_dngettext:2,3']
EMPTY = 'msgid ""\nmsgstr ""\n"Content-Type: text/plain; charset=UTF-8\\n"\n'


def run(*command):
    """Runs a tool of gettext: its output as text, and what it complained of."""
    done = subprocess.run(command, capture_output=True, text=True, check=False, env={**os.environ, 'LC_ALL': 'C.UTF-8'})
    return done.stdout, done.stderr if done.returncode else ''


def listed(tree: Tree, path):
    """The lines of a list in po, without remarks."""
    return [line for line in tree.read(path).splitlines() if line and not line.startswith('#')]


def template(tree: Tree, folder):
    """Collects all texts as the target oxturn-pot does; returns the path of the template and what went wrong."""
    path = os.path.join(folder, 'all.pot')
    added = re.findall(r"'--keyword=([^']+)'", tree.read('po/meson.build'))
    _, trouble = run('xgettext', '--from-code=UTF-8', '--force-po', '-D', tree.root, '-o', path, '-k',
                     *[f'-k{word}' for word in KEYWORDS + added], *listed(tree, 'po/POTFILES'))
    return path, trouble


def texts(path, *chosen):
    """The texts of a catalogue that msgattrib chooses, as they stand there."""
    out, _ = run('msgattrib', '--no-wrap', '--no-obsolete', *chosen, path)
    found = [''.join(re.findall(r'"(.*)"', text)) for text in re.findall(r'^msgid ((?:".*"\n)+)', out, re.MULTILINE)]
    return [text for text in found if text]


def language_problems(tree: Tree, language, pot, folder):
    """(texts that are missing or unsure, formats that differ) of one language."""
    name = f'po/{language}.po'
    old, new = os.path.join(folder, 'old.po'), os.path.join(folder, 'new.po')
    with open(old, 'w', encoding='utf-8') as file:
        file.write(tree.read(name) or EMPTY)
    _, trouble = run('msgmerge', '--quiet', '--no-fuzzy-matching', '-o', new, old, pot)
    if trouble:
        return [f'{name}: {trouble}'], []
    lacking = [f'{name} has no "{text}"' for text in texts(new, '--untranslated')]
    unsure = [f'{name} is unsure of "{text}"' for text in texts(new, '--only-fuzzy')]
    # msgmerge takes other formats for unsure texts, which msgfmt would pass over.
    run('msgattrib', '--clear-fuzzy', '-o', old, new)
    _, formats = run('msgfmt', '--check-format', '-o', os.devnull, old)
    return lacking + unsure, [f'{name}: {line}' for line in formats.splitlines()]


def data_problems(tree: Tree):
    """Whether the list of texts of the data tables is what po/collect-data.py makes of them."""
    tool = os.path.join(tree.root, 'po', 'collect-data.py')
    if not os.path.exists(tool):
        return []
    now, trouble = run(sys.executable, '-B', tool, tree.root)
    same = now == tree.read('po/data-texts.h')
    return [] if same else [trouble or 'po/data-texts.h is not what po/collect-data.py makes of the tables']


def check(tree: Tree):
    """Returns (rule, problems) for each rule."""
    complete, formats = data_problems(tree), []
    with tempfile.TemporaryDirectory() as folder:
        pot, trouble = template(tree, folder)
        if trouble:
            complete.append(trouble)
        else:
            for language in listed(tree, 'po/LINGUAS'):
                lacking, differing = language_problems(tree, language, pot, folder)
                complete += lacking
                formats += differing
    return [('translations/complete', complete), ('translations/formats', formats)]


if __name__ == '__main__':
    sys.exit(report(check))
