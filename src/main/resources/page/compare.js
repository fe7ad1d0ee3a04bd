// Two of my cars beside each other: as built, as planned.

import { bench, plan, when } from "./workshop.js";
import { button, element, fill, place, severity, table, wide } from "./elements.js";
import { explained, planOfList, postJson, postText } from "./service.js";
import * as cars from "./cars.js";
import * as list from "./list.js";
import { endName } from "./picture.js";
import { figure } from "./words.js";

/** Keeps the tab up to date. */
export function start() {
  when("car", show);
  show();
}

export function shown() {
  show();
}

function show() {
  const panel = place("panel-compare");
  if (panel.hidden || !bench.car) {
    return;
  }
  const kept = cars.mine().filter((each) => each.id !== cars.last()?.id);
  const chosen = place("compare-with")?.value;
  const other = element(
    "select",
    { id: "compare-with" },
    ...kept.map((each) => element("option", { value: each.id, selected: each.id === chosen }, each.car.settings.name || "A car without a name")),
  );
  fill(panel, 
    element("h2", {}, "Compare"),
    element("p", {}, "The other car is taken as it was built, the one on the bench as it is planned."),
    kept.length === 0
      ? element("p", {}, "No car is kept in this browser yet. Change something, or keep a copy of this one.")
      : element("p", { className: "field" }, element("label", { for: "compare-with" }, "Compare with"), other),
    element(
      "p",
      { className: "buttons" },
      kept.length === 0 ? null : button("Compare", () => compare(kept.find((each) => each.id === other.value)), { className: "main", id: "compare" }),
      button("Keep a copy of this car", keepCopy, { id: "keep-copy" }),
    ),
    element("div", { id: "comparison" }),
  );
}

function keepCopy() {
  cars.storeAside(cars.newId(), { ...bench.car, settings: { ...bench.car.settings, name: `${bench.car.settings.name ?? "Car"}, copy` } });
  show();
}

async function compare(kept) {
  const target = place("comparison");
  target.textContent = "Comparing…";
  try {
    const before = (await planOfList(list.write(kept.car).text)).result.plan;
    const question = { before, after: plan({}) };
    const [answer, svg] = await Promise.all([postJson("/v1/plans/comparison", question), postText("/v1/plans/comparison/diagram", question, "image/svg+xml")]);
    const { changes, findings, steps, needed } = answer.result;
    const picture = document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);
    // The picture on the bench has names of the same kind.
    picture.removeAttribute("aria-labelledby");
    picture.setAttribute("aria-label", "Both circuits in one diagram");
    picture.querySelectorAll("[id]").forEach((each) => each.removeAttribute("id"));
    fill(
      target,
      element("h3", {}, changes.length === 0 ? "Nothing is different" : "What is different"),
      element("ul", {}, ...changes.map((each) => element("li", {}, `${each.isText ?? each.wasText}: ${each.changes.join(", ")}${each.isText && each.wasText ? ` (was: ${each.wasText})` : ""}`))),
      ...group("Findings that appear", findings.appear),
      ...group("Findings that go", findings.disappear),
      steps.some((step) => step.readings.length > 0) ? element("h3", {}, "Readings that change") : null,
      ...steps.filter((step) => step.readings.length > 0).map((step) =>
        wide(
          step.description,
          table(step.description, [["Where", false], ["Before", true], ["After", true], ["Difference", true]], step.readings.slice(0, 12).map((each) => [
            each.at.includes(".") ? endName(each.at) : each.at, `${figure(each.before)} ${each.unit}`, `${figure(each.after)} ${each.unit}`, `${each.change > 0 ? "+" : "−"}${figure(Math.abs(each.change))}`,
          ])),
        ),
      ),
      ...(needed?.wires?.length > 0 || needed?.parts?.length > 0
        ? [element("h3", {}, "What you need"), element("ul", {}, ...needed.parts.map((each) => element("li", {}, `${each.label ?? each.part} (${each.kind})`)), ...needed.wires.map((each) => element("li", {}, `${each.colour ?? ""} ${each.size ?? ""}, ${figure(each.totalM)} m`)))]
        : []),
      changes.length === 0 ? null : element("div", { className: "wide picture", tabIndex: 0, role: "region", "aria-label": "Both circuits" }, picture),
    );
  } catch (refused) {
    target.replaceChildren(element("p", { className: "problem" }, explained(refused)));
  }
}

function group(title, findings) {
  return !findings || findings.length === 0 ? [] : [element("h3", {}, title), element("ul", {}, ...findings.map((each) => element("li", {}, severity(each.severity), ` ${each.text}`)))];
}
