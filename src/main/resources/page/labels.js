// The labels of a picture that is shown small. What would be too small to read is drawn larger; where there is no room for it,
// it is left out: names first, then what parts do, wires, amperes. Zoomed in, the picture is as it was drawn.

/** Heights of labels, the wanted one first: in a large frame names may be smaller rather than missing. */
const HEIGHTS = { wide: [11, 9.5], phone: [12] };
/** Of the height of a line, what is above its base. */
const ASCENT = 0.8;
/** As drawn, nothing is smaller than this once the picture is large enough. */
const SMALLEST_PX = { wide: 8.5, phone: 12 };
const SMALLEST_DRAWN = 9.5;
const ORDER = [".dg-head", ".dg-name", ".dg-reading", ".dg-wire-name", ".dg-amps"];
const GAP = 2;

/**
 * Letters a picture.
 *
 * @param {number} scale pixels of the screen to a unit of the picture
 * @param {number} widthPx of the whole picture, in its own units
 * @param {Set} important ids whose labels come first
 * @param {string} frame "wide" or "phone"
 */
export function letter(image, scale, widthPx, important, frame = "wide") {
  const far = scale * SMALLEST_DRAWN < SMALLEST_PX[frame];
  image.classList.toggle("dg-far", far);
  image.querySelectorAll(".dg-said").forEach(restore);
  image.querySelectorAll("[data-lines]").forEach(apart);
  if (!far) {
    return;
  }
  const symbols = [...image.querySelectorAll(".dg-symbol")].map((symbol) => ({ owners: symbol.getAttribute("data-part").split(" "), ...boxOf(symbol) }));
  const taken = [...symbols];
  const rank = (text) => (important.has(text.getAttribute("data-owner")) ? 0 : 1);
  for (const selector of ORDER) {
    const texts = oneLine([...image.querySelectorAll(selector)].filter((text) => text.getComputedTextLength() > 0));
    for (const text of texts.sort((one, other) => rank(one) - rank(other))) {
      const owner = text.getAttribute("data-owner");
      const room = places(text, scale, HEIGHTS[frame], symbols.find((symbol) => symbol.owners.includes(owner))).find(
        (place) => place.x >= 0 && place.x + place.width <= widthPx && !taken.some((other) => !other.owners?.includes(owner) && meet(place, other)),
      );
      if (room) {
        taken.push(room);
        text.classList.add("dg-said");
        text.style.fontSize = `${room.height}px`;
        text.style.transform = `translate(${(room.x - Number(text.getAttribute("x"))).toFixed(1)}px, ${(room.y + ASCENT * room.height - Number(text.getAttribute("y"))).toFixed(1)}px)`;
      }
    }
  }
}

/** Where a label may stand: about where it was drawn, a little higher or lower, or elsewhere about its symbol. */
function places(text, scale, heights, symbol) {
  const drawn = Number(text.getAttribute("font-size"));
  const x = Number(text.getAttribute("x"));
  const y = Number(text.getAttribute("y"));
  return heights.flatMap((px) => {
    const height = Math.max(drawn, px / scale);
    const width = (text.getComputedTextLength() * height) / drawn;
    const middle = y - 0.35 * drawn - height / 2;
    const at = (left, top) => ({ x: left, y: top, width, height });
    const beside = [0, -0.6, 0.6].map((lines) => at(x, middle + lines * height));
    if (!symbol || !text.matches(".dg-name")) {
      return beside;
    }
    const left = symbol.x - width - 2 * GAP;
    const centre = symbol.y + symbol.height / 2 - height / 2;
    const above = symbol.y - height;
    const below = symbol.y + symbol.height;
    const right = symbol.x + symbol.width - width;
    return [
      ...beside, at(x, middle - 1.2 * height), at(x, middle + 1.2 * height),
      at(left, centre), at(left, centre - 0.8 * height), at(left, centre + 0.8 * height),
      at(symbol.x, above), at(right, above), at(symbol.x, below), at(right, below),
    ];
  });
}

/** A name that was drawn in several lines stands in one; the first of its texts has it all. */
function oneLine(texts) {
  const first = new Map();
  for (const text of texts) {
    const owner = text.getAttribute("data-owner") ?? text;
    const before = first.get(owner);
    if (!before) {
      first.set(owner, text);
    } else {
      before.dataset.lines ??= before.textContent;
      before.textContent += ` ${text.textContent}`;
    }
  }
  return [...first.values()];
}

function apart(text) {
  text.textContent = text.dataset.lines;
  delete text.dataset.lines;
}

function restore(text) {
  text.classList.remove("dg-said");
  text.style.fontSize = text.style.transform = "";
}

function boxOf(symbol) {
  const box = symbol.getBBox();
  const matrix = symbol.transform.baseVal.consolidate()?.matrix;
  return { x: box.x + (matrix?.e ?? 0), y: box.y + (matrix?.f ?? 0), width: box.width, height: box.height };
}

function meet(one, other) {
  return one.x < other.x + other.width + GAP && other.x < one.x + one.width + GAP && one.y < other.y + other.height + GAP && other.y < one.y + one.height + GAP;
}
