"""Chances of waits against evenings, from SciPy's lognormal distribution and its quadrature; no simulation.

Writes delivery.json. Minutes; `spread` is the geometric standard deviation. Made with SciPy 1.17.1.
"""
import json
from math import log

from scipy.integrate import quad
from scipy.stats import lognorm


def within(limit, median, spread):
    return float(lognorm.cdf(limit, s=log(spread), scale=median))


def sum_within(limit, a, b, spread):
    """P(A + B <= limit) of two independent lognormal waits."""
    s = log(spread)
    value, _ = quad(lambda x: lognorm.pdf(x, s=s, scale=a) * lognorm.cdf(limit - x, s=s, scale=b), 0, limit)
    return float(value)


cases = {
    # one wait against what is left of the evening
    "oneWait": [
        {"median": m, "spread": s, "limit": 60, "chance": within(60, m, s)}
        for m, s in [(45, 1.4), (60, 1.4), (80, 1.4), (45, 2), (30, 1.2)]
    ],
    # two waits of one evening, whatever falls to either
    "twoWaits": [
        {"medians": [a, b], "spread": s, "limit": 120, "chance": sum_within(120, a, b, s)}
        for a, b, s in [(45, 60, 1.4), (30, 60, 2), (60, 60, 1.3)]
    ],
    # so many nights in a row, each to be long enough
    "nights": [
        {"median": 1000, "spread": 1.4, "limit": 1260, "nights": n, "chance": within(1260, 1000, 1.4) ** n}
        for n in [1, 3, 5]
    ],
    # a cure from seven in the evening until a day's end: 5 h and whole days
    "cure": [
        {"median": 4320, "spread": s, "days": d, "chance": within(300 + 1440 * d, 4320, s)}
        for s in [1.2, 1.4, 2] for d in [2, 3, 4, 6]
    ],
}
with open(__file__.replace("make-delivery.py", "delivery.json"), "w", encoding="utf-8") as out:
    json.dump(cases, out, indent=1)
    out.write("\n")
