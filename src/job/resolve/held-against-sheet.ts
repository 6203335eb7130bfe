/**
 * Bases that stand in a job beside the sheet they were read from: the job's hold. What is the same is taken with its place in
 * the sheet, as if the job named the sheet alone; what differs is a line of the read-as table.
 */
import type { SourceEntry, SourceMap, SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import type { ReadAs, ReadLine, Schedule } from "../../schedule/index.js";
import { keyInBase, markKey, withLines } from "../../schedule/index.js";
import { groupBy } from "../../units/group-by.js";
import { toPlain } from "../document.js";

/** What of the bases in a job differs from its sheet. */
export interface SheetDifference {
  readonly mark: string;
  /** Key inside the base; "" for the base as a whole. */
  readonly key: string;
  /** The job's value; "" where it has none. */
  readonly taken: string;
  readonly remark: string;
}

/** The bases as they hold, and what was understood of the sheet with what the job changes. */
export interface HeldBases {
  readonly roots: readonly SourceNode[];
  readonly readAs: ReadAs;
  readonly differences: readonly SheetDifference[];
}

/** Holds the bases of a job against those of its sheet, by their marks; of one mark on several the first against the first. */
export function holdAgainstSheet(written: readonly SourceNode[], { bases, readAs }: Schedule): HeldBases {
  const ofSheet = new Map([...groupBy(bases, keyOf)].map(([key, same]) => [key, same.values()] as const));
  const held = written.map((base) => holdBase(base, ofSheet.get(keyOf(base))?.next().value));
  const kept = new Set(written.map(keyOf));
  const gone = bases.map(markOf).filter((mark) => !kept.has(markKey(mark)));
  const differences = [
    ...held.flatMap((each) => each.differences),
    ...gone.map((mark) => ({ mark, key: "", taken: "", remark: "in the sheet alone: the job has no such base" })),
  ];
  const isPlain = readAs.isPlain && differences.length === 0;
  return {
    roots: held.map(({ root }) => root),
    readAs: withLines(readAs, isPlain, (lines) => withDifferences(lines, differences)),
    differences,
  };
}

function markOf(base: SourceNode): string {
  const mark = findNode(base, "mark");
  return mark?.kind === "scalar" ? mark.text : "";
}

function keyOf(base: SourceNode): string {
  return markKey(markOf(base));
}

interface Held {
  readonly root: SourceNode;
  readonly differences: readonly SheetDifference[];
}

function holdBase(base: SourceNode, ofSheet: SourceNode | undefined): Held {
  const mark = markOf(base);
  if (ofSheet !== undefined) return holdNode(base, ofSheet, mark, "");
  const remark = "in the job alone: the sheet has no such base";
  return { root: base, differences: [{ mark, key: "mark", taken: mark, remark }] };
}

/** The sheet's node where it says the same, so that its place and who gave it are kept. */
function holdNode(own: SourceNode, ofSheet: SourceNode, mark: string, key: string): Held {
  if (isSame(own, ofSheet)) return { root: ofSheet, differences: [] };
  if (own.kind === "map" && ofSheet.kind === "map") return holdMap(own, ofSheet, mark, key);
  if (own.kind === "list" && ofSheet.kind === "list" && own.items.length === ofSheet.items.length) {
    const items = own.items.map((item, index) => {
      const other = ofSheet.items[index];
      return other === undefined ? { root: item, differences: [] } : holdNode(item, other, mark, `${key}[${index}]`);
    });
    return {
      root: { ...own, items: items.map(({ root }) => root) },
      differences: items.flatMap((each) => each.differences),
    };
  }
  const remark = `the sheet has ${valueText(ofSheet)}`;
  return { root: own, differences: [{ mark, key, taken: valueText(own), remark }] };
}

function holdMap(own: SourceMap, ofSheet: SourceMap, mark: string, path: string): Held {
  const pathOf = (key: string): string => (path === "" ? key : `${path}.${key}`);
  const differences: SheetDifference[] = [];
  const entries = own.entries.map((entry): SourceEntry => {
    const other = ofSheet.entries.find(({ key }) => key === entry.key);
    const key = pathOf(entry.key);
    if (other === undefined) {
      differences.push({ mark, key, taken: valueText(entry.value), remark: "in the job alone: the sheet gives none" });
      return entry;
    }
    const held = holdNode(entry.value, other.value, mark, key);
    for (const each of held.differences) differences.push(each);
    return held.root === other.value ? other : { ...entry, value: held.root };
  });
  const absent = ofSheet.entries.filter(({ key }) => !own.entries.some((entry) => entry.key === key));
  for (const { key, value } of absent.filter((entry) => !isEmpty(entry.value))) {
    const remark = `not in the job: the sheet has ${valueText(value)}`;
    differences.push({ mark, key: pathOf(key), taken: "", remark });
  }
  return { root: { ...own, entries: [...entries, ...absent.filter(({ value }) => isEmpty(value))] }, differences };
}

/** A group of keys that holds nothing is there to be asked for by the sheet's headings. */
function isEmpty(node: SourceNode): boolean {
  return node.kind === "map" && node.entries.every(({ value }) => isEmpty(value));
}

function isSame(a: SourceNode, b: SourceNode): boolean {
  return JSON.stringify(plainInOrder(a)) === JSON.stringify(plainInOrder(b));
}

/** Keys in one order, empty groups left out. */
function plainInOrder(node: SourceNode): unknown {
  if (node.kind === "scalar") return toPlain(node);
  if (node.kind === "list") return node.items.map(plainInOrder);
  const entries = node.entries.filter(({ value }) => !isEmpty(value));
  return Object.fromEntries(
    entries.map(({ key, value }) => [`:${key}`, plainInOrder(value)] as const).sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

/** A value in a few words: `8`, `[1, 2]`, `kind rectangle, x 12`. */
function valueText(node: SourceNode): string {
  switch (node.kind) {
    case "scalar":
      return node.text;
    case "list":
      return `[${node.items.map(valueText).join(", ")}]`;
    case "map":
      return node.entries.map(({ key, value }) => `${key} ${valueText(value)}`).join(", ");
  }
}

/** A difference stands in the place of the sheet's own line for the key; after the base's lines where there is none. */
function withDifferences(lines: readonly ReadLine[], differences: readonly SheetDifference[]): readonly ReadLine[] {
  const changed = new Set(differences.map(({ mark }) => markKey(mark)));
  const places = lines.flatMap((line) => splitLine(line, changed)).map((line) => [line]);
  const ofMark = groupBy(places, ([line]) => markKey(line?.mark ?? ""));
  const added: ReadLine[] = [];
  for (const difference of differences) {
    const own = ofMark.get(markKey(difference.mark)) ?? [];
    if (difference.key === "") for (const at of own) leaveOut(at, difference.remark);
    else placeDifference(own, difference, own.at(-1) ?? added);
  }
  return [...places.flat(), ...added];
}

/** A line of several bases of one row: those that the job changes get lines of their own. */
function splitLine(line: ReadLine, changed: ReadonlySet<string>): readonly ReadLine[] {
  const marks = line.mark.split(", ");
  const own = marks.filter((mark) => changed.has(markKey(mark)));
  if (marks.length === 1 || own.length === 0) return [line];
  const others = marks.filter((mark) => !own.includes(mark)).join(", ");
  const rest = others === "" ? [] : [{ ...line, mark: others }];
  return [...rest, ...own.map((mark) => ({ ...line, mark }))];
}

function leaveOut(at: ReadLine[], remark: string): void {
  for (const [index, line] of at.entries())
    at[index] = { ...line, key: "", taken: "", unit: "", origin: "left out", remark };
}

function placeDifference(
  own: readonly ReadLine[][],
  { mark, key, taken, remark }: SheetDifference,
  last: ReadLine[],
): void {
  const changed = { mark, key: taken === "" ? "" : key, taken, unit: "", origin: "job" as const, remark };
  const at = own.find(([line]) => line !== undefined && isAbout(line.key, key));
  const [line] = at ?? [];
  if (at === undefined || line === undefined) last.push({ ...changed, cell: "", heading: "", written: "" });
  else at[0] = { ...line, ...changed };
}

function isAbout(ofLine: string, key: string): boolean {
  if (ofLine === "") return false;
  const own = keyInBase(ofLine, true);
  const path = key.replace(/^groups\[\d+\]\./, "");
  return [own, ofLine].some(
    (each) =>
      path === each || path.startsWith(`${each}.`) || path.startsWith(`${each}[`) || each.startsWith(`${path}.`),
  );
}
