// The small calculators. Without this file the forms still work: the browser then shows the answer as a page.

import { element, severity, wide } from "./elements.js";
import { Refusal, getJson } from "./service.js";
import { figure, fine } from "./words.js";

/** What each answer comes to: the figure that the service gives by itself, in a sentence, and its verdict. */
const ANSWERS = {
  "/v1/ballast": {
    figure: (result) => result.coilKeyOnV,
    words: (result) => `${figure(result.coilKeyOnV)} V at the coil with the key on`,
    verdict: (result) => [result.conditions[0]?.withoutBypass.verdictText.text, cranking(result)],
  },
  "/v1/spark": {
    figure: (result) => result.at.marginKv,
    words: (result) => `${figure(result.at.marginKv)} kV in hand: ${figure(result.at.availableKv)} kV available, ${figure(result.at.requiredKv)} kV required`,
    verdict: () => [],
  },
  "/v1/circuit": {
    figure: (result) => result.smallest?.areaMm2,
    words: (result) => (!result.smallest ? "No wire will do" : wire(result.smallest) === wire(result.usual) ? `${wire(result.smallest)}: the smallest and the usual choice.` : `Smallest: ${wire(result.smallest)}. Usual: ${wire(result.usual)}.`),
    verdict: (result) => [
      `It draws ${figure(result.currentA)} A${result.surgeA > result.currentA ? `, ${figure(result.surgeA)} A when switched on` : ""}.`,
      rated(result.switchA, result.relayA),
      judged("Drop", result.smallest?.drop, "V"),
    ],
  },
  "/v1/voltage-drop": {
    figure: (result) => result.totalV,
    words: (result) => `${figure(result.totalV)} V lost, ${figure(result.totalPercent)} %`,
    verdict: (result) => [judged("Drop", result.verdict, "V"), judged("Current", result.wireVerdict, "A")],
  },
  "/v1/fuse": {
    figure: (result) => result.ratingA,
    words: (result) => (result.ratingA === undefined || result.ratingA === null ? "No fuse fits" : `${fine(result.ratingA)} A`),
    verdict: (result) => [result.reason.text],
  },
  "/v1/resistance": {
    figure: (result) => result.totalOhm,
    words: (result) => `${figure(result.totalOhm)} ohm`,
    verdict: () => [],
  },
};

/** Addresses that can also draw their answer. */
const DRAWN = ["/v1/spark", "/v1/voltage-drop", "/v1/fuse"];

function wire({ size, fuseA, loadV }) {
  return `${size.replace("mm2", "mm²")}${fuseA ? `, fuse ${fine(fuseA)} A` : ""}${loadV ? `, ${figure(loadV)} V at the load` : ""}`;
}

/** What switches the load has to be made for, each figure once. */
function rated(switchA, relayA) {
  if (!switchA || switchA === relayA) {
    return relayA ? `${switchA ? "Switch or relay" : "Relay"} for ${fine(relayA)} A or more.` : "";
  }
  return `Switch for ${fine(switchA)} A or more${relayA ? `, or a relay for ${fine(relayA)} A or more` : ""}.`;
}

function cranking(result) {
  const crank = result.conditions.find((each) => each.condition === "crank");
  const bypass = crank?.withBypass;
  return crank ? `Cranking: ${figure(crank.withoutBypass.coilV)} V at the coil${bypass ? `, ${figure(bypass.coilV)} V with the bypass` : ", no bypass"}.` : "";
}

function judged(what, verdict, unit) {
  if (!verdict || verdict.limit === undefined) {
    return "";
  }
  const over = verdict.level !== "fits";
  return `${what}: ${figure(verdict.value)} ${unit} is ${over ? "over" : "under"} the limit of ${figure(verdict.limit)} ${unit}${verdict.borderline ? ", but only just" : ""} (${verdict.basis.rule}).`;
}

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

const asked = new Map();

async function calculate(form) {
  const path = form.getAttribute("action");
  const inputs = [...form.querySelectorAll("input, select")];
  const place = form.querySelector(".result");
  inputs.forEach(clearProblem);
  const query = new URLSearchParams(inputs.filter((input) => input.value.trim() !== "").map(parameter));
  const mine = (asked.get(form) ?? 0) + 1;
  asked.set(form, mine);
  try {
    const answer = await getJson(`${path}?${query}`);
    if (mine === asked.get(form)) {
      place.replaceChildren(...shown(path, query, answer));
    }
  } catch (refused) {
    if (!(refused instanceof Refusal)) {
      throw refused;
    }
    if (mine === asked.get(form)) {
      place.replaceChildren(...refusal(inputs, refused));
    }
  }
}

