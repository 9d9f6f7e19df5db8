"""Makes moistAir.json: density of moist air by the full CIPM-2007 equation (real-gas factor, enhancement factor).

Run: /usr/bin/python3 moistAir.py > ../moistAir.json. Coefficients of Picard, Davis, Glaser & Fujii, Metrologia 45 (2008)
149, typed from memory; 20 C, 101325 Pa, 50 % gives the 1.1992 kg/m3 of common tables.
"""
import json
import math

R, Mv = 8.314472, 18.01528e-3
Ma = 28.96546e-3


def density(t, p, h):
    T = t + 273.15
    psv = math.exp(1.2378847e-5 * T * T - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T)
    f = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t
    x = h * f * psv / p
    Z = (1 - p / T * (1.58123e-6 - 2.9331e-8 * t + 1.1043e-10 * t * t + (5.707e-6 - 2.051e-8 * t) * x
                      + (1.9898e-4 - 2.376e-6 * t) * x * x) + p * p / T / T * (1.83e-11 - 0.765e-8 * x * x))
    return p * Ma / (Z * R * T) * (1 - x * (1 - Mv / Ma))


rows = [[t, p, h, round(density(t, p, h), 6)]
        for t, p, h in [(-10, 101325, 0.8), (0, 101325, 0), (15, 101325, 0.5), (20, 101325, 0.5), (20, 101325, 1),
                        (30, 101325, 0.9), (40, 101325, 1), (20, 70000, 0.3), (25, 95000, 0.6)]]
print(json.dumps({'source': 'CIPM-2007 equation in full, by test/reference/generators/moistAir.py',
                  'columns': ['t C', 'p Pa', 'relative humidity', 'density kg/m3'], 'rows': rows}, indent=1))
