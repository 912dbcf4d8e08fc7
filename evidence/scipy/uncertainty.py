"""Quantiles, exact coverage intervals, slopes and one set of trials for the uncertainty room, by scipy and numpy.

Writes uncertainty.json beside itself. Run with a Python that has scipy: python3 uncertainty.py
"""

import itertools
import json
import math
from pathlib import Path

import numpy
import scipy
from scipy import integrate, optimize, special, stats

here = Path(__file__).resolve().parent


def student_factor(p, nu):
    """By the inverse incomplete beta function: stats.t.ppf leaves a rest of up to 2e-9 in probability."""
    x = special.betaincinv(nu / 2, 0.5, 1 - p)
    return float(math.sqrt(nu * (1 - x) / x))


coverage_factors = [
    {"level": p, "degrees": nu, "factor": student_factor(p, nu)}
    for p in (0.5, 0.6827, 0.9, 0.95, 0.9545, 0.99, 0.9973)
    for nu in (1, 1.5, 2, 3, 4, 5, 8, 16, 16.74, 25.6, 50, 200, 1e5)
]
normal_factors = [
    {"level": p, "factor": float(stats.norm.ppf(0.5 + p / 2))} for p in (0.1, 0.5, 0.6827, 0.95, 0.9545, 0.99, 0.9999)
]
incomplete_beta = [
    {"x": x, "a": a, "b": b, "value": float(special.betainc(a, b, x))}
    for x in (1e-6, 0.01, 0.3, 0.5, 0.77, 0.999)
    for a in (0.5, 2, 8.37, 500)
    for b in (0.5, 3)
]
complementary_error = [{"x": x, "value": float(special.erfc(x))} for x in (0, 0.1, 0.7, 1.5, 1.99, 2, 2.5, 4, 6)]
log_gamma = [{"x": x, "value": float(special.gammaln(x))} for x in (0.5, 1.5, 2.5, 8.37, 100, 50000.5)]

# Quantiles of each distribution for a standard uncertainty of 1; the trapezoid has half-width 1 and inexactness 0.25.
PROBABILITIES = (0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99)


def trapezoid_below(x, w=1.0, d=0.25):
    """A rectangle whose half-width h is itself uniform on w ± d: the mean over h of its distribution function."""
    one = lambda h: min(1.0, max(0.0, (x + h) / (2 * h)))
    points = [abs(x)] if w - d < abs(x) < w + d else None
    return integrate.quad(one, w - d, w + d, points=points)[0] / (2 * d)


quantiles = {
    "normal": [float(stats.norm.ppf(p)) for p in PROBABILITIES],
    "rectangular": [math.sqrt(3) * (2 * p - 1) for p in PROBABILITIES],
    "resolution": [math.sqrt(3) * (2 * p - 1) for p in PROBABILITIES],
    "triangular": [float(stats.triang.ppf(p, 0.5, -math.sqrt(6), 2 * math.sqrt(6))) for p in PROBABILITIES],
    "u-shaped": [float(stats.arcsine.ppf(p, -math.sqrt(2), 2 * math.sqrt(2))) for p in PROBABILITIES],
    "student-t": [float(stats.t.ppf(p, 5)) for p in PROBABILITIES],
    "curvilinear-trapezoid": [
        float(optimize.brentq(lambda x: trapezoid_below(x) - p, -1.25, 1.25, xtol=1e-13)) for p in PROBABILITIES
    ],
}
chi_square = {str(nu): [float(stats.chi2.ppf(p, nu)) for p in PROBABILITIES] for nu in (2.5, 4, 25)}


def rectangles_below(x, half_widths):
    """Distribution function of a sum of independent rectangular numbers, by inclusion and exclusion."""
    n = len(half_widths)
    total = 0.0
    for signs in itertools.product((1, -1), repeat=n):
        reach = x + sum(s * a for s, a in zip(signs, half_widths))
        total += math.prod(signs) * max(0.0, reach) ** n
    return total / (math.factorial(n) * 2**n * math.prod(half_widths))


def rectangles_end(half_widths):
    return float(optimize.brentq(lambda x: rectangles_below(x, half_widths) - 0.975, 0, sum(half_widths), xtol=1e-12))


root3 = math.sqrt(3)
rectangles = {
    "fourAlike": rectangles_end([root3] * 4),
    "oneTenfold": rectangles_end([root3] * 3 + [10 * root3]),
}

# Mismatch loss X1² + X2², both of standard uncertainty 0.005 and correlation r, means x1 and 0, in units of 1e-6.
U = 0.005


