// The picture: fits its frame, is moved and zoomed, and shows what is selected.

import { t } from "./text.js";
import { bench, drawingUntil, figures, freeSwitches, oneMoveAway, plan, select, setStep, when } from "./workshop.js";
import { chip, element, place } from "./elements.js";
import { letter, symbolsOf } from "./labels.js";
import { become } from "./become.js";
import { explained, postJson, postText } from "./service.js";
import { colourWords, colours, does, figure, nameOf, state } from "./words.js";

const READABLE_PX = 12;
/** A frame as wide as this shows the whole picture first. */
const WIDE_PX = 480;
/** Some browsers do not say when they have nothing else to do. */
const whenIdle = window.requestIdleCallback ?? ((work) => setTimeout(work, 50));
/** So long after the last change pictures are asked for ahead. */
const AHEAD_AFTER_MS = 300;

/** Pictures of the plan as it stands, by the position of the switches; each holds all steps of the key. */
let drawn = new Map();
let aborter = new AbortController();
/** The answer that is shown. */
let shown = null;
/** Number of the sheet of a large car that is shown; 0 for the whole. */
let sheet = 0;
/** Moves after which the car is shown, one after the other; null while it is shown as key and switches stand. */
let played = null;
let turn = 0;
let smallestText = 9;
/** Of the frame: its width and height inside. */
let frame = { width: 0, height: 0 };
/** Where the symbols of the picture stand. */
let symbols = [];
/** Which plan the picture on the page is of, and which sheet: while both stay, nothing in it moves. */
let layout = null;
/** What of the picture is shown, in its own units. */
let view = null;
/** Whether the reader has moved or zoomed it. */
let moved = false;
let size = null;
let lit = new Set();
let lettering = 0;
let quiet = 0;

/** Keeps the picture up to date. */
export function start() {
  when("solved", () => {
    drawingUntil(redraw());
    showSelected();
  });
  when("car", () => clearTimeout(quiet));
  when("plan", () => {
    aborter.abort();
    aborter = new AbortController();
    drawn = new Map();
    // Drawn while the figures are still being calculated.
    if (bench.conversion) {
      picture(bench.switches).catch(() => undefined);
    }
  });
  when("state", () => {
    played = null;
    if (bench.solution) {
      redraw();
      showSelected();
    }
  });
  when("held", () => play(bench.moves));
  when("selected held", showSelected);
  when("checked", mark);
  place("sheet-of").addEventListener("change", (event) => showSheet(Number(event.target.value)));
  const diagram = place("diagram");
  place("zoom-in").addEventListener("click", () => zoom(0.7));
  place("zoom-out").addEventListener("click", () => zoom(1.4));
  place("zoom-fit").addEventListener("click", () => {
    view = null;
    moved = false;
    fit(true);
  });
  diagram.addEventListener("wheel", wheel, { passive: false });
  diagram.addEventListener("keydown", keyed);
  diagram.addEventListener("click", clicked);
  dragging(diagram);
  new ResizeObserver(() => {
    frame = { width: diagram.clientWidth, height: diagram.clientHeight };
    // What the reader has chosen to see stays.
    view = moved ? view : null;
    fit(false);
  }).observe(diagram);
}

/** The picture with the switches so, with all steps in it; drawn once. */
function picture(switches) {
  const key = JSON.stringify([sheet, played, ...Object.entries(switches).sort()]);
  if (!drawn.has(key)) {
    const asked = drawn;
    const after = played ? `&after=${played.map(encodeURIComponent).join(",")}` : "";
    const promise = postJson(`/v1/plans/diagram?marks=none&legend=none${onSheet()}${after}`, plan(played ? {} : switches), aborter.signal).then((answer) => answer.result);
    promise.catch(() => asked.delete(key));
    drawn.set(key, promise);
  }
  return drawn.get(key);
}

async function redraw() {
  const mine = ++turn;
  const diagram = place("diagram");
  place("picture").hidden = !bench.solution;
  place("waiting").hidden = Boolean(bench.solution);
  if (!bench.solution) {
    empty();
    return;
  }
  showStep();
  diagram.setAttribute("aria-busy", "true");
  try {
    const answer = await picture(bench.switches);
    if (mine !== turn) {
      return;
    }
    if (answer !== shown) {
      put(answer);
    }
    showStep();
    ahead();
  } catch (refused) {
    if (refused.status === 422 && sheet > 0 && mine === turn) {
      // The car has fewer sheets than before.
      showSheet(0);
    } else if (refused.name !== "AbortError" && mine === turn) {
      empty(element("p", { className: "problem" }, explained(refused)));
    }
  } finally {
    if (mine === turn) {
      diagram.setAttribute("aria-busy", "false");
    }
  }
}

