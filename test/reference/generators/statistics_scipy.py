"""Writes ../statisticsScipy.json: distributions and comparisons as SciPy computes them.

Run with: /usr/bin/python3 statistics_scipy.py   (SciPy 1.7 or newer; the file says which it was)
"""
import json
import pathlib

import numpy as np
import scipy
from scipy import optimize, special, stats

OUT = pathlib.Path(__file__).resolve().parent.parent / "statisticsScipy.json"

rng = np.random.default_rng(20310517)


def normal():
    return [[x, float(special.ndtr(x))] for x in (-30, -8, -5, -2.61, -2.59, -1, -0.001, 0, 0.5, 1.96, 2.6, 4, 7)]


def log_gamma():
    return [[x, float(special.gammaln(x))] for x in (1e-3, 0.1, 0.5, 1, 1.5, 2, 3.7, 10, 55.5, 163, 1e4)]


def beta():
    rows = []
    for a in (0.5, 1, 2.5, 12, 90, 500):
        for b in (0.5, 1, 3, 40, 300):
            for x in (1e-6, 0.03, 0.3, 0.5, 0.77, 0.999):
                rows.append([x, a, b, float(special.betainc(a, b, x))])
    return rows


def student():
    rows = []
    for df in (1, 1.7, 2, 3.41, 4, 9.9, 30, 250.5):
        for t in (0.01, 0.7, 2, 5, 40):
            rows.append([t, df, float(2 * stats.t.sf(t, df))])
    return rows


def student_within():
    return [[c, df, float(stats.t.ppf((1 + c) / 2, df))] for c in (0.5, 0.9, 0.95, 0.999) for df in (1, 2, 2.35, 4, 10, 60.5)]


def fisher():
    return [[f, a, b, float(stats.f.sf(f, a, b))] for f in (0.3, 1.18, 4, 21) for (a, b) in ((1, 46), (4, 20), (8, 180), (2, 2))]


def studentized_range():
    rows = []
    for k in (2, 3, 6, 12):
        for df in (2, 3.4, 5, 12, 60):
            for q in (0.5, 2, 3.6, 6, 15):
                rows.append([q, k, df, float(stats.studentized_range.cdf(q, k, df))])
    return rows


def studentized_range_quantile():
    return [[0.95, k, df, float(stats.studentized_range.ppf(0.95, k, df))] for k in (2, 3, 6) for df in (2, 4, 11.5, 40)]


def noncentral_t():
    """SciPy's own function fails far out (NaN); those rows are left out."""
    rows = [[t, df, d, float(stats.nct.cdf(t, df, d))] for t in (-2, 0.5, 2.1, 5) for df in (2, 4, 10, 38) for d in (0.3, 1, 3)]
    return [row for row in rows if np.isfinite(row[3])]


def fine_range_cdf(q, k, df):
    """The double integral by Gauss-Legendre in s itself, unlike the house's trapezium rule in ln s: to about 1e-13."""
    node, weight = np.polynomial.legendre.leggauss(400)
    top = 1 + 12 / np.sqrt(df) if df > 3 else 8.0
    s = 0.5 * top * (node + 1)
    log_f = np.log(2) + df / 2 * np.log(df / 2) - special.gammaln(df / 2) + (df - 1) * np.log(s) - df * s * s / 2
    z = 9 * node
    inner = np.empty_like(s)
    for i, one in enumerate(s):
        inner[i] = k * 9 * np.sum(weight * stats.norm.pdf(z) * (special.ndtr(z) - special.ndtr(z - q * one)) ** (k - 1))
    return float(np.sum(0.5 * top * weight * np.exp(log_f) * inner))


def fine_range_ppf(p, k, df):
    return float(optimize.brentq(lambda q: fine_range_cdf(q, k, df) - p, 1, 40, xtol=1e-12, rtol=1e-13))


def maximum_modulus():
    """The largest of so many standard normal numbers over one spread: Gauss-Legendre in s, to about 1e-13; no function of SciPy's."""
    node, weight = np.polynomial.legendre.leggauss(800)
    rows = []
    for count in (1, 3, 15, 66):
        for df in (2, 3.4, 5, 12, 60):
            top = 1 + 12 / np.sqrt(df) if df > 3 else 8.0
            s = 0.5 * top * (node + 1)
            log_f = np.log(2) + df / 2 * np.log(df / 2) - special.gammaln(df / 2) + (df - 1) * np.log(s) - df * s * s / 2
            for m in (0.5, 2, 3.6, 7):
                rows.append([m, count, df, float(np.sum(0.5 * top * weight * np.exp(log_f) * (2 * special.ndtr(m * s) - 1) ** count))])
    return rows


