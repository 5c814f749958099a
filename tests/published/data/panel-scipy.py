"""Values for panel-scipy.test.ts. Scores are invented.

python3 panel-scipy.py > panel-scipy.json
"""
import json
import platform

import numpy as np
import scipy
from scipy import integrate, stats

CHANCE = {"triangle": 1 / 3, "duo-trio": 1 / 2}

TWO = [[6, 7], [5, 7], [7, 7], [6, 8], [4, 6], [8, 7], [5, 5], [6, 9], [7, 8], [3, 6]]
FOUR = [
    [6, 7, 5, 8], [5, 6, 5, 7], [7, 7, 6, 8], [4, 6, 3, 5], [8, 8, 6, 9],
    [6, 5, 6, 7], [5, 7, 4, 6], [7, 8, 7, 7], [3, 5, 4, 6],
]


def inside(limit, df, arms):
    """P(max |T| <= limit), T multivariate t with correlation 1/2, by two nested integrals."""
    def at(scale):
        def f(z):
            c = limit * scale * np.sqrt(2)
            return stats.norm.pdf(z) * (stats.norm.cdf(z + c) - stats.norm.cdf(z - c)) ** arms
        return integrate.quad(f, -9, 9, epsabs=1e-12, epsrel=1e-11, limit=200)[0]
    def outer(scale):
        return stats.chi.pdf(scale * np.sqrt(df), df) * np.sqrt(df) * at(scale)
    return integrate.quad(outer, 0, 4, epsabs=1e-11, epsrel=1e-10, limit=200)[0]


def means(rows):
    y = np.array(rows, float)
    n = len(y)
    half = stats.t.ppf(0.975, n - 1) * stats.sem(y, axis=0)
    return [{"mean": m, "sd": s, "low": m - h, "high": m + h} for m, s, h in zip(y.mean(0), y.std(0, ddof=1), half)]


def two():
    y = np.array(TWO, float)
    found = stats.ttest_rel(y[:, 1], y[:, 0])
    limits = found.confidence_interval(0.95)
    return {
        "rows": TWO, "means": means(TWO), "df": int(found.df),
        "comparisons": [{
            "estimate": float((y[:, 1] - y[:, 0]).mean()), "t": found.statistic, "pAdjusted": found.pvalue,
            "low": limits.low, "high": limits.high,
        }],
    }


def four():
    y = np.array(FOUR, float)
    n, k = y.shape
    rest = y - y.mean(1, keepdims=True) - y.mean(0) + y.mean()
    df = (n - 1) * (k - 1)
    se = np.sqrt(2 * (rest**2).sum() / df / n)
    from scipy.optimize import brentq
    critical = brentq(lambda c: inside(c, df, k - 1) - 0.95, 2, 4, xtol=1e-10)
    out = []
    for j in range(1, k):
        difference = y[:, j].mean() - y[:, 0].mean()
        t = difference / se
        out.append({
            "estimate": difference, "t": t, "pAdjusted": 1 - inside(abs(t), df, k - 1),
            "low": difference - critical * se, "high": difference + critical * se,
        })
    return {"rows": FOUR, "means": means(FOUR), "df": df, "comparisons": out}


def for_similarity(test, margin, confidence, true, power):
    c = CHANCE[test]
    at = lambda share: c + (1 - c) * share
    def reached(n):
        k = np.arange(n + 1)
        allowed = k[stats.binom.cdf(k, n, at(margin)) <= 1 - confidence]
        return stats.binom.cdf(allowed[-1], n, at(true)) if len(allowed) else 0.0
    powers = [reached(n) for n in range(1, 600)]
    first = next(i for i, p in enumerate(powers) if p >= power)
    steady = max(i for i, p in enumerate(powers) if p < power) + 1
    return {
        "test": test, "marginShare": margin, "confidence": confidence, "trueShare": true, "power": power,
        "tasters": first + 1, "powerReached": powers[first], "steadyTasters": steady + 1,
    }


def for_difference(test, alpha, telling, power):
    c = CHANCE[test]
    def reached(n):
        k = np.arange(n + 1)
        enough = k[stats.binom.sf(k - 1, n, c) <= alpha]
        return stats.binom.sf(enough[0] - 1, n, c + (1 - c) * telling) if len(enough) else 0.0
    powers = [reached(n) for n in range(1, 600)]
    first = next(i for i, p in enumerate(powers) if p >= power)
    steady = max(i for i, p in enumerate(powers) if p < power) + 1
    return {
        "test": test, "alpha": alpha, "discriminatorShare": telling, "power": power,
        "tasters": first + 1, "powerReached": powers[first], "steadyTasters": steady + 1,
    }


print(json.dumps({
    "computedWith": f"Python {platform.python_version()}, SciPy {scipy.__version__}",
    "liking": {"two": two(), "four": four()},
    "similarity": [for_similarity("triangle", 0.3, 0.95, 0, 0.8), for_similarity("duo-trio", 0.4, 0.9, 0.1, 0.85)],
    "difference": [for_difference("triangle", 0.05, 0.3, 0.8), for_difference("duo-trio", 0.01, 0.5, 0.9)],
}, default=float))
