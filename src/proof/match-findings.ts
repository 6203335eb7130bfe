/** What differs between a cut file and the plate of the job that it is, in words. */
import { listed } from "../diagnostics/listed.js";
import type { CutFileFinding, CutFileSeverity } from "../readers/dxf.js";
import type { Unit } from "../units/index.js";
import { formatWithUnit } from "../units/index.js";
import { millimetres } from "../units/length.js";
import type { HolePair } from "./align.js";
import { type Candidate, type PatternInOutline, patternInOutline } from "./candidate.js";
import type { Choice } from "./choose.js";
import { isNamed } from "./choose.js";
import { CONTOUR_MM, DIAMETER_MM, type KnownPlate, POSITION_MM, TURN_DEGREES } from "./model.js";
import { toFile, toPlate } from "./pose.js";

/** Units of the words and of the places. */
export interface Told {
  readonly jobUnit: Unit;
  /** Millimetres to a unit of the file, the scale of the match left in. */
  readonly mm: number;
}

type Place = readonly [number, number] | null;

/** All differences from the plate that the file is taken for, which one that is first. */
export function describeMatch(choice: Choice, best: Candidate, told: Told): readonly CutFileFinding[] {
  return [
    ...identity(choice, best),
    ...wholePart(best, told),
    ...best.missing.map((index) => missingHole(best, index, told)),
    ...best.extra.map((index) => extraHole(best, index, told)),
    ...best.alignment.pairs.flatMap((pair) => pairFindings(best, pair, told)),
    ...contours(best, told),
  ];
}

function finding(code: string, severity: CutFileSeverity, message: string, at: Place = null): CutFileFinding {
  return { code, severity, message, count: 1, at };
}

/** `template T3 (base B3)`, `template T4 (bases B4, B9)`, `base plate of B3`. */
export function plateWords({ role, mark, base, bases }: Pick<KnownPlate, "role" | "mark" | "base" | "bases">): string {
  if (role === "base plate") return `base plate of ${base}`;
  if (bases.length > 1) return `template ${mark} (bases ${listed(bases, MOST_MARKS)})`;
  return mark === base ? `template ${mark}` : `template ${mark} (base ${base})`;
}

const MOST_MARKS = 8;

/** The file is no plate of the job; `shape` is a plate of the same shape in another size, where there is one. */
export function noMatch({ named }: Choice, shape: Candidate | null): CutFileFinding {
  const said = named === null ? "" : `; its name says ${named}`;
  const message = `the holes are those of no template or base plate of the job${said}`;
  if (shape === null) return finding("no-match", "stop", message);
  const near = `the nearest in shape is ${plateWords(shape.target)}, but the file is ${short(shape.scale)} times its size`;
  return finding("scaled", "stop", `${message}; ${near}`);
}

function identity({ named, instead, twins }: Choice, best: Candidate): readonly CutFileFinding[] {
  if (named !== null && !isNamed(best.target, named)) {
    const off = instead === null ? "" : `, and differ from ${plateWords(instead.target)} in ${instead.faults} points`;
    const message = `the file is named ${named}, but its holes are those of ${plateWords(best.target)}${off}`;
    return [finding("other-mark", "stop", message)];
  }
  if (twins.length === 0) return [];
  const names = [best.target, ...twins].map(plateWords).join(", ");
  return [finding("several-marks", "advise", `the file agrees with more than one plate of the job: ${names}`)];
}

const RATIO_WORDS: readonly (readonly [number, string])[] = [
  [25.4, "25.4 times too large: millimetres that are called inches, or a scale applied once too often"],
  [1 / 25.4, "25.4 times too small: inches that are called millimetres, or a scale applied once too often"],
  [12, "12 times too large: inches that are called feet, or a scale applied once too often"],
  [1 / 12, "12 times too small: feet that are called inches, or a scale applied once too often"],
];

function wholePart(best: Candidate, told: Told): readonly CutFileFinding[] {
  const { scale, alignment } = best;
  const { turn, mirrored } = alignment.pose;
  const found: CutFileFinding[] = [];
  if (scale !== 1) {
    const words = RATIO_WORDS.find(([ratio]) => ratio === scale)?.[1] ?? `drawn at ${short(scale)} times the size`;
    found.push(finding("wrong-unit", "stop", `the file is ${words}`));
  }
  const pattern = patternInOutline(best);
  if (pattern !== null) return [...found, patternFinding(best, pattern, told)];
  if (mirrored) found.push(finding("mirrored", "stop", "the file is mirrored: it shows the plate from below"));
  const least = Math.min(turn, 360 - turn);
  if (least > TURN_DEGREES) {
    const message = `the file is turned by ${short(turn)} degrees counter-clockwise${mirrored ? ", once mirrored" : ""}`;
    found.push(finding("turned", "advise", message));
  }
  return found;
}

