"""Filters, moments, densities and the other measures of a record as scipy gives them, on records both sides make.

The noise is a linear congruential generator whose every value is exact in both languages (signal/measures/made-record.ts).
Writes measures.json beside itself. Run with a Python that has scipy: python3 measures.py
"""

import json
import platform
from pathlib import Path

import numpy
import scipy
from scipy import optimize, signal, stats

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


def knocks(length, every, turns, loss):
    since = numpy.arange(length) % every
    return numpy.exp(-loss * since) * numpy.sin(2 * numpy.pi * turns * since)


def envelope():
    rate, low, high, order, length = 25600.0, 2800.0, 4800.0, 4, 128
    record = knocks(20000, 256, 0.15, 0.02) + even_noise(21, 20000)
    half = (high - low) / 2
    n = numpy.arange(len(record))
    shifted = record * numpy.exp(-2j * numpy.pi * (low + high) / 2 / rate * n)
    sections = signal.butter(order, half, fs=rate, output="sos")
    every = int(rate // (4 * (high - low)))
    settling = int(numpy.ceil(4 * rate / half))
    kept = 2 * numpy.abs(signal.sosfilt(sections, shifted))[settling::every]
    _, density = signal.welch(kept, rate / every, "hann", nperseg=length, detrend="constant")
    # One band of the choice: the transform of a tapered stretch, its lines cut out, the middle three quarters counted.
    size = 32768
    stretch = knocks(size, 1600, 0.3, 0.05) + even_noise(8, size)
    taper = signal.windows.tukey(2 * size + 1, 0.25)[1::2]
    lines = numpy.fft.fft(stretch * taper)
    cut = lines[8192:12288]
    analytic = numpy.fft.ifft(cut) * len(cut)
    middle = numpy.abs(analytic[len(cut) // 8 : len(cut) - len(cut) // 8])
    return {
        "low": low,
        "high": high,
        "order": order,
        "length": length,
        "every": every,
        "settling": settling,
        "count": len(kept),
        "first": kept[:40].tolist(),
        "density": density.tolist(),
        "band": {
            "kurtosis": float(numpy.mean(middle**4) / numpy.mean(middle**2) ** 2 - 2),
            "rms": float(numpy.sqrt(2 * numpy.mean(middle**2)) / size),
        },
    }


def integration():
    """The three tones are integrated by hand, so that only the high-pass is left to scipy."""
    rate, samples, corner = 10000.0, 20000, 8.0
    t = numpy.arange(samples) / rate
    w = 2 * numpy.pi * numpy.array([25.0, 120.0, 700.0])
    velocity = 3 / w[0] * numpy.sin(w[0] * t) - 8 / w[1] * numpy.cos(w[1] * t) + 1 / w[2] * numpy.sin(w[2] * t + 1)
    place = (
        -3 / w[0] ** 2 * numpy.cos(w[0] * t)
        - 8 / w[1] ** 2 * numpy.sin(w[1] * t)
        - 1 / w[2] ** 2 * numpy.cos(w[2] * t + 1)
    )
    cases = []
    for times, order in ((1, 2), (1, 4), (2, 3), (2, 4)):
        sections = signal.butter(order, corner, "highpass", fs=rate, output="sos")
        passed = signal.sosfilt(sections, velocity if times == 1 else place)
        end = samples - 5 * times
        cases.append({"times": times, "order": order, "last": passed[end - 200 : end].tolist()})
    return {"rate": rate, "samples": samples, "corner": corner, "cases": cases}


def tone_fits():
    rate = 1000.0
    record = tone(1000, 0.0437, 2.5, 0.7) + 0.3 * even_noise(5, 1000) + 4
    t = numpy.arange(1000) / rate

    def sine(t, amplitude, phase, mean, frequency):
        return amplitude * numpy.cos(2 * numpy.pi * frequency * t + phase) + mean

    def fit(model, start):
        values, covariance = optimize.curve_fit(model, t, record, p0=start, xtol=1e-15, ftol=1e-15, gtol=1e-15)
        errors = numpy.sqrt(numpy.diag(covariance))
        residual = float(numpy.sqrt(numpy.mean((record - model(t, *values)) ** 2)))
        names = ["amplitude", "phase", "mean", "frequency"][: len(values)]
        result = {name: float(value) for name, value in zip(names, values)}
        result.update({name + "Error": float(error) for name, error in zip(names, errors)})
        return {**result, "residual": residual}

    given = 43.7
    return {
        "given": given,
        "three": fit(lambda t, a, p, m: sine(t, a, p, m, given), [2.4, 0.6, 3.9]),
        "four": fit(sine, [2.4, 0.6, 3.9, 43.6]),
    }


def coherence():
    source = even_noise(31, 6064)
    first = source[64:]
    second = 0.8 * source[61:6061] + 0.5 * even_noise(5031, 6000)
    settings = {"fs": 1000.0, "window": "hann", "nperseg": 256, "noverlap": 128, "detrend": "constant"}
    _, both = signal.coherence(first, second, **settings)
    _, cross = signal.csd(first, second, **settings)
    return {"overlap": 0.5, "coherence": both.tolist(), "re": cross.real.tolist(), "im": cross.imag.tolist()}


def decay():
    """A ring-down in noise, and the damped sine that fits it best."""
    rate, samples, start, length = 51200.0, 2000, 64, 600
    t = numpy.arange(samples - start) / rate
    ring = 1e-4 * even_noise(17, samples)
    ring[start:] += numpy.exp(-2 * numpy.pi * 4321 * 0.017 * t) * numpy.sin(2 * numpy.pi * 4321 * t)

    def model(t, amplitude, loss, frequency, phase):
        return amplitude * numpy.exp(-loss * t) * numpy.sin(2 * numpy.pi * frequency * t + phase)

    begin = [1.0, 400.0, 4300.0, 0.0]
    values, _ = optimize.curve_fit(model, t[:length], ring[start : start + length], p0=begin)
    natural = float(numpy.hypot(values[2], values[1] / (2 * numpy.pi)))
    damping = float(values[1] / (2 * numpy.pi) / natural)
    return {"rate": rate, "from": start, "ring": ring.tolist(), "frequency": natural, "damping": damping}


def main():
    result = {
        "generator": "measures.py",
        "versions": {"python": platform.python_version(), "numpy": numpy.__version__, "scipy": scipy.__version__},
        "filters": filters(),
        "moments": moments(),
        "densities": densities(),
        "envelope": envelope(),
        "integration": integration(),
        "tone": tone_fits(),
        "coherence": coherence(),
        "decay": decay(),
    }
    with open(here / "measures.json", "w", encoding="utf-8") as out:
        json.dump(result, out, indent=1)
        out.write("\n")


main()
