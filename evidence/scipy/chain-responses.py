"""Responses of each kind of transducer and noise of whole chains, a second way: scipy.

Responses by scipy.signal.freqs on the transfer function in s; noise by adaptive quadrature in f, panel by panel between
the points of the data sheets. The parts are those of the generic catalogue; their numbers are typed again here.

Writes chain-responses.json beside itself. Run: python3 chain-responses.py
"""

import json
import platform
from pathlib import Path

import numpy
import scipy
from scipy import integrate, signal

here = Path(__file__).resolve().parent
TURN = 2 * numpy.pi
G = 9.80665


def resonance(natural, quality):
    w = TURN * natural
    return [w * w], [1, w / quality, w * w]


def suspension(natural, damping):
    w = TURN * natural
    return [1, 0, 0], [1, 2 * damping * w, w * w]


def butter(kind, order, corner):
    return signal.butter(order, TURN * corner, kind, analog=True)


def response(sections, frequencies):
    total = numpy.ones(len(frequencies), complex)
    for b, a in sections:
        total = total * signal.freqs(b, a, worN=TURN * frequencies)[1]
    return total


# Dunkerley's rule, as 1/f^2 sums: sensor on a rigid stud, and sensor and mount together on the stiffness of the mount.
def on_mount(stud, stiffness, mass):
    return (stud**-2 + (numpy.sqrt(stiffness / mass) / TURN) ** -2) ** -0.5


COUPLING = butter("high", 1, 0.1)
RESPONSES = {
    # What enters an input without coupling, beside the nominal sensitivity.
    "PVT-4 on stud": [resonance(15e3, 10), butter("high", 2, 1.5), butter("low", 1, 5000)],
    "MCV-20 on stud": [suspension(10, 0.68)],
    "LPV-25 on stud": [butter("high", 2, 8), butter("low", 2, 1000)],
    "LPV-12L on stud": [butter("high", 2, 1.2), butter("low", 2, 1000)],
    "LPA-10P on stud": [butter("high", 2, 3), butter("low", 1, 10e3)],
    "PRX-8 on stud": [butter("low", 1, 10e3)],
    "ACC-100 on stud": [resonance(27e3, 12), butter("high", 1, 0.5)],
    "ACC-100 on magnet-flat": [resonance(on_mount(27e3, 4e8, 0.095 + 0.055), 12), butter("high", 1, 0.5)],
    "ACC-500 on epoxy-pad": [resonance(on_mount(15e3, 1.6e9, 0.210 + 0.030), 15), butter("high", 1, 0.1)],
    "PVT-4 on magnet-2pole": [
        resonance(on_mount(15e3, 7e7, 0.130 + 0.090), 10),
        butter("high", 2, 1.5),
        butter("low", 1, 5000),
    ],
}

FREQUENCIES = numpy.geomspace(0.05, 50e3, 121)


# Noise densities as points (Hz, value); between points a power law, below the first its slope goes on, above the last
# its value stays.
def density(points, frequency):
    f, n = numpy.log(numpy.array(points)).T
    x = numpy.log(frequency)
    if x < f[0]:
        return float(numpy.exp(n[0] + (x - f[0]) * (n[1] - n[0]) / (f[1] - f[0])))
    return float(numpy.exp(numpy.interp(x, f, n)))


def scaled(points, factor):
    return [(f, n * factor) for f, n in points]


SENSORS = {
    "ACC-100": (0.1 / G, scaled([(1, 30), (10, 8), (100, 3.5), (1e3, 2.5), (1e4, 2.5)], 1e-6 * G)),
    "ACC-500": (0.5 / G, scaled([(0.1, 20), (1, 2), (10, 0.8), (100, 0.4), (1e3, 0.3)], 1e-6 * G)),
    "PVT-4": (4.0, scaled([(1, 60), (10, 2), (100, 0.5), (1e3, 0.2)], 1e-6)),
    "MCV-20": (20.0, scaled([(1, 0.5), (10, 0.05), (100, 0.02), (1e3, 0.02)], 1e-6)),
}
# Density, corner of the coupling, range, bits, highest sampling rate.
INPUTS = {
    "PORT-24": (scaled([(0.1, 8), (1, 0.8), (10, 0.1), (100, 0.08), (1e4, 0.08)], 1e-6), 0.1, 10, 24, 131072),
    "PORT-18": (scaled([(0.1, 12), (1, 1.2), (10, 0.15), (100, 0.12), (1e4, 0.12)], 1e-6), 0.3, 5, 24, 102400),
}


