// The car on the bench: its list, the plan that the service makes of it, and how it is solved in the position of key and
// switches that is shown. Whoever shows something listens here. An answer that is late never replaces a newer one.

import { t } from "./text.js";
import * as list from "./list.js";
import { explained, planOfList, postSlow } from "./service.js";
import { longer, view, viewsBySwitches } from "./views.js";

const CHECK_AFTER_MS = 350;
/** Where the picture is known, what the moves have left is asked for once the hand rests. */
const AFTER_KNOWN_MS = 150;
/** Contact points stand open or closed, as a backfeed needs them. */
const POINTS = "contact-breaker";

/** What there is; nobody but this file writes to it. */
export const bench = {
  car: null,
  /** The answer of the conversion: plan, assumptions, questions. */
  conversion: null,
  /** Line of the text that was sent -> { table, index }. */
  places: new Map(),
  step: "run",
  /** Positions of free switches that were moved, by id. */
  switches: {},
  /** How the car stands, as the service answered: picture and figures of all steps. */
  view: null,
  /** The figures of it. */
  solution: null,
  /** Parts that are otherwise than key and switches alone would have them: a relay may have stayed in. */
  held: [],
  /** Whether what is shown is still that of an earlier position. */
  looking: false,
  /** Number of the sheet of a large car that is shown; 0 for the whole. */
  sheet: 0,
  /** The solution before the last change of the car. */
  earlier: null,
  review: null,
  backfeed: null,
  checking: false,
  checkProblem: null,
  progress: null,
  problem: null,
  errors: [],
  selected: null,
};

const listeners = new Map();
let aborter = new AbortController();
let checkTimer;
/** Numbers of the latest change of the car, and of the latest look at it. */
let edits = 0;
let looks = 0;
let lookAborter = new AbortController();
let past = [];
let future = [];
let views = viewsBySwitches(askView);
/** Where the switches stood before the moves, and what was done since. */
let trail = { switches: {}, moves: [] };
/** Of what position of the switches and which sheet the view shown is. */
let shown = { switches: null, sheet: 0 };

/** Calls back whenever one of these changes: car, plan, solved, state, checked, progress, selected. */
export function when(names, listener) {
  names.split(" ").forEach((name) => listeners.set(name, [...(listeners.get(name) ?? []), listener]));
}

function changed(name) {
  (listeners.get(name) ?? []).forEach((listener) => listener());
}

/** What waits until the frame that is due has been drawn; each once. */
const waiting = new Set();
/** A page that is not looked at draws no frames. */
const WITHOUT_FRAME_MS = 120;

/** Does something once the next frame has been drawn: tables beside a picture may come a moment after it. */
export function afterFrame(work) {
  waiting.add(work);
  if (waiting.size === 1) {
    const now = () => {
      clearTimeout(fallback);
      const all = [...waiting];
      waiting.clear();
      all.forEach((each) => each());
    };
    const fallback = setTimeout(now, WITHOUT_FRAME_MS);
    requestAnimationFrame(() => setTimeout(() => waiting.size > 0 && now()));
  }
}

/** As when, but after the next frame, and once however often it was called for. */
export function whenDrawn(names, listener) {
  when(names, () => afterFrame(listener));
}

/** The plan with the switches as they are shown. */
export function plan(switches = bench.switches) {
  const drawn = bench.conversion?.result.plan;
  return drawn && { ...drawn, parts: drawn.parts.map((part) => (part.id in switches ? setTo(part, switches[part.id]) : part)) };
}

function setTo(part, position) {
  return part.kind === POINTS ? { ...part, closedWhenStopped: position === "closed" } : { ...part, position };
}

/** The switches that the driver is free to move. */
export function freeSwitches() {
  return (plan()?.parts ?? []).filter((part) => part.kind === "switch" && !part.positionByCondition);
}

export function positionOf(part) {
  return bench.switches[part.id] ?? part.position ?? part.positions[0].name;
}

/** The figures of the step shown; undefined while there are none. */
export function figures(solution = bench.solution) {
  return solution?.result.steps.find((each) => each.step === bench.step);
}

/** Puts another car on the bench. */
export function open(car) {
  past = [];
  future = [];
  bench.step = "run";
  bench.switches = {};
  bench.sheet = 0;
  bench.earlier = null;
  bench.view = null;
  bench.solution = null;
  bench.conversion = null;
  bench.selected = null;
  put(car);
}

