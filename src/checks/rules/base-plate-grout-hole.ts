import type { Base, PlanShape } from "../../job/model/job.js";
import { groutHoleFrom, groutHoleSize } from "../../standards/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compareCounts, lacking, notApplicable } from "../results.js";
import { BASE_PLATE } from "../takes.js";
import { counted, wordsIn } from "../words.js";

/** A large base plate has a hole through which grout runs in or air escapes. */
export const basePlateGroutHole: Rule<"base-plate-grout-hole"> = {
  id: "base-plate-grout-hole",
  plainName: "grout hole in base plate",
  title: "a base plate of about 36 in and more has a grout or air hole",
  severity: "advise",
  measured: "the number of grout or air holes in the base plate",
  takes: ["basePlate.groutHoles", ...BASE_PLATE],
  clause: () => groutHoleFrom.clause,
  edition: () => groutHoleFrom.edition,
  check: (context) => [groutHole(context)],
};

function groutHole({ job, base }: CheckContext): RuleResult {
  const { shape, groutHoles } = base.basePlate;
  if (shape.kind === "missing") return lacking("base plate", [shape]);
  const say = wordsIn(job.unit);
  const side = lesserSide(shape.value);
  const size = `${say.length(side)} on its lesser side`;
  if (side < groutHoleFrom.value)
    return notApplicable("base plate", `${size}: less than ${say.length(groutHoleFrom.value)}`);
  return compareCounts("base plate", groutHoles.length, ">=", 1, `${size}; ${holesText(groutHoles, say.length)}`);
}

function lesserSide(shape: PlanShape): number {
  if (shape.kind === "circle") return shape.diameter;
  return Math.min(shape.x, shape.y);
}

function holesText(holes: Base["basePlate"]["groutHoles"], length: (length: number) => string): string {
  const sizes = [...new Set(holes.map(({ diameter }) => length(diameter)))].join(", ");
  const usual = `about ${length(groutHoleSize.value)} is usual`;
  return holes.length === 0
    ? `the job gives no hole (basePlate.groutHoles); ${usual}`
    : `${counted(holes.length, "hole")} of ${sizes}; ${usual}`;
}
