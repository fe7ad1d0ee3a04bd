// What is wrong and what to do: findings worst first, remedies applied and checked again, feeds stepped along their path.

import { t } from "./text.js";
import { bench, canUndo, change, checkAgain, figures, plan, select, setMoves, setStanding, standing, stopChecks, when, whenDrawn } from "./workshop.js";
import { button, element, place, say, severity, table, wide } from "./elements.js";
import { explained, listOfPlan, postJson } from "./service.js";
import { patched } from "./patch.js";
import { does, figure, nameOf, source, state } from "./words.js";
import { light, lightIn } from "./picture.js";
import { endName } from "./selected.js";
import * as list from "./list.js";

/** What the last remedy changed; shown until the car changes again. */
let applied = null;

/** What remedies have changed, by the id of the wire or part: { text, holds() }. */
const changes = new Map();

/** The review whose findings are listed. */
let listed = null;

/** Keeps the tab up to date. */
export function start() {
  whenDrawn("checked solved plan", show);
  when("progress", showProgress);
  when("car", () => {
    // What was changed in another car has no bearing on this one.
    if (!canUndo()) {
      changes.clear();
    }
    if (applied && applied.car !== bench.car) {
      applied = null;
      place("applied").replaceChildren();
    }
  });
  place("check").addEventListener("click", checkAgain);
  place("stop").addEventListener("click", stopChecks);
  show();
}

function showProgress() {
  const { done, of } = bench.progress ?? {};
  const bar = place("check-progress");
  bar.max = of ?? 1;
  if (done === undefined) {
    bar.removeAttribute("value");
  } else {
    bar.value = done;
  }
}

function show() {
  const counts = bench.review?.result.counts;
  const total = counts ? counts.danger + counts.warning : 0;
  place("finding-count").textContent = total > 0 ? String(total) : "";
  place("finding-count").hidden = total === 0;
  place("checking").hidden = !bench.checking;
  place("check").hidden = bench.checking || bench.review !== null || !bench.conversion;
  place("finding-summary").textContent = summary(counts);
  // A switch that is moved changes no finding: a feed that is being followed stays open.
  if (listed !== bench.review) {
    listed = bench.review;
    const wireOf = (finding) => (finding.remedy && patchOf(finding)?.some(({ path }) => path.endsWith("/size")) ? (finding.remedy.arguments?.place?.id ?? finding.ids[0]) : undefined);
    const concerned = (finding) => [...finding.ids, ...(feedOf(finding)?.occurrences ?? []).flatMap((each) => each.paths.flatMap((path) => besidePath(path.steps, plan({}))))];
    place("finding-list").replaceChildren(...causesFirst(listed?.result.findings ?? [], wireOf, concerned).map(({ finding, causes }) => card(finding, causes)));
  }
  const clues = bench.backfeed?.result.clues ?? [];
  place("clues").hidden = clues.length === 0;
  place("clue-list").replaceChildren(...clues.map((clue) => element("li", {}, clue.text ?? clue.description ?? "")));
}

function summary(counts) {
  if (bench.checkProblem && !counts) {
    return bench.checkProblem;
  }
  if (!bench.conversion) {
    return bench.problem ? t("not-checked-the-list-of") : t("nothing-to-check-yet");
  }
  if (!counts) {
    return bench.checking ? t("checking") : t("not-checked-yet");
  }
  const parts = ["danger", "warning", "note"].filter((each) => counts[each] > 0).map((each) => t(`count-${each}`, { number: counts[each] }));
  return parts.length === 0 ? t("nothing-found-that-is-no") : t("found", { parts: parts.join(", ") });
}

/** Kinds that take most of the volts of their circuit. */
const LOADS = ["lamp", "led", "load", "motor", "coil", "relay", "solenoid"];
/** Findings of how wires are joined: no value that is assumed has a bearing on them. */
const BY_WIRING = ["terminal-not-connected"];
/** What may come of a wire that is too thin. */
const CONSEQUENCES = ["backfeed", "load-not-powered", "reversed-wire"];

/**
 * Findings worst first, but for a wire too thin that may be the cause of one: it stands before that.
 *
 * @param wireOf the wire that a finding's remedy replaces; undefined for others
 * @param concerned ids of all that a finding is about
 * @returns [{ finding, causes }]
 */
export function causesFirst(findings, wireOf, concerned) {
  const placed = new Set();
  const list = [];
  const put = (finding) => {
    if (placed.has(finding)) {
      return;
    }
    placed.add(finding);
    const all = CONSEQUENCES.includes(finding.code) ? concerned(finding) : [];
    const causes = findings.filter((each) => all.length > 0 && wireOf(each) && (all.includes(wireOf(each)) || each.ids.includes(finding.ids[0])));
    causes.forEach(put);
    list.push({ finding, causes });
  };
  findings.forEach(put);
  return list;
}

