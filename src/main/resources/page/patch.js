// A change of a plan as RFC 6902 JSON Patch.

import { t } from "./text.js";

/** A copy of a document with a patch applied; an Error names the operation that cannot be. */
export function patched(document, operations) {
  let copy = structuredClone(document);
  for (const operation of operations) {
    copy = applied(copy, operation);
  }
  return copy;
}

function applied(document, operation) {
  const { op, path } = operation;
  switch (op) {
    case "add":
      return add(document, path, structuredClone(operation.value));
    case "remove":
      return remove(document, path);
    case "replace":
      return path === "" ? structuredClone(operation.value) : add(remove(document, path), path, structuredClone(operation.value));
    case "move": {
      const moved = at(document, operation.from);
      return add(remove(document, operation.from), path, moved);
    }
    case "copy":
      return add(document, path, structuredClone(at(document, operation.from)));
    case "test":
      if (!equal(at(document, path), operation.value)) {
        throw new Error(t("plan-changed"));
      }
      return document;
    default:
      throw new Error(op);
  }
}

function keys(path) {
  return path === "" ? [] : path.split("/").slice(1).map((key) => key.replaceAll("~1", "/").replaceAll("~0", "~"));
}

function at(document, path) {
  return keys(path).reduce((inner, key) => child(inner, key, path), document);
}

function child(inner, key, path) {
  if (inner === null || typeof inner !== "object" || !Object.hasOwn(inner, key)) {
    throw new Error(t("plan-changed"));
  }
  return inner[key];
}

function place(document, path) {
  const all = keys(path);
  const key = all.pop();
  return [all.reduce((inner, each) => child(inner, each, path), document), key];
}

function add(document, path, value) {
  if (path === "") {
    return value;
  }
  const [inner, key] = place(document, path);
  if (!Array.isArray(inner)) {
    inner[key] = value;
    return document;
  }
  const index = key === "-" ? inner.length : Number(key);
  if (!(Number.isInteger(index) && index >= 0 && index <= inner.length)) {
    throw new Error(t("plan-changed"));
  }
  inner.splice(index, 0, value);
  return document;
}

function remove(document, path) {
  const [inner, key] = place(document, path);
  child(inner, key, path);
  if (Array.isArray(inner)) {
    inner.splice(Number(key), 1);
  } else {
    delete inner[key];
  }
  return document;
}

function equal(one, other) {
  if (one === null || other === null || typeof one !== "object" || typeof other !== "object") {
    return one === other;
  }
  const names = Object.keys(one);
  return (
    Array.isArray(one) === Array.isArray(other) &&
    names.length === Object.keys(other).length &&
    names.every((name) => Object.hasOwn(other, name) && equal(one[name], other[name]))
  );
}
