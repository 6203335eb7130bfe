/** Every hole of a plate, in the order in which it is cut: openings, grout, nail, rods by tag. */
import type { Point } from "../geometry/index.js";
import { pointAt } from "../geometry/index.js";
import type { Job, RoundHoleSpec, TemplateSpec } from "../job/model/job.js";
import type { PlacedRod } from "../rods/index.js";
import { clockwiseFromNorthWest } from "../rods/index.js";
import type { Length } from "../units/length.js";
import { canCut } from "./cutting.js";
import type { Hole, HoleRole, HoleShape } from "./model.js";
import type { Opening } from "./openings.js";
import { contourOf } from "./openings.js";

/** Holes with tag, contour and the way each is made. */
export function makeHoles(
  job: Job,
  template: TemplateSpec,
  rods: readonly PlacedRod[],
  openings: readonly Opening[],
): readonly Hole[] {
  const made = (role: HoleRole, shape: HoleShape) => wayToMake(job, template, role, shape);
  const round = (role: HoleRole, prefix: string, specs: readonly RoundHoleSpec[]) =>
    inOrder(specs).map(({ center, diameter }, i): Hole => {
      const shape = { kind: "circle", diameter } as const;
      const contour = contourOf(center, shape);
      return { tag: `${prefix}${i + 1}`, role, center, shape, rod: null, made: made(role, shape), contour };
    });
  const inner = openings.map(({ center, shape }, i): Hole => {
    const contour = contourOf(center, shape);
    return { tag: `OP${i + 1}`, role: "opening", center, shape, rod: null, made: made("opening", shape), contour };
  });
  return [
    ...inner,
    ...round("grout", "GH", template.groutHoles),
    ...round("nail", "NH", template.nailHoles),
    ...rods.map((rod) => rodHole(rod, (shape) => made("rod", shape))),
  ];
}

/** Numbered as rods are, whatever the order in which they are written. */
function inOrder(specs: readonly RoundHoleSpec[]): readonly { readonly center: Point; readonly diameter: Length }[] {
  const diameters = new Map(specs.map(({ at, diameter }) => [pointAt(at.x, at.y), diameter]));
  return clockwiseFromNorthWest([...diameters.keys()]).flatMap((center) => {
    const diameter = diameters.get(center);
    return diameter === undefined ? [] : [{ center, diameter }];
  });
}

function rodHole({ tag, center, group }: PlacedRod, made: (shape: HoleShape) => Hole["made"]): Hole {
  const shape = { kind: "circle", diameter: group.hole.value } as const;
  const { size, diameter } = group.rod;
  const contour = contourOf(center, shape);
  return { tag, role: "rod", center, shape, rod: { size, diameter }, made: made(shape), contour };
}

/**
 * Round holes that the process cannot cut are drilled, and so are those in plywood, where only an opening is sawn.
 * A rectangular opening is always cut.
 */
function wayToMake(
  { shop }: Job,
  { material, thickness }: TemplateSpec,
  role: HoleRole,
  shape: HoleShape,
): Hole["made"] {
  if (shape.kind === "rectangle" || (material === "plywood" && role === "opening")) return "cut";
  return material === "steel" && canCut(shop, thickness, shape.diameter) ? "cut" : "drill";
}
