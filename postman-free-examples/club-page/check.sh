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

page="http://127.0.0.1:$port/?car=otter&step=run&service="
browse --dump-dom "$page$allows" >"$folder/page"
must_show "Calculated by the service at $allows."
must_show '<option value="sandpiper-lights.csv">sandpiper lights</option>'
must_show '0.4538 V lost on the way out and back'
must_show '6.342 V across the coil, key on, contacts closed'
must_show '<figure id="picture">'
must_show 'data-step="run"'
must_show 'What to act on, worst first'
must_show 'download="otter-sheet.html"'
if grep CONSOLE "$folder/console"; then exit 1; fi
# The table is the picture's own: what it says of the coil in this position of the key stands in the picture too.
volts=$(grep -o '<th scope="row">coil.1</th><td class="number">[^<]*' "$folder/page" | sed 's/.*>//; s/-//; s/ V//')
[ -n "$volts" ] || volts=$(grep -o '<th scope="row">coil.15</th><td class="number">[^<]*' "$folder/page" | sed 's/.*>//; s/-//; s/ V//')
[ -n "$volts" ] || { echo "the table has no coil"; exit 1; }
grep -o '<svg.*</svg>' "$folder/page" | grep -qF "$volts" || { echo "the picture does not show $volts"; exit 1; }
[ -z "${4:-}" ] || browse --window-size=1000,1900 --screenshot="$4" "$page$allows"

browse --dump-dom "$page$closed" >"$folder/page"
must_show "The service at $closed does not answer this page."
echo "The page shows what it should, and nothing from a service that does not allow it."
