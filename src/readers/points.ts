/**
 * The surveyor's file: CSV with or without a heading, northing or easting first, metre, millimetre or either foot. What is
 * nowhere told is asked for, never guessed.
 */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { Reading, SurveyUnit } from "../units/index.js";
import { parseFarCoordinate } from "../units/index.js";
import type { Length } from "../units/length.js";
import { readCsv } from "./csv.js";
import type { Cell } from "./inputs.js";
import type { PointOrder, PointsFile, PointsOptions, SurveyedPoint, Told } from "./points-model.js";
import type { Clues, Columns } from "./points-name.js";
import { cluesOfName, readHeading } from "./points-name.js";

/** Reads a file of points; all faults at once, each with line and column. */
export function readPoints(input: string | Uint8Array, file: string, options: PointsOptions): Outcome<PointsFile> {
  const table = readCsv(input, file);
  if (!table.ok) return table;
  const rows = table.value.rows.filter((row) => row.some(({ text }) => text !== ""));
  const first = rows[0];
  if (first === undefined) return { ok: false, findings: [fault(file, "points-empty", "has no points")] };
  const heading = readHeading(first);
  const name = cluesOfName(file);
  const findings: Finding[] = [];
  const order = tell<PointOrder>(options.order, name.orders, heading?.clues.orders ?? [], options.jobOrder);
  const unit = tell<SurveyUnit>(options.unit, name.units, heading?.clues.units ?? [], null);
  if (order === null) findings.push(orderFault(file, name, heading?.clues ?? null));
  if (unit === null) findings.push(unitFault(file, name, heading?.clues ?? null));
  const columns = columnsOf(heading?.columns ?? null, order?.value ?? "PNEZD");
  if (columns === null) findings.push(headingFault(file, first));
  if (order === null || unit === null || columns === null) return { ok: false, findings };
  const body = heading === null ? rows : rows.slice(1);
  const points = body.flatMap((row) => readPoint(row, columns, unit.value, file, findings));
  if (body.length === 0) findings.push(fault(file, "points-empty", "has a heading and no points"));
  if (findings.length > 0) return { ok: false, findings };
  return { ok: true, value: { file, order, unit, headed: heading !== null, points }, findings };
}

/** The option goes before everything; name and heading must agree; the job's own comes last. */
function tell<T>(option: T | null, name: readonly T[], heading: readonly T[], job: T | null): Told<T> | null {
  if (option !== null) return { value: option, by: "option" };
  const told = [...new Set([...heading, ...name])];
  const value = told[0];
  if (told.length > 1) return null;
  if (value !== undefined) return { value, by: heading.length > 0 ? "heading" : "file name" };
  return job === null ? null : { value: job, by: "job" };
}

/** A heading's own columns, except that an option may turn northing and easting round; else point, two coordinates, ... */
function columnsOf(heading: Columns | null, order: PointOrder): Columns | null {
  const [first, second] = [heading?.northing ?? null, heading?.easting ?? null];
  if (heading === null) {
    const [northing, easting] = order === "PNEZD" ? [1, 2] : [2, 1];
    return { name: 0, northing, easting, elevation: 3, description: 4 };
  }
  if (first === null || second === null) return null;
  const [low, high] = [Math.min(first, second), Math.max(first, second)];
  const [northing, easting] = order === "PNEZD" ? [low, high] : [high, low];
  return { ...heading, northing, easting };
}

function readPoint(
  row: readonly Cell[],
  { name, northing, easting, elevation, description }: Columns,
  unit: SurveyUnit,
  file: string,
  findings: Finding[],
): readonly SurveyedPoint[] {
  const line = row[0]?.line ?? 1;
  const textAt = (column: number | null): string => (column === null ? "" : (row[column]?.text ?? ""));
  const read = (column: number | null, what: string): Length | null => {
    const reading: Reading<Length> = parseFarCoordinate(textAt(column), unit);
    if (reading.ok) return reading.value;
    const at = { file, line, column: (column ?? 0) + 1 };
    const message = textAt(column) === "" ? `has no ${what}; allowed is a number` : reading.message;
    findings.push({ code: "points-number", severity: "error", at: { ...at, path: what }, message });
    return null;
  };
  const north = read(northing, "northing");
  const east = read(easting, "easting");
  const high = textAt(elevation) === "" ? null : read(elevation, "elevation");
  if (north === null || east === null) return [];
  return [
    {
      name: textAt(name),
      northing: north,
      easting: east,
      elevation: high,
      description: textAt(description),
      line,
    },
  ];
}

function fault(file: string, code: string, message: string, hint?: string): Finding {
  return { code, severity: "error", at: { file }, message, ...(hint === undefined ? {} : { hint }) };
}

function orderFault(file: string, name: Clues, heading: Clues | null): Finding {
  const told = [...new Set([...name.orders, ...(heading?.orders ?? [])])];
  const message =
    told.length > 1
      ? `its name and its heading contradict each other: ${told.join(" and ")}`
      : "it is nowhere told whether northing or easting comes first";
  return fault(file, "points-order", message, "--order PNEZD or --order PENZD");
}

function unitFault(file: string, name: Clues, heading: Clues | null): Finding {
  const told = [...new Set([...name.units, ...(heading?.units ?? [])])];
  const foot = name.foot || heading?.foot === true;
  const message =
    told.length > 1
      ? `its name and its heading contradict each other: ${told.join(" and ")}`
      : foot
        ? "ft alone does not tell the international foot from the US survey foot"
        : "the unit of its coordinates is nowhere told: ask the surveyor";
  return fault(file, "points-unit", message, foot ? "--unit ft or --unit ft-us" : "--unit m, mm, ft or ft-us");
}

function headingFault(file: string, row: readonly Cell[]): Finding {
  const message = `its heading ${JSON.stringify(row.map(({ text }) => text).join(","))} names no northing and easting; allowed are northing and easting, N and E`;
  return { code: "points-heading", severity: "error", at: { file, line: row[0]?.line ?? 1, column: 1 }, message };
}
