# SPDX-License-Identifier: GPL-3.0-or-later
"""Reads the folder of tables that `oxturn-batch plan JOB --tables FOLDER` writes; knows nothing else of a job or a plan."""
import csv
import json
import os

from shapely import wkt

COLUMNS = {
    'floor': 'id,kind,name,wkt,coats,speed_m_per_min',
    'strips': 'order,strip,room,lane,kind,coat,x1,y1,x2,y2,heading_deg,length_m,width_m,speed_m_per_min,minutes,station,wkt,supply,hose_m,cord_m,caution,paces,done',
    'moves': 'order,from_strip,to_strip,kind,minutes,length_m,cx,cy,wkt',
    'zones': 'id,room,area_m2,wkt,coat',
    'edge': 'id,room,cause,area_m2,length_m,wkt,done',
    'stations': 'id,kind,x,y,length_m,strips,farthest_m',
}
SUMMARY = {
    'machine': ['blast_width_m', 'blast_length_m', 'front_m', 'rear_m', 'left_m', 'right_m', 'wall_gap_m', 'min_overlap_m',
                'turn_radius_m', 'min_strip_m'],
    'rates': ['travel_speed_m_per_min', 'walk_speed_m_per_min', 'swing_s', 'edge_m2_per_hour'],
    'totals': ['target_m2', 'blasted_m2', 'double_m2', 'edge_m2', 'edge_limit_m2', 'strips', 'strip_m', 'move_m',
               'strip_hours', 'move_hours', 'edge_hours', 'labour_hours', 'ideal_hours', 'coats_m2'],
    'record': ['days', 'done_strips', 'left_strips', 'done_m2', 'left_m2', 'done_hours', 'left_hours', 'meter_hours', 'lost_strips'],
}
OPTIONAL = {'edge_m_per_hour'}  # where the job has a rate by length
CAUSES = {'wall', 'corner', 'obstacle', 'drop', 'narrow', 'reach'}
FLOOR_KINDS = {'room', 'solid', 'pit', 'masked', 'excluded', 'condition', 'doorway', 'joint', 'target', 'travel'}


class Strip:
    """One row of strips.csv."""

    def __init__(self, row):
        self.order, self.room, self.kind, self.coat = int(row['order']), row['room'], row['kind'], int(row['coat'])
        self.name, self.lane = row['strip'], row['lane']
        self.a = (float(row['x1']), float(row['y1']))
        self.b = (float(row['x2']), float(row['y2']))
        self.heading_deg, self.length = float(row['heading_deg']), float(row['length_m'])
        self.width, self.speed, self.minutes = float(row['width_m']), float(row['speed_m_per_min']), float(row['minutes'])
        self.shape = wkt.loads(row['wkt'])
        self.station, self.supply, self.caution = row['station'], row['supply'], row['caution']
        self.hose_m, self.cord_m = float(row['hose_m'] or 0), float(row['cord_m'] or 0)
        self.paces = [tuple(float(number) for number in pace.split('@')) for pace in row['paces'].split()]


class Move:
    """One row of moves.csv."""

    def __init__(self, row):
        self.order, self.start, self.stop, self.kind = int(row['order']), row['from_strip'], row['to_strip'], row['kind']
        self.minutes, self.length = float(row['minutes']), float(row['length_m'])
        self.turn = (float(row['cx']), float(row['cy'])) if row['cx'] else None
        path = wkt.loads(row['wkt'])
        self.path = [] if path.is_empty else list(path.coords)


class Area:
    """One row of edge.csv or zones.csv."""

    def __init__(self, row):
        self.name, self.room, self.cause = row['id'], row['room'], row.get('cause', '')
        self.area, self.shape = float(row['area_m2']), wkt.loads(row['wkt'])
        self.length = float(row.get('length_m', 0))


class Station:
    """One row of stations.csv."""

    def __init__(self, row):
        self.name, self.kind, self.at = row['id'], row['kind'], (float(row['x']), float(row['y']))
        self.length, self.strips, self.farthest = float(row['length_m']), int(row['strips']), float(row['farthest_m'] or 0)


class Tables:
    """All tables of one folder. `problems` lists what is wrong with their form."""

    def __init__(self, folder):
        self.folder, self.problems = folder, []
        floor = self.rows('floor')
        self.floor = [(row['kind'], row['id'], wkt.loads(row['wkt'])) for row in floor]
        self.asked = [(row['kind'], int(row['coats'] or 0), float(row['speed_m_per_min'] or 0), wkt.loads(row['wkt']))
                      for row in floor if row['kind'] in ('room', 'condition')]
        self.problems += [f'floor.csv: kind {kind}' for kind, _, _ in self.floor if kind not in FLOOR_KINDS]
        self.strips = [Strip(row) for row in self.rows('strips')]
        self.moves = [Move(row) for row in self.rows('moves')]
        self.zones = [Area(row) for row in self.rows('zones')]
        self.edges = [Area(row) for row in self.rows('edge')]
        self.problems += [f'edge.csv: cause {edge.cause}' for edge in self.edges if edge.cause not in CAUSES]
        self.stations = [Station(row) for row in self.rows('stations')]
        self.read_summary()

    def rows(self, name):
        """Rows of NAME.csv as dictionaries."""
        with open(os.path.join(self.folder, name + '.csv'), 'rb') as file:
            data = file.read()
        if data.count(b'\n') != data.count(b'\r\n') or not data.endswith(b'\r\n'):
            self.problems.append(f'{name}.csv: lines do not end in CR LF')
        text = data.decode('utf-8')
        if text.partition('\r\n')[0] != COLUMNS[name]:
            self.problems.append(f'{name}.csv: header {text.partition(chr(13))[0]}')
        csv.field_size_limit(1 << 30)
        return list(csv.DictReader(text.splitlines()))

    def read_summary(self):
        """Reads summary.json into `machine`, `rates`, `totals` and `record`."""
        with open(os.path.join(self.folder, 'summary.json'), encoding='utf-8') as file:
            summary = json.load(file)
        for group, names in SUMMARY.items():
            if [name for name in summary.get(group, {}) if name not in OPTIONAL] != names:
                self.problems.append(f'summary.json: {group} has {list(summary.get(group, {}))}')
            setattr(self, group, summary[group])
        if not isinstance(summary.get('out_of_reach'), int):
            self.problems.append('summary.json: out_of_reach')
        self.out_of_reach = summary.get('out_of_reach')

    def shapes(self, *kinds):
        """Shapes of the rows of floor.csv of these kinds."""
        return [shape for kind, _, shape in self.floor if kind in kinds]
