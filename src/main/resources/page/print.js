// For the bench and for the file: the sheet, the record, lists and pictures.

import { t } from "./text.js";
import { bench, change, plan, whenDrawn } from "./workshop.js";
import * as list from "./list.js";
import { protocol } from "./measure.js";
import { button, element, fill, keep, place, progress, say } from "./elements.js";
import { explained, postBlob, postText } from "./service.js";
import { pictureFile } from "./picture.js";

/** Keeps the tab up to date. */
export function start() {
  whenDrawn("plan", show);
  show();
}

function show() {
  const ready = bench.conversion !== null;
  if (place("print-name")) {
    // A button that is being pressed stays the same button; a sheet of the car as it was goes.
    place("print-name").value = bench.car?.settings.name ?? "";
    place("panel-print").querySelectorAll("button").forEach((each) => (each.disabled = !ready));
    place("sheet-view").hidden = true;
    return;
  }
  fill(place("panel-print"), 
    element("h2", {}, t("print-and-keep")),
    element("p", { className: "field" }, element("label", { for: "print-name" }, t("name-of-the-car-on")), element("input", { id: "print-name", autocomplete: "off", maxlength: "200", value: bench.car?.settings.name ?? "", change: (event) => change(list.named(bench.car, event.target.value)) })),
    element("p", {}, t("the-bench-sheet-has-the")),
    element(
      "p",
      { className: "buttons" },
      button(t("bench-sheet"), sheet, { className: "main", disabled: !ready, id: "sheet" }),
      button(t("print-the-sheet"), printSheet, { disabled: !ready, id: "print-sheet" }),
    ),
    element("h3", {}, t("downloads")),
    element(
      "p",
      { className: "buttons" },
      file(t("picture-svg"), "svg", () => pictureFile("image/svg+xml"), ready),
      file(t("picture-png"), "png", () => pictureFile("image/png"), ready),
      file(t("figures-csv"), "csv", () => postBlob("/v1/plans/solution", plan(), "text/csv"), ready),
      file(t("findings-csv"), "csv", () => postBlob("/v1/plans/review", plan({}), "text/csv"), ready),
      file(t("readings-to-take-csv"), "csv", () => postBlob("/v1/plans/readings", plan({}), "text/csv"), ready),
      file(t("bench-sheet-html"), "html", sheetFile, ready),
      file(t("record-html"), "html", () => postBlob("/v1/plans/sheet", { plan: plan({}), document: "record" }, "text/html"), ready),
    ),
    element("div", { className: "problem", id: "print-problem", role: "status" }),
    element("div", { id: "sheet-view", hidden: true }),
  );
}

function file(text, ending, make, ready) {
  return button(text, async () => {
    place("print-problem").textContent = "";
    try {
      keep(`${(bench.car.settings.name || "car").replace(/[^\w -]+/g, "_")} ${text.replace(/ \(.*/, "").toLowerCase()}.${ending}`, await make());
      say(t("is-ready", { file: text }));
    } catch (refused) {
      place("print-problem").textContent = explained(refused);
    }
  }, { disabled: !ready });
}

/** The sheet as a file, with what was measured at its end. */
async function sheetFile() {
  const html = await postText("/v1/plans/sheet", { plan: plan({}) }, "text/html");
  const measured = protocol()?.outerHTML ?? "";
  const end = html.lastIndexOf("</body>");
  return new Blob([html.slice(0, end), measured, html.slice(end)], { type: "text/html" });
}

/** The sheet in a tree of its own, so that its style and that of the page leave each other alone. */
async function sheet() {
  const target = place("sheet-view");
  const aborter = new AbortController();
  const running = progress(t("drawing-up-the-sheet"), () => aborter.abort());
  fill(place("print-problem"), t("drawing-up-the-sheet"), running.shown);
  try {
    const html = await postText("/v1/plans/sheet", { plan: plan({}) }, "text/html", aborter.signal);
    // Its style goes in by the one way that the page's policy allows.
    const styles = [...html.matchAll(/<style>([^<]*)<\/style>/g)].map((each) => each[1]);
    const parsed = new DOMParser().parseFromString(html.replace(/<style>[^<]*<\/style>/g, ""), "text/html");
    const root = target.shadowRoot ?? target.attachShadow({ mode: "open" });
    const style = new CSSStyleSheet();
    style.replaceSync(styles.join("\n"));
    root.adoptedStyleSheets = [style];
    root.replaceChildren(document.importNode(parsed.body, true));
    root.querySelector("body").append(...[protocol()].filter(Boolean));
    root.querySelectorAll(".wide").forEach((each) => (each.tabIndex = 0));
    // A heading over a column to write in has nothing to say.
    root.querySelectorAll("th:empty").forEach((each) => each.replaceWith(element("td", { className: each.className })));
    target.hidden = false;
    place("print-problem").textContent = "";
    say(t("the-sheet-is-shown-below"));
    return true;
  } catch (refused) {
    place("print-problem").textContent = refused.name === "AbortError" ? t("the-sheet-was-stopped") : explained(refused);
    return false;
  }
}

/** Printing to a file makes a PDF of it. */
async function printSheet() {
  if (await sheet()) {
    window.print();
  }
}
