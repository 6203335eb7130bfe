/**
 * Marks of a plate: centre-line ticks, arrows of the type's own axes, TOP, mark and revision, the tag beside each rod hole,
 * rod sizes, punch marks of drilled holes; north and grid names only where they hold for every place that it serves.
 */
import type { Contour, Point } from "../../geometry/index.js";
import { extentOfPoints, joinExtents, point, segmentExtent } from "../../geometry/index.js";
import type { Base, Job } from "../../job/model/job.js";
import { servedMarks } from "../../job/model/shared.js";
import type { PlacedRod } from "../../rods/index.js";
import { formatLength } from "../../units/index.js";
import { NM_PER_MM, nanometres } from "../../units/length.js";
import type { Hole, Keyed, Mark, MarkKind, OmittedMark } from "../model.js";
import { seatReach } from "../reach.js";
import { arrange, RANKS } from "./arrange.js";
import { axisStands, placeTicks } from "./axes.js";
import type { Disc, Ground, Taken } from "./ground.js";
import { bareGround, take } from "./ground.js";
import type { Label } from "./labels.js";
import { canLetter, lettering } from "./lettering.js";
import { heightsToTry } from "./placing.js";
import type { Title } from "./titles.js";
import { remembered } from "./titles.js";
import { directionArrow, whereSet } from "./where-set.js";

/** Marks, and those that found no room. */
export interface PlateMarks {
  readonly marks: readonly Mark[];
  readonly omitted: readonly OmittedMark[];
}

/** An outline with its key. */
interface MarkedShape {
  readonly outer: Contour;
  readonly keyed: Keyed | null;
}

/** A round rim stays round for marks; what its notch takes is blocked by a box. */
function openShape({ outer, keyed }: MarkedShape): { readonly outer: Contour; readonly blocked: readonly Taken[] } {
  if (keyed === null || keyed.bare.kind === "path" || outer.kind === "circle") return { outer, blocked: [] };
  const notch = outer.segments.filter(({ bulge }) => bulge <= 0).map(segmentExtent);
  return { outer: keyed.bare, blocked: [{ box: notch.reduce(joinExtents), letters: 0 }] };
}

/** Lays out all marks. A shop that marks nothing still punches the holes that it drills. */
export function layOutMarks(
  job: Job,
  base: Base,
  rods: readonly PlacedRod[],
  shape: MarkedShape,
  holes: readonly Hole[],
): PlateMarks {
  const { marking } = job.shop;
  const { outer, blocked } = openShape(shape);
  const seats = new Map(rods.map(({ tag, group }) => [tag, seatReach(group, job.shop) / 2 / NM_PER_MM]));
  const discs = [...holes.filter(({ role }) => role === "rod")].map((hole) => seatDisc(hole, seats));
  const ground = take(bareGround(outer, holes, discs, marking.clearance / NM_PER_MM), blocked);
  const ticks = (free: Ground) => placeTicks(free, outer, marking.textHeight / NM_PER_MM);
  return scribe(job, { ground, holes, seats, titles: titlesOf(job, base, rods, ground), ticks });
}

/** What is scribed on a plate: labels beside its holes, titles, ticks. */
interface Scribing {
  readonly ground: Ground;
  readonly holes: readonly Hole[];
  /** Radii of the seats of nuts by the tags of their rods, in millimetres. */
  readonly seats: ReadonlyMap<string, number>;
  readonly titles: readonly Title[];
  readonly ticks: (ground: Ground) => PlateMarks;
}

function scribe(job: Job, { ground, holes, seats, titles: wanted, ticks: placeAll }: Scribing): PlateMarks {
  const { marking } = job.shop;
  const heights = heightsToTry(marking.textHeight, marking.leastTextHeight);
  const punches = holes.filter(({ made }) => made === "drill").map(punch);
  const notes = holes.filter(({ made }) => made === "drill").flatMap((hole) => drillNote(hole, job, seats));
  const punched = { marks: punches, omitted: [] };
  const isMarked = marking.how !== "none";
  const labels = isMarked ? [...holes.flatMap((hole) => tagLabel(hole, seats)), ...notes] : notes;
  const titles = isMarked ? wanted : [];
  const ticks = (free: Ground) => (isMarked ? placeAll(free) : { marks: [], omitted: [] });
  const unlettered = [...labels, ...titles].filter(({ text }) => !canLetter(text)).map(notInFont);
  const lettered = {
    labels: labels.filter(isLettered),
    titles: titles.filter(isLettered).map(remembered),
    ticks,
    heights,
  };
  return joinMarks([punched, arrange(ground, lettered), { marks: [], omitted: unlettered }]);
}

