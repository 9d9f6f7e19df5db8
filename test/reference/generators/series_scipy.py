"""Writes ../seriesScipy.json: the demo series of examples/series worked out a second time, from its files alone.

Nothing of the house is used: readings are read, metrics computed, days and fuel batches taken out by NumPy, intervals by
SciPy's studentized range, in this file.

Run with: /usr/bin/python3 series_scipy.py            writes the file anew
          /usr/bin/python3 series_scipy.py --check    compares the file with what comes out now, ends with 1 where they differ
"""
import json
import pathlib
import re
import sys
import warnings

import numpy as np
import scipy
from scipy import stats

HERE = pathlib.Path(__file__).resolve().parent
OUT = HERE.parent / "seriesScipy.json"
SERIES = HERE.parents[2] / "examples" / "series"

# Softwood chips as the fuel table of the house has them, per cent of dry weight; kJ/kg of char as test practice takes it.
C, H, N, O, ASH = 50.5, 6.1, 0.1, 42.8, 0.5
HHV = 349.1 * C + 1178.3 * H - 103.4 * O - 15.1 * N - 21.1 * ASH
LHV = HHV - 2442 * 8.936 * H / 100
LHV_CHAR = 29500.0

# IAPWS-IF97, table 34: saturation temperature of water from pressure, equation 31.
N97 = (0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7,
       0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3)


def boiling_point(pascal):
    b = (pascal / 1e6) ** 0.25
    n = (None,) + N97
    e = b * b + n[3] * b + n[6]
    f = n[1] * b * b + n[4] * b + n[7]
    g = n[2] * b * b + n[5] * b + n[8]
    d = 2 * g / (-f - (f * f - 4 * e * g) ** 0.5)
    return (n[10] + d - ((n[10] + d) ** 2 - 4 * (n[9] + n[10] * d)) ** 0.5) / 2 - 273.15


def number(text):
    return float(re.match(r"-?[\d.]+", text).group())


def minutes(text):
    found = re.fullmatch(r"(?:([\d.]+) min)? ?(?:([\d.]+) s)?", text)
    return float(found.group(1) or 0) + float(found.group(2) or 0) / 60


def metrics(trial):
    phase = trial["phases"][0]
    start, end = phase["from"], phase["to"]
    pot = number(trial["pot"]["weight"])
    before, after = (number(trial["fuel"]["moisture"][k]) for k in ("before", "after"))
    m = (before - after) / before
    ta = number(trial["weather"]["temperature"])
    tb = boiling_point(100 * number(trial["weather"]["pressure"]))
    ti, tf = number(start["water"]), number(end["water"])
    pi, pf = number(start["pot"]), number(end["pot"])
    burnt = number(start["fuel"]) - number(end["fuel"])
    char = number(phase["char"])
    lasts = minutes(end["at"]) - minutes(start["at"])
    ehv = LHV * (1 - m) - m * (4.186 * (tb - ta) + 2257)
    dry = (burnt * ehv - char * LHV_CHAR) / LHV
    heat = (4.186 * (pi - pot) * (tf - ti) + 2260 * (pi - pf)) / 1000
    boil = minutes(phase["boil"]) - minutes(start["at"])
    effective = (pf - pot) * (tf - ti) / (tb - ti)
    return {"timeToBoil": boil, "timeToBoilT": boil * 75 / (tb - ti), "fuelBurnt": burnt, "dryFuel": dry,
            "fuelEnergy": burnt * ehv / 1000, "efficiencyNoChar": heat / (burnt * ehv / 1000),
            "efficiency": 1000 * heat / (dry * LHV), "burningRate": dry / lasts, "firepower": dry * LHV / (60 * lasts),
            "usefulPower": 1000 * heat / (60 * lasts), "specificFuel": 1000 * dry / effective,
            "specificFuelT": 1000 * dry / effective * 75 / (tb - ti), "charYield": char / burnt,
            "specificEnergyT": 1000 * dry / effective * 75 / (tb - ti) * LHV / 1000,
            "charEnergyYield": char * LHV_CHAR / (burnt * ehv)}


def columns(names):
    return [[float(name == one) for name in names] for one in sorted(set(names))[1:]]


def fit(design, y):
    inverse = np.linalg.pinv(design.T @ design)
    beta = inverse @ design.T @ y
    df = len(y) - int(np.linalg.matrix_rank(design))
    s2 = float(((y - design @ beta) ** 2).sum() / df)
    return beta, inverse, df, s2


def burns_to_settle(difference, spread, free, each):
    """Burns of each until a true difference shows four times out of five: noncentral t, `free` degrees of freedom by burns."""
    # SciPy's noncentral t is nothing far out, and warns of it.
    warnings.simplefilter("ignore", RuntimeWarning)
    for n in range(2, 201):
        bound = stats.t.ppf(1 - (1 - each) / 2, free(n))
        shift = abs(difference) / (spread * np.sqrt(2 / n))
        if stats.nct.sf(bound, free(n), shift) + stats.nct.cdf(-bound, free(n), shift) >= 0.8:
            return n
    return None


