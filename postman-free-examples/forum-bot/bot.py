#!/usr/bin/env python3
"""Reads a post from standard input and answers in Markdown, as a forum bot would post it.

    echo "drop 14 AWG 3 m 8 A" | bot.py
    bot.py < post-with-a-list-of-wires.md

Settings from the environment:
    LOOMWRIGHT    address of the service (http://127.0.0.1:8080)
    POST_LENGTH   most characters of a post, 2600 or more (4000)
    PICTURES      address at which readers of the forum reach the service; without it a post has no picture
    ATTACH        folder for the picture of a pasted list; without it there is none

The first word of a line says what is asked, figures are told apart by their units and may stand in any order. A post with
a table of wires, with whatever text around it, is reviewed; its picture is a PNG whose name the answer gives.
Python 3.8 and its standard library are enough; no account, no token.
"""

import csv
import hashlib
import io
import json
import os
import pathlib
import re
import sys
import urllib.error
import urllib.parse
import urllib.request

SERVICE = os.environ.get("LOOMWRIGHT", "http://127.0.0.1:8080")
# The service fills a post of 2000 characters or more; 600 are for what is put above it.
LENGTH = max(2600, int(os.environ.get("POST_LENGTH", "4000")))
PICTURES = os.environ.get("PICTURES", "")
ATTACH = os.environ.get("ATTACH", "")
LONGEST_LINE = 300
LONGEST_POST = 100_000

HELP = """I can work these out (figures with their units, in any order):

- `drop 14 AWG 3 m 8 A`: volts lost in a wire and its return
- `size 8 A 3 m lighting`: the smallest wire that will do
- `fuse 8 A 14 AWG`: a fuse for a load and its wire
- `ballast 3 ohm coil at 12 V`: the ballast for a coil
- `ballast 1.4 ohm with 1.5 ohm coil`: what a ballast leaves for the coil
- `spark 3000 rpm 0.65 mm`: kilovolts to be had and asked for
- `ohms 6 || 13 + 1`: resistances in series (+) and parallel (||)
- `plans`: the vehicles I know
- `plan sandpiper run`: what a meter shows in one position of the key: off, accessory, run, crank or running
- `plan sandpiper unguarded backfeed`: what is live when it should be off; also `review` and `mistakes`

Or paste a list of your wires, a row each, under a heading such as `from | to | size | length`, and I check your car.
"""

NUMBER = r"(\d+(?:[.,]\d+)?)"
CIRCUITS = ["headlamp", "small-lamp", "electronics", "general", "ignition-feed", "charging", "starter-control", "starter"]
STEPS = ["accessory", "off-again", "off-engine-turning", "off", "running", "run", "crank"]
TOPICS = ["review", "backfeed", "mistakes"]


class Friendly(Exception):
    """Ends the answer with a sentence for the person who asked."""


def plain(text):
    """Text of others so that it is nothing but text in a post."""
    return re.sub(r"([\\`*_~\[\]<>|#@!])", r"\\\1", text)


# Asking the service ----------------------------------------------------------------------------------------------------


def ask(path, query=(), body=None, form="application/json"):
    """The answer as text."""
    return fetch(path, query, body, form).decode("utf-8")


def fetch(path, query=(), body=None, form="application/json"):
    """The answer as it comes.

    Raises Friendly with the service's own words if it refuses.
    """
    pairs = [(name, value) for name, value in dict(query).items() if value is not None]
    address = SERVICE + path + ("?" + urllib.parse.urlencode(pairs) if pairs else "")
    request = urllib.request.Request(address, data=body)
    if body is not None:
        request.add_header("Content-Type", form)
    try:
        with urllib.request.urlopen(request, timeout=60) as answer:
            return answer.read()
    except urllib.error.HTTPError as refused:
        if refused.code >= 500:
            raise Friendly("Something went wrong in the calculation; this is not your fault. Please try again later.")
        raise Friendly("That cannot be worked out. " + plain(json.load(refused)["detail"]))
    except OSError:
        raise Friendly("The calculation service does not answer at the moment. Please try again later.")


def post(path, query=(), body=None, length=LENGTH):
    return ask(path, {**dict(query), "format": "markdown", "maxLength": length}, body)


def headed(sentence, path, query):
    """The figure in a sentence, below it as much of the whole answer as fits."""
    head = sentence.format("%.4g" % float(ask(path, {**query, "format": "text"}))) + "\n\n"
    return head + post(path, query, length=LENGTH - len(head))


# Reading a line --------------------------------------------------------------------------------------------------------


def quantity(text, unit, wanted=None):
    """The number before a unit; asks for it in words if it is wanted and not there."""
    found = re.search(NUMBER + r"\s*(?:" + unit + r")(?![\w^])", text, re.I)
    if found:
        return found.group(1).replace(",", ".")
    if wanted:
        raise Friendly(f"I need {wanted}.\n\n{HELP}")
    return None


