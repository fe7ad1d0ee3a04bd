// The labels of a picture that is shown small. What would be too small to read is drawn larger; where there is no room for it,
// it is left out: names first, then what parts do, wires, amperes. Zoomed in, the picture is as it was drawn.

/** Heights of labels, the wanted one first: in a large frame names may be smaller rather than missing. */
const HEIGHTS = { wide: [11, 9.5, 8.5], phone: [12] };
/** Of the height of a line, what is above its base. */
const ASCENT = 0.8;
/** As drawn, nothing is smaller than this once the picture is large enough. */
const SMALLEST_PX = { wide: 8.5, phone: 12 };
const SMALLEST_DRAWN = 9.5;
const ORDER = [".dg-head", ".dg-name", ".dg-reading", ".dg-wire-name", ".dg-amps"];
const GAP = 2;

/** How wide a text is, to a pixel of its height: measured once, without the page being laid out for it. */
const widths = new Map();
const pen = document.createElement("canvas").getContext("2d");

/** What each label that was lettered has: where it stands, and how large. */
const lettered = new WeakMap();

/**
 * Letters a picture, on the page or not yet; nothing of it is measured in the page.
 *
 * @param {number} scale pixels of the screen to a unit of the picture
 * @param {number} widthPx of the whole picture, in its own units
 * @param {Set} important ids whose labels come first
 * @param {string} frame "wide" or "phone"
 * @param {Array} symbols what symbolsOf has of the layout
 */
export function letter(image, scale, widthPx, important, frame, symbols) {
  const far = scale * SMALLEST_DRAWN < SMALLEST_PX[frame];
  image.classList.toggle("dg-far", far);
  const before = [...image.querySelectorAll(".dg-said")];
  const lined = new Set(image.querySelectorAll("[data-lines]"));
  const said = far ? labels(image, scale, widthPx, important, frame, symbols) : new Map();
  before.filter((text) => !said.has(text)).forEach(restore);
  for (const text of lined) {
    if (!said.has(text)) {
      apart(text);
    }
  }
  for (const [text, { room, words }] of said) {
    if (words !== text.textContent) {
      text.dataset.lines ??= text.textContent;
      text.textContent = words;
    }
    const place = `${room.height.toFixed(2)} ${(room.x - Number(text.getAttribute("x"))).toFixed(1)} ${(room.y + ASCENT * room.height - Number(text.getAttribute("y"))).toFixed(1)}`;
    if (lettered.get(text) !== place) {
      const [size, right, down] = place.split(" ");
      text.classList.add("dg-said");
      text.style.fontSize = `${size}px`;
      text.style.transform = `translate(${right}px, ${down}px)`;
      lettered.set(text, place);
    }
  }
}

/** The places of the symbols of a picture on the page: the same in all steps and positions of the switches. */
export function symbolsOf(image) {
  return [...image.querySelectorAll(".dg-symbol")].map((symbol) => ({ owners: symbol.getAttribute("data-part").split(" "), ...boxOf(symbol) }));
}

/** Which labels are said and where: text -> { room, words }. */
function labels(image, scale, widthPx, important, frame, symbols) {
  const taken = [...symbols];
  const said = new Map();
  const step = `dg-at-${image.getAttribute("data-step")}`;
  const isShown = (text) => {
    const sometimes = text.closest(".dg-at");
    return !sometimes || sometimes.classList.contains(step);
  };
  const rank = ({ text }) => (important.has(text.getAttribute("data-owner")) ? 0 : 1);
  const family = image.getAttribute("font-family");
  for (const selector of ORDER) {
    const texts = oneLine([...image.querySelectorAll(selector)].filter(isShown)).filter(({ words }) => words !== "");
    texts.sort((one, other) => rank(one) - rank(other));
    // Whoever finds room where it was drawn has it before others look for room elsewhere.
    for (const places of selector === ".dg-name" ? [beside, about] : [beside]) {
      for (const { text, words } of texts.filter((each) => !said.has(each.text))) {
        const owner = text.getAttribute("data-owner");
        const width = widthOf(words, text.getAttribute("font-weight") ?? "normal", family);
        const room = places(text, width, scale, HEIGHTS[frame], symbols.find((symbol) => symbol.owners.includes(owner))).find(
          (place) => place.x >= 0 && place.x + place.width <= widthPx && !taken.some((other) => !other.owners?.includes(owner) && meet(place, other)),
        );
        if (room) {
          taken.push(room);
          said.set(text, { room, words });
        }
      }
    }
  }
  return said;
}

function widthOf(words, weight, family) {
  const key = `${weight} ${words}`;
  if (!widths.has(key)) {
    pen.font = `${weight} 100px ${family}`;
    widths.set(key, pen.measureText(words).width / 100);
  }
  return widths.get(key);
}

/** The sizes that a label may have, the wanted one first. */
function sizes(text, widthToHeight, scale, heights) {
  const drawn = Number(text.getAttribute("font-size"));
  return heights.map((px) => Math.max(drawn, px / scale)).map((height) => ({ width: widthToHeight * height, height }));
}

/** Where a label may stand: about where it was drawn, or a little higher or lower. */
function beside(text, widthToHeight, scale, heights) {
  const x = Number(text.getAttribute("x"));
  const y = Number(text.getAttribute("y")) - 0.35 * Number(text.getAttribute("font-size"));
  return sizes(text, widthToHeight, scale, heights).flatMap((size) => [0, -0.6, 0.6].map((lines) => ({ ...size, x, y: y + (lines - 0.5) * size.height })));
}

/** Where else a name may stand: on any side of its symbol, near before far. */
function about(text, widthToHeight, scale, heights, symbol) {
  if (!symbol) {
    return [];
  }
  const middle = symbol.y + symbol.height / 2;
  const after = symbol.x + symbol.width + 2 * GAP;
  return sizes(text, widthToHeight, scale, heights).flatMap((size) => {
    const before = symbol.x - size.width - 2 * GAP;
    const right = symbol.x + symbol.width - size.width;
    const centre = (symbol.x + right) / 2;
    return [0, -0.8, 0.8, -1.6, 1.6]
      .flatMap((lines) => [after, before].map((x) => ({ x, y: middle + (lines - 0.5) * size.height })))
      .concat([0, 0.8].flatMap((lines) => [symbol.x, right, centre].flatMap((x) => [{ x, y: symbol.y - (1 + lines) * size.height }, { x, y: symbol.y + symbol.height + lines * size.height }])))
      .map((place) => ({ ...size, ...place }));
  });
}

/** A name that was drawn in several lines is said in one, by the first of its texts: [{ text, words }]. */
function oneLine(texts) {
  const first = new Map();
  for (const text of texts) {
    const owner = text.getAttribute("data-owner") ?? text;
    const words = text.dataset.lines ?? text.textContent;
    const before = first.get(owner);
    if (before) {
      before.words += ` ${words}`;
    } else {
      first.set(owner, { text, words });
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
  lettered.delete(text);
}

function boxOf(symbol) {
  const box = symbol.getBBox();
  const matrix = symbol.transform.baseVal.consolidate()?.matrix;
  return { x: box.x + (matrix?.e ?? 0), y: box.y + (matrix?.f ?? 0), width: box.width, height: box.height };
}

function meet(one, other) {
  return one.x < other.x + other.width + GAP && other.x < one.x + one.width + GAP && one.y < other.y + other.height + GAP && other.y < one.y + one.height + GAP;
}