def compared(y, variants, days, sacks, places):
    names = sorted(set(variants))
    k = len(names)
    base = [[1.0] * len(y)] + columns(days) + columns(sacks)
    design = np.array(base + columns(variants)).T
    beta, inverse, df, s2 = fit(design, y)
    q = stats.studentized_range.ppf(0.95, k, df) / np.sqrt(2)
    pairs = []
    for i in range(k):
        for j in range(i + 1, k):
            c = np.zeros(design.shape[1])
            c[len(base) + j - 1] = 1
            if i > 0:
                c[len(base) + i - 1] = -1
            value, error = float(c @ beta), float(np.sqrt(s2 * (c @ inverse @ c)))
            p = float(stats.studentized_range.sf(abs(value) / error * np.sqrt(2), k, df))
            pairs.append([names[j], names[i], value, error, value - q * error, value + q * error, p])
    drift_design = np.array(base + [[float(p) for p in places]] + columns(variants)).T
    slopes, drift_inverse, drift_df, drift_s2 = fit(drift_design, y)
    at = len(base)
    groups = {name: y[[v == name for v in variants]] for name in names}
    hsd = stats.tukey_hsd(*groups.values())
    first, second = (groups[names[0]], groups[names[2]])
    naive = stats.ttest_rel(second, first)
    # Rounds of every variant once leave (k - 1)(n - 1) degrees of freedom; one is taken by the sacks.
    looks = next(pair[2] for pair in pairs if pair[:2] == [names[2], names[0]])
    settle = burns_to_settle(looks, np.sqrt(s2), lambda n: (k - 1) * (n - 1) - 1, 1 - 0.05 / (k * (k - 1) / 2))
    return {"settle": settle, "df": df, "residualSd": float(np.sqrt(s2)), "pairs": pairs,
            "means": {name: float(g.mean()) for name, g in groups.items()},
            "sds": {name: float(g.std(ddof=1)) for name, g in groups.items()},
            "drift": [float(slopes[at]), float(np.sqrt(drift_s2 * drift_inverse[at, at])), drift_df],
            "tukeyWithoutDays": [[names[j], names[i], float(hsd.statistic[j, i]), float(hsd.pvalue[j, i])]
                                 for i in range(k) for j in range(i + 1, k)],
            "welchWithoutDays": [[names[j], names[i], float(r.statistic), float(r.pvalue)]
                                 for i in range(k) for j in range(i + 1, k)
                                 for r in [stats.ttest_ind(groups[names[j]], groups[names[i]], equal_var=False)]],
            "bartlett": float(stats.bartlett(*groups.values()).pvalue),
            "naive": {"of": [names[2], names[0]], "p": float(naive.pvalue)}}


def worked_out():
    trials = [json.loads(path.read_text()) for path in sorted(SERIES.glob("*.trial.json"))]
    burns = [metrics(trial) for trial in trials]
    variants = [trial["stove"]["variant"] for trial in trials]
    days = [trial["day"] for trial in trials]
    sacks = [trial["fuel"]["batch"] for trial in trials]
    in_day = [1 + sum(other["day"] == trial["day"] and other["place"] < trial["place"] for other in trials) for trial in trials]
    return {"burns": {trial["name"]: burn for trial, burn in zip(trials, burns)},
            "compared": {key: compared(np.array([burn[key] for burn in burns]), variants, days, sacks, in_day)
                         for key in burns[0]}}


def differences(a, b, path=""):
    if isinstance(a, dict):
        return [f"{path}: other keys"] if a.keys() != b.keys() else [d for k in a for d in differences(a[k], b[k], f"{path}/{k}")]
    if isinstance(a, list):
        return [f"{path}: other length"] if len(a) != len(b) else [d for i, x in enumerate(a) for d in differences(x, b[i], f"{path}/{i}")]
    if isinstance(a, (int, float)):
        # SciPy's studentized range is an integral to about 1e-9, which another build may round otherwise.
        return [] if abs(a - b) <= 1e-7 * max(1, abs(a)) else [f"{path}: {a} in the file, {b} now"]
    return [] if a == b else [f"{path}: {a} in the file, {b} now"]


if __name__ == "__main__":
    found = worked_out()
    if "--check" in sys.argv:
        kept = json.loads(OUT.read_text())
        wrong = differences({k: kept[k] for k in found}, json.loads(json.dumps(found)))
        print("\n".join(wrong) or f"{len(found['burns'])} burns, {len(found['compared'])} metrics: as kept")
        sys.exit(1 if wrong else 0)
    source = f"SciPy {scipy.__version__}, NumPy {np.__version__}; made by generators/series_scipy.py from examples/series"
    OUT.write_text(json.dumps({"source": source, **found}, indent=1, allow_nan=False) + "\n")
