import type { Point } from "../../geometry/index.js";
import { twiceDistanceBetweenPoints } from "../../geometry/index.js";
import type { Input } from "../../job/model/job.js";
import { findHoleSpacing, type HoleSpacingRow } from "../../standards/index.js";
import type { Length } from "../../units/index.js";
import { governingPairs, pairsThatFailAnyway } from "../geometry/pairs.js";
import { placeSource } from "../geometry/second-source.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { NamedMissing } from "../results.js";
import { compare, inBestCase, lacking, missingAmong, notApplicable } from "../results.js";
import type { RodHole } from "../rods.js";
import { rodHoles } from "../rods.js";
import { BASE_HOLE, SECOND_SOURCE } from "../takes.js";
import type { Words } from "../words.js";
import { wordsIn } from "../words.js";

/** Steel between the holes of the base plate: centre to centre, and clear from hole to hole, by the edition of its edges. */
export const basePlateWeb: Rule<"base-plate-web"> = {
  id: "base-plate-web",
  plainName: "steel between plate holes",
  title: "two holes of the base plate: spacing >= 2-2/3 d and clear distance >= d, or spacing >= 2.4 d0",
  severity: "ask",
  measured: "the distance between two holes of the base plate",
  takes: ["pattern", ...BASE_HOLE, ...SECOND_SOURCE],
  clause: ({ job }) => findHoleSpacing(job.editions.edges).clause,
  edition: ({ job }) => job.editions.edges,
  check(context) {
    const holes = baseHoles(context);
    if (holes.length < 2) return [notApplicable("plate", "the base plate has one hole for a rod")];
    const { clause, rows } = findHoleSpacing(context.job.editions.edges);
    return rows.flatMap((row) => rowsFor(context, holes, row, `${clause}, ${NAMES[row.what]}`));
  },
};

const NAMES: Readonly<Record<HoleSpacingRow["what"], string>> = { spacing: "spacing", clear: "clear distance" };

/** A hole of the base plate with the rod that comes through it. */
interface BaseHole {
  readonly tag: string;
  readonly center: Point;
  readonly rod: Length;
  readonly hole: Input<Length>;
}

/** As the base plate's second source has them, where the job gives one; else at the rods. */
function baseHoles(context: CheckContext): readonly BaseHole[] {
  const rods = rodHoles(context);
  const { basePlate } = context.base;
  if (basePlate.pattern.kind === "missing") {
    return rods.map(({ tag, center, diameter, group }) => ({ tag, center, rod: diameter, hole: group.baseHole }));
  }
  return placeSource(basePlate.pattern.value, basePlate, rods).holes.map(({ tag, center, diameter }) => {
    const { group, diameter: rod } = nearestRod(rods, center);
    return { tag, center, rod, hole: diameter.kind === "given" ? diameter : group.baseHole };
  });
}

function nearestRod(rods: readonly RodHole[], at: Point): RodHole {
  return rods.reduce((nearest, rod) =>
    twiceDistanceBetweenPoints(rod.center, at) < twiceDistanceBetweenPoints(nearest.center, at) ? rod : nearest,
  );
}

/**
 * A row for every governing pair of holes whose sizes are known; those of unknown size are named once, and stand in as large as
 * their rods where even such holes are too near.
 */
function rowsFor(
  { job }: CheckContext,
  holes: readonly BaseHole[],
  row: HoleSpacingRow,
  clause: string,
): readonly RuleResult[] {
  const needsHole = row.what === "clear" || row.of === "hole";
  const sized = holes.flatMap((each) => sizedHole(each, needsHole));
  const unsized = holes.filter((each) => sizedHole(each, needsHole).length === 0);
  const say = wordsIn(job.unit);
  const spare = (a: SizedHole, b: SizedHole) => twiceBetween(a, b, row) - limitOf(a, b, row);
  const pairs = [
    ...governingPairs(sized, spare),
    ...pairsThatFailAnyway(needsHole ? holes.map(atLeastItsRod) : [], (each) => each.missing, spare),
  ];
  return [
    ...unsized.map(({ tag, hole }) => lacking(tag, hole.kind === "missing" ? [hole] : [], { clause })),
    ...pairs.map(({ first: a, second: b }) => {
      const note = noteOf(a, b, row, say);
      const held = compare(`${a.tag}-${b.tag}`, twiceBetween(a, b, row), ">=", limitOf(a, b, row), note, { clause });
      return inBestCase(held, [...a.missing, ...b.missing]);
    }),
  ];
}

interface SizedHole extends Omit<BaseHole, "hole"> {
  /** 0 where it is neither known nor asked for. */
  readonly hole: number;
  /** What stands in for a size that is not known. */
  readonly missing: readonly NamedMissing[];
}

function sizedHole({ hole, ...each }: BaseHole, needsHole: boolean): readonly SizedHole[] {
  if (hole.kind === "given") return [{ ...each, hole: hole.value, missing: [] }];
  return needsHole ? [] : [{ ...each, hole: 0, missing: [] }];
}

/** A hole that is not known is as large as its rod at least. */
function atLeastItsRod({ hole, ...each }: BaseHole): SizedHole {
  const missing = missingAmong({ [`hole of ${each.tag}`]: hole });
  return { ...each, hole: hole.kind === "given" ? hole.value : each.rod, missing };
}

/** Twice the spacing, or twice what is clear between the edges. */
function twiceBetween(a: SizedHole, b: SizedHole, { what }: HoleSpacingRow): number {
  const twice = twiceDistanceBetweenPoints(a.center, b.center);
  return what === "spacing" ? twice : twice - a.hole - b.hole;
}

/** Twice the least distance, up to a whole nanometre: a third of a diameter is off the lattice. */
function limitOf(a: SizedHole, b: SizedHole, { of, times, per }: HoleSpacingRow): number {
  return Math.ceil((2 * times * Math.max(a[of], b[of])) / per);
}

function noteOf(a: SizedHole, b: SizedHole, { what, of, printed, note }: HoleSpacingRow, say: Words): string {
  const from =
    what === "spacing" ? "centre to centre" : `clear between holes ${say.length(a.hole)} and ${say.length(b.hole)}`;
  const own = `${of} ${say.length(Math.max(a[of], b[of]))}${a[of] === b[of] ? "" : ", the larger"}`;
  const more = note === "" ? "" : `; ${note}`;
  return `${from}, ${printed} of ${own}${more}; the clause is of bolts`;
}
