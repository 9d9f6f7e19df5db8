"""Tin walls of the second steady state: how they shine and what still air takes from them."""
import numpy

from steady_gas import GAS_CONSTANT, air_conductivity, air_viscosity

GRAVITY = 9.80665
STEFAN_BOLTZMANN = 2 * numpy.pi**5 * 1.380649e-23**4 / (15 * 6.62607015e-34**3 * 299_792_458**2)
DRY_AIR = GAS_CONSTANT / 28.96546e-3
# Oxidised steel: temperature and emissivity, straight lines between.
OXIDISED = numpy.array([[373.15, 0.74], [473.15, 0.79], [873.15, 0.8], [1500.15, 0.89]]).T
TIN_MELTS = 505.05
DULL = 700.0


def emissivity(temperature, burnt_off):
    """Of tinplate: bright until its tin melts, then smoothly to oxidised steel, which a burnt-off can is for good."""
    dark = numpy.interp(temperature, *OXIDISED)
    if burnt_off:
        return dark
    bright = 0.064 * numpy.minimum(temperature, TIN_MELTS) / 297.15
    s = numpy.clip((temperature - TIN_MELTS) / (DULL - TIN_MELTS), 0, 1)
    return bright + (dark - bright) * s * s * (3 - 2 * s)


def upright_wall(wall, ambient, height, pressure):
    """Laminar free convection, Churchill & Chu 1975 eq. 9 with Pr = 0.7 [W/(m2 K)]."""
    film = (wall + ambient) / 2
    kinematic = air_viscosity(film) * DRY_AIR * film / pressure
    rayleigh = GRAVITY * numpy.abs(wall - ambient) / film * height**3 * 0.7 / kinematic**2
    nusselt = 0.68 + 0.67 * rayleigh**0.25 / (1 + (0.492 / 0.7) ** (9 / 16)) ** (4 / 9)
    return nusselt * air_conductivity(film) / height
