"""Writes ../uncertaintyNumpy.json: the spread of every metric when all readings of a burn of examples/series are drawn at
random, 400,000 times, evenly between the limits that its instruments leave.

Nothing of the house is used but the files: formulas are written out again here, the boiling point and the heating value come
from series_scipy.py.

Run with: /usr/bin/python3 uncertainty_numpy.py
"""
import json
import pathlib

import numpy as np

from series_scipy import LHV, LHV_CHAR, SERIES, boiling_point, minutes, number

OUT = pathlib.Path(__file__).resolve().parent.parent / "uncertaintyNumpy.json"
BURNS = ("burn-01", "burn-02", "burn-13")
DRAWS = 400_000
rng = np.random.default_rng(20_081_012)


def within(value, half):
    return value + half * rng.uniform(-1, 1, DRAWS)


def spreads(trial):
    tools = trial["instruments"]
    phase = trial["phases"][0]
    start, end = phase["from"], phase["to"]
    # What a whole instrument is off, it is off in all its readings.
    gain = 1 + within(0, number(tools["scale"]["accuracy"]) / 100)
    off = within(0, number(tools["thermometer"]["accuracy"]))
    gram, degree, second = (number(tools[k]["resolution"]) / 2 for k in ("scale", "thermometer", "clock"))

    def mass(text):
        return within(number(text), gram) / gain

    def temperature(text):
        return within(number(text), degree) - off

    def clock(text):
        return within(minutes(text), second / 60)

    pot, pi, pf = mass(trial["pot"]["weight"]), mass(start["pot"]), mass(end["pot"])
    burnt, char = mass(start["fuel"]) - mass(end["fuel"]), mass(phase["char"])
    ti, tf, ta = temperature(start["water"]), temperature(end["water"]), temperature(trial["weather"]["temperature"])
    began = clock(start["at"])
    lasts = clock(end["at"]) - began
    boil = clock(phase["boil"]) - began
    before, after = (within(number(trial["fuel"]["moisture"][k]), gram) for k in ("before", "after"))
    m = (before - after) / before
    tb = boiling_point(within(100 * number(trial["weather"]["pressure"]), 100))
    # A mean absolute error of 1.45 per cent, as a standard deviation.
    lhv = within(LHV, np.sqrt(3) * LHV * 0.0145 * np.sqrt(np.pi / 2))
    lhv_char = within(LHV_CHAR, 1500)
    ehv = lhv * (1 - m) - m * (4.186 * (tb - ta) + 2257)
    dry = (burnt * ehv - char * lhv_char) / lhv
    heat = (4.186 * (pi - pot) * (tf - ti) + 2260 * (pi - pf)) / 1000
    litres = (pf - pot) * (tf - ti) / (tb - ti) / 1000
    found = {"timeToBoil": boil, "timeToBoilT": boil * 75 / (tb - ti), "fuelBurnt": burnt, "dryFuel": dry,
             "fuelEnergy": burnt * ehv / 1000, "efficiencyNoChar": heat / (burnt * ehv / 1000),
             "efficiency": 1000 * heat / (dry * lhv), "burningRate": dry / lasts, "firepower": dry * lhv / (60 * lasts),
             "usefulPower": 1000 * heat / (60 * lasts), "specificFuel": dry / litres,
             "specificFuelT": dry / litres * 75 / (tb - ti), "specificEnergyT": dry / litres * 75 / (tb - ti) * lhv / 1000,
             "charYield": char / burnt, "charEnergyYield": char * lhv_char / (burnt * ehv)}
    return {key: float(f"{values.std():.5g}") for key, values in found.items()}


if __name__ == "__main__":
    trials = [json.loads((SERIES / f"{name}.trial.json").read_text()) for name in BURNS]
    OUT.write_text(json.dumps({
        "source": f"NumPy {np.__version__}; made by generators/uncertainty_numpy.py from examples/series",
        "draws": DRAWS, "spreads": {trial["name"]: spreads(trial) for trial in trials},
    }, indent=1) + "\n")
