"""The front of the second steady state: what a kilogram of dry fuel and its air turn into.

Char, tar and methane by their yields; carbon, hydrogen and oxygen by counting atoms; the water-gas shift and the
enthalpy balance are left to whoever solves for temperature and CO.
"""
import numpy
from scipy.optimize import brentq

from steady_gas import (
    AIR,
    ATOMS,
    GAS_CONSTANT,
    INDEX,
    MASS,
    RECORDS,
    REFERENCE_TEMPERATURE,
    SPECIES,
    TAR,
    enthalpies,
    formation_enthalpy,
    higher_heating_value,
    liquid_water_enthalpy,
    molar_enthalpy,
)

CHAR = {'C': 0.915, 'H': 0.025, 'O': 0.057, 'N': 0.003}
WOOD_HEAT = 1300.0
ASH_HEAT = 900.0
GRAPHITE_AT_REFERENCE = float(molar_enthalpy('graphite', REFERENCE_TEMPERATURE))
# CO + H2O -> CO2 + H2
SHIFT = numpy.zeros(len(SPECIES))
for _name, _number in {'CO': 1, 'H2O': 1, 'CO2': -1, 'H2': -1}.items():
    SHIFT[INDEX[_name]] = _number


def log_shift_constant(temperature):
    """-dG/(R T) of CO + H2O -> CO2 + H2 [1]."""
    t = numpy.asarray(temperature, float)
    total = 0
    for name, sign in {'CO2': 1, 'H2': 1, 'CO': -1, 'H2O': -1}.items():
        sides = []
        for a1, a2, a3, a4, a5, a6, a7 in RECORDS[name]['terms']:
            h = a1 + t * (a2 / 2 + t * (a3 / 3 + t * (a4 / 4 + t * a5 / 5))) + a6 / t
            s = a1 * numpy.log(t) + t * (a2 + t * (a3 / 2 + t * (a4 / 3 + t * a5 / 4))) + a7
            sides.append(s - h)
        total = total + sign * numpy.where(t <= 1000, sides[0], sides[1])
    return total


