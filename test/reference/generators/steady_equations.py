"""The equations of a steady stove, all at once: what is left over in each of them for a guess of everything unknown.

Unknown: the flow of every passage, pressure, temperature and share of gas of every space, the temperature of every
stretch of wall, of the air along every gap, and of the front, and the front's carbon monoxide. Everything works on
one guess or on a stack of them (guesses along the first axes), which is how the derivatives are had.
"""
import numpy

from steady_front import Front, burn, stoichiometric_air
from steady_gas import (
    AIR,
    GAS_CONSTANT,
    MASS,
    REFERENCE_TEMPERATURE,
    air_conductivity,
    air_heat,
    air_viscosity,
    enthalpies,
    ratio_to_air,
)
from steady_stove import OUTSIDE
from steady_walls import GRAVITY, STEFAN_BOLTZMANN, emissivity, upright_wall

REFERENCE_ENTHALPIES = enthalpies(numpy.array(REFERENCE_TEMPERATURE))
# Typical sizes: of a flow [kg/s], of a heat flow [W].
FLOW = 1e-4
HEAT = 100.0
# Of the differences that stand for derivatives, on unknowns scaled to about one.
STEP = 1e-7


def forward_part(net, exchange):
    return (net + numpy.sqrt(net * net + exchange * exchange)) / 2


