import type { Input } from "../../job/model/job.js";
import type { PlacedBase } from "../../plan/model.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { groupBy } from "../../units/group-by.js";
import type { Length, Unit } from "../../units/index.js";
import { NM_PER_INCH, NM_PER_MM } from "../../units/index.js";
import { namesOf, PLAN, placedBases } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compare, notApplicable, notChecked } from "../results.js";
import type { Plausible, SuspectedSlip } from "../slips.js";
import { suspectSlip } from "../slips.js";
import { wordsIn } from "../words.js";

/**
 * Elevations against those of the control points, or else against each other: one that is far from all of them, and near them in
 * another unit, is a slip and stops. One that is only far is asked about. Setting-out files carry what is written here.
 */
export const elevationRange: JobRule<"elevation-range"> = {
  id: "elevation-range",
  plainName: "elevations in range",
  title:
    "elevation of every base off the control points' elevations, else off those of the other bases, and of a control point off the nearest other, by <= 30 ft (10 m); a stop where another unit explains it",
  severity: "ask",
  measured: "how far an elevation lies off those that it is compared with",
  takes: [],
  clause: ({ job }) => `within ${job.unit === "in" ? "30 ft" : "10 m"} of them`,
  edition: () => "common practice",
  check(context) {
    const levels = levelsOf(placedBases(context));
    if (context.plan === null) return [];
    const points = controlRows(context);
    if (levels.length === 0) return [...points, notApplicable(PLAN, "no base has an elevation")];
    const held = heldAgainst(context, levels);
    return [...points, ...levels.map((level) => judge(context, level, held, ALONE[levels.length === 1 ? 0 : 1]))];
  },
};

/** How far elevations of one job may reasonably lie apart. */
const REACH = { in: 30 * 12 * NM_PER_INCH, mm: 10_000 * NM_PER_MM } as const;

interface Benchmark {
  readonly name: string;
  readonly value: Length;
}

function benchmarksOf({ plan }: JobContext): readonly Benchmark[] {
  return (plan?.spec.control ?? []).flatMap(({ name, elevation }): Benchmark[] =>
    elevation.kind === "given" ? [{ name, value: elevation.value }] : [],
  );
}

/** Control points against each other: each that is far from the nearest other one, else all of them in one row. */
function controlRows(context: JobContext): readonly RuleResult[] {
  const points = benchmarksOf(context);
  if (points.length < 2) return [];
  const { unit } = context.job;
  const say = wordsIn(unit);
  const judged = points.map((point) => {
    const others = points.filter((other) => other !== point);
    const nearest = others.reduce((a, b) => (offOf(point, b) < offOf(point, a) ? b : a), others[0] ?? point);
    return { point, nearest, off: offOf(point, nearest) };
  });
  const far = judged.filter(({ off }) => off > REACH[unit]);
  if (far.length === 0) {
    const most = judged.reduce((a, b) => (b.off > a.off ? b : a));
    return [compare("control points", 2 * most.off, "<=", 2 * REACH[unit], "each beside the nearest other one")];
  }
  return far.map(({ point, nearest, off }) => {
    const slip = suspect(point.value, { from: nearest.value, to: nearest.value }, unit);
    const note = `${say.length(point.value)} ${unit} beside ${nearest.name}, ${say.length(nearest.value)}`;
    const own = slip === null ? {} : ({ severity: "stop" } as const);
    const words = slip === null ? "" : `: ${slip.words}`;
    return compare(`control point ${point.name}`, 2 * off, "<=", 2 * REACH[unit], `${note}${words}`, own);
  });
}

const offOf = (a: Benchmark, b: Benchmark): number => Math.abs(a.value - b.value);

/** Bases of one elevation. */
interface Level {
  readonly what: "top of concrete" | "bottom of plate";
  readonly value: Length;
  readonly bases: readonly PlacedBase[];
}

function levelsOf(bases: readonly PlacedBase[]): readonly Level[] {
  const tops = grouped("top of concrete", bases, ({ placement }) => placement.topOfConcrete);
  const isWritten = (base: PlacedBase) =>
    base.placement.bottomOfPlate.kind === "given" && isOwn(base.placement.bottomOfPlate.from);
  const bottoms = grouped("bottom of plate", bases.filter(isWritten), ({ placement }) => placement.bottomOfPlate);
  return [...tops, ...bottoms];
}

/** True of an elevation that somebody wrote: not of one that is taken from the top of concrete and the grout. */
function isOwn(from: string): boolean {
  return from.startsWith("job");
}

function grouped(what: Level["what"], bases: readonly PlacedBase[], of: (base: PlacedBase) => Input<Length>): Level[] {
  const known = bases.flatMap((base) => {
    const input = of(base);
    return input.kind === "given" ? [{ base, value: input.value }] : [];
  });
  const levels = groupBy(known, ({ value }) => value);
  return [...levels].map(([value, own]) => ({ what, value, bases: own.map(({ base }) => base) }));
}

function judge({ job: { unit } }: JobContext, level: Level, held: Held | null, alone: string): RuleResult {
  const subject = `${namesOf(level.bases)} ${level.what}`;
  if (held === null || held.level === level)
    return notChecked(subject, `no control point has an elevation${alone} (control.elevation)`, {
      missing: ["control.elevation"],
    });
  const say = wordsIn(unit);
  const { range, words } = held;
  const off = Math.max(range.from - level.value, level.value - range.to, 0);
  const reach = REACH[unit];
  const note = `${say.length(level.value)} ${unit} beside ${words}, ${rangeText(range, say.length)}`;
  const slip = off <= reach ? null : suspect(level.value, range, unit);
  const own = slip === null ? {} : ({ severity: "stop" } as const);
  return compare(subject, 2 * off, "<=", 2 * reach, `${note}${slip === null ? "" : `: ${slip.words}`}`, own);
}

/** A slip that brings the elevation near those that it is held against, else one that brings it within reach. */
function suspect(value: Length, { from, to }: Plausible, unit: Unit): SuspectedSlip | null {
  const within = (reach: number) => suspectSlip(value, { from: from - reach, to: to + reach }, unit);
  return within(REACH[unit] / 6) ?? within(REACH[unit]);
}

/** Why an elevation has nothing else beside it. */
const ALONE = [
  ", and all bases have this one",
  "; most bases have this one, and the others are compared with it",
] as const;

/** What elevations are held against. `level`: the one that is it itself; null for control points. */
interface Held {
  readonly range: Plausible;
  readonly words: string;
  readonly level: Level | null;
}

/** Control points that have an elevation; without one, the elevation at which most of the bases stand. */
function heldAgainst(context: JobContext, levels: readonly Level[]): Held | null {
  const points = benchmarksOf(context).map(({ value }) => value);
  if (points.length > 0)
    return { range: { from: leastOf(points), to: greatestOf(points) }, words: "the control points", level: null };
  const level = levels.reduce<Level | null>(
    (most, each) => (each.bases.length > (most?.bases.length ?? 0) ? each : most),
    null,
  );
  if (level === null) return null;
  const { value, what, bases } = level;
  return { range: { from: value, to: value }, words: `the ${what} of ${namesOf(bases)}`, level };
}

function rangeText({ from, to }: Plausible, length: (length: number) => string): string {
  return from === to ? length(from) : `${length(from)} to ${length(to)}`;
}
