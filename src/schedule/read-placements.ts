/** Rows of a placement list -> placements, as a job file would have them, with the cell that each value stands in. */
import type { Finding } from "../diagnostics/finding.js";
import { nearestWord } from "../diagnostics/nearest.js";
import type { Table } from "../readers/inputs.js";
import type { SourceEntry, SourceMap, SourceNode, SourcePlace } from "../readers/source.js";
import { errorAt } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import type { RowSource } from "./cell-under-column.js";
import { PLACEMENTS_TABLE } from "./choose-table.js";
import { scalar } from "./grammar/index.js";
import { meantTable } from "./meant-table.js";
import type { CellPart, CellReading, FoundTable, TableAnswers } from "./model.js";
import type { PlacementHeading } from "./placement-headings.js";
import { PLACEMENT_HEADINGS, placementHeadingOf } from "./placement-headings.js";
import { readColumns } from "./read-columns.js";
import type { Resolution } from "./references.js";
import { References } from "./references.js";
import type { KnownRow } from "./row-kinds.js";
import { placementMeaningsOf, settlePlacements } from "./settle-placements.js";
import type { SettledColumn } from "./settled-column.js";
import { headingText, placeOfHeading } from "./settled-column.js";
import type { CellReader, SheetCell } from "./sheet-cell.js";
import type { TakenLength } from "./stated-unit.js";
import { statedUnitFaults } from "./stated-unit.js";
import { tableRow } from "./table-rows.js";
import { unusedFindings } from "./unused-findings.js";
import { UsedAnswers } from "./used-answers.js";

/** The placements of a list; those of faulty cells are left in, so that the other faults are told too. */
export interface PlacementList {
  readonly placements: readonly SourceNode[];
  readonly findings: readonly Finding[];
  /** The heading under which a key of a placement stands. */
  readonly headingOf: (path: readonly PropertyKey[]) => string | null;
}

/** Most bases of one plan. */
export const MOST_PLACEMENTS = 10_000;

/** Reads a placement list: one row is one placement. */
export function readPlacements(
  sheets: readonly Table[],
  file: string,
  unit: Unit,
  answers: TableAnswers,
  answersAt: Finding["at"] | null = null,
): PlacementList {
  const known = (words: string, group: string) => placementMeaningsOf(words, group).length > 0;
  const meant = meantTable(sheets, file, answers, PLACEMENTS_TABLE, known);
  if (meant.kind === "none") return { placements: [], findings: [meant.finding], headingOf: placementHeadingOf };
  const { table } = meant.found;
  const used = new UsedAnswers(answers);
  const context = { file, unit, ...(answersAt === null ? {} : { answersAt }) };
  const settled = settlePlacements(table, answers, context);
  const rows = knownRows({ table, columns: readColumns(settled.columns, unit), file, answers: used, unit });
  if (rows.length > MOST_PLACEMENTS) return tooManyRows(rows, file);
  const references = new References(rows, used);
  const read = rows.map((row, index) => toPlacement(row, index, references));
  const stated = statedUnitFaults({ table, lengths: rows.flatMap(lengthsOf), answers: used, file, unit });
  const unused = unusedFindings(used, table, answersAt ?? { file });
  return {
    placements: read.map(({ placement }) => placement),
    findings: [
      ...meant.findings,
      ...(meant.found.sheet.remarks ?? []),
      ...settled.findings,
      ...misspelt(settled.columns, table, file),
      ...read.flatMap(({ findings }) => findings),
      ...stated,
      ...unused,
    ],
    headingOf: placementHeadingOf,
  };
}

/** A placement has no note to keep a column in: one that is nearly one of ours is asked about. */
function misspelt(
  columns: readonly SettledColumn<PlacementHeading>[],
  table: FoundTable,
  file: string,
): readonly Finding[] {
  const names = PLACEMENT_HEADINGS.map(({ name }) => name);
  return columns.flatMap(({ column, as, how }): Finding[] => {
    const near = as === "left out" && !how.includes("by the job") ? nearestWord(column.words, names) : undefined;
    if (near === undefined) return [];
    const heading = JSON.stringify(headingText(column));
    const message = `${heading} is not a known heading, and a placement keeps no notes; is it ${near}?`;
    const hint = `answer in the job: columns: { ${heading}: ${near} }, or columns: { ${heading}: left out }`;
    return [errorAt(placeOfHeading(file, table, column), "asked-heading", message, hint)];
  });
}

function tooManyRows(rows: readonly KnownRow[], file: string): PlacementList {
  const { line = 1 } = rows[MOST_PLACEMENTS]?.place ?? {};
  const message = `the sheet has more than ${MOST_PLACEMENTS} rows that hold something; at most ${MOST_PLACEMENTS} are read`;
  const finding = errorAt({ file, line, column: 1 }, "too-many-rows", message);
  return { placements: [], findings: [finding], headingOf: placementHeadingOf };
}

/** Every row is a placement of its own. */
function knownRows(source: RowSource): readonly KnownRow[] {
  return source.table.rows.flatMap((_, index): KnownRow[] => {
    const row = tableRow(index, source);
    return row === null ? [] : [{ ...row, kind: "base", marks: [], markCell: null }];
  });
}

