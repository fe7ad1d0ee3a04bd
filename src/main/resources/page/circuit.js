// One circuit of the car, from the battery through a load to earth, as a strip to read on a phone: each part and wire of the
// way in a line, with what it does now.

import { t } from "./text.js";
import { bench, figures, select, when } from "./workshop.js";
import { chip, element, place } from "./elements.js";
import { colourWords, colours, does, figure, nameOf, state } from "./words.js";

/** Kinds that use what a circuit brings; another one's way never leads through them. */
const LOADS = ["lamp", "led", "load", "motor", "coil", "capacitor"];
/** Parts that a magnet moves are loads by their winding; these terminals belong to it, the others to the contact. */
const WINDING = { relay: ["85", "86"], solenoid: ["50", "31"] };
/** Feeds the coil past its ballast while cranking: never the way to show. */
const BYPASS = { kind: "solenoid", terminal: "15a" };

/** On a desktop the whole picture is seen instead. */
const NARROW = matchMedia("(max-width: 999px)");

let chosen = null;
let whole = false;
/** What was selected when the circuit was last chosen to show it. */
let followed = null;

/** Keeps the strip up to date. */
export function start() {
  when("plan solved state selected", show);
  NARROW.addEventListener("change", show);
  place("circuit-of").addEventListener("change", (event) => {
    whole = event.target.value === "";
    chosen = event.target.value;
    show();
  });
  show();
}

/** The parts that have a circuit of their own, by the plan. */
export function loadsOf(plan) {
  return plan.parts.filter((part) => (LOADS.includes(part.kind) && part.kind !== "capacitor") || part.kind in WINDING);
}

/**
 * The way from the battery to a load and on to earth: [{ wire, from, to } or { part }], in the order of the current. Of
 * several ways the one with the fewest wires. Empty if the load is joined to no battery.
 */
export function circuitOf(plan, load) {
  const parts = new Map(plan.parts.map((part) => [part.id, part]));
  const own = parts.get(load);
  const ends = new Map();
  const join = (wire, from, to) => ends.set(from, [...(ends.get(from) ?? []), { wire, from, to }]);
  for (const wire of plan.wires) {
    join(wire, wire.from, wire.to);
    join(wire, wire.to, wire.from);
  }
  const winding = (id, terminal) => (WINDING[parts.get(id)?.kind] ?? []).includes(terminal);
  const starts = [...ends.keys()].filter((end) => partOf(end) === load && (!(own.kind in WINDING) || winding(load, terminalOf(end))));
  const live = plan.system.earthPolarity === "positive" ? "minus" : "plus";
  const isBattery = (end) => parts.get(partOf(end))?.kind === "battery";
  const isSupply = (end) => isBattery(end) && terminalOf(end) === live;
  const isEarth = (end) => end === "earth" || parts.get(partOf(end))?.kind === "earth" || (isBattery(end) && terminalOf(end) !== live);

  function ways(goal, wall) {
    return starts.map((first) => shortest(first, goal, wall)).filter(Boolean).sort((one, other) => one.length - other.length);
  }

  /** Breadth first over wires; through a part only between terminals of its contact. */
  function shortest(first, goal, wall) {
    const seen = new Set([first]);
    let front = [{ end: first, way: [] }];
    while (front.length > 0) {
      const next = [];
      for (const { end, way } of front) {
        for (const step of ends.get(end) ?? []) {
          const longer = [...way, step];
          if (goal(step.to)) {
            return longer;
          }
          const id = partOf(step.to);
          if (seen.has(step.to) || wall(step.to) || id === load || LOADS.includes(parts.get(id)?.kind) || isBattery(step.to)) {
            continue;
          }
          seen.add(step.to);
          next.push({ end: step.to, way: longer });
          for (const other of through(step.to)) {
            if (!seen.has(other)) {
              seen.add(other);
              next.push({ end: other, way: longer });
            }
          }
        }
      }
      front = next;
    }
    return null;
  }

  /** The terminals of the same part that a current may go on from, those of its other half if it is a plug. */
  function through(end) {
    const id = partOf(end);
    const part = parts.get(id);
    if (part?.kind === BYPASS.kind && terminalOf(end) === BYPASS.terminal) {
      return [];
    }
    if (part?.kind === "connector-half") {
      const mates = (plan.connectors ?? []).filter((each) => each.halves.includes(id)).flatMap((each) => each.halves);
      return [...ends.keys()].filter((other) => mates.includes(partOf(other)) && terminalOf(other) === terminalOf(end));
    }
    if (part?.kind === "switch") {
      const joined = part.positions.flatMap((position) => position.joins ?? []).filter((join) => join.includes(terminalOf(end))).flat();
      return [...ends.keys()].filter((other) => other !== end && partOf(other) === id && joined.includes(terminalOf(other)));
    }
    return [...ends.keys()].filter((other) => other !== end && partOf(other) === id && winding(id, terminalOf(other)) === winding(id, terminalOf(end)));
  }

  const feed = ways(isSupply, isEarth)[0];
  if (!feed) {
    return [];
  }
  const back = starts.filter((each) => each !== feed[0].from).map((each) => shortest(each, isEarth, isSupply)).filter(Boolean).sort((one, other) => one.length - other.length)[0] ?? [];
  const there = [...feed].reverse().map(({ wire, from, to }) => ({ wire, from: to, to: from }));
  const line = [{ part: parts.get(partOf(there[0].from)) }];
  for (const step of [...there, ...back]) {
    const before = line[line.length - 1].part;
    if (before && partOf(step.from) !== before.id) {
      line.push({ part: parts.get(partOf(step.from)) });
    }
    line.push(step);
    const part = parts.get(partOf(step.to));
    if (part) {
      line.push({ part });
    }
  }
  return line;
}

