// A club's own page that asks a Loomwright service at another address. The service must be started with
// --allow-origin followed by the address (scheme, host, port) of this page.
"use strict";

// The service: ?service=https://... in the address of this page, else the usual one on this machine. A real page would
// have its service written here. ?plan=NAME&step=run shows a vehicle at once, so that a page can be linked to.
const ASKED = new URLSearchParams(location.search);
const SERVICE = (ASKED.get("service") || "http://127.0.0.1:8080").replace(/\/$/, "");

const $ = (selector, within = document) => within.querySelector(selector);

// Two decimals; a minus before zeros alone is left out.
const volts = value => `${value.toFixed(2).replace(/^-(0\.00)$/, "$1")} V`;

// Elements are made, never written as HTML: texts of the service stay texts.
function element(name, properties = {}, ...children) {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...children);
  return made;
}

class Refused extends Error {}

async function ask(path, query = {}, plan = null) {
  const address = new URL(SERVICE + path);
  Object.entries(query).forEach(([name, value]) => address.searchParams.set(name, value));
  let answer;
  try {
    answer = await fetch(address, plan === null ? {} :
      { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(plan) });
  } catch {
    throw new Error(`The service at ${SERVICE} does not answer this page. Is it running, and was it started with ` +
      `--allow-origin ${location.origin}?`);
  }
  if (answer.ok) {
    return answer;
  }
  const problem = await answer.json();
  throw new Refused(problem.detail || problem.title);
}

const askJson = async (...args) => (await ask(...args)).json();

// Small calculators ----------------------------------------------------------------------------------------------------

async function calculate(form) {
  const place = $(".answer", form);
  place.classList.remove("refused");
  place.textContent = "…";
  try {
    const query = { ...Object.fromEntries(new FormData(form)), format: "text" };
    const figure = Number(await (await ask(form.dataset.path, query)).text());
    place.textContent = `${Number(figure.toPrecision(4))} ${form.dataset.unit}`;
  } catch (error) {
    place.classList.add("refused");
    place.textContent = error.message;
  }
}

// A vehicle ------------------------------------------------------------------------------------------------------------

async function show() {
  const state = $("#plan-state");
  state.textContent = "Calculating…";
  try {
    const name = $("#plan").value;
    const step = $("#step").value;
    const plan = await askJson(`/v1/examples/${encodeURIComponent(name)}`);
    const [solution, backfeed] = await Promise.all([
      askJson("/v1/plans/solution", {}, plan), askJson("/v1/plans/backfeed", {}, plan), draw(name, step)]);
    showFindings(backfeed.result);
    showReadings(solution.result.steps.find(one => one.step === step));
    state.textContent = "";
  } catch (error) {
    state.textContent = error.message;
  }
}

// The diagram by its address; a service that draws none answers 404, and the page does without.
function draw(name, step) {
  const figure = $("#picture");
  const image = $("img", figure);
  return new Promise(done => {
    image.onload = () => { figure.hidden = false; done(); };
    image.onerror = () => { figure.hidden = true; done(); };
    image.alt = `Circuit diagram of ${name}, step ${step}; the readings below say the same in figures.`;
    $("figcaption", figure).textContent = `${name}, step ${step}. Switches and contacts stand ` +
      "as in the worst finding that is marked; in the table of readings they stand as the plan says.";
    image.src = `${SERVICE}/v1/examples/${encodeURIComponent(name)}/diagram?format=svg&step=${step}`;
  });
}

function showFindings(report) {
  const lines = report.unintendedFeeds.map(feed => element("p", { className: `finding ${feed.severity}` },
    element("b", {}, feed.severity), ` ${feed.verdict.text} `,
    feed.remedies.length ? `Remedy: ${feed.remedies[0].change.text}` : "No remedy was found among the changes that were tried."));
  $("#findings").replaceChildren(element("h3", {}, "Live when it should be off, in any position of the key"),
    ...(lines.length ? lines : [element("p", {}, "Nothing.")]));
}

function showReadings(step) {
  const rows = step.nodes.map(node => element("tr", {}, element("th", { scope: "row" }, node.node),
    element("td", { className: "number" }, node.floating ? "floating" : volts(node.voltageV))));
  $("#readings").replaceChildren(element("table", {},
    element("caption", {}, `What a meter shows to the chassis: ${step.description}`),
    element("thead", {}, element("tr", {}, element("th", { scope: "col" }, "At"), element("th", { scope: "col" }, "Shows"))),
    element("tbody", {}, ...rows)));
}

function onSubmit(form, action) {
  form.addEventListener("submit", event => {
    event.preventDefault();
    action(form);
  });
}

async function start() {
  document.querySelectorAll("form.figure").forEach(form => onSubmit(form, calculate));
  onSubmit($("#plan-form"), show);
  const state = $("#service-state");
  try {
    const { examples } = await askJson("/v1/examples");
    $("#plan").append(...examples.map(({ name, title }) => element("option", { value: name }, `${name}: ${title}`)));
    state.textContent = `Calculated by the service at ${SERVICE}.`;
    document.querySelectorAll("form.figure").forEach(calculate);
    if (ASKED.has("plan")) {
      $("#plan").value = ASKED.get("plan");
      $("#step").value = ASKED.get("step") || "run";
      show();
    }
  } catch (error) {
    state.textContent = error.message;
  }
}

start();
