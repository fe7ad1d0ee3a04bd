// The circuit: a plan, the position of its key, the picture and the tables of that position.

import * as changes from "./changes.js";
import { element, fillTable, showSvg } from "./elements.js";
import { clearProblem, setProblem } from "./fields.js";
import { Refusal, getJson, postJson, postText } from "./service.js";

const STEP_AT_FIRST = "run";

const place = (id) => document.getElementById(id);

/** The plan as opened, and as it stands after the changes, each with its solution. */
let opened = null;
let current = null;
let step = STEP_AT_FIRST;
let history = [];
/** What was checked last: its findings are marked in the picture. */
let checked = null;
/** Only the answer to the last question may be shown. */
let turn = 0;

/** Fills the list of demonstration plans, opens the first and waits for the reader. */
export async function start() {
  const listing = await getJson("/v1/examples");
  place("example").append(
    ...listing.examples.map((example) => element("option", { value: example.href }, example.title)),
  );
  place("example").addEventListener("change", () => guard(openExample));
  place("file").addEventListener("change", () => openFile());
  // The same file, edited and chosen again, is a change only if the field was empty before.
  place("file").addEventListener("click", () => (place("file").value = ""));
  place("item").addEventListener("change", showProperties);
  place("changer").addEventListener("submit", change);
  place("undo").addEventListener("click", () => guard(undo));
  place("save").addEventListener("click", save);
  place("check").addEventListener("click", () => guard(check));
  place("zoom").addEventListener("click", zoom);
  await guard(openExample);
}

async function openExample() {
  await open(await getJson(place("example").value));
}

async function openFile() {
  const problem = place("file-problem");
  problem.textContent = "";
  const file = place("file").files[0];
  if (!file) {
    return;
  }
  try {
    await open(JSON.parse(await file.text()));
  } catch (refused) {
    problem.textContent =
      refused instanceof SyntaxError ? `${file.name} is not JSON: ${refused.message}` : explained(refused);
  }
}

async function open(plan) {
  const solved = { plan, solution: await postJson("/v1/plans/solution", plan) };
  opened = solved;
  current = solved;
  history = [];
  showPlan();
}

/** Runs what a control asks for and says what went wrong. */
async function guard(action) {
  try {
    await action();
  } catch (refused) {
    if (!(refused instanceof Refusal)) {
      throw refused;
    }
    place("status").textContent = explained(refused);
  }
}

function explained(refused) {
  const places = refused.errors?.map((error) => `${error.pointer ?? error.parameter ?? ""}: ${error.accepted}`) ?? [];
  return places.length > 1 ? `${refused.message} (${places.join("; ")})` : refused.message;
}

function showPlan() {
  place("plan-name").textContent = current.plan.name;
  const steps = current.solution.result.steps;
  if (!steps.some((each) => each.step === step)) {
    step = steps[0].step;
  }
  place("steps").replaceChildren(
    ...steps.map((each) =>
      radio("step", each.step, each.description, each.step === step, () => {
        step = each.step;
        guard(showStep);
      }),
    ),
  );
  showSwitches();
  showChanges();
  const chosen = place("item").value;
  const items = changes.items(current.plan);
  place("item").replaceChildren(
    ...items.map((item) => element("option", { value: item.pointer, selected: item.pointer === chosen }, item.label)),
  );
  showProperties();
  place("cautions").replaceChildren(
    ...current.solution.cautions.map((caution) => element("li", {}, caution.text)),
  );
  place("finding-summary").textContent = "Not checked since the plan was opened or changed.";
  place("finding-list").replaceChildren();
  guard(showStep);
}

function showSwitches() {
  const free = current.plan.parts.flatMap((part, i) =>
    part.kind === "switch" && !part.positionByCondition ? [{ part, i }] : [],
  );
  place("switches").hidden = free.length === 0;
  place("free-switches").replaceChildren(
    ...free.map(({ part, i }) =>
      element(
        "label",
        {},
        part.label ?? part.id,
        choice(
          part.positions.map((position) => position.name),
          part.position ?? part.positions[0].name,
          (name) => guard(() => setSwitch(i, part, name)),
        ),
      ),
    ),
  );
}

