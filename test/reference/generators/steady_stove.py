"""One stove of steadyCases.json as arrays: its passages, spaces, bed and walls, with the wind on its holes."""
import json

import numpy
from scipy.interpolate import CubicHermiteSpline

from steady_gas import AIR, GAS_CONSTANT, REFERENCE

OUTSIDE = -1
# Holes whose angles to the wind differ by less than this feel the same wind [deg].
SAME_ANGLE = 1e-3


def cylinder_pressure():
    """Pressure coefficient by angle: a cubic that keeps to the table's ups and downs, flat at both ends."""
    tables = json.loads((REFERENCE / 'windCylinder.json').read_text())
    angle, value = numpy.array(tables['subcritical_Re_1e5_from_memory_pm0.15'], float).T
    chord = numpy.diff(value) / numpy.diff(angle)
    slope = numpy.zeros_like(value)
    same = chord[:-1] * chord[1:] > 0
    pair = chord[:-1][same], chord[1:][same]
    slope[1:-1][same] = 2 * pair[0] * pair[1] / (pair[0] + pair[1])
    return CubicHermiteSpline(angle, value, slope)


CYLINDER = cylinder_pressure()


def angle_from_wind(bearing, wind_from):
    turn = (bearing - wind_from) % 360
    return min(turn, 360 - turn)


def part_for_wind(links, wind):
    """Holes of a row that feel another wind become passages of their own; `row` is the row they came from."""
    parted = []
    for row, link in enumerate(links):
        exposure = link['exposure']
        outside = OUTSIDE in (link['from'], link['to'])
        if wind['speed'] == 0 or not outside or exposure is None or exposure['kind'] != 'wall':
            parted.append({**link, 'row': row, 'of_row': 1.0})
            continue
        groups = {}
        for bearing in exposure['bearings']:
            groups.setdefault(round(angle_from_wind(bearing, wind['from']) / SAME_ANGLE), []).append(bearing)
        for _, bearings in sorted(groups.items()):
            share = len(bearings) / link['count']
            shape = link['shape']
            parted.append(
                {
                    **link,
                    'row': row,
                    'of_row': share,
                    'area': link['area'] * share,
                    'shape': {'viscous': shape['viscous'] / share, 'inertial': shape['inertial'] / share**2},
                    'exposure': {'kind': 'wall', 'bearings': bearings},
                }
            )
    return parted


def wind_pressure(link, wind, air_density, k):
    """Of the wind at the open end of a passage, towards its other end [Pa]."""
    exposure = link['exposure']
    ends = link['from'] == OUTSIDE, link['to'] == OUTSIDE
    if wind['speed'] == 0 or exposure is None or exposure['kind'] == 'under' or not any(ends):
        return 0.0
    if exposure['kind'] == 'top':
        coefficient = k['windOpenTop']
    else:
        coefficient = float(CYLINDER(angle_from_wind(exposure['bearings'][0], wind['from'])))
        if coefficient < 0:
            coefficient *= k['windSuctionShare']
    pressure = coefficient * air_density * wind['speed'] ** 2 / 2
    return pressure if ends[0] else -pressure


def incidence(ends, nodes):
    """Rows are passages, columns spaces; the open air has no column."""
    matrix = numpy.zeros((len(ends), nodes))
    for row, node in enumerate(ends):
        if node != OUTSIDE:
            matrix[row, node] = 1
    return matrix


