#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Checks that a module includes only what src/LAYERS lets it: check-layers.py ROOT."""
import os
import re
import sys

sys.dont_write_bytecode = True
from tree import Tree, report, without_comments  # noqa: E402

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]+(["<])([^">]+)[">]', re.MULTILINE)
# System headers by their beginning, and the only modules that may include them.
KEPT = {'gtk/': {'app'}, 'gdk/': {'app'}, 'gsk/': {'app'}, 'geos_c.h': {'geometry'},
        # What stands on sheets has the sheets' language, by base/words.h.
        'glib/gi18n': {'file', 'batch', 'session', 'tools', 'app'}}


def read_layers(tree: Tree):
    """Returns modules in order, each with the set of modules it may use besides itself."""
    layers = {}
    for line in tree.read('src/LAYERS').splitlines():
        if line.strip() and not line.startswith('#'):
            module, _, uses = line.partition(':')
            layers[module.strip()] = set(uses.split())
    return layers


def order_problems(tree: Tree, layers):
    """The file itself: one way only, every folder named, built in the same order."""
    problems, above = [], set()
    for module, uses in layers.items():
        problems += [f'src/LAYERS: {module} uses {use}, which does not stand above it' for use in sorted(uses - above)]
        above.add(module)
    folders = {path.split('/')[1] for path in tree.files(['src'], ['.c', '.h']) if path.count('/') > 1}
    problems += [f'src/{folder} is not in src/LAYERS' for folder in sorted(folders - set(layers))]
    built = re.findall(r"subdir\('(\w+)'\)", tree.read('src/meson.build'))
    if built != list(layers):
        problems.append(f'src/meson.build builds {built}, src/LAYERS has {list(layers)}')
    return problems


def include_problems(tree: Tree, layers):
    """Our own headers: path-qualified, and of a module that may be used."""
    problems = []
    for path in tree.files(['src'], ['.c', '.h', '.inc']):
        module = path.split('/')[1]
        for quote, header in INCLUDE.findall(without_comments(tree.read(path))):
            used = header.split('/')[0]
            if quote == '"' and '/' not in header:
                problems.append(f'{path} includes "{header}" without its module')
            elif quote == '"' and used != module and used not in layers.get(module, set()):
                problems.append(f'{path} includes "{header}": {module} may not use {used}')
    return problems


def library_problems(tree: Tree):
    """Libraries that only one module may know."""
    problems = []
    for path in tree.files(['src'], ['.c', '.h', '.inc']):
        for _, header in INCLUDE.findall(without_comments(tree.read(path))):
            problems += [f'{path} includes <{header}>, which only {", ".join(sorted(modules))} may'
                         for start, modules in KEPT.items()
                         if header.startswith(start) and path.split(os.sep)[1] not in modules]
    return problems


def check(tree: Tree):
    """Returns (rule, problems) for each rule."""
    layers = read_layers(tree)
    return [('layers/one-way', order_problems(tree, layers)),
            ('layers/includes', include_problems(tree, layers)),
            ('layers/libraries', library_problems(tree))]


if __name__ == '__main__':
    sys.exit(report(check))
