// How figures, colours, kinds and states read.

import { t } from "./text.js";

/** A figure with three significant digits and no more decimals than a meter shows; 0.0003 is 0. */
export function figure(value) {
  if (value === undefined || value === null || !Number.isFinite(value)) {
    return "";
  }
  const size = Math.abs(value);
  return size < 0.005 ? "0" : size >= 1000 ? String(Math.round(value)) : size < 1 ? value.toFixed(2) : value.toPrecision(3);
}

/** A small figure, such as a resistance, with three significant digits. */
export function fine(value) {
  return value === undefined || value === null ? "" : String(Number(value.toPrecision(3)));
}

const COLOURS = {
  BK: [t("colour-black"), "#1a1a1a"], BN: [t("colour-brown"), "#7b4a21"], RD: [t("colour-red"), "#cc1f1f"], OG: [t("colour-orange"), "#f08a1c"],
  YE: [t("colour-yellow"), "#f4d516"], GN: [t("colour-green"), "#1f8a3b"], BU: [t("colour-blue"), "#1f5fbf"], VT: [t("colour-violet"), "#7a3fa0"],
  GY: [t("colour-grey"), "#8c9296"], WH: [t("colour-white"), "#ffffff"], PK: [t("colour-pink"), "#f4a6bd"], GD: [t("colour-gold"), "#c9a227"],
  TQ: [t("colour-turquoise"), "#2ab5b0"], SR: [t("colour-silver"), "#c3c8cb"],
};

/** The colours of a wire by the letters of IEC 60757: [{ word, paint }]. */
export function colours(letters) {
  return (letters ?? "").match(/../g)?.filter((two) => two in COLOURS).map((two) => ({ word: COLOURS[two][0], paint: COLOURS[two][1] })) ?? [];
}

/** They as words: pink/black. */
export function colourWords(letters) {
  return colours(letters).map((each) => each.word).join("/");
}

/** What a part is called. */
export function nameOf(part) {
  return part?.label ?? part?.id ?? "";
}

const STATES = {
  "pulled-in": t("state-pulled-in"), "released": t("state-released"), "blocking": t("state-blocking"), "not-charging": t("state-not-charging"),
};

/** The state of a part in words. */
export function state(word) {
  return STATES[word] ?? (word ?? "").replaceAll("-", " ");
}

const DOES = { operates: t("does-operates"), holds: t("does-holds"), glows: t("does-glows"), stalls: t("does-stalls"), leaks: t("does-leaks"), dead: t("does-dead") };

/** What a load does in words. */
export function does(reading) {
  const word = DOES[reading.activity] ?? reading.activity ?? "";
  const wrongly = reading.meantLive === false && !["dead", undefined].includes(reading.activity);
  const missing = reading.meantLive === true && reading.activity === "dead";
  return wrongly ? t("should-be-off", { word }) : missing ? t("should-be-on") : word;
}

const WHEN = { off: "off", accessory: "accessory", run: "key on", crank: "crank", running: "running" };

/** When a load should be live, as a list says it. */
export function worksWhen(part) {
  if (!part.meantLive) {
    return "";
  }
  const all = part.meantLive.length === 5 ? "always" : part.meantLive.map((each) => WHEN[each]).join(", ");
  const switches = (part.meantLiveWhen ?? []).flatMap((way) => Object.entries(way.switches ?? {}).map(([name, positions]) => `${name} ${positions.join(" or ")}`));
  return [all, ...switches].filter(Boolean).join("; ");
}

const UNITS = { uF: "µF" };

/** What stands on a part, as a list says it, by the figures that the catalogue has for its kind. */
export function valueOf(part, kinds) {
  const figures = kinds.find((each) => each.kind === part.kind)?.figures ?? [];
  // A load may also say its watts or amperes, of which a list makes ohms.
  const own = part.kind === "load" ? [{ property: "powerW", unit: "W" }, { property: "currentA", unit: "A" }] : [];
  return [...figures, ...own]
    .filter(({ property }) => part[property] !== undefined)
    .map(({ unit, property }) => [part[property]].flat().map((value) => (typeof value === "number" ? `${fine(value)} ${UNITS[unit] ?? unit}` : value)).join(" + "))
    .join(" ");
}

/** A source with its rule. */
export function source(basis) {
  return t("source-of", { rule: basis.rule, source: basis.source, memory: basis.status === "from-memory" ? 1 : 0 });
}
