/** A plate cut into segments that are bolted together with splice plates on its top face. */
import type { Contour, Move, PartingLine, Partition, Path, Point } from "../../geometry/index.js";
import {
  extentOf,
  extentOfPoints,
  extentSize,
  measureArea,
  moveContour,
  moveInTurn,
  partition,
  point,
  rectangle,
  shift,
  turn,
} from "../../geometry/index.js";
import type { Base, Given, Job, SpliceBolt } from "../../job/model/job.js";
import { servedMarks } from "../../job/model/shared.js";
import type { PlacedRod } from "../../rods/index.js";
import { clockwiseFromNorthWest } from "../../rods/index.js";
import { formatDegrees, formatWithUnit } from "../../units/index.js";
import { NM_PER_MM } from "../../units/length.js";
import { canCut } from "../cutting.js";
import { joinMarks, layOutPieceMarks, type PlateMarks } from "../marks/lay-out-marks.js";
import { northOf } from "../marks/where-set.js";
import type { Hole, Joint, Mark, Parted, PlacedPart, Plate } from "../model.js";
import { contourOf } from "../openings.js";
import { type JointLines, jointLines } from "./joint-lines.js";
import {
  onSplice,
  outlineOf,
  type Splice,
  type SpliceDesign,
  spliceDesign,
  spliceKey,
  spliceOver,
  spliceReach,
  spliceSize,
} from "./splices.js";

/** The mark of a segment, by its number from 1. */
export function segmentMark(mark: string, number: number): string {
  return `${mark}-S${number}`;
}

/** The mark of a splice plate: numbered where there are several kinds. */
export function spliceMark(mark: string, kind: number, count: number): string {
  return count === 1 ? `${mark}-SP` : `${mark}-SP${kind}`;
}

/** What a plate is parted from. */
interface Parting {
  readonly job: Job;
  readonly base: Base;
  readonly rods: readonly PlacedRod[];
  readonly plate: Plate;
  readonly bolt: Given<SpliceBolt>;
  readonly design: SpliceDesign;
}

/** The plate with its segments, and their marks as its own; as it is where none are asked for, or none needed. */
export function withSegments(job: Job, base: Base, rods: readonly PlacedRod[], plate: Plate): Plate {
  const { segments } = base.template;
  if (segments === null) return plate;
  const bolt = segments.bolt ?? job.shop.spliceBolt;
  const parting = { job, base, rods, plate, bolt, design: spliceDesign(job, base.template, bolt.value) };
  const cut = cutInto(parting, segments.count);
  if (cut === null) return plate;
  const parted = makeParted(parting, cut);
  return { ...plate, parted, ...marksOf(parted) };
}

/** Lines and what they leave. */
interface Cut extends JointLines {
  readonly parts: Partition;
  readonly chosen: Chosen;
}

/** Why there are so many segments: the job says so; the fewest that fit the table, with or without room for their joints; fewer would fit, but without; or none fit. */
type Chosen = "given" | "fewest" | "fewest, crowded" | "fewest clear" | "none fit";

/** More segments than this are not tried. */
const MOST_SEGMENTS = 24;

/** null: one piece. The fewest segments that fit the table with room for their joints, else the fewest that fit; where none do, two, held by their size. */
function cutInto(parting: Parting, count: number | "auto"): Cut | null {
  if (count !== "auto") return cutAt(parting, count);
  const { table } = parting.job.shop;
  if (table.kind === "missing" || fits(parting.plate.region.outer, table.value)) return null;
  let fewest: Cut | null = null;
  for (let tried = 2; tried <= MOST_SEGMENTS; tried += 1) {
    const cut = cutAt(parting, tried);
    if (!doFit(cut, table.value)) continue;
    if (cut.isClear) return { ...cut, chosen: fewest === null ? "fewest" : "fewest clear" };
    fewest ??= { ...cut, chosen: "fewest, crowded" };
  }
  return fewest ?? { ...cutAt(parting, 2), chosen: "none fit" };
}