class Front:
    """Of one fuel, moisture, weather and bed."""

    def __init__(self, fuel, moisture, ambient, k, bed_diameter):
        dry = fuel['analysis']
        water = moisture / (1 - moisture)
        yielded = (
            k['charYield']
            * (fuel['pieceDiameter'] / 0.01) ** k['charYieldSizeExponent']
            * (bed_diameter / 0.1) ** k['charYieldWidthExponent']
            * (1 + k['charYieldMoistureSlope'] * (moisture - 0.1))
        )
        organic = max(0.02, min(0.4, max(0.05, yielded)) - dry['ash'])
        self.organic = organic
        self.ash = dry['ash']
        self.char = organic + dry['ash']
        self.moisture = moisture
        self.coefficients = k
        higher_char = higher_heating_value(CHAR)
        self.char_formation = formation_enthalpy(higher_char, CHAR['C'], CHAR['H'])
        self.char_heat = organic * (higher_char - 2.442e6 * 8.936 * CHAR['H']) / self.char
        self.fuel_enthalpy = (
            formation_enthalpy(fuel['higherHeatingValue'], dry['C'], dry['H'])
            + WOOD_HEAT * (ambient - REFERENCE_TEMPERATURE)
            + water * float(liquid_water_enthalpy(ambient))
        )
        self.loss = k['frontLoss'] * fuel['higherHeatingValue']

        # Moles of atoms in the gas, air not yet counted; oxygen of the fuel by difference, sulphur with nitrogen.
        tar = k['tarYield'] / MASS[INDEX['tar']]
        methane = k['methaneYield'] / MASS[INDEX['CH4']]
        oxygen_share = 1 - dry['C'] - dry['H'] - dry['N'] - dry['S'] - dry['ash']
        h2o = water / MASS[INDEX['H2O']]
        self.carbon = (dry['C'] - organic * CHAR['C']) / ATOMS['C'] - tar * TAR['C'] - methane
        self.hydrogen = (dry['H'] - organic * CHAR['H']) / ATOMS['H'] + 2 * h2o - tar * TAR['H'] - 4 * methane
        self.oxygen = (oxygen_share - organic * CHAR['O']) / ATOMS['O'] + h2o - tar * TAR['O']
        self.nitrogen = (dry['N'] + dry['S'] - organic * CHAR['N']) / ATOMS['N'] / 2
        self.tar = tar
        self.methane = methane

    def air_per_fuel(self, velocity):
        """Straight part, then rising to the best gas, and more for wetter fuel [kg/kg]."""
        k = self.coefficients
        share = numpy.clip((velocity - 0.03) / (0.09 - 0.03), 0, 1)
        dry = k['airPerFuelSlow'] + share * (k['airPerFuelBest'] - k['airPerFuelSlow'])
        return numpy.maximum(0.8, dry + k['airPerFuelMoisture'] * (self.moisture - 0.1))

    def gas(self, air, monoxide):
        """Moles of each species a kilogram of dry fuel, along a new last axis."""
        air = numpy.asarray(air, float)
        carbon = self.carbon + air * AIR[INDEX['CO2']]
        oxygen = self.oxygen + 2 * air * (AIR[INDEX['O2']] + AIR[INDEX['CO2']])
        dioxide = carbon - monoxide
        water = oxygen - monoxide - 2 * dioxide
        n = numpy.zeros((*air.shape, len(SPECIES)))
        n[..., INDEX['CO']] = monoxide
        n[..., INDEX['CO2']] = dioxide
        n[..., INDEX['H2O']] = water
        n[..., INDEX['H2']] = self.hydrogen / 2 - water
        n[..., INDEX['CH4']] = self.methane
        n[..., INDEX['N2']] = self.nitrogen + air * AIR[INDEX['N2']]
        n[..., INDEX['Ar']] = air * AIR[INDEX['Ar']]
        n[..., INDEX['tar']] = self.tar
        return n

    def shift_residual(self, n, temperature):
        """Zero where the gas is in shift equilibrium."""
        constant = numpy.exp(log_shift_constant(temperature))
        made = n[..., INDEX['CO2']] * n[..., INDEX['H2']]
        return (made - constant * n[..., INDEX['CO']] * n[..., INDEX['H2O']]) / (self.carbon * self.hydrogen)

    def char_enthalpy(self, temperature):
        """[J/kg dry fuel]"""
        sensible = (molar_enthalpy('graphite', temperature) - GRAPHITE_AT_REFERENCE) / ATOMS['C']
        return self.organic * (self.char_formation + sensible) + self.ash * ASH_HEAT * (
            temperature - REFERENCE_TEMPERATURE
        )

    def heat_residual(self, n, air, air_enthalpy, temperature):
        """Enthalpy that comes less what leaves [J/kg dry fuel]."""
        made = (n * enthalpies(temperature)).sum(-1)
        return self.fuel_enthalpy + air * air_enthalpy - self.loss - made - self.char_enthalpy(temperature)

    def alone(self, air, air_temperature):
        """Closed by itself for a given air ratio: moles a kilogram of dry fuel and temperature, or None."""
        air_enthalpy = float(enthalpies(numpy.array(air_temperature)) @ AIR)
        empty = self.gas(air, 0.0)
        least = max(0.0, -empty[INDEX['H2O']])
        most = min(empty[INDEX['CO2']], empty[INDEX['H2']])
        if not least < most:
            return None

        def composed(t):
            x = brentq(lambda x: self.shift_residual(self.gas(air, x), t), least, most, xtol=1e-14, rtol=1e-14)
            return self.gas(air, x)

        def surplus(t):
            return float(self.heat_residual(composed(t), air, air_enthalpy, numpy.array(t)))

        if surplus(500.0) < 0 or surplus(2200.0) > 0:
            return None
        temperature = brentq(surplus, 500.0, 2200.0, xtol=1e-10)
        return composed(temperature), temperature


def stoichiometric_air(n):
    """Air that burns such a gas [kg for the amount of gas]."""
    need = (n[..., INDEX['CO']] + n[..., INDEX['H2']]) / 2 + 2 * n[..., INDEX['CH4']]
    need = need + (TAR['C'] + TAR['H'] / 4 - TAR['O'] / 2) * n[..., INDEX['tar']]
    return need / AIR[INDEX['O2']]


def burn(n):
    """What the gas is with just enough air, moles."""
    air = stoichiometric_air(n)
    burnt = n + air[..., None] * AIR
    out = numpy.zeros_like(burnt)
    out[..., INDEX['CO2']] = (
        burnt[..., INDEX['CO2']] + n[..., INDEX['CO']] + n[..., INDEX['CH4']] + TAR['C'] * n[..., INDEX['tar']]
    )
    out[..., INDEX['H2O']] = (
        n[..., INDEX['H2O']] + n[..., INDEX['H2']] + 2 * n[..., INDEX['CH4']] + TAR['H'] / 2 * n[..., INDEX['tar']]
    )
    out[..., INDEX['N2']] = burnt[..., INDEX['N2']]
    out[..., INDEX['Ar']] = burnt[..., INDEX['Ar']]
    return out
