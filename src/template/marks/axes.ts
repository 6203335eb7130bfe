/** The type's own axes: centre-line ticks at the edges, arrows with +X and +Y. */
import type { Contour, Extent, Point } from "../../geometry/index.js";
import { extentOfPoints, joinExtents, point, sectionAt } from "../../geometry/index.js";
import { nanometres } from "../../units/length.js";
import type { Mark, OmittedMark } from "../model.js";
import type { Ground } from "./ground.js";
import { isFree } from "./ground.js";
import type { Block } from "./lettering.js";
import { lettering } from "./lettering.js";
import type { Stand } from "./titles.js";

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
    if (typeof end === "string") return omit(end, "off plate");
    return tickAt(ground, end, length) ?? omit(end.name, "room");
  });
  return {
    marks: found.filter((item) => "strokes" in item),
    omitted: found.filter((item) => "cause" in item),
  };
}

function omit(name: string, cause: OmittedMark["cause"]): OmittedMark {
  return { kind: "centre-line", text: `centre line ${name}`, cause };
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
      if (!isFree(ground, extent, 0, false)) continue;
      return { kind: "centre-line", text: "", strokes: [ends], extent, textHeight: nanometres(0) };
    }
  }
  return null;
}

/** Gap from an arrow to its label, its barbs, and its shaft, in letter heights. */
const GAP = 0.5;
const BARB = { along: 0.5, across: 0.25 };
const SHAFT = 1.5;

/**
 * `+X` or `+Y` with an arrow that lies on its axis, at the end to which it points where there is room: the label on the axis
 * too, or beside the arrow on either side. `reach` is where along the axis the arrow would best end, in mm.
 */
export function axisStands(axis: "x" | "y", height: number, reach: number): readonly Stand[] {
  const label = lettering([axis === "x" ? "+X" : "+Y"], height);
  const arrow = arrowOf(axis, SHAFT * height, height);
  const stands = labelPlaces(axis, label, SHAFT * height, height).map((at) => standOf(axis, label, at, arrow, reach));
  return [...stands.map((stand) => ({ ...stand, along: `+${axis}` as const })), ...stands];
}

/** Shaft and head of an arrow that starts at the origin and points along its axis. */
function arrowOf(axis: "x" | "y", length: number, height: number): readonly (readonly Point[])[] {
  const along = (forward: number, across: number): Point =>
    axis === "x" ? { x: forward, y: across } : { x: across, y: forward };
  const [back, side] = [length - BARB.along * height, BARB.across * height];
  return [
    [along(0, 0), along(length, 0)],
    [along(back, side), along(length, 0), along(back, -side)],
  ];
}

/** Lower left of the label beside an arrow that starts at the origin: behind it, then on either side of it. */
function labelPlaces(axis: "x" | "y", { width, height: tall }: Block, shaft: number, height: number): readonly Point[] {
  const gap = GAP * height;
  const off = gap + BARB.across * height;
  if (axis === "x") {
    const x = (shaft - width) / 2;
    return [
      { x: -gap - width, y: -tall / 2 },
      { x, y: off },
      { x, y: -off - tall },
    ];
  }
  const y = (shaft - tall) / 2;
  return [
    { x: -width / 2, y: -gap - tall },
    { x: off, y },
    { x: -off - width, y },
  ];
}

function standOf(
  axis: "x" | "y",
  label: Block,
  labelAt: Point,
  arrow: readonly (readonly Point[])[],
  reach: number,
): Stand {
  const box = joinExtents(extentOfPoints(arrow.flat()), boxAt(label, labelAt));
  const middle = { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 };
  const ideal =
    axis === "x"
      ? { x: reach - (box.x1 - box.x0) / 2, y: middle.y }
      : { x: middle.x, y: reach - (box.y1 - box.y0) / 2 };
  return { block: arrowBlock(label, labelAt, arrow, box), middle: ideal, along: axis };
}

function boxAt({ width, height }: Block, { x, y }: Point): Extent {
  return { x0: x, y0: y, x1: x + width, y1: y + height };
}

/** Label and arrow as one block. */
function arrowBlock(label: Block, labelAt: Point, arrow: readonly (readonly Point[])[], box: Extent): Block {
  return {
    width: box.x1 - box.x0,
    height: box.y1 - box.y0,
    upwards: false,
    strokesAt: (at) => {
      const place = ({ x, y }: Point) => point(at.x + x - box.x0, at.y + y - box.y0);
      return [...label.strokesAt(place(labelAt)), ...arrow.map((stroke) => stroke.map(place))];
    },
  };
}