/** Offsets and what else is a length; an elevation says its own unit. */
function lengthsOf({ cells }: KnownRow): readonly TakenLength[] {
  return cells.flatMap((from): TakenLength[] => {
    const parts = from.reading?.kind === "value" ? from.reading.parts : [];
    return parts.filter(({ key }) => /^(?:offset|near)\./.test(key)).map(({ node }) => ({ node, from }));
  });
}

type Values = ReadonlyMap<string, SourceNode>;

interface ReadPlacement {
  readonly placement: SourceMap;
  readonly findings: readonly Finding[];
}

function toPlacement(row: KnownRow, index: number, references: References): ReadPlacement {
  const { place } = row;
  const read = row.cells.map((cell) => placementCell(cell, index, references));
  const values: Values = new Map(read.flatMap(({ part }) => (part === null ? [] : [[part.key, part.node]])));
  const { at, findings } = crossing(values, place);
  const written: Readonly<Record<string, SourceNode | undefined>> = {
    base: values.get("base"),
    at,
    offset: pointOf(values, "offset", place),
    near: pointOf(values, "near", place),
    turn: values.get("turn"),
    topOfConcrete: values.get("topOfConcrete"),
    bottomOfPlate: values.get("bottomOfPlate"),
    hand: values.get("hand"),
    delivery: values.get("delivery"),
  };
  const entries = Object.entries(written).flatMap(([key, value]): SourceEntry[] =>
    value === undefined ? [] : [{ key, place: value.place, value }],
  );
  const faults = read.flatMap(({ fault }) => (fault === null ? [] : [fault]));
  return { placement: { kind: "map", entries, place }, findings: [...faults, ...findings] };
}

interface PlacementCell {
  readonly part: CellPart | null;
  readonly fault: Finding | null;
}

/** One value, or the text in its place with what is wrong with it. */
function placementCell(cell: SheetCell, row: number, references: References): PlacementCell {
  const { role } = cell.column;
  if (role.kind !== "value") return { part: null, fault: null };
  const reading =
    cell.reading?.kind === "reference" ? followed(cell, role.read, references.resolve(row, cell)) : cell.reading;
  if (reading === null || reading.kind === "blank") return { part: null, fault: null };
  const [part] = reading.kind === "value" ? reading.parts : [];
  if (part !== undefined) return { part, fault: null };
  const message =
    reading.kind === "fault" || reading.kind === "choice" ? reading.message : `"${cell.text}" gives no value`;
  const standIn = { key: role.key, node: scalar(cell.text, cell.place) };
  return { part: standIn, fault: errorAt(cell.place, "cell-fault", message) };
}

function followed(cell: SheetCell, read: CellReader, found: Resolution): CellReading {
  switch (found.kind) {
    case "text":
      return read(found.text, cell.place);
    case "note":
      return typeof found.answer === "string"
        ? read(found.answer, cell.place)
        : { kind: "fault", message: `note ${found.note} gives texts by headings; allowed is one text` };
    case "open note":
      return {
        kind: "fault",
        message: `"${cell.text}" leaves the value to note ${found.note}; allowed is the value, or an answer in the job: notes: { "${found.note}": TEXT }`,
      };
    case "fault":
      return found;
  }
}

interface ReadCrossing {
  readonly at: SourceNode | undefined;
  readonly findings: readonly Finding[];
}

/** Grid, or Line 1 and Line 2: one of the two ways. */
function crossing(values: Values, place: SourcePlace): ReadCrossing {
  const [whole, first, second] = [values.get("at"), values.get("line1"), values.get("line2")];
  const either = first ?? second;
  if (either === undefined) return { at: whole, findings: [] };
  if (whole !== undefined) {
    const message = "is given beside Grid; allowed is Grid, or Line 1 and Line 2";
    return { at: whole, findings: [errorAt(either.place, "crossing-twice", message)] };
  }
  if (first !== undefined && second !== undefined) return { at: listOf([listOf([first, second])]), findings: [] };
  const [written, lacks] = first === undefined ? ["Line 2", "Line 1"] : ["Line 1", "Line 2"];
  const message = `has ${written} without ${lacks}; allowed are both, or Grid`;
  const { file, line, column, label } = place;
  const blank = { file, line, column, label: `${label ?? ""} Line 1` };
  return { at: undefined, findings: [errorAt(blank, "cell-fault", message)] };
}

/** A column of two: what one of them leaves blank is 0. */
function pointOf(values: Values, key: "offset" | "near", place: SourcePlace): SourceNode | undefined {
  const [x, y] = [values.get(`${key}.x`), values.get(`${key}.y`)];
  return x === undefined && y === undefined ? undefined : listOf([x ?? scalar("0", place), y ?? scalar("0", place)]);
}

function listOf(items: readonly SourceNode[]): SourceNode {
  return { kind: "list", items, place: items[0]?.place ?? { file: "", line: 1, column: 1 } };
}
