/** Which of the tables that were found is meant: the one that is named, the only one that can be, or a question. */
import { nearestWord } from "../diagnostics/nearest.js";
import type { FoundTable, ReadQuestion, TableAnswers } from "./model.js";
import { plainText } from "./sheet-words.js";

/** A kind of table that a job asks for. */
export interface TableKind {
  /** Key of the job file that names it. */
  readonly key: "schedule" | "placements";
  /** What its columns are, in words. */
  readonly wanted: string;
  readonly isMeant: (table: FoundTable) => boolean;
  /** True for what is surely another kind: taken only where it is named. */
  readonly isOther: (table: FoundTable) => boolean;
}

/** The table that is meant, a question which one it is, or why there is none. */
export type TableChoice<T> =
  | { readonly kind: "one"; readonly found: T }
  | { readonly kind: "asked"; readonly question: ReadQuestion }
  | { readonly kind: "none"; readonly message: string; readonly hint: string };

const RODS =
  /\b(?:rods?|bolts?|anchors?|a\.?b\.?|embed(?:ment)?|proj(?:ection)?|dia(?:m|meter)?)\b|[\u00d8\u00f8\u2300]/i;
const PATTERN =
  /\b(?:pattern|spacings?|gages?|gauges?|pitch|bolt circle|b\.?c\.?)\b|^(?:overall |lines )?[xy]$|^n[xy]$/i;
const PLATE = /\b(?:base ?plates?|plates?|pls?|bp)\b/i;
const ELEVATION =
  /\b(?:top|bottom|bot)\.? of\b|\bt\.?\s?o\.?\s?c\b|\bb\.?\s?o\.?\s?p\b|\bt\.?\s?o\.? |\bb\.?\s?o\.? |\belev(?:ation)?\b|\bel\b/i;
const GRID = /\b(?:grids?|gridlines?|location|crossing|(?:first|second|column|row) line|line [12])\b|^at$/i;
const BARS = /\b(?:bars?|rebars?|reinf\w*|ties|stirrups?|dowels?|camber|studs?)\b/i;

function textsOf({ columns }: FoundTable): readonly string[] {
  return columns.map(({ words, group }) => `${group} ${words}`.trim());
}

function isOfBases(table: FoundTable): boolean {
  return textsOf(table).some(
    (text) => !ELEVATION.test(text) && !BARS.test(text) && [RODS, PATTERN, PLATE].some((part) => part.test(text)),
  );
}

function isOfPlaces(table: FoundTable): boolean {
  return textsOf(table).some((text) => GRID.test(text) || ELEVATION.test(text));
}

/** The schedule of bases: marks and rods, their pattern, or base plates. */
export const SCHEDULE_TABLE: TableKind = {
  key: "schedule",
  wanted: "marks and rods, their pattern or base plates",
  isMeant: isOfBases,
  isOther: isOfPlaces,
};

/** The list of placements: marks and grid crossings or elevations, and no rods. */
export const PLACEMENTS_TABLE: TableKind = {
  key: "placements",
  wanted: "marks and grid crossings",
  isMeant: (table) => textsOf(table).some((text) => GRID.test(text)) && !isOfBases(table),
  isOther: (table) => !textsOf(table).some((text) => GRID.test(text)),
};

interface Found {
  readonly table: FoundTable;
}

/** Chooses among the tables of all sheets; `answers` are what the job says. */
export function chooseTable<T extends Found>(
  found: readonly T[],
  answers: Pick<TableAnswers, "sheet" | "table">,
  kind: TableKind,
): TableChoice<T> {
  const named = found.filter(({ table }) => isNamed(table, answers));
  const [first, ...others] = named;
  if (first === undefined) return noneNamed(found, answers, kind);
  if (others.length === 0 && (answers.sheet !== undefined || answers.table !== undefined))
    return { kind: "one", found: first };
  const meant = named.filter(({ table }) => kind.isMeant(table));
  const possible = meant.length > 0 ? meant : named.filter(({ table }) => !kind.isOther(table));
  const [only, ...rivals] = possible.length > 0 || answers.sheet === undefined ? possible : named;
  if (only === undefined) return noneMeant(named, kind);
  return rivals.length === 0
    ? { kind: "one", found: only }
    : { kind: "asked", question: askWhich([only, ...rivals], named, kind) };
}

function isNamed(table: FoundTable, { sheet, table: place }: Pick<TableAnswers, "sheet" | "table">): boolean {
  if (sheet !== undefined && plainName(sheet) !== plainName(table.sheet)) return false;
  if (place === undefined) return true;
  const [wanted = "", way] = place.toUpperCase().replace(/^.*!/, "").trim().split(/\s+/);
  return wanted === table.upperLeft && (way === undefined || way === wayOf(table).toUpperCase());
}

