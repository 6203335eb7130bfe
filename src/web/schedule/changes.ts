/** Changes of many cells and bases at once: what a pasted block, a fill, a removal, a move do to the job's list of bases. */
import type { KeyEdit } from "../../readers/yaml-edit.js";
import { scalarText } from "../../readers/yaml-edit.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { COLUMNS, type Column, type Subject, typed } from "./columns.js";
import { editItem, type Item, type Items, newItem, nextMark } from "./items.js";

/** A line of cells that is changed. `group`: null for the base itself. */
export interface Target {
  readonly index: number;
  readonly group: number | null;
  readonly mark: string;
  readonly subject: Subject;
}

/** A text that was not taken, and why. */
export interface Refusal {
  readonly where: string;
  readonly text: string;
  readonly why: string;
}

/** What is to be done: edits by the index of a base, bases that are new, and what was not taken. */
export interface CellChanges {
  readonly edits: ReadonlyMap<number, readonly KeyEdit[]>;
  readonly added: readonly NewBase[];
  readonly refused: readonly Refusal[];
}

/** A base that is not there yet. */
export interface NewBase {
  readonly mark: string;
  readonly edits: readonly KeyEdit[];
}

const EMPTY: Subject = { texts: {}, own: {}, by: {}, isGroup: false, hasGroups: false };

/** Cells of a block that land on lines, and on new bases past the last of them. A block whose first row names columns goes by the names. */
export function pasted(
  block: readonly (readonly string[])[],
  targets: readonly Target[],
  columns: readonly Column[],
  from: number,
  taken: ReadonlySet<string>,
): CellChanges {
  const headed = headings(block[0] ?? []);
  const rows = headed === null ? block : block.slice(1);
  const gatherer = new Gatherer(new Set(taken));
  for (const [row, texts] of rows.entries()) {
    const target = targets[row];
    const cells = texts.map((text, i) => ({ text, column: headed === null ? columns[from + i] : headed[i] }));
    if (target !== undefined) gatherer.change(target, cells);
    else if (texts.some((text) => text.trim() !== "")) gatherer.add(cells);
  }
  return gatherer.made();
}

/** One text into every cell of a block. */
export function filled(texts: readonly string[], targets: readonly Target[], columns: readonly Column[]): CellChanges {
  const gatherer = new Gatherer(new Set());
  for (const target of targets)
    gatherer.change(
      target,
      columns.map((column, i) => ({ column, text: texts[i % texts.length] ?? "" })),
    );
  return gatherer.made();
}

/** The columns that a row names, where it names nothing else; null: it is a row of cells. */
function headings(texts: readonly string[]): readonly (Column | undefined)[] | null {
  const found = texts.map((text) => COLUMNS.find(({ name }) => name.toLowerCase() === text.trim().toLowerCase()));
  const isHeading = found.length > 1 && found.every((column, i) => column !== undefined || texts[i]?.trim() === "");
  return isHeading && found.some((column) => column !== undefined) ? found : null;
}

interface CellText {
  readonly text: string;
  readonly column: Column | undefined;
}

class Gatherer {
  private readonly edits = new Map<number, readonly KeyEdit[]>();
  private readonly added: NewBase[] = [];
  private readonly refused: Refusal[] = [];

  constructor(private readonly taken: Set<string>) {}

  change({ index, group, mark, subject }: Target, cells: readonly CellText[]): void {
    const where = group === null ? mark : `${mark}, group ${group + 1}`;
    const own = cells.flatMap((cell) => this.editsOf(cell, subject, where));
    const edits =
      group === null ? own : own.map((edit): KeyEdit => ({ ...edit, path: ["groups", group, ...edit.path] }));
    if (edits.length > 0) this.edits.set(index, [...(this.edits.get(index) ?? []), ...edits]);
  }

  add(cells: readonly CellText[]): void {
    const given = cells.find(({ column }) => column?.id === "mark")?.text.trim() ?? "";
    const last = this.added.at(-1)?.mark ?? [...this.taken].at(-1) ?? "";
    const mark = given === "" ? nextMark(last, this.taken) : given;
    this.taken.add(mark.toUpperCase());
    const others = cells.filter(({ column, text }) => column?.id !== "mark" && text.trim() !== "");
    this.added.push({ mark, edits: others.flatMap((cell) => this.editsOf(cell, EMPTY, mark)) });
  }

