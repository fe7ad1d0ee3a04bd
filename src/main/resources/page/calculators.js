// The small calculators. Without this file the forms still work: the browser then shows the answer as a page.

import { t } from "./text.js";
import { element, severity, wide } from "./elements.js";
import { Refusal, getJson } from "./service.js";
import { figure, fine, source } from "./words.js";

/** What each answer comes to: the figure that the service gives by itself, in a sentence, and its verdict. */
const ANSWERS = {
  "/v1/ballast": {
    figure: (result) => result.coilKeyOnV,
    words: (result) => t("v-at-the-coil-with", { coilKeyOnV: figure(result.coilKeyOnV) }),
    verdict: (result) => [result.conditions[0]?.withoutBypass.verdictText.text, cranking(result)],
  },
  "/v1/spark": {
    figure: (result) => result.at.marginKv,
    words: (result) => t("kv-in-hand-kv-available", { marginKv: figure(result.at.marginKv), availableKv: figure(result.at.availableKv), requiredKv: figure(result.at.requiredKv) }),
    verdict: () => [],
  },
  "/v1/circuit": {
    figure: (result) => result.smallest?.areaMm2,
    words: (result) => (!result.smallest ? t("no-wire-will-do") : wire(result.smallest) === wire(result.usual) ? t("the-smallest-and-the-usual", { smallest: wire(result.smallest) }) : t("smallest-usual", { smallest: wire(result.smallest), usual: wire(result.usual) })),
    verdict: (result) => [
      t("draws", { amperes: figure(result.currentA), surges: result.surgeA > result.currentA ? 1 : 0, surge: figure(result.surgeA) }),
      rated(result.switchA, result.relayA),
      judged(t("drop"), result.smallest?.drop, "V"),
    ],
  },
  "/v1/voltage-drop": {
    figure: (result) => result.totalV,
    words: (result) => `${figure(result.totalV)} V lost, ${figure(result.totalPercent)} %`,
    verdict: (result) => [judged(t("drop"), result.verdict, "V"), judged(t("current"), result.wireVerdict, "A")],
  },
  "/v1/fuse": {
    figure: (result) => result.ratingA,
    words: (result) => (result.ratingA === undefined || result.ratingA === null ? t("no-fuse-fits") : `${fine(result.ratingA)} A`),
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
  return t("wire-chosen", { size: size.replace("mm2", "mm²"), fuses: fuseA ? 1 : 0, fuse: fine(fuseA), loads: loadV ? 1 : 0, volts: figure(loadV) });
}

/** What switches the load has to be made for, each figure once. */
function rated(switchA, relayA) {
  if (!switchA || switchA === relayA) {
    return relayA ? t("relay-rated", { switches: switchA ? 1 : 0, amperes: fine(relayA) }) : "";
  }
  return t("switch-rated", { amperes: fine(switchA), relays: relayA ? 1 : 0, relay: fine(relayA) });
}

function cranking(result) {
  const crank = result.conditions.find((each) => each.condition === "crank");
  const bypass = crank?.withBypass;
  return crank ? t("cranking", { volts: figure(crank.withoutBypass.coilV), bypasses: bypass ? 1 : 0, bypassed: figure(bypass?.coilV) }) : "";
}

function judged(what, verdict, unit) {
  if (!verdict || verdict.limit === undefined) {
    return "";
  }
  const over = verdict.level !== "fits";
  return t("judged", { what, value: `${figure(verdict.value)} ${unit}`, side: over ? "over" : "under", limit: `${figure(verdict.limit)} ${unit}`, near: verdict.borderline ? 1 : 0, rule: verdict.basis.rule });
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
    ...(DRAWN.includes(path) ? [wide(t("plot"), element("img", { src: `${path}?${query}&format=svg`, alt: t("plot-of", { answer: words(answer.result) }) }))] : []),
    details(t("how-it-is-calculated"), answer.working.map((line) => line.text)),
    details(t("sources"), answer.basis.map(sourceInWords)),
    details(t("cautions"), answer.cautions.map((caution) => caution.text)),
  ];
}

function sourceInWords(basis) {
  return source(basis);
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
      setProblem(input, error.code === "missing" ? t("needed", { accepted: error.accepted }) : t("accepted", { accepted: error.accepted }));
    }
    return !input;
  });
  inputs.find((input) => input.hasAttribute("aria-invalid"))?.focus();
  return refused.errors.length === 0 || homeless.length > 0
    ? [element("p", { className: "problem" }, refused.message)]
    : [element("p", { className: "problem" }, t("not-calculated-see-the-marked"))];
}
