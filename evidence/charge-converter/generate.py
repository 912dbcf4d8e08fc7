"""Runs every netlist beside this file with ngspice in batch mode and gathers what they wrote into charge-converter.json.

Run: python3 generate.py (no packages needed beside ngspice itself). Numbers are kept to eleven digits.
"""

import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

here = Path(__file__).resolve().parent


def version():
    text = subprocess.run(["ngspice", "--version"], capture_output=True, text=True, check=True).stdout
    return re.search(r"ngspice-\S+", text).group(0)


def rows_of(netlist, folder):
    done = subprocess.run(["ngspice", "-b", str(netlist)], cwd=folder, capture_output=True, text=True, timeout=300)
    written = Path(folder) / f"{netlist.stem}.txt"
    if not written.exists() or "fatal error" in done.stderr:
        sys.exit(f"{netlist.name} wrote nothing:\n{done.stdout}\n{done.stderr}")
    lines = written.read_text().splitlines()
    return [[float(f"{float(each):.10e}") for each in line.split()] for line in lines if line.strip()]


results = {"generator": "evidence/charge-converter/generate.py", "simulator": version(), "runs": {}}
with tempfile.TemporaryDirectory() as folder:
    for netlist in sorted(here.glob("*.cir")):
        title = netlist.read_text().splitlines()[0].lstrip("* ")
        results["runs"][netlist.stem] = {"title": title, "rows": rows_of(netlist, folder)}

body = ",\n".join(
    f'  {json.dumps(name)}: {{\n   "title": {json.dumps(run["title"])},\n   "rows": [\n'
    + ",\n".join(f"    {json.dumps(row)}" for row in run["rows"])
    + "\n   ]\n  }"
    for name, run in results["runs"].items()
)
text = (
    f'{{\n "generator": {json.dumps(results["generator"])},\n "simulator": {json.dumps(results["simulator"])},\n'
    f' "runs": {{\n{body}\n }}\n}}\n'
)
(here / "charge-converter.json").write_text(text)
