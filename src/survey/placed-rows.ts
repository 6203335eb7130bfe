/** A group as placed, held against the placing edition and the erection tolerance. */

import { governingPairs } from "../checks/geometry/pairs.js";
import type { CheckRow, RuleResult } from "../checks/model.js";
import { compare, notApplicable, notChecked, notTabulated } from "../checks/results.js";
import { judge } from "../checks/run.js";
import { wordsIn } from "../checks/words.js";
import { millimetresBetween, twiceToLattice } from "../geometry/index.js";
import type { Job } from "../job/model/job.js";
import { findElevation, findPlacing } from "../standards/index.js";
import { formatDegrees, roundSymmetric } from "../units/index.js";
import type { Motion, RodAsBuilt, SurveyTerms } from "./model.js";
import type { SurveyRuleId } from "./rules.js";
import { surveyRuleName } from "./rules.js";

/** What a row of the survey is about, and what the ledger prints where a verdict names nothing else. */
export interface Topic {
  readonly id: SurveyRuleId;
  readonly clause: string;
  readonly edition: string;
}

/** Rows of a survey are questions for the engineer of record. */
export function rowOf({ id, clause, edition }: Topic, verdict: RuleResult): CheckRow {
  return judge({ id, plainName: surveyRuleName(id), severity: "ask", measured: id }, verdict, clause, edition);
}

/** Rods of one group against the edition, and the column against the erection tolerance. */
export function placedRows(
  job: Job,
  rods: readonly RodAsBuilt[],
  fit: Motion,
  terms: SurveyTerms,
): readonly CheckRow[] {
  return [
    ...inPlan(job, rods),
    ...rods.map((rod) => rowOf(elevationTopic(job), elevationVerdict(job, rod, terms))),
    ...rods.map((rod) => rowOf(LEAN, leanVerdict(job, rod))),
    ...standing(job, fit, terms),
  ];
}

const LEAN: Topic = { id: "placed-lean", clause: "lean between two points of a rod", edition: "" };
const STANDING = { clause: "erection tolerance of the job", edition: "job" } as const;

function inPlan(job: Job, rods: readonly RodAsBuilt[]): readonly CheckRow[] {
  const { placing } = job.editions;
  const spaced = new Map<RodAsBuilt, { readonly twice: number; readonly clause: string }>();
  const rows = rods.map((rod): CheckRow | null => {
    const { size, diameter } = rod.placed.group.rod;
    const found = findPlacing(placing, diameter, "fixed");
    const clause = found.found ? found.clause : "placing in plan";
    const topic: Topic = { id: "placed-rod", clause, edition: placing };
    if (!found.found)
      return rowOf(
        topic,
        notTabulated(rod.tag, `${placing} has no placing tolerance for rod ${size}`, found.nearest, "rules.placing"),
      );
    if (found.row.limits === "spacing") {
      spaced.set(rod, { twice: 2 * found.row.tolerance, clause: found.clause });
      return null;
    }
    const note = `off by ${wordsIn(job.unit).length(rod.radial)}; ${found.row.item}`;
    return rowOf(topic, compare(rod.tag, 2 * rod.radial, "<=", 2 * found.row.tolerance, note));
  });
  return [...rows.filter((row) => row !== null), ...spacings(job, spaced)];
}

