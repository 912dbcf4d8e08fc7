"""Runs every netlist beside this file with ngspice in batch mode and gathers what they wrote into circuits.json.

Run: python3 generate.py (no packages needed beside ngspice itself). Numbers are kept to eleven digits.
"""

import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

here = Path(__file__).resolve().parent


def rounded(text):
    return float(f"{float(text):.10e}")


def run(netlist, folder):
    # Netlists include files beside them and write into the folder they run in.
    for each in here.glob("*.inc"):
        (Path(folder) / each.name).write_text(each.read_text())
    (Path(folder) / netlist.name).write_text(netlist.read_text())
    done = subprocess.run(["ngspice", "-b", netlist.name], cwd=folder, capture_output=True, text=True, timeout=300)
    written = Path(folder) / f"{netlist.stem}.txt"
    if not written.exists():
        sys.exit(f"{netlist.name} wrote nothing:\n{done.stdout}\n{done.stderr}")
    return [line.split() for line in written.read_text().splitlines() if line.strip()]


version = subprocess.run(["ngspice", "--version"], capture_output=True, text=True, check=True).stdout
results = {"generator": "evidence/barriers/generate.py", "simulator": re.search(r"ngspice-\S+", version).group(0)}
for netlist in sorted(here.glob("*.cir")):
    with tempfile.TemporaryDirectory() as folder:
        rows = run(netlist, folder)
    title = netlist.read_text().splitlines()[0].lstrip("* ")
    if netlist.name.startswith("ac-"):
        results[netlist.stem] = {"title": title, "frequency-re-im": [[rounded(each) for each in row] for row in rows]}
    else:
        names, *values = rows
        results[netlist.stem] = {"title": title, "rows": [dict(zip(names, map(rounded, row))) for row in values]}


def shown(value, indent=0):
    """JSON with one row of a table per line, so that a changed number shows as one changed line."""
    pad = " " * (indent + 1)
    if isinstance(value, dict) and any(isinstance(each, (dict, list)) for each in value.values()):
        inner = ",\n".join(f"{pad}{json.dumps(key)}: {shown(each, indent + 1)}" for key, each in value.items())
        return "{\n" + inner + "\n" + " " * indent + "}"
    if isinstance(value, list):
        return "[\n" + ",\n".join(pad + json.dumps(each) for each in value) + "\n" + " " * indent + "]"
    return json.dumps(value)


(here / "circuits.json").write_text(shown(results) + "\n")
