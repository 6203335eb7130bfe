/** Splice plates over a joint: as wide as the material lets them be, in rows of bolts on either side of it. */
import type { Path, Point, Stretch } from "../../geometry/index.js";
import { millimetresBetween, point, polygon, twiceDepthInside } from "../../geometry/index.js";
import type { Job, SpliceBolt, TemplateSpec } from "../../job/model/job.js";
import { findEdge } from "../../standards/index.js";
import { inches, type Length, millimetres, NM_PER_MM, nanometres, type Unit } from "../../units/length.js";
import type { Plate } from "../model.js";
import { leastEdge } from "../reach.js";

/** Distances of the bolts, nanometres. */
export interface SpliceDesign {
  /** From a bolt to the edges of the splice plate. */
  readonly edge: number;
  /** From the nearest bolt to the joint: an edge too, and half of the spacing over it. */
  readonly joint: number;
  /** Between bolts of one row, and at least between rows. */
  readonly spacing: number;
  /** At most between rows. */
  readonly pitch: number;
  readonly tick: number;
}

/** A splice plate over a stretch of a joint. Nanometres; `along` the joint, `across` it. */
export interface Splice {
  readonly along: number;
  readonly across: number;
  /** Middle of the stretch, and the direction of the joint. Base axes. */
  readonly middle: Point;
  readonly direction: Point;
  /** Of each bolt from the middle: across the joint, positive on its right, and along it. */
  readonly bolts: readonly { readonly across: number; readonly along: number }[];
}

/** Sizes of splice plates are whole multiples of this: common practice. */
const TICK: Readonly<Record<Unit, Length>> = { in: inches(0.125), mm: millimetres(5) };

/** Preferred spacing of bolts in diameters (AISC 360-22 J3.4). */
const PREFERRED_SPACING = 3;

/** Most thicknesses between bolts, and at most this far: 24 t of the thinner part, 12 in, 300 mm (AISC 360-16 J3.5a, 360-22 J3.6a). */
const MOST_PITCH = { thicknesses: 24, in: inches(12), mm: millimetres(300) } as const;

/** What bolts keep from edges and from each other: least edge distances of the edition and of the shop, rounded up. */
export function spliceDesign(job: Job, template: TemplateSpec, bolt: SpliceBolt): SpliceDesign {
  const { unit, editions } = job;
  const tick = TICK[unit];
  const up = (length: number) => Math.ceil(length / tick) * tick;
  const found = findEdge(editions.edges, bolt.diameter, bolt.hole.value);
  const least = found.found ? found.row.least : 2 * bolt.diameter;
  const edge = up(Math.max(least, bolt.hole.value / 2 + leastEdge(job, template)));
  const pitch = Math.min(MOST_PITCH.thicknesses * template.thickness, MOST_PITCH[unit]);
  const spacing = up(PREFERRED_SPACING * bolt.diameter);
  return { edge, joint: Math.max(edge, up(spacing / 2)), spacing, pitch, tick };
}

/** How far from its joint of this width a splice plate reaches: two bolts one behind the other on a side of a narrow one, millimetres. */
export function spliceReach({ edge, joint, spacing, tick }: SpliceDesign, width: number): number {
  const isNarrow = width * NM_PER_MM - 4 * tick - 2 * edge < spacing;
  return (joint + (isNarrow ? spacing : 0) + edge) / NM_PER_MM;
}

/** The splice plate over a stretch of a joint. */
export function spliceOver(plate: Plate, stretch: Stretch, design: SpliceDesign): Splice {
  const { edge, joint, spacing } = design;
  const length = millimetresBetween(stretch.from, stretch.to);
  const middle = { x: (stretch.from.x + stretch.to.x) / 2, y: (stretch.from.y + stretch.to.y) / 2 };
  const direction = { x: (stretch.to.x - stretch.from.x) / length, y: (stretch.to.y - stretch.from.y) / length };
  const rows = rowsIn(widest(plate, { middle, direction }, length, design), design);
  const columns = rows.length === 1 ? 2 : 1;
  const far = joint + (columns - 1) * spacing;
  const bolts = rows.flatMap((along) =>
    Array.from({ length: columns }, (_, i) => [-(joint + i * spacing), joint + i * spacing])
      .flat()
      .map((across) => ({ across, along })),
  );
  const span = (rows.at(-1) ?? 0) - (rows[0] ?? 0);
  return { along: span + 2 * edge, across: 2 * (far + edge), middle, direction, bolts };
}

/** Rows of bolts along the joint, about its middle: two or more where the width has room for them, else one. */
function rowsIn(width: number, { edge, spacing, pitch, tick }: SpliceDesign): readonly number[] {
  const usable = width - 2 * edge;
  if (usable < spacing) return [0];
  const count = Math.max(2, Math.ceil(usable / pitch) + 1);
  const step = Math.floor(usable / (count - 1) / tick) * tick;
  return Array.from({ length: count }, (_, i) => (i - (count - 1) / 2) * step);
}

type Middle = Pick<Splice, "middle" | "direction">;

/** The widest splice plate that stays so far inside the edges of the plate, nanometres. */
function widest(plate: Plate, at: Middle, length: number, { edge, joint, tick }: SpliceDesign): number {
  const whole = Math.floor((length * NM_PER_MM) / tick) * tick;
  for (let width = whole - 2 * tick; width > 2 * edge; width -= tick) {
    const corners = outlineOf({ ...at, along: width, across: 2 * (joint + edge), bolts: [] }).segments.map(
      ({ from }) => from,
    );
    if (corners.every((corner) => depthOnPlate(plate, corner) >= 2 * tick)) return width;
  }
  return 2 * edge;
}

/** Twice how far a point lies inside the plate and off its openings, nanometres. */
function depthOnPlate({ region, holes }: Plate, at: Point): number {
  const openings = holes.filter(({ role, made }) => role === "opening" && made === "cut");
  return openings.reduce(
    (least, { contour }) => Math.min(least, -twiceDepthInside(at, contour)),
    twiceDepthInside(at, region.outer),
  );
}

/** The place of a point of a splice plate, given from its middle in nanometres. Base axes. */
export function onSplice({ middle, direction }: Middle, across: number, along: number): Point {
  const [a, b] = [across / NM_PER_MM, along / NM_PER_MM];
  return point(middle.x + direction.y * a + direction.x * b, middle.y - direction.x * a + direction.y * b);
}

/** The outline of a splice plate where it lies. */
export function outlineOf(splice: Splice): Path {
  const [a, b] = [splice.across / 2, splice.along / 2];
  const corners = [
    [-a, -b],
    [a, -b],
    [a, b],
    [-a, b],
  ] as const;
  return polygon(corners.map(([across, along]) => onSplice(splice, across, along)));
}

/** The same text for splice plates that are one piece. */
export function spliceKey({ along, across, bolts }: Splice): string {
  return JSON.stringify([along, across, bolts]);
}

/** Size as lengths: across the joint and along it. */
export function spliceSize({ across, along }: Splice): { readonly x: Length; readonly y: Length } {
  return { x: nanometres(across), y: nanometres(along) };
}
