// A car as the tables an owner writes: settings, wires, parts, switch positions. Nothing here asks the service.
import { t } from "./text.js";

// A car is a plain object { settings, wires, parts, positions, others }; every function hands back a new one.

/** Columns of the table of wires, in the order in which they are written. */
export const WIRE_COLUMNS = [
  "no", "from", "to", "via", "size", "length", "resistance", "colour", "place", "bundle", "insulation", "joint", "joint to",
  "feed", "loom", "note",
];
/** Columns of the table of parts that an owner fills in; a car that came as a plan has more. */
export const PART_COLUMNS = ["part", "kind", "value", "works when"];
const POSITION_COLUMNS = ["switch", "position", "joins", "when"];

/** A list that says everything names the unit in the heading; here the unit stands in the cell. */
const WITH_UNIT = {
  "length m": ["length", " m"],
  "resistance ohm": ["resistance", ""],
  "insulation c": ["insulation", ""],
  "joint ohm": ["joint", ""],
  "joint to ohm": ["joint to", ""],
};
/** What a wire has if nothing is said, so that it need not stand in the grid. */
const PLAIN_WIRE = { place: "cabin", joint: "0", "joint to": "0", feed: "no" };

/** A car without a wire. */
export function emptyCar(name = t("my-car")) {
  return { settings: { name, voltage: "12 V", earth: "negative" }, wires: [], parts: [], positions: [], others: [] };
}

/** The cells of a text: comma, semicolon, tab or the bars of a Markdown table between them; quotes as in CSV. */
export function cells(text) {
  const source = text.replace(/\r\n?/g, "\n").replace(/^\uFEFF/, "");
  if (/^\s*\|.*\|\s*$/m.test(source)) {
    return source
      .split("\n")
      .filter((line) => !/^\s*\|[\s|:-]+\|\s*$/.test(line))
      .map((line) => (line.includes("|") ? line.trim().replace(/^\||\|$/g, "").split("|").map((cell) => cell.trim()) : [line.trim()]));
  }
  const cut = ["\t", ";", ","].filter((each) => source.includes(each)).map((separator) => separated(source, separator));
  // A semicolon may stand within a cell, so the headings tell what separates.
  return cut.find((rows) => rows.some((row) => row.length > 1 && tableOf(row) !== null)) ?? cut[0] ?? separated(source, ",");
}

function separated(source, separator) {
  const rows = [[""]];
  let quoted = false;
  for (let i = 0; i < source.length; i++) {
    const sign = source[i];
    const row = rows[rows.length - 1];
    if (quoted) {
      if (sign !== '"') {
        row[row.length - 1] += sign;
      } else if (source[i + 1] === '"') {
        row[row.length - 1] += '"';
        i++;
      } else {
        quoted = false;
      }
    } else if (sign === '"' && row[row.length - 1] === "") {
      quoted = true;
    } else if (sign === separator) {
      row.push("");
    } else if (sign === "\n") {
      rows.push([""]);
    } else {
      row[row.length - 1] += sign;
    }
  }
  return rows.map((row) => row.map((cell) => cell.trim()));
}

function tableOf(row) {
  const heads = row.map((cell) => cell.toLowerCase());
  const has = (...names) => names.every((name) => heads.includes(name));
  if (has("from", "to")) {
    return "wires";
  }
  if (has("setting", "value")) {
    return "settings";
  }
  if (has("switch", "position")) {
    return "positions";
  }
  if (has("part") && (has("kind") || has("value") || has("label"))) {
    return "parts";
  }
  return has("connector") || has("condition") || has("plan note") ? "others" : null;
}

/** A car from the text of a list; null if its headings are not those of this page, so that the service must read it. */
export function parse(text) {
  const car = { settings: {}, wires: [], parts: [], positions: [], others: [] };
  let table = null;
  let heads = [];
  for (const row of cells(text)) {
    if (row.every((cell) => cell === "")) {
      continue;
    }
    const named = tableOf(row);
    if (named) {
      table = named;
      heads = row.map((cell) => cell.toLowerCase());
      if (table === "wires" && heads.some((head) => !WIRE_COLUMNS.includes(head) && !(head in WITH_UNIT))) {
        return null;
      }
      if (table === "others") {
        car.others.push({ heads: row, rows: [] });
      }
    } else if (table === null) {
      return null;
    } else if (table === "others") {
      car.others[car.others.length - 1].rows.push(row);
    } else if (table === "settings") {
      car.settings[row[0].toLowerCase()] = row[1] ?? "";
    } else {
      car[table].push(table === "wires" ? wireOf(heads, row) : recordOf(heads, row));
    }
  }
  if (table === null) {
    return null;
  }
  // Such a list says everything; what is added to it later may be completed like any other.
  delete car.settings.assumptions;
  return numbered(car);
}

