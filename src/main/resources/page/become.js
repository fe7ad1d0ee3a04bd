// One picture becomes another: what differs is changed in place, so that the browser lays out and paints no more than that.

/** Classes that the page gives to what it points out; a picture from the service has none of them. */
const OURS = ["dg-said", "dg-far", "found-danger", "found-warning", "lit", "dg-selected"];
/** What the page has set on its own elements. */
const KEPT = ["style", "data-lines", "viewBox", "class", "data-step"];

/** Makes an element and all in it the same as another, which stays as it is; what the page points out stays pointed out. */
export function become(shown, wanted) {
  attributes(shown, wanted);
  if (shown.dataset.lines === undefined) {
    children(shown, wanted);
  } else {
    // A name in several lines is said in one; here stands its first.
    shown.dataset.lines = wanted.textContent;
  }
}

function attributes(shown, wanted) {
  for (const { name, value } of wanted.attributes) {
    if (!KEPT.includes(name) && shown.getAttribute(name) !== value) {
      shown.setAttribute(name, value);
    }
  }
  for (const name of shown.getAttributeNames()) {
    if (!KEPT.includes(name) && !wanted.hasAttribute(name)) {
      shown.removeAttribute(name);
    }
  }
  const classes = [...wanted.classList, ...OURS.filter((each) => shown.classList.contains(each))].join(" ");
  if (classes === "") {
    shown.removeAttribute("class");
  } else if (classes !== shown.getAttribute("class")) {
    shown.setAttribute("class", classes);
  }
}

function children(shown, wanted) {
  const keys = new Map();
  for (let each = shown.firstChild; each; each = each.nextSibling) {
    keys.set(keyOf(each), (keys.get(keyOf(each)) ?? 0) + 1);
  }
  const drop = (node) => {
    const next = node.nextSibling;
    keys.set(keyOf(node), keys.get(keyOf(node)) - 1);
    node.remove();
    return next;
  };
  let at = shown.firstChild;
  for (let each = wanted.firstChild; each; each = each.nextSibling) {
    const key = keyOf(each);
    if ((keys.get(key) ?? 0) === 0) {
      shown.insertBefore(each.cloneNode(true), at);
      continue;
    }
    while (keyOf(at) !== key) {
      at = drop(at);
    }
    keys.set(key, keys.get(key) - 1);
    if (each.nodeType !== Node.ELEMENT_NODE) {
      if (at.nodeValue !== each.nodeValue) {
        at.nodeValue = each.nodeValue;
      }
    } else {
      become(at, each);
    }
    at = at.nextSibling;
  }
  while (at) {
    at = drop(at);
  }
}

/** By what an element of one picture is known in another: what it is drawn for, and where. */
function keyOf(node) {
  return node.nodeType === Node.ELEMENT_NODE
    ? [node.nodeName, ...["data-wire", "data-part", "data-owner", "data-state", "x", "y", "transform"].map((name) => node.getAttribute(name))].join(" ")
    : "#";
}
