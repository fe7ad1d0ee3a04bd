// Two of my cars beside each other: as built, as planned.

import { t } from "./text.js";
import { bench, plan, when } from "./workshop.js";
import { button, element, fill, place, progress, severity, table, wide } from "./elements.js";
import { explained, planOfList, postSlow, postText } from "./service.js";
import * as cars from "./cars.js";
import * as list from "./list.js";
import { endName } from "./selected.js";
import { colourWords, figure } from "./words.js";

/** Keeps the tab up to date. */
export function start() {
  when("car", show);
  show();
}

export function shown() {
  show();
}

/** The car and the others that the panel was filled for: a comparison stays until one of them is another. */
let filledFor = "";
/** Ends the comparison that is going on. */
let aborter = new AbortController();

function show() {
  const panel = place("panel-compare");
  if (panel.hidden || !bench.car) {
    return;
  }
  const kept = cars.mine().filter((each) => each.id !== cars.last()?.id);
  const cause = JSON.stringify([bench.car, kept.map((each) => [each.id, each.at])]);
  if (cause === filledFor) {
    return;
  }
  filledFor = cause;
  aborter.abort();
  const chosen = place("compare-with")?.value;
  const other = element(
    "select",
    { id: "compare-with" },
    ...kept.map((each) => element("option", { value: each.id, selected: each.id === chosen }, each.car.settings.name || t("a-car-without-a-name"))),
  );
  fill(panel, 
    element("h2", {}, t("compare")),
    element("p", {}, t("the-other-car-is-taken")),
    kept.length === 0
      ? element("p", {}, t("no-car-is-kept-in"))
      : element("p", { className: "field" }, element("label", { for: "compare-with" }, t("compare-with")), other),
    element(
      "p",
      { className: "buttons" },
      kept.length === 0 ? null : button(t("compare"), () => compare(kept.find((each) => each.id === other.value)), { className: "main", id: "compare" }),
      button(t("keep-a-copy-of-this"), keepCopy, { id: "keep-copy" }),
    ),
    element("div", { id: "comparison" }),
  );
}

function keepCopy() {
  cars.storeAside(cars.newId(), { ...bench.car, settings: { ...bench.car.settings, name: t("copy-of", { car: bench.car.settings.name ?? t("car") }) } });
  show();
}

async function compare(kept) {
  const target = place("comparison");
  aborter.abort();
  aborter = new AbortController();
  const { signal } = aborter;
  const running = progress(t("comparing"), () => {
    aborter.abort();
    fill(target, element("p", {}, t("the-comparison-was-stopped")));
  });
  fill(target, element("p", { role: "status" }, t("comparing")), running.shown);
  try {
    const before = (await planOfList(list.write(kept.car).text, undefined, signal)).result.plan;
    const question = { before, after: plan({}) };
    const [answer, svg] = await Promise.all([
      postSlow("/v1/plans/comparison", question, running.report, signal),
      postText("/v1/plans/comparison/diagram", question, "image/svg+xml", signal),
    ]);
    const { changes, findings, steps, needed } = answer.result;
    const picture = document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);
    // The picture on the bench has names of the same kind.
    picture.removeAttribute("aria-labelledby");
    picture.setAttribute("aria-label", t("both-circuits-in-one-diagram"));
    picture.querySelectorAll("[id]").forEach((each) => each.removeAttribute("id"));
    fill(
      target,
      element("h3", {}, changes.length === 0 ? t("nothing-is-different") : t("what-is-different")),
      element("ul", {}, ...changes.map((each) => element("li", {}, `${each.isText ?? each.wasText}: ${each.changes.join(", ")}${each.isText && each.wasText ? t("was", { text: each.wasText }) : ""}`))),
      ...group(t("findings-that-appear"), findings.appear),
      ...group(t("findings-that-go"), findings.disappear),
      steps.some((step) => step.readings.length > 0) ? element("h3", {}, t("readings-that-change")) : null,
      ...steps.filter((step) => step.readings.length > 0).map((step) =>
        wide(
          step.description,
          table(step.description, [[t("where"), false], [t("before"), true], [t("after"), true], [t("difference"), true]], step.readings.slice(0, 12).map((each) => [
            each.at.includes(".") ? endName(each.at) : each.at, `${figure(each.before)} ${each.unit}`, `${figure(each.after)} ${each.unit}`, `${each.change > 0 ? "+" : "−"}${figure(Math.abs(each.change))}`,
          ])),
        ),
      ),
      ...(needed?.wires?.length > 0 || needed?.parts?.length > 0
        ? [element("h3", {}, t("what-you-need")), element("ul", {}, ...needed.parts.map((each) => element("li", {}, `${each.label ?? each.part} (${each.kind})`)), ...needed.wires.map((each) => element("li", {}, [colourWords(each.colour), each.size?.replace("mm2", "mm²"), `${figure(each.totalM)} m`].filter(Boolean).join(", "))))]
        : []),
      changes.length === 0 ? null : element("div", { className: "wide picture", tabIndex: 0, role: "region", "aria-label": t("both-circuits") }, picture),
    );
  } catch (refused) {
    if (refused.name === "AbortError") {
      return;
    }
    target.replaceChildren(element("p", { className: "problem" }, explained(refused)));
  }
}

function group(title, findings) {
  return !findings || findings.length === 0 ? [] : [element("h3", {}, title), element("ul", {}, ...findings.map((each) => element("li", {}, severity(each.severity), ` ${each.text}`)))];
}