/** A piece of a plate, in axes of its own, and what is scribed on it. */
export interface PieceToScribe {
  readonly mark: string;
  readonly outer: Contour;
  readonly holes: readonly Hole[];
  /** Its rods, whose nuts and tags stand on it. */
  readonly rods: readonly PlacedRod[];
  /** Covered by what lies on it. */
  readonly covered: readonly Disc[];
  /** Words with an arrow: which way something lies, degrees counter-clockwise from its own +x. */
  readonly arrows: readonly { readonly kind: "north" | "axis"; readonly word: string; readonly degrees: number }[];
  /** Names of joints, each near its place. */
  readonly joints: readonly { readonly name: string; readonly near: Point }[];
  /** Lines that show where it lies against another piece. */
  readonly lines: readonly (readonly Point[])[];
}

/** Lays out the marks of a piece: its mark, TOP, joints, arrows, the tags and sizes of its rods. */
export function layOutPieceMarks(job: Job, piece: PieceToScribe): PlateMarks {
  const { outer, holes, rods, covered } = piece;
  const seats = new Map(rods.map(({ tag, group }) => [tag, seatReach(group, job.shop) / 2 / NM_PER_MM]));
  const discs = [...holes.filter(({ role }) => role === "rod").map((hole) => seatDisc(hole, seats)), ...covered];
  const ground = bareGround(outer, holes, discs, job.shop.marking.clearance / NM_PER_MM);
  const lines = piece.lines.map(lineMark);
  const ticks = (): PlateMarks => ({ marks: lines, omitted: [] });
  return scribe(job, { ground, holes, seats, titles: pieceTitles(job, piece, ground), ticks });
}

function pieceTitles({ revision }: Job, piece: PieceToScribe, { extent }: Ground): readonly Title[] {
  const middle = { x: (extent.x0 + extent.x1) / 2, y: (extent.y0 + extent.y1) / 2 };
  const quarter = (extent.y1 - extent.y0) / 4;
  return [
    markTitle(piece.mark, revision, { x: middle.x, y: middle.y + quarter }),
    ...piece.joints.map(({ name, near }) => wordsTitle("joint", name, () => near)),
    wordsTitle("top", "TOP", () => ({ x: middle.x, y: middle.y - quarter })),
    ...piece.arrows.map(({ kind, word, degrees }) => arrowTitle(kind, word, degrees, middle)),
    ...(piece.rods.length === 0 ? [] : rodSizes(piece.rods)).map((text) => wordsTitle("size", text, () => middle)),
  ];
}

function arrowTitle(kind: "north" | "axis", text: string, degrees: number, middle: Point): Title {
  const stands = (height: number) => [{ block: directionArrow(text, degrees, height), middle, along: "both" as const }];
  return { kind, text, stands };
}

function lineMark(ends: readonly Point[]): Mark {
  return { kind: "centre-line", text: "", strokes: [ends], extent: extentOfPoints(ends), textHeight: nanometres(0) };
}

/** In the order of their ranks, whatever the order in which they found room. */
export function joinMarks(parts: readonly PlateMarks[]): PlateMarks {
  const inOrder = <T extends Mark | OmittedMark>(list: readonly T[]) =>
    RANKS.flatMap((rank) => list.filter(({ kind }) => kind === rank));
  return {
    marks: inOrder(parts.flatMap(({ marks }) => marks)),
    omitted: inOrder(parts.flatMap(({ omitted }) => omitted)),
  };
}

function isLettered({ text }: { readonly text: string }): boolean {
  return canLetter(text);
}

function notInFont({ kind, text }: Label | Title): OmittedMark {
  return { kind, text, cause: "font" };
}

function discOf({ center, shape }: Hole): Disc {
  const across = shape.kind === "circle" ? shape.diameter : Math.max(shape.width, shape.height);
  return { center, radius: across / 2 / NM_PER_MM };
}

function seatDisc(hole: Hole, seats: ReadonlyMap<string, number>): Disc {
  const { center, radius } = discOf(hole);
  return { center, radius: Math.max(radius, seats.get(hole.tag) ?? 0) };
}

function tagLabel(hole: Hole, seats: ReadonlyMap<string, number>): readonly Label[] {
  if (hole.rod === null) return [];
  return [{ kind: "tag", text: `ROD ${hole.tag}`, hole: discOf(hole), seat: seatDisc(hole, seats) }];
}

function drillNote(hole: Hole, { unit }: Job, seats: ReadonlyMap<string, number>): readonly Label[] {
  if (hole.shape.kind !== "circle") return [];
  const text = `DRILL ${formatLength(hole.shape.diameter, unit)}`;
  return [{ kind: "punch", text, hole: discOf(hole), seat: seatDisc(hole, seats) }];
}

