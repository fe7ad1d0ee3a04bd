// What is complained of: the part, and what is seen of it.

import { t } from "./text.js";
import { bench, plan } from "./workshop.js";
import { button, element, fill, progress, table, wide } from "./elements.js";
import { explained, postSlow } from "./service.js";
import { fine, nameOf } from "./words.js";

const LOADS = ["lamp", "led", "load", "motor", "coil", "relay", "solenoid"];
/** What may be seen of a part, in words, by the sign that the service knows it by. */
export const SIGNS = {
  dead: t("does-not-work"), weak: t("is-weak"), glows: t("only-just-glows-or-only"), "stays-on": t("is-on-when-it-should"), "blows-its-fuse": t("blows-its-fuse"),
};

/**
 * Asks what is wrong.
 *
 * @param {Element} panel where
 * @param {function} begin called with the id of the part and what is seen of it
 */
export function askComplaint(panel, begin) {
  const loads = bench.conversion.result.plan.parts.filter((part) => LOADS.includes(part.kind));
  const load = element("select", { id: "complaint-load" }, ...loads.map((part) => element("option", { value: part.id }, nameOf(part))));
  const what = element(
    "select",
    { id: "complaint" },
    ...Object.entries(SIGNS).map(([sign, words]) => element("option", { value: sign }, words)),
  );
  fill(panel,
    element("h2", {}, t("find-a-fault-with-a")),
    element("p", {}, t("say-what-is-wrong-you")),
    element("p", { className: "field" }, element("label", { for: "complaint-load" }, t("which-part")), load),
    element("p", { className: "field" }, element("label", { for: "complaint" }, t("what-is-wrong-with-it")), what),
    element("p", {}, button(t("begin"), () => begin(load.value, what.value), { className: "main", id: "begin" })),
    element("p", { className: "problem", id: "measure-problem" }),
    expectedReadings(),
  );
}

/** The readings of a sound car, for those who want them all. */
function expectedReadings() {
  const target = element("div");
  let aborter = null;
  const opened = async (event) => {
    if (!event.target.open || target.childNodes.length > 0) {
      return;
    }
    aborter = new AbortController();
    const running = progress(t("calculating"), () => {
      aborter.abort();
      target.replaceChildren();
      event.target.open = false;
    });
    fill(target, running.shown);
    try {
      const sheet = (await postSlow("/v1/plans/readings", plan({}), running.report, aborter.signal)).result;
      target.replaceChildren(
        wide(t("readings"), table(t("readings-of-a-sound-car"), [[t("no"), false], [t("how-the-car-stands"), false], [t("red-lead"), false], [t("black-lead"), false], [t("from"), true], [t("to"), true], ["", false]],
          sheet.readings.map((each) => [
            String(each.number), each.situation, each.redLabel, each.blackLabel,
            each.shows === "figure" ? fine(each.lowest) : "", each.shows === "figure" ? fine(each.highest) : "",
            each.shows === "figure" ? (each.unit === "ohm" ? "Ω" : each.unit) : each.shows === "open" ? t("over-range") : t("nothing-steady"),
          ]))),
      );
    } catch (refused) {
      if (refused.name !== "AbortError") {
        target.textContent = explained(refused);
      }
    }
  };
  return element("details", { toggle: opened }, element("summary", {}, t("all-readings-of-a-sound")), target);
}
