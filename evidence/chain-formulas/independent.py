"""Noise of a band and usable frequency, computed a second way: adaptive quadrature and root finding of scipy.

Run: /usr/bin/python3 evidence/chain-formulas/independent.py > evidence/chain-formulas/independent.json
The accelerometers and inputs are those of the six invented reference plants.
"""
import json
import sys

import numpy as np
import scipy
from scipy.integrate import quad
from scipy.optimize import brentq

G = 9.80665


def density(points, f):
    xs = np.log([p[0] for p in points])
    ys = np.log([p[1] for p in points])
    u = np.log(f)
    if u < xs[0]:
        return float(np.exp(ys[0] + (ys[1] - ys[0]) / (xs[1] - xs[0]) * (u - xs[0])))
    return float(np.exp(np.interp(u, xs, ys)))


def band(sensor, electronics, sensitivity, low, high, k):
    """rms in SI; sensor in ug/rtHz, electronics in uV/rtHz, sensitivity in V/g; squares are added."""
    def square(f):
        a = density(sensor, f) * 1e-6 * G
        b = density(electronics, f) * 1e-6 / sensitivity * G if electronics else 0.0
        return (a * a + b * b) / (2 * np.pi * f) ** (2 * k)
    corners = sorted({p[0] for p in sensor} | {p[0] for p in (electronics or [])})
    edges = [low] + [c for c in corners if low < c < high] + [high]
    total = sum(quad(square, a, b, epsabs=0, epsrel=1e-11, limit=500)[0] for a, b in zip(edges, edges[1:]))
    return float(np.sqrt(total))


ACC100 = [[1, 30], [10, 8], [100, 3.5], [1000, 2.5], [10000, 2.5]]
ACC500 = [[0.1, 20], [1, 2.0], [10, 0.8], [100, 0.4], [1000, 0.3]]
PORT24 = [[0.1, 8], [1, 0.8], [10, 0.10], [100, 0.08], [10000, 0.08]]

bands = []
for name, sensor, electronics, s, low, high, k in [
    ("general accelerometer and collector, velocity", ACC100, PORT24, 0.1, 2, 1000, 1),
    ("general accelerometer and collector, bursts", ACC100, PORT24, 0.1, 2000, 10000, 0),
    ("general accelerometer alone, displacement", ACC100, None, 0.1, 0.3, 500, 2),
    ("low-frequency accelerometer, displacement below its first point", ACC500, PORT24, 0.5, 0.02, 1, 2),
    ("low-frequency accelerometer, velocity above its last point", ACC500, PORT24, 0.5, 200, 5000, 1),
]:
    bands.append({"name": name, "sensor": sensor, "electronics": electronics, "sensitivity": s, "low": low,
                  "high": high, "integrations": k, "rms": band(sensor, electronics, s, low, high, k)})

limits = []
for quality in [None, 0.5, 1 / 1.4, 0.8, 1, 2, 12, 25]:
    for low, high in [(-0.1, 0.1), (-0.05, 0.05), (-0.293, 0.414), (-0.2, 0.1)]:
        def response(r, q=quality):
            return 1 / np.sqrt((1 - r * r) ** 2 + (0 if q is None else (r / q) ** 2))
        grid = np.linspace(1e-4, 3, 300001)
        with np.errstate(divide="ignore"):
            outside = (response(grid) > 1 + high) | (response(grid) < 1 + low)
        first = int(np.argmax(outside))
        target = 1 + high if response(grid[first]) > 1 else 1 + low
        root = brentq(lambda r: response(r) - target, grid[first - 1], grid[first], xtol=1e-14)
        limits.append({"quality": quality, "low": low, "high": high, "ratio": root})

json.dump({"generator": "evidence/chain-formulas/independent.py", "scipy": scipy.__version__, "bands": bands,
           "limits": limits}, sys.stdout, indent=1)
