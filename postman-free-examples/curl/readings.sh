#!/usr/bin/env bash
# Readings of one step as a table: readings.sh [name of an example] [step]
set -euo pipefail
base=${LOOMWRIGHT:-http://127.0.0.1:8080}
curl -fsS "$base/v1/examples/${1:-sandpiper-as-built}" |
  curl -fsS -H 'Content-Type: application/json' --data-binary @- "$base/v1/plans/solution?format=csv" |
  grep -E "^(step|${2:-run}),"
