// Key and switches above the picture.

import { t } from "./text.js";
import { bench, figures, freeSwitches, plan, positionOf, setStanding, setStep, setSwitch, standing, when } from "./workshop.js";
import { button, element, place, say } from "./elements.js";
import { nameOf, state } from "./words.js";

const SHORT = {
  off: t("off"), accessory: t("accessory"), run: t("on"), crank: t("crank"), running: t("running"),
  "off-engine-turning": t("just-off"), "off-again": t("off-again"),
};

/** Keeps them up to date. */
export function start() {
  when("solved state", show);
}

function show() {
  const steps = bench.solution?.result.steps ?? [];
  const key = place("steps");
  place("key").hidden = steps.length === 0;
  const names = steps.map((each) => each.step).join(" ");
  if (key.dataset.names !== names) {
    key.dataset.names = names;
    key.replaceChildren(
      ...steps.map((each) => {
        const input = element("input", { type: "radio", name: "step", value: each.step, change: () => turn(each) });
        return element("label", { title: each.description }, input, element("span", {}, SHORT[each.step] ?? each.step));
      }),
    );
  }
  key.querySelectorAll("input").forEach((input) => (input.checked = input.value === bench.step));
  showSwitches();
  const step = figures();
  place("step-note").replaceChildren(
    ...(step ? [element("p", { id: "step-means", className: "assumed" }, `${step.description[0].toUpperCase()}${step.description.slice(1)}.`)] : []),
    ...(step?.findings ?? []).map((finding) => element("p", { className: "problem" }, finding.text)),
    ...(bench.held.length > 0 ? [element("p", { id: "held" }, heldText(), " ", button(t("forget-what-was-done"), () => setStanding(standing()), { className: "small" }))] : []),
  );
}

/** Which parts are otherwise than the switches alone would have them. */
function heldText() {
  const rows = new Map((figures()?.parts ?? []).map((row) => [row.part, row.state]));
  const label = (id) => nameOf(plan().parts.find((part) => part.id === id)) || id;
  return t("held", { parts: bench.held.map((id) => `${label(id)}: ${state(rows.get(id))}`).join("; ") });
}

function turn(step) {
  setStep(step.step);
  say(t("key-turned", { description: step.description }));
}

function showSwitches() {
  const free = freeSwitches();
  const row = place("switches");
  row.hidden = free.length === 0;
  const names = JSON.stringify(free.map((part) => [part.id, part.label, part.positions.map((position) => position.name)]));
  if (row.dataset.names !== names) {
    row.dataset.names = names;
    row.replaceChildren(
      ...free.map((part) => {
        const chooser = element(
          "select",
          { "data-switch": part.id, change: () => move(part, chooser.value) },
          ...part.positions.map((position) => element("option", { value: position.name }, position.name)),
        );
        return element("label", {}, element("span", {}, part.label ?? part.id), chooser);
      }),
    );
  }
  for (const part of free) {
    row.querySelector(`select[data-switch="${CSS.escape(part.id)}"]`).value = positionOf(part);
  }
}

function move(part, position) {
  setSwitch(part.id, position);
  say(`${part.label ?? part.id}: ${position}.`);
}
