#!/usr/bin/env bash
# Two replicas behind nginx; one is killed in the middle of a bulk run. Shows that no line is lost or answered twice, and
# that single calls go on without an error.
#
#   replicas/run.sh [LINES]      300 plans without
#
# START may hold the command that starts a service (loomwright); without it the built classes are run by Maven.
# Ends with 75 if nginx, curl or python3 is missing.
set -euo pipefail
cd "$(dirname "$0")"
lines=${1:-300}
root=$(cd ../.. && pwd)
PATH=$PATH:/usr/sbin
for tool in nginx curl python3; do
    command -v "$tool" >/dev/null || { echo "no $tool on this machine (Debian package for nginx: nginx-light)"; exit 75; }
done

folder=$(mktemp -d)
started=()
finish() {
    for one in "${started[@]}"; do kill "$one" 2>/dev/null || true; done
    wait
    rm -rf "$folder"
}
trap finish EXIT

free_port() { python3 -c 'import socket; s = socket.socket(); s.bind(("127.0.0.1", 0)); print(s.getsockname()[1])'; }

# replica PORT: a process of its own, so that killing it kills the service
replica() {
    if [ -n "${START:-}" ]; then
        $START --port "$1" >"$folder/$1.log" 2>&1 &
    else
        (cd "$root" && exec mvn -q exec:java -Dexec.args="--port $1") >"$folder/$1.log" 2>&1 &
    fi
    started+=($!)
}

# answering ADDRESS: waits, two minutes at most
answering() {
    for _ in $(seq 600); do
        curl -sf -o "$folder/health" "http://$1/health" && return
        sleep 0.2
    done
    echo "no answer from $1"
    tail -5 "$folder"/*.log
    exit 1
}

first=127.0.0.1:$(free_port) second=127.0.0.1:$(free_port) front=127.0.0.1:$(free_port)
replica "${first#*:}"
replica "${second#*:}"
answering "$first"
answering "$second"
sed "s|ADDRESS|$front|; s|FIRST|$first|; s|SECOND|$second|; s|FOLDER|$folder|" nginx.conf >"$folder/nginx.conf"
nginx -p "$folder" -c "$folder/nginx.conf" -e "$folder/error.log" -g 'daemon off;' &
started+=($!)
answering "$front"
echo "replicas $first, $second behind http://$front"

# Each line is a plan of its own: the name differs.
curl -sf "http://$front/v1/examples/sandpiper-as-built" | python3 -c '
import json, sys
plan = json.load(sys.stdin)
for line in range(1, int(sys.argv[1]) + 1):
    plan["name"] = f"car {line}"
    print(json.dumps({"key": f"car {line}", "input": plan}))
' "$lines" >"$folder/plans.ndjson"

LOOMWRIGHT=http://$front ../bulk/run.sh solution "$folder/plans.ndjson" "$folder/answers.ndjson" &
run=$!

# Single calls all the while, their status noted.
(while kill -0 $run 2>/dev/null; do
    curl -s -o "$folder/single" -w '%{http_code}\n' "http://$front/v1/resistance?network=6%20%7C%7C%2013" || true
    sleep 0.05
done) >"$folder/statuses" &
singles=$!

# Which replica has the run? The one that has used more processor time since. Killed when a third is answered.
answered() {
    tail -c 400000 "$folder/answers.ndjson.part" 2>"$folder/none-yet" | sed -n 's/^{"line":\([0-9]*\).*}$/\1/p' | tail -n 1
}
ticks() { awk '{print $14 + $15}' "/proc/$1/stat"; }
before0=$(ticks "${started[0]}") before1=$(ticks "${started[1]}")
done_lines=0
while [ "${done_lines:-0}" -lt $((lines / 3)) ]; do
    kill -0 $run 2>/dev/null || { echo "the run was over before a replica could be killed: take more lines"; exit 1; }
    sleep 0.3
    done_lines=$(answered)
done
busy=0
[ $(($(ticks "${started[0]}") - before0)) -ge $(($(ticks "${started[1]}") - before1)) ] || busy=1
echo "killing the replica that has the run after about $done_lines of $lines answers"
kill -9 "${started[$busy]}"
wait $run
wait $singles

python3 - "$folder" "$lines" <<'PYTHON'
import collections, json, sys
folder, lines = sys.argv[1], int(sys.argv[2])
numbers, keys, failed = [], [], 0
with open(folder + "/answers.ndjson") as answers:
    for text in answers:
        one = json.loads(text)
        if "line" in one:
            numbers.append(one["line"])
            keys.append(one["key"])
            failed += "answer" not in one
        else:
            summary = one["summary"]
statuses = collections.Counter(open(folder + "/statuses").read().split())
print(f"sent {lines}, answered {len(numbers)}, different {len(set(numbers))}, without an answer {failed}")
print("last stretch of the run:", {k: summary[k] for k in ("complete", "answers", "problems")})
print("single calls by status:", dict(statuses))
good = (numbers == list(range(1, lines + 1)) and keys == [f"car {n}" for n in numbers] and not failed
        and summary["complete"] and summary["answers"] < lines and set(statuses) == {"200"})
print("nothing lost, nothing doubled, in order" if good else "NOT as it should be")
sys.exit(not good)
PYTHON
