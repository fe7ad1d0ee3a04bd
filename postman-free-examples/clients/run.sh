#!/usr/bin/env bash
# Makes clients from the contract, compiles them, and runs one program with each against a running service.
#
#   run.sh [java] [python] [typescript]      all three without arguments; LOOMWRIGHT names the service
#
# Needs curl, Maven and a JDK 17, for Python python3 with venv and pip, for TypeScript node and npm. Everything is made in a
# folder that is removed at the end (KEEP=folder keeps it there). What the clients need comes from the public registries
# that Maven, pip and npm are set up for; if one cannot be reached, this ends with 75.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
export LOOMWRIGHT=${LOOMWRIGHT:-http://127.0.0.1:8080}
generator=org.openapitools:openapi-generator-maven-plugin:7.25.0:generate
folder=${KEEP:-$(mktemp -d)}
[ -n "${KEEP:-}" ] && mkdir -p "$folder" || trap 'rm -rf "$folder"' EXIT

# generate NAME OPTION...: the client NAME in $folder/NAME
generate() {
  local name=$1
  shift
  mvn -B -ntp -q -f "$root/pom.xml" "$generator" -Dopenapi.generator.maven.plugin.inputSpec="$root/openapi.yaml" \
    -DskipFormModel=false -Dopenapi.generator.maven.plugin.generatorName="$name" -Dopenapi.generator.maven.plugin.output="$folder/$name" "$@" \
    >"$folder/$name.log" 2>&1 && named "$name" && return
  cat "$folder/$name.log"
  ! grep -qE 'could not be resolved|Could not (transfer|find) artifact|Cannot access' "$folder/$name.log" || not_reached Maven
  exit 1
}

# Names that a generator makes up are no names to program with.
named() {
  local inner
  inner=$(find "$folder/$1" -iname '*inner*' -print -quit)
  [ -z "$inner" ] || { echo "without a name in the contract: $inner"; exit 1; }
}

not_reached() {
  echo "$1 could not fetch what is needed."
  exit 75
}

java() {
  generate java -Dopenapi.generator.maven.plugin.library=native \
    -Dopenapi.generator.maven.plugin.additionalProperties=useSingleRequestParameter=true,containerDefaultToNull=true
  rm -rf "$folder/java/src/test"
  cp "$here/Backfeed.java" "$folder/java/src/main/java/"
  mvn -B -ntp -q -f "$folder/java/pom.xml" compile org.codehaus.mojo:exec-maven-plugin:3.6.4:java \
    -Dexec.mainClass=Backfeed -Dexec.cleanupDaemonThreads=false
}

python() {
  generate python
  python3 -m venv "$folder/venv"
  "$folder/venv/bin/pip" install --quiet --retries 1 --disable-pip-version-check -r "$folder/python/requirements.txt" ||
    not_reached pip
  PYTHONPATH="$folder/python" "$folder/venv/bin/python" "$here/backfeed.py"
}

typescript() {
  generate typescript-fetch
  mv "$folder/typescript-fetch" "$folder/client"
  cp "$here/backfeed.ts" "$folder/"
  cd "$folder"
  npm install --silent --no-fund --no-audit --no-save typescript@5.9.3 @types/node@20 >npm.log || not_reached npm
  npx --no-install tsc --strict --target es2022 --module commonjs --moduleResolution node --lib es2022,dom \
    --types node --outDir made backfeed.ts
  node made/backfeed.js
}

# What the service answers when asked without any client: each program must have been told the same.
curl -sf "$LOOMWRIGHT/v1/examples/sandpiper-unguarded-bypass" >"$folder/plan.json"
curl -sf -H 'Content-Type: application/json' --data-binary @"$folder/plan.json" "$LOOMWRIGHT/v1/plans/backfeed" |
  python3 -c 'import json,sys
for feed in json.load(sys.stdin)["result"]["unintendedFeeds"]: print(feed["verdict"]["text"])' >"$folder/verdicts"
[ -s "$folder/verdicts" ]

for language in "${@:-java python typescript}"; do
  for one in $language; do
    echo "== $one"
    $one | tee "$folder/$one.txt"
    while IFS= read -r verdict; do
      grep -qF "$verdict" "$folder/$one.txt" || { echo "$one was not told: $verdict"; exit 1; }
    done <"$folder/verdicts"
    for what in picture sheet contract csv bulk; do
      grep -q "^$what: [1-9]" "$folder/$one.txt" || { echo "$one did not fetch: $what"; exit 1; }
    done
    grep -q '^refused: 422' "$folder/$one.txt"
  done
done
