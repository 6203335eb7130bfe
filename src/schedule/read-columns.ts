/** Settled headings -> columns with a reader for their cells. */
import type { SourcePlace } from "../readers/source.js";
import { findNode } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import { readCell, scalar } from "./grammar/index.js";
import type { Heading } from "./headings.js";
import { headingNamed } from "./headings.js";
import type { CellPart, CellReading, FormName } from "./model.js";
import { remembered } from "./remembered-reader.js";
import type { SettledColumn } from "./settled-column.js";
import { headingText } from "./settled-column.js";
import type { CellReader, ColumnRole, ReadColumn } from "./sheet-cell.js";

/** What the cells of a heading are read by. */
export type ReadHeading = Pick<Heading, "name" | "key" | "formName" | "words">;

/** The columns of a table, each with what its cells are taken for. */
export function readColumns(settled: readonly SettledColumn<ReadHeading>[], unit: Unit): readonly ReadColumn[] {
  return settled.map((column) => ({
    ...{ index: column.index, found: column.column, heading: headingText(column.column) },
    ...{ name: column.heading?.name ?? headingText(column.column), how: column.how },
    role: roleOf(column, unit),
  }));
}

function roleOf({ as, heading, column, how, isSquare }: SettledColumn<ReadHeading>, unit: Unit): ColumnRole {
  switch (as) {
    case "asked":
      return { kind: "asked" };
    case "left out":
      return { kind: "left out", why: how };
    case "note":
      return { kind: "note", read: (text, place) => readCell(text, "note", contextOf("note", null, place, unit)) };
    case "value":
      return heading === null
        ? { kind: "left out", why: how }
        : {
            kind: "value",
            key: heading.key,
            read: remembered(squared(headingReader(heading, column.unit, unit), isSquare)),
          };
  }
}

/** One length is read as a square of it, where the job says that it stands for both ways. */
function squared(read: CellReader, isSquare: true | undefined): CellReader {
  if (isSquare !== true) return read;
  return (text, place) => (isOneLength(text) ? read(`${text.trim()} SQ`, place) : read(text, place));
}