function empty(...instead) {
  shown = layout = null;
  place("diagram").replaceChildren(...instead);
}

/** The picture of an answer, read but not on the page; read once. */
function imageOf(answer) {
  if (!answer.image) {
    answer.image = document.importNode(new DOMParser().parseFromString(answer.svg, "image/svg+xml").documentElement, true);
    answer.image.removeAttribute("width");
    answer.image.removeAttribute("height");
    answer.image.setAttribute("preserveAspectRatio", "xMidYMid meet");
    widenTargets(answer.image);
  }
  return answer.image;
}

/** Of one plan all pictures have one layout, and a small change moves little: the one on the page becomes the other. */
function put(answer) {
  const diagram = place("diagram");
  const before = size && `${size.width} ${size.height}`;
  const old = diagram.querySelector("svg");
  size = { width: answer.widthPx, height: answer.heightPx };
  const as = `${size.width} ${size.height}`;
  const same = layout && layout.of === drawn && layout.sheet === sheet;
  if (old && layout?.sheet === sheet && before === as) {
    become(old, imageOf(answer));
  } else {
    const image = imageOf(answer);
    // It is changed from now on; read again if it is wanted once more.
    answer.image = null;
    diagram.replaceChildren(image);
    smallestText = Math.min(...[...image.querySelectorAll("text[font-size]")].map((text) => Number(text.getAttribute("font-size"))), READABLE_PX);
  }
  if (!same) {
    symbols = [];
    layout = { of: drawn, sheet };
    showSheets(answer);
  }
  shown = answer;
  diagram.dataset.drawn = String(Number(diagram.dataset.drawn ?? 0) + 1);
  if (before !== as) {
    view = null;
    moved = false;
  }
  fit(false);
  mark();
}

function showSheets(answer) {
  place("sheet-of").hidden = answer.sheets.length === 0;
  place("sheet-of").replaceChildren(
    element("option", { value: "0" }, t("the-whole-car")),
    ...answer.sheets.map((each) => element("option", { value: String(each.number), selected: each.number === sheet }, each.title)),
  );
}

function onSheet() {
  return sheet > 0 ? `&sheet=${sheet}` : "";
}

function showSheet(number) {
  sheet = number;
  redraw();
}

/** Turns to the sheet that has a wire or part, if the one shown has it not. */
function turnTo(id) {
  const other = sheet > 0 && id && find(id).length === 0 && shown?.sheets.find((each) => each.wires.includes(id) || each.parts.includes(id));
  if (other) {
    showSheet(other.number);
  }
}

/** Turning the key moves nothing: the picture holds all steps and shows one. */
function showStep() {
  const image = place("diagram").querySelector("svg");
  const step = played ? shown?.step : bench.step;
  const text = shown?.steps.find((each) => each.step === step);
  if (image && text) {
    image.setAttribute("data-step", step);
    image.querySelector("desc").textContent = text.description;
    fit(false);
  }
}

/** Asks for the pictures that the next move of a switch will need, once nobody is typing, and reads them while nothing else is to do. */
function ahead() {
  clearTimeout(quiet);
  quiet = setTimeout(() => {
    if (bench.solution && !played && freeSwitches().length <= 6) {
      [bench.switches, ...oneMoveAway().slice(0, 12)].forEach((switches) =>
        picture(switches).then((answer) => whenIdle(() => bench.conversion && imageOf(answer)), () => undefined),
      );
    }
  }, AHEAD_AFTER_MS);
}

/** A thin line is hard to hit; an unseen wide one above it is not. */
function widenTargets(image) {
  for (const wire of image.querySelectorAll(".dg-wire")) {
    const line = wire.querySelector("path, polyline, line");
    if (line) {
      const target = line.cloneNode(false);
      Object.entries({ class: "target", stroke: "transparent", fill: "none", "stroke-width": "16", "stroke-dasharray": "none" }).forEach(([key, value]) => target.setAttribute(key, value));
      wire.append(target);
    }
  }
}

function fit(whole) {
  const image = place("diagram").querySelector("svg");
  if (frame.width === 0) {
    frame = { width: place("diagram").clientWidth, height: place("diagram").clientHeight };
  }
  if (!image || !size || frame.width === 0) {
    return;
  }
  if (!view) {
    const scale = Math.min(frame.width / size.width, frame.height / size.height);
    const readable = READABLE_PX / smallestText;
    if (whole || frame.width >= WIDE_PX || scale >= readable) {
      view = { x: 0, y: 0, width: size.width, height: size.height };
    } else {
      // On a phone it begins at the battery, large enough to read.
      const at = centreOf(bench.conversion.result.plan.parts.find((part) => part.kind === "battery")?.id) ?? { x: size.width / 2, y: 0 };
      const width = frame.width / readable;
      const height = frame.height / readable;
      view = { x: Math.max(0, Math.min(at.x - width / 2, size.width - width)), y: Math.max(0, at.y - height / 2), width, height };
    }
  }
  const box = `${view.x} ${view.y} ${view.width} ${view.height}`;
  if (image.getAttribute("viewBox") !== box) {
    image.setAttribute("viewBox", box);
  }
  cancelAnimationFrame(lettering);
  lettering = requestAnimationFrame(letterAgain);
}

