/** Column lines: the bases that stand on one grid line, in order along it. */
import { millimetresBetween } from "../../geometry/index.js";
import type { GridLine } from "../../job/index.js";
import type { PlacedBase } from "../../plan/index.js";
import type { JobContext } from "../job-model.js";
import { placedBases } from "./placed.js";

/** The bases along one grid line. */
export interface ColumnLine {
  readonly name: string;
  /** Two or more, from one end of the line to the other. */
  readonly bases: readonly PlacedBase[];
  /** Distances from group to group, in millimetres. */
  readonly spacings: readonly number[];
}

/** Straight grid lines with two groups or more, in the order of the grid. */
export function columnLines(context: JobContext): readonly ColumnLine[] {
  const on = new Map<string, PlacedBase[]>();
  for (const placed of placedBases(context))
    for (const { name } of placed.lines) {
      const bases = on.get(name);
      if (bases === undefined) on.set(name, [placed]);
      else bases.push(placed);
    }
  return (context.plan?.spec.lines ?? []).flatMap((line): ColumnLine[] => {
    const bases = on.get(line.name) ?? [];
    if (line.kind === "arc" || bases.length < 2) return [];
    const ordered = alongLine(line, bases);
    const spacings = ordered
      .slice(1)
      .map((base, i) => millimetresBetween((ordered[i] ?? base).workingPoint, base.workingPoint));
    return [{ name: line.name, bases: ordered, spacings }];
  });
}

/** By the place of the working point along the line's own direction. */
function alongLine(line: Exclude<GridLine, { kind: "arc" }>, bases: readonly PlacedBase[]): readonly PlacedBase[] {
  const degrees = line.kind === "x" ? 90 : line.kind === "y" ? 0 : line.degrees;
  const [dx, dy] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const along = ({ workingPoint: { x, y } }: PlacedBase) => x * dx + y * dy;
  return [...bases].sort((a, b) => along(a) - along(b));
}
