"""Makes multivariate-t.json: joint two-sided probabilities for correlations that are no product of loadings.

python3 multivariate-t.py > multivariate-t.json   (SciPy 1.17.1, NumPy 2.4.6; seeded quasi-random integration)
"""
import json

import numpy as np
from scipy.stats import multivariate_t


def broken_blocks(arms, blocks, missing):
    """Correlation of arm - control in the additive model with some cells missing."""
    rows = [(b, a) for b in range(blocks) for a in range(arms) if (b, a) not in missing]
    x = np.array([[1.0] + [float(b == j) for j in range(1, blocks)] + [float(a == j) for j in range(1, arms)] for b, a in rows])
    c = np.linalg.inv(x.T @ x)[blocks:, blocks:]
    d = np.sqrt(np.diag(c))
    return c / np.outer(d, d), len(rows) - blocks - arms + 1


out = []
for arms, blocks, missing in [(4, 4, {(1, 3)}), (5, 3, {(0, 2), (2, 4)}), (7, 4, {(0, 1), (1, 2), (3, 6), (3, 5)})]:
    r, df = broken_blocks(arms, blocks, missing)
    for c in [1.5, 2.5, 3.5]:
        k = len(r)
        values = [
            multivariate_t(np.zeros(k), r, df=df).cdf(np.full(k, c), lower_limit=np.full(k, -c), maxpts=4_000_000, random_state=s)
            for s in range(3)
        ]
        out.append({"c": c, "df": df, "correlation": r.tolist(), "lower": float(np.mean(values)), "spread": float(np.ptp(values))})
print("[\n" + ",\n".join("  " + json.dumps(o) for o in out) + "\n]")