/** Changes the car; can be taken back. */
export function change(car) {
  if (JSON.stringify(car) === JSON.stringify(bench.car)) {
    return;
  }
  past = [...past.slice(-199), bench.car];
  future = [];
  bench.earlier = bench.solution;
  put(car);
}

export const canUndo = () => past.length > 0;
export const canRedo = () => future.length > 0;

export function undo() {
  if (canUndo()) {
    future = [bench.car, ...future];
    bench.earlier = bench.solution;
    put(past.pop());
  }
}

export function redo() {
  if (canRedo()) {
    past = [...past, bench.car];
    bench.earlier = bench.solution;
    put(future.shift());
  }
}

export function select(id) {
  if (bench.selected !== id) {
    bench.selected = id;
    changed("selected");
  }
}

export function setStep(step) {
  const before = bench.step;
  bench.step = step;
  moved(before, `key:${step}`);
}

/** Moves a switch; the wiring stays as it is. */
export function setSwitch(id, position) {
  bench.switches = { ...bench.switches, [id]: position };
  bench.earlier = null;
  moved(bench.step, `${id}:${position}`);
}

/** Makes moves with the car as drawn; they are done when it is shown as they leave it. */
export async function setMoves(moves) {
  const positions = moves.map((each) => each.split(":"));
  const kinds = new Map(plan().parts.map((part) => [part.id, part.kind]));
  stand({ step: positions.findLast(([id]) => id === "key")?.[1] ?? "off", switches: Object.fromEntries(positions.filter(([id]) => id !== "key" && ["switch", POINTS].includes(kinds.get(id)))) });
  trail = { switches: {}, moves };
  await look("state");
}

/** How key and switches stand. */
export const standing = () => ({ step: bench.step, switches: bench.switches });

/** Lets key and switches stand so, whatever was done before. */
export function setStanding(positions) {
  stand(positions);
  trail = { switches: bench.switches, moves: [] };
  turned();
}

function stand({ step, switches }) {
  bench.step = step;
  bench.switches = switches;
  bench.earlier = null;
}

function moved(step, move) {
  trail = longer(trail.moves.length > 0 ? trail : { ...trail, moves: [`key:${step}`] }, move);
  turned();
}

function turned() {
  const mine = edits;
  look("state").catch((refused) => refuse(mine, refused));
}

/** Shows another sheet of a large car. */
export function setSheet(number) {
  bench.sheet = number;
  turned();
}

/**
 * Shows the car as key and switches stand: at once where that is known. One answer then says what the moves have left, a relay
 * that stays in included.
 *
 * @param {string} event what to tell those who show something
 */
async function look(event) {
  const mine = ++looks;
  lookAborter.abort();
  lookAborter = new AbortController();
  if (!bench.conversion) {
    changed(event);
    return;
  }
  const { switches, sheet } = bench;
  const known = views.known(switches, sheet);
  // The picture of another step of the key lies in the one that is shown.
  bench.looking = !known && !(shown.switches === switches && shown.sheet === sheet);
  bench.held = [];
  if (known) {
    settle(known);
  }
  if (known || event !== "solved") {
    changed(event);
  }
  if (known && trail.moves.length === 0) {
    return;
  }
  if (known) {
    await new Promise((done) => setTimeout(done, AFTER_KNOWN_MS));
    if (mine !== looks) {
      return;
    }
  }
  try {
    const asked = trail.moves.length === 0 ? views.of(switches, sheet) : view(plan(trail.switches), trail.moves, sheet, lookAborter.signal);
    const answer = await asked;
    if (mine !== looks) {
      return;
    }
    if (answer.held.length === 0) {
      views.keep(switches, sheet, answer);
      trail = { switches, moves: [] };
      if (known) {
        return;
      }
    }
    bench.looking = false;
    bench.held = answer.held;
    settle(answer);
    changed(event);
  } catch (refused) {
    if (refused.status === 422 && sheet > 0 && mine === looks) {
      // The car has fewer sheets than before.
      bench.sheet = 0;
      await look(event);
    } else if (refused.name !== "AbortError" && mine === looks) {
      bench.looking = false;
      throw refused;
    }
  }
}

function askView(switches, sheet) {
  return view(plan(switches), [], sheet, aborter.signal);
}

/** How the car stands with the switches so, asked for ahead. */
export function viewAhead(switches) {
  return views.of(switches, bench.sheet);
}

/** The plan and what to ask of a picture or of figures, so that they are what is shown. */
export function asShown() {
  return bench.held.length > 0
    ? { plan: plan(trail.switches), query: `after=${trail.moves.map(encodeURIComponent).join(",")}` }
    : { plan: plan(), query: `step=${encodeURIComponent(bench.step)}` };
}