function recordOf(heads, row) {
  return Object.fromEntries(heads.map((head, i) => [head, row[i] ?? ""]).filter(([head, value]) => head !== "" && value !== ""));
}

function wireOf(heads, row) {
  const wire = {};
  for (const [head, value] of Object.entries(recordOf(heads, row))) {
    const [column, unit] = WITH_UNIT[head] ?? [head, ""];
    if (PLAIN_WIRE[column] !== value) {
      wire[column] = value + unit;
    }
  }
  return wire;
}

/** The same car with a number for each wire that has none; numbers are unique. */
export function numbered(car) {
  const taken = new Set();
  let next = 1;
  const free = () => {
    while (taken.has(`W${next}`) || car.wires.some((wire) => wire.no === `W${next}`)) {
      next++;
    }
    return `W${next}`;
  };
  const wires = car.wires.map((wire) => {
    const no = wire.no && !taken.has(wire.no) ? wire.no : free();
    taken.add(no);
    return no === wire.no ? wire : { ...wire, no };
  });
  return { ...car, wires };
}

/**
 * The text of a car with, for each of its lines, where it came from: { text, places }, places by line number from 1 as
 * { table, index }.
 */
export function write(car) {
  const lines = [];
  const places = new Map();
  const line = (row, place) => {
    lines.push(row.map(quoted).join(","));
    if (place) {
      places.set(lines.length, place);
    }
  };
  const table = (name, heads, rows) => {
    if (rows.length > 0) {
      lines.push("");
      line(heads);
      rows.forEach(({ record, index }) => line(heads.map((head) => record[head] ?? ""), { table: name, index }));
    }
  };
  line(["setting", "value"]);
  Object.entries(car.settings).forEach(([name, value]) => line([name, value]));
  // A row with one end is still being typed.
  const wires = car.wires.map((record, index) => ({ record, index })).filter(({ record }) => record.from && record.to);
  table("wires", WIRE_COLUMNS.filter((column) => ["no", "from", "to"].includes(column) || used(car.wires, column)), wires);
  // Rows of a plan have a label and figures of their own; with them in one table the short ones would not be read.
  const parts = car.parts.map((record, index) => ({ record, index }));
  const whole = parts.filter(({ record }) => detailed(record));
  const columns = [...new Set(["part", "label", ...whole.flatMap(({ record }) => Object.keys(record))])];
  table("parts", columns, whole);
  table("parts", PART_COLUMNS, parts.filter(({ record }) => !detailed(record)));
  table("positions", POSITION_COLUMNS, car.positions.map((record, index) => ({ record, index })));
  for (const other of car.others) {
    lines.push("");
    line(other.heads);
    other.rows.forEach((row) => line(row));
  }
  return { text: `${lines.join("\n")}\n`, places };
}

/** Whether a row says its figures one by one, as a plan does. */
export function detailed(part) {
  return Object.keys(part).some((column) => !PART_COLUMNS.includes(column));
}

function used(rows, column) {
  return rows.some((row) => (row[column] ?? "") !== "");
}