/**
 * What a feed passes, and the wires beside its way once it has passed a load: where one of them loses too much, its end is lifted
 * and the current takes this way instead.
 */
export function besidePath(steps, { parts, wires }) {
  const kinds = new Map(parts.map((part) => [part.id, part.kind]));
  const load = steps.findIndex((step) => LOADS.includes(kinds.get(step.id)));
  const lifted = new Set(load < 0 ? [] : steps.slice(load).flatMap((step) => [step.from, step.to]));
  return [...steps.map((step) => step.id), ...wires.filter((wire) => lifted.has(wire.from) || lifted.has(wire.to)).map((wire) => wire.id)];
}

function feedOf(finding) {
  return bench.backfeed?.result.unintendedFeeds.find((each) => finding.code === "backfeed" && each.load === finding.ids[0]);
}

function card(finding, causes) {
  const feed = feedOf(finding);
  const own = finding.remedy && patchOf(finding);
  const remedies = [...(own ? [{ ...finding.remedy, patch: own }] : []), ...(feed?.remedies ?? [])].filter((each) => each.patch?.length > 0);
  const asked = (bench.conversion?.questions ?? []).find((each) => each.ids.includes(finding.ids[0]));
  const assumed = BY_WIRING.includes(finding.code) ? [] : (bench.conversion?.assumptions ?? []).filter((each) => each.findings?.includes(finding.code) || each.ids.some((id) => finding.ids[0] === id));
  return element(
    "li",
    { className: `finding ${finding.severity}`, "data-code": finding.code },
    element("p", {}, severity(finding.severity), " ", finding.text),
    causes.length === 0 ? null : element("p", { className: "mend-first", "data-finding": `${causes[0].code} ${causes[0].remedy.arguments?.place?.id ?? causes[0].ids[0]}` }, element("strong", {}, t("mend-first")), t("that-may-be-the-cause", { remedy: causes[0].remedy.text })),
    finding.remedy && remedies.length === 0 ? element("p", {}, element("strong", {}, t("what-to-do")), " ", finding.remedy.text) : null,
    remedies.length === 0 ? null : element("div", { className: "remedies" }, element("strong", {}, t("what-to-do")), ...remedies.map(remedyLine)),
    asked && !BY_WIRING.includes(finding.code) ? element("p", { className: "assumed rests-on-question" }, t("rests-on-a-question", { question: asked.text, taken: asked.taken }), " ", element("a", { href: "#wires", click: () => (place("questions").open = true) }, t("answer-it"))) : null,
    assumed.length === 0 || asked ? null : element("p", { className: "assumed rests-on-assumption" }, t("rests-on-an-assumption", { assumed: assumed[0].text })),
    ...finding.ids.map((id) => changes.get(id)).filter((each) => each?.holds()).map((each) => element("p", { className: "assumed rests-on-change" }, t("rests-on-a-change", { number: each.text }))),
    element(
      "p",
      { className: "buttons" },
      button(t("show-me"), () => point(finding), { className: "small" }),
      ...(feed?.occurrences ?? []).slice(0, 1).flatMap((occurrence) => walks(feed, occurrence)),
    ),
    element("div", { className: "walk" }),
    element("details", {}, element("summary", {}, t("source")), element("p", {}, source(finding.basis))),
  );
}

/** A remedy that names a rating or a size, as a change of the plan; null for one that leaves a choice to the owner. */
function patchOf(finding) {
  const { code, arguments: given = {} } = finding.remedy;
  const drawn = plan({});
  const fuse = drawn.parts.findIndex((part) => part.id === finding.ids[0] && part.kind === "fuse" && part.ratedBy !== "blow");
  const wire = (id) => drawn.wires.findIndex((each) => each.id === id);
  const rating = { op: "replace", path: `/parts/${fuse}/ratingA`, value: given.ratingA };
  const size = (id) => ({ op: "replace", path: `/wires/${wire(id)}/size`, value: given.size });
  switch (code) {
    case "fit-fuse":
    case "fit-fuse-up-to":
      return fuse < 0 ? null : [rating];
    case "fit-fuse-and-wire":
      return fuse < 0 || wire(given.wire?.id) < 0 ? null : [rating, size(given.wire.id)];
    case "fit-size-or-reduce-load":
    case "fit-size-for-drop": {
      const thin = given.place?.id ?? finding.ids[0];
      return wire(thin) < 0 || !given.size ? null : [size(thin)];
    }
    default:
      return null;
  }
}

function point(finding) {
  light(finding.ids);
  select(finding.ids[0]);
  // On a phone the picture stands above the findings.
  place("live").scrollIntoView({ block: "nearest" });
  say(t("shown-in-the-picture"));
}

