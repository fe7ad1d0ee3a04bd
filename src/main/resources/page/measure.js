// Find a fault with a meter: one reading a screen, suspects that shrink, and at the end what to repair.

import { t } from "./text.js";
import { bench, plan, select, setStep, setSwitch, when } from "./workshop.js";
import { button, chip, element, fill, place, say, table, wide } from "./elements.js";
import { postJson, postSlow, explained } from "./service.js";
import { colourWords, colours, figure, fine, nameOf } from "./words.js";
import { light } from "./picture.js";
import { endName } from "./selected.js";

const LOADS = ["lamp", "led", "load", "motor", "coil", "relay", "solenoid"];
const COMPLAINTS = {
  dead: t("does-not-work"), weak: t("is-weak"), glows: t("only-just-glows-or-only"), "stays-on": t("is-on-when-it-should"), "blows-its-fuse": t("blows-its-fuse"),
};

/** The session: { plan, complaint, readings, skipped, accepted, again, answer }; null before it begins. What was seen is the first of the readings. */
let session = null;
let aborter = null;

/** Keeps the tab up to date. */
export function start() {
  when("plan", () => {
    if (session && JSON.stringify(session.plan) !== JSON.stringify(plan({}))) {
      session = null;
      show();
    }
  });
  show();
}

export function shown() {
  if (!session) {
    show();
  }
}

function panel() {
  return place("panel-measure");
}

function show() {
  if (!bench.conversion) {
    fill(panel(), element("p", {}, t("draw-up-a-car-first")));
    return;
  }
  if (!session) {
    showComplaint();
  } else if (!session.answer) {
    showReading(session.again.find((each) => !isSkipped(each)));
  } else {
    showAnswer();
  }
}

function showComplaint() {
  const loads = bench.conversion.result.plan.parts.filter((part) => LOADS.includes(part.kind));
  const load = element("select", { id: "complaint-load" }, ...loads.map((part) => element("option", { value: part.id }, nameOf(part))));
  const what = element(
    "select",
    { id: "complaint" },
    ...Object.entries(COMPLAINTS).map(([sign, words]) => element("option", { value: sign }, words)),
  );
  fill(panel(), 
    element("h2", {}, t("find-a-fault-with-a")),
    element("p", {}, t("say-what-is-wrong-you")),
    element("p", { className: "field" }, element("label", { for: "complaint-load" }, t("which-part")), load),
    element("p", { className: "field" }, element("label", { for: "complaint" }, t("what-is-wrong-with-it")), what),
    element("p", {}, button(t("begin"), () => begin(load.value, what.value), { className: "main", id: "begin" })),
    element("p", { className: "problem", id: "measure-problem" }),
    expectedReadings(),
  );
}

/** The readings of a sound car, for those who want them all. */
function expectedReadings() {
  const target = element("div");
  const opened = async (event) => {
    if (!event.target.open || target.childNodes.length > 0) {
      return;
    }
    target.textContent = t("calculating");
    try {
      const sheet = (await postSlow("/v1/plans/readings", plan({}), ({ done, of }) => (target.textContent = t("calculating-percent", { of: Math.round((100 * done) / of) })))).result;
      target.replaceChildren(
        wide(t("readings"), table(t("readings-of-a-sound-car"), [[t("no"), false], [t("how-the-car-stands"), false], [t("red-lead"), false], [t("black-lead"), false], [t("from"), true], [t("to"), true], ["", false]],
          sheet.readings.map((each) => [
            String(each.number), each.situation, each.redLabel, each.blackLabel,
            each.shows === "figure" ? fine(each.lowest) : "", each.shows === "figure" ? fine(each.highest) : "",
            each.shows === "figure" ? (each.unit === "ohm" ? "Ω" : each.unit) : each.shows === "open" ? t("over-range") : t("nothing-steady"),
          ]))),
      );
    } catch (refused) {
      target.textContent = explained(refused);
    }
  };
  return element("details", { toggle: opened }, element("summary", {}, t("all-readings-of-a-sound")), target);
}

