"""Moving coil beside scipy and numpy: the open response, and the coil with its shunt, cable and load solved as a circuit.

The open response comes from scipy.signal.freqresp of s^2/(s^2 + 2 z w s + w^2). The loaded coil is solved as two complex
equations at each frequency: the forces on the moving mass, and the loop of coil resistance and load.
Run: python3 moving-coil.py
"""

import json
from pathlib import Path

import numpy as np
import scipy
from scipy import signal

frequencies = [0.1, 0.5, 1, 2, 5, 8, 10, 12.5, 20, 50, 100, 1000]
omega = 2 * np.pi * np.array(frequencies)


def rows(values):
    return [[float(f"{v.real:.12e}"), float(f"{v.imag:.12e}")] for v in values]


opened = []
for natural, damping in [(10, 0.68), (4.5, 0.56), (15, 0.7), (8, 0.27), (10, 1.2)]:
    w = 2 * np.pi * natural
    _, response = signal.freqresp(signal.TransferFunction([1, 0, 0], [1, 2 * damping * w, w * w]), omega)
    opened.append({"natural": natural, "damping": damping, "response": rows(response)})

loaded = []
coils = [
    {"natural": 10, "damping": 0.2, "mass": 0.02, "sensitivity": 28.0, "coil": 380.0, "shunt": 1000.0, "cable": 0.0, "load": 1e9},
    {"natural": 4.5, "damping": 0.56, "mass": 0.0236, "sensitivity": 28.8, "coil": 375.0, "shunt": 0.0, "cable": 20e-9, "load": 10e3},
    {"natural": 10, "damping": 0.3, "mass": 0.011, "sensitivity": 20.0, "coil": 600.0, "shunt": 3300.0, "cable": 100e-9, "load": 100e3},
]
for each in coils:
    w0 = 2 * np.pi * each["natural"]
    m, g = each["mass"], each["sensitivity"]
    k, c = m * w0**2, 2 * each["damping"] * m * w0
    values = []
    for w in omega:
        s = 1j * w
        admittance = s * each["cable"] + 1 / each["load"] + (1 / each["shunt"] if each["shunt"] else 0)
        # Unknown: velocity u of the coil against its case, and the current i out of the coil; the case moves at 1 m/s.
        # m s (1 + u) + (c + k/s) u - g i = 0 ;  -g u = i (coil + 1/admittance)
        matrix = np.array([[m * s + c + k / s, -g], [g, each["coil"] + 1 / admittance]])
        u, i = np.linalg.solve(matrix, np.array([-m * s, 0]))
        values.append(i / admittance)
    loaded.append({**each, "voltage": rows(values)})

text = json.dumps(
    {
        "generator": "evidence/scipy/moving-coil.py",
        "scipy": scipy.__version__,
        "frequencies": frequencies,
        "open": opened,
        "loaded": loaded,
    },
    indent=1,
)
(Path(__file__).resolve().parent / "moving-coil.json").write_text(text + "\n")