function patternFinding({ alignment }: Candidate, { kind, turn }: PatternInOutline, told: Told): CutFileFinding {
  const gap = `they are off the plate's edge by ${lengthWords(alignment.outlineGap ?? 0, told)}`;
  switch (kind) {
    case "mirrored":
      return finding("pattern-mirrored", "stop", "the pattern of holes is mirrored in its outline");
    case "turned":
      return finding(
        "pattern-turned",
        "stop",
        `the pattern of holes is turned by ${short(turn)} degrees in its outline`,
      );
    case "shifted":
      return finding("pattern-shifted", "stop", `the holes all lie shifted in the outline: ${gap}`);
  }
}

function missingHole(best: Candidate, index: number, told: Told): CutFileFinding {
  const hole = best.target.holes[index];
  const at = hole === undefined ? null : placeInFile(best, toFile(best.alignment.pose, hole.at), told);
  const size = lengthWords(hole?.diameter ?? 0, told);
  return finding("hole-missing", "stop", `hole ${hole?.tag ?? ""} (diameter ${size}) is missing`, at);
}

function extraHole(best: Candidate, index: number, told: Told): CutFileFinding {
  const hole = best.part.holes[index];
  const at = hole === undefined ? null : placeInFile(best, hole.at, told);
  const size = lengthWords(hole?.diameter ?? 0, told);
  const message = `a hole of diameter ${size} is none of the plate's`;
  if (!isRodSized(best, hole?.diameter ?? 0))
    return finding("hole-other", "advise", `${message}, nor of its rods' size`, at);
  return finding("hole-extra", "stop", message, at);
}

/** The job knows of a base plate the holes for rods alone; grout and lifting holes are of other sizes. */
function isRodSized({ target }: Candidate, diameter: number): boolean {
  if (target.role === "template") return true;
  return target.holes.some((hole) => Math.abs(hole.diameter - diameter) <= DIAMETER_MM);
}

function pairFindings(best: Candidate, pair: HolePair, told: Told): readonly CutFileFinding[] {
  const hole = best.target.holes[pair.target];
  const drawn = best.part.holes[pair.drawn];
  if (hole === undefined || drawn === undefined) return [];
  const at = placeInFile(best, drawn.at, told);
  const found: CutFileFinding[] = [];
  if (hole.made === "drill") {
    found.push(finding("drill-cut", "stop", `hole ${hole.tag} is cut, but too small to cut: it is to be drilled`, at));
  }
  if (pair.distance > POSITION_MM) {
    const there = toPlate(best.alignment.pose, drawn.at);
    const [dx, dy] = [signedWords(there.x - hole.at.x, told), signedWords(there.y - hole.at.y, told)];
    const message = `hole ${hole.tag} is off by ${lengthWords(pair.distance, told)} (x ${dx}, y ${dy} on the plate)`;
    found.push(finding("hole-position", "stop", message, at));
  }
  if (Math.abs(pair.diameter) > DIAMETER_MM) {
    const [has, wants] = [lengthWords(drawn.diameter, told), lengthWords(hole.diameter, told)];
    found.push(finding("hole-diameter", "stop", `hole ${hole.tag} has diameter ${has}, must have ${wants}`, at));
  }
  return found;
}

function contours(best: Candidate, told: Told): readonly CutFileFinding[] {
  const { outlineGap, openingsOff } = best.alignment;
  const found: CutFileFinding[] = [];
  if (outlineGap !== null && outlineGap > CONTOUR_MM && patternInOutline(best) === null) {
    const message = `the outline strays from the plate's by up to ${lengthWords(outlineGap, told)}`;
    found.push(finding("outline-differs", "stop", message));
  }
  if (openingsOff > 0) {
    const message = "openings that are not round differ from the plate's, are missing or too many";
    found.push({ ...finding("opening-differs", "stop", message), count: openingsOff });
  }
  return found;
}

/** A place in the file's own unit: parts are held without the scale of the match. */
function placeInFile({ scale }: Candidate, { x, y }: { readonly x: number; readonly y: number }, { mm }: Told): Place {
  const round = (value: number) => Math.round(((value * scale) / mm) * 1e6) / 1e6 || 0;
  return [round(x), round(y)];
}

function lengthWords(mm: number, { jobUnit }: Told): string {
  return formatWithUnit(millimetres(mm), jobUnit);
}

function signedWords(mm: number, told: Told): string {
  return mm >= 0 ? `+${lengthWords(mm, told)}` : lengthWords(mm, told);
}

function short(value: number): string {
  return String(Number(value.toPrecision(5)));
}