function quoted(cell) {
  return /[",\n;\t]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** The car with one cell of a table changed; an index behind the last row adds one. */
export function withCell(car, table, index, column, value) {
  const rows = [...car[table]];
  const row = { ...(rows[index] ?? {}) };
  if (value === "") {
    delete row[column];
  } else {
    row[column] = value;
  }
  rows[Math.min(index, rows.length)] = row;
  return numbered({ ...car, [table]: rows });
}

/** The car with one row fewer. */
export function withoutRow(car, table, index) {
  return { ...car, [table]: car[table].filter((_, i) => i !== index) };
}

/** The car with a block of cells written from a cell on; columns are those that the grid shows, rows are added as needed. */
export function withBlock(car, table, index, columns, block) {
  return block
    .flatMap((row, down) => row.slice(0, columns.length).map((value, right) => [index + down, columns[right], value]))
    .reduce((changed, [row, column, value]) => withCell(changed, table, row, column, value), car);
}

/** The car with another one's wires and parts behind its own. */
export function joined(car, other) {
  return numbered({
    ...car,
    wires: [...car.wires, ...other.wires.map(({ no, ...wire }) => wire)],
    parts: [...car.parts, ...other.parts.filter((part) => !car.parts.some((own) => same(own.part, part.part)))],
    positions: [...car.positions, ...other.positions.filter((row) => !car.positions.some((own) => same(own.switch, row.switch)))],
    others: [...car.others, ...other.others],
  });
}

/** The car under a name. */
export function named(car, name) {
  return { ...car, settings: { ...car.settings, name: name.trim() } };
}

function same(one, other) {
  return (one ?? "").toLowerCase() === (other ?? "").toLowerCase();
}

/** The car with a part called otherwise, wherever it is named. */
export function renamed(car, names, to) {
  const known = names.map((name) => name.toLowerCase()).sort((a, b) => b.length - a.length);
  const inTerminal = (text) => {
    const name = known.find((each) => text?.toLowerCase().startsWith(each) && /^$|^[\s.]/.test(text.slice(each.length)));
    return name === undefined ? text : to + text.slice(name.length);
  };
  const whole = (text) => (known.includes(text?.toLowerCase()) ? to : text);
  return {
    ...car,
    wires: car.wires.map((wire) => present({ ...wire, from: inTerminal(wire.from), to: inTerminal(wire.to), via: whole(wire.via) })),
    parts: car.parts.map((part) => (detailed(part) && known.includes(part.part.toLowerCase()) ? { ...part, label: to } : present({ ...part, part: whole(part.part) }))),
    positions: car.positions.map((row) => ({ ...row, switch: whole(row.switch) })),
  };
}

function present(record) {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));
}

/** A row of the owner's with the cells that a change touches. */
function touched(own, was, is) {
  const cells = Object.fromEntries([...new Set([...Object.keys(was), ...Object.keys(is)])].filter((column) => was[column] !== is[column]).map((column) => [column, is[column] ?? ""]));
  return { ...own, ...cells };
}

/**
 * The car after a change that was made to its plan. `before` and `after` are the plan as the service writes it as a list,
 * before and after the change. Rows and cells that the change leaves alone stay as the owner wrote them.
 */
export function merged(car, before, after) {
  const rows = (table, key) => {
    const old = new Map(before[table].map((row) => [row[key], row]));
    const own = new Map(car[table].map((row) => [row[key], row]));
    return after[table].flatMap((row) => {
      const was = old.get(row[key]);
      if (was && own.has(row[key])) {
        return [touched(own.get(row[key]), was, row)];
      }
      return JSON.stringify(was) === JSON.stringify(row) ? [] : [row];
    });
  };
  const wires = rows("wires", "no");
  // The service names a fuse by its id; the owner's wires may name it by what it is called, and say what is printed on it.
  const usesId = (id) => car.parts.some((row) => row.part === id) || car.wires.some((wire) => [wire.from, wire.to, wire.via].some((end) => end?.startsWith(`${id}.`)));
  const asOwned = (row) => (row.kind === "fuse" && row.label && !usesId(row.part) && before.parts.some((old) => old.part === row.part) ? { part: row.label, kind: row.kind, value: `${row["rating a"]} A` } : row);
  const changedParts = after.parts.filter((row) => !before.parts.some((old) => JSON.stringify(old) === JSON.stringify(row))).map(asOwned);
  const gone = before.parts.filter((row) => !after.parts.some((each) => each.part === row.part)).map((row) => row.part);
  const replaced = new Set(changedParts.flatMap((row) => [row.part.toLowerCase(), (row.label ?? "").toLowerCase()]));
  const parts = [
    ...car.parts.filter((row) => !replaced.has((row.part ?? "").toLowerCase()) && !gone.includes(row.part)),
    ...changedParts,
  ];
  const changedSwitches = new Set(after.positions.filter((row) => !before.positions.some((old) => JSON.stringify(old) === JSON.stringify(row))).map((row) => row.switch));
  const positions = [
    ...car.positions.filter((row) => !changedSwitches.has(row.switch)),
    ...after.positions.filter((row) => changedSwitches.has(row.switch)),
  ];
  const others = JSON.stringify(before.others) === JSON.stringify(after.others) ? car.others : after.others;
  return { ...car, wires, parts, positions, others };
}