/** Labels are as large as the reader needs them at this scale. */
function letterAgain() {
  const image = place("diagram").querySelector("svg");
  if (!image || !view || frame.width === 0) {
    return;
  }
  // A picture that is not seen has no places.
  if (symbols.every((each) => each.width === 0)) {
    symbols = symbolsOf(image);
  }
  const found = (bench.review?.result.findings ?? []).filter((each) => each.severity !== "note").map((each) => each.ids[0]);
  const scale = Math.min(frame.width / view.width, frame.height / view.height);
  letter(image, scale, size.width, new Set([bench.selected, ...lit, ...found]), frame.width < WIDE_PX ? "phone" : "wide", symbols);
}

function centreOf(id) {
  const found = id && find(id)[0];
  if (!found) {
    return null;
  }
  const box = found.getBBox();
  const matrix = found.transform.baseVal.consolidate()?.matrix;
  return { x: box.x + box.width / 2 + (matrix?.e ?? 0), y: box.y + box.height / 2 + (matrix?.f ?? 0) };
}

function find(id) {
  const quoted = CSS.escape(id);
  return [...place("diagram").querySelectorAll(`.dg-wire[data-wire="${quoted}"], .dg-symbol[data-part~="${quoted}"]`)];
}

function zoom(factor, at) {
  if (!view) {
    return;
  }
  moved = true;
  const centre = at ?? centreOf(bench.selected) ?? { x: view.x + view.width / 2, y: view.y + view.height / 2 };
  const width = Math.min(Math.max(view.width * factor, 80), size.width * 2);
  const ratio = width / view.width;
  view = { x: centre.x - (centre.x - view.x) * ratio, y: centre.y - (centre.y - view.y) * ratio, width, height: view.height * ratio };
  fit(false);
}

function toPicture(event) {
  const image = place("diagram").querySelector("svg");
  const matrix = image?.getScreenCTM();
  return matrix ? new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse()) : null;
}

function wheel(event) {
  if (event.ctrlKey || event.metaKey) {
    event.preventDefault();
    zoom(event.deltaY > 0 ? 1.15 : 0.87, toPicture(event));
  }
}

const MOVES = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

function keyed(event) {
  const move = MOVES[event.key];
  if (move && view) {
    event.preventDefault();
    moved = true;
    view = { ...view, x: view.x + (move[0] * view.width) / 8, y: view.y + (move[1] * view.height) / 8 };
    fit(false);
  } else if (event.key === "+" || event.key === "-") {
    zoom(event.key === "+" ? 0.8 : 1.25);
  }
}

function dragging(diagram) {
  const fingers = new Map();
  let dragged = false;
  let apart = 0;
  const distance = () => {
    const [one, other] = [...fingers.values()];
    return Math.hypot(one.x - other.x, one.y - other.y);
  };
  diagram.addEventListener("pointerdown", (event) => {
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    dragged = false;
    apart = fingers.size === 2 ? distance() : 0;
  });
  diagram.addEventListener("pointermove", (event) => {
    const from = fingers.get(event.pointerId);
    const image = diagram.querySelector("svg");
    if (!from || !view || !image) {
      return;
    }
    const scale = image.getScreenCTM().a;
    if (fingers.size === 1 && Math.hypot(event.clientX - from.x, event.clientY - from.y) > (dragged ? 0 : 5)) {
      dragged = moved = true;
      view = { ...view, x: view.x - (event.clientX - from.x) / scale, y: view.y - (event.clientY - from.y) / scale };
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      fit(false);
    } else if (fingers.size === 2) {
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      const now = distance();
      if (apart > 0 && now > 0) {
        dragged = true;
        zoom(apart / now);
      }
      apart = now;
    }
  });
  const lifted = (event) => fingers.delete(event.pointerId);
  ["pointerup", "pointercancel", "pointerleave"].forEach((name) => diagram.addEventListener(name, lifted));
  diagram.addEventListener("click", (event) => dragged && event.stopImmediatePropagation(), { capture: true });
}

function clicked(event) {
  const hit = event.target.closest("[data-wire], [data-part], [data-owner]");
  select(hit ? idsOf(hit)[0] : null);
}

