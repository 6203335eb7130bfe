/** Openings: as the job gives them, the void of a ring, or sized automatically. */
import type { Finding } from "../diagnostics/finding.js";
import type { Contour, Point } from "../geometry/index.js";
import {
  circle,
  extentOf,
  extentSize,
  millimetresBetween,
  pointAt,
  roundedRectangle,
  twiceDepthInside,
  twiceEdgeWeb,
  twiceToLattice,
} from "../geometry/index.js";
import type { Base, Job, OpeningSpec } from "../job/model/job.js";
import type { PlacedRod } from "../rods/index.js";
import { leastOf } from "../units/extremes.js";
import { formatDifference, formatWithUnit } from "../units/index.js";
import type { Length, Unit } from "../units/length.js";
import { inches, millimetres, nanometres } from "../units/length.js";
import { patternCenter } from "./auto-outline.js";
import { templateError } from "./finding.js";
import type { HoleShape } from "./model.js";
import { leastEdge, needsOf } from "./reach.js";

/** An opening before it is tagged. */
export interface Opening {
  readonly center: Point;
  readonly shape: HoleShape;
}

/** The openings of a plate; `sized` says how one was sized when that was automatic. */
export interface Openings {
  readonly openings: readonly Opening[];
  readonly sized: string | null;
}

/** A smaller opening than this is not worth cutting, since a hand with a trowel does not pass: common practice. */
const LEAST_OPENING: Readonly<Record<Unit, Length>> = { in: inches(3), mm: millimetres(75) };

/** The openings of a base's template. Jobs that were read give a ring no other than its own. */
export function makeOpenings(job: Job, base: Base, rods: readonly PlacedRod[], outer: Contour): Openings {
  const { outline, opening } = base.template;
  if (outline.kind !== "ring") return openingOf(job, base, rods, outer, opening);
  if (opening.kind === "circle" || opening.kind === "rectangle")
    throw new Error(`base ${base.mark}: an opening beside the ring's own`);
  const { at, inner } = outline;
  const sized = opening.kind === "auto" ? "none beside the ring's own" : null;
  return { openings: [{ center: pointAt(at.x, at.y), shape: { kind: "circle", diameter: inner } }], sized };
}

/** What is wrong with the openings of a plate: each must lie inside it, with material all round. */
export function openingFaults({ unit }: Job, base: Base, { openings }: Openings, outer: Contour): readonly Finding[] {
  return openings.flatMap(({ center, shape }) => {
    const twice = twiceEdgeWeb(contourOf(center, shape), outer);
    if (twice > 0) return [];
    const message = `the opening ${offWords(twice, shape, unit)}; allowed is one inside the plate, with material all round`;
    return [templateError(base, "opening", "opening-off-plate", message)];
  });
}

/** How far a rectangular one reaches past the edge is not measured. */
function offWords(twice: number, { kind }: HoleShape, unit: Unit): string {
  if (twice === 0) return "meets the plate's edge";
  if (kind === "rectangle") return "does not lie inside the plate";
  return `reaches ${formatDifference(-twice / 2, unit)} ${unit} past the plate's edge`;
}

function openingOf(job: Job, base: Base, rods: readonly PlacedRod[], outer: Contour, spec: OpeningSpec): Openings {
  switch (spec.kind) {
    case "none":
      return { openings: [], sized: null };
    case "auto":
      return sizeOpening(job, base, rods, outer);
    case "circle":
      return only({ center: pointAt(spec.at.x, spec.at.y), shape: { kind: "circle", diameter: spec.diameter } });
    case "rectangle":
      return only({ center: pointAt(spec.at.x, spec.at.y), shape: rectangular(base, spec) });
  }
}

function only(opening: Opening): Openings {
  return { openings: [opening], sized: null };
}

/** Jobs that were read have no corner radius of more than half a side. */
function rectangular({ mark }: Base, { x, y, radius }: OpeningSpec & { kind: "rectangle" }): HoleShape {
  if (2 * radius > Math.min(x, y)) throw new Error(`base ${mark}: the opening's corners are larger than it`);
  return { kind: "rectangle", width: x, height: y, radius };
}

/**
 * The largest round opening about the centre of the pattern that leaves the shop's web and edge beside every hole and at
 * the plate's edge, and room for nut and washer; not larger than half the plate's smaller side (common practice);
 * rounded down to the shop's increment. None where that leaves less than `LEAST_OPENING`.
 */
function sizeOpening(job: Job, base: Base, rods: readonly PlacedRod[], outer: Contour): Openings {
  const { shop, unit } = job;
  const clear = Math.max(leastEdge(job, base.template), shop.web.value) as Length;
  const center = patternCenter(rods);
  const { x, y } = extentSize(extentOf(outer));
  const half = Math.floor(Math.min(x, y) / 2);
  const toEdge = twiceDepthInside(center, outer) - 2 * clear;
  const besideHoles = needsOf(job, base, rods, clear).map(
    (need) => twiceToLattice(millimetresBetween(center, need.center)) - need.twice,
  );
  const increment = Math.max(1, shop.increment.value);
  const diameter = Math.floor(leastOf(besideHoles, Math.min(half, toEdge)) / increment) * increment;
  const say = (length: number) => formatWithUnit(length, unit);
  const rule = `${say(clear)} to every hole and the edge, room for nut and washer, at most half the smaller side`;
  if (diameter < LEAST_OPENING[unit]) {
    return { openings: [], sized: `none: less than ${say(LEAST_OPENING[unit])} would be left (${rule})` };
  }
  const opening: Opening = { center, shape: { kind: "circle", diameter: nanometres(diameter) } };
  return { openings: [opening], sized: `${rule}, rounded down to ${say(increment)}` };
}

/**
 * What an automatic opening may shrink to so that marks find room, the largest first: by the shop's increment down to
 * `LEAST_OPENING`. None where the opening was not sized automatically.
 */
export function smallerOpenings(
  { shop, unit }: Job,
  { template }: Base,
  { openings, sized }: Openings,
): readonly Openings[] {
  const [only] = openings;
  if (template.opening.kind !== "auto" || template.outline.kind === "ring" || only?.shape.kind !== "circle") return [];
  const increment = Math.max(1, shop.increment.value);
  const { diameter } = only.shape;
  const count = Math.max(0, Math.floor((diameter - LEAST_OPENING[unit]) / increment));
  return Array.from({ length: count }, (_, step): Openings => {
    const smaller = nanometres(diameter - (step + 1) * increment);
    const from = `${sized ?? ""}; shrunk from ${formatWithUnit(diameter, unit)} so that marks find room`;
    return { openings: [{ ...only, shape: { kind: "circle", diameter: smaller } }], sized: from };
  });
}

/** The automatic opening left out for the piece mark. */
export const NO_OPENING: Openings = { openings: [], sized: "none: the piece mark would find no room beside it" };

/** The contour of a hole or opening. */
export function contourOf(center: Point, shape: HoleShape): Contour {
  if (shape.kind === "circle") return circle(center, shape.diameter);
  return roundedRectangle(center, shape.width, shape.height, shape.radius);
}
