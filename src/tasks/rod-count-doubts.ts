/** Rods as the sheet counts them against those of its pattern, so that a sheet is not called understood where they differ. */
import type { Finding } from "../diagnostics/finding.js";
import type { SourceNode } from "../readers/source.js";
import { errorAt, findNode } from "../readers/source.js";
import { parseCount } from "../units/index.js";

/** One fault for each group of rods on a rectangle that has another number than its cell says; the cells of both are named. */
export function rodCountDoubts(bases: readonly SourceNode[]): readonly Finding[] {
  return bases.flatMap((base) => {
    const groups = findNode(base, "groups");
    return (groups?.kind === "list" ? groups.items : [base]).flatMap(countDiffers);
  });
}

function countDiffers(group: SourceNode): readonly Finding[] {
  const written = findNode(group, "rods", "count");
  const [x, y] = [findNode(group, "pattern", "x"), findNode(group, "pattern", "y")];
  if (written === undefined || x?.kind !== "scalar" || y?.kind !== "scalar") return [];
  if (findNode(group, "pattern", "perimeter") !== undefined) return [];
  const [count, nx, ny] = [written, ...["nx", "ny"].map((key) => findNode(group, "pattern", key))].map(countIn);
  if (count == null || nx == null || ny == null || count === nx * ny) return [];
  const cells = [...new Set([x, y].map(({ place }) => place.cell ?? `line ${place.line}`))].join(" and ");
  const message = `${count} rods are written, but the pattern of ${cells} has ${nx * ny}; write the number or the pattern that is meant`;
  return [errorAt(written.place, "rod-count-differs", message)];
}

/** Two lines in a direction where nothing says how many; null for what is no number. */
function countIn(node: SourceNode | undefined): number | null {
  if (node === undefined) return 2;
  const count = node.kind === "scalar" ? parseCount(node.text, 1, 1_000) : null;
  return count?.ok === true ? count.value : null;
}
