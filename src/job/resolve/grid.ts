/** The grid as written -> its lines, in the order x, y, others. */
import type { Length, Unit } from "../../units/index.js";
import { FARTHEST_POINT, NM_PER_MM, nanometres } from "../../units/index.js";
import type { DocumentPath, SourceDocument, WithFindings } from "../document.js";
import { placeOf } from "../document.js";
import type { GridLine } from "../model/plan.js";
import type { AxisDocument, GridDocument, OtherLineDocument } from "../schema/plan.js";
import { farWords, PlanReport } from "./plan-report.js";

/** Most lines of a grid. */
const MOST_LINES = 2000;

interface NamedLine {
  readonly line: GridLine;
  readonly path: DocumentPath;
}

/** The lines of a grid with its faults. */
export function resolveGrid(
  grid: GridDocument,
  document: SourceDocument,
  unit: Unit,
): WithFindings<readonly GridLine[]> {
  const report = new PlanReport(unit);
  const named = [
    ...axisLines("x", grid.x, document, report),
    ...axisLines("y", grid.y, document, report),
    ...(grid.others ?? []).flatMap((line, index) => otherLine(line, ["others", index], document, report)),
  ];
  const isTooFar = report.findings.some(({ code }) => code === "too-far");
  if (named.length < 2 && !isTooFar)
    report.fault(document, [], "no-lines", "has fewer than two lines; allowed are two or more");
  if (named.length > MOST_LINES)
    report.fault(document, [], "too-many-lines", `has ${named.length} lines; at most ${MOST_LINES} are allowed`);
  judgeNames(named, document, report);
  return { value: named.map(({ line }) => line), findings: report.findings };
}

function axisLines(
  axis: "x" | "y",
  written: AxisDocument | undefined,
  document: SourceDocument,
  report: PlanReport,
): NamedLine[] {
  if (written === undefined) return [];
  const positions = positionsOf(written, axis, document, report);
  if (positions === null) return [];
  judgePositions(positions, axis, written, document, report);
  return written.names.flatMap((name, index): NamedLine[] => {
    const at = positions[index];
    return at === undefined ? [] : [{ line: { kind: axis, name, at }, path: [axis, "names", index] }];
  });
}

/** By `at`, or by `spacing` from `from`; null where neither fits the names. */
function positionsOf(
  { names, at, spacing, from }: AxisDocument,
  axis: "x" | "y",
  document: SourceDocument,
  report: PlanReport,
): readonly Length[] | null {
  const fault = (key: string, message: string) => report.fault(document, [axis, key], "grid-length", message);
  if (names.length === 0) fault("names", "is an empty list; allowed is one name or more");
  if (at !== undefined) {
    for (const [key, value] of Object.entries({ spacing, from }))
      if (value !== undefined) fault(key, "is given beside at; allowed is at, or spacing and from");
    if (at.length !== names.length)
      fault("at", `gives ${at.length} positions for ${names.length} names; allowed is one a name`);
    return at.length === names.length ? withinReach(at, { names, axis, key: "at" }, document, report) : null;
  }
  const steps = spacingsOf(spacing, names.length);
  if (steps.length !== names.length - 1 && names.length > 0) {
    const allowed = `allowed is one less than the names: ${names.length - 1}`;
    if (spacing === undefined) fault("spacing", `is required for ${names.length} names; ${allowed}, or at`);
    else fault("spacing", `gives ${steps.length} spacings for ${names.length} names; ${allowed}`);
    return null;
  }
  let position = Number(from ?? 0);
  const positions = [position, ...steps.map((step) => (position += step))];
  return withinReach(positions, { names, axis, key: "spacing" }, document, report);
}

/** Positions in nanometres that may have left the lattice; null, and the first line told, where one lies too far out. */
function withinReach(
  positions: readonly number[],
  { names, axis, key }: { readonly names: readonly string[]; readonly axis: "x" | "y"; readonly key: "at" | "spacing" },
  document: SourceDocument,
  report: PlanReport,
): readonly Length[] | null {
  const far = positions.findIndex((position) => Math.abs(position) > FARTHEST_POINT * NM_PER_MM);
  if (far < 0) return positions.map(nanometres);
  const path = key === "at" ? [axis, key, far] : [axis, key];
  const away = farWords(Math.abs(positions[far] ?? 0), "plan 0,0");
  report.fault(document, path, "too-far", `puts line ${names[far]} ${away}`);
  return null;
}

/** One spacing written alone, and not as a list, holds from line to line. */
function spacingsOf(spacing: AxisDocument["spacing"], names: number): readonly Length[] {
  if (spacing === undefined) return [];
  const [first] = spacing;
  if (Array.isArray(first)) return spacing.flat();
  const alone = spacing as readonly Length[];
  return alone.length === 1 ? Array.from({ length: Math.max(0, names - 1) }, () => alone[0] ?? nanometres(0)) : alone;
}

/** Two lines of one axis at one position would be one line with two names. */
function judgePositions(
  positions: readonly Length[],
  axis: "x" | "y",
  { names, at }: AxisDocument,
  document: SourceDocument,
  report: PlanReport,
): void {
  const first = new Map<Length, number>();
  positions.forEach((position, index) => {
    const earlier = first.get(position);
    if (earlier === undefined) first.set(position, index);
    else {
      const message = `line ${names[index]} lies where line ${names[earlier]} does; allowed are lines that differ`;
      report.fault(document, at === undefined ? [axis, "spacing"] : [axis, "at", index], "coincident-lines", message);
    }
  });
}

function otherLine(
  written: OtherLineDocument,
  path: DocumentPath,
  document: SourceDocument,
  report: PlanReport,
): NamedLine[] {
  const named = (line: GridLine): NamedLine[] => [{ line, path: [...path, "name"] }];
  const offset = ([x, y]: readonly [Length, Length]) => ({ x, y });
  const { name } = written;
  switch (written.kind) {
    case "skewed":
      return named({ kind: "skewed", name, through: offset(written.through), degrees: written.degrees });
    case "radial":
      return named({ kind: "radial", name, center: offset(written.center), degrees: written.degrees });
    case "arc":
      if (written.radius <= 0)
        report.fault(document, [...path, "radius"], "bad-value", `${report.show(written.radius)} is not above zero`);
      return written.radius <= 0
        ? []
        : named({ kind: "arc", name, center: offset(written.center), radius: written.radius });
  }
}

/** Placements name lines: every name of the whole grid is used once. */
function judgeNames(named: readonly NamedLine[], document: SourceDocument, report: PlanReport): void {
  const first = new Map<string, DocumentPath>();
  for (const { line, path } of named) {
    const earlier = first.get(line.name);
    if (earlier === undefined) first.set(line.name, path);
    else {
      const { file, line: row, column } = placeOf(document, earlier);
      const message = `the line "${line.name}" is named twice; first at ${file}:${row}:${column}; every line has its own name`;
      report.fault(document, path, "line-twice", message);
    }
  }
}
