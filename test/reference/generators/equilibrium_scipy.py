"""Makes ../equilibriumScipy.json: equilibria of wood gas and air by plain constrained optimisation, a second way to the
answers of src/science/gas/equilibrium.ts and written without it.

At a given temperature the Gibbs energy is minimised over the moles themselves, with the atoms as linear constraints;
for the adiabatic flame the entropy is maximised over moles and temperature, with the enthalpy as one constraint more.
Graphite is one more amount. scipy.optimize.minimize, method SLSQP, analytic slopes; the amounts are scaled by their own
size and the search restarted until it no longer moves.

Run: python3 equilibrium_scipy.py > ../equilibriumScipy.json (needs NumPy and SciPy).
"""
import json
import pathlib
import numpy as np
import scipy
from scipy.optimize import minimize, nnls

R = 8.31446261815324
DATA = json.loads((pathlib.Path(__file__).parent.parent / 'tm4513.json').read_text())['species']
NAMES = list(DATA)  # gases first, graphite last
GASES = len(NAMES) - 1
ELEMENTS = ['C', 'H', 'O', 'N', 'Ar']
A = np.array([[DATA[s]['composition'].get(e, 0) for s in NAMES] for e in ELEMENTS], dtype=float)
AIR = {'N2': 0.78084, 'O2': 0.209476, 'Ar': 0.00934, 'CO2': 0.000314}


def terms(name, temperature):
    record = DATA[name]
    return record['terms'][0 if len(record['terms']) == 1 or temperature <= record['ranges'][1] else 1]


def h_over_rt(name, t):
    a = terms(name, t)
    return sum(a[k] * t**k / (k + 1) for k in range(5)) + a[5] / t


def s_over_r(name, t):
    a = terms(name, t)
    return a[0] * np.log(t) + sum(a[k] * t**k / k for k in range(1, 5)) + a[6]


def cp_over_r(name, t):
    a = terms(name, t)
    return sum(a[k] * t**k for k in range(5))


def vector(f, t):
    return np.array([f(name, t) for name in NAMES])


def log_fractions(n, pressure):
    """ln of the partial pressures in bar; nothing for graphite."""
    gas = np.maximum(n[:GASES], 1e-300)
    return np.append(np.log(gas / gas.sum()) + np.log(pressure / 1e5), 0.0)


def polish(objective, constraints, start, absent, rounds=60):
    """SLSQP in units of the present amounts, restarted until they stand still; what is absent stays at nothing."""
    x = np.where(absent, 0.0, start)
    for _ in range(rounds):
        unit = np.where(absent, 1.0, np.maximum(np.abs(x), 1e-9))
        result = minimize(
            lambda y: objective(y * unit)[0],
            x / unit,
            jac=lambda y: objective(y * unit)[1] * unit,
            bounds=[(0, 0) if gone else (1e-14 / u, None) for u, gone in zip(unit, absent)],
            constraints=[
                {'type': 'eq', 'fun': (lambda y, c=c: c(y * unit)[0]), 'jac': (lambda y, c=c: c(y * unit)[1] * unit)}
                for c in constraints
            ],
            method='SLSQP',
            options={'maxiter': 500, 'ftol': 1e-16},
        )
        step = np.max(np.abs(result.x * unit - x))
        x = result.x * unit
        if step < 1e-12 * np.max(np.abs(x)):
            break
    return x


def absent_species(b):
    """Those that have an element which is not there."""
    return (A[b == 0] > 0).any(axis=0)


def start_amounts(b):
    """A mixture that holds the atoms: least squares with amounts above zero."""
    little = np.where(absent_species(b), 0.0, 1e-4 * np.sum(b))
    n, _ = nnls(A, b - A @ little)
    return n + little


def at_temperature(t, pressure, b):
    g = vector(h_over_rt, t) - vector(s_over_r, t)

    def gibbs(n):
        mu = g + log_fractions(n, pressure)
        return float(n @ mu), mu

    present = b > 0
    return polish(gibbs, [lambda n: ((A @ n - b)[present], A[present])], start_amounts(b),
                  absent_species(b))


