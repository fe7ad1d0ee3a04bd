#!/bin/sh
# How much of the time the calculation takes: requests and lines per second of the real service and of one beside it that
# only reads and writes the same, in turn and several rounds in one run, so that the ratios mean something.
#
#   load.sh PORT PLAN.json [SECONDS] [CONNECTIONS] [ROUNDS] [LINES]
#
# PORT is that of the measuring server: see docs/performance.md. Needs wrk, jq (Debian packages of these names) and curl.
# Let it run a minute first: the first rounds measure the compiler.
set -eu
real=$1 plan=$2 seconds=${3:-8} connections=${4:-8} rounds=${5:-3} lines=${6:-1000}
bare=$((real + 1))
here=$(dirname "$0")
folder=$(mktemp -d)
trap 'rm -r "$folder"' EXIT
# Cars wired alike, and cars of which each has one wire of another length.
jq -c --argjson lines "$lines" '{key: range($lines), input: .}' "$plan" >"$folder/alike"
jq -c '.input.wires[0].lengthM += .key / 1e5' "$folder/alike" >"$folder/unlike"

ask() {
    printf 'round %s  %-24s' "$round" "$2"
    PLAN=$plan wrk -t1 -c"$connections" -d"${seconds}s" -s "$here/post.lua" "http://127.0.0.1:$1" | grep '^result' | cut -c8-
}

run() {
    printf 'round %s  %-24s' "$round" "$2"
    curl -sf -X POST -T "$folder/$3" -H 'Content-Type: application/x-ndjson' -o "$folder/answers" \
        -w '%{time_total}\n' "http://127.0.0.1:$1" |
        awk -v lines="$lines" '{printf "%7.1f lines/s\n", lines / $1}'
    # One line more than were sent: the summary.
    [ "$(wc -l <"$folder/answers")" -eq $((lines + 1)) ] || echo "answers are missing"
}

for round in $(seq "$rounds"); do
    ask "$bare/bench/plan" "plan read and written"
    ask "$bare/v1/plans/solution" "solution, bare"
    ask "$real/v1/plans/solution" "solution"
    run "$bare/v1/bulk/review" "cars in bulk, bare" unlike
    run "$real/v1/bulk/review" "review of unlike cars" unlike
    run "$real/v1/bulk/review" "review of cars alike" alike
done
