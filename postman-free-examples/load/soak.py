"""Mixed requests over every operation of the contract for some minutes; ends with 1 if the service has grown.

    soak.py ADDRESS PID MINUTES        see soak.sh

The requests are the contract's own examples and bulk runs of demo plans; some are spoilt, some are given up before the
answer. After a quarter of the time to warm up, heap after a full collection (jcmd), threads and file handles (/proc) are
taken ten times while nothing else is sent. The mean of the last three may be above that of the first three by the
allowance only.
"""

import collections
import http.client
import json
import os
import random
import re
import subprocess
import sys
import threading
import time
import urllib.parse

import yaml

SENDERS = 4
SAMPLES = 10
ALLOWED = {"heap MB": 3.0, "threads": 3.0, "handles": 6.0}


class Sender(threading.Thread):
    """Asks at random until told to stop, and pauses while samples are taken."""

    def __init__(self, seed, address, questions, pause, stop):
        super().__init__(daemon=True)
        self.random = random.Random(seed)
        self.address, self.questions, self.pause, self.stop = address, questions, pause, stop
        self.statuses, self.operations = collections.Counter(), collections.Counter()
        self.resting = threading.Event()

    def run(self):
        connection = None
        while not self.stop.is_set():
            if self.pause.is_set():
                # Kept open, it may be closed by the service for its silence.
                if connection:
                    connection.close()
                    connection = None
                self.resting.set()
                time.sleep(0.05)
                continue
            self.resting.clear()
            connection = connection or http.client.HTTPConnection(self.address, timeout=300)
            operation, method, path, media, body = self.random.choice(self.questions)
            dice = self.random.random()
            if body and dice < 0.05:
                body = body[: len(body) // 2]
            try:
                connection.request(method, path, body, {"Content-Type": media} if body else {})
                if dice > 0.97:
                    self.statuses["given up"] += 1
                    connection.close()
                    connection = None
                    continue
                answer = connection.getresponse()
                answer.read()
                self.statuses[str(answer.status)] += 1
            except (OSError, http.client.HTTPException) as broken:
                self.statuses[type(broken).__name__] += 1
                connection.close()
                connection = None
            self.operations[operation] += 1
        self.resting.set()


def fetch(address, path):
    connection = http.client.HTTPConnection(address, timeout=60)
    connection.request("GET", path)
    text = connection.getresponse().read()
    connection.close()
    return text


def questions_of(address):
    """(operation, method, path, media type, body) of every example of the contract."""
    contract = yaml.load(fetch(address, "/openapi.yaml"), getattr(yaml, "CSafeLoader", yaml.SafeLoader))

    def resolved(node):
        while "$ref" in node:
            at = contract
            for step in node["$ref"][2:].split("/"):
                at = at[step.replace("~1", "/").replace("~0", "~")]
            node = at
        return node

    found = []
    for path, item in contract["paths"].items():
        for method, operation in item.items():
            if method not in ("get", "post"):
                continue
            parameters = [resolved(one) for one in operation.get("parameters", [])]
            content = operation.get("requestBody", {}).get("content", {})
            names = {name for one in parameters for name in one.get("examples", {})}
            bodies = {(media, name): resolved(one)["value"] for media, form in content.items()
                      for name, one in form.get("examples", {}).items()}
            for media, name in bodies or [("", name) for name in names] or [("", "")]:
                url, query = path, {}
                for one in parameters:
                    if name not in one.get("examples", {}):
                        continue
                    value = resolved(one["examples"][name])["value"]
                    text = ",".join(map(plain, value)) if isinstance(value, list) else plain(value)
                    if one["in"] == "path":
                        url = url.replace("{" + one["name"] + "}", urllib.parse.quote(text, safe=""))
                    else:
                        query[one["name"]] = text
                body = bodies.get((media, name))
                if body is not None and not isinstance(body, str):
                    body = json.dumps(body)
                found.append((operation["operationId"], method.upper(),
                              url + ("?" + urllib.parse.urlencode(query) if query else ""), media,
                              body and body.encode()))
    plan = json.loads(fetch(address, "/v1/examples/sandpiper-as-built"))
    lines = (json.dumps({"key": 1, "input": plan}) + "\n") * 20
    found.append(("runBulk", "POST", "/v1/bulk/review", "application/x-ndjson", lines.encode()))
    return found


def plain(value):
    return json.dumps(value) if isinstance(value, bool) else str(value)


def sample(pid):
    subprocess.run(["jcmd", pid, "GC.run"], check=True, capture_output=True)
    heap = subprocess.run(["jcmd", pid, "GC.heap_info"], check=True, capture_output=True, text=True).stdout
    spaces = re.findall(r"(?:Gen|generation|heap)\s+total \d+K, used (\d+)K", heap)
    if not spaces:
        raise SystemExit("no heap size in the answer of jcmd:\n" + heap)
    with open(f"/proc/{pid}/status") as status:
        told = dict(line.split(":", 1) for line in status)
    return {
        "heap MB": sum(map(int, spaces)) / 1024,
        "threads": int(told["Threads"]),
        "handles": len(os.listdir(f"/proc/{pid}/fd")),
        "rss MB": int(told["VmRSS"].split()[0]) / 1024,
    }


def main(address, pid, minutes):
    questions = questions_of(address)
    pause, stop = threading.Event(), threading.Event()
    senders = [Sender(seed, address, questions, pause, stop) for seed in range(SENDERS)]
    for one in senders:
        one.start()
    begun = time.monotonic()
    samples = []
    print(f"{len({q[0] for q in questions})} operations, {len(questions)} different requests, {SENDERS} senders")
    print(f"{'s':>5} {'requests':>9} {'heap MB':>8} {'threads':>8} {'handles':>8} {'rss MB':>8}", flush=True)
    for number in range(SAMPLES):
        due = begun + 60 * minutes * (0.25 + 0.75 * number / (SAMPLES - 1))
        time.sleep(max(0.0, due - time.monotonic()))
        pause.set()
        for one in senders:
            one.resting.wait()
        time.sleep(1)
        row = sample(pid)
        samples.append(row)
        asked = sum(sum(one.statuses.values()) for one in senders)
        print(f"{time.monotonic() - begun:5.0f} {asked:9} {row['heap MB']:8.1f} {row['threads']:8} {row['handles']:8} "
              f"{row['rss MB']:8.0f}", flush=True)
        for one in senders:
            one.resting.clear()
        pause.clear()
    stop.set()
    for one in senders:
        one.join(300)

    statuses = sum((one.statuses for one in senders), collections.Counter())
    operations = sum((one.operations for one in senders), collections.Counter())
    print("by status:", dict(sorted(statuses.items())))
    unasked = {q[0] for q in questions} - set(operations)
    print("operations asked:", len(operations), "not asked:", sorted(unasked) or "none")
    grown = False
    for what, allowed in ALLOWED.items():
        first = sum(row[what] for row in samples[:3]) / 3
        last = sum(row[what] for row in samples[-3:]) / 3
        bad = last > first + allowed
        grown |= bad
        print(f"{what}: {first:.1f} at first, {last:.1f} at last, {allowed:g} more allowed{': GROWN' if bad else ''}")
    broken = sum(n for status, n in statuses.items() if status.startswith("5") or status[0].isupper())
    if broken:
        print(f"{broken} requests ended with a fault of the service or a broken connection")
    return 1 if grown or broken else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2], float(sys.argv[3])))
