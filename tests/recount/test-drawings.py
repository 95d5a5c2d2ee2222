#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Judges sheets as open tools see them: test-drawings.py BATCH JOB...

PDF by qpdf, pdfinfo, pdffonts and pdftotext, SVG by xmllint and rsvg-convert, lengths by counting pixels. Tools that are not there are
told and left out."""
import csv
import json
import math
import os
import re
import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

SVG = '{http://www.w3.org/2000/svg}'
SERIES = {0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0}
CAPITALS = 1493 / 2048  # of the font size, DejaVu Sans
LEAST_MM = 1.8
HEIGHTS = (1.8, 2.5, 3.5, 5)  # of capitals, after ISO 3098
DPI = 508  # 0.05 mm a pixel
POINT = 25.4 / 72
# ISO 216 and ANSI/ASME Y14.1, mm
PAPERS = {'A4': (210, 297), 'A3': (420, 297), 'A1': (841, 594), 'Letter': (215.9, 279.4), 'ANSI D': (863.6, 558.8)}


def run(*command, **more):
    """What a tool writes, as bytes; it must not fail."""
    done = subprocess.run(command, capture_output=True, check=False, **more)
    if done.returncode:
        raise RuntimeError(f'{" ".join(map(str, command))}: {done.stderr.decode()}')
    return done.stdout


def draw(batch, job, out, *options, **more):
    """Draws sheets; the files, first page first."""
    run(batch, 'draw', job, '-o', out, *options, **more)
    stem, ending = os.path.splitext(out)
    pages = [out] + [f'{stem}-{i}{ending}' for i in range(2, 1000) if os.path.exists(f'{stem}-{i}{ending}')]
    return pages


def words(pdf):
    """Page by page: size and boxes of its words, points."""
    pages = []
    for line in run('pdftotext', '-bbox', pdf, '-').decode().splitlines():
        numbers = [float(n) for n in re.findall(r'(?:xMin|yMin|xMax|yMax|width|height)="([-0-9.]+)"', line)]
        if '<page ' in line:
            pages.append((numbers, []))
        elif '<word ' in line:
            pages[-1][1].append((numbers, re.sub('<[^>]*>', '', line).strip()))
    return pages


def overlaps(boxes):
    """Pairs of words whose capitals meet; the room above and below them is left out."""
    cut = []
    for (x0, y0, x1, y1), word in boxes:
        # Of a slanted word the box is larger than the word; tests/sheets judges those by their own corners.
        if not any(abs(side - 1.164 * size / POINT / CAPITALS) < 0.1 for side in (x1 - x0, y1 - y0) for size in HEIGHTS):
            continue
        edge = 0.18 * min(x1 - x0, y1 - y0)
        cut.append((x0 + edge, y0 + edge, x1 - edge, y1 - edge, word))
    cut.sort()
    for i, a in enumerate(cut):
        for b in cut[i + 1:]:
            if b[0] >= a[2]:
                break
            if a[1] < b[3] and b[1] < a[3]:
                yield a[4], b[4], a[0] * POINT, a[1] * POINT


def check_pdf(pdf, paper):
    """What is wrong with a PDF of sheets that are all of one paper."""
    run('qpdf', '--check', pdf)
    pages = words(pdf)
    info = run('pdfinfo', '-box', pdf).decode()
    for line in ('Title:', 'Author:', 'Encrypted:       no', 'JavaScript:      no'):
        if line not in info:
            yield f'pdfinfo tells no "{line}"'
    for row in run('pdffonts', pdf).decode().splitlines()[2:]:
        if not re.search(r'\byes (yes|no)  *yes\b', row):
            yield f'a font is not embedded or not searchable: {row}'
    data = json.loads(run('qpdf', '--json=2', '--json-key=outlines', '--json-key=pagelabels', pdf))
    if len(data['outlines']) != len(pages) or len(data['pagelabels']) < 1:
        yield f'{len(pages)} pages, {len(data["outlines"])} outlines, {len(data["pagelabels"])} labels'
    for number, (size, boxes) in enumerate(pages, 1):
        if any(abs(has * POINT - wanted) > 0.01 for has, wanted in zip(size, paper)):
            yield f'page {number} is {size} points'
        for box, word in boxes:
            if box[0] < 0 or box[1] < 0 or box[2] > size[0] or box[3] > size[1]:
                yield f'page {number}: "{word}" leaves the paper'
            # Ascent and descent together are 1.164 of the font size; of a turned word the box lies on its side.
            if max(box[2] - box[0], box[3] - box[1]) * POINT < 0.98 * 1.164 * LEAST_MM / CAPITALS:
                yield f'page {number}: "{word}" is lower than {LEAST_MM} mm'
        for a, b, x, y in overlaps(boxes):
            yield f'page {number}: "{a}" and "{b}" overlap at {x:.1f}, {y:.1f} mm'


def check_svg(svg, paper, folder):
    """What is wrong with one page as SVG."""
    run('xmllint', '--nonet', '--noout', svg)
    root = ElementTree.parse(svg).getroot()
    if [child.tag for child in root][:2] != [SVG + 'title', SVG + 'desc'] or not root[0].text or not root[1].text:
        yield 'title and desc do not come first'
    if root.get('viewBox') != f'0 0 {paper[0]:g} {paper[1]:g}' or root.get('width') != f'{paper[0]:g}mm':
        yield f'viewBox {root.get("viewBox")}, width {root.get("width")}'
    ids = [element.get('id') for element in root.iter() if element.get('id')]
    if len(ids) != len(set(ids)):
        yield f'ids twice: {sorted({i for i in ids if ids.count(i) > 1})[:5]}'
    for group in root.findall(SVG + 'g'):
        if not group.get('id', '').startswith('layer-') or group[0].tag != SVG + 'title' or not group[0].text:
            yield f'layer {group.get("id")} has no title'
    for element in root.iter():
        if element.tag in (SVG + 'script', SVG + 'image', SVG + 'use', SVG + 'style') or any('href' in key for key in element.keys()):
            yield f'{element.tag} is nothing a sheet needs'
        if element.get('stroke-width') and float(element.get('stroke-width')) not in SERIES:
            yield f'a line is {element.get("stroke-width")} mm wide'
        if element.tag == SVG + 'text' and float(element.get('font-size')) * CAPITALS < LEAST_MM - 0.001:
            yield f'"{element.text}" is {float(element.get("font-size")) * CAPITALS:.3f} mm high'
    pdf = os.path.join(folder, 'page.pdf')
    run('rsvg-convert', '--unlimited', '-f', 'pdf', '-o', pdf, svg)
    (size, _), = words(pdf)
    if any(abs(has * POINT - wanted) > 0.1 for has, wanted in zip(size, paper)):
        yield f'rsvg-convert makes it {size} points'


def table(folder, name):
    """The rows of a table as dictionaries."""
    with open(os.path.join(folder, name), encoding='utf-8', newline='') as file:
        return list(csv.DictReader(file))


def check_ends(pages, strips):
    """Strips at the ends of fields without their number: where room, kind or direction change from one to the next."""
    shown, wanted = set(), [strips[0], strips[-1]]
    for page in pages:
        for group in ElementTree.parse(page).getroot().iter(SVG + 'g'):
            if group.get('id') == 'layer-numbers':
                shown |= {element.text for element in group.iter(SVG + 'text')}
    for a, b in zip(strips, strips[1:]):
        turn = math.remainder(float(a['heading_deg']) - float(b['heading_deg']), 180)
        if a['room'] != b['room'] or a['kind'] != b['kind'] or abs(turn) > 0.06:
            wanted += [a, b]
    for strip in wanted:
        if strip['order'] not in shown:
            yield f'strip {strip["order"]} at an end of its field has no number'


def black_box(svg, layer, folder):
    """Width and height in mm of what a layer paints, by the pixels of it."""
    tree = ElementTree.parse(svg)
    root = tree.getroot()
    for group in root.findall(SVG + 'g'):
        if group.get('id') != layer:
            root.remove(group)
    alone, pdf = os.path.join(folder, 'alone.svg'), os.path.join(folder, 'alone.pdf')
    tree.write(alone)
    run('rsvg-convert', '--unlimited', '-f', 'pdf', '-o', pdf, alone)
    image = run('pdftoppm', '-gray', '-r', str(DPI), pdf)
    _, width, height, _ = re.match(rb'(P5)\s+(\d+)\s+(\d+)\s+(255)\s', image).groups()
    width, height = int(width), int(height)
    pixels = image[len(image) - width * height:]
    dark = pixels.translate(bytes(1 if i < 128 else 0 for i in range(256)))
    rows = [y for y in range(height) if 1 in dark[y * width:(y + 1) * width]]
    columns = [x for x in range(width) if 1 in dark[x::width]]
    return ((columns[-1] - columns[0] + 1) * 25.4 / DPI, (rows[-1] - rows[0] + 1) * 25.4 / DPI)


def check_scale(batch, job, folder):
    """At 1:100 the walls stand as far apart as the corners of the rooms say, to 0.1 mm; 0.7 mm of line are on top."""
    run(batch, 'plan', job, '--tables', folder)
    corners = {kind: [tuple(map(float, pair.split())) for row in table(folder, 'floor.csv') if row['kind'] == kind
                      for pair in re.findall(r'-?[0-9.]+ -?[0-9.]+', row['wkt'])] for kind in ('room', 'doorway')}
    page, = draw(batch, job, os.path.join(folder, 'scale.svg'), '--sheet', 'scope', '--paper', 'A1', '--scale', '1:100')[:1]
    has = black_box(page, 'layer-outline', folder)
    for axis, name in enumerate(('width', 'height')):
        rooms, doorways = ([corner[axis] for corner in corners[kind]] for kind in ('room', 'doorway'))
        wanted = (max(rooms) - min(rooms)) * 10 + 0.7
        # A doorway in the outermost wall reaches beyond it.
        if all(min(rooms) < at < max(rooms) for at in doorways) and abs(has[axis] - wanted) > 0.1:
            yield f'{name} of the walls at 1:100 is {has[axis]:.2f} mm, {wanted:.2f} by the rooms'


def check_same(batch, job, folder):
    """The same bytes twice, in another time zone and in another locale."""
    places = ({}, {}, {'TZ': 'Pacific/Kiritimati'}, {'LC_ALL': 'de_DE.UTF-8', 'TZ': 'America/St_Johns'})
    for ending in ('pdf', 'svg'):
        made = set()
        for i, place in enumerate(places):
            out = os.path.join(folder, f'same-{i}.{ending}')
            draw(batch, job, out, '--language', 'en', env={**os.environ, **place})
            with open(out, 'rb') as file:
                made.add(file.read())
        if len(made) != 1:
            yield f'{len(made)} different {ending} files'


def turned(size, orientation):
    """A paper's width and height when it stands or lies; as it is where that is automatic."""
    return {'portrait': (min(size), max(size)), 'landscape': (max(size), min(size))}.get(orientation, size)


