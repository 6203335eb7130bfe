/** The plates of a job that a cut file may be drawn for: every template, and every base plate whose holes are known. */
import { type Contour, circle, pointAt, rectangle } from "../geometry/index.js";
import type { Base, Job } from "../job/model/job.js";
import type { Layout } from "../rods/index.js";
import { layoutPattern } from "../rods/index.js";
import type { Plate } from "../template/index.js";
import { makePlate } from "../template/index.js";
import { toMillimetres } from "../units/index.js";
import type { Target, TargetHole } from "./model.js";

/** In the order of the bases; a base that gives no plate has none. */
export function targetsOf(job: Job): readonly Target[] {
  return job.bases.flatMap((base) => {
    const layout = layoutPattern(base);
    if (!layout.ok) return [];
    const plate = makePlate(job, base, layout.value);
    const basePlate = basePlateOf(base, layout.value);
    return [...(plate.ok ? [templateOf(base, plate.value)] : []), ...(basePlate === null ? [] : [basePlate])];
  });
}

function templateOf(base: Base, plate: Plate): Target {
  const holes = plate.holes.flatMap(({ tag, center, shape, made }): TargetHole[] =>
    shape.kind === "circle" ? [{ tag, at: center, diameter: toMillimetres(shape.diameter), made }] : [],
  );
  const openings = plate.holes.filter(({ shape }) => shape.kind === "rectangle").map(({ contour }) => contour);
  return { role: "template", mark: plate.mark, base: base.mark, holes, outline: plate.region.outer, openings };
}

/** The base plate by its second source; without one by the rods and the holes that job or edition give. */
function basePlateOf(base: Base, { rods }: Layout): Target | null {
  const holes = rods.flatMap(({ tag, center, group }): TargetHole[] => {
    const known = group.baseHole.kind === "given" ? group.baseHole : group.tableBaseHole;
    if (known.kind === "missing") return [];
    return [{ tag, at: center, diameter: toMillimetres(known.value), made: "cut" }];
  });
  if (holes.length < rods.length) return null;
  return { role: "base plate", mark: base.mark, base: base.mark, holes, outline: outlineOf(base), openings: [] };
}

function outlineOf({ basePlate: { shape, at } }: Base): Contour | null {
  if (shape.kind === "missing") return null;
  const { value } = shape;
  const center = pointAt(at.x, at.y);
  return value.kind === "circle" ? circle(center, value.diameter) : rectangle(center, value.x, value.y, value.corner);
}
