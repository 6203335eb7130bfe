/** Round contours: circles, paths of arcs on one circle, and circles drawn as many chords. */

import { greatestOf } from "../units/extremes.js";
import type { CutContour } from "./dxf-contours.js";
import { fitCircle } from "./dxf-fit.js";
import { type CutPoint, type CutSegment, distance, roundOf } from "./dxf-measures.js";

/** Fewer chords than these are a polygon that is meant. */
const LEAST_CHORDS = 12;

/** The circle that a contour is: centre and diameter in the file's unit. */
export interface RoundContour {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
  /** How far the chords come inside the circle through their ends; zero for arcs. */
  readonly sagitta: number;
}

/** Tolerances in the file's unit: `joint` for arcs, `round` for the ends of chords. */
export function roundOfContour(contour: CutContour, joint: number, round: number): RoundContour | null {
  if (contour.kind === "circle") return { x: contour.x, y: contour.y, diameter: contour.diameter, sagitta: 0 };
  const { segments } = contour;
  return segments.some(({ bulge }) => bulge === 0) ? roundOfChords(segments, round) : roundOfArcs(segments, joint);
}

function roundOfArcs(segments: readonly CutSegment[], tolerance: number): RoundContour | null {
  const [first, ...others] = segments.map(roundOf);
  if (first === undefined || !isOneTurn(segments.map(({ bulge }) => 4 * Math.atan(bulge)))) return null;
  const isSame = others.every(
    ({ center, radius }) => distance(center, first.center) <= tolerance && Math.abs(radius - first.radius) <= tolerance,
  );
  return isSame ? { x: first.center.x, y: first.center.y, diameter: 2 * first.radius, sagitta: 0 } : null;
}

/** Ends on one circle, at least twelve chords, none longer than a sixth of a turn. */
function roundOfChords(segments: readonly CutSegment[], tolerance: number): RoundContour | null {
  if (segments.length < LEAST_CHORDS) return null;
  const circle = fitCircle(segments.map(({ from }) => from));
  if (circle === null || circle.deviation > tolerance) return null;
  const { center, radius } = circle;
  const turns = segments.map(({ from, to }) => turnBetween(center, from, to));
  const longest = greatestOf(turns.map(Math.abs));
  if (!isOneTurn(turns) || longest > Math.PI / 3) return null;
  if (segments.some((segment) => segment.bulge !== 0 && !isOnCircle(segment, center, radius, tolerance))) return null;
  return { x: center.x, y: center.y, diameter: 2 * radius, sagitta: radius * (1 - Math.cos(longest / 2)) };
}

function isOnCircle(segment: CutSegment, center: CutPoint, radius: number, tolerance: number): boolean {
  const arc = roundOf(segment);
  return distance(arc.center, center) <= tolerance && Math.abs(arc.radius - radius) <= tolerance;
}

function turnBetween(center: CutPoint, from: CutPoint, to: CutPoint): number {
  const [ax, ay, bx, by] = [from.x - center.x, from.y - center.y, to.x - center.x, to.y - center.y];
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
}

/** All the same way round, once. */
function isOneTurn(turns: readonly number[]): boolean {
  const whole = turns.reduce((sum, turn) => sum + turn, 0);
  return turns.every((turn) => turn * whole > 0) && Math.abs(Math.abs(whole) - 2 * Math.PI) < 0.01;
}
