"""Runs transient.cir beside this file with ngspice in batch mode and keeps every eighth of its 409,600 samples a second.

Run: python3 transient.py (no packages needed beside ngspice itself).
"""

import json
import re
import subprocess
import tempfile
from pathlib import Path

here = Path(__file__).resolve().parent
version = subprocess.run(["ngspice", "--version"], capture_output=True, text=True, check=True).stdout
with tempfile.TemporaryDirectory() as folder:
    # Its exit status only tells that no plot was asked for; whether it ran is told by the file it writes.
    subprocess.run(["ngspice", "-b", str(here / "transient.cir")], cwd=folder, capture_output=True, timeout=300)
    rows = [line.split() for line in (Path(folder) / "transient.txt").read_text().splitlines()]
kept = [[float(t), float(v)] for t, v, *_ in rows][::8]
step = kept[1][0] - kept[0][0]
result = {
    "generator": "evidence/rehearsal/transient.py",
    "simulator": re.search(r"ngspice-\S+", version).group(0),
    "rate": round(1 / step, 3),
    "volts": [round(v, 5) for _, v in kept],
}
(here / "transient.json").write_text(json.dumps(result) + "\n")
