#!/usr/bin/env bash
# The gate: everything that must be true before a change is handed on. Begins and ends with a clean tree.
set -euo pipefail
cd "$(dirname "$0")/.."
clean() { [ -z "$(git status --porcelain)" ] || { echo "The tree is not clean ($1):"; git status --short; exit 1; }; }
clean "before"
npm run --silent types
npm run --silent lint
npm test --silent
clean "after: something above wrote into the tree"
echo "Ready."
