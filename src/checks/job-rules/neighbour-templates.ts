import { contourOnPlan } from "../../plan/index.js";
import type { Standing } from "../geometry/placed.js";
import { judgeNeighbours, neighbouringShapes, placedBases } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import { OUTLINE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Templates of two bases that cannot both lie in place. */
export const neighbourTemplates: JobRule<"neighbour-templates"> = {
  id: "neighbour-templates",
  plainName: "clear of next template",
  title: "clear distance between the templates of two bases, turned as placed >= 0",
  severity: "advise",
  measured: "the clear distance between the templates of two bases",
  takes: OUTLINE,
  clause: () => "templates on one level cannot overlap",
  edition: () => "geometry",
  check(context) {
    const shapes = templatesOnPlan(context);
    if (shapes.length === 0) return [];
    const say = wordsIn(context.job.unit);
    return judgeNeighbours(neighbouringShapes(shapes), (a, b, twice) => {
      const [one, other] = [a, b].map(({ placed }) => placed.base.template.mark);
      return twice < 0
        ? `${one} and ${other} overlap${levels(a, b, say.length)}`
        : `${one} and ${other}: ${say.full(twice)} clear`;
    });
  },
};

function templatesOnPlan(context: JobContext): readonly Standing[] {
  const outlines = new Map(context.bases.map(({ base, outline }) => [base.mark, outline]));
  return placedBases(context).flatMap((placed) => {
    const outline = outlines.get(placed.base.mark);
    return outline === undefined ? [] : [{ placed, contour: contourOnPlan(placed, outline) }];
  });
}

/** Plates on two levels may pass over each other: the reader decides. */
function levels(a: Standing, b: Standing, length: (value: number) => string): string {
  const [one, other] = [a, b].map(({ placed }) => placed.placement.topOfConcrete);
  if (one?.kind !== "given" || other?.kind !== "given" || one.value === other.value) return "";
  return `; their tops of concrete are ${length(Math.abs(one.value - other.value))} apart`;
}