function doFit({ parts, turns }: Cut, table: Table): boolean {
  return parts.cells.every((paths, i) => paths.every((path) => fits(moveContour(path, turn(turns[i] ?? 0)), table)));
}

/** The sides of what a shop cuts from. */
interface Table {
  readonly x: number;
  readonly y: number;
}

function cutAt({ job, plate, rods, design }: Parting, count: number): Cut {
  const lines = jointLines(job, plate, rods, count, (width) => spliceReach(design, width));
  return { ...lines, parts: partition(plate.region, lines.lines, count, lines.cellOf), chosen: "given" };
}

/** On the table either way round. */
function fits(outer: Contour, table: Table): boolean {
  const { x, y } = extentSize(extentOf(outer));
  return Math.max(x, y) <= Math.max(table.x, table.y) && Math.min(x, y) <= Math.min(table.x, table.y);
}

function makeParted(parting: Parting, cut: Cut): Parted {
  const { plate, bolt, design } = parting;
  const splices = cut.parts.stretches.map((stretches) => stretches.map((each) => spliceOver(plate, each, design)));
  const kinds = [...new Map(splices.flat().map((each) => [spliceKey(each), each])).values()];
  const markOf = (splice: Splice) =>
    spliceMark(plate.mark, kinds.findIndex((each) => spliceKey(each) === spliceKey(splice)) + 1, kinds.length);
  const count = (kind: Splice) => splices.flat().filter((each) => spliceKey(each) === spliceKey(kind)).length;
  return {
    joints: cut.lines.map((line, i) => jointOf(plate.mark, cut, line, i, splices[i] ?? [], markOf)),
    segments: cut.parts.cells.map((_, cell) => makeSegment(parting, cut, splices, cell)),
    splices: kinds.map((kind) => makeSplice(parting, kind, markOf(kind), count(kind))),
    loose: cut.parts.cells.reduce((sum, paths) => sum + paths.length - 1, 0),
    bolt,
    how: howWords(parting, cut),
  };
}

function jointOf(
  mark: string,
  { degrees, parts }: Cut,
  { from, to, left, right }: PartingLine,
  index: number,
  splices: readonly Splice[],
  markOf: (splice: Splice) => string,
): Joint {
  const stretches = parts.stretches[index] ?? [];
  return {
    number: index + 1,
    from: stretches[0]?.from ?? from,
    to: stretches.at(-1)?.to ?? to,
    stretches,
    degrees: degrees?.[index] ?? null,
    between: [segmentMark(mark, right + 1), segmentMark(mark, left + 1)],
    splices: splices.map((splice) => ({
      mark: markOf(splice),
      outline: outlineOf(splice),
      bolts: splice.bolts.map(({ across, along }) => onSplice(splice, across, along)),
    })),
  };
}

/** A joint's bolts on one side of it, its name near them. Base axes. */
interface JointEnd {
  readonly name: string;
  readonly near: Point;
  readonly bolts: readonly Point[];
}

/** The ends of the joints that a segment has. */
function endsOf(
  { design, job }: Parting,
  { lines }: Cut,
  splices: readonly (readonly Splice[])[],
  cell: number,
): readonly JointEnd[] {
  return lines.flatMap(({ left, right }, i) => {
    const side = left === cell ? -1 : right === cell ? 1 : 0;
    const own = splices[i] ?? [];
    const [first] = own;
    if (side === 0 || first === undefined) return [];
    const off = side * (first.across / 2 + design.edge / 2 + job.shop.marking.textHeight);
    const bolts = own.flatMap((splice) =>
      splice.bolts
        .filter(({ across }) => across * side > 0)
        .map(({ across, along }) => onSplice(splice, across, along)),
    );
    return [{ name: `J${i + 1}`, near: onSplice(first, off, 0), bolts }];
  });
}

