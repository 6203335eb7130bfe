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
import type { SharedTemplate } from "./share/model.js";

/**
 * The plate of a base's template. Shapes that cannot be (an outline that crosses itself, corners without room) are
 * findings; holes in each other's way or past the edge are not: the checks hold the base for those. `shape`: that of
 * `makePlateShape` for the same base, where it was made before.
 */
export function makePlate(job: Job, base: Base, rods: readonly PlacedRod[], shape?: PlateShape): Outcome<Plate> {
  const made = shape ?? makeShape(job, base, rods);
  if (isFindings(made)) return { ok: false, findings: made };
  return { ok: true, value: assemble(job, base, rods, made), findings: [] };
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
  const faults = [...holeFaults(job, base, outline.contour), ...openingFaults(job, base, openings, outline.contour)];
  return faults.length > 0 ? faults : { outline, openings };
}

/** An automatic opening gives way to marks: to the piece mark altogether, to tags and TOP as long as a hand still passes. */
function assemble(job: Job, base: Base, rods: readonly PlacedRod[], { outline, openings }: PlateShape): Plate {
  const moved = movedRods(base, rods, outline.contour);
  const plateWith = (shrunk: Openings) => plateOf(job, base, rods, outline, shrunk, moved);
  const plate = plateWith(openings);
  if (!lacks(plate, ...ESSENTIAL)) return plate;
  const smaller = smallerOpenings(job, base, openings);
  const whole = firstThat(
    smaller.map((each) => () => plateWith(each)),
    (made) => !lacks(made, ...ESSENTIAL),
  );
  if (whole !== null || !lacks(plate, "mark") || openings.openings.length === 0) return whole ?? plate;
  if (base.template.opening.kind !== "auto" || base.template.outline.kind === "ring") return plate;
  const candidates = [...smaller, NO_OPENING].map((each) => () => plateWith(each));
  return firstThat(candidates, (made) => !lacks(made, "mark")) ?? plate;
}

/** Marks without which a plate is set wrong or not known. */
const ESSENTIAL: readonly MarkKind[] = ["mark", "tag", "top"];

function lacks({ omitted }: Plate, ...kinds: readonly MarkKind[]): boolean {
  return omitted.some(({ kind }) => kinds.includes(kind));
}

/** The first plate that passes, where the last does and every one after a passing one does too; null where the last does not. */
function firstThat(makers: readonly (() => Plate)[], passes: (plate: Plate) => boolean): Plate | null {
  let found = makers.at(-1)?.() ?? null;
  if (found === null || !passes(found)) return null;
  let [least, most] = [-1, makers.length - 1];
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2);
    const plate: Plate = makers[middle]?.() ?? found;
    if (passes(plate)) [most, found] = [middle, plate];
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
    thickness: template.thickness,
    outlineKind: outer.kind,
    region: { outer, inner: holes.filter(({ made }) => made === "cut").map(({ contour }) => contour) },
    holes,
    ...layOutMarks(job, base, rods, { outer, keyed }, holes),
    keyed,
    wrong: judgeOutline(moved, outer),
    sized: [...sizedAs("outline", outline.sized), ...sizedAs("opening", sized)],
  };
}

function sizedAs(what: SizedPart, how: string | null): Plate["sized"] {
  return how === null ? [] : [{ what, how }];
}

function isFindings(made: object): made is readonly Finding[] {
  return Array.isArray(made);
}
