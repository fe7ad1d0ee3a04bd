#!/usr/bin/env python3
"""Plans to try it with, one a line, each a little different: plans.py [COUNT], 1000 unless said."""

import json
import sys

STEPS = ["run", "crank", "running"]


def plan(number):
    return {
        "schema": "loomwright/plan/1",
        "name": f"Car {number}",
        "system": {"nominalVoltageV": 12},
        "parts": [
            {"kind": "battery", "id": "battery"},
            {"kind": "earth", "id": "body"},
            {"kind": "switch", "id": "key", "terminals": ["30", "15"], "positionByCondition": {
                "off": "off", "accessory": "off", "run": "on", "crank": "on", "running": "on"},
             "positions": [{"name": "off", "joins": []}, {"name": "on", "joins": [["30", "15"]]}]},
            {"kind": "fuse", "id": "F1", "ratingA": 10},
            {"kind": "lamp", "id": "lamp", "ratedV": 12, "ratedW": 5 + number % 50, "meantLive": STEPS},
        ],
        "wires": [
            {"id": "W1", "from": "battery.minus", "to": "body.31", "size": "25 mm2", "lengthM": 0.5},
            {"id": "W2", "from": "battery.plus", "to": "F1.a", "size": "2.5 mm2", "lengthM": 0.5},
            {"id": "W3", "from": "F1.b", "to": "key.30", "size": "2.5 mm2", "lengthM": 1 + number % 1000 / 1000},
            {"id": "W4", "from": "key.15", "to": "lamp.a", "size": "1 mm2", "lengthM": 2},
            {"id": "W5", "from": "lamp.b", "to": "body.31", "size": "1 mm2", "lengthM": 1},
        ],
    }


for line in range(int(sys.argv[1]) if len(sys.argv) > 1 else 1000):
    print(json.dumps({"key": line + 1, "input": plan(line + 1)}, separators=(",", ":")))
