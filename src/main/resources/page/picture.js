// The picture: shows how the car stands, what is selected, and what a finding concerns.

import { t } from "./text.js";
import { asShown, bench, freeSwitches, oneMoveAway, select, setSheet, setStep, viewAhead, when } from "./workshop.js";
import { element, place } from "./elements.js";
import { framed, WIDE_PX } from "./frame.js";
import { letter, symbolsOf } from "./labels.js";
import { become } from "./become.js";
import { postBlob } from "./service.js";

/** Some browsers do not say when they have nothing else to do. */
const whenIdle = window.requestIdleCallback ?? ((work) => setTimeout(work, 50));
/** So long after the last change the next move of a switch is asked for ahead. */
const AHEAD_AFTER_MS = 300;
const MOST_AHEAD = 12;
/** Of a car with more switches than this the moves are too many. */
const MOST_SWITCHES = 6;

/** The view whose picture is shown. */
let shown = null;
/** Of which plan and which sheet it is: while both stay, nothing in it moves. */
let layout = null;
let size = null;
/** Where the symbols of the picture stand. */
let symbols = [];
let lit = new Set();
let frame;
let lettering = 0;
let quiet = 0;

/** Keeps the picture up to date. */
export function start() {
  const diagram = place("diagram");
  frame = framed(diagram, {
    image,
    battery: () => centreOf(bench.conversion.result.plan.parts.find((part) => part.kind === "battery")?.id),
    target: () => centreOf(bench.selected),
    shown: (view, inside) => {
      cancelAnimationFrame(lettering);
      lettering = requestAnimationFrame(() => letterAgain(view, inside));
    },
  });
  when("solved state", redraw);
  when("car", () => clearTimeout(quiet));
  when("selected", () => {
    turnTo(bench.selected);
    mark();
    frame.show();
  });
  when("checked", mark);
  place("sheet-of").addEventListener("change", (event) => setSheet(Number(event.target.value)));
  place("zoom-in").addEventListener("click", () => frame.zoom(0.7));
  place("zoom-out").addEventListener("click", () => frame.zoom(1.4));
  place("zoom-fit").addEventListener("click", () => frame.whole());
  diagram.addEventListener("click", (event) => {
    const hit = event.target.closest("[data-wire], [data-part], [data-owner]");
    select(hit ? idsOf(hit)[0] : null);
  });
}

function image() {
  return place("diagram").querySelector("svg");
}

function redraw() {
  place("picture").hidden = !bench.view;
  place("waiting").hidden = Boolean(bench.view);
  if (!bench.view) {
    shown = layout = null;
    place("diagram").replaceChildren();
    return;
  }
  place("diagram").setAttribute("aria-busy", String(bench.looking));
  if (bench.looking) {
    return;
  }
  if (bench.view !== shown) {
    put(bench.view);
  }
  showStep();
  ahead();
}

/** The picture of a view, read but not on the page; read once. */
function imageOf(view) {
  if (!view.image) {
    view.image = document.importNode(new DOMParser().parseFromString(view.svg, "image/svg+xml").documentElement, true);
    view.image.removeAttribute("width");
    view.image.removeAttribute("height");
    view.image.setAttribute("preserveAspectRatio", "xMidYMid meet");
    widenTargets(view.image);
  }
  return view.image;
}

/** Of one plan all pictures have one layout, and a small change moves little: the one on the page becomes the other. */
function put(view) {
  const diagram = place("diagram");
  const before = size && `${size.width} ${size.height}`;
  size = { width: view.widthPx, height: view.heightPx };
  const as = `${size.width} ${size.height}`;
  const same = layout && layout.of === bench.conversion && layout.sheet === bench.sheet;
  let smallestText = null;
  if (image() && layout?.sheet === bench.sheet && before === as) {
    become(image(), imageOf(view));
  } else {
    const picture = imageOf(view);
    // It is changed from now on; read again if it is wanted once more.
    view.image = null;
    diagram.replaceChildren(picture);
    smallestText = Math.min(...[...picture.querySelectorAll("text[font-size]")].map((text) => Number(text.getAttribute("font-size"))));
  }
  if (!same) {
    symbols = [];
    layout = { of: bench.conversion, sheet: bench.sheet };
    showSheets(view);
  }
  shown = view;
  diagram.dataset.drawn = String(Number(diagram.dataset.drawn ?? 0) + 1);
  if (smallestText !== null) {
    frame.begin(size, smallestText);
  }
  mark();
}

function showSheets(view) {
  place("sheet-of").hidden = view.sheets.length === 0;
  place("sheet-of").replaceChildren(
    element("option", { value: "0" }, t("the-whole-car")),
    ...view.sheets.map((each) => element("option", { value: String(each.number), selected: each.number === bench.sheet }, each.title)),
  );
}

/** Turns to the sheet that has a wire or part, if the one shown has it not. */
function turnTo(id) {
  const other = bench.sheet > 0 && id && find(id).length === 0 && shown?.sheets.find((each) => each.wires.includes(id) || each.parts.includes(id));
  if (other) {
    setSheet(other.number);
  }
}

/** Turning the key moves nothing: the picture holds all steps and shows one. */
function showStep() {
  const text = shown.steps.find((each) => each.step === bench.step);
  if (text) {
    image().setAttribute("data-step", bench.step);
    image().querySelector("desc").textContent = text.description;
  }
  frame.show();
}

/** Asks for what the next move of a switch will need, once nobody is typing, and reads the pictures while nothing else is to do. */
function ahead() {
  clearTimeout(quiet);
  quiet = setTimeout(() => {
    if (bench.solution && freeSwitches().length <= MOST_SWITCHES) {
      [bench.switches, ...oneMoveAway().slice(0, MOST_AHEAD)].forEach((switches) =>
        viewAhead(switches).then((view) => whenIdle(() => bench.conversion && imageOf(view)), () => undefined),
      );
    }
  }, AHEAD_AFTER_MS);
}

/** A thin line is hard to hit; an unseen wide one above it is not. */
function widenTargets(picture) {
  for (const wire of picture.querySelectorAll(".dg-wire")) {
    const line = wire.querySelector("path, polyline, line");
    if (line) {
      const target = line.cloneNode(false);
      Object.entries({ class: "target", stroke: "transparent", fill: "none", "stroke-width": "16", "stroke-dasharray": "none" }).forEach(([key, value]) => target.setAttribute(key, value));
      wire.append(target);
    }
  }
}

/** Labels are as large as the reader needs them at this scale. */
function letterAgain(view, inside) {
  if (!image() || inside.width === 0) {
    return;
  }
  // A picture that is not seen has no places.
  if (symbols.every((each) => each.width === 0)) {
    symbols = symbolsOf(image());
  }
  const found = (bench.review?.result.findings ?? []).filter((each) => each.severity !== "note").map((each) => each.ids[0]);
  const scale = Math.min(inside.width / view.width, inside.height / view.height);
  letter(image(), scale, size.width, new Set([bench.selected, ...lit, ...found]), inside.width < WIDE_PX ? "phone" : "wide", symbols);
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

/** Lights up a path or whatever else is concerned; an empty list puts it out. */
export function light(ids) {
  lit = new Set(ids);
  turnTo(ids[0]);
  mark();
  const at = centreOf(ids.find((id) => find(id)[0]));
  if (at) {
    frame.reveal(at);
  }
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

/** The picture as it stands, for keeping. */
export function pictureFile(mediaType) {
  const { plan, query } = asShown();
  return postBlob(`/v1/plans/diagram?marks=none&${query}${bench.sheet > 0 ? `&sheet=${bench.sheet}` : ""}`, plan, mediaType);
}
