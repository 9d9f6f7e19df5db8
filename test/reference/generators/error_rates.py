"""Writes ../errorRates.json: how often a comparison calls something different where nothing differs, and what it sees where
something does. Counted over invented series, for the rules of docs/decisions/0014-comparison.md and those that were weighed.

Nothing of the house is used: means and variances are drawn from their own distributions, bounds come from SciPy and from the
integral below.

Run with: /usr/bin/python3 error_rates.py
"""
import json
import pathlib

import numpy as np
import scipy
from scipy import interpolate, optimize, special, stats

OUT = pathlib.Path(__file__).resolve().parent.parent / "errorRates.json"
SERIES = 40_000
rng = np.random.default_rng(19_800_372)

# Degrees of freedom at which bounds are laid down; between them in 1/df.
DF = np.concatenate([np.linspace(1, 8, 57), np.linspace(8.5, 30, 44), [40, 60, 120, 1e4]])


def modulus_ppf(p, count, df):
    """The studentized maximum modulus, P(max |Z| <= m s) = p, the average over s taken in ln s."""
    y = np.linspace(-6, 2.5, 4001)
    log_f = np.log(2) + df / 2 * np.log(df / 2) - special.gammaln(df / 2) + df * y - df / 2 * np.exp(2 * y)
    weight = np.exp(log_f) * (y[1] - y[0])
    s = np.exp(y)
    return optimize.brentq(lambda m: float((weight * (2 * special.ndtr(m * s) - 1) ** count).sum()) - p, 0.5, 500)


def bound(kind, k, known={}):
    if (kind, k) not in known:
        pairs = k * (k - 1) // 2
        each = {"range": lambda df: stats.studentized_range.ppf(0.95, k, df) / np.sqrt(2),
                "modulus": lambda df: modulus_ppf(0.95, pairs, min(df, 1e3)),
                "student": lambda df: stats.t.ppf(0.975, df)}[kind]
        curve = interpolate.interp1d(1 / DF[::-1], np.log([each(df) for df in DF])[::-1], kind="cubic")
        known[kind, k] = lambda df: np.exp(curve(1 / np.clip(df, 1, 1e4)))
    return known[kind, k]


def half_widths(counts, sds, means):
    """Differences of all pairs in every series, and half the width of the interval by every method."""
    counts, k = np.array(counts), len(counts)
    free = counts - 1
    mean = np.array(means) + rng.standard_normal((SERIES, k)) * np.array(sds) / np.sqrt(counts)
    var = np.array(sds) ** 2 * rng.chisquare(free, (SERIES, k)) / free
    i, j = np.triu_indices(k, 1)
    u, v = var[:, i] / counts[i], var[:, j] / counts[j]
    own = (u + v) ** 2 / (u ** 2 / free[i] + v ** 2 / free[j])
    together = ((var * free).sum(1) / free.sum())[:, None]
    tukey = bound("range", k)(free.sum()) * np.sqrt(together * (1 / counts[i] + 1 / counts[j]))
    games = bound("range", k)(own) * np.sqrt(u + v)
    all_free = free.sum()
    unlike = all_free * np.log(together[:, 0]) - (free * np.log(var)).sum(1)
    unlike /= 1 + ((1 / free).sum() - 1 / all_free) / (3 * max(k - 1, 1))
    clearly = (stats.chi2.sf(unlike, k - 1) < 0.05)[:, None]
    return mean[:, i] - mean[:, j], {
        "tukey": tukey, "games-howell": games, "dunnett-t3": bound("modulus", k)(own) * np.sqrt(u + v),
        # What was done before: one spread for all unless Bartlett's test finds them unlike.
        "tukey unless unlike": np.where(clearly, games, tukey),
        "welch": bound("student", k)(own) * np.sqrt(u + v),
    }


SPREADS = {
    "alike": lambda k: [1.0] * k,
    "one twice": lambda k: [2.0] + [1.0] * (k - 1),
    "one four times": lambda k: [4.0] + [1.0] * (k - 1),
    "one a quarter": lambda k: [0.25] + [1.0] * (k - 1),
    "1 to 4": lambda k: np.geomspace(1, 4, k).tolist(),
}
COUNTS = [[n] * k for k in (2, 3, 4, 6) for n in (2, 3, 4, 5, 6, 8)] + [[3, 6, 6], [8, 3, 3], [3, 3, 8], [4, 4, 10, 10], [6, 12, 12]]


def false_alarms():
    rows = []
    for counts in COUNTS:
        for name, of in SPREADS.items():
            differences, halves = half_widths(counts, of(len(counts)), [0.0] * len(counts))
            kinds = ("welch",) if len(counts) == 2 else ("tukey", "games-howell", "dunnett-t3", "tukey unless unlike")
            rows.append({"burns": counts, "spreads": name,
                         **{kind: round(float((abs(differences) > halves[kind]).any(1).mean()), 4) for kind in kinds}})
    return rows


def shown():
    """Chance to show a difference that one spread for all would show four times out of five, spreads alike."""
    rows = []
    for k in (3, 4, 6):
        for n in (3, 4, 5, 6, 8):
            free = k * (n - 1)
            q = stats.studentized_range.ppf(0.95, k, free) / np.sqrt(2)
            d = optimize.brentq(lambda d: stats.nct.sf(q, free, d / np.sqrt(2 / n)) - 0.8, 0.2, 9)
            differences, halves = half_widths([n] * k, [1.0] * k, [d] + [0.0] * (k - 1))
            rows.append({"variants": k, "burns": n, "difference": round(float(d), 3),
                         **{kind: round(float((abs(differences[:, 0]) > halves[kind][:, 0]).mean()), 3)
                            for kind in ("tukey", "games-howell", "dunnett-t3")}})
    return rows


def in_rounds():
    """Every variant once a day, days taken out, one spread for all: false alarms."""
    rows = []
    for k in (2, 3, 4, 5, 6, 8):
        for n in (3, 4, 6, 8):
            for name, of in SPREADS.items():
                burns = rng.standard_normal((SERIES // 2, n, k)) * np.array(of(k))
                rest = burns - burns.mean(1, keepdims=True) - burns.mean(2, keepdims=True) + burns.mean((1, 2), keepdims=True)
                df = (n - 1) * (k - 1)
                half = stats.studentized_range.ppf(0.95, k, df) / np.sqrt(2) * np.sqrt(2 * (rest ** 2).sum((1, 2)) / df / n)
                mean = burns.mean(1)
                rows.append({"variants": k, "days": n, "spreads": name,
                             "blocked": round(float((np.ptp(mean, axis=1) > half).mean()), 4)})
    return rows


if __name__ == "__main__":
    tables = {"falseAlarms": false_alarms(), "shown": shown(), "inRounds": in_rounds()}
    source = f"SciPy {scipy.__version__}, NumPy {np.__version__}; made by generators/error_rates.py"
    rows = {name: ",\n".join(f"  {json.dumps(row)}" for row in table) for name, table in tables.items()}
    body = "".join(f',\n "{name}": [\n{text}\n ]' for name, text in rows.items())
    OUT.write_text(f'{{\n "source": "{source}",\n "series": {SERIES}{body}\n}}\n')
