"""Makes waterProperties.json: liquid water at 101325 Pa and its heat of evaporation, by IAPWS-IF97.

Run: /usr/bin/python3 waterProperties.py > ../waterProperties.json (Debian python3-iapws).
"""
import json
import iapws
import numpy as np
from iapws import IAPWS97

rows = []
for t in list(range(0, 100, 5)) + [99]:
    T = max(t, 0.01) + 273.15
    liquid = IAPWS97(T=T, P=0.101325)
    boiling = IAPWS97(T=T, x=0)
    steam = IAPWS97(T=T, x=1)
    rows.append([round(T, 2), round(liquid.rho, 4), round(liquid.cp * 1000, 3), round(liquid.h * 1000, 2),
                 round((steam.h - boiling.h) * 1000, 1), round(boiling.P * 1e6, 3)])
t = np.array([row[0] - 273.15 for row in rows])
polynomials = {}
for name, column, degree in (('rho', 1, 5), ('cp', 2, 5), ('hfg', 4, 3)):
    fit = np.polynomial.polynomial.polyfit(t, [row[column] for row in rows], degree)
    polynomials[name] = [float(f'{x:.6g}') for x in fit]
print(json.dumps({
    'source': f'IAPWS-IF97 by python3-iapws {iapws.__version__}, test/reference/generators/waterProperties.py; liquid at 101325 Pa, evaporation and pressure at saturation',
    'columns': ['T K', 'rho kg/m3', 'cp J/(kg K)', 'h J/kg', 'hfg J/kg', 'psat Pa'],
    'rows': rows,
    'polynomials in t C': polynomials}, indent=1))