function partOf(end) {
  return end.split(".")[0];
}

function terminalOf(end) {
  return end.split(".").slice(1).join(".");
}

function show() {
  if (!NARROW.matches) {
    return;
  }
  const plan = bench.conversion?.result.plan;
  const loads = plan ? loadsOf(plan) : [];
  place("circuit").hidden = loads.length === 0;
  if (loads.length === 0) {
    return;
  }
  if (!whole && !loads.some((part) => part.id === chosen)) {
    chosen = loads[0].id;
  }
  if (!whole && bench.selected !== followed) {
    const isOn = (load) => circuitOf(plan, load).some((each) => (each.wire?.id ?? each.part.id) === bench.selected);
    const own = loads.find((part) => part.id === bench.selected);
    chosen = own?.id ?? (isOn(chosen) ? chosen : (loads.find((part) => isOn(part.id))?.id ?? chosen));
  }
  followed = bench.selected;
  place("circuit-of").replaceChildren(
    ...loads.map((part) => element("option", { value: part.id, selected: !whole && part.id === chosen }, nameOf(part))),
    element("option", { value: "", selected: whole }, t("the-whole-picture")),
  );
  place("live").classList.toggle("one-circuit", !whole);
  place("strip").hidden = place("strip-note").hidden = whole;
  if (whole) {
    return;
  }
  const step = figures();
  const volts = new Map((step?.nodes ?? []).flatMap((node) => node.terminals.map((terminal) => [terminal, node.voltageV === undefined ? t("floating") : `${figure(node.voltageV)} V`])));
  const readings = new Map((step?.parts ?? []).map((row) => [row.part, row]));
  const wires = new Map((step?.wires ?? []).map((row) => [row.wire, row]));
  const line = circuitOf(plan, chosen);
  place("strip").replaceChildren(
    ...line.map((each, i) =>
      element(
        "li",
        { className: `${each.wire ? "wire" : "part"} ${(each.wire?.id ?? each.part.id) === bench.selected ? "selected" : ""} ${each.wire && wires.get(each.wire.id)?.live ? "live" : ""}` },
        element("button", { type: "button", className: "quiet", "aria-pressed": String((each.wire?.id ?? each.part.id) === bench.selected), click: () => select(each.wire?.id ?? each.part.id) }, ...(each.wire ? wireLine(each, wires) : partLine(each.part, readings, volts, line[i - 1], line[i + 1]))),
      ),
    ),
  );
  place("strip-note").textContent = line.length === 0 ? t("no-way-leads-from-the") : "";
}

function wireLine({ wire, from }, wires) {
  const reading = wires.get(wire.id);
  const amperes = reading ? figure(Math.abs(reading.currentA)) : "";
  // The strip is read downwards; a current the other way points up.
  const down = reading && (reading.currentA >= 0) === (from === wire.from);
  return [
    chip(colours(wire.colour)),
    element("span", {}, [wire.id, colourWords(wire.colour), wire.size?.replace("mm2", "mm²")].filter(Boolean).join(" ")),
    element("span", { className: "number" }, reading ? (amperes === "0" ? t(reading.live ? "live-no-current" : "state-off") : `${down ? "↓" : "↑"} ${amperes} A`) : ""),
  ];
}

function partLine(part, readings, volts, before, after) {
  const reading = readings.get(part.id);
  const doing = reading?.activity ? does(reading) : reading?.state ? state(reading.state) : "";
  const at = [before?.to, after?.from].filter(Boolean).map((end) => volts.get(end)).filter(Boolean);
  return [
    element("strong", {}, nameOf(part)),
    element("span", {}, doing),
    element("span", { className: "number" }, [...new Set(at)].join(" → ")),
  ];
}
