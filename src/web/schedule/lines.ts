/** The lines of the schedule: a base, the groups of its rods under it, and what is wrong with it. Sorted and filtered here. */
import type { Finding } from "../../diagnostics/finding.js";
import type { BaseState, LiveBase } from "../../tasks/live/model.js";
import type { Unit } from "../../units/index.js";
import { parseLength } from "../../units/index.js";
import type { BaseFilter, BaseOrder } from "../state/left.js";
import { type Cell, COLUMNS, type Column, cellOf, keyOf, type Subject } from "./columns.js";
import { isWritten, type Texts, textsUnder } from "./texts.js";

/** A line. `index`: of the base in the job file. */
export type Line =
  | {
      readonly kind: "base";
      readonly id: string;
      readonly index: number;
      readonly base: LiveBase;
      readonly subject: Subject;
      readonly faults: readonly Fault[];
    }
  | {
      readonly kind: "group";
      readonly id: string;
      readonly index: number;
      readonly group: number;
      readonly base: LiveBase;
      readonly subject: Subject;
      readonly faults: readonly Fault[];
    }
  | {
      readonly kind: "fault";
      readonly id: string;
      readonly index: number;
      readonly base: LiveBase;
      readonly fault: Fault;
    };

/** A line that has cells. */
export type CellLine = Exclude<Line, { kind: "fault" }>;

/** What is wrong with a base or group; `key`: of the base or group, "" for itself. */
export interface Fault {
  readonly key: string;
  readonly isError: boolean;
  readonly message: string;
}

/** The state of a base in words. */
export const STATE_WORDS: Readonly<Record<BaseState, string>> = {
  faulty: "faulty",
  waiting: "waiting",
  held: "held",
  asked: "asked",
  clear: "clear",
};

const NO_FAULTS: readonly Fault[] = [];

/** What is wrong, by the index of the base. */
export function faultsByBase(findings: readonly Finding[]): ReadonlyMap<number, readonly Fault[]> {
  const found = new Map<number, Fault[]>();
  for (const { at, severity, message, hint } of findings) {
    const [, index, key = ""] = /^bases\[(\d+)\]\.?(.*)$/s.exec(at.path ?? "") ?? [];
    if (index === undefined) continue;
    const own = found.get(Number(index));
    const fault = { key, isError: severity === "error", message: hint === undefined ? message : `${message}; ${hint}` };
    if (own === undefined) found.set(Number(index), [fault]);
    else own.push(fault);
  }
  return found;
}

/** A base's lines. */
export function linesOf(base: LiveBase, index: number, faults: readonly Fault[] = NO_FAULTS): readonly Line[] {
  const given = Object.fromEntries(Object.entries(base.given).map(([key, { text }]) => [key, text]));
  const by = Object.fromEntries(Object.entries(base.given).map(([key, own]) => [key, own.by]));
  const texts = { ...given, ...base.written };
  const hasGroups = isWritten(texts, "groups");
  const subject: Subject = { texts, own: base.written, by, isGroup: false, hasGroups };
  const count = hasGroups ? groupCount(texts) : 0;
  const groups = Array.from({ length: count }, (_, group): Line => {
    const key = `groups[${group}]`;
    const own: Subject = {
      texts: textsUnder(texts, key),
      own: textsUnder(base.written, key),
      by: textsUnder(by, key),
      isGroup: true,
      hasGroups: false,
    };
    return { kind: "group", id: `${base.path}.${key}`, index, group, base, subject: own, faults: within(faults, key) };
  });
  const told = faults.map((fault, i): Line => ({ kind: "fault", id: `${base.path} fault ${i}`, index, base, fault }));
  return [{ kind: "base", id: base.path, index, base, subject, faults }, ...groups, ...told];
}

function groupCount(texts: Texts): number {
  const indices = Object.keys(texts).map((path) => Number(/^groups\[(\d+)\]/.exec(path)?.[1] ?? -1));
  return indices.reduce((most, index) => Math.max(most, index + 1), 0);
}

function within(faults: readonly Fault[], key: string): readonly Fault[] {
  return faults.flatMap((fault) =>
    fault.key.startsWith(`${key}.`) ? [{ ...fault, key: fault.key.slice(key.length + 1) }] : [],
  );
}

/** What is wrong at a cell: with its key, something under it, or a group of keys that lacks it. */
export function faultAt(line: CellLine, column: Column): Fault | undefined {
  const key = keyOf(column, line.kind === "group");
  return line.faults.find(
    ({ key: at }) => at === key || at.startsWith(`${key}.`) || at.startsWith(`${key}[`) || isLackOf(at, key),
  );
}

