"""Writes distributions.csv: both tails of the distributions by mpmath 1.3 with 40 digits. Run inside this folder."""
from mpmath import mp, mpf, gammainc, ncdf, quad, exp, gamma, log, loggamma, inf, nstr, linspace

mp.dps = 40
rows = []


def add(name, x, a, b, lower, upper):
    rows.append(",".join([name, str(x), str(a), str(b), nstr(lower, 17), nstr(upper, 17)]))


for z in ["-37.5", "-20", "-8.3", "-5.7", "-5.6", "-3", "-0.68", "-0.67", "0", "0.3", "0.67", "0.68", "1.96", "5.5", "7", "12"]:
    add("normal", z, "", "", ncdf(mpf(z)), ncdf(-mpf(z)))


def below(x, a, b):
    """I_x(a, b) by x^a (1 - x)^b / (a B(a, b)) sum of (a+b)_n / (a+1)_n x^n: every term is positive."""
    total, term, n = mpf(0), mpf(1), 0
    while term > total * mpf(10) ** -(mp.dps + 5):
        total += term
        term *= (a + b + n) / (a + 1 + n) * x
        n += 1
    return exp(a * log(x) + b * log(1 - x) + loggamma(a + b) - loggamma(a + 1) - loggamma(b)) * total


def beta_tails(x, a, b):
    if x > 0.95:  # the series is long there; 40 digits stand the subtraction from one
        return 1 - below(1 - x, b, a), below(1 - x, b, a)
    return below(x, a, b), 1 - below(x, a, b) if x < 0.05 else below(1 - x, b, a)


for x, a, b in [("0.3", 2, 5), ("0.001", "0.5", "0.5"), ("0.999", 50, "0.5"), ("0.5", 1000, 1100), ("0.35", 5000, 10000),
                ("1e-10", "0.5", 3), ("0.9", "0.1", "0.2"), ("0.5", 1, 1), ("0.02", 3, 200), ("0.75", 30, "0.05")]:
    add("beta", x, a, b, *beta_tails(mpf(x), mpf(a), mpf(b)))
for a, x in [("0.5", 2), ("0.5", 30), (3, "0.001"), (10, 3), (100, 130), (10000, 9000), (2, 50), ("0.05", "0.01"), (1, 1), (5000, 5200)]:
    add("gamma", x, a, "", gammainc(mpf(a), 0, mpf(x), regularized=True), gammainc(mpf(a), mpf(x), inf, regularized=True))
for t, v in [("2", 10), ("-0.1", 3), ("12.706", 1), ("40", 2), ("-8", 1000), ("1.5", "4.7"), ("0", 5), ("1e5", "1.2")]:
    t_, v_ = mpf(t), mpf(v)
    beyond = below(v_ / (v_ + t_ * t_), v_ / 2, mpf(1) / 2) / 2 if t_ else mpf(1) / 2
    add("t", t, v, "", *((1 - beyond, beyond) if t_ > 0 else (beyond, 1 - beyond)))
for f, n, d in [("14.4375", 3, 9), ("0.01", 2, 7), ("1", 1, 1), ("51.2", 7, 42), ("3.5", "2.5", "13.3"), ("1e4", 4, 3), ("0.5", 1000, 800)]:
    n_, d_ = mpf(n), mpf(d)
    add("F", f, n, d, *beta_tails(n_ * mpf(f) / (n_ * mpf(f) + d_), n_ / 2, d_ / 2))


def over_scale(g, v):
    """The mean of g(s), s = sqrt(chi2/v), along ln s."""
    peak = log(2) + v / 2 * log(v / 2) - log(gamma(v / 2))
    weight = lambda w: exp(peak + v * (w - exp(2 * w) / 2))
    return quad(lambda w: weight(w) * g(exp(w)), linspace(-45 / v - 1, 3, 12))


mp.dps = 18
for t, v, d in [(2, 38, "3.16"), ("12.7", 1, 15), ("-1", "2.5", 1), (3, 50, 2), (45, 3, 40), (0, 5, 1), (30, 200, 28)]:
    t_, v_, d_ = mpf(t), mpf(v), mpf(d)
    add("noncentral-t", t, v, d, over_scale(lambda s: ncdf(t_ * s - d_), v_), over_scale(lambda s: ncdf(d_ - t_ * s), v_))

with open("distributions.csv", "w") as out:
    out.write("distribution,x,a,b,lower,upper\n" + "\n".join(rows) + "\n")
