// A reading: how the car stands, where the leads go, what to beware of, and what the meter may show.

import { t } from "./text.js";
import { bench } from "./workshop.js";
import { chip, element, table, wide } from "./elements.js";
import { colourWords, colours, fine, nameOf } from "./words.js";
import { endName } from "./selected.js";

const KEY = {
  off: t("key-off"), accessory: t("key-at-accessory"), run: t("key-on-engine-stopped"),
  crank: t("crank-the-engine-while-you"), running: t("engine-running"),
};

/** What to do with the contact points. */
export const CONTACTS = { closed: t("close-the-points"), open: t("open-the-points") };

/** Whether two readings are of the same places in the same state of the car. */
export function same(one, other) {
  return sameEnds(one, other) && one.condition === other.condition && JSON.stringify(one.switches ?? {}) === JSON.stringify(other.switches ?? {});
}

/** Whether the leads are at the same two places, whichever is where. */
export function sameEnds(one, other) {
  const ends = (each) => [each.red, each.black ?? "earth"].sort().join(" ");
  return ends(one) === ends(other);
}

/** How the car stands: the key, and free switches that are not as drawn. */
export function stateWords(reading, drawn) {
  const key = reading.keyOffAgain ? t("key-on-then-off-again") : (KEY[reading.condition] ?? reading.condition);
  const switches = Object.entries(reading.switches ?? {}).map(([id, position]) => `${nameOf(drawn.parts.find((part) => part.id === id)) || id}: ${position}.`);
  return [key, ...switches].join(" ");
}

/** What to beware of at a reading. */
export function cautions(reading, drawn) {
  const said = [];
  if (reading.condition === "crank") {
    said.push(t("make-sure-that-the-engine"));
  }
  if (reading.condition === "running") {
    said.push(t("keep-hands-leads-and-sleeves"));
  }
  const parts = [reading.red, reading.black ?? ""].map((end) => drawn.parts.find((part) => part.id === end.split(".")[0])?.kind);
  if (parts.includes("coil")) {
    said.push(t("the-coil-makes-enough-voltage"));
  }
  if (parts.includes("ballast")) {
    said.push(t("the-ballast-is-hot-with"));
  }
  return said.length === 0 ? [] : [element("p", { className: "problem" }, `▲ ${said.join(" ")}`)];
}

/** What the meter may show, and what that means. */
export function outcomes(reading) {
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
export function lead(colour, name, end, drawn) {
  const wires = drawn.wires.filter((wire) => wire.from === end || wire.to === end);
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

/** Where a wire to repair runs, by what is seen of it; nothing for a part, which has its name. */
export function whereabouts(id, drawn) {
  const wire = drawn.wires.find((each) => each.id === id);
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
