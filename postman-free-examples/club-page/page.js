// A club's own page that asks a Loomwright service at another address. The service must be started with
// --allow-origin followed by the address (scheme, host, port) of this page.
"use strict";

// The cars are the lists in the folder cars beside this page: put a file there, and it is on the page. The web server must
// list that folder; where it does not, write the names of the files, one a line, into cars/cars.txt.
const CARS = "cars/";
const FORMS = {
  csv: "text/csv", tsv: "text/csv", md: "text/markdown",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  ods: "application/vnd.oasis.opendocument.spreadsheet",
};

// The service: ?service=https://... in the address of this page, else the usual one on this machine. A real page would
// have its service written here. ?car=NAME&step=run shows a car at once, so that a page can be linked to.
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

async function ask(path, query = {}, list = null, accept = null) {
  const address = new URL(SERVICE + path);
  Object.entries(query).forEach(([name, value]) => address.searchParams.set(name, value));
  const headers = { ...(accept ? { Accept: accept } : {}), ...(list ? { "Content-Type": list.form } : {}) };
  let answer;
  try {
    answer = await fetch(address, list ? { method: "POST", headers, body: list.content } : { headers });
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

// A car ----------------------------------------------------------------------------------------------------------------

const formOf = file => FORMS[file.split(".").pop().toLowerCase()];

// The files of the folder: from the page that the web server makes of it, else from cars.txt.
async function carFiles() {
  const listing = await fetch(CARS);
  if (listing.ok) {
    const page = new DOMParser().parseFromString(await listing.text(), "text/html");
    const files = [...page.querySelectorAll("a[href]")].map(link => decodeURIComponent(link.getAttribute("href")));
    const lists = files.filter(file => !file.includes("/") && formOf(file));
    if (lists.length) {
      return lists.sort();
    }
  }
  const names = await fetch(`${CARS}cars.txt`);
  return names.ok ? (await names.text()).split(/\r?\n/).map(name => name.trim()).filter(formOf) : [];
}

async function show() {
  const state = $("#plan-state");
  state.textContent = "Calculating…";
  try {
    const file = $("#plan").value;
    const read = await fetch(CARS + encodeURIComponent(file));
    const list = { form: formOf(file), content: await read.arrayBuffer() };
    // Picture and table are of one answer, so they stand in the same position of the key and show the same volts.
    const [drawn, review] = await Promise.all([
      askJson("/v1/plans/diagram", { marks: "none" }, list, "application/json"), askJson("/v1/plans/review", {}, list)]);
    showStep(drawn.result);
    $("#step").onchange = () => showStep(drawn.result);
    showFindings(review.result);
    showOpen(review);
    state.textContent = "";
    await offerSheet(file, list);
  } catch (error) {
    state.textContent = error.message;
  }
}

function showStep(diagram) {
  const step = $("#step").value;
  const shown = diagram.steps.find(one => one.step === step);
  const figure = $("#picture");
  const picture = $("div", figure);
  const svg = new DOMParser().parseFromString(diagram.svg, "image/svg+xml").documentElement;
  svg.setAttribute("data-step", step);
  picture.replaceChildren(document.importNode(svg, true));
  picture.setAttribute("aria-label", shown.description);
  $("figcaption", figure).textContent = shown.moment;
  figure.hidden = false;
  showReadings(shown);
}

function showFindings(report) {
  const lines = report.findings.map(finding => element("p", { className: `finding ${finding.severity}` },
    element("b", {}, finding.severity), ` ${finding.text} `, finding.remedy ? finding.remedy.text : ""));
  $("#findings").replaceChildren(element("h3", {}, "What to act on, worst first"),
    ...(lines.length ? lines : [element("p", {}, "Nothing was found.")]));
}

// What the list leaves open, and what was taken for it.
function showOpen(answer) {
  const items = [...answer.questions.map(one => `${one.text} (${one.place}; taken: ${one.taken})`),
    ...(answer.assumptions || []).map(one => one.text)];
  const list = element("ul", {}, ...items.map(text => element("li", {}, text)));
  $("#open").replaceChildren(...(items.length ? [element("details", {},
    element("summary", {}, `Asked and assumed: ${items.length}`), list)] : []));
}

async function offerSheet(file, list) {
  const link = $("#sheet");
  const sheet = await ask("/v1/plans/sheet", {}, list, "text/html");
  URL.revokeObjectURL(link.href);
  link.href = URL.createObjectURL(await sheet.blob());
  link.download = `${file.replace(/\.\w+$/, "")}-sheet.html`;
  link.hidden = false;
}

function showReadings(step) {
  const rows = step.nodes.map(node => element("tr", {}, element("th", { scope: "row" }, node.node),
    element("td", { className: "number" }, node.floating ? "floating" : volts(node.voltageV))));
  $("#readings").replaceChildren(element("table", {},
    element("caption", {}, `What a meter shows to the chassis, key ${$("#step").selectedOptions[0].text}`),
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
    await ask("/v1/templates");
    document.head.append(element("link", { rel: "stylesheet", href: `${SERVICE}/page/diagram.css` }));
    const cars = await carFiles();
    $("#plan").append(...cars.map(file => element("option", { value: file }, file.replace(/\.\w+$/, "").replace(/[-_]/g, " "))));
    state.textContent = `Calculated by the service at ${SERVICE}.`;
    document.querySelectorAll("form.figure").forEach(calculate);
    if (ASKED.has("car")) {
      $("#plan").value = cars.find(file => file.replace(/\.\w+$/, "") === ASKED.get("car")) || cars[0];
      $("#step").value = ASKED.get("step") || "run";
      show();
    }
  } catch (error) {
    state.textContent = error.message;
  }
}

start();