class Equations:
    def __init__(self, stove):
        case = stove.case
        self.stove = stove
        bed_diameter = 2 * numpy.sqrt(stove.bed_area / numpy.pi)
        setting = case['fuel'], case['fuel']['moisture'], stove.ambient, stove.k
        self.front = Front(*setting, bed_diameter)
        self.air_enthalpy = float(enthalpies(numpy.array(stove.ambient)) @ AIR)
        # Viscosity is that of the gas of a typical front: air at 0.03 m/s, a bed of 100 mm.
        typical = Front(*setting, 0.1)
        air = float(typical.air_per_fuel(0.03))
        closed = typical.alone(air, stove.ambient)
        self.ratios = [[0, 0, 1]] * 2 if closed is None else [ratio_to_air(closed[0]), ratio_to_air(burn(closed[0]))]
        closed = self.front.alone(air, stove.ambient)
        self.first_front = None if closed is None else (closed[1], closed[0][4])
        sizes = {
            'flow': (len(stove.links), FLOW),
            'pressure': (stove.nodes, 1.0),
            'temperature': (stove.nodes, 1000.0),
            'gas': (stove.nodes, 1.0),
            'wall': (stove.walls, 1000.0),
            'gap': (len(stove.gaps), 1000.0),
            'front': (1, 1000.0),
            'monoxide': (1, 10.0),
        }
        self.scale = numpy.concatenate([numpy.full(*size) for size in sizes.values()])
        ends = numpy.cumsum([0] + [count for count, _ in sizes.values()])
        self.at = {key: slice(a, b) for key, a, b in zip(sizes, ends, ends[1:])}
        self.size = int(ends[-1])

    def split(self, guess):
        values = guess * self.scale
        return {key: values[..., where] for key, where in self.at.items()}

    def joined(self, values):
        return numpy.concatenate([values[key] for key in self.at], -1) / self.scale

    # --- The front -----------------------------------------------------------------------------------------

    def make(self, u):
        """What the front gets and makes."""
        stove, front = self.stove, self.front
        n = {}
        k = stove.front_link
        net = u['flow'][..., k]
        below = stove.start[k]
        outside = below == OUTSIDE
        n['air_temperature'] = numpy.full_like(net, stove.ambient) if outside else u['temperature'][..., below]
        n['temperature'] = u['front'][..., 0]

        # Air ratio and share of burnt gas in what comes depend on each other through the gas's need of air.
        share = 1.0
        z = 0.0 if outside else u['gas'][..., below]
        air = front.air_per_fuel(net / (stove.air_density * stove.bed_area))
        for _ in range(1 if outside else 4):
            moles = front.gas(air, u['monoxide'][..., 0])
            mass = moles @ MASS
            need = stoichiometric_air(moles) / mass
            share = numpy.maximum(0, 1 - z * (1 + need))
            air = front.air_per_fuel(net * share / (stove.air_density * stove.bed_area))
        moles = front.gas(air, u['monoxide'][..., 0])
        n['mass'] = mass = moles @ MASS
        n['need'] = need = stoichiometric_air(moles) / mass
        n['moles'] = moles
        n['air'] = air
        n['share'] = share
        n['unburnt'] = moles / mass[..., None]
        n['burnt'] = burn(moles) / (mass * (1 + need))[..., None]
        n['heat'] = (
            n['unburnt'] @ REFERENCE_ENTHALPIES
            + need * (AIR @ REFERENCE_ENTHALPIES)
            - (1 + need) * (n['burnt'] @ REFERENCE_ENTHALPIES)
        )
        n['stoichiometric'] = 1 / (1 + need)
        n['fuel'] = net * share / air
        n['gain'] = 1 + share * (mass - air) / air
        return n

    def mixture(self, n, z):
        """Moles in a kilogram where a share z came from the front: mixed is burnt."""
        full = n['stoichiometric'][..., None]
        raw = numpy.maximum(0, (z - full) / (1 - full))
        burnt = numpy.minimum(z / full, 1 - raw)
        air = 1 - raw - burnt
        return (
            raw[..., None] * n['unburnt'][..., None, :]
            + burnt[..., None] * n['burnt'][..., None, :]
            + air[..., None] * AIR
        )

    def bound_heat(self, n, z):
        full = n['stoichiometric'][..., None]
        return numpy.maximum(0, (z - full) / (1 - full)) * n['heat'][..., None]

    def viscosity(self, n, z, temperature):
        full = n['stoichiometric'][..., None]
        raw, burnt = (numpy.polyval(ratio, 1000 / temperature) for ratio in self.ratios)
        lean = 1 + z / full * (burnt - 1)
        rich = burnt + (z - full) / (1 - full) * (raw - burnt)
        return numpy.where(z <= full, lean, rich) * air_viscosity(temperature)

    # --- Everything ----------------------------------------------------------------------------------------

    def with_outside(self, values, outside):
        """Of the spaces and, last, of the open air: so that OUTSIDE, -1, is an index like the others."""
        last = numpy.broadcast_to(outside, (*values.shape[:-1], 1))
        return numpy.concatenate([values, last], -1)

    def state(self, guess):
        """All that the equations need, worked out from a guess."""
        stove = self.stove
        u = self.split(guess)
        n = self.make(u)
        moles = self.mixture(n, u['gas'])
        s = {'u': u, 'n': n}
        s['enthalpy'] = (moles * enthalpies(u['temperature'])).sum(-1)
        s['density'] = stove.pressure / (GAS_CONSTANT * moles.sum(-1) * u['temperature'])
        density = self.with_outside(s['density'], stove.air_density)
        warmth = self.with_outside(u['temperature'], stove.ambient)
        gas = self.with_outside(u['gas'], 0.0)
        flow = u['flow']

        unsure = 0.03 * stove.of_row * numpy.abs(flow).max(-1, keepdims=True)
        a, b = density[..., stove.start], density[..., stove.end]
        mean = (a + b) / 2
        difference = numpy.maximum(0.1, numpy.abs(a - b) / mean)
        buoyant = 2 * 0.055 * mean * stove.area * numpy.sqrt(GRAVITY * stove.diameter * difference)
        exchange = numpy.where(stove.is_bed, unsure, numpy.maximum(buoyant, unsure))
        exchange[..., stove.front_link] = 0
        s['forward'] = forward = forward_part(flow, exchange)
        s['back'] = back = forward - flow
        total = numpy.maximum(forward + back, 1e-12)
        s['total'] = total
        s['share'] = share = forward / total

        def blend(values):
            return share * values[..., stove.start] + (1 - share) * values[..., stove.end]

        s['passing'] = blend(density)
        s['viscosity'] = self.viscosity(n, blend(gas), blend(warmth))
        self.resist(s, density)
        self.burn(s)
        self.warm(s, warmth)
        return s

    def resist(self, s, density):
        """What each passage asks for its flow, and what drives it."""
        stove, u, n = self.stove, s['u'], s['n']
        flow = u['flow']
        linear = stove.viscous * s['viscosity'] / s['passing']
        quadratic = stove.inertial / s['passing']
        lighter = stove.air_density - density
        head = lighter[..., stove.start] * stove.rise_start - lighter[..., stove.end] * stove.rise_end

        # Raw fuel below the front, char above it.
        k = stove.bed_links
        own = numpy.arange(len(k)) == stove.front_segment
        gain = numpy.where(own, n['gain'][..., None], 1.0)
        fresh = own | (flow[..., k] < 0)
        hot = n['temperature'][..., None]
        fresh_density = stove.pressure / (GAS_CONSTANT * n['unburnt'].sum(-1)[..., None] * hot)
        char_density = numpy.where(fresh, fresh_density, s['passing'][..., k])
        hot_viscosity = numpy.polyval(self.ratios[0], 1000 / hot) * air_viscosity(hot)
        char_viscosity = numpy.where(fresh, hot_viscosity, s['viscosity'][..., k])
        raw_viscous, raw_inertial = stove.raw_bed
        char_viscous, char_inertial = stove.char_bed
        settled = stove.char_depth * stove.k['charSettle']
        linear[..., k] = (
            raw_viscous * stove.raw_depth * s['viscosity'][..., k] / s['passing'][..., k]
            + gain * char_viscous * settled * char_viscosity / char_density
        ) / stove.bed_area
        quadratic[..., k] = (
            raw_inertial * stove.raw_depth / s['passing'][..., k]
            + gain**2 * char_inertial * settled / char_density
        ) / stove.bed_area**2
        head[..., k] = (
            (stove.air_density - s['passing'][..., k]) * stove.raw_depth
            + (stove.air_density - char_density) * stove.char_depth
            - numpy.where(stove.end[k] == OUTSIDE, 0, lighter[..., stove.end[k]] * stove.over_bed)
        )
        pressure = self.with_outside(u['pressure'], 0.0)
        s['drive'] = (
            pressure[..., stove.start] - pressure[..., stove.end] + GRAVITY * head + stove.wind
        )
        s['asked'] = linear * flow + quadratic * flow * numpy.abs(flow)

    def burn(self, s):
        """Mass, gas and heat that comes into each space, and what burns there."""
        stove, u, n = self.stove, s['u'], s['n']
        k = stove.front_link
        net = u['flow'][..., k]
        made = n['fuel'] * n['mass']
        through = net * (1 - n['share'])
        # The front sends its own streams on; what it takes, it takes whole.
        sent = s['forward'].copy()
        sent[..., k] = 0
        arriving = stove.at_end[k]
        gas, bound = self.with_outside(u['gas'], 0.0), self.with_outside(self.bound_heat(n, u['gas']), 0.0)
        heat = self.with_outside(s['enthalpy'], self.air_enthalpy)

        def carried(values):
            return (sent * values[..., stove.start]) @ stove.at_end + (s['back'] * values[..., stove.end]) @ stove.at_start

        front_heat = made * (n['unburnt'] * enthalpies(n['temperature'])).sum(-1) + through * (
            n['burnt'] * enthalpies(n['air_temperature'])
        ).sum(-1)
        s['coming'] = carried(numpy.ones(stove.nodes + 1)) + (made + through)[..., None] * arriving
        s['leaving'] = s['forward'] @ stove.at_start + s['back'] @ stove.at_end
        s['gas'] = carried(gas) + (made + through * n['stoichiometric'])[..., None] * arriving - s['coming'] * u['gas']
        unburnt = carried(bound) + (made * n['heat'])[..., None] * arriving - s['coming'] * bound[..., :-1]
        s['burnt'] = numpy.maximum(0, unburnt)
        s['heat'] = (
            carried(heat)
            + front_heat[..., None] * arriving
            - s['coming'] * s['enthalpy']
            - stove.k['flameRadiation'] * s['burnt']
        )

    def warm(self, s, warmth):
        """Walls, gaps, and what they take from the gas and give to it."""
        stove, u, n = self.stove, s['u'], s['n']
        wall, gap = u['wall'], u['gap']
        nusselt = numpy.where(stove.is_flame, stove.k['flameWallNusselt'], 4.0)
        across = numpy.sqrt(4 * stove.space_area / numpy.pi)
        per_area = nusselt * air_conductivity(u['temperature']) / across
        taken = wall @ (stove.on_node * stove.wall_area[:, None]) - (
            stove.wall_area @ stove.on_node
        ) * u['temperature']
        s['heat'] = s['heat'] + per_area * taken

        k = stove.gaps
        gap_per_area = 4.86 * air_conductivity(gap) / stove.diameter[k]
        beside = stove.wall_area @ stove.on_gap
        has_walls = beside > 0
        conductance = numpy.where(has_walls, gap_per_area * beside, 1.0)
        walls = wall @ (stove.on_gap * stove.wall_area[:, None]) / numpy.where(has_walls, beside, 1.0)
        share = s['share'][..., k]
        enters = share * warmth[..., stove.start[k]] + (1 - share) * warmth[..., stove.end[k]]
        capacity = s['total'][..., k] * air_heat(enters)
        reached = numpy.where(has_walls, capacity * -numpy.expm1(-conductance / capacity), 0.0)
        given = reached * (walls - enters)
        s['gap'] = numpy.where(has_walls, walls - given / conductance, enters) - gap
        s['heat'] = s['heat'] + (share * given) @ stove.at_end[k] + ((1 - share) * given) @ stove.at_start[k]

        # The walls' own balance.
        e = emissivity(wall, stove.case['burntOff'])
        surplus = (
            n['fuel'][..., None] * self.front.loss * stove.beside_char
            + stove.k['flameRadiation'] * s['burnt'] @ stove.flame_share.T
            + stove.wall_area * ((per_area * u['temperature']) @ stove.on_node.T - wall * (per_area @ stove.on_node.T))
            + stove.wall_area * ((gap_per_area * gap) @ stove.on_gap.T - wall * (gap_per_area @ stove.on_gap.T))
        )
        free = upright_wall(wall, stove.ambient, stove.wall_height, stove.pressure)
        outward = free * (wall - stove.ambient) + STEFAN_BOLTZMANN * e * (wall**4 - stove.ambient**4)
        surplus = surplus - stove.open_sides * stove.wall_area * outward
        inner, outer = stove.pairs.T
        ratio = stove.wall_area[inner] / stove.wall_area[outer]
        effective = 1 / (1 / e[..., inner] + ratio * (1 / e[..., outer] - 1))
        shone = STEFAN_BOLTZMANN * effective * stove.wall_area[inner] * (wall[..., inner] ** 4 - wall[..., outer] ** 4)
        from_inner = numpy.eye(stove.walls)[inner]
        to_outer = numpy.eye(stove.walls)[outer]
        s['wall'] = surplus - shone @ from_inner + shone @ to_outer

    def left_over(self, guess):
        """Zero when every equation holds; each scaled to about one."""
        s = self.state(guess)
        n = s['n']
        net_heat = self.front.heat_residual(
            n['moles'], n['air'], (enthalpies(n['air_temperature']) @ AIR), n['temperature']
        )
        return numpy.concatenate(
            [
                s['drive'] - s['asked'],
                (s['coming'] - s['leaving']) / FLOW,
                s['heat'] / HEAT,
                s['gas'] / FLOW,
                s['wall'] / HEAT,
                s['gap'] / 1000,
                net_heat[..., None] / 1e6,
                self.front.shift_residual(n['moles'], n['temperature'])[..., None],
            ],
            -1,
        )

    def slopes(self, guess, unknowns=None):
        """Derivatives of all residuals by some or all unknowns, by differences of one stack of guesses."""
        steps = STEP * numpy.eye(self.size)[slice(None) if unknowns is None else unknowns]
        here, *there = self.left_over(guess + numpy.concatenate([0 * steps[:1], steps]))
        return (numpy.array(there) - here).T / STEP
