// Elements of the page. Texts go in as text, never as markup.

import { t } from "./text.js";

const SVG = "http://www.w3.org/2000/svg";

export const place = (id) => document.getElementById(id);

/** An element with properties and children; a child is an element, a text, or nothing. */
export function element(name, properties = {}, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(properties)) {
    if (typeof value === "function") {
      made.addEventListener(key, value);
    } else if (key in made && typeof value !== "string") {
      made[key] = value;
    } else {
      made.setAttribute(key === "className" ? "class" : key, value);
    }
  }
  made.append(...children.filter((child) => child !== null && child !== undefined));
  return made;
}

/** Puts children in the place of those that an element has; nothings are passed over. */
export function fill(parent, ...children) {
  parent.replaceChildren(...children.filter((child) => child !== null && child !== undefined));
}

/** A button that does something. */
export function button(text, action, properties = {}) {
  return element("button", { type: "button", click: action, ...properties }, text);
}

/** A wire as it looks: its body with its tracer. */
export function chip(colours) {
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("class", "chip");
  svg.setAttribute("viewBox", "0 0 24 12");
  svg.setAttribute("aria-hidden", "true");
  const bar = (y, height, fill) => {
    const rect = document.createElementNS(SVG, "rect");
    Object.entries({ x: 0, y, width: 24, height, fill }).forEach(([key, value]) => rect.setAttribute(key, value));
    svg.append(rect);
  };
  if (colours.length > 0) {
    bar(0, 12, colours[0].paint);
  }
  if (colours.length > 1) {
    bar(4, 4, colours[1].paint);
  }
  return svg;
}

/** The word for how serious a finding is, with a shape of its own. */
export function severity(word) {
  const shape = { danger: "▲", warning: "◆", note: "●" }[word] ?? "●";
  return element("span", { className: `severity ${word}` }, element("span", { "aria-hidden": "true" }, `${shape} `), word);
}

/** A plain table: heads as [text, is it a figure], rows of cells, each a text or an element. */
export function table(caption, heads, rows) {
  return element(
    "table",
    {},
    element("caption", {}, caption),
    element("thead", {}, element("tr", {}, ...heads.map(([text, figures]) => element("th", { scope: "col", className: figures ? "number" : "" }, text)))),
    element(
      "tbody",
      {},
      ...rows.map((row) => element("tr", {}, ...row.map((cell, i) => element(i === 0 ? "th" : "td", i === 0 ? { scope: "row" } : { className: heads[i][1] ? "number" : "" }, cell)))),
    ),
  );
}

/** A table that scrolls by itself if it is too wide. */
export function wide(name, content) {
  return element("div", { className: "wide", tabIndex: 0, role: "region", "aria-label": name }, content);
}

/**
 * How far something is that takes its time, with a button that ends it.
 *
 * @param {string} label what is going on
 * @param {function} stop ends it
 * @returns {{ shown: Element, report: function }} what to show, and what to call with { done, of }
 */
export function progress(label, stop) {
  const bar = element("progress", { "aria-label": label });
  return {
    shown: element("div", { className: "running" }, element("p", {}, bar), element("p", {}, button(t("stop"), stop, { className: "small" }))),
    report({ done, of }) {
      bar.max = of ?? 1;
      bar.value = Math.min(done ?? 0, of ?? 1);
    },
  };
}

/** Says aloud what changed, without taking the reader away from where they are. */
export function say(text) {
  place("said").textContent = text;
}

/** Lets the reader keep a file. */
export function keep(name, blob) {
  const address = URL.createObjectURL(blob);
  element("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
