/** Groups against each other and against their column lines, by the placing edition. */
import { columnLines } from "../checks/geometry/column-lines.js";
import { allowedAlong } from "../checks/job-rules/line-accumulation.js";
import type { CheckRow } from "../checks/model.js";
import { compare, notApplicable, notChecked } from "../checks/results.js";
import { wordsIn } from "../checks/words.js";
import { millimetresBetween, toLattice } from "../geometry/index.js";
import type { Point } from "../geometry/vocabulary.js";
import type { Job } from "../job/model/job.js";
import type { GridLine } from "../job/model/plan.js";
import type { PlacedBase, Plan } from "../plan/model.js";
import { findGroupPlacing } from "../standards/index.js";
import type { GroupSurvey } from "./model.js";
import { movedHole } from "./motion.js";
import { rowOf } from "./placed-rows.js";
import { TO_LINE } from "./placing.js";
import type { SurveyRuleId } from "./rules.js";

type Surveyed = Pick<GroupSurvey, "standing" | "fit" | "missing">;

/** Working points as built: the best fit of each group's rods. */
type Built = ReadonlyMap<PlacedBase, Point>;

/** Where a group's working point stands as built, on the plan in millimetres: by the best fit of its rods. */
function builtPlace({ standing, fit }: Surveyed): Point {
  const { x, y } = movedHole({ x: fit.x, y: fit.y, turn: 0 }, { x: 0, y: 0 });
  const angle = (standing.placement.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: standing.workingPoint.x + cos * x - sin * y, y: standing.workingPoint.y + sin * x + cos * y };
}

/** One row a neighbouring pair, a group and line, and a column line. */
export function lineRows(job: Job, plan: Plan, groups: readonly Surveyed[]): readonly CheckRow[] {
  const whole = groups.filter(({ missing }) => missing.length === 0);
  const built: Built = new Map(whole.map((group) => [group.standing, builtPlace(group)]));
  const lines = columnLines({ job, plan, bases: [] });
  return [
    ...groups.flatMap((group) => group.standing.lines.map((line) => positionRow(job, group, line, built))),
    ...lines.flatMap(({ bases }) =>
      bases.slice(1).flatMap((base, i) => adjacentRow(job, bases[i] ?? base, base, built)),
    ),
    ...lines.flatMap((line) => accumulationRow(job, line, built)),
  ];
}

function topicOf({ editions: { placing } }: Job, id: SurveyRuleId, about: Parameters<typeof findGroupPlacing>[1]) {
  const found = findGroupPlacing(placing, about);
  return { found, topic: { id, clause: found.found ? found.clause : about, edition: placing } };
}

/** Working point to its column line, square to it. */
function positionRow(job: Job, { standing }: Surveyed, line: GridLine, built: Built): CheckRow {
  const { found, topic } = topicOf(job, "group-position", "group position");
  const subject = `${standing.name}${TO_LINE}${line.name}`;
  if (!found.found)
    return rowOf(topic, notApplicable(subject, `${job.editions.placing} has no tolerance to the column line here`));
  const at = built.get(standing);
  if (at === undefined) return rowOf(topic, notChecked(subject, "not every rod of the group is surveyed"));
  const off = toLattice(offLine(line, standing.workingPoint, at));
  return rowOf(
    topic,
    compare(subject, 2 * Math.abs(off), "<=", 2 * found.row.tolerance, "working point by the best fit of its rods"),
  );
}

function offLine(line: GridLine, from: Point, to: Point): number {
  switch (line.kind) {
    case "x":
      return to.x - from.x;
    case "y":
      return to.y - from.y;
    case "skewed":
    case "radial": {
      const angle = (line.degrees * Math.PI) / 180;
      return (to.y - from.y) * Math.cos(angle) - (to.x - from.x) * Math.sin(angle);
    }
    case "arc": {
      const center = { x: line.center.x / 1e6, y: line.center.y / 1e6 };
      return millimetresBetween(center, to) - millimetresBetween(center, from);
    }
  }
}

function adjacentRow(job: Job, a: PlacedBase, b: PlacedBase, built: Built): readonly CheckRow[] {
  const [from, to] = [built.get(a), built.get(b)];
  if (from === undefined || to === undefined) return [];
  const { found, topic } = topicOf(job, "group-spacing", "adjacent groups");
  const subject = `${a.name} - ${b.name}`;
  if (!found.found)
    return [rowOf(topic, notApplicable(subject, `${job.editions.placing} has no tolerance of adjacent groups here`))];
  const off = toLattice(millimetresBetween(from, to) - millimetresBetween(a.workingPoint, b.workingPoint));
  const note = `${wordsIn(job.unit).length(toLattice(millimetresBetween(from, to)))} as built`;
  return [rowOf(topic, compare(subject, 2 * Math.abs(off), "<=", 2 * found.row.tolerance, note))];
}

/** From the first surveyed group of a line to the last. */
function accumulationRow(
  job: Job,
  { name, bases }: ReturnType<typeof columnLines>[number],
  built: Built,
): readonly CheckRow[] {
  const held = bases.filter((base) => built.has(base));
  const [first, last] = [held[0], held.at(-1)];
  if (first === undefined || last === undefined || first === last) return [];
  const { found, topic } = topicOf(job, "line-accumulation", "accumulated along a column line");
  const subject = `line ${name}`;
  if (!found.found)
    return [
      rowOf(topic, notApplicable(subject, `${job.editions.placing} has no accumulation along a column line here`)),
    ];
  const length = toLattice(millimetresBetween(first.workingPoint, last.workingPoint));
  const [from, to] = [built.get(first) ?? first.workingPoint, built.get(last) ?? last.workingPoint];
  const off = Math.abs(toLattice(millimetresBetween(from, to)) - length);
  const note = `${first.name} to ${last.name}, ${wordsIn(job.unit).length(length)} as designed`;
  return [rowOf(topic, compare(subject, 2 * off, "<=", 2 * allowedAlong(length, found.row), note))];
}
