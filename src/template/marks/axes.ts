/** The type's own axes: centre-line ticks at the edges, arrows with +X and +Y. */
import type { Contour, Point } from "../../geometry/index.js";
import { extentOfPoints, point, sectionAt } from "../../geometry/index.js";
import { nanometres } from "../../units/length.js";
import type { Mark, OmittedMark } from "../model.js";
import type { Ground } from "./ground.js";
import { isFree } from "./ground.js";
import type { Block } from "./lettering.js";
import { lettering } from "./lettering.js";

/** One end of an axis: where it leaves the plate, and the way back inside. */
interface AxisEnd {
  readonly name: string;
  readonly at: Point;
  readonly inward: Point;
}

/** Ticks and what was left out. */
export interface Ticks {
  readonly marks: readonly Mark[];
  readonly omitted: readonly OmittedMark[];
}

/** A tick at each end of both axes through the working point, just inside the edge, `length` mm long or shorter. */
export function placeTicks(ground: Ground, outer: Contour, length: number): Ticks {
  const found = [axisEnds(outer, "x"), axisEnds(outer, "y")].flat().map((end) => {
    if (typeof end === "string") return omit(end, "the axis does not meet the plate");
    return tickAt(ground, end, length) ?? omit(end.name, "no room at the edge beside holes and openings");
  });
  return {
    marks: found.filter((item) => "strokes" in item),
    omitted: found.filter((item) => "why" in item),
  };
}

function omit(name: string, why: string): OmittedMark {
  return { kind: "centre-line", text: `centre line ${name}`, why };
}

/** The two ends of an axis, or their names where it misses the plate. */
function axisEnds(outer: Contour, axis: "x" | "y"): readonly (AxisEnd | string)[] {
  const section = sectionAt(outer, axis === "x" ? "y" : "x", 0);
  const [first, last] = [section[0], section.at(-1)];
  if (first === undefined || last === undefined) return [`-${axis}`, `+${axis}`];
  const on = (value: number) => (axis === "x" ? { x: value, y: 0 } : { x: 0, y: value });
  return [
    { name: `-${axis}`, at: on(first.from), inward: on(1) },
    { name: `+${axis}`, at: on(last.to), inward: on(-1) },
  ];
}

function tickAt(ground: Ground, { at, inward }: AxisEnd, length: number): Mark | null {
  for (const fraction of [1, 0.5, 0.25]) {
    for (const setBack of [1, 1.5, 2, 3]) {
      const start = setBack * ground.clearance;
      const ends = [start, start + fraction * length].map((along) =>
        point(at.x + along * inward.x, at.y + along * inward.y),
      );
      const extent = extentOfPoints(ends);
      if (!isFree(ground, extent, false)) continue;
      return { kind: "centre-line", text: "", strokes: [ends], extent, textHeight: nanometres(0) };
    }
  }
  return null;
}

/** Shaft of an arrow and gap to its label, in letter heights; a barb's two sides. */
const SHAFT = 2;
const GAP = 0.5;
const BARB = { along: 0.5, across: 0.25 };

/** `+X` with an arrow to the right; `+Y` under an arrow upwards, or beside it where that is too tall. */
export function axisArrows(axis: "x" | "y", height: number): readonly Block[] {
  const label = lettering([axis === "x" ? "+X" : "+Y"], height);
  return axis === "x" ? [alongX(label, height)] : [aboveLabel(label, height), besideLabel(label, height)];
}

function alongX(label: Block, height: number): Block {
  const from = label.width + GAP * height;
  const to = from + SHAFT * height;
  const middle = label.height / 2;
  const [back, side] = [to - BARB.along * height, BARB.across * height];
  const barbs = [spot(back, middle + side), spot(back, middle - side)] as const;
  return arrowBlock(label, { x: 0, y: 0 }, to, label.height, spot(from, middle), spot(to, middle), barbs);
}

function aboveLabel(label: Block, height: number): Block {
  const from = label.height + GAP * height;
  const to = from + SHAFT * height;
  const middle = label.width / 2;
  return arrowBlock(
    label,
    spot(0, 0),
    label.width,
    to,
    spot(middle, from),
    spot(middle, to),
    upBarbs(middle, to, height),
  );
}

function besideLabel(label: Block, height: number): Block {
  const middle = BARB.across * height;
  const to = SHAFT * height;
  const labelAt = spot(middle + GAP * height, (to - label.height) / 2);
  const width = labelAt.x + label.width;
  return arrowBlock(label, labelAt, width, to, spot(middle, 0), spot(middle, to), upBarbs(middle, to, height));
}

function upBarbs(middle: number, to: number, height: number): readonly [Point, Point] {
  const [back, side] = [to - BARB.along * height, BARB.across * height];
  return [spot(middle - side, back), spot(middle + side, back)];
}

function spot(x: number, y: number): Point {
  return { x, y };
}

/** A label at `labelAt` and an arrow, all measured from the lower left of the block. */
function arrowBlock(
  label: Block,
  labelAt: Point,
  width: number,
  height: number,
  from: Point,
  to: Point,
  barbs: readonly [Point, Point],
): Block {
  return {
    width,
    height,
    upwards: false,
    strokesAt: (at) => {
      const place = ({ x, y }: Point) => point(at.x + x, at.y + y);
      const head = [place(barbs[0]), place(to), place(barbs[1])];
      return [...label.strokesAt(spot(at.x + labelAt.x, at.y + labelAt.y)), [place(from), place(to)], head];
    },
  };
}
