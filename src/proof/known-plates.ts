/** The plates of a job that a cut file may be drawn for: every template, and every base plate whose holes are known. */
import { type Contour, circle, pointAt, rectangle } from "../geometry/index.js";
import { baseHoleOf } from "../job/model/base-hole.js";
import type { Base, Job } from "../job/model/job.js";
import { servedMarks } from "../job/model/shared.js";
import type { BaseWithRods, PlacedRod } from "../rods/index.js";
import type { Plate } from "../template/index.js";
import { listPieces, makePlate } from "../template/index.js";
import { toMillimetres } from "../units/index.js";
import type { KnownPlate, TargetHole } from "./model.js";

/** Each piece of every template, in the order of the bases; a base that gives no plate has none. A template of several bases stands once, with the first. */
export function targetsOf(job: Job, bases: readonly BaseWithRods[]): readonly KnownPlate[] {
  return bases.flatMap(({ base, rods }) => {
    const isFirst = servedMarks(base)[0] === base.mark;
    const plate = isFirst ? makePlate(job, base, rods) : null;
    const basePlate = basePlateOf(base, rods);
    const pieces = plate?.ok ? listPieces(job, plate.value).map((piece) => templateTarget(base, piece.plate)) : [];
    return [...pieces, ...(basePlate === null ? [] : [basePlate])];
  });
}

/** A plate that is cut for a base, as a file may be drawn for it. */
export function templateTarget(base: Base, plate: Plate): KnownPlate {
  const holes = plate.holes.flatMap(({ tag, center, shape, made }): TargetHole[] =>
    shape.kind === "circle" ? [{ tag, at: center, diameter: toMillimetres(shape.diameter), made }] : [],
  );
  const openings = plate.holes.filter(({ shape }) => shape.kind === "rectangle").map(({ contour }) => contour);
  const names = { mark: plate.mark, base: base.mark, bases: servedMarks(base) };
  return { role: "template", ...names, holes, outline: plate.region.outer, openings };
}

/** The base plate by its second source; without one by the rods and the holes that job or edition give. */
function basePlateOf(base: Base, rods: readonly PlacedRod[]): KnownPlate | null {
  const holes = rods.flatMap(({ tag, center, group }): TargetHole[] => {
    const known = baseHoleOf(group, { orTable: true });
    if (known.kind === "missing") return [];
    return [{ tag, at: center, diameter: toMillimetres(known.value), made: "cut" }];
  });
  if (holes.length < rods.length) return null;
  const names = { mark: base.mark, base: base.mark, bases: [base.mark] };
  return { role: "base plate", ...names, holes, outline: outlineOf(base), openings: [] };
}

function outlineOf({ basePlate: { shape, at } }: Base): Contour | null {
  if (shape.kind === "missing") return null;
  const { value } = shape;
  const center = pointAt(at.x, at.y);
  return value.kind === "circle" ? circle(center, value.diameter) : rectangle(center, value.x, value.y, value.corner);
}
