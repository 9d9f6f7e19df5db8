"""Makes roots.json: roots of the functions of test/basis/numerics/bisectNewton.test.ts by an independent program.

Run: python3 roots.py > roots.json (needs SciPy).
"""
import json
import math
import scipy
from scipy.optimize import brentq

functions = {
    'cosine': (lambda x: math.cos(x) - x, 0, 1),
    'cubic': (lambda x: x**3 - 2 * x - 5, 2, 3),
    'omega': (lambda x: x * math.exp(x) - 1, 0, 1),
    'radiating wall': (lambda x: 5.67e-8 * 0.8 * (x**4 - 293.15**4) + 8 * (x - 293.15) - 4000, 293.15, 2000),
    'bed': (lambda x: 19380 * x + 5650 * x**2 - 240, 0, 1),
    'orifice': (lambda x: math.copysign(math.sqrt(abs(x - 0.7)), x - 0.7), 0, 2),
    'steep': (lambda x: math.atan(1e6 * (x - 0.3)), 0, 1),
    'wide': (lambda x: math.log(x) - 11, 1e-6, 1e9),
}
rows = [[name, brentq(f, a, b, xtol=1e-300, rtol=4 * 2.3e-16, maxiter=1000)] for name, (f, a, b) in functions.items()]
print(json.dumps({'source': f'scipy.optimize.brentq, SciPy {scipy.__version__}, by test/reference/roots.py',
                  'columns': ['function', 'root'], 'rows': rows}, indent=1))
