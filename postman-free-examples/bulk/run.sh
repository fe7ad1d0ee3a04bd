#!/bin/sh
# Asks about every plan of a file, one plan a line, and takes the run up again whenever the connection breaks.
#   run.sh review plans.ndjson answers.ndjson
# answers.ndjson then holds one answer for each line, in order, and the summary of the last stretch at its end.
set -eu

operation=$1
plans=$2
answers=$3
loomwright=${LOOMWRIGHT:-http://127.0.0.1:8080}
part=$answers.part
tries=0

: > "$answers"
next=1
while :; do
    # Send the rest; read while sending, or the service stops reading.
    tail -n "+$next" "$plans" |
        curl -sS --fail -N -T - -X POST -H 'Content-Type: application/x-ndjson' \
            "$loomwright/v1/bulk/$operation?numberedFrom=$next" > "$part" || true
    # Only whole lines that answer one count.
    grep '^{"line":.*}$' "$part" >> "$answers" || true
    if tail -n 1 "$part" | grep -q '^{"summary":.*"complete":true'; then
        tail -n 1 "$part" >> "$answers"
        rm "$part"
        break
    fi
    last=$(tail -n 1 "$answers" | sed -n 's/^{"line":\([0-9]*\).*/\1/p')
    if [ "${last:-0}" -ge "$next" ]; then
        tries=0
    fi
    next=$((${last:-0} + 1))
    tries=$((tries + 1))
    if [ "$tries" -gt 20 ]; then
        echo "given up before line $next" >&2
        exit 1
    fi
    echo "broken off; taking up again at line $next" >&2
    sleep 1
done
