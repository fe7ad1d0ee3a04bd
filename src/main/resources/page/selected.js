// What is selected, with its figures, under the picture.

import { t } from "./text.js";
import { bench, figures, when } from "./workshop.js";
import { chip, element, place } from "./elements.js";
import { colourWords, colours, does, figure, nameOf, state } from "./words.js";

/** Keeps the line up to date. */
export function start() {
  when("solved state selected", show);
}

function show() {
  const plan = bench.conversion?.result.plan;
  const wire = plan?.wires.find((each) => each.id === bench.selected);
  const part = plan?.parts.find((each) => each.id === bench.selected);
  place("selected").replaceChildren(...(wire ? ofWire(wire) : part ? ofPart(part) : plan ? [t("choose-a-wire-or-part")] : []));
}

function ofWire(wire) {
  const reading = figures()?.wires.find((row) => row.wire === wire.id);
  const size = [wire.size?.replace("mm2", "mm²"), wire.lengthM ? `${figure(wire.lengthM)} m` : wire.lengthFt ? `${figure(wire.lengthFt)} ft` : ""].filter(Boolean).join(", ");
  return [
    element("strong", {}, `${wire.id} `), chip(colours(wire.colour)),
    t("wire-selected", { looks: [colourWords(wire.colour), size].filter(Boolean).join(", "), from: endName(wire.from), to: endName(wire.to) }),
    reading ? t("wire-reading", { amperes: figure(Math.abs(reading.currentA)), reversed: reading.currentA < -0.005 ? 1 : 0, volts: figure(Math.abs(reading.dropV)), state: reading.live ? "live" : Math.abs(reading.currentA) > 0.005 ? "earth" : "off" }) : "",
  ];
}

function ofPart(part) {
  const step = figures();
  const reading = step?.parts.find((row) => row.part === part.id);
  const at = (step?.nodes ?? []).flatMap((node) => node.terminals.filter((terminal) => terminal.startsWith(`${part.id}.`)).map((terminal) => `${terminal.slice(part.id.length + 1)}: ${node.voltageV === undefined ? "floating" : `${figure(node.voltageV)} V`}`));
  return [
    element("strong", {}, `${nameOf(part)} `), `(${part.kind.replaceAll("-", " ")}) `,
    reading?.activity ? t("across-it", { does: does(reading), measured: reading.acrossV === undefined ? 0 : 1, volts: figure(reading.acrossV) }) : reading?.state ? `${state(reading.state)}. ` : "",
    at.length > 0 ? t("to-chassis", { at: at.slice(0, 8).join(", ") }) : "",
  ];
}

/** A terminal as a person reads it. */
export function endName(terminal) {
  if (terminal === "earth") {
    return t("earth");
  }
  const [id, ...rest] = terminal.split(".");
  const part = bench.conversion?.result.plan.parts.find((each) => each.id === id);
  return `${nameOf(part) || id} ${rest.join(".")}`;
}
