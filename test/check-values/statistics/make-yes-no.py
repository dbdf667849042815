"""A threshold from answers of yes and no, by another hand: SciPy's adaptive quadrature over the posterior.

Run with `python3 test/check-values/statistics/make-yes-no.py > test/check-values/statistics/yes-no.json` (NumPy and SciPy).
"""
import json

import numpy as np
import scipy
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.stats import norm

rng = np.random.default_rng(20261014)


def case(name, answers, mean, sd, spread):
    x = np.array([a for a, _ in answers], float)
    sign = np.array([1.0 if yes else -1.0 for _, yes in answers])

    def log_density(t):
        return norm.logpdf(t, mean, sd) + norm.logcdf(sign * (x - t) / spread).sum()

    grid = np.linspace(mean - 12 * sd, mean + 12 * sd, 20001)
    top = grid[np.argmax([log_density(t) for t in grid])]
    peak = log_density(top)
    span = [t for t in grid if log_density(t) > peak - 45]
    low, high = span[0], span[-1]

    def integral(f, a=low, b=high):
        points = sorted({p for p in (top, top - spread / 4, top + spread / 4) if a < p < b})
        return quad(lambda t: f(t) * np.exp(log_density(t) - peak), a, b, points=points or None, epsabs=0, epsrel=1e-10, limit=500)[0]

    total = integral(lambda t: 1.0)
    centre = integral(lambda t: t) / total
    variance = integral(lambda t: (t - centre) ** 2) / total
    quantile = lambda p: brentq(lambda q: integral(lambda t: 1.0, low, q) / total - p, low + 1e-9, high, xtol=1e-12)
    return {
        "name": name, "answers": answers, "mean": mean, "standardDeviation": sd, "spread": spread,
        "estimate": centre, "standardError": variance**0.5, "interval": [quantile(0.025), quantile(0.975)],
    }


def drawn(n, truth, spread):
    at = rng.normal(0, 0.8, n)
    return [(round(float(a), 3), bool(rng.normal(truth, spread) < a)) for a in at]


cases = [
    case("all yes", [(0.4, True), (0.9, True), (2.0, True), (3.0, True)], 0, 1.0986, 0.2624),
    case("all no, far from what was expected", [(2.5, False), (3.0, False), (3.5, False)], 0, 1.0986, 0.2624),
    case("seven, mixed", [(-0.5, False), (-0.2, False), (0.1, False), (0.2, True), (0.0, True), (0.6, True), (1.0, True)], 0, 1.0986, 0.2624),
    case("answers against each other", [(-1.0, True), (1.0, False)], 0, 3, 0.5),
    case("forty drawn", drawn(40, 0.35, 0.2624), 0, 1.0986, 0.2624),
    case("margins in kelvin", [(-4, False), (-2, False), (-1, True), (0, True), (1, True), (-3, False), (2, True)], 0, 3, 1),
]
print(json.dumps({"made": f"make-yes-no.py, SciPy {scipy.__version__}, quad, relative 1e-10", "cases": cases}, indent=1))