def length(text):
    metres = quantity(text, "m|metres?|meters?")
    feet = quantity(text, "ft|feet|foot")
    if metres is None and feet is None:
        raise Friendly("I need the length of the wire one way, such as `3 m` or `10 ft`.\n\n" + HELP)
    return {"lengthM": metres, "lengthFt": None if metres else feet}


def wire(text):
    """A size as people write it: 14 AWG, 2/0 AWG, 2.5 mm2."""
    found = re.search(r"(\d/0|\d+(?:[.,]\d+)?)\s*(AWG|mm2|mm²|sqmm)(?!\w)|(?<!\w)(AWG|SAE)\s*(\d/0|\d+)", text, re.I)
    if not found:
        raise Friendly("I need the size of the wire, such as `14 AWG` or `2.5 mm2`.\n\n" + HELP)
    if found.group(3):
        return found.group(3).upper() + " " + found.group(4)
    unit = "AWG" if found.group(2).upper() == "AWG" else "mm2"
    return found.group(1).replace(",", ".") + " " + unit


def among(words, text):
    return next((word for word in words if re.search(rf"(?<![\w-]){word}(?![\w-])", text, re.I)), None)


# What can be asked -----------------------------------------------------------------------------------------------------


def drop(text):
    query = {"size": wire(text), **length(text), "currentA": current(text), "supplyV": quantity(text, "V|volts?"),
             "circuit": among(CIRCUITS, text)}
    return headed("**{} V** are lost on the way out and back.", "/v1/voltage-drop", query)


def current(text):
    return quantity(text, "A|amps?|amperes?", "the current, such as `8 A`")


def size(text):
    query = {**length(text), "currentA": current(text), "supplyV": quantity(text, "V|volts?"),
             "circuit": among(CIRCUITS, text)}
    return headed("**{} mm²** at least; the table names the size.", "/v1/conductor-size", query)


def fuse(text):
    return headed("A fuse of **{} A**.", "/v1/fuse", {"currentA": current(text), "size": wire(text)})


def ballast(text):
    ohm = r"\s*(?:ohms?|Ω)"
    coil = (re.search(r"coil\s+(?:of\s+)?" + NUMBER + ohm, text, re.I)
            or re.search(NUMBER + ohm + r"\s+coil", text, re.I))
    if not coil:
        raise Friendly("I need the resistance of the coil, such as `1.5 ohm coil`.\n\n" + HELP)
    rest = text[: coil.start()] + text[coil.end():]
    elements = re.findall(NUMBER + ohm, rest, re.I)
    nominal = quantity(rest, "V|volts?")
    query = {"coilPrimaryOhm": coil.group(1).replace(",", "."), "nominalVoltageV": nominal}
    if elements:
        query["elementsOhm"] = ",".join(ohms.replace(",", ".") for ohms in elements)
        return headed("**{} V** across the coil with the key on and the contacts closed.", "/v1/ballast", query)
    # The middle of the usual window, 6 to 8 V of 12 V (common practice).
    query["wantedCoilV"] = 7 * float(nominal or 12) / 12
    return headed("A ballast of **{} ohm** leaves the coil %g V." % query["wantedCoilV"], "/v1/ballast-choice", query)


def spark(text):
    query = {"speedRpm": quantity(text, "rpm|r/min", "the engine speed, such as `3000 rpm`"),
             "gapMm": quantity(text, "mm"), "supplyV": quantity(text, "V|volts?")}
    return headed("**{} kV** to spare.", "/v1/spark", query)


def ohms(text):
    network = re.sub(r"\s*(ohms?|Ω)", "", re.sub(r"^\w+[:,]?", "", text), flags=re.I)
    return headed("**{} ohm** in all.", "/v1/resistance", {"network": network.strip()})


def known_plans():
    return json.loads(ask("/v1/examples"))["examples"]


def plans(_):
    return "\n".join(f"- `plan {plan['name']}`: {plain(plan['title'])}" for plan in known_plans()) + "\n"


def plan(text):
    words = text.lower().split()[1:]
    steps = [word for word in words if word in STEPS]
    topics = [word for word in words if word in TOPICS]
    wanted = [word for word in words if word not in STEPS + TOPICS]
    fitting = [p for p in known_plans() if wanted and all(word in p["name"] for word in wanted)]
    if not fitting:
        raise Friendly("I know no such plan. These I know:\n\n" + plans(text))
    name = fitting[0]["name"]
    head = picture(fitting[0], steps[:1])
    if len(fitting) > 1:
        head += "This is `%s`; there are also %s.\n\n" % (name, ", ".join(f"`{p['name']}`" for p in fitting[1:]))
    body = ask("/v1/examples/" + urllib.parse.quote(name)).encode()
    if steps and not topics:
        return head + readings(body, steps[0], LENGTH - len(head))
    return head + post(f"/v1/plans/{(topics or ['review'])[0]}", body=body, length=LENGTH - len(head))


