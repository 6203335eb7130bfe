import type { Input, Rod } from "../../job/model/job.js";
import { given, missing } from "../../job/model/job.js";
import { nutHeight } from "../../job/model/stack.js";
import { findGrade, findLengthTolerance } from "../../standards/index.js";
import type { Length } from "../../units/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Own, Term } from "../results.js";
import { compareSums, fixed, known, minus, notApplicable, plus } from "../results.js";
import type { RodHole } from "../rods.js";
import { rodHoles } from "../rods.js";
import { wordsIn } from "../words.js";

const SHORT: Own = {
  clause: "overall length at its least >= projection + embedment",
  measured: "the length of the rod, as short as it may come,",
};
const LONG: Own = {
  severity: "advise",
  clause: "overall length <= projection + embedment + lower end, within the tolerance",
  measured: "the length of the rod",
};

/** A rod as short as its specification lets it be still reaches as deep as it should; none is longer than its parts account for. */
export const rodLength: Rule<"rod-length"> = {
  id: "rod-length",
  title:
    "rod length >= projection + embedment, and less its tolerance too (advise); rod length <= projection + embedment + " +
    "lower end + tolerance (advise)",
  severity: "ask",
  measured: "the length of the rod",
  clause: () => "overall length",
  edition: () => "ASTM F1554",
  check(context) {
    const rods = rodHoles(context);
    return [atItsShortest, accountedFor].flatMap((row) => rods.map((rod) => row(context, rod)));
  },
};

/** The tolerance of this rod's length; missing where its grade has none that is held. */
function toleranceOf({ length, grade }: Rod): Input<Length> {
  if (grade.kind === "missing") return grade;
  if (length.kind === "missing") return length;
  const known = findGrade(grade.value);
  const tolerance = known.found ? findLengthTolerance(known.row, length.value) : known;
  if (tolerance.found) return given(tolerance.row.plusMinus, tolerance.edition);
  return missing("rods.grade", `no tolerance of length is held for grade ${grade.value}`);
}

/** The rule's edition is that of the tolerance: without one the row is the job's own sum. */
function withEdition(own: Own, tolerance: Input<Length>): Own {
  return tolerance.kind === "missing" ? { ...own, edition: "job" } : own;
}

/** The template holds the rod to its projection: what the rod is short, it lacks in the concrete. */
function atItsShortest({ job }: CheckContext, { tag, rod }: RodHole): RuleResult {
  const tolerance = toleranceOf(rod);
  const shortest = [plus("length", rod.length), minus("tolerance", tolerance)];
  const needed = [plus("projection", rod.projection), plus("embedment", rod.embedment)];
  const say = wordsIn(job.unit);
  const remark = (spare: number): string =>
    spare < 0 ? `; set to its projection it may reach ${say.twice(-spare)} less deep` : "";
  const severity = isEnoughAsOrdered(rod) ? "advise" : "ask";
  return compareSums(tag, [shortest, ">=", needed], say, { ...withEdition(SHORT, tolerance), severity, remark });
}

/** Only the tolerance is then short: an order that is longer by it mends that, and nobody need be asked. */
function isEnoughAsOrdered({ length, projection, embedment }: Rod): boolean {
  const parts = known({ length, projection, embedment });
  return parts.all && parts.values.length >= parts.values.projection + parts.values.embedment;
}

/** Embedment is given to the lower end of the rod, or to what anchors it: then that comes on top. */
function accountedFor({ job }: CheckContext, { tag, rod }: RodHole): RuleResult {
  const tolerance = toleranceOf(rod);
  const own = withEdition(LONG, tolerance);
  if (rod.bottom.kind === "given" && rod.bottom.value.kind === "hook")
    return notApplicable(tag, "the length of a bent rod is not projection and embedment alone", own);
  const parts = [
    plus("projection", rod.projection),
    plus("embedment", rod.embedment),
    ...lowerEnd(rod),
    plus("tolerance", tolerance),
  ];
  const say = wordsIn(job.unit);
  const remark = (spare: number): string =>
    spare > 0 ? `; nothing that is given takes the other ${say.twice(spare)}` : "";
  return compareSums(tag, [[plus("length", rod.length)], "<=", parts], say, { ...own, remark });
}

/** A nut, or a plate between two, and a diameter of rod below it, since rods are ordered in round lengths: common practice. */
function lowerEnd(rod: Rod): readonly Term[] {
  const { bottom } = rod;
  if (bottom.kind === "missing") return [plus("lower end", bottom)];
  const nut = nutHeight(rod);
  const below = fixed("rod below it", rod.diameter);
  if (bottom.value.kind !== "plate") return [plus("nut", nut), below];
  return [fixed("plate", bottom.value.thickness), plus("nut", nut, 4), below];
}
