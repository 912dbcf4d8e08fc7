"""Recordings of MAT version 7.3, laid out as MATLAB writes them (from memory), and what h5py reads in them as JSON.

An HDF5 file behind a user block of 512 bytes: text, version 0x0200, the letters IM. Dimensions stand in reverse. A
structure is a group, a cell a dataset of references into #refs#, text are 16-bit numbers; MATLAB_class says which."""

import json
import sys

import h5py
import numpy as np

HEAD = b"MATLAB 7.3 MAT-file, laid out by h5py".ljust(116, b" ") + bytes(8) + b"\x00\x02IM"
REFERENCE = h5py.ref_dtype


def classed(item, name, **more):
    item.attrs["MATLAB_class"] = np.bytes_(name)
    for key, value in more.items():
        item.attrs["MATLAB_" + key] = np.int32(value) if key == "int_decode" else np.uint8(value)
    return item


def numbers(group, name, values, **storing):
    values = np.atleast_2d(np.asarray(values))
    word = {"float64": "double", "float32": "single"}.get(values.dtype.name, values.dtype.name)
    if values.dtype.kind == "c":
        pairs = np.zeros(values.T.shape, dtype=[("real", "<f8"), ("imag", "<f8")])
        pairs["real"], pairs["imag"] = values.T.real, values.T.imag
        return classed(group.create_dataset(name, data=pairs, **storing), "double")
    return classed(group.create_dataset(name, data=values.T, **storing), word)


def text(group, name, words):
    codes = np.array([[ord(letter)] for letter in words], dtype="<u2")
    return classed(group.create_dataset(name, data=codes), "char", int_decode=2)


def write(path, packed):
    small = dict(chunks=(1, 4), compression="gzip", shuffle=True, fletcher32=True) if packed else {}
    storing = dict(compression="gzip", compression_opts=3, chunks=True) if packed else {}
    with h5py.File(path, "w", userblock_size=512, libver="earliest") as file:
        refs = file.create_group("#refs#")
        numbers(file, "vibration", np.sin(np.arange(100) / 7).reshape(-1, 1), **storing)
        numbers(file, "columns", np.arange(30.0).reshape(10, 3) / 4, **small)
        numbers(file, "rows", np.arange(24, dtype=np.float32).reshape(2, 12) - 5, **storing)
        for kind in ("int8", "uint8", "int16", "uint16", "int32", "uint32", "int64", "uint64"):
            low = -3 if kind.startswith("i") else 3
            numbers(file, kind, np.arange(low, low + 9).astype(kind), **storing)
        numbers(file, "complex", np.arange(6) + 1j * np.arange(6)[::-1] / 2, **storing)
        flags = np.array([[1], [0], [1]], dtype=np.uint8)
        classed(file.create_dataset("flags", data=flags), "logical", int_decode=1)
        classed(file.create_dataset("nothing", data=np.array([0, 0], dtype="<u8")), "double", empty=1)
        numbers(file, "Fs", 8.0)
        numbers(file, "t", np.arange(10.0).reshape(-1, 1) / 8)
        text(file, "note", "invented fan, 20 µm")
        test = classed(file.create_group("test"), "struct")
        numbers(test, "acceleration", np.cos(np.arange(40.0)).reshape(-1, 1), **storing)
        text(test, "unit", "g")
        text(refs, "b", "A-1")
        serial = test.create_dataset("serial", data=np.array([[refs["b"].ref]], dtype=REFERENCE))
        classed(serial, "cell")
        numbers(refs, "c", np.arange(5.0) * 2)
        numbers(refs, "d", np.arange(7.0) * 3)
        points = classed(file.create_group("points"), "struct")
        points.create_dataset("values", data=np.array([[refs["c"].ref], [refs["d"].ref]], dtype=REFERENCE))
        classed(file.create_dataset("handle", data=np.zeros((2, 1), dtype="<u4")), "function_handle")
    with open(path, "r+b") as file:
        file.write(HEAD)


