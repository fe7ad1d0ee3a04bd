#!/usr/bin/env bash
# Runs every example against a service started for it, and stops the service again.
#
#   check-all.sh [PORT]      uses PORT, PORT + 1 and PORT + 2; 18080 without
#
# START may hold the command that starts a service, to which options are added; without it the built classes are run
# by Maven. LIMIT_S is the time that an example may take. An example whose tool is missing, whose packages cannot be
# fetched or whose time is over is named at the end as left out, and is not counted as passed.
set -euo pipefail
cd "$(dirname "$0")"
root=$(cd .. && pwd)
port=${1:-18080}
folder=$(mktemp -d)
services=()
trap 'for one in "${services[@]}"; do kill "$one" 2>/dev/null || true; done; rm -rf "$folder"' EXIT

# serve PORT OPTION...: a service of its own process, until the end of this script
serve() {
  if [ -n "${START:-}" ]; then
    $START --port "$@" >"$folder/service-$1.log" 2>&1 &
  else
    (cd "$root" && exec mvn -q exec:java -Dexec.args="--port $*") >"$folder/service-$1.log" 2>&1 &
  fi
  services+=($!)
  for _ in $(seq 300); do
    curl -sf -o "$folder/health" "http://127.0.0.1:$1/health" && return
    sleep 0.2
  done
  cat "$folder/service-$1.log"
  exit 1
}

passed=() failed=() left_out=()
# example NAME "TOOL..." COMMAND...
example() {
  local name=$1 tool
  for tool in $2; do
    if ! command -v "$tool" >"$folder/which"; then
      left_out+=("$name (no $tool)")
      return
    fi
  done
  shift 2
  echo "== $name"
  local code=0
  timeout "${LIMIT_S:-600}" "$@" >"$folder/output" 2>&1 || code=$?
  case $code in
    0)
      tail -2 "$folder/output"
      passed+=("$name")
      ;;
    75) left_out+=("$name ($(tail -1 "$folder/output"))") ;;
    124) left_out+=("$name (not done in ${LIMIT_S:-600} s)") ;;
    *)
      cat "$folder/output"
      failed+=("$name")
      ;;
  esac
}

# The Python that has the spreadsheet program's bridge is the system's, not always the first on the path.
bridge() {
  local python
  for python in /usr/bin/python3 python3; do
    "$python" -c 'import uno' 2>"$folder/no-uno" && echo "$python" && return
  done
}

serve "$port" --allow-origin "http://127.0.0.1:$((port + 2))"
serve "$((port + 1))"
export LOOMWRIGHT=http://127.0.0.1:$port
for script in curl/*.sh; do
  # There, because one of them leaves a picture.
  example "$script" "curl" env -C "$folder" "$PWD/$script"
done
example bulk/table.sh "curl" bulk/table.sh
for plan in sandpiper-as-built sandpiper-unguarded-bypass otter-6v-positive-earth; do
  curl -sf "$LOOMWRIGHT/v1/examples/$plan" | tr -d '\n'
  echo
done >"$folder/plans.ndjson"
example bulk/run.sh "curl" bulk/run.sh review "$folder/plans.ndjson" "$folder/answers.ndjson"
example forum-bot "python3" python3 -m unittest discover -s forum-bot -p 'test_*.py'
python=$(bridge || true)
example spreadsheet "soffice ${python:-python3-uno}" "${python:-python3}" spreadsheet/recalculate.py "$LOOMWRIGHT"
example spreadsheet/import-csv "soffice curl python3" spreadsheet/import-csv.sh "$LOOMWRIGHT"
example club-page "chromium python3 curl" \
  club-page/check.sh "$LOOMWRIGHT" "http://127.0.0.1:$((port + 1))" "$((port + 2))"
example partitions/parallel "mvn python3 parallel" partitions/run.sh 100 2 parallel
example clients/java "mvn javac" clients/run.sh java
example clients/python "mvn python3 pip3" clients/run.sh python
example clients/typescript "mvn node npm" clients/run.sh typescript

printf 'passed: %s\n' "${passed[@]}"
[ ${#left_out[@]} -eq 0 ] || printf 'left out: %s\n' "${left_out[@]}"
[ ${#failed[@]} -eq 0 ] || { printf 'failed: %s\n' "${failed[@]}"; exit 1; }
