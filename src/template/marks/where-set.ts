/**
 * Marks of where the template is set: plan north only where every placement that it serves is turned alike, grid names only
 * where it serves one. Everything is turned from plan axes into the type's own.
 */
import type { Extent, Point } from "../../geometry/index.js";
import { extentOfPoints, joinExtents, point, turnOf } from "../../geometry/index.js";
import type { GridLine, Placement, PlanSpec } from "../../job/model/plan.js";
import { placedAlike } from "../../plan/index.js";
import type { Block } from "./lettering.js";
import { lettering } from "./lettering.js";
import type { Title } from "./titles.js";

/** Angles that differ by less, in degrees, are one: a line along an axis of the type. */
const SAME_DEGREES = 1e-6;

/** North arrow and grid names of a template of bases of these marks; none where they would not hold for every place that it serves. */
export function whereSet(
  spec: PlanSpec | null,
  marks: readonly string[],
  extent: Extent,
  edge: number,
): readonly Title[] {
  const degrees = northOf(spec, marks);
  if (spec === null || degrees === null) return [];
  const [first, ...others] = placementsOf(spec, marks);
  const names = first === undefined || others.length > 0 ? [] : gridNames(spec, first, extent, edge);
  return [northTitle(degrees, extent), ...names];
}

/**
 * Where plan north lies in the type's own axes, degrees counter-clockwise from +X, not less than 0 and under 360; null where
 * the bases of these marks are not all set, or not all turned alike.
 */
export function northOf(spec: PlanSpec | null, marks: readonly string[]): number | null {
  if (spec === null || !placedAlike(spec, marks)) return null;
  const [first] = placementsOf(spec, marks);
  return first === undefined ? null : (((90 - first.turn) % 360) + 360) % 360;
}

function placementsOf(spec: PlanSpec, marks: readonly string[]): readonly Placement[] {
  const own = new Set(marks);
  return spec.placements.filter(({ mark }) => own.has(mark));
}

/** Towards the upper left, between the axes' own arrows. */
function northTitle(degrees: number, { x0, y0, x1, y1 }: Extent): Title {
  return {
    kind: "north",
    text: "N",
    stands: (height) => [
      {
        block: northArrow(degrees, height),
        middle: { x: x0 + (x1 - x0) / 4, y: y1 - (y1 - y0) / 4 },
        along: "both",
      },
    ],
  };
}

/** Length of the arrow, its barbs, and how far the letter stands off its point, in letter heights. */
const ARROW = { length: 2.5, back: 0.6, side: 0.3, letter: 0.9 };

/** An arrow in a direction, degrees counter-clockwise from +x of the type, with an upright N beyond its point. */
export function northArrow(degrees: number, height: number): Block {
  return directionArrow("N", degrees, height);
}

/** An arrow in a direction, degrees counter-clockwise from +x, with an upright word beyond its point. */
export function directionArrow(word: string, degrees: number, height: number): Block {
  const { cos, sin } = turnOf(degrees);
  const along = (forward: number, left: number): Point => ({
    x: (forward * cos - left * sin) * height,
    y: (forward * sin + left * cos) * height,
  });
  const letter = lettering([word], height);
  const beyond = ARROW.letter + (Math.abs(cos) * (letter.width / height - 0.7)) / 2;
  const middle = along(ARROW.length + (word === "N" ? ARROW.letter : beyond), 0);
  const letterAt = { x: middle.x - letter.width / 2, y: middle.y - letter.height / 2 };
  const tip = along(ARROW.length, 0);
  const barbs = [ARROW.side, -ARROW.side].map((left) => along(ARROW.length - ARROW.back, left));
  const lines = [
    [along(0, 0), tip],
    [barbs[0] ?? tip, tip, barbs[1] ?? tip],
  ];
  const box = joinExtents(extentOfPoints(lines.flat()), {
    x0: letterAt.x,
    y0: letterAt.y,
    x1: letterAt.x + letter.width,
    y1: letterAt.y + letter.height,
  });
  return {
    width: box.x1 - box.x0,
    height: box.y1 - box.y0,
    upwards: false,
    strokesAt: (at) => {
      const place = ({ x, y }: Point): Point => point(at.x + x - box.x0, at.y + y - box.y0);
      return [...lines.map((stroke) => stroke.map(place)), ...letter.strokesAt(place(letterAt))];
    },
  };
}

/** The two lines of the only placement, each named at the far end of the axis that it runs along. */
function gridNames(spec: PlanSpec, placement: Placement, extent: Extent, edge: number): readonly Title[] {
  return placement.lines.flatMap((name) => {
    const line = spec.lines.find((each) => each.name === name);
    const axis = line === undefined ? null : axisOf(line, placement);
    return axis === null ? [] : [gridTitle(`GRID ${name}`, axis, extent, edge)];
  });
}

/** On the axis itself, else close beside it. */
function gridTitle(text: string, axis: "x" | "y", { x0, y0 }: Extent, edge: number): Title {
  return {
    kind: "grid",
    text,
    stands: (height) => {
      const block = lettering([text], height, axis === "y");
      const along = axis === "x" ? x0 + edge + block.width / 2 : y0 + edge + block.height / 2;
      return [0, height, -height].map((off) => ({
        block,
        middle: axis === "x" ? { x: along, y: off } : { x: off, y: along },
        along: axis,
      }));
    },
  };
}

/** The axis of the type on which a grid line lies; null where it lies on none: such a name would mislead. */
function axisOf(line: GridLine, { turn, offset }: Placement): "x" | "y" | null {
  const degrees = directionOf(line);
  if (degrees === null || !passesThrough(line, offset)) return null;
  const half = (((degrees - turn) % 180) + 180) % 180;
  if (half < SAME_DEGREES || 180 - half < SAME_DEGREES) return "x";
  return Math.abs(half - 90) < SAME_DEGREES ? "y" : null;
}

/** Direction on the plan, degrees counter-clockwise from plan east; null for an arc. */
function directionOf(line: GridLine): number | null {
  switch (line.kind) {
    case "x":
      return 90;
    case "y":
      return 0;
    case "skewed":
    case "radial":
      return line.degrees;
    case "arc":
      return null;
  }
}

/** True where the working point, off the crossing by `offset`, still lies on the line. */
function passesThrough(line: GridLine, { x, y }: Placement["offset"]): boolean {
  if (line.kind === "x") return x === 0;
  if (line.kind === "y") return y === 0;
  return x === 0 && y === 0;
}
