#!/usr/bin/env bash
# The picture of a demo plan while cranking, as SVG to look at in a browser, with findings and backfeed marked.
#
#   diagram.sh [FILE]      diagram.svg without
set -euo pipefail
LOOMWRIGHT=${LOOMWRIGHT:-http://127.0.0.1:8080}
file=${1:-diagram.svg}
curl -fsS "$LOOMWRIGHT/v1/examples/sandpiper-unguarded-bypass" |
  curl -fsS -H 'Content-Type: application/json' --data-binary @- "$LOOMWRIGHT/v1/plans/diagram?step=crank" -o "$file"
echo "$file"
