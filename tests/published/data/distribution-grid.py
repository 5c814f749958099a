"""Makes distribution-grid.json: tail probabilities over the stated regions, in 50 digits.

python3 distribution-grid.py > distribution-grid.json   (Python 3, mpmath 1.3.0)
"""
import json
from mpmath import beta, erfc, gammainc, inf, loggamma, mp, mpf, power, sqrt

mp.dps = 50


def upper_beta_part(x, a, b):
    """Regularised I_x(a, b) by the hypergeometric form, positive terms only."""
    x, a, b = mpf(x), mpf(a), mpf(b)
    if x > (a + 1) / (a + b + 2):
        return 1 - upper_beta_part(1 - x, b, a)
    term, total, n = mpf(1), mpf(1), 0
    while True:
        term = term * (a + b + n) / (a + 1 + n) * x
        n += 1
        total += term
        if abs(term) < total * mpf(10) ** -45:
            break
    return power(x, a) * power(1 - x, b) / (a * beta(a, b)) * total


def t_upper(t, df):
    t, df = mpf(t), mpf(df)
    return upper_beta_part(df / (df + t * t), df / 2, mpf(1) / 2) / 2


def f_upper(f, df1, df2):
    f, df1, df2 = mpf(f), mpf(df1), mpf(df2)
    return upper_beta_part(df2 / (df2 + df1 * f), df2 / 2, df1 / 2)


rows = []


def row(name, value, **arguments):
    if value > mpf(10) ** -300 or name == "logGamma":
        rows.append({"name": name, **arguments, "value": float(value)})


for z in [0.01, 0.3, 0.66, 0.67, 1.5, 3.3, 5.65, 5.66, 9, 16, 25, 37]:
    row("normal", erfc(mpf(z) / sqrt(2)) / 2, x=z)
for df in [0.5, 1, 2, 3, 4.7, 10, 29, 100, 1000, 10000]:
    for t in [0.02, 0.5, 1, 2.2, 4, 8, 15, 40, 1000]:
        row("t", t_upper(t, df), x=t, df1=df)
for df in [0.5, 1, 2, 5, 20, 29.3, 31, 100, 1000, 10000]:
    for ratio in [0.01, 0.3, 0.9, 1, 1.05, 1.5, 3, 8]:
        x = df * ratio
        row("chiSquared", gammainc(mpf(df) / 2, mpf(x) / 2, inf, regularized=True), x=x, df1=df)
for df1 in [1, 2, 3.5, 6, 40]:
    for df2 in [1, 2, 7.3, 15, 60, 1000]:
        for f in [0.05, 0.7, 1, 2.5, 9, 60, 2000]:
            row("f", f_upper(f, df1, df2), x=f, df1=df1, df2=df2)
for x in [1e-9, 0.1, 0.5, 0.999, 1.001, 1.5, 2.0001, 3, 7.7, 14.9, 15.1, 100, 1e6, 1e12]:
    row("logGamma", loggamma(mpf(x)), x=x)

print("[\n" + ",\n".join("  " + json.dumps(r) for r in rows) + "\n]")
