// Elements of the page. Texts go in as text, never as markup.

/** An element with properties and children; a child is an element or a text. */
export function element(name, properties = {}, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(properties)) {
    if (key in made && typeof value !== "string") {
      made[key] = value;
    } else {
      made.setAttribute(key === "className" ? "class" : key, value);
    }
  }
  made.append(...children);
  return made;
}

/** A number as a person reads it: four significant digits. */
export function figure(value) {
  return value === undefined || value === null ? "" : String(Number(value.toPrecision(4)));
}

/** Fills a table: caption, heads of words and of figures, rows of { head, cells, className }. */
export function fillTable(table, caption, wordHeads, figureHeads, rows) {
  table.replaceChildren(
    element("caption", {}, caption),
    element("thead", {}, element(
        "tr",
        {},
        ...wordHeads.map((head) => element("th", { scope: "col" }, head)),
        ...figureHeads.map((head) => element("th", { scope: "col", className: "number" }, head)),
      ),
    ),
    element(
      "tbody",
      {},
      ...rows.map((row) =>
        element(
          "tr",
          { className: row.className ?? "" },
          element("th", { scope: "row" }, row.head),
          ...row.cells.map((cell) =>
            typeof cell === "number"
              ? element("td", { className: "number" }, figure(cell))
              : element("td", {}, cell ?? ""),
          ),
        ),
      ),
    ),
  );
}

/** Shows a picture that the service drew, within the page so that its texts can be read and found. */
export function showSvg(place, text) {
  const drawn = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  place.replaceChildren(document.importNode(drawn, true));
}
