#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Write a file as C: embed.py FILE NAME HEADER OUT makes NAME_data[] and NAME_length, declared in HEADER"""

import sys


def main(source, name, header, target):
    with open(source, "rb") as file:
        data = file.read()
    if max(data) > 126:
        sys.exit(f"{source}: only ASCII can be embedded")
    rows = [", ".join(str(byte) for byte in data[i : i + 24]) for i in range(0, len(data), 24)]
    with open(target, "w", encoding="ascii") as out:
        out.write(f'/* Made by embed.py. */\n#include "{header}"\n\n')
        out.write(f"const char {name}_data[] = {{\n  " + ",\n  ".join(rows) + "\n};\n\n")
        out.write(f"const gsize {name}_length = sizeof {name}_data;\n")


main(*sys.argv[1:])