def adiabatic(enthalpy, pressure, b, guess):
    """Amounts and temperature in thousands of kelvin, entropy over R as the objective."""
    def entropy(x):
        n, t = x[:-1], x[-1] * 1000
        s = vector(s_over_r, t) - log_fractions(n, pressure)
        return -float(n @ s), -np.append(s, 1000 * float(n @ vector(cp_over_r, t)) / t)

    def heat(x):
        n, t = x[:-1], x[-1] * 1000
        h = vector(h_over_rt, t) * t / 1000
        missed = n @ h - enthalpy / (1000 * R)
        return np.array([missed]), np.append(h, float(n @ vector(cp_over_r, t)))[None, :]

    present = b > 0

    def atoms(x):
        return (A @ x[:-1] - b)[present], np.hstack([A[present], np.zeros((present.sum(), 1))])

    x = np.append(at_temperature(guess, pressure, b), guess / 1000)
    return polish(entropy, [atoms, heat], x, np.append(absent_species(b), False))


def mixture(gas, air_ratio):
    """Moles of a gas with a share of the air that burns it, and the atoms."""
    need = 0.5 * gas.get('CO', 0) + 0.5 * gas.get('H2', 0) + 2 * gas.get('CH4', 0)
    moles = dict(gas)
    for name, x in AIR.items():
        moles[name] = moles.get(name, 0) + air_ratio * need * x / AIR['O2']
    total = sum(moles.values())
    return {name: n / total for name, n in moles.items()}


# Invented mixtures in the range of wood gas.
GASES_OF_WOOD = {
    'dry': {'CO': 0.18, 'H2': 0.10, 'CH4': 0.03, 'CO2': 0.12, 'N2': 0.57},
    'wet': {'CO': 0.12, 'H2': 0.08, 'CH4': 0.025, 'CO2': 0.125, 'H2O': 0.20, 'N2': 0.44, 'Ar': 0.01},
    'rich': {'CO': 0.28, 'H2': 0.15, 'CH4': 0.06, 'CO2': 0.08, 'H2O': 0.03, 'N2': 0.40},
}
PRESSURE = 101325.0
rows = []


def row(name, air_ratio, kind, t, n, enthalpy, b):
    rows.append({
        'gas': name,
        'airRatio': air_ratio,
        'given': kind,
        'atoms': {e: float(x) for e, x in zip(ELEMENTS, b) if x > 0},
        'enthalpy': float(enthalpy),
        'temperature': float(t),
        'moles': {s: float(x) for s, x in zip(NAMES, n) if x > 1e-7},
    })


for name, gas in GASES_OF_WOOD.items():
    for air_ratio in (0.0, 0.3, 0.6, 0.9, 1.0, 1.1, 1.5, 2.5):
        moles = mixture(gas, air_ratio)
        b = A @ np.array([moles.get(s, 0.0) for s in NAMES])
        for t in (800.0, 1200.0, 1800.0):
            n = at_temperature(t, PRESSURE, b)
            row(name, air_ratio, 'temperature', t, n, n @ (vector(h_over_rt, t) * R * t), b)
        # The gas comes at 900 K, the air at 300 K.
        air_share = sum(moles[s] for s in AIR if s in moles)
        plain = mixture(gas, 0.0)
        scale = 1 / (1 + air_ratio * (0.5 * gas.get('CO', 0) + 0.5 * gas.get('H2', 0) + 2 * gas.get('CH4', 0)) / AIR['O2'])
        enthalpy = sum(scale * x * h_over_rt(s, 900.0) * R * 900.0 for s, x in plain.items() if x > 0)
        enthalpy += sum((1 - scale) * x * h_over_rt(s, 300.0) * R * 300.0 for s, x in AIR.items())
        x = adiabatic(enthalpy, PRESSURE, b, 1600.0 if air_ratio > 0 else 900.0)
        row(name, air_ratio, 'enthalpy', x[-1] * 1000, x[:-1], enthalpy, b)

print(json.dumps({
    'source': f'scipy.optimize.minimize (SLSQP), SciPy {scipy.__version__}, by test/reference/generators/equilibrium_scipy.py; '
              'NASA TM-4513 polynomials; mixtures invented here',
    'pressure': PRESSURE,
    'rows': rows,
}, indent=1))