def chi_square():
    return [[x, df, float(stats.chi2.sf(x, df))] for x in (1e-3, 0.4, 2, 7.5, 30, 160) for df in (1, 2, 5, 11, 90)]


def binomial_tail():
    return [[k, n, p, float(stats.binom.sf(k - 1, n, p))] for n in (1, 4, 24, 200) for k in (0, 1, 3, 9, 24) if k <= n for p in (0.1, 0.5)]


def bartlett():
    """Spreads of several groups, alike and unlike."""
    own = np.random.default_rng(1937)
    rows = []
    for sizes, sds in (((3, 3), (1, 1)), ((3, 4, 5), (0.4, 0.5, 0.4)), ((4, 4, 4, 4, 4, 4), (0.3, 0.3, 0.4, 0.3, 0.3, 0.3)),
                       ((5, 6, 7), (0.1, 0.9, 0.4))):
        groups = [np.round(own.normal(9, sd, n), 2).tolist() for n, sd in zip(sizes, sds)]
        rows.append({"groups": groups, "p": float(stats.bartlett(*groups).pvalue)})
    return rows


def columns_of(names):
    return [[float(name == one) for name in names] for one in sorted(set(names))[1:]]


def layouts():
    """All pairs with days, batches and a drift taken out: normal equations of NumPy, studentized range of SciPy's kind.

    Dependent columns are left to the pseudo-inverse: every contrast below is estimable.
    """
    own = np.random.default_rng(1956)
    cases = []
    for days, variants, batches, drift, drop in ((3, "AB", None, False, 0), (4, "ABCDEF", "half", False, 0),
                                                 (4, "ABC", "day", False, 2), (5, "ABCD", "half", True, 3), (3, "ABC", None, True, 1)):
        groups, blocks, batch, along, values = [], [], [], [], []
        for day in range(days):
            for place, g in enumerate(own.permutation(list(variants))):
                groups.append(str(g))
                blocks.append(f"day {day}")
                batch.append("one" if (place + day) % 2 else "two") if batches == "half" else batch.append(f"sack {day // 2}")
                along.append(place + 1)
                values.append(round(9 + 0.8 * "ABCDEF".index(g) + 0.5 * day + 0.1 * place + own.normal(0, 0.4), 2))
        keep = sorted(own.permutation(len(values))[drop:].tolist())
        groups, blocks, batch, along, values = ([x[i] for i in keep] for x in (groups, blocks, batch, along, values))
        factors = [blocks] + ([batch] if batches else [])
        names = sorted(set(groups))
        design = np.array([[1.0] * len(values)] + [c for f in factors for c in columns_of(f)]
                          + ([[float(a) for a in along]] if drift else []) + columns_of(groups)).T
        y = np.array(values)
        inverse = np.linalg.pinv(design.T @ design)
        beta = inverse @ design.T @ y
        df = len(y) - int(np.linalg.matrix_rank(design))
        s2 = float(((y - design @ beta) ** 2).sum() / df)
        half = fine_range_ppf(0.95, len(names), df) / np.sqrt(2)
        pairs = []
        for i in range(len(names)):
            for j in range(i + 1, len(names)):
                c = np.zeros(design.shape[1])
                for k, sign in ((i, 1), (j, -1)):
                    if k > 0:
                        c[design.shape[1] - len(names) + k] = sign
                value, error = float(c @ beta), float(np.sqrt(s2 * (c @ inverse @ c)))
                pairs.append([names[i], names[j], value, error, value - half * error, value + half * error])
        case = {"groups": groups, "factors": factors, "values": values, "df": df, "residualSd": float(np.sqrt(s2)), "pairs": pairs}
        if drift:
            k = design.shape[1] - len(names)
            case["along"] = along
            case["slope"] = [float(beta[k]), float(np.sqrt(s2 * inverse[k, k]))]
        cases.append(case)
    return cases


