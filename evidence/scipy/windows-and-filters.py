"""Windows, analogue filters and a transform as scipy and numpy give them.

Writes windows-and-filters.json beside itself. Run with a Python that has scipy: python3 windows-and-filters.py
"""

import json
import platform
from pathlib import Path

import numpy
import scipy
from scipy import signal

here = Path(__file__).resolve().parent


def general(coefficients):
    return ("general_cosine", coefficients)


# Our name of a window to what scipy calls it. The coefficients given to general_cosine are those of the handbooks.
WINDOWS = {
    "rectangular": "boxcar",
    "hann": "hann",
    "hamming": "hamming",
    "blackman": "blackman",
    "exact-blackman": general([7938 / 18608, 9240 / 18608, 1430 / 18608]),
    "blackman-harris-3-term": general([0.42323, 0.49755, 0.07922]),
    "blackman-harris-4-term": "blackmanharris",
    "kaiser-bessel-3": ("kaiser", numpy.pi * 3.0),
    "kaiser-bessel-3.5": ("kaiser", numpy.pi * 3.5),
    "nuttall-4c": "nuttall",
    "flat-top-5-term": "flattop",
    "flat-top-unity-gain": general([1, 1.933, 1.286, 0.388, 0.0322]),
    "flat-top-hft95": general([1, 1.9383379, 1.3045202, 0.402827, 0.0350665]),
}


def weights(name, length, periodic):
    kind = WINDOWS[name]
    if isinstance(kind, tuple) and kind[0] == "general_cosine":
        w = signal.windows.general_cosine(length, kind[1], sym=not periodic)
        # HFT95 is scaled to a top of one here, as it is for every other normalised window.
        return w / sum(kind[1]) if name == "flat-top-hft95" else w
    return signal.get_window(kind, length, fftbins=periodic)


def properties(w):
    n = len(w)
    half_bin = abs(numpy.sum(w * numpy.exp(-1j * numpy.pi * numpy.arange(n) / n)))
    # Side lobes on a transform 64 times finer, beyond the first minimum below the main lobe.
    fine = numpy.abs(numpy.fft.rfft(w, 64 * n)) / numpy.sum(w)
    place = 32
    while not (fine[place] < 0.17 and fine[place + 1] > fine[place]):
        place += 1
    return {
        "coherentGain": float(numpy.mean(w)),
        "noiseBandwidth": float(n * numpy.sum(w**2) / numpy.sum(w) ** 2),
        "scallopingLoss": float(-20 * numpy.log10(half_bin / numpy.sum(w))),
        "highestSideLobe": float(20 * numpy.log10(fine[place:].max())),
    }


def windows():
    result = {}
    for name in WINDOWS:
        result[name] = {}
        for definition in ("periodic", "symmetric"):
            periodic = definition == "periodic"
            result[name][definition] = {
                "weights32": weights(name, 32, periodic).tolist(),
                "length1024": properties(weights(name, 1024, periodic)),
                "length1000": properties(weights(name, 1000, periodic)),
            }
    return result


def filters():
    corner = 10.0
    frequencies = [0.1, 1.0, 5.0, 7.5, 10.0, 12.5, 20.0, 100.0, 1000.0]
    result = []
    for order in range(1, 9):
        for kind in ("highpass", "lowpass"):
            z, p, k = signal.butter(order, 2 * numpy.pi * corner, kind, analog=True, output="zpk")
            _, h = signal.freqs_zpk(z, p, k, worN=2 * numpy.pi * numpy.array(frequencies))
            result.append({"order": order, "kind": kind, "re": h.real.tolist(), "im": h.imag.tolist()})
    return {"corner": corner, "frequencies": frequencies, "responses": result}


def resonators():
    """Second-order systems through scipy's transfer functions: s in rad/s."""
    frequencies = [0.5, 5.0, 10.0, 12.0, 40.0, 400.0]
    w = 2 * numpy.pi * numpy.array(frequencies)
    natural, quality, damping = 10.0, 25.0, 0.7
    w0 = 2 * numpy.pi * natural
    _, resonance = signal.freqs([w0**2], [1, w0 / quality, w0**2], worN=w)
    # Relative motion of a mass on a suspension: -s^2/(s^2 + 2 zeta w0 s + w0^2).
    _, suspension = signal.freqs([-1, 0, 0], [1, 2 * damping * w0, w0**2], worN=w)
    return {
        "frequencies": frequencies,
        "natural": natural,
        "quality": quality,
        "damping": damping,
        "resonance": {"re": resonance.real.tolist(), "im": resonance.imag.tolist()},
        "suspension": {"re": suspension.real.tolist(), "im": suspension.imag.tolist()},
    }


def transform():
    generator = numpy.random.default_rng(20816)
    record = numpy.round(generator.standard_normal(256), 6)
    lines = numpy.fft.rfft(record)
    rate = 2560.0
    frequencies, power = signal.periodogram(record, rate, "hann", detrend=False, scaling="spectrum")
    _, density = signal.periodogram(record, rate, "hann", detrend=False, scaling="density")
    band = (frequencies >= 200) & (frequencies <= 800)
    return {
        "seed": 20816,
        "samplingRate": rate,
        "record": record.tolist(),
        "re": lines.real.tolist(),
        "im": lines.imag.tolist(),
        # scipy's 'spectrum' scaling is the mean square of a sine on the line.
        "hannPowerSpectrum": power.tolist(),
        "band": [200, 800],
        "bandRmsFromDensity": float(numpy.sqrt(numpy.sum(density[band]) * (frequencies[1] - frequencies[0]))),
    }


def main():
    result = {
        "generator": "windows-and-filters.py",
        "versions": {"python": platform.python_version(), "numpy": numpy.__version__, "scipy": scipy.__version__},
        "windows": windows(),
        "filters": filters(),
        "resonators": resonators(),
        "transform": transform(),
    }
    with open(here / "windows-and-filters.json", "w", encoding="utf-8") as out:
        json.dump(result, out, indent=1)
        out.write("\n")


main()
