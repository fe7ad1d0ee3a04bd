// A table of fields that works like a sheet of a spreadsheet: Tab goes right, Enter goes down to where the run of Tabs
// began, a block can be pasted, an empty row waits at the end. What stands in grey is what is assumed.

import { t } from "./text.js";
import { completion } from "./completion.js";
import { cells } from "./list.js";
import { chip, element } from "./elements.js";
import { colours } from "./words.js";

/** What a cell shows; as long as none of it changes, the cell is left alone. */
const CELL = ["key", "value", "assumed", "reason", "problem", "asked", "chip"];

/**
 * Builds one.
 *
 * @param {object} options
 *   table: its element; caption; noun: what a row is called
 *   columns: [{ name, head, list, wide, figure }]; a figure column is only shown
 *   changed(index, column, value), pasted(index, column, block), removed(index), entered(index): what the reader does
 * @returns {{ show(rows), focus(index, column) }} a row is { key, cells: { column: { value, assumed, problem, chip } }, removable, className }
 */
export function grid({ table, caption, noun, columns, changed, pasted, removed, entered }) {
  const body = element("tbody");
  const lines = [];
  const fields = columns.filter((column) => !column.figure);
  table.replaceChildren(
    element("caption", {}, caption),
    element(
      "thead",
      {},
      element(
        "tr",
        {},
        ...columns.map((column) => element("th", { scope: "col", className: `${column.figure ? "number " : ""}column-${column.name.replace(" ", "-")}` }, column.head)),
        element("th", { scope: "col" }, element("span", { className: "hidden" }, t("remove"))),
      ),
    ),
    body,
  );

  const offers = completion(table, commit);
  /** Where Enter goes back to: { row, column } of the field that the reader came to otherwise than by Tab. */
  let run = null;
  let tabbed = false;

  table.addEventListener("keydown", (pressed) => {
    const input = pressed.target.closest("input");
    if (!input || pressed.isComposing || offers.pressed(pressed)) {
      return;
    }
    tabbed = pressed.key === "Tab";
    const step = pressed.key === "Enter" ? (pressed.shiftKey ? -1 : 1) : pressed.ctrlKey && pressed.key === "ArrowDown" ? 1 : pressed.ctrlKey && pressed.key === "ArrowUp" ? -1 : 0;
    if (step !== 0) {
      pressed.preventDefault();
      commit(input);
      const index = Number(input.dataset.row) + step;
      const column = step > 0 && run?.row === input.dataset.row ? run.column : input.dataset.column;
      focus(Math.max(0, Math.min(index, lines.length - 1)), column);
    } else if (pressed.key === "Escape") {
      input.value = input.dataset.shown;
    }
  });
  table.addEventListener("change", (event) => event.target.matches("input") && commit(event.target));
  table.addEventListener("focusout", (event) => event.target.matches("input") && commit(event.target));
  table.addEventListener("focusin", (event) => {
    const { row, column } = event.target.dataset;
    if (row !== undefined) {
      run = tabbed && run?.row === row ? run : { row, column };
      tabbed = false;
      entered(Number(row));
    }
  });
  table.addEventListener("paste", (event) => {
    const input = event.target.closest("input");
    const text = event.clipboardData?.getData("text/plain") ?? "";
    if (input && /[\t\n]/.test(text.trim())) {
      event.preventDefault();
      input.value = input.dataset.shown;
      pasted(Number(input.dataset.row), input.dataset.column, cells(text.replace(/\s+$/, "")), text);
    }
  });

  function commit(input) {
    const value = input.value.trim();
    if (value !== input.dataset.shown) {
      input.dataset.shown = value;
      changed(Number(input.dataset.row), input.dataset.column, value);
    }
  }

  function line(index) {
    const row = element("tr");
    const made = { row, inputs: {}, figures: {}, problems: {}, chips: {}, shown: {} };
    for (const column of columns) {
      const td = element("td", { className: `${column.figure ? "number" : ""} column-${column.name.replace(" ", "-")}` });
      if (column.figure) {
        made.figures[column.name] = td;
      } else {
        const id = `${table.id}-${index}-${column.name.replace(" ", "-")}`;
        const input = element("input", {
          id, autocomplete: "off", spellcheck: false, enterkeyhint: "next",
          "data-row": String(index), "data-column": column.name, "data-shown": "",
          "aria-label": t("cell-of", { column: column.head, noun, number: index + 1, assumes: 0 }),
        });
        if (column.list) {
          Object.entries({ "data-list": column.list, role: "combobox", "aria-autocomplete": "list", "aria-expanded": "false", "aria-controls": `${table.id}-offers` }).forEach(([name, value]) => input.setAttribute(name, value));
        }
        made.inputs[column.name] = input;
        made.problems[column.name] = element("span", { className: "problem", id: `${id}-problem` });
        made.chips[column.name] = element("span", { className: "at-cell" });
        td.append(made.chips[column.name], input, made.problems[column.name]);
      }
      row.append(td);
    }
    made.remove = element("button", { type: "button", className: "quiet", "aria-label": t("remove-row", { noun, number: index + 1 }), click: () => removed(index) }, "×");
    row.append(element("td", {}, made.remove));
    body.append(row);
    return made;
  }

  /** Shows rows in place, so that the keyboard stays where it is. */
  function show(rows) {
    while (lines.length > rows.length) {
      lines.pop().row.remove();
    }
    while (lines.length < rows.length) {
      lines.push(line(lines.length));
    }
    rows.forEach((data, index) => {
      const made = lines[index];
      if (made.row.className !== (data.className ?? "")) {
        made.row.className = data.className ?? "";
      }
      made.remove.hidden = !data.removable;
      made.remove.setAttribute("aria-label", t("remove-row", { noun, number: data.key ?? index + 1 }));
      for (const column of columns) {
        const cell = { ...data.cells[column.name], key: data.key };
        const input = made.inputs[column.name];
        const last = made.shown[column.name];
        made.shown[column.name] = cell;
        if (last && CELL.every((each) => last[each] === cell[each]) && (!input || input.value === (cell.value ?? ""))) {
          continue;
        }
        if (column.figure) {
          made.figures[column.name].textContent = cell.value ?? "";
          continue;
        }
        const typing = document.activeElement === input && input.value !== input.dataset.shown;
        if (!typing) {
          input.value = cell.value ?? "";
        }
        input.dataset.shown = cell.value ?? "";
        input.placeholder = cell.assumed ?? "";
        // A long name is cut by its cell.
        input.title = cell.reason || cell.value || "";
        input.setAttribute("aria-label", t("cell-of", { column: column.head, noun, number: data.key ?? index + 1, assumes: cell.assumed && !cell.value ? 1 : 0, assumed: cell.assumed }));
        made.chips[column.name].replaceChildren(...(cell.chip ? [chip(colours(cell.chip))] : []));
        made.problems[column.name].textContent = cell.problem ?? "";
        if (cell.problem) {
          input.setAttribute("aria-invalid", cell.asked ? "false" : "true");
          input.setAttribute("aria-describedby", made.problems[column.name].id);
        } else {
          input.removeAttribute("aria-invalid");
          input.removeAttribute("aria-describedby");
        }
      }
    });
  }

  function focus(index, column = fields[0].name) {
    const input = lines[index]?.inputs[column];
    input?.focus();
    input?.select();
  }

  return { show, focus };
}
