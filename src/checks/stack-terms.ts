/** Terms of sums that go up a rod: the layers of the column's stack, and the template with its nuts. */
import type { Input, Rod } from "../job/model/job.js";
import { given, missing } from "../job/model/job.js";
import type { StackPart } from "../job/model/stack.js";
import { nutHeight } from "../job/model/stack.js";
import { findConcreteTop, findElevation, findGrade, findLengthTolerance } from "../standards/index.js";
import type { Length } from "../units/index.js";
import { nanometres } from "../units/index.js";
import type { CheckContext } from "./model.js";
import type { Term } from "./results.js";
import { fixed, plus } from "./results.js";
import type { RodHole } from "./rods.js";

/** Layers of a stack, each added or taken off. */
export function layers(parts: readonly StackPart[], sign: typeof plus): readonly Term[] {
  return parts.map(({ name, height }) => sign(name, height));
}

/** Thickness of the washer between template and nut, on both faces alike: zero where the nut itself bears. */
export function templateWasherOf({ job, base }: Pick<CheckContext, "job" | "base">): Input<Length> {
  const { templateWasher } = job.shop;
  if (templateWasher.kind === "given") return templateWasher.value.thickness;
  return base.template.material === "plywood" ? templateWasher : given(nanometres(0), "no washer");
}

/** From the top of concrete to the top of the nut above the template. */
export function throughTemplate(context: CheckContext, { rod }: RodHole): readonly Term[] {
  const { template } = context.base;
  return [
    plus("height of the underside", template.height),
    fixed("template", template.thickness),
    plus("washer", templateWasherOf(context)),
    plus("upper nut", nutHeight(rod)),
  ];
}

/** A term with the edition that has it, or why there is none. */
export type FoundTerm =
  | { readonly found: true; readonly term: Term; readonly edition: string }
  | { readonly found: false; readonly why: string };

/** What the top of a rod may stand low or high by, by the placing edition: taken off where it is low, added where it is high. */
export function rodTopTolerance({ job }: CheckContext, side: "low" | "high"): FoundTerm {
  const { placing } = job.editions;
  const found = findElevation(placing);
  if (!found.found) return { found: false, why: `${placing}: no tolerance of rod tops is tabulated` };
  const term = fixed(`${side} (${found.clause})`, found.row[side], side === "low" ? -2 : 2);
  return { found: true, term, edition: found.edition };
}

/** What the top of concrete may stand low or high by: both added to what is asked for above it. */
export function concreteTopTolerance({ job }: CheckContext, side: "low" | "high"): FoundTerm {
  const { placing } = job.editions;
  const found = findConcreteTop(placing);
  if (!found.found) return { found: false, why: `${placing}: no tolerance of the top of concrete is tabulated` };
  const term = fixed(`T.O.C. ${side} (${found.clause})`, found.row[side]);
  return { found: true, term, edition: found.edition };
}

/** The tolerance of this rod's length; missing where its grade has none that is held. */
export function lengthToleranceOf({ length, grade }: Pick<Rod, "length" | "grade">): Input<Length> {
  if (grade.kind === "missing") return grade;
  const known = findGrade(grade.value);
  const tolerance = known.found
    ? findLengthTolerance(known.row, length.kind === "missing" ? nanometres(0) : length.value)
    : known;
  if (!tolerance.found) return missing("", `no tolerance of length is kept for grade ${grade.value}`);
  return length.kind === "missing" ? length : given(tolerance.row.plusMinus, tolerance.edition);
}
