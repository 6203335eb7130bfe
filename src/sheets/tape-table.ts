/** Distances between rods that are taped in the field. */
import type { Base } from "../job/model/job.js";
import { boltCircleOf } from "../patterns/index.js";
import type { Hole } from "../template/model.js";
import { formatFeetInches, formatLength, nanometres, type Unit } from "../units/index.js";
import { longestPairs } from "./plan-view.js";
import type { SheetRequest } from "./request.js";
import type { TableText } from "./table.js";

const NONE: ReadonlySet<number> = new Set();

/** Rod-to-rod distances that are taped: both ways and both diagonals; exact, and to the nearest 1/16 in or 1 mm. */
export function tapeTable({ plate, job, base }: SheetRequest): TableText | null {
  const rods = plate.holes.filter(({ role }) => role === "rod");
  const bolts = base.groups.every(({ pattern }) => boltCircleOf(pattern) !== null);
  const rows = bolts ? boltCircleRows(rods, base, job.unit) : gaugeRows(rods, job.unit);
  if (rows.length === 0) return null;
  return {
    name: "tape-table",
    heading: "TAPE CHECK, CENTRE TO CENTRE",
    columns: [
      { title: "RODS", share: 0.37, align: "start" },
      { title: "GAUGE", share: 0.21, align: "start" },
      { title: "DISTANCE", share: 0.2, align: "end" },
      { title: job.unit === "in" ? "TO 1/16 in" : "TO 1 mm", share: 0.22, align: "end" },
    ],
    rows,
    foot: [],
    under: [],
    strong: NONE,
  };
}

/** Chord to the next rod, and the longest distance across, of each bolt circle. */
function boltCircleRows(rods: readonly Hole[], base: Base, unit: Unit): readonly (readonly string[])[] {
  return base.groups.flatMap(({ letter }) => {
    const own = rods.filter(({ tag }) => /^\D+/.exec(tag)?.[0] === letter);
    const [a, b] = own;
    if (a === undefined || b === undefined) return [];
    const across = own[Math.floor(own.length / 2)] ?? b;
    const row = (to: Hole, what: string, all: string) => {
      const [, ...figures] = tapeCells(a, to, unit);
      return [`${a.tag}-${to.tag}${all}`, what, ...figures];
    };
    return [
      row(b, "CHORD", own.length > 2 ? " AND ALL ROUND" : ""),
      ...(own.length > 3 ? [row(across, "ACROSS", "")] : []),
    ];
  });
}

/** Pairs that are alike in direction and distance share a row. */
function gaugeRows(rods: readonly Hole[], unit: Unit): readonly (readonly string[])[] {
  const kinds = new Map<string, { pairs: string[]; cells: readonly string[] }>();
  for (const [a, b] of tapePairs(rods)) {
    const cells = tapeCells(a, b, unit);
    const known = kinds.get(cells.join("|"));
    if (known === undefined) kinds.set(cells.join("|"), { pairs: [`${a.tag}-${b.tag}`], cells });
    else known.pairs.push(`${a.tag}-${b.tag}`);
  }
  return [...kinds.values()].map(({ pairs, cells }) => [pairs.join(", "), ...cells]);
}

function tapeCells(a: Hole, b: Hole, unit: Unit): readonly string[] {
  const [dx, dy] = [b.center.x - a.center.x, b.center.y - a.center.y];
  const distance = nanometres(Math.hypot(dx, dy) * 1e6);
  const taped = unit === "in" ? formatFeetInches(distance, 16) : `${Math.round(distance / 1e6)}`;
  const what = dy === 0 ? "ALONG X" : dx === 0 ? "ALONG Y" : "DIAGONAL";
  return [what, formatLength(distance, unit), taped];
}

/** Corner rods round the group and both diagonals; without four corners, neighbours and the longest distance. */
function tapePairs(rods: readonly Hole[]): readonly (readonly [Hole, Hole])[] {
  const corner = (sx: number, sy: number) =>
    rods.reduce<Hole | null>((best, rod) => {
      const reach = (hole: Hole) => hole.center.x * sx + hole.center.y * sy;
      return best === null || reach(rod) > reach(best) + 1e-9 ? rod : best;
    }, null);
  const [nw, ne, se, sw] = [corner(-1, 1), corner(1, 1), corner(1, -1), corner(-1, -1)];
  const wanted = [[nw, ne], [ne, se], [se, sw], [sw, nw], [nw, se], [ne, sw], ...longestPairs(rods).slice(0, 1)];
  const seen = new Set<string>();
  return wanted.flatMap((pair) => {
    const [a, b] = pair;
    if (a == null || b == null || a === b) return [];
    const key = [a.tag, b.tag].sort().join("|");
    if (seen.has(key)) return [];
    seen.add(key);
    return [[a, b] as const];
  });
}
