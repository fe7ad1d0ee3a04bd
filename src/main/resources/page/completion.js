// What a field of a grid offers to complete. The list is the page's own: the browser's list takes Enter and Tab for itself,
// so that the keyboard gets lost in a grid.

import { t } from "./text.js";
import { element, place } from "./elements.js";

const MOST = 60;

const offers = new Map([
  ["sizes", ["0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2", "10 mm2", "16 mm2", "25 mm2", "35 mm2", "9/0.30", "14/0.30", "28/0.30", "44/0.30", "18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG"]],
  ["places", ["cabin", "engine bay"]],
  ["yes", ["yes"]],
  ["whens", ["always", "key on", "crank", "running"]],
]);

/** Sets what a list offers. */
export function offer(list, values) {
  offers.set(list, [...new Set(values)]);
}

/** What of a list fits a text: what begins with it first, then where a word begins with it. */
export function fitting(values, text) {
  const sought = text.trim().toLowerCase();
  const begins = values.filter((value) => value.toLowerCase().startsWith(sought));
  const within = values.filter((value) => !begins.includes(value) && value.toLowerCase().split(/[\s/.]+/).some((word) => word.startsWith(sought)));
  return [...begins, ...within].slice(0, MOST);
}

/**
 * Lets the fields of a table that name a list complete. `taken(input)` is called when the reader takes an offer.
 *
 * @returns {{ pressed(event): boolean }} whether the list made use of a key; to be asked before the table does
 */
export function completion(table, taken) {
  const list = element("ul", { id: `${table.id}-offers`, className: "offers", role: "listbox", popover: "manual", "aria-label": t("offers") });
  place(list.id)?.remove();
  table.parentElement.append(list);
  let input = null;
  let active = -1;

  const open = () => list.matches(":popover-open");

  function close() {
    if (open()) {
      list.hidePopover();
    }
    input?.setAttribute("aria-expanded", "false");
    input?.removeAttribute("aria-activedescendant");
    list.replaceChildren();
    input = null;
    active = -1;
  }

  function show(field, text) {
    const values = fitting(offers.get(field.dataset.list) ?? [], text);
    if (values.length === 0 || (values.length === 1 && values[0] === text)) {
      close();
      return;
    }
    if (input !== field) {
      close();
    }
    input = field;
    active = -1;
    list.replaceChildren(...values.map((value, i) => element("li", { id: `${list.id}-${i}`, role: "option", "aria-selected": "false", pointerdown: (event) => event.preventDefault(), click: () => take(i) }, value)));
    field.setAttribute("aria-expanded", "true");
    field.removeAttribute("aria-activedescendant");
    if (!open()) {
      list.showPopover();
    }
    const box = field.getBoundingClientRect();
    const below = innerHeight - box.bottom;
    const upwards = below < 160 && box.top > below;
    list.style.left = `${Math.max(0, Math.min(box.left, innerWidth - list.offsetWidth - 4))}px`;
    list.style.minWidth = `${box.width}px`;
    list.style.maxHeight = `${Math.max(80, Math.min(260, (upwards ? box.top : below) - 8))}px`;
    list.style.top = `${upwards ? box.top - list.offsetHeight : box.bottom}px`;
  }

  function activate(index) {
    const options = [...list.children];
    active = (index + options.length) % options.length;
    options.forEach((option, i) => option.setAttribute("aria-selected", String(i === active)));
    options[active].scrollIntoView({ block: "nearest" });
    input.setAttribute("aria-activedescendant", options[active].id);
  }

  function take(index) {
    const field = input;
    field.value = list.children[index].textContent;
    close();
    taken(field);
  }

  table.addEventListener("input", (event) => event.target.dataset.list && show(event.target, event.target.value));
  table.addEventListener("focusout", close);
  addEventListener("scroll", (event) => open() && event.target !== list && close(), { capture: true, passive: true });

  function pressed(event) {
    const field = event.target;
    const step = event.ctrlKey || event.metaKey ? 0 : { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step && field.dataset.list) {
      event.preventDefault();
      if (!open()) {
        show(field, field.value === field.dataset.shown ? "" : field.value);
      }
      if (open()) {
        activate(active < 0 && step < 0 ? list.children.length - 1 : active + step);
      }
      return true;
    }
    if (!open()) {
      return false;
    }
    if (event.key === "Enter" && active >= 0) {
      event.preventDefault();
      take(active);
      return true;
    }
    if (event.key === "Escape") {
      event.preventDefault();
      close();
      return true;
    }
    if (event.key === "Tab" && active >= 0) {
      take(active);
    } else if (event.key === "Tab" || event.key === "Enter") {
      close();
    }
    return false;
  }

  return { pressed };
}
