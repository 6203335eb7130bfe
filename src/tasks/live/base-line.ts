/** The line of a base: what is written of it, and what its ledger comes to. */
import { isAsking } from "../../checks/asking.js";
import type { CheckRow } from "../../checks/model.js";
import { isHolding, isWithoutMargin, tightness } from "../../checks/run.js";
import type { Memory } from "../../job/index.js";
import { laidAsWritten, writingOf } from "../../job/index.js";
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import type { Unit } from "../../units/index.js";
import { liveCheck } from "./live-check.js";
import type { LiveBase } from "./model.js";

/** What is written of a base, and given to it by the job's defaults and kinds. */
export type WrittenLine = Pick<LiveBase, "path" | "mark" | "written" | "given">;

/** Lines of the bases of a job's list, one text after the other: those of bases that stand as before are kept. */
export function startWrittenLines(
  memory: Memory,
): (items: readonly SourceNode[], root: SourceNode | null) => readonly WrittenLine[] {
  let known = new Map<string, WrittenLine>();
  let around = "";
  const nameOf = (node: SourceNode) => memory.nameOf(node, writingOf);
  return (items, root) => {
    const layers = ["defaults", "kinds"].map((key) => findNode(root ?? undefined, key));
    const now = layers.map((node) => (node === undefined ? "" : nameOf(node))).join();
    const used = new Map<string, WrittenLine>();
    const before = now === around ? known : used;
    const lines = items.map((node, index) => {
      const key = `${index} ${nameOf(node)}`;
      const line = before.get(key) ?? writtenLine(node, index, root);
      used.set(key, line);
      return line;
    });
    [known, around] = [used, now];
    return lines;
  };
}

/** Of the base at `index` of the job's list. */
export function writtenLine(node: SourceNode, index: number, job: SourceNode | null): WrittenLine {
  const written = textsOf(node, "", new Map());
  const [laid = node] = laidAsWritten([node], job);
  const given = [...textsOf(laid, "", new Map())].filter(([path]) => !written.has(path));
  return {
    path: `bases[${index}]`,
    mark: markOf(node),
    written: Object.fromEntries([...written].map(([path, { text }]) => [path, text])),
    given: Object.fromEntries(given),
  };
}

/** Of a base that a row of a schedule gives, with what defaults and kinds give to it; nothing is told of one that is not found. */
export function sheetLine(laid: SourceNode | undefined, mark: string, index: number): WrittenLine {
  const texts = laid === undefined ? [] : [...textsOf(laid, "", new Map())];
  return {
    ...{ path: `bases[${index}]`, mark },
    written: Object.fromEntries(texts.flatMap(([path, { text, by }]) => (by === "" ? [[path, text]] : []))),
    given: Object.fromEntries(texts.filter(([, { by }]) => by !== "")),
  };
}

/** The mark as written; "" where there is none. */
export function markOf(base: SourceNode): string {
  const mark = findNode(base, "mark");
  return mark?.kind === "scalar" ? mark.text : "";
}

/** Every scalar of the job's head as written, by its key path; what stands in lists, and the bases with what is given to them, apart. */
export function headTexts(root: SourceNode): Readonly<Record<string, string>> {
  if (root.kind !== "map") return {};
  const entries = root.entries.filter(({ key, value }) => value.kind !== "list" && !OF_BASES.has(key));
  const texts = textsOf({ ...root, entries }, "", new Map());
  return Object.fromEntries([...texts].map(([path, { text }]) => [path, text]));
}

/** Every scalar under keys of the first level as written, by its key path: lists and groups too. */
export function textsUnderKeys(root: SourceNode | null, keys: readonly string[]): Readonly<Record<string, string>> {
  if (root?.kind !== "map") return {};
  const texts: Texts = new Map();
  for (const { key, value } of root.entries) if (keys.includes(key)) textsOf(value, key, texts);
  return Object.fromEntries([...texts].map(([path, { text }]) => [path, text]));
}

const OF_BASES = new Set(["bases", "defaults", "kinds"]);

type Texts = Map<string, { readonly text: string; readonly by: string }>;

/** Every scalar by its key path. */
function textsOf(node: SourceNode, path: string, into: Texts, by = ""): Texts {
  switch (node.kind) {
    case "scalar":
      return into.set(path, { text: node.text, by });
    case "list":
      for (const [index, item] of node.items.entries()) textsOf(item, `${path}[${index}]`, into, by);
      return into;
    case "map":
      for (const { key, value, givenBy } of node.entries)
        textsOf(value, path === "" ? key : `${path}.${key}`, into, givenBy ?? by);
      return into;
  }
}

/** How a base stands. */
export type Standing = Pick<LiveBase, "state" | "held" | "open" | "worst">;

/** Of a base that was not checked. */
export function unchecked(state: "faulty" | "waiting"): Standing {
  return { state, held: [], open: 0, worst: null };
}

/** By its ledger, whose rows are worst first. */
export function standingOf(rows: readonly CheckRow[], held: readonly string[], open: number, unit: Unit): Standing {
  const worst = rows.find(isAgainst) ?? closestOf(rows);
  const state = held.length > 0 ? "held" : open > 0 ? "asked" : "clear";
  return { state, held, open, worst: worst === null ? null : liveCheck(worst, unit) };
}

/** Holds the base, or waits for the engineer's answer. */
function isAgainst(row: CheckRow): boolean {
  return isHolding(row) || (isAsking(row) && row.answer === null);
}

/** Of the rows that pass with a margin the closest call. */
function closestOf(rows: readonly CheckRow[]): CheckRow | null {
  let first: CheckRow | null = null;
  for (const row of rows) {
    if (row.status !== "pass" || row.margin === null || isWithoutMargin(row)) continue;
    if (first === null || tightness(row) < tightness(first)) first = row;
  }
  return first;
}
