#!/usr/bin/env bash
# N generated plans through the bulk runs of a service started for it, and a share of them through the single operations;
# ends with 1 if a line is lost, doubled, out of order, or answered otherwise than alone.
#
#   load/generated.sh [N [SHARE [SEED [OPERATIONS]]]]        1000 plans, every one compared, seed 1, solution,review
#
# START may hold the command that starts a service (loomwright); without it the built classes are run by Maven. CHECK may
# hold the command of the local run (loomwright check); its answers to solution are then compared too.
# Linux, with curl and python3; ends with 75 if one is missing. With jcmd, the heap after collection is told as well.
set -euo pipefail
cd "$(dirname "$0")"
for tool in curl python3; do
    command -v "$tool" >/dev/null || { echo "no $tool"; exit 75; }
done

. ./service.sh

code=0
CHECK="${CHECK:-}" python3 generated.py "127.0.0.1:$port" "$service" "${1:-1000}" "${2:-1}" "${3:-1}" \
    "${4:-solution,review}" || code=$?
tell_errors
exit "$code"