function isOneLength(text: string): boolean {
  return /^[\d\s./'"-]*\d[\d\s./'"-]*(?:in\.?|mm|ft)?$/i.test(text.trim());
}

/** How a text is read under one of our own headings, whatever the sheet has; undefined for none of ours. */
export function readerNamed(
  name: string,
  unit: Unit,
  written: string | null = null,
): { readonly key: string; readonly read: CellReader } | undefined {
  const heading = headingNamed(name);
  return heading === undefined ? undefined : { key: heading.key, read: headingReader(heading, written, unit) };
}

function contextOf(key: string, headingUnit: string | null, place: SourcePlace, unit: Unit) {
  return { unit, headingUnit, place, key };
}

const LENGTH_UNITS: ReadonlySet<string> = new Set(["in", "ft", "mm", "cm", "m"]);
/** Forms without a length. */
const WITHOUT_LENGTH: ReadonlySet<string> = new Set([
  "text",
  "note",
  "word",
  "yesNo",
  "count",
  "mark",
  "grade",
  "finish",
  "nut",
]);
/** A number without a unit. */
const BARE = /^[-+]?[\d\s./-]*\d[\d\s./-]*$/;

function headingReader(heading: ReadHeading, written: string | null, unit: Unit): CellReader {
  const { key, formName, words } = heading;
  const headingUnit = written !== null && LENGTH_UNITS.has(written) ? written : null;
  const isFeetAndInches = written === "ft-in" && !WITHOUT_LENGTH.has(formName);
  const readIn = (form: FormName, text: string, place: SourcePlace): CellReading => {
    if (isFeetAndInches && BARE.test(text.trim())) return bareUnderFeet(text);
    const context = contextOf(key, headingUnit, place, unit);
    const reading = readCell(text, form, words === undefined ? context : { ...context, synonyms: words });
    return headingUnit === null ? reading : withOwnUnit(reading, text, headingUnit);
  };
  const read: CellReader = (text, place) => readIn(formName, text, place);
  if (key === "pattern.diameter")
    return (text, place) => circleReading(text, place, read, isFeetAndInches ? null : readIn("pattern", text, place));
  if (key === "rods.count") return (text, place) => linesReading(text, place) ?? read(text, place);
  if (key === "quantity" || key === "template.quantity")
    return (text, place) => read(text.replace(SHARED, "$1"), place);
  if (formName === "elevation" && headingUnit !== null)
    return (text, place) => withUnit(read(text, place), headingUnit);
  if (key === "column") return (text, place) => asSectionName(read(text, place));
  return key === "pattern.pitch" ? (text, place) => asPitches(read(text, place)) : read;
}

/** A section as the job file names it, its letters first: `W12x65 along y`, `UC 254x254x73`. */
function asSectionName(reading: CellReading): CellReading {
  if (reading.kind !== "value") return reading;
  const parts = reading.parts.map(({ key, node }): CellPart => {
    const name = findNode(node, "section");
    const along = findNode(node, "depthAlong");
    if (name?.kind !== "scalar") return { key, node };
    const inOrder = name.text.replace(/^(\d.*?)\s*(UC|UB|UBP|PFC|SHS|RHS|CHS)$/i, "$2 $1");
    const text = inOrder.replace(/^(.*\S)\s+PIPE$/i, "PIPE $1");
    return { key, node: { ...name, text: along?.kind === "scalar" ? `${text} along ${along.text}` : text } };
  });
  return { ...reading, parts };
}

/** An elevation carries its unit, though it may be the job's own. */
function withUnit(reading: CellReading, unit: string): CellReading {
  if (reading.kind !== "value") return reading;
  const parts = reading.parts.map(
    (part): CellPart =>
      part.node.kind === "scalar" && BARE.test(part.node.text)
        ? { ...part, node: { ...part.node, text: `${part.node.text} ${unit}` } }
        : part,
  );
  return { ...reading, parts };
}

/** Millimetres and inches are two families of units. */
const METRIC = /\d\s*(mm|cm|m)\b/i;
const INCHES = /\d\s*(["'\u2033\u2032]|in\b|inch|ft\b|feet\b)/i;

/** A cell's own unit goes before that of its heading, and is said where it is of the other family. */
function withOwnUnit(reading: CellReading, text: string, headingUnit: string): CellReading {
  const isMetric = ["mm", "cm", "m"].includes(headingUnit);
  if (reading.kind !== "value" || !(isMetric ? INCHES : METRIC).test(text)) return reading;
  const said = `its own unit, not the ${headingUnit} of its heading`;
  return { ...reading, how: reading.how === "" ? said : `${reading.how}; ${said}` };
}

function bareUnderFeet(text: string): CellReading {
  const message = `"${text}" has no unit, under a heading of feet and inches; allowed is 2'-0" or 24"`;
  return { kind: "fault", message };
}

/** What a count of several marks is of: said again by the rows. */
const SHARED = /^(\s*\(?\d+\)?)\s*(?:altogether|total|in all|per mark)\s*$/i;

/** `3 x 2`, `4 x 3 perimeter`: lines of rods in X and Y; null for any other text. */
export function linesReading(text: string, place: SourcePlace): CellReading | null {
  const [, nx, ny, around] = /^\s*(\d{1,3})\s*[x×]\s*(\d{1,3})(\s+perimeter)?\s*$/i.exec(text) ?? [];
  if (nx === undefined || ny === undefined) return null;
  const count = around === undefined ? Number(nx) * Number(ny) : 2 * (Number(nx) + Number(ny)) - 4;
  const values: readonly (readonly [string, string])[] = [
    ["rods.count", String(count)],
    ["pattern.nx", nx],
    ["pattern.ny", ny],
    ...(around === undefined ? [] : [["pattern.perimeter", "yes"] as const]),
  ];
  const parts = values.map(([key, value]): CellPart => ({ key, node: scalar(value, place) }));
  return { kind: "value", parts, how: `${count} rods, ${nx} in X and ${ny} in Y` };
}

/** `24 straddle`, `24 on-axis x`: a bolt circle with where its first rod stands; `24"Ø B.C.` says it as a column of patterns does. */
function circleReading(text: string, place: SourcePlace, read: CellReader, asPattern: CellReading | null): CellReading {
  const [, diameter, start] = /^(.*\S)[,\s]+((?:straddle|on[- ]axis)(?: [xy])?)$/i.exec(text.trim()) ?? [];
  const reading = read(diameter ?? text, place);
  if (reading.kind === "fault" && asPattern !== null && isCircle(asPattern)) return asPattern;
  if (start === undefined || reading.kind !== "value") return start === undefined ? reading : read(text, place);
  const part: CellPart = { key: "pattern.start", node: scalar(start.toLowerCase(), place) };
  return { ...reading, parts: [...reading.parts, part], how: reading.how };
}

const isCircle = (reading: CellReading): boolean =>
  reading.kind === "value" && reading.parts.some(({ key }) => key === "pattern.diameter");

const PITCHES: Readonly<Record<string, string>> = { "pattern.x": "pattern.pitch.x", "pattern.y": "pattern.pitch.y" };

/** `6 x 6` under a heading of pitches; spaces say the length overall themselves. */
function asPitches(reading: CellReading): CellReading {
  if (reading.kind !== "value" || reading.parts.some(({ key }) => key === "pattern.nx")) return reading;
  return { ...reading, parts: reading.parts.map(({ key, node }) => ({ key: PITCHES[key] ?? key, node })) };
}