/** Longest arm of a punch mark from the centre, in mm: common practice. */
const PUNCH_ARM = 3;

/** A cross on the centre of a drilled hole, inside it. */
function punch({ center, shape }: Hole): Mark {
  const across = shape.kind === "circle" ? shape.diameter : Math.min(shape.width, shape.height);
  const arm = Math.min(PUNCH_ARM, across / 4 / NM_PER_MM);
  const at = (dx: number, dy: number): Point => point(center.x + dx * arm, center.y + dy * arm);
  const [left, right, low, high] = [at(-1, 0), at(1, 0), at(0, -1), at(0, 1)];
  return {
    kind: "punch",
    text: "",
    strokes: [
      [left, right],
      [low, high],
    ],
    extent: { x0: left.x, y0: low.y, x1: right.x, y1: high.y },
    textHeight: nanometres(0),
  };
}

/** What stands once, by rank: the piece mark first. The arrows and grid names end inside the ticks. */
function titlesOf(job: Job, base: Base, rods: readonly PlacedRod[], { extent }: Ground): readonly Title[] {
  const { marking } = job.shop;
  const tickEnd = (3 * marking.clearance + 1.5 * marking.textHeight) / NM_PER_MM;
  const set = whereSet(job.plan, servedMarks(base), extent, tickEnd);
  const middle = { x: (extent.x0 + extent.x1) / 2, y: (extent.y0 + extent.y1) / 2 };
  const quarter = (extent.y1 - extent.y0) / 4;
  return [
    markTitle(base.template.mark, job.revision, { x: middle.x, y: middle.y + quarter }),
    wordsTitle("top", "TOP", () => ({ x: middle.x, y: middle.y - quarter })),
    ...set.filter(({ kind }) => kind === "north"),
    axisTitle("x", extent.x1 - tickEnd, extent.y0 <= 0 && extent.y1 >= 0),
    axisTitle("y", extent.y1 - tickEnd, extent.x0 <= 0 && extent.x1 >= 0),
    ...rodSizes(rods).map((text, line) =>
      wordsTitle("size", text, (height) => ({ x: middle.x, y: middle.y - quarter - (line + 1) * SIZE_PITCH * height })),
    ),
    ...set.filter(({ kind }) => kind !== "north"),
  ];
}

/** From TOP to the rod sizes below it, in letter heights: they are marks of their own. */
const SIZE_PITCH = 2.5;

/** On one line, on two, upwards: whole words only. */
function markTitle(mark: string, revision: string, middle: Point): Title {
  const words = revision === "" ? [mark] : [mark, `REV ${revision}`];
  const text = words.join(" ");
  const shapes = words.length > 1 ? [[text], words] : [words];
  const stands = (height: number) =>
    [false, true].flatMap((upwards) =>
      shapes.map((lines) => ({ block: lettering(lines, height, upwards), middle, along: "both" as const })),
    );
  return { kind: "mark", text, stands };
}

/** On one line, upwards, or a word a line. */
function wordsTitle(kind: MarkKind, text: string, middle: (height: number) => Point): Title {
  const stand = (height: number, lines: readonly string[], upwards: boolean) =>
    ({ block: lettering(lines, height, upwards), middle: middle(height), along: "both" }) as const;
  const words = text.split(" ");
  return {
    kind,
    text,
    stands: (height) => [
      stand(height, [text], false),
      stand(height, [text], true),
      ...(words.length > 1 ? [stand(height, words, false)] : []),
    ],
  };
}

/** An axis that does not meet the plate has its direction shown anywhere. */
function axisTitle(axis: "x" | "y", reach: number, isOnPlate: boolean): Title {
  const stands = (height: number) => axisStands(axis, height, reach);
  const loose = (height: number) => stands(height).map((stand) => ({ ...stand, along: "both" as const }));
  return { kind: "axis", text: axis === "x" ? "+X" : "+Y", stands: isOnPlate ? stands : loose };
}

/** `RODS 3/4` where all are of one size, else a text a size: `A RODS 3/4`, `B RODS 1`. */
function rodSizes(rods: readonly PlacedRod[]): readonly string[] {
  const letters = new Map<string, Set<string>>();
  for (const { group } of rods)
    letters.set(group.rod.size, (letters.get(group.rod.size) ?? new Set()).add(group.letter));
  if (letters.size === 1) return [...letters.keys()].map((size) => `RODS ${size}`);
  return [...letters].map(([size, groups]) => `${[...groups].join(", ")} RODS ${size}`);
}
