#!/usr/bin/env bash
# Mixed requests over all operations for MINUTES (8 without) against a service started for it; a table of heap after
# collection, threads and file handles; ends with 1 if one of them grows.
#
#   load/soak.sh [MINUTES]
#
# Hostile clients go beside the others (hostile.py); PACE may hold the requests a second of each of the four senders, which pause for nothing
# without it. START may hold the command that starts a service (loomwright); without it the built classes are run by Maven.
# Linux, with jcmd (Debian: openjdk-17-jdk-headless), curl and python3-yaml; ends with 75 if one is missing.
set -euo pipefail
cd "$(dirname "$0")"
minutes=${1:-8}
for tool in jcmd curl python3; do
    command -v "$tool" >/dev/null || { echo "no $tool"; exit 75; }
done
for python in python3 /usr/bin/python3; do
    "$python" -c 'import yaml' 2>/dev/null && break
done
"$python" -c 'import yaml' || { echo "no python3-yaml"; exit 75; }

. ./service.sh

code=0
"$python" soak.py "127.0.0.1:$port" "$service" "$minutes" || code=$?
tell_errors
exit "$code"
