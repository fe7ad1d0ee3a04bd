"""Generated plans through the bulk runs, against the single operations.

    generated.py ADDRESS PID N SHARE SEED OPERATIONS        see generated.sh

The same seed makes the same plans, no two alike: harnesses of 3 to 14 circuits with wires, values and voltages at random;
one in twelve has something wrong with it and is to be refused. Lines are made while they are sent and compared while
they come, so that nothing here grows with N. Of every SHARE plans one, drawn at random, is sent alone too.
"""

import concurrent.futures
import http.client
import json
import os
import random
import re
import shlex
import shutil
import subprocess
import sys
import tempfile
import threading
import time

SIZES = ["0.5 mm2", "0.75 mm2", "1.5 mm2", "2.5 mm2", "4 mm2", "18 AWG", "16 AWG", "14 AWG", "12 AWG"]
ALWAYS = {"off": "off", "accessory": "off", "run": "on", "crank": "on", "running": "on"}


class Harness:
    """One plan in the making."""

    def __init__(self, seed, number):
        self.random = random.Random(f"{seed}/{number}")
        self.parts, self.wires, self.points = [], [], []

    def plan(self, number):
        earths = ["body.31", "engine.31"]
        voltage = self.random.choice([6, 12, 12, 12, 24])
        self.parts += [{"kind": "battery", "id": "battery"}, {"kind": "earth", "id": "body"},
                       {"kind": "earth", "id": "engine"},
                       {"kind": "switch", "id": "key", "terminals": ["30", "15"], "positionByCondition": ALWAYS,
                        "positions": [{"name": "off", "joins": []}, {"name": "on", "joins": [["30", "15"]]}]}]
        self.wire("battery.minus", "body.31")
        self.wire("battery.plus", "key.30")
        for circuit in range(self.random.randint(3, 14)):
            feed = self.random.choice(["key.15", "key.30", *self.points[-6:]])
            self.circuit(f"c{circuit}", feed, self.random.choice(earths), voltage)
        for _ in range(self.random.choice([0, 0, 1, 3])):
            one, other = self.random.choice(self.points), self.random.choice(self.points)
            if one != other:
                self.wire(one, other)
        plan = {"schema": "loomwright/plan/1", "name": f"Generated {number}",
                "system": {"nominalVoltageV": voltage, "earthPolarity": self.random.choice(["negative", "negative", "positive"]),
                           "ambientTemperatureC": self.random.randint(-20, 45)},
                "parts": self.parts, "wires": self.wires}
        if self.random.random() < 1 / 12:
            self.spoil(plan)
        return plan

    def circuit(self, name, feed, earth, voltage):
        dice = self.random
        if dice.random() < 0.5:
            self.parts.append({"kind": "fuse", "id": f"{name}f", "ratingA": dice.choice([5, 10, 15, 30])})
            self.wire(feed, f"{name}f.a")
            feed = f"{name}f.b"
            self.points.append(feed)
        live = {"meantLive": dice.choice([[], ["run", "running"], ["run", "crank", "running"]])}
        kind = dice.choice(["lamp", "lamp", "load", "watts", "relay", "diode", "switch"])
        if kind == "switch" and sum(part["kind"] == "switch" for part in self.parts) > 2:
            # Each free switch doubles the combinations that a review looks at.
            kind = "lamp"
        if kind == "lamp":
            self.two_ends({"kind": "lamp", "id": name, "ratedV": voltage, "ratedW": dice.randint(2, 60), **live}, feed, earth)
        elif kind == "load":
            self.two_ends({"kind": "load", "id": name, "resistanceOhm": round(dice.uniform(1, 90), 2), **live}, feed, earth)
        elif kind == "watts":
            self.two_ends({"kind": "load", "id": name, "powerW": dice.randint(1, 50), **live}, feed, earth)
        elif kind == "relay":
            self.parts.append({"kind": "relay", "id": name, "coilResistanceOhm": dice.randint(50, 120), **live})
            self.wire(feed, f"{name}.86")
            self.wire(f"{name}.85", earth)
            self.wire(dice.choice(["key.30", feed]), f"{name}.30")
            self.points += [f"{name}.87", f"{name}.87a"]
        elif kind == "diode":
            self.parts.append({"kind": "diode", "id": name, "forwardV": 0.7, "slopeOhm": 0.02})
            self.wire(feed, f"{name}.anode")
            self.points.append(f"{name}.cathode")
        else:
            self.parts.append({"kind": "switch", "id": name, "terminals": ["a", "b"],
                               "positions": [{"name": "out", "joins": []}, {"name": "in", "joins": [["a", "b"]]}]})
            self.wire(feed, f"{name}.a")
            self.points.append(f"{name}.b")

    def two_ends(self, part, feed, earth):
        self.parts.append(part)
        self.wire(feed, part["id"] + ".a")
        self.wire(part["id"] + ".b", earth)
        self.points.append(part["id"] + ".a")

    def wire(self, one, other):
        wire = {"id": f"w{len(self.wires)}", "from": one, "to": other, "directed": self.random.random() < 0.5}
        if self.random.random() < 0.1:
            wire["resistanceOhm"] = round(self.random.uniform(0.001, 3), 4)
        else:
            wire |= {"size": self.random.choice(SIZES), "lengthM": round(self.random.uniform(0.1, 6), 2)}
        self.wires.append(wire)

    def spoil(self, plan):
        wire, part = self.random.choice(self.wires), self.random.choice(self.parts)
        match self.random.randrange(6):
            case 0: wire["to"] = "nowhere.1"
            case 1: wire["id"] = self.parts[0]["id"]
            case 2: part["colour"] = "red"
            case 3: plan["system"]["nominalVoltageV"] = 13
            case 4: wire["size"] = "17 mm2"
            case 5: del part["id"]