/** Spacing of any two rods of the group: one row for each rod's governing pair. */
function spacings(
  job: Job,
  spaced: ReadonlyMap<RodAsBuilt, { readonly twice: number; readonly clause: string }>,
): readonly CheckRow[] {
  const say = wordsIn(job.unit);
  const off = (a: RodAsBuilt, b: RodAsBuilt): number =>
    Math.abs(
      twiceToLattice(millimetresBetween(a.at, b.at)) -
        twiceToLattice(millimetresBetween(a.placed.center, b.placed.center)),
    );
  const allowed = (a: RodAsBuilt, b: RodAsBuilt): number =>
    Math.min(spaced.get(a)?.twice ?? 0, spaced.get(b)?.twice ?? 0);
  return governingPairs([...spaced.keys()], (a, b) => allowed(a, b) - off(a, b)).map(({ first, second }) => {
    const clause = spaced.get(first)?.clause ?? "";
    const topic: Topic = { id: "placed-spacing", clause, edition: job.editions.placing };
    const built = say.twice(twiceToLattice(millimetresBetween(first.at, second.at)));
    const note = `${built} as built, ${say.twice(twiceToLattice(millimetresBetween(first.placed.center, second.placed.center)))} as designed`;
    return rowOf(topic, compare(`${first.tag}-${second.tag}`, off(first, second), "<=", allowed(first, second), note));
  });
}

function elevationTopic({ editions: { placing } }: Job): Topic {
  const found = findElevation(placing, "fixed");
  return { id: "placed-elevation", clause: found.found ? found.clause : "top of rod", edition: placing };
}

function elevationVerdict(job: Job, { tag, dz }: RodAsBuilt, { height }: SurveyTerms): RuleResult {
  const found = findElevation(job.editions.placing, "fixed");
  if (!found.found)
    return notTabulated(tag, `${job.editions.placing} has no tolerance of the top of a rod`, [], "rules.placing");
  if (height.kind === "missing") return notChecked(tag, `${height.why} (${height.key})`);
  if (height.value.kind !== "top") return notChecked(tag, "the tops of the rods were not surveyed (survey.height)");
  if (dz === null)
    return notChecked(tag, "no elevation is surveyed, or none is designed (site.topOfConcrete, rods.projection)");
  const side = dz < 0 ? "low" : "high";
  return compare(tag, 2 * Math.abs(dz), "<=", 2 * (dz < 0 ? found.row.low : found.row.high), `the top is ${side}`);
}

function leanVerdict(job: Job, { tag, lean }: RodAsBuilt): RuleResult {
  if (lean === null) return notChecked(tag, "one point alone on the rod: a second at another height tells its lean");
  const say = wordsIn(job.unit);
  const by = say.length(roundSymmetric(Math.hypot(lean.dx, lean.dy)));
  return notApplicable(tag, `leans ${by} over ${say.length(lean.over)}; it has no limit. Engineer to decide`);
}

/** The column on the best fit of its rods, apart from whether its plate drops on. */
function standing(job: Job, { x, y, turn }: Motion, { line, turn: most }: SurveyTerms): readonly CheckRow[] {
  const lines = (["x", "y"] as const).map((axis) => {
    const topic: Topic = { id: "stands-on-line", ...STANDING };
    const off = Math.abs(axis === "x" ? x : y);
    if (line.kind === "missing") return rowOf(topic, notChecked(axis, `${line.why} (${line.key})`));
    const note = `best fit of the rods against the working point, along the base's ${axis}`;
    return rowOf(topic, compare(axis, 2 * off, "<=", 2 * line.value, note));
  });
  return [...lines, turnRow(job, turn, most)];
}

/** Millionths of a degree, so that integers are compared. */
function turnRow(_job: Job, turn: number | null, most: SurveyTerms["turn"]): CheckRow {
  const topic: Topic = { id: "stands-unturned", ...STANDING };
  if (most.kind === "missing") return rowOf(topic, notChecked("turn", `${most.why} (${most.key})`));
  if (turn === null) return rowOf(topic, notChecked("turn", "one rod alone tells no turn"));
  const parts = (degrees: number) => ({ kind: "count", count: roundSymmetric(Math.abs(degrees) * 1e6) }) as const;
  return rowOf(topic, {
    kind: "compared",
    subject: "turn",
    value: parts(turn),
    limit: parts(most.value),
    sense: "<=",
    note: `turned by ${formatDegrees(turn, 3)}, ${formatDegrees(most.value, 3)} allowed; figures in millionths of a degree; best fit of the rods against the base's axes`,
  });
}
