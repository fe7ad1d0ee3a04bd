// Where cars come from and go to: the browser's own storage, links, files, templates, examples.

import { t } from "./text.js";
import * as list from "./list.js";
import { getJson, getText, listOfPlan, listType, planOfList, postBlob } from "./service.js";

const STORE = "loomwright.cars";
const LAST = "loomwright.last";

/** The cars kept in this browser: [{ id, car, at }], the last changed first. */
export function mine() {
  try {
    const kept = JSON.parse(localStorage.getItem(STORE) ?? "[]");
    return Array.isArray(kept) ? kept.filter((each) => Array.isArray(each?.car?.wires)) : [];
  } catch (unreadable) {
    return [];
  }
}

/** Keeps a car under an id; false if the browser has no room or does not allow it. */
export function store(id, car) {
  try {
    storeAside(id, car);
    localStorage.setItem(LAST, id);
    return true;
  } catch (full) {
    return false;
  }
}

/** Keeps a car that is not the one on the bench. */
export function storeAside(id, car) {
  localStorage.setItem(STORE, JSON.stringify([{ id, car, at: new Date().toISOString() }, ...mine().filter((each) => each.id !== id)]));
}

/** Remembers which car is on the bench. */
export function remember(id) {
  try {
    localStorage.setItem(LAST, id);
  } catch (forbidden) {
    // Without a store there is nothing to come back to.
  }
}

export function forget(id) {
  localStorage.setItem(STORE, JSON.stringify(mine().filter((each) => each.id !== id)));
}

/** The car that was on the bench last. */
export function last() {
  let id = null;
  try {
    id = localStorage.getItem(LAST);
  } catch (forbidden) {
    return undefined;
  }
  return mine().find((each) => each.id === id);
}

export function newId() {
  return `${Date.now().toString(36)}${Math.random().toString(36).slice(2, 6)}`;
}

/** A car from the text of a list in any form that the service reads. */
export async function fromText(text) {
  return list.parse(text) ?? fromPlan((await planOfList(text, text.trimStart().startsWith("|") ? "text/markdown" : "text/plain")).result.plan);
}

/** A car from a plan. */
export async function fromPlan(plan) {
  return list.parse(await listOfPlan(plan));
}

/** A car from a file: a plan as JSON, or a list. */
export async function fromFile(file) {
  const type = listType(file.name);
  if (file.name.toLowerCase().endsWith(".json")) {
    return fromPlan(JSON.parse(await file.text()));
  }
  if (!type) {
    throw new SyntaxError(t("is-no-file-of-a", { file: file.name }));
  }
  if (type.startsWith("text/")) {
    return fromText(await file.text());
  }
  return fromPlan((await planOfList(file, type)).result.plan);
}

export const templates = async () => (await getJson("/v1/templates")).templates;
export const examples = async () => (await getJson("/v1/examples")).examples;

export async function fromTemplate(href) {
  return list.parse(await getText(href, "text/csv"));
}

export async function fromExample(href) {
  return fromPlan(await getJson(href));
}

/** A car as a file: its list as the owner wrote it, the plan, or a workbook. */
export async function asFile(car, plan, form) {
  switch (form) {
    case "csv":
      return new Blob([list.write(car).text], { type: "text/csv" });
    case "json":
      return new Blob([JSON.stringify(plan, null, 2)], { type: "application/json" });
    default:
      return postBlob("/v1/plans/conversion", plan, listType(`x.${form}`));
  }
}

/** A link that holds the car itself, compressed; what follows the # is never sent. */
export async function link(car) {
  const packed = new Uint8Array(await new Response(through(JSON.stringify(car), new CompressionStream("deflate-raw"))).arrayBuffer());
  const text = btoa(Array.from(packed, (byte) => String.fromCharCode(byte)).join(""));
  return `${location.origin}${location.pathname}#car=${text.replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "")}`;
}

const LONGEST_CAR = 2_000_000;

/** The car of such a link; null if the address is no such link. An Error if it is damaged. */
export async function fromLink(hash) {
  const match = /^#car=([\w-]+)$/.exec(hash);
  if (!match) {
    return null;
  }
  let text = "";
  try {
    const bytes = Uint8Array.from(atob(match[1].replaceAll("-", "+").replaceAll("_", "/")), (sign) => sign.charCodeAt(0));
    const reader = through(bytes, new DecompressionStream("deflate-raw")).pipeThrough(new TextDecoderStream()).getReader();
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      text += part.value;
      if (text.length > LONGEST_CAR) {
        throw new SyntaxError("too long");
      }
    }
    return checked(JSON.parse(text));
  } catch (damaged) {
    throw new SyntaxError(t("the-link-is-damaged-or"));
  }
}

function through(data, stream) {
  return new Blob([data]).stream().pipeThrough(stream);
}

/** Only texts get in: what a link holds was written by somebody else. */
function checked(car) {
  const record = (row) => Object.fromEntries(Object.entries(row).map(([key, value]) => [String(key), String(value)]));
  return list.numbered({
    settings: record(car.settings),
    wires: car.wires.map(record),
    parts: car.parts.map(record),
    positions: car.positions.map(record),
    others: car.others.map((table) => ({ heads: table.heads.map(String), rows: table.rows.map((row) => row.map(String)) })),
  });
}
