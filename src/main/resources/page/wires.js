// The tab of wires: the grid, what was assumed, what is asked.

import { t } from "./text.js";
import { bench, change, figures, rowOf, select, when, whenDrawn } from "./workshop.js";
import * as list from "./list.js";
import { button, element, place, say } from "./elements.js";
import { grid } from "./grid.js";
import { colourWords, figure, nameOf } from "./words.js";
import * as cars from "./cars.js";

const USUAL = [
  { name: "no", head: t("no") },
  { name: "from", head: t("from"), list: "terminals" },
  { name: "to", head: t("to"), list: "terminals" },
  { name: "size", head: t("size"), list: "sizes" },
  { name: "length", head: t("length") },
  { name: "colour", head: t("colour") },
];
const RARE = [
  { name: "via", head: t("via"), list: "terminals" },
  { name: "resistance", head: t("ohm-instead-of-size") },
  { name: "place", head: t("place"), list: "places" },
  { name: "bundle", head: t("bundle-of") },
  { name: "insulation", head: t("insulation-c") },
  { name: "joint", head: t("joint-at-from-ohm") },
  { name: "joint to", head: t("joint-at-to-ohm") },
  { name: "feed", head: t("one-way"), list: "yes" },
  { name: "loom", head: t("loom") },
  { name: "note", head: t("note") },
];
const SHOWN = [
  { name: "current", head: "A", figure: true },
  { name: "drop", head: "V lost", figure: true },
];

/** The cell that an assumption stands for. */
const ASSUMED_COLUMNS = { "list-length": "length", "list-size": "size" };

let sheet;
let columns;
let all = false;

/** Builds the tab and keeps it up to date. */
export function start() {
  build();
  place("all-columns").addEventListener("click", () => {
    all = !all;
    place("all-columns").setAttribute("aria-pressed", String(all));
    build();
    show();
  });
  for (const name of ["name", "voltage", "earth"]) {
    place(`setting-${name}`).addEventListener("change", (event) => change({ ...bench.car, settings: { ...bench.car.settings, [name]: event.target.value } }));
  }
  when("car", show);
  whenDrawn("plan solved state selected", show);
  show();
}

function build() {
  columns = all ? [...USUAL, ...RARE, ...SHOWN] : [...USUAL, ...SHOWN];
  const fields = columns.filter((column) => !column.figure).map((column) => column.name);
  const table = element("table", { id: "wire-grid", className: "grid" });
  place("wire-grid").replaceWith(table);
  sheet = grid({
    table,
    caption: t("wires"),
    noun: t("noun-wire"),
    columns,
    changed: (index, column, value) => change(list.withCell(bench.car, "wires", index, column, value)),
    pasted: (index, column, block, text) => paste(index, fields.slice(fields.indexOf(column)), block, text),
    removed: (index) => {
      say(t("wire-removed-undo-brings-it", { no: bench.car.wires[index].no }));
      change(list.withoutRow(bench.car, "wires", index));
    },
    entered: (index) => {
      const wire = bench.car.wires[index];
      if (wire) {
        select(wire.no);
      }
    },
  });
}

/** A block with headings is a list by itself; without, it goes into the cells from here on. */
async function paste(index, from, block, text) {
  const heads = block.slice(0, 4).some((row) => row.some((cell) => /^from\b/i.test(cell)) && row.some((cell) => /^to\b/i.test(cell)));
  if (!heads) {
    change(list.withBlock(bench.car, "wires", index, from, block));
    say(t("rows-pasted", { number: block.length }));
    return;
  }
  try {
    const pasted = await cars.fromText(text);
    change({ ...list.joined(bench.car, pasted), settings: bench.car.wires.length === 0 ? { ...bench.car.settings, ...pasted.settings } : bench.car.settings });
    say(t("wires-pasted", { number: pasted.wires.length }));
  } catch (refused) {
    say(refused.message);
  }
}

function show() {
  if (!bench.car || place("panel-wires").hidden) {
    return;
  }
  for (const name of ["name", "voltage", "earth"]) {
    const field = place(`setting-${name}`);
    if (document.activeElement !== field) {
      field.value = bench.car.settings[name] ?? "";
    }
  }
  const step = figures();
  const solved = new Map((step?.wires ?? []).map((row) => [row.wire, row]));
  const plan = new Map((bench.conversion?.result.plan.wires ?? []).map((wire) => [wire.id, wire]));
  const asked = askedCells();
  const rows = bench.car.wires.map((wire, index) => {
    const drawn = plan.get(wire.no);
    const reading = solved.get(wire.no);
    const cells = Object.fromEntries(columns.filter((column) => !column.figure).map((column) => [column.name, { value: wire[column.name] ?? "", problem: asked.get(`${index} ${column.name}`), asked: true }]));
    const resistive = drawn && drawn.size === undefined;
    cells.size.assumed = drawn && !resistive ? drawn.size : "";
    cells.length.assumed = drawn?.lengthM ? `${figure(drawn.lengthM)} m` : drawn?.lengthFt ? `${figure(drawn.lengthFt)} ft` : "";
    cells.size.reason = cells.length.reason = assumptionsOf(wire.no).map((each) => each.text).join(" ");
    cells.colour.chip = drawn?.colour;
    cells.colour.assumed = wire.colour ? "" : colourWords(drawn?.colour);
    cells.current = { value: reading ? current(reading) : "" };
    cells.drop = { value: reading ? figure(Math.abs(reading.dropV)) : "" };
    return { key: wire.no, cells, removable: true, className: `${wire.no === bench.selected ? "selected" : ""} ${reading?.live ? "live" : ""}` };
  });
  sheet.show([...rows, { key: "new", cells: Object.fromEntries(columns.map((column) => [column.name, {}])), removable: false, className: "fresh" }]);
  showQuestions();
  showAssumptions();
  place("wires-problem").textContent = bench.problem ?? "";
}

