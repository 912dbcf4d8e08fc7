"""Filters, moments, densities and the other measures of a record as scipy gives them, on records both sides make.

The noise is a linear congruential generator whose every value is exact in both languages (signal/measures/made-record.ts).
Writes measures.json beside itself. Run with a Python that has scipy: python3 measures.py
"""

import json
import platform
from pathlib import Path

import numpy
import scipy
from scipy import signal, stats

here = Path(__file__).resolve().parent


def even_noise(seed, length):
    state = seed
    values = numpy.empty(length)
    for n in range(length):
        state = (1664525 * state + 1013904223) % 2**32
        values[n] = state / 2**31 - 1
    return values


def tone(length, turns, amplitude=1.0, phase=0.0):
    return amplitude * numpy.cos(2 * numpy.pi * turns * numpy.arange(length) + phase)


def filters():
    rate = 10000.0
    noise = even_noise(7, 400)
    result = []
    for order in range(1, 9):
        for kind, corner in (("lowpass", 1200.0), ("highpass", 15.0), ("bandpass", [800.0, 2600.0])):
            sections = signal.butter(order, corner, kind, fs=rate, output="sos")
            passed = signal.sosfilt(sections, noise)
            steady = signal.sosfilt(sections, noise, zi=signal.sosfilt_zi(sections) * noise[0])[0]
            _, response = signal.sosfreqz(sections, worN=[3.0, 15.0, 700.0, 1200.0, 2600.0, 4600.0], fs=rate)
            result.append(
                {
                    "order": order,
                    "kind": kind,
                    "corner": corner,
                    "last": passed[-20:].tolist(),
                    "steady": steady[:20].tolist(),
                    "re": response.real.tolist(),
                    "im": response.imag.tolist(),
                }
            )
    return {"rate": rate, "seed": 7, "length": 400, "frequencies": [3.0, 15.0, 700.0, 1200.0, 2600.0, 4600.0], "filters": result}


def moments():
    """A large direct component on purpose: sums of powers would lose their digits."""
    record = 1000.0 + even_noise(11, 10000) ** 3 + 0.25 * tone(10000, 0.0123)
    return {
        "seed": 11,
        "mean": float(numpy.mean(record)),
        "rms": float(numpy.sqrt(numpy.mean(record**2))),
        "acRms": float(numpy.std(record)),
        "least": float(record.min()),
        "greatest": float(record.max()),
        "skewness": float(stats.skew(record)),
        "kurtosis": float(stats.kurtosis(record, fisher=False)),
    }


WINDOWS = {"hann": "hann", "rectangular": "boxcar", "hamming": "hamming", "blackman-harris-4-term": "blackmanharris"}


def densities():
    rate = 2560.0
    record = even_noise(3, 5000) + 0.5 + tone(5000, 0.1)
    result = []
    for window, name in WINDOWS.items():
        for overlap, detrend in ((0.5, "mean"), (0.75, "none"), (0.0, "mean")):
            length = 256
            _, density = signal.welch(
                record,
                rate,
                name,
                nperseg=length,
                noverlap=int(length * overlap),
                detrend="constant" if detrend == "mean" else False,
            )
            result.append({"window": window, "overlap": overlap, "detrend": detrend, "density": density.tolist()})
    return {"rate": rate, "seed": 3, "samples": 5000, "length": 256, "densities": result}


def main():
    result = {
        "generator": "measures.py",
        "versions": {"python": platform.python_version(), "numpy": numpy.__version__, "scipy": scipy.__version__},
        "filters": filters(),
        "moments": moments(),
        "densities": densities(),
    }
    with open(here / "measures.json", "w", encoding="utf-8") as out:
        json.dump(result, out, indent=1)
        out.write("\n")


main()
