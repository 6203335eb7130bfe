/** Least edge distances of base-plate holes, in the words of a row. */
import { type EdgeEdition, type EdgeIncrement, findEdge } from "../standards/index.js";
import type { Length } from "../units/index.js";
import type { Words } from "./words.js";

/** Twice the least distance from the hole's centre, with how it comes about; or what the edition does not hold. */
export type LeastEdge =
  | { readonly found: true; readonly twice: number; readonly clause: string; readonly note: string }
  | { readonly found: false; readonly what: string; readonly nearest: readonly string[] };

const GUIDANCE = "guidance only: C2 is tabulated for oversized holes, and this hole is larger";

/** The least edge distance of the edition for a rod and its hole in the base plate. */
export function leastEdge(edition: EdgeEdition, size: string, diameter: Length, hole: Length, say: Words): LeastEdge {
  const edge = findEdge(edition, diameter, hole);
  if (!edge.found)
    return { found: false, what: `${edition} has no edge distance for rod ${size}`, nearest: edge.nearest };
  const { row, clause } = edge;
  if (row.by === "hole") {
    return { found: true, twice: 2 * row.least, clause, note: `${row.printed}, hole ${say.length(hole)}` };
  }
  const table = { least: row.least, clause, words: `${clause} ${say.length(row.least)} for rod ${size}` };
  return withIncrement(table, row.increment, `no C2 is kept with ${edition} for rod ${size}`, say);
}

function withIncrement(
  { least, clause, words }: { readonly least: Length; readonly clause: string; readonly words: string },
  increment: EdgeIncrement,
  lack: string,
  say: Words,
): LeastEdge {
  switch (increment.kind) {
    case "none":
      return { found: true, twice: 2 * least, clause, note: `${words}; standard hole, no C2` };
    case "not held":
      return { found: false, what: `the hole is larger than standard, and ${lack}`, nearest: [] };
    case "C2": {
      const note = `${words} + C2 ${say.length(increment.value)}${increment.beyondTable ? `; ${GUIDANCE}` : ""}`;
      const twice = 2 * (least + increment.value);
      return { found: true, twice, clause: `${clause} + C2 of ${increment.clause}`, note };
    }
  }
}
