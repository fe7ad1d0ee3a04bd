// What a diagnosis has come to: suspects, and the readings beside those of a sound car.

import { t } from "./text.js";
import { element, table, wide } from "./elements.js";
import { figure, fine, nameOf } from "./words.js";
import { endName } from "./selected.js";

/** The faults that may be, the likeliest first. */
export function candidates(answer) {
  const all = (answer?.explanations ?? []).flatMap((each) => each.candidates.map((candidate) => ({ ...candidate, explains: each.explains })));
  // Something is complained of: that nothing is wrong is no suspicion.
  return all.filter((each) => each.faults.length > 0).sort((one, other) => other.probability - one.probability);
}

/**
 * Bars of likelihood.
 *
 * @param answer of the diagnosis; absent before there is one
 * @param {number} before how many suspects there were before the last reading
 */
export function suspects(answer, before) {
  const all = candidates(answer);
  if (all.length === 0) {
    return null;
  }
  return element(
    "section",
    { "aria-label": t("suspects") },
    element("h3", {}, t("count-suspect", { number: all.length })),
    all.length > before ? element("p", { id: "more-suspects" }, t("more-than-before-with-the")) : null,
    element(
      "ul",
      { className: "suspects" },
      ...all.slice(0, 8).map((each) =>
        element("li", {}, element("meter", { min: 0, max: 1, value: each.probability, "aria-label": t("likelihood-of", { description: each.description.text }) }), `${percent(each.probability)}: ${each.description.text}`),
      ),
    ),
  );
}

/** What was read, beside what a sound car would have shown. */
export function readingsTaken(answer, drawn) {
  const rows = (answer?.readings ?? []).map((each) => [
    each.part ? nameOf(drawn.parts.find((part) => part.id === each.part)) : t("from-to", { from: endName(each.red), to: endName(each.black) }), each.condition ?? "", metered(each.measured), metered(each.planned), each.deviates ? t("differs") : t("as-expected"),
  ]);
  return rows.length === 0 ? null : wide(t("your-readings"), table(t("your-readings"), [[t("where"), false], [t("key"), false], [t("measured"), true], [t("expected"), true], ["", false]], rows));
}

function metered(shown) {
  return shown === undefined ? "" : shown.sign ? shown.sign.replaceAll("-", " ") : shown.open ? t("over-range") : shown.voltageV !== undefined ? `${figure(shown.voltageV)} V` : `${fine(shown.resistanceOhm)} Ω`;
}

export function percent(share) {
  return share < 0.01 ? t("under-one-percent") : `${Math.round(100 * share)} %`;
}
