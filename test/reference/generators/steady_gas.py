"""Gases of the second steady state: enthalpies from NASA polynomials, viscosity and conductivity, Wilke's rule.

Everything works on arrays of temperatures of any shape. Species stand in the order of SPECIES, tar last.
"""
import json
import pathlib

import numpy

REFERENCE = pathlib.Path(__file__).resolve().parent.parent
GAS_CONSTANT = 1.380649e-23 * 6.02214076e23
REFERENCE_TEMPERATURE = 298.15
ATOMS = {'C': 0.012011, 'H': 0.001008, 'O': 0.015999, 'N': 0.014007, 'Ar': 0.03995}
SPECIES = ['N2', 'O2', 'Ar', 'CO2', 'CO', 'H2O', 'H2', 'CH4', 'tar']
INDEX = {name: i for i, name in enumerate(SPECIES)}
TAR = {'C': 1.0, 'H': 1.2, 'O': 0.2}
# Channiwala & Parikh, MJ/kg of the dry mass shares in per cent.
HEATING = {'C': 0.3491, 'H': 1.1783, 'S': 0.1005, 'O': -0.1034, 'N': -0.0151, 'ash': -0.0211}


def mass_of(formula):
    return sum(number * ATOMS[element] for element, number in formula.items())


# The collection itself as it was read from outside, not the table of the program that is checked.
RECORDS = json.loads((REFERENCE / 'tm4513.json').read_text())['species']
for _record in RECORDS.values():
    # Argon has one range.
    _record['terms'] = [_record['terms'][0], _record['terms'][-1]]
# Liquid water of the same collection, one range, 273.15-600 K.
LIQUID_WATER = [72.5575005, -0.662445402, 0.00256198746, -4.36591923e-06, 2.78178981e-09, -41886.5499, -288.280137]


def polynomial(terms, temperature):
    """h/R of one range of a record [K]."""
    a1, a2, a3, a4, a5, a6 = terms[:6]
    t = temperature
    return t * (a1 + t * (a2 / 2 + t * (a3 / 3 + t * (a4 / 4 + t * a5 / 5)))) + a6


def molar_enthalpy(name, temperature):
    """With the heat of formation [J/mol]."""
    low, high = RECORDS[name]['terms']
    t = numpy.asarray(temperature, float)
    return GAS_CONSTANT * numpy.where(t <= 1000, polynomial(low, t), polynomial(high, t))


def liquid_water_enthalpy(temperature):
    """[J/kg]"""
    return GAS_CONSTANT * polynomial(LIQUID_WATER, temperature) / mass_of({'H': 2, 'O': 1})


def higher_heating_value(analysis):
    """[J/kg]"""
    return 1e8 * sum(factor * analysis.get(key, 0) for key, factor in HEATING.items())


def formation_enthalpy(higher, carbon, hydrogen):
    """What burns to CO2 and liquid water and gives `higher` [J/kg]."""
    return (
        higher
        + carbon / ATOMS['C'] * float(molar_enthalpy('CO2', REFERENCE_TEMPERATURE))
        + hydrogen / ATOMS['H'] / 2 * GAS_CONSTANT * polynomial(LIQUID_WATER, REFERENCE_TEMPERATURE)
    )


def tar_terms():
    """cp = 0.40 + 2.9e-3 T - 0.9e-6 T^2 kJ/(kg K), formation from the heating value of its composition."""
    mass = mass_of(TAR)
    shares = {element: number * ATOMS[element] / mass for element, number in TAR.items()}
    formation = formation_enthalpy(higher_heating_value(shares), shares['C'], shares['H'])
    scale = mass / GAS_CONSTANT
    terms = [400 * scale, 2.9 * scale, -0.9e-3 * scale, 0, 0, 0, 0]
    terms[5] = formation * scale - polynomial(terms, REFERENCE_TEMPERATURE)
    return terms


FORMULA = {name: RECORDS[name]['composition'] for name in SPECIES[:-1]} | {'tar': TAR}
MASS = numpy.array([mass_of(FORMULA[name]) for name in SPECIES])
_terms = {name: RECORDS[name]['terms'] for name in SPECIES[:-1]} | {'tar': [tar_terms(), tar_terms()]}
# Enthalpy terms as h/R = a6 + t (a1 + t (a2/2 + ...)), one column a species.
_DIVISOR = numpy.array([1, 2, 3, 4, 5])
_LOW, _HIGH = (
    numpy.array([[*(numpy.array(_terms[name][side][:5]) / _DIVISOR), _terms[name][side][5]] for name in SPECIES]).T
    for side in (0, 1)
)