/** Amperes, with an arrow where the current runs from the second end to the first. */
function current(reading) {
  const amperes = figure(Math.abs(reading.currentA));
  return amperes === "0" ? "0" : `${reading.currentA < 0 ? "← " : ""}${amperes}`;
}

function askedCells() {
  const asked = new Map();
  for (const question of bench.conversion?.questions ?? []) {
    const at = bench.places.get(question.row);
    if (at?.table === "wires" && question.code !== "fuse-rating") {
      asked.set(`${at.index} ${question.column}`, question.text);
    }
  }
  for (const error of bench.errors) {
    const at = rowOf(error);
    if (at?.table === "wires") {
      asked.set(`${at.index} ${error.column ?? "from"}`, t("accepted", { accepted: error.accepted }));
    }
  }
  return asked;
}

function showQuestions() {
  const questions = bench.conversion?.questions ?? [];
  place("questions").hidden = questions.length === 0;
  place("question-count").textContent = t("questions-open", { number: questions.length });
  place("question-list").replaceChildren(
    ...questions.map((question) =>
      element(
        "li",
        {},
        element("p", {}, question.text, element("small", {}, " ", t("meanwhile", { taken: question.taken }))),
        element("p", { className: "buttons" }, ...question.choices.slice(0, 6).map((choice) => button(choice, () => answer(question, choice), { className: "small" }))),
      ),
    ),
  );
}

/** Writes an answer where the list has room for it: in the cell, or in the table of parts. */
function answer(question, choice) {
  const at = bench.places.get(question.row);
  if (at?.table === "wires" && !["from", "to", "via"].includes(question.column)) {
    change(list.withCell(bench.car, "wires", at.index, question.column, choice));
    return;
  }
  if (at?.table === "parts") {
    change(list.withCell(bench.car, "parts", at.index, question.column, choice));
    return;
  }
  const part = bench.conversion.result.plan.parts.find((each) => question.ids.includes(each.id));
  const name = part ? nameOf(part) : question.written;
  const known = bench.car.parts.findIndex((row) => row.part?.toLowerCase() === name.toLowerCase());
  const index = known < 0 ? bench.car.parts.length : known;
  const column = question.code === "what-part" ? "kind" : "value";
  change(list.withCell(list.withCell(bench.car, "parts", index, "part", name), "parts", index, column, choice));
}

/** What was assumed about a wire, or a part at one of its ends. */
function assumptionsOf(id) {
  return (bench.conversion?.assumptions ?? []).filter((each) => each.ids.includes(id));
}

function showAssumptions() {
  const assumptions = bench.conversion?.assumptions ?? [];
  const wire = bench.conversion?.result.plan.wires.find((each) => each.id === bench.selected);
  const near = wire ? [wire.id, wire.from.split(".")[0], wire.to.split(".")[0]].flatMap(assumptionsOf) : assumptionsOf(bench.selected);
  place("row-note").textContent = near.length === 0 ? "" : t("assumed-here", { texts: [...new Set(near.map((each) => each.text))].join(" ") });
  place("assumption-count").textContent = assumptions.length === 0 ? t("nothing-is-assumed") : t("things-assumed", { number: assumptions.length });
  place("assumption-list").replaceChildren(
    ...assumptions.map((each) => {
      const index = bench.car.wires.findIndex((row) => row.no === each.assumed.wire);
      return element(
        "li",
        {},
        each.text,
        " ",
        index >= 0 ? button(t("go-to-wire", { wire: each.assumed.wire }), () => sheet.focus(index, ASSUMED_COLUMNS[each.code] ?? "from"), { className: "link" }) : null,
      );
    }),
  );
}

/** Puts the keyboard into the row of a wire. */
export function focusWire(id) {
  const index = bench.car.wires.findIndex((wire) => wire.no === id);
  if (index >= 0) {
    sheet.focus(index, "from");
  }
}


export function shown() {
  show();
}
