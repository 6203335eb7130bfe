/** One plate of the job with the scale and the pose under which a file is most like it. */
import { measureArea } from "../geometry/index.js";
import type { CutFile } from "../readers/dxf.js";
import { type Alignment, align, outlinePoses } from "./align.js";
import { contourGap } from "./contour-gap.js";
import { type Drawing, type DrawnPart, drawnPart } from "./drawn-part.js";
import { CONTOUR_MM, DIAMETER_MM, type KnownPlate, POSITION_MM, UNIT_RATIOS } from "./model.js";
import { contourToPlate } from "./pose.js";

/** A plate of the job that the drawing may be of. */
export interface Candidate {
  readonly target: KnownPlate;
  readonly part: DrawnPart;
  /** Size of the file to that of the plate. */
  readonly scale: number;
  readonly alignment: Alignment;
  /** Indices of holes of the plate that are to be cut and are not there, and of holes of the file that are none of its. */
  readonly missing: readonly number[];
  readonly extra: readonly number[];
  /** How much differs: a count of holes and contours, with one each for mirror and scale. */
  readonly faults: number;
}

/**
 * The scale at which most agrees: the true one, unless that of a slip of units is better. `mm` millimetres to a unit of the
 * file. A plate of any other size is another plate.
 */
export function bestCandidate(drawing: Drawing, mm: number, target: KnownPlate): Candidate | null {
  let best: Candidate | null = null;
  for (const scale of unitSlips(drawing.file, mm, target)) {
    const candidate = candidateAt(drawing, mm, scale, target);
    if (candidate !== null && (best === null || candidate.faults < best.faults)) best = candidate;
    if (best?.faults === 0) break;
  }
  return best;
}

/** The plate of the same shape in another size: everything agrees but the scale, which is no slip of units. */
export function sameShape(drawing: Drawing, mm: number, target: KnownPlate): Candidate | null {
  const ratio = sizeRatio(drawing.file, mm, target);
  if (ratio === null || UNIT_RATIOS.some((scale) => Math.abs(ratio / scale - 1) < 1e-4)) return null;
  const candidate = candidateAt(drawing, mm, ratio, target);
  return candidate?.faults === 1 && candidate.alignment.pairs.length > 0 ? candidate : null;
}

/** The ratios of units that the areas of the outlines allow. */
function unitSlips(file: CutFile, mm: number, target: KnownPlate): readonly number[] {
  if (file.outline === null) return [1];
  const ratio = sizeRatio(file, mm, target);
  if (ratio === null) return UNIT_RATIOS;
  return [...new Set([1, ...UNIT_RATIOS.filter((scale) => Math.abs(ratio / scale - 1) < 0.25)])];
}

/** Size of the file's outline to the plate's, by their areas; null where either has none, or it is beyond reason. */
function sizeRatio({ outline }: CutFile, mm: number, target: KnownPlate): number | null {
  if (outline === null || target.outline === null) return null;
  const ratio = Math.sqrt((outline.area * mm * mm) / measureArea(target.outline));
  return ratio > 0 && ratio < 1e6 ? ratio : null;
}

function candidateAt(drawing: Drawing, mm: number, scale: number, target: KnownPlate): Candidate | null {
  const part = drawnPart(drawing, mm / scale);
  const alignment = part === null ? null : align(part, target);
  if (part === null || alignment === null) return null;
  const { pairs, outlineGap, openingsOff, pose } = alignment;
  const [paired, taken] = [new Set(pairs.map((pair) => pair.target)), new Set(pairs.map((pair) => pair.drawn))];
  const missing = target.holes.flatMap(({ made }, index) => (made === "cut" && !paired.has(index) ? [index] : []));
  const extra = part.holes.flatMap((_, index) => (taken.has(index) ? [] : [index]));
  const wrong = pairs.filter(
    ({ distance, diameter, target: index }) =>
      distance > POSITION_MM || Math.abs(diameter) > DIAMETER_MM || target.holes[index]?.made === "drill",
  );
  const outlineOff = outlineGap !== null && outlineGap > CONTOUR_MM ? 1 : 0;
  const others = outlineOff + openingsOff + (pose.mirrored ? 1 : 0) + (scale === 1 ? 0 : 1);
  const faults = missing.length + extra.length + wrong.length + others;
  return { target, part, scale, alignment, missing, extra, faults };
}

/** How the pattern of holes lies in an outline that is right by itself. */
export interface PatternInOutline {
  readonly kind: "mirrored" | "turned" | "shifted";
  /** Degrees counter-clockwise, above -180 up to 180. */
  readonly turn: number;
}

/** Null where the outline agrees with the holes, or with no pose at all. */
export function patternInOutline({ part, target, alignment }: Candidate): PatternInOutline | null {
  const { outline } = target;
  if (alignment.outlineGap === null || alignment.outlineGap <= CONTOUR_MM) return null;
  if (part.outline === null || outline === null) return null;
  const drawn = part.outline;
  const { turn, mirrored } = alignment.pose;
  const fitting = outlinePoses(part, target, turn)
    .filter((pose) => contourGap({ ...drawn, contour: contourToPlate(drawn.contour, pose) }, outline) <= CONTOUR_MM)
    .map((pose) => ({ isMirrored: pose.mirrored !== mirrored, turn: halfTurns(turn - pose.turn) }))
    .sort((a, b) => Number(a.isMirrored) - Number(b.isMirrored) || Math.abs(a.turn) - Math.abs(b.turn));
  const [simplest] = fitting;
  if (simplest === undefined) return null;
  const kind = simplest.isMirrored ? "mirrored" : simplest.turn === 0 ? "shifted" : "turned";
  return { kind, turn: simplest.turn };
}

function halfTurns(degrees: number): number {
  const turn = ((degrees % 360) + 360) % 360;
  return turn > 180 ? turn - 360 : turn;
}