def enthalpies(temperature):
    """Of every species, along a new last axis [J/mol]."""
    t = temperature[..., None]
    cold = t <= 1000
    a = [numpy.where(cold, low, high) for low, high in zip(_LOW, _HIGH)]
    return GAS_CONSTANT * (a[5] + t * (a[0] + t * (a[1] + t * (a[2] + t * (a[3] + t * a[4])))))


def dry_air():
    """Moles in a kilogram, US Standard Atmosphere 1976."""
    fractions = numpy.zeros(len(SPECIES))
    for name, share in {'N2': 0.78084, 'O2': 0.209476, 'Ar': 0.00934, 'CO2': 0.000314}.items():
        fractions[INDEX[name]] = share
    return fractions / (fractions @ MASS)


AIR = dry_air()


def air_heat(temperature):
    """cp of air [J/(kg K)]."""
    t = temperature[..., None]
    low, high = ((numpy.array([_terms[name][side][:5] for name in SPECIES]).T @ AIR) for side in (0, 1))
    a = numpy.where(t <= 1000, low, high)
    t = temperature
    return GAS_CONSTANT * (a[..., 0] + t * (a[..., 1] + t * (a[..., 2] + t * (a[..., 3] + t * a[..., 4]))))


# --- Viscosity and conductivity ---------------------------------------------------------------------------


def dilute(mass, diameter, energy):
    """Lemmon & Jacobsen 2004: g/mol, nm, K [Pa s]."""

    def viscosity(t):
        x = numpy.log(t / energy)
        omega = numpy.exp(0.431 + x * (-0.4623 + x * (0.08406 + x * (0.005341 - 0.00331 * x))))
        return 0.0266958e-6 * numpy.sqrt(mass * t) / (diameter**2 * omega)

    return viscosity


def svehla(low, high):
    """ln(micropoise) = A ln T + B/T + C/T^2 + D in two ranges."""

    def one(terms, t):
        a, b, c, d = terms
        return 1e-7 * numpy.exp(a * numpy.log(t) + b / t + c / t**2 + d)

    return lambda t: numpy.where(t <= 1000, one(low, t), one(high, t))


def steam(t):
    """Huber et al. 2009, eq. 11 [Pa s]."""
    r = t / 647.096
    return 1e-4 * numpy.sqrt(r) / (1.67752 + 2.20462 / r + 0.6366564 / r**2 - 0.241605 / r**3)


air_viscosity = dilute(28.9586, 0.36, 103.3)


def air_conductivity(t):
    """[W/(m K)]"""
    tau = 132.6312 / t
    return 1e-3 * (1.308e6 * air_viscosity(t) + 1.405 * tau**-1.1 - 1.036 * tau**-0.3)


VISCOSITY = {
    'N2': dilute(28.01348, 0.3656, 98.94),
    'O2': dilute(31.9988, 0.3428, 118.5),
    'Ar': dilute(39.948, 0.335, 143.2),
    'CO2': svehla([0.51137258, -229.51321, 13710.678, 2.7075538], [0.63978285, -42.637076, -15522.605, 1.6628843]),
    'CO': svehla([0.62526577, -31.779652, -1640.7983, 1.7454992], [0.87395209, 561.52222, -173948.09, -0.39335958]),
    'H2O': steam,
    'H2': svehla([0.74553182, 43.555109, -3257.934, 0.13556243], [0.96730605, 679.31897, -210251.79, -1.8251697]),
    'CH4': svehla([0.57643622, -93.704079, 869.92395, 1.7333347], [0.66400044, 10.860843, -7630.7841, 1.0323984]),
}


def wilke(moles, temperature):
    """Viscosity of a mixture without its tar, for which there are no data [Pa s]."""
    names = [name for name in SPECIES[:-1] if moles[INDEX[name]] > 0]
    x = numpy.array([moles[INDEX[name]] for name in names])
    x = x / x.sum()
    m = numpy.array([MASS[INDEX[name]] for name in names])
    mu = numpy.array([float(VISCOSITY[name](temperature)) for name in names])
    phi = (1 + numpy.sqrt(mu[:, None] / mu) * (m / m[:, None]) ** 0.25) ** 2 / numpy.sqrt(8 * (1 + m[:, None] / m))
    return float((x * mu / (phi @ x)).sum())


def ratio_to_air(moles):
    """Viscosity over air's as a parabola in 1000 K/T through Chebyshev's three points of 300-1800 K; highest power first."""
    ends = 1000 / 1800, 1000 / 300
    u = (ends[0] + ends[1]) / 2 + (ends[1] - ends[0]) / 2 * numpy.cos(numpy.pi * numpy.array([5, 3, 1]) / 6)
    return numpy.polyfit(u, [wilke(moles, 1000 / v) / float(air_viscosity(1000 / v)) for v in u], 2)
