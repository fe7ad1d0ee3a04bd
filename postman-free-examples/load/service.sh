# To be sourced by a script in this folder: starts a service on a free port ($port), waits until it answers ($service is its
# process, $log what it wrote) and stops it when the script ends. START may hold the command that starts one (loomwright); without it
# the built classes are run by Maven.
root=$(cd ../.. && pwd)
port=$(python3 -c 'import socket; s = socket.socket(); s.bind(("127.0.0.1", 0)); print(s.getsockname()[1])')
log=$(mktemp)
if [ -n "${START:-}" ]; then
    $START --port "$port" >"$log" 2>&1 &
else
    (cd "$root" && exec mvn -q exec:java -Dexec.args="--port $port") >"$log" 2>&1 &
fi
service=$!
trap 'kill "$service" 2>/dev/null || true; wait; rm -f "$log"' EXIT
for _ in $(seq 600); do
    curl -sf -o "$log.health" "http://127.0.0.1:$port/health" && break
    sleep 0.2
done
rm "$log.health" || { cat "$log"; exit 1; }

tell_errors() {
    echo "errors in the log of the service: $(grep -c 'level=ERROR' "$log" || true)"
}
