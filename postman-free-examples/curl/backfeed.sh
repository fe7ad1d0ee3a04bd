#!/usr/bin/env bash
# What is fed though it should not be, in words: backfeed.sh [name of an example, or a plan file]
set -euo pipefail
base=${LOOMWRIGHT:-http://127.0.0.1:8080}
plan=${1:-sandpiper-unguarded-bypass}
if [ -f "$plan" ]; then cat "$plan"; else curl -fsS "$base/v1/examples/$plan"; fi |
  curl -fsS -H 'Content-Type: application/json' --data-binary @- "$base/v1/plans/backfeed" |
  python3 -c 'import json, sys; print("\n".join(line["text"] for line in json.load(sys.stdin)["working"]))'
