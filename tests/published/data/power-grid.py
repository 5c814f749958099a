"""Makes power-grid.json: numbers for a wanted power, and Dunnett powers, by a route of their own.

python3 power-grid.py > power-grid.json   (Python 3, SciPy 1.17.1, NumPy 2.4.6)

Noncentral t by scipy.stats.nct (Boost), roots by scipy.optimize.brentq. Dunnett probabilities by Gauss-Legendre
over the shared normal part and over the standard deviation, critical values by brentq on the same. Inputs are drawn
with a fixed seed.
"""
import json
import math
import random

import numpy as np
from scipy.optimize import brentq
from scipy.special import gammaln
from scipy.stats import nct, norm, t

random.seed(4)
NODES, WEIGHTS = np.polynomial.legendre.leggauss(200)


def t_power(df, ncp, alpha, alternative):
    c = t.isf(alpha / 2 if alternative == "two-sided" else alpha, df)
    above, below = nct.sf(c, df, ncp), nct.cdf(-c, df, ncp)
    return {"two-sided": above + below, "greater": above, "less": below}[alternative]


def inside(c, df, loadings, shifts, sides):
    """P(max |T_i| <= c) or P(max T_i <= c), T noncentral multivariate t with correlation l_i l_j."""
    z, wz = 9 * NODES, 9 * WEIGHTS
    # ln s: a normal-like middle, and a long tail below that falls as exp(df w)
    high, low = 9 / math.sqrt(2 * df), -9 / math.sqrt(2 * df) - 25 / df
    w, ww = (high + low) / 2 + (high - low) / 2 * NODES, (high - low) / 2 * WEIGHTS
    s = np.exp(w)
    density = np.exp(math.log(2) + df / 2 * math.log(df / 2) - gammaln(df / 2) + df * w - df / 2 * s**2)
    value = np.ones((len(s), len(z)))
    for l, d in zip(loadings, shifts):
        rest = math.sqrt(1 - l * l)
        part = norm.cdf((c * s[:, None] - d - l * z) / rest)
        if sides == 2:
            part = part - norm.cdf((-c * s[:, None] - d - l * z) / rest)
        value = value * part
    return float(np.sum(ww * density * (value @ (wz * norm.pdf(z)))))


def dunnett_power(n0, n, differences, sd, alpha, sides):
    k = len(differences)
    df, se = n0 + k * n - k - 1, sd * math.sqrt(1 / n0 + 1 / n)
    loadings, shifts = [math.sqrt(n / (n + n0))] * k, [d / se for d in differences]
    c = brentq(lambda x: inside(x, df, loadings, [0] * k, sides) - (1 - alpha), 0.5, 40, xtol=1e-13)
    each = [1 - inside(c, df, [0.5], [d], sides) for d in shifts]
    return {"df": df, "criticalValue": c, "powerEach": each, "powerAny": 1 - inside(c, df, loadings, shifts, sides)}


def needed(power_at, power):
    """The root, from a bracket that grows from 2: nct fails far above it."""
    high = 2.5
    while power_at(high) < power:
        high *= 1.3
    return brentq(lambda n: power_at(n) - power, 2, high, xtol=1e-11)


rows = []
for _ in range(8):
    power, alpha = round(random.uniform(0.6, 0.97), 2), random.choice([0.01, 0.05, 0.1])
    alternative = random.choice(["two-sided", "greater", "less"])
    difference, sd = round(random.uniform(20, 60) * (-1 if alternative == "less" else 1), 1), round(random.uniform(30, 60), 1)
    q = {"power": power, "difference": difference, "alpha": alpha, "alternative": alternative}
    root = needed(lambda n: t_power(n - 1, difference * math.sqrt(n) / sd, alpha, alternative), power)
    rows.append({"op": "paired-size", "inputs": {**q, "sdOfDifferences": sd}, "expected": {"count": math.ceil(root), "countContinuous": root}})
    loaves, loaf_sd = random.randint(1, 6), round(random.uniform(5, 40), 1)
    both = math.sqrt(sd**2 + loaf_sd**2 / loaves)
    root = needed(lambda n: t_power(2 * (n - 1), difference / both * math.sqrt(n / 2), alpha, alternative), power)
    rows.append({"op": "batches-size", "inputs": {**q, "batchSd": sd, "loafSd": loaf_sd, "loavesPerBatch": loaves}, "expected": {"count": math.ceil(root), "countContinuous": root}})

for k, sides in [(2, 2), (3, 1), (4, 2), (6, 2)]:
    alternative = "two-sided" if sides == 2 else "greater"
    n, n0, sd = random.randint(3, 6), random.randint(4, 12), round(random.uniform(20, 40), 1)
    differences = [round(random.uniform(10, 90), 1) for _ in range(k)]
    q = {"differences": differences, "sd": sd, "alpha": 0.05, "alternative": alternative}
    rows.append({"op": "dunnett-power", "inputs": {**q, "controlCount": n0, "armCount": n}, "expected": dunnett_power(n0, n, differences, sd, 0.05, sides)})
    for goal, name in [("each", lambda got: min(got["powerEach"])), ("any", lambda got: got["powerAny"])]:
        near = [d if goal == "any" else d + 30 for d in differences]
        root = needed(lambda m: name(dunnett_power(m, m, near, 2 * sd, 0.05, sides)), 0.85)
        rows.append({"op": "dunnett-size", "inputs": {**q, "differences": near, "sd": 2 * sd, "power": 0.85, "goal": goal}, "expected": {"count": math.ceil(root), "countContinuous": root}})

print("[\n" + ",\n".join("  " + json.dumps(r) for r in rows) + "\n]")
