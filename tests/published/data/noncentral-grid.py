"""Makes noncentral-grid.json: tails of the noncentral t and F over the stated regions, in 40 digits.

python3 noncentral-grid.py > noncentral-grid.json   (Python 3, mpmath 1.3.0)

The F comes from its Poisson mixture of incomplete beta functions. The t comes from its own integral over
s = chi / sqrt(df), trapezoidal in ln s with steps halved until two sums agree to 18 digits. A few more points are
drawn with a fixed seed.
"""
import json
import random

from mpmath import beta, erfc, exp, gamma, mp, mpf, power, sqrt

mp.dps = 40


def log_weight(w, df):
    return df * w - df * exp(2 * w) / 2


def nct(t, df, ncp, tail):
    t, df, ncp = mpf(t), mpf(df), mpf(ncp)
    sign = 1 if tail == "upper" else -1
    front = 2 * power(df / 2, df / 2) / gamma(df / 2)

    def integrand(w):
        return exp(log_weight(w, df)) * erfc(sign * (t * exp(w) - ncp) / sqrt(2)) / 2

    def total(h, offset):
        value = mpf(0)
        for direction in (1, -1):
            w = offset if direction == 1 else offset - h
            best = mpf(0)
            while True:
                part = integrand(w)
                value += part
                best = max(best, part)
                # past the mode of the weight and the peak of the product, and negligible
                bound = exp(log_weight(w, df)) if direction == -1 else part
                if w * direction > 0 and best > 0 and bound < best * mpf(10) ** -25:
                    break
                w += direction * h
        return value * h

    # the first two steps resolve the narrowest integrand: curvature at most 4 df + 2 ncp^2
    h = min(mpf(1) / 10, 1 / sqrt(4 * df + 2 * ncp * ncp))
    last = total(h, mpf(0))
    while True:
        value = (last + total(h, h / 2)) / 2
        h /= 2
        if abs(value - last) < value * mpf(10) ** -18:
            return front * value
        last = value


def beta_part(x, a, b):
    """Regularised I_x(a, b) by the hypergeometric form, positive terms only, and its complement."""
    if x > (a + 1) / (a + b + 2):
        lower, upper = beta_part(1 - x, b, a)
        return upper, lower
    term, total, n = mpf(1), mpf(1), 0
    while True:
        term = term * (a + b + n) / (a + 1 + n) * x
        n += 1
        total += term
        if term < total * mpf(10) ** -35:
            break
    value = power(x, a) * power(1 - x, b) / (a * beta(a, b)) * total
    return value, 1 - value


def ncf(f, df1, df2, ncp, tail):
    f, df1, df2, half = mpf(f), mpf(df1), mpf(df2), mpf(ncp) / 2
    x = df1 * f / (df1 * f + df2)
    weight, total, j = exp(-half), mpf(0), 0
    while True:
        total += weight * beta_part(x, df1 / 2 + j, df2 / 2)[0 if tail == "lower" else 1]
        j += 1
        weight = weight * half / j
        if j > half and weight < total * mpf(10) ** -25:
            return total


rows = []


def row(name, value, **arguments):
    if value > mpf(10) ** -280:
        rows.append({"name": name, **arguments, "value": float(value)})


for tail in ["lower", "upper"]:
    for df in [1, 3, 4.7, 16, 60, 1000]:
        for ncp in [-3, 0, 0.4, 2, 6.5, 30]:
            for t in [-8, -1.3, 0.2, 2.1, 9, 45]:
                row("t", nct(t, df, ncp, tail), x=t, df1=df, ncp=ncp, tail=tail)
    for df1 in [1, 3, 7.5]:
        for df2 in [2, 16, 60.5, 1000]:
            for ncp in [0, 0.3, 5, 40, 400]:
                for f in [0.02, 1, 3.2, 25, 300]:
                    row("f", ncf(f, df1, df2, ncp, tail), x=f, df1=df1, df2=df2, ncp=ncp, tail=tail)

random.seed(20)
for _ in range(30):
    df, ncp, tail = round(random.uniform(0.5, 200), 2), round(random.uniform(-100, 100), 2), random.choice(["lower", "upper"])
    t = round(ncp * random.uniform(0.3, 2), 3)
    row("t", nct(t, df, ncp, tail), x=t, df1=df, ncp=ncp, tail=tail)
    df1, df2, ncp = round(random.uniform(0.5, 20), 2), round(random.uniform(0.5, 200), 2), round(random.uniform(0, 1000), 1)
    f = round((1 + ncp / df1) * random.uniform(0.1, 4), 3)
    row("f", ncf(f, df1, df2, ncp, tail), x=f, df1=df1, df2=df2, ncp=ncp, tail=tail)

print("[\n" + ",\n".join("  " + json.dumps(r) for r in rows) + "\n]")