/** Buttons that step along the path of a feed, and through the moves that lead to it. */
function walks(feed, occurrence) {
  const path = occurrence.paths.find((each) => each.steps.length > 0);
  const buttons = [];
  if (path) {
    buttons.push(button(t("follow-the-current"), (event) => follow(event.currentTarget.closest("li"), occurrence, path), { className: "small" }));
  }
  const moves = (feed.occurrences.find((each) => each.remembered) ?? occurrence).after ?? [];
  if (moves.length > 0) {
    buttons.push(button(t("play-the-moves"), (event) => play(event.currentTarget.closest("li"), moves), { className: "small" }));
  }
  return buttons;
}

/** Steps through something; what the reader had set comes back at its end. */
function stepper(item, before, length, shown) {
  const walk = item.querySelector(".walk");
  let at = 0;
  const text = element("p", { role: "status" });
  const back = button(t("back"), () => go(at - 1), { className: "small" });
  const next = button(t("next"), () => go(at + 1), { className: "small" });
  const stop = button(t("close"), () => {
    walk.replaceChildren();
    light([]);
    setStanding(before);
  }, { className: "small" });
  const go = (to) => {
    at = Math.max(0, Math.min(to, length - 1));
    text.replaceChildren(element("strong", {}, t("step-of", { at: at + 1, of: length })), shown(at));
    back.disabled = at === 0;
    next.disabled = at === length - 1;
  };
  walk.replaceChildren(text, element("p", { className: "buttons" }, back, next, stop));
  go(0);
  next.focus();
}

async function follow(item, occurrence, path) {
  const before = standing();
  const moves = occurrence.after?.length > 0 ? occurrence.after : [...Object.entries(occurrence.switches).map(([id, position]) => `${id}:${position}`), `key:${occurrence.step}`];
  await setMoves(moves);
  stepper(item, before, path.steps.length, (at) => {
    const step = path.steps[at];
    lightIn(occurrence.step, path.steps.slice(0, at + 1).map((each) => each.id));
    select(step.id);
    const way = t("way", { wires: step.owner === "wire" ? 1 : 0, wire: step.id, from: endName(step.from), to: endName(step.to) });
    return t("way-current", { way, amperes: figure(step.currentA), reversed: step.againstFeed ? 1 : 0 });
  });
}

function play(item, moves) {
  stepper(item, standing(), moves.length, (at) => {
    const told = element("span");
    outcome(moves.slice(0, at + 1), told);
    return element("span", {}, moveWords(moves[at]), " ", told);
  });
}

function moveWords(text) {
  const [id, position] = text.split(":");
  return id === "key"
    ? t("turn-key", { position: bench.solution?.result.steps.find((each) => each.step === position)?.description ?? position })
    : `${nameOf(plan().parts.find((each) => each.id === id)) || id}: ${position}.`;
}

/** What is on after moves one after the other. */
async function outcome(moves, told) {
  try {
    await setMoves(moves);
    if (!told.isConnected) {
      return;
    }
    const label = (row) => nameOf(plan().parts.find((each) => each.id === row.part)) || row.part;
    const rows = figures()?.parts ?? [];
    const held = rows.filter((row) => row.state === "pulled-in");
    const on = rows.filter((row) => row.meantLive === false && row.activity && row.activity !== "dead" && !held.includes(row));
    const lines = [...held.map((row) => `${label(row)}: ${state(row.state)}`), ...on.map((row) => `${label(row)}: ${does(row)}`)];
    told.textContent = lines.length === 0 ? t("nothing-is-on-that-should") : `${lines.join("; ")}.`;
    light([...held, ...on].map((row) => row.part));
  } catch (refused) {
    told.textContent = explained(refused);
  }
}

function remedyLine(remedy) {
  return element(
    "p",
    { className: "remedy" },
    [remedy.change ?? remedy, remedy.effect].filter(Boolean).map((said) => `${said.text} `).join(""),
    button(t("apply-and-check-again"), (event) => apply(remedy, event.currentTarget), { className: "small apply" }),
  );
}

async function apply(remedy, pressed) {
  pressed.disabled = true;
  const before = plan({});
  const findingsBefore = bench.review.result.findings;
  try {
    const after = patched(before, remedy.patch);
    const [was, is] = await Promise.all([listOfPlan(before), listOfPlan(after)]);
    const car = list.merged(bench.car, list.parse(was), list.parse(is));
    applied = { car };
    remember(before, remedy.patch);
    change(car);
    say(t("applied-checking-again"));
    showApplied(remedy, before, after, findingsBefore);
  } catch (refused) {
    pressed.disabled = false;
    say(refused.message);
    place("applied").replaceChildren(element("p", { className: "problem" }, refused.message));
  }
}