/** What is seen of the part is the first reading. The sheet says how the car stands when the part should work, or be dead. */
async function begin(load, sign) {
  place("begin").disabled = true;
  const drawn = plan({});
  try {
    const sheet = (await postJson(`/v1/plans/readings?load=${encodeURIComponent(load)}`, drawn)).result;
    const on = sign === "stays-on";
    const stands = sheet.readings.find((each) => each.purpose === (on ? "dead" : "load"));
    const seen = { part: load, sign, condition: stands?.condition ?? (on ? "off" : "run"), switches: stands?.switches ?? {}, keyOffAgain: stands?.keyOffAgain ?? false };
    session = {
      plan: drawn, readings: [seen], skipped: [], accepted: [], again: [], answer: null,
      complaint: `${nameOf(drawn.parts.find((each) => each.id === load))} ${COMPLAINTS[sign]}. ${stateWords(seen, drawn)}`,
    };
    await diagnose();
  } catch (refused) {
    place("measure-problem").textContent = explained(refused);
    place("begin").disabled = false;
  }
}

function isSkipped(reading) {
  return session.skipped.some((each) => same(each, reading)) || session.readings.some((each) => same(each, reading));
}

function same(one, other) {
  return sameEnds(one, other) && one.condition === other.condition && JSON.stringify(one.switches ?? {}) === JSON.stringify(other.switches ?? {});
}

/** Whether the leads are at the same two places, whichever is where. */
function sameEnds(one, other) {
  const ends = (each) => [each.red, each.black ?? "earth"].sort().join(" ");
  return ends(one) === ends(other);
}

const KEY = {
  off: t("key-off"), accessory: t("key-at-accessory"), run: t("key-on-engine-stopped"),
  crank: t("crank-the-engine-while-you"), running: t("engine-running"),
};

/** How the car stands: the key, and free switches that are not as drawn. */
function stateWords(reading, drawn) {
  const key = reading.keyOffAgain ? t("key-on-then-off-again") : (KEY[reading.condition] ?? reading.condition);
  const switches = Object.entries(reading.switches ?? {}).map(([id, position]) => `${nameOf(drawn.parts.find((part) => part.id === id)) || id}: ${position}.`);
  return [key, ...switches].join(" ");
}

const CONTACTS = { closed: t("close-the-points"), open: t("open-the-points") };

function showReading(reading) {
  if (!reading) {
    showEnd(t("no-more-points"), t("there-is-no-other-point"));
    return;
  }
  const ohms = reading.quantity === "ohms";
  setStep(ohms ? "off" : reading.condition);
  Object.entries(reading.switches ?? {}).forEach(([id, position]) => setSwitch(id, position));
  const ids = [reading.red, reading.black].filter((end) => end && end !== "earth").map((end) => end.split(".")[0]);
  select(ids[0]);
  light(ids);
  const field = element("input", { id: "reading", inputmode: "decimal", autocomplete: "off", enterkeyhint: "done" });
  const problem = element("p", { className: "problem", id: "reading-problem", role: "alert" });
  const form = element(
    "form",
    {
      className: "reading",
      noValidate: true,
      "data-red": reading.red,
      "data-black": reading.black ?? "earth",
      "data-condition": reading.condition ?? "",
      "data-quantity": reading.quantity,
      "data-switches": JSON.stringify(reading.switches ?? {}),
      submit: (event) => {
        event.preventDefault();
        take(reading, field, problem);
      },
    },
    element("label", { for: "reading" }, ohms ? t("the-meter-shows-ohm") : t("the-meter-shows-v")),
    field,
    element("button", { type: "submit", className: "main" }, t("next")),
  );
  fill(panel(), 
    // What was seen is the first of the readings, but none of the meter.
    element("h2", { tabIndex: -1 }, t("reading", { readings: session.readings.length })),
    element("p", { className: "assumed" }, t("seen", { complaint: session.complaint })),
    ...cautions(reading),
    element("p", {}, ohms ? t("battery-disconnected-earthed-clamp-first") : t("meter-on-volts", { how: `${stateWords(reading, session.plan)} ${CONTACTS[reading.contacts] ?? ""}`.trim() })),
    sameEnds(session.readings[session.readings.length - 1], reading) ? element("p", {}, element("strong", {}, t("leave-the-leads-where-they")), t("only-the-key-or-a")) : null,
    lead("red", t("red-lead"), reading.red),
    lead("black", t("black-lead"), reading.black ?? "earth"),
    form,
    problem,
    element(
      "p",
      { className: "buttons" },
      ohms ? button(t("over-range"), () => record(reading, undefined), { className: "small" }) : null,
      button(t("i-cannot-reach-this-point"), () => skip(reading), { className: "small" }),
      button(t("back"), back, { className: "small" }),
      button(t("stop"), stop, { className: "small" }),
    ),
    outcomes(reading),
    suspects(),
  );
  field.focus({ preventScroll: matchMedia("(max-width: 999px)").matches });
  say(t("reading-at", { number: session.readings.length, red: endName(reading.red), black: endName(reading.black ?? "earth") }));
}

