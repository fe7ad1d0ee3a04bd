#!/usr/bin/env bash
# One bare number, as a spreadsheet cell would ask for it: resistance.sh ['6 || 13 + 1']
set -euo pipefail
base=${LOOMWRIGHT:-http://127.0.0.1:8080}
curl -fsS -G "$base/v1/resistance" --data-urlencode "network=${1:-6 || 13 + 1}" --data-urlencode format=text
echo
