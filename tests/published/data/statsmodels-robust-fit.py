"""Reference values of tests/published/statsmodels-robust-fit.test.ts, made with statsmodels 0.15.0 (BSD) and NumPy 2.4.6.

RLM with Huber's weights (1.345) and the spread from the median of |r|. Stack loss: Brownlee 1965, as statsmodels carries it.
The mixer's batches are invented; the fifth has a bad reading.
"""
import numpy as np
import statsmodels.api as sm
from statsmodels.datasets import stackloss

data = stackloss.load_pandas()
fit = sm.RLM(data.endog, sm.add_constant(data.exog), M=sm.robust.norms.HuberT(1.345)).fit(tol=1e-13, maxiter=2000)
print("stack loss", list(fit.params), fit.scale)

first = np.array([4, 4, 3, 5, 4, 3, 5, 4], float)
second = np.array([5, 7, 6, 4, 6, 8, 5, 3], float)
per_kg = np.array([2745, 3501, 2988, 2459, 12150, 3790, 2836, 1881], float)
fit = sm.RLM(per_kg, np.column_stack([first, second]), M=sm.robust.norms.HuberT(1.345)).fit(tol=1e-13, maxiter=2000)
print("mixer", list(fit.params), fit.scale, list(fit.weights))
