/** Lines that answer questions, as `columns: { QTY: Rod count }`, taken apart so that several stand under one key. */
import type { SourceNode } from "../readers/source.js";
import { readYaml } from "../readers/yaml.js";

/** Where an answer stands in the job file, and what it says. */
export interface Answer {
  /** Keys from the root of the job file, as `readFrom`, `columns`, `QTY`. */
  readonly path: readonly string[];
  /** null where the person fills it in. */
  readonly value: SourceNode | null;
}

/** Keys of the block that names a sheet: how many keys lead to one answer. */
const OF_THE_SHEET: ReadonlyMap<string, number> = new Map([
  ["sheet", 1],
  ["table", 1],
  ["columns", 2],
  ["notes", 2],
  ["cells", 2],
]);
/** Keys that hold that block. */
const BLOCKS: ReadonlySet<string> = new Set(["schedule", "readFrom"]);

/** The answers of a line, one a cell or heading; none for a line that is no key with a value. */
export function answersOf(line: string): readonly Answer[] {
  const read = readYaml(line, "answer");
  if (!read.ok || read.value.kind !== "map") return [];
  return read.value.entries.flatMap(({ key, value }) => {
    if (BLOCKS.has(key) && value.kind === "map")
      return value.entries.flatMap((entry) => ofSheet(entry.key, entry.value));
    return OF_THE_SHEET.has(key) ? ofSheet(key, value) : leaves([key], value, DEEPEST);
  });
}

const DEEPEST = 8;

function ofSheet(key: string, value: SourceNode): readonly Answer[] {
  return leaves(["readFrom", key], value, OF_THE_SHEET.get(key) ?? 1);
}

/** Keys below `path`, `deep` levels from the first at most. */
function leaves(path: readonly string[], value: SourceNode, deep: number): readonly Answer[] {
  const isGroup = value.kind === "map" && value.entries.length > 0;
  if (!isGroup || deep <= 1) return [{ path, value: value.kind === "scalar" && value.text === "" ? null : value }];
  return value.entries.flatMap((entry) => leaves([...path, entry.key], entry.value, deep - 1));
}
