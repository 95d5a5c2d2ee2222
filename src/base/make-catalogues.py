#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Write translations as C: make-catalogues.py OUT [LANG.mo ...] makes the ox_catalogues of base/catalogue.h"""
import os
import sys


def main(target, *sources):
    names = [os.path.splitext(os.path.basename(source))[0] for source in sources]
    with open(target, 'w', encoding='ascii') as out:
        out.write('/* Made by make-catalogues.py. */\n#include "base/catalogue.h"\n\n')
        for name, source in zip(names, sources):
            with open(source, 'rb') as file:
                data = file.read()
            rows = [', '.join(str(byte) for byte in data[i:i + 24]) for i in range(0, len(data), 24)]
            out.write(f'static const guint8 {name}_data[] = {{\n  ' + ',\n  '.join(rows) + '\n};\n\n')
        entries = [f'  {{ "{name}", {name}_data, sizeof {name}_data }},' for name in names]
        out.write('const OxCatalogue ox_catalogues[] = {\n' + '\n'.join(entries) + '\n};\n')
        out.write('const guint ox_n_catalogues = G_N_ELEMENTS (ox_catalogues);\n')


main(*sys.argv[1:])