async function setSwitch(i, part, name) {
  // A switch is no change of the wiring, so it is set in the plan as opened too.
  const set = (plan) => {
    const copy = structuredClone(plan);
    copy.parts[i].position = name;
    return copy;
  };
  const plans = current === opened ? [set(opened.plan)] : [set(opened.plan), set(current.plan)];
  const solved = await Promise.all(
    plans.map(async (plan) => ({ plan, solution: await postJson("/v1/plans/solution", plan) })),
  );
  history = history.map((entry) => ({ ...entry, plan: set(entry.plan) }));
  opened = solved[0];
  current = solved[solved.length - 1];
  place("status").textContent = `${part.label ?? part.id}: ${name}.`;
  await showStep();
}

function radio(group, value, words, checked, chosen) {
  const input = element("input", { type: "radio", name: group, value, checked });
  input.addEventListener("change", chosen);
  return element("label", {}, input, words);
}

function choice(values, selected, chosen) {
  const select = element(
    "select",
    {},
    ...values.map((value) => element("option", { value, selected: value === selected }, value)),
  );
  select.addEventListener("change", () => chosen(select.value));
  return select;
}

async function showStep() {
  const mine = ++turn;
  showTables();
  place("picture").setAttribute("aria-busy", "true");
  try {
    const svg = await postText(
      `/v1/plans/diagram?step=${encodeURIComponent(step)}&marks=${current === checked ? "findings,backfeed" : "none"}`,
      current.plan,
      "image/svg+xml",
    );
    if (mine === turn) {
      showSvg(place("diagram"), svg);
    }
  } finally {
    if (mine === turn) {
      place("picture").setAttribute("aria-busy", "false");
    }
  }
}

function showTables() {
  const now = stepOf(current);
  const before = current === opened ? null : stepOf(opened);
  place("status").textContent = [now.description, ...now.findings.map((finding) => finding.text)].join(". ");
  const wires = new Map(current.plan.wires.map((wire) => [wire.id, wire]));
  showTable(
    "wires",
    `Wires, ${now.description}`,
    ["wire", "from", "to", "size", "colour", "A", "volts lost"],
    ["currentA", "dropV"],
    now.wires,
    before?.wires,
    (row) => row.wire,
    (row) => {
      const wire = wires.get(row.wire) ?? {};
      return [row.from, row.to, wire.size ?? "", wire.colour ?? ""];
    },
  );
  const labels = new Map(current.plan.parts.map((part) => [part.id, part.label]));
  const showActivity = (row) => [labels.get(row.part) ?? row.kind, row.state ?? "", activity(row)];
  showTable(
    "parts",
    `Parts, ${now.description}`,
    ["part", "what it is", "state", "what it does", "V across", "W taken"],
    ["acrossV", "powerW"],
    now.parts,
    before?.parts,
    (row) => row.part,
    showActivity,
  );
  showTable(
    "points",
    `Points to measure, volts to chassis, ${now.description}`,
    ["point", "terminals", "V"],
    ["voltageV"],
    now.nodes,
    before?.nodes,
    (row) => row.node,
    (row) => [row.terminals.join(", ")],
  );
}

function activity(row) {
  if (!row.activity) {
    return "";
  }
  const unasked = row.meantLive === false && row.activity !== "dead" ? ", though it should be dead" : "";
  return row.activity.replaceAll("-", " ") + unasked;
}

/** One table: words, then figures, with a column "was" after each figure where the plan was changed. */
function showTable(id, caption, heads, figures, rows, rowsBefore, key, words) {
  const before = new Map((rowsBefore ?? []).map((row) => [key(row), row]));
  const wordHeads = heads.slice(0, heads.length - figures.length);
  const figureHeads = heads.slice(heads.length - figures.length);
  fillTable(
    place(id),
    caption,
    wordHeads,
    figureHeads.flatMap((head) => (rowsBefore ? [head, `${head} before`] : [head])),
    rows.map((row) => {
      const old = before.get(key(row));
      const differs = rowsBefore && figures.some((name) => !same(row[name], old?.[name]));
      return {
        head: key(row),
        className: `${row.live === undefined ? "" : row.live ? "live" : "dead"} ${differs ? "changed" : ""}`,
        cells: [
          ...words(row),
          ...figures.flatMap((name) => (rowsBefore ? [shown(row, name), shown(old, name)] : [shown(row, name)])),
        ],
      };
    }),
  );
}

function shown(row, name) {
  return row?.floating ? "floating" : (row?.[name] ?? "");
}

