// The words of the page: they are those of the catalogue of the service.

import { TEXTS } from "./texts.js";

const PLURALS = new Intl.PluralRules(document.documentElement.lang);

/** A text by its key, with its places filled in: {name}, {count, plural, one {# wire} other {# wires}}, {word, select, …}. */
export function t(key, values = {}) {
  return written(TEXTS[key], values);
}

function written(pattern, values, counted) {
  let out = "";
  for (let at = 0; at < pattern.length; at++) {
    if (pattern[at] === "{") {
      const end = closing(pattern, at);
      out += place(pattern.slice(at + 1, end), values);
      at = end;
    } else {
      out += pattern[at] === "#" && counted !== undefined ? counted : pattern[at];
    }
  }
  return out;
}

function place(inner, values) {
  const [, name, kind, cases] = /^(\w+)(?:, (plural|select), (.*))?$/s.exec(inner);
  const value = values[name];
  if (kind === undefined) {
    return value;
  }
  const chosen = casesOf(cases);
  const plural = kind === "plural";
  const text = plural ? chosen[`=${value}`] ?? chosen[PLURALS.select(value)] ?? chosen.other : chosen[value] ?? chosen.other;
  return written(text, values, plural ? value : undefined);
}

/** What stands for each case, by its name. */
function casesOf(text) {
  const cases = {};
  for (let at = 0; at < text.length; at++) {
    const open = text.indexOf("{", at);
    if (open < 0) {
      break;
    }
    const end = closing(text, open);
    cases[text.slice(at, open).trim()] = text.slice(open + 1, end);
    at = end;
  }
  return cases;
}

function closing(text, open) {
  let depth = 0;
  for (let at = open; ; at++) {
    depth += text[at] === "{" ? 1 : text[at] === "}" ? -1 : 0;
    if (depth === 0) {
      return at;
    }
  }
}
