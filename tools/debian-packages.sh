#!/usr/bin/env bash
# Installs what the checks need from Debian and this machine does not have: the browser the workbench is tried in.
set -euo pipefail
command -v chromium >/dev/null && exit 0
as_root=()
if [ "$(id -u)" -ne 0 ]; then
  command -v sudo >/dev/null || { echo "chromium is missing and only root can install it: apt-get install chromium" >&2; exit 1; }
  as_root=(sudo)
fi
"${as_root[@]}" apt-get update -q
"${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends chromium