def spread(name, stored):
    """Channels of a dataset: its dimensions stand in reverse, so that stored[c] is column c."""
    columns, rows = stored.shape
    if stored.size < 2:
        return {}
    across = columns > rows
    lines = stored.T if across else stored
    word = "row" if across else "column"
    return {name if len(lines) == 1 else f"{name}, {word} {n + 1}": line for n, line in enumerate(lines)}


def held(path):
    channels, imaginary = {}, {}
    with h5py.File(path, "r") as file:
        paths = {name: name for name in file if isinstance(file[name], h5py.Dataset)}
        paths |= {"test.acceleration": "test/acceleration"}
        items = {name: file[where] for name, where in paths.items()}
        for number, reference in enumerate(file["points/values"][:, 0]):
            items[f"points({number + 1}).values"] = file[reference]
        for name, item in items.items():
            if item.attrs["MATLAB_class"] in (b"char", b"cell", b"function_handle") or "MATLAB_empty" in item.attrs:
                continue
            values = item[()]
            if values.dtype.names:
                imaginary |= {key: line.tolist() for key, line in spread(name, values["imag"]).items()}
                values = values["real"]
            channels |= {key: line.tolist() for key, line in spread(name, values).items()}
    return {"channels": channels, "imaginary": imaginary}


files = {"plain.mat": False, "packed.mat": True}
for path, packed in files.items():
    write(path, packed)


def hostile(path, fill):
    with h5py.File(path, "w", userblock_size=512, libver="earliest") as file:
        fill(file)
    with open(path, "r+b") as file:
        file.write(HEAD)


def long(file):
    values = (np.arange(200_001) % 1000).astype("<f8").reshape(1, -1)
    classed(file.create_dataset("long", data=values, chunks=(1, 30_000), compression="gzip"), "double")


def giant(file):
    classed(file.create_dataset("giant", shape=(3, 10**15), chunks=(1, 1000), dtype="<f8"), "double")


def bomb(file):
    """Zeros pack to a thousandth; chunks that were never written claim a thousand times more."""
    item = file.create_dataset("bomb", shape=(1, 10**10), chunks=(1, 10**6), dtype="<f8", compression="gzip")
    item[0, : 10**6] = 0
    classed(item, "double")


def circle(file):
    group = file.create_group("group")
    numbers(group, "data", [[1.0], [2.0], [3.0]])
    group["again"] = group
    group["soft"] = h5py.SoftLink("/group/soft")
    cell = classed(group.create_dataset("cell", shape=(1, 1), dtype=REFERENCE), "cell")
    cell[0, 0] = cell.ref


def elsewhere(file):
    file["linked"] = h5py.ExternalLink("/dev/stdin", "/data")
    layout = h5py.VirtualLayout(shape=(1, 10), dtype="<f8")
    layout[0] = h5py.VirtualSource("/dev/stdin", "data", shape=(10,))
    file.create_virtual_dataset("virtual", layout)


def outside(file):
    classed(file.create_dataset("outside", shape=(1, 10), dtype="<f8", external=[("/dev/stdin", 0, 80)]), "double")


def damaged(file):
    rng = np.random.default_rng(5)
    item = file.create_dataset("noise", data=rng.normal(size=(1, 4000)), chunks=(1, 1000), compression="gzip", fletcher32=True)
    classed(item, "double")
    place = item.id.get_chunk_info(2)
    DAMAGE.append((place.byte_offset + 512 if place.byte_offset < 512 else place.byte_offset, place.size))


DAMAGE = []
for fill in (long, giant, bomb, circle, elsewhere, outside, damaged):
    hostile(f"{fill.__name__}.mat", fill)
with open("damaged.mat", "r+b") as file:
    file.seek(DAMAGE[0][0] + DAMAGE[0][1] // 2)
    file.write(b"\xff" * 16)

versions = {"python": sys.version.split()[0], "h5py": h5py.version.version, "hdf5": h5py.version.hdf5_version}
with open("by-h5py.json", "w") as out:
    all_held = {path: held(path) for path in files}
    json.dump({"generator": "by-h5py.py", "versions": versions | {"numpy": np.__version__}, "files": all_held}, out, indent=1)
    out.write("\n")
