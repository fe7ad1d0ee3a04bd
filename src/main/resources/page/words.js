// How figures, colours, kinds and states read.

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
  BK: ["black", "#1a1a1a"], BN: ["brown", "#7b4a21"], RD: ["red", "#cc1f1f"], OG: ["orange", "#f08a1c"],
  YE: ["yellow", "#f4d516"], GN: ["green", "#1f8a3b"], BU: ["blue", "#1f5fbf"], VT: ["violet", "#7a3fa0"],
  GY: ["grey", "#8c9296"], WH: ["white", "#ffffff"], PK: ["pink", "#f4a6bd"], GD: ["gold", "#c9a227"],
  TQ: ["turquoise", "#2ab5b0"], SR: ["silver", "#c3c8cb"],
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
  "pulled-in": "pulled in", released: "not pulled in", blocking: "not conducting", "not-charging": "not charging",
};

/** The state of a part in words. */
export function state(word) {
  return STATES[word] ?? (word ?? "").replaceAll("-", " ");
}

const DOES = { operates: "on", holds: "stays in", glows: "glows", stalls: "stands still", leaks: "trickle", dead: "off" };

/** What a load does in words. */
export function does(reading) {
  const word = DOES[reading.activity] ?? reading.activity ?? "";
  const wrongly = reading.meantLive === false && !["dead", undefined].includes(reading.activity);
  const missing = reading.meantLive === true && reading.activity === "dead";
  return wrongly ? `${word}, should be off` : missing ? "off, should be on" : word;
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

/** A count with its noun: 1 danger, 2 warnings. */
export function count(number, noun) {
  return `${number} ${noun}${number === 1 ? "" : "s"}`;
}
