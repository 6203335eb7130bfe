/**
 * What a typed figure of the layout does to the job: spacings, names of lines, placements. Texts stay texts: lengths are read
 * by the job's own reader.
 */
import type { KeyEdit } from "../../readers/yaml-edit.js";
import { scalarText } from "../../readers/yaml-edit.js";
import { flowText, isWritten, listUnder, type Texts, textsUnder } from "../schedule/texts.js";

/** One of the two axes of the grid. */
export type Axis = "x" | "y";

/** An axis as it is written. `spacings`: those between the lines one by one; null where they are not given, or not so many. */
export interface WrittenAxis {
  readonly names: readonly string[];
  readonly spacings: readonly string[] | null;
  /** `6 @ 25', 20'`. */
  readonly spacing: string;
  readonly from: string;
  readonly at: readonly string[];
}

/** Most lines that a text may stand for. */
const MOST = 2000;

/** An axis of the grid. */
export function axisOf(written: Texts, axis: Axis): WrittenAxis {
  const key = `grid.${axis}`;
  const names = listUnder(written, `${key}.names`);
  const alone = written[`${key}.spacing`];
  const parts = alone === undefined ? listUnder(written, `${key}.spacing`) : [alone];
  const each = parts.flatMap(expanded);
  const spacings =
    alone !== undefined && each.length === 1
      ? Array.from({ length: Math.max(0, names.length - 1) }, () => alone)
      : each;
  return {
    names,
    spacings: spacings.length === names.length - 1 && spacings.length > 0 ? spacings : null,
    spacing: parts.join(", "),
    from: written[`${key}.from`] ?? "",
    at: listUnder(written, `${key}.at`),
  };
}

const SEVERAL = /^\s*(\d{1,4})\s*(?:@|x|\u00d7)\s*(.+)$/is;

/** `3 @ 25'` -> three of them. */
function expanded(text: string): readonly string[] {
  const [, count = "1", one = text] = SEVERAL.exec(text) ?? [];
  return Array.from({ length: Math.min(MOST, Number(count)) }, () => one.trim());
}

/** Runs of equal spacings as one text each. */
function gathered(spacings: readonly string[]): readonly string[] {
  const runs: { text: string; count: number }[] = [];
  for (const text of spacings) {
    const last = runs.at(-1);
    if (last?.text === text) last.count += 1;
    else runs.push({ text, count: 1 });
  }
  return runs.map(({ text, count }) => (count === 1 ? text : `${count} @ ${text}`));
}

/** Where the distance between two lines stands; null: it is no single spacing that is written. */
export function bayOf(
  written: Texts,
  from: string,
  to: string,
): { readonly axis: Axis; readonly index: number; readonly text: string } | null {
  for (const axis of ["x", "y"] as const) {
    const { names, spacings } = axisOf(written, axis);
    const [a, b] = [names.indexOf(from), names.indexOf(to)];
    const text = spacings?.[Math.min(a, b)];
    if (a >= 0 && b >= 0 && Math.abs(a - b) === 1 && text !== undefined) return { axis, index: Math.min(a, b), text };
  }
  return null;
}

/** One spacing is another; the others stay, in runs as before. */
export function withSpacing(written: Texts, axis: Axis, index: number, text: string): readonly KeyEdit[] {
  const { spacings } = axisOf(written, axis);
  if (spacings === null || text.trim() === "" || spacings[index] === text.trim()) return [];
  return [listEdit(["grid", axis, "spacing"], gathered(spacings.with(index, text.trim())))];
}

function listEdit(path: readonly (string | number)[], texts: readonly string[]): KeyEdit {
  const [only] = texts;
  if (texts.length === 1 && only !== undefined && SEVERAL.test(only)) return { kind: "set", path, text: only };
  return { kind: "set", path, text: flowList(texts), flow: true };
}

function flowList(texts: readonly string[]): string {
  return `[${texts.map(scalarText).join(", ")}]`;
}

/** A comma parts texts of a list. */
export function parts(text: string): readonly string[] {
  return text
    .split(",")
    .map((each) => each.trim())
    .filter((each) => each !== "");
}