/** The parameter that a field stands for: a length in feet has a name of its own, a decimal comma is a point. */
export function parameter({ name, value }) {
  // A network has no comma but that of a decimal.
  const text = name === "network" ? value.trim().replace(/(\d),(\d)/g, "$1.$2") : value.trim();
  const [, number, unit] = /^(-?[\d.,]+)\s*(m|cm|mm|ft|feet|foot|in|inch|inches|'|")?$/i.exec(text) ?? [];
  if (number === undefined || name === "network" || name === "size") {
    return [name, name === "elementsOhm" ? elements(text) : text];
  }
  const plain = name === "elementsOhm" ? elements(text) : number.replace(",", ".");
  const size = Number(plain);
  switch ((unit ?? "").toLowerCase()) {
    case "ft":
    case "feet":
    case "foot":
    case "'":
      return name === "lengthM" ? ["lengthFt", plain] : [name, text];
    case "in":
    case "inch":
    case "inches":
    case '"':
      return name === "gapMm" ? ["gapIn", plain] : name === "lengthM" ? ["lengthFt", String(size / 12)] : [name, text];
    case "cm":
      return name === "lengthM" ? [name, String(size / 100)] : [name, text];
    case "mm":
      return name === "gapMm" ? [name, plain] : [name, text];
    case "m":
      return name === "lengthM" ? [name, plain] : [name, text];
    default:
      return [name, plain];
  }
}

/** Several figures: with a semicolon, a plus or a blank between them a comma is a decimal comma. */
function elements(text) {
  return /[;+]|\d\s+\d/.test(text)
    ? text.split(/[;+\s]+/).filter(Boolean).map((each) => each.replace(",", ".")).join(",")
    : text.replace(/\s+/g, "");
}

function shown(path, query, answer) {
  const { figure: figureOf, words, verdict } = ANSWERS[path];
  const findings = answer.result.findings ?? [];
  return [
    element("p", { className: "figure", "data-figure": String(figureOf(answer.result) ?? "") }, words(answer.result)),
    ...verdict(answer.result).filter(Boolean).map((text) => element("p", { className: "verdict" }, text)),
    ...findings.map((finding) => element("p", {}, severity(finding.severity), ` ${finding.text}${finding.remedy ? ` ${finding.remedy.text}` : ""}`)),
    ...(DRAWN.includes(path) ? [wide("Plot", element("img", { src: `${path}?${query}&format=svg`, alt: `Plot: ${words(answer.result)}` }))] : []),
    details("How it is calculated", answer.working.map((line) => line.text)),
    details("Sources", answer.basis.map(sourceInWords)),
    details("Cautions", answer.cautions.map((caution) => caution.text)),
  ];
}

function sourceInWords(basis) {
  return `${basis.rule}: ${basis.source}${basis.status === "from-memory" ? " (from memory)" : ""}`;
}

function details(summary, lines) {
  return element("details", {}, element("summary", {}, summary), element("ul", {}, ...lines.map((line) => element("li", {}, line))));
}

function setProblem(input, text) {
  const problem = document.getElementById(`${input.id}-problem`);
  problem.textContent = text;
  input.setAttribute("aria-invalid", "true");
  input.setAttribute("aria-describedby", problem.id);
}

function clearProblem(input) {
  document.getElementById(`${input.id}-problem`).textContent = "";
  input.removeAttribute("aria-invalid");
  input.removeAttribute("aria-describedby");
}

/** Names under which a length or a gap may have gone out. */
const ALIASES = { lengthFt: "lengthM", gapIn: "gapMm" };

function refusal(inputs, refused) {
  const homeless = refused.errors.filter((error) => {
    const input = inputs.find((each) => each.name === (ALIASES[error.parameter] ?? error.parameter));
    if (input) {
      setProblem(input, error.code === "missing" ? `Needed: ${error.accepted}.` : `Accepted: ${error.accepted}.`);
    }
    return !input;
  });
  inputs.find((input) => input.hasAttribute("aria-invalid"))?.focus();
  return refused.errors.length === 0 || homeless.length > 0
    ? [element("p", { className: "problem" }, refused.message)]
    : [element("p", { className: "problem" }, "Not calculated: see the marked field.")];
}
