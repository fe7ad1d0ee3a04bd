// Find a fault with a meter: one reading a screen, suspects that shrink, and at the end what to repair.

import { t } from "./text.js";
import { bench, plan, select, setStanding, when } from "./workshop.js";
import { button, element, fill, place, progress, say } from "./elements.js";
import { postJson, postSlow, explained } from "./service.js";
import { nameOf } from "./words.js";
import { light } from "./picture.js";
import { endName } from "./selected.js";
import { askComplaint, SIGNS } from "./complaint.js";
import { cautions, CONTACTS, lead, outcomes, same, sameEnds, stateWords, whereabouts } from "./leads.js";
import { candidates, percent, readingsTaken, suspects } from "./suspects.js";

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
    askComplaint(panel(), begin);
  } else if (!session.answer) {
    showReading(session.again.find((each) => !isSkipped(each)));
  } else {
    showAnswer();
  }
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
      complaint: `${nameOf(drawn.parts.find((each) => each.id === load))} ${SIGNS[sign]}. ${stateWords(seen, drawn)}`,
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

function showReading(reading) {
  if (!reading) {
    showEnd(t("no-more-points"), t("there-is-no-other-point"));
    return;
  }
  const ohms = reading.quantity === "ohms";
  setStanding({ step: ohms ? "off" : reading.condition, switches: reading.switches ?? {} });
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
    ...cautions(reading, session.plan),
    element("p", {}, ohms ? t("battery-disconnected-earthed-clamp-first") : t("meter-on-volts", { how: `${stateWords(reading, session.plan)} ${CONTACTS[reading.contacts] ?? ""}`.trim() })),
    sameEnds(session.readings[session.readings.length - 1], reading) ? element("p", {}, element("strong", {}, t("leave-the-leads-where-they")), t("only-the-key-or-a")) : null,
    lead("red", t("red-lead"), reading.red, session.plan),
    lead("black", t("black-lead"), reading.black ?? "earth", session.plan),
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
    suspects(session.answer, session.before),
  );
  field.focus({ preventScroll: matchMedia("(max-width: 999px)").matches });
  say(t("reading-at", { number: session.readings.length, red: endName(reading.red), black: endName(reading.black ?? "earth") }));
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
  const running = progress(t("comparing-with-what-each-fault"), stop);
  fill(panel(),
    element("h2", { tabIndex: -1 }, t("comparing")),
    element("p", {}, t("each-possible-fault-is-tried")),
    running.shown,
    suspects(session.answer, session.before),
  );
  try {
    const answer = await postSlow("/v1/plans/diagnosis", { plan: mine.plan, readings: mine.readings, outOfReach: outOfReach() }, running.report, aborter.signal);
    if (mine === session) {
      session.before = session.answer ? candidates(session.answer).length : Infinity;
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

/** The ends of what was skipped, but for the chassis and places that were measured at. */
function outOfReach() {
  const reached = new Set(session.readings.flatMap((each) => [each.red, each.black]));
  return [...new Set(session.skipped.flatMap((each) => [each.red, each.black ?? "earth"]))].filter((end) => end !== "earth" && !reached.has(end));
}

function showAnswer() {
  const { verdict, certainty, nextReadings, doubts } = session.answer;
  const doubt = doubts.find((each) => !session.accepted.includes(each.question.text));
  const next = nextReadings.find((each) => !isSkipped(each));
  const first = candidates(session.answer)[0];
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
    suspects(session.answer, session.before),
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
    ...(suspect ? suspect.faults.flatMap((fault) => fault.ids).map((id) => whereabouts(id, session.plan)) : []),
    suspect ? element("p", {}, t("certainty", { percent: percent(suspect.probability), unconfirmed: session.answer.certainty === "confirmed" ? 0 : 1, readings: session.readings.length })) : null,
    element("p", { className: "buttons" }, button(t("back"), back), button(t("begin-again"), stop)),
    suspects(session.answer, session.before),
    readingsTaken(session.answer, session.plan),
  );
  place("outcome").focus();
  say(`${title}: ${text}`);
}

/** What the session has come to, for the printed sheet; null if nothing was read. */
export function protocol() {
  if (!session?.answer || session.readings.length < 2) {
    return null;
  }
  const first = candidates(session.answer)[0];
  return element(
    "section",
    { id: "measured" },
    element("h2", {}, t("measured")),
    element("p", {}, t("complaint", { complaint: session.complaint })),
    first ? element("p", {}, t("likeliest", { description: first.description.text, probability: percent(first.probability) })) : element("p", {}, session.answer.summary.map((each) => each.text).join(" ")),
    readingsTaken(session.answer, session.plan),
  );
}