  private editsOf({ column, text }: CellText, subject: Subject, where: string): readonly KeyEdit[] {
    if (column === undefined) {
      if (text.trim() !== "") this.refused.push({ where, text, why: "there is no column for it" });
      return [];
    }
    const said = typed(column, subject, text);
    if (said.ok) return said.edits;
    if (text.trim() !== "") this.refused.push({ where: `${where}, ${column.name}`, text, why: said.why });
    return [];
  }

  made(): CellChanges {
    return { edits: this.edits, added: this.added, refused: this.refused };
  }
}

/** The list of bases after changes of cells; null: one of them cannot be made in its text. `rest` is waited for now and then: there may be thousands. */
export async function withChanges(
  items: Items,
  { edits, added }: Pick<CellChanges, "edits" | "added">,
  rest: () => Promise<void>,
): Promise<Items | null> {
  const changed: Item[] = [];
  for (const [index, item] of items.items.entries()) {
    const own = edits.get(index);
    const body = own === undefined ? item.body : editItem(item.body, own);
    if (body === null) return null;
    changed.push({ ...item, body });
    await rest();
  }
  const made = added.map(({ mark, edits: own }) => withKeys(newItem(items.items, mark), own));
  return { ...items, items: [...changed, ...made] };
}

type Keys = Map<string, string | Keys>;

/** A new base with its first keys, a line for each group of them. */
function withKeys(item: Item, edits: readonly KeyEdit[]): Item {
  const keys: Keys = new Map();
  for (const edit of edits)
    if (edit.kind === "set") put(keys, edit.path.map(String), edit.flow === true ? edit.text : scalarText(edit.text));
  const indent = " ".repeat(item.body.indexOf("-") + 2);
  const lines = [...keys].map(([key, value]) => `${indent}${key}: ${flowOf(value)}\n`);
  return { ...item, body: item.body + lines.join("") };
}

function put(keys: Keys, [first = "", ...rest]: readonly string[], text: string): void {
  if (rest.length === 0) {
    keys.set(first, text);
    return;
  }
  const known = keys.get(first);
  const under: Keys = known instanceof Map ? known : new Map();
  keys.set(first, under);
  put(under, rest, text);
}

function flowOf(value: string | Keys): string {
  if (typeof value === "string") return value;
  return `{ ${[...value].map(([key, under]) => `${key}: ${flowOf(under)}`).join(", ")} }`;
}

/** The list with a new base after the place `after`. */
export function withNew(items: Items, after: number, mark: string): Items {
  return { ...items, items: items.items.toSpliced(after + 1, 0, newItem(items.items, mark)) };
}

/** The list with copies of bases after the last of them, each with a mark of its own and no mark for its template. */
export function withCopies(items: Items, indices: readonly number[], marks: readonly string[]): Items | null {
  const copies: Item[] = [];
  for (const [i, index] of indices.entries()) {
    const body = copyOf(items.items[index]?.body ?? "", marks[i] ?? "");
    if (body === null) return null;
    copies.push({ lead: "", body });
  }
  const after = greatestOf(indices) + 1;
  return { ...items, items: [...items.items.slice(0, after), ...copies, ...items.items.slice(after)] };
}

function copyOf(body: string, mark: string): string | null {
  const named = editItem(body, [{ kind: "set", path: ["mark"], text: mark }]);
  // a base whose template has no mark has none to take out
  return named && (editItem(named, [{ kind: "remove", path: ["template", "mark"] }]) ?? named);
}

/** The list without these bases. */
export function without(items: Items, indices: readonly number[]): Items {
  const gone = new Set(indices);
  return { ...items, items: items.items.filter((_, index) => !gone.has(index)) };
}

/** The list with these bases one place up or down, as a block. */
export function shifted(items: Items, indices: readonly number[], by: 1 | -1): Items {
  const [low, high] = [leastOf(indices), greatestOf(indices)];
  const other = by < 0 ? low - 1 : high + 1;
  const passed = items.items[other];
  if (passed === undefined) return items;
  const rest = items.items.toSpliced(other, 1);
  return { ...items, items: rest.toSpliced(by < 0 ? high : low, 0, passed) };
}

/** The list in another order: those that are named first, the others after them as they were. */
export function ordered(items: Items, order: readonly number[]): Items {
  const named = new Set(order);
  const rest = items.items.map((_, index) => index).filter((index) => !named.has(index));
  return { ...items, items: [...order, ...rest].flatMap((index) => items.items[index] ?? []) };
}
