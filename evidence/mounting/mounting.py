"""Brackets and magnets a second way.

First mode of a cantilever with an end mass by finite elements (cubic beam elements, consistent masses), not by its
characteristic equation. Acceleration at which a magnet gives way by a linear programme over the forces of its two feet,
not by a formula: the largest acceleration for which any forces on the feet keep it in place.
Writes mounting.json beside itself. Run: python3 mounting.py
"""

import json
from pathlib import Path

import numpy as np
import scipy
from scipy import linalg, optimize

G = 9.80665


def first_mode(length, width, thickness, modulus, density, end_mass, elements=24):
    bending = modulus * width * thickness**3 / 12
    line = density * width * thickness
    e = length / elements
    k = bending / e**3 * np.array(
        [[12, 6 * e, -12, 6 * e], [6 * e, 4 * e * e, -6 * e, 2 * e * e],
         [-12, -6 * e, 12, -6 * e], [6 * e, 2 * e * e, -6 * e, 4 * e * e]])
    m = line * e / 420 * np.array(
        [[156, 22 * e, 54, -13 * e], [22 * e, 4 * e * e, 13 * e, -3 * e * e],
         [54, 13 * e, 156, -22 * e], [-13 * e, -3 * e * e, -22 * e, 4 * e * e]])
    size = 2 * (elements + 1)
    stiffness, mass = np.zeros((size, size)), np.zeros((size, size))
    for i in range(elements):
        at = slice(2 * i, 2 * i + 4)
        stiffness[at, at] += k
        mass[at, at] += m
    mass[-2, -2] += end_mass
    values = linalg.eigh(stiffness[2:, 2:], mass[2:, 2:], eigvals_only=True, subset_by_index=[0, 0])
    return float(np.sqrt(values[0]) / (2 * np.pi))


def along(pull, mass, height, foot, friction):
    """Largest acceleration along the face, the weight with it. Unknown: a, N1, N2, T1, T2."""
    equal = [[0, 1, 1, 0, 0], [-mass, 0, 0, 1, 1], [-mass * height, foot / 2, -foot / 2, 0, 0]]
    right = [pull, mass * G, mass * G * height]
    less = [[0, -friction, 0, s, 0] for s in (1, -1)] + [[0, 0, -friction, 0, s] for s in (1, -1)]
    found = optimize.linprog([-1, 0, 0, 0, 0], A_ub=less, b_ub=[0] * 4, A_eq=equal, b_eq=right,
                             bounds=[(0, None), (0, None), (0, None), (None, None), (None, None)])
    return float(found.x[0]) if found.success else 0.0


brackets = [
    dict(length=0.1, width=0.04, thickness=0.01, modulus=205e9, density=7850, end_mass=0.15),
    dict(length=0.2, width=0.05, thickness=0.008, modulus=70e9, density=2700, end_mass=0.3),
    dict(length=0.06, width=0.03, thickness=0.012, modulus=195e9, density=7950, end_mass=0),
    dict(length=0.3, width=0.1, thickness=0.02, modulus=110e9, density=7200, end_mass=5),
]
magnets = [
    dict(pull=200, mass=0.2, height=0.03, foot=0.025, friction=0.2),
    dict(pull=150, mass=0.25, height=0.05, foot=0.012, friction=0.3),
    dict(pull=90, mass=0.3, height=0.02, foot=0.03, friction=0.1),
    dict(pull=10, mass=0.5, height=0.06, foot=0.012, friction=0.15),
]
result = {
    "scipy": scipy.__version__,
    "brackets": [dict(**b, firstMode=first_mode(**b)) for b in brackets],
    "magnets": [dict(**m, along=along(**m)) for m in magnets],
}
Path(__file__).with_name("mounting.json").write_text(json.dumps(result, indent=1) + "\n")