function cautions(reading) {
  const said = [];
  if (reading.condition === "crank") {
    said.push(t("make-sure-that-the-engine"));
  }
  if (reading.condition === "running") {
    said.push(t("keep-hands-leads-and-sleeves"));
  }
  const parts = [reading.red, reading.black ?? ""].map((end) => session.plan.parts.find((part) => part.id === end.split(".")[0])?.kind);
  if (parts.includes("coil")) {
    said.push(t("the-coil-makes-enough-voltage"));
  }
  if (parts.includes("ballast")) {
    said.push(t("the-ballast-is-hot-with"));
  }
  return said.length === 0 ? [] : [element("p", { className: "problem" }, `▲ ${said.join(" ")}`)];
}

/** What the meter may show, and what that means. */
function outcomes(reading) {
  const unit = reading.quantity === "ohms" ? "Ω" : "V";
  const rows = (reading.outcomes ?? []).map((each) => [
    each.open ? t("over-range") : fine(each.lowest) === fine(each.highest) ? `${fine(each.lowest)} ${unit}` : t("from-to", { from: fine(each.lowest), to: `${fine(each.highest)} ${unit}` }),
    each.meaning.text,
  ]);
  return rows.length === 0
    ? null
    : element("details", {}, element("summary", {}, t("what-it-may-show")), wide(t("what-it-may-show"), table(t("what-it-may-show"), [[t("the-meter-shows"), false], [t("what-it-means"), false]], rows)));
}

/** Where a lead goes: label, terminal, and the wires that end there. */
function lead(colour, name, end) {
  const wires = session.plan.wires.filter((wire) => wire.from === end || wire.to === end);
  const where = wires.map((wire) => placeOf(wire)).find(Boolean);
  return element(
    "div",
    { className: `lead ${colour}` },
    element("span", { className: "dot", "aria-hidden": "true" }),
    element(
      "div",
      {},
      element("strong", {}, `${name}: ${end === "earth" ? t("clean-metal") : endName(end)}`),
      element(
        "small",
        {},
        ...wires.slice(0, 3).flatMap((wire) => [element("br"), chip(colours(wire.colour)), ` ${wire.id}${wire.colour ? ` ${colourWords(wire.colour)}` : ""}${wire.size ? `, ${wire.size.replace("mm2", "mm²")}` : ""}`]),
        where ? t("in-the", { place: where }) : "",
      ),
    ),
  );
}

/** Where a wire runs, as its row says; a plan has a place for every wire, of which most are assumed. */
function placeOf(wire) {
  return bench.car.wires.find((row) => row.no === wire.id)?.place?.replace("-", " ");
}

function take(reading, field, problem) {
  const text = field.value.trim().replace(",", ".").replace(/\s*(v|volts?|ohms?|Ω)$/i, "");
  const value = Number(text);
  if (text === "" || !Number.isFinite(value)) {
    problem.textContent = t("enter-the-figure-on-the");
    field.setAttribute("aria-invalid", "true");
    field.setAttribute("aria-describedby", problem.id);
    field.focus();
    return;
  }
  record(reading, value);
}

function record(reading, value) {
  const ohms = reading.quantity === "ohms";
  const measured = { red: reading.red, black: reading.black ?? "earth", ...(ohms ? {} : { condition: reading.condition }) };
  if (reading.contacts && reading.contacts !== "either") {
    measured.contacts = reading.contacts;
  }
  if (reading.keyOffAgain) {
    measured.keyOffAgain = true;
  }
  if (Object.keys(reading.switches ?? {}).length > 0) {
    measured.switches = reading.switches;
  }
  if (!ohms) {
    measured.voltageV = value;
  } else if (value === undefined) {
    measured.open = true;
  } else {
    measured.resistanceOhm = Math.max(0, value);
  }
  session.readings.push(measured);
  diagnose();
}

function skip(reading) {
  session.skipped.push(reading);
  if (session.answer && session.answer.nextReadings.every(isSkipped)) {
    diagnose();
  } else if (session.answer) {
    showAnswer();
  } else {
    show();
  }
}

