#!/usr/bin/env bash
# The picture of a demo plan while cranking, as SVG to look at in a browser, with findings and backfeed marked.
set -euo pipefail
LOOMWRIGHT=${LOOMWRIGHT:-http://127.0.0.1:8080}
curl -fsS "$LOOMWRIGHT/v1/examples/sandpiper-unguarded-bypass" |
  curl -fsS -H 'Content-Type: application/json' --data-binary @- "$LOOMWRIGHT/v1/plans/diagram?step=crank" -o diagram.svg
echo "diagram.svg"