/** Findings that come later may rest on a rating or a size that a remedy has set. */
function remember(before, patch) {
  for (const { path, value } of patch) {
    const [, table, index, property] = /^\/(parts|wires)\/(\d+)\/(ratingA|size)$/.exec(path) ?? [];
    const changed = table && before[table][index];
    if (changed && changed[property] !== undefined) {
      const unit = property === "ratingA" ? " A" : "";
      changes.set(changed.id, {
        text: t("before-since-a-remedy-was", { changed: nameOf(changed), property: changed[property], unit, value, unitToo: unit }),
        holds: () => plan({})?.[table].find((each) => each.id === changed.id)?.[property] === value,
      });
    }
  }
}

/** Before and after side by side. */
async function showApplied(remedy, before, after, findingsBefore) {
  const target = place("applied");
  const mine = applied;
  target.replaceChildren(element("h3", {}, t("applied")), element("p", {}, (remedy.change ?? remedy).text), element("p", {}, t("undo-takes-it-back")));
  target.scrollIntoView({ block: "nearest" });
  try {
    // Loads show a difference when they are on.
    const switchedOn = (drawn) => ({ ...drawn, parts: drawn.parts.map((part) => (part.kind === "switch" && !part.positionByCondition ? { ...part, position: part.positions.at(-1).name } : part)) });
    const solve = async (drawn) => (await postJson("/v1/plans/solution?only=parts&full=true", switchedOn(drawn))).result.steps;
    const [reviewed, stepsBefore, stepsAfter] = await Promise.all([postJson("/v1/plans/review", after), solve(before), solve(after)]);
    if (mine !== applied) {
      return;
    }
    const key = (finding) => `${finding.code} ${finding.ids[0]}`;
    const gone = findingsBefore.filter((each) => !reviewed.result.findings.some((other) => key(other) === key(each)));
    const eased = findingsBefore.flatMap((each) => reviewed.result.findings.filter((other) => key(other) === key(each) && other.severity !== each.severity).map((other) => [`${each.severity}: ${each.text}`, `${other.severity}: ${other.text}`]));
    const fresh = reviewed.result.findings.filter((each) => !findingsBefore.some((other) => key(other) === key(each)));
    target.append(
      element("p", {}, element("strong", {}, gone.length === 0 ? t("no-finding-has-gone") : t("gone-and-new", { gone: gone.length, fresh: fresh.length }))),
      wide(
        t("before-and-after"),
        table(t("findings"), [[t("before"), false], [t("after"), false]], [
          ...fresh.map((each) => ["–", `${each.severity}: ${each.text}`]),
          ...eased,
          ...gone.map((each) => [`${each.severity}: ${each.text}`, t("gone")]),
        ]),
      ),
      ...voltsTable(voltsChanged(stepsBefore, stepsAfter), after),
    );
    say(t("checked-again", { changes: t("gone-and-new", { gone: gone.length, fresh: fresh.length }) }));
  } catch (refused) {
    target.append(element("p", { className: "problem" }, explained(refused)));
  }
}

/** Less than this is no difference on a meter. */
const NOTICED_V = 0.05;
const MOST_ROWS = 8;

/**
 * Loads that a change gives more or fewer volts while they should be live, each in the step in which that is most.
 *
 * @returns [{ part, step, was, is }], the largest change first
 */
export function voltsChanged(before, after) {
  const worst = new Map();
  after.forEach((step, i) => {
    const were = new Map(before[i]?.parts.map((row) => [row.part, row]));
    for (const row of step.parts.filter((each) => each.meantLive)) {
      const was = were.get(row.part)?.acrossV;
      const change = Math.abs((row.acrossV ?? 0) - (was ?? 0));
      if (was !== undefined && row.acrossV !== undefined && change >= NOTICED_V && change > (worst.get(row.part)?.change ?? 0)) {
        worst.set(row.part, { part: row.part, step: step.description, was, is: row.acrossV, change });
      }
    }
  });
  return [...worst.values()].sort((one, other) => other.change - one.change);
}

function voltsTable(rows, drawn) {
  const name = (id) => nameOf(drawn.parts.find((part) => part.id === id)) || id;
  return rows.length === 0
    ? [element("p", {}, t("no-load-gets-other-volts"))]
    : [wide(t("volts-at-loads"), table(t("volts-at-loads"), [[t("part"), false], [t("key"), false], [t("before"), true], [t("after"), true], [t("difference"), true]], rows.slice(0, MOST_ROWS).map((row) => [name(row.part), row.step, `${figure(row.was)} V`, `${figure(row.is)} V`, `${row.is > row.was ? "+" : "−"}${figure(Math.abs(row.is - row.was))} V`])))];
}
