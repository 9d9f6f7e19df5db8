"""Makes ../standingSticks.json: laminar flow along equal round rods that stand at random in a round can.

Run: /usr/bin/python3 standingSticks.py > ../standingSticks.json (needs NumPy and SciPy; a minute or two).

The rods are dropped at random into the can and pushed apart until none overlaps by more than 0.2 % of its radius. The
developed profile solves w_xx + w_yy = -1 with w = 0 on rods and can, by the five-point rule on a square grid, walls
half a cell away from their last free cell. Permeability K is the mean of w over the whole can; Kozeny's constant is
k = e m^2/K with m = e/(a (1 - e)), a = 2/radius the wetted perimeter over the area of a rod.

Proofs of the method: an empty round can has K = R^2/8; a square array of rods (solid share s <= 0.5) has
K = (radius^2/4s)(-ln s - 1.476 + 2s - s^2/2 - 0.0509 s^4), Drummond & Tahir, Int. J. Multiphase Flow 10 (1984) 515,
from memory.
"""
import json
import numpy as np
import scipy
import scipy.sparse as sparse
from scipy.sparse.linalg import spsolve

CELLS = 420
STANDS = 6


def stand(rods, wide, rng):
    """Middles of rods of radius 1 in a can of radius `wide`; None where they find no room."""
    angle = rng.uniform(0, 2 * np.pi, rods)
    out = (wide - 1) * np.sqrt(rng.uniform(0, 1, rods))
    at = np.c_[out * np.cos(angle), out * np.sin(angle)]
    for _ in range(6000):
        apart = at[:, None] - at[None]
        far = np.sqrt((apart ** 2).sum(-1))
        np.fill_diagonal(far, 9)
        overlap = np.where(far < 2, 2 - far, 0)
        from_middle = np.hypot(*at.T)
        through_wall = np.maximum(0, from_middle - (wide - 1))
        if max(overlap.max(), through_wall.max()) < 2e-3:
            return at
        at = at + 0.45 * (overlap[:, :, None] * apart / np.maximum(far, 1e-9)[:, :, None]).sum(1)
        at -= (through_wall / np.maximum(from_middle, 1e-9))[:, None] * at
    return None


def mean_profile(free, step):
    """Sum of w over the free cells times the cell's area."""
    number = -np.ones(free.shape, int)
    cells = int(free.sum())
    number[free] = np.arange(cells)
    here = number[free]
    rows, columns, values, diagonal = [], [], [], np.zeros(cells)
    for axis, shift in ((0, 1), (0, -1), (1, 1), (1, -1)):
        there = np.roll(number, shift, axis)[free]
        inside = there >= 0
        rows.append(here[inside])
        columns.append(there[inside])
        values.append(-np.ones(inside.sum()))
        diagonal[inside] += 1
        diagonal[~inside] += 2
    matrix = sparse.csc_matrix(
        (np.concatenate(values + [diagonal]), (np.concatenate(rows + [here]), np.concatenate(columns + [here]))),
        shape=(cells, cells),
    )
    return spsolve(matrix, np.full(cells, step * step)).sum() * step * step


def grid(half, cells):
    step = 2 * half / cells
    middles = (np.arange(cells) + 0.5) * step - half
    return (*np.meshgrid(middles, middles, indexing='ij'), step)


def can_permeability(rods, wide):
    x, y, step = grid(wide, CELLS)
    free = x * x + y * y < wide * wide
    for cx, cy in rods:
        free &= (x - cx) ** 2 + (y - cy) ** 2 > 1
    # The edge of the square is outside the can, so that rolling the grid joins nothing.
    free[0] = free[-1] = False
    free[:, 0] = free[:, -1] = False
    return mean_profile(free, step) / (np.pi * wide * wide)


def square_permeability(solid):
    half = np.sqrt(np.pi / solid) / 2
    x, y, step = grid(half, 300)
    return mean_profile(x * x + y * y > 1, step) / (4 * half * half)


rng = np.random.default_rng(20)
rows = []
for across in (7, 9, 12):
    for aim in (0.5, 0.55, 0.6, 0.65, 0.7, 0.75):
        rods = round(aim * across ** 2)
        solid = rods / across ** 2
        void = 1 - solid
        found = [stand(rods, across, rng) for _ in range(STANDS)]
        ks = np.array([can_permeability(at, across) for at in found if at is not None])
        kozeny = void * (void / (2 * solid)) ** 2 / ks
        rows.append([across, round(solid, 4), len(ks)] + [round(float(v), 3) for v in (
            void * (void / (2 * solid)) ** 2 / ks.mean(), kozeny.min(), kozeny.max())])

print(json.dumps({
    'source': 'computed by generators/standingSticks.py, SciPy ' + scipy.__version__,
    'columns': ['rodsAcrossTheCan', 'solidShare', 'stands', 'kozenyOfTheMean', 'lowest', 'highest'],
    'rows': rows,
    'emptyCan': {'permeability': can_permeability([], 7.0), 'expected': 49 / 8},
    'squareArray': [[solid, square_permeability(solid)] for solid in (0.3, 0.4, 0.5)],
}, indent=1))