function back() {
  session.readings.pop();
  session.skipped = [];
  if (session.readings.length === 0) {
    stop();
  } else {
    diagnose();
  }
}

function stop() {
  aborter?.abort();
  session = null;
  light([]);
  show();
}

async function diagnose() {
  const mine = session;
  aborter = new AbortController();
  const bar = element("progress", { "aria-label": t("comparing-with-what-each-fault") });
  fill(panel(), 
    element("h2", { tabIndex: -1 }, t("comparing")),
    element("p", {}, t("each-possible-fault-is-tried")),
    element("p", {}, bar),
    element("p", {}, button(t("stop"), stop)),
    suspects(),
  );
  try {
    const answer = await postSlow("/v1/plans/diagnosis", { plan: mine.plan, readings: mine.readings, outOfReach: outOfReach() }, ({ done, of }) => {
      bar.max = of ?? 1;
      bar.value = Math.min(done ?? 0, of ?? 1);
    }, aborter.signal);
    if (mine === session) {
      session.before = session.answer ? candidates().length : Infinity;
      session.answer = answer.result;
      showAnswer();
    }
  } catch (refused) {
    if (refused.name === "AbortError" || mine !== session) {
      return;
    }
    mine.readings.pop();
    fill(panel(), element("p", { className: "problem" }, explained(refused)), element("p", { className: "buttons" }, button(t("measure-again"), () => (session.answer ? showAnswer() : stop())), button(t("stop"), stop)));
  }
}

function candidates() {
  const all = (session?.answer?.explanations ?? []).flatMap((each) => each.candidates.map((candidate) => ({ ...candidate, explains: each.explains })));
  // Something is complained of: that nothing is wrong is no suspicion.
  return all.filter((each) => each.faults.length > 0).sort((one, other) => other.probability - one.probability);
}

/** The ends of what was skipped, but for the chassis and places that were measured at. */
function outOfReach() {
  const reached = new Set(session.readings.flatMap((each) => [each.red, each.black]));
  return [...new Set(session.skipped.flatMap((each) => [each.red, each.black ?? "earth"]))].filter((end) => end !== "earth" && !reached.has(end));
}

function showAnswer() {
  const { verdict, certainty, nextReadings, doubts } = session.answer;
  const doubt = doubts.find((each) => !session.accepted.includes(each.question.text));
  const next = nextReadings.find((each) => !isSkipped(each));
  const first = candidates()[0];
  if (doubt) {
    showDoubt(doubt);
  } else if (certainty === "confirmed" || certainty === "not-confirmable") {
    showEnd(verdict === "plan-consistent" ? t("your-readings-are-those-of") : t("what-to-repair"), verdict === "plan-consistent" ? session.answer.summary.map((each) => each.text).join(" ") : first.description.text, verdict === "plan-consistent" ? undefined : first);
  } else if (next) {
    showReading(next);
  } else if (verdict === "unexplained" || verdict === "check-readings") {
    showEnd(t("none-of-these"), t("nothing-that-was-tried-explains"));
  } else if (verdict === "plan-consistent") {
    showEnd(t("your-readings-are-those-of"), t("the-fault-does-not-show"));
  } else {
    showReading(undefined);
  }
}

/** A reading may be a slip: that is asked before anything is accused. */
function showDoubt(doubt) {
  const taken = doubt.readings.map((index) => session.readings[index]);
  light(taken.flatMap((each) => [each.red, each.black]).filter((end) => end && end !== "earth").map((end) => end.split(".")[0]));
  const corrected = doubt.corrected || Object.keys(doubt.switches).length > 0;
  const correct = () => {
    doubt.readings.forEach((index, place) => {
      const reading = session.readings[index];
      session.readings[index] = {
        ...reading,
        ...(place === 0 && doubt.corrected ? doubt.corrected : {}),
        ...(Object.keys(doubt.switches).length > 0 ? { switches: { ...(reading.switches ?? {}), ...doubt.switches } } : {}),
      };
    });
    diagnose();
  };
  const again = () => {
    if (taken.some((each) => each.sign)) {
      stop();
      return;
    }
    session.readings = session.readings.filter((_, index) => !doubt.readings.includes(index));
    session.again = [...taken.map((each) => ({ ...each, quantity: each.voltageV === undefined ? "ohms" : "volts", voltageV: undefined, resistanceOhm: undefined, open: undefined })), ...session.again];
    session.answer = null;
    show();
  };
  fill(panel(),
    element("h2", { tabIndex: -1, id: "doubt" }, t("one-question-first")),
    element("p", { className: "panel" }, doubt.question.text),
    element(
      "p",
      { className: "buttons" },
      corrected ? button(t("yes-correct-it"), correct, { className: "main" }) : null,
      button(t("measure-again"), again, corrected ? {} : { className: "main" }),
      button(t("no-it-is-right"), () => {
        session.accepted.push(doubt.question.text);
        showAnswer();
      }),
      button(t("stop"), stop, { className: "small" }),
    ),
    suspects(),
  );
  place("doubt").focus();
  say(doubt.question.text);
}

