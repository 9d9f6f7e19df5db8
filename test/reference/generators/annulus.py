"""Makes annulus.json: laminar flow in a ring gap, one wall isothermal, the other insulated, developed velocity.

Run: /usr/bin/python3 annulus.py > ../annulus.json (needs NumPy and SciPy).

Separation of variables of u dT/dx = alpha (1/r) d/dr (r dT/dr): (r f')' + L r (u/um) f = 0 with f = 0 on the
isothermal wall and f' = 0 on the insulated one. Developed: Nu = L1 A Dh / P, on the heated perimeter P. Mean over an
entry of length x with a flat entering temperature: Nu = -(Gz/4)(4A/(P Dh)) ln(mean theta), Gz = Re Pr Dh/x.
Finite volumes on a grid that is finer near the walls, eigenvalues by scipy.linalg.eigh.
"""
import json
import numpy as np
import scipy
from scipy.linalg import eigh


def modes(k, heated, n=1200):
    ri, ro = (k, 1.0) if k < 1 else (0.0, 1.0)
    plane = k >= 1
    s = np.linspace(0, 1, n + 1)
    edge = ri + (ro - ri) * 0.5 * (1 - np.cos(np.pi * s))
    r = 0.5 * (edge[1:] + edge[:-1])
    weight = (edge[1:] - edge[:-1]) if plane else 0.5 * (edge[1:] ** 2 - edge[:-1] ** 2)
    face = np.ones_like(edge) if plane else edge
    if plane:
        u = 6 * r * (1 - r)
    elif k == 0:
        u = 2 * (1 - r * r)
    else:
        u = 1 - r * r - (1 - k * k) * np.log(r) / np.log(k)
    u = u / (np.sum(u * weight) / np.sum(weight))
    A = np.zeros((n, n))
    for i in range(1, n):
        g = face[i] / (r[i] - r[i - 1])
        A[i, i] += g
        A[i - 1, i - 1] += g
        A[i, i - 1] -= g
        A[i - 1, i] -= g
    if heated == 'inner':
        A[0, 0] += face[0] / (r[0] - edge[0])
        perimeter = face[0]
    else:
        A[-1, -1] += face[-1] / (edge[-1] - r[-1])
        perimeter = face[-1]
    mass = u * weight
    root = np.sqrt(mass)
    values, vectors = eigh(A / np.outer(root, root))
    # Share of each mode in the mean of a flat entering temperature.
    share = (vectors.T @ root) ** 2 / np.sum(mass)
    area = np.sum(weight)
    return values, share, area, perimeter, 2 * (ro - ri)


def developed(k, heated):
    values, _, area, perimeter, dh = modes(k, heated)
    return values[0] * area * dh / perimeter


def mean_entry(k, heated, gz):
    values, share, area, perimeter, dh = modes(k, heated)
    # theta = sum share exp(-L x alpha/um), and alpha x/um = Dh^2/Gz.
    theta = np.sum(share * np.exp(-values * dh * dh / gz))
    return -np.log(theta) * (gz / dh) * area / perimeter


ks = [0.05, 0.1, 0.25, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.0]
rows = [[k, round(developed(k, 'inner'), 4), round(developed(k, 'outer'), 4)] for k in ks]
tube = round(developed(0, 'outer'), 4)
entry = [[k, heated, gz, round(mean_entry(k, heated, gz), 4)]
         for k in (0.7, 0.9, 1.0) for heated in ('inner', 'outer') for gz in (1, 3, 10, 30, 100, 300, 1000)]
print(json.dumps({
    'source': f'finite volumes and scipy.linalg.eigh, NumPy {np.__version__}, SciPy {scipy.__version__}, by test/reference/generators/annulus.py',
    'tube': tube,
    'developed': {'columns': ['inner/outer diameter', 'Nu on the inner wall', 'Nu on the outer wall'], 'rows': rows},
    'entry': {'columns': ['inner/outer diameter', 'isothermal wall', 'Graetz number Re Pr Dh/x', 'mean Nu'], 'rows': entry},
}, indent=1))
