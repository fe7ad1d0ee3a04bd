// What each plausible mistake would do.

import { t } from "./text.js";
import { bench, plan, select, when } from "./workshop.js";
import { button, element, fill, place, progress, say, severity } from "./elements.js";
import { explained, postSlow } from "./service.js";
import { light } from "./picture.js";
import { figure, nameOf } from "./words.js";

const SHOWN_AT_ONCE = 30;

let found = null;
let of = null;
let aborter = null;
let only = "";

/** Keeps the tab up to date. */
export function start() {
  when("plan", () => {
    if (of !== bench.conversion) {
      aborter?.abort();
      found = null;
      show();
    }
  });
  show();
}

function show() {
  const panel = place("panel-mistakes");
  if (!found) {
    fill(panel, 
      element("h2", {}, t("what-each-mistake-would-do")),
      element("p", {}, t("each-plausible-mistake-is-tried")),
      element("p", {}, button(t("try-them"), run, { className: "main", disabled: !bench.conversion, id: "try" })),
    );
    return;
  }
  const parts = bench.conversion.result.plan.parts;
  const chooser = element(
    "select",
    { id: "mistake-of", change: () => {
      only = chooser.value;
      list();
    } },
    element("option", { value: "" }, t("everything")),
    ...parts.map((part) => element("option", { value: part.id, selected: part.id === only }, nameOf(part))),
  );
  const rows = element("ol", { className: "cards-list" });
  const more = element("p");
  const list = (all = false) => {
    const chosen = found.filter((each) => only === "" || each.ids.includes(only));
    rows.replaceChildren(...chosen.slice(0, all ? chosen.length : SHOWN_AT_ONCE).map(card));
    more.replaceChildren(all || chosen.length <= SHOWN_AT_ONCE ? "" : button(t("show-all", { chosen: chosen.length }), () => list(true)));
    say(t("mistakes-shown", { number: chosen.length }));
  };
  fill(panel, 
    element("h2", {}, t("mistakes-found", { number: found.length })),
    element("p", { className: "field" }, element("label", { for: "mistake-of" }, t("those-at")), chooser),
    rows,
    more,
  );
  list();
}

function card(mistake) {
  const text = mistake.summary.map((each) => each.text).join(" ");
  const notices = (mistake.notices ?? []).slice(0, 6);
  return element(
    "li",
    { className: `finding ${mistake.severity}` },
    element("p", {}, severity(mistake.severity), ` ${mistake.description.text}`),
    element("p", {}, text),
    notices.length === 0
      ? null
      : element("details", {}, element("summary", {}, t("what-you-would-notice")), element("ul", {}, ...notices.map((each) => element("li", {}, t("notice", { part: each.label ?? each.id, effect: (each.effect ?? "").replaceAll("-", " "), volts: each.faultyV === undefined ? 0 : 1, faulty: figure(each.faultyV), sound: figure(each.soundV), when: each.when[0].text }))))),
    element("p", {}, button(t("show-me"), () => {
      light(mistake.ids);
      select(mistake.ids[0]);
    }, { className: "small" })),
  );
}

async function run() {
  aborter = new AbortController();
  const mine = aborter;
  of = bench.conversion;
  const running = progress(t("trying-mistakes"), () => {
    mine.abort();
    show();
  });
  fill(place("panel-mistakes"), element("h2", {}, t("trying-each-mistake")), running.shown);
  try {
    const answer = await postSlow("/v1/plans/mistakes?details=true&limit=10000", plan({}), running.report, mine.signal);
    if (mine === aborter && of === bench.conversion) {
      found = answer.result.mistakes;
      show();
    }
  } catch (refused) {
    if (refused.name !== "AbortError") {
      show();
      place("panel-mistakes").append(element("p", { className: "problem" }, explained(refused)));
    }
  }
}
