// The small calculators. Without this file the forms still work: the browser then shows the answer as a page.

import { clearProblem, setProblem } from "./fields.js";
import { element, figure } from "./elements.js";
import { Refusal, getJson } from "./service.js";

/** What each answer comes to, in one line. */
const HEADLINES = {
  "/v1/ballast": (result) => `${figure(result.coilKeyOnV)} V at the coil with the key on`,
  "/v1/spark": (result) =>
    `${figure(result.at.availableKv)} kV available, ${figure(result.at.requiredKv)} kV required`,
  "/v1/voltage-drop": (result) => `${figure(result.totalV)} V lost, ${figure(result.totalPercent)} %`,
  "/v1/fuse": (result) =>
    result.choice ? `${figure(result.choice.ratingA)} A` : `No fuse fits: ${result.reason}`,
  "/v1/resistance": (result) => `${figure(result.totalOhm)} ohm`,
};

/** Addresses that can also draw their answer. */
const DRAWN = ["/v1/spark", "/v1/voltage-drop", "/v1/fuse"];

/** Lets every calculator answer within the page. */
export function start() {
  for (const form of document.querySelectorAll("form.card")) {
    form.noValidate = true;
    for (const input of form.querySelectorAll("input, select")) {
      input.after(element("span", { className: "problem", id: `${input.id}-problem` }));
    }
    form.addEventListener("submit", (submitted) => {
      submitted.preventDefault();
      calculate(form);
    });
  }
}

async function calculate(form) {
  const path = form.getAttribute("action");
  const inputs = [...form.querySelectorAll("input, select")];
  const place = form.querySelector(".result");
  inputs.forEach(clearProblem);
  const query = new URLSearchParams(
    inputs.filter((input) => input.value.trim() !== "").map((input) => [input.name, input.value.trim()]),
  );
  try {
    const answer = await getJson(`${path}?${query}`);
    place.replaceChildren(...told(path, query, answer));
  } catch (refused) {
    if (!(refused instanceof Refusal)) {
      throw refused;
    }
    place.replaceChildren(...refusal(inputs, refused));
  }
}

function told(path, query, answer) {
  const findings = answer.result.findings ?? [];
  return [
    element("p", { className: "figure" }, HEADLINES[path](answer.result)),
    ...findings.map((finding) =>
      element(
        "p",
        {},
        element("span", { className: `severity ${finding.severity}` }, finding.severity),
        ` ${finding.text}`,
      ),
    ),
    ...(DRAWN.includes(path)
      ? [element("img", { src: `${path}?${query}&format=svg`, alt: `Plot: ${HEADLINES[path](answer.result)}` })]
      : []),
    details("How it is calculated", answer.working.map((line) => line.text)),
    details("Sources", answer.basis.map(sourceInWords)),
    element("p", {}, "Cautions"),
    element("ul", {}, ...answer.cautions.map((caution) => element("li", {}, caution.text))),
  ];
}

// As the tables and the sheet have it.
function sourceInWords(basis) {
  return `${basis.rule}: ${basis.source}${basis.status === "from-memory" ? " (from memory)" : ""}`;
}

function details(summary, lines) {
  return element(
    "details",
    {},
    element("summary", {}, summary),
    element("ul", {}, ...lines.map((line) => element("li", {}, line))),
  );
}

function refusal(inputs, refused) {
  const homeless = refused.errors.filter((error) => {
    const input = inputs.find((each) => each.name === error.parameter);
    if (input) {
      setProblem(input, error.code === "missing" ? `Needed: ${error.accepted}.` : `Accepted is ${error.accepted}.`);
    }
    return !input;
  });
  inputs.find((input) => input.hasAttribute("aria-invalid"))?.focus();
  return refused.errors.length === 0 || homeless.length > 0
    ? [element("p", { className: "problem" }, refused.message)]
    : [element("p", { className: "problem" }, "Not calculated: see the marked field.")];
}
