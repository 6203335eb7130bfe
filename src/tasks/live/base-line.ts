/** The line of a base: what is written of it, and what its ledger comes to. */
import type { CheckedBase } from "../../checks/checked.js";
import { isWithoutMargin, tightness } from "../../checks/run.js";
import { laidAsWritten } from "../../job/index.js";
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import { liveCheck } from "./live-check.js";
import type { LiveBase } from "./model.js";

/** What is written of a base, and given to it by the job's defaults and kinds. */
export type WrittenLine = Pick<LiveBase, "path" | "mark" | "written" | "given">;

/** Of the base at `index` of the job's list. */
export function writtenLine(node: SourceNode, index: number, job: SourceNode | null): WrittenLine {
  const mark = findNode(node, "mark");
  const written = textsOf(node, "", new Map());
  const [laid = node] = laidAsWritten([node], job);
  const given = [...textsOf(laid, "", new Map())].filter(([path]) => !written.has(path));
  return {
    path: `bases[${index}]`,
    mark: mark?.kind === "scalar" ? mark.text : "",
    written: Object.fromEntries([...written].map(([path, { text }]) => [path, text])),
    given: Object.fromEntries(given),
  };
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

/** By its ledger. */
export function standingOf({ rows, held, open, job }: CheckedBase): Standing {
  const close = rows.filter((row) => row.status === "pass" && row.margin !== null && !isWithoutMargin(row));
  const [first] = close.toSorted((a, b) => tightness(a) - tightness(b));
  const state = held.length > 0 ? "held" : open.length > 0 ? "asked" : "clear";
  return { state, held, open: open.length, worst: first === undefined ? null : liveCheck(first, job.unit) };
}
