#!/usr/bin/env bash
# Recordings written by other programs, and what these programs read in them. Needs a Python with scipy, and Octave.
set -euo pipefail
cd "$(dirname "$0")"
"$PYTHON" by-scipy.py
octave-cli --no-gui --quiet by-octave.m
"$PYTHON" read-octave.py
