"""What scipy.io.loadmat reads in the files of Octave. Writes by-octave.json beside itself."""

import json
import platform
import subprocess
from pathlib import Path

import scipy
from scipy.io import loadmat

here = Path(__file__).resolve().parent
held = {}
for name in ("octave-v6.mat", "octave-v7.mat"):
    # The head says when it was written: left out, so that the file is the same tomorrow.
    raw = (here / name).read_bytes()
    (here / name).write_bytes(b"MATLAB 5.0 MAT-file, written by Octave, date left out".ljust(116) + raw[116:])
    read = loadmat(here / name)
    test = read["test"][0, 0]
    held[name] = {
        "channels": {
            "t": [float(v) for v in read["t"][:, 0]],
            "a, column 1": [float(v) for v in read["a"][:, 0]],
            "a, column 2": [float(v) for v in read["a"][:, 1]],
            "counts": [float(v) for v in read["counts"][0]],
            "test.acceleration": [float(v) for v in test["acceleration"][:, 0]],
            "test.serial{2}": [float(v) for v in test["serial"][0, 1][0]],
        },
    }
octave = subprocess.run(["octave-cli", "--version"], capture_output=True, text=True, check=True).stdout.split("\n")[0]
result = {
    "generator": "by-octave.m, read by read-octave.py",
    "versions": {"python": platform.python_version(), "scipy": scipy.__version__, "octave": octave},
    "files": held,
}
(here / "by-octave.json").write_text(json.dumps(result, indent=1) + "\n")
