"""Makes mixed-covariates.json: made-up unbalanced trials with a covariate, an interaction and two random factors.

python3 mixed-covariates.py > mixed-covariates.json   (statsmodels 0.15.0, NumPy 2.4.6, SciPy 1.17.1)

Estimates, variances and likelihood are those of statsmodels.MixedLM (REML), whose optimiser stops at about 3e-5 of a
variance. Standard errors and degrees of freedom are worked out from n x n matrices at a minimum found again by the
simplex method: Kenward & Roger (1997) with expected information as printed there, Satterthwaite from central
differences of the restricted likelihood and of the covariance of the effects.
"""
import json
import warnings

import numpy as np
import pandas as pd
import statsmodels.formula.api as smf
from scipy.optimize import minimize

warnings.simplefilter("ignore")


def trial(seed, arms, blocks, pieces):
    rng = np.random.default_rng(seed)
    rows = []
    for b in range(blocks):
        day = rng.normal(0, 2)
        for a in range(arms):
            batch, temp = rng.normal(0, 2.5), round(26 + rng.normal(0, 1), 1)
            for p in range(pieces):
                y = round(60 + 3 * a + day + batch + 0.8 * (temp - 26) + 2 * (p % 2) + rng.normal(0, 1.2), 2)
                if p < 2 or rng.random() > 0.4:
                    rows.append({"arm": f"arm {a}", "block": f"day {b}", "batch": f"{b}-{a}", "level": ["low", "high"][p % 2], "tempC": temp, "y": y})
    return rows


