"""Recordings written by scipy.io and by Python's own wave module, with the values they hold. Writes *.wav, *.mat and
by-scipy.json beside itself.

The values are small and told in full, so that a reader is held against every one of them.
"""

import json
import platform
import struct
import wave
from pathlib import Path

import numpy
import scipy
from scipy.io import loadmat, savemat, wavfile

here = Path(__file__).resolve().parent
RATE = 25600

steps = numpy.array([[0, -1], [1, 32767], [-32768, 12345], [255, -256], [-257, 3]], dtype=numpy.int64)
held = {}


def shares(values, bits):
    return [[float(v) / 2 ** (bits - 1) for v in channel] for channel in numpy.asarray(values).T]


def by_wave(name, values, bits):
    """Written by Python's wave module."""
    with wave.open(str(here / name), "wb") as file:
        file.setnchannels(values.shape[1])
        file.setsampwidth(bits // 8)
        file.setframerate(RATE)
        raw = b"".join(struct.pack("<q", int(v))[: bits // 8] for v in values.flatten())
        file.writeframes(raw)
    held[name] = {"rate": RATE, "by": "wave", "channels": shares(values, bits)}


by_wave("int16.wav", steps, 16)
by_wave("int24.wav", steps * 256 - numpy.array([[0, 1], [0, 1], [0, 0], [7, 0], [0, 0]]), 24)
by_wave("int32.wav", steps * 65536 + 1, 32)

for name, kind in (("float32.wav", numpy.float32), ("float64.wav", numpy.float64)):
    values = numpy.array([[0.1, -2.5], [1e-7, 3.75], [-1.0, 1 / 3]], dtype=kind)
    wavfile.write(here / name, RATE, values)
    rate, read = wavfile.read(here / name)
    held[name] = {"rate": rate, "by": "scipy.io.wavfile", "channels": [[float(v) for v in c] for c in read.T]}

for name in ("int16.wav", "int24.wav", "int32.wav"):
    rate, read = wavfile.read(here / name)
    # scipy gives the 24-bit integers shifted into 32 bits.
    scale = 2**15 if read.dtype == numpy.int16 else 2**31
    again = [[float(v) / scale for v in c] for c in read.T]
    assert rate == RATE and again == held[name]["channels"], name

def without_date(path, writer):
    """The head of a MAT file says when it was written: left out, so that the file is the same tomorrow."""
    raw = path.read_bytes()
    path.write_bytes(f"MATLAB 5.0 MAT-file, written by {writer}, date left out".encode().ljust(116) + raw[116:])


n = 300
time = numpy.arange(n) / RATE
wave_a = numpy.round(3 * numpy.sin(2 * numpy.pi * 1000 * time), 3)
content = {
    "a": wave_a.reshape(-1, 1),
    "rows": numpy.arange(24, dtype=numpy.int16).reshape(3, 8) - 12,
    "columns": (numpy.arange(30).reshape(10, 3) / 8).astype(numpy.float32),
    "z": (wave_a[:20] + 1j * wave_a[20:40]).reshape(1, -1),
    "Fs": float(RATE),
    "note": "invented pump, drive end",
    "test": {"acceleration": wave_a[:50].reshape(-1, 1), "units": "m/s^2", "deep": {"b": numpy.uint8([[1], [2], [250]])}},
}
for name, packed in (("scipy-plain.mat", False), ("scipy-packed.mat", True)):
    savemat(here / name, content, do_compression=packed)
    without_date(here / name, "scipy")
    read = loadmat(here / name)
    test = read["test"][0, 0]

    def columns(matrix):
        return [[float(v) for v in column] for column in matrix.T]

    held[name] = {
        "by": "scipy.io.savemat, read again by loadmat",
        "channels": {
            "a": columns(read["a"])[0],
            **{f"rows, row {i + 1}": [float(v) for v in row] for i, row in enumerate(read["rows"])},
            **{f"columns, column {i + 1}": c for i, c in enumerate(columns(read["columns"]))},
            "z": [float(v) for v in read["z"][0].real],
            "test.acceleration": columns(test["acceleration"])[0],
            "test.deep.b": columns(test["deep"][0, 0]["b"])[0],
        },
        "imaginary": {"z": [float(v) for v in read["z"][0].imag]},
    }

# A big-endian MAT file, put together by struct from the layout of level 5, and read again by scipy.
def element(kind, raw):
    return struct.pack(">II", kind, len(raw)) + raw + b"\0" * (-len(raw) % 8)


def matrix(name, kind, storage, letter, values, rows, columns):
    inner = element(6, struct.pack(">II", kind, 0)) + element(5, struct.pack(">ii", rows, columns))
    short = name.encode()
    if len(short) <= 4:
        inner += struct.pack(">HH", len(short), 1) + short.ljust(4, b"\0")
    else:
        inner += element(1, short)
    inner += element(storage, struct.pack(f">{len(values)}{letter}", *values))
    return struct.pack(">II", 14, len(inner)) + inner


head = b"MATLAB 5.0 MAT-file, put together by hand".ljust(124) + struct.pack(">H", 0x0100) + b"MI"
big = head + matrix("a", 6, 9, "d", [1.5, -2.25, 1e-300, 7], 4, 1) + matrix("counts", 10, 3, "h", [5, -6, 7, 300, -300, 0], 2, 3)
(here / "big-endian.mat").write_bytes(big)
read = loadmat(here / "big-endian.mat")
held["big-endian.mat"] = {
    "by": "struct, read again by scipy.io.loadmat",
    "channels": {
        "a": [float(v) for v in read["a"][:, 0]],
        **{f"counts, row {i + 1}": [float(v) for v in row] for i, row in enumerate(read["counts"])},
    },
}

# A WAV file of 64-bit lengths, put together by the layout of EBU Tech 3306; scipy of this age cannot write one.
with open(here / "int16.wav", "rb") as file:
    plain = file.read()
data = plain[44:]
rf64 = b"RF64" + struct.pack("<I", 0xFFFFFFFF) + b"WAVE"
rf64 += b"ds64" + struct.pack("<IQQQI", 28, 4 + 36 + 24 + 8 + len(data), len(data), len(data) // 4, 0)
rf64 += plain[12:36] + b"data" + struct.pack("<I", 0xFFFFFFFF) + data
(here / "rf64.wav").write_bytes(rf64)
held["rf64.wav"] = {**held["int16.wav"], "by": "struct, by the layout of RF64"}

# An extensible head around the same samples: 24 valid bits, integer subformat.
plain = (here / "int24.wav").read_bytes()
frame = 6
guid = struct.pack("<H", 1) + bytes.fromhex("000000001000800000AA00389B71")
form = struct.pack("<HHIIHH", 0xFFFE, 2, RATE, RATE * frame, frame, 24) + struct.pack("<HHI", 22, 24, 3) + guid
body = b"WAVEfmt " + struct.pack("<I", len(form)) + form + plain[36:]
(here / "extensible.wav").write_bytes(b"RIFF" + struct.pack("<I", len(body)) + body)
rate, read = wavfile.read(here / "extensible.wav")
again = [[float(v) / 2**31 for v in c] for c in read.T]
assert again == held["int24.wav"]["channels"]
held["extensible.wav"] = {"rate": rate, "by": "struct, read again by scipy.io.wavfile", "channels": again}

# The eight cases of dataset 58, formatted here a second way: Fortran's edit descriptors by Python's formats, binary by
# struct; the form is that of the format's own description (its records and Addendum B), read second-hand.
count = 25
xs = numpy.cumsum(1 + numpy.arange(count) % 3).astype(numpy.float32) / 8
re = numpy.round(numpy.sin(numpy.arange(count)) * 17, 4)
im = numpy.round(numpy.cos(numpy.arange(count)) * 0.03, 6)


def number(value, width):
    return f"{value:{width}.{5 if width == 13 else 12}E}"


def dataset(case, order):
    double, even, complex_ = case > 4, case % 2 == 1, case in (3, 4, 7, 8)
    kind = (5 if complex_ else 2) + (0 if not double else (1 if complex_ else 2))
    parts = [*([] if even else ["x"]), "r", *(["i"] if complex_ else [])]
    single = {"x": 4, "r": 8 if double else 4, "i": 8 if double else 4}
    values = [{"x": float(xs[k]), "r": float(re[k]), "i": float(im[k])} for k in range(count)]
    binary = order != "text"
    length = count * sum(single[p] for p in parts)
    lines = ["    -1"]
    if binary:
        lines.append(f"    58b{1 if order == '<' else 2:6d}{2:6d}{11:12d}{length:12d}{0:6d}{0:6d}{0:12d}{0:12d}")
    else:
        lines.append("    58")
    lines += [f"Case {case}", "NONE", "25-Nov-26 17:04:32", "NONE", "NONE"]
    lines.append(f"{1:5d}{0:10d}{0:5d}{0:10d} {'NONE':10s}{12:10d}{-3:4d} {'NONE':10s}{0:10d}{0:4d}")
    first, step = (0.5, 0.015625) if even else (0, 0)
    lines.append(f"{kind:10d}{count:10d}{int(even):10d}{number(first, 13)}{number(step, 13)}{number(0, 13)}")
    lines.append(f"{17:10d}{0:5d}{0:5d}{0:5d} {'Time':20s} {'s':20s}")
    lines.append(f"{12:10d}{0:5d}{0:5d}{0:5d} {'Acceleration':20s} {'m/s^2':20s}")
    lines += [f"{0:10d}{0:5d}{0:5d}{0:5d} {'NONE':20s} {'NONE':20s}"] * 2
    head = ("\n".join(lines) + "\n").encode()
    if binary:
        letters = {4: "f", 8: "d"}
        body = b"".join(struct.pack(order + letters[single[p]], v[p]) for v in values for p in parts)
    else:
        if not double:
            widths = [13] * 6
        elif even:
            widths = [20] * 4
        else:
            widths = [13, 20, 20] if complex_ else [13, 20, 13, 20]
        flat = [v[p] for v in values for p in parts]
        rows = [flat[k : k + len(widths)] for k in range(0, len(flat), len(widths))]
        body = "".join("".join(number(v, w) for v, w in zip(row, widths)) + "\n" for row in rows).encode()
    return head + body + b"    -1\n"


orders = {"text": "text", "little": "<", "big": ">"}
for word, order in orders.items():
    (here / f"eight-cases-{word}.unv").write_bytes(b"".join(dataset(case, order) for case in range(1, 9)))
held["eight cases"] = {
    "along": [float(v) for v in xs],
    "real": [float(v) for v in re],
    "imaginary": [float(v) for v in im],
}

result = {
    "generator": "by-scipy.py",
    "versions": {"python": platform.python_version(), "scipy": scipy.__version__, "numpy": numpy.__version__},
    "files": held,
}
(here / "by-scipy.json").write_text(json.dumps(result, indent=1) + "\n")
