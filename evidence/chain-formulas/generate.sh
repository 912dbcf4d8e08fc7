#!/usr/bin/env bash
# Needs a Python 3 with numpy and scipy.
set -euo pipefail
cd "$(dirname "$0")"
"${PYTHON:-python3}" independent.py > independent.json.new
mv independent.json.new independent.json