def checks(batch, job, sets):
    """Name and problems of each check of a job."""
    for paper, language, orientation in sets:
        name, size = f'{paper}, {language}, {orientation}', turned(PAPERS[paper], orientation)
        options = ('--paper', paper, '--language', language, '--orientation', orientation)
        with tempfile.TemporaryDirectory() as folder:
            pdf, = draw(batch, job, os.path.join(folder, 'set.pdf'), '--schedule-paper', paper, *options)
            yield f'{name}, pdf', list(check_pdf(pdf, size))
            pages = draw(batch, job, os.path.join(folder, 'set.svg'), '--sheet', 'crew', *options)
            found = [f'page {i}: {what}' for i, page in enumerate(pages, 1) for what in check_svg(page, size, folder)]
            yield f'{name}, svg', found
            run(batch, 'plan', job, '--tables', folder)
            yield f'{name}, ends of fields', list(check_ends(pages, table(folder, 'strips.csv')))
    with tempfile.TemporaryDirectory() as folder:
        yield 'true to scale', list(check_scale(batch, job, folder))
        yield 'same bytes', list(check_same(batch, job, folder))


def main(batch, jobs):
    """Reports as TAP; how many checks failed."""
    lacking = [tool for tool in ('qpdf', 'pdfinfo', 'pdffonts', 'pdftotext', 'pdftoppm', 'xmllint', 'rsvg-convert') if not shutil.which(tool)]
    if lacking:
        print(f'1..0 # SKIP {", ".join(lacking)} not installed')
        return 0
    number = failed = 0
    # Every paper, language and orientation, each for some job.
    sets = [('A4', 'de', 'auto'), ('A3', 'en', 'auto'), ('A1', 'es', 'auto'), ('Letter', 'es', 'landscape'),
            ('ANSI D', 'es_US', 'portrait'), ('A3', 'de', 'portrait')]
    for place, job in enumerate(jobs):
        for name, found in checks(batch, job, sets[place::len(jobs)]):
            number += 1
            failed += bool(found)
            print(f'{"not ok" if found else "ok"} {number} {os.path.basename(job)}: {name}')
            for what in found[:20]:
                print('#', what)
    print(f'1..{number}')
    return failed


if __name__ == '__main__':
    sys.exit(1 if main(sys.argv[1], sys.argv[2:]) else 0)