/** Keys of an axis as typed: lists with commas; "" takes the key out. */
export function axisEdit(
  written: Texts,
  axis: Axis,
  key: "names" | "spacing" | "from" | "at",
  text: string,
): readonly KeyEdit[] {
  const path = ["grid", axis, key];
  if (text.trim() === "") return isWritten(written, path.join(".")) ? [{ kind: "remove", path }] : [];
  if (key === "from") return [{ kind: "set", path, text: text.trim() }];
  return key === "spacing"
    ? [listEdit(path, parts(text))]
    : [{ kind: "set", path, text: flowList(parts(text)), flow: true }];
}

/** A line has another name, wherever it is named. */
export function renamed(written: Texts, from: string, to: string): readonly KeyEdit[] {
  if (to === "" || to === from) return [];
  const names = (["x", "y"] as const).flatMap((axis) => axisOf(written, axis).names);
  const others = Object.entries(textsUnder(written, "grid.others")).filter(([path]) => path.endsWith(".name"));
  const known = new Set([...names, ...others.map(([, text]) => text)]);
  const set = (key: string, text: string): KeyEdit => ({ kind: "set", path: stepsOf(key), text });
  return Object.entries(written).flatMap(([key, text]): readonly KeyEdit[] => {
    if (/^grid\.[xy]\.names\[\d+\]$/.test(key) || /^grid\.others\[\d+\]\.name$/.test(key))
      return text === from ? [set(key, to)] : [];
    if (!/^(placements\[\d+\]\.(at|every)|control\[\d+\]\.at)\b/.test(key)) return [];
    const now = text === from ? to : renamedCrossing(text, from, to, known);
    return now === text ? [] : [set(key, now)];
  });
}

/** `A-1`, of which one line has another name. */
function renamedCrossing(text: string, from: string, to: string, known: ReadonlySet<string>): string {
  if (text.startsWith(`${from}-`) && known.has(text.slice(from.length + 1))) return `${to}${text.slice(from.length)}`;
  if (text.endsWith(`-${from}`) && known.has(text.slice(0, -from.length - 1)))
    return `${text.slice(0, -from.length)}${to}`;
  return text;
}

/** `placements[2].at` as steps. */
export function stepsOf(key: string): readonly (string | number)[] {
  return (key.match(/[^.[\]]+/g) ?? []).map((step) => (/^\d+$/.test(step) ? Number(step) : step));
}

/** An entry of `placements` as it is typed and shown. */
export interface WrittenPlacement {
  readonly base: string;
  /** `A-1`, `A-1, A-2`, `every A, B with 1, 2, 3`. */
  readonly at: string;
  readonly offset: string;
  readonly turn: string;
  readonly topOfConcrete: string;
  readonly bottomOfPlate: string;
  readonly delivery: string;
}

/** Keys that a cell of the table of placements holds. */
export const PLACEMENT_CELLS: readonly { readonly key: keyof WrittenPlacement; readonly name: string }[] = [
  { key: "base", name: "Base" },
  { key: "at", name: "Stands at" },
  { key: "offset", name: "Offset x, y" },
  { key: "turn", name: "Turn" },
  { key: "topOfConcrete", name: "T.O.C." },
  { key: "bottomOfPlate", name: "B.O.P." },
  { key: "delivery", name: "Delivery" },
];

/** Entries of the list; null where placements are no list: they stand in a spreadsheet. */
export function placementsOf(written: Texts): readonly WrittenPlacement[] | null {
  if (written.placements !== undefined || written["placements.file"] !== undefined) return null;
  const under = Object.keys(textsUnder(written, "placements"));
  const count = under.reduce((most, path) => Math.max(most, Number(/^\[(\d+)\]/.exec(path)?.[1] ?? -1) + 1), 0);
  return Array.from({ length: count }, (_, index) => placementOf(textsUnder(written, `placements[${index}]`)));
}

function placementOf(texts: Texts): WrittenPlacement {
  const one = (key: string) => texts[key] ?? "";
  return {
    base: one("base"),
    at: crossingsText(texts),
    offset: listUnder(texts, "offset").join(", "),
    turn: one("turn"),
    topOfConcrete: one("topOfConcrete"),
    bottomOfPlate: one("bottomOfPlate"),
    delivery: one("delivery"),
  };
}