function plainName(name: string): string {
  return name.trim().toLowerCase();
}

function wayOf({ isTurned }: FoundTable): string {
  return isTurned ? "across" : "down";
}

/** `Bases!B5`, or `B5` in a file without sheets. */
export function placeOfTable({ sheet, upperLeft }: FoundTable): string {
  return sheet === "" ? upperLeft : `${sheet}!${upperLeft}`;
}

function askWhich(choices: readonly Found[], all: readonly Found[], kind: TableKind): ReadQuestion {
  const tables = choices.map(({ table }) => table);
  const first = tables[0];
  const isAlike = first !== undefined && tables.every((table) => headingsOf(table) === headingsOf(first));
  const rows = tables.map((table) => `${placeOfTable(table)} with ${countRows(table)}`).join(", ");
  const alike = `${tables.length} tables have the same headings (${rows}) and are not joined: if they are one, put them into one table`;
  const several = `${tables.length} tables have ${kind.wanted} (${rows})`;
  return {
    cells: tables.map(placeOfTable),
    text: `${isAlike ? alike : several}; which is the ${kind.key === "schedule" ? "schedule of bases" : "list of placements"}?`,
    choices: tables.map((table) => ({
      line: lineFor(
        table,
        all.map((each) => each.table),
      ),
      means: meaningOf(table),
    })),
  };
}

function headingsOf(table: FoundTable): string {
  return textsOf(table).map(plainText).sort().join("|");
}

/** `1 row`, `12 rows` */
export function countRows({ rows }: FoundTable): string {
  return rows.length === 1 ? "1 row" : `${rows.length} rows`;
}

/** What the job must say for one table: its sheet, its place, or both. */
function lineFor(table: FoundTable, all: readonly FoundTable[]): string {
  const onSheet = all.filter(({ sheet }) => sheet === table.sheet);
  const samePlace = onSheet.filter(({ upperLeft }) => upperLeft === table.upperLeft);
  const place = `table: ${table.upperLeft}${samePlace.length > 1 ? ` ${wayOf(table)}` : ""}`;
  const sheet = `sheet: ${yamlName(table.sheet)}`;
  if (all.every((other) => other.sheet === table.sheet)) return place;
  return onSheet.length === 1 ? sheet : `${sheet}, ${place}`;
}

/** A name as it stands in a job file: in quotation marks also where it might be taken for a number or a word of YAML. */
function yamlName(text: string): string {
  return /^[A-Za-z](?:[\w .-]*\w)?$/.test(text) && !/^(?:true|false|yes|no|y|n|on|off|null)$/i.test(text)
    ? text
    : JSON.stringify(text);
}

function meaningOf(table: FoundTable): string {
  const title = table.title === "" ? "" : `"${table.title}", `;
  const way = table.isTurned ? "bases across the columns" : "bases down the rows";
  return `${title}${placeOfTable(table)}: ${countRows(table)}, ${way}, headings ${listHeadings(table)}`;
}

function listHeadings(table: FoundTable): string {
  const texts = textsOf(table);
  return `${texts.slice(0, 6).join(", ")}${texts.length > 6 ? " ..." : ""}`;
}

function noneNamed<T extends Found>(
  found: readonly T[],
  answers: Pick<TableAnswers, "sheet" | "table">,
  kind: TableKind,
): TableChoice<T> {
  const tables = found.map(({ table }) => table);
  const asked = [answers.sheet, answers.table].filter((name) => name !== undefined).join("!");
  const places = tables.map(placeOfTable);
  const near = nearestWord(answers.sheet ?? "", [...new Set(tables.map(({ sheet }) => sheet))]);
  const message = `there is no table${asked === "" ? "" : ` at ${asked}`}; a table has ${kind.wanted}${places.length === 0 ? "" : `, and stands at ${places.slice(0, 6).join(", ")}`}`;
  return { kind: "none", message, hint: near === undefined ? linesOf(tables) : `did you mean ${near}?` };
}

function noneMeant<T extends Found>(found: readonly T[], kind: TableKind): TableChoice<T> {
  const tables = found.map(({ table }) => table);
  const seen = tables.slice(0, 4).map((table) => `${placeOfTable(table)} has ${listHeadings(table)}`);
  return { kind: "none", message: `no table has ${kind.wanted}: ${seen.join("; ")}`, hint: linesOf(tables) };
}

function linesOf(tables: readonly FoundTable[]): string {
  const [first] = tables;
  return first === undefined
    ? ""
    : `if one of them is meant, say so: ${tables
        .slice(0, 4)
        .map((table) => lineFor(table, tables))
        .join(" or ")}`;
}