def line(seed, number):
    """The plan of a number, with its number as key for every other."""
    plan = Harness(seed, number).plan(number)
    return json.dumps({"key": f"plan {number}", "input": plan} if number % 2 else plan).encode() + b"\n"


def drawn(seed, number, share):
    return share == 1 or random.Random(f"drawn {seed}/{number}").random() < 1 / share


class Single:
    """Asks for one plan after the other, with a connection for each thread."""

    def __init__(self, address, operation):
        self.address, self.path, self.local = address, f"/v1/plans/{operation}", threading.local()

    def ask(self, plan):
        for _ in range(2):
            connection = getattr(self.local, "connection", None) or http.client.HTTPConnection(self.address, timeout=300)
            self.local.connection = connection
            try:
                connection.request("POST", self.path, plan, {"Content-Type": "application/json"})
                answer = connection.getresponse()
                return answer.status, answer.read().decode()
            except (http.client.RemoteDisconnected, ConnectionError):
                # A connection kept open may be closed in the very moment of asking.
                connection.close()
                self.local.connection = None
        raise SystemExit("no answer to a plan sent alone")


def differs(seed, number, single, text):
    """Why the answer of a line is not that of the plan alone; None if it is. JSON answers are held to be the same byte for byte."""
    status, alone = single.ask(json.dumps(Harness(seed, number).plan(number)))
    key = f'"key":"plan {number}",' if number % 2 else ""
    if status == 200:
        same = text == f'{{"line":{number},{key}"answer":{alone}}}'
    else:
        got, wanted = json.loads(text).get("problem", {}), json.loads(alone)
        # It names the one request.
        got.pop("instance", None)
        wanted.pop("instance", None)
        same = got == wanted and f'"line":{number},{key}' in text
    return None if same else f"line {number}, status alone {status}"


def watch_heap(pid, peak, stop):
    """Keeps the highest heap in use that jcmd tells, before and after collections as they happen to be."""
    if not shutil.which("jcmd"):
        return
    while not stop.wait(2):
        told = subprocess.run(["jcmd", pid, "GC.heap_info"], capture_output=True, text=True, check=False).stdout
        used = sum(map(int, re.findall(r"(?:Gen|generation|heap)\s+total \d+K, used (\d+)K", told)))
        peak.append(used / 1024)