def published_intervals():
    """The published data of statsTests.json again: SAS, SPSS and R print a quantile that is good to about 1e-7."""
    known = json.loads((OUT.parent / "statsTests.json").read_text())
    result = {}
    for which in ("same_size", "diff_size"):
        groups = [np.array(g) for g in known["tukey_hsd"][which]["data"]]
        df = sum(len(g) - 1 for g in groups)
        s2 = sum(((g - g.mean()) ** 2).sum() for g in groups) / df
        q = fine_range_ppf(0.95, len(groups), df)
        result[which] = [[i, j, float(q * np.sqrt(s2 / 2 * (1 / len(groups[i]) + 1 / len(groups[j]))))]
                         for i in range(3) for j in range(i + 1, 3)]
    groups = [np.array(g) for g in known["games_howell"]["data"]]
    rows = []
    for i in range(3):
        for j in range(i + 1, 3):
            u, v = (g.var(ddof=1) / len(g) for g in (groups[i], groups[j]))
            df = (u + v) ** 2 / (u ** 2 / (len(groups[i]) - 1) + v ** 2 / (len(groups[j]) - 1))
            q = abs(groups[i].mean() - groups[j].mean()) / np.sqrt((u + v) / 2)
            rows.append([i, j, float(fine_range_ppf(0.95, 3, df) * np.sqrt((u + v) / 2)), 1 - fine_range_cdf(q, 3, df)])
    result["games_howell"] = rows
    return result


def comparisons():
    cases = []
    for sizes in ((3, 3), (4, 7), (3, 3, 3), (5, 4, 6, 3), (3, 3, 3, 3, 3, 3)):
        groups = [np.round(rng.normal(8 + 0.7 * i, 0.4 + 0.2 * i, n), 2) for i, n in enumerate(sizes)]
        case = {"groups": [g.tolist() for g in groups]}
        a, b = groups[0], groups[1]
        w = stats.ttest_ind(a, b, equal_var=False)
        case["welch"] = {"t": float(w.statistic), "p": float(w.pvalue)}
        p = stats.ttest_ind(a, b)
        case["pooled"] = {"t": float(p.statistic), "p": float(p.pvalue)}
        if len(a) == len(b):
            r = stats.ttest_rel(a, b)
            case["paired"] = {"t": float(r.statistic), "p": float(r.pvalue)}
        f = stats.f_oneway(*groups)
        case["anova"] = {"f": float(f.statistic), "p": float(f.pvalue)}
        h = stats.tukey_hsd(*groups)
        ci = h.confidence_interval(0.95)
        case["tukey"] = [
            [i, j, float(h.statistic[i, j]), float(ci.low[i, j]), float(ci.high[i, j]), float(h.pvalue[i, j])]
            for i in range(len(groups)) for j in range(i + 1, len(groups))
        ]
        cases.append(case)
    return cases


def lines():
    cases = []
    for n in (3, 5, 12):
        x = np.round(rng.uniform(8, 18, n), 2)
        y = np.round(6 + 0.2 * x + rng.normal(0, 0.5, n), 2)
        r = stats.linregress(x, y)
        cases.append({"x": x.tolist(), "y": y.tolist(), "slope": r.slope, "intercept": r.intercept,
                      "slopeError": r.stderr, "interceptError": r.intercept_stderr, "p": r.pvalue})
    return cases


def blocked():
    """Two-way additive least squares on an unbalanced layout, by the normal equations of NumPy."""
    groups = ["A", "A", "B", "B", "C", "C", "A", "B", "C", "B"]
    blocks = ["x", "y", "x", "y", "x", "y", "z", "z", "z", "x"]
    values = [9.1, 8.2, 7.4, 6.9, 8.8, 8.3, 9.9, 8.0, 9.6, 7.7]
    design = np.array([[1, g == "B", g == "C", b == "y", b == "z"] for g, b in zip(groups, blocks)], float)
    y = np.array(values)
    beta, *_ = np.linalg.lstsq(design, y, rcond=None)
    df = len(y) - design.shape[1]
    s2 = float(((y - design @ beta) ** 2).sum() / df)
    cov = s2 * np.linalg.inv(design.T @ design)
    return {"groups": groups, "blocks": blocks, "values": values, "df": df,
            "B-A": [float(beta[1]), float(np.sqrt(cov[1, 1]))], "C-A": [float(beta[2]), float(np.sqrt(cov[2, 2]))]}


OUT.write_text(json.dumps({
    "source": f"SciPy {scipy.__version__}, NumPy {np.__version__}; made by generators/statistics_scipy.py",
    "normal": normal(), "logGamma": log_gamma(), "beta": beta(), "student": student(),
    "studentWithin": student_within(), "fisher": fisher(), "studentizedRange": studentized_range(),
    "studentizedRangeQuantile": studentized_range_quantile(), "noncentralT": noncentral_t(),
    "comparisons": comparisons(), "lines": lines(), "blocked": blocked(),
    "publishedHalfWidths": published_intervals(), "chiSquare": chi_square(), "bartlett": bartlett(), "binomialTail": binomial_tail(),
    "layouts": layouts(), "maximumModulus": maximum_modulus(),
}, indent=1, allow_nan=False) + "\n")
