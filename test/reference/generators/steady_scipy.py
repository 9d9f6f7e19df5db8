"""Finds the steady states of steadyCases.json with SciPy: a second program for the same equations.

The equations are written anew from their description (steady_equations.py: all of them side by side, one residual each;
steady_stove.py, steady_front.py and steady_gas.py: what they are about) and solved all at once for everything that is
unknown, by scipy.optimize. Only numbers are shared: the plan of each stove, its fuel, site and coefficients.

Run:    node exportSteadyCases.ts && python3 steady_scipy.py > ../steadyScipy.json
        python3 steady_scipy.py --time N NAME...    seconds a solve from nothing, N of each, the front elsewhere each time

Needs NumPy and SciPy (Debian python3-scipy).
"""
import json
import sys
import time

sys.dont_write_bytecode = True

import numpy
import scipy
from scipy.optimize import least_squares, root

from steady_equations import Equations
from steady_gas import REFERENCE
from steady_stove import OUTSIDE, Stove

CASES = REFERENCE / 'steadyCases.json'


# Largest residual of a state that counts as found; every equation is scaled to about one.
FOUND = 1e-10


def lit(equations):
    """A lit stove of which nothing more is known: cold but for its flame and the walls round it."""
    stove = equations.stove
    temperature, monoxide = equations.first_front
    return equations.joined(
        {
            'flow': numpy.full(len(stove.links), 1e-5),
            'pressure': numpy.zeros(stove.nodes),
            'temperature': numpy.where(stove.is_flame, 1300.0, stove.ambient),
            'gas': numpy.where(stove.is_flame, 0.15, 0.0),
            'wall': numpy.where(stove.around @ stove.is_flame > 0, 600.0, stove.ambient + 30),
            'gap': numpy.full(len(stove.gaps), stove.ambient),
            'front': numpy.array([temperature]),
            'monoxide': numpy.array([monoxide]),
        }
    )


def draw(equations, guess):
    """Flows and pressures of a guess, all temperatures left as they are."""
    unknowns = slice(0, equations.at['pressure'].stop)

    def whole(part):
        out = guess.copy()
        out[unknowns] = part
        return out

    return whole(
        root(
            lambda part: equations.left_over(whole(part))[unknowns],
            guess[unknowns],
            jac=lambda part: equations.slopes(whole(part), unknowns)[unknowns],
        ).x
    )


def within_bounds(equations, guess):
    """By a trust region that keeps temperatures and shares of gas where they can be."""
    low, high = numpy.full(equations.size, -numpy.inf), numpy.full(equations.size, numpy.inf)
    for key in ('temperature', 'wall', 'gap', 'front'):
        low[equations.at[key]], high[equations.at[key]] = 0.2, 3.0
    low[equations.at['gas']], high[equations.at['gas']] = -1e-9, 1.0
    tight = {key: 1e-15 for key in ('xtol', 'ftol', 'gtol')}
    return least_squares(equations.left_over, guess, equations.slopes, (low, high), max_nfev=400, **tight)


def solve(equations):
    """From nothing: first the draught of a lit stove, then all equations at once. Powell's hybrid method is the
    quickest where it works, Levenberg and Marquardt's works nearly always, and the bounded one for what is left."""
    guess = draw(equations, lit(equations))
    tight = {'xtol': 1e-13, 'ftol': 1e-15}
    start = {'fun': equations.left_over, 'x0': guess, 'jac': equations.slopes}
    with numpy.errstate(all='ignore'):
        for method in (
            lambda: root(**start, method='hybr', options={'xtol': 1e-12}),
            lambda: root(**start, method='lm', options=tight),
            lambda: within_bounds(equations, guess),
        ):
            found = method()
            if numpy.abs(found.fun).max() <= FOUND:
                return found.x
    raise SystemExit(f"{equations.stove.case['name']} was not solved: {numpy.abs(found.fun).max():.1e} is left over")


def describe(equations, guess):
    """What a maker asks of the state."""
    stove = equations.stove
    case = stove.case
    fuel = case['fuel']
    moisture = fuel['moisture']
    s = equations.state(guess)
    u, n = s['u'], s['n']
    temperature = equations.with_outside(u['temperature'], stove.ambient)
    flow = u['flow']
    source = numpy.where(flow >= 0, stove.start, stove.end)
    leaves = (numpy.where(flow >= 0, stove.end, stove.start) == OUTSIDE) & (source != OUTSIDE)
    out = numpy.abs(flow[leaves])
    out_forward = numpy.where((stove.end == OUTSIDE) & (stove.start != OUTSIDE), s['forward'], 0)
    out_back = numpy.where((stove.start == OUTSIDE) & (stove.end != OUTSIDE), s['back'], 0)
    bound = equations.with_outside(equations.bound_heat(n, u['gas']), 0.0)
    unburnt = float(out_forward @ bound[stove.start] + out_back @ bound[stove.end])
    lower_dry = fuel['higherHeatingValue'] - 2.442e6 * 8.936 * fuel['analysis']['H']
    as_fired = lower_dry * (1 - moisture) - 2.442e6 * moisture
    dry = float(n['fuel'])
    flame = int(stove.end[stove.bed_links[-1]])
    if flame == OUTSIDE:
        unburnt += dry * float(n['mass'] * n['heat'])
    heat = dry / (1 - moisture) * as_fired - dry * equations.front.char * equations.front.char_heat - unburnt
    return {
        'name': case['name'],
        'primaryAir': digits(flow[stove.front_link] * n['share']),
        'fuelRate': digits(dry / (1 - moisture)),
        'firepower': digits(heat),
        'frontTemperature': digits(n['temperature']),
        'flameTemperature': digits(temperature[flame]),
        'outletTemperature': digits(out @ temperature[source[leaves]] / out.sum()),
        'passages': [
            {'row': link['row'], 'bearing': first_bearing(link), 'flow': digits(m)}
            for link, m in zip(stove.links, flow)
        ],
        'walls': [digits(t) for t in u['wall']],
    }


def digits(value):
    """Ten of them: the rest is rounding."""
    return float(f'{value:.10g}')


def first_bearing(link):
    exposure = link['exposure']
    return exposure['bearings'][0] if exposure is not None and exposure['kind'] == 'wall' else None


def write(cases):
    rows = []
    for case in cases:
        equations = Equations(Stove(case))
        rows.append(describe(equations, solve(equations)))
    lines = ',\n'.join('  ' + json.dumps(row, ensure_ascii=False) for row in rows)
    script = 'test/reference/generators/steady_scipy.py'
    source = f'scipy.optimize of SciPy {scipy.__version__}, all equations at once, by {script}'
    print('{\n "source": %s,\n "rows": [\n%s\n ]\n}' % (json.dumps(source), lines))


def measure(cases, solves, names):
    """As ours is measured: everything laid out beforehand, each solve from nothing, the front elsewhere each time."""
    seconds = {}
    for name in names:
        case = next(case for case in cases if case['name'] == name)
        places = [0.05 + 0.9 * (i + 0.5) / solves for i in range(solves)]
        laid_out = [Equations(Stove({**case, 'position': place})) for place in places]
        times = []
        for equations in laid_out:
            began = time.perf_counter()
            solve(equations)
            times.append(time.perf_counter() - began)
        seconds[name] = float(numpy.median(times))
    print(json.dumps({'seconds': seconds, 'scipy': scipy.__version__}))


if __name__ == '__main__':
    given = json.loads(CASES.read_text())
    if len(sys.argv) > 3 and sys.argv[1] == '--time':
        measure(given, int(sys.argv[2]), sys.argv[3:])
    else:
        write(given)