def quantisation(peak, bits, rate):
    """A step's variance, step^2/12, spread evenly from rest to half the highest sampling rate."""
    step = 2 * peak / 2**bits
    return step / numpy.sqrt(12) / numpy.sqrt(rate / 2)


def parts(sensor, entry):
    sensitivity, own = SENSORS[sensor]
    noise, corner, peak, bits, rate = INPUTS[entry]
    q = quantisation(peak, bits, rate)

    def of_sensor(f):
        return density(own, f) * abs(1j * f / (corner + 1j * f))

    def of_input(f):
        return numpy.hypot(density(noise, f), q) / sensitivity

    corners = sorted({f for f, _ in own} | {f for f, _ in noise})
    return of_sensor, of_input, corners


def band(function, corners, low, high, integrations):
    edges = [low, *[f for f in corners if low < f < high], high]
    total = 0.0
    for a, b in zip(edges, edges[1:]):
        total += integrate.quad(
            lambda f: (function(f) / (TURN * f) ** integrations) ** 2, a, b, epsabs=0, epsrel=1e-11, limit=400
        )[0]
    return float(numpy.sqrt(total))


NOISES = [
    ("ACC-100", "PORT-24", 2, 1000, 1),
    ("ACC-100", "PORT-24", 2000, 10000, 0),
    ("ACC-100", "PORT-24", 2, 1000, 2),
    ("ACC-500", "PORT-24", 0.1, 100, 2),
    ("ACC-500", "PORT-24", 0.2, 5000, 0),
    ("ACC-100", "PORT-18", 2, 1000, 1),
    ("PVT-4", "PORT-24", 2, 1000, 0),
    ("PVT-4", "PORT-24", 2, 1000, 1),
    ("MCV-20", "PORT-24", 10, 1000, 0),
]


def noise_row(sensor, entry, low, high, k):
    of_sensor, of_input, corners = parts(sensor, entry)
    middle = float(numpy.sqrt(low * high))
    return {
        "sensor": sensor,
        "input": entry,
        "low": low,
        "high": high,
        "integrations": k,
        "total": band(lambda f: numpy.hypot(of_sensor(f), of_input(f)), corners, low, high, k),
        "of_sensor": band(of_sensor, corners, low, high, k),
        "of_input": band(of_input, corners, low, high, k),
        "at": middle,
        "density": float(numpy.hypot(of_sensor(middle), of_input(middle))),
    }


def rows(name, sections):
    values = response(sections, FREQUENCIES)
    return {"name": name, "re": values.real.tolist(), "im": values.imag.tolist()}


result = {
    "generator": "evidence/scipy/chain-responses.py",
    "python": platform.python_version(),
    "numpy": numpy.__version__,
    "scipy": scipy.__version__,
    "frequencies": FREQUENCIES.tolist(),
    "coupling_0_1_hz": rows("coupling", [COUPLING]),
    "responses": [rows(name, sections) for name, sections in RESPONSES.items()],
    "noise": [noise_row(*each) for each in NOISES],
}


def kept(value):
    """Eleven digits: what differs beyond them is the arithmetic of the machine."""
    if isinstance(value, float):
        return float(f"{value:.10e}")
    if isinstance(value, list):
        return [kept(each) for each in value]
    if isinstance(value, dict):
        return {key: kept(each) for key, each in value.items()}
    return value


(here / "chain-responses.json").write_text(json.dumps(kept(result), indent=0) + "\n")
