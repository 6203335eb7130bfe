/** From a base and its rods to a plate that can be cut. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { Contour } from "../geometry/index.js";
import type { Base, Job } from "../job/model/job.js";
import type { MovedRods } from "../orientation/index.js";
import { judgeOutline, movedRods } from "../orientation/index.js";
import type { OutlinedBase, PlacedRod } from "../rods/index.js";
import { holeFaults } from "./hole-size.js";
import { makeHoles } from "./holes.js";
import { keyOutline } from "./key/key-outline.js";
import { layOutMarks } from "./marks/lay-out-marks.js";
import type { MarkKind, Plate, SizedPart } from "./model.js";
import type { Openings } from "./openings.js";
import { makeOpenings, NO_OPENING, openingFaults, smallerOpenings } from "./openings.js";
import { makeOutline } from "./outline.js";
import type { Outline } from "./outline-model.js";
import { lowerBase } from "./pieces/lower.js";
import { withSegments } from "./pieces/part-plate.js";
import type { SharedTemplate } from "./share/model.js";

/**
 * The plate of a base's template. Shapes that cannot be (an outline that crosses itself, corners without room) are
 * findings; holes in each other's way or past the edge are not: the checks hold the base for those. `shape`: that of
 * `makePlateShape` for the same base, where it was made before.
 */
export function makePlate(job: Job, base: Base, rods: readonly PlacedRod[], shape?: PlateShape): Outcome<Plate> {
  const made = shape ?? makeShape(job, base, rods);
  if (isFindings(made)) return { ok: false, findings: made };
  const whole = withSegments(job, base, rods, assemble(job, base, rods, made));
  return { ok: true, value: withLower(job, base, rods, whole), findings: [] };
}

/** The plate with its lower template, whose faults are those of the shape. */
function withLower(job: Job, base: Base, rods: readonly PlacedRod[], plate: Plate): Plate {
  const lower = lowerBase(job, base, rods);
  if (lower === null) return plate;
  const made = makePlate(job, lower, rods);
  return made.ok ? { ...plate, lower: made.value } : plate;
}

/** Outline and openings of a plate before its key, holes and marks. */
export interface PlateShape {
  readonly outline: Outline;
  readonly openings: Openings;
}

/** A base whose plate is known but for key, holes and marks: what is kept of every base while a job is open. */
export interface ShapedBase extends OutlinedBase {
  readonly shape: PlateShape;
  /** Of a base whose template serves others too: what they say to each other. */
  readonly shared?: SharedTemplate;
}

/** The shape of `makePlate`, with all its findings, without the plate: marks, which take most of the time, have none. */
export function makePlateShape(job: Job, base: Base, rods: readonly PlacedRod[]): Outcome<PlateShape> {
  const shape = makeShape(job, base, rods);
  return isFindings(shape) ? { ok: false, findings: shape } : { ok: true, value: shape, findings: [] };
}

/** The outline of `makePlate` alone, with the same findings. */
export function makePlateOutline(job: Job, base: Base, rods: readonly PlacedRod[]): Outcome<Contour> {
  const shape = makePlateShape(job, base, rods);
  return shape.ok ? { ...shape, value: shape.value.outline.contour } : shape;
}

function makeShape(job: Job, base: Base, rods: readonly PlacedRod[]): PlateShape | readonly Finding[] {
  const outline = makeOutline(job, base, rods);
  if (isFindings(outline)) return outline;
  const openings = makeOpenings(job, base, rods, outline.contour);
  const faults = [
    ...holeFaults(job, base, outline.contour),
    ...openingFaults(job, base, openings, outline.contour),
    ...lowerFaults(job, base, rods),
  ];
  return faults.length > 0 ? faults : { outline, openings };
}

/** What is wrong with the shape of the lower template, where it is written. */
function lowerFaults(job: Job, base: Base, rods: readonly PlacedRod[]): readonly Finding[] {
  const lower = lowerBase(job, base, rods);
  const made = lower === null ? null : makeShape(job, lower, rods);
  if (made === null || !isFindings(made)) return [];
  return made.map((finding) => {
    const { path } = finding.at;
    if (path === undefined) return finding;
    return { ...finding, at: { ...finding.at, path: path.replace("template.", "template.lower.") } };
  });
}

/**
 * An automatic opening gives way to marks, and is as large as what they need allows: to the piece mark altogether, to TOP and
 * tags as long as a hand still passes.
 */
function assemble(job: Job, base: Base, rods: readonly PlacedRod[], { outline, openings }: PlateShape): Plate {
  const moved = movedRods(base, rods, outline.contour);
  const plateWith = (shrunk: Openings) => plateOf(job, base, rods, outline, shrunk, moved);
  const plate = plateWith(openings);
  if (lacking(plate) === 0 || base.template.opening.kind !== "auto" || openings.openings.length === 0) return plate;
  const smaller = smallerOpenings(job, base, openings);
  const made = lackingLeast(
    plate,
    smaller.map((each) => () => plateWith(each)),
  );
  if (!lacksMark(made) || base.template.outline.kind === "ring") return made;
  const whole = plateWith(NO_OPENING);
  return lacksMark(whole) ? made : whole;
}

/** A plate without its piece mark is worse than one without TOP, that worse than one without any of its tags. */
function lacking({ holes, omitted }: Plate): number {
  const count = (wanted: MarkKind) => omitted.filter(({ kind, cause }) => kind === wanted && cause === "room").length;
  return (2 * count("mark") + count("top")) * (holes.length + 1) + count("tag");
}

function lacksMark({ omitted }: Plate): boolean {
  return omitted.some(({ kind, cause }) => kind === "mark" && cause === "room");
}

/**
 * The first plate that lacks as little as the last one does, where every one after it does too; the given one where the last
 * lacks no less.
 */
function lackingLeast(given: Plate, makers: readonly (() => Plate)[]): Plate {
  let found = makers.at(-1)?.() ?? given;
  const wanted = lacking(found);
  if (wanted >= lacking(given)) return given;
  let [least, most] = [-1, makers.length - 1];
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2);
    const plate: Plate = makers[middle]?.() ?? found;
    if (lacking(plate) <= wanted) [most, found] = [middle, plate];
    else least = middle;
  }
  return found;
}

function plateOf(
  job: Job,
  base: Base,
  rods: readonly PlacedRod[],
  outline: Outline,
  { openings, sized }: Openings,
  moved: readonly MovedRods[],
): Plate {
  const { template } = base;
  const { contour: outer, keyed } = keyOutline(job, base, rods, outline, openings, moved);
  const holes = makeHoles(job, template, rods, openings);
  return {
    mark: template.mark,
    revision: job.revision,
    quantity: template.quantity,
    material: template.material,
    grade: template.grade.kind === "missing" ? null : template.grade.value,
    thickness: template.thickness,
    outlineKind: outer.kind,
    region: { outer, inner: holes.filter(({ made }) => made === "cut").map(({ contour }) => contour) },
    holes,
    ...layOutMarks(job, base, rods, { outer, keyed }, holes),
    keyed,
    wrong: judgeOutline(moved, outer),
    sized: [...sizedAs("outline", outline.sized), ...sizedAs("opening", sized)],
    parted: null,
    lower: null,
  };
}

function sizedAs(what: SizedPart, how: string | null): Plate["sized"] {
  return how === null ? [] : [{ what, how }];
}

function isFindings(made: object): made is readonly Finding[] {
  return Array.isArray(made);
}
