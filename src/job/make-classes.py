#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Write the machine classes of data/machines.xml as a C table: make-classes.py machines.xml classes-data.c"""

import sys
import xml.etree.ElementTree as ET

TEXTS = {"id": "class_id", "name": "name"}


def quoted(text):
    return '(char *) "' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def member(key, value):
    if key in TEXTS:
        return f".{TEXTS[key]} = {quoted(value)}"
    float(value)  # a slip in the file stops the build
    return f".{key.replace('-', '_')} = {value}"


def wear(part):
    return f"{{ {quoted(part.get('name'))}, {float(part.get('interval-h'))}, 0 }}"


def machine(element):
    members = [member(key, value) for key, value in element.attrib.items()]
    for group in element:
        if group.tag != "wear":
            members += [member(key, value) for key, value in group.attrib.items() if key != "source"]
    parts = element.findall("wear")
    members.append(f".n_wear = {len(parts)}")
    members.append(".wear = { " + ", ".join(wear(part) for part in parts) + " }")
    return "  {\n    " + ",\n    ".join(members) + ",\n  },\n"


def main(source, target):
    root = ET.parse(source).getroot()
    with open(target, "w", encoding="utf-8") as out:
        out.write('/* Made from data/machines.xml by make-classes.py. */\n#include "job/classes-data.h"\n\n')
        out.write("const OxMachine ox_classes_data[] = {\n")
        out.writelines(machine(element) for element in root.findall("machine"))
        out.write("};\n\nconst guint ox_classes_data_count = G_N_ELEMENTS (ox_classes_data);\n")


main(sys.argv[1], sys.argv[2])