class Stove:
    def __init__(self, case):
        plan, site, k = case['plan'], case['site'], case['coefficients']
        self.case = case
        self.k = k
        self.ambient = site['temperature']
        self.pressure = site['pressure']
        self.air_density = self.pressure / (GAS_CONSTANT * AIR.sum() * self.ambient)
        self.lay_out_spaces(plan)
        self.lay_out_passages(plan, site['wind'])
        self.lay_out_bed(plan['bed'], case['position'])
        self.lay_out_walls(plan['walls'])

    def lay_out_spaces(self, plan):
        nodes = plan['nodes']
        self.nodes = len(nodes)
        self.height = numpy.array([node['height'] for node in nodes] + [0.0])
        self.space_area = numpy.array([node['area'] for node in nodes])
        self.is_flame = numpy.array([node['space'] == 'flame' for node in nodes])

    def lay_out_passages(self, plan, wind):
        self.links = part_for_wind(plan['links'], wind)
        self.start = numpy.array([link['from'] for link in self.links])
        self.end = numpy.array([link['to'] for link in self.links])
        self.at_start = incidence(self.start, self.nodes)
        self.at_end = incidence(self.end, self.nodes)
        self.viscous = numpy.array([link['shape']['viscous'] for link in self.links])
        self.inertial = numpy.array([link['shape']['inertial'] for link in self.links])
        self.area = numpy.array([link['area'] for link in self.links])
        self.of_row = numpy.array([link['of_row'] for link in self.links])
        self.diameter = numpy.array([link['hydraulicDiameter'] for link in self.links])
        self.is_gap = numpy.array([link['kind'] == 'gap' for link in self.links])
        self.is_bed = numpy.array([link['kind'] == 'bed' for link in self.links])
        self.gaps = numpy.flatnonzero(self.is_gap)
        # Creeping flow through holes and throats is given for 30/Re; a gap's friction is exact.
        self.viscous = self.viscous * numpy.where(self.is_gap, 1, self.k['creepingHoleLoss'] / 30)
        at = numpy.array([link['height'] for link in self.links])
        self.rise_start = numpy.where(self.start == OUTSIDE, 0, at - self.height[self.start])
        self.rise_end = numpy.where(self.end == OUTSIDE, 0, at - self.height[self.end])
        half = (self.height[self.end] - self.height[self.start]) / 2
        self.rise_start = numpy.where(self.is_gap, half, self.rise_start)
        self.rise_end = numpy.where(self.is_gap, -half, self.rise_end)
        self.wind = numpy.array([wind_pressure(link, wind, self.air_density, self.k) for link in self.links])

    def lay_out_bed(self, bed, position):
        fuel = self.case['fuel']
        front_height = (1 - position) * bed['depth']
        self.bed_area = bed['area']
        self.bed_links = numpy.array([self.link_of(segment['link']) for segment in bed['segments']])
        low = numpy.array([segment['from'] for segment in bed['segments']])
        high = numpy.array([segment['to'] for segment in bed['segments']])
        inside = (front_height >= low) & (front_height <= high)
        self.front_segment = int(numpy.argmax(inside)) if inside.any() else len(low) - 1
        self.front_link = int(self.bed_links[self.front_segment])
        self.raw_depth = numpy.clip(front_height, low, high) - low
        self.char_depth = high - low - self.raw_depth
        top = bed['base'] + high
        end = self.end[self.bed_links]
        self.over_bed = numpy.where(end == OUTSIDE, 0, top - self.height[end])
        self.front_from = min(bed['base'] + front_height, bed['base'] + bed['depth'] - 1e-3)
        self.bed_top = bed['base'] + bed['depth']
        self.raw_bed = raw_bed(fuel, bed['depth'])
        self.char_bed = ergun(self.k['charVoid'], fuel['pieceDiameter'] * self.k['charShrink'])

    def lay_out_walls(self, walls):
        self.walls = len(walls)
        self.wall_area = numpy.array([2 * numpy.pi * w['radius'] * (w['top'] - w['bottom']) for w in walls])
        self.wall_height = numpy.array([w['top'] - w['bottom'] for w in walls])
        self.open_sides = numpy.array(
            [sum(w[side]['kind'] == 'open air' for side in ('inside', 'outside')) for w in walls], float
        )
        # Which walls touch which space or gap, once for each side.
        self.on_node = numpy.zeros((self.walls, self.nodes))
        self.on_gap = numpy.zeros((self.walls, len(self.gaps)))
        self.around = numpy.zeros((self.walls, self.nodes))
        for s, wall in enumerate(walls):
            for name in ('inside', 'outside'):
                side = wall[name]
                if side['kind'] == 'node':
                    self.on_node[s, side['node']] += 1
                    if name == 'inside':
                        self.around[s, side['node']] = 1
                elif side['kind'] == 'gap':
                    self.on_gap[s, self.gap_of(side['link'])] += 1
        beside = numpy.array(
            [
                max(0.0, min(w['top'], self.bed_top) - max(w['bottom'], self.front_from))
                if w['inside']['kind'] == 'bed'
                else 0.0
                for w in walls
            ]
        )
        self.beside_char = beside / beside.sum() if beside.sum() > 0 else beside
        side_area = self.wall_area @ self.around
        grey = numpy.where(side_area > 0, side_area / (side_area + 2 * self.space_area), 0)
        self.flame_share = self.around * self.wall_area[:, None] / numpy.where(side_area > 0, side_area, 1) * grey
        pairs = [(s, across(walls, s)) for s in range(self.walls)]
        self.pairs = numpy.array([pair for pair in pairs if pair[1] is not None], int).reshape(-1, 2)

    def link_of(self, row):
        """Where a passage of the plan stands now: wind moves it along."""
        return next(i for i, link in enumerate(self.links) if link['row'] == row)

    def gap_of(self, row):
        return int(numpy.flatnonzero(self.gaps == self.link_of(row))[0])


def ergun(void, diameter):
    """Pressure drop of a metre of bed: viscous * mu u + inertial * rho u^2."""
    solid = 1 - void
    return 150 * solid**2 / (void**3 * diameter**2), 1.75 * solid / (void**3 * diameter)


def raw_bed(fuel, level):
    """The same of the raw fuel: Ergun's for pieces as they fall, channels along sticks that stand; more with fines."""
    void, pieces = fuel['voidFraction'], fuel['pieces']
    if fuel['packing'] == 'upright':
        round_stick = pieces['shape'] == 'rod'
        wide, thick = (pieces['diameter'],) * 2 if round_stick else (pieces['width'], pieces['thickness'])
        perimeter_by_area = 2 * (wide + thick) / (wide * thick)
        wetted = perimeter_by_area * (1 - void)
        law = 0.75 * wetted**2 / void**3, 1.5 / (2 * void**2 * min(pieces['length'], level))
    else:
        law = ergun(void, fuel['pieceDiameter'])
    fines = 1 + 32 * fuel['fines'] - 20 * fuel['fines'] ** 2
    return law[0] * fines, law[1] * fines


def across(walls, s):
    """The first wall outwards that looks on the same air."""
    side = walls[s]['outside']
    if side['kind'] not in ('gap', 'node'):
        return None
    return next(
        (i for i, wall in enumerate(walls) if wall['radius'] > walls[s]['radius'] and wall['inside'] == side), None
    )
