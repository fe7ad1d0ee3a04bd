// The tab of parts: what each is, what stands on it, what it does now.

import { t } from "./text.js";
import { bench, change, figures, select, when, whenDrawn } from "./workshop.js";
import * as list from "./list.js";
import { element, place, say } from "./elements.js";
import { grid } from "./grid.js";
import { partCatalogue } from "./service.js";
import { does, figure, nameOf, state, valueOf, worksWhen } from "./words.js";

const COLUMNS = [
  { name: "part", head: t("part") },
  { name: "kind", head: t("kind"), list: "kinds" },
  { name: "value", head: t("value") },
  { name: "works when", head: t("works-when"), list: "whens" },
  { name: "does", head: t("now"), figure: true },
  { name: "across", head: "V", figure: true },
];

let sheet;
/** Kinds of parts as the catalogue has them; none until it has come. */
let kinds = [];
/** The rows as shown: { part of the plan or undefined, index in the table of parts or -1 }. */
let rows = [];

/** Builds the tab and keeps it up to date. */
export function start() {
  const table = element("table", { id: "part-grid", className: "grid" });
  place("part-grid").replaceWith(table);
  sheet = grid({
    table,
    caption: t("parts"),
    noun: t("noun-part"),
    columns: COLUMNS,
    changed: entered,
    pasted: (index, column, block) => {
      const names = COLUMNS.filter((each) => !each.figure).map((each) => each.name);
      const from = names.slice(names.indexOf(column));
      change(list.withBlock(bench.car, "parts", bench.car.parts.length, from, block));
    },
    removed: (index) => {
      const row = rows[index];
      say(t("back-to-usual", { part: row.part ? nameOf(row.part) : t("the-row") }));
      change(list.withoutRow(bench.car, "parts", row.index));
    },
    entered: (index) => rows[index]?.part && select(rows[index].part.id),
  });
  when("car", show);
  whenDrawn("plan solved state selected", show);
  show();
  partCatalogue().then((catalogue) => {
    kinds = catalogue.kinds;
    show();
  });
}

function entered(index, column, value) {
  const { part, index: own } = rows[index] ?? {};
  if (column === "part" && part && value !== "") {
    change(list.renamed(bench.car, [part.id, nameOf(part), ...(own >= 0 ? [bench.car.parts[own].part] : [])], value));
    return;
  }
  if (own >= 0) {
    change(list.withCell(withoutFigures(bench.car, own, column, value), "parts", own, column, value));
    return;
  }
  const at = bench.car.parts.length;
  const named = part ? list.withCell(bench.car, "parts", at, "part", nameOf(part)) : bench.car;
  change(list.withCell(named, "parts", at, column, value));
}

/** A row of a plan says its figures one by one; a value or kind typed over them takes their place. */
function withoutFigures(car, index, column, value) {
  const row = car.parts[index];
  if (!list.detailed(row) || !["value", "kind"].includes(column) || value === "") {
    return car;
  }
  const short = { part: row.label ?? row.part, ...(row.kind ? { kind: row.kind } : {}), ...(row["works when"] ? { "works when": row["works when"] } : {}) };
  const renamed = list.renamed({ ...car, parts: car.parts.filter((_, i) => i !== index) }, [row.part], row.label ?? row.part);
  return { ...renamed, parts: [...renamed.parts.slice(0, index), short, ...renamed.parts.slice(index)] };
}

function show() {
  if (!bench.car || place("panel-parts").hidden) {
    return;
  }
  const own = new Map(bench.car.parts.flatMap((row, index) => [row.part, row.label].filter(Boolean).map((name) => [key(name), index])));
  const parts = bench.conversion?.result.plan.parts ?? [];
  const used = new Set();
  rows = parts.map((part) => {
    const index = own.get(key(part.id)) ?? own.get(key(nameOf(part))) ?? -1;
    used.add(index);
    return { part, index };
  });
  bench.car.parts.forEach((_, index) => used.has(index) || rows.push({ part: undefined, index }));
  const readings = new Map((figures()?.parts ?? []).map((row) => [row.part, row]));
  const shown = rows.map(({ part, index }) => {
    const row = index >= 0 ? bench.car.parts[index] : {};
    const reading = part && readings.get(part.id);
    const detailed = list.detailed(row);
    const said = (bench.conversion?.assumptions ?? []).filter((each) => part && each.ids.includes(part.id)).map((each) => each.text).join(" ");
    return {
      key: part ? nameOf(part) : row.part,
      removable: index >= 0 && !detailed,
      className: `${part && part.id === bench.selected ? "selected" : ""}`,
      cells: {
        part: { value: part ? nameOf(part) : (row.part ?? "") },
        kind: { value: row.kind ?? "", assumed: part?.kind ?? "", reason: said },
        value: { value: detailed ? valueOf(part ?? {}, kinds) : (row.value ?? ""), assumed: part ? valueOf(part, kinds) : "", reason: said },
        "works when": { value: row["works when"] ?? "", assumed: part ? worksWhen(part) : "", reason: said },
        does: { value: reading ? (reading.activity ? does(reading) : state(reading.state)) : "" },
        across: { value: reading ? figure(reading.acrossV) : "" },
      },
    };
  });
  sheet.show([...shown, { key: "new", cells: Object.fromEntries(COLUMNS.map((column) => [column.name, {}])), removable: false, className: "fresh" }]);
}

function key(name) {
  return name.toLowerCase().replace(/[^a-z0-9]+/g, "-");
}

export function shown() {
  show();
}
