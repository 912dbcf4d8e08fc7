"""Runs every netlist beside this file with ngspice in batch mode and gathers what they wrote into chain.json.

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


def run(netlist, folder):
    done = subprocess.run(["ngspice", "-b", str(netlist)], cwd=folder, capture_output=True, text=True, timeout=300)
    written = {each.stem: each.read_text() for each in Path(folder).glob("*.txt")}
    if not written or "fatal error" in done.stderr:
        sys.exit(f"{netlist.name} wrote nothing:\n{done.stdout}\n{done.stderr}")
    for each in Path(folder).glob("*.txt"):
        each.unlink()
    return written


def rounded(text):
    return float(f"{float(text):.10e}")


def columns(text):
    return [[rounded(each) for each in line.split()] for line in text.splitlines() if line.strip()]


def table(text):
    names, *rows = [line.split() for line in text.splitlines() if line.strip()]
    return [dict(zip(names, map(rounded, row))) for row in rows]


def title(netlist):
    return netlist.read_text().splitlines()[0].lstrip("* ")


results = {"generator": "evidence/ngspice/generate.py", "simulator": version(), "ac": {}, "clip": {}, "noise": {}}
with tempfile.TemporaryDirectory() as folder:
    for netlist in sorted(here.glob("*.cir")):
        name = netlist.stem
        written = run(netlist, folder)
        if name.startswith("ac-"):
            rows = columns(written[name])
            results["ac"][name[3:]] = {"title": title(netlist), "frequency-re-im": rows}
        elif name.startswith("clip-"):
            results["clip"][name[5:]] = {"title": title(netlist), **table(written[name])[0]}
        elif name.startswith("slew-"):
            results["slew"] = {"title": title(netlist), "runs": table(written[name])}
        else:
            results["noise"] = {"title": title(netlist), **{each: columns(written[each]) for each in sorted(written)}}


def shown(value, indent=0):
    """JSON with one row of a table per line, so that a changed number shows as one changed line."""
    pad = " " * (indent + 1)
    if isinstance(value, dict):
        inner = ",\n".join(f"{pad}{json.dumps(key)}: {shown(each, indent + 1)}" for key, each in value.items())
        return "{\n" + inner + "\n" + " " * indent + "}"
    if isinstance(value, list):
        return "[\n" + ",\n".join(pad + json.dumps(each) for each in value) + "\n" + " " * indent + "]"
    return json.dumps(value)


(here / "chain.json").write_text(shown(results) + "\n")
