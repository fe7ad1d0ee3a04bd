// What of the picture its frame shows: it fits, is moved and zoomed, by mouse, fingers and keys.

const READABLE_PX = 12;
/** A frame as wide as this shows the whole picture first. */
export const WIDE_PX = 480;
/** Zoomed in as far as possible, so many units of the picture are seen. */
const LEAST_SEEN = 80;

/**
 * What is shown first: the whole picture, or on a phone what is large enough to read, with the battery in it.
 *
 * @param size of the picture
 * @param frame of the page, in pixels
 * @param smallestText its height in the picture
 * @param battery where it stands; null if there is none
 * @param whole whether the whole is wanted, however small
 */
export function fitted(size, frame, smallestText, battery, whole) {
  const scale = Math.min(frame.width / size.width, frame.height / size.height);
  const readable = READABLE_PX / smallestText;
  if (whole || frame.width >= WIDE_PX || scale >= readable) {
    return { x: 0, y: 0, width: size.width, height: size.height };
  }
  const at = battery ?? { x: size.width / 2, y: 0 };
  const width = frame.width / readable;
  const height = frame.height / readable;
  return { x: Math.max(0, Math.min(at.x - width / 2, size.width - width)), y: Math.max(0, at.y - height / 2), width, height };
}

/** Nearer by a factor below 1, farther by one above; the point stays where it is in the frame. */
export function zoomed(view, factor, point, size) {
  const width = Math.min(Math.max(view.width * factor, LEAST_SEEN), size.width * 2);
  const ratio = width / view.width;
  return { x: point.x - (point.x - view.x) * ratio, y: point.y - (point.y - view.y) * ratio, width, height: view.height * ratio };
}

/** The same part of the picture about another point. */
export function centred(view, point) {
  return { ...view, x: point.x - view.width / 2, y: point.y - view.height / 2 };
}

/**
 * Lets the reader move and zoom the picture in an element.
 *
 * @param {object} options
 *   image(): the picture in it; null if there is none
 *   battery(): where it stands in the picture; target(): what is zoomed at, null for the middle of the frame
 *   shown(view, frame): called when another part of the picture is shown, or the frame has another size
 */
export function framed(element, { image, battery, target, shown }) {
  let frame = { width: 0, height: 0 };
  let view = null;
  let size = null;
  let smallestText = READABLE_PX;
  /** Whether the reader has moved or zoomed it. */
  let moved = false;

  new ResizeObserver(() => {
    frame = { width: element.clientWidth, height: element.clientHeight };
    // What the reader has chosen to see stays.
    view = moved ? view : null;
    show(false);
  }).observe(element);
  element.addEventListener("wheel", wheel, { passive: false });
  element.addEventListener("keydown", keyed);
  dragging();

  function show(whole) {
    if (frame.width === 0) {
      frame = { width: element.clientWidth, height: element.clientHeight };
    }
    if (!image() || !size || frame.width === 0) {
      return;
    }
    view ??= fitted(size, frame, smallestText, battery(), whole);
    const box = `${view.x} ${view.y} ${view.width} ${view.height}`;
    if (image().getAttribute("viewBox") !== box) {
      image().setAttribute("viewBox", box);
    }
    shown(view, frame);
  }

  function moveTo(other) {
    moved = true;
    view = other;
    show(false);
  }

  function zoom(factor, at) {
    if (view) {
      moveTo(zoomed(view, factor, at ?? target() ?? { x: view.x + view.width / 2, y: view.y + view.height / 2 }, size));
    }
  }

  function toPicture(event) {
    const matrix = image()?.getScreenCTM();
    return matrix ? new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse()) : null;
  }

  function wheel(event) {
    if (event.ctrlKey || event.metaKey) {
      event.preventDefault();
      zoom(event.deltaY > 0 ? 1.15 : 0.87, toPicture(event));
    }
  }

  function keyed(event) {
    const move = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (move && view) {
      event.preventDefault();
      moveTo({ ...view, x: view.x + (move[0] * view.width) / 8, y: view.y + (move[1] * view.height) / 8 });
    } else if (event.key === "+" || event.key === "-") {
      zoom(event.key === "+" ? 0.8 : 1.25);
    }
  }

  function dragging() {
    const fingers = new Map();
    let dragged = false;
    let apart = 0;
    const distance = () => {
      const [one, other] = [...fingers.values()];
      return Math.hypot(one.x - other.x, one.y - other.y);
    };
    element.addEventListener("pointerdown", (event) => {
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      dragged = false;
      apart = fingers.size === 2 ? distance() : 0;
    });
    element.addEventListener("pointermove", (event) => {
      const from = fingers.get(event.pointerId);
      if (!from || !view || !image()) {
        return;
      }
      const scale = image().getScreenCTM().a;
      if (fingers.size === 1 && Math.hypot(event.clientX - from.x, event.clientY - from.y) > (dragged ? 0 : 5)) {
        dragged = true;
        fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
        moveTo({ ...view, x: view.x - (event.clientX - from.x) / scale, y: view.y - (event.clientY - from.y) / scale });
      } else if (fingers.size === 2) {
        fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
        const now = distance();
        if (apart > 0 && now > 0) {
          dragged = true;
          zoom(apart / now);
        }
        apart = now;
      }
    });
    const lifted = (event) => fingers.delete(event.pointerId);
    ["pointerup", "pointercancel", "pointerleave"].forEach((name) => element.addEventListener(name, lifted));
    element.addEventListener("click", (event) => dragged && event.stopImmediatePropagation(), { capture: true });
  }

  return {
    show: () => show(false),
    whole() {
      view = null;
      moved = false;
      show(true);
    },
    zoom,
    /** A picture of another size begins as if nobody had moved it. */
    begin(of, text) {
      size = of;
      smallestText = Math.min(text, READABLE_PX);
      view = null;
      moved = false;
    },
    /** Brings a point into the middle, if not all is seen. */
    reveal(point) {
      if (view && (view.width < size.width || view.height < size.height)) {
        view = centred(view, point);
        show(false);
      }
    },
  };
}