/** `rods is required` is said where the first key of rods stands. */
const FIRST_OF: Readonly<Record<string, string>> = { rods: "rods.diameter", template: "template.thickness" };

function isLackOf(at: string, key: string): boolean {
  return FIRST_OF[at] === key;
}

/** Indices of the bases that are shown, in the order in which they are shown. */
export function shownBases(
  bases: readonly LiveBase[],
  filter: BaseFilter,
  order: BaseOrder,
  column: Column | undefined,
  unit: Unit,
): readonly number[] {
  const words = filter.words.trim().toLowerCase();
  const shown = bases.flatMap((base, index) => (isIn(base, filter.state) && says(base, words) ? [index] : []));
  if (order === null || column === undefined) return shown;
  const ranks = new Map(shown.map((index) => [index, rankOf(bases[index], column, unit)]));
  const sign = order.isDown ? -1 : 1;
  return shown.toSorted((a, b) => compareRanks(ranks.get(a), ranks.get(b), sign) || a - b);
}

function isIn({ state, open }: LiveBase, wanted: BaseFilter["state"]): boolean {
  return wanted === "all" || (wanted === "question" ? open > 0 : state === wanted);
}

function says({ mark, written, given }: LiveBase, words: string): boolean {
  if (words === "") return true;
  const has = (text: string) => text.toLowerCase().includes(words);
  return has(mark) || Object.values(written).some(has) || Object.values(given).some(({ text }) => has(text));
}

/** What a cell is sorted by: nothing last, lengths before words. */
type Rank = readonly [number, number, string];

const STATES: readonly BaseState[] = ["faulty", "held", "asked", "waiting", "clear"];

function rankOf(base: LiveBase | undefined, column: Column, unit: Unit): Rank {
  if (base === undefined) return [2, 0, ""];
  if (column.id === "state") return [0, STATES.indexOf(base.state), ""];
  if (column.id === "worst") return base.worst === null ? [2, 0, ""] : [0, base.worst.share ?? -Number.MAX_VALUE, ""];
  const [first, second] = linesOf(base, 0);
  const line = first?.kind === "base" && first.subject.hasGroups && column.ofRods ? second : first;
  const { text } = line === undefined || line.kind === "fault" ? { text: "" } : cellOf(column, line.subject);
  if (text === "") return [2, 0, ""];
  const length = column.figure ? parseLength(text, unit) : null;
  return length?.ok === true ? [0, length.value, ""] : [1, 0, text];
}

const compareWords = new Intl.Collator("en", { numeric: true }).compare;

function compareRanks(a: Rank | undefined, b: Rank | undefined, sign: number): number {
  if (a === undefined || b === undefined) return 0;
  if (a[0] !== b[0]) return a[0] - b[0];
  return sign * (a[1] - b[1] || compareWords(a[2], b[2]));
}

/** The cell of a line, those that are told filled in. */
export function cellIn(line: CellLine, column: Column): Cell {
  if (column.content.kind !== "told" || line.kind === "group") return cellOf(column, line.subject);
  const shown = column.content.what === "state" ? stateWords(line.base) : worstWords(line.base);
  return { text: "", shown, by: "", isTyped: false };
}

function stateWords({ state, open }: LiveBase): string {
  return state === "held" && open > 0 ? "held, asked" : STATE_WORDS[state];
}

/** Why the base of a line is held, in the column of its state; else "". */
export function whyHeld(line: CellLine, { id }: Column): string {
  return id === "state" ? line.base.held.join("; ") : "";
}

/** `1/8 in to spare: hole to edge of template`, `short by 1/4 in: washer over base-plate hole`; "" where nothing has a margin. */
export function worstWords({ worst }: Pick<LiveBase, "worst">): string {
  return worst === null ? "" : `${worst.spare === "" ? "fails" : worst.spare}: ${worst.plainName}`;
}

/** What is wrong, with the name of the column that it is about: `Projection: "9x" ...`. */
export function faultWords({ key, message }: Fault): string {
  const [, group, own = key] = /^groups\[(\d+)\]\.(.*)$/s.exec(key) ?? [];
  const column = COLUMNS.find((each) => keyOf(each, group !== undefined) === own);
  const name = column?.name ?? own;
  const where = group === undefined ? name : `group ${Number(group) + 1}, ${name}`;
  return where === "" ? message : `${where}: ${message}`;
}
