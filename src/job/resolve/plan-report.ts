/** How the parts of a plan are read: their faults with their places, and the crossings that a text names. */
import type { Finding } from "../../diagnostics/finding.js";
import { editDistance } from "../../diagnostics/nearest.js";
import type { Unit } from "../../units/index.js";
import { FARTHEST_POINT, formatLength, formatWithUnit, NM_PER_MM } from "../../units/index.js";
import type { DocumentPath, SourceDocument } from "../document.js";
import { faultAt } from "../document.js";
import type { GridLine } from "../model/plan.js";

/** Collects the faults of one part of a plan, with their places. */
export class PlanReport {
  readonly findings: Finding[] = [];

  constructor(readonly unit: Unit) {}

  /** Adds an error at a path of a document. */
  fault(document: SourceDocument, path: DocumentPath, code: string, message: string, hint?: string): void {
    this.findings.push(faultAt(document, path, code, message, hint));
  }

  /** A length in the job's unit. */
  show(length: number): string {
    return formatWithUnit(length, this.unit);
  }

  /** A plan point in millimetres as `[x, y]` in the job's unit. */
  showPoint({ x, y }: { readonly x: number; readonly y: number }): string {
    const show = (mm: number) => formatLength(Math.round(mm * 1e6), this.unit);
    return `[${show(x)}, ${show(y)}] ${this.unit}`;
  }
}

/** `4495.0 km from CP1; allowed are 100 km`, of a distance in nanometres, however large. */
export function farWords(nm: number, from: string): string {
  const most = FARTHEST_POINT / 1e6;
  const km = (nm / NM_PER_MM / 1e6).toFixed(1);
  return `${Number(km) > most ? km : `a little more than ${most}`} km from ${from}; allowed are ${most} km`;
}

/** Grid lines by their names. */
export type Lines = ReadonlyMap<string, GridLine>;

/** The two lines that a text names, or what is wrong with it. */
export type CrossingReading =
  | { readonly ok: true; readonly lines: readonly [string, string] }
  | { readonly ok: false; readonly message: string; readonly hint?: string };

/** `A-1`, also `A/1`, `A, 1`, and `A1` where A and 1 are lines and A1 is none. A name may hold a hyphen itself, as long as only one reading names two lines. */
export function readCrossing(text: string, lines: Lines): CrossingReading {
  const splits = [...splitsOf(text), ...joinedSplits(text, lines)];
  const known = splits.filter((pair) => pair.every((name) => lines.has(name)));
  const [only, other] = known;
  if (only !== undefined && other === undefined) return { ok: true, lines: only };
  if (only !== undefined && other !== undefined) {
    const [one, two] = [only, other].map(([a, b]) => `${a} and ${b}`);
    return {
      ok: false,
      message: `"${text}" may be ${one}, or ${two}; allowed is [${only.join(", ")}], which is plain`,
    };
  }
  const half = splits.find((pair) => pair.some((name) => lines.has(name))) ?? splits.at(-1);
  if (half === undefined)
    return { ok: false, message: `"${text}" names no crossing; allowed are two grid lines, as A-1` };
  const unknown = half.filter((name) => !lines.has(name));
  return noLine(unknown[0] ?? text, lines);
}

function splitsOf(text: string): (readonly [string, string])[] {
  return [...text].flatMap((sign, at) => {
    const pair = [text.slice(0, at).trim(), text.slice(at + 1).trim()] as const;
    return /[-/,]/.test(sign) && pair[0] !== "" && pair[1] !== "" ? [pair] : [];
  });
}

/** `A1`, `B 2`: a letter beside a figure, where that gives two lines. */
function joinedSplits(text: string, lines: Lines): (readonly [string, string])[] {
  const whole = text.trim();
  if (lines.has(whole)) return [];
  return [...whole.matchAll(/\S/gu)]
    .map(({ index }) => [whole.slice(0, index).trim(), whole.slice(index)] as const)
    .filter(([one, other]) => /\p{L}$/u.test(one) !== /^\p{L}/u.test(other) && /[\p{L}\p{N}]$/u.test(one))
    .filter(([one, other]) => /^[\p{L}\p{N}]/u.test(other) && lines.has(one) && lines.has(other));
}

/** A line that does not exist, with the nearest that do. */
export function noLine(
  name: string,
  lines: Lines,
): { readonly ok: false; readonly message: string; readonly hint?: string } {
  const near = nearestLines(name, [...lines.keys()]);
  const hint = near.length === 0 ? {} : { hint: `nearest: ${near.join(", ")}` };
  return { ok: false, message: `there is no grid line "${name}"; allowed are the names in grid`, ...hint };
}

/** The two nearest names: by value for numbers, else by spelling and then by the alphabet. */
function nearestLines(name: string, names: readonly string[]): string[] {
  const ranked = names.map((known) => ({ known, far: farness(name, known) }));
  return ranked
    .sort((a, b) => a.far[0] - b.far[0] || a.far[1] - b.far[1])
    .slice(0, 2)
    .map(({ known }) => known);
}

function farness(name: string, known: string): readonly [number, number] {
  if (/^\d{1,6}$/.test(name) && /^\d{1,6}$/.test(known)) return [0, Math.abs(Number(name) - Number(known))];
  const letters = Math.abs((name.toUpperCase().codePointAt(0) ?? 0) - (known.toUpperCase().codePointAt(0) ?? 0));
  return [editDistance(name.toUpperCase(), known.toUpperCase()), letters];
}
