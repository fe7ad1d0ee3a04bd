"""Mixed requests over every operation of the contract for some minutes; ends with 1 if the service has grown.

    soak.py ADDRESS PID MINUTES        see soak.sh

Most requests are the examples of the contract that are answered with 200, and bulk runs of demo plans. A small share are
the examples that show a refusal, bodies cut in half, bodies of the wrong type, and requests given up before the answer.
Each has the status it must be answered with; any other ends the script with 1, as a broken connection does. Beside them
go the hostile clients of hostile.py, each of which must be ended by the service, and a probe of /health.

After a quarter of the time to warm up, heap after a full collection (jcmd), threads and file handles (/proc) are taken
ten times while the senders rest. The mean of the last three may be above that of the first three by the allowance
only.
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
import typing
import urllib.parse

import hostile
import yaml

SENDERS = 4
HOSTILE = 24
# Requests a second of each sender; without PACE as many as are answered.
PACE = float(os.environ.get("PACE", "inf"))
SAMPLES = 10
VALID, REFUSED, CUT, WRONG_TYPE, GIVEN_UP = "valid", "refused", "cut in half", "wrong type", "given up"
SHARES = {VALID: 0.88, REFUSED: 0.04, CUT: 0.03, WRONG_TYPE: 0.02, GIVEN_UP: 0.03}
# A hostile client may hold a connection at one sample and none at another.
ALLOWED = {"heap MB": 3.0, "threads": 3.0, "handles": 6.0 + HOSTILE}


class Question(typing.NamedTuple):
    """A request and the status of its answer."""

    kind: str
    operation: str
    method: str
    path: str
    media: str
    body: bytes
    status: int


class Sender(threading.Thread):
    """Asks at random until told to stop, and pauses while samples are taken."""

    def __init__(self, seed, address, questions, pause, stop):
        super().__init__(daemon=True)
        self.random = random.Random(seed)
        self.address, self.questions, self.pause, self.stop = address, questions, pause, stop
        self.answers, self.operations = collections.Counter(), collections.Counter()
        self.wrong = []
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
            time.sleep(self.random.expovariate(PACE) if PACE < float("inf") else 0.0)
            connection = connection or http.client.HTTPConnection(self.address, timeout=300)
            question = self.draw()
            came, seconds = self.ask(connection, question)
            self.answers[question.kind, question.status, came] += 1
            self.operations[question.operation] += 1
            if came != question.status:
                connection.close()
                connection = None
                if question.kind != GIVEN_UP:
                    self.wrong.append(f"{question.method} {question.path}, {question.kind}, {seconds:.1f} s: "
                                      f"{question.status} expected, {came} came")
        self.resting.set()

    def draw(self):
        """One of the questions, or one of them spoilt."""
        kind = self.random.choices(list(SHARES), list(SHARES.values()))[0]
        if kind in self.questions:
            return self.random.choice(self.questions[kind])
        question = self.random.choice([q for q in self.questions[VALID] if q.media == "application/json"])
        if kind == CUT:
            return question._replace(kind=kind, body=question.body[: len(question.body) // 2], status=400)
        if kind == WRONG_TYPE:
            return question._replace(kind=kind, media="image/png", status=415)
        return question._replace(kind=kind)

    def ask(self, connection, question):
        begun = time.monotonic()
        try:
            connection.request(question.method, question.path, question.body,
                               {"Content-Type": question.media} if question.body else {})
            if question.kind == GIVEN_UP:
                return "-", 0.0
            answer = connection.getresponse()
            answer.read()
            came = answer.status
        except (OSError, http.client.HTTPException) as broken:
            came = type(broken).__name__
        return came, time.monotonic() - begun


def fetch(address, path):
    connection = http.client.HTTPConnection(address, timeout=60)
    connection.request("GET", path)
    text = connection.getresponse().read()
    connection.close()
    return text


def questions_of(address):
    """By kind, what every example of the contract asks, and the status that the response of the same name has."""
    contract = yaml.load(fetch(address, "/openapi.yaml"), getattr(yaml, "CSafeLoader", yaml.SafeLoader))

    def resolved(node):
        while "$ref" in node:
            at = contract
            for step in node["$ref"][2:].split("/"):
                at = at[step.replace("~1", "/").replace("~0", "~")]
            node = at
        return node

    def value_of(example):
        return example["value"] if "value" in example else json.loads(fetch(address, example["externalValue"]))

    found = {VALID: [], REFUSED: []}
    for path, item in contract["paths"].items():
        for method, operation in item.items():
            if method not in ("get", "post"):
                continue
            parameters = [resolved(one) for one in operation.get("parameters", [])]
            content = resolved(operation.get("requestBody", {})).get("content", {})
            names = {name for one in parameters for name in one.get("examples", {})}
            bodies = {(media, name): value_of(resolved(one)) for media, form in content.items()
                      for name, one in form.get("examples", {}).items()}
            statuses = {name: int(status) for status, response in operation["responses"].items()
                        for form in resolved(response).get("content", {}).values() for name in form.get("examples", {})}
            for media, name in bodies or [("", name) for name in names] or [("", "")]:
                url, query = path, {}
                for one in parameters:
                    if name not in one.get("examples", {}):
                        continue
                    value = value_of(resolved(one["examples"][name]))
                    text = ",".join(map(plain, value)) if isinstance(value, list) else plain(value)
                    if one["in"] == "path":
                        url = url.replace("{" + one["name"] + "}", urllib.parse.quote(text, safe=""))
                    else:
                        query[one["name"]] = text
                body = bodies.get((media, name))
                if body is not None and not isinstance(body, str):
                    body = json.dumps(body)
                status = statuses.get(name, 200)
                kind = VALID if status == 200 else REFUSED
                found[kind].append(Question(kind, operation["operationId"], method.upper(),
                                            url + ("?" + urllib.parse.urlencode(query) if query else ""), media,
                                            body and body.encode(), status))
    plan = json.loads(fetch(address, "/v1/examples/sandpiper-as-built"))
    lines = (json.dumps({"key": 1, "input": plan}) + "\n") * 20
    found[VALID].append(
        Question(VALID, "runBulk", "POST", "/v1/bulk/review", "application/x-ndjson", lines.encode(), 200))
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
    attackers = [hostile.Hostile(seed, address, stop) for seed in range(HOSTILE)]
    probe = hostile.Probe(address, stop)
    for one in (*senders, *attackers, probe):
        one.start()
    begun = time.monotonic()
    samples = []
    all_questions = [q for of_kind in questions.values() for q in of_kind]
    print(f"{len({q.operation for q in all_questions})} operations, {len(questions[VALID])} valid requests, "
          f"{len(questions[REFUSED])} that are to be refused, {SENDERS} senders, {HOSTILE} hostile clients")
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
        asked = sum(sum(one.answers.values()) for one in senders)
        print(f"{time.monotonic() - begun:5.0f} {asked:9} {row['heap MB']:8.1f} {row['threads']:8} {row['handles']:8} "
              f"{row['rss MB']:8.0f}", flush=True)
        for one in senders:
            one.resting.clear()
        pause.clear()
    stop.set()
    for one in (*senders, *attackers, probe):
        one.join(300)

    answers = sum((one.answers for one in senders), collections.Counter())
    operations = sum((one.operations for one in senders), collections.Counter())
    total = sum(answers.values())
    print(f"{'kind':<12} {'expected':>8} {'came':>18} {'number':>8} {'%':>6}")
    for (kind, status, came), number in sorted(answers.items(), key=str):
        print(f"{kind:<12} {status if kind != GIVEN_UP else '-':>8} {came:>18} {number:>8} {100 * number / total:6.2f}")
    ends = sum((one.ends for one in attackers), collections.Counter())
    print(f"{'hostile':<20} {'ended by':>18} {'number':>8} {'longest s':>10}")
    for (kind, end), number in sorted(ends.items()):
        print(f"{kind:<20} {end:>18} {number:>8} {max(one.longest_s[kind] for one in attackers):10.1f}")
    took = sorted(probe.seconds)
    print(f"/health asked {len(took)} times: median {1000 * took[len(took) // 2]:.1f} ms, 99 % within "
          f"{1000 * took[len(took) * 99 // 100]:.1f} ms, longest {1000 * took[-1]:.0f} ms, {len(probe.failed)} failed")
    unasked = {q.operation for q in all_questions} - set(operations)
    print("operations asked:", len(operations), "not asked:", sorted(unasked) or "none")
    grown = False
    for what, allowed in ALLOWED.items():
        first = sum(row[what] for row in samples[:3]) / 3
        last = sum(row[what] for row in samples[-3:]) / 3
        bad = last > first + allowed
        grown |= bad
        print(f"{what}: {first:.1f} at first, {last:.1f} at last, {allowed:g} more allowed{': GROWN' if bad else ''}")
    wrong = [line for one in senders for line in one.wrong]
    print(len(wrong), "answers other than expected", *wrong[:20], sep="\n  ")
    kept = [line for one in attackers for line in one.kept]
    print(len(kept), "hostile connections not ended", *kept[:20], sep="\n  ")
    return 1 if grown or wrong or kept or probe.failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2], float(sys.argv[3])))