def loss_below(y, x1, r):
    """The quadratic form along the principal axes of the covariance: λ1(w1 + m1)² + λ2(w2 + m2)²."""
    if y <= 0:
        return 0.0
    l1, l2 = 1 + r, 1 - r
    mean = x1 / U / math.sqrt(2)
    m1, m2 = mean / math.sqrt(l1), mean / math.sqrt(l2)
    t = y * 1e-6 / U**2
    edge = math.sqrt(t / l1)

    def at(angle):
        v = edge * math.sin(angle)
        rest = math.sqrt(t / l2) * math.cos(angle)
        inside = stats.norm.cdf(rest - m2) - stats.norm.cdf(-rest - m2)
        return stats.norm.pdf(v - m1) * inside * edge * math.cos(angle)

    peak = [math.asin(max(-1, min(1, m1 / edge)))]
    return integrate.quad(at, -math.pi / 2, math.pi / 2, points=peak, epsabs=1e-10, limit=400)[0]


def loss_quantile(p, x1, r):
    if p <= 0:
        return 0.0
    return optimize.brentq(lambda y: loss_below(y, x1, r) - p, 1e-9, 20000, xtol=1e-6)


def loss(x1, r):
    width = lambda p: loss_quantile(p + 0.95, x1, r) - loss_quantile(p, x1, r)
    best = optimize.minimize_scalar(width, bounds=(0, 0.04999), method="bounded", options={"xatol": 1e-5})
    low = 0.0 if width(0) <= best.fun else float(best.x)
    variance = 4 * x1**2 * U**2 + 4 * U**4 * (1 + r * r)
    return {
        "x1": x1,
        "r": r,
        "mean": (x1**2 + 2 * U**2) * 1e6,
        "deviation": math.sqrt(variance) * 1e6,
        "low": float(loss_quantile(low, x1, r)),
        "high": float(loss_quantile(low + 0.95, x1, r)),
    }


losses = [loss(x1, r) for r in (0, 0.9) for x1 in (0, 0.01, 0.05)]

# Slopes by a complex step, exact to rounding; the same formulas as the model language writes them.
h = 1e-30
formulas = [
    ("a * b / c - a ^ 2", lambda a, b, c: a * b / c - a**2),
    ("-a ^ 2 ^ b", lambda a, b, c: -(a ** (2**b))),
    ("sqrt(a + b) * exp(-c)", lambda a, b, c: numpy.sqrt(a + b) * numpy.exp(-c)),
    ("sin(a) * cos(b) + tan(c)", lambda a, b, c: numpy.sin(a) * numpy.cos(b) + numpy.tan(c)),
    ("asin(a / 3) - acos(b / 3) * atan(c)", lambda a, b, c: numpy.arcsin(a / 3) - numpy.arccos(b / 3) * numpy.arctan(c)),
    ("log(a) + ln(b) * log10(c)", lambda a, b, c: numpy.log(a) + numpy.log(b) * numpy.log(c) / math.log(10)),
    ("a ^ b ^ c / (2 * pi)", lambda a, b, c: a ** (b**c) / (2 * math.pi)),
]
POINT = (1.3, 0.7, 1.9)
slopes = []
for text, formula in formulas:
    own = []
    for place in range(3):
        at = [complex(x) for x in POINT]
        at[place] += 1j * h
        own.append(float(numpy.imag(formula(*at)) / h))
    slopes.append({"model": text, "value": float(numpy.real(formula(*[complex(x) for x in POINT]))), "slopes": own})

# Gauge block of JCGM 101, 9.5, as its inputs are known to us: our own trials, in nanometres above 50 mm.
rng = numpy.random.default_rng(20240229)
M = 10_000_000


def trapezoid(half, inexact):
    ends = half + inexact * (2 * rng.random(M) - 1)
    return ends * (2 * rng.random(M) - 1)


block = 50_000_623 + 25 * rng.standard_t(18, M)
comparison = 215 + 6 * rng.standard_t(24, M) + 4 * rng.standard_t(5, M) + 7 * rng.standard_t(8, M)
alpha = rng.uniform(9.5e-6, 13.5e-6, M)
theta = -0.1 + 0.2 * rng.standard_normal(M) + 0.5 * numpy.sin(2 * math.pi * rng.random(M))
gauge = block + comparison - block * (trapezoid(1e-6, 0.1e-6) * theta + alpha * trapezoid(0.05, 0.025)) - 50_000_000
gauge.sort()
span = round(0.99 * M)
first = int(numpy.argmin(gauge[span:] - gauge[: M - span]))
gauge_block = {
    "mean": float(gauge.mean()),
    "deviation": float(gauge.std(ddof=1)),
    "shortest": [float(gauge[first]), float(gauge[first + span])],
    "symmetric": [float(gauge[(M - span) // 2]), float(gauge[(M - span) // 2 + span])],
}

answers = {
    "made by": f"scipy {scipy.__version__}, numpy {numpy.__version__}",
    "coverageFactors": coverage_factors,
    "normalFactors": normal_factors,
    "incompleteBeta": incomplete_beta,
    "complementaryError": complementary_error,
    "logGamma": log_gamma,
    "probabilities": PROBABILITIES,
    "quantiles": quantiles,
    "chiSquare": chi_square,
    "rectangles": rectangles,
    "losses": losses,
    "point": POINT,
    "slopes": slopes,
    "gaugeBlock": gauge_block,
}
(here / "uncertainty.json").write_text(json.dumps(answers, indent=1) + "\n")