function showEnd(title, text, suspect) {
  if (suspect) {
    light(suspect.faults.flatMap((fault) => fault.ids));
    select(suspect.faults[0].ids[0]);
  }
  fill(panel(), 
    element("h2", { tabIndex: -1, id: "outcome" }, title),
    element("p", { className: "panel" }, text),
    ...(suspect ? suspect.faults.flatMap((fault) => fault.ids).map(whereabouts) : []),
    suspect ? element("p", {}, t("certainty", { percent: percent(suspect.probability), unconfirmed: session.answer.certainty === "confirmed" ? 0 : 1, readings: session.readings.length })) : null,
    element("p", { className: "buttons" }, button(t("back"), back), button(t("begin-again"), stop)),
    suspects(),
    readingsTaken(),
  );
  place("outcome").focus();
  say(`${title}: ${text}`);
}

/** Where a wire to repair runs, by what is seen of it; nothing for a part, which has its name. */
function whereabouts(id) {
  const wire = session.plan.wires.find((each) => each.id === id);
  return wire
    ? element(
        "p",
        {},
        element("strong", {}, `${wire.id} `),
        chip(colours(wire.colour)),
        t("whereabouts", { looks: [colourWords(wire.colour), wire.size?.replace("mm2", "mm²")].filter(Boolean).join(", "), from: endName(wire.from), to: endName(wire.to), places: placeOf(wire) ? 1 : 0, place: placeOf(wire) }),
      )
    : null;
}

/** What the session has come to, for the printed sheet; null if nothing was read. */
export function protocol() {
  if (!session?.answer || session.readings.length < 2) {
    return null;
  }
  const first = candidates()[0];
  return element(
    "section",
    { id: "measured" },
    element("h2", {}, t("measured")),
    element("p", {}, t("complaint", { complaint: session.complaint })),
    first ? element("p", {}, t("likeliest", { description: first.description.text, probability: percent(first.probability) })) : element("p", {}, session.answer.summary.map((each) => each.text).join(" ")),
    readingsTaken(),
  );
}

/** What was read, beside what a sound car would have shown. */
function readingsTaken() {
  const rows = (session.answer?.readings ?? []).map((each) => [
    each.part ? nameOf(session.plan.parts.find((part) => part.id === each.part)) : t("from-to", { from: endName(each.red), to: endName(each.black) }), each.condition ?? "", metered(each.measured), metered(each.planned), each.deviates ? t("differs") : t("as-expected"),
  ]);
  return rows.length === 0 ? null : wide(t("your-readings"), table(t("your-readings"), [[t("where"), false], [t("key"), false], [t("measured"), true], [t("expected"), true], ["", false]], rows));
}

function metered(shown) {
  return shown === undefined ? "" : shown.sign ? shown.sign.replaceAll("-", " ") : shown.open ? t("over-range") : shown.voltageV !== undefined ? `${figure(shown.voltageV)} V` : `${fine(shown.resistanceOhm)} Ω`;
}

function percent(share) {
  return share < 0.01 ? t("under-one-percent") : `${Math.round(100 * share)} %`;
}

function suspects() {
  const all = candidates();
  if (all.length === 0) {
    return null;
  }
  return element(
    "section",
    { "aria-label": t("suspects") },
    element("h3", {}, t("count-suspect", { number: all.length })),
    all.length > session.before ? element("p", { id: "more-suspects" }, t("more-than-before-with-the")) : null,
    element(
      "ul",
      { className: "suspects" },
      ...all.slice(0, 8).map((each) =>
        element("li", {}, element("meter", { min: 0, max: 1, value: each.probability, "aria-label": t("likelihood-of", { description: each.description.text }) }), `${percent(each.probability)}: ${each.description.text}`),
      ),
    ),
  );
}
