// Small pictures of circuits: the symbols of a few parts (shapes of IEC 60617) on a line, from the supply on.

const SVG = "http://www.w3.org/2000/svg";
const WIDTH = 32;
/** The line before and behind a symbol that stands from one x to another. */
const leads = (from, to) => `M0 14H${from}M${to} 14H${WIDTH}`;
const BOX = `${leads(8, 24)}M8 8H24V20H8Z`;
const CIRCLE = `${leads(8, 24)}M8 14a8 8 0 1 0 16 0a8 8 0 1 0 -16 0`;
const CONTACT = `${leads(9, 23)}M9 14L22 7`;
const MACHINE = { motor: "M", alternator: "G", dynamo: "G", ammeter: "A" };
const DIODE = `${leads(11, 21)}M11 8V20L21 14ZM21 8V20`;

const PATHS = {
  battery: `${leads(13, 19)}M13 5V23M19 9V19`,
  switch: CONTACT,
  "contact-breaker": `${CONTACT}M16 22a3 3 0 1 0 .1 0`,
  fuse: `${leads(7, 25)}M7 10H25V18H7ZM7 14H25`,
  relay: `${CONTACT}M11 19H21V25H11ZM11 25L21 19M16 19V11`,
  solenoid: `${CONTACT}M9 19H23V25H9ZM9 25L23 19M16 19V11`,
  ballast: BOX,
  resistor: BOX,
  coil: `${leads(6, 26)}M6 14a3.3 4 0 0 1 6.7 0a3.3 4 0 0 1 6.6 0a3.3 4 0 0 1 6.7 0M6 19H26`,
  module: `${BOX}M12 17L20 11M20 11h-4M20 11v4`,
  lamp: `${CIRCLE}M10.3 8.3L21.7 19.7M21.7 8.3L10.3 19.7`,
  led: `${DIODE}M18 7l4 -4m0 0h-3m3 0v3`,
  diode: DIODE,
  load: `${BOX}M12 12H20M12 16H20`,
  flasher: `${BOX}M11 16H14V12H17V16H20V12`,
  "control-box": `${BOX}M12 17L15 11H20`,
  stabiliser: `${BOX}M11 16L15 12H21`,
  ...Object.fromEntries(Object.keys(MACHINE).map((kind) => [kind, CIRCLE])),
};

/** The symbols of these kinds of parts in a row; nothing for a kind that has none. */
export function smallPicture(kinds) {
  const svg = drawn("svg", { class: "small-picture", viewBox: `0 0 ${WIDTH * kinds.length} 28`, width: WIDTH * kinds.length, height: 28, "aria-hidden": "true" });
  kinds.forEach((kind, i) => {
    const symbol = drawn("g", { transform: `translate(${i * WIDTH} 0)` });
    symbol.append(drawn("path", { d: PATHS[kind] ?? `M0 14H${WIDTH}` }));
    if (MACHINE[kind]) {
      const letter = drawn("text", { x: WIDTH / 2, y: 18 });
      letter.textContent = MACHINE[kind];
      symbol.append(letter);
    }
    svg.append(symbol);
  });
  return svg;
}

function drawn(name, attributes) {
  const made = document.createElementNS(SVG, name);
  Object.entries(attributes).forEach(([key, value]) => made.setAttribute(key, value));
  return made;
}