def picture(chosen, step):
    """The line that shows the diagram, if readers can reach it and this service draws one."""
    if not PICTURES:
        return ""
    path = "/v1/examples/%s/diagram" % urllib.parse.quote(chosen["name"])
    query = "?" + urllib.parse.urlencode([("format", "png")] + [("step", one) for one in step])
    try:
        request = urllib.request.Request(SERVICE + path + query, method="HEAD")
        with urllib.request.urlopen(request, timeout=60):
            return f"![Diagram of {plain(chosen['name'])}]({PICTURES.rstrip('/')}{path}{query})\n\n"
    except OSError:
        return ""


def readings(body, step, room):
    """The readings of one step, made from the CSV answer."""
    rows = csv.DictReader(io.StringIO(ask("/v1/plans/solution", {"format": "csv"}, body)))
    lines = []
    for row in rows:
        if row["step"] == step and row["what"] == "node":
            # Adding nothing turns a minus before zeros into a plus.
            volts = row["state"] or "%.2f V" % (round(float(row["voltageV"]), 2) + 0.0)
            lines.append(f"| {plain(row['id'])} | {volts} |")
    head = f"What a meter shows against the chassis, step `{step}`:\n\n| At | Shows |\n| --- | --- |\n"
    end = "\nThis is a calculation, not an inspection; take care, the battery is connected while you measure.\n"
    left_out = "\n*{} more readings are left out.*\n"
    kept = list(lines)
    while sum(len(line) + 1 for line in kept) + len(head) + len(end) + len(left_out) + 5 > room:
        kept.pop()
    more = left_out.format(len(lines) - len(kept)) if len(kept) < len(lines) else ""
    return head + "\n".join(kept) + "\n" + more + end


# A pasted list -------------------------------------------------------------------------------------------------------


def is_list(text):
    """Whether some line has the headings of a table of wires."""
    headings = (set(re.split(r"\s*[|,;\t]\s*", line.strip().strip("|").strip().lower())) for line in text.splitlines())
    return any({"from", "to"} <= cells for cells in headings)


def reviewed(text):
    """The review of a pasted list, as the service writes it for a post: questions first, then what was assumed."""
    body = text.encode()
    picture_line = attached(body)
    query = {"format": "markdown", "maxLength": LENGTH - len(picture_line)}
    post = ask("/v1/plans/review", query, body, "text/plain")
    title, rest = post.split("\n\n", 1)
    return f"{title}\n\n{picture_line}{rest}"


def attached(body):
    """The picture of a list, put into the folder for attachments."""
    if not ATTACH:
        return ""
    try:
        picture_of = fetch("/v1/plans/diagram", {"format": "png", "marks": "findings", "size": "post"}, body, "text/plain")
    except Friendly as friendly:
        return f"*There is no picture: {friendly}*\n\n"
    file = pathlib.Path(ATTACH) / f"wiring-{hashlib.sha256(body).hexdigest()[:12]}.png"
    file.write_bytes(picture_of)
    return f"![Diagram of the list, with its findings numbered]({file.name})\n\n"


def help_text(_):
    return HELP


ANSWERS = {"drop": drop, "size": size, "fuse": fuse, "ballast": ballast, "spark": spark, "ohms": ohms, "ohm": ohms,
           "plans": plans, "plan": plan, "help": help_text}


def answer(line):
    """What to post in reply to a line, or to a pasted list."""
    if is_list(line):
        try:
            return reviewed(line)
        except Friendly as friendly:
            return f"{friendly}\n"
    text = " ".join(line.splitlines()[0].split()) if line.strip() else ""
    if not text:
        return "I can calculate a thing or two about the wiring of older vehicles. " + HELP
    if len(text) > LONGEST_LINE:
        return f"That is a lot to read. Please ask in at most {LONGEST_LINE} characters.\n"
    word = re.split(r"[\s:,?]", text.lower(), maxsplit=1)[0]
    if word not in ANSWERS:
        return f"I do not know what to do with “{plain(text.split()[0])}”. {HELP}"
    try:
        return ANSWERS[word](text)
    except Friendly as friendly:
        return f"{friendly}\n"


if __name__ == "__main__":
    sys.stdin.reconfigure(encoding="utf-8", errors="replace")
    sys.stdout.reconfigure(encoding="utf-8")
    sys.stdout.write(answer(sys.stdin.read(LONGEST_POST)))
