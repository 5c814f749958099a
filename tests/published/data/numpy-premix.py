"""Reference values of tests/published/numpy-premix.test.ts, made with NumPy 2.4.6 (BSD): premixes weighed four million times.

Each reading is off by its rounding (uniform over one step of the scale) and by its repeatability (normal); a net weight is
a difference of two readings. 60 ppm on 4 kg of flour are 0.24 g.
"""
import numpy as np

rng = np.random.default_rng(20261126)
n = 4_000_000


def net(mass, resolution, repeatability):
    off = lambda: rng.uniform(-resolution / 2, resolution / 2, n) + rng.normal(0, repeatability, n)
    return mass + off() - off()


def dose(steps, portion, scale):
    share = 1.0
    for take, carrier in steps:
        t, c = net(take, *scale), net(carrier, *scale)
        share = share * t / (t + c)
    return share * net(portion, *scale)


for name, steps, scale in [
    ("one step, 0.1 g scale", [(5, 95)], (0.1, 0.05)),
    ("two steps, 1 g scale", [(50, 950), (50, 950)], (1, 0.5)),
]:
    share = np.prod([t / (t + c) for t, c in steps])
    got = dose(steps, 0.24 / share, scale)
    print(name, steps, 0.24 / share, "mean", got.mean(), "relative sd", got.std() / got.mean())
