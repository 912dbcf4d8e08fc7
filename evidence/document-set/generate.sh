#!/usr/bin/env bash
# A generated plant of 500 points (POINTS says another number), issued whole by the built command and read back by
# poppler and by a reader of its own for workbooks; what was compared goes to result.json. Some minutes.
set -euo pipefail
cd "$(dirname "$0")"
soundpost=../../packages/cli/bin/soundpost.js
command -v pdftotext >/dev/null || { echo 'missing: pdftotext (Debian: poppler-utils)'; exit 1; }
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT
node plant.mjs "${POINTS:-500}" 1 > "$made/plant.yaml"
# Questions are open on such a plant, so a proof ends with 1 or 0; what counts is whether documents came.
node "$soundpost" prove "$made/plant.yaml" --json > "$made/design.json" || [ $? -eq 1 ]
node "$soundpost" issue "$made/plant.yaml" --out "$made/out" > "$made/said.txt" || { cat "$made/said.txt"; exit 1; }
"${PYTHON:-python3}" read_issue.py "$made/out/revision-A" "$made/design.json" "$made/plant.yaml" > "$made/result.json" || { cat "$made/result.json"; exit 1; }
mv "$made/result.json" result.json
cat result.json
