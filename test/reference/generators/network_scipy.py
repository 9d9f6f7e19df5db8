"""Solves the pressure networks of networks.json with SciPy: an independent program for the same equations.

The equations, written from their description and not from any code:

* A network has nodes with unknown gauge pressures p (Pa) and the open air, node -1, at 0 Pa.
* A link from a to b carries the mass flow m (kg/s) that answers
      p_a - p_b + head = linear * m + quadratic * m * |m|.
* Of a forward flow, m > 0, `gain` * m arrives at b; a backward flow arrives at a as it is.
* At every node what arrives is what leaves.

Run:    python3 network_scipy.py > ../network-scipy.json
        python3 network_scipy.py --time N NAME    seconds a solve of that network, N solves, each with its heads changed a little

Needs NumPy and SciPy (Debian python3-scipy).
"""
import json
import pathlib
import sys
import time

import numpy
import scipy
from scipy.optimize import root

HERE = pathlib.Path(__file__).resolve().parent
NETWORKS = HERE.parent / 'networks.json'


class Network:
    def __init__(self, data):
        links = data['links']
        self.nodes = data['nodes']
        self.start = numpy.array([link['from'] for link in links])
        self.end = numpy.array([link['to'] for link in links])
        self.linear = numpy.array([link['linear'] for link in links], float)
        self.quadratic = numpy.array([link['quadratic'] for link in links], float)
        self.head = numpy.array([link['head'] for link in links], float)
        self.gain = numpy.array([link['gain'] for link in links], float)

    def flows(self, pressure, head=None):
        """Root of quadratic m^2 + linear m = |drive| that is not negative, with the sign of the drive."""
        # One more entry, so that node -1 finds the open air's pressure.
        p = numpy.append(pressure, 0.0)
        drive = p[self.start] - p[self.end] + (self.head if head is None else head)
        size = numpy.abs(drive)
        # The other form of the quadratic's solution loses digits where the linear part rules.
        m = 2 * size / (self.linear + numpy.sqrt(self.linear**2 + 4 * self.quadratic * size))
        return numpy.sign(drive) * m

    def imbalance(self, pressure, head=None):
        m = self.flows(pressure, head)
        arrives_at_end = numpy.where(m > 0, self.gain * m, m)
        total = numpy.zeros(self.nodes + 1)
        numpy.add.at(total, self.end, arrives_at_end)
        numpy.subtract.at(total, self.start, m)
        return total[:-1]

    def slope(self, pressure, head=None):
        m = self.flows(pressure, head)
        conductance = 1 / (self.linear + 2 * self.quadratic * numpy.abs(m))
        at_end = numpy.where(m > 0, self.gain, 1.0) * conductance
        matrix = numpy.zeros((self.nodes + 1, self.nodes + 1))
        numpy.add.at(matrix, (self.end, self.start), at_end)
        numpy.add.at(matrix, (self.end, self.end), -at_end)
        numpy.add.at(matrix, (self.start, self.start), -conductance)
        numpy.add.at(matrix, (self.start, self.end), conductance)
        return matrix[:-1, :-1]

    def solve(self, start=None, head=None):
        # Flows are tenths of grams a second: scaled to ones, so that the tolerance means something.
        scale = 1e4
        first = numpy.zeros(self.nodes) if start is None else start
        found = root(
            lambda p: scale * self.imbalance(p, head),
            first,
            jac=lambda p: scale * self.slope(p, head),
            method='hybr',
            options={'xtol': 1e-13, 'maxfev': 2000},
        )
        return found.x

    def polished(self):
        """The solution to the last digits: SciPy's, then Newton steps while they help."""
        pressure = self.solve()
        miss = numpy.abs(self.imbalance(pressure)).max()
        for _ in range(200):
            step = numpy.linalg.solve(self.slope(pressure), -self.imbalance(pressure))
            for share in (1.0, 0.5, 0.25, 0.1, 0.01):
                trial = pressure + share * step
                after = numpy.abs(self.imbalance(trial)).max()
                if after < miss:
                    break
            else:
                break
            pressure, miss = trial, after
        largest = numpy.abs(self.flows(pressure)).max()
        if not miss <= 1e-12 * largest:
            raise SystemExit(f'not solved: imbalance {miss / largest:.1e} of the largest flow')
        return pressure


def write(networks):
    rows = []
    for data in networks:
        network = Network(data)
        pressure = network.polished()
        rows.append({'name': data['name'], 'pressure': list(pressure), 'flow': list(network.flows(pressure))})
    source = f'scipy.optimize.root (hybr) of SciPy {scipy.__version__}, then Newton steps by numpy.linalg.solve, by test/reference/generators/network_scipy.py'
    lines = ',\n'.join('  ' + json.dumps(row, ensure_ascii=False) for row in rows)
    print('{\n "source": %s,\n "rows": [\n%s\n ]\n}' % (json.dumps(source), lines))


def measure(networks, solves, name):
    """Each solve starts from the last one's pressures, as ours does, with every head changed by up to 2 %."""
    network = Network(next(data for data in networks if data['name'] == name))
    pressure = network.solve()
    heads = [network.head * (1 + 0.02 * numpy.sin(0.7 * i)) for i in range(50)]
    began = time.perf_counter()
    for i in range(solves):
        pressure = network.solve(pressure, heads[i % 50])
    print(json.dumps({'seconds': (time.perf_counter() - began) / solves, 'scipy': scipy.__version__}))


if __name__ == '__main__':
    given = json.loads(NETWORKS.read_text())
    if len(sys.argv) == 4 and sys.argv[1] == '--time':
        measure(given, int(sys.argv[2]), sys.argv[3])
    else:
        write(given)