/** Lights up a path or whatever else is concerned; an empty list puts it out. */
export function light(ids) {
  lit = new Set(ids);
  turnTo(ids[0]);
  mark();
  const first = ids.map((id) => find(id)[0]).find(Boolean);
  if (first && view && (view.width < size.width || view.height < size.height)) {
    const at = centreOf(ids.find((id) => find(id)[0]));
    view = { ...view, x: at.x - view.width / 2, y: at.y - view.height / 2 };
    fit(false);
  }
}

/** Shows the car after moves, a relay that they leave pulled in included; null: as key and switches stand. */
export function play(moves) {
  played = moves;
  redraw();
}

/** Turns key and lights up. */
export function lightIn(step, ids) {
  if (step && bench.solution?.result.steps.some((each) => each.step === step) && step !== bench.step) {
    setStep(step);
  }
  light(ids);
}

function mark() {
  const worst = new Map();
  for (const finding of bench.review?.result.findings ?? []) {
    const id = finding.ids[0];
    if (id && finding.severity !== "note" && worst.get(id) !== "danger") {
      worst.set(id, finding.severity);
    }
  }
  for (const drawing of place("diagram").querySelectorAll(".dg-wire, .dg-symbol")) {
    const ids = idsOf(drawing);
    drawing.classList.toggle("found-danger", ids.some((id) => worst.get(id) === "danger"));
    drawing.classList.toggle("found-warning", ids.some((id) => worst.get(id) === "warning"));
    drawing.classList.toggle("lit", ids.some((id) => lit.has(id)));
    drawing.classList.toggle("dg-selected", ids.includes(bench.selected));
  }
}

/** The wire or the parts that an element of the picture stands for. */
function idsOf(drawing) {
  return (drawing.getAttribute("data-wire") ?? drawing.getAttribute("data-part") ?? drawing.getAttribute("data-owner")).split(" ");
}

/** What is selected, with its figures, under the picture. */
function showSelected() {
  turnTo(bench.selected);
  mark();
  const id = bench.selected;
  const drawnPlan = bench.conversion?.result.plan;
  const wire = drawnPlan?.wires.find((each) => each.id === id);
  const part = drawnPlan?.parts.find((each) => each.id === id);
  const target = place("selected");
  const step = figures();
  if (wire) {
    const reading = step?.wires.find((row) => row.wire === id);
    const size = [wire.size?.replace("mm2", "mm²"), wire.lengthM ? `${figure(wire.lengthM)} m` : wire.lengthFt ? `${figure(wire.lengthFt)} ft` : ""].filter(Boolean).join(", ");
    target.replaceChildren(
      element("strong", {}, `${wire.id} `), chip(colours(wire.colour)),
      t("wire-selected", { looks: [colourWords(wire.colour), size].filter(Boolean).join(", "), from: endName(wire.from), to: endName(wire.to) }),
      reading ? t("wire-reading", { amperes: figure(Math.abs(reading.currentA)), reversed: reading.currentA < -0.005 ? 1 : 0, volts: figure(Math.abs(reading.dropV)), state: reading.live ? "live" : Math.abs(reading.currentA) > 0.005 ? "earth" : "off" }) : "",
    );
  } else if (part) {
    const reading = step?.parts.find((row) => row.part === id);
    const at = (step?.nodes ?? []).flatMap((node) => node.terminals.filter((terminal) => terminal.startsWith(`${id}.`)).map((terminal) => `${terminal.slice(id.length + 1)}: ${node.voltageV === undefined ? "floating" : `${figure(node.voltageV)} V`}`));
    target.replaceChildren(
      element("strong", {}, `${nameOf(part)} `), `(${part.kind.replaceAll("-", " ")}) `,
      reading?.activity ? `${does(reading)}${reading.acrossV === undefined ? "" : t("across-it", { volts: figure(reading.acrossV) })}. ` : reading?.state ? `${state(reading.state)}. ` : "",
      at.length > 0 ? t("to-chassis", { at: at.slice(0, 8).join(", ") }) : "",
    );
  } else {
    target.textContent = drawnPlan ? t("choose-a-wire-or-part") : "";
  }
}

/** A terminal as a person reads it. */
export function endName(terminal) {
  if (terminal === "earth") {
    return t("earth");
  }
  const [id, ...rest] = terminal.split(".");
  const part = bench.conversion?.result.plan.parts.find((each) => each.id === id);
  return `${nameOf(part) || id} ${rest.join(".")}`;
}

/** The picture as it stands, for keeping. */
export function svgText() {
  return postText(`/v1/plans/diagram?marks=none&step=${encodeURIComponent(bench.step)}${onSheet()}`, plan(), "image/svg+xml");
}
