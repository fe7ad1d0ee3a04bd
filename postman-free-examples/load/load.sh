#!/bin/sh
# Requests per second of each path in turn, several rounds in one run, so that the ratios mean something.
# usage: load.sh PORT PLAN.json [SECONDS] [CONNECTIONS] [ROUNDS] [PATHS]
# Needs wrk (Debian package wrk). Calls this machine only. /bench/... exist in the measuring server alone: see docs/performance.md
set -eu
port=$1 plan=$2 seconds=${3:-8} connections=${4:-8} rounds=${5:-3}
paths=${6:-"/bench/plan /bench/answer /v1/plans/solution"}
here=$(dirname "$0")
for round in $(seq "$rounds"); do
    for path in $paths; do
        printf 'round %s  %-20s ' "$round" "$path"
        PLAN=$plan wrk -t1 -c"$connections" -d"${seconds}s" -s "$here/post.lua" "http://127.0.0.1:$port$path" | grep '^result' | cut -c8-
    done
done
