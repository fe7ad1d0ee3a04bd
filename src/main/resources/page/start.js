// Begins: the bench, its tabs, what stands above it.

import { t } from "./text.js";
import { bench, canRedo, canUndo, change, open, plan, redo, undo, when, whenDrawn } from "./workshop.js";
import * as cars from "./cars.js";
import * as list from "./list.js";
import * as circuit from "./circuit.js";
import * as controls from "./controls.js";
import * as picture from "./picture.js";
import * as selected from "./selected.js";
import { button, element, keep, place, say } from "./elements.js";
import { offer } from "./completion.js";
import { explained, partCatalogue, Refusal } from "./service.js";

// No element has one of these as its id: the browser would take the keyboard from its field to go there.
const TABS = {
  wires: () => import("./wires.js"),
  parts: () => import("./parts.js"),
  findings: () => import("./findings.js"),
  measure: () => import("./measure.js"),
  mistakes: () => import("./mistakes.js"),
  compare: () => import("./compare.js"),
  print: () => import("./print.js"),
};
/** The address of the page on which a car is opened. */
const OPEN = "open";
/** From this width on the picture stands beside the tabs. */
const BESIDE = matchMedia("(min-width: 1000px)");
const started = new Set();
let id = cars.newId();
/** Whether the reader asked for a tab and was not taken there yet. */
let wanted = false;

document.documentElement.classList.add("js");
picture.start();
selected.start();
controls.start();
circuit.start();
queueMicrotask(buttons);
when("car", changed);
whenDrawn("plan", completions);
import("./findings.js").then((module) => startOnce("findings", module));
import("./calculators.js").then((module) => module.start());
queueMicrotask(begin);

async function begin() {
  addEventListener("hashchange", route);
  let shared = null;
  try {
    shared = await cars.fromLink(location.hash);
  } catch (damaged) {
    welcome(damaged.message);
    return;
  }
  const last = cars.last();
  if (shared) {
    history.replaceState(null, "", "#wires");
    show(shared, cars.newId());
    say(t("opened-from-link", { car: shared.settings.name ?? t("the-car") }));
  } else if (last) {
    show(last.car, last.id);
  } else {
    welcome("");
  }
  route();
}

async function startOnce(name, module) {
  if (!started.has(name)) {
    started.add(name);
    module.start();
  }
}

/** Takes the reader to the tab asked for, once it stands where it stays. */
function toPanel() {
  if (wanted && !BESIDE.matches) {
    place("panels").scrollIntoView({ block: "start" });
  }
  wanted = false;
}

/** The address says which tab or which calculator is open. */
async function route() {
  if (/^#car=/.test(location.hash)) {
    const shared = await cars.fromLink(location.hash).catch((damaged) => (say(damaged.message), null));
    if (shared) {
      history.replaceState(null, "", "#wires");
      show(shared, cars.newId());
    }
  }
  const name = location.hash.slice(1);
  const calculating = name === "calculators" || document.getElementById(name)?.matches("form.card");
  place("calculators").hidden = !calculating;
  const opening = name === OPEN || bench.car === null;
  place("workbench").hidden = calculating || opening;
  place("welcome").hidden = calculating || !opening;
  place("back").hidden = bench.car === null;
  place("back").textContent = t("back-to", { car: bench.car?.settings.name || t("the-car") });
  if (calculating) {
    place(name).scrollIntoView();
  } else if (opening) {
    fillWelcome();
    scrollTo(0, 0);
  } else {
    await tab(name in TABS ? name : "wires");
    toPanel();
  }
  document.querySelectorAll("header nav a[href^='#']").forEach((link) => {
    if ((link.hash === "#calculators") === calculating) {
      link.setAttribute("aria-current", "page");
    } else {
      link.removeAttribute("aria-current");
    }
  });
}

async function tab(name) {
  for (const each of Object.keys(TABS)) {
    place(`panel-${each}`).hidden = each !== name;
    place("workbench").classList.toggle(`at-${each}`, each === name);
    const link = place(`tab-${each}`);
    if (each === name) {
      link.setAttribute("aria-current", "page");
    } else {
      link.removeAttribute("aria-current");
    }
  }
  const module = await TABS[name]();
  await startOnce(name, module);
  module.shown?.();
}

function show(car, under) {
  id = under;
  cars.remember(id);
  open(car);
  document.body.classList.remove("no-car");
  if (location.hash === `#${OPEN}`) {
    history.replaceState(null, "", "#wires");
    route();
  }
  place("welcome").hidden = true;
  if (place("calculators").hidden) {
    place("workbench").hidden = false;
  }
}

function welcome(problem) {
  place("open-problem").textContent = problem;
  place("welcome").hidden = false;
  place("workbench").hidden = true;
  document.body.classList.add("no-car");
  bench.car = null;
}

function changed() {
  place("undo").disabled = !canUndo();
  place("redo").disabled = !canRedo();
  // A car that nobody has touched yet is not worth keeping.
  if (canUndo() || cars.mine().some((each) => each.id === id)) {
    if (!cars.store(id, bench.car)) {
      say(t("this-browser-does-not-keep"));
    }
  }
  showMine();
}

function showMine() {
  const all = cars.mine();
  const kept = all.some((each) => each.id === id);
  const options = [...(kept ? [] : [{ id, car: bench.car }]), ...all];
  place("car").replaceChildren(...options.map((each) => element("option", { value: each.id, selected: each.id === id }, each.car.settings.name || t("a-car-without-a-name"))));
  place("forget").disabled = !kept;
  place("save-name").value = bench.car.settings.name ?? "";
}