function makeSegment(parting: Parting, cut: Cut, splices: readonly (readonly Splice[])[], cell: number): PlacedPart {
  const { job, base, plate } = parting;
  const own = plate.holes.filter((hole) => cut.cellOf(hole.center) === cell && !isCutThrough(hole, cut));
  const degrees = own.some(({ shape }) => shape.kind === "rectangle") ? 0 : (cut.turns[cell] ?? 0);
  const outline = largest(cut.parts.cells[cell] ?? []);
  const { x0, y0 } = extentOf(moveContour(outline, turn(degrees)));
  const move = moveInTurn(turn(degrees), shift({ dx: -x0, dy: -y0 }));
  const ends = endsOf(parting, cut, splices, cell);
  const outer = moveContour(outline, move);
  const bolts = boltHoles(parting, ends.flatMap((end) => end.bolts).map(move.apply));
  const moved = own.map((hole) => movedHole(hole, move));
  const holes = [
    ...moved.filter(({ role }) => role !== "rod"),
    ...bolts,
    ...moved.filter(({ role }) => role === "rod"),
  ];
  const mark = segmentMark(plate.mark, cell + 1);
  const scribed = layOutPieceMarks(job, {
    mark,
    outer,
    holes,
    rods: parting.rods.filter(({ tag }) => own.some((hole) => hole.tag === tag)),
    covered: bolts.map(({ center }) => ({ center, radius: parting.design.edge / NM_PER_MM })),
    arrows: arrowsOf(job, base, degrees),
    joints: ends.map(({ name, near }) => ({ name, near: move.apply(near) })),
    lines: [],
  });
  const back = turn(-degrees).apply(point(x0, y0));
  return {
    plate: pieceOf(plate, { mark, quantity: plate.quantity, outer, holes, scribed }),
    turn: -degrees,
    shift: back,
  };
}

/** True of an opening that a joint runs through: it is part of the outlines of segments. */
function isCutThrough({ contour, role }: Hole, { cellOf }: Cut): boolean {
  const { x0, y0, x1, y1 } = extentOf(contour);
  const corners = [point(x0, y0), point(x1, y0), point(x1, y1), point(x0, y1)];
  return role === "opening" && new Set(corners.map(cellOf)).size > 1;
}

function largest(paths: readonly Path[]): Path {
  const [first, ...others] = paths;
  if (first === undefined) throw new RangeError("a segment without an outline");
  return others.reduce((most, each) => (measureArea(each) > measureArea(most) ? each : most), first);
}

function movedHole(hole: Hole, move: Move): Hole {
  const center = move.apply(hole.center);
  return { ...hole, center, contour: contourOf(center, hole.shape) };
}

function boltHoles({ job, plate, bolt }: Parting, places: readonly Point[]): readonly Hole[] {
  const diameter = bolt.value.hole.value;
  const shape = { kind: "circle", diameter } as const;
  const made = canCut(job.shop, plate.thickness, diameter) ? "cut" : "drill";
  return clockwiseFromNorthWest(places).map((center, i): Hole => {
    return { tag: `BH${i + 1}`, role: "bolt", center, shape, rod: null, made, contour: contourOf(center, shape) };
  });
}

/** The base's +X, and plan north where it is one for every place. */
function arrowsOf(job: Job, base: Base, degrees: number) {
  const north = northOf(job.plan, servedMarks(base));
  const axis = { kind: "axis", word: "+X", degrees } as const;
  return north === null ? [axis] : [{ kind: "north", word: "N", degrees: north + degrees } as const, axis];
}

interface PieceParts {
  readonly mark: string;
  readonly quantity: number;
  readonly outer: Contour;
  readonly holes: readonly Hole[];
  readonly scribed: PlateMarks;
}

