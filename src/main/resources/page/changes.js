// What the reader may change in a plan, and the plan with it changed.

/** Figures of parts and wires that are worth trying, with what a person calls them. */
const NAMES = {
  size: "size",
  lengthM: "length, m",
  lengthFt: "length, ft",
  resistanceOhm: "resistance, ohm",
  fromJointResistanceOhm: "bad joint at its beginning, ohm",
  toJointResistanceOhm: "bad joint at its end, ohm",
  elementsOhm: "elements, ohm (commas between)",
  primaryResistanceOhm: "primary, ohm",
  ratingA: "rating, A",
  ratedV: "rated volts",
  ratedW: "rated watts",
  coilResistanceOhm: "coil, ohm",
  holdInResistanceOhm: "hold-in winding, ohm",
  pullInResistanceOhm: "pull-in winding, ohm",
  contactResistanceOhm: "contact, ohm",
  regulatedV: "regulated volts",
  saturationV: "volts across it while on",
  currentLimitA: "current limit, A",
  emfV: "volts without load",
  supplyV: "volts at the battery",
  internalResistanceOhm: "resistance within, ohm",
};

/** A joint in a wire can go bad in any plan, so these two are offered even where the plan does not name them. */
const JOINTS = ["fromJointResistanceOhm", "toJointResistanceOhm"];

/** Everything in a plan that can be changed: { pointer, label }. */
export function items(plan) {
  return [
    ...(plan.wires ?? []).map((wire, i) => ({
      pointer: `/wires/${i}`,
      label: `Wire ${wire.id}, ${wire.from} to ${wire.to}`,
    })),
    ...(plan.parts ?? []).map((part, i) => ({
      pointer: `/parts/${i}`,
      label: `${part.label ?? part.id} (${part.kind})`,
    })),
    ...Object.keys(plan.conditions ?? {}).map((condition) => ({
      pointer: `/conditions/${condition}`,
      label: `Supply, condition ${condition}`,
    })),
  ].filter((item) => properties(plan, item.pointer).length > 0);
}

/** The figures of one item: { pointer, name, value as text }. */
export function properties(plan, pointer) {
  const item = at(plan, pointer);
  const named = Object.keys(NAMES).filter((key) => key in item);
  const offered = pointer.startsWith("/wires/") ? [...named, ...JOINTS.filter((key) => !(key in item))] : named;
  return offered.map((key) => ({
    pointer: `${pointer}/${key}`,
    name: NAMES[key],
    value: key in item ? String(item[key]) : "0",
  }));
}

/** A copy of the plan with the texts entered; what is no number goes as it is, for the service to refuse. */
export function changed(plan, entries) {
  const copy = structuredClone(plan);
  for (const [pointer, text] of entries) {
    const cut = pointer.lastIndexOf("/");
    const item = at(copy, pointer.slice(0, cut));
    const key = pointer.slice(cut + 1);
    item[key] = key === "size" ? text : key === "elementsOhm" ? text.split(",").map(number) : number(text);
  }
  return copy;
}

/** The places that differ between two texts of fields, as words. */
export function words(label, before, after) {
  return before
    .filter((property) => after.get(property.pointer) !== property.value)
    .map((property) => `${label}: ${property.name} ${property.value} → ${after.get(property.pointer)}`);
}

function number(text) {
  const value = text.trim() === "" ? NaN : Number(text);
  return Number.isFinite(value) ? value : text;
}

function at(document, pointer) {
  return pointer
    .split("/")
    .slice(1)
    .reduce((inner, key) => inner[key], document);
}
