// The car on the bench: its list, the plan that the service makes of it, and how it is solved in the position of key and
// switches that is shown. Whoever shows something listens here. An answer that is late never replaces a newer one.

import { t } from "./text.js";
import * as list from "./list.js";
import { explained, planOfList, postJson, postSlow } from "./service.js";

const CHECK_AFTER_MS = 350;
const REMEMBERED_SETTINGS = 60;
const MOST_MOVES = 60;

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
  /** What was done with key and switches since the car was changed, as the service reads moves. */
  moves: [],
  /** The step shown as the moves have left it, where that differs from the plan as drawn: a relay may have stayed in. */
  held: null,
  /** The solution for these switches. */
  solution: null,
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
let turn = 0;
let aborter = new AbortController();
let checkTimer;
/** Until the picture of the car as it is now is drawn. */
let drawing = Promise.resolve();
/** Which bringing up to date was the latest. */
let refreshed = 0;
let past = [];
let future = [];
/** Solutions of the plan as it stands, by the position of the switches: promises, and what they came to. */
let solved = new Map();
let answers = new Map();

/** Calls back whenever one of these changes: car, plan, solved, state, checked, selected. */
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
  return drawn && { ...drawn, parts: drawn.parts.map((part) => (part.id in switches ? { ...part, position: switches[part.id] } : part)) };
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
  if (solution === bench.solution && bench.held?.step === bench.step) {
    return bench.held;
  }
  return solution?.result.steps.find((each) => each.step === bench.step);
}

/** Puts another car on the bench. */
export function open(car) {
  past = [];
  future = [];
  bench.step = "run";
  bench.switches = {};
  bench.earlier = null;
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
  moved(`key:${step}`);
  bench.step = step;
  changed("state");
  afterFrame(remember);
}

function moved(move) {
  const begun = bench.moves.length > 0 ? bench.moves : [`key:${bench.step}`];
  bench.moves = [...begun, move].slice(-MOST_MOVES);
  bench.held = null;
}

/** Asks what the moves have left; a relay that stays in is in no solution of the switches alone. */
async function remember() {
  const moves = bench.moves;
  try {
    const answer = await postJson(`/v1/plans/solution?after=${moves.map(encodeURIComponent).join(",")}`, plan({}), aborter.signal);
    const left = answer.result.steps.at(-1);
    await solutionFor(bench.switches);
    if (moves !== bench.moves || left.step !== bench.step) {
      return;
    }
    const usual = new Map((figures()?.parts ?? []).map((row) => [row.part, row.state]));
    if (left.parts.some((row) => row.state !== usual.get(row.part))) {
      bench.held = left;
      changed("held");
    }
  } catch (refused) {
    if (refused.name !== "AbortError" && moves === bench.moves) {
      bench.moves = [];
    }
  }
}

/** Moves a switch; the wiring stays as it is. */
export function setSwitch(id, position) {
  moved(`${id}:${position}`);
  bench.switches = { ...bench.switches, [id]: position };
  bench.earlier = null;
  const mine = ++turn;
  const known = answers.get(keyOf(bench.switches));
  if (known) {
    settle(known);
    changed("state");
  } else {
    changed("state");
    solve(mine).catch((refused) => refuse(mine, refused));
  }
  afterFrame(remember);
}

function put(car) {
  bench.car = car;
  // What it asks is on its way while the page is brought up to date.
  refresh();
  changed("car");
}

async function refresh() {
  const mine = ++turn;
  refreshed = mine;
  aborter.abort();
  aborter = new AbortController();
  clearTimeout(checkTimer);
  solved = new Map();
  answers = new Map();
  bench.moves = [];
  bench.held = null;
  bench.review = null;
  bench.backfeed = null;
  bench.checking = false;
  if (bench.car.wires.every((wire) => !wire.from || !wire.to)) {
    Object.assign(bench, { conversion: null, solution: null, problem: null, errors: [] });
    ["plan", "solved", "checked"].forEach(changed);
    return;
  }
  const { text, places } = list.write(bench.car);
  try {
    const conversion = await planOfList(text, undefined, aborter.signal);
    if (mine !== turn) {
      return;
    }
    Object.assign(bench, { conversion, places, problem: null, errors: [] });
    const ids = new Set(conversion.result.plan.parts.map((part) => part.id));
    bench.switches = Object.fromEntries(Object.entries(bench.switches).filter(([id]) => ids.has(id)));
    changed("plan");
    await solve(mine);
    changed("checked");
    // The checks take the service's time, which the picture needs first.
    await drawing;
    if (conversion === bench.conversion && mine === refreshed) {
      checkTimer = setTimeout(check, CHECK_AFTER_MS);
    }
  } catch (refused) {
    refuse(mine, refused, places);
  }
}

function refuse(mine, refused, places = bench.places) {
  if (refused.name === "AbortError" || mine !== turn) {
    return;
  }
  bench.places = places;
  const cells = explained(refused) && refused.errors.map(inCell);
  bench.problem = cells.length > 0 && cells.every(Boolean) ? cells.join(" ") : refused.message;
  bench.errors = refused.errors;
  ["plan", "solved", "checked"].forEach(changed);
}

/** Tells what is being drawn: a promise that comes to an end when it is drawn, or cannot be. */
export function drawingUntil(drawn) {
  drawing = drawn;
}

/** An error of the list in the words of the grid; null if it is about no wire of it. */
function inCell(error) {
  const at = rowOf(error);
  const wire = at?.table === "wires" ? bench.car.wires[at.index] : undefined;
  const column = /^\/wires\/\d+\/(\w+)/.exec(error.pointer ?? "")?.[1];
  return wire ? t("cell-wrong", { wire: wire.no, cells: wire[column] ? 1 : 0, column, value: wire[column], accepted: error.accepted }) : null;
}

/** The row of the car that an error is about: { table, index }; undefined if it names none. */
export function rowOf(error) {
  return bench.places.get(Number(/row (\d+)/.exec(error.place ?? "")?.[1]));
}

async function solve(mine) {
  const switches = bench.switches;
  const solution = await solutionFor(switches);
  if (mine !== turn) {
    return;
  }
  settle(solution);
  changed("solved");
}

function settle(solution) {
  bench.solution = solution;
  const steps = solution.result.steps.map((each) => each.step);
  if (!steps.includes(bench.step)) {
    bench.step = steps.includes("run") ? "run" : steps[0];
  }
}

function keyOf(switches) {
  return JSON.stringify(Object.entries(switches).sort());
}

/** The solution with the switches so; a promise, kept, so that a switch one move away can be asked ahead. */
export function solutionFor(switches) {
  const key = keyOf(switches);
  if (!solved.has(key)) {
    if (solved.size >= REMEMBERED_SETTINGS) {
      const oldest = solved.keys().next().value;
      solved.delete(oldest);
      answers.delete(oldest);
    }
    const asked = solved;
    const known = answers;
    const promise = postJson("/v1/plans/solution?full=true", plan(switches), aborter.signal).then(withTerminals);
    promise.then((solution) => asked.has(key) && known.set(key, solution), () => asked.delete(key));
    solved.set(key, promise);
  }
  return solved.get(key);
}

/** The terminals, which stand once in the answer, beside the voltage of their node in each step. */
function withTerminals(solution) {
  const terminals = new Map(solution.result.nodes.map((each) => [each.node, each.terminals]));
  solution.result.steps.forEach((step) => step.nodes.forEach((node) => { node.terminals = terminals.get(node.node); }));
  return solution;
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
