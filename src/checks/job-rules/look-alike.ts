import { extentOfPoints, toLattice } from "../../geometry/index.js";
import { servedMarks } from "../../job/model/shared.js";
import type { LookAlike, SameTemplates } from "../../orientation/index.js";
import { findLookAlikes } from "../../orientation/index.js";
import { boltCircleOf } from "../../patterns/index.js";
import type { OutlinedBase } from "../../rods/index.js";
import { equalSets, madePlateKeys } from "../../template/index.js";
import type { Length, Unit } from "../../units/index.js";
import { formatLength, formatWithUnit } from "../../units/index.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compare, compareCounts, notApplicable } from "../results.js";
import { HOLE, OUTLINE } from "../takes.js";
import type { Words } from "../words.js";
import { wordsIn } from "../words.js";

/** Marks whose patterns nearly agree under any way round, so that one template can be taken for another; and those that are one. */
export const lookAlike: JobRule<"look-alike"> = {
  id: "look-alike",
  plainName: "templates that look alike",
  title:
    "rod error of a template set for another mark, in its nearest way round >= the job's value; equal templates are one",
  severity: "advise",
  measured: "the rod error of a template set for another mark",
  takes: ["pattern", ...HOLE, ...OUTLINE, "template.opening"],
  clause: ({ job }) => `lookAlike: ${job.lookAlike.from}`,
  edition: () => "job",
  check(context) {
    const { job, bases } = context;
    if (bases.length < 2) return [notApplicable("marks", "the job has one mark")];
    const limit = job.lookAlike.value;
    const say = wordsIn(job.unit);
    const { same, near } = findLookAlikes(bases, limit);
    const sets = setsOf(context, same);
    const rows = [
      ...nearRows(near, limit, say),
      ...adviceRows(sets, job.unit),
      ...same.flatMap((each) => sameRow(each, sets)),
    ];
    if (rows.length > 0) return rows;
    const others = bases.some(({ base }) => base.template.sharedBy.length > 0) ? ", but those of one template" : "";
    return [
      compareCounts("marks", 0, "<=", 0, `no two patterns come within ${say.length(limit)} of each other${others}`),
    ];
  },
};

/** At most this many pairs are listed, those with the least error; how many more there are is a row of its own. */
const MOST_PAIRS = 1000;

function nearRows(near: readonly LookAlike[], limit: Length, say: Words): readonly RuleResult[] {
  if (near.length <= MOST_PAIRS) return near.map((pair) => nearRow(pair, limit, say));
  const nearest = [...near].sort((a, b) => a.errorTwice - b.errorTwice).slice(0, MOST_PAIRS);
  const more = near.length - MOST_PAIRS;
  const note = `${more} further pairs look alike; the ${MOST_PAIRS} with the least error are listed`;
  return [...nearest.map((pair) => nearRow(pair, limit, say)), compareCounts("marks", more, "<=", 0, note)];
}

function nearRow({ marks: [a, b], errorTwice, how }: LookAlike, limit: Length, say: Words): RuleResult {
  const subject = `${a.join(", ")} / ${b.join(", ")}`;
  return compare(subject, errorTwice, ">=", 2 * limit, `${how}: rods ${say.twice(errorTwice)} off`);
}

/** Bases that one template serves or would serve, by the mark of each. */
type Sets = ReadonlyMap<string, readonly OutlinedBase[]>;

/** Proved as `merge: auto` proves it, which has done so where the job asks for it; only where patterns agree at all. */
function setsOf({ job, bases }: JobContext, same: readonly SameTemplates[]): Sets {
  if (same.length === 0) return new Map();
  const byMark = new Map(bases.map((each) => [each.base.mark, each]));
  const outlined = (marks: readonly string[]) => marks.flatMap((mark) => byMark.get(mark) ?? []);
  if (job.merge === "auto") return new Map(bases.map(({ base }) => [base.mark, outlined(servedMarks(base))]));
  const alike = new Set(same.flatMap(({ marks }) => marks));
  const sets = equalSets(
    bases.filter(({ base }) => alike.has(base.mark)),
    madePlateKeys(job),
  );
  return new Map(
    sets.flatMap(({ members }) => {
      const set = outlined(members.map(({ base }) => base.mark));
      return set.map(({ base }) => [base.mark, set] as const);
    }),
  );
}

/** One row for each set that has more templates than the one that would do. */
function adviceRows(sets: Sets, unit: Unit): readonly RuleResult[] {
  return [...new Set(sets.values())].flatMap((members): RuleResult[] => {
    const templates = new Set(members.map(({ base }) => base.template.mark)).size;
    const [first] = members;
    if (templates < 2 || first === undefined) return [];
    const note = `${patternWords(first, unit)}: ${members.length} bases could be set with one template; merge: auto makes one of ${templates === 2 ? "both" : "them"}`;
    const marks = members.map(({ base }) => base.mark).join(", ");
    return [compareCounts(marks, templates, "<=", 1, note, "template")];
  });
}

/** `rods 1 in, 14 x 14`, `rods M30, on a circle of 500`. */
function patternWords({ base, rods }: OutlinedBase, unit: Unit): string {
  const sizes = [...new Set(base.groups.map(({ rod }) => (/^M/.test(rod.size) ? rod.size : `${rod.size} in`)))];
  const [only, ...more] = base.groups;
  const circle = only === undefined || more.length > 0 ? null : boltCircleOf(only.pattern);
  if (circle !== null) return `rods ${sizes.join(" and ")}, on a circle of ${formatWithUnit(circle.diameter, unit)}`;
  const { x0, y0, x1, y1 } = extentOfPoints(rods.map(({ center }) => center));
  const [x, y] = [x1 - x0, y1 - y0].map((side) => formatLength(toLattice(side), unit));
  return `rods ${sizes.join(" and ")}, ${x} x ${y}`;
}

/** Bases of the pattern of others with which they have no template in common; none where one would do for all of them. */
function sameRow({ marks: [first = "", ...rest], how, differs }: SameTemplates, sets: Sets): readonly RuleResult[] {
  const own = sets.get(first)?.map(({ base }) => base.mark) ?? [first];
  const others = rest.filter((mark) => !own.includes(mark));
  if (others.length === 0) return [];
  const turned = how === "as it is" ? "" : `, ${how}`;
  const note =
    differs.length > 0
      ? `the same pattern${turned}; the templates differ in ${differs.join(", ")}`
      : `the same plate${turned}, but for its orientation cut or what is scribed on it`;
  return [notApplicable(`${own.join(", ")} / ${others.join(", ")}`, note)];
}
