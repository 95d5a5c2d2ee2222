#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Checks the manual: check-help.py ROOT. Needs xmllint and the Mallard schema (libxml2-utils, mallard-rng)."""
import os
import re
import subprocess
import sys
import xml.etree.ElementTree as ElementTree

sys.dont_write_bytecode = True
from tree import Tree, report  # noqa: E402

SCHEMA = '/usr/share/xml/mallard/1.0/mallard-1.0.rng'
SPACE = '{http://projectmallard.org/1.0/}'


def pages(tree: Tree):
    """Returns (path, root element) of each page that can be parsed."""
    found = []
    for path in tree.files(['help'], ['.page']):
        try:
            found.append((path, ElementTree.fromstring(tree.read(path))))
        except ElementTree.ParseError:
            pass
    return found


def valid_problems(tree: Tree):
    """Every page is valid by the schema of its format."""
    paths = [os.path.join(tree.root, path) for path in tree.files(['help'], ['.page'])]
    if not paths:
        return ['help has no page']
    run = subprocess.run(['xmllint', '--nonet', '--noout', '--relaxng', SCHEMA] + paths,
                         capture_output=True, text=True, check=False)
    return [] if run.returncode == 0 else [line for line in run.stderr.splitlines() if not line.endswith(' validates')]


def link_problems(tree: Tree):
    """Pages are named as their files, lead to what exists, and can be reached from the first one."""
    all_pages = pages(tree)
    targets = {'index'}
    for path, page in all_pages:
        targets.add(page.get('id'))
        targets |= {f"{page.get('id')}#{section.get('id')}" for section in page.iter(SPACE + 'section')}
    problems = []
    for path, page in all_pages:
        name = os.path.basename(path)[:-len('.page')]
        if page.get('id') != name:
            problems.append(f'{path} has the id "{page.get("id")}"')
        links = [link.get('xref') for link in page.iter(SPACE + 'link')]
        problems += [f'{path} leads to {link}, which does not exist' for link in links if link and link not in targets]
        if name != 'index' and not any(link and link.startswith('index#') for link in links):
            problems.append(f'{path} hangs from no section of index.page')
    return problems


def installed_problems(tree: Tree):
    """Every page is installed."""
    listed = re.findall(r"'([^']+\.page)'", tree.read('help/meson.build'))
    return [f'{path} is not in help/meson.build' for path in tree.files(['help'], ['.page'])
            if os.path.relpath(path, 'help') not in listed]


def check(tree: Tree):
    """Returns (rule, problems) for each rule."""
    return [('help/valid', valid_problems(tree)),
            ('help/links', link_problems(tree)),
            ('help/installed', installed_problems(tree))]


if __name__ == '__main__':
    sys.exit(report(check))