function put(car) {
  bench.car = car;
  // What it asks is on its way while the page is brought up to date.
  refresh();
  changed("car");
}

async function refresh() {
  const mine = ++edits;
  aborter.abort();
  aborter = new AbortController();
  // Nor is a picture of the car as it was kept as one of the car as it is.
  looks++;
  lookAborter.abort();
  clearTimeout(checkTimer);
  views = viewsBySwitches(askView);
  shown = { switches: null, sheet: 0 };
  bench.held = [];
  bench.review = null;
  bench.backfeed = null;
  bench.checking = false;
  if (bench.car.wires.every((wire) => !wire.from || !wire.to)) {
    Object.assign(bench, { conversion: null, view: null, solution: null, problem: null, errors: [] });
    ["plan", "solved", "checked"].forEach(changed);
    return;
  }
  const { text, places } = list.write(bench.car);
  try {
    const conversion = await planOfList(text, undefined, aborter.signal);
    if (mine !== edits) {
      return;
    }
    Object.assign(bench, { conversion, places, problem: null, errors: [] });
    const ids = new Set(conversion.result.plan.parts.map((part) => part.id));
    bench.switches = Object.fromEntries(Object.entries(bench.switches).filter(([id]) => ids.has(id)));
    trail = { switches: bench.switches, moves: [] };
    changed("plan");
    await look("solved");
    changed("checked");
    // The checks take the service's time, which the picture needs first.
    if (mine === edits) {
      checkTimer = setTimeout(check, CHECK_AFTER_MS);
    }
  } catch (refused) {
    refuse(mine, refused, places);
  }
}

function refuse(mine, refused, places = bench.places) {
  if (refused.name === "AbortError" || mine !== edits) {
    return;
  }
  bench.places = places;
  const cells = explained(refused) && refused.errors.map(inCell);
  bench.problem = cells.length > 0 && cells.every(Boolean) ? cells.join(" ") : refused.message;
  bench.errors = refused.errors;
  ["plan", "solved", "checked"].forEach(changed);
}

/** An error of the list in the words of the grid; null if it is about no wire of it. */
function inCell(error) {
  const at = rowOf(error);
  const wire = at?.table === "wires" ? bench.car.wires[at.index] : undefined;
  const { column, accepted } = error;
  return wire ? t("cell-wrong", { wire: wire.no, cells: wire[column] ? 1 : 0, column, value: wire[column], accepted }) : null;
}

/** The row of the car that an error is about: { table, index }; undefined if it names none. */
export function rowOf(error) {
  return bench.places.get(error.row);
}

function settle(view) {
  bench.view = view;
  bench.solution = { result: view.figures };
  shown = { switches: bench.switches, sheet: bench.sheet };
  const steps = view.figures.steps.map((each) => each.step);
  if (!steps.includes(bench.step)) {
    bench.step = steps.includes("run") ? "run" : steps[0];
  }
}

/** The positions of the switches one move away from those shown. */
export function oneMoveAway() {
  return freeSwitches().flatMap((part) =>
    part.positions.filter((position) => position.name !== positionOf(part)).map((position) => ({ ...bench.switches, [part.id]: position.name })),
  );
}

async function check() {
  const drawn = plan({});
  const signal = aborter.signal;
  bench.checking = true;
  bench.progress = null;
  changed("checked");
  const same = bench.conversion;
  const report = (progress) => {
    if (same === bench.conversion && bench.checking) {
      bench.progress = progress;
      changed("progress");
    }
  };
  try {
    const [review, backfeed] = await Promise.all([
      postSlow("/v1/plans/review", drawn, report, signal),
      postSlow("/v1/plans/backfeed", drawn, () => undefined, signal),
    ]);
    if (same === bench.conversion) {
      Object.assign(bench, { review, backfeed, checking: false, checkProblem: null });
      changed("checked");
    }
  } catch (refused) {
    if (refused.name !== "AbortError" && same === bench.conversion) {
      Object.assign(bench, { checking: false, checkProblem: explained(refused) });
      changed("checked");
    }
  }
}

/** Stops the checks that are running. */
export function stopChecks() {
  aborter.abort();
  aborter = new AbortController();
  bench.checking = false;
  bench.checkProblem = t("stopped-change-something-or-check");
  changed("checked");
}

export function checkAgain() {
  check();
}
