/** From a base and its rods to a plate that can be cut. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { Contour } from "../geometry/index.js";
import type { Base, Job } from "../job/model/job.js";
import { judgeOutline, movedRods } from "../orientation/index.js";
import type { OutlinedBase, PlacedRod } from "../rods/index.js";
import { makeHoles } from "./holes.js";
import { keyOutline } from "./key/key-outline.js";
import { layOutMarks } from "./marks/lay-out-marks.js";
import type { Plate } from "./model.js";
import type { Openings } from "./openings.js";
import { makeOpenings, openingFaults } from "./openings.js";
import { makeOutline } from "./outline.js";
import type { Outline } from "./outline-model.js";

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
  const faults = openingFaults(job, base, openings, outline.contour);
  return faults.length > 0 ? faults : { outline, openings };
}

function assemble(job: Job, base: Base, rods: readonly PlacedRod[], shape: PlateShape): Plate {
  const { template } = base;
  const { outline } = shape;
  const { openings, sized } = shape.openings;
  const moved = movedRods(base, rods, outline.contour);
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

function sizedAs(what: string, how: string | null): Plate["sized"] {
  return how === null ? [] : [{ what, how }];
}

function isFindings(made: object): made is readonly Finding[] {
  return Array.isArray(made);
}
