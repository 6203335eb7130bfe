/** A cut file against the plates of a job: which plate it is, how it lies on it, and where it differs. */
import { type CutFile, type CutFileFinding, millimetresPer } from "../readers/dxf.js";
import type { Unit } from "../units/index.js";
import { bestCandidate, type Candidate, sameShape } from "./candidate.js";
import { type Choice, choosePlate, platesNamed } from "./choose.js";
import { drawingOf } from "./drawn-part.js";
import { describeMatch, noMatch } from "./match-findings.js";
import { type FileMatch, type KnownPlate, MOST_HOLES } from "./model.js";

/** The plate that a file is of, null where none is, and what differs. */
export interface Matched {
  readonly match: FileMatch | null;
  readonly findings: readonly CutFileFinding[];
}

/** Matches a file with the plates of a job; `name` is its path, whose last part may hold a mark. */
export function matchFile(file: CutFile, name: string, targets: readonly KnownPlate[], jobUnit: Unit): Matched {
  if (file.outline === null) return { match: null, findings: [] };
  const many = tooMany(file);
  if (many !== null) return { match: null, findings: [many] };
  const drawing = drawingOf(file);
  const mm = millimetresPer(file.unit ?? jobUnit);
  const choiceOf = (plates: readonly KnownPlate[]): Choice =>
    choosePlate(
      plates.map((target) => bestCandidate(drawing, mm, target)).filter((each) => each !== null),
      name,
    );
  const own = choiceOf(platesNamed(name, targets));
  // where the plate that the name says agrees in all it is taken, whatever the others are
  const choice = own.best?.faults === 0 ? own : choiceOf(targets);
  if (choice.best === null) {
    const shapes = targets.map((target) => sameShape(drawing, mm, target)).filter((each) => each !== null);
    return { match: null, findings: [noMatch(choice, shapes[0] ?? null)] };
  }
  return { match: matchOf(choice.best, mm), findings: describeMatch(choice, choice.best, { jobUnit, mm }) };
}

/** A file with so many holes or openings is laid on no plate. */
function tooMany({ holes, openings }: CutFile): CutFileFinding | null {
  const [what, count] =
    holes.length > MOST_HOLES ? (["round holes", holes.length] as const) : (["openings", openings.length] as const);
  if (count <= MOST_HOLES) return null;
  const message = `the file has ${count} ${what}; at most ${MOST_HOLES} are matched with a job`;
  return { code: "too-many-holes", severity: "stop", message, count: 1, at: null };
}

function matchOf({ target, scale, alignment, missing, extra }: Candidate, mm: number): FileMatch {
  const { pose, pairs } = alignment;
  const worst = (values: readonly number[]) => rounded(values.reduce((most, value) => Math.max(most, value), 0) / mm);
  return {
    mark: target.mark,
    base: target.base,
    bases: target.bases,
    role: target.role,
    turn: rounded(pose.turn),
    mirrored: pose.mirrored,
    scale: rounded(scale),
    positionError: worst(pairs.map(({ distance }) => distance)),
    diameterError: worst(pairs.map(({ diameter }) => Math.abs(diameter))),
    missing: missing.length,
    extra: extra.length,
  };
}

/** To 1e-6, as the lengths of summary.json in inches. */
function rounded(value: number): number {
  return Math.round(value * 1e6) / 1e6 || 0;
}
