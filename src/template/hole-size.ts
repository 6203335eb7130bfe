/** Round holes that no plate can hold, since they are larger than it. */
import type { Finding } from "../diagnostics/finding.js";
import type { Contour } from "../geometry/index.js";
import { extentOf, extentSize } from "../geometry/index.js";
import type { Base, Job } from "../job/model/job.js";
import { formatWithUnit } from "../units/index.js";
import type { Length } from "../units/length.js";
import { templateError } from "./finding.js";

interface NamedHole {
  readonly part: string;
  readonly what: string;
  readonly diameter: Length;
}

/** An error for each hole for rods, nails or grout that is larger than the plate's smaller side; of just that size passes. */
export function holeFaults({ unit }: Job, base: Base, outer: Contour): readonly Finding[] {
  const { x, y } = extentSize(extentOf(outer));
  const side = Math.min(x, y) as Length;
  return holesOf(base)
    .filter(({ diameter }) => diameter > side)
    .map(({ part, what, diameter }) => {
      const [size, most] = [formatWithUnit(diameter, unit), formatWithUnit(side, unit)];
      const message = `the ${what} of ${size} is larger than the template, whose smaller side is ${most}; allowed is a hole inside it`;
      return templateError(base, part, "hole-beyond-plate", message);
    });
}

function holesOf({ groups, template }: Base): readonly NamedHole[] {
  const rods = groups.map(({ letter, hole }): NamedHole => {
    return { part: "hole", what: groups.length > 1 ? `hole of rods ${letter}` : "rod hole", diameter: hole.value };
  });
  const nails = template.nailHoles.map(({ diameter }): NamedHole => ({ part: "nails", what: "nail hole", diameter }));
  const grout = template.groutHoles.map(
    ({ diameter }): NamedHole => ({ part: "groutHoles", what: "grout hole", diameter }),
  );
  return [...rods, ...nails, ...grout];
}