function pieceOf(
  { revision, material, grade, thickness }: Plate,
  { mark, quantity, outer, holes, scribed }: PieceParts,
): Plate {
  const cut = holes.filter(({ made }) => made === "cut").map(({ contour }) => contour);
  return {
    ...{ mark, revision, quantity, material, grade, thickness, outlineKind: outer.kind, holes, ...scribed },
    region: { outer, inner: cut },
    ...{ keyed: null, wrong: [], sized: [], parted: null, lower: null },
  };
}

/** From the edge to a tick that shows the joint, and its length, in letter heights. */
const JOINT_TICK = 0.8;

function makeSplice(parting: Parting, splice: Splice, mark: string, count: number): Plate {
  const { job, plate } = parting;
  const { x, y } = spliceSize(splice);
  const middle = point(x / 2 / NM_PER_MM, y / 2 / NM_PER_MM);
  const outer = rectangle(middle, x, y);
  const places = splice.bolts.map(({ across, along }) =>
    point(middle.x + across / NM_PER_MM, middle.y + along / NM_PER_MM),
  );
  const holes = boltHoles(parting, places);
  const { clearance, textHeight } = job.shop.marking;
  const [gap, length] = [clearance / NM_PER_MM, (JOINT_TICK * textHeight) / NM_PER_MM];
  const tick = (from: number, to: number) => [point(middle.x, from), point(middle.x, to)];
  const scribed = layOutPieceMarks(job, {
    ...{ mark, outer, holes, rods: [], covered: [], arrows: [], joints: [] },
    lines: [tick(gap, gap + length), tick(2 * middle.y - gap, 2 * middle.y - gap - length)],
  });
  return pieceOf(plate, { mark, quantity: count * plate.quantity, outer, holes, scribed });
}

/** The marks of the segments where they lie once they are put together. */
function marksOf({ segments }: Parted): PlateMarks {
  return joinMarks(
    segments.map(({ plate, turn: degrees, shift: by }) => {
      const move = moveInTurn(turn(degrees), shift({ dx: by.x, dy: by.y }));
      return {
        marks: plate.marks.map((mark) => movedMark(mark, move)),
        omitted: plate.omitted.map((each) => ({ ...each, text: `${each.text} on ${plate.mark}` })),
      };
    }),
  );
}

function movedMark(mark: Mark, { apply }: Move): Mark {
  const strokes = mark.strokes.map((points) => points.map(apply));
  return { ...mark, strokes, extent: extentOfPoints(strokes.flat()) };
}

function howWords(parting: Parting, cut: Cut): string {
  const { job, bolt, design } = parting;
  const { degrees, lines } = cut;
  const say = (length: number) => formatWithUnit(length, job.unit);
  const where =
    degrees === null
      ? `${lines.length} across the longer side`
      : `along radii at ${degrees.map((each) => formatDegrees(each)).join(", ")}`;
  return `${chosenWords(job, cut)}joints ${where}; bolts ${bolt.value.size} (${bolt.from}) in holes ${say(bolt.value.hole.value)} (${bolt.value.hole.from}), ${say(design.edge)} or more from joint and edges`;
}

/** Which number of segments was taken, where it was left to the program. */
function chosenWords({ shop: { table }, unit }: Job, { chosen, parts }: Cut): string {
  if (chosen === "given" || table.kind === "missing") return "";
  const size = `${formatWithUnit(table.value.x, unit)} × ${formatWithUnit(table.value.y, unit)}`;
  const lie = `on table and stock of ${size} (${table.from})`;
  const count = parts.cells.length;
  const words: Readonly<Record<Exclude<Chosen, "given">, string>> = {
    fewest: `${count} segments, the fewest that lie ${lie}`,
    "fewest, crowded": `${count} segments, the fewest that lie ${lie}, though joints have no room`,
    "fewest clear": `${count} segments, the fewest that lie ${lie} with room for their joints`,
    "none fit": `${count} segments, since none of up to ${MOST_SEGMENTS} lie ${lie}`,
  };
  return `${words[chosen]}; `;
}