function same(a, b) {
  return a === b || (a !== undefined && b !== undefined && Math.abs(a - b) <= 1e-4 * Math.max(Math.abs(a), Math.abs(b), 0.01));
}

function stepOf(solved) {
  return solved.solution.result.steps.find((each) => each.step === step);
}

function zoom() {
  const full = place("diagram").classList.toggle("full");
  place("zoom").setAttribute("aria-pressed", String(full));
}

function showProperties() {
  const pointer = place("item").value;
  place("change-problem").textContent = "";
  if (!pointer) {
    place("properties").replaceChildren();
    return;
  }
  place("properties").replaceChildren(
    ...changes.properties(current.plan, pointer).map((property) => {
      const id = `property${property.pointer.replaceAll("/", "-")}`;
      return element(
        "p",
        { className: "field" },
        element("label", { for: id }, property.name),
        element("input", { id, name: property.pointer, value: property.value, autocomplete: "off" }),
        element("span", { className: "problem", id: `${id}-problem` }),
      );
    }),
  );
}

async function change(submitted) {
  submitted.preventDefault();
  const inputs = [...place("properties").querySelectorAll("input")];
  inputs.forEach(clearProblem);
  place("change-problem").textContent = "";
  const pointer = place("item").value;
  const before = changes.properties(current.plan, pointer);
  const texts = new Map(inputs.map((input) => [input.name, input.value.trim()]));
  const said = changes.words(pointer ? place("item").selectedOptions[0].text : "", before, texts);
  if (said.length === 0) {
    place("change-problem").textContent = "Nothing is changed yet: enter another value above.";
    return;
  }
  const entered = before.filter((property) => texts.get(property.pointer) !== property.value);
  const plan = changes.changed(
    current.plan,
    entered.map((property) => [property.pointer, texts.get(property.pointer)]),
  );
  try {
    const solution = await postJson("/v1/plans/solution", plan);
    history.push({ plan: current.plan, said });
    current = { plan, solution };
    showPlan();
  } catch (refused) {
    place("change-problem").textContent = showProblems(inputs, refused) ? "" : explained(refused);
  }
}

/** Puts each fault beside the field it is about; true if all found a field. */
function showProblems(inputs, refused) {
  if (!(refused instanceof Refusal)) {
    throw refused;
  }
  const homeless = refused.errors.filter((error) => {
    const input = inputs.find((each) => error.pointer === each.name || error.pointer?.startsWith(`${each.name}/`));
    if (input) {
      setProblem(input, `Accepted is ${error.accepted}.`);
    }
    return !input;
  });
  return refused.errors.length > 0 && homeless.length === 0;
}

function showChanges() {
  place("changes").hidden = history.length === 0;
  place("change-list").replaceChildren(
    ...history.flatMap((entry) => entry.said).map((text) => element("li", {}, text)),
  );
}

async function undo() {
  const last = history[history.length - 1];
  if (!last) {
    return;
  }
  const solution = await postJson("/v1/plans/solution", last.plan);
  history = history.slice(0, -1);
  current = history.length === 0 ? opened : { plan: last.plan, solution };
  showPlan();
}

function save() {
  const file = new Blob([JSON.stringify(current.plan, null, 2)], { type: "application/json" });
  const link = element("a", { href: URL.createObjectURL(file), download: "plan.json" });
  link.click();
  URL.revokeObjectURL(link.href);
}

async function check() {
  const asked = current;
  place("finding-summary").textContent = "Checking…";
  let answer;
  try {
    answer = await postJson("/v1/plans/review", asked.plan);
  } catch (refused) {
    place("finding-summary").textContent = explained(refused);
    return;
  }
  if (asked !== current) {
    return;
  }
  checked = asked;
  const { counts, findings } = answer.result;
  place("finding-summary").textContent =
    findings.length === 0
      ? "Nothing found. That is no proof: see the cautions."
      : `${counts.danger} danger, ${counts.warning} warning, ${counts.note} note.`;
  place("finding-list").replaceChildren(
    ...findings.map((finding) =>
      element(
        "li",
        {},
        element("span", { className: `severity ${finding.severity}` }, finding.severity),
        ` ${finding.text}`,
        ...(finding.remedy ? [element("br"), element("strong", {}, "Remedy: "), finding.remedy.text] : []),
      ),
    ),
  );
  await showStep();
}
