import type { GridLine } from "../../job/model/plan.js";
import type { PlacedBase } from "../../plan/model.js";
import { leastOf } from "../../units/extremes.js";
import { groupBy } from "../../units/group-by.js";
import { formatDegrees, toMillimetres } from "../../units/index.js";
import { namesOf, PLAN, placedBases } from "../geometry/placed.js";
import type { JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compareCounts, notApplicable } from "../results.js";

/** A base that stands square to no line of the grid is more often a slip of the pen than meant: 9 for 90, radians for degrees. */
export const baseTurn: JobRule<"base-turn"> = {
  id: "base-turn",
  plainName: "turned base square to grid",
  title: "lines of the grid that a turned base is parallel or square to >= 1",
  severity: "advise",
  measured: "the number of grid lines that the base is parallel or square to",
  takes: [],
  clause: () => "turned bases stand square to a line of the grid",
  edition: () => "common practice",
  check(context) {
    const bases = placedBases(context);
    if (bases.length === 0) return [];
    const turned = bases.filter(({ placement }) => placement.turn !== 0);
    if (turned.length === 0) return [notApplicable(PLAN, "no base is turned")];
    const lines = context.plan?.spec.lines ?? [];
    const skew = turned.filter((base) => offLines(base.placement.turn, base, lines) > SQUARE);
    if (skew.length === 0)
      return [compareCounts(PLAN, turned.length, ">=", turned.length, "every turned base is square to a line")];
    const groups = groupBy(skew, ({ base, placement }) => `${base.mark} ${placement.turn}`);
    return [...groups.values()].map((group) => rowOf(group, lines));
  },
};

/** Degrees within which an angle that was worked out by hand is the line's own. */
const SQUARE = 0.01;

function rowOf(bases: readonly PlacedBase[], lines: readonly GridLine[]): RuleResult {
  const [first] = bases;
  if (first === undefined) return notApplicable(PLAN, "no base is turned");
  const { turn } = first.placement;
  const off = formatDegrees(offLines(turn, first, lines));
  const note = `turn ${formatDegrees(turn)}, ${off} off the nearest line${slipOf(first, lines)}`;
  return compareCounts(namesOf(bases), 0, ">=", 1, note);
}

/** What would have been square: ten times the figure, or the figure taken as radians. */
function slipOf(base: PlacedBase, lines: readonly GridLine[]): string {
  const { turn } = base.placement;
  const radians = (turn * 180) / Math.PI;
  if (offLines(radians, base, lines) <= 0.05) return `: radians, ${formatDegrees(radians, 1)} meant?`;
  if (Math.abs(turn) <= 36 && offLines(10 * turn, base, lines) <= SQUARE) return `: ${formatDegrees(10 * turn)} meant?`;
  return ": meant, or a slip of the pen?";
}

/** Degrees between a turn and the nearest line that it is parallel or square to; arcs count by their tangent at the base. */
function offLines(turn: number, base: PlacedBase, lines: readonly GridLine[]): number {
  return leastOf(lines.map((line) => offQuarter(turn - directionOf(line, base))));
}

/** Degrees to the nearest multiple of 90. */
function offQuarter(degrees: number): number {
  const rest = ((degrees % 90) + 90) % 90;
  return Math.min(rest, 90 - rest);
}

/** Degrees from plan east. */
function directionOf(line: GridLine, { crossing }: PlacedBase): number {
  switch (line.kind) {
    case "x":
    case "y":
      return 0;
    case "skewed":
    case "radial":
      return line.degrees;
    case "arc": {
      const [x, y] = [crossing.x - toMillimetres(line.center.x), crossing.y - toMillimetres(line.center.y)];
      return (Math.atan2(y, x) * 180) / Math.PI;
    }
  }
}