def fit(rows, by_arm, random):
    d = pd.DataFrame(rows)
    formula = "y ~ C(level, Treatment('low')) + tempC + arm" + (" + arm:C(level, Treatment('low'))" if by_arm else "")
    model = smf.mixedlm(formula, d, groups=np.ones(len(d)), re_formula="0", vc_formula={r: f"0 + C({r})" for r in random})
    result = model.fit(reml=True, method=["lbfgs", "powell", "lbfgs"], gtol=1e-12)
    x, y, names = model.exog, model.endog, model.exog_names
    z = [pd.get_dummies(d[r]).to_numpy(float) for r in random]
    g = [m @ m.T for m in z] + [np.eye(len(d))]

    def deviance(s):
        v = sum(a * b for a, b in zip(s, g))
        vi = np.linalg.inv(v)
        xvx = x.T @ vi @ x
        r = y - x @ np.linalg.solve(xvx, x.T @ vi @ y)
        return np.linalg.slogdet(v)[1] + np.linalg.slogdet(xvx)[1] + r @ vi @ r + (len(y) - x.shape[1]) * np.log(2 * np.pi)

    start = np.log(np.append([result.vcomp[model.exog_vc.names.index(r)] for r in random], result.scale))
    s = np.exp(minimize(lambda t: deviance(np.exp(t)), start, method="Nelder-Mead", options={"xatol": 1e-10, "fatol": 1e-13, "maxiter": 5000}).x)
    cov = lambda s: np.linalg.inv(x.T @ np.linalg.solve(sum(a * b for a, b in zip(s, g)), x))
    k, h = len(s), 1e-3 * s
    e = np.diag(h)
    hess = np.array([[(deviance(s + e[i] + e[j]) - deviance(s + e[i] - e[j]) - deviance(s - e[i] + e[j]) + deviance(s - e[i] - e[j])) / (4 * h[i] * h[j]) for j in range(k)] for i in range(k)])
    a = 2 * np.linalg.inv(hess)
    slope = [(cov(s + e[i]) - cov(s - e[i])) / (2 * h[i]) for i in range(k)]

    vi = np.linalg.inv(sum(p * q for p, q in zip(s, g)))
    phi = np.linalg.inv(x.T @ vi @ x)
    pm = [-x.T @ vi @ m @ vi @ x for m in g]
    qm = [[x.T @ vi @ m @ vi @ n @ vi @ x for n in g] for m in g]
    info = np.array([[0.5 * (np.trace(vi @ g[i] @ vi @ g[j]) - 2 * np.trace(phi @ qm[i][j]) + np.trace(phi @ pm[i] @ phi @ pm[j])) for j in range(k)] for i in range(k)])
    w = np.linalg.inv(info)
    lam = phi @ sum(w[i, j] * (qm[i][j] - pm[i] @ phi @ pm[j]) for i in range(k) for j in range(k)) @ phi
    adjusted = phi + 2 * lam

    def kenward_roger(l):
        l = np.atleast_2d(l).T
        q = l.shape[1]
        theta = l @ np.linalg.inv(l.T @ phi @ l) @ l.T
        tp = [theta @ phi @ p @ phi for p in pm]
        a1 = sum(w[i, j] * np.trace(tp[i]) * np.trace(tp[j]) for i in range(k) for j in range(k))
        a2 = sum(w[i, j] * np.trace(tp[i] @ tp[j]) for i in range(k) for j in range(k))
        b = (a1 + 6 * a2) / (2 * q)
        gg = ((q + 1) * a1 - (q + 4) * a2) / ((q + 2) * a2)
        c1, c2, c3 = [c / (3 * q + 2 * (1 - gg)) for c in (gg, q - gg, q + 2 - gg)]
        es, vs = 1 / (1 - a2 / q), 2 / q * (1 + c1 * b) / ((1 - c2 * b) ** 2 * (1 - c3 * b))
        rho = vs / (2 * es**2)
        m = 4 + (q + 2) / (q * rho - 1)
        beta = np.linalg.solve(x.T @ vi @ x, x.T @ vi @ y)
        lb = l.T @ beta
        return m, m / (es * (m - 2)) * float(lb @ np.linalg.solve(l.T @ adjusted @ l, lb)) / q

    arms = sorted(d["arm"].unique())
    contrasts = []
    for arm in arms[1:]:
        l = np.array([1.0 if n == f"arm[T.{arm}]" else 0.5 if n.startswith(f"arm[T.{arm}]:") else 0.0 for n in names])
        v = l @ phi @ l
        grad = np.array([l @ m @ l for m in slope])
        contrasts.append({
            "arm": arm,
            "estimate": float(l @ result.fe_params),
            "se": float(np.sqrt(v)),
            "df_satterthwaite": float(2 * v**2 / (grad @ a @ grad)),
            "se_kenward_roger": float(np.sqrt(l @ adjusted @ l)),
            "df_kenward_roger": float(kenward_roger(l)[0]),
        })
    joint = np.array([[1.0 if n == f"arm[T.{arm}]" else 0.5 if n.startswith(f"arm[T.{arm}]:") else 0.0 for n in names] for arm in arms[1:]])
    m, f = kenward_roger(joint)
    return {
        "variance_components": {r: float(result.vcomp[model.exog_vc.names.index(r)]) for r in random},
        "residual_variance": float(result.scale),
        "reml_criterion": float(-2 * result.llf),
        "boundary": False,
        "intercept": {},
        "slope": float(result.fe_params["tempC"]),
        "contrasts": contrasts,
        "arm_test": {"ndf": len(arms) - 1, "F_kenward_roger": f, "ddf_kenward_roger": float(m)},
    }


cases = []
for title, seed, by_arm, random in [
    ("batch random, a covariate and a factor within batches", 3, False, ["batch"]),
    ("batch within random blocks, a covariate, a factor within batches with its interaction", 5, True, ["batch", "block"]),
]:
    rows = trial(seed, 3, 6, 4)
    cases.append({"title": title, "inputs": {"random": random, "by_arm": by_arm, "rows": rows}, "expected": fit(rows, by_arm, random)})
print("[\n" + ",\n".join("  " + json.dumps(c) for c in cases) + "\n]")
