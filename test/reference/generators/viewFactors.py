"""Makes viewFactors.json: view factors of round surfaces by direct numerical integration of their definition.

Run: /usr/bin/python3 viewFactors.py > ../viewFactors.json (NumPy). F12 = 1/A1 int int cos1 cos2/(pi s^2) dA2 dA1, Gauss
points in radius and height, equal steps in angle (the integrand is periodic and smooth); the angle of surface 1 is
taken once by symmetry.
"""
import json
import numpy as np


def gauss(a, b, n):
    x, w = np.polynomial.legendre.leggauss(n)
    return 0.5 * (b - a) * x + 0.5 * (a + b), 0.5 * (b - a) * w


def discs(r1, r2, gap, n=60, m=400):
    a, wa = gauss(0, r1, n)
    b, wb = gauss(0, r2, n)
    p = 2 * np.pi * np.arange(m) / m
    A, B, P = np.meshgrid(a, b, p, indexing='ij')
    s2 = A * A + B * B - 2 * A * B * np.cos(P) + gap * gap
    f = gap * gap / (np.pi * s2 * s2) * A * B
    return float(np.einsum('i,j,ijk->', wa, wb, f) * (2 * np.pi / m) * 2 * np.pi / (np.pi * r1 * r1))


def disc_to_wall(r, height, n=160, m=4000):
    """Disc that closes a tube, to the tube's wall."""
    a, wa = gauss(0, r, n)
    z, wz = gauss(0, height, n)
    p = 2 * np.pi * np.arange(m) / m
    total = 0.0
    for ai, wi in zip(a, wa):
        Z, P = np.meshgrid(z, p, indexing='ij')
        s2 = r * r + ai * ai - 2 * r * ai * np.cos(P) + Z * Z
        f = Z * (r - ai * np.cos(P)) / (np.pi * s2 * s2) * r * ai
        total += wi * np.einsum('i,ij->', wz, f)
    return float(total * (2 * np.pi / m) * 2 * np.pi / (np.pi * r * r))


def outer_to_inner(ri, ro, height, n=80, m=1600):
    """Inside of the outer of two coaxial tubes of one height, to the outside of the inner."""
    z1, w1 = gauss(0, height, n)
    z2, w2 = gauss(0, height, n)
    most = np.arccos(ri / ro)
    p, wp = gauss(-most, most, 200)
    Z1, Z2, P = np.meshgrid(z1, z2, p, indexing='ij')
    s2 = ro * ro + ri * ri - 2 * ro * ri * np.cos(P) + (Z1 - Z2) ** 2
    f = (ro - ri * np.cos(P)) * (ro * np.cos(P) - ri) / (np.pi * s2 * s2) * ri
    return float(np.einsum('i,j,k,ijk->', w1, w2, wp, f) / height)


def outer_to_itself(ri, ro, height, n=60, m=400):
    """Inside of the outer tube to itself, past the inner one: a chord of angle P is seen while ro cos(P/2) > ri."""
    total = 0.0
    most = 2 * np.arccos(ri / ro)
    p, wp = gauss(0, most ** (1 / 3), m)
    P, wp = p ** 3, wp * 3 * p * p
    z1, w1 = gauss(0, height, n)
    for a, wa in zip(z1, w1):
        for lo, hi in ((-a, 0), (0, height - a)):
            # z = chord sinh(t) resolves the peak at equal heights.
            chord = 2 * ro * np.sin(P / 2)
            t0, t1 = np.arcsinh(lo / chord), np.arcsinh(hi / chord)
            x, w = np.polynomial.legendre.leggauss(40)
            T = 0.5 * (t1 - t0)[:, None] * x[None, :] + 0.5 * (t0 + t1)[:, None]
            W = 0.5 * (t1 - t0)[:, None] * w[None, :]
            c = chord[:, None]
            s2 = c * c * np.cosh(T) ** 2
            f = (ro * (1 - np.cos(P[:, None]))) ** 2 / (np.pi * s2 * s2) * ro * c * np.cosh(T)
            total += wa * np.sum(wp[:, None] * f * W)
    return float(2 * total / height)


print(json.dumps({
    'source': f'numerical integration of the definition, NumPy {np.__version__}, by test/reference/generators/viewFactors.py',
    'coaxial discs': {'columns': ['r1', 'r2', 'gap', 'F12'],
                      'rows': [[a, b, g, round(discs(a, b, g), 6)] for a, b, g in
                               [(1, 1, 1), (1, 2, 1), (0.5, 1, 0.8), (1, 1, 4), (0.4, 0.8, 0.5)]]},
    'disc to the wall it stands in': {'columns': ['r', 'height', 'F'],
                                      'rows': [[r, h, round(disc_to_wall(r, h), 4)] for r, h in [(1, 1), (1, 2), (1, 0.5)]]},
    'outer tube to inner tube': {'columns': ['r inner', 'r outer', 'height', 'F21'],
                                 'rows': [[a, b, h, round(outer_to_inner(a, b, h), 5)] for a, b, h in
                                          [(0.5, 1, 1), (0.8, 1, 2), (0.5, 1, 4), (0.9, 1, 0.5)]]},
    'outer tube to itself': {'columns': ['r inner', 'r outer', 'height', 'F22'],
                             'rows': [[a, b, h, round(outer_to_itself(a, b, h), 5)] for a, b, h in
                                      [(0.5, 1, 1), (0.8, 1, 2), (0.5, 1, 4), (0.9, 1, 0.5)]]},
}, indent=1))