function buttons() {
  place("undo").addEventListener("click", () => {
    undo();
    say(t("undone"));
  });
  place("redo").addEventListener("click", () => {
    redo();
    say(t("done-again"));
  });
  addEventListener("keydown", (event) => {
    const typing = event.target.matches?.("input") && event.target.dataset.shown !== undefined && event.target.value !== event.target.dataset.shown;
    if (!(event.ctrlKey || event.metaKey) || event.altKey || typing) {
      return;
    }
    const key = event.key.toLowerCase();
    if (key === "z" || key === "y") {
      event.preventDefault();
      (key === "y" || event.shiftKey ? redo : undo)();
    }
  });
  place("car").addEventListener("change", () => {
    const chosen = cars.mine().find((each) => each.id === place("car").value);
    if (chosen) {
      show(chosen.car, chosen.id);
      say(t("car-opened", { car: chosen.car.settings.name ?? t("the-car") }));
    }
  });
  place("new").addEventListener("click", () => {
    place("open-problem").textContent = "";
    history.pushState(null, "", `#${OPEN}`);
    route().then(() => place("welcome-title").focus());
  });
  place("back").addEventListener("click", () => (location.hash = "#wires"));
  // Beside the picture a tab is seen at once; under it the reader is taken there.
  document.querySelectorAll(".tabs a").forEach((link) =>
    link.addEventListener("click", () => {
      wanted = true;
      if (link.hash === location.hash) {
        toPanel();
      }
    }),
  );
  place("forget").addEventListener("click", () => {
    if (confirm(t("delete-from-this-browser-a", { settings: bench.car.settings.name }))) {
      cars.forget(id);
      showMine();
      const next = cars.mine()[0];
      if (next) {
        show(next.car, next.id);
      } else {
        welcome("");
        fillWelcome();
      }
    }
  });
  place("empty").addEventListener("click", async () => {
    show(list.emptyCar(), cars.newId());
    location.hash = "#wires";
    await tab("wires");
    document.querySelector("#wire-grid input[data-column=from]")?.focus();
  });
  const read = () => place("paste").value.trim() !== "" && opening(() => cars.fromText(place("paste").value));
  // What is pasted is in the box a moment later.
  place("paste").addEventListener("paste", () => setTimeout(read));
  place("read-paste").addEventListener("click", read);
  place("save-name").addEventListener("change", (event) => change(list.named(bench.car, event.target.value)));
  for (const field of [place("file"), place("file-again")]) {
    field.addEventListener("click", () => (field.value = ""));
    field.addEventListener("change", () => field.files[0] && opening(() => cars.fromFile(field.files[0])));
  }
  for (const form of ["csv", "xlsx", "ods", "json"]) {
    place(`save-${form}`).addEventListener("click", async () => {
      try {
        keep(`${(bench.car.settings.name || "car").replace(/[^\w -]+/g, "_")}.${form}`, await cars.asFile(bench.car, plan({}), form));
      } catch (refused) {
        say(explained(refused));
      }
    });
  }
  place("share").addEventListener("click", async () => {
    const link = await cars.link(bench.car);
    place("share-link").value = link;
    place("shared").hidden = false;
    place("share-link").focus();
    place("share-link").select();
    await navigator.clipboard?.writeText(link).then(() => say(t("the-link-is-copied-it")), () => undefined);
  });
  place("share-close").addEventListener("click", () => {
    place("shared").hidden = true;
    place("share").focus();
  });
  fillWelcome();
}

async function opening(read) {
  place("open-problem").textContent = "";
  try {
    show(await read(), cars.newId());
    say(t("car-opened", { car: bench.car.settings.name ?? t("the-car") }));
    route();
  } catch (refused) {
    if (!(refused instanceof SyntaxError || refused instanceof Refusal)) {
      throw refused;
    }
    place("open-problem").textContent = refused.message;
    place("welcome").hidden = false;
    place("open-problem").scrollIntoView({ block: "nearest" });
  }
}

let filled = false;

async function fillWelcome() {
  if (filled) {
    return;
  }
  filled = true;
  const [templates, examples, symbols] = await Promise.all([cars.templates(), cars.examples(), import("./symbols.js")]);
  const choice = (each, read) => {
    const chosen = button(each.title, () => opening(() => read(each.href)));
    if (each.parts) {
      chosen.prepend(symbols.smallPicture(each.parts));
    }
    return element("li", {}, chosen);
  };
  place("templates").replaceChildren(...templates.map((each) => choice(each, cars.fromTemplate)));
  place("examples").replaceChildren(...examples.map((each) => choice(each, cars.fromExample)));
  place("add-template").replaceChildren(
    element("option", { value: "" }, t("add-a-circuit")),
    ...templates.map((each) => element("option", { value: each.href }, each.title)),
  );
  place("add-template").addEventListener("change", async (event) => {
    const href = event.target.value;
    if (href) {
      const added = await cars.fromTemplate(href);
      change(list.joined(bench.car, added));
      say(t("wires-added", { number: added.wires.length }));
      event.target.value = "";
    }
  });
}

/** What the fields of the grids offer to complete. */
async function completions() {
  const { kinds, types } = await partCatalogue();
  const terminals = new Set((bench.car?.wires ?? []).flatMap((wire) => [wire.from, wire.to]).filter(Boolean));
  for (const part of bench.conversion?.result.plan.parts ?? []) {
    const own = part.terminals ?? kinds.find((kind) => kind.kind === part.kind)?.terminals.filter((each) => each.terminal).map((each) => each.words[0]) ?? [];
    own.forEach((terminal) => terminals.add(`${part.label ?? part.id} ${terminal}`));
  }
  types.forEach((type) => terminals.add(type.words[0]));
  offer("terminals", terminals);
  offer("kinds", types.map((type) => type.type));
}
