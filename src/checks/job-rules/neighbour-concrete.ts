import { concreteOnPlan } from "../../plan/index.js";
import type { Standing } from "../geometry/placed.js";
import { judgeNeighbours, neighbouringShapes, placedBases } from "../geometry/placed.js";
import type { JobRule } from "../job-model.js";
import { notChecked } from "../results.js";
import { CONCRETE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Piers of two bases that run into each other: one pier, or a slip of the plan. */
export const neighbourConcrete: JobRule<"neighbour-concrete"> = {
  id: "neighbour-concrete",
  plainName: "clear of next concrete",
  title: "clear distance between the concrete of two bases, turned as placed >= 0",
  severity: "advise",
  measured: "the clear distance between the concrete of two bases",
  takes: CONCRETE,
  clause: () => "piers that overlap are one pier, or misplaced",
  edition: () => "geometry",
  check(context) {
    const bases = placedBases(context);
    if (bases.length === 0) return [];
    const say = wordsIn(context.job.unit);
    const shapes = bases.flatMap((placed): Standing[] => {
      const contour = concreteOnPlan(placed);
      return contour === null ? [] : [{ placed, contour }];
    });
    const rows = judgeNeighbours(neighbouringShapes(shapes), (_a, _b, twice) =>
      twice < 0 ? "the piers overlap: one pier for both, or a slip of the layout" : `${say.full(twice)} clear`,
    );
    const marks = [
      ...new Set(bases.filter(({ base }) => base.concrete.shape.kind === "missing").map(({ base }) => base.mark)),
    ];
    return marks.length === 0
      ? rows
      : [
          ...rows,
          notChecked(marks.join(", "), "no size of the concrete is given (concrete)", { missing: ["concrete"] }),
        ];
  },
};
