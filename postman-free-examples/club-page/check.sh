#!/usr/bin/env bash
# Opens the page in a browser without a screen, from another origin than the service's, and looks at what it then shows:
# once allowed to ask, once not. Needs chromium, python3 and two services; check-all.sh starts those.
#
#   check.sh SERVICE-THAT-ALLOWS SERVICE-THAT-DOES-NOT PORT-OF-THE-PAGE [PICTURE.png]
set -euo pipefail
cd "$(dirname "$0")"
allows=$1 closed=$2 port=$3
folder=$(mktemp -d)
python3 -m http.server "$port" --bind 127.0.0.1 >"$folder/log" 2>&1 &
pages=$!
trap 'kill "$pages"; rm -rf "$folder"' EXIT
for _ in $(seq 50); do curl -sf -o "$folder/ready" "http://127.0.0.1:$port/" && break; sleep 0.2; done

browse() {
  timeout 120 chromium --headless=new --no-sandbox --disable-gpu --disable-background-networking \
    --disable-component-update --disable-sync --no-first-run --user-data-dir="$folder/profile" \
    --enable-logging=stderr --virtual-time-budget=60000 "$@" 2>"$folder/console"
}

must_show() {
  grep -qF "$1" "$folder/page" || { echo "the page does not show: $1"; exit 1; }
}

page="http://127.0.0.1:$port/?plan=sandpiper-unguarded-bypass&step=run&service="
browse --dump-dom "$page$allows" >"$folder/page"
must_show "Calculated by the service at $allows."
must_show 'Starter solenoid'
must_show 'pulls in'
must_show '<td class="number">12.47 V</td>'
must_show '0.4538 V lost on the way out and back'
must_show '6.342 V across the coil, key on, contacts closed'
if curl -sf -o "$folder/diagram" "$allows/v1/examples/sandpiper-unguarded-bypass/diagram?format=svg&step=run"; then
  must_show '<figure id="picture">'
  if grep CONSOLE "$folder/console"; then exit 1; fi
else
  must_show '<figure id="picture" hidden="">'
  echo "(this service draws no diagram; the page does without)"
fi
[ -z "${4:-}" ] || browse --window-size=1000,1900 --screenshot="$4" "$page$allows"

browse --dump-dom "$page$closed" >"$folder/page"
must_show "The service at $closed does not answer this page."
echo "The page shows what it should, and nothing from a service that does not allow it."
