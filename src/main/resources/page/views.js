// How a car stands: one answer has its figures in every step of the key and its picture, in which all these steps lie.

import { postJson } from "./service.js";

/** A view holds a picture; more of them than this are not kept. */
const MOST_KEPT = 40;

/**
 * Asks how a plan stands after moves, or in all steps as its switches are drawn.
 *
 * @param {object} plan as it stood before the moves
 * @param {string[]} moves none, or what was done with key and switches, as the service reads it
 * @param {number} sheet of a large car; 0 for the whole
 * @returns the diagram of the service; its figures have the terminals beside the voltage of their node
 */
export async function view(plan, moves, sheet, signal) {
  const after = moves.length > 0 ? `&after=${moves.map(encodeURIComponent).join(",")}` : "";
  const { result } = await postJson(`/v1/plans/diagram?marks=none&legend=none&figures=true${sheet > 0 ? `&sheet=${sheet}` : ""}${after}`, plan, signal);
  const terminals = new Map(result.figures.nodes.map((each) => [each.node, each.terminals]));
  result.figures.steps.forEach((step) => step.nodes.forEach((node) => { node.terminals = terminals.get(node.node); }));
  return result;
}

/**
 * Views of one plan by the position of its switches, each asked for once.
 *
 * @param {function} ask (switches, sheet) -> promise of a view
 */
export function viewsBySwitches(ask) {
  const asked = new Map();
  const known = new Map();
  const keyOf = (switches, sheet) => JSON.stringify([sheet, ...Object.entries(switches).sort()]);

  function put(key, promise) {
    if (asked.size >= MOST_KEPT) {
      const oldest = asked.keys().next().value;
      asked.delete(oldest);
      known.delete(oldest);
    }
    asked.set(key, promise);
    promise.then((answer) => asked.get(key) === promise && known.set(key, answer), () => asked.get(key) === promise && asked.delete(key));
  }

  return {
    /** A promise; asked for now if it was not before. */
    of(switches, sheet) {
      const key = keyOf(switches, sheet);
      if (!asked.has(key)) {
        put(key, ask(switches, sheet));
      }
      return asked.get(key);
    },
    /** What has come; undefined if nothing has yet. */
    known: (switches, sheet) => known.get(keyOf(switches, sheet)),
    /** Keeps one that came otherwise. */
    keep(switches, sheet, answer) {
      const key = keyOf(switches, sheet);
      if (!known.has(key)) {
        put(key, Promise.resolve(answer));
        known.set(key, answer);
      }
    },
  };
}

/**
 * One move longer. Where that is longer than the service reads, the first moves become the position it begins in.
 *
 * @param {{ switches: object, moves: string[] }} trail positions before the moves, and the moves
 */
export function longer(trail, move, most = 100) {
  const moves = [...trail.moves, move];
  let switches = trail.switches;
  let key = null;
  while (moves.length > most - (key ? 1 : 0)) {
    const [id, position] = moves.shift().split(":");
    if (id === "key") {
      key = `key:${position}`;
    } else {
      switches = { ...switches, [id]: position };
    }
  }
  return { switches, moves: key ? [key, ...moves] : moves };
}