def bulk(address, operation, seed, count):
    """The lines of the answer, while the plans are sent by another thread."""
    connection = http.client.HTTPConnection(address, timeout=600)

    def send():
        connection.putrequest("POST", f"/v1/bulk/{operation}")
        connection.putheader("Content-Type", "application/x-ndjson")
        connection.putheader("Transfer-Encoding", "chunked")
        connection.endheaders()
        for number in range(1, count + 1):
            text = line(seed, number)
            connection.send(b"%x\r\n%s\r\n" % (len(text), text))
        connection.send(b"0\r\n\r\n")

    connection.connect()
    sending = threading.Thread(target=send, daemon=True)
    sending.start()
    # The connection itself would not read before all is sent.
    answer = http.client.HTTPResponse(connection.sock, method="POST")
    answer.begin()
    if answer.status != 200:
        raise SystemExit(f"{operation}: {answer.status} {answer.read()[:500]}")
    for text in answer:
        yield text.decode().rstrip("\n")
    sending.join()
    connection.close()


def run(address, pid, operation, count, share, seed):
    peak, stop = [], threading.Event()
    threading.Thread(target=watch_heap, args=(pid, peak, stop), daemon=True).start()
    begun = time.monotonic()
    single = Single(address, operation)
    expected, problems, compared, bytes_read, summary, wrong = 1, 0, 0, 0, None, []
    with concurrent.futures.ThreadPoolExecutor(2) as pool:
        waiting = []
        for text in bulk(address, operation, seed, count):
            bytes_read += len(text)
            if text.startswith('{"summary"'):
                summary = json.loads(text)["summary"]
                continue
            if not text.startswith(f'{{"line":{expected},'):
                wrong.append(f"line {expected} expected, {text[:40]} came")
            problems += '"problem":{' in text[:60]
            if drawn(seed, expected, share):
                compared += 1
                waiting.append(pool.submit(differs, seed, expected, single, text))
            expected += 1
            while len(waiting) > 100:
                wrong += filter(None, [waiting.pop(0).result()])
        wrong += filter(None, (one.result() for one in waiting))
    stop.set()
    seconds = time.monotonic() - begun
    answered = expected - 1
    if not summary or not summary["complete"] or answered != count \
            or summary["answers"] + summary["problems"] != count or summary["problems"] != problems:
        wrong.append(f"{answered} of {count} answered, {problems} of them problems, summary {summary}")
    print(f"{operation}: {count} lines sent, {answered} answered ({problems} refused), {compared} compared with the "
          f"answer alone, {len(wrong)} differences; {seconds:.0f} s, {bytes_read / 1e6:.0f} MB of answers, "
          f"highest heap in use {max(peak, default=0):.0f} MB", flush=True)
    if summary:
        found = [f"{one['severity']} {one['code']} on {one['lines']}" for one in summary["findings"]]
        print("  findings: " + (", ".join(found) or "none"))
    for one in wrong[:20]:
        print("  " + one)
    return not wrong


def local(address, command, count, seed):
    """The local run of the same lines against the bulk run."""
    with tempfile.TemporaryDirectory() as folder:
        plans, report = os.path.join(folder, "plans.ndjson"), os.path.join(folder, "report.ndjson")
        with open(plans, "wb") as file:
            file.writelines(line(seed, number) for number in range(1, count + 1))
        subprocess.run([*shlex.split(command), "--operation", "solution", "--out", report, plans],
                       check=False, stderr=subprocess.DEVNULL)
        different = 0
        instance = re.compile(r'"instance":"[^"]*"')
        with open(report) as file:
            for ours, theirs in zip(file, bulk(address, "solution", seed, count), strict=True):
                ours = re.sub(r'^\{"file":"[^"]*",', "{", ours.rstrip("\n"))
                different += instance.sub("", ours) != instance.sub("", theirs)
    print(f"check: {count} lines, {different} differences from the bulk run")
    return not different


def main(address, pid, count, share, seed, operations):
    print(f"{count} plans of seed {seed}, one of {share} sent alone too", flush=True)
    good = all([run(address, pid, operation, count, share, seed) for operation in operations.split(",")])
    if os.environ.get("CHECK"):
        good &= local(address, os.environ["CHECK"], min(count, 5000), seed)
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4]), sys.argv[5], sys.argv[6]))
