#!/usr/bin/env bash
# Issues the three tables anew and has them edited.
set -euo pipefail
cd "$(dirname "$0")"
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
node ../../packages/cli/bin/soundpost.js issue ../../examples/raw-water-pump/plant.yaml --out "$out" --preliminary \
  --documents instrument-list,cable-schedule,alarm-register --forms xlsx >/dev/null
"${PYTHON:-python3}" edit.py "$out/revision-A"