function crossingsText(texts: Texts): string {
  if (isWritten(texts, "every")) {
    const side = (index: number) => texts[`every[${index}]`] ?? listUnder(texts, `every[${index}]`).join(", ");
    return `every ${side(0)} with ${side(1)}`;
  }
  if (texts.at !== undefined) return texts.at;
  const isPairs = Object.keys(texts).some((path) => /^at\[\d+\]\[/.test(path));
  return isPairs ? flowText(texts, "at") : listUnder(texts, "at").join(", ");
}

/** A cell of the table of placements as typed. */
export function placementEdits(
  written: Texts,
  index: number,
  key: keyof WrittenPlacement,
  text: string,
): readonly KeyEdit[] {
  const own = `placements[${index}]`;
  const path = (name: string) => ["placements", index, name];
  const plain = text.trim();
  const now = placementsOf(written)?.[index]?.[key];
  if (plain === now) return [];
  const remove = (name: string): readonly KeyEdit[] =>
    isWritten(written, `${own}.${name}`) ? [{ kind: "remove", path: path(name) }] : [];
  if (key === "at") {
    const other = /^every\b/i.test(plain) ? "at" : "every";
    return [...remove(other), ...(plain === "" ? remove("at") : [crossingsEdit(path, plain)])];
  }
  if (plain === "") return remove(key);
  if (key === "offset") return [{ kind: "set", path: path(key), text: flowList(parts(plain)), flow: true }];
  return [{ kind: "set", path: path(key), text: plain }];
}

function crossingsEdit(path: (name: string) => readonly (string | number)[], text: string): KeyEdit {
  const [, first, second] = /^every\s+(.+?)\s+with\s+(.+)$/is.exec(text) ?? [];
  if (first !== undefined && second !== undefined) {
    const sides = [first, second].map((side) => flowList(parts(side)));
    return { kind: "set", path: path("every"), text: `[${sides.join(", ")}]`, flow: true };
  }
  const list = parts(text);
  const [only] = list;
  return list.length === 1 && only !== undefined
    ? { kind: "set", path: path("at"), text: only }
    : { kind: "set", path: path("at"), text: flowList(list), flow: true };
}

/** A base at a crossing, behind the others. */
export function placedAt(written: Texts, base: string, at: string): KeyEdit {
  const entry = `{ base: ${scalarText(base)}, at: ${scalarText(at)} }`;
  const count = placementsOf(written)?.length ?? 0;
  return count === 0
    ? { kind: "set", path: ["placements"], text: `\n  - ${entry}`, flow: true }
    : { kind: "insert", path: ["placements"], index: count, lines: entry };
}

/** A first grid: its spacings as typed, its lines named 1, 2, 3 along x and A, B, C along y. */
export function firstGrid(x: string, y: string): readonly KeyEdit[] {
  const axis = (text: string, nameAt: (index: number) => string) => {
    const spacings = parts(text);
    const count = spacings.flatMap(expanded).length + 1;
    const names = Array.from({ length: Math.min(MOST, count) }, (_, index) => nameAt(index));
    const [only] = spacings;
    const spacing =
      spacings.length === 1 && only !== undefined && SEVERAL.test(only) ? scalarText(only) : flowList(spacings);
    return `{ names: ${flowList(names)}, spacing: ${spacing} }`;
  };
  const along = { x: axis(x, (index) => String(index + 1)), y: axis(y, lettersOf) };
  return [{ kind: "set", path: ["grid"], text: `\n  x: ${along.x}\n  y: ${along.y}`, flow: true }, NO_PLACES];
}

/** A layout has places, be they none yet. */
export const NO_PLACES: KeyEdit = { kind: "set", path: ["placements"], text: "[]", flow: true };

/** A, B, ... Z, AA; I and O are left out, as on drawings. */
function lettersOf(index: number): string {
  const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  const last = letters[index % letters.length] ?? "";
  return index < letters.length ? last : lettersOf(Math.floor(index / letters.length) - 1) + last;
}
